//! Table of the sections along the axle.

use axlebow_axle::Warning;
use axlebow_sections::{Profile, SectionProperties};
use axlebow_units::Kind;

use super::notes::warnings;
use super::stiffened_sections::stiffened_sections;
use crate::answer::section_answer;
use crate::number::{Numbers, Shown};
use crate::page::{Block, Column, Page, Table};
use crate::{ModelCard, SectionCard, StiffenedCard};

/// Sections that stand side by side.
const BESIDE: usize = 5;

/// The sections along the axle: one column for each, one row for each property.
///
/// Stretches with stiffeners follow in tables of their own, doubts about the load case whose stress they have, and then what
/// must be said before anybody welds.
pub fn sections(
    sections: &[SectionCard],
    stiffened: &[StiffenedCard],
    doubts: &[Warning],
    card: &ModelCard,
) -> Page {
    let own = SectionTable { numbers: Numbers { system: card.system } };
    let mut page = Page::of_model(card, section_answer(sections, stiffened, card));
    page.extend(sections.chunks(BESIDE).map(|some| Block::Table(own.table(some))));
    page.extend(stiffened_sections(stiffened, own.numbers));
    page.extend(warnings(doubts));
    page.extend((!stiffened.is_empty()).then(super::cautions::welding));
    page
}

struct SectionTable {
    numbers: Numbers,
}

impl SectionTable {
    fn table(&self, sections: &[SectionCard]) -> Table {
        let names = sections.iter().map(|section| Column::plain(section.name.clone()));
        let mut table = Table::new([Column::words("Section")].into_iter().chain(names));
        let mut row = |name: String, cell: &dyn Fn(&SectionCard) -> String| {
            table.add_row([name].into_iter().chain(sections.iter().map(cell)));
        };
        for (name, end) in [("from y", 0), ("to y", 1)] {
            row(self.numbers.heading(name, Shown::Place), &|s| self.numbers.bare(s.reach[end], Shown::Place));
        }
        row("kind".to_owned(), &|s| kind(&s.profile).to_owned());
        let size = |length: f64| self.numbers.bare(length, Shown::Free(Kind::Length));
        row(self.numbers.heading("width", Shown::Place), &|s| size(s.profile.width()));
        row(self.numbers.heading("height", Shown::Place), &|s| size(s.profile.height()));
        row(self.numbers.heading("wall", Shown::Place), &|s| {
            wall(&s.profile).map_or("solid".to_owned(), size)
        });
        for (name, kind, value) in PROPERTIES {
            row(self.numbers.heading(name, kind), &|s| self.numbers.bare(value(&s.properties), kind));
        }
        row(self.numbers.heading("mass per length", Kind::MassPerLength), &|s| {
            self.numbers.bare(s.mass_per_length, Kind::MassPerLength)
        });
        table
    }
}

type Property = fn(&SectionProperties) -> f64;

const PROPERTIES: [(&str, Kind, Property); 8] = [
    ("area", Kind::Area, |p| p.area),
    ("second moment, vertical bending", Kind::SecondMoment, |p| p.second_moment_x),
    ("second moment, fore-aft bending", Kind::SecondMoment, |p| p.second_moment_z),
    ("torsion constant", Kind::SecondMoment, |p| p.torsion_constant),
    ("section modulus, vertical", Kind::SectionModulus, |p| p.section_modulus_x()),
    ("section modulus, fore-aft", Kind::SectionModulus, |p| p.section_modulus_z()),
    ("shear coefficient, vertical", Kind::Ratio, |p| p.shear_coefficient_z),
    ("shear coefficient, fore-aft", Kind::Ratio, |p| p.shear_coefficient_x),
];

/// Kind of a section in few letters.
fn kind(profile: &Profile) -> &'static str {
    match profile {
        Profile::RectangularTube(_) => "box",
        Profile::RoundTube(_) => "round tube",
        Profile::RoundBar(_) => "round bar",
    }
}

/// Wall of a tube, m.
fn wall(profile: &Profile) -> Option<f64> {
    match profile {
        Profile::RoundTube(tube) => Some(tube.wall()),
        Profile::RoundBar(_) => None,
        Profile::RectangularTube(tube) => Some(tube.wall()),
    }
}
