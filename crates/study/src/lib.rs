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
//! [`QUANTITIES`]: reader, tables, pictures, JSON and CSV take names, words and units from there. A design that cannot be
//! built or solved is a row with its reason.
//!
//! Folders, each of which may use those above it:
//!
//! ```text
//! ask          what a study asks, as data
//! solve        one design: its axle, solved, and the list of results
//! file         study files read and checked
//! findings     what a study says, as data
//! store        results of designs on disk
//! run          all designs on all cores, saved as they come
//! search       the best design within limits
//! fit          models fitted to readings
//! sensitivity  what a little more of each key does
//! rating       the load at which the first check binds
//! causes       what each part of an axle contributes
//! payback      whether a remedy pays
//! remedies     standard remedies and the user's own, tried and ranked
//! explain      causes of worn tires, ranked
//! across       tires across axles, a ride across random roads
//! ```

mod across;
mod ask;
mod catalog;
mod causes;
mod explain;
mod file;
mod findings;
mod fit;
mod payback;
mod rating;
mod remedies;
mod run;
mod search;
mod sensitivity;
mod solve;
mod store;

pub use across::{
    Compatibility, CompatibilityOutcome, DrawnRide, DrawnRides, DrawnWheel, TableAxle, TireCell, TireColumn,
};
pub use ask::{
    Choice, Derived, Limit, Link, MOST_DESIGNS, Named, Plan, Point, Purpose, REPLICATES, SearchOptions,
    Study, StudyDuty, StudyKind, StudyRide, Together, UncertaintyOptions, Variant, Varied,
};
pub use axlebow_numerics::{Distribution, Estimated, Expression, Histogram, Index, Spread};
pub use causes::{
    Cause, CauseShare, CausesOutcome, Contribution, EndplayTilt, Subject, WheelCauses, causes, causes_over,
};
pub use explain::{
    CauseOdds, Discrepancy, Evidence, EvidenceWeight, ExplainOutcome, FITS, LEADS, Library, NextCheck,
    Parameter, RankedCause, RankedPair, SeenRib, Size, SizeOf, TWO_AT_ONCE, Verdict, WearCause, WearPattern,
    Whereabouts, WornAxle, explain, explain_with, probabilities,
};
pub use file::STUDY;
pub use findings::{
    CountedWarning, DesignWarning, EqualMass, Failure, MOST_LISTED, ReadingRange, RideName, Row,
    StudyOutcome, StudySummary, Uncertain, Uncertainty, VariantUncertainty,
};
pub use fit::{
    Estimate, FitError, FitOutcome, FittedReading, FittedUnknown, FurtherReading, Predicted, Scale, Unknown,
    estimate, fit, usual_unknowns,
};
pub use payback::{
    AxleChange, Balance, BreakEven, CashFlowOutcome, DrawOptions, FleetTerms, MassTerms, PAYBACK,
    PaybackDraws, PaybackError, PaybackInput, PaybackOutcome, PaybackRange, PaybackStudy, PaybackTerms,
    PositionOutcome, PositionWear, RemedyTerms, Rotation, Swing, TirePosition, TireTerms,
};
pub use rating::{Lasting, Limiter, PartLoad, RatingOptions, RatingOutcome, RatingPoint, rating};
pub use remedies::{
    Binding, Change, CupGrowth, DoneBy, Money, OwnRemedy, REMEDIES, RankBy, RemediesOutcome, Remedy,
    RemedyOptions, Shoulder, ShoulderWear, Standard, Standing, State, StateOverRoad, StockAngle, TopAngle,
    Tried, WhyNot, own_remedies, remedies,
};
pub use run::{DesignCost, table_folder, threads};
pub use search::{FoundLimit, Goal, Proof, SearchOutcome};
pub use sensitivity::{KeySensitivity, SensitivityOutcome, SlopeBy, sensitivities};
pub use solve::{Cost, Measure, NaturalMode, NoResult, QUANTITIES, Quantity, name};
pub use store::{Chunk, Earlier, Head, Part, Results, ResultsFile, StoreError, WholeFile, unfinished_path};
