//! The document of tires on axles, `axlebow/tire-table/1`.

use axlebow_study::{CompatibilityOutcome, TireCell, TireColumn};
use schemars::JsonSchema;
use serde::Serialize;

use super::{WarningEntry, pretty, schema_of};

/// Name and version of the document.
pub const TIRE_TABLE_SCHEMA: &str = "axlebow/tire-table/1";

/// The document of tires on axles as JSON text: pretty, ending in a new line.
pub fn compatibility_document(outcome: &CompatibilityOutcome) -> String {
    pretty(&TireTableDocument {
        schema: TIRE_TABLE_SCHEMA,
        case: outcome.case.clone(),
        axles: outcome.axles.clone(),
        columns: outcome.columns.iter().map(ColumnEntry::from).collect(),
        cells: outcome.cells.iter().map(|row| row.iter().map(CellEntry::from).collect()).collect(),
        warnings: outcome.warnings.iter().map(WarningEntry::from).collect(),
    })
}

/// The JSON Schema (2020-12) of the document of tires on axles.
pub fn compatibility_schema() -> String {
    schema_of::<TireTableDocument>(TIRE_TABLE_SCHEMA)
}

/// Tires on axles.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TireTableDocument {
    /// `axlebow/tire-table/1`.
    pub schema: &'static str,
    /// Load case.
    pub case: String,
    /// Axles, one for each row.
    pub axles: Vec<String>,
    /// Tires and offsets, one for each column.
    pub columns: Vec<ColumnEntry>,
    /// For each axle each column.
    pub cells: Vec<Vec<CellEntry>>,
    /// Doubts about the axles, each once, with the name of the first axle that has it.
    pub warnings: Vec<WarningEntry>,
}

/// A column.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ColumnEntry {
    /// Name of the tire; null for the axles' own.
    pub tire: Option<String>,
    /// Offset of the wheels, positive outset; null for the axles' own.
    pub offset_m: Option<f64>,
}

/// A cell.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CellEntry {
    /// Camber against the road.
    pub camber_rad: f64,
    /// How fast the inner shoulder uses its depth up, over the mean of the first axle on the first tire upright.
    pub shoulder_rate: Option<f64>,
    /// Wear of the inner shoulder over that of the same rib upright.
    pub against_upright: Option<f64>,
    /// Wear of the inner over the outer shoulder.
    pub inner_over_outer: Option<f64>,
}

impl From<&TireColumn> for ColumnEntry {
    fn from(column: &TireColumn) -> Self {
        ColumnEntry { tire: column.tire.clone(), offset_m: column.offset }
    }
}

impl From<&TireCell> for CellEntry {
    fn from(cell: &TireCell) -> Self {
        CellEntry {
            camber_rad: cell.camber,
            shoulder_rate: cell.rate,
            against_upright: cell.against_upright,
            inner_over_outer: cell.shoulders,
        }
    }
}
