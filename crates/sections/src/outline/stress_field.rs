//! Normal stress over a section of any shape.

/// Normal stress that varies evenly over a section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StressField {
    /// Centroid (x, z) (m).
    pub centroid: [f64; 2],
    /// Stress at the centroid (Pa, tension positive).
    pub mean: f64,
    /// Growth along X (Pa/m).
    pub gradient_x: f64,
    /// Growth along Z (Pa/m).
    pub gradient_z: f64,
}

/// The line on which there is no normal stress.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NeutralAxis {
    /// Its point nearest to the centroid, (x, z) (m).
    pub point: [f64; 2],
    /// Its angle from X, counter-clockwise in (x, z), above -π/2 to π/2 (rad).
    pub angle: f64,
}

impl StressField {
    /// Stress at a place (x, z) (Pa, tension positive).
    pub fn at(&self, [x, z]: [f64; 2]) -> f64 {
        self.mean + self.gradient_x * (x - self.centroid[0]) + self.gradient_z * (z - self.centroid[1])
    }

    /// The neutral axis; none without bending. It may lie outside the section.
    pub fn neutral_axis(&self) -> Option<NeutralAxis> {
        let square = self.gradient_x * self.gradient_x + self.gradient_z * self.gradient_z;
        if square == 0.0 {
            return None;
        }
        let reach = -self.mean / square;
        let point = [self.centroid[0] + reach * self.gradient_x, self.centroid[1] + reach * self.gradient_z];
        // At right angles to the gradient, and of the two ways the one with a part along +X.
        let (along, up) = (self.gradient_z, -self.gradient_x);
        let sign = if along < 0.0 || (along == 0.0 && up < 0.0) { -1.0 } else { 1.0 };
        Some(NeutralAxis { point, angle: (sign * up).atan2(sign * along) })
    }

    /// The same field with every stress times a factor, such as the modular ratio of a part.
    pub fn times(&self, factor: f64) -> Self {
        Self {
            centroid: self.centroid,
            mean: factor * self.mean,
            gradient_x: factor * self.gradient_x,
            gradient_z: factor * self.gradient_z,
        }
    }
}
