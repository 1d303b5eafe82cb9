//! Tire faces against their recomputation by `scripts/recompute_tire_face.py`, bristle by bristle and with NumPy and SciPy,
//! whose results are kept in `recomputed_tire_face.json` beside this file.
//!
//! A single, a low one steered out, a driven dual that does not match, and a dual of which ribs are off the road and all
//! others slide in good part. The tires are invented.

use axlebow_axle::tread::{Carcass, Duty, DutyPart, Face, Pose, Tread};
use serde_json::Value;

/// 4000 bristles in place of an integral leave 1e-6 of a force where sliding begins within one of them.
const TOLERANCE: f64 = 2e-6;

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn numbers(list: &Value) -> Vec<f64> {
    list.as_array().unwrap().iter().map(number).collect()
}

fn tread(kept: &Value) -> Tread {
    let of = |key: &str| number(&kept[key]);
    Tread {
        width: of("width"),
        ribs: 5,
        crown: of("crown"),
        depth: of("depth"),
        shear_modulus: of("shear_modulus"),
        abradability: of("abradability"),
        inflation: of("inflation"),
        sidewall_share: of("sidewall_share"),
        friction: of("friction"),
    }
}

fn face(kept: &Value, case: &Value) -> Face {
    let of = |key: &str| number(&kept["carcass"][key]);
    let carcass = Carcass { radius: of("radius"), stiffness: of("stiffness"), rated_load: of("rated_load") };
    let tires: Vec<Vec<f64>> = case["tires"].as_array().unwrap().iter().map(numbers).collect();
    let each = |i: usize| tires.iter().map(|tire| tire[i]).collect::<Vec<_>>();
    let part = |row: &Value| {
        let row = numbers(row);
        DutyPart { share: row[0], side: row[1], forward: row[2] }
    };
    let duty = Duty::stated(case["duty"].as_array().unwrap().iter().map(part).collect()).unwrap();
    Face::new(tread(&kept["tread"]), carcass, &each(0))
        .and_then(|face| face.with_inflations(&each(1)))
        .and_then(|face| face.with_radii(&each(2)))
        .and_then(|face| face.with_tilt_per_side_force(of("tilt")))
        .and_then(|face| face.with_duty(duty, case["driven"].as_bool().unwrap()))
        .unwrap()
}

#[test]
fn rib_loads_speed_and_scuff_agree_with_bristles_added_up() {
    let kept: Value = serde_json::from_str(include_str!("recomputed_tire_face.json")).unwrap();
    for case in kept["faces"].as_array().unwrap() {
        let face = face(&kept, case);
        let [load, camber, toe] = ["load", "camber", "toe"].map(|key| number(&case[key]));
        let worn = face.worn(Pose { load, camber, toe }).unwrap();
        let ribs: Vec<_> =
            worn.tires.iter().flat_map(|tire| &tire.ribs).filter(|rib| rib.load > 0.0).collect();
        let touching =
            |list: &Value| numbers(list).into_iter().filter(|value| *value > 0.0).collect::<Vec<_>>();
        let near = |ours: f64, theirs: f64| (ours - theirs).abs() <= TOLERANCE * theirs.abs().max(1e-3);
        let radius = number(&case["rolling_radius"]);
        assert!(near(worn.radius, radius), "{} {radius}", worn.radius);
        let loads = touching(&case["load_of_ribs"]);
        assert_eq!(loads.len(), ribs.len());
        for (rib, theirs) in ribs.iter().zip(loads) {
            assert!(near(rib.load, theirs), "{} {theirs}", rib.load);
        }
        for (rib, theirs) in ribs.iter().zip(touching(&case["energy_of_ribs"])) {
            assert!(near(rib.scuff.energy, theirs), "{} {theirs}", rib.scuff.energy);
        }
        let upright = numbers(&case["upright_energy_of_ribs"]);
        let mean = upright.iter().sum::<f64>() / upright.len() as f64;
        let wear = face.tread().abradability * mean / face.tread().rib_width();
        assert!(near(worn.upright, wear), "{} {wear}", worn.upright);
    }
}
