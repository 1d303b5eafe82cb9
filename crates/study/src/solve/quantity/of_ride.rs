//! Results of a ride.

use axlebow_axle::{CamberSplit, RideWheel};
use axlebow_results::{Field, Record, field, within_a_sentence};
use axlebow_units::Kind;

use super::{Cost, OfStudies, Quantity, Reader, Says};

pub(super) fn quantities() -> Vec<Quantity> {
    let stress = OfStudies {
        name: "ride-peak-stress",
        words: "peak stress",
        kind: Kind::Stress,
        meaning: "Largest extreme-fiber stress along the axle in the ride, of either sign: both come in turn.",
    };
    let mut all = vec![
        of_wheel(const { field("dynamic-load-factor") }, "dynamic load factor", Says::Larger),
        of_wheel(const { field("dynamic-load-coefficient") }, "load coefficient", Says::Larger),
        of_wheel(const { field("time-off-road") }, "time off road", Says::Larger),
        of_wheel(const { field("camber-peak") }, "camber, peak", Says::LargerMagnitude),
    ];
    all.extend(CamberSplit::FIELDS.iter().filter(|part| part.term != *CLEARANCE).map(of_peak));
    all.extend([
        of_wheel(const { field("camber-peak-to-peak") }, "camber, peak to peak", Says::Larger),
        of_wheel(const { field("camber-rms") }, "camber, rms", Says::Larger),
        stress.read(Cost::Ride, Reader::Ride(|ride| Some(ride.peak_stress.abs()))),
        of_wheel(const { field("camber-frequency") }, "camber's frequency", Says::CamberMovesMost),
        of_wheel(const { field("cups-per-turn") }, "cups a turn", Says::CamberMovesMost),
        of_wheel(const { field("cup-spacing") }, "cup to cup", Says::CamberMovesMost),
    ]);
    all
}

/// A ride counts what bearings take up of their clearance as theirs.
const CLEARANCE: &axlebow_results::Term = &field::<CamberSplit>("clearance").term;

fn of_wheel(field: &'static Field<RideWheel>, words: &str, says: Says) -> Quantity {
    Quantity::of_term(&field.term, words, Cost::Ride, Reader::Wheel(says, field))
}

fn of_peak(part: &'static Field<CamberSplit>) -> Quantity {
    Quantity {
        name: format!("camber-peak-{}", part.term.name),
        words: format!("camber peak, {}", part.term.name),
        meaning: format!("Part of the peak camber change: {}", within_a_sentence(part.term.meaning)),
        ..Quantity::of_term(&part.term, "", Cost::Ride, Reader::PeakSplit(part))
    }
}
