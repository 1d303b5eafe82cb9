//! Wear along a ride, against the same faces standing, added up by hand.

use std::f64::consts::TAU;

use approx::assert_relative_eq;
use axlebow_tread::{AlongRide, Carcass, Face, Passed, Pose, RibWear, RideWear, Tread, TreadError, Worn};

const CARCASS: Carcass = Carcass { radius: 0.51, stiffness: 0.9e6, rated_load: 22e3 };
const PLAIN: Pose = Pose { load: 40e3, camber: 0.0, toe: 0.0 };
const LEANING: Pose = Pose { load: 52e3, camber: -0.009, toe: 0.004 };

/// Duals, one of them soft, on a carcass that gives way sideways.
fn face() -> Face {
    let tread = Tread { abradability: 1.4, ..Tread::usual(0.22).unwrap() };
    let face = Face::new(tread, CARCASS, &[0.165, -0.165]).unwrap();
    let soft = face.with_inflations(&[760e3, 700e3]).unwrap();
    soft.with_tilt_per_side_force(3e-6).unwrap().with_abrasion(Some(3e-11)).unwrap()
}

fn ride(moments: &[(f64, Pose)]) -> Vec<Passed> {
    moments.iter().map(|(distance, pose)| Passed { distance: *distance, pose: *pose }).collect()
}

fn driven(moments: &[(f64, Pose)], parts: usize) -> RideWear {
    face().worn_along(&ride(moments), AlongRide { parts }).unwrap()
}

fn ribs(worn: &Worn) -> Vec<RibWear> {
    worn.tires.iter().flat_map(|tire| tire.ribs.clone()).collect()
}

/// What a rib is told of, all but its place.
fn numbers(rib: &RibWear) -> [f64; 9] {
    let scuff = rib.scuff;
    [
        rib.load,
        scuff.slip_forward,
        scuff.slip_side,
        scuff.energy,
        scuff.inboard_less_outboard,
        rib.wear,
        rib.index.unwrap(),
        rib.against_upright.unwrap(),
        rib.worn_per_distance.unwrap(),
    ]
}

#[test]
fn a_ride_in_one_pose_wears_as_that_pose() {
    let wear = driven(&[(2.0, LEANING), (2.5, LEANING), (4.0, LEANING), (11.0, LEANING)], 7);
    let standing = face().worn(LEANING).unwrap();
    assert_relative_eq!(wear.mean.radius, standing.radius, max_relative = 1e-12);
    assert_relative_eq!(wear.mean.upright, standing.upright, max_relative = 1e-12);
    assert_relative_eq!(wear.turns, 9.0 / (TAU * standing.radius), max_relative = 1e-12);
    for (own, expected) in ribs(&wear.mean).iter().zip(&ribs(&standing)) {
        for (own, expected) in numbers(own).into_iter().zip(numbers(expected)) {
            assert_relative_eq!(own, expected, max_relative = 1e-12);
        }
    }
    for (tire, (own, expected)) in wear.mean.tires.iter().zip(&standing.tires).enumerate() {
        assert_relative_eq!(own.share, expected.share, max_relative = 1e-12);
        for (parts, rib) in wear.round[tire].ribs.iter().zip(&expected.ribs) {
            for part in parts.iter().flatten() {
                assert_relative_eq!(*part, rib.index.unwrap(), max_relative = 1e-12);
            }
        }
    }
}

