//! Results of causes.

use axlebow_results::{Field, Own, Part, Record, Text, number, part};
use axlebow_units::Kind;

use crate::{CauseShare, CausesOutcome, Contribution, EndplayTilt, Subject, WheelCauses};

impl Record for CausesOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "kind",
            "`standing`: angles against the line through the hubs; `ride`: peak-to-peak angle over it.",
            &Text(|own: &Self| match own.subject {
                Subject::Standing { .. } => "standing",
                Subject::Ride { .. } => "ride",
            }),
        ),
        part(
            "name",
            "Name of the load case or of the road.",
            &Text(|own: &Self| match &own.subject {
                Subject::Standing { case: name, .. } | Subject::Ride { name, .. } => name,
            }),
        ),
        number(
            "speed",
            Kind::Speed,
            "Speed; null standing.",
            &Own(|own: &Self| match own.subject {
                Subject::Standing { .. } => None,
                Subject::Ride { speed, .. } => Some(speed),
            }),
        ),
        part("wheels", "Each wheel end.", &Part(|own: &Self| &own.wheels)),
        number(
            "rigid-roll",
            Kind::Angle,
            "What the axle's rigid roll adds to each wheel's camber against the road; of a ride peak to peak. No cause's.",
            &Part(|own: &Self| &own.rigid_roll),
        ),
        part(
            "endplay-tilt",
            "Free tilt of each hub within its endplay, either way from the middle.",
            &Part(|own: &Self| &own.endplay_tilt),
        ),
        part("solved", "Axles that were solved.", &Own(|own: &Self| own.solved)),
    ];
}

impl Record for WheelCauses {
    const FIELDS: &'static [Field<Self>] = &[
        part("camber", "Of camber.", &Part(|own: &Self| &own.camber)),
        part("toe", "Of toe.", &Part(|own: &Self| &own.toe)),
    ];
}

impl Record for Contribution {
    const FIELDS: &'static [Field<Self>] = &[
        number("total", Kind::Angle, "The angle.", &Own(|own: &Self| own.total)),
        number("rest", Kind::Angle, "What is left without any cause.", &Own(|own: &Self| own.rest)),
        number(
            "interaction",
            Kind::Angle,
            "What causes do together beyond what each takes off if removed.",
            &Own(|own: &Self| own.interaction()),
        ),
        part("causes", "Each cause that the model has.", &Part(|own: &Self| &own.shares)),
    ];
}

impl Record for CauseShare {
    const FIELDS: &'static [Field<Self>] = &[
        part("cause", "Its name.", &Text(|own: &Self| own.cause.words())),
        number(
            "share",
            Kind::Angle,
            "Its share: the mean over all orders in which causes could come in.",
            &Own(|own: &Self| own.share),
        ),
        number(
            "by-itself",
            Kind::Angle,
            "The angle were it the only cause, less the rest.",
            &Own(|own: &Self| own.alone),
        ),
        number("if-removed", Kind::Angle, "What removing it takes off.", &Own(|own: &Self| own.removing)),
        number(
            "uncertainty",
            Kind::Angle,
            "Half of how far the angle moves with the tolerance of the cause's input.",
            &Own(|own: &Self| own.uncertainty),
        ),
        part("tolerance", "That tolerance.", &Text(|own: &Self| own.cause.tolerance())),
        part("remedy", "What would remove it.", &Text(|own: &Self| own.cause.remedy())),
    ];
}

impl Record for EndplayTilt {
    const FIELDS: &'static [Field<Self>] = &[
        number("own", Kind::Angle, "With the model's endplay.", &Own(|tilt: &Self| tilt.own)),
        number(
            "least-accepted",
            Kind::Angle,
            "With the least endplay that is accepted, 0.025 mm.",
            &Own(|tilt: &Self| tilt.accepted[0]),
        ),
        number(
            "most-accepted",
            Kind::Angle,
            "With the largest, 0.127 mm.",
            &Own(|tilt: &Self| tilt.accepted[1]),
        ),
    ];
}
