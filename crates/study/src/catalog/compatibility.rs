//! Results of tires on axles.

use axlebow_results::{Field, Own, Part, Record, number, part};
use axlebow_units::Kind;

use crate::{CompatibilityOutcome, TireCell, TireColumn};

impl Record for CompatibilityOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("case", "Load case.", &Part(|table: &Self| &table.case)),
        part("axles", "Axles, one for each row.", &Part(|table: &Self| &table.axles)),
        part("columns", "Tires and offsets, one for each column.", &Part(|table: &Self| &table.columns)),
        part("cells", "For each axle each column.", &Part(|table: &Self| &table.cells)),
    ];
}

impl Record for TireColumn {
    const FIELDS: &'static [Field<Self>] = &[
        part("tire", "Name of the tire; null for the axles' own.", &Part(|column: &Self| &column.tire)),
        number(
            "offset",
            Kind::Length,
            "Offset of the wheels, positive outset; null for the axles' own.",
            &Part(|column: &Self| &column.offset),
        ),
    ];
}

impl Record for TireCell {
    const FIELDS: &'static [Field<Self>] = &[
        number("camber", Kind::Angle, "Camber against the road.", &Own(|cell: &Self| cell.camber)),
        part(
            "shoulder-rate",
            "How fast the inner shoulder uses its depth up, over the mean of the first axle on the first tire upright.",
            &Part(|cell: &Self| &cell.rate),
        ),
        part(
            "wear-against-upright",
            "Wear of the inner shoulder over that of the same rib upright and straight.",
            &Part(|cell: &Self| &cell.against_upright),
        ),
        part(
            "shoulder-wear-ratio",
            "Wear of the inner over the outer shoulder rib; null where the outer one does not wear.",
            &Part(|cell: &Self| &cell.shoulders),
        ),
    ];
}
