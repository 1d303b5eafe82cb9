//! What a study asks: variants of a model, the values that keys take, roads, further results and limits.

mod derived;
mod limit;
mod named;
mod plan;
mod ride;
mod search_options;
mod selection;
mod study;
mod study_duty;
mod uncertainty_options;
mod vary;

pub use derived::Derived;
pub use limit::Limit;
pub use named::Named;
pub use plan::{Plan, Purpose, REPLICATES};
pub use ride::StudyRide;
pub use search_options::SearchOptions;
pub(crate) use study::MOST_OF_ALL;
pub use study::{MOST_DESIGNS, Point, Study, StudyKind, Together, Variant};
pub use study_duty::StudyDuty;
pub use uncertainty_options::UncertaintyOptions;
pub use vary::{Choice, Link, Varied};
pub(crate) use vary::{last_word, of_road};
