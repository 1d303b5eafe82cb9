//! What a ride does to the tire faces: wear along it and round the tires, and the cups that it prints.

use axlebow_tread::{AlongRide, Cups, Passed, Pose, RideWear, Suspect, cups, wheel_frequency};

use crate::outcome::Warning;
use crate::riding::tracks::track;
use crate::tires::cup_suspects::{mode_suspects, road_suspect};
use crate::{Axle, AxleError, Ride, RideOutcome, Side, Sides, modes};

/// Parts into which a tire's circumference is cut: five degrees each.
const PARTS: usize = 72;
/// Most cups that are looked for.
const MOST_CUPS: u16 = 24;
/// Modes that may have printed cups.
const MODES: usize = 16;
/// Half of crest less trough, over the mean wear, below which nobody would see cups (a judgment, no source).
const VISIBLE: f64 = 0.02;

/// Result of [`tires_over`].
#[derive(Debug, Clone, PartialEq)]
pub struct TireRideOutcome {
    /// Name of the ride.
    pub name: String,
    /// Speed, m/s.
    pub speed: f64,
    /// Whether the road comes back, as a washboard does, and may be in step with the wheel.
    pub comes_back: bool,
    /// Each wheel end.
    pub wheels: Sides<TireRide>,
    /// Things that the reader must know, each with what to do.
    pub warnings: Vec<Warning>,
}

/// The tire face of one wheel end over a ride.
#[derive(Debug, Clone, PartialEq)]
pub struct TireRide {
    /// Least, mean and greatest camber against the road, rad.
    pub camber: [f64; 3],
    /// Wear along the ride and round the tires.
    pub wear: RideWear,
    /// The strongest wave of wear round the most worn rib; none where the ride is shorter than a turn of the tire.
    pub wave: Option<PrintedWave>,
}

/// A wave of wear round a tire.
#[derive(Debug, Clone, PartialEq)]
pub struct PrintedWave {
    /// Number of its tire, the outermost 0.
    pub tire: usize,
    /// Number of its rib, the inner shoulder 0.
    pub rib: usize,
    /// Half of crest less trough over the mean wear.
    pub amplitude: f64,
    /// Whether it stands out enough to be seen as cups.
    pub visible: bool,
    /// Count, spacing, frequency and what may have printed it.
    pub cups: Cups,
}

/// Wear of every tire face over a ride that was driven.
///
/// # Errors
/// [`AxleError::Tread`] for a ride without distance, or a wheel that leans or steers by more than 0.2 rad; as
/// [`crate::modes()`].
pub fn tires_over(axle: &Axle, ride: &Ride, driven: &RideOutcome) -> Result<TireRideOutcome, AxleError> {
    let found = modes(axle, ride.axle_load, MODES)?;
    let suspects = mode_suspects(&driven.movable(&found.modes));
    let of_side = |side: Side| -> Result<TireRide, AxleError> {
        let passed = passed(axle, driven, side);
        let wear = worn(axle, &passed, side)?;
        let own = suspects.iter().cloned().chain(road_suspect(track(&ride.road, side), ride.speed));
        let wave = printed(&wear, ride.speed, own.collect())?;
        Ok(TireRide { camber: extent(&passed), wear, wave })
    };
    let wheels = Sides { left: of_side(Side::Left)?, right: of_side(Side::Right)? };
    let comes_back =
        Side::BOTH.iter().any(|side| road_suspect(track(&ride.road, *side), ride.speed).is_some());
    let warnings = driven.warnings.iter().cloned().chain(once(&wheels, comes_back)).collect();
    Ok(TireRideOutcome { name: driven.name.clone(), speed: driven.speed, comes_back, wheels, warnings })
}

/// Wear of every tire face over a ride that was driven, as [`tires_over`] has it, without what may have printed it.
///
/// # Errors
/// [`AxleError::Tread`] for a ride without distance, or a wheel that leans or steers by more than 0.2 rad.
pub fn wear_over(axle: &Axle, driven: &RideOutcome) -> Result<Sides<RideWear>, AxleError> {
    let of_side = |side: Side| worn(axle, &passed(axle, driven, side), side);
    Ok(Sides { left: of_side(Side::Left)?, right: of_side(Side::Right)? })
}

fn worn(axle: &Axle, passed: &[Passed], side: Side) -> Result<RideWear, AxleError> {
    Ok(axle.tire_face(side)?.worn_along(passed, AlongRide { parts: PARTS })?)
}

/// How the hub of a side stands on the road as the ride goes on.
fn passed(axle: &Axle, driven: &RideOutcome, side: Side) -> Vec<Passed> {
    let (end, history) = (axle.wheel_ends.of(side), &driven.history);
    let pose = |i: usize| Pose {
        load: history.load.of(side)[i],
        camber: end.camber + history.camber.of(side)[i] - side.sign() * history.roll[i],
        toe: end.toe + history.toe.of(side)[i] + axle.skew_toe(side),
    };
    let distances = history.distance.iter().enumerate();
    distances.map(|(i, distance)| Passed { distance: *distance, pose: pose(i) }).collect()
}

fn extent(passed: &[Passed]) -> [f64; 3] {
    let camber = || passed.iter().map(|moment| moment.pose.camber);
    let mean = camber().sum::<f64>() / passed.len().max(1) as f64;
    [camber().fold(f64::INFINITY, f64::min), mean, camber().fold(f64::NEG_INFINITY, f64::max)]
}

fn printed(wear: &RideWear, speed: f64, suspects: Vec<Suspect>) -> Result<Option<PrintedWave>, AxleError> {
    let (tire, rib) = wear.mean.most_worn();
    let Some(wave) = wear.round[tire].strongest(rib, MOST_CUPS) else { return Ok(None) };
    let turns = wheel_frequency(speed, wear.mean.radius);
    let all = suspects.into_iter().chain([Suspect::round_wheel(wave.count, turns)]).collect();
    let cups = cups(wave.count, speed, wear.mean.radius, all)?;
    Ok(Some(PrintedWave { tire, rib, amplitude: wave.amplitude, visible: wave.amplitude >= VISIBLE, cups }))
}

/// Says that one event does not make cups by itself.
fn once(wheels: &Sides<TireRide>, comes_back: bool) -> Option<Warning> {
    let waves = wheels.left.wave.is_some() || wheels.right.wave.is_some();
    (waves && !comes_back).then(|| Warning {
        text: "this road does not come back in step with the wheel; it shows where one pass leaves wear"
            .to_owned(),
        advice: "take the wave round the tire as what the axle tends to print, not as cups that are there"
            .to_owned(),
    })
}
