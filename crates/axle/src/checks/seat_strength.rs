//! Strength of the wall at the seats, where shells of it are asked for: hot spots at bracket toes, local buckling and the
//! crush of a clamp.

use std::sync::Arc;

use axlebow_strength::Check;
use axlebow_units::Kind;
use axlebow_wall::{ClampCrush, Fineness, HotSpot, SeatResultants, SeatWall, SolvedSeat, clamp_force};

use crate::assembly::seat_wall::{seat_wall, yield_strength_at};
use crate::checks::not_made::NotMade;
use crate::checks::placed_check::{CheckedPart, PlacedCheck};
use crate::checks::strength_options::StrengthOptions;
use crate::outcome::{CaseOutcome, DiagramPoint, Warning};
use crate::parts::seat::Fixing;
use crate::{Axle, AxleError, Side, Sides};

const HOT_SPOT: &str = "A. Hobbacher, IIW Recommendations for Fatigue Design, 2nd ed. 2016, 2.2.3.4: extrapolated from 0.4 t and 1.0 t to the \
     edge of a rigid bracket (from memory); against the allowed stress here, for fatigue against FAT 90 or 100";
const BUCKLING: &str =
    "linear buckling of the perfect wall; real ones reach about half of it (EN 1993-1-6, from memory)";
const CRUSH: &str = "first yield on a face of the wall under saddle and block that press evenly, nothing else acting; F = n T/(K d), n the legs of all U-bolts, two a bolt";

/// Part of a perfect wall's buckling load that a real one reaches (EN 1993-1-6, elastic imperfection factor of a common
/// make at r/t below 50; from memory).
const REAL_WALL: f64 = 0.5;

/// The shells of both seats; none where a model does not ask for them.
pub(crate) struct SeatStrength<'a> {
    axle: &'a Axle,
    seats: Sides<Option<Arc<SolvedWall>>>,
    ask: StrengthOptions,
}

/// A seat and what its shells say.
struct SolvedWall {
    seat: SeatWall,
    shells: SolvedSeat,
    crush: Option<ClampCrush>,
}

impl SolvedWall {
    fn of(axle: &Axle, side: Side) -> Result<Option<Arc<Self>>, AxleError> {
        if !axle.seats.of(side).wall.is_shell() {
            return Ok(None);
        }
        let seat = seat_wall(axle, side);
        let solved = seat.solved(&Fineness::USUAL).and_then(|shells| {
            let crush = seat.crush(&Fineness::USUAL)?;
            Ok(SolvedWall { seat, shells, crush })
        });
        solved.map(|solved| Some(Arc::new(solved))).map_err(|error| AxleError::Wall { side, error })
    }
}

impl<'a> SeatStrength<'a> {
    /// Two seats alike are solved once.
    pub(crate) fn of(axle: &'a Axle, ask: StrengthOptions) -> Result<Self, AxleError> {
        let left = SolvedWall::of(axle, Side::Left)?;
        let same = left.as_ref().filter(|left| left.seat == seat_wall(axle, Side::Right)).cloned();
        let right = match same {
            Some(left) => Some(left),
            None => SolvedWall::of(axle, Side::Right)?,
        };
        Ok(SeatStrength { axle, seats: Sides { left, right }, ask })
    }

    /// Hot spots of a case.
    ///
    /// # Errors
    /// [`AxleError::Strength`] for a HAZ strength factor out of range.
    pub(crate) fn hot_spots(&self, case: &CaseOutcome) -> Result<Vec<PlacedCheck>, AxleError> {
        let each = Side::BOTH.into_iter().map(|side| self.hot_spot(case, side));
        Ok(each.collect::<Result<Vec<_>, _>>()?.into_iter().flatten().collect())
    }

    fn hot_spot(&self, case: &CaseOutcome, side: Side) -> Result<Option<PlacedCheck>, AxleError> {
        let (Some(solved), Some(strength)) =
            (self.seats.of(side).as_ref(), yield_strength_at(self.axle, side))
        else {
            return Ok(None);
        };
        let Some(spot) = solved.shells.hot_spot(&beside(case, side)) else { return Ok(None) };
        let (what, strength) = match self.axle.seats.of(side).fixing {
            Fixing::Welded => {
                ("hot spot at the bracket's toe", self.ask.beside_weld(strength)?.weakened(strength))
            }
            Fixing::Clamped => ("stress at the edge of the clamp", strength),
        };
        let check = Check::at_most(what, Kind::Stress, spot.stress.abs(), strength)
            .with_safety_factor(self.ask.safety_factor)
            .sourced(HOT_SPOT)
            .advising("make the bracket broader or softer at its ends, or the wall thicker");
        let y = case.seats.of(side).y + spot.along;
        Ok(Some(PlacedCheck {
            part: CheckedPart::Seat,
            place: format!("{}-seat", side.word()),
            y: Some(y),
            check,
        }))
    }

    /// Local buckling of the wall that is bent most in any case, and the crush of the clamps.
    pub(crate) fn walls(&self, cases: &[CaseOutcome]) -> Result<Vec<PlacedCheck>, AxleError> {
        let mut checks: Vec<PlacedCheck> = self.buckling(cases)?.into_iter().collect();
        for side in Side::BOTH {
            checks.extend(self.crush(side)?.into_iter().map(|check| placed(side, check)));
        }
        Ok(checks)
    }

