//! Times the band kernel, best of many runs on one thread. A line gives order, half-bandwidth, columns,
//! microseconds for a factorization and a solution of all columns, and the middle unknown under unit loads.

use std::hint::black_box;
use std::time::Instant;

use axlebow_fe::linalg::{Columns, SymmetricMatrix};

/// Diagonally dominant band with the entries of a formula that any language can repeat.
fn matrix(order: usize, width: usize) -> SymmetricMatrix {
    let mut matrix = SymmetricMatrix::banded(order, width);
    for column in 0..order {
        matrix.add(column, column, 2.0 * width as f64);
        for row in column + 1..(column + width + 1).min(order) {
            matrix.add(row, column, ((3 * row + 7 * column) % 11) as f64 / 11.0 - 0.5);
        }
    }
    matrix
}

/// Shortest time of one run in microseconds.
fn shortest(order: usize, mut run: impl FnMut()) -> f64 {
    let runs = (2_000_000 / order).clamp(100, 5000);
    let time = |run: &mut dyn FnMut()| {
        let start = Instant::now();
        run();
        start.elapsed().as_secs_f64() * 1e6
    };
    (0..runs).map(|_| time(&mut run)).fold(f64::INFINITY, f64::min)
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    for (order, width, count) in [(120, 11, 1), (1200, 11, 1), (12000, 11, 1), (150, 17, 1), (150, 17, 16)] {
        let matrix = matrix(order, width);
        let mut factor = matrix.factor()?;
        let (mut x, mut columns) = (vec![1.0; order], Columns::zeros(order, count));
        let time = shortest(order, || {
            black_box(&matrix).factor_into(&mut factor).unwrap_or_else(|failure| panic!("{failure}"));
            if count == 1 {
                x.fill(1.0);
                factor.solve(black_box(&mut x));
            } else {
                (0..order).for_each(|i| columns.row_mut(i).fill(1.0));
                factor.solve_columns(black_box(&mut columns));
            }
        });
        let middle = if count == 1 { x[order / 2] } else { columns.get(order / 2, 0) };
        println!("{order} {width} {count} {time:.2} {middle:e}");
    }
    Ok(())
}
