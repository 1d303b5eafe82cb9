//! Words of cups that grow which answers, tables and pictures share.

use axlebow_axle::{GrowthOutcome, RibPlace, Side, WheelGrowth};
use axlebow_units::{Kind, show};

use super::tire::tire_name;
use crate::number::{Numbers, fixed, significant};

/// Share of a mode's frequency within which it is named beside a wave.
const NEAR: f64 = 0.2;

/// A rib, such as "inner shoulder of the inner tire".
pub(crate) fn rib_words(place: RibPlace, tires: usize) -> String {
    let RibPlace { tire, rib, of } = place;
    let name = match rib {
        0 => "inner shoulder".to_owned(),
        last if last + 1 == of => "outer shoulder".to_owned(),
        _ => format!("rib {} from the inside", rib + 1),
    };
    if tires == 1 { name } else { format!("{name} of the {} tire", tire_name(tire, tires)) }
}

/// The speeds that a fleet holds, such as "100 km/h (standard deviation 4 km/h)".
pub(crate) fn held_words(outcome: &GrowthOutcome, n: Numbers) -> String {
    let [mean, deviation] =
        [outcome.held.mean, outcome.held.deviation].map(|own| show(own, Kind::Speed, n.system));
    if outcome.held.deviation == 0.0 { mean } else { format!("{mean} (standard deviation {deviation})") }
}

/// Amplification while so much of the tread wears off, such as "1.20".
pub(crate) fn amplified(rate: f64, worn: f64) -> String {
    let times = (rate * worn).exp();
    if times < 100.0 { fixed(times, if times < 10.0 { 3 } else { 1 }) } else { significant(times, 2) }
}

/// The nearest mode that a wave of the axle's frequency may move, such as "axle tramp, 17.9 Hz"; none where none is near.
pub(crate) fn mode_near(outcome: &GrowthOutcome, frequency: f64) -> Option<String> {
    let off = |mode: &&axlebow_axle::ModeOutcome| (mode.frequency / frequency - 1.0).abs();
    let near = outcome.modes.iter().filter(|mode| off(mode) <= NEAR);
    let mode = near.min_by(|a, b| off(a).total_cmp(&off(b)))?;
    Some(format!("{}, {} Hz", mode.name, significant(mode.frequency, 3)))
}

/// Side of a wheel end, or that both are alike.
pub(crate) fn whose(outcome: &GrowthOutcome, side: Side) -> &'static str {
    let rate = |wheel: &WheelGrowth| wheel.winner().wave.rate;
    let [left, right] = [rate(&outcome.wheels.left), rate(&outcome.wheels.right)];
    if (left - right).abs() <= 1e-3 * left.abs().max(right.abs()) { "either wheel end" } else { side.word() }
}

/// Where a wheel's camber lies against the camber from which a shoulder feeds on itself.
pub(crate) fn camber_words(wheel: &WheelGrowth, n: Numbers) -> String {
    if wheel.critical.is_upright() {
        return "upright".to_owned();
    }
    wheel.critical_camber().map_or("-".to_owned(), |camber| n.bare(camber, Kind::Angle))
}

/// A number of cups, such as "2 cups".
pub(crate) fn cups(count: u16) -> String {
    if count == 1 { "1 cup".to_owned() } else { format!("{count} cups") }
}
