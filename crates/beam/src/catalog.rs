//! Results of a beam.

use axlebow_results::{Field, Own, Part as PartOf, Record, Text, in_unit, number, part};
use axlebow_units::Kind;

use crate::answers::asked::{Asked, Checked};
use crate::answers::outcome::{BeamOutcome, Bent, Vibrating};
use crate::exact::closed_form::{ClosedForm, ClosedFormValue};
use crate::exact::closed_modes::ClosedModes;
use crate::exact::convergence::{Convergence, ConvergenceRow};
use crate::solving::harmonic::Shaken;
use crate::solving::modes::Mode;
use crate::solving::moving::Passage;
use crate::solving::peaks::{Peak, PeakKind};
use crate::solving::solution::{Reaction, Station};

/// Deflections are positive upward, slopes where the beam rises along it, shear as the sum of the upward forces before the
/// place, moments where the ends bend up.
impl Record for BeamOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        number("length", Kind::Length, "Length of the beam.", &Own(|own: &Self| own.line.length())),
        part("theory", "`Euler-Bernoulli` or `Timoshenko`.", &Own(|own: &Self| own.mesh.theory.words())),
        part("element", "Kind of the elements.", &Own(|own: &Self| own.mesh.element.word())),
        part("elements", "Elements in all.", &Own(|own: &Self| own.elements)),
        part(
            "static",
            "What the loads do; null where nothing loads the beam.",
            &PartOf(|own: &Self| &own.bent),
        ),
        part(
            "vibration",
            "Natural modes of the beam, undamped; null where none were asked for.",
            &PartOf(|own: &Self| &own.vibrating),
        ),
        part(
            "convergence",
            "Results of several meshes; null where they were not asked for.",
            &PartOf(|own: &Self| &own.convergence),
        ),
        part(
            "moving-force",
            "What the moving force does; null without one.",
            &PartOf(|own: &Self| &own.passage),
        ),
        part(
            "shaking-force",
            "What the shaking force does; null without one.",
            &PartOf(|own: &Self| &own.shaken),
        ),
        part("checks", "Values beside what the file expects.", &PartOf(|own: &Self| &own.checks)),
    ];
}

impl Record for Passage {
    const FIELDS: &'static [Field<Self>] = &[
        number("at", Kind::Length, "Where the deflection is read.", &Own(|own: &Self| own.at)),
        number(
            "largest-deflection",
            Kind::Length,
            "Largest deflection by size while the force is on the beam.",
            &Own(|own: &Self| own.largest),
        ),
        number(
            "largest-static-deflection",
            Kind::Length,
            "The same when the force crawls.",
            &Own(|own: &Self| own.largest_static),
        ),
        part("amplification", "The one over the other.", &Own(|own: &Self| own.amplification())),
        number(
            "largest-deflection-after",
            Kind::Length,
            "Largest deflection by size after the force has left.",
            &Own(|own: &Self| own.largest_after),
        ),
        part(
            "speed-ratio",
            "Speed over the one at which the force keeps step with the first mode.",
            &Own(|own: &Self| own.speed_ratio),
        ),
        number("frequency", Kind::Frequency, "First natural frequency.", &Own(|own: &Self| own.frequency)),
        part(
            "history",
            "Deflection over time, thinned.",
            &Own(|own: &Self| own.history.iter().copied().map(Moment).collect::<Vec<_>>()),
        ),
    ];
}

/// A moment of a passage.
#[derive(Debug, Clone, Copy)]
struct Moment([f64; 3]);

impl Record for Moment {
    const FIELDS: &'static [Field<Self>] = &[
        in_unit("time", "s", "Time after the force comes onto the beam.", &Own(|own: &Self| own.0[0])),
        number("place", Kind::Length, "Place of the force.", &Own(|own: &Self| own.0[1])),
        number("deflection", Kind::Length, "Deflection.", &Own(|own: &Self| own.0[2])),
    ];
}

impl Record for Shaken {
    const FIELDS: &'static [Field<Self>] = &[
        number("read-at", Kind::Length, "Where the deflection is read.", &Own(|own: &Self| own.read_at)),
        number(
            "deflection-at-rest",
            Kind::Length,
            "Deflection under the same force at rest.",
            &Own(|own: &Self| own.at_rest),
        ),
        number(
            "largest-at",
            Kind::Frequency,
            "Frequency of the largest amplitude.",
            &Own(|own: &Self| own.largest().map(|largest| largest[0])),
        ),
        number(
            "largest-amplitude",
            Kind::Length,
            "Largest amplitude of the deflection.",
            &Own(|own: &Self| own.largest().map(|largest| largest[1])),
        ),
        part(
            "answers",
            "Amplitude and phase over frequency.",
            &Own(|own: &Self| own.answers.iter().copied().map(Answer).collect::<Vec<_>>()),
        ),
    ];
}

