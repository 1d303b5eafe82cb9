//! Any of the sections.

pub(crate) mod edge_reach;
pub(crate) mod equivalent_stress;
pub(crate) mod properties;
pub(crate) mod rectangular_tube;
pub(crate) mod round_bar;
pub(crate) mod round_tube;
pub(crate) mod rounded_rectangle;
pub mod shear_coefficient;
pub(crate) mod stress;
pub(crate) mod taper;

use std::f64::consts::FRAC_1_SQRT_2;

use crate::profile::rounded_rectangle::RoundedRectangle;
use crate::{Outline, RectangularTube, RoundBar, RoundTube, SectionProperties, StressPoint};

/// Stresses that differ by less than this share of themselves are equal.
pub(crate) const EQUAL_STRESSES: f64 = 1e-9;

/// Any of the sections.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Profile {
    /// A round tube.
    RoundTube(RoundTube),
    /// A solid round bar.
    RoundBar(RoundBar),
    /// A rectangular tube.
    RectangularTube(RectangularTube),
}

impl Profile {
    /// What the section is called in messages.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::RoundTube(_) => "round tube",
            Self::RoundBar(_) => "round bar",
            Self::RectangularTube(_) => "rectangular tube",
        }
    }

    /// What a beam needs to know of the section.
    ///
    /// - `poisson_ratio`: nu of the material, 0 to 0.5; only the shear coefficients depend on it
    ///
    /// Exact, except for a rectangular tube: its torsion is Bredt's thin wall and
    /// its shear coefficients are Cowper's thin box on the midline sides.
    pub fn properties(&self, poisson_ratio: f64) -> SectionProperties {
        match self {
            Self::RoundTube(tube) => tube.properties(poisson_ratio),
            Self::RoundBar(bar) => bar.properties(poisson_ratio),
            Self::RectangularTube(tube) => tube.properties(poisson_ratio),
        }
    }

    /// Thickness of its wall, half of a bar's diameter (m).
    pub fn wall(&self) -> f64 {
        match self {
            Self::RoundTube(tube) => tube.wall(),
            Self::RectangularTube(tube) => tube.wall(),
            Self::RoundBar(bar) => 0.5 * bar.diameter(),
        }
    }

    /// Outside size along X (m).
    pub fn width(&self) -> f64 {
        self.outside().width
    }

    /// Outside size along Z (m).
    pub fn height(&self) -> f64 {
        self.outside().height
    }

    /// The eight outside points top, top front, front and so on round to top rear.
    pub fn stress_points(&self) -> [StressPoint; 8] {
        const S: f64 = FRAC_1_SQRT_2;
        let directions =
            [(0.0, 1.0), (S, S), (1.0, 0.0), (S, -S), (0.0, -1.0), (-S, -S), (-1.0, 0.0), (-S, S)];
        directions.map(|(x, z)| self.outside().farthest_point(x, z))
    }

    /// The edges, arcs as arcs.
    pub fn outline(&self) -> Outline {
        Outline::trusted(
            self.outside().contour(),
            self.inside().iter().map(RoundedRectangle::contour).collect(),
        )
    }

    /// The normal stress of greatest magnitude (Pa, tension positive) and where it acts; of two equal
    /// ones the tension.
    ///
    /// s = N/A - M_x z/I_x + M_z x/I_z over the whole edge, rounded corners included.
    ///
    /// - `properties`: of this section
    /// - `axial`: N (N), tension positive
    /// - `moment_x`, `moment_z`: M_x, M_z (N m), signs as in the [crate] documentation
    pub fn fiber_stress(
        &self,
        properties: &SectionProperties,
        axial: f64,
        moment_x: f64,
        moment_z: f64,
    ) -> (f64, StressPoint) {
        let gradient_x = moment_z / properties.second_moment_z;
        let gradient_z = -moment_x / properties.second_moment_x;
        let extreme = |side: f64| {
            let point = self.outside().farthest_point(side * gradient_x, side * gradient_z);
            (properties.normal_stress(point, axial, moment_x, moment_z), point)
        };
        let (tension, compression) = (extreme(1.0), extreme(-1.0));
        // A compression that is larger by rounding only, as in plain bending, does not count as larger.
        let larger = compression.0.abs() > tension.0.abs() * (1.0 + EQUAL_STRESSES);
        if larger { compression } else { tension }
    }

    /// Greatest shear stress of transverse shear forces, V Q / (I b) (Pa, not negative).
    ///
    /// - `shear_x`, `shear_z`: V along X and Z (N)
    ///
    /// In a rectangular tube the peaks of both forces are added, an upper bound.
    /// Source: Jourawski's formula, as in Gere & Goodno, *Mechanics of Materials*, 8th ed. 2013, ch. 5.
    pub fn transverse_shear_peak(&self, shear_x: f64, shear_z: f64) -> f64 {
        match self {
            Self::RoundTube(tube) => tube.transverse_shear_peak(shear_x, shear_z),
            Self::RoundBar(bar) => bar.transverse_shear_peak(shear_x, shear_z),
            Self::RectangularTube(tube) => tube.transverse_shear_peak(shear_x, shear_z),
        }
    }

    pub(crate) fn outside(&self) -> RoundedRectangle {
        match self {
            Self::RoundTube(tube) => tube.outside(),
            Self::RoundBar(bar) => bar.outside(),
            Self::RectangularTube(tube) => tube.outside(),
        }
    }

    fn inside(&self) -> Option<RoundedRectangle> {
        match self {
            Self::RoundTube(tube) => Some(tube.inside()),
            Self::RoundBar(_) => None,
            Self::RectangularTube(tube) => Some(tube.inside()),
        }
    }
}

impl From<RoundTube> for Profile {
    fn from(tube: RoundTube) -> Self {
        Self::RoundTube(tube)
    }
}

impl From<RoundBar> for Profile {
    fn from(bar: RoundBar) -> Self {
        Self::RoundBar(bar)
    }
}

impl From<RectangularTube> for Profile {
    fn from(tube: RectangularTube) -> Self {
        Self::RectangularTube(tube)
    }
}
