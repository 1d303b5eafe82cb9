//! One design of a search, from axle to wheels and to all results, and its growth with the chain.

#![allow(clippy::unwrap_used)] // in the example of the tests

#[path = "../tests/all/example/mod.rs"]
mod example;

use std::hint::black_box;

use axlebow_axle::{
    Axle, LoadCase, StaticDesign, StaticReadings, StaticSolver, Stiffener, StiffenerEnd, UserStation,
    standard_cases,
};
use axlebow_fe::StaticSystem;
use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use example::stiffening::{loose_seats, tent};

fn rated_load(axle: &Axle) -> LoadCase {
    standard_cases(axle).swap_remove(0)
}

/// The axle of the tests with its tube cut until the axle line has `elements` beams.
fn with_elements(elements: usize) -> Axle {
    let mut axle = example::axle();
    // Fifteen standard places and two section changes make sixteen beams.
    let extra = elements.saturating_sub(16);
    let half = axle.body.tube_end();
    let place = |i: usize| half * (2.0 * (i + 1) as f64 / (extra + 1) as f64 - 1.0);
    let station = |i: usize| UserStation { name: format!("cut-{i}"), y: place(i) + 3.3e-4 };
    axle.stations = (0..extra).map(station).collect();
    axle.checked().expect("cuts lie on the tube")
}

/// Sections, elements, factorization, road, wheels: what a sweep does for each design.
fn wheels_of_a_design(criterion: &mut Criterion) {
    let axle = example::axle();
    let case = rated_load(&axle);
    let mut system = StaticSystem::new();
    criterion.bench_function("wheels of one design", |bencher| {
        bencher.iter(|| {
            let design = StaticDesign::with_system(black_box(&axle), &mut system)?;
            design.wheel_outcomes(black_box(&case))
        });
    });
}

/// The same with stations, bearings and diagram.
fn everything_of_a_design(criterion: &mut Criterion) {
    let axle = example::axle();
    let case = rated_load(&axle);
    let mut system = StaticSystem::new();
    criterion.bench_function("everything of one design", |bencher| {
        bencher.iter(|| {
            let design = StaticDesign::with_system(black_box(&axle), &mut system)?;
            design.case(black_box(&case))
        });
    });
}

/// The few numbers that a study asks of it, by the force method.
fn readings_of_a_design(criterion: &mut Criterion) {
    let axle = example::axle();
    let case = rated_load(&axle);
    criterion.bench_function("readings of one design", |bencher| {
        bencher.iter(|| StaticReadings::of(black_box(&axle), black_box(&case)));
    });
    let mut solver = StaticSolver::default();
    criterion.bench_function("readings of one design, its line as before", |bencher| {
        bencher.iter(|| solver.readings(black_box(&axle), black_box(&case)));
    });
}

/// The two halves of a design apart: the model with its solution, and one more case on it.
fn halves_of_a_design(criterion: &mut Criterion) {
    let axle = example::axle();
    let case = rated_load(&axle);
    let mut system = StaticSystem::new();
    let mut group = criterion.benchmark_group("halves of one design");
    group.bench_function("model and unit solutions", |bencher| {
        bencher.iter(|| StaticDesign::with_system(black_box(&axle), &mut system).is_ok());
    });
    let design = StaticDesign::of(&axle).expect("the example is held");
    group.bench_function("one case", |bencher| bencher.iter(|| design.wheel_outcomes(black_box(&case))));
    group.finish();
}

/// The same with an angle along the top, cut square and run out: how it rests on the tube is found once a design.
fn wheels_of_a_stiffened_design(criterion: &mut Criterion) {
    let mut system = StaticSystem::new();
    let mut group = criterion.benchmark_group("wheels of one stiffened design");
    for (name, end) in [("square", StiffenerEnd::Square), ("tapered", StiffenerEnd::Tapered { length: 0.05 })]
    {
        let axle = loose_seats(vec![Stiffener { end, ..tent() }]);
        let case = rated_load(&axle);
        group.bench_function(name, |bencher| {
            bencher.iter(|| {
                let design = StaticDesign::with_system(black_box(&axle), &mut system)?;
                design.wheel_outcomes(black_box(&case))
            });
        });
    }
    group.finish();
}

fn growth_with_the_chain(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("wheels of one design by elements");
    for elements in [16, 32, 64, 128, 256, 512, 1000] {
        let axle = with_elements(elements);
        let case = rated_load(&axle);
        let mut system = StaticSystem::new();
        group.throughput(Throughput::Elements(elements as u64));
        group.bench_function(BenchmarkId::from_parameter(elements), |bencher| {
            bencher.iter(|| {
                let design = StaticDesign::with_system(black_box(&axle), &mut system)?;
                design.wheel_outcomes(black_box(&case))
            });
        });
    }
    group.finish();
}

criterion_group!(
    benches,
    wheels_of_a_design,
    wheels_of_a_stiffened_design,
    everything_of_a_design,
    readings_of_a_design,
    halves_of_a_design,
    growth_with_the_chain
);
criterion_main!(benches);
