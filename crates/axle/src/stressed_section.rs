//! Normal stress in a section of the axle, bare or with stiffeners, from its mean and its gradients.

use std::sync::Arc;

use axlebow_sections::{EdgeReach, SectionProperties, StressField};

use crate::frame::{Stiffened, Stretch};
use crate::outcome::Resultants;
use crate::{Axle, StiffenedSection};

/// A section in which stress is asked for.
#[derive(Debug, Clone)]
pub(crate) enum StressedSection {
    Bare { reach: EdgeReach, properties: SectionProperties },
    Stiffened(Arc<StiffenedSection>),
}

/// A fibre: where it is, and its modulus over the axle's.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Fibre {
    /// (x, z) from where the mean stress is, m.
    place: [f64; 2],
    modular_ratio: f64,
}

impl Fibre {
    /// Stress of a mean and its gradients along X and Z, Pa.
    pub(crate) fn stress(&self, [mean, x, z]: [f64; 3]) -> f64 {
        self.modular_ratio * (mean + x * self.place[0] + z * self.place[1])
    }
}

impl StressedSection {
    /// The section at `y` in a stretch.
    pub(crate) fn at(axle: &Axle, stretch: &Stretch, y: f64) -> Self {
        if let Some(Stiffened { section, .. }) = &stretch.stiffened {
            return StressedSection::Stiffened(Arc::clone(section));
        }
        let profile = stretch.piece.profile_at(y.abs());
        let properties = axle.body.properties(&stretch.piece, y.abs());
        StressedSection::Bare { reach: profile.edge_reach(), properties }
    }

    /// Mean stress and its gradients along X and Z, in terms of the axle's modulus.
    pub(crate) fn terms(&self, resultants: &Resultants) -> [f64; 3] {
        match self {
            StressedSection::Bare { properties, .. } => [
                resultants.axial / properties.area,
                resultants.moment_z / properties.second_moment_z,
                -resultants.moment_x / properties.second_moment_x,
            ],
            StressedSection::Stiffened(section) => {
                let field = section.stress_field(resultants);
                [field.mean, field.gradient_x, field.gradient_z]
            }
        }
    }

    /// Stress of greatest magnitude, Pa, tension positive.
    #[inline]
    pub(crate) fn extreme_stress(&self, terms: [f64; 3]) -> f64 {
        match self {
            StressedSection::Bare { reach, .. } => reach.extreme_stress(terms[0], [terms[1], terms[2]]),
            StressedSection::Stiffened(section) => {
                section.composite.peak_stress(&field(section, terms)).value
            }
        }
    }

    /// The fibre of that stress.
    pub(crate) fn extreme_fibre(&self, terms: [f64; 3]) -> Fibre {
        match self {
            StressedSection::Bare { reach, .. } => {
                let stress = reach.extreme_stress(terms[0], [terms[1], terms[2]]);
                let sign = if stress < terms[0] { -1.0 } else { 1.0 };
                Fibre { place: reach.farthest_place([sign * terms[1], sign * terms[2]]), modular_ratio: 1.0 }
            }
            StressedSection::Stiffened(section) => {
                let peak = section.composite.peak_stress(&field(section, terms));
                let [x, z] = section.area.centroid;
                let place = [peak.place[0] - x, peak.place[1] - z];
                Fibre { place, modular_ratio: section.composite.modular_ratio(peak.part) }
            }
        }
    }

    /// Stress of greatest value where `sign` is 1, of least value where it is −1, Pa.
    pub(crate) fn extreme_stress_towards(&self, sign: f64, terms: [f64; 3]) -> f64 {
        let stress = self.extreme_stress(terms);
        if stress * sign >= 0.0 {
            return stress;
        }
        self.extreme_fibre_towards(sign, terms).stress(terms)
    }

    /// The fibre of that stress.
    pub(crate) fn extreme_fibre_towards(&self, sign: f64, terms: [f64; 3]) -> Fibre {
        // A mean that is larger than any bending decides which fibre is stressed most.
        let [mean, x, z] = terms;
        self.extreme_fibre([mean + sign * 4.0 * self.extreme_stress(terms).abs(), x, z])
    }

    /// How far its fibres reach from where the mean stress is, about, m.
    pub(crate) fn reach(&self) -> f64 {
        match self {
            StressedSection::Bare { reach, .. } => reach.straight_z.max(reach.straight_x) + reach.radius,
            StressedSection::Stiffened(section) => (section.area.polar_moment() / section.area.area).sqrt(),
        }
    }
}

fn field(section: &StiffenedSection, [mean, gradient_x, gradient_z]: [f64; 3]) -> StressField {
    StressField { centroid: section.area.centroid, mean, gradient_x, gradient_z }
}
