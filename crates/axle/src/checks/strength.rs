//! Strength of an axle under its load cases: the section at every station against yield, every wall against its
//! class, the weld of every stiffener against its limits, the wall at a seat by shells.
//!
//! One rule: a check whose limit is one of strength (stress, weld, class, buckling, clamp force) binds. An axle with one
//! binding check past its limit fails, in whatever load case. Checks that only advise never do.

use axlebow_sections::ShearForces;
use axlebow_strength::{
    AllowableStress, Check, SectionStresses, Verdict, Wall, aisc_wall_check, en_wall_check, governing,
    stress_checks, walls, worst_verdict,
};

use crate::assembly::preheat::{Preheat, preheats};
use crate::checks::bearing_lives::bearing_checks;
use crate::checks::not_made::NotMade;
use crate::checks::placed_check::{CheckedPart, PlacedCheck};
use crate::checks::seat_strength::SeatStrength;
use crate::checks::spindle_fillets::{fillet_checks, spindle_fillets};
use crate::checks::strength_options::{StrengthOptions, StrengthRules};
use crate::checks::weld_strength::weld_checks;
use crate::outcome::{CaseOutcome, Resultants, StationOutcome, Warning};
use crate::parts::body::{Part, Piece};
use crate::parts::seat::Fixing;
use crate::{Axle, AxleError, LoadCase, Side, flex};

/// Result of [`strength`].
#[derive(Debug, Clone, PartialEq)]
pub struct StrengthOutcome {
    /// What was asked.
    pub ask: StrengthOptions,
    /// Each load case.
    pub cases: Vec<StrengthCase>,
    /// Walls against their class; they do not depend on a load.
    pub walls: Vec<PlacedCheck>,
    /// Life of the wheel bearings, running straight under the rated load.
    pub bearings: Vec<PlacedCheck>,
    /// Checks that could not be made; none of them is a pass.
    pub not_made: Vec<NotMade>,
    /// Whether checks depend on tightened U-bolts.
    pub clamped: bool,
    /// What each steel that is welded says about preheat.
    pub preheat: Vec<Preheat>,
    /// What stands in for what the file does not say.
    pub assumptions: Vec<String>,
    /// Things that the reader must know, each with what to do.
    pub warnings: Vec<Warning>,
}

/// Checks of one load case.
#[derive(Debug, Clone, PartialEq)]
pub struct StrengthCase {
    /// Name of the case.
    pub name: String,
    /// What acts.
    pub description: String,
    /// Every check, from left to right.
    pub checks: Vec<PlacedCheck>,
}

impl StrengthOutcome {
    /// Every check, those of walls and bearings first.
    pub fn checks(&self) -> impl Iterator<Item = &PlacedCheck> {
        self.walls.iter().chain(&self.bearings).chain(self.cases.iter().flat_map(|case| &case.checks))
    }

    /// Whether no binding check fails.
    pub fn holds(&self) -> bool {
        worst_verdict(self.checks().map(|placed| &placed.check)) != Verdict::Fails
    }

    /// The binding check that uses most of its limit, in any case, of equal ones the first; none without such a check.
    pub fn governing(&self) -> Option<Governing<'_>> {
        self.governing_among(|_| true)
    }

    fn governing_among(&self, counts: impl Fn(&PlacedCheck) -> bool) -> Option<Governing<'_>> {
        let most = governing(self.checks().filter(|placed| counts(placed)).map(|placed| &placed.check))?;
        let own = |placed: &&PlacedCheck| std::ptr::eq(&placed.check, most);
        let placed = self.checks().find(own)?;
        let case = self.cases.iter().find(|case| case.checks.iter().any(|placed| own(&placed)));
        Some(Governing { placed, case })
    }

    /// The binding check of a part that uses most of its limit, in any case, of equal ones the first; none without such a
    /// check.
    pub fn governing_of(&self, part: CheckedPart) -> Option<Governing<'_>> {
        self.governing_among(|placed| placed.part == part)
    }

    /// Greatest share of its limit that a binding check uses; none without such a check.
    pub fn greatest_use(&self) -> Option<f64> {
        self.governing().map(|governing| governing.placed.check.utilization())
    }
}

/// The check that says most about an axle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Governing<'a> {
    /// The check.
    pub placed: &'a PlacedCheck,
    /// Its load case; none for a wall, which depends on none, and a bearing, which has one of its own.
    pub case: Option<&'a StrengthCase>,
}

