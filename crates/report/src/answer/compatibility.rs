//! What a table of tires on axles answers.

use axlebow_study::CompatibilityOutcome;

use crate::ModelCard;
use crate::number::Numbers;
use crate::words::compatibility::column_name;
use crate::words::tire::index;

/// The pairs whose inner shoulder wears least and most against upright.
pub fn compatibility_answer(outcome: &CompatibilityOutcome, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let mut cells: Vec<(String, f64)> = Vec::new();
    for (i, row) in outcome.cells.iter().enumerate() {
        for (column, cell) in outcome.columns.iter().zip(row) {
            let name = format!("axle ({}) with {}", i + 1, column_name(column, n));
            cells.extend(cell.against_upright.map(|wear| (name, wear)));
        }
    }
    cells.sort_by(|a, b| a.1.total_cmp(&b.1));
    let none = "No tire wears upright, so that nothing can be compared with it; state a duty that asks for some force.";
    let (Some(best), Some(worst)) = (cells.first(), cells.last()) else { return vec![none.to_owned()] };
    let pair = |(name, wear): &(String, f64)| {
        let times = index(Some(*wear));
        format!("{name}, whose inner shoulder wears {times} times as fast as upright")
    };
    let relative = "These numbers are relative, no promise of mileage.".to_owned();
    if cells.len() == 1 {
        return vec![format!("The only pair is {}.", pair(best)), relative];
    }
    vec![format!("Most forgiving: {}.", pair(best)), format!("Least forgiving: {}.", pair(worst)), relative]
}