/// The answer at a frequency.
#[derive(Debug, Clone, Copy)]
struct Answer([f64; 3]);

impl Record for Answer {
    const FIELDS: &'static [Field<Self>] = &[
        number("frequency", Kind::Frequency, "Frequency of the force.", &Own(|own: &Self| own.0[0])),
        number("amplitude", Kind::Length, "Amplitude of the deflection.", &Own(|own: &Self| own.0[1])),
        number(
            "phase",
            Kind::Angle,
            "How far the deflection is behind the force.",
            &Own(|own: &Self| own.0[2]),
        ),
    ];
}

impl Record for Bent {
    const FIELDS: &'static [Field<Self>] = &[
        part("peaks", "The largest values along the beam, by magnitude.", &PartOf(|own: &Self| &own.peaks)),
        part("reactions", "What each support does to the beam.", &PartOf(|own: &Self| &own.reactions)),
        part(
            "closed-form",
            "The handbook case that the beam is; null where it is none that is known.",
            &Own(|own: &Self| own.closed.clone().map(|(form, computed)| Compared { form, computed })),
        ),
        part(
            "stations",
            "Places along the beam; two at a node, before and behind it.",
            &PartOf(|own: &Self| &own.stations),
        ),
    ];
}

impl Record for Station {
    const FIELDS: &'static [Field<Self>] = &[
        number("y", Kind::Length, "Place, from the start of the beam.", &Own(|own: &Self| own.at)),
        number("deflection", Kind::Length, "Deflection, upward.", &Own(|own: &Self| own.deflection)),
        number("slope", Kind::Angle, "Rotation of the section.", &Own(|own: &Self| own.slope)),
        number("shear", Kind::Force, "Sum of the upward forces before it.", &Own(|own: &Self| own.shear)),
        number(
            "moment",
            Kind::Moment,
            "Bending moment, positive with the ends up.",
            &Own(|own: &Self| own.moment),
        ),
        number(
            "stress",
            Kind::Stress,
            "Largest bending stress of the section, tension positive; null of a section without a depth.",
            &Own(|own: &Self| own.stress),
        ),
    ];
}

impl Record for Reaction {
    const FIELDS: &'static [Field<Self>] = &[
        number("y", Kind::Length, "Place of the support.", &Own(|own: &Self| own.at)),
        part("kind", "Kind of the support.", &Own(|own: &Self| own.kind)),
        number("force", Kind::Force, "Force on the beam, upward.", &Own(|own: &Self| own.force)),
        number(
            "moment",
            Kind::Moment,
            "Moment on the beam, as that of a load.",
            &Own(|own: &Self| own.moment),
        ),
        part("touches", "False of a stop that the beam does not reach.", &Own(|own: &Self| own.touches)),
    ];
}

impl Record for Peak {
    const FIELDS: &'static [Field<Self>] = &[
        part("quantity", "What is largest.", &Own(|own: &Self| own.kind.word())),
        part("value", "It, with its sign, in the unit beside it.", &Own(|own: &Self| own.value)),
        part("unit", "Unit of the value.", &Own(|own: &Self| own.kind.measured().si())),
        number("y", Kind::Length, "Where.", &Own(|own: &Self| own.at)),
    ];
}

/// A handbook case with what was computed.
struct Compared {
    form: ClosedForm,
    computed: Vec<f64>,
}

/// A value of it.
struct ComparedValue {
    own: ClosedFormValue,
    computed: f64,
}

impl Record for Compared {
    const FIELDS: &'static [Field<Self>] = &[
        part("title", "What the case is called.", &Own(|own: &Self| own.form.title)),
        part("formula", "Its formulas.", &Own(|own: &Self| own.form.formula)),
        part("source", "Where they stand.", &Own(|own: &Self| own.form.source)),
        part(
            "values",
            "Its values.",
            &Own(|own: &Self| {
                let pairs = own.form.values.iter().zip(&own.computed);
                pairs
                    .map(|(own, computed)| ComparedValue { own: *own, computed: *computed })
                    .collect::<Vec<_>>()
            }),
        ),
    ];
}

impl Record for ComparedValue {
    const FIELDS: &'static [Field<Self>] = &[
        part("quantity", "Of what.", &Own(|own: &Self| own.own.kind.word())),
        number("y", Kind::Length, "Where.", &Own(|own: &Self| own.own.at)),
        part("computed", "What the elements give.", &Own(|own: &Self| own.computed)),
        part("reference", "What the formula gives.", &Own(|own: &Self| own.own.value)),
        part("unit", "Unit of both.", &Own(|own: &Self| own.own.kind.measured().si())),
    ];
}

