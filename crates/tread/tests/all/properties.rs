//! What holds for every tire face.

use approx::assert_relative_eq;
use axlebow_tread::{AlongRide, Carcass, Duty, Face, Passed, Pose, Tread};
use proptest::prelude::*;

const CARCASS: Carcass = Carcass { radius: 0.51, stiffness: 1.1e6, rated_load: 30e3 };

fn tread(ribs: usize, crown: f64) -> Tread {
    Tread { ribs, crown, ..Tread::usual(0.3).unwrap() }
}

fn face(tread: Tread, places: &[f64]) -> Face {
    Face::new(tread, CARCASS, places).unwrap()
}

/// A face of which driving asks nothing but one side force over load to and fro.
fn in_duty(tread: Tread, places: &[f64], side: f64) -> Face {
    face(tread, places).with_duty(Duty::steady(side).unwrap(), false).unwrap()
}

/// A tread that its tire's air alone carries.
fn strip() -> Face {
    face(Tread { sidewall_share: 0.0, ..tread(1000, 0.0) }, &[0.0])
}

fn pose(load: f64, camber: f64) -> Pose {
    Pose { load, camber, toe: 0.0 }
}

/// A uniform strip on one-sided springs, all of it in contact: the pressure is linear, q = P/B (1 ± 6e/B), as under a
/// rigid footing (J. E. Bowles, Foundation Analysis and Design, 5th ed. 1996, ch. 8; from memory).
#[test]
fn a_strip_in_full_contact_has_linear_pressure() {
    let (load, camber) = (40e3, -0.01_f64);
    let strip = strip();
    let pressed = strip.pressed(pose(load, camber)).unwrap();
    let (width, each) = (0.3, CARCASS.stiffness / 1000.0);
    // Eccentricity of a linear pressure: k γ B²/(12 P).
    let eccentricity = CARCASS.stiffness * camber.abs() * width * width / (12.0 * load);
    let edge = load / width * (1.0 + 6.0 * eccentricity / width);
    let ours = pressed.load[0] / (width / 1000.0) + each / (width / 1000.0) * camber.abs() * width / 2000.0;
    assert_relative_eq!(ours, edge, max_relative = 1e-12);
}

/// One shoulder lifted: the pressure is a triangle over 3 (B/2 − e), q = 2P/(3 (B/2 − e)); in terms of the camber the
/// contact is √(2 P B/(k γ)) wide. The ribs of a thousandth of the width cut the edge of contact within one rib.
#[test]
fn a_strip_with_one_shoulder_lifted_presses_as_a_triangle() {
    let (load, camber) = (5e3, 0.05_f64);
    let strip = strip();
    let pressed = strip.pressed(pose(load, camber)).unwrap();
    let contact = (2.0 * load * 0.3 / (CARCASS.stiffness * camber)).sqrt();
    assert!(contact < 0.3, "{contact}");
    let touching = pressed.load.iter().filter(|load| **load > 0.0).count();
    assert!((touching as f64 * 0.3e-3 - contact).abs() <= 0.3e-3, "{touching} {contact}");
    let eccentricity = 0.15 - contact / 3.0;
    let moment: f64 =
        pressed.load.iter().enumerate().map(|(i, load)| load * (-0.15 + (i as f64 + 0.5) * 0.3e-3)).sum();
    assert_relative_eq!(moment / load, eccentricity, max_relative = 1e-5);
    let edge = 2.0 * load / (3.0 * (0.15 - eccentricity));
    assert_relative_eq!(pressed.load[999] / 0.3e-3, edge, max_relative = 2.0 / touching as f64);
}

/// Two springs at ± s/2 under one hub: the inner takes k s γ more of the load.
#[test]
fn duals_differ_by_stiffness_spacing_and_slope() {
    for crown in [0.0, 0.004] {
        let dual = face(tread(6, crown), &[0.165, -0.165]);
        let camber = -0.6_f64.to_radians();
        let worn = dual.worn(pose(42e3, camber)).unwrap();
        let difference = worn.tires[1].load - worn.tires[0].load;
        assert_relative_eq!(difference, CARCASS.stiffness * 0.33 * camber.abs(), max_relative = 1e-12);
    }
}

