//! Results of tire faces.

use axlebow_results::{Field, Own, Part, Record, Text, number, part};
use axlebow_tread::TireWear;
use axlebow_units::Kind;

use crate::{PrintedWave, TireCase, TireDuty, TireFace, TireOutcome, TireRide, TireRideOutcome};

impl Record for TireOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "duty",
            "The duty: `line-haul`, `regional`, `city` or `stated`.",
            &Text(|run: &Self| run.duty.word()),
        ),
        part("cases", "Each load case.", &Part(|run: &Self| &run.cases)),
    ];
}

impl Record for TireCase {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Name.", &Text(|case: &Self| &case.name)),
        part("description", "What acts.", &Text(|case: &Self| &case.description)),
        part("wheels", "Each wheel end.", &Part(|case: &Self| &case.wheels)),
        part("duties", "Wear in each of the usual duties.", &Part(|case: &Self| &case.duties)),
    ];
}

impl Record for TireDuty {
    const FIELDS: &'static [Field<Self>] = &[
        part("duty", "Name of the duty.", &Text(|own: &Self| own.duty.word())),
        part(
            "left",
            "Wear of each rib of the left tires over that of the same rib upright, the outermost tire and its inner \
             shoulder first; null where that does not wear.",
            &Own(|own: &Self| against_upright(&own.wheels.left)),
        ),
        part("right", "The same of the right tires.", &Own(|own: &Self| against_upright(&own.wheels.right))),
    ];
}

fn against_upright(face: &TireFace) -> Vec<Vec<Option<f64>>> {
    let ribs = |tire: &TireWear| tire.ribs.iter().map(|rib| rib.against_upright).collect();
    face.worn.tires.iter().map(ribs).collect()
}

impl Record for TireFace {
    const FIELDS: &'static [Field<Self>] = &[
        number("load", Kind::Force, "Load of the road.", &Own(|face: &Self| face.pose.load)),
        number(
            "camber",
            Kind::Angle,
            "Camber against the road, positive with the top leaning outward.",
            &Own(|face: &Self| face.pose.camber),
        ),
        number(
            "toe",
            Kind::Angle,
            "Toe with the axle's skew, positive toe-in.",
            &Own(|face: &Self| face.pose.toe),
        ),
        number("rolling-radius", Kind::Length, "Rolling radius.", &Own(|face: &Self| face.worn.radius)),
        part("tires", "Tires, outermost first.", &Part(|face: &Self| &face.worn.tires)),
    ];
}

impl Record for TireRideOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Name of the road.", &Text(|ride: &Self| &ride.name)),
        number("speed", Kind::Speed, "Speed.", &Own(|ride: &Self| ride.speed)),
        part(
            "road-repeats",
            "Whether the road repeats and may be in step with the wheel.",
            &Own(|ride: &Self| ride.comes_back),
        ),
        part("wheels", "Each wheel end.", &Part(|ride: &Self| &ride.wheels)),
        part("warnings", "Doubts about the ride.", &Part(|ride: &Self| &ride.warnings)),
    ];
}

impl Record for TireRide {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "camber-least",
            Kind::Angle,
            "Least camber against the road.",
            &Own(|ride: &Self| ride.camber[0]),
        ),
        number("camber-mean", Kind::Angle, "Mean camber.", &Own(|ride: &Self| ride.camber[1])),
        number("camber-greatest", Kind::Angle, "Greatest camber.", &Own(|ride: &Self| ride.camber[2])),
        part("turns", "Turns of the tire.", &Own(|ride: &Self| ride.wear.turns)),
        part(
            "tires",
            "Tires with their means over the ride, outermost first.",
            &Part(|ride: &Self| &ride.wear.mean.tires),
        ),
        part(
            "round",
            "Wear round each tire: for each rib, the inner shoulder first, each part of the circumference over the \
             mean wear of the upright tires; null where nothing passed.",
            &Own(|ride: &Self| ride.wear.round.iter().map(|map| map.ribs.clone()).collect::<Vec<_>>()),
        ),
        part(
            "wave",
            "The strongest wave round the most worn rib; null for less than a turn.",
            &Part(|ride: &Self| &ride.wave),
        ),
    ];
}

impl Record for PrintedWave {
    const FIELDS: &'static [Field<Self>] = &[
        part("tire", "Number of its tire, the outermost 0.", &Own(|wave: &Self| wave.tire)),
        part("rib", "Number of its rib, the inner shoulder 0.", &Own(|wave: &Self| wave.rib)),
        part(
            "amplitude",
            "Half of crest less trough over the mean wear.",
            &Own(|wave: &Self| wave.amplitude),
        ),
        part("visible", "Whether it stands out enough to be seen.", &Own(|wave: &Self| wave.visible)),
        part("cups", "Count, spacing, frequency, explanations.", &Part(|wave: &Self| &wave.cups)),
    ];
}
