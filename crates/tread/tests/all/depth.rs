//! Depths of wear, once it is known what a joule of scuff takes off.

use std::f64::consts::TAU;

use approx::assert_relative_eq;
use axlebow_tread::{Carcass, Duty, Face, HubWaves, Pose, Tread, WheelInertia};

const CARCASS: Carcass = Carcass { radius: 0.51, stiffness: 1.1e6, rated_load: 30e3 };
const POSE: Pose = Pose { load: 50e3, camber: -0.006, toe: 0.001 };
const ABRASION: f64 = 3e-11;

fn face(abrasion: Option<f64>) -> Face {
    let tread = Tread { abradability: 0.8, ..Tread::usual(0.3).unwrap() };
    Face::new(tread, CARCASS, &[0.165, -0.165]).unwrap().with_abrasion(abrasion).unwrap()
}

/// The volume that a rib loses on its way, all round the tire, is what its energy takes off.
#[test]
fn the_volume_worn_off_is_what_the_energy_takes() {
    let worn = face(Some(ABRASION)).worn(POSE).unwrap();
    for rib in worn.tires.iter().flat_map(|tire| &tire.ribs) {
        let tread_area = TAU * worn.radius * 0.06;
        let volume = rib.worn_per_distance.unwrap() * tread_area;
        assert_relative_eq!(volume, ABRASION * 0.8 * rib.scuff.energy, max_relative = 1e-12);
    }
    assert_eq!(face(None).worn(POSE).unwrap().tires[0].ribs[0].worn_per_distance, None);
}

/// By hand: a flat tread of one tire without sidewall load under a steady side force q F slips by σ = q/c, c = (G/h) F₀/(2 p² w)
/// = 0.5 × 75e6 × 30e3/(760e3² × 0.3) = 6.492382, where the brush is nearly linear. Each rib scuffs by (F/5) q σ, and loses
/// K/(2π R b) of that.
#[test]
fn a_flat_tread_loses_what_a_hand_computes() {
    let tread = Tread { crown: 0.0, sidewall_share: 0.0, friction: 50.0, ..Tread::usual(0.3).unwrap() };
    let duty = Duty::steady(0.02).unwrap();
    let face = Face::new(tread, CARCASS, &[0.0]).unwrap().with_duty(duty, false).unwrap();
    let face = face.with_abrasion(Some(ABRASION)).unwrap();
    let worn = face.worn(Pose { load: 30e3, camber: 0.0, toe: 0.0 }).unwrap();
    let radius = 0.51 - 30e3 / 1.1e6 / 3.0;
    let energy = 6e3 * 0.02 * (0.02 / 6.492_382);
    let expected = ABRASION * energy / (TAU * radius * 0.06);
    // The brush bends by q/(3 μ) of its slip, 1.3e-4.
    assert_relative_eq!(worn.tires[0].ribs[3].worn_per_distance.unwrap(), expected, max_relative = 2e-4);
}

#[test]
fn a_hub_loses_the_mean_of_its_ribs() {
    let inertia = WheelInertia::default();
    let waves = HubWaves::new(&face(Some(ABRASION)), POSE, inertia).unwrap();
    let worn = face(Some(ABRASION)).worn(POSE).unwrap();
    let each: Vec<f64> =
        worn.tires.iter().flat_map(|tire| &tire.ribs).map(|rib| rib.worn_per_distance.unwrap()).collect();
    let mean = each.iter().sum::<f64>() / 10.0;
    assert_relative_eq!(waves.worn_per_distance().unwrap(), mean, max_relative = 1e-12);
    assert_eq!(HubWaves::new(&face(None), POSE, inertia).unwrap().worn_per_distance(), None);
}

#[test]
fn an_abrasion_that_cannot_be_is_refused() {
    for abrasion in [0.0, -1e-11, f64::NAN] {
        let tread = Tread::usual(0.3).unwrap();
        let error = Face::new(tread, CARCASS, &[0.0]).unwrap().with_abrasion(Some(abrasion)).unwrap_err();
        assert!(error.to_string().starts_with("abrasion is"), "{error}");
    }
}
