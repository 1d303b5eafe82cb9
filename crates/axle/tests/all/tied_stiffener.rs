//! Stiffeners tied by their welds: limits, equilibrium, symmetry, words; the closed form of partial interaction is
//! a case of the textbook.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::example::stiffening::{loose_seats, tent, under_load, weld};
use crate::example::{self, axle};
use approx::assert_relative_eq;
use axlebow_axle::{
    Adjoint, Axle, Foot, RecordOptions, Ride, RideBasis, RideOutcome, Side, StaticReadings, Stiffener,
    StiffenerEnd, StiffenerOutcome, StiffenerWeld, StiffeningOutcome, WeldForce, WeldPattern, flex, modes,
    ride, standard_cases, weld_stiffness,
};
use axlebow_road::{Road, Track};

fn welded(stiffness: f64) -> Stiffener {
    Stiffener { weld: StiffenerWeld { stiffness, ..weld() }, ..tent() }
}

fn stiffening(stiffeners: Vec<Stiffener>) -> StiffeningOutcome {
    under_load(&loose_seats(stiffeners), 80e3).stiffening.unwrap()
}

/// Camber change that stiffeners take away at the left wheel, tied and composite.
fn help(outcome: &StiffeningOutcome) -> [f64; 2] {
    [outcome.tied, outcome.composite].map(|camber| camber - outcome.without)
}

#[test]
fn stiffer_welds_help_more_from_none_at_all_up_to_below_one_section() {
    let stiffnesses = [1e3, 1e6, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13];
    let helps = stiffnesses.map(|stiffness| help(&stiffening(vec![welded(stiffness)])));
    assert!(helps.windows(2).all(|pair| pair[0][0] < pair[1][0]), "{helps:?}");
    let without = stiffening(vec![welded(1e3)]).without.abs();
    assert!(helps[0][0].abs() < 1e-6 * without, "{helps:?}");
    assert!(helps.iter().all(|[tied, composite]| tied < composite));
}

#[test]
fn what_a_stiff_weld_leaves_to_one_section_is_about_a_height_of_section_at_each_end() {
    let lost = |half: f64| {
        let one = Stiffener { from: -half, to: half, ..welded(1e13) };
        stiffening(vec![one]).help_lost() * half
    };
    let [short, long] = [0.2, 0.4].map(lost);
    // The tent is 54 mm high; sections that turn against each other in shear take its force up over about that.
    assert!((0.4..1.2).contains(&(long / 0.054)), "{long}");
    assert_relative_eq!(short, long, max_relative = 0.1);
}

/// The weld along the axle up to a cut is all that pulls the stiffener there.
#[test]
fn the_weld_carries_the_axial_force_of_the_stiffener_and_nothing_else() {
    let pattern = WeldPattern::Stitched { length: 0.05, pitch: 0.15 };
    let stitched = Stiffener { weld: StiffenerWeld { pattern, ..weld() }, ..tent() };
    let one_side =
        Stiffener { weld: StiffenerWeld { both_sides: false, ..weld() }, clock: FRAC_PI_2, ..tent() };
    for stiffener in
        [tent(), stitched, one_side, Stiffener { end: StiffenerEnd::Tapered { length: 0.1 }, ..tent() }]
    {
        let both_sides = stiffener.weld.both_sides;
        let outcome = stiffening(vec![stiffener]);
        let one = &outcome.stiffeners[0];
        // A foot without weld bears on the wall; that is no force of a weld.
        let two_feet = one.weld.iter().any(|force| force.foot == Foot::Rear);
        assert_eq!(two_feet, both_sides);
        let largest = one.axial.iter().map(|at| at.tied.abs()).fold(0.0, f64::max);
        for at in &one.axial {
            let up_to = one.weld.iter().filter(|force| force.y < at.y);
            let carried: f64 = up_to.map(|force| force.along * force.length).sum();
            assert_relative_eq!(carried, at.tied, epsilon = 1e-6 * largest);
        }
        let sums = |part: fn(&WeldForce) -> f64| {
            one.weld.iter().map(|force| part(force) * force.length).sum::<f64>()
        };
        assert_relative_eq!(sums(|force| force.along), 0.0, epsilon = 1e-6 * largest);
    }
}