/// An upright tire without crown is a cylinder: it rolls without slip, and only what driving asks for wears it.
#[test]
fn a_free_rolling_cylinder_scuffs_nothing() {
    for places in [&[0.0][..], &[0.17, -0.17]] {
        let face = in_duty(tread(5, 0.0), places, 0.0);
        let rolling = face.rolling(pose(30e3, 0.0)).unwrap();
        assert!(rolling.ribs.iter().all(|rib| rib.energy == 0.0 && rib.slip_forward == 0.0), "{rolling:?}");
        let deflection = 30e3 / (CARCASS.stiffness * places.len() as f64);
        assert_relative_eq!(rolling.radius, 0.51 - deflection / 3.0, max_relative = 1e-14);
        let worn = face.worn(pose(30e3, 0.0)).unwrap();
        assert_eq!(worn.tires[0].ribs[0].index, None);
    }
}

/// Small slips: a leaning pair scuffs by C σ² with σ the difference of radii from their mean by stiffness.
#[test]
fn small_slips_scuff_by_the_square() {
    let face = in_duty(tread(5, 0.0), &[0.0], 0.0);
    let energy = |camber: f64| {
        face.rolling(pose(40e3, camber)).unwrap().ribs.iter().map(|rib| rib.energy).sum::<f64>()
    };
    assert_relative_eq!(energy(2e-4) / energy(1e-4), 4.0, max_relative = 1e-3);
}

/// The slope of a bouncing camber that is zero in the mean wears the tire all the same.
#[test]
fn a_camber_that_bounces_about_zero_wears() {
    let face = face(tread(5, 0.0), &[0.0]);
    let moment = |i: i32| {
        let distance = 0.02 * f64::from(i);
        Passed { distance, pose: pose(40e3, 0.02 * (3.0 * distance).sin()) }
    };
    let ride: Vec<Passed> = (0..5000).map(moment).collect();
    let wear = face.worn_along(&ride, AlongRide { parts: 72 }).unwrap();
    let mean = |rib: usize| wear.mean.tires[0].ribs[rib].against_upright.unwrap();
    assert!(mean(0) > 1.05 && mean(4) > 1.05, "{} {}", mean(0), mean(4));
    assert!(wear.turns > 30.0);
}

/// A camber that comes back n times a turn prints n cups on each shoulder.
#[test]
fn a_camber_in_step_with_the_wheel_prints_its_cups() {
    let face = face(tread(5, 0.0), &[0.0]);
    let radius = face.rolling(pose(40e3, 0.0)).unwrap().radius;
    let moment = |i: i32| {
        let distance = 0.005 * f64::from(i);
        Passed { distance, pose: pose(40e3, -0.01 + 0.004 * (6.0 * distance / radius).sin()) }
    };
    let ride: Vec<Passed> = (0..20_000).map(moment).collect();
    let wear = face.worn_along(&ride, AlongRide { parts: 96 }).unwrap();
    let strongest = wear.round[0].strongest(0, 24).unwrap();
    assert_eq!(strongest.count, 6);
    assert!(strongest.amplitude > 0.02, "{strongest:?}");
}

/// Moments of unlike poses, steps and loads, for sums by hand.
fn uneven_ride() -> Vec<Passed> {
    let moments = [
        (0.0, 30e3, 0.0, 0.0),
        (0.5, 40e3, -0.02, 0.004),
        (0.9, 20e3, 0.01, -0.002),
        (2.4, 50e3, -0.005, 0.0),
    ];
    moments
        .map(|(distance, load, camber, toe)| Passed { distance, pose: Pose { load, camber, toe } })
        .to_vec()
}

