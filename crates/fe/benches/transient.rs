//! Ten seconds of a ride at 1 kHz: the full structure and its reduced basis.

use std::hint::black_box;
use std::ops::ControlFlow;

use axlebow_fe::linalg::SymmetricMatrix;
use axlebow_fe::{Direction, DynamicSystem, ForceLaw, LocalLaw, ReducedBasis, Start, TransientSettings};
use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};

const ORDER: usize = 370;

/// A chain with springs between neighbors up to `width` apart, 1 kg on each freedom and damping.
fn chain(width: usize, damped: bool) -> DynamicSystem {
    let mut matrices = [1e6, 1.0, 20.0].map(|value| {
        let mut matrix = SymmetricMatrix::banded(ORDER, width);
        for column in 0..ORDER {
            matrix.add(column, column, value);
            for row in column + 1..(column + width + 1).min(ORDER) {
                matrix.add(
                    row,
                    column,
                    -0.2 * value / width as f64 * ((3 * row + 7 * column) % 11) as f64 / 11.0,
                );
            }
        }
        matrix
    });
    matrices.rotate_left(1);
    let [mass, damping, stiffness] = matrices;
    let mut system = DynamicSystem::new(stiffness, mass).expect("equal orders");
    if damped {
        system = system.with_damping(damping).expect("equal orders");
    }
    for law in 0..6 {
        let freedom = 30 + 60 * law;
        let force = ForceLaw::Contact { stiffness: 1e5, damping: 100.0, clearance: 0.0 };
        let tire = LocalLaw::along(Direction::along(freedom), force).on_base(move |t| {
            let (amplitude, turns) = (0.01, 12.0 + law as f64);
            [amplitude * (turns * t).sin(), amplitude * turns * (turns * t).cos()]
        });
        system.add_law(tire).expect("a law of this system");
    }
    system
}

fn ride(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("10 s at 1 kHz, 370 freedoms, 6 laws");
    group.sample_size(10);
    for (width, damped) in [(17, false), (23, false), (23, true)] {
        let system = chain(width, damped);
        let settings = TransientSettings { event_tolerance: 1e-3, ..TransientSettings::new(1e-3, 10.0) };
        let name = format!("half-bandwidth {width}{}", if damped { ", damped" } else { "" });
        group.bench_function(BenchmarkId::from_parameter(name), |bencher| {
            bencher.iter(|| {
                black_box(&system).run(Start::Equilibrium, &settings, |_| ControlFlow::Continue(()))
            });
        });
    }
    for (modes, damped) in [(20, false), (20, true)] {
        let system = chain(17, damped);
        let shapes = (1..=modes).map(|mode| {
            let angle = std::f64::consts::PI * mode as f64 / (ORDER + 1) as f64;
            (1..=ORDER).map(|place| (angle * place as f64).sin()).collect()
        });
        let basis = ReducedBasis::new(&system, shapes).expect("shapes of this system");
        let reduced = basis.reduced(&system).expect("a basis of this system");
        let settings = TransientSettings { event_tolerance: 1e-3, ..TransientSettings::new(1e-3, 10.0) };
        let name = format!("{} shapes{}", basis.count(), if damped { ", coupled damping" } else { "" });
        group.bench_function(BenchmarkId::from_parameter(name), |bencher| {
            bencher.iter(|| {
                black_box(&reduced).run(Start::Equilibrium, &settings, |_| ControlFlow::Continue(()))
            });
        });
    }
    group.finish();
}

criterion_group!(benches, ride);
criterion_main!(benches);
