//! Which study results are of.

use std::fs;

use crate::ask::Study;
use crate::solve::{Columns, Cost};
use crate::store::{Head, Part};

/// Designs of a chunk. A chunk is what a stop loses at most of each thread, and costs a write; few enough are so done in
/// milliseconds.
const DESIGNS: usize = 1024;
/// The same where a design takes milliseconds or more: rides, and shells that no table stands for.
const COSTLY_DESIGNS: usize = 32;
/// Version and build: numbers of one need not be those of another to the last digit.
const PROGRAM: &str = concat!(env!("CARGO_PKG_VERSION"), " build ", env!("AXLEBOW_BUILD"));
/// Designs whose values enter the hash one by one.
const PROBED: usize = 256;

impl Study {
    /// The head of its results, those of a part.
    pub fn head(&self, part: Part) -> Head {
        Head {
            study: self.name.clone(),
            hash: self.hash(),
            program: PROGRAM.to_owned(),
            designs: self.count(),
            chunk: self.chunk_size(),
            readings: Columns::of(self).measures().len(),
            part,
        }
    }

    /// BLAKE3 of all that its results depend on: what the study file and the files that it points to say, which designs and
    /// results are asked for, how many make a chunk, and the version and build of axlebow. Layout of files, threads and parts do not matter. The first
    /// 32 hexadecimal digits.
    pub fn hash(&self) -> String {
        let mut hasher = blake3::Hasher::new();
        let mut add = |bytes: &[u8]| {
            hasher.update(&(bytes.len() as u64).to_le_bytes()).update(bytes);
        };
        add(PROGRAM.as_bytes());
        add(&(self.chunk_size() as u64).to_le_bytes());
        add(self.content.as_bytes());
        for variant in &self.variants {
            add(variant.name.as_bytes());
            add(variant.document.hash().as_bytes());
        }
        for ride in &self.rides {
            add(ride.document.hash().as_bytes());
            add(&ride.profile().and_then(|path| fs::read(path).ok()).unwrap_or_default());
        }
        self.duty.iter().for_each(|duty| add(duty.hash.as_bytes()));
        Columns::of(self).measures().iter().for_each(|measure| add(measure.name.as_bytes()));
        add(&(self.count() as u64).to_le_bytes());
        for design in self.probed() {
            self.point(design).values.iter().for_each(|value| add(&value.to_bits().to_le_bytes()));
        }
        hasher.finalize().to_hex()[..32].to_owned()
    }

    /// Designs evenly spaced over the study, the first and the last among them.
    fn probed(&self) -> impl Iterator<Item = usize> {
        let last = self.count().saturating_sub(1);
        let steps = last.min(PROBED);
        (0..=steps).map(move |i| (i * last).checked_div(steps).unwrap_or(0))
    }

    /// Designs of a chunk.
    pub(super) fn chunk_size(&self) -> usize {
        let is_costly = !self.rides.is_empty()
            || self.asks_for(Cost::Life)
            || self.asks_for(Cost::Rating)
            || self.asks_for(Cost::Cups)
            || self.asks_for(Cost::CupDamping)
            || (!self.tabled_walls && self.has_shells());
        if is_costly { COSTLY_DESIGNS } else { DESIGNS }
    }
}
