//! How long a study takes and how much it writes, from a few of its designs.

use std::time::{Duration, Instant};

use crate::ask::Study;
use crate::findings::Row;
use crate::solve::Solver;

/// Places of the study at which designs are tried.
const PLACES: usize = 5;
/// Neighboring designs that are tried at each, because neighbors share work.
const NEIGHBORS: usize = 16;
/// What a design of a study costs, from a few of them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DesignCost {
    /// Designs that were tried.
    pub tried: usize,
    /// Time of a design on one thread.
    pub time: Duration,
    /// Bytes of its line in a CSV file.
    pub bytes: f64,
}

impl Study {
    /// Tries a few designs spread over the study, on one thread; the first ones pay for what all share, so that the time is
    /// rather too long than too short.
    ///
    /// - `patience`: time after which no further design is tried
    pub fn design_cost(&self, patience: Duration) -> DesignCost {
        let (count, asked) = (self.count(), self.asked());
        let mut solver = Solver::default();
        let (mut tried, mut bytes, started) = (0, 0, Instant::now());
        for place in 0..PLACES {
            let first = place * count.saturating_sub(NEIGHBORS) / (PLACES - 1);
            // One after the other, so that a slow design is not waited for sixteen times.
            for index in first..count.min(first + NEIGHBORS) {
                let solved = self.solve(&[self.point(index)], &asked, &mut solver);
                bytes += solved.iter().map(|design| line_length(&design.row)).sum::<usize>();
                tried += 1;
                if started.elapsed() > patience {
                    return cost(tried, bytes, started.elapsed());
                }
            }
        }
        cost(tried, bytes, started.elapsed())
    }
}

/// Threads that a study runs on.
pub fn threads() -> usize {
    rayon::current_num_threads()
}

fn cost(tried: usize, bytes: usize, time: Duration) -> DesignCost {
    DesignCost { tried, time: time / tried.max(1) as u32, bytes: bytes as f64 / tried.max(1) as f64 }
}

/// Bytes of a design's numbers in a CSV file, and of its reason.
fn line_length(row: &Row) -> usize {
    let written = |value: &f64| format!("{value:?}").len() + 1;
    let values: usize = row.values.iter().map(written).sum();
    let rest = match &row.result {
        Ok(readings) => readings.iter().map(|value| if value.is_nan() { 1 } else { written(value) }).sum(),
        Err(reason) => reason.len(),
    };
    values + rest + "variant,\r\n".len()
}
