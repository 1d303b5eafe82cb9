//! A piece of tube or box as a structured mesh of shells, graded toward patches.

use axlebow_fe::{NodeId, ShellId, Structure, Wall};
use axlebow_sections::{Material, Profile};

use crate::WallError;
use crate::grading::Grading;
use crate::mesh_layout::{MeshLayout, MeshLines};
use crate::mid_line::MidLine;
use crate::patch::Patch;

/// How fine a mesh is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fineness {
    /// Size of elements at the edges of patches, over the thickness.
    pub edge: f64,
    /// Growth of the size with the distance from there.
    pub growth: f64,
    /// Fewest elements round the section.
    pub round: f64,
    /// Wall beyond each edge of a seat, over the larger outside size.
    pub beside: f64,
}

impl Fineness {
    /// Elements of 0.4 t at the edges, which hot-spot stress asks for: 1.5 % of an axle tube's local rotation are left,
    /// and 0.5 % by the length of wall (`crates/wall/tests/all/seat_convergence.rs`).
    pub const USUAL: Fineness = Fineness { edge: 0.4, growth: 0.4, round: 40.0, beside: 3.0 };

    /// The same with all sizes multiplied by a factor.
    pub fn scaled(&self, factor: f64) -> Self {
        let Fineness { edge, growth, round, beside } = *self;
        Fineness { edge: edge * factor, growth: growth * factor, round: round / factor, beside }
    }
}

/// Distances from a weld toe, over the thickness, at which stress is read for extrapolation to it
/// (A. Hobbacher, Recommendations for Fatigue Design of Welded Joints and Components, IIW, 2nd ed. 2016, 2.2.3.4).
pub(crate) const READINGS: [f64; 2] = [0.4, 1.0];

/// Largest angle of a curve that one element spans: 15°.
pub(crate) const WIDEST_SPAN: f64 = 0.262;
/// Most unknowns of a mesh.
const MOST_UNKNOWNS: usize = 1_000_000;
/// Thickness over radius of the middle line beyond which a wall is no shell.
const THICKEST: f64 = 0.5;
/// Longest element, over the length round the section.
pub(crate) const LONGEST: f64 = 1.0 / 14.0;

/// A piece of tube about the origin, along Y, as shells.
#[derive(Debug)]
pub(crate) struct TubeMesh {
    pub structure: Structure,
    pub line: MidLine,
    /// Distances round the middle line of the columns of nodes, m.
    pub round: Vec<f64>,
    /// Places along the axle of the rings of nodes, m.
    pub along: Vec<f64>,
    /// Nodes, ring by ring.
    pub nodes: Vec<NodeId>,
    /// Shells, ring by ring.
    pub shells: Vec<ShellId>,
}

/// What is meshed.
#[derive(Debug, Clone, Copy)]
pub(crate) struct TubePiece<'a> {
    pub profile: &'a Profile,
    pub material: &'a Material,
    pub half_length: f64,
    pub patches: &'a [Patch],
    /// Layout that the mesh takes over where it fits; its own otherwise.
    pub layout: Option<&'a MeshLayout>,
}

impl TubePiece<'_> {
    /// Where the lines of the mesh lie.
    pub(crate) fn lines<'l>(&'l self, line: &'l MidLine, fineness: &Fineness) -> MeshLines<'l> {
        let grading = Grading {
            finest: fineness.edge * line.thickness,
            growth: fineness.growth,
            coarsest: line.length() / fineness.round,
        };
        MeshLines { line, patches: self.patches, half_length: self.half_length, grading }
    }

    /// Refuses what cannot be meshed.
    pub(crate) fn check(&self, fineness: &Fineness) -> Result<(), WallError> {
        let line = MidLine::of(self.profile)?;
        crate::error::positive("half-length of the piece of tube", self.half_length, "m")?;
        let ratio = line.thickness / line.radius();
        if matches!(self.profile, Profile::RoundTube(_)) && ratio > THICKEST {
            return Err(WallError::TooThick { thickness: line.thickness, ratio, limit: THICKEST });
        }
        for (number, patch) in self.patches.iter().enumerate() {
            patch.check(&line, self.half_length)?;
            for other in &self.patches[number + 1..] {
                patch.check_apart(other, &line)?;
            }
            let (size, decay) =
                (fineness.edge * line.thickness, (0.5 * line.outside() * line.thickness).sqrt());
            if size > 0.5 * decay {
                return Err(WallError::TooCoarse { patch: patch.name, size, decay });
            }
        }
        Ok(())
    }
}

impl TubeMesh {
    /// Meshes a piece of tube.
    ///
    /// # Errors
    /// Every misfit of [`WallError`] but those of the solution.
    pub(crate) fn of(piece: &TubePiece, fineness: &Fineness) -> Result<Self, WallError> {
        let line = MidLine::of(piece.profile)?;
        piece.check(fineness)?;
        let lines = piece.lines(&line, fineness);
        let held = piece.layout.filter(|layout| lines.fit(layout));
        let layout = held.cloned().unwrap_or_else(|| lines.layout());
        let (round, along) = (lines.columns(&layout), lines.rings(&layout));
        let unknowns = 6 * round.len() * along.len();
        if unknowns > MOST_UNKNOWNS {
            return Err(WallError::TooManyUnknowns { unknowns, limit: MOST_UNKNOWNS });
        }
        refuse_wide_spans(&line, &round)?;
        TubeMesh::built(line, round, along, piece.material)
    }

