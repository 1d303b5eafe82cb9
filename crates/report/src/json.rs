//! Result documents as JSON: SI units named in the keys, one schema version each.

mod causes;
mod compatibility;
mod cups;
mod fit;
mod flex;
mod modes;
mod preheat;
mod response;
mod ride;
mod search;
mod seat_wall;
mod section;
mod sensitivities;
mod stiffening;
mod strength;
mod study;
mod study_summary;
mod textbook;
mod tire;
mod uncertainty;

pub use flex::{
    AssumedEntry, BearingEntry, CaseEntry, ContactEntry, FLEX_SCHEMA, FlexDocument, ModelEntry, SeatEntry,
    SeatsEntry, SplitEntry, StationEntry, WarningEntry, WheelEntry, WheelsEntry, flex_document, flex_schema,
};

pub use causes::{
    CAUSES_SCHEMA, CauseEntry, CausesDocument, ContributionEntry, SubjectEntry, WheelCausesEntry,
    WobbleEntry, causes_document, causes_schema,
};
pub use compatibility::{
    CellEntry, ColumnEntry, TIRE_TABLE_SCHEMA, TireTableDocument, compatibility_document,
    compatibility_schema,
};
pub use cups::{CupsEntry, ExplanationEntry, cups_document, cups_schema};
pub use fit::{
    FIT_SCHEMA, FitDocument, FittedReadingEntry, FittedUnknownEntry, FurtherReadingEntry, fit_document,
    fit_schema,
};
pub use modes::{
    BodyEntry, CamberEntry, MODES_SCHEMA, ModeEntry, ModesDocument, MotionEntry, ShapeEntry, StrainEntry,
    modes_document, modes_schema,
};
pub use preheat::PreheatEntry;
pub use response::{
    ByWheel, RESPONSE_SCHEMA, RandomAnswerEntry, RandomEntry, ResonanceEntry, ResponseDocument, StressEntry,
    TransferEntry, response_document, response_schema,
};
pub use ride::{
    BasisComparisonEntry, BesideFullEntry, RIDE_SCHEMA, RideDocument, RideMethodEntry, RideWheelEntry,
    RideWheelsEntry, SpectrumEntry, StationPeakEntry, ride_document, ride_schema,
};
pub use search::{
    DesignEntry, FoundLimitEntry, ProofEntry, SEARCH_SCHEMA, SearchDocument, search_document, search_schema,
};
pub use seat_wall::{SeatWallEntry, SeatWallsEntry};
pub use section::{section_document, section_schema};
pub use sensitivities::{
    ReadingsEntry, RefusedEntry, SENSITIVITIES_SCHEMA, SensitivitiesDocument, SensitivityCaseEntry,
    SensitivityEntry, sensitivities_document, sensitivities_schema,
};
pub use stiffening::{AxialForceEntry, StiffenerEntry, StiffeningEntry, WeldForceEntry};
pub use strength::{
    CheckEntry, STRENGTH_SCHEMA, StrengthCaseEntry, StrengthDocument, WeldBandEntry, WeldUseEntry,
    strength_document, strength_schema,
};
pub use study::{
    EqualMassEntry, QuantitiesEntry, QuantityEntry, ResultsEntry, RideNameEntry, RowEntry, STUDY_SCHEMA,
    StudyDocument, VariedEntry, study_document, study_schema,
};
pub use study_summary::{DesignWarningEntry, FailureEntry, PointEntry, RangeEntry, SummaryEntry};
pub use textbook::{textbook_document, textbook_schema};
pub use tire::{
    BySide, FaceEntry, FaceTireEntry, RibEntry, RideFaceEntry, TIRE_SCHEMA, TireCaseEntry, TireDocument,
    TireRideEntry, WaveEntry, tire_document, tire_schema,
};

pub use uncertainty::{
    EstimatedEntry, IndexEntry, PercentileEntry, UncertainEntry, UncertaintyEntry, VariantUncertaintyEntry,
};

use crate::ModelCard;
use crate::card::PROGRAM;

/// Which model a document is about.
fn model(card: &ModelCard) -> ModelEntry {
    ModelEntry {
        name: card.name.clone(),
        hash: card.hash.clone(),
        program: PROGRAM,
        settings: card.settings.clone(),
        invented: card.invented,
        invented_inputs: card.invented_inputs.iter().map(|input| input.word()).collect(),
    }
}

/// Defaults that a document's model uses.
fn assumed(card: &ModelCard) -> Vec<AssumedEntry> {
    let entries = card.assumed.iter().map(|used| AssumedEntry {
        path: used.path.clone(),
        value: used.value.clone(),
        meaning: used.meaning.clone(),
    });
    entries.collect()
}

/// The JSON Schema (2020-12) of a document with a tag, as JSON text.
fn schema_of<T: schemars::JsonSchema>(tag: &str) -> String {
    let mut schema = schemars::SchemaGenerator::default().into_root_schema_for::<T>();
    if let Some(serde_json::Value::Object(entry)) = schema.pointer_mut("/properties/schema") {
        entry.insert("const".to_owned(), tag.into());
    }
    pretty(&schema)
}

/// Pretty JSON that ends in a new line.
fn pretty<T: serde::Serialize>(document: &T) -> String {
    let mut text = serde_json::to_string_pretty(document).expect("these structs have text keys only");
    text.push('\n');
    text
}
