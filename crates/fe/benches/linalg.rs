//! Factorisation and one solution of a chain: the time grows with the number of unknowns.

use std::hint::black_box;

use axlebow_fe::linalg::{Columns, SymmetricMatrix};
use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};

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

fn chain(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("factor and solve, half-bandwidth 11");
    for order in [60, 120, 300, 600, 1200, 3000, 6000] {
        let matrix = matrix(order, 11);
        let mut factor = matrix.factor().expect("the matrix is diagonally dominant");
        let mut x = vec![1.0; order];
        group.throughput(Throughput::Elements(order as u64));
        group.bench_function(BenchmarkId::from_parameter(order), |bencher| {
            bencher.iter(|| {
                let refactored = black_box(&matrix).factor_into(&mut factor);
                x.fill(1.0);
                factor.solve(black_box(&mut x));
                refactored
            });
        });
    }
}

/// One design of a search: a chain with bypassing springs under sixteen load columns.
fn design(criterion: &mut Criterion) {
    let matrix = matrix(150, 17);
    let mut factor = matrix.factor().expect("the matrix is diagonally dominant");
    let mut columns = Columns::zeros(150, 16);
    criterion.bench_function("150 unknowns, half-bandwidth 17, 16 columns", |bencher| {
        bencher.iter(|| {
            let refactored = black_box(&matrix).factor_into(&mut factor);
            columns.reset();
            factor.solve_columns(black_box(&mut columns));
            refactored
        });
    });
}

criterion_group!(benches, chain, design);
criterion_main!(benches);
