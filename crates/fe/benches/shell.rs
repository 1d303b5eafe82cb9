//! A tube of shells with two thousand to three hundred thousand unknowns: assembly, factor, twelve right-hand sides.

use std::f64::consts::TAU;
use std::hint::black_box;

use axlebow_fe::{Attachment, Freedom, Loads, NodeId, StaticSystem, Structure, Wall, assemble_stiffness};
use criterion::{Criterion, criterion_group, criterion_main};

/// Load cases: six at each of two seats.
const CASES: usize = 12;

/// A tube of 127 mm × 12.7 mm, 1.9 m long, clamped at one end.
fn tube(round: usize, along: usize) -> Result<Structure, axlebow_fe::FeError> {
    let mut structure = Structure::new();
    let radial = |i: usize| {
        let angle = TAU * i as f64 / round as f64;
        [angle.cos(), 0.0, angle.sin()]
    };
    for j in 0..=along {
        for i in 0..round {
            let [x, _, z] = radial(i);
            structure.add_node("tube", [0.057_15 * x, 1.9 * j as f64 / along as f64, 0.057_15 * z]);
        }
    }
    let nodes: Vec<NodeId> = structure.nodes().collect();
    let quad = |k: usize| {
        let (i, j) = (k % round, k / round);
        let next = (i + 1) % round;
        [(i, j), (i, j + 1), (next, j + 1), (next, j)].map(|(i, j)| nodes[j * round + i])
    };
    let quads: Vec<_> = (0..round * along).map(quad).collect();
    structure
        .add_surface_facing(&quads, &Wall::new(0.0127, 205e9, 0.29), |node| radial(node.index() % round))?;
    nodes[..round].iter().for_each(|node| structure.hold(*node, &Freedom::ALL));
    Ok(structure)
}

fn loads(structure: &Structure) -> Loads {
    let mut loads = Loads::new(structure, CASES);
    let nodes: Vec<NodeId> = structure.nodes().collect();
    for case in 0..CASES {
        let node = nodes[nodes.len() * (case + 1) / (CASES + 1)];
        loads.add_force(case, &Attachment::at(node), [1000.0, 0.0, 500.0]);
    }
    loads
}

fn shells(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("tube of shells");
    group.sample_size(10);
    for (round, along) in [(20, 17), (40, 31), (40, 62), (56, 90), (80, 125), (180, 280)] {
        let structure = tube(round, along).expect("a tube is a wall");
        let unknowns = 6 * round * along;
        group.bench_function(format!("{unknowns} unknowns, assembled"), |bencher| {
            bencher.iter(|| assemble_stiffness(black_box(&structure)));
        });
        group.bench_function(format!("{unknowns} unknowns, from nothing to 12 answers"), |bencher| {
            bencher.iter(|| {
                let mut system = StaticSystem::new();
                system.prepare(black_box(&structure)).expect("it is held");
                system.solve(&structure, loads(&structure))
            });
        });
        let mut system = StaticSystem::new();
        group.bench_function(format!("{unknowns} unknowns, the same places again"), |bencher| {
            bencher.iter(|| {
                system.prepare(black_box(&structure)).expect("it is held");
                system.solve(&structure, loads(&structure))
            });
        });
    }
    group.finish();
}

criterion_group!(benches, shells);
criterion_main!(benches);
