//! What a beam carries.

/// Force and moment on a cut, in a beam's local axes.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct EndForce {
    /// Along axis 1.
    pub axial: f64,
    /// Along axis 2.
    pub shear_2: f64,
    /// Along axis 3.
    pub shear_3: f64,
    /// About axis 1.
    pub torsion: f64,
    /// About axis 2.
    pub bending_2: f64,
    /// About axis 3.
    pub bending_3: f64,
}

/// What a beam carries under one load column: the force at its start and the load along it, local axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BeamForces {
    /// Forces (axial, shear 2, shear 3) and moments (torsion, about 2, about 3) on the start.
    pub start: [f64; 6],
    /// Load per length along axes 1, 2, 3.
    pub line_load: [f64; 3],
}

impl BeamForces {
    /// Resultants on the face with outward normal +1 at the distance `s` from the start.
    pub fn at(&self, s: f64) -> EndForce {
        let [n, v2, v3, t, m2, m3] = self.start;
        let [q1, q2, q3] = self.line_load;
        EndForce {
            axial: -n - q1 * s,
            shear_2: -v2 - q2 * s,
            shear_3: -v3 - q3 * s,
            torsion: -t,
            bending_2: -m2 - v3 * s - 0.5 * q3 * s * s,
            bending_3: -m3 + v2 * s + 0.5 * q2 * s * s,
        }
    }

    /// Sum of two carried states, the second multiplied by `factor`.
    pub fn plus(&self, other: &BeamForces, factor: f64) -> BeamForces {
        let mut sum = *self;
        sum.start.iter_mut().zip(other.start).for_each(|(a, b)| *a += factor * b);
        sum.line_load.iter_mut().zip(other.line_load).for_each(|(a, b)| *a += factor * b);
        sum
    }
}
