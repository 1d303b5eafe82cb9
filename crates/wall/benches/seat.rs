//! A seat from shells, and one read off a table of seats.

use std::f64::consts::PI;
use std::hint::black_box;

use axlebow_sections::{Material, RoundTube};
use axlebow_wall::{Fineness, SeatKind, SeatRun, SeatTable, SeatWall, Tie};
use criterion::{Criterion, criterion_group, criterion_main};

fn thin() -> Option<SeatWall> {
    let tube = RoundTube::new(0.1524, 0.009).ok()?;
    let material = Material::new("steel", 200e9, 0.3, 7850.0).ok()?;
    let breadth = 0.25 * PI * (0.1524 - 0.009);
    Some(SeatWall {
        profile: tube.into(),
        material,
        width: 0.09,
        breadth,
        clamp: None,
        tie: Tie::Rigid,
        layout: None,
    })
}

/// A table whose values are made up: how long a look takes does not depend on them.
fn table() -> Option<SeatTable> {
    let kind = SeatKind { poisson_ratio: 0.3, u_bolts: None, tie: Tie::Rigid };
    let run = |place: Vec<f64>| {
        let sum: f64 = place.iter().sum();
        SeatRun { place, values: (0..9).map(|v| (0.1 * f64::from(v) + sum).exp()).collect() }
    };
    SeatTable::through(kind, &kind.places().into_iter().map(run).collect::<Vec<_>>())
}

fn seats(criterion: &mut Criterion) {
    let seat = thin().expect("a seat");
    let table = table().expect("a table");
    criterion.bench_function("a seat read off a table", |bencher| {
        bencher.iter(|| table.at(black_box(&seat)));
    });
    let mut group = criterion.benchmark_group("a seat from shells");
    group.sample_size(10);
    for (name, factor) in [("12,700 unknowns", 1.0), ("37,700 unknowns", 0.5)] {
        let fineness = Fineness::USUAL.scaled(factor);
        group.bench_function(name, |bencher| bencher.iter(|| black_box(&seat).compliance(&fineness)));
    }
    group.finish();
}

criterion_group!(benches, seats);
criterion_main!(benches);
