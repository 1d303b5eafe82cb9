//! Compliance of the wall at a seat, and its part beyond beam theory.
//!
//! A piece of tube is held by what is fixed to it at the seat, which moves as a rigid body, and loaded at both ends
//! with forces and moments that are spread as beam theory spreads them. The motions of the ends are compared with those
//! of a Timoshenko beam of the same length and section that is held in its middle.
//!
//! Shear deflection goes by the energy of the shear flow here, on both sides of the comparison, so that what is left is
//! local.

use axlebow_fe::{Attachment, Displacements, Freedom, Loads, NodeId, Rigidity, Spring, StaticSystem};
use axlebow_sections::SectionProperties;
use nalgebra::SMatrix;

use crate::WallError;
use crate::beam_ends::{BeamPiece, EndCompliance};
use crate::caveat::Caveat;
use crate::end_loads::EndLoads;
use crate::mesh_layout::MeshLayout;
use crate::mid_line::MidLine;
use crate::patch::Patch;
use crate::seat_wall::{SeatWall, Tie, UBolts};
use crate::spread::Spread;
use crate::tube_mesh::{Fineness, TubeMesh, TubePiece};

/// What the wall adds to, or takes from, a beam at a seat; freedoms ux uy uz rx ry rz.
///
/// Compliances are motions of the tube against what is fixed to it, per force (m/N, rad/N) or moment (m/(N m),
/// rad/(N m)) that goes through the seat, half of it to each side without bending moment at the seat's center.
#[derive(Debug, Clone, PartialEq)]
pub struct SeatCompliance {
    /// Of the whole piece of tube.
    pub whole: [[f64; 6]; 6],
    /// Less that of the beam: positive where the wall dents, negative where the seat stiffens its length by more.
    pub extra: [[f64; 6]; 6],
    /// Less that of the beam whose length under the seat is less flexible by `stiffened_share`.
    pub local: [[f64; 6]; 6],
    /// Less that of the beam beside the seat: the wall's with that of the length under the seat.
    pub near: [[f64; 6]; 6],
    /// Share of the flexibility of the length under the seat that is missing when a bending moment about X passes
    /// through; above 1 where the wall beside the seat is stiffened too.
    pub stiffened_share: f64,
    /// Number of unknowns of the mesh.
    pub unknowns: usize,
    /// What the reader must know.
    pub caveats: Vec<Caveat>,
}

/// Freedom about X.
const RX: usize = 3;

impl SeatWall {
    /// Solves the shells of a seat.
    ///
    /// # Errors
    /// [`WallError`] for a wall or a seat that cannot be, or a mesh that does not suit them.
    pub fn compliance(&self, fineness: &Fineness) -> Result<SeatCompliance, WallError> {
        let mut mesh = self.mesh(fineness)?;
        let section = self.profile.properties(self.material.poisson_ratio());
        let ends = [0, mesh.along.len() - 1].map(|ring| EndLoads::of(&mesh, ring, &section));
        let beam = BeamPiece {
            half_length: self.half_length(fineness),
            width: self.width,
            rigidity: self.rigidity(&section, ends[0].shear_shares),
        };
        let unknowns = 6 * mesh.nodes.len();
        let shells = match self.tie {
            Tie::Rigid => {
                self.hold(&mut mesh)?;
                seen_from_the_seat(beam.half_length, &end_motions(&mesh, &ends)?)
            }
            Tie::Spread => spread_motions(&mut mesh, &self.patches(), (&ends, beam.half_length))?,
        };
        self.compared(&shells, &beam, unknowns)
    }

    /// Refuses what cannot be meshed, without meshing it.
    ///
    /// # Errors
    /// As [`SeatWall::compliance`], but for those of the solution.
    pub fn check(&self, fineness: &Fineness) -> Result<(), WallError> {
        let patches = self.patches();
        self.piece(&patches, fineness).check(fineness)
    }

    /// The layout of its mesh.
    ///
    /// # Errors
    /// As [`SeatWall::check`].
    pub fn mesh_layout(&self, fineness: &Fineness) -> Result<MeshLayout, WallError> {
        let (patches, line) = (self.patches(), MidLine::of(&self.profile)?);
        let piece = self.piece(&patches, fineness);
        piece.check(fineness)?;
        Ok(piece.lines(&line, fineness).layout())
    }