    fn built(
        line: MidLine,
        round: Vec<f64>,
        along: Vec<f64>,
        material: &Material,
    ) -> Result<Self, WallError> {
        let mut structure = Structure::new();
        let swell = swell(&line, &round);
        let points: Vec<_> = round.iter().map(|s| line.at(*s)).collect();
        let mut nodes = Vec::with_capacity(points.len() * along.len());
        for y in &along {
            for point in &points {
                let [x, z] = point.place.map(|value| value * swell);
                nodes.push(structure.add_node("tube wall", [x, *y, z]));
            }
        }
        let wide = points.len();
        let quad = |k: usize| {
            let (ring, column) = (k / wide * wide, k % wide);
            let next = (column + 1) % wide;
            [ring + column, ring + next, ring + wide + next, ring + wide + column].map(|place| nodes[place])
        };
        let quads: Vec<_> = (0..wide * (along.len() - 1)).map(quad).collect();
        let wall = Wall::new(line.thickness, material.elastic_modulus(), material.poisson_ratio())
            .with_density(material.density());
        let shells = structure.add_surface_facing(&quads, &wall, |node| {
            let [x, z] = points[node.index() % wide].normal;
            [x, 0.0, z]
        })?;
        Ok(TubeMesh { structure, line, round, along, nodes, shells })
    }

    /// Number of columns of nodes.
    pub(crate) fn wide(&self) -> usize {
        self.round.len()
    }

    /// Node in a ring and a column.
    pub(crate) fn node(&self, ring: usize, column: usize) -> NodeId {
        self.nodes[ring * self.wide() + column]
    }

    /// Nodes of a ring.
    pub(crate) fn ring(&self, number: usize) -> &[NodeId] {
        &self.nodes[number * self.wide()..(number + 1) * self.wide()]
    }

    /// Number of the ring nearest to a place along the axle.
    pub(crate) fn nearest_ring(&self, y: f64) -> usize {
        let far = |ring: &usize| (self.along[*ring] - y).abs();
        (0..self.along.len()).min_by(|a, b| far(a).total_cmp(&far(b))).unwrap_or(0)
    }

    /// Shells whose ring begins within a distance of the seat's center.
    pub(crate) fn shells_within(&self, reach: f64) -> Vec<ShellId> {
        let near = |k: &usize| self.along[k / self.wide()].abs() <= reach;
        (0..self.shells.len()).filter(near).map(|k| self.shells[k]).collect()
    }

    /// Nodes of a patch, each with its part of the patch's area.
    pub(crate) fn areas_on(&self, patch: &Patch) -> Vec<(NodeId, f64)> {
        let wide = self.wide();
        let mut areas = vec![0.0; self.nodes.len()];
        for k in 0..wide * (self.along.len() - 1) {
            let (ring, column) = (k / wide, k % wide);
            let next = (column + 1) % wide;
            let corners = [(ring, column), (ring, next), (ring + 1, column), (ring + 1, next)];
            let on = |(ring, column): &(usize, usize)| {
                patch.holds(&self.line, self.round[*column], self.along[*ring])
            };
            if corners.iter().all(on) {
                let breadth = (self.round[next] - self.round[column]).rem_euclid(self.line.length());
                let area = breadth * (self.along[ring + 1] - self.along[ring]);
                corners.iter().for_each(|(ring, column)| areas[ring * wide + column] += 0.25 * area);
            }
        }
        let kept = self.nodes.iter().copied().zip(areas);
        kept.filter(|(_, area)| *area > 0.0).collect()
    }

    /// Nodes of a patch.
    pub(crate) fn on(&self, patch: &Patch) -> Vec<NodeId> {
        let inside =
            |k: &usize| patch.holds(&self.line, self.round[k % self.wide()], self.along[k / self.wide()]);
        (0..self.nodes.len()).filter(inside).map(|k| self.nodes[k]).collect()
    }
}

/// Factor on the polygon of nodes that gives it the second moment of its line, so that the mesh bends as the tube.
fn swell(line: &MidLine, round: &[f64]) -> f64 {
    let moment = |stops: &[f64]| -> f64 {
        let chord = |k: usize| {
            let (one, next) = (line.at(stops[k]).place, line.at(stops[(k + 1) % stops.len()]).place);
            let middle = [0.5 * (one[0] + next[0]), 0.5 * (one[1] + next[1])];
            let length = (next[0] - one[0]).hypot(next[1] - one[1]);
            length * (middle[0].powi(2) + middle[1].powi(2) + length * length / 12.0)
        };
        (0..stops.len()).map(chord).sum()
    };
    let many = 4096;
    let fine: Vec<f64> = (0..many).map(|k| line.length() * k as f64 / many as f64).collect();
    (moment(&fine) / moment(round)).cbrt()
}

fn refuse_wide_spans(line: &MidLine, round: &[f64]) -> Result<(), WallError> {
    for (k, from) in round.iter().enumerate() {
        let to = round.get(k + 1).copied().unwrap_or(round[0] + line.length());
        let angle = line.turn(*from, to).abs();
        if angle > WIDEST_SPAN {
            let place = format!("{:.0} deg of the way round", 360.0 * from / line.length());
            return Err(WallError::Warped { place, angle, limit: WIDEST_SPAN });
        }
    }
    Ok(())
}
