//! Road, tires and the weight of the body: which forces act on the two hubs.
//!
//! The axle answers through its 12 × 12 compliance at the hubs, seen from the vehicle body. Unknown are each
//! tire's load, its side force where it stands, and the body's heave and roll; known are the axle load, the
//! moment about X, and the shape of the road. Tires push only: a tire in tension leaves the road and the
//! equations are solved again without it.

mod residual;

use axlebow_fe::{Displacements, NodeId};
use nalgebra::{SMatrix, SVector};

pub(crate) use residual::{FootingDual, Footings, hubs_in};

use crate::load_case::{Actions, Ground};
use crate::taken_up::TakenUp;
use crate::{Axle, AxleError, Side, Sides, Stiffener};

/// Standard gravity, m/s²: exact, ISO 80000-3.
pub const STANDARD_GRAVITY: f64 = 9.80665;

/// Largest number of tires on an axle.
const TIRES: usize = 4;
/// Unknowns: tire loads, standing side forces, heave, roll.
const UNKNOWNS: usize = 2 * TIRES + 2;
const HEAVE: usize = 2 * TIRES;
const ROLL: usize = 2 * TIRES + 1;

/// Load columns: six unit forces at the left hub, six at the right, and gravity.
pub(crate) const COLUMNS: usize = 13;
/// Column of gravity.
pub(crate) const GRAVITY: usize = 12;

/// Six forces at each hub, left first.
pub(crate) type Hubs = SVector<f64, 12>;

/// A tire on the road.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tire {
    pub side: Side,
    pub name: &'static str,
    pub y: f64,
    radius: f64,
    vertical_stiffness: f64,
    lateral_stiffness: f64,
    /// Hub forces for a unit force forward, left and up at the contact.
    unit: [Hubs; 3],
}

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
    pub taken_up: Sides<Option<TakenUp>>,
}

/// The axle as the road meets it.
#[derive(Debug, Clone)]
pub(crate) struct GroundModel {
    pub tires: Vec<Tire>,
    /// Motion of both hubs per unit hub force.
    compliance: SMatrix<f64, 12, 12>,
    /// Motion of both hubs under gravity.
    weight_motion: Hubs,
    /// Moment about X of the weight between road and suspension about the centre line, N m.
    weight_moment: f64,
    weight: f64,
    body_height: f64,
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

/// Everything that one solution of the ground equations is made from.
struct Problem<'a> {
    case: &'a str,
    actions: Actions,
    /// Braking and curb forces of each tire (forward, left).
    given: Vec<[f64; 2]>,
    /// Motion of the hubs by what they take up of their bearings' play.
    shift: &'a Hubs,
    restraint: RollRestraint,
}

/// How the tires of one case stand on the road.
#[derive(Debug, Clone)]
pub(crate) struct Footing {
    unknowns: Unknowns,
    on_road: Vec<bool>,
    /// Roll of the body at which the rest of the vehicle does nothing; none on an even road.
    rest: Option<f64>,
}

/// Tire loads, standing side forces, heave and roll.
type Unknowns = SVector<f64, UNKNOWNS>;

impl GroundModel {
    pub(crate) fn of(axle: &Axle, hubs: &Sides<NodeId>, unit: &Displacements) -> GroundModel {
        let motion = |column: usize| hub_motion(hubs, unit, column);
        let mut compliance = SMatrix::<f64, 12, 12>::zeros();
        for column in 0..12 {
            compliance.set_column(column, &motion(column));
        }
        GroundModel::answering(axle, compliance, motion(GRAVITY))
    }

    /// An axle whose hubs move by `compliance` per unit hub force and by `weight_motion` under gravity.
    pub(crate) fn answering(
        axle: &Axle,
        compliance: SMatrix<f64, 12, 12>,
        weight_motion: Hubs,
    ) -> GroundModel {
        GroundModel {
            tires: tires(axle),
            compliance,
            weight_motion,
            weight_moment: weight_moment(axle),
            weight: axle.unsprung_mass() * STANDARD_GRAVITY,
            body_height: axle.body_height,
            body_roll_stiffness: axle.body_roll_stiffness,
            standing: axle.ground == Ground::Standing,
        }
    }

    /// Forces of the road for one case, the hubs having moved by `shift` of their own.
    ///
    /// The rest of the vehicle follows the roll that the loads put on the body, because they load it alike,
    /// and resists the roll that an uneven road adds.
    pub(crate) fn contact(&self, case: &str, actions: &Actions, shift: &Hubs) -> Result<Contact, AxleError> {
        let weight = self.weight * actions.gravity;
        if actions.axle_load < weight {
            return Err(AxleError::LoadBelowWeight {
                case: case.to_owned(),
                load: actions.axle_load,
                weight,
            });
        }
        let footing = match self.footings((case, actions), shift)? {
            (_, Some(uneven)) => uneven,
            (even, None) => even,
        };
        Ok(self.contact_of(&footing, actions))
    }

