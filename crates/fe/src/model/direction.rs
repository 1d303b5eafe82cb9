//! A direction in the space of freedoms.

use std::collections::BTreeMap;

use nalgebra::Vector3;

use crate::model::numbering::Numbering;
use crate::model::structure::Structure;
use crate::node::coupling::Attachment;
use crate::node::freedom::Freedom;
use crate::node::ids::NodeId;

/// A sparse vector over the freedoms: along it a force acts, and along it a motion is read.
///
/// Both uses share one vector b: a force f acts as `b·f`, and the motion that it works on is `bᵀu`.
#[derive(Debug, Clone, PartialEq)]
pub struct Direction {
    parts: Vec<(usize, f64)>,
    /// The components alone where the freedoms follow one another, as over the shapes of a reduced basis.
    run: Vec<f64>,
}

/// Freedoms in a run from which on it is worth its own list.
const LONG_RUN: usize = 6;

impl Direction {
    /// One freedom, counted from 0.
    pub fn along(freedom: usize) -> Self {
        Direction { parts: vec![(freedom, 1.0)], run: Vec::new() }
    }

    /// Freedoms, counted from 0, each with its component; those named twice add up.
    pub fn new(parts: impl IntoIterator<Item = (usize, f64)>) -> Self {
        let mut sums = BTreeMap::new();
        parts.into_iter().for_each(|(freedom, part)| *sums.entry(freedom).or_insert(0.0) += part);
        let parts: Vec<_> = sums.into_iter().filter(|(_, component)| *component != 0.0).collect();
        let first = parts.first().map_or(0, |(freedom, _)| *freedom);
        let unbroken = parts.iter().enumerate().all(|(i, (freedom, _))| *freedom == first + i);
        let long = unbroken && parts.len() >= LONG_RUN;
        let run = if long { parts.iter().map(|(_, component)| *component).collect() } else { Vec::new() };
        Direction { parts, run }
    }

    /// A unit direction (global axes) at a point of a structure, over its free freedoms.
    pub fn at(structure: &Structure, place: &Attachment, direction: [f64; 3]) -> Self {
        Direction::of_motion(structure, place, [direction, [0.0; 3]])
    }

    /// A weighted sum of the displacements and of the rotations of a point of a structure (global axes).
    pub fn of_motion(structure: &Structure, place: &Attachment, weights: [[f64; 3]; 2]) -> Self {
        let place = structure.carrier(place);
        let [d, rotation, arm] = [weights[0], weights[1], place.arm].map(Vector3::from);
        let turned = arm.cross(&d) + rotation;
        let component = |i: usize| if i < 3 { d[i] } else { turned[i - 3] };
        let numbering = Numbering::of(structure);
        let own = numbering.free().filter(|(full, _)| full / 6 == place.node.0);
        Direction::new(own.map(|(full, number)| (number, component(full % 6))))
    }

    /// One freedom of a node of a structure; without parts where it is held.
    pub fn of_freedom(structure: &Structure, node: NodeId, freedom: Freedom) -> Self {
        let wanted = 6 * node.0 + freedom.index();
        let numbering = Numbering::of(structure);
        Direction::new(numbering.free().filter(|(full, _)| *full == wanted).map(|(_, number)| (number, 1.0)))
    }

    /// The component of a vector along it, `bᵀu`.
    ///
    /// # Panics
    /// When a freedom is outside the vector.
    pub fn dot(&self, vector: &[f64]) -> f64 {
        if !self.run.is_empty() {
            return dot(&self.run, &vector[self.parts[0].0..][..self.run.len()]);
        }
        let product = |(freedom, component): &(usize, f64)| component * vector[*freedom];
        let (quads, rest) = self.parts.as_chunks::<4>();
        let mut sums = [0.0; 4];
        for quad in quads {
            sums.iter_mut().zip(quad).for_each(|(sum, part)| *sum += product(part));
        }
        sums.into_iter().sum::<f64>() + rest.iter().map(product).sum::<f64>()
    }

    /// Adds `factor·b` to a vector.
    ///
    /// # Panics
    /// When a freedom is outside the vector.
    pub fn add_to(&self, factor: f64, vector: &mut [f64]) {
        if !self.run.is_empty() {
            let place = &mut vector[self.parts[0].0..][..self.run.len()];
            place.iter_mut().zip(&self.run).for_each(|(x, component)| *x += factor * component);
            return;
        }
        for (freedom, component) in &self.parts {
            vector[*freedom] += factor * component;
        }
    }

    /// Freedoms with their components.
    pub fn parts(&self) -> &[(usize, f64)] {
        &self.parts
    }

    /// The last freedom that it names.
    pub(crate) fn last(&self) -> Option<usize> {
        self.parts.iter().map(|(freedom, _)| *freedom).max()
    }

    /// Distance from its first to its last freedom.
    pub(crate) fn spread(&self) -> usize {
        let first = self.parts.iter().map(|(freedom, _)| *freedom).min();
        self.last().unwrap_or(0) - first.unwrap_or(0)
    }
}

/// Σ aᵢbᵢ in four partial sums.
pub(crate) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let ((a, rest_a), (b, rest_b)) = (a.as_chunks::<4>(), b.as_chunks::<4>());
    let mut sums = [0.0; 4];
    for (a, b) in a.iter().zip(b) {
        (0..4).for_each(|i| sums[i] += a[i] * b[i]);
    }
    let rest: f64 = rest_a.iter().zip(rest_b).map(|(a, b)| a * b).sum();
    (sums[0] + sums[2]) + (sums[1] + sums[3]) + rest
}