    fn buckling(&self, cases: &[CaseOutcome]) -> Result<Option<PlacedCheck>, AxleError> {
        let there = Side::BOTH.into_iter().filter_map(|side| Some((side, self.seats.of(side).as_ref()?)));
        let loaded =
            there.flat_map(|(side, own)| cases.iter().map(move |case| (side, own, beside(case, side))));
        let worst = loaded.max_by(|a, b| largest_moment(&a.2).total_cmp(&largest_moment(&b.2)));
        let Some((side, own, carried)) = worst else { return Ok(None) };
        let factor = own.seat.buckling_factor(&carried, &Fineness::USUAL.scaled(2.0));
        let factor = factor.map_err(|error| AxleError::Wall { side, error })?;
        let check = |factor| {
            Check::at_least("local buckling factor", Kind::Ratio, factor, 1.0 / REAL_WALL)
                .with_safety_factor(self.ask.safety_factor)
                .sourced(BUCKLING)
                .advising("make the wall thicker or the bracket wider")
        };
        Ok(factor.map(|factor| placed(side, check(factor))))
    }

    fn crush(&self, side: Side) -> Result<Vec<Check>, AxleError> {
        let bracket = self.axle.seats.of(side).bracket;
        let (Some(torque), Some(limit)) = (bracket.torque, self.elastic_limit(side)) else {
            return Ok(Vec::new());
        };
        let force = clamp_force(2 * bracket.u_bolts, torque, bracket.nut_factor, bracket.u_bolt_diameter);
        let force = force.map_err(|error| AxleError::Wall { side, error })?;
        let flattening =
            self.seats.of(side).as_ref().and_then(|own| own.crush).map_or(0.0, |own| own.flattening);
        let advice =
            "torque no higher than the axle maker allows; a thicker wall or a longer saddle stands more";
        let flat = ("flattening under the clamp", force * flattening, limit * flattening);
        let checks = [
            Check::at_most("clamp force of the U-bolts", Kind::Force, force, limit).sourced(CRUSH),
            Check::at_most(flat.0, Kind::Length, flat.1, flat.2).advisory(),
        ];
        Ok(checks.map(|check| check.advising(advice).with_safety_factor(self.ask.safety_factor)).to_vec())
    }

    /// Clamp force at which the wall begins to yield, N.
    fn elastic_limit(&self, side: Side) -> Option<f64> {
        let crush = self.seats.of(side).as_ref()?.crush?;
        Some(crush.elastic_limit(yield_strength_at(self.axle, side)?))
    }

    /// What a torque would be needed for.
    pub(crate) fn warnings(&self) -> Vec<Warning> {
        let unknown = |side: &Side| {
            self.axle.seats.of(*side).bracket.torque.is_none() && self.elastic_limit(*side).is_some()
        };
        let warning = |side: Side| Warning {
            text: format!(
                "the torque of the U-bolts at the {} seat is not given, so that its crush is not checked; its wall begins to yield at a clamp force of {:.0} kN",
                side.word(),
                self.elastic_limit(side).unwrap_or(0.0) / 1e3
            ),
            advice: "give `u_bolt_torque` of the seat".to_owned(),
        };
        Side::BOTH.into_iter().find(unknown).map(warning).into_iter().collect()
    }

    /// What is not checked where no shells are asked for, or no torque is given.
    pub(crate) fn not_made(&self) -> Vec<NotMade> {
        let refused = |side: Side, what: &str, reason: &str, advice: &str| NotMade {
            place: format!("{}-seat", side.word()),
            what: what.to_owned(),
            reason: reason.to_owned(),
            advice: advice.to_owned(),
        };
        let each = Side::BOTH.into_iter().filter_map(|side| {
            if self.seats.of(side).is_none() {
                let (what, reason) =
                    ("hot spot, local buckling and crush of the wall", "no shells of it are asked for");
                return Some(refused(side, what, reason, "give `wall_flexibility = \"shell\"` of the seat"));
            }
            let open =
                self.axle.seats.of(side).bracket.torque.is_none() && self.elastic_limit(side).is_some();
            let advice = "give `u_bolt_torque` of the seat";
            open.then(|| {
                refused(side, "crush of the clamp", "the torque of its U-bolts is not given", advice)
            })
        });
        each.collect()
    }

    /// Whether anything here depends on tightened U-bolts.
    pub(crate) fn has_clamp(&self) -> bool {
        Side::BOTH.into_iter().any(|side| self.seats.of(side).as_ref().is_some_and(|own| own.crush.is_some()))
    }
}

fn placed(side: Side, check: Check) -> PlacedCheck {
    PlacedCheck { part: CheckedPart::Seat, place: format!("{}-seat", side.word()), y: None, check }
}

/// The hot spot of a seat's wall in a case; none where no shells are asked for, or they find none.
///
/// # Errors
/// [`AxleError::Wall`] where shells do not suit the wall.
pub(crate) fn hot_spot(axle: &Axle, case: &CaseOutcome, side: Side) -> Result<Option<HotSpot>, AxleError> {
    let solved = SolvedWall::of(axle, side)?;
    Ok(solved.and_then(|own| own.shells.hot_spot(&beside(case, side))))
}

/// What the axle carries on both sides of a seat's center.
pub(crate) fn beside(case: &CaseOutcome, side: Side) -> SeatResultants {
    let y = case.seats.of(side).y;
    let there = |point: &&DiagramPoint| (point.y - y).abs() < 1e-9;
    let six = |point: Option<&DiagramPoint>| {
        point.map_or([0.0; 6], |point| {
            let r = point.resultants;
            [r.shear_x, r.axial, r.shear_z, r.moment_x, r.torsion, r.moment_z]
        })
    };
    // The diagram runs from left to right, toward -Y.
    SeatResultants {
        after: six(case.diagram.iter().find(there)),
        before: six(case.diagram.iter().rfind(there)),
    }
}

fn largest_moment(carried: &SeatResultants) -> f64 {
    [carried.before, carried.after].map(|six| six[3].hypot(six[5])).into_iter().fold(0.0, f64::max)
}
