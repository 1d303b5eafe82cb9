//! A direction in the space of freedoms.

use std::collections::BTreeMap;

use nalgebra::Vector3;

use crate::coupling::Attachment;
use crate::freedom::Freedom;
use crate::numbering::Numbering;
use crate::structure::{NodeId, Structure};

/// A sparse vector over the freedoms: along it a force acts, and along it a motion is read.
///
/// Both uses share one vector b: a force f acts as `b·f`, and the motion that it works on is `bᵀu`.
#[derive(Debug, Clone, PartialEq)]
pub struct Direction {
    parts: Vec<(usize, f64)>,
}

impl Direction {
    /// One freedom, counted from 0.
    pub fn along(freedom: usize) -> Self {
        Direction { parts: vec![(freedom, 1.0)] }
    }

    /// Freedoms, counted from 0, each with its component; those named twice add up.
    pub fn new(parts: impl IntoIterator<Item = (usize, f64)>) -> Self {
        let mut sums = BTreeMap::new();
        parts.into_iter().for_each(|(freedom, part)| *sums.entry(freedom).or_insert(0.0) += part);
        Direction { parts: sums.into_iter().filter(|(_, component)| *component != 0.0).collect() }
    }

    /// A unit direction (global axes) at a point of a structure, over its free freedoms.
    pub fn at(structure: &Structure, place: &Attachment, direction: [f64; 3]) -> Self {
        let [d, arm] = [direction, place.arm].map(Vector3::from);
        let turned = arm.cross(&d);
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
