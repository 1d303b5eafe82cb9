//! A rib as a brush: bristles of rubber that the road shears until friction lets them slide.
//!
//! Source: H. B. Pacejka, Tire and Vehicle Dynamics, 3rd ed. 2012, secs. 3.2.1 to 3.2.3 (parabolic pressure, equal
//! stiffness in all directions); from memory.

/// A brush under a load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Brush {
    /// Shear force over a small slip, N.
    pub stiffness: f64,
    /// Largest shear force, friction by load, N.
    pub limit: f64,
}

impl Brush {
    /// Shear force at a slip, N, against the slip: with ψ = C σ/(3 μ F), `μF (3ψ − 3ψ² + ψ³)` up to ψ = 1 where all
    /// of it slides, and μF from there on.
    ///
    /// - `slip`: sliding speed over the speed at which the rib rolls, 0 or more
    pub fn force(&self, slip: f64) -> f64 {
        if self.limit <= 0.0 {
            return 0.0;
        }
        let psi = (self.stiffness * slip / (3.0 * self.limit)).min(1.0);
        self.limit * psi * (3.0 - psi * (3.0 - psi))
    }

    /// Shear force gained for each unit of slip, N: `C (1 − ψ)²`, none where all of it slides.
    pub fn slope(&self, slip: f64) -> f64 {
        if self.limit <= 0.0 {
            return 0.0;
        }
        let sticking = (1.0 - self.stiffness * slip / (3.0 * self.limit)).max(0.0);
        self.stiffness * sticking * sticking
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The bristles one by one: each is sheared as it runs through the contact and slides where friction lets it;
    /// the work of friction is the shear force by the slip.
    #[test]
    fn force_and_work_are_those_of_the_bristles_added_up() {
        let brush = Brush { stiffness: 60e3, limit: 4e3 };
        for slip in [0.005, 0.03, 0.1, 0.19, 0.25] {
            let (mut force, mut work) = (0.0, 0.0);
            let (length, parts) = (0.2, 200_000);
            let each = length / f64::from(parts);
            let shear = 2.0 * brush.stiffness / (length * length);
            let mut held = 0.0;
            for i in 0..parts {
                let x = (f64::from(i) + 0.5) * each;
                let most = brush.limit * 6.0 * x * (length - x) / length.powi(3);
                let stuck: f64 = held + shear * slip * each;
                let slid = (stuck - most).max(0.0) / shear;
                held = stuck.min(most);
                force += held * each;
                work += held * slid;
            }
            assert!((force / brush.force(slip) - 1.0).abs() < 1e-4, "{slip}: {force}");
            assert!((work / (brush.force(slip) * slip) - 1.0).abs() < 1e-3, "{slip}: {work}");
        }
    }

    #[test]
    fn an_unloaded_brush_has_no_force() {
        let brush = Brush { stiffness: 0.0, limit: 0.0 };
        assert_eq!(brush.force(0.01), 0.0);
    }
}
