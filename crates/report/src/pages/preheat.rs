//! What each steel that is welded says about preheat.

use axlebow_axle::Preheat;
use axlebow_units::UnitSystem;

use crate::number::fixed;
use crate::page::Block;
use crate::words::preheat::temperature;

/// A line for each steel: its carbon equivalent and what to do; nothing where nothing is welded.
pub(super) fn preheat(steels: &[Preheat], system: UnitSystem) -> Vec<Block> {
    if steels.is_empty() {
        return Vec::new();
    }
    let line = |steel: &Preheat| {
        let known = match steel.carbon_equivalent {
            Some(equivalent) => format!("carbon equivalent {} %", fixed(equivalent, 2)),
            None => "carbon equivalent not known".to_owned(),
        };
        format!("{}: {known}: {}{}.", steel.parts, steel.advice(), temperature(steel, system))
    };
    vec![Block::heading("Preheat before welding"), Block::List(steels.iter().map(line).collect())]
}
