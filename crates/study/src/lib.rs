//! Runs sweeps of designs, variants side by side, causes apart and tires on axles, at rest and over roads; fits models to
//! shop readings; does not draw.
//!
//! ```text
//! study + model + road files --Study::from_bytes--> Study   (or Problems, before any work)
//! Study --point(i)--> Point                                 (a design: variant and varied values)
//! Study --run--> StudyOutcome                               (a row for each design, in order)
//! ```
//!
//! A design is the model with the variant's changes and the varied values set by their paths, read by the
//! rules of a model file, driven over each road of the study. What is asked of a design is declared once, in
//! [`QUANTITIES`]: reader, tables, pictures, JSON and CSV take names, words and units from there. A design that cannot be built or solved is a row with its reason.

mod catalog;
mod causes;
mod compatibility;
mod constant_mass;
mod derived;
mod design;
mod drawn_rides;
mod estimate;
mod files;
mod fit;
mod keys;
mod limit;
mod measure;
mod names;
mod natural;
mod option_keys;
mod outcome;
mod plan;
mod quantity;
mod read;
mod read_options;
mod read_sample;
mod read_search;
mod read_values;
mod read_vary;
mod ride;
mod run;
mod search;
mod seat_tables;
mod selection;
mod sensitivity;
mod setting;
mod solver;
mod store;
mod study;
mod summary;
mod uncertainty;
mod vary;
mod vary_keys;
mod warnings;

pub use axlebow_numerics::{Distribution, Estimated, Expression, Histogram, Index, Spread};

pub use causes::{
    Cause, CauseShare, CausesOutcome, Contribution, EndplayTilt, Subject, WheelCauses, causes, causes_over,
};
pub use compatibility::{Compatibility, CompatibilityOutcome, TableAxle, TireCell, TireColumn};
pub use derived::Derived;
pub use drawn_rides::{DrawnRide, DrawnRides, DrawnWheel};
pub use estimate::{DesignCost, threads};
pub use fit::{
    Estimate, FitError, FitOutcome, FittedReading, FittedUnknown, FurtherReading, Predicted, Scale, Unknown,
    estimate, fit, usual_unknowns,
};
pub use keys::STUDY;
pub use limit::Limit;
pub use measure::Measure;
pub use names::Named;
pub use natural::NaturalMode;
pub use outcome::{EqualMass, RideName, Row, StudyOutcome};
pub use plan::{Plan, Purpose, REPLICATES};
pub use quantity::{QUANTITIES, Quantity};
pub use ride::StudyRide;
pub use search::{FoundLimit, Goal, Proof, SearchOptions, SearchOutcome};
pub use seat_tables::table_folder;
pub use sensitivity::{KeySensitivity, SensitivityOutcome, SlopeBy, sensitivities};
pub use store::{
    Chunk, Earlier, Head, MOST_LISTED, Part, Results, ResultsFile, StoreError, WholeFile, unfinished_path,
};
pub use study::{MOST_DESIGNS, NoResult, Point, Study, StudyKind, Together, Variant};
pub use summary::{Failure, ReadingRange, StudySummary};
pub use uncertainty::{Uncertain, Uncertainty, UncertaintyOptions, VariantUncertainty};
pub use vary::{Choice, Link, Varied};
pub use warnings::{CountedWarning, DesignWarning};