    /// How the tires stand on an even road, and on the uneven one if it is so.
    fn footings(
        &self,
        (case, actions): (&str, &Actions),
        shift: &Hubs,
    ) -> Result<(Footing, Option<Footing>), AxleError> {
        let even = self.settled(&self.problem((case, actions), shift, None), None)?;
        if actions.raise == Sides::default() {
            return Ok((even, None));
        }
        let rest = Some(even.unknowns[ROLL]);
        let uneven = self.settled(&self.problem((case, actions), shift, rest), rest)?;
        Ok((even, Some(uneven)))
    }

    /// - `rest`: roll of the body at which the rest of the vehicle does nothing; none on an even road
    fn problem<'a>(
        &self,
        (case, actions): (&'a str, &Actions),
        shift: &'a Hubs,
        rest: Option<f64>,
    ) -> Problem<'a> {
        let given = self.given_forces(actions);
        let level = Actions { raise: Sides::default(), ..*actions };
        let (actions, restraint) = match rest {
            None => (level, RollRestraint::default()),
            Some(rest) => (*actions, RollRestraint { stiffness: self.body_roll_stiffness, rest }),
        };
        Problem { case, actions, given, shift, restraint }
    }

    /// Solves until every tire on the road pushes and none off it is reached by the road.
    fn settled(&self, problem: &Problem, rest: Option<f64>) -> Result<Footing, AxleError> {
        let mut on_road = vec![true; self.tires.len()];
        // Each round takes tires off the road or puts them back; the count bounds a cycle.
        for _ in 0..2 * TIRES {
            let unknowns =
                self.solve(problem, &on_road).ok_or_else(|| no_equilibrium(problem.case, &on_road))?;
            let next = self.on_road(problem, &unknowns, &on_road);
            if next == on_road {
                return Ok(Footing { unknowns, on_road, rest });
            }
            if !next.contains(&true) {
                return Err(no_equilibrium(problem.case, &next));
            }
            on_road = next;
        }
        let reason = "the tires neither stay on the road nor leave it; the load is at the edge of lifting";
        Err(AxleError::NoEquilibrium { case: problem.case.to_owned(), reason })
    }

    /// Braking and curb forces of each tire (forward, left), known before the solution.
    fn given_forces(&self, actions: &Actions) -> Vec<[f64; 2]> {
        let of_side = |side: Side| self.tires.iter().filter(|tire| tire.side == side).count() as f64;
        let forces = self.tires.iter().map(|tire| {
            let brake = -0.5 * actions.braking_force / of_side(tire.side);
            let outermost = tire.name != "inner";
            let curb = if outermost { -tire.side.sign() * actions.curb_force.of(tire.side) } else { 0.0 };
            [brake, curb]
        });
        forces.collect()
    }

    /// Side force per tire load.
    fn side_ratio(actions: &Actions) -> f64 {
        actions.side_force / actions.axle_load
    }

    /// Hub forces of a tire for a unit load, its share of the side force included.
    fn per_load(&self, tire: &Tire, actions: &Actions) -> Hubs {
        tire.unit[2] + tire.unit[1] * Self::side_ratio(actions)
    }

    /// Motion of the hubs under gravity and the known forces.
    fn given_motion(&self, problem: &Problem) -> Hubs {
        let known =
            self.tires.iter().zip(&problem.given).map(|(tire, [x, y])| tire.unit[0] * *x + tire.unit[1] * *y);
        self.weight_motion * problem.actions.gravity + self.compliance * known.sum::<Hubs>() + problem.shift
    }

    fn solve(&self, problem: &Problem, on_road: &[bool]) -> Option<Unknowns> {
        let (matrix, right) = self.equations(problem, on_road);
        matrix.lu().solve(&right).filter(|x| x.iter().all(|value| value.is_finite()))
    }

    /// Matrix and right-hand side of the equations, with the given tires on the road.
    fn equations(&self, problem: &Problem, on_road: &[bool]) -> (SMatrix<f64, UNKNOWNS, UNKNOWNS>, Unknowns) {
        let Problem { actions, given, restraint, .. } = problem;
        let mut matrix = SMatrix::<f64, UNKNOWNS, UNKNOWNS>::identity();
        let mut right = Unknowns::zeros();
        let (mut balance, mut moment) = (SVector::zeros(), SVector::zeros());
        let given_motion = self.given_motion(problem);
        let load = |tire: &Tire| self.per_load(tire, actions);
        let loads: [Hubs; TIRES] = std::array::from_fn(|l| self.tires.get(l).map_or_else(Hubs::zeros, load));
        for (k, tire) in self.tires.iter().enumerate().filter(|(k, _)| on_road[*k]) {
            // Tire stiffness sets the scale of its row, so that rows of forces compare with each other.
            let (kz, ky) = (tire.vertical_stiffness, tire.lateral_stiffness);
            let up = self.compliance.tr_mul(&tire.unit[2]);
            let left = if self.standing { self.compliance.tr_mul(&tire.unit[1]) } else { Hubs::zeros() };
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
            right[k] = kz * (actions.raise.of(tire.side) - tire.unit[2].dot(&given_motion));
            if self.standing {
                matrix[(TIRES + k, ROLL)] = ky * tire.radius;
                right[TIRES + k] = -ky * tire.unit[1].dot(&given_motion);
            }
            balance[k] = 1.0;
            // Side forces act at the road and are met by the body's inertia at its own height.
            let lever = self.body_height;
            moment[k] = tire.y + lever * Self::side_ratio(actions);
            moment[TIRES + k] = if self.standing { lever } else { 0.0 };
            right[ROLL] -= lever * given[k][1];
        }
        matrix.set_row(HEAVE, &Unknowns::transpose(&balance));
        matrix.set_row(ROLL, &Unknowns::transpose(&moment));
        matrix[(ROLL, ROLL)] = -restraint.stiffness;
        right[HEAVE] = actions.axle_load;
        right[ROLL] -= self.weight_moment * actions.gravity + restraint.stiffness * restraint.rest;
        (matrix, right)
    }

    /// Which tires should be on the road: those that push, and those off it that the road has reached.
    fn on_road(&self, problem: &Problem, x: &Unknowns, now: &[bool]) -> Vec<bool> {
        // Where every tire is on the road, how high it would be does not matter.
        let motion = if now.contains(&false) { self.hub_motion(problem, x) } else { Hubs::zeros() };
        let tires = self.tires.iter().zip(now).enumerate();
        tires
            .map(|(k, (tire, on))| {
                let height = tire.unit[2].dot(&motion) + x[HEAVE] + x[ROLL] * tire.y;
                if *on { x[k] >= 0.0 } else { height < *problem.actions.raise.of(tire.side) }
            })
            .collect()
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
    pub(crate) fn contact_of(&self, footing: &Footing, actions: &Actions) -> Contact {
        let Footing { unknowns: x, on_road, .. } = footing;
        let given = self.given_forces(actions);
        let mut factors = [0.0; COLUMNS];
        factors[GRAVITY] = actions.gravity;
        let mut forces = Vec::with_capacity(self.tires.len());
        for (k, tire) in self.tires.iter().enumerate() {
            let [longitudinal, curb] = given[k];
            let vertical = if on_road[k] { x[k] } else { 0.0 };
            let lateral = curb + Self::side_ratio(actions) * vertical + x[TIRES + k];
            for (i, force) in [longitudinal, lateral, vertical].into_iter().enumerate() {
                for (factor, unit) in factors.iter_mut().zip(tire.unit[i].iter()) {
                    *factor += force * unit;
                }
            }
            forces.push(TireForce { longitudinal, lateral, vertical, off_road: !on_road[k] });
        }
        Contact { tires: forces, factors, body_roll: x[ROLL], taken_up: Sides::default() }
    }
}