impl Record for Vibrating {
    const FIELDS: &'static [Field<Self>] = &[
        part("rigid-motions", "How many of the first modes are rigid motions.", &Own(|own: &Self| own.rigid)),
        part("complete", "Whether none is missing by Sturm's count.", &Own(|own: &Self| own.complete)),
        part("modes", "The modes, by rising frequency.", &PartOf(|own: &Self| &own.modes)),
        part(
            "closed-form",
            "The characteristic equation that the beam has; null where it has none that is known.",
            &PartOf(|own: &Self| &own.closed),
        ),
    ];
}

/// The largest deflection of a mode is 1; its sign is free.
impl Record for Mode {
    const FIELDS: &'static [Field<Self>] = &[
        number("frequency", Kind::Frequency, "Natural frequency.", &Own(|own: &Self| own.frequency)),
        in_unit("y", "m", "Places of its shape.", &Own(|own: &Self| column(own, 0))),
        part("deflection", "Deflections there over the largest one.", &Own(|own: &Self| column(own, 1))),
    ];
}

fn column(mode: &Mode, number: usize) -> Vec<f64> {
    mode.shape.iter().map(|point| point[number]).collect()
}

impl Record for ClosedModes {
    const FIELDS: &'static [Field<Self>] = &[
        part("title", "What the beam is called.", &Own(|own: &Self| own.title)),
        part("formula", "The equation.", &Own(|own: &Self| own.formula)),
        part("source", "Where it stands.", &Own(|own: &Self| own.source)),
        in_unit(
            "frequencies",
            "Hz",
            "Frequencies of the elastic modes.",
            &PartOf(|own: &Self| &own.frequencies),
        ),
    ];
}

impl Record for Convergence {
    const FIELDS: &'static [Field<Self>] = &[part(
        "rows",
        "For each result in turn, the meshes in the order asked for.",
        &PartOf(|own: &Self| &own.rows),
    )];
}

impl Record for ConvergenceRow {
    const FIELDS: &'static [Field<Self>] = &[
        part("quantity", "What.", &Own(|own: &Self| own.quantity.words())),
        part("elements", "Elements in each piece of the beam.", &Own(|own: &Self| own.elements)),
        part("total", "Elements in all.", &Own(|own: &Self| own.total)),
        part("computed", "The result, SI.", &Own(|own: &Self| own.computed)),
        part("reference", "What it is compared with, SI.", &Own(|own: &Self| own.reference)),
        part(
            "basis",
            "What that rests on: `closed form`, `exact integration` or `extrapolated`.",
            &Own(|own: &Self| own.basis.words()),
        ),
        part("error", "Error as a share of the reference.", &Own(|own: &Self| own.error)),
        part(
            "order",
            "Observed order from the mesh before; null for the first one and where an error is rounding.",
            &Own(|own: &Self| own.order),
        ),
    ];
}

impl Record for Checked {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "What it is called.", &Text(|own: &Self| &own.check.name)),
        part(
            "case",
            "Name of the textbook case that it is; null where it is none.",
            &Own(|own: &Self| own.check.case.clone()),
        ),
        part("quantity", "What is compared.", &Own(|own: &Self| own.check.asked.word())),
        part(
            "computed",
            "What came out, SI; null where there is no such value.",
            &Own(|own: &Self| own.computed),
        ),
        part("reference", "What was expected, SI.", &Own(|own: &Self| own.check.expected)),
        part("unit", "Unit of both.", &Own(|own: &Self| own.check.asked.measured().si())),
        part(
            "relative-error",
            "Error over the size of what was expected, or itself where zero was.",
            &Own(|own: &Self| own.error()),
        ),
        part("tolerance", "Relative error that is accepted.", &Own(|own: &Self| own.check.tolerance)),
        part("source", "Where the expected value comes from.", &Text(|own: &Self| &own.check.source)),
        part("passed", "Whether the error is accepted.", &Own(|own: &Self| own.passed())),
    ];
}

impl PeakKind {
    /// What kind of quantity it is.
    pub fn measured(self) -> Kind {
        match self {
            Self::Deflection => Kind::Length,
            Self::Slope => Kind::Angle,
            Self::Shear => Kind::Force,
            Self::Moment => Kind::Moment,
            Self::Stress => Kind::Stress,
        }
    }
}

impl Asked {
    /// What kind of quantity it is.
    pub fn measured(self) -> Kind {
        match self {
            Self::Along { kind, .. } => kind.measured(),
            Self::Reaction { .. } => Kind::Force,
            Self::ReactionMoment { .. } => Kind::Moment,
            Self::Frequency { .. } => Kind::Frequency,
            Self::Root { .. } => Kind::Ratio,
        }
    }
}
