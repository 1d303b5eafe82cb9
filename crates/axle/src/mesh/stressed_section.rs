//! Normal stress in a section of the axle or of a stiffener, from its mean and its gradients.

use std::sync::Arc;

use axlebow_fe::EndForce;
use axlebow_sections::{EdgeReach, Outline, SectionProperties, StressField};

use crate::mesh::stretch::{BeamLine, Stiffened, Stretch};
use crate::parts::stiffener::Seated;
use crate::sections::resultants::Resultants;
use crate::{Axle, StiffenedSection};

/// A section in which stress is asked for.
#[derive(Debug, Clone)]
pub(crate) enum StressedSection {
    Bare {
        reach: EdgeReach,
        properties: SectionProperties,
    },
    Stiffened(Arc<StiffenedSection>),
    /// A stiffener by itself, whole: where its end runs out, less of it carries the same force.
    Bar(Arc<Seated>),
}

/// A beam of a stretch with the section that it bends: the axle's own, or that of a stiffener beside it.
#[derive(Debug, Clone)]
pub(crate) struct StressedMember {
    pub line: BeamLine,
    pub section: StressedSection,
}

impl StressedMember {
    /// Those at `y` in a stretch, the axle's own first.
    pub(crate) fn each(axle: &Axle, stretch: &Stretch, y: f64) -> impl Iterator<Item = Self> {
        let own = StressedMember { line: stretch.line(), section: StressedSection::at(axle, stretch, y) };
        let bars = stretch.bars.iter().map(|bar| StressedMember {
            line: bar.line,
            section: StressedSection::Bar(Arc::clone(&bar.seated)),
        });
        std::iter::once(own).chain(bars)
    }

    /// Normal stress of what its beam carries.
    pub(crate) fn field(&self, force: &EndForce) -> StressField {
        let centroid = match &self.section {
            StressedSection::Bare { .. } => [0.0; 2],
            StressedSection::Stiffened(section) => section.area.centroid,
            StressedSection::Bar(seated) => seated.area.centroid,
        };
        field(centroid, self.terms(force))
    }

    /// Mean stress and its gradients along X and Z, of what its beam carries.
    pub(crate) fn terms(&self, force: &EndForce) -> [f64; 3] {
        self.section.terms(&self.line.resultants(force))
    }
}

/// A fiber: where it is, and its modulus over the axle's.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Fiber {
    /// (x, z) from where the mean stress is, m.
    place: [f64; 2],
    modular_ratio: f64,
}

impl Fiber {
    /// Stress of a mean and its gradients along X and Z, Pa.
    pub(crate) fn stress(&self, [mean, x, z]: [f64; 3]) -> f64 {
        self.modular_ratio * (mean + x * self.place[0] + z * self.place[1])
    }
}

impl StressedSection {
    /// The axle's own section at `y` in a stretch.
    fn at(axle: &Axle, stretch: &Stretch, y: f64) -> Self {
        if let Some(Stiffened { section, .. }) = &stretch.stiffened {
            return StressedSection::Stiffened(Arc::clone(section));
        }
        let profile = stretch.piece.profile_at(y.abs());
        let properties = axle.body.properties(&stretch.piece, y.abs());
        StressedSection::Bare { reach: profile.edge_reach(), properties }
    }

    /// Mean stress and its gradients along X and Z, in terms of the axle's modulus, of resultants about the axle's line.
    fn terms(&self, resultants: &Resultants) -> [f64; 3] {
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
            StressedSection::Bar(seated) => {
                let [x, z] = seated.area.centroid;
                let own = resultants.moved([-x, -z]);
                let field = seated.area.stress_field(own.axial, own.moment_x, own.moment_z);
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
                section.composite.peak_stress(&field(section.area.centroid, terms)).value
            }
            StressedSection::Bar(seated) => {
                let field = field(seated.area.centroid, terms);
                let [low, high] = extreme_places(&seated.outline, &field).map(|place| field.at(place));
                if low.abs() > high.abs() { low } else { high }
            }
        }
    }

    /// The same of many terms side by side, mean and gradients a list each.
    pub(crate) fn extreme_stresses<const N: usize>(&self, terms: &[[f64; N]; 3], stresses: &mut [f64; N]) {
        let [mean, x, z] = terms;
        if let StressedSection::Bare { reach, .. } = self {
            reach.extreme_stresses(mean, [x, z], stresses);
            return;
        }
        for (i, stress) in stresses.iter_mut().enumerate() {
            *stress = self.extreme_stress([mean[i], x[i], z[i]]);
        }
    }

    /// The fiber of that stress.
    pub(crate) fn extreme_fiber(&self, terms: [f64; 3]) -> Fiber {
        match self {
            StressedSection::Bare { reach, .. } => {
                let stress = reach.extreme_stress(terms[0], [terms[1], terms[2]]);
                let sign = if stress < terms[0] { -1.0 } else { 1.0 };
                Fiber { place: reach.farthest_place([sign * terms[1], sign * terms[2]]), modular_ratio: 1.0 }
            }
            StressedSection::Stiffened(section) => {
                let peak = section.composite.peak_stress(&field(section.area.centroid, terms));
                let [x, z] = section.area.centroid;
                let place = [peak.place[0] - x, peak.place[1] - z];
                Fiber { place, modular_ratio: section.composite.modular_ratio(peak.part) }
            }
            StressedSection::Bar(seated) => {
                let [x, z] = seated.area.centroid;
                let field = field([x, z], terms);
                let [low, high] = extreme_places(&seated.outline, &field);
                let most = if field.at(low).abs() > field.at(high).abs() { low } else { high };
                Fiber { place: [most[0] - x, most[1] - z], modular_ratio: 1.0 }
            }
        }
    }

    /// Stress of greatest value where `sign` is 1, of least value where it is −1, Pa.
    pub(crate) fn extreme_stress_towards(&self, sign: f64, terms: [f64; 3]) -> f64 {
        let stress = self.extreme_stress(terms);
        if stress * sign >= 0.0 {
            return stress;
        }
        self.extreme_fiber_towards(sign, terms).stress(terms)
    }

    /// The fiber of that stress.
    pub(crate) fn extreme_fiber_towards(&self, sign: f64, terms: [f64; 3]) -> Fiber {
        // A mean that is larger than any bending decides which fiber is stressed most.
        let [mean, x, z] = terms;
        self.extreme_fiber([mean + sign * 4.0 * self.extreme_stress(terms).abs(), x, z])
    }

    /// How far its fibers reach from where the mean stress is, about, m.
    pub(crate) fn reach(&self) -> f64 {
        match self {
            StressedSection::Bare { reach, .. } => reach.straight_z.max(reach.straight_x) + reach.radius,
            StressedSection::Stiffened(section) => (section.area.polar_moment() / section.area.area).sqrt(),
            StressedSection::Bar(seated) => (seated.area.polar_moment() / seated.area.area).sqrt(),
        }
    }
}

fn field(centroid: [f64; 2], [mean, gradient_x, gradient_z]: [f64; 3]) -> StressField {
    StressField { centroid, mean, gradient_x, gradient_z }
}

/// Where stress is least and greatest.
fn extreme_places(outline: &Outline, field: &StressField) -> [[f64; 2]; 2] {
    [-1.0, 1.0].map(|side| outline.farthest_place([side * field.gradient_x, side * field.gradient_z]))
}
