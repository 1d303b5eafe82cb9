//! Road, tires and the weight of the body: which forces act on the two hubs.
//!
//! The axle answers through its 12 × 12 compliance at the hubs, seen from the vehicle body. Unknown are each
//! tire's load, its side force where it stands, and the body's heave and roll; known are the axle load, the
//! moment about X, and the shape of the road. A tire is a spring under its own center, which the manufactured
//! camber of its wheel lifts or lowers, and it pushes only ([`footing`]).

mod footing;
mod residual;
mod tire;

use axlebow_fe::{Displacements, NodeId};
use nalgebra::{SMatrix, SVector};

pub(crate) use footing::Footing;
pub(crate) use residual::{FootingDual, Footings, hubs_in};
pub(crate) use tire::Tire;

use crate::assembly::bearing_play::TakenUp;
use crate::parts::load_case::{Actions, Ground, LoadCase};
use crate::road_contact::own_loads::{OWN_COLUMNS, OwnLoads};
use crate::{Axle, AxleError, Side, Sides, Stiffener, TireSlot};

/// Standard gravity, m/s²: exact, ISO 80000-3.
pub const STANDARD_GRAVITY: f64 = 9.80665;

/// Largest number of tires on an axle.
const TIRES: usize = 4;
/// Unknowns: tire loads, standing side forces, heave, roll.
const UNKNOWNS: usize = 2 * TIRES + 2;
const HEAVE: usize = 2 * TIRES;
const ROLL: usize = 2 * TIRES + 1;

/// Load columns: six unit forces at the left hub, six at the right, and the axle's own loads.
pub(crate) const COLUMNS: usize = OWN + OWN_COLUMNS;
/// First column of the axle's own loads.
pub(crate) const OWN: usize = 12;

/// Six forces at each hub, left first.
pub(crate) type Hubs = SVector<f64, 12>;

/// Forces of the road on one tire, N.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct TireForce {
    pub longitudinal: f64,
    pub lateral: f64,
    pub vertical: f64,
    pub off_road: bool,
}

/// What the road does in one case.
#[derive(Debug, Clone)]
pub(crate) struct Contact {
    pub tires: Vec<TireForce>,
    /// Factor of each load column.
    pub factors: [f64; COLUMNS],
    /// Roll of the vehicle body about X, rad.
    pub body_roll: f64,
    /// What each hub has taken up of its bearings' play.
    pub endplay_contact: Sides<Option<TakenUp>>,
    /// Largest miss of the balance of loads, moments and heights on the road, over the axle load.
    pub residual: f64,
}

/// The axle as the road meets it.
#[derive(Debug, Clone)]
pub(crate) struct GroundModel {
    pub tires: Vec<Tire>,
    /// Motion of both hubs per unit hub force.
    compliance: SMatrix<f64, 12, 12>,
    /// Moment about X of the weight between road and suspension about the center line, N m.
    weight_moment: f64,
    weight: f64,
    /// Height of the sprung mass's center above the axle's line, m.
    body_above: f64,
    body_roll_stiffness: f64,
    standing: bool,
}

/// What the rest of the vehicle does against roll of the body.
#[derive(Debug, Clone, Copy, Default)]
struct RollRestraint {
    /// N m/rad.
    stiffness: f64,
    /// Roll at which it does nothing, rad.
    rest: f64,
}

/// A load case as the ground sees it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Case<'a> {
    pub name: &'a str,
    pub actions: Actions,
    pub own: OwnLoads,
}

impl<'a> Case<'a> {
    pub(crate) fn of(axle: &Axle, case: &'a LoadCase) -> Self {
        let actions = case.factored();
        Case { name: &case.name, actions, own: OwnLoads::of(axle, &actions) }
    }
}

/// Everything that one solution of the ground equations is made from.
struct Problem<'a> {
    case: &'a str,
    actions: Actions,
    own: OwnLoads,
    /// Motion of the hubs by all but the road: the axle's own loads, and the play that they take up.
    moved: &'a Hubs,
    restraint: RollRestraint,
}

/// Tire loads, standing side forces, heave and roll.
type Unknowns = SVector<f64, UNKNOWNS>;

impl GroundModel {
    pub(crate) fn of(axle: &Axle, hubs: &Sides<NodeId>, unit: &Displacements) -> GroundModel {
        let mut compliance = SMatrix::<f64, 12, 12>::zeros();
        for column in 0..12 {
            compliance.set_column(column, &hub_motion(hubs, unit, column));
        }
        GroundModel::answering(axle, compliance)
    }

    /// An axle whose hubs move by `compliance` per unit hub force.
    pub(crate) fn answering(axle: &Axle, compliance: SMatrix<f64, 12, 12>) -> GroundModel {
        GroundModel {
            tires: tire::tires(axle),
            compliance,
            weight_moment: weight_moment(axle),
            weight: axle.unsprung_mass() * STANDARD_GRAVITY,
            body_above: axle.body_above(),
            body_roll_stiffness: axle.body_roll_stiffness,
            standing: axle.ground == Ground::Standing,
        }
    }

