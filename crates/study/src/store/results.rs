//! The results of a study in order, from one file or from those of its parts.

use rayon::prelude::*;

use super::chunk::Chunk;
use super::error::StoreError;
use super::head::Head;
use super::part::Part;
use super::results_file::ResultsFile;

/// Chunks that each thread has ready at most, before they are handed on.
const TOGETHER: usize = 4;

/// Every chunk of a study, from one file or from those of its parts.
#[derive(Debug)]
pub struct Results {
    files: Vec<ResultsFile>,
    /// Which file has each chunk.
    holders: Vec<usize>,
}

impl Results {
    /// The results of files of one study.
    ///
    /// # Errors
    /// [`StoreError::Missing`] with the parts, as the first file counts them, that make what no file has.
    pub fn of(files: Vec<ResultsFile>) -> Result<Results, StoreError> {
        let Some(head) = files.first().map(|file| file.head().clone()) else {
            let parts = vec![Part::WHOLE];
            return Err(StoreError::Missing { parts, designs: 0, of: 0 });
        };
        let holder = |chunk: usize| files.iter().position(|file| file.has(chunk));
        let holders: Vec<Option<usize>> = (0..head.chunks()).map(holder).collect();
        let lacking = || (0..head.chunks()).filter(|chunk| holders[*chunk].is_none());
        let Some(found) = holders.iter().copied().collect() else {
            let of = head.part.of();
            let parts = (1..=of).filter_map(|number| Part::new(number, of).ok());
            let parts = parts.filter(|part| lacking().any(|chunk| part.has(chunk))).collect();
            let designs = lacking().map(|chunk| head.designs_of(chunk).len()).sum();
            return Err(StoreError::Missing { parts, designs, of: head.designs });
        };
        Ok(Results { files, holders: found })
    }

    /// Which study they are of.
    pub fn head(&self) -> &Head {
        self.files[0].head()
    }

    /// A chunk by its place.
    ///
    /// # Errors
    /// What the disk refuses, and a chunk that has been spoilt since it was found.
    ///
    /// # Panics
    /// If the study has no such chunk.
    pub fn chunk(&self, place: usize) -> Result<Chunk, StoreError> {
        self.files[self.holders[place]].chunk(place)
    }

    /// Makes something of each chunk, on all cores, and hands it on in order, while the next ones are made; only a few chunks are
    /// in memory at once.
    ///
    /// # Errors
    /// As [`chunk`](Self::chunk), and those of `taken`.
    pub fn in_order<T: Send, E: From<StoreError>>(
        &self,
        made: impl Fn(Chunk) -> T + Sync,
        mut taken: impl FnMut(T) -> Result<(), E>,
    ) -> Result<(), E> {
        let (chunks, together) = (self.head().chunks(), TOGETHER * rayon::current_num_threads());
        let several = |first: usize| -> Result<Vec<T>, StoreError> {
            let places = first.min(chunks)..chunks.min(first + together);
            places.into_par_iter().map(|place| self.chunk(place).map(&made)).collect()
        };
        let mut ready = several(0);
        for first in (0..chunks).step_by(together) {
            let now = std::mem::replace(&mut ready, Ok(Vec::new()))?;
            rayon::in_place_scope(|scope| {
                scope.spawn(|_| ready = several(first + together));
                now.into_iter().try_for_each(&mut taken)
            })?;
        }
        Ok(())
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)] // tests
mod tests {
    use super::*;
    use crate::store::Earlier;

    fn file(folder: &std::path::Path, part: &str) -> ResultsFile {
        let part: Part = part.parse().unwrap();
        let (study, hash, program) = ("invented".to_owned(), "a".to_owned(), "0".to_owned());
        let head = Head { study, hash, program, designs: 9, chunk: 2, readings: 1, part };
        let file = ResultsFile::begin(&folder.join(part.suffix()), head, Earlier::Refused).unwrap();
        for place in file.missing() {
            let readings = file.head().designs_of(place).map(|design| design as f64).collect();
            file.append(&Chunk { place, width: 1, readings, reasons: Vec::new(), warnings: Vec::new() })
                .unwrap();
        }
        file
    }

    #[test]
    fn parts_make_a_whole() {
        let folder = tempfile::tempdir().unwrap();
        let files = ["2/3", "1/3", "3/3"].map(|part| file(folder.path(), part));
        let results = Results::of(files.into()).unwrap();
        let readings = (0..5).flat_map(|place| results.chunk(place).unwrap().readings);
        assert_eq!(readings.collect::<Vec<_>>(), [0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0]);
    }

    #[test]
    fn parts_that_are_missing_are_named() {
        let folder = tempfile::tempdir().unwrap();
        let missing = Results::of(vec![file(folder.path(), "1/3")]).unwrap_err();
        let StoreError::Missing { parts, designs, of } = missing else { panic!("{missing}") };
        assert_eq!((parts.iter().map(Part::number).collect::<Vec<_>>(), designs, of), (vec![2, 3], 5, 9));
    }
}
