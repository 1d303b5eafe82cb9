//! Doubts about a static result that follow from the axle itself.

use axlebow_wall::Caveat;

use crate::outcome::{CaseOutcome, Warning};
use crate::{Axle, AxleError, LoadCase, Side, Sides, StaticReadings, WallAtSeat};

/// Rotation up to which small-displacement theory is kept to, rad: at 5 degrees the sine and the angle differ
/// by 0.13 %.
pub(crate) const SMALL_ROTATION: f64 = 0.087;

/// Largest endplay that the trade accepts, m: 0.005 in, TMC Recommended Practice RP 618.
const ACCEPTED_ENDPLAY: f64 = 0.127e-3;

/// Everything worth a warning in an axle and the readings of one case of it, as studies ask for them: what
/// [`crate::flex`] says of the same case, but for what a second model of its stiffeners shows.
///
/// # Errors
/// [`AxleError::Wall`] where shells or formulas do not suit the wall at a seat.
pub fn static_warnings(
    axle: &Axle,
    case: &LoadCase,
    readings: &StaticReadings,
) -> Result<Vec<Warning>, AxleError> {
    let walls = Sides { left: WallAtSeat::of(axle, Side::Left)?, right: WallAtSeat::of(axle, Side::Right)? };
    let mut warnings = of_readings(axle, &[CaseReadings { case: &case.name, readings: *readings }]);
    warnings.extend(of_walls(&walls));
    Ok(warnings)
}

/// Everything worth a warning in an axle and its results.
pub(crate) fn warnings(axle: &Axle, cases: &[CaseOutcome]) -> Vec<Warning> {
    of_readings(axle, &cases.iter().map(CaseReadings::from).collect::<Vec<_>>())
}

/// What doubts about a case go by.
struct CaseReadings<'c> {
    /// Name of the case.
    case: &'c str,
    readings: StaticReadings,
}

impl<'c> From<&'c CaseOutcome> for CaseReadings<'c> {
    fn from(case: &'c CaseOutcome) -> Self {
        CaseReadings { case: &case.name, readings: StaticReadings::from(case) }
    }
}

fn of_readings(axle: &Axle, cases: &[CaseReadings]) -> Vec<Warning> {
    let mut warnings = Vec::new();
    warnings.extend(beyond_yield(axle, cases));
    warnings.extend(beyond_small_rotation(cases));
    warnings.extend(off_road(axle, cases));
    warnings.extend(unbalanced(cases));
    if let Some(sides) = sides_where(|side| axle.seats.of(side).rotational_stiffness == 0.0) {
        warnings.push(Warning {
            text: format!("the seat has no rotational stiffness ({sides}): it carries no bending moment"),
            advice: "give rotational_stiffness if arm, spring pack or bush resist the axle's slope"
                .to_owned(),
        });
    }
    let endplay = |side: Side| axle.wheel_ends.of(side).endplay;
    if let Some(sides) = sides_where(|side| endplay(side) > ACCEPTED_ENDPLAY) {
        warnings.push(Warning {
            text: format!(
                "the bearings have {:.2} mm of endplay ({sides}); TMC RP 618 accepts up to 0.127 mm (0.005 in)",
                endplay(Side::Left).max(endplay(Side::Right)) * 1e3
            ),
            advice: "set the bearings and check the endplay with a dial indicator before anything else"
                .to_owned(),
        });
    }
    let beyond = |side: Side| {
        let end = axle.wheel_ends.of(side);
        end.mounting_face + axle.wheels.of(side).outset() - end.outer_bearing
    };
    if let Some(sides) = sides_where(|side| beyond(side) > 0.0) {
        let farthest = beyond(Side::Left).max(beyond(Side::Right));
        warnings.push(Warning {
            text: format!(
                "the wheel's load acts {:.0} mm outboard of the outer bearing ({sides}), so that the inner bearing is loaded the other way",
                farthest * 1e3
            ),
            advice: "ask the axle maker whether this wheel offset is within the axle's rating".to_owned(),
        });
    }
    warnings
}

/// What shells and formulas of the wall leave open, once where both seats are alike.
pub(crate) fn of_walls(walls: &Sides<WallAtSeat>) -> Vec<Warning> {
    let both = walls.left.caveats == walls.right.caveats;
    let sides = Side::BOTH.into_iter().filter(|side| !(both && *side == Side::Right));
    let warning = |side: Side, caveat: &Caveat| Warning {
        text: format!(
            "wall at the seat ({}): {}",
            if both { "left and right" } else { side.word() },
            caveat.text
        ),
        advice: caveat.advice.clone(),
    };
    sides.flat_map(|side| walls.of(side).caveats.iter().map(move |caveat| warning(side, caveat))).collect()
}