/// Checks an axle under load cases.
///
/// # Errors
/// As [`flex`]; [`AxleError::Strength`] for a safety factor out of range.
pub fn strength(axle: &Axle, cases: &[LoadCase], ask: StrengthOptions) -> Result<StrengthOutcome, AxleError> {
    let outcome = flex(axle, cases)?;
    // Refused before any material is looked at, so that it is refused for every axle.
    AllowableStress::new(1.0, ask.safety_factor)?;
    let seats = SeatStrength::of(axle, ask)?;
    let mut checked: Vec<StrengthCase> =
        outcome.cases.iter().map(|case| strength_case(axle, case, ask)).collect::<Result<_, _>>()?;
    for (own, case) in checked.iter_mut().zip(&outcome.cases) {
        own.checks.extend(seats.hot_spots(case)?);
    }
    let mut walls = wall_checks(axle, ask.rules);
    walls.extend(seats.walls(&outcome.cases)?);
    let (bearings, no_life) = bearing_checks(axle, ask, (cases, &outcome.cases))?;
    let (_, no_fillets) = spindle_fillets(axle);
    Ok(StrengthOutcome {
        ask,
        cases: checked,
        walls,
        bearings,
        not_made: no_yield(axle)
            .into_iter()
            .chain(no_fillets)
            .chain(no_life)
            .chain(seats.not_made())
            .collect(),
        clamped: seats.has_clamp(),
        preheat: preheats(axle)?,
        assumptions: assumptions(axle, ask)?,
        warnings: warnings(axle).into_iter().chain(seats.warnings()).chain(outcome.warnings).collect(),
    })
}

fn strength_case(axle: &Axle, case: &CaseOutcome, ask: StrengthOptions) -> Result<StrengthCase, AxleError> {
    let mut checks = Vec::new();
    for station in &case.stations {
        checks.extend(station_checks(axle, station, ask)?);
    }
    checks.extend(fillet_checks(axle, case, ask)?);
    checks.extend(stiffener_checks(axle, case, ask)?);
    checks.extend(weld_checks(axle, case, ask)?);
    Ok(StrengthCase { name: case.name.clone(), description: case.description.clone(), checks })
}

/// The fiber stress of every stiffener where it is largest, in steel that its weld has heated.
fn stiffener_checks(
    axle: &Axle,
    case: &CaseOutcome,
    ask: StrengthOptions,
) -> Result<Vec<PlacedCheck>, AxleError> {
    let outcomes = case.stiffening.iter().flat_map(|stiffening| &stiffening.stiffeners);
    let mut checks = Vec::new();
    for (stiffener, outcome) in axle.stiffeners.iter().zip(outcomes) {
        let Some(yield_strength) = stiffener.material.yield_strength() else { continue };
        let kept = ask.beside_weld(yield_strength)?.factor();
        let allowable = AllowableStress::new(kept * yield_strength, ask.safety_factor)?;
        let fiber = outcome.peak_stress.stress.abs();
        let stresses = SectionStresses { fiber, shear: 0.0, equivalent: fiber };
        let [fiber, ..] = stress_checks(&stresses, &allowable);
        let check = if kept < 1.0 { fiber.in_heat_affected_zone() } else { fiber };
        let (part, place) = (CheckedPart::Stiffener, stiffener.name.clone());
        checks.push(PlacedCheck { part, place, y: Some(outcome.peak_stress.y), check });
    }
    Ok(checks)
}

/// Fiber, shear and equivalent stress of the axle at a station, each of the piece where it uses most of its limit.
fn station_checks(
    axle: &Axle,
    station: &StationOutcome,
    ask: StrengthOptions,
) -> Result<Vec<PlacedCheck>, AxleError> {
    // Hubs and tires have no section of the axle.
    if station.stress == 0.0 {
        return Ok(Vec::new());
    }
    let mut worst: Vec<(Part, Check)> = Vec::new();
    for piece in axle.body.pieces().iter().filter(|piece| meets(piece, station.y)) {
        let checks = piece_checks(axle, piece, station, ask)?;
        let checks: Vec<_> = checks.into_iter().map(|check| (piece.part, check)).collect();
        if worst.is_empty() {
            worst = checks;
            continue;
        }
        let more = |(kept, own): ((Part, Check), (Part, Check))| {
            if own.1.utilization() > kept.1.utilization() { own } else { kept }
        };
        worst = worst.into_iter().zip(checks).map(more).collect();
    }
    let place = |(part, check)| PlacedCheck {
        part: CheckedPart::Body(part),
        place: station.name.clone(),
        y: Some(station.y),
        check,
    };
    Ok(worst.into_iter().map(place).collect())
}

fn meets(piece: &Piece, y: f64) -> bool {
    let near = crate::SMALLEST_STEP;
    (piece.from - near..=piece.to + near).contains(&y.abs())
}

