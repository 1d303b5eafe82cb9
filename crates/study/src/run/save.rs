//! Solves the designs of a study and saves them as they come; reads them again.

use std::sync::atomic::{AtomicUsize, Ordering};

use rayon::prelude::*;

use super::summing::Summing;
use crate::ask::Study;
use crate::findings::{CountedWarning, MOST_LISTED, Row, StudyOutcome, WarningCounts};
use crate::store::{Chunk, Results, ResultsFile, StoreError};

impl Study {
    /// Solves what a file of results lacks of its part and appends it chunk by chunk, on all cores.
    ///
    /// Arguments: `progress`, told after each chunk how many designs of the part are there, and of how many.
    ///
    /// # Errors
    /// What the disk refuses; what was appended before stays.
    pub fn save(
        &self,
        into: &ResultsFile,
        progress: &(dyn Fn(usize, usize) + Sync),
    ) -> Result<(), StoreError> {
        let (head, missing, asked) = (into.head(), into.missing(), self.asked());
        let designs = |chunks: &mut dyn Iterator<Item = usize>| -> usize {
            chunks.map(|chunk| head.designs_of(chunk).len()).sum()
        };
        let of = designs(&mut head.own_chunks());
        let done = AtomicUsize::new(of - designs(&mut missing.iter().copied()));
        missing.into_par_iter().with_max_len(1).try_for_each(|place| {
            let designs = self.solved(head.designs_of(place), &asked);
            into.append(&Chunk::of(place, designs, head.readings))?;
            let own = head.designs_of(place).len();
            progress(done.fetch_add(own, Ordering::Relaxed) + own, of);
            Ok(())
        })
    }

    /// What the study says, from results that are saved: all designs, or of more than [`MOST_LISTED`] a summary and a
    /// selection.
    ///
    /// # Errors
    /// What the disk refuses.
    pub fn outcome_of(&self, results: &Results) -> Result<StudyOutcome, StoreError> {
        let asked = self.asked();
        if self.count() <= MOST_LISTED {
            let (mut rows, mut warnings) = (Vec::with_capacity(self.count()), WarningCounts::default());
            results.in_order(
                |chunk| (self.rows_of(&chunk), self.warnings_of(chunk)),
                |(own, counted)| {
                    rows.extend(own);
                    counted.into_iter().for_each(|own| warnings.add(own));
                    Ok::<_, StoreError>(())
                },
            )?;
            let outcome = self.outcome(rows, asked.columns.measures());
            let outcome = StudyOutcome { warnings: warnings.of_study(self), ..outcome };
            return Ok(self.with_equal_mass(outcome, &asked));
        }
        let (selection, designs) = self.selection();
        let mut outcome = selection.outcome_without_rows(asked.columns.measures());
        outcome.shown = self.shown(&outcome.measures);
        let mut summing = Summing::new(self, &outcome);
        let mut gathered = self.gathering(&outcome.measures, &outcome.shown);
        let (mut rows, mut warnings) = (Vec::with_capacity(designs.len()), WarningCounts::default());
        let picked = |chunk: Chunk| (self.picked(&chunk, &designs), chunk);
        results.in_order(picked, |(own, chunk)| {
            summing.add(&chunk);
            if let Some(gathered) = &mut gathered {
                self.rows_of(&chunk).iter().for_each(|row| gathered.add(row));
            }
            rows.extend(own);
            self.warnings_of(chunk).into_iter().for_each(|own| warnings.add(own));
            Ok::<_, StoreError>(())
        })?;
        outcome.uncertainty = gathered.and_then(|gathered| self.uncertainty_of(&gathered));
        outcome.rows = rows;
        outcome.warnings = warnings.of_study(self);
        outcome.summary = Some(summing.summary());
        Ok(selection.with_equal_mass(outcome, &asked))
    }

    /// Rows of a chunk that are among some designs, which go up.
    fn picked(&self, chunk: &Chunk, designs: &[usize]) -> Vec<Row> {
        let first = chunk.place * self.chunk_size();
        let own = designs.partition_point(|design| *design < first)
            ..designs.partition_point(|design| *design < first + chunk.designs());
        let rows = if own.is_empty() { Vec::new() } else { self.rows_of(chunk) };
        designs[own].iter().map(|design| rows[design - first].clone()).collect()
    }

    /// The warnings of a chunk, by places of designs in the study.
    fn warnings_of(&self, chunk: Chunk) -> Vec<CountedWarning> {
        let first = chunk.place * self.chunk_size();
        let in_study = |own: CountedWarning| CountedWarning { first: first + own.first, ..own };
        chunk.warnings.into_iter().map(in_study).collect()
    }

    /// The rows of a chunk.
    pub fn rows_of(&self, chunk: &Chunk) -> Vec<Row> {
        let first = chunk.place * self.chunk_size();
        let rows = chunk.rows().enumerate();
        rows.map(|(i, (readings, reason))| {
            let point = self.point(first + i);
            let result = reason.map_or_else(|| Ok(readings.into()), |reason| Err(reason.to_owned()));
            Row { variant: point.variant, values: point.values, result }
        })
        .collect()
    }
}
