//! A straight beam of equal elements that vibrates in one plane.

use axlebow_fe::{Beam, Flexibility, Freedom, NodeId, Rigidity, Structure, natural_modes};

use crate::text;

/// How an end is held.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum End {
    Free,
    Pinned,
    Clamped,
}

/// The start and the end of a free beam.
pub(crate) const FREE: [End; 2] = [End::Free, End::Free];
/// Those of a cantilever.
pub(crate) const CANTILEVER: [End; 2] = [End::Clamped, End::Free];
/// Those of a beam on two supports.
pub(crate) const SUPPORTED: [End; 2] = [End::Pinned, End::Pinned];

/// What a line is made of.
pub(crate) struct Bar {
    pub rigidity: Rigidity,
    pub mass_per_length: f64,
    /// ρI of bending.
    pub rotary_inertia: f64,
}

/// A beam along Y that moves in the Y-Z plane only, and not along Y.
pub(crate) struct VibratingLine {
    pub structure: Structure,
    pub nodes: Vec<NodeId>,
    ends: [End; 2],
}

impl VibratingLine {
    /// A line of `elements` equal elements.
    pub fn new(bar: &Bar, length: f64, elements: usize, ends: [End; 2]) -> Result<Self, String> {
        let mut structure = Structure::new();
        let length = length / elements as f64;
        let place = |node: usize| [0.0, node as f64 * length, 0.0];
        let nodes: Vec<_> =
            (0..=elements).map(|node| structure.add_node(format!("{node}"), place(node))).collect();
        let inertia = [2.0, 1.0, 1.0].map(|share| share * bar.rotary_inertia);
        for pair in nodes.windows(2) {
            let flexibility = Flexibility::uniform(length, &bar.rigidity);
            let beam = Beam::between(pair[0], pair[1], [0.0, 0.0, 1.0], flexibility);
            structure.add_beam(beam.with_mass(bar.mass_per_length).with_inertia(inertia)).map_err(text)?;
        }
        for node in &nodes {
            structure.hold(*node, &[Freedom::Ux, Freedom::Uy, Freedom::Ry, Freedom::Rz]);
        }
        for (node, end) in [nodes[0], nodes[elements]].into_iter().zip(ends) {
            match end {
                End::Free => {}
                End::Pinned => structure.hold(node, &[Freedom::Uz]),
                End::Clamped => structure.hold(node, &[Freedom::Uz, Freedom::Rx]),
            }
        }
        Ok(Self { structure, nodes, ends })
    }

    /// Frequency of an elastic mode (Hz where the rest is SI), counted from 0 behind the two rigid motions of a
    /// free line.
    pub fn frequency(&self, mode: usize) -> Result<f64, String> {
        let mode = mode + if self.ends == FREE { 2 } else { 0 };
        let modes = natural_modes(&self.structure, mode + 1).map_err(text)?;
        if !modes.is_complete() {
            return Err(format!("{} modes found of {}", modes.found_below, modes.counted_below));
        }
        Ok(modes.modes.get(mode).ok_or("too few modes")?.frequency)
    }
}
