//! What holds for every structure: random chains of uniform and tapered beams with rigid arms, springs between
//! nodes and to the ground, and masses.
//!
//! Tolerances are rounding times conditioning: stiffnesses span up to five decades, so that nine digits of
//! the largest motion are left.

use crate::chain::{Built, Chain, chains};
use approx::assert_relative_eq;
use axlebow_fe::{Attachment, Displacements, Loads, State, StaticSystem};
use nalgebra::{Rotation3, Vector3};
use proptest::prelude::*;

/// Part of the largest motion that rounding may disturb.
const ROUNDING: f64 = 1e-9;

fn solved(built: &Built, loads: Loads) -> Displacements {
    let mut system = StaticSystem::new();
    system.prepare(&built.structure).unwrap();
    system.solve(&built.structure, loads).unwrap()
}

/// A force and a moment on the node that a number in 0..1 picks.
#[derive(Debug, Clone)]
struct Push {
    pick: f64,
    arm: [f64; 3],
    force: [f64; 3],
    moment: [f64; 3],
}

fn pushes() -> impl Strategy<Value = Push> {
    let arm = || prop::array::uniform3(-0.3..0.3_f64);
    let kilo = || prop::array::uniform3(-1e3..1e3_f64);
    (0.0..1.0_f64, arm(), kilo(), kilo()).prop_map(|(pick, arm, force, moment)| Push {
        pick,
        arm,
        force,
        moment,
    })
}

fn turns() -> impl Strategy<Value = Rotation3<f64>> {
    prop::array::uniform3(-3.0..3.0_f64).prop_map(|axis| Rotation3::new(Vector3::from(axis)))
}

impl Push {
    fn node(&self, built: &Built) -> usize {
        (self.pick * built.nodes.len() as f64) as usize
    }

    fn add(&self, built: &Built, loads: &mut Loads, column: usize) {
        self.add_turned(built, loads, column, &Rotation3::identity());
    }

    fn add_turned(&self, built: &Built, loads: &mut Loads, column: usize, turn: &Rotation3<f64>) {
        let turned = |v: [f64; 3]| (turn * Vector3::from(v)).into();
        let place = Attachment::on_arm(built.nodes[self.node(built)], turned(self.arm));
        loads.add_force(column, &place, turned(self.force));
        loads.add_moment(column, &place, turned(self.moment));
    }

    /// Work on the motion of a state.
    fn work(&self, built: &Built, state: &State) -> f64 {
        let motion = state.motion(built.nodes[self.node(built)]);
        let (shift, rotation) = halves(motion);
        let point = shift + rotation.cross(&Vector3::from(self.arm));
        Vector3::from(self.force).dot(&point) + Vector3::from(self.moment).dot(&rotation)
    }
}

fn halves(six: [f64; 6]) -> (Vector3<f64>, Vector3<f64>) {
    (Vector3::new(six[0], six[1], six[2]), Vector3::new(six[3], six[4], six[5]))
}

/// The chain with its first node held.
fn held(chain: &Chain) -> Built {
    let mut built = chain.built(&Rotation3::identity());
    built.hold(0);
    built
}

/// The sum of the works of `unit` on the deformation of `real` in all members.
fn members_work(built: &Built, unit: &State, real: &State) -> f64 {
    let beams = built.beams.iter().map(|beam| {
        let (bending, shear) = unit.beam_work(real, *beam);
        bending + shear
    });
    let springs = built.springs.iter().map(|spring| unit.spring_work(real, *spring));
    beams.sum::<f64>() + springs.sum::<f64>()
}