    fn piece<'a>(&'a self, patches: &'a [Patch], fineness: &Fineness) -> TubePiece<'a> {
        let half_length = self.half_length(fineness);
        let layout = self.layout.as_deref();
        TubePiece { profile: &self.profile, material: &self.material, half_length, patches, layout }
    }

    /// The mesh, with nothing held.
    pub(crate) fn mesh(&self, fineness: &Fineness) -> Result<TubeMesh, WallError> {
        let patches = self.patches();
        TubeMesh::of(&self.piece(&patches, fineness), fineness)
    }

    /// Holds the bracket or saddle, and ties the block to it by the legs of the U-bolts.
    pub(crate) fn hold(&self, mesh: &mut TubeMesh) -> Result<(), WallError> {
        let patches = self.patches();
        for node in mesh.on(&patches[0]) {
            mesh.structure.hold(node, &Freedom::ALL);
        }
        let (Some(block), Some(bolts)) = (patches.get(1), self.clamp) else { return Ok(()) };
        let hub = mesh.structure.add_node("clamp block", [0.0; 3]);
        let nodes: Vec<NodeId> = mesh.on(block);
        mesh.structure.tie(&nodes, hub)?;
        mesh.structure.add_spring(self.legs(hub, &bolts))?;
        Ok(())
    }

    /// The legs of all U-bolts, clamped at both ends: along `E·A/l`, across `12·E·I/l³`, l the height of the axle.
    fn legs(&self, hub: NodeId, bolts: &UBolts) -> Spring {
        let (d, length) = (bolts.diameter, self.profile.height());
        let modulus = self.material.elastic_modulus();
        let area = 0.25 * std::f64::consts::PI * d * d;
        let across = 12.0 * modulus * area * d * d / 16.0 / length.powi(3);
        let rates = [across, across, modulus * area / length, 0.0, 0.0, 0.0];
        let x = 0.5 * (self.profile.width() + d);
        let mut spring = Spring::to_ground(Attachment::at(hub), [0.0; 6]);
        for number in 0..bolts.count {
            let y = self.width * ((f64::from(number) + 0.5) / f64::from(bolts.count) - 0.5);
            for x in [-x, x] {
                spring = spring.with_rates_at([x, y, 0.0], rates);
            }
        }
        spring
    }

    /// Local axes 1 = Y, 2 = Z, 3 = X.
    fn rigidity(&self, section: &SectionProperties, shear_shares: [f64; 2]) -> Rigidity {
        let (e, g) = (self.material.elastic_modulus(), self.material.shear_modulus());
        Rigidity {
            axial: e * section.area,
            torsion: g * section.torsion_constant,
            bending_2: e * section.second_moment_z,
            bending_3: e * section.second_moment_x,
            shear_2: shear_shares[1] * g * section.area,
            shear_3: shear_shares[0] * g * section.area,
        }
    }

    /// Compliance of the beam under the seat as a force or moment through the seat sees it, by freedom: two cantilevers
    /// of half the seat's width with half of the load each.
    pub(crate) fn under(&self) -> [f64; 6] {
        let section = self.profile.properties(self.material.poisson_ratio());
        let (e, g) = (self.material.elastic_modulus(), self.material.shear_modulus());
        let half = 0.5 * self.width;
        // The energy of the shear flow of a thin round tube.
        let shear = half / (0.5 * g * section.area);
        let bent = |second_moment: f64| half.powi(3) / (3.0 * e * second_moment) + shear;
        let turned = |second_moment: f64| half / (e * second_moment);
        [
            bent(section.second_moment_z),
            half / (e * section.area),
            bent(section.second_moment_x),
            turned(section.second_moment_x),
            half / (g * section.torsion_constant),
            turned(section.second_moment_z),
        ]
        .map(|each| 0.5 * each)
    }

    fn compared(
        &self,
        shells: &Modes,
        beam: &BeamPiece,
        unknowns: usize,
    ) -> Result<SeatCompliance, WallError> {
        let seen = |share: f64| Ok::<_, WallError>(seen_from_the_seat(beam.half_length, &beam.ends(share)?));
        let plain = seen(0.0)?;
        let missing = (plain - shells)[(THROUGH, THROUGH)];
        let stiffened_share = missing * beam.rigidity.bending_3 / self.width;
        let shortened = seen(stiffened_share.clamp(0.0, MOST_STIFFENED))?;
        let (extra, under) = (rows(&(shells - plain)), self.under());
        let mut near = extra;
        (0..6).for_each(|i| near[i][i] += under[i]);
        Ok(SeatCompliance {
            whole: rows(shells),
            extra,
            local: rows(&(shells - shortened)),
            near,
            stiffened_share,
            unknowns,
            caveats: self.caveats(stiffened_share),
        })
    }
}

