//! The designs of a very large study that pictures show.

use axlebow_numerics::thinned_places;

use super::study::{Study, Together};
use super::vary::Varied;

/// Lines that a picture shows, at most.
const LINES: usize = 12;
/// Designs of each of them.
const ALONG: usize = 41;
/// Values of each key in a map over two keys.
const MAPPED: usize = 61;
/// Designs of a study that is no grid.
const SCATTERED: usize = 2000;

impl Study {
    /// The same study with fewer values of its keys, evenly spaced: as many as a picture can show; and the places of its
    /// designs in this one, which go up. A study that is no grid keeps its values.
    pub(crate) fn selection(&self) -> (Study, Vec<usize>) {
        if !matches!(self.together, Together::Grid) {
            return (self.clone(), thinned_places(self.count(), SCATTERED));
        }
        let kept = self.kept();
        let mut places: Vec<usize> = (0..self.variants.len()).collect();
        for (varied, kept) in self.varied.iter().zip(&kept) {
            let of = varied.values.len();
            places = places.iter().flat_map(|place| kept.iter().map(move |own| place * of + own)).collect();
        }
        let fewer = |(varied, kept): (&Varied, &Vec<usize>)| Varied {
            values: kept.iter().map(|place| varied.values[*place]).collect(),
            ..varied.clone()
        };
        let varied = self.varied.iter().zip(&kept).map(fewer).collect();
        (Study { varied, ..self.clone() }, places)
    }

    /// Places of the values that are kept, for each key.
    fn kept(&self) -> Vec<Vec<usize>> {
        let counts: Vec<usize> = self.varied.iter().map(|varied| varied.values.len()).collect();
        let most = match counts.as_slice() {
            [_, _] if !self.rides.is_empty() || self.ranked_by.is_some() => vec![MAPPED; 2],
            _ => self.values_of_lines(&counts),
        };
        counts.iter().zip(most).map(|(count, most)| thinned_places(*count, most)).collect()
    }

    /// How many values of each key make at most [`LINES`] lines; keys that vary faster have more of them.
    fn values_of_lines(&self, counts: &[usize]) -> Vec<usize> {
        let Some((_, slow)) = counts.split_last() else { return Vec::new() };
        let mut most = vec![1; slow.len()];
        let lines = |most: &[usize]| most.iter().product::<usize>() * self.variants.len();
        for values in 2..=LINES {
            for key in (0..slow.len()).rev().filter(|key| values <= slow[*key]) {
                let before = std::mem::replace(&mut most[key], values);
                if lines(&most) > LINES {
                    most[key] = before;
                }
            }
        }
        most.push(ALONG);
        most
    }
}
