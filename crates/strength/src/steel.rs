//! What a steel asks of whoever welds it.

mod composition;
mod heat_affected_zone;
mod preheat;
mod preheat_temperature;

pub use composition::Composition;
pub use heat_affected_zone::HeatAffectedZone;
pub use preheat::{PreheatNeed, preheat, preheat_check};
pub use preheat_temperature::{PREHEAT_METHOD, WeldHeat, preheat_temperature};
