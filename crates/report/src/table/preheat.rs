//! What each steel that is welded says about preheat.

use axlebow_axle::Preheat;

use super::flex::WIDTH;
use super::grid::paragraph;
use crate::number::fixed;

/// A line for each steel: its carbon equivalent and what to do; empty where nothing is welded.
pub(super) fn preheat(steels: &[Preheat]) -> String {
    if steels.is_empty() {
        return String::new();
    }
    let line = |steel: &Preheat| {
        let known = match steel.carbon_equivalent {
            Some(equivalent) => format!("carbon equivalent {} %", fixed(equivalent, 2)),
            None => "carbon equivalent not known".to_owned(),
        };
        paragraph(&format!("{}: {known}: {}.", steel.parts, steel.advice()), WIDTH, 2)
    };
    format!("\nPreheat before welding\n{}", steels.iter().map(line).collect::<String>())
}