    /// Forces of the road for one case, the hubs having moved by `moved` without them.
    ///
    /// The rest of the vehicle follows the roll that the loads put on the body, because they load it alike,
    /// and resists the roll that an uneven road adds.
    pub(crate) fn contact(&self, case: &Case, moved: &Hubs) -> Result<Contact, AxleError> {
        let weight = self.weight * case.actions.gravity;
        if case.actions.axle_load < weight {
            return Err(AxleError::LoadBelowWeight {
                case: case.name.to_owned(),
                load: case.actions.axle_load,
                weight,
            });
        }
        let footing = match self.footings(case, moved)? {
            (_, Some(uneven)) => uneven,
            (even, None) => even,
        };
        Ok(Contact { residual: footing.missed, ..self.contact_of(&footing, case) })
    }

    /// How the tires stand on an even road, and on the uneven one if it is so.
    fn footings(&self, case: &Case, moved: &Hubs) -> Result<(Footing, Option<Footing>), AxleError> {
        let even = self.settled(&self.problem(case, moved, None), None)?;
        if case.actions.raise == Sides::default() {
            return Ok((even, None));
        }
        let rest = Some(even.roll());
        let uneven = self.settled(&self.problem(case, moved, rest), rest)?;
        Ok((even, Some(uneven)))
    }

    /// - `rest`: roll of the body at which the rest of the vehicle does nothing; none on an even road
    fn problem<'a>(&self, case: &Case<'a>, moved: &'a Hubs, rest: Option<f64>) -> Problem<'a> {
        let level = Actions { raise: Sides::default(), ..case.actions };
        let (actions, restraint) = match rest {
            None => (level, RollRestraint::default()),
            Some(rest) => (case.actions, RollRestraint { stiffness: self.body_roll_stiffness, rest }),
        };
        Problem { case: case.name, actions, own: case.own, moved, restraint }
    }

    /// Curb force of each tire, to the left: known before the solution.
    fn curb_forces(&self, actions: &Actions) -> [f64; TIRES] {
        let force = |tire: &Tire| -tire.side.sign() * actions.curb_force.of(tire.side);
        let outermost = |tire: &&Tire| tire.slot != TireSlot::Inner;
        std::array::from_fn(|k| self.tires.get(k).filter(outermost).map_or(0.0, force))
    }

    /// Hub forces of a tire for a unit load, with its share of all forces along the road: tires share these as they
    /// share the load.
    fn per_load(&self, tire: &Tire, actions: &Actions) -> Hubs {
        let Actions { axle_load, side_force, braking_force, traction_force, .. } = *actions;
        let [_, side, up] = tire.unit;
        let along = tire.pull * traction_force - tire.unit[0] * braking_force;
        up + (side * side_force + along) / axle_load
    }

    /// Motion of the hubs by all but the loads of the tires.
    fn given_motion(&self, problem: &Problem) -> Hubs {
        if problem.actions.curb_force == Sides::default() {
            return *problem.moved;
        }
        let curb = self.tires.iter().zip(self.curb_forces(&problem.actions));
        self.compliance * curb.map(|(tire, force)| tire.unit[1] * force).sum::<Hubs>() + problem.moved
    }

    /// Matrix and right-hand side of the equations, with the given tires on the road.
    fn equations(&self, problem: &Problem, on_road: &[bool]) -> (SMatrix<f64, UNKNOWNS, UNKNOWNS>, Unknowns) {
        let Problem { actions, restraint, .. } = problem;
        let mut matrix = SMatrix::<f64, UNKNOWNS, UNKNOWNS>::identity();
        let mut right = Unknowns::zeros();
        let (mut balance, mut moment) = (SVector::zeros(), SVector::zeros());
        let given_motion = self.given_motion(problem);
        let load = |tire: &Tire| self.per_load(tire, actions);
        let loads: [Hubs; TIRES] = std::array::from_fn(|l| self.tires.get(l).map_or_else(Hubs::zeros, load));
        for (k, tire) in self.tires.iter().enumerate().filter(|(k, _)| on_road[*k]) {
            // Tire stiffness sets the scale of its row, so that rows of forces compare with each other.
            let (kz, ky) = (tire.vertical_stiffness, tire.lateral_stiffness);
            let up = self.motion_along(&tire.unit[2]);
            let left = if self.standing { self.motion_along(&tire.unit[1]) } else { Hubs::zeros() };
            for (l, other) in self.tires.iter().enumerate().filter(|(l, _)| on_road[*l]) {
                let (load, side) = (&loads[l], other.unit[1]);
                matrix[(k, l)] += kz * up.dot(load);
                if self.standing {
                    matrix[(k, TIRES + l)] = kz * up.dot(&side);
                    matrix[(TIRES + k, l)] = ky * left.dot(load);
                    matrix[(TIRES + k, TIRES + l)] += ky * left.dot(&side);
                }
            }
            matrix[(k, HEAVE)] = kz;
            matrix[(k, ROLL)] = kz * tire.y;
            right[k] = kz * (actions.raise.of(tire.side) - tire.rise - tire.unit[2].dot(&given_motion));
            if self.standing {
                matrix[(TIRES + k, ROLL)] = ky * tire.radius;
                right[TIRES + k] = -ky * tire.unit[1].dot(&given_motion);
            }
            balance[k] = 1.0;
            moment[k] = tire.y + self.lever(tire) * actions.side_force / actions.axle_load;
            moment[TIRES + k] = if self.standing { self.lever(tire) } else { 0.0 };
        }
        matrix.set_row(HEAVE, &Unknowns::transpose(&balance));
        matrix.set_row(ROLL, &Unknowns::transpose(&moment));
        right[HEAVE] = actions.axle_load;
        matrix[(ROLL, ROLL)] = self.overturning(actions) - restraint.stiffness;
        right[ROLL] = -self.given_moment(problem) - restraint.stiffness * restraint.rest;
        (matrix, right)
    }

