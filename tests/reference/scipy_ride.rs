//! A bouncing wheel under a sprung mass against its recomputation by `scripts/recompute_ride.py` with SciPy,
//! whose results and versions are kept in `scipy_ride.json` beside this file.
//!
//! A tire that leaves the road, a damper of two slopes and a bump stop take part. The vehicle is invented.

use std::f64::consts::TAU;
use std::ops::ControlFlow;

use axlebow_textbook::fe::linalg::SymmetricMatrix;
use axlebow_textbook::fe::{
    Direction, DynamicSystem, Ended, ForceLaw, LocalLaw, Record, Start, TimedLoad, TransientSettings,
};
use serde_json::Value;

const MASSES: [f64; 2] = [250.0, 2000.0];
const GRAVITY: f64 = 9.81;
/// Start and duration (s), height (m).
const BUMPS: [[f64; 3]; 2] = [[0.1, 0.1, 0.10], [0.9, 0.08, 0.07]];
/// Length of a step and time between kept samples, s.
const STEP: f64 = 2.5e-5;
const EVERY: f64 = 0.05;

#[test]
fn motion_and_contact_times_agree_with_scipy() {
    let kept: Value = serde_json::from_str(include_str!("scipy_ride.json")).unwrap();
    let (mut samples, mut contacts) = (Vec::new(), Vec::new());
    let settings = TransientSettings {
        sample_every: (EVERY / STEP).round() as usize,
        event_tolerance: 1e-7,
        ..TransientSettings::new(STEP, 1.5)
    };
    let run = vehicle().run(Start::Equilibrium, &settings, |record| {
        match record {
            Record::Sample(sample) => {
                samples.push([&sample.motion.u[..], &sample.motion.v[..]].concat());
            }
            Record::Contact { time, law: 0, touches } => contacts.push((time, touches)),
            Record::Contact { .. } => {}
        }
        ControlFlow::Continue(())
    });
    let run = run.unwrap();
    assert_eq!(run.ended, Ended::Completed);
    assert!(run.balance.drift() < 1e-6, "{:e}", run.balance.drift());
    let kept_contacts = kept["contacts"].as_array().unwrap();
    assert_eq!(contacts.len(), kept_contacts.len());
    for ((time, touches), kept) in contacts.into_iter().zip(kept_contacts) {
        assert_eq!(Some(touches), kept["touches"].as_bool());
        // Steps of 25 µs: the error of second order, and the resolution of 0.1 µs.
        assert!((time - kept["time"].as_f64().unwrap()).abs() < 2e-6, "{time} {kept}");
    }
    let kept_samples = kept["samples"].as_array().unwrap();
    assert_eq!(samples.len(), kept_samples.len());
    for (ours, kept) in samples.iter().zip(kept_samples) {
        for (i, ours) in ours.iter().enumerate() {
            let allowed = if i < 2 { 1e-6 } else { 1e-4 };
            let theirs = kept["state"][i].as_f64().unwrap();
            assert!((ours - theirs).abs() < allowed, "{} [{i}]: {ours} {theirs}", kept["time"]);
        }
    }
}

fn vehicle() -> DynamicSystem {
    let diagonal = |values: [f64; 2]| {
        let mut matrix = SymmetricMatrix::banded(2, 1);
        (0..2).for_each(|i| matrix.add(i, i, values[i]));
        matrix
    };
    let mut system = DynamicSystem::new(diagonal([0.0; 2]), diagonal(MASSES)).unwrap();
    let tire = ForceLaw::Contact { stiffness: 1.0e6, damping: 600.0, clearance: 0.0 };
    system.add_law(LocalLaw::along(Direction::along(0), tire).on_base(road)).unwrap();
    let between = Direction::new([(0, -1.0), (1, 1.0)]);
    for force in [
        ForceLaw::Spring { stiffness: 2.0e5, damping: 0.0 },
        ForceLaw::Damper { compression: 4.0e3, extension: 1.2e4 },
        ForceLaw::Contact { stiffness: 2.0e6, damping: 0.0, clearance: 0.12 },
    ] {
        system.add_law(LocalLaw::along(between.clone(), force)).unwrap();
    }
    for (freedom, mass) in MASSES.into_iter().enumerate() {
        system.add_load(TimedLoad::new(Direction::along(freedom), move |_| -mass * GRAVITY)).unwrap();
    }
    system
}

/// Height and rate of the road.
fn road(time: f64) -> [f64; 2] {
    for [start, duration, height] in BUMPS {
        if (start..=start + duration).contains(&time) {
            let angle = TAU * (time - start) / duration;
            return [0.5 * height * (1.0 - angle.cos()), 0.5 * height * TAU / duration * angle.sin()];
        }
    }
    [0.0; 2]
}
