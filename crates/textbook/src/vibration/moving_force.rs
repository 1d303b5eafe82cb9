//! A constant force that crosses a beam on two supports.

use std::f64::consts::PI;
use std::ops::ControlFlow;

use axlebow_fe::{
    Beam, Direction, DynamicSystem, Flexibility, Freedom, NodeId, Record, Start, Structure, TimedLoad,
    TransientSettings, assemble_mass, assemble_stiffness,
};

use crate::beams::beam_line::{E, bending_rigidity};
use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::text;

const FRYBA: &str = "L. Frýba, Vibration of Solids and Structures under Moving Loads, 3rd ed. 1999, ch. 1; from \
     memory, peak of the sum of 41 modes";
const MESH: &str = "20 elements and 400 steps to the first period, against 41 modes: what the higher modes lack is \
     below 1e-4 of the peak, and the peak of the sum was itself sampled";

/// Elements; even, so that a node is at mid-span.
const ELEMENTS: usize = 20;
/// Length (m), mass per length (kg/m), second moment of area (m⁴ with E in Pa) and force (N); the answer does
/// not depend on them.
const L: f64 = 2.0;
const M: f64 = 30.0;
const I: f64 = 8e-6;
const P: f64 = 1000.0;
/// Steps to the first period.
const STEPS: f64 = 400.0;

const SUM: &str = "largest of (96/π⁴) Σ sin(j π/2)/(j² (j² − α²)) (sin(j τ) − (α/j) sin(j² τ/α)), τ = π v t/L up to π, j up to 41";

/// Inputs of a case: its own ones, and those of the beam.
macro_rules! bar {
    ($own:literal) => {
        concat!(
            $own,
            "; α = v L/π √(m/(E I)), P = 1000 N, L = 2 m, m = 30 kg/m, I = 8e-6 m⁴, E = 29e6 Pa, no damping"
        )
    };
}

/// The cases.
pub(crate) const CASES: &[Case] = &[
    crossing("moving_force_peak_matches_fryba_chapter_1_speed_0_10", bar!("α = 0.10"), 1.096_453, || {
        peak(0.10)
    }),
    crossing("moving_force_peak_matches_fryba_chapter_1_speed_0_25", bar!("α = 0.25"), 1.257_610, || {
        peak(0.25)
    }),
    crossing("moving_force_peak_matches_fryba_chapter_1_speed_0_50", bar!("α = 0.50"), 1.705_445, || {
        peak(0.50)
    }),
    crossing(
        "moving_force_peak_matches_fryba_chapter_1_speed_0_6168",
        bar!("α = 0.6168"),
        1.731_674,
        || peak(0.6168),
    ),
];

const fn crossing(id: &'static str, inputs: &'static str, reference: f64, computed: Compute) -> Case {
    Case {
        id,
        topic: "force that crosses a beam",
        quantity: "peak deflection at mid-span over P L³/(48 E I)",
        unit: "",
        source: FRYBA,
        formula: SUM,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Relative { share: 1e-3, reason: Some(MESH) },
        computed,
        difference: None,
    }
}

/// Speed as a share of the critical one, `α = v L/π √(m/(E I))`.
fn peak(alpha: f64) -> Result<f64, String> {
    let (structure, nodes) = beam()?;
    let stiffness = assemble_stiffness(&structure);
    let mut system = DynamicSystem::new(stiffness, assemble_mass(&structure)).map_err(text)?;
    let speed = alpha * PI / L * (E * I / M).sqrt();
    for (node, id) in nodes.iter().enumerate() {
        add_crossing_force(&mut system, (&structure, *id), (node, speed))?;
    }
    let first_period = 2.0 * L * L / PI * (M / (E * I)).sqrt();
    let settings = TransientSettings::new(first_period / STEPS, L / speed);
    let middle = Direction::of_freedom(&structure, nodes[ELEMENTS / 2], Freedom::Uz);
    let mut greatest = 0.0_f64;
    let order = system.order();
    let run = system.run(Start::Given { u: vec![0.0; order], v: vec![0.0; order] }, &settings, |record| {
        if let Record::Sample(sample) = record {
            greatest = greatest.max(middle.dot(&sample.motion.u));
        }
        ControlFlow::Continue(())
    });
    run.map_err(text)?;
    Ok(greatest / (P * L.powi(3) / (48.0 * E * I)))
}

/// The force is shared between the nodes beside it by the cubic shapes of a beam.
fn add_crossing_force(
    system: &mut DynamicSystem,
    (structure, id): (&Structure, NodeId),
    (node, speed): (usize, f64),
) -> Result<(), String> {
    let length = L / ELEMENTS as f64;
    let from_node = move |t: f64| (speed * t / length - node as f64).clamp(-1.0, 1.0);
    let force = move |t: f64| {
        let s = from_node(t).abs();
        P * (1.0 - s).powi(2) * (1.0 + 2.0 * s)
    };
    let moment = move |t: f64| {
        let s = from_node(t);
        P * length * s * (1.0 - s.abs()).powi(2)
    };
    let along = |freedom| Direction::of_freedom(structure, id, freedom);
    system.add_load(TimedLoad::new(along(Freedom::Uz), force)).map_err(text)?;
    system.add_load(TimedLoad::new(along(Freedom::Rx), moment)).map_err(text)
}

/// A beam along Y that moves in the Y-Z plane only.
fn beam() -> Result<(Structure, Vec<NodeId>), String> {
    let mut structure = Structure::new();
    let length = L / ELEMENTS as f64;
    let place = |node: usize| [0.0, node as f64 * length, 0.0];
    let nodes: Vec<_> =
        (0..=ELEMENTS).map(|node| structure.add_node(format!("{node}"), place(node))).collect();
    for pair in nodes.windows(2) {
        let flexibility = Flexibility::uniform(length, &bending_rigidity(I));
        let beam = Beam::between(pair[0], pair[1], [0.0, 0.0, 1.0], flexibility).with_mass(M);
        structure.add_beam(beam).map_err(text)?;
    }
    for node in &nodes {
        structure.hold(*node, &[Freedom::Ux, Freedom::Uy, Freedom::Ry, Freedom::Rz]);
    }
    for end in [nodes[0], nodes[ELEMENTS]] {
        structure.hold(end, &[Freedom::Uz]);
    }
    Ok((structure, nodes))
}
