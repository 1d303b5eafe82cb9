//! Times ten seconds at 1 kHz of a chain on six moving one-sided springs, for `scripts/peer-benchmark`.
//!
//! Prints `order half-bandwidth laws milliseconds displacement`, the last one in the middle of the chain at the end.

use std::ops::ControlFlow;
use std::time::{Duration, Instant};

use axlebow_fe::linalg::SymmetricMatrix;
use axlebow_fe::{Direction, DynamicSystem, FeError, ForceLaw, LocalLaw, Start, TransientSettings};

const ORDER: usize = 370;
const WIDTH: usize = 17;
const LAWS: usize = 6;
const RUNS: usize = 10;

fn matrix(value: f64) -> SymmetricMatrix {
    let mut matrix = SymmetricMatrix::banded(ORDER, WIDTH);
    for column in 0..ORDER {
        matrix.add(column, column, value);
        for row in column + 1..(column + WIDTH + 1).min(ORDER) {
            let share = ((3 * row + 7 * column) % 11) as f64 / 11.0;
            matrix.add(row, column, -0.2 * value / WIDTH as f64 * share);
        }
    }
    matrix
}

fn chain() -> Result<DynamicSystem, FeError> {
    let mut system = DynamicSystem::new(matrix(1e6), matrix(1.0))?;
    for law in 0..LAWS {
        let force = ForceLaw::Contact { stiffness: 1e5, damping: 100.0, clearance: 0.0 };
        let turns = 12.0 + law as f64;
        let tire = LocalLaw::along(Direction::along(30 + 60 * law), force)
            .on_base(move |t| [0.01 * (turns * t).sin(), 0.01 * turns * (turns * t).cos()]);
        system.add_law(tire)?;
    }
    Ok(system)
}

fn main() -> Result<(), FeError> {
    let system = chain()?;
    let settings = TransientSettings { event_tolerance: 1e-3, ..TransientSettings::new(1e-3, 10.0) };
    let (mut shortest, mut last) = (Duration::MAX, 0.0);
    for _ in 0..RUNS {
        let start = Instant::now();
        let run = system.run(Start::Equilibrium, &settings, |_| ControlFlow::Continue(()))?;
        shortest = shortest.min(start.elapsed());
        last = run.last.u[ORDER / 2];
    }
    println!("{ORDER} {WIDTH} {LAWS} {} {last:e}", 1e3 * shortest.as_secs_f64());
    Ok(())
}
