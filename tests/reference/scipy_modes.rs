//! Natural modes of the small asymmetric axle against their recomputation by `scripts/recompute_modes.py`
//! with NumPy and SciPy, whose results and versions are kept in `scipy_modes.json` beside this file.
//!
//! Shear, rotary inertia, a tapered spindle, a bearing with arms and bodies off their nodes all take part; the
//! recomputation has the printed mass matrix where ours integrates shapes.

use axlebow_textbook::fe::{Attachment, RigidBody, natural_modes};
use serde_json::Value;

use super::scipy_axle::{Axle, CENTER, NODES, RIGHT_SPINDLE, WHEEL, axle};

#[test]
fn frequencies_and_shapes_agree_with_scipy() {
    let kept: Value = serde_json::from_str(include_str!("scipy_modes.json")).unwrap();
    let kept = kept["modes"].as_array().unwrap();
    let mut axle = axle();
    add_bodies(&mut axle);
    let modes = natural_modes(&axle.structure, kept.len()).unwrap();
    assert!(modes.is_complete());
    for (mode, kept) in modes.modes.iter().zip(kept) {
        let frequency = kept["frequency"].as_f64().unwrap();
        assert!((mode.frequency - frequency).abs() <= 1e-9 * frequency, "{} {frequency}", mode.frequency);
        let ours = axle.nodes.iter().flat_map(|node| mode.motion(*node));
        let theirs = NODES.iter().flat_map(|(name, _)| kept["shape"][name].as_array().unwrap());
        let pairs: Vec<(f64, f64)> = ours.zip(theirs.map(|x| x.as_f64().unwrap())).collect();
        let largest = pairs.iter().fold(0.0_f64, |most, (_, x)| most.max(x.abs()));
        let error = pairs.iter().fold(0.0_f64, |most, (a, b)| most.max((a - b).abs()));
        assert!(error <= 1e-7 * largest, "{frequency} Hz: {error:e} of {largest:e}");
    }
}

pub(super) fn add_bodies(axle: &mut Axle) {
    for (node, arm, mass, inertia) in bodies() {
        let place = Attachment::on_arm(axle.nodes[node], arm);
        axle.structure.add_mass(RigidBody { place, mass, inertia });
    }
}

type Body = (usize, [f64; 3], f64, [[f64; 3]; 3]);

/// Node, arm to the center, mass, inertia about the center.
fn bodies() -> [Body; 3] {
    let left = [[9.0, 0.3, -0.2], [0.3, 15.0, 0.4], [-0.2, 0.4, 8.5]];
    let right = [[7.0, 0.0, 0.0], [0.0, 12.0, 0.0], [0.0, 0.0, 7.0]];
    [
        (WHEEL, [0.01, -0.05, 0.02], 185.0, left),
        (RIGHT_SPINDLE, [-0.02, -0.06, 0.01], 140.0, right),
        (CENTER, [0.15, 0.0, 0.08], 60.0, [[0.0; 3]; 3]),
    ]
}
