//! What holds for every tire face.

use approx::assert_relative_eq;
use axlebow_tread::{AlongRide, Carcass, Face, Passed, Pose, Tread};
use proptest::prelude::*;

const CARCASS: Carcass = Carcass { radius: 0.51, stiffness: 1.1e6, rated_load: 30e3 };

fn tread(ribs: usize, crown: f64) -> Tread {
    Tread { ribs, crown, ..Tread::usual(0.3).unwrap() }
}

fn face(tread: Tread, places: &[f64]) -> Face {
    Face::new(tread, CARCASS, places).unwrap()
}

fn pose(load: f64, camber: f64) -> Pose {
    Pose { load, camber, toe: 0.0 }
}

/// A uniform strip on one-sided springs, all of it in contact: the pressure is linear, q = P/B (1 ± 6e/B), as under a
/// rigid footing (J. E. Bowles, Foundation Analysis and Design, 5th ed. 1996, ch. 8; from memory).
#[test]
fn a_strip_in_full_contact_has_linear_pressure() {
    let (load, camber) = (40e3, -0.01_f64);
    let strip = face(tread(1000, 0.0), &[0.0]);
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
    let strip = face(tread(1000, 0.0), &[0.0]);
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
    let still = Tread { usual_side_force: 0.0, ..tread(5, 0.0) };
    for places in [&[0.0][..], &[0.17, -0.17]] {
        let face = face(still, places);
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
    let face = face(Tread { usual_side_force: 0.0, ..tread(5, 0.0) }, &[0.0]);
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
    fn a_mirrored_camber_mirrors_the_face(load in 1e3..90e3_f64, camber in 0.0..0.1_f64, toe in -0.05..0.05_f64) {
        let face = face(tread(5, 0.003), &[0.17, -0.17]);
        let [one, other] = [camber, -camber].map(|camber| face.worn(Pose { load, camber, toe }).unwrap());
        let of = |worn: &axlebow_tread::Worn| -> Vec<(f64, f64)> {
            worn.tires.iter().flat_map(|tire| &tire.ribs).map(|rib| (rib.load, rib.wear)).collect()
        };
        // Tires run from the outermost inward, ribs from the inner shoulder outward.
        let mirrored: Vec<_> = of(&other).chunks(5).rev().flat_map(|tire| tire.iter().rev().copied()).collect();
        for ((load, wear), (their_load, their_wear)) in of(&one).into_iter().zip(mirrored) {
            prop_assert!((load - their_load).abs() <= 1e-9 * load.max(1.0));
            prop_assert!((wear - their_wear).abs() <= 1e-6 * wear.max(1e-9), "{} {}", wear, their_wear);
        }
    }
}

/// A curve asks for a force, so that a stiff tread slips and wears less for it; a lean imposes a slip, for which a stiff
/// tread pays more (A. Schallamach & D. M. Turner, The wear of slipping wheels, Wear 3 (1960) 1-25: wear by the square of
/// force over stiffness, or of slip by stiffness; from memory).
#[test]
fn a_stiff_tread_wears_less_by_force_and_more_by_slip() {
    let of = |shear_modulus: f64| face(Tread { shear_modulus, ..tread(5, 0.0) }, &[0.0]);
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
    let tread = Tread { usual_side_force: 0.0, ..tread(5, 0.0) };
    let length = CARCASS.rated_load / (tread.inflation * tread.width);
    let stiffness = tread.shear_modulus / tread.depth * tread.width * length * length / 2.0;
    let toe = 1e-6;
    let rolling = face(tread, &[0.0]).rolling(Pose { load: CARCASS.rated_load, camber: 0.0, toe }).unwrap();
    let energy: f64 = rolling.ribs.iter().map(|rib| rib.energy).sum();
    assert_relative_eq!(energy, stiffness * toe * toe, max_relative = 1e-4);
}