#[test]
fn a_stiffener_seen_in_a_mirror_has_the_forces_of_the_mirror() {
    let of = |from: f64, to: f64| {
        let axle = loose_seats(vec![Stiffener { from, to, ..tent() }]);
        under_load(&axle, 80e3)
    };
    let (left, right) = (of(-0.1, 0.38), of(-0.38, 0.1));
    let [a, b] = [&left, &right].map(|case| case.stiffening.as_ref().unwrap());
    let [one, other] = [a, b].map(|outcome| &outcome.stiffeners[0]);
    assert_relative_eq!(one.working_length, other.working_length, max_relative = 1e-9);
    assert_relative_eq!(one.peak.magnitude(), other.peak.magnitude(), max_relative = 1e-5);
    let force = |one: &StiffenerOutcome, last: bool| {
        let front = one.weld.iter().filter(|force| force.foot == Foot::Front);
        let forces: Vec<_> = front.collect();
        if last { forces[forces.len() - 1].along } else { forces[0].along }
    };
    assert_relative_eq!(force(one, true), -force(other, false), max_relative = 1e-5);
}

#[test]
fn why_help_is_lost_is_said_and_the_words_follow_the_numbers() {
    let why = |one: Stiffener| stiffening(vec![one]).why.unwrap_or_default();
    let pattern = WeldPattern::Stitched { length: 0.03, pitch: 0.2 };
    let stitched = Stiffener { weld: StiffenerWeld { pattern, ..weld() }, ..tent() };
    let fillet = weld_stiffness(80e9);
    let cases =
        [why(stitched), why(welded(0.1 * fillet)), why(Stiffener { from: -0.1, to: 0.1, ..welded(fillet) })];
    for (said, word) in cases.iter().zip(["in stitches", "soft", "is short"]) {
        assert!(said.contains(word), "{said}");
    }
    assert!(!cases[2].contains("stitches") && !cases[2].contains("soft"), "{}", cases[2]);
}

#[test]
fn stitches_lie_at_both_ends_and_are_no_farther_apart_than_asked_for() {
    let runs = |length: f64, pitch: f64| {
        let pattern = WeldPattern::Stitched { length, pitch };
        Stiffener { weld: StiffenerWeld { pattern, ..weld() }, ..tent() }.weld_runs()
    };
    let stitches = runs(0.05, 0.15);
    assert_eq!(stitches.len(), 6);
    assert_relative_eq!(stitches[0][0], -0.35);
    assert_relative_eq!(stitches[5][1], 0.35, max_relative = 1e-12);
    assert_relative_eq!(stitches[1][0] - stitches[0][0], 0.13, max_relative = 1e-12);
    assert_eq!(runs(0.4, 0.5), [[-0.35, 0.35]]);
    assert_eq!(runs(0.7, 0.7).len(), 1);
}

#[test]
fn every_standard_case_says_what_two_stiffeners_do() {
    let mut axle = axle();
    axle.stiffeners = vec![tent(), Stiffener { name: "lower".into(), clock: PI, ..tent() }];
    let axle = axle.checked().unwrap();
    let outcome = flex(&axle, &standard_cases(&axle)).unwrap();
    for case in &outcome.cases {
        let stiffening = case.stiffening.as_ref().unwrap();
        assert_eq!(stiffening.stiffeners.len(), 2);
        assert_eq!(case.wheels.of(stiffening.side).camber_change, stiffening.tied);
        assert!(stiffening.removed(stiffening.tied) < stiffening.removed(stiffening.composite));
        assert!(stiffening.removed_per_mass() > 0.0);
    }
    let bare = flex(&example::axle(), &standard_cases(&axle)).unwrap();
    assert!(bare.cases.iter().all(|case| case.stiffening.is_none()));
}

/// An axle with a stiffener on top, its weld in stitches or continuous.
fn with_pattern(pattern: WeldPattern) -> Axle {
    let mut axle = axle();
    axle.stiffeners = vec![Stiffener { weld: StiffenerWeld { pattern, ..weld() }, ..tent() }];
    axle.checked().unwrap()
}

const STITCHED: WeldPattern = WeldPattern::Stitched { length: 0.03, pitch: 0.2 };

fn on_a_flat_road(axle: &Axle, basis: RideBasis) -> RideOutcome {
    let asked = Ride {
        to: 1.0,
        axle_load: axle.loading.rated_load,
        basis,
        keep: RecordOptions { stresses: true, shapes: 2 },
        ..example::ride_over(Road { left: Track::flat(), right: Track::flat() })
    };
    ride(axle, &asked).unwrap()
}

