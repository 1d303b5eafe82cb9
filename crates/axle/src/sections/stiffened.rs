//! The axle and its stiffeners as one section over the welded length.
//!
//! Plane sections stay plane across all parts, each counted by its modulus against the axle's. The beam then runs
//! along the common centroid, its axes along the principal ones. Left out: the shear stiffness of the stiffeners
//! themselves (the axle's wall alone carries shear) and the distance of the shear center from the centroid.

use axlebow_fe::Rigidity;
use axlebow_sections::{AreaProperties, Composite, Placement, PrincipalAxes, StressField};

use crate::sections::resultants::Resultants;

/// A section of the axle with its stiffeners.
#[derive(Debug, Clone, PartialEq)]
pub struct StiffenedSection {
    /// Axle and stiffeners, the axle first.
    pub composite: Composite,
    /// Area properties in terms of the axle's modulus.
    pub area: AreaProperties,
    /// Torsion constant in terms of the axle's shear modulus, closed cells included, m⁴.
    pub torsion_constant: f64,
    /// Shear center (x, z), m; none where a stiffener leaves its part of the section open.
    pub shear_center: Option<[f64; 2]>,
    /// Shear area along X and Z, that of the bare axle, m².
    pub shear_area: [f64; 2],
    /// Mass per length, kg/m.
    pub mass_per_length: f64,
    pub(crate) elastic_modulus: f64,
    pub(crate) shear_modulus: f64,
}

impl StiffenedSection {
    /// Normal stress in terms of the axle's modulus, for resultants about the axle's own line.
    pub fn stress_field(&self, resultants: &Resultants) -> StressField {
        let [x, z] = self.area.centroid;
        let own = resultants.moved([-x, -z]);
        self.area.stress_field(own.axial, own.moment_x, own.moment_z)
    }

    /// Mass moments of inertia per length about the beam's axes, of the transformed section in the axle's density.
    pub(crate) fn rotary_inertia(&self, angle: f64) -> [f64; 3] {
        let area = self.turned(angle);
        let density = self.mass_per_length / area.area;
        let (about_2, about_3) = (density * area.second_moment_z, density * area.second_moment_x);
        [about_2 + about_3, about_2, about_3]
    }

    fn turned(&self, angle: f64) -> AreaProperties {
        self.area.placed(&Placement { turn: -angle, x: 0.0, z: 0.0 })
    }

    /// Principal axes; a section as stiff every way has those of the axle.
    pub(crate) fn axes(&self) -> PrincipalAxes {
        self.area.principal_axes()
    }

    /// Rigidity about axes turned by an angle from X, counter-clockwise in (x, z).
    pub(crate) fn rigidity(&self, angle: f64) -> Rigidity {
        let area = self.turned(angle);
        let (e, g) = (self.elastic_modulus, self.shear_modulus);
        let (sine, cosine) = angle.sin_cos();
        let shear = |x: f64, z: f64| g * (x * x * self.shear_area[0] + z * z * self.shear_area[1]);
        Rigidity {
            axial: e * area.area,
            torsion: g * self.torsion_constant,
            bending_2: e * area.second_moment_z,
            bending_3: e * area.second_moment_x,
            shear_2: shear(-sine, cosine),
            shear_3: shear(cosine, sine),
        }
    }
}