/// The rule of trapezoids by hand, moment by moment: each counts for half of the way to its neighbors.
#[test]
fn means_along_a_ride_are_those_of_its_moments_by_their_share_of_the_way() {
    let face = face(tread(5, 0.001), &[0.165, -0.165]);
    let (ride, ways) = (uneven_ride(), [0.25, 0.45, 0.95, 0.75]);
    let wear = face.worn_along(&ride, AlongRide { parts: 3 }).unwrap();
    let each: Vec<_> = ride.iter().map(|moment| face.worn(moment.pose).unwrap()).collect();
    let mean = |value: &dyn Fn(&axlebow_tread::Worn) -> f64| {
        each.iter().zip(ways).map(|(own, way)| way * value(own)).sum::<f64>() / 2.4
    };
    let turns = each.iter().zip(ways).map(|(own, way)| way / own.radius).sum::<f64>();
    assert_relative_eq!(wear.turns, turns / std::f64::consts::TAU, max_relative = 1e-12);
    assert_relative_eq!(wear.mean.radius, 2.4 / turns, max_relative = 1e-12);
    assert_relative_eq!(wear.mean.upright, mean(&|own| own.upright), max_relative = 1e-12);
    for tire in 0..2 {
        assert_relative_eq!(
            wear.mean.tires[tire].load,
            mean(&|own| own.tires[tire].load),
            max_relative = 1e-12
        );
        for (i, rib) in wear.mean.tires[tire].ribs.iter().enumerate() {
            let of = |value: fn(&axlebow_tread::RibWear) -> f64| mean(&|own| value(&own.tires[tire].ribs[i]));
            assert_relative_eq!(rib.load, of(|rib| rib.load), max_relative = 1e-12);
            assert_relative_eq!(rib.wear, of(|rib| rib.wear), max_relative = 1e-12);
            assert_relative_eq!(rib.scuff.energy, of(|rib| rib.scuff.energy), max_relative = 1e-12);
            let (forward, side) = (of(|rib| rib.scuff.slip_forward), of(|rib| rib.scuff.slip_side));
            assert_relative_eq!(rib.scuff.slip_forward, forward, max_relative = 1e-12);
            assert_relative_eq!(rib.scuff.slip_side, side, max_relative = 1e-12);
            assert_relative_eq!(rib.index.unwrap(), rib.wear / wear.mean.upright, max_relative = 1e-12);
        }
    }
}

/// By hand: a moment falls on the part of the circumference that is in contact in the middle of its way, and comes round
/// again to the same part turn by turn; a part wears by the mean over the way that passed over it.
#[test]
fn each_part_of_the_circumference_has_the_wear_of_what_passed_over_it() {
    let face = face(tread(5, 0.001), &[0.0]);
    let moment = |i: u32| Passed {
        distance: 0.31 * f64::from(i) + 0.05 * f64::from(i % 3),
        pose: pose(30e3 + 5e3 * f64::from(i % 4), -0.02 + 0.01 * f64::from(i % 5)),
    };
    let ride: Vec<Passed> = (0..60).map(moment).collect();
    let wear = face.worn_along(&ride, AlongRide { parts: 7 }).unwrap();
    let (mut angle, mut ways, mut energy) = (0.0, [0.0; 7], [[0.0; 7]; 5]);
    for (i, own) in ride.iter().enumerate() {
        let before = if i == 0 { own.distance } else { ride[i - 1].distance };
        let after = if i == 59 { own.distance } else { ride[i + 1].distance };
        let (way, worn) = ((after - before) / 2.0, face.worn(own.pose).unwrap());
        let middle = (angle + way / worn.radius / 2.0).rem_euclid(std::f64::consts::TAU);
        let part = (middle / (std::f64::consts::TAU / 7.0)) as usize;
        angle += way / worn.radius;
        ways[part] += way;
        for (rib, energy) in energy.iter_mut().enumerate() {
            energy[part] += way * worn.tires[0].ribs[rib].wear;
        }
    }
    assert!(wear.turns > 5.0);
    for (rib, energy) in energy.iter().enumerate() {
        for (part, energy) in energy.iter().enumerate() {
            let own = wear.round[0].ribs[rib][part].unwrap();
            assert_relative_eq!(own, energy / ways[part] / wear.mean.upright, max_relative = 1e-10);
        }
    }
}