/// Motion of both hubs under one load column.
pub(crate) fn hub_motion(hubs: &Sides<NodeId>, unit: &Displacements, column: usize) -> Hubs {
    let (left, right) = (unit.of(hubs.left, column), unit.of(hubs.right, column));
    Hubs::from_iterator(left.into_iter().chain(right))
}

fn no_equilibrium(case: &str, on_road: &[bool]) -> AxleError {
    let reason = if on_road.contains(&true) {
        "the vehicle tips over, because its tires on one side have left the road; lower the side force, the curb force, the raise or the body height"
    } else {
        "no tire stays on the road"
    };
    AxleError::NoEquilibrium { case: case.to_owned(), reason }
}

fn tires(axle: &Axle) -> Vec<Tire> {
    let mut tires = Vec::with_capacity(TIRES);
    for side in Side::BOTH {
        let wheel = axle.wheels.of(side);
        let tire = wheel.tire();
        for place in wheel.tires() {
            let arm = [0.0, side.sign() * place.outboard, -tire.loaded_radius];
            tires.push(Tire {
                side,
                name: place.name,
                y: axle.tire_y(side, place.outboard),
                radius: tire.loaded_radius,
                vertical_stiffness: tire.vertical_stiffness,
                lateral_stiffness: tire.lateral_stiffness,
                unit: std::array::from_fn(|i| unit_force(side, arm, i)),
            });
        }
    }
    tires
}

/// Hub forces of a unit force along axis `i` at the end of `arm` from the hub of `side`.
fn unit_force(side: Side, arm: [f64; 3], i: usize) -> Hubs {
    let mut force = nalgebra::Vector3::zeros();
    force[i] = 1.0;
    let moment = nalgebra::Vector3::from(arm).cross(&force);
    let first = match side {
        Side::Left => 0,
        Side::Right => 6,
    };
    let mut hubs = Hubs::zeros();
    for j in 0..3 {
        hubs[first + j] = force[j];
        hubs[first + 3 + j] = moment[j];
    }
    hubs
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