/// The case of largest stress, where that is beyond the yield strength of the part in which it acts.
fn beyond_yield(axle: &Axle, cases: &[CaseReadings]) -> Option<Warning> {
    let over = |case: &CaseReadings| {
        let (stress, y) = (case.readings.peak_stress.abs(), case.readings.peak_stress_y.abs());
        let part = axle.body.pieces().iter().find(|piece| y <= piece.to)?.part;
        let strength = axle.body.material(part).yield_strength()?;
        (stress > strength).then_some((stress, strength))
    };
    let worst = cases.iter().filter_map(|case| over(case).map(|(stress, limit)| (case, stress, limit)));
    let (case, stress, limit) = worst.max_by(|a, b| (a.1 / a.2).total_cmp(&(b.1 / b.2)))?;
    Some(Warning {
        text: format!(
            "in case {} the fiber stress of {:.0} MPa is beyond the yield strength of {:.0} MPa: the axle would stay bent, and elastic results do not hold",
            case.case,
            stress / 1e6,
            limit / 1e6
        ),
        advice: "check loads, sections and the unit of every number; then ask the axle maker".to_owned(),
    })
}

/// The case that turns a wheel or the axle furthest, where that is beyond small rotations.
fn beyond_small_rotation(cases: &[CaseReadings]) -> Option<Warning> {
    let lean = |case: &CaseReadings| {
        let wheels = &case.readings.wheels;
        wheels.left.camber_change.abs().max(wheels.right.camber_change.abs())
    };
    let turn = |case: &CaseReadings| lean(case).max(case.readings.axle_roll.abs());
    let most = cases.iter().max_by(|a, b| turn(a).total_cmp(&turn(b)))?;
    let rolls = lean(most) < most.readings.axle_roll.abs();
    let what = if rolls { "the axle rolls" } else { "a wheel leans" };
    (turn(most) > SMALL_ROTATION).then(|| Warning {
        text: format!(
            "in case {} {what} by {:.1} deg: displacements are taken as small, and beyond 5 deg they are not",
            most.case,
            turn(most).to_degrees()
        ),
        advice: "check loads, sections, the elastic modulus and the unit of every number".to_owned(),
    })
}

/// Tires that are off the road, in the first case that has any.
fn off_road(axle: &Axle, cases: &[CaseReadings]) -> Option<Warning> {
    let lifted = |case: &CaseReadings| {
        let of_side = |side: Side| {
            let off = case.readings.wheels.of(side).off_road;
            let own = axle.wheels.of(side).tires().zip(off).filter(|(_, off)| *off);
            own.map(move |(tire, _)| format!("the {}", tire.slot.of_side(side.word())))
        };
        Side::BOTH.into_iter().flat_map(of_side).collect::<Vec<_>>()
    };
    let all: Vec<_> = cases.iter().map(|case| (case, lifted(case))).collect();
    let (case, tires) = all.into_iter().find(|(_, tires)| !tires.is_empty())?;
    let verb = if tires.len() == 1 { "is" } else { "are" };
    Some(Warning {
        text: format!("in case {} {} {verb} off the road", case.case, tires.join(" and ")),
        advice: "the other tires carry the load: check camber, tire pressures and what each tire may carry"
            .to_owned(),
    })
}

/// Share of the largest load by which forces may not balance before results lose digits that a reader sees.
const UNBALANCED: f64 = 1e-6;

/// The case whose forces balance least, where digits are lost.
fn unbalanced(cases: &[CaseReadings]) -> Option<Warning> {
    let residual = |case: &CaseReadings| case.readings.residual;
    let most = cases.iter().max_by(|a, b| residual(a).total_cmp(&residual(b)))?;
    (residual(most) > UNBALANCED).then(|| Warning {
        text: format!(
            "in case {} forces balance within {:.0e} of the largest load only: digits are lost where stiffnesses lie far apart",
            most.case, residual(most)
        ),
        advice: "move stations, seat edges, bearings and section changes that lie within a millimeter of one another together or apart, and check the unit of every stiffness".to_owned(),
    })
}

/// The sides for which something holds, in words; `None` when it holds for neither.
fn sides_where(holds: impl Fn(Side) -> bool) -> Option<&'static str> {
    match (holds(Side::Left), holds(Side::Right)) {
        (true, true) => Some("left and right"),
        (true, false) => Some("left"),
        (false, true) => Some("right"),
        (false, false) => None,
    }
}
