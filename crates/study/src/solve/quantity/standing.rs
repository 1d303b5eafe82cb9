//! Results of the static load case.

use axlebow_axle::{CamberSplit, CaseReadings, FlexOutcome, Side};
use axlebow_results::{Field, Record, field, within_a_sentence};
use axlebow_units::Kind;

use super::{Cost, OfStudies, Quantity, Reader};
use crate::solve::design::{Beside, Design};
use crate::solve::name;

pub(super) fn quantities() -> Vec<Quantity> {
    let mass = const { &field::<FlexOutcome>("axle-mass").term };
    let stress = const { &field::<CaseReadings>("peak-stress").term };
    let bow = const { &field::<CaseReadings>("bow").term };
    let free = |term, words, value| Quantity::of_term(term, words, Cost::Free, Reader::Design(value));
    let largest = OfStudies {
        name: "camber-change",
        words: "camber change",
        kind: Kind::Angle,
        meaning: "Camber change of the wheel that leans most.",
    };
    let mut all = vec![
        free(mass, "axle mass", |d| Some(d.axle_mass)),
        largest.read(Cost::Free, Reader::Design(|d| Some(d.camber_change.of_larger_magnitude()))),
    ];
    all.extend(Side::BOTH.into_iter().flat_map(of_wheel));
    all.push(free(stress, "peak stress", |d| Some(d.peak_stress)));
    all.push(free(bow, "bow", |d| Some(d.bow)));
    all.push(warnings());
    all.extend(gained());
    all.extend(at_a_cost());
    all.extend(rated_and_lasting());
    all
}

/// The camber change of a wheel and its parts.
fn of_wheel(side: Side) -> impl Iterator<Item = Quantity> {
    let (term, read): (_, fn(&Design) -> Option<f64>) = match side {
        Side::Left => {
            (const { &field::<CaseReadings>("left-camber-change").term }, |d| Some(d.camber_change.left))
        }
        Side::Right => {
            (const { &field::<CaseReadings>("right-camber-change").term }, |d| Some(d.camber_change.right))
        }
    };
    let words = format!("camber, {}", side.word());
    let whole = Quantity::of_term(term, &words, Cost::Free, Reader::Design(read));
    let part = move |part: &'static Field<CamberSplit>| Quantity {
        name: format!("{}-{}", side.word(), part.term.name),
        words: format!("{} {}", side.word(), part.term.name),
        meaning: format!(
            "Part of the {} wheel's camber change: {}",
            side.word(),
            within_a_sentence(part.term.meaning)
        ),
        ..Quantity::of_term(&part.term, "", Cost::Free, Reader::Split(side, part))
    };
    std::iter::once(whole).chain(CamberSplit::FIELDS.iter().map(part))
}

fn warnings() -> Quantity {
    let count = OfStudies {
        name: "warnings",
        words: "warnings",
        kind: Kind::Ratio,
        meaning: "How many warnings the design and its rides have.",
    };
    count.read(Cost::Free, Reader::Design(|d| Some(d.warning_count() as f64)))
}

/// What has been gained on the design that it is compared with.
fn gained() -> [Quantity; 3] {
    let mass = OfStudies {
        name: "added-mass",
        words: "added mass",
        kind: Kind::Mass,
        meaning: "Axle mass beyond that of the axle without stiffeners, or side by side of the baseline.",
    };
    let camber = OfStudies {
        name: "camber-removed",
        words: "camber removed",
        kind: Kind::Ratio,
        meaning: "Share of that axle's camber change that is gone.",
    };
    let per_mass = OfStudies {
        name: "camber-removed-per-mass",
        words: "camber removed per mass",
        kind: Kind::AnglePerMass,
        meaning: "Camber change that is gone, over the added mass.",
    };
    let share =
        |d: &Design, beside: &Beside| removed(d, beside) / beside.camber_change.of_larger_magnitude().abs();
    let rate = |d: &Design, beside: &Beside| removed(d, beside) / (d.axle_mass - beside.axle_mass);
    [
        mass.read(Cost::Free, Reader::Beside(|d, beside| d.axle_mass - beside.axle_mass)),
        camber.read(Cost::Free, Reader::Beside(share)),
        per_mass.read(Cost::Free, Reader::Beside(rate)),
    ]
}

