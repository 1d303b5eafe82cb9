//! Results of stiffeners and of the steel that they are welded to.

use axlebow_results::{Field, Own, Part, Record, Text, in_unit, number, part};
use axlebow_units::Kind;

use crate::{AxialForce, Preheat, StiffenerOutcome, StiffeningOutcome, WeldForce};

impl Record for StiffeningOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "side",
            "The wheel whose camber changes more without stiffeners, `left` or `right`.",
            &Own(|all: &Self| all.side.word()),
        ),
        number("mass", Kind::Mass, "Mass of all stiffeners.", &Own(|all: &Self| all.mass)),
        number(
            "camber-change-without",
            Kind::Angle,
            "Camber change of that wheel without stiffeners.",
            &Own(|all: &Self| all.without),
        ),
        number(
            "camber-change-composite",
            Kind::Angle,
            "With full composite action, axle and stiffeners one section: the upper bound of what they do.",
            &Own(|all: &Self| all.composite),
        ),
        number(
            "camber-change-tied",
            Kind::Angle,
            "With stiffeners as their welds tie them: that of the wheel in this document.",
            &Own(|all: &Self| all.tied),
        ),
        part(
            "camber-removed-composite",
            "Share of the camber change that is gone with full composite action, the upper bound.",
            &Own(|all: &Self| all.removed(all.composite)),
        ),
        part(
            "camber-removed",
            "Share of the camber change that is gone.",
            &Own(|all: &Self| all.removed(all.tied)),
        ),
        number(
            "camber-removed-per-mass",
            Kind::AnglePerMass,
            "Camber change that is gone for each kilogram.",
            &Own(|all: &Self| all.removed_per_mass()),
        ),
        part(
            "why",
            "Why tied stiffeners help less; null where they help less than 5 % less.",
            &Part(|all: &Self| &all.why),
        ),
        part("stiffeners", "Each stiffener.", &Part(|all: &Self| &all.stiffeners)),
    ];
}

impl Record for StiffenerOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Name.", &Text(|own: &Self| &own.name)),
        part("form", "What it is and how it sits.", &Text(|own: &Self| &own.called)),
        number("from", Kind::Length, "Right end, left positive.", &Own(|own: &Self| own.reach[0])),
        number("to", Kind::Length, "Left end.", &Own(|own: &Self| own.reach[1])),
        number("mass", Kind::Mass, "Mass.", &Own(|own: &Self| own.mass)),
        number(
            "working-length",
            Kind::Length,
            "Length over which its axial force is at least 95 % of that with full composite action.",
            &Own(|own: &Self| own.working_length),
        ),
        part("peak-weld-force", "The greatest force of its weld.", &Part(|own: &Self| &own.peak)),
        part("weld-forces", "Force along its weld, from right to left.", &Part(|own: &Self| &own.weld)),
        part(
            "axial-forces",
            "Axial force of the stiffener, from right to left.",
            &Part(|own: &Self| &own.axial),
        ),
    ];
}

/// Force of a stiffener on the axle through a piece of weld, per length of weld.
impl Record for WeldForce {
    const FIELDS: &'static [Field<Self>] = &[
        number("y", Kind::Length, "Position, left positive.", &Own(|weld: &Self| weld.y)),
        number("length", Kind::Length, "Length of the piece.", &Own(|weld: &Self| weld.length)),
        part(
            "foot",
            "`rear` or `front`, of a stiffener on top of the axle.",
            &Text(|weld: &Self| weld.foot.word()),
        ),
        in_unit("along", "N/m", "Along the axle, to the left.", &Own(|weld: &Self| weld.along)),
        in_unit(
            "across",
            "N/m",
            "Across the wall, forward on top of the axle.",
            &Own(|weld: &Self| weld.across),
        ),
        in_unit("outward", "N/m", "Away from the axle.", &Own(|weld: &Self| weld.outward)),
    ];
}

/// Tension positive.
impl Record for AxialForce {
    const FIELDS: &'static [Field<Self>] = &[
        number("y", Kind::Length, "Position, left positive.", &Own(|at: &Self| at.y)),
        number("tied", Kind::Force, "As its weld ties it.", &Own(|at: &Self| at.tied)),
        number("composite", Kind::Force, "As one section with the axle.", &Own(|at: &Self| at.composite)),
    ];
}

impl Record for Preheat {
    const FIELDS: &'static [Field<Self>] = &[
        part("parts", "The parts that are made of it.", &Text(|steel: &Self| &steel.parts)),
        in_unit(
            "carbon-equivalent",
            "percent",
            "Carbon equivalent by the formula of the International Institute of Welding; null where it is not known.",
            &Part(|steel: &Self| &steel.carbon_equivalent),
        ),
        in_unit(
            "cold-cracking-equivalent",
            "percent",
            "Carbon equivalent CET of EN 1011-2, Annex C, method B; null where the composition is not known.",
            &Part(|steel: &Self| &steel.cold_cracking_equivalent),
        ),
        number("thickness", Kind::Length, "Thickest of the parts.", &Own(|steel: &Self| steel.thickness)),
        in_unit(
            "temperature",
            "celsius",
            "Least temperature of the steel by that method for hydrogen class H5 and 1 kJ/mm; null where CET is not known or above 0.50 %.",
            &Part(|steel: &Self| &steel.temperature),
        ),
        part("need", "`unneeded`, `usual`, `controlled` or `unknown`.", &Text(|steel: &Self| steel.need())),
        part("advice", "What to do.", &Text(|steel: &Self| steel.advice())),
        part(
            "source",
            "Where the limits come from; null where the carbon equivalent is not known.",
            &Own(|steel: &Self| steel.check.as_ref().map(|check| check.source)),
        ),
    ];
}
