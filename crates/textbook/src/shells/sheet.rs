//! A wall of quadrilaterals in rows and columns, held and loaded along its sides.

use axlebow_fe::{Displacements, Freedom, Loads, NodeId, ShellId, StaticSystem, Structure, Wall};

use crate::text;

/// A surface over 0 ≤ u, v ≤ 1.
pub(crate) struct Surface<'a> {
    /// Position at (u, v).
    pub place: &'a dyn Fn(f64, f64) -> [f64; 3],
    /// Direction of the normal at (u, v), on the side from which u to v runs counter-clockwise.
    pub normal: &'a dyn Fn(f64, f64) -> [f64; 3],
}

/// A wall in rows (of v) and columns (of u).
pub(crate) struct Sheet {
    pub structure: Structure,
    /// Number of quadrilaterals along u and along v.
    parts: (usize, usize),
    nodes: Vec<NodeId>,
    pub shells: Vec<ShellId>,
}

/// A side of a sheet.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Side {
    FirstU,
    LastU,
    FirstV,
    LastV,
}

impl Sheet {
    /// A wall of `parts` quadrilaterals.
    pub(crate) fn new(parts: (usize, usize), wall: &Wall, surface: &Surface) -> Result<Self, String> {
        let mut structure = Structure::new();
        let share = |i: usize, n: usize| i as f64 / n as f64;
        let mut nodes = Vec::new();
        let mut normals = Vec::new();
        for j in 0..=parts.1 {
            for i in 0..=parts.0 {
                let (u, v) = (share(i, parts.0), share(j, parts.1));
                nodes.push(structure.add_node(format!("row {j}, column {i}"), (surface.place)(u, v)));
                normals.push((surface.normal)(u, v));
            }
        }
        let wide = parts.0 + 1;
        let quad = |k: usize| {
            let first = k / parts.0 * wide + k % parts.0;
            [first, first + 1, first + wide + 1, first + wide].map(|place| nodes[place])
        };
        let quads: Vec<_> = (0..parts.0 * parts.1).map(quad).collect();
        let shells =
            structure.add_surface_facing(&quads, wall, |node| normals[node.index()]).map_err(text)?;
        Ok(Sheet { structure, parts, nodes, shells })
    }

    /// Node in a column and a row.
    pub(crate) fn node(&self, i: usize, j: usize) -> NodeId {
        self.nodes[j * (self.parts.0 + 1) + i]
    }

    /// Nodes along a side.
    pub(crate) fn side(&self, side: Side) -> Vec<NodeId> {
        let (wide, high) = self.parts;
        match side {
            Side::FirstU => (0..=high).map(|j| self.node(0, j)).collect(),
            Side::LastU => (0..=high).map(|j| self.node(wide, j)).collect(),
            Side::FirstV => (0..=wide).map(|i| self.node(i, 0)).collect(),
            Side::LastV => (0..=wide).map(|i| self.node(i, high)).collect(),
        }
    }

    /// Holds freedoms along a side.
    pub(crate) fn hold(&mut self, side: Side, freedoms: &[Freedom]) {
        for node in self.side(side) {
            self.structure.hold(node, freedoms);
        }
    }

    /// Solves for one load case.
    pub(crate) fn solved(&self, loads: Loads) -> Result<Displacements, String> {
        let mut system = StaticSystem::new();
        system.prepare(&self.structure).map_err(text)?;
        system.solve(&self.structure, loads).map_err(text)
    }
}
