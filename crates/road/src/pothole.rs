//! A pothole with sloping edges and a flat floor.

use crate::RoadError;
use crate::error::{accepted, accepted_length};
use crate::event::Shape;

/// A pothole, z = -min(d, s x, s (l - x)) for x from 0 to l: two even edges and a flat floor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pothole {
    depth: f64,
    length: f64,
    edge_slope: f64,
}

impl Pothole {
    /// A pothole that begins at x = 0.
    ///
    /// - `depth`: d (m), 0 to 10 m
    /// - `length`: l (m), lip to lip, 1 mm to 100 km
    /// - `edge_slope`: s (m/m), fall for each meter along the road, 2 d/l (so that
    ///   the edges reach the floor) to 1000 (nearly upright)
    ///
    /// Errors: [`RoadError::Range`], [`RoadError::EdgesMeet`].
    pub fn new(depth: f64, length: f64, edge_slope: f64) -> Result<Self, RoadError> {
        let depth = accepted("depth of the pothole", depth, "m", 0.0..=10.0)?;
        let length = accepted_length("length of the pothole", length)?;
        let slope = accepted("edge slope of the pothole", edge_slope, "m/m", 1e-3..=1e3)?;
        let least = 2.0 * depth / length;
        if slope < least {
            return Err(RoadError::EdgesMeet { slope, least });
        }
        Ok(Self { depth, length, edge_slope: slope })
    }

    /// Depth d (m).
    pub fn depth(&self) -> f64 {
        self.depth
    }

    /// Length l from lip to lip (m).
    pub fn length(&self) -> f64 {
        self.length
    }

    /// Slope s of the edges (m/m).
    pub fn edge_slope(&self) -> f64 {
        self.edge_slope
    }

    /// Length of the flat floor, l - 2 d/s (m).
    pub fn floor(&self) -> f64 {
        (self.length - 2.0 * self.depth / self.edge_slope).max(0.0)
    }

    /// Area between the ground and the floor's level from the first lip to x, in the first half.
    fn edge_area(&self, x: f64) -> f64 {
        let edge = self.depth / self.edge_slope;
        let fallen = x.min(edge);
        0.5 * self.edge_slope * fallen * fallen + self.depth * (x - fallen)
    }

    /// Integral of the depth from the first lip to x (m²).
    fn hollow(&self, x: f64) -> f64 {
        let half = 0.5 * self.length;
        if x <= half {
            self.edge_area(x)
        } else {
            2.0 * self.edge_area(half) - self.edge_area(self.length - x)
        }
    }
}

impl Shape for Pothole {
    fn end(&self) -> f64 {
        self.length
    }

    fn height(&self, x: f64) -> f64 {
        -self.depth.min(self.edge_slope * x.min(self.length - x))
    }

    fn area(&self, from: f64, to: f64) -> f64 {
        self.hollow(from) - self.hollow(to)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Event;
    use approx::assert_relative_eq;

    #[test]
    fn a_pothole_falls_to_its_floor_and_comes_back() {
        let pothole = Event::from(Pothole::new(0.125, 2.0, 0.25).unwrap());
        for (x, z) in
            [(-1.0, 0.0), (0.25, -0.0625), (0.5, -0.125), (1.5, -0.125), (1.75, -0.0625), (2.0, 0.0)]
        {
            assert_eq!(pothole.height(x), z, "{x}");
        }
    }

    #[test]
    fn its_area_is_that_of_a_trapezium() {
        let pothole = Pothole::new(0.1, 1.0, 0.5).unwrap();
        assert_relative_eq!(pothole.area(0.0, 1.0), -0.08, max_relative = 1e-14);
        assert_relative_eq!(pothole.floor(), 0.6, max_relative = 1e-14);
    }

    #[test]
    fn edges_may_just_meet_at_the_floor_and_no_sooner() {
        assert!(Pothole::new(0.25, 1.0, 0.5).is_ok());
        assert_eq!(
            Pothole::new(0.25, 1.0, 0.25).unwrap_err().to_string(),
            "edge slope of the pothole is 0.25 m/m; accepted is 0.5 m/m or more, so that it is deep enough"
        );
        assert!(Pothole::new(-0.1, 1.0, 1.0).is_err());
        assert!(Pothole::new(0.1, 1.0, f64::INFINITY).is_err());
    }
}
