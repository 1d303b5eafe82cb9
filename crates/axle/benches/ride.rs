//! Ten seconds of a ride at 1 kHz with lift-off, in the full and in a reduced basis, and a map of many rides.

#![allow(clippy::unwrap_used)] // in the example of the tests

#[path = "../tests/all/example/mod.rs"]
mod example;

use std::hint::black_box;

use axlebow_axle::{Axle, Ride, RideBasis, RidingAxle, USUAL_SCHEME, UserStation, modes, ride};
use axlebow_road::{HaversineBump, Road, Washboard, Wheels};
use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};

const BOTH: Wheels = Wheels::Both { lag: 0.0 };

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

/// Ten seconds at 1 kHz over a road.
fn asked(axle: &Axle, road: Road, speed: f64) -> Ride {
    Ride {
        name: "bench".to_owned(),
        road,
        repeats: false,
        speed,
        contact_length: 0.2,
        from: -1.0,
        to: 10.0 * speed - 1.0,
        step: 1e-3,
        axle_load: axle.loading.rated_load,
        basis: RideBasis::Full,
        scheme: USUAL_SCHEME,
        keep: axlebow_axle::RecordOptions::default(),
    }
}

/// Washboard over the whole length, rough enough to throw the tires off the road.
fn washboard() -> Road {
    Road::new(Washboard::new(1.2, 0.04, 120).expect("a washboard"), BOTH).expect("a road")
}

/// Results of the full and the reduced basis agree, and tires lift off, before anything is timed.
fn ten_seconds(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("10 s at 1 kHz with lift-off");
    group.sample_size(10);
    for elements in [16, 60] {
        let axle = with_elements(elements);
        let riding = RidingAxle::of(&axle, axle.loading.rated_load).expect("the example is held");
        let full = asked(&axle, washboard(), 15.0);
        let reduced = Ride { basis: RideBasis::Reduced, ..full.clone() };
        let [a, b] = [&full, &reduced].map(|ride| riding.ride(ride).expect("a ride").wheels.left);
        assert!(a.time_off_road > 0.0, "the bench wants lift-off");
        let error = b.camber_peak_to_peak / a.camber_peak_to_peak - 1.0;
        println!(
            "{elements} elements: camber peak to peak of the reduced basis is off by {:.4} %",
            100.0 * error
        );
        for (name, ride) in [("full", &full), ("reduced", &reduced)] {
            group.bench_function(BenchmarkId::new(name, elements), |bencher| {
                bencher.iter(|| riding.ride(black_box(ride)).is_ok());
            });
        }
        group.bench_function(BenchmarkId::new("reduced, axle made ready each time", elements), |bencher| {
            bencher.iter(|| ride(&axle, black_box(&reduced)).is_ok());
        });
    }
    group.finish();
}

/// One row of a map of speed by bump length: 20 rides of 2 s on one axle.
fn map_of_rides(criterion: &mut Criterion) {
    let axle = example::axle();
    let mut group = criterion.benchmark_group("20 rides over bumps");
    group.sample_size(10);
    group.bench_function("reduced", |bencher| {
        bencher.iter(|| {
            let riding = RidingAxle::of(&axle, axle.loading.rated_load).expect("the example is held");
            (0..20).all(|i| {
                let bump = HaversineBump::new(0.03, 0.5 + 0.1 * f64::from(i)).expect("a bump");
                let asked = asked(&axle, Road::new(bump, BOTH).expect("a road"), 20.0);
                riding.ride(&Ride { to: 40.0, basis: RideBasis::Reduced, ..asked }).is_ok()
            })
        });
    });
    group.finish();
}

fn ten_modes(criterion: &mut Criterion) {
    let axle = with_elements(60);
    criterion.bench_function("10 modes of 60 elements on tires and suspension", |bencher| {
        bencher.iter(|| modes(black_box(&axle), axle.loading.rated_load, 10).is_ok());
    });
}

criterion_group!(benches, ten_seconds, map_of_rides, ten_modes);
criterion_main!(benches);
