//! Supports, loads and masses of a beam file.

use axlebow_beam::{Load, PointMass, Span, StopSide, Support, SupportKind};
use axlebow_units::unit::STANDARD_GRAVITY;

use super::kind_keys::{KindKeys, check_keys};
use crate::build::Builder;
use crate::content::Table;

const SUPPORTS: &[KindKeys] = &[
    ("fixed", &[], &["settlement", "rotation"]),
    ("pinned", &[], &["settlement", "turning_stiffness"]),
    ("sliding", &[], &["rotation"]),
    ("elastic", &[], &["stiffness", "turning_stiffness", "settlement"]),
    ("stop-below", &[], &["gap", "stiffness"]),
    ("stop-above", &[], &["gap", "stiffness"]),
];

const LOADS: &[KindKeys] = &[
    ("force", &["at", "force"], &[]),
    ("moment", &["at", "moment"], &[]),
    ("distributed", &["per_length"], &["from", "to", "end_per_length"]),
    ("thermal", &["temperature_difference"], &["from", "to", "expansion", "depth"]),
    ("weight", &[], &[]),
];

impl Builder<'_> {
    /// The supports of the file.
    pub(super) fn supports(&mut self) -> Vec<Support> {
        self.root.tables("support").iter().filter_map(|table| self.beam_support(table)).collect()
    }

    fn beam_support(&mut self, table: &Table) -> Option<Support> {
        if !check_keys(table, "kind", SUPPORTS, &mut self.problems) {
            return None;
        }
        let value = |key| table.optional_number(key).unwrap_or(0.0);
        let (settlement, rotation) = (value("settlement"), value("rotation"));
        let (turning_stiffness, stiffness) = (value("turning_stiffness"), value("stiffness"));
        let stop = |side| SupportKind::Stop {
            side,
            gap: value("gap"),
            stiffness: table.optional_number("stiffness"),
        };
        let kind = match table.word("kind") {
            "fixed" => SupportKind::Fixed { settlement, rotation },
            "pinned" => SupportKind::Pinned { settlement, turning_stiffness },
            "sliding" => SupportKind::Sliding { rotation },
            "stop-below" => stop(StopSide::Below),
            "stop-above" => stop(StopSide::Above),
            _ => SupportKind::Elastic { stiffness, turning_stiffness, settlement },
        };
        if matches!(kind, SupportKind::Elastic { .. }) && stiffness == 0.0 && turning_stiffness == 0.0 {
            let accepted = "`stiffness`, `turning_stiffness` or both".to_owned();
            self.problems.push(
                table.span_of("kind"),
                "an elastic support without a stiffness holds nothing",
                Some(accepted),
            );
        }
        Some(Support { at: table.number("at"), kind })
    }

    /// The loads of the file on a beam of some spans.
    pub(super) fn beam_loads(&mut self, spans: &[Span]) -> Vec<Load> {
        self.root.tables("load").iter().filter_map(|table| self.beam_load(table, spans)).collect()
    }

    fn beam_load(&mut self, table: &Table, spans: &[Span]) -> Option<Load> {
        if !check_keys(table, "kind", LOADS, &mut self.problems) {
            return None;
        }
        let length: f64 = spans.iter().map(|span| span.length).sum();
        let value = |key| table.optional_number(key).unwrap_or(0.0);
        let (at, from) = (value("at"), value("from"));
        let to = table.optional_number("to").unwrap_or(length);
        Some(match table.word("kind") {
            "force" => Load::Force { at, force: value("force") },
            "moment" => Load::Moment { at, moment: value("moment") },
            "distributed" => {
                let start = value("per_length");
                let end = table.optional_number("end_per_length").unwrap_or(start);
                Load::Distributed { from, to, start, end }
            }
            "thermal" => {
                let depth = table.optional_number("depth").or_else(|| section_depth(spans, from));
                let Some(depth) = depth else {
                    let message = "the section has no depth over which the temperature could go";
                    self.problems.push(table.span_of("kind"), message, Some("a `depth`".to_owned()));
                    return None;
                };
                let strain = table.number("expansion") * value("temperature_difference");
                Load::Thermal { from, to, curvature: strain / depth }
            }
            _ => Load::Weight { gravity: STANDARD_GRAVITY },
        })
    }

    /// The masses of the file.
    pub(super) fn masses(&self) -> Vec<PointMass> {
        let made = |table: &Table| {
            let mass = table.number("mass");
            let radius = table.optional_number("radius_of_gyration").unwrap_or(0.0);
            PointMass { at: table.number("at"), mass, inertia: mass * radius * radius }
        };
        self.root.tables("mass").iter().map(made).collect()
    }
}

/// Depth of the section at a place.
fn section_depth(spans: &[Span], at: f64) -> Option<f64> {
    let mut start = 0.0;
    for span in spans {
        if at < start + span.length {
            return span.section_at(at - start).fibers.map(|[top, bottom]| top + bottom);
        }
        start += span.length;
    }
    None
}