fn largest_motion(built: &Built, state: &State) -> f64 {
    built.nodes.iter().flat_map(|node| state.motion(*node)).fold(0.0, |a, x| x.abs().max(a))
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Maxwell's theorem, J. C. Maxwell 1864: with it the stiffness is symmetric.
    #[test]
    fn works_of_two_loads_on_each_other_are_equal(chain in chains(), a in pushes(), b in pushes()) {
        let built = held(&chain);
        let mut loads = Loads::new(&built.structure, 2);
        a.add(&built, &mut loads, 0);
        b.add(&built, &mut loads, 1);
        let solved = solved(&built, loads);
        let (first, second) = (solved.state(&built.structure, 0), solved.state(&built.structure, 1));
        let own = a.work(&built, &first) * b.work(&built, &second);
        prop_assert!((a.work(&built, &second) - b.work(&built, &first)).abs() <= ROUNDING * own.abs().sqrt());
    }

    /// A chain that hangs on one spring at its first node, loaded there, moves as a rigid body.
    #[test]
    fn rigid_motions_cost_nothing(chain in chains(), push in pushes()) {
        let mut free = chain.clone();
        free.links.retain(|link| link.to.is_some());
        let mut built = free.built(&Rotation3::identity());
        built.add_ground(0, [1e5; 6]);
        let mut loads = Loads::new(&built.structure, 1);
        Push { pick: 0.0, ..push }.add(&built, &mut loads, 0);
        let solved = solved(&built, loads);
        let state = solved.state(&built.structure, 0);
        let (shift, rotation) = halves(state.motion(built.nodes[0]));
        for (number, node) in built.nodes.iter().enumerate() {
            let (u, r) = halves(state.motion(*node));
            let rigid = shift + rotation.cross(&built.position(number));
            prop_assert!((u - rigid).norm() + (r - rotation).norm() < 1e-10);
        }
        // Rounding of motions of some hundredths under stiffnesses of up to 1e10.
        for beam in &built.beams {
            prop_assert!(state.beam_forces(*beam).start.iter().all(|force| force.abs() < 1e-3));
        }
        for spring in &built.springs[..built.springs.len() - 1] {
            prop_assert!(state.spring_force(*spring).iter().all(|force| force.abs() < 1e-3));
        }
    }

    #[test]
    fn a_turned_structure_gives_the_turned_answer(chain in chains(), push in pushes(), turn in turns()) {
        let answer = |turn: &Rotation3<f64>| {
            let mut built = chain.built(turn);
            built.hold(0);
            let mut loads = Loads::new(&built.structure, 1);
            push.add_turned(&built, &mut loads, 0, turn);
            loads.add_gravity(&built.structure, 0, (turn * Vector3::new(1.0, 2.0, -9.0)).into());
            (solved(&built, loads), built)
        };
        let ((plain, built), (turned, turned_built)) = (answer(&Rotation3::identity()), answer(&turn));
        let state = plain.state(&built.structure, 0);
        let largest = largest_motion(&built, &state);
        for node in &built.nodes {
            let ((u, r), (tu, tr)) = (halves(plain.of(*node, 0)), halves(turned.of(*node, 0)));
            prop_assert!((turn * u - tu).norm() + (turn * r - tr).norm() <= ROUNDING * largest);
        }
        // Resultants are in local axes and do not turn.
        let turned = turned.state(&turned_built.structure, 0);
        for beam in &built.beams {
            let (a, b) = (state.beam_forces(*beam).start, turned.beam_forces(*beam).start);
            let size = a.iter().fold(1e3_f64, |a, x| x.abs().max(a));
            prop_assert!(a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-7 * size), "{a:?} {b:?}");
        }
    }

    #[test]
    fn reactions_balance_the_loads(
        chain in chains(),
        push in pushes(),
        line in prop::array::uniform3(-500.0..500.0_f64),
        about in prop::array::uniform3(-2.0..2.0_f64),
    ) {
        let built = held(&chain);
        let gravity = Vector3::new(1.0, -2.0, -9.0);
        let mut loads = Loads::new(&built.structure, 1);
        push.add(&built, &mut loads, 0);
        loads.add_gravity(&built.structure, 0, gravity.into());
        for beam in &built.beams {
            loads.add_line_load(&built.structure, 0, *beam, line);
        }
        let solved = solved(&built, loads);
        let state = solved.state(&built.structure, 0);
        let mut sum = Resultant::about(about);
        let place = push.node(&built);
        sum.add(&(built.position(place) + Vector3::from(push.arm)), &push.force.into(), &push.moment.into());
        for (number, piece) in chain.pieces.iter().enumerate() {
            let start = built.position(number) + Vector3::from(piece.start_arm);
            let middle = start + 0.5 * Vector3::from(piece.along);
            let distributed = (Vector3::from(line) + gravity * piece.mass_per_length) * piece.length();
            sum.add(&middle, &distributed, &Vector3::zeros());
            let lump = built.position(number + 1) + Vector3::from(piece.up);
            sum.add(&lump, &(gravity * piece.lump), &Vector3::zeros());
        }
        let (force, moment) = halves(state.reaction(built.nodes[0]));
        sum.add(&built.position(0), &force, &moment);
        let grounded = chain.links.iter().zip(&built.springs).zip(&built.points);
        for ((_, spring), point) in grounded.filter(|((link, _), _)| link.to.is_none()) {
            let (force, moment) = halves(state.spring_force(*spring));
            sum.add(point, &-force, &-moment);
        }
        prop_assert!(sum.unbalanced() < 1e-8, "{}", sum.unbalanced());
        prop_assert!(state.equilibrium_residual() < 1e-8, "{}", state.equilibrium_residual());
    }

    /// Clapeyron's theorem: the loads' work is twice the strain energy.
    #[test]
    fn the_work_of_the_loads_is_in_the_members(chain in chains(), push in pushes()) {
        let built = held(&chain);
        let mut loads = Loads::new(&built.structure, 1);
        push.add(&built, &mut loads, 0);
        let solved = solved(&built, loads);
        let state = solved.state(&built.structure, 0);
        let work = push.work(&built, &state);
        prop_assert!(work >= 0.0);
        assert_relative_eq!(members_work(&built, &state, &state), work, max_relative = 1e-8);
    }

    /// Unit-load theorem (Przemieniecki 1968, ch. 6: virtual forces), real state with loads along the beams.
    #[test]
    fn the_work_of_a_unit_state_is_a_displacement(
        chain in chains(),
        pick in (0.0..1.0_f64, 0..6_usize),
        push in pushes(),
        line in prop::array::uniform3(-500.0..500.0_f64),
    ) {
        let built = held(&chain);
        let node = built.nodes[(pick.0 * built.nodes.len() as f64) as usize];
        let mut loads = Loads::new(&built.structure, 2);
        let mut unit = [0.0; 3];
        unit[pick.1 % 3] = 1.0;
        match pick.1 {
            0..3 => loads.add_force(0, &Attachment::at(node), unit),
            _ => loads.add_moment(0, &Attachment::at(node), unit),
        }
        push.add(&built, &mut loads, 1);
        loads.add_gravity(&built.structure, 1, [0.0, 0.0, -9.80665]);
        for beam in &built.beams {
            loads.add_line_load(&built.structure, 1, *beam, line);
        }
        let solved = solved(&built, loads);
        let (unit, real) = (solved.state(&built.structure, 0), solved.state(&built.structure, 1));
        let displacement = real.motion(node)[pick.1];
        let difference = members_work(&built, &unit, &real) - displacement;
        prop_assert!(difference.abs() <= ROUNDING * largest_motion(&built, &real), "{difference} {displacement}");
    }

    #[test]
    fn the_mass_is_that_of_all_beams_and_lumps(chain in chains()) {
        let pieces = chain.pieces.iter().map(|piece| piece.mass_per_length * piece.length() + piece.lump);
        assert_relative_eq!(held(&chain).structure.mass(), pieces.sum::<f64>(), max_relative = 1e-14);
    }

    /// Uniform: exact. Tapered: both sides are integrated to rounding.
    #[test]
    fn a_beam_cut_in_two_changes_nothing(
        chain in chains(),
        (pick, share) in (0.0..1.0_f64, 0.2..0.8_f64),
        push in pushes(),
        line in prop::array::uniform3(-500.0..500.0_f64),
    ) {
        let number = (pick * chain.pieces.len() as f64) as usize;
        let mut cut = chain.clone();
        cut.pieces.splice(number..=number, chain.pieces[number].cut(share));
        let past = |node: usize| if node > number { node + 1 } else { node };
        for link in &mut cut.links {
            (link.from, link.to) = (past(link.from), link.to.map(past));
        }
        let (whole, halved) = (held(&chain), held(&cut));
        let answer = |built: &Built, at: usize| {
            let mut loads = Loads::new(&built.structure, 1);
            loads.add_force(0, &Attachment::on_arm(built.nodes[at], push.arm), push.force);
            loads.add_gravity(&built.structure, 0, [0.0, 3.0, -9.0]);
            for beam in &built.beams {
                loads.add_line_load(&built.structure, 0, *beam, line);
            }
            solved(built, loads)
        };
        let at = push.node(&whole);
        let (a, b) = (answer(&whole, at), answer(&halved, past(at)));
        let largest = largest_motion(&whole, &a.state(&whole.structure, 0));
        for (node, id) in whole.nodes.iter().enumerate() {
            let (a, b) = (a.of(*id, 0), b.of(halved.nodes[past(node)], 0));
            prop_assert!(a.iter().zip(b).all(|(a, b)| (a - b).abs() <= ROUNDING * largest), "{a:?} {b:?}");
        }
    }
}

/// Sum of forces and of their moments about a point, and of their magnitudes.
struct Resultant {
    about: Vector3<f64>,
    force: Vector3<f64>,
    moment: Vector3<f64>,
    size: f64,
}

impl Resultant {
    fn about(point: [f64; 3]) -> Self {
        Resultant { about: point.into(), force: Vector3::zeros(), moment: Vector3::zeros(), size: 0.0 }
    }

    fn add(&mut self, at: &Vector3<f64>, force: &Vector3<f64>, moment: &Vector3<f64>) {
        self.force += force;
        self.moment += moment + (at - self.about).cross(force);
        self.size += force.norm() + moment.norm();
    }

    /// What is left over, as a part of the magnitudes (moments over a length of one).
    fn unbalanced(&self) -> f64 {
        (self.force.norm() + self.moment.norm()) / self.size
    }
}
