//! Where a search looks: combinations of listed values, each a cube of continuous ones.

use crate::ask::{Point, Study};

/// Combinations of listed values and choices, each with a cube of continuous values.
#[derive(Debug)]
pub(crate) struct Space<'s> {
    study: &'s Study,
    /// Places of the continuous keys among the varied ones.
    continuous: Vec<usize>,
}

impl<'s> Space<'s> {
    pub fn of(study: &'s Study) -> Self {
        let continuous = (0..study.varied.len()).filter(|place| study.varied[*place].distribution.is_some());
        Space { study, continuous: continuous.collect() }
    }

    /// Number of continuous values.
    pub fn dimensions(&self) -> usize {
        self.continuous.len()
    }

    /// Number of combinations of listed values with every variant.
    pub fn combinations(&self) -> usize {
        self.study.count()
    }

    /// The design of a combination at a place of its cube.
    pub fn point(&self, combination: usize, place: &[f64]) -> Point {
        let mut point = self.study.point(combination);
        for (place, share) in self.continuous.iter().zip(place) {
            point.values[*place] = self.study.varied[*place].at_share(*share);
        }
        point
    }
}
