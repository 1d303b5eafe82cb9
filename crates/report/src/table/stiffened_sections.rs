//! Table of the sections with stiffeners.

use axlebow_units::{Kind, display_unit};

use super::grid::{Grid, on_one_floor};
use crate::StiffenedCard;
use crate::number::{Numbers, Shown, significant};

/// Sections that stand side by side.
const COLUMNS: usize = 3;

/// One column for each stiffened stretch, one row for each property.
pub(super) fn stiffened_sections(cards: &[StiffenedCard], numbers: Numbers) -> String {
    cards.chunks(COLUMNS).map(|some| format!("\n{}", table(some, numbers))).collect()
}

fn table(cards: &[StiffenedCard], numbers: Numbers) -> String {
    let names = cards.iter().map(|card| card.name().replace(" + ", "\n+ "));
    let heading: Vec<String> = ["Stiffened section".to_owned()].into_iter().chain(names).collect();
    let mut grid = Grid::new(1, on_one_floor(&heading));
    let mut row = |name: String, cell: &dyn Fn(&StiffenedCard) -> String| {
        grid.row([name].into_iter().chain(cards.iter().map(cell)));
    };
    row(numbers.heading("from y", Shown::Place), &|card| numbers.bare(card.stretch.to, Shown::Place));
    row(numbers.heading("to y", Shown::Place), &|card| numbers.bare(card.stretch.from, Shown::Place));
    for (name, kind, value) in PROPERTIES {
        let unit = display_unit(kind, numbers.system);
        row(format!("{name}, {}", unit.symbol), &|card| significant(value(card) / unit.factor, 4));
    }
    if let Some(stress) = cards.iter().find_map(|card| card.stress.as_ref()) {
        let place = numbers.heading(&format!("bent most in {} at y", stress.case), Shown::Place);
        row(place, &|card| {
            card.stress.as_ref().map_or("-".to_owned(), |own| numbers.bare(own.y, Shown::Place))
        });
        let most = cards.iter().map(|card| card.stretch.section.composite.parts().len()).max().unwrap_or(0);
        for part in 0..most {
            row(stress_name(part, most, numbers), &|card| stress_cell(card, part, numbers));
        }
    }
    grid.text()
}

fn stress_name(part: usize, most: usize, numbers: Numbers) -> String {
    let whose = match (part, most) {
        (0, _) => "stress in the axle".to_owned(),
        (_, 2) => "stress in the stiffener".to_owned(),
        _ => format!("stress in stiffener {part}"),
    };
    numbers.heading(&whose, Shown::Stress)
}

/// Lowest and highest stress in a part.
fn stress_cell(card: &StiffenedCard, part: usize, numbers: Numbers) -> String {
    card.extremes(part).map_or("-".to_owned(), |ends| {
        let [low, high] = ends.map(|(_, stress)| numbers.bare(stress, Shown::Stress));
        format!("{low} to {high}")
    })
}

type Property = fn(&StiffenedCard) -> f64;

const PROPERTIES: [(&str, Kind, Property); 9] = [
    ("area", Kind::Area, |card| card.stretch.section.area.area),
    ("second moment, vertical bending", Kind::SecondMoment, |card| card.stretch.section.area.second_moment_x),
    ("second moment, fore-aft bending", Kind::SecondMoment, |card| card.stretch.section.area.second_moment_z),
    ("product of inertia", Kind::SecondMoment, |card| {
        rounded(card.stretch.section.area.product_of_inertia, card)
    }),
    ("stiff axis from forward", Kind::Angle, stiff_axis),
    ("torsion constant", Kind::SecondMoment, |card| card.stretch.section.torsion_constant),
    ("centroid, forward", Kind::Length, |card| offset(card, 0)),
    ("centroid, up", Kind::Length, |card| offset(card, 1)),
    ("mass per length", Kind::MassPerLength, |card| card.stretch.section.mass_per_length),
];

/// Share of a section's size below which a number is round-off.
const ROUND_OFF: f64 = 1e-9;

fn offset(card: &StiffenedCard, axis: usize) -> f64 {
    let area = &card.stretch.section.area;
    let size = (area.polar_moment() / area.area).sqrt();
    if area.centroid[axis].abs() < ROUND_OFF * size { 0.0 } else { area.centroid[axis] }
}

fn stiff_axis(card: &StiffenedCard) -> f64 {
    let angle = card.stretch.section.area.principal_axes().angle;
    if angle.abs() < ROUND_OFF { 0.0 } else { angle }
}

fn rounded(moment: f64, card: &StiffenedCard) -> f64 {
    if moment.abs() < ROUND_OFF * card.stretch.section.area.polar_moment() { 0.0 } else { moment }
}