/// One model for all: what `flex` says of a weld in stitches, studies, sensitivities and rides say too.
#[test]
fn stitched_and_continuous_welds_differ_alike_in_statics_studies_sensitivities_and_rides() {
    let answers = [STITCHED, WeldPattern::Continuous].map(|pattern| {
        let axle = with_pattern(pattern);
        let cases = standard_cases(&axle);
        let rated = flex(&axle, &cases[..1]).unwrap().cases.remove(0);
        let still = rated.wheels.left.camber_change;
        let read = StaticReadings::of(&axle, &cases[0]).unwrap();
        let adjoint = Adjoint::of(&axle, &cases[0]).unwrap();
        assert_relative_eq!(read.wheels.left.camber_change, still, max_relative = 1e-12);
        assert_relative_eq!(read.peak_stress, rated.peak_stress, max_relative = 1e-12);
        assert_relative_eq!(adjoint.own().camber_change.left, still, max_relative = 1e-9);
        assert_relative_eq!(adjoint.own().peak_stress, rated.peak_stress, max_relative = 1e-9);
        let flat = on_a_flat_road(&axle, RideBasis::Reduced);
        // Beam weights act through consistent loads there and consistent masses here.
        assert_relative_eq!(flat.wheels.left.camber_at_rest, still, max_relative = 1e-4);
        let (moving, split) = (flat.wheels.left.camber_peak_split, rated.wheels.left.split);
        assert_relative_eq!(moving.bending, split.bending, max_relative = 1e-3);
        assert_relative_eq!(moving.shear, split.shear, max_relative = 1e-3);
        assert_relative_eq!(split.sum(), still, max_relative = 1e-9);
        let tramp = modes(&axle, axle.loading.rated_load, 8).unwrap().modes;
        (still.abs(), tramp.last().unwrap().frequency)
    });
    let [stitched, continuous] = answers;
    assert!(stitched.0 > 1.01 * continuous.0, "{answers:?}");
    assert!(stitched.1 < continuous.1, "{answers:?}");
}

/// Stations are those of the axle and its stiffeners; where only a weld is held is none.
#[test]
fn stress_at_rest_is_that_of_statics_at_every_station_of_a_stiffened_axle() {
    let axle = with_pattern(WeldPattern::Continuous);
    let rated = flex(&axle, &standard_cases(&axle)[..1]).unwrap().cases.remove(0);
    assert!(rated.stations.iter().all(|station| station.name != "weld"));
    let flat = on_a_flat_road(&axle, RideBasis::Full);
    let largest = flat.stations.iter().fold(0.0_f64, |most, station| most.max(station.stress.abs()));
    for moving in &flat.stations {
        let still = rated.stations.iter().find(|own| own.name == moving.name).unwrap();
        // Weight of a beam between its ends bends it there, and statics adds that to what its ends carry.
        assert_relative_eq!(moving.stress.abs(), still.stress.abs(), epsilon = 2e-3 * largest);
    }
}

/// The moment of a cut is that of statics, whoever carries it; the axle's own part falls where the stiffener helps.
#[test]
fn axle_and_stiffener_together_carry_the_moment_of_the_bare_axle() {
    let [bare, stiff] = [vec![], vec![tent()]].map(|stiffeners| under_load(&loose_seats(stiffeners), 80e3));
    let at = |case: &axlebow_axle::CaseOutcome, y: f64| {
        case.diagram.iter().find(|point| (point.y - y).abs() < 1e-9).unwrap().resultants.moment_x
    };
    assert_relative_eq!(at(&stiff, 0.0), at(&bare, 0.0), max_relative = 1e-9);
    let center = stiff.stations.iter().find(|station| station.name == "center").unwrap();
    assert_relative_eq!(center.resultants.moment_x, at(&bare, 0.0), max_relative = 1e-9);
    let own = center.axle_resultants.moment_x / center.resultants.moment_x;
    assert!((0.3..0.95).contains(&own), "{own}");
    for side in Side::BOTH {
        assert_relative_eq!(stiff.seats.of(side).vertical, bare.seats.of(side).vertical, max_relative = 0.01);
    }
}

/// A thread remembers the bar of a form; where a form was first seated on it must not show in the digits.
#[test]
fn what_a_thread_solved_before_changes_no_digit() {
    let at = |clock: f64| stiffening(vec![Stiffener { clock, ..tent() }]);
    let fresh = |clocks: &'static [f64]| {
        let solved = std::thread::spawn(move || clocks.iter().map(|clock| at(*clock)).next_back());
        solved.join().unwrap().unwrap()
    };
    for (alone, after) in [(&[PI][..], &[0.0, PI][..]), (&[FRAC_PI_2], &[2.0, FRAC_PI_2])] {
        assert_eq!(fresh(alone), fresh(after));
    }
}
