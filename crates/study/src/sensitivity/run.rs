//! From a model file and a load case to sensitivities.

use axlebow_axle::{
    Adjoint, Axle, AxleError, CaseReadings, LoadCase, SeatLayouts, Sides, StaticDesign, StaticReadings,
    seat_layouts, static_warnings,
};
use axlebow_model::{Document, Model, NumberKey};
use axlebow_units::{Kind, UnitSystem};
use rayon::prelude::*;

use super::outcome::{KeySensitivity, SensitivityOutcome, SlopeBy};
use super::slope::slope;
use crate::solve::in_words;

/// Share of a number by which it is changed for the adjoint. It must be small against the shortest stretch of axle: of one
/// of 1 mm on an axle of 1 m it is a hundredth, which leaves 1e-8 by the fourth order; rounding leaves as much.
const SHARE: f64 = 1e-5;
/// The same where the axle is solved again: stations that part must do so by more than the smallest step.
const SHARE_SOLVED: f64 = 2e-3;
/// Share of a reading below which its change is rounding.
const ROUNDING: f64 = 1e-7;
/// What stands in for a number that is zero, in SI.
const IN_PLACE_OF_ZERO: f64 = 0.1;

/// Derivatives of camber, bow, stress and mass with respect to numbers of a model file.
///
/// Arguments: `document`, the model file; `axle` and `case`, the axle that it describes and one of its load cases; `keys`, of
/// [`Document::numbers`].
///
/// # Errors
/// Why the case itself cannot be solved.
pub fn sensitivities(
    document: &Document,
    (axle, case): (&Axle, &LoadCase),
    keys: Vec<NumberKey>,
) -> Result<SensitivityOutcome, AxleError> {
    let adjoint = match Adjoint::of(axle, case) {
        Ok(adjoint) => Some(adjoint),
        Err(AxleError::NoDerivative { .. }) => None,
        Err(error) => return Err(error),
    };
    let (own, peak_stress_y) = match &adjoint {
        Some(adjoint) => (*adjoint.own(), adjoint.peak_stress_y()),
        None => solved(axle, case)?,
    };
    let readings = StaticReadings::of(axle, case)?;
    let asked = Asked { document, case: &case.name, adjoint, layouts: seat_layouts(axle) };
    let found: Vec<_> = keys.into_par_iter().map(|key| asked.key(key)).collect();
    let mut outcome = SensitivityOutcome {
        case: case.name.clone(),
        own,
        peak_stress_y,
        keys: Vec::new(),
        without_effect: Vec::new(),
        refused: Vec::new(),
        warnings: static_warnings(axle, case, &readings)?,
    };
    for (key, found) in found {
        let felt = found.map(|(slope, by)| (felt(&slope, (&key, &outcome.own)), by));
        match felt {
            Ok((slope, _)) if slope.is_zero() => outcome.without_effect.push(key.path),
            Ok((slope, by)) => outcome.keys.push(KeySensitivity { key, slope, by }),
            Err(why) => outcome.refused.push((key.path, why)),
        }
    }
    outcome.keys = outcome.most_telling(UnitSystem::Si).into_iter().cloned().collect();
    Ok(outcome)
}

/// What is asked of every number.
struct Asked<'a> {
    document: &'a Document,
    case: &'a str,
    /// None where bearings have play.
    adjoint: Option<Adjoint>,
    /// Meshes of the seats of the axle itself: a mesh that changes with a number would make a step of its own.
    layouts: SeatLayouts,
}

type Found = Result<(CaseReadings, SlopeBy), String>;

impl Asked<'_> {
    fn key(&self, key: NumberKey) -> (NumberKey, Found) {
        let size = if key.value == 0.0 { size_of_zero(key.kind) } else { key.value.abs() };
        let by_adjoint = self.adjoint.as_ref().map(|adjoint| {
            let at = |value: f64| {
                let (axle, case) = self.changed(&key.path, value)?;
                adjoint.nearby(&axle, &case).map_err(|error| error.to_string())
            };
            slope((key.value, SHARE * size), at)
        });
        if let Some(Ok(slope)) = by_adjoint {
            return (key, Ok((slope, SlopeBy::Adjoint)));
        }
        let at = |value: f64| {
            let (axle, case) = self.changed(&key.path, value)?;
            Ok(solved(&axle, &case).map_err(|error| error.to_string())?.0)
        };
        let found = slope((key.value, SHARE_SOLVED * size), at);
        (key, found.map(|slope| (slope, SlopeBy::Solutions)))
    }

    fn changed(&self, path: &str, value: f64) -> Result<(Axle, LoadCase), String> {
        let mut document = self.document.clone();
        document.set_number(path, value).map_err(|refusal| refusal.to_string())?;
        let model = Model::of(&document).map_err(|problems| in_words(&problems))?;
        let case = load_case(&model, self.case)?.clone();
        Ok((Axle { seat_layouts: self.layouts.clone(), ..model.axle }, case))
    }
}

/// A slope with zeros for what is rounding: less than its share of a reading when the number changes by itself.
fn felt(slope: &CaseReadings, (key, own): (&NumberKey, &CaseReadings)) -> CaseReadings {
    let size = if key.value == 0.0 { size_of_zero(key.kind) } else { key.value.abs() };
    let kept = |slope: f64, own: f64| if (slope * size).abs() > ROUNDING * own.abs() { slope } else { 0.0 };
    CaseReadings {
        camber_change: Sides::each(|side| kept(*slope.camber_change.of(side), *own.camber_change.of(side))),
        bow: kept(slope.bow, own.bow),
        peak_stress: kept(slope.peak_stress, own.peak_stress),
        axle_mass: kept(slope.axle_mass, own.axle_mass),
    }
}

/// A number of this kind that is not zero.
fn size_of_zero(kind: Kind) -> f64 {
    match kind {
        // A seat of 1000 kN m/rad gives way by 1e-6 rad/(N m).
        Kind::RotationalFlexibility => 1e-6,
        Kind::RotationalStiffness | Kind::Stiffness => 1e5,
        Kind::Force => 1e3,
        _ => IN_PLACE_OF_ZERO,
    }
}

fn load_case<'m>(model: &'m Model, name: &str) -> Result<&'m LoadCase, String> {
    let found = model.cases.iter().find(|case| case.name == name);
    found.ok_or_else(|| format!("there is no load case {name}"))
}

/// What an axle reads, solved as a whole, and where its stress is greatest.
fn solved(axle: &Axle, case: &LoadCase) -> Result<(CaseReadings, f64), AxleError> {
    let solved = StaticDesign::of(axle)?.case(case)?;
    let readings = CaseReadings {
        camber_change: Sides::each(|side| solved.wheels.of(side).camber_change),
        bow: solved.bow,
        peak_stress: solved.peak_stress,
        axle_mass: axle.mass(),
    };
    Ok((readings, solved.peak_stress_y))
}