fn piece_checks(
    axle: &Axle,
    piece: &Piece,
    station: &StationOutcome,
    ask: StrengthOptions,
) -> Result<Vec<Check>, AxleError> {
    let Some(yield_strength) = axle.body.material(piece.part).yield_strength() else { return Ok(Vec::new()) };
    let distance = station.y.abs();
    let (profile, properties) = (piece.profile_at(distance), axle.body.properties(piece, distance));
    let beside_weld = piece.part != Part::Spindle && is_welded(axle, station.y);
    let kept = if beside_weld { ask.beside_weld(yield_strength)?.factor() } else { 1.0 };
    let allowable = AllowableStress::new(kept * yield_strength, ask.safety_factor)?;
    let Resultants { axial, shear_x, shear_z, moment_x, moment_z, torsion } = station.axle_resultants;
    let shear = ShearForces { shear_x, shear_z, torsion };
    let normal = properties.stress_field(axial, moment_x, moment_z);
    let stresses = SectionStresses {
        fiber: profile.fiber_stress(&properties, axial, moment_x, moment_z).0.abs(),
        shear: profile.transverse_shear_peak(shear_x, shear_z) + properties.torsion_shear_peak(torsion),
        equivalent: profile.equivalent_stress(&properties, &normal, &shear),
    };
    let checks = stress_checks(&stresses, &allowable);
    Ok(checks.map(|check| if kept < 1.0 { check.in_heat_affected_zone() } else { check }).to_vec())
}

/// Whether the steel at a position was heated by the weld of a seat or of a stiffener, its ends and what lies between
/// stitches included.
fn is_welded(axle: &Axle, y: f64) -> bool {
    let seat = axle.seats.of(if y < 0.0 { Side::Right } else { Side::Left });
    let near = crate::SMALLEST_STEP;
    let by_seat = seat.fixing == Fixing::Welded
        && (seat.inner_edge() - near..=seat.outer_edge() + near).contains(&y.abs());
    let mut stiffeners = axle.stiffeners.iter();
    by_seat || stiffeners.any(|stiffener| (stiffener.from - near..=stiffener.to + near).contains(&y))
}

/// Walls of tube and housing against their class, one for each piece that differs.
fn wall_checks(axle: &Axle, rules: StrengthRules) -> Vec<PlacedCheck> {
    let mut found: Vec<PlacedCheck> = Vec::new();
    for piece in axle.body.pieces() {
        let material = axle.body.material(piece.part);
        let Some(yield_strength) = material.yield_strength() else { continue };
        let check = |wall: &Wall| match rules {
            StrengthRules::Aisc => aisc_wall_check(wall, material.elastic_modulus(), yield_strength),
            StrengthRules::En => en_wall_check(wall, yield_strength),
        };
        for profile in [piece.inboard, piece.outboard] {
            let part = CheckedPart::Body(piece.part);
            let placed = |check| PlacedCheck { part, place: piece.part.word().to_owned(), y: None, check };
            let checks = walls(&profile).iter().map(check).map(placed).collect::<Vec<_>>();
            for placed in checks {
                if !found.contains(&placed) {
                    found.push(placed);
                }
            }
        }
    }
    found
}

fn assumptions(axle: &Axle, ask: StrengthOptions) -> Result<Vec<String>, AxleError> {
    let material = axle.body.material(axle.body.pieces()[0].part);
    let mut found = Vec::new();
    if let Some(strength) = material.yield_strength().filter(|_| axle.has_welds()) {
        let zone = ask.beside_weld(strength)?;
        found.extend(zone.assumption());
        if zone.factor() < 1.0 {
            found.push(
                "HAZ: over the length of a weld, its ends included, the whole section counts as heated"
                    .to_owned(),
            );
        }
    }
    if axle.stiffeners.is_empty() {
        return Ok(found);
    }
    if material.ultimate_strength().is_none() && material.yield_strength().is_some() {
        let part = axle.body.pieces()[0].part.word();
        found.push(format!(
            "ultimate strength of the {part} equal to its yield strength, the least it can be"
        ));
    }
    Ok(found)
}

/// Parts of which no yield strength is known.
fn parts_without_yield(axle: &Axle) -> Vec<Part> {
    let mut parts: Vec<Part> = Vec::new();
    for piece in axle.body.pieces() {
        if axle.body.material(piece.part).yield_strength().is_none() && !parts.contains(&piece.part) {
            parts.push(piece.part);
        }
    }
    parts
}

const GIVE_YIELD: &str = "give `yield_strength` of its material, from its mill certificate";

fn warnings(axle: &Axle) -> Vec<Warning> {
    let unknown = |part: Part| Warning {
        text: format!("the yield strength of the {} is not given, so nothing of it is checked", part.word()),
        advice: GIVE_YIELD.to_owned(),
    };
    parts_without_yield(axle).into_iter().map(unknown).collect()
}

fn no_yield(axle: &Axle) -> Vec<NotMade> {
    let unknown = |part: Part| NotMade {
        place: part.word().to_owned(),
        what: "stresses and walls".to_owned(),
        reason: "its yield strength is not given".to_owned(),
        advice: GIVE_YIELD.to_owned(),
    };
    parts_without_yield(axle).into_iter().map(unknown).collect()
}