    /// Motion along a unit force at a tire per force on the hubs, m/N. Most of a unit force is zero.
    fn motion_along(&self, unit: &Hubs) -> Hubs {
        let mut motion = Hubs::zeros();
        for (i, part) in unit.iter().enumerate().filter(|(_, part)| **part != 0.0) {
            motion.iter_mut().zip(&self.compliance.row(i)).for_each(|(sum, c)| *sum += c * part);
        }
        motion
    }

    /// Height of the sprung mass's center, which meets side forces by its inertia, above the contact of a tire, m.
    fn lever(&self, tire: &Tire) -> f64 {
        tire.radius + self.body_above
    }

    /// Moment about X of the sprung weight for a unit roll of the body, which carries its center sideways, N m/rad.
    fn overturning(&self, actions: &Actions) -> f64 {
        (actions.axle_load - self.weight * actions.gravity) * self.body_above
    }

    /// Moment about X of all that is known: weight off the center line, curb forces, and what the mass between road
    /// and suspension takes of side and curb forces at the axle's own height.
    fn given_moment(&self, problem: &Problem) -> f64 {
        let curb = self.tires.iter().zip(self.curb_forces(&problem.actions));
        let curb: f64 = curb.map(|(tire, force)| self.lever(tire) * force).sum();
        let [_, aside, _] = problem.own.field;
        self.weight_moment * problem.actions.gravity + curb + self.body_above * self.weight * aside
    }

    fn hub_motion(&self, problem: &Problem, x: &Unknowns) -> Hubs {
        let forces = self
            .tires
            .iter()
            .enumerate()
            .map(|(k, tire)| self.per_load(tire, &problem.actions) * x[k] + tire.unit[1] * x[TIRES + k]);
        self.given_motion(problem) + self.compliance * forces.sum::<Hubs>()
    }

    /// Forces of a footing.
    pub(crate) fn contact_of(&self, footing: &Footing, case: &Case) -> Contact {
        let Footing { unknowns: x, on_road, .. } = footing;
        let Case { actions, own, .. } = case;
        let curb = self.curb_forces(actions);
        let mut factors = [0.0; COLUMNS];
        factors[OWN..].copy_from_slice(&own.factors());
        let mut forces = Vec::with_capacity(self.tires.len());
        for (k, tire) in self.tires.iter().enumerate() {
            let vertical = if on_road[k] { x[k] } else { 0.0 };
            let aside = curb[k] + x[TIRES + k];
            let hubs = self.per_load(tire, actions) * vertical + tire.unit[1] * aside;
            factors.iter_mut().zip(hubs.iter()).for_each(|(factor, force)| *factor += force);
            let share = vertical / actions.axle_load;
            forces.push(TireForce {
                longitudinal: (actions.traction_force - actions.braking_force) * share,
                lateral: aside + actions.side_force * share,
                vertical,
                off_road: !on_road[k],
            });
        }
        Contact {
            tires: forces,
            factors,
            body_roll: x[ROLL],
            endplay_contact: Sides::default(),
            residual: 0.0,
        }
    }
}

/// Motion of both hubs under one load column.
pub(crate) fn hub_motion(hubs: &Sides<NodeId>, unit: &Displacements, column: usize) -> Hubs {
    let (left, right) = (unit.of(hubs.left, column), unit.of(hubs.right, column));
    Hubs::from_iterator(left.into_iter().chain(right))
}

fn weight_moment(axle: &Axle) -> f64 {
    let ends = Side::BOTH.map(|side| {
        let (end, wheel) = (axle.wheel_ends.of(side), axle.wheels.of(side));
        let hub = end.hub_mass * 0.5 * (end.inner_bearing + end.outer_bearing);
        side.sign() * (hub + wheel.mass() * (end.mounting_face + wheel.outset()))
    });
    let fixed: f64 = axle.fixed_masses.iter().map(|fixed| fixed.mass * fixed.y).sum();
    let middle = |stiffener: &Stiffener| 0.5 * (stiffener.from + stiffener.to);
    let stiffeners: f64 = axle.stiffeners.iter().map(|one| one.mass() * middle(one)).sum();
    -STANDARD_GRAVITY * (ends.iter().sum::<f64>() + fixed + stiffeners)
}
