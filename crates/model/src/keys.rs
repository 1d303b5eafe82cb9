//! The keys of model, road, duty and tire files.

mod beam_keys;
mod case_keys;
mod duty_keys;
mod material_keys;
mod model_keys;
mod road_keys;
mod running_keys;
mod side_key;
mod stiffener_keys;
mod strength_keys;
mod tread_keys;
mod wheel_end_keys;
mod wheel_keys;

pub use beam_keys::BEAM;
pub use case_keys::CASE;
pub use duty_keys::DUTY;
pub use model_keys::MODEL;
pub use road_keys::ROAD;
pub(crate) use stiffener_keys::STIFFENER;
pub use tread_keys::TIRE;
