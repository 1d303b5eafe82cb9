//! What a list of sections answers.

use axlebow_units::Kind;

use super::phrases::{percent, place, plain, several, value};
use crate::number::Numbers;
use crate::{ModelCard, SectionCard, StiffenedCard};

/// The section of least modulus in vertical bending, and what stiffeners add to second moment and mass.
pub fn section_answer(
    sections: &[SectionCard],
    stiffened: &[StiffenedCard],
    card: &ModelCard,
) -> Vec<String> {
    let n = Numbers { system: card.system };
    let stiffer = stiffened.iter().find_map(|own| stiffer(own, sections, n));
    weakest(sections, n).into_iter().chain(stiffer).collect()
}

fn weakest(sections: &[SectionCard], n: Numbers) -> Option<String> {
    let modulus = |card: &&SectionCard| card.properties.section_modulus_x();
    let least = sections.iter().min_by(|a, b| modulus(a).total_cmp(&modulus(b)))?;
    Some(format!(
        "Of {} the one that resists vertical bending least is the {} at {}: section modulus {}, second moment {}.",
        several(sections.len(), "section"),
        part(&least.name),
        place(least.reach[1], n),
        value(modulus(&least), Kind::SectionModulus, n),
        value(least.properties.second_moment_x, Kind::SecondMoment, n)
    ))
}

/// A section's name without its number.
fn part(name: &str) -> &str {
    name.trim_end_matches(|letter: char| letter.is_ascii_digit()).trim_end()
}

/// What stiffeners do to the section under the middle of a stretch; none where no section is known there.
fn stiffer(card: &StiffenedCard, sections: &[SectionCard], n: Numbers) -> Option<String> {
    let middle = 0.5 * (card.stretch.from + card.stretch.to).abs();
    let is_there = |own: &&SectionCard| {
        let [one, other] = own.reach.map(f64::abs);
        (one.min(other)..=one.max(other)).contains(&middle)
    };
    let bare = sections.iter().find(is_there)?;
    let (own, section) = (&card.stretch.section, &bare.properties);
    let added = own.area.second_moment_x / section.second_moment_x - 1.0;
    Some(format!(
        "With {} the {} has {} more second moment in vertical bending for {} more mass per length, if the weld held them as one.",
        plain(&card.stretch.stiffeners.join(" and ")),
        part(&bare.name),
        percent(added),
        value(own.mass_per_length - bare.mass_per_length, Kind::MassPerLength, n)
    ))
}
