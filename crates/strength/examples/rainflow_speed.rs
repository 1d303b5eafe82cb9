//! Times the rainflow counter on a history that any language can repeat, best of some runs on one thread. Prints the points,
//! seconds, the sum of range³ by count, and the number of cycles.

use std::hint::black_box;
use std::time::Instant;

use axlebow_strength::{RainflowCounter, RangeCounts, StrengthError};

/// A history of beating sines that never repeats, MPa.
fn history(points: usize) -> Vec<f64> {
    let at = |i: usize| {
        let t = i as f64;
        90.0 * (0.37 * t).sin() * (0.0113 * t).cos() + 30.0 * (1.1 * t).sin()
    };
    (0..points).map(at).collect()
}

fn main() -> Result<(), StrengthError> {
    let points: usize = std::env::args().nth(1).and_then(|own| own.parse().ok()).unwrap_or(4_000_000);
    let history = history(points);
    let (mut best, mut cubes, mut cycles) = (f64::INFINITY, 0.0, 0.0);
    for _ in 0..5 {
        let start = Instant::now();
        let (mut counter, mut counts) = (RainflowCounter::default(), RangeCounts::default());
        for value in black_box(&history) {
            counter.push(1e6 * value, |cycle| counts.add(cycle))?;
        }
        counter.finish(|cycle| counts.add(cycle));
        best = f64::min(best, start.elapsed().as_secs_f64());
        cubes = counts.ranges().map(|(range, count)| count * (1e-6 * range).powi(3)).sum();
        cycles = counts.ranges().map(|(_, count)| count).sum();
    }
    println!("{points} {best:.6} {cubes:.9e} {cycles}");
    Ok(())
}
