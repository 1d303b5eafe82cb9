//! Tire faces against their recomputation by `scripts/recompute_tire.py`, bristle by bristle and with Python alone, whose
//! results are kept in `recomputed_tire.json` beside this file.
//!
//! A single, a dual, and a dual of which a rib is off the road and all others slide in good part. The tires are invented.

use axlebow_axle::tread::{Carcass, Face, Pose, Tread};
use serde_json::Value;

/// 4000 bristles in place of an integral leave 1e-6 of a force where sliding begins within one of them.
const TOLERANCE: f64 = 2e-6;

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn numbers(list: &Value) -> Vec<f64> {
    list.as_array().unwrap().iter().map(number).collect()
}

#[test]
fn rib_loads_speed_and_scuff_agree_with_bristles_added_up() {
    let kept: Value = serde_json::from_str(include_str!("recomputed_tire.json")).unwrap();
    let (tread, carcass) = (&kept["tread"], &kept["carcass"]);
    let tread = Tread {
        width: number(&tread["width"]),
        ribs: 5,
        crown: number(&tread["crown"]),
        depth: number(&tread["depth"]),
        shear_modulus: number(&tread["shear_modulus"]),
        abradability: number(&tread["abradability"]),
        inflation: number(&tread["inflation"]),
        friction: number(&tread["friction"]),
        usual_side_force: number(&tread["usual_side_force"]),
    };
    let carcass = Carcass {
        radius: number(&carcass["radius"]),
        stiffness: number(&carcass["stiffness"]),
        rated_load: number(&carcass["rated_load"]),
    };
    for kept in kept["faces"].as_array().unwrap() {
        let face = Face::new(tread, carcass, &numbers(&kept["places"])).unwrap();
        let [load, camber, toe] = ["load", "camber", "toe"].map(|key| number(&kept[key]));
        let worn = face.worn(Pose { load, camber, toe }).unwrap();
        let ribs: Vec<_> = worn.tires.iter().flat_map(|tire| &tire.ribs).collect();
        let near = |ours: f64, theirs: f64| (ours - theirs).abs() <= TOLERANCE * theirs.abs().max(1e-3);
        assert!(
            near(worn.radius, number(&kept["rolling_radius"])),
            "{} {}",
            worn.radius,
            kept["rolling_radius"]
        );
        for (rib, theirs) in ribs.iter().zip(numbers(&kept["load_of_ribs"])) {
            assert!(near(rib.load, theirs), "{} {theirs}", rib.load);
        }
        for (rib, theirs) in ribs.iter().zip(numbers(&kept["energy_of_ribs"])) {
            assert!(near(rib.scuff.energy, theirs), "{} {theirs}", rib.scuff.energy);
        }
    }
}
