//! What one fillet carries per length.

use std::f64::consts::FRAC_1_SQRT_2;

/// What one fillet carries per length of weld, from the attached part to the base (N/m).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WeldLoad {
    /// Along the weld.
    pub along: f64,
    /// Square to the weld in the face of the base; positive where it draws the attached part off the weld.
    pub across: f64,
    /// Square to the face of the base; positive where it pulls the attached part away.
    pub away: f64,
}

/// Stresses on the throat of a fillet between faces at a right angle (Pa).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct ThroatStress {
    /// Square to the throat, tension positive.
    pub normal: f64,
    /// In the throat, square to the weld.
    pub shear_across: f64,
    /// In the throat, along the weld.
    pub shear_along: f64,
}

impl WeldLoad {
    /// Its share of a shear flow that equal welds carry side by side.
    ///
    /// - `flow`: q (N/m), as by [`super::shear_flow`]
    /// - `welds`: how many runs share it, 1 or more
    pub fn of_shear_flow(flow: f64, welds: usize) -> Self {
        Self { along: flow / welds.max(1) as f64, ..Self::default() }
    }

    /// The same load times a factor, as where stitches carry what a continuous weld would.
    pub fn times(self, factor: f64) -> Self {
        Self { along: self.along * factor, across: self.across * factor, away: self.away * factor }
    }

    /// Resultant (N/m).
    pub fn resultant(&self) -> f64 {
        self.along.hypot(self.transverse())
    }

    /// Angle theta between the resultant and the weld's axis (rad), 0 to π/2.
    pub fn angle(&self) -> f64 {
        self.transverse().atan2(self.along.abs())
    }

    fn transverse(&self) -> f64 {
        self.across.hypot(self.away)
    }

    /// Stresses on a throat a (m) at 45°: (away + across)/(√2 a), (away - across)/(√2 a), along/a.
    pub(crate) fn throat_stress(&self, throat: f64) -> ThroatStress {
        ThroatStress {
            normal: FRAC_1_SQRT_2 * (self.away + self.across) / throat,
            shear_across: FRAC_1_SQRT_2 * (self.away - self.across) / throat,
            shear_along: self.along / throat,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::FRAC_PI_2;

    #[test]
    fn the_angle_runs_from_along_to_square() {
        assert_eq!(WeldLoad { along: -5.0, ..WeldLoad::default() }.angle(), 0.0);
        assert_eq!(WeldLoad { away: -5.0, ..WeldLoad::default() }.angle(), FRAC_PI_2);
        assert_eq!(WeldLoad::default().angle(), 0.0);
    }

    #[test]
    fn the_throat_carries_the_whole_load() {
        let load = WeldLoad { along: 3.0, across: -4.0, away: 12.0 };
        let stress = load.throat_stress(0.5);
        let carried = stress.normal.hypot(stress.shear_across).hypot(stress.shear_along) * 0.5;
        assert!((carried - 13.0).abs() < 1e-12);
        assert!((load.resultant() - 13.0).abs() < 1e-12);
    }
}
