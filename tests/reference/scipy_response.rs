//! Frequency response of the small asymmetric axle against its recomputation by `scripts/recompute_response.py`
//! with NumPy and SciPy, whose results and versions are kept in `scipy_response.json` beside this file.
//!
//! Each tire's road moves the far end of its spring and damper; wheels' rotations, tire loads and a bending
//! moment are read. Dampers stand at tires and seats.

use std::f64::consts::TAU;

use axlebow_textbook::fe::{
    Attachment, Direction, DynamicSystem, Excitation, ForceLaw, Freedom, FrequencyResponse, LocalLaw,
    MotionReader, Structure, assemble_mass, assemble_stiffness,
};
use serde_json::Value;

use super::scipy_axle::{
    Axle, LEFT_CONTACT, LEFT_SEAT, RIGHT_CONTACT, RIGHT_SEAT, RIGHT_SPINDLE, WHEEL, axle,
};
use super::scipy_modes::add_bodies;

/// Node, contact, stiffness and damping of the tires.
const TIRES: [(usize, [f64; 3], f64, f64); 2] =
    [(WHEEL, LEFT_CONTACT, 9.0e5, 900.0), (RIGHT_SPINDLE, RIGHT_CONTACT, 8.0e5, 700.0)];
/// Node, place and damping of the seats.
const SEATS: [(usize, [f64; 3], f64); 2] =
    [(LEFT_SEAT, [0.03, 0.0, 0.10], 9.0e3), (RIGHT_SEAT, [-0.02, 0.01, 0.11], 12.0e3)];
/// Beam whose moment is read at its start.
const BEAM: usize = 2;

#[test]
fn answers_to_a_road_under_each_wheel_agree_with_scipy() {
    let kept: Value = serde_json::from_str(include_str!("scipy_response.json")).unwrap();
    let kept = kept["answers"].as_array().unwrap();
    let mut axle = axle();
    add_bodies(&mut axle);
    let frequencies: Vec<f64> = kept.iter().map(|entry| entry["frequency"].as_f64().unwrap()).collect();
    let responses = responses(&axle, &frequencies);
    for (input, (key, response)) in ["left_road", "right_road"].iter().zip(&responses).enumerate() {
        for output in 0..5 {
            let theirs: Vec<[f64; 2]> = kept.iter().map(|entry| pair(&entry[key][output])).collect();
            let ours = (0..frequencies.len()).map(|i| answer(response, (input, output), i));
            let largest = theirs.iter().map(|[a, b]| a.hypot(*b)).fold(0.0, f64::max);
            for (ours, theirs) in ours.zip(&theirs) {
                let error = (ours[0] - theirs[0]).hypot(ours[1] - theirs[1]);
                assert!(error < 1e-9 * largest, "{key} {output}: {ours:?} {theirs:?}");
            }
        }
    }
}

fn pair(value: &Value) -> [f64; 2] {
    [0, 1].map(|i| value[i].as_f64().unwrap())
}

fn up(structure: &Structure, at: Attachment) -> Direction {
    Direction::at(structure, &at, [0.0, 0.0, 1.0])
}

fn responses(axle: &Axle, frequencies: &[f64]) -> Vec<FrequencyResponse> {
    let (structure, at) = (&axle.structure, |node: usize, arm| Attachment::on_arm(axle.nodes[node], arm));
    let mut system = DynamicSystem::new(assemble_stiffness(structure), assemble_mass(structure)).unwrap();
    let tires = TIRES.map(|(node, arm, stiffness, damping)| Excitation {
        direction: up(structure, at(node, arm)),
        stiffness,
        damping,
    });
    // The springs of the tires are in the structure already.
    for tire in &tires {
        let force = ForceLaw::Spring { stiffness: 0.0, damping: tire.damping };
        system.add_law(LocalLaw::along(tire.direction.clone(), force)).unwrap();
    }
    for (node, arm, damping) in SEATS {
        let force = ForceLaw::Damper { compression: 0.8 * damping, extension: 1.2 * damping };
        system.add_law(LocalLaw::along(up(structure, at(node, arm)), force)).unwrap();
    }
    let reader = MotionReader::of(structure);
    let rotation = |node: usize| Direction::of_freedom(structure, axle.nodes[node], Freedom::Rx);
    let moment = reader.direction(|u| reader.beam_forces(u, axle.beams[BEAM]).at(0.0).bending_3);
    let [left, right] = tires.each_ref().map(|tire| tire.direction.clone());
    let outputs = [rotation(WHEEL), rotation(RIGHT_SPINDLE), left, right, moment];
    let small = system.linearized(&vec![0.0; system.order()], 0.0).unwrap();
    small.frequency_responses(&tires, &outputs, frequencies).unwrap()
}

/// The answer of an output to an input, the rise of a tire turned into its load.
fn answer(response: &FrequencyResponse, (input, output): (usize, usize), i: usize) -> [f64; 2] {
    let [re, im] = response.outputs[output][i];
    let Some(tire) = output.checked_sub(2).filter(|tire| *tire < 2) else { return [re, im] };
    let (_, _, k, c) = TIRES[tire];
    let (wc, road) = (TAU * response.frequencies[i] * c, if tire == input { 1.0 } else { 0.0 });
    [k * (road - re) + wc * im, wc * (road - re) - k * im]
}
