//! Results of natural modes.

use axlebow_results::{Field, Own, Part, Record, Text, in_unit, number, part};
use axlebow_units::Kind;

use crate::{ModeOutcome, ModesOutcome, Motion, ShapePoint, Strain};

impl Record for ModesOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "sprung-mass",
            Kind::Mass,
            "Mass of the vehicle body that the axle carries.",
            &Own(|run: &Self| run.sprung_mass),
        ),
        part(
            "counted-below",
            "Modes below the limit by Sturm's count, which misses none.",
            &Own(|run: &Self| run.counted_below),
        ),
        part("found-below", "Modes found below the limit.", &Own(|run: &Self| run.found_below)),
        number(
            "limit",
            Kind::Frequency,
            "Frequency below which modes were counted.",
            &Own(|run: &Self| run.limit),
        ),
        part(
            "complete",
            "True when as many modes were found as were counted.",
            &Own(|run: &Self| run.found_below == run.counted_below),
        ),
        number(
            "longest-element",
            Kind::Length,
            "Length of the longest element.",
            &Own(|run: &Self| run.mesh.longest_element),
        ),
        part(
            "change-by-halving",
            "Greatest change of a frequency, as a share of it, when the elements were last halved: at most 0.001 where \
             they are short enough for the modes asked for.",
            &Own(|run: &Self| run.mesh.change),
        ),
        part("modes", "The modes, by rising frequency.", &Part(|run: &Self| &run.modes)),
    ];
}

/// Its motion is scaled so that the largest displacement of all is 1 m; its sign is free.
impl Record for ModeOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "What moves; numbered where several are alike.", &Text(|mode: &Self| &mode.name)),
        number(
            "frequency",
            Kind::Frequency,
            "Undamped natural frequency.",
            &Own(|mode: &Self| mode.frequency),
        ),
        part("damping-ratio", "Damping over critical damping.", &Own(|mode: &Self| mode.damping_ratio)),
        number(
            "modal-mass",
            Kind::Mass,
            "Mass that, at the place of largest displacement, has the mode's kinetic energy.",
            &Own(|mode: &Self| mode.modal_mass),
        ),
        part("residual", "Residual over inertia forces.", &Own(|mode: &Self| mode.residual)),
        part(
            "strain",
            "Where the strain energy is: shares that sum to 1.",
            &Part(|mode: &Self| &mode.strain),
        ),
        part(
            "motion",
            "Where the kinetic energy is: shares that sum to 1.",
            &Part(|mode: &Self| &mode.motion),
        ),
        in_unit(
            "camber",
            "rad/m",
            "Camber of each wheel against the road over the largest displacement, positive with the tire's top outward.",
            &Part(|mode: &Self| &mode.camber),
        ),
        number(
            "body-heave",
            Kind::Length,
            "Upward displacement of the vehicle body.",
            &Own(|mode: &Self| mode.body[0]),
        ),
        number(
            "body-roll",
            Kind::Angle,
            "Rotation of the vehicle body about X.",
            &Own(|mode: &Self| mode.body[1]),
        ),
        part("shape", "The axle line, from left to right.", &Part(|mode: &Self| &mode.shape)),
    ];
}

impl Record for Strain {
    const FIELDS: &'static [Field<Self>] = &[
        part("beam", "Tube or housing and spindles.", &Own(|share: &Self| share.beam)),
        part("seats", "Seats with suspension and wall.", &Own(|share: &Self| share.seats)),
        part("bearings", "Bearings and brakes.", &Own(|share: &Self| share.bearings)),
        part("tires", "Tires.", &Own(|share: &Self| share.tires)),
        part(
            "rest-of-vehicle",
            "The rest of the vehicle: what it puts against roll of the body, less what the sprung weight gives back.",
            &Own(|share: &Self| share.rest_of_vehicle),
        ),
    ];
}

impl Record for Motion {
    const FIELDS: &'static [Field<Self>] = &[
        part("vertical", "Vertical motion of axle and wheels.", &Own(|share: &Self| share.vertical)),
        part("longitudinal", "Fore-aft motion of axle and wheels.", &Own(|share: &Self| share.fore_aft)),
        part("lateral", "Lateral motion of axle and wheels.", &Own(|share: &Self| share.lateral)),
        part("twist", "Rotation of the axle about its own line.", &Own(|share: &Self| share.twist)),
        part("body", "Vehicle body.", &Own(|share: &Self| share.body)),
    ];
}

impl Record for ShapePoint {
    const FIELDS: &'static [Field<Self>] = &[
        number("y", Kind::Length, "Position, left positive.", &Own(|at: &Self| at.y)),
        number("ux", Kind::Length, "Forward displacement.", &Own(|at: &Self| at.motion[0])),
        number("uy", Kind::Length, "Displacement to the left.", &Own(|at: &Self| at.motion[1])),
        number("uz", Kind::Length, "Upward displacement.", &Own(|at: &Self| at.motion[2])),
        number("rx", Kind::Angle, "Rotation about X.", &Own(|at: &Self| at.motion[3])),
        number("ry", Kind::Angle, "Rotation about Y.", &Own(|at: &Self| at.motion[4])),
        number("rz", Kind::Angle, "Rotation about Z.", &Own(|at: &Self| at.motion[5])),
    ];
}
