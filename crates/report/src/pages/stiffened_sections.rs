//! Table of the sections with stiffeners.

use axlebow_units::Kind;

use crate::StiffenedCard;
use crate::number::{Numbers, Shown};
use crate::page::{Block, Column, Table};

/// Sections that stand side by side.
const COLUMNS: usize = 3;

/// One column for each stiffened stretch, one row for each property.
pub(super) fn stiffened_sections(cards: &[StiffenedCard], numbers: Numbers) -> Vec<Block> {
    cards.chunks(COLUMNS).map(|some| Block::Table(table(some, numbers))).collect()
}

fn table(cards: &[StiffenedCard], numbers: Numbers) -> Table {
    let names = cards.iter().map(|card| Column::plain(card.name()));
    let mut table = Table::new([Column::words("Stiffened section")].into_iter().chain(names));
    let mut row = |name: String, cell: &dyn Fn(&StiffenedCard) -> String| {
        table.add_row([name].into_iter().chain(cards.iter().map(cell)));
    };
    row(numbers.heading("from y", Shown::Place), &|card| numbers.bare(card.stretch.to, Shown::Place));
    row(numbers.heading("to y", Shown::Place), &|card| numbers.bare(card.stretch.from, Shown::Place));
    for (name, kind, value) in PROPERTIES {
        row(numbers.heading(name, kind), &|card| {
            value(card).map_or("-".to_owned(), |value| numbers.bare(value, Shown::Free(kind)))
        });
    }
    if let Some(stress) = cards.iter().find_map(|card| card.stress.as_ref()) {
        let place = numbers.heading(&format!("bent most in {} at y", stress.case), Shown::Place);
        row(place, &|card| {
            card.stress.as_ref().map_or("-".to_owned(), |own| numbers.bare(own.own.y, Shown::Place))
        });
        let most = cards.iter().map(|card| card.stretch.section.composite.parts().len()).max().unwrap_or(0);
        for part in 0..most {
            row(stress_name(part, most, numbers), &|card| stress_cell(card, part, numbers));
        }
    }
    table
}

fn stress_name(part: usize, most: usize, numbers: Numbers) -> String {
    let whose = match (part, most) {
        (0, _) => "stress in the axle".to_owned(),
        (_, 2) => "stress in the stiffener".to_owned(),
        _ => format!("stress in stiffener {part}"),
    };
    numbers.heading(&whose, Kind::Stress)
}

/// Lowest and highest stress in a part.
fn stress_cell(card: &StiffenedCard, part: usize, numbers: Numbers) -> String {
    card.extremes(part).map_or("-".to_owned(), |ends| {
        let [low, high] = ends.map(|(_, stress)| numbers.bare(stress, Kind::Stress));
        format!("{low} to {high}")
    })
}

/// None where it is not reckoned.
type Property = fn(&StiffenedCard) -> Option<f64>;

const PROPERTIES: [(&str, Kind, Property); 11] = [
    ("area", Kind::Area, |card| Some(card.stretch.section.area.area)),
    ("second moment, vertical bending", Kind::SecondMoment, |card| {
        Some(card.stretch.section.area.second_moment_x)
    }),
    ("second moment, fore-aft bending", Kind::SecondMoment, |card| {
        Some(card.stretch.section.area.second_moment_z)
    }),
    ("product of inertia", Kind::SecondMoment, |card| Some(product_of_inertia(card))),
    ("stiff axis from forward", Kind::Angle, |card| Some(stiff_axis(card))),
    ("torsion constant", Kind::SecondMoment, |card| Some(card.stretch.section.torsion_constant)),
    ("centroid, forward", Kind::Length, |card| Some(offset(card, card.stretch.section.area.centroid[0]))),
    ("centroid, up", Kind::Length, |card| Some(offset(card, card.stretch.section.area.centroid[1]))),
    ("shear center, forward", Kind::Length, |card| {
        card.stretch.section.shear_center.map(|[x, _]| offset(card, x))
    }),
    ("shear center, up", Kind::Length, |card| {
        card.stretch.section.shear_center.map(|[_, z]| offset(card, z))
    }),
    ("mass per length", Kind::MassPerLength, |card| Some(card.stretch.section.mass_per_length)),
];

/// Share of a section's size below which a number is round-off.
const ROUND_OFF: f64 = 1e-9;

fn offset(card: &StiffenedCard, place: f64) -> f64 {
    let area = &card.stretch.section.area;
    let size = (area.polar_moment() / area.area).sqrt();
    if place.abs() < ROUND_OFF * size { 0.0 } else { place }
}

fn stiff_axis(card: &StiffenedCard) -> f64 {
    let angle = card.stretch.section.area.principal_axes().angle;
    if angle.abs() < ROUND_OFF { 0.0 } else { angle }
}

fn product_of_inertia(card: &StiffenedCard) -> f64 {
    let area = &card.stretch.section.area;
    if area.product_of_inertia.abs() < ROUND_OFF * area.polar_moment() {
        0.0
    } else {
        area.product_of_inertia
    }
}
