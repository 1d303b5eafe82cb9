//! The demo's measured lane is invented here, sample by sample.

use std::f64::consts::TAU;
use std::fmt::Write as _;
use std::path::PathBuf;

/// Distance between rows, m.
const SPACING: f64 = 0.1;
/// Count of rows: 40 m.
const ROWS: u32 = 401;

fn file() -> PathBuf {
    PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../../models/roads/measured-lane.csv"))
}

/// Height in mm: long and short waves, a patch of asphalt on both tracks and a sunken trench on the right one.
fn height(x: f64, right: bool) -> f64 {
    let wave = |length: f64, height: f64, phase: f64| height * (TAU * (x / length + phase)).sin();
    let side = if right { 0.17 } else { 0.0 };
    let ground =
        wave(17.0, 9.0, side) + wave(5.3, 4.0, 0.3 + side) + wave(1.9, 1.5, 2.1 * side) - 30.0 * side;
    let patch = if (12.0..14.5).contains(&x) { 12.0 } else { 0.0 };
    let inside = ((x - 24.0) / 0.9).clamp(0.0, 1.0);
    let trench = if right { -22.0 * (0.5 * TAU * inside).sin().powi(2) } else { 0.0 };
    ground + patch + trench
}

fn lane() -> String {
    let mut text = String::from(
        "# Demonstration data, invented: no real road. Made by crates/model/tests/all/demo_lane.rs.\n\
         distance [m],left [mm],right [mm]\n",
    );
    for row in 0..ROWS {
        let x = f64::from(row) * SPACING;
        writeln!(text, "{x:.1},{:.1},{:.1}", height(x, false), height(x, true)).unwrap();
    }
    text
}

/// `AXLEBOW_REWRITE=1` writes the file again.
#[test]
fn the_demo_lane_is_the_one_that_is_invented_here() {
    if std::env::var_os("AXLEBOW_REWRITE").is_some() {
        std::fs::write(file(), lane()).unwrap();
    }
    assert_eq!(std::fs::read_to_string(file()).unwrap(), lane());
}
