//! Stress of the wall at a seat under what the axle carries there.

use std::collections::BTreeMap;

use axlebow_fe::{Displacements, Face, NodeId, ShellId};

use crate::WallError;
use crate::compliance::unit_solution;
use crate::end_loads::EndLoads;
use crate::patch::Patch;
use crate::seat_wall::SeatWall;
use crate::tube_mesh::{Fineness, READINGS, TubeMesh};

/// What the axle carries beside a seat, about the seat's center, on faces whose outward normal is +Y: forces along (N) and
/// moments about (N m) X, Y, Z.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SeatResultants {
    /// On the side toward −Y.
    pub before: [f64; 6],
    /// On the side toward +Y.
    pub after: [f64; 6],
}

/// Stress at the toe of a bracket or at the edge of a saddle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HotSpot {
    /// Structural stress across the toe, tension positive, Pa.
    pub stress: f64,
    /// Place round the wall from the top toward the front, as a share of the way round.
    pub clock: f64,
    /// Place along the axle from the seat's center, m.
    pub along: f64,
    /// What the toe belongs to.
    pub patch: &'static str,
}

/// A place at a toe and the nodes from which its stress is extrapolated, nearest first.
#[derive(Debug, Clone, Copy)]
struct Toe {
    clock: f64,
    along: f64,
    patch: &'static str,
    /// Whether the toe runs round the wall, so that the stress across it runs along the axle.
    round: bool,
    nodes: [NodeId; 2],
}

/// A seat whose shells are solved for unit loads on both ends, rigid under bracket or saddle.
#[derive(Debug)]
pub struct SolvedSeat {
    pub(crate) mesh: TubeMesh,
    pub(crate) solved: Displacements,
    pub(crate) half_length: f64,
    toes: Vec<Toe>,
    /// Stress across each toe under each of the twelve unit loads.
    influence: Vec<[f64; 12]>,
}

impl SeatWall {
    /// Solves the shells of a seat for unit loads on both ends.
    ///
    /// # Errors
    /// As [`SeatWall::compliance`].
    pub fn solved(&self, fineness: &Fineness) -> Result<SolvedSeat, WallError> {
        let mut mesh = self.mesh(fineness)?;
        let section = self.profile.properties(self.material.poisson_ratio());
        let ends = [0, mesh.along.len() - 1].map(|ring| EndLoads::of(&mesh, ring, &section));
        self.hold(&mut mesh)?;
        let solved = unit_solution(&mesh, &ends)?;
        let toes: Vec<Toe> = self.patches().iter().flat_map(|patch| toes(&mesh, patch)).collect();
        let influence = influence(&mesh, &solved, &toes);
        Ok(SolvedSeat { mesh, solved, half_length: self.half_length(fineness), toes, influence })
    }
}

impl SolvedSeat {
    /// The greatest stress at the toes, extrapolated to them along the outer face from 0.4 t and 1.0 t:
    /// `1.67·σ(0.4 t) − 0.67·σ(1.0 t)`.
    ///
    /// Valid for a toe across which the wall is a smooth shell; the bracket is rigid, which is the worst for its ends.
    /// Source: A. Hobbacher, Recommendations for Fatigue Design of Welded Joints and Components, IIW, 2nd ed. 2016, 2.2.3.4
    /// (type a, fine mesh; from memory). None where the patch has no toe.
    pub fn hot_spot(&self, carried: &SeatResultants) -> Option<HotSpot> {
        let factors = end_loads(self.half_length, carried);
        let stress =
            |row: &[f64; 12]| row.iter().zip(&factors).map(|(unit, factor)| unit * factor).sum::<f64>();
        let all = self.toes.iter().zip(&self.influence).map(|(toe, row)| HotSpot {
            stress: stress(row),
            clock: toe.clock,
            along: toe.along,
            patch: toe.patch,
        });
        all.reduce(|most, one| if one.stress.abs() > most.stress.abs() { one } else { most })
    }
}

/// Factors of the unit loads on both ends of a piece of tube that put the resultants beside its seat.
pub(crate) fn end_loads(half_length: f64, carried: &SeatResultants) -> [f64; 12] {
    let mut factors = [0.0; 12];
    for (first, y, sign, six) in
        [(0, -half_length, -1.0, &carried.before), (6, half_length, 1.0, &carried.after)]
    {
        let own = six.map(|value| sign * value);
        factors[first..first + 6].copy_from_slice(&own);
        // A force at (0, y, 0) has the moment (y·f_z, 0, −y·f_x) about the seat.
        factors[first + 3] -= y * own[2];
        factors[first + 5] += y * own[0];
    }
    factors
}

