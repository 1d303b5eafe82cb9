//! Results of sensitivities.

use axlebow_results::{Field, Own, Part, Record, Text, number, part};
use axlebow_units::Kind;

use crate::{KeySensitivity, SensitivityOutcome};

impl Record for SensitivityOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("case", "Its name.", &Text(|own: &Self| &own.case)),
        part("own", "Results of the axle as it is.", &Part(|own: &Self| &own.own)),
        number(
            "peak-stress-y",
            Kind::Length,
            "Position of the peak stress, left positive.",
            &Own(|own: &Self| own.peak_stress_y),
        ),
        part(
            "keys",
            "Keys that something depends on, largest effect on camber first.",
            &Own(|own: &Self| own.keys.iter().map(|key| own.with_camber_per_mass(key)).collect::<Vec<_>>()),
        ),
        part("without-effect", "Keys that nothing depends on.", &Part(|own: &Self| &own.without_effect)),
        part(
            "refused",
            "Keys without a derivative.",
            &Own(|own: &Self| own.refused.iter().cloned().map(Refused).collect::<Vec<_>>()),
        ),
        part("warnings", "Doubts about the load case.", &Part(|own: &Self| &own.warnings)),
    ];
}

impl SensitivityOutcome {
    fn with_camber_per_mass(&self, key: &KeySensitivity) -> KeyResult {
        KeyResult { camber_per_mass: key.camber_per_mass(&self.own), key: key.clone() }
    }
}

/// A key of the model file beside what needs the axle's own results.
struct KeyResult {
    key: KeySensitivity,
    camber_per_mass: Option<f64>,
}

impl Record for KeyResult {
    const FIELDS: &'static [Field<Self>] = &[
        part("path", "Its path.", &Text(|own: &Self| &own.key.key.path)),
        part("value", "Its value in `unit`.", &Own(|own: &Self| own.key.key.value)),
        part(
            "unit",
            "SI unit of the value; empty for a plain number.",
            &Text(|own: &Self| own.key.key.kind.si()),
        ),
        part("assumed", "Whether the value is a default.", &Own(|own: &Self| own.key.key.assumed)),
        part("slope", "Change of each result per `unit`.", &Part(|own: &Self| &own.key.slope)),
        number(
            "camber-per-mass",
            Kind::AnglePerMass,
            "Camber of the wheel that leans most per mass that the key adds; null where the mass stays.",
            &Part(|own: &Self| &own.camber_per_mass),
        ),
        part(
            "by",
            "`adjoint`, or `solutions` where it took finite differences of full solutions.",
            &Text(|own: &Self| own.key.by.word()),
        ),
    ];
}

/// Path of a key without a derivative, and why it has none.
struct Refused((String, String));

impl Record for Refused {
    const FIELDS: &'static [Field<Self>] = &[
        part("path", "Its path.", &Text(|own: &Self| &own.0.0)),
        part("why", "Why.", &Text(|own: &Self| &own.0.1)),
    ];
}
