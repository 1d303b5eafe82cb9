//! Solves the axle with every set of causes.

use std::sync::atomic::{AtomicUsize, Ordering};

use axlebow_axle::{Axle, AxleError, LoadCase, Ride, RideHistory, Side, Sides, StaticDesign, tires};
use axlebow_numerics::shapley;
use rayon::prelude::*;

use super::cause::Cause;
use super::outcome::{CauseShare, CausesOutcome, Contribution, EndplayTilt, Subject, WheelCauses};

/// Least and largest endplay that TMC RP 618 accepts, m.
const ACCEPTED: [f64; 2] = [0.025e-3, 0.127e-3];

/// What is told how far a run has come: how much is done, and of how much.
type Progress<'a> = &'a (dyn Fn(usize, usize) + Sync);

/// How the angles of an axle are read.
type Reading<'a> = &'a (dyn Fn(&Axle) -> Result<Angles, AxleError> + Sync);

/// Camber left and right, toe left and right, rad, against the line through the hubs.
type Angles = [f64; 4];

/// What each cause contributes to camber and toe against the line through the hubs in a load case.
///
/// A cause is removed by making its part rigid, tight or straight. The axle is solved with every set of its causes and
/// each share is the mean over all orders in which they could come in, so that no order is preferred; the shares and what
/// is left without any cause sum to the angle. The axle's rigid roll is none of them and stands beside them.
///
/// # Errors
/// As [`axlebow_axle::tires`].
pub fn causes(axle: &Axle, case: &LoadCase) -> Result<CausesOutcome, AxleError> {
    let solved = |axle: &Axle| StaticDesign::of(axle)?.case(case);
    let angles = |axle: &Axle| -> Result<Angles, AxleError> {
        let Sides { left, right } = solved(axle)?.wheels;
        Ok([left.camber, right.camber, left.toe, right.toe])
    };
    let subject = Subject::Standing { case: case.name.clone(), description: case.description.clone() };
    let warnings = tires(axle, std::slice::from_ref(case))?.warnings;
    let roll = solved(axle)?.axle_roll;
    let rigid_roll = Sides::each(|side| -side.sign() * roll);
    Ok(CausesOutcome { warnings, rigid_roll, ..split(axle, subject, (&angles, &|_, _| ()))? })
}

/// The same for the largest less the smallest camber and toe over a ride.
///
/// - `progress`: told after each axle how many are done, and of how many; by any thread
///
/// # Errors
/// As [`axlebow_axle::ride()`].
pub fn causes_over(axle: &Axle, ride: &Ride, progress: Progress<'_>) -> Result<CausesOutcome, AxleError> {
    let angles = |axle: &Axle| -> Result<Angles, AxleError> {
        let RideHistory { camber, toe, .. } = axlebow_axle::ride(axle, ride)?.history;
        Ok([extent(&camber.left), extent(&camber.right), extent(&toe.left), extent(&toe.right)])
    };
    let subject = Subject::Ride { name: ride.name.clone(), speed: ride.speed };
    let driven = axlebow_axle::ride(axle, ride)?;
    let roll = extent(&driven.history.roll);
    let rigid_roll = Sides { left: roll, right: roll };
    let warnings = driven.warnings;
    Ok(CausesOutcome { warnings, rigid_roll, ..split(axle, subject, (&angles, progress))? })
}

/// The largest less the smallest of some values.
fn extent(values: &[f64]) -> f64 {
    let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    most - values.iter().copied().fold(f64::INFINITY, f64::min)
}

fn split(
    axle: &Axle,
    subject: Subject,
    (angles, progress): (Reading<'_>, Progress<'_>),
) -> Result<CausesOutcome, AxleError> {
    let causes: Vec<Cause> = Cause::ALL.into_iter().filter(|cause| cause.is_in(axle)).collect();
    let sets: Vec<usize> = (0..1 << causes.len()).collect();
    let (done, of) = (AtomicUsize::new(0), sets.len() + 2 * causes.len());
    let counted = |axle: Result<Axle, AxleError>| {
        let angles = angles(&axle?);
        progress(done.fetch_add(1, Ordering::Relaxed) + 1, of);
        angles
    };
    let solve = |set: &usize| counted(with_set(axle, &causes, *set));
    let values: Vec<Angles> = sets.par_iter().map(solve).collect::<Result<_, _>>()?;
    let ends = causes.par_iter().flat_map_iter(|cause| [(*cause, true), (*cause, false)]);
    let moved: Vec<Angles> =
        ends.map(|(cause, up)| counted(cause.varied(axle, up))).collect::<Result<_, _>>()?;
    let contribution = |which: usize| {
        let of = |angles: &[Angles]| angles.iter().map(|angles| angles[which]).collect::<Vec<f64>>();
        contribution(&causes, &of(&values), &of(&moved))
    };
    Ok(CausesOutcome {
        subject,
        wheels: Sides {
            left: WheelCauses { camber: contribution(0), toe: contribution(2) },
            right: WheelCauses { camber: contribution(1), toe: contribution(3) },
        },
        endplay_tilt: Sides::each(|side| endplay_tilt(axle, side)),
        solved: values.len() + moved.len(),
        rigid_roll: Sides::default(),
        warnings: Vec::new(),
    })
}

/// The axle with the causes of a set alone.
fn with_set(axle: &Axle, causes: &[Cause], set: usize) -> Result<Axle, AxleError> {
    let out = causes.iter().enumerate().filter(|(i, _)| set >> i & 1 == 0);
    out.map(|(_, cause)| cause).try_fold(axle.clone(), |axle, cause| cause.removed(&axle))
}

/// The shares of one angle, from its value with every set of causes and with each input off by its tolerance.
fn contribution(causes: &[Cause], values: &[f64], moved: &[f64]) -> Contribution {
    let (rest, all) = (values[0], values.len() - 1);
    let shares = shapley(values).into_iter().enumerate().map(|(i, share)| CauseShare {
        cause: causes[i],
        share,
        alone: values[1 << i] - rest,
        removing: values[all] - values[all & !(1 << i)],
        uncertainty: 0.5 * (moved[2 * i] - moved[2 * i + 1]).abs(),
    });
    Contribution { shares: shares.collect(), rest, total: values[all] }
}

fn endplay_tilt(axle: &Axle, side: Side) -> EndplayTilt {
    let end = axle.wheel_ends.of(side);
    let tilt = |endplay: f64| endplay * end.cup_angle.tan() / (end.outer_bearing - end.inner_bearing);
    EndplayTilt { own: tilt(end.endplay), accepted: ACCEPTED.map(tilt) }
}
