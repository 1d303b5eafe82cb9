//! A stiffened tube: its area alone, its overlaps, its thin walls and its triangles.

#![allow(clippy::unwrap_used)] // sizes are sound

use std::hint::black_box;

use axlebow_sections::shape::Angle;
use axlebow_sections::{
    AreaProperties, Composite, Material, Part, Placement, Profile, RoundTube, SaintVenant, ThinWalled, Wall,
};
use criterion::{Criterion, criterion_group, criterion_main};
use std::f64::consts::PI;

const TUBE: (f64, f64) = (0.1524, 0.009);

fn tube() -> Profile {
    RoundTube::new(TUBE.0, TUBE.1).unwrap().into()
}

fn angle() -> Angle {
    Angle { height: 0.0762, width: 0.0762, thickness: 0.009525, root_radius: 0.009, toe_radius: 0.0045 }
}

/// Toes up, its heel on top of the tube.
fn placement() -> Placement {
    Placement { turn: 0.25 * PI, x: 0.0, z: 0.5 * TUBE.0 }
}

fn parts() -> Vec<Part> {
    let material = || Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
    let angle = angle().outline().unwrap().placed(&placement());
    vec![
        Part { name: "tube".into(), outline: tube().outline(), material: material() },
        Part { name: "angle".into(), outline: angle, material: material() },
    ]
}

fn areas(criterion: &mut Criterion) {
    let (tube, angle) = (tube().outline(), angle().outline().unwrap());
    criterion.bench_function("area of tube and angle", |bencher| {
        bencher.iter(|| {
            let pair = [black_box(&tube), black_box(&angle)].map(|outline| outline.area_properties());
            AreaProperties::weighted_sum(&[(pair[0], 1.0), (pair[1].placed(&placement()), 1.0)])
        });
    });
    criterion.bench_function("composite of tube and angle, overlap checked", |bencher| {
        bencher.iter(|| Composite::new(black_box(parts())).unwrap().area_properties());
    });
}

fn torsion(criterion: &mut Criterion) {
    let outline = tube().outline();
    criterion.bench_function("triangles over a tube", |bencher| {
        bencher.iter(|| SaintVenant::of_outline(black_box(&outline), 0.3, 1.0));
    });
    let angle = angle().outline().unwrap();
    criterion.bench_function("triangles over an angle", |bencher| {
        bencher.iter(|| SaintVenant::of_outline(black_box(&angle), 0.3, 1.0));
    });
    let joints = [[-0.05, 0.05], [0.05, 0.05], [0.0, 0.12]];
    let wall = |from, to, turn| Wall { from, to, turn, thickness: TUBE.1 };
    criterion.bench_function("thin walls of a tube and a tent", |bencher| {
        bencher.iter(|| {
            let walls = vec![wall(1, 0, 0.5 * PI), wall(0, 1, 1.5 * PI), wall(0, 2, 0.0), wall(2, 1, 0.0)];
            ThinWalled::new(black_box(&joints), walls).unwrap().torsion()
        });
    });
}

criterion_group!(benches, areas, torsion);
criterion_main!(benches);
