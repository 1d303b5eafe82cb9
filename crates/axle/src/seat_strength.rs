//! Strength of the wall at the seats, where shells of it are asked for: hot spots at bracket toes, local buckling and the
//! crush of a clamp.

use axlebow_strength::{Check, HeatAffectedZone};
use axlebow_units::Kind;
use axlebow_wall::{Fineness, SeatResultants, SolvedSeat, clamp_force};

use crate::outcome::{CaseOutcome, DiagramPoint, Warning};
use crate::seat::Fixing;
use crate::strength::{PlacedCheck, StrengthAsk};
use crate::wall_at_seat::{seat_wall, yield_strength_at};
use crate::{Axle, AxleError, Side, Sides};

const HOT_SPOT: &str = "A. Hobbacher, IIW Recommendations for Fatigue Design, 2nd ed. 2016, 2.2.3.4: extrapolated from 0.4 t and 1.0 t to the \
     edge of a rigid bracket (from memory); against the allowed stress here, for fatigue against FAT 90 or 100";
const BUCKLING: &str =
    "linear buckling of the perfect wall; real ones reach about half of it (EN 1993-1-6, from memory)";
const CRUSH: &str = "first yield on a face of the wall under saddle and block that press evenly, nothing else acting; F = n T/(K d)";

/// Part of a perfect wall's buckling load that a real one reaches (EN 1993-1-6, elastic imperfection factor of a common
/// make at r/t below 50; from memory).
const REAL_WALL: f64 = 0.5;

/// The shells of both seats; none where a model does not ask for them.
pub(crate) struct SeatStrength<'a> {
    axle: &'a Axle,
    solved: Sides<Option<SolvedSeat>>,
    ask: StrengthAsk,
}

impl<'a> SeatStrength<'a> {
    pub(crate) fn of(axle: &'a Axle, ask: StrengthAsk) -> Result<Self, AxleError> {
        let solve = |side: Side| -> Result<Option<SolvedSeat>, AxleError> {
            if !axle.seats.of(side).wall.is_shell() {
                return Ok(None);
            }
            let solved = seat_wall(axle, side).solved(&Fineness::USUAL);
            solved.map(Some).map_err(|error| AxleError::Wall { side, error })
        };
        Ok(SeatStrength { axle, solved: Sides { left: solve(Side::Left)?, right: solve(Side::Right)? }, ask })
    }

    /// Hot spots of a case.
    pub(crate) fn hot_spots(&self, case: &CaseOutcome) -> Vec<PlacedCheck> {
        Side::BOTH.into_iter().filter_map(|side| self.hot_spot(case, side)).collect()
    }

    fn hot_spot(&self, case: &CaseOutcome, side: Side) -> Option<PlacedCheck> {
        let (solved, strength) = (self.solved.of(side).as_ref()?, yield_strength_at(self.axle, side)?);
        let spot = solved.hot_spot(&beside(case, side))?;
        let welded = self.axle.seats.of(side).fixing == Fixing::Welded;
        let kept = if welded { HeatAffectedZone::assumed(strength).factor() } else { 1.0 };
        let what = if welded { "hot spot at the bracket's toe" } else { "stress at the edge of the clamp" };
        let check =
            Check::at_most(what, Kind::Stress, spot.stress.abs(), kept * strength / self.ask.safety_factor)
                .sourced(HOT_SPOT)
                .advising("make the bracket broader or softer at its ends, or the wall thicker")
                .advisory();
        let y = case.seats.of(side).y + spot.along;
        Some(PlacedCheck { place: format!("{}-seat", side.word()), y: Some(y), check })
    }

    /// Local buckling of the walls in the case that bends the axle most there, and the crush of the clamps.
    pub(crate) fn walls(&self, cases: &[CaseOutcome]) -> Result<Vec<PlacedCheck>, AxleError> {
        let mut checks = Vec::new();
        for side in Side::BOTH.into_iter().filter(|side| self.solved.of(*side).is_some()) {
            let wall = |error| AxleError::Wall { side, error };
            let placed = |check| PlacedCheck { place: format!("{}-seat", side.word()), y: None, check };
            let moment = |case: &CaseOutcome| largest_moment(&beside(case, side));
            let worst = cases.iter().max_by(|a, b| moment(a).total_cmp(&moment(b)));
            if let Some(case) = worst {
                let fineness = Fineness::USUAL.scaled(2.0);
                let factor = seat_wall(self.axle, side).buckling_factor(&beside(case, side), &fineness);
                let least = self.ask.safety_factor / REAL_WALL;
                let check = |factor| {
                    Check::at_least("local buckling factor", Kind::Ratio, factor, least)
                        .sourced(BUCKLING)
                        .advising("make the wall thicker or the bracket wider")
                        .advisory()
                };
                checks.extend(factor.map_err(wall)?.map(|factor| placed(check(factor))));
            }
            checks.extend(self.crush(side)?.into_iter().map(placed));
        }
        Ok(checks)
    }

    fn crush(&self, side: Side) -> Result<Vec<Check>, AxleError> {
        let (bracket, wall) = (self.axle.seats.of(side).bracket, |error| AxleError::Wall { side, error });
        let (Some(torque), Some(strength)) = (bracket.torque, yield_strength_at(self.axle, side)) else {
            return Ok(Vec::new());
        };
        let Some(crush) = seat_wall(self.axle, side).crush(&Fineness::USUAL).map_err(wall)? else {
            return Ok(Vec::new());
        };
        let force = clamp_force(2 * bracket.u_bolts, torque, bracket.nut_factor, bracket.u_bolt_diameter);
        let (force, limit) = (force.map_err(wall)?, crush.elastic_limit(strength));
        let advice =
            "torque no higher than the axle maker allows; a thicker wall or a longer saddle stands more";
        Ok(vec![
            Check::at_most("clamp force of the U-bolts", Kind::Force, force, limit)
                .sourced(CRUSH)
                .advising(advice),
            Check::at_most(
                "flattening under the clamp",
                Kind::Length,
                force * crush.flattening,
                limit * crush.flattening,
            )
            .advising(advice)
            .advisory(),
        ])
    }

    /// What a torque would be needed for.
    pub(crate) fn warnings(&self) -> Result<Vec<Warning>, AxleError> {
        let unknown = |side: &Side| {
            let seat = self.axle.seats.of(*side);
            seat.fixing == Fixing::Clamped && seat.bracket.torque.is_none() && self.solved.of(*side).is_some()
        };
        let Some(side) = Side::BOTH.into_iter().find(unknown) else { return Ok(Vec::new()) };
        let crush = seat_wall(self.axle, side)
            .crush(&Fineness::USUAL)
            .map_err(|error| AxleError::Wall { side, error })?;
        let limit = crush
            .zip(yield_strength_at(self.axle, side))
            .map(|(crush, strength)| crush.elastic_limit(strength));
        let known = limit.map_or(String::new(), |limit| {
            format!("; its wall begins to yield at a clamp force of {:.0} kN", limit / 1e3)
        });
        Ok(vec![Warning {
            text: format!(
                "the torque of the U-bolts at the {} seat is not given, so its crush is not checked{known}",
                side.word()
            ),
            advice: "give `u_bolt_torque` of the seat".to_owned(),
        }])
    }

    /// Whether anything here depends on tightened U-bolts.
    pub(crate) fn has_clamp(&self) -> bool {
        Side::BOTH
            .into_iter()
            .any(|side| self.axle.seats.of(side).fixing == Fixing::Clamped && self.solved.of(side).is_some())
    }
}

/// What the axle carries on both sides of a seat's centre.
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