/// What wears a part, by the way that passed over it, sums to what wears the rib over the whole way.
#[test]
fn wear_round_the_tire_sums_to_the_wear_of_the_ride() {
    let face = face(tread(4, 0.001), &[0.165, -0.165]);
    let radius = face.rolling(pose(40e3, 0.0)).unwrap().radius;
    // Whole turns in even steps, so that equally much way passes over each of the parts.
    let (turns, parts) = (7, 16);
    let step = std::f64::consts::TAU * radius / f64::from(parts);
    let moment = |i: i32| Passed {
        distance: step * f64::from(i),
        pose: pose(40e3, if i % parts < 5 { -0.01 } else { 0.0 }),
    };
    let ride: Vec<Passed> = (0..=turns * parts).map(moment).collect();
    let wear = face.worn_along(&ride, AlongRide { parts: usize::try_from(parts).unwrap() }).unwrap();
    for (tire, round) in wear.round.iter().enumerate() {
        for (rib, parts) in round.ribs.iter().enumerate() {
            let mean = parts.iter().map(|part| part.unwrap()).sum::<f64>() / parts.len() as f64;
            let whole = wear.mean.tires[tire].ribs[rib].wear / wear.mean.upright;
            // The first and last moments fall on one part by halves; the radius under camber is not the upright one.
            assert_relative_eq!(mean, whole, max_relative = 0.02);
        }
    }
}

#[test]
fn a_ride_that_goes_back_is_refused() {
    let face = face(tread(5, 0.0), &[0.0]);
    let at = |distance: f64| Passed { distance, pose: pose(40e3, 0.0) };
    let back = [at(0.0), at(2.0), at(1.0), at(3.0)];
    assert!(face.worn_along(&back, AlongRide { parts: 4 }).is_err());
    assert!(face.worn_along(&[at(0.0), at(0.0), at(1.0)], AlongRide { parts: 4 }).is_err());
}

#[test]
fn a_ride_without_distance_is_refused() {
    let face = face(tread(5, 0.0), &[0.0]);
    let still = Passed { distance: 1.0, pose: pose(40e3, 0.0) };
    let error = face.worn_along(&[still, still], AlongRide { parts: 72 }).unwrap_err();
    assert!(error.to_string().contains("no distance"), "{error}");
    assert!(face.worn_along(&[], AlongRide { parts: 72 }).is_err());
}

#[test]
fn what_no_wheel_does_is_refused() {
    let face = face(tread(5, 0.0), &[0.0]);
    for bad in [pose(f64::NAN, 0.0), pose(4e4, 0.3), Pose { load: 4e4, camber: 0.0, toe: f64::NAN }] {
        assert!(face.worn(bad).is_err(), "{bad:?}");
    }
    assert!(Face::new(tread(5, 0.0), CARCASS, &[]).is_err());
    assert!(Face::new(tread(5, 0.0), CARCASS, &[0.3, 0.0, -0.3]).is_err());
}

