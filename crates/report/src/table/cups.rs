//! A cup count in words.

use axlebow_axle::CupsOutcome;
use axlebow_units::{Kind, UnitSystem, show};

use super::grid::{Grid, paragraph};
use crate::number::fixed;

/// Width of running text.
const WIDTH: usize = 98;

/// What a cup count says: the frequency, what a misread of one cup would do, and the modes near it.
///
/// `has_model` tells "no mode is near" from "no model was given".
pub fn cups(outcome: &CupsOutcome, has_model: bool, system: UnitSystem) -> String {
    let hertz = |value: f64| format!("{} Hz", fixed(value, 2));
    let shown = |value, kind| show(value, kind, system);
    let mut text = paragraph(
        &format!(
            "{} cups round a tire of {} rolling radius at {}: {} from cup to cup, {}; the wheel turns at {}.",
            outcome.count,
            shown(outcome.radius, Kind::Length),
            shown(outcome.speed, Kind::Speed),
            shown(outcome.spacing, Kind::Length),
            hertz(outcome.frequency),
            hertz(outcome.wheel_frequency)
        ),
        WIDTH,
        2,
    );
    let misread: Vec<String> = outcome.misread.iter().flatten().map(|value| hertz(*value)).collect();
    let sentence = format!("Had one cup been missed or counted twice, it would be {}.", misread.join(" or "));
    text.push_str(&paragraph(&sentence, WIDTH, 2));
    text.push('\n');
    if outcome.near.is_empty() {
        text.push_str(match has_model {
            true => "No mode of this axle lies within a quarter of that frequency.\n",
            false => "Give a model file to hold the frequency against the axle's modes.\n",
        });
        return text;
    }
    let mut grid = Grid::new(1, ["Mode near it", "frequency, Hz", "off by, %", "cups it would print"]);
    for mode in &outcome.near {
        let off = format!("{:+.1}", 100.0 * mode.off_by);
        grid.row([mode.name.clone(), fixed(mode.frequency, 2), off, fixed(mode.cups, 1)]);
    }
    text.push_str(&grid.text());
    text
}
