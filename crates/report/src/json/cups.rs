//! The document of a cup count, `axlebow/cups/1`.

use axlebow_axle::CupsOutcome;
use serde::Serialize;

use super::pretty;

#[derive(Serialize)]
struct CupsDocument<'a> {
    schema: &'static str,
    count: u16,
    speed_m_s: f64,
    tire_radius_m: f64,
    spacing_m: f64,
    frequency_hz: f64,
    frequency_if_one_fewer_hz: Option<f64>,
    frequency_if_one_more_hz: Option<f64>,
    wheel_frequency_hz: f64,
    near_modes: Vec<NearModeEntry<'a>>,
}

#[derive(Serialize)]
struct NearModeEntry<'a> {
    name: &'a str,
    frequency_hz: f64,
    off_by: f64,
    cups_per_turn: f64,
}

/// A cup count as JSON text.
pub fn cups_document(outcome: &CupsOutcome) -> String {
    let [fewer, more] = outcome.misread;
    let near = outcome.near.iter().map(|mode| NearModeEntry {
        name: &mode.name,
        frequency_hz: mode.frequency,
        off_by: mode.off_by,
        cups_per_turn: mode.cups,
    });
    pretty(&CupsDocument {
        schema: "axlebow/cups/1",
        count: outcome.count,
        speed_m_s: outcome.speed,
        tire_radius_m: outcome.radius,
        spacing_m: outcome.spacing,
        frequency_hz: outcome.frequency,
        frequency_if_one_fewer_hz: fewer,
        frequency_if_one_more_hz: more,
        wheel_frequency_hz: outcome.wheel_frequency,
        near_modes: near.collect(),
    })
}