/// Those that only some studies ask for.
fn at_a_cost() -> [Quantity; 5] {
    let composite = OfStudies {
        name: "composite-camber-change",
        words: "camber change, full composite action",
        kind: Kind::Angle,
        meaning: "Camber change of the wheel that leans most with axle and stiffeners one section, as if no weld gave \
                  way: the upper bound of what stiffeners do; without stiffeners its own.",
    };
    let weld = OfStudies {
        name: "weld-peak-force",
        words: "weld, peak force",
        kind: Kind::Stiffness,
        meaning: "Greatest force of a stiffener's weld per length of it.",
    };
    let wear = OfStudies {
        name: "inner-shoulder-wear",
        words: "inner shoulder, wear",
        kind: Kind::Ratio,
        meaning: "Wear of the inner shoulder of the innermost tire over that of the same rib upright and straight.",
    };
    let share = OfStudies {
        name: "innermost-tire-share",
        words: "innermost tire, share",
        kind: Kind::Ratio,
        meaning: "Share of its wheel's load that the innermost tire carries.",
    };
    let utilization = OfStudies {
        name: "utilization",
        words: "utilization",
        kind: Kind::Ratio,
        meaning: "Greatest share of its limit that a check of `axlebow strength` uses, in all load cases or the study's \
                  `strength_cases`; past 1 the axle fails.",
    };
    let one_section =
        |d: &Design| Some(d.composite.as_ref().unwrap_or(&d.camber_change).of_larger_magnitude());
    [
        composite.read(Cost::Composite, Reader::Design(one_section)),
        weld.read(Cost::Welds, Reader::Design(|d| d.weld_peak)),
        wear.read(
            Cost::Tires,
            Reader::Tires(|face| face.worn.tires.last()?.inner_shoulder().against_upright),
        ),
        share.read(Cost::Tires, Reader::Tires(|face| Some(face.worn.tires.last()?.load / face.pose.load))),
        utilization.read(Cost::Strength, Reader::Design(|d| d.strength_use)),
    ]
}

/// What it may carry, and how long it lasts under the study's duty.
fn rated_and_lasting() -> [Quantity; 4] {
    let rating = OfStudies {
        name: "rating",
        words: "rating",
        kind: Kind::Force,
        meaning: "Axle load at which the first check of `axlebow strength` binds, in all load cases or the study's \
                  `strength_cases`; 0 where one is past its limit at any load.",
    };
    let damage = OfStudies {
        name: "yearly-damage",
        words: "damage in a year",
        kind: Kind::Ratio,
        meaning: "Damage of a year of the study's duty at the detail that cracks first, for half of such details; 1 is a crack, \
                  0 where none cracks.",
    };
    let years = OfStudies {
        name: name::YEARS_TO_CRACK,
        words: "years to a crack",
        kind: Kind::Ratio,
        meaning: "Years of the study's duty until half of the details that crack first have cracked; none where none cracks.",
    };
    let bearing = OfStudies {
        name: name::BEARING_YEARS,
        words: "bearing life, years",
        kind: Kind::Ratio,
        meaning: "Years of the study's duty in the shortest life of a wheel bearing.",
    };
    [
        rating.read(Cost::Rating, Reader::Design(|d| d.rating)),
        damage.read(Cost::Life, Reader::Design(|d| Some(d.life?.damage))),
        years.read(Cost::Life, Reader::Design(|d| Some(d.life?.damage.recip()))),
        bearing.read(Cost::Life, Reader::Design(|d| d.life?.bearing_years)),
    ]
}

/// By how much less the wheel leans that leans most, rad.
fn removed(design: &Design, beside: &Beside) -> f64 {
    beside.camber_change.of_larger_magnitude().abs() - design.camber_change.of_larger_magnitude().abs()
}
