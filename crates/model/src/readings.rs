//! Shop readings from a sheet.

mod reading;
mod reading_sheet;
mod readings_file;
mod readings_heading;

pub use reading::{ReadQuantity, Reading};
pub use reading_sheet::ReadingSheet;
pub use readings_file::readings;
