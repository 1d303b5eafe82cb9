//! Words that answers, pages and pictures share.

pub(crate) mod causes;
pub(crate) mod compatibility;
pub(crate) mod explain;
pub(crate) mod findings;
pub(crate) mod fit;
pub(crate) mod growth;
mod guided;
mod own_case;
pub(crate) mod payback;
pub(crate) mod preheat;
pub(crate) mod remedies;
pub(crate) mod response;
pub(crate) mod search;
pub(crate) mod seat;
mod station;
pub(crate) mod study;
pub(crate) mod tire;
pub(crate) mod uncertainty;
pub(crate) mod warning;
mod wrapped;

pub use explain::{CauseInWords, next_checks};
pub use findings::study_findings;
pub use guided::{GuidedWords, guided_words};
pub(crate) use station::station_name;
pub(crate) use wrapped::wrapped;