/// Largest stiffened share that a beam can have.
pub const MOST_STIFFENED: f64 = 0.99;

fn end_motions(mesh: &TubeMesh, ends: &[EndLoads; 2]) -> Result<EndCompliance, WallError> {
    let solved = unit_solution(mesh, ends)?;
    Ok(EndCompliance::from_fn(|i, j| ends[i / 6].motion(&solved, j, i % 6)))
}

/// Motions under each unit load on the ends, first those of the end at −Y.
pub(crate) fn unit_solution(mesh: &TubeMesh, ends: &[EndLoads; 2]) -> Result<Displacements, WallError> {
    let mut loads = Loads::new(&mesh.structure, 12);
    (0..12).for_each(|column| ends[column / 6].add_times(&mut loads, column, (column % 6, 1.0)));
    let mut system = StaticSystem::new();
    system.prepare(&mesh.structure)?;
    Ok(system.solve(&mesh.structure, loads)?)
}

/// Compliance under seven loads: a unit force or moment through the seat in each freedom, half of it to each end without
/// bending moment at the seat's center, and a unit bending moment about X from end to end.
type Modes = SMatrix<f64, 7, 7>;

/// Number of the load that passes the seat by.
const THROUGH: usize = 6;

/// Loads on the two ends that go with each of the seven.
fn end_shares(half_length: f64) -> SMatrix<f64, 12, 7> {
    let mut shares = SMatrix::<f64, 12, 7>::zeros();
    for (first, y) in [(0, -half_length), (6, half_length)] {
        (0..6).for_each(|freedom| shares[(first + freedom, freedom)] = 0.5);
        // A force at (0, y, 0) has the moment (y·f_z, 0, −y·f_x) about the seat, which the end takes back.
        shares[(first + 5, 0)] = 0.5 * y;
        shares[(first + 3, 2)] = -0.5 * y;
        shares[(first + RX, THROUGH)] = y.signum();
    }
    shares
}

fn seen_from_the_seat(half_length: f64, ends: &EndCompliance) -> Modes {
    let shares = end_shares(half_length);
    symmetric(&(shares.transpose() * ends * shares))
}

/// Without what rounding makes of a symmetric matrix.
fn symmetric(modes: &Modes) -> Modes {
    (modes + modes.transpose()) * 0.5
}

/// As [`seen_from_the_seat`], for a seat that spreads its force: the loads balance, and one node at an end is held.
fn spread_motions(
    mesh: &mut TubeMesh,
    patches: &[Patch],
    (ends, half_length): (&[EndLoads; 2], f64),
) -> Result<Modes, WallError> {
    let (shares, part) = (end_shares(half_length), 1.0 / patches.len() as f64);
    let spreads: Vec<Spread> = patches.iter().map(|patch| Spread::over(mesh, patch)).collect();
    mesh.structure.hold(mesh.nodes[0], &Freedom::ALL);
    let mut loads = Loads::new(&mesh.structure, 7);
    for mode in 0..7 {
        for k in (0..12).filter(|k| shares[(*k, mode)] != 0.0) {
            ends[k / 6].add_times(&mut loads, mode, (k % 6, shares[(k, mode)]));
        }
        if mode != THROUGH {
            spreads.iter().for_each(|spread| spread.add(&mut loads, mode, (mode, -part)));
        }
    }
    let mut system = StaticSystem::new();
    system.prepare(&mesh.structure)?;
    let solved = system.solve(&mesh.structure, loads)?;
    let motion = |mode: usize, column: usize| {
        let at_ends: f64 =
            (0..12).map(|k| shares[(k, mode)] * ends[k / 6].motion(&solved, column, k % 6)).sum();
        let at_seat: f64 = spreads.iter().map(|spread| part * spread.motion(&solved, column, mode % 6)).sum();
        if mode == THROUGH { at_ends } else { at_ends - at_seat }
    };
    Ok(symmetric(&Modes::from_fn(motion)))
}

fn rows(matrix: &Modes) -> [[f64; 6]; 6] {
    std::array::from_fn(|i| std::array::from_fn(|j| matrix[(i, j)]))
}
