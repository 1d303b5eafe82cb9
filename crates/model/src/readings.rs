//! Shop readings from a sheet.

mod reading;
mod readings_file;
mod readings_heading;

pub use reading::{ReadQuantity, Reading};
pub use readings_file::readings;