/// Each moment counts for half of the way to its neighbors: of 6 m the first for 0.5, the second for 2.0 and the last two
/// for 3.5, all of them in two poses.
#[test]
fn a_ride_wears_by_the_way_in_each_pose() {
    let wear = driven(&[(0.0, PLAIN), (1.0, LEANING), (4.0, PLAIN), (6.0, PLAIN)], 5);
    let [plain, leaning] = [PLAIN, LEANING].map(|pose| face().worn(pose).unwrap());
    let share = 2.0 / 6.0;
    let mean = |a: f64, b: f64| (1.0 - share) * a + share * b;
    assert_relative_eq!(wear.mean.upright, mean(plain.upright, leaning.upright), max_relative = 1e-12);
    // Turns add up, not radii.
    let turns = 4.0 / (TAU * plain.radius) + 2.0 / (TAU * leaning.radius);
    assert_relative_eq!(wear.turns, turns, max_relative = 1e-12);
    assert_relative_eq!(wear.mean.radius, 6.0 / (TAU * turns), max_relative = 1e-12);
    for ((own, a), b) in ribs(&wear.mean).iter().zip(&ribs(&plain)).zip(&ribs(&leaning)) {
        for i in 0..6 {
            let expected = mean(numbers(a)[i], numbers(b)[i]);
            assert_relative_eq!(numbers(own)[i], expected, max_relative = 1e-12, epsilon = 1e-15);
        }
        let upright = |rib: &RibWear| rib.wear / rib.against_upright.unwrap();
        assert_relative_eq!(own.index.unwrap(), own.wear / wear.mean.upright, max_relative = 1e-12);
        let over = own.wear / mean(upright(a), upright(b));
        assert_relative_eq!(own.against_upright.unwrap(), over, max_relative = 1e-12);
    }
}

/// The tire rolls on from its first moment: the moment that leans falls on the part that is in contact at its middle. Moments are a
/// step apart, 40 to a turn, but for half a step at both ends, so that the middle of moment i lies i - 1/2 steps on.
#[test]
fn wear_falls_on_the_part_of_the_tire_that_is_in_contact() {
    let radius = face().worn(PLAIN).unwrap().radius;
    let (parts, step) = (10, TAU * radius / 40.0);
    for leaning in [5, 21, 38, 57] {
        let place = |i: usize| (i as f64 - 0.5).clamp(0.0, 80.0);
        let moment = |i: usize| (3.0 + step * place(i), if i == leaning { LEANING } else { PLAIN });
        let wear = driven(&(0..=81).map(moment).collect::<Vec<_>>(), parts);
        let hit = (leaning - 1) / 4 % parts;
        let shoulder = &wear.round[1].ribs[0];
        let most = (0..parts).max_by(|a, b| shoulder[*a].unwrap().total_cmp(&shoulder[*b].unwrap())).unwrap();
        assert_eq!(most, hit, "{leaning}: {shoulder:?}");
        let [plain, leaned] = [PLAIN, LEANING].map(|pose| face().worn(pose).unwrap().tires[1].ribs[0].wear);
        // Two turns: eight moments on a part, one of which leans.
        let expected = (7.0 * plain + leaned) / 8.0 / wear.mean.upright;
        assert_relative_eq!(shoulder[hit].unwrap(), expected, max_relative = 1e-9);
        let untouched = shoulder[(hit + 5) % parts].unwrap();
        assert_relative_eq!(untouched, plain / wear.mean.upright, max_relative = 1e-9);
    }
}

#[test]
fn parts_that_nothing_passes_have_no_wear() {
    let radius = face().worn(PLAIN).unwrap().radius;
    let moments: Vec<(f64, Pose)> = (0..=40).map(|i| (0.0125 * TAU * radius * f64::from(i), PLAIN)).collect();
    // Half a turn.
    let round = &driven(&moments, 8).round[0].ribs[2];
    assert!(round[..4].iter().all(Option::is_some), "{round:?}");
    assert!(round[5..].iter().all(Option::is_none), "{round:?}");
    // Without parts the whole circumference is one.
    assert_eq!(driven(&moments, 0).round[0].ribs[2].len(), 1);
}

#[test]
fn a_ride_that_does_not_move_on_is_refused() {
    let still = [(2.0, PLAIN), (2.0, PLAIN)];
    let back = [(0.0, PLAIN), (2.0, PLAIN), (1.0, PLAIN), (4.0, PLAIN)];
    for moments in [&[][..], &[(1.0, PLAIN)], &still, &back] {
        let refused = face().worn_along(&ride(moments), AlongRide { parts: 4 });
        assert_eq!(refused.unwrap_err(), TreadError::TooShort { samples: moments.len() });
    }
    let steep = [(0.0, PLAIN), (1.0, Pose { camber: 0.3, ..PLAIN })];
    assert!(face().worn_along(&ride(&steep), AlongRide { parts: 4 }).is_err());
}