proptest! {
    /// Rib loads are never negative and sum to the load; scuff is never negative; forward forces are in balance, so
    /// that ribs slide both ways or none does.
    #[test]
    fn loads_sum_and_scuff_is_never_negative(
        load in 0.0..90e3_f64, camber in -0.1..0.1_f64, toe in -0.05..0.05_f64, crown in 0.0..0.01_f64,
        ribs in 2_usize..12, spacing in 0.0..0.4_f64,
    ) {
        let places = [0.5 * spacing, -0.5 * spacing];
        let face = face(tread(ribs, crown), if spacing < 0.3 { &places[..1] } else { &places });
        let worn = face.worn(Pose { load, camber, toe }).unwrap();
        let all: Vec<_> = worn.tires.iter().flat_map(|tire| &tire.ribs).collect();
        let sum: f64 = all.iter().map(|rib| rib.load).sum();
        prop_assert!((sum - load).abs() <= 1e-9 * load.max(1.0), "{} {}", sum, load);
        prop_assert!(all.iter().all(|rib| rib.load >= 0.0 && rib.scuff.energy >= 0.0));
        let slips = || all.iter().filter(|rib| rib.load > 0.0).map(|rib| rib.scuff.slip_forward);
        let (least, most) = (slips().fold(0.0, f64::min), slips().fold(0.0, f64::max));
        prop_assert!((least < 0.0) == (most > 0.0) || most - least < 1e-9, "{} {}", least, most);
    }

    /// Seen in a mirror, inner and outer shoulder change places.
    #[test]
    fn a_mirrored_wheel_mirrors_the_face(load in 1e3..90e3_f64, camber in 0.0..0.1_f64, toe in -0.05..0.05_f64) {
        let face = face(tread(5, 0.003), &[0.17, -0.17]).with_tilt_per_side_force(3e-6).unwrap();
        let [one, other] = [1.0, -1.0].map(|way| face.worn(Pose { load, camber: way * camber, toe: way * toe }).unwrap());
        let of = |worn: &axlebow_tread::Worn| -> Vec<(f64, f64)> {
            worn.tires.iter().flat_map(|tire| &tire.ribs).map(|rib| (rib.load, rib.wear)).collect()
        };
        // Tires run from the outermost inward, ribs from the inner shoulder outward.
        let mirrored: Vec<_> = of(&other).chunks(5).rev().flat_map(|tire| tire.iter().rev().copied()).collect();
        for ((load, wear), (their_load, their_wear)) in of(&one).into_iter().zip(mirrored) {
            prop_assert!((load - their_load).abs() <= 1e-9 * load.max(1.0));
            // A rib that just touches or just does not is off by the rounding of loads.
            prop_assert!((wear - their_wear).abs() <= 1e-6 * wear.max(1e-6), "{} {}", wear, their_wear);
        }
    }
}

/// A curve asks for a force, so that a stiff tread slips and wears less for it; a lean imposes a slip, for which a stiff
/// tread pays more (A. Schallamach & D. M. Turner, The wear of slipping wheels, Wear 3 (1960) 1-25: wear by the square of
/// force over stiffness, or of slip by stiffness; from memory).
#[test]
fn a_stiff_tread_wears_less_by_force_and_more_by_slip() {
    let of = |shear_modulus: f64| in_duty(Tread { shear_modulus, ..tread(5, 0.0) }, &[0.0], 0.03);
    let (soft, stiff) = (of(1e6), of(3e6));
    let energy =
        |face: &Face, pose| face.rolling(pose).unwrap().ribs.iter().map(|rib| rib.energy).sum::<f64>();
    let straight = pose(40e3, 0.0);
    assert_relative_eq!(energy(&soft, straight) / energy(&stiff, straight), 3.0, max_relative = 0.05);
    let steered = Pose { toe: 0.002, ..straight };
    let by_slip = |face: &Face| energy(face, steered) - energy(face, straight);
    assert_relative_eq!(by_slip(&stiff) / by_slip(&soft), 3.0, max_relative = 0.05);
}

/// A brush of the width w and length l = F/(p w) of a contact at rated load has the shear stiffness (G/h) w l²/2.
#[test]
fn shear_stiffness_at_the_rated_load_is_that_of_the_contact() {
    let tread = tread(5, 0.0);
    let length = CARCASS.rated_load / (tread.inflation * tread.width);
    let stiffness = tread.shear_modulus / tread.depth * tread.width * length * length / 2.0;
    let toe = 1e-6;
    let rolling =
        in_duty(tread, &[0.0], 0.0).rolling(Pose { load: CARCASS.rated_load, camber: 0.0, toe }).unwrap();
    let energy: f64 = rolling.ribs.iter().map(|rib| rib.energy).sum();
    assert_relative_eq!(energy, stiffness * toe * toe, max_relative = 1e-4);
}