/// Toes along the four edges of a patch.
fn toes(mesh: &TubeMesh, patch: &Patch) -> Vec<Toe> {
    let mut toes = toes_round(mesh, patch);
    toes.extend(toes_along(mesh, patch));
    toes
}

/// Toes of the two edges that run round the wall.
fn toes_round(mesh: &TubeMesh, patch: &Patch) -> Vec<Toe> {
    let (t, [low, high]) = (mesh.line.thickness, patch.along);
    let ring = |y: f64| mesh.along.iter().position(|own| (own - y).abs() < 1e-6 * t);
    let mut toes = Vec::new();
    for (edge, away) in [(low, -t), (high, t)] {
        let Some(rings) = both(READINGS.map(|far| ring(edge + far * away))) else { continue };
        let inside = (0..mesh.wide()).filter(|column| patch.holds(&mesh.line, mesh.round[*column], low));
        toes.extend(inside.map(|column| Toe {
            clock: mesh.round[column] / mesh.line.length(),
            along: edge,
            patch: patch.name,
            round: true,
            nodes: rings.map(|ring| mesh.node(ring, column)),
        }));
    }
    toes
}

/// Toes of the two edges that run along the axle.
fn toes_along(mesh: &TubeMesh, patch: &Patch) -> Vec<Toe> {
    let (t, all) = (mesh.line.thickness, mesh.line.length());
    let column = |s: f64| {
        let off = |own: &f64| (own - s + 0.5 * all).rem_euclid(all) - 0.5 * all;
        mesh.round.iter().position(|own| off(own).abs() < 1e-6 * t)
    };
    let ([low, high], [first, last]) = (patch.along, patch.edges(&mesh.line));
    let mut toes = Vec::new();
    for (edge, away) in [(first, -t), (last, t)] {
        let Some(columns) = both(READINGS.map(|far| column(edge + far * away))) else { continue };
        let inside = (0..mesh.along.len()).filter(|ring| (low..=high).contains(&mesh.along[*ring]));
        toes.extend(inside.map(|ring| Toe {
            clock: (edge / all).rem_euclid(1.0),
            along: mesh.along[ring],
            patch: patch.name,
            round: false,
            nodes: columns.map(|column| mesh.node(ring, column)),
        }));
    }
    toes
}

fn both([one, other]: [Option<usize>; 2]) -> Option<[usize; 2]> {
    Some([one?, other?])
}

/// Stress across each toe under each unit load.
fn influence(mesh: &TubeMesh, solved: &Displacements, toes: &[Toe]) -> Vec<[f64; 12]> {
    let near = beside(mesh, toes);
    let mut rows = vec![[0.0; 12]; toes.len()];
    for column in 0..12 {
        let stress = solved.state(&mesh.structure, column).face_stress(&near, Face::Upper);
        for (row, toe) in rows.iter_mut().zip(toes) {
            let [one, other] = toe.nodes.map(|node| across(mesh, toe, &stress, node));
            row[column] = one + (one - other) * READINGS[0] / (READINGS[1] - READINGS[0]);
        }
    }
    rows
}

/// Normal stress across a toe at a node.
fn across(mesh: &TubeMesh, toe: &Toe, stress: &BTreeMap<NodeId, [[f64; 3]; 3]>, node: NodeId) -> f64 {
    let Some(tensor) = stress.get(&node) else { return 0.0 };
    if toe.round {
        return tensor[1][1];
    }
    let [x, z] = mesh.line.at(mesh.round[node.index() % mesh.wide()]).normal;
    let direction = [z, 0.0, -x];
    let product = |i: usize| (0..3).map(|j| tensor[i][j] * direction[j]).sum::<f64>();
    (0..3).map(|i| direction[i] * product(i)).sum()
}

/// Shells within one of a reading's node, and those round them.
fn beside(mesh: &TubeMesh, toes: &[Toe]) -> Vec<ShellId> {
    let wide = mesh.wide();
    let mut wanted = vec![false; mesh.shells.len()];
    for node in toes.iter().flat_map(|toe| toe.nodes) {
        let (ring, column) = (node.index() / wide, node.index() % wide);
        for (back, aside) in [(1, 1), (1, 0), (0, 1), (0, 0)] {
            let Some(ring) = ring.checked_sub(back) else { continue };
            let shell = ring * wide + (column + wide - aside) % wide;
            wanted.get_mut(shell).into_iter().for_each(|own| *own = true);
        }
    }
    mesh.shells.iter().zip(wanted).filter(|(_, wanted)| *wanted).map(|(shell, _)| *shell).collect()
}
