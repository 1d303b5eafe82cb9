//! Where the lines of a seat's mesh lie, and the layout that the meshes of two seats can share.

use crate::grading::{Grading, apart};
use crate::mid_line::MidLine;
use crate::patch::Patch;
use crate::tube_mesh::{LONGEST, READINGS, WIDEST_SPAN};

/// Which lines of nodes a mesh has and how many elements lie between them; where they lie follows from the sizes of the seat.
///
/// What the shells of two seats say differs by the seats alone only if both are meshed by one layout: one element more
/// moves an axle's camber by some 1e-4 of itself, as much as a step of a difference does.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MeshLayout {
    round: LineLayout,
    along: LineLayout,
}

/// Lines of one direction.
#[derive(Debug, Clone, PartialEq, Eq)]
struct LineLayout {
    /// Number of stops that were wanted.
    wanted: usize,
    /// Numbers of the stops among those that are wanted, in rising order.
    stops: Vec<usize>,
    /// Elements from each stop to the next.
    counts: Vec<usize>,
}

/// What is to be meshed.
#[derive(Debug, Clone, Copy)]
pub(crate) struct MeshLines<'a> {
    pub line: &'a MidLine,
    pub patches: &'a [Patch],
    pub half_length: f64,
    pub grading: Grading,
}

impl MeshLines<'_> {
    /// The layout that the sizes ask for.
    pub(crate) fn layout(&self) -> MeshLayout {
        MeshLayout { round: self.round().layout(), along: self.along().layout() }
    }

    /// Whether a layout of another seat has its lines in the same order here.
    pub(crate) fn fit(&self, layout: &MeshLayout) -> bool {
        self.round().fit(&layout.round) && self.along().fit(&layout.along)
    }

    /// Distances round the middle line of the columns of nodes, m.
    pub(crate) fn columns(&self, layout: &MeshLayout) -> Vec<f64> {
        let mut lines = self.round().lines(&layout.round);
        // Once round, the last one is the first.
        lines.pop();
        lines
    }

    /// Places along the axle of the rings of nodes, m.
    pub(crate) fn rings(&self, layout: &MeshLayout) -> Vec<f64> {
        self.along().lines(&layout.along)
    }

    fn round(&self) -> Direction<'_> {
        let (t, all) = (self.line.thickness, self.line.length());
        let edges: Vec<[f64; 2]> = self
            .patches
            .iter()
            .filter(|patch| patch.breadth < all * (1.0 - 1e-9))
            .map(|patch| patch.edges(self.line))
            .collect();
        let mut wanted: Vec<f64> =
            with_readings(&edges, t).into_iter().map(|stop| stop.rem_euclid(all)).collect();
        if wanted.is_empty() {
            wanted.push(0.0);
        }
        // The marks of the rounds before and after count too.
        let turns = [-2.0, -1.0, 0.0, 1.0];
        let marks = edges.iter().flatten().flat_map(|edge| turns.map(|turn| edge + turn * all)).collect();
        let fewest = |from, to| self.line.turn(from, to) / (0.9 * WIDEST_SPAN);
        Direction { wanted, marks, around: Some(all), grading: self.grading, fewest: Box::new(fewest) }
    }

    fn along(&self) -> Direction<'_> {
        let half = self.half_length;
        let edges: Vec<[f64; 2]> = self.patches.iter().map(|patch| patch.along).collect();
        let stops = [-half, half].into_iter().chain(with_readings(&edges, self.line.thickness));
        let coarsest = (LONGEST * self.line.length()).max(self.grading.coarsest);
        Direction {
            wanted: stops.filter(|y| y.abs() <= half).collect(),
            marks: edges.into_iter().flatten().collect(),
            around: None,
            grading: Grading { coarsest, ..self.grading },
            fewest: Box::new(|_, _| 0.0),
        }
    }
}

/// Edges of patches, then the places beside them at which stress is read.
fn with_readings(edges: &[[f64; 2]], thickness: f64) -> Vec<f64> {
    let beside = edges
        .iter()
        .flat_map(|[first, last]| READINGS.map(|far| [first - far * thickness, last + far * thickness]));
    edges.iter().copied().chain(beside).flatten().collect()
}

/// Lines of one direction.
struct Direction<'a> {
    /// Places that want a line, those that matter most first.
    wanted: Vec<f64>,
    /// Places toward which lines crowd.
    marks: Vec<f64>,
    /// Length once round, where it is closed.
    around: Option<f64>,
    grading: Grading,
    /// Fewest elements between two places.
    fewest: Box<dyn Fn(f64, f64) -> f64 + 'a>,
}

impl Direction<'_> {
    fn layout(&self) -> LineLayout {
        let stops = apart(&self.wanted, 0.3 * self.grading.finest);
        let counts = self.grading.counts(&self.places(&stops), &self.marks, &self.fewest);
        LineLayout { wanted: self.wanted.len(), stops, counts }
    }

    fn fit(&self, layout: &LineLayout) -> bool {
        let least = 0.1 * self.grading.finest;
        let in_order = |places: &[f64]| places.windows(2).all(|pair| pair[1] - pair[0] >= least);
        layout.wanted == self.wanted.len() && in_order(&self.places(&layout.stops))
    }

    fn lines(&self, layout: &LineLayout) -> Vec<f64> {
        self.grading.lines((&self.places(&layout.stops), &layout.counts), &self.marks, &self.fewest)
    }

    /// Where the stops lie; in a closed direction from the first one once round to it.
    fn places(&self, stops: &[usize]) -> Vec<f64> {
        let mut places: Vec<f64> = stops.iter().map(|number| self.wanted[*number]).collect();
        let Some(all) = self.around else { return places };
        let first = places[0];
        places.iter_mut().skip(1).for_each(|place| *place = first + (*place - first).rem_euclid(all));
        places.push(first + all);
        places
    }
}
