//! Shop readings from a sheet.

mod measured_ride;
mod reading;
mod reading_sheet;
mod readings_file;
mod readings_heading;
mod removals_file;
mod removals_heading;
mod sheet_row;

pub use measured_ride::{MeasuredRide, MeasuredSeries, RideQuantity};
pub use reading::{ReadQuantity, Reading, RemovedRib};
pub use reading_sheet::ReadingSheet;
pub use readings_file::readings;
