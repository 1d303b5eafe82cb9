//! Sums up the results of very many designs while they pass by.

use crate::ask::{Limit, Point, Study};
use crate::findings::{Failure, ReadingRange, Row, StudyOutcome, StudySummary, without_numbers};
use crate::solve::Measure;
use crate::store::Chunk;

/// Best designs that are kept.
const BEST: usize = 10;
/// Reasons that are told apart; the rest are counted together.
const REASONS: usize = 10;

/// Sums up chunks in their order.
pub(crate) struct Summing<'s> {
    study: &'s Study,
    lead: Option<(Measure, bool)>,
    sums: Vec<Sum>,
    /// Each limit with the places of the readings that it is of, and how many designs meet it.
    limits: Vec<(Limit, Vec<usize>, usize)>,
    meeting: usize,
    failures: Vec<(String, Failure)>,
    best: Vec<(f64, Row)>,
    designs: usize,
}

/// A result so far: values are by their designs.
struct Sum {
    measure: Measure,
    designs: usize,
    sum: f64,
    least: (f64, usize),
    most: (f64, usize),
}

impl<'s> Summing<'s> {
    /// Nothing yet, of the results that are shown and of what designs are ranked by.
    pub fn new(study: &'s Study, outcome: &StudyOutcome) -> Self {
        let (shown, ranked_by) = (&outcome.shown, outcome.ranked_by.as_ref());
        let places = |limit: &Limit| {
            let own = outcome.measures.iter().filter(|measure| measure.name == limit.of);
            own.map(|measure| measure.place).collect()
        };
        let limits = study.limits.iter().map(|limit| (limit.clone(), places(limit), 0)).collect();
        let lead = ranked_by.map(|lead| (lead.clone(), true));
        let lead = lead.or_else(|| shown.first().map(|lead| (lead.clone(), false)));
        let more = ranked_by.filter(|lead| !shown.contains(lead));
        let sums = more.into_iter().chain(shown).map(Sum::new).collect();
        Summing { study, lead, sums, limits, meeting: 0, failures: Vec::new(), best: Vec::new(), designs: 0 }
    }

    /// Adds the next chunk.
    pub fn add(&mut self, chunk: &Chunk) {
        for (readings, reason) in chunk.rows() {
            match reason {
                Some(reason) => self.add_failure(reason),
                None => self.add_readings(readings),
            }
            self.designs += 1;
        }
    }

    fn add_readings(&mut self, readings: &[f64]) {
        let mut meets = true;
        for (limit, places, met) in &mut self.limits {
            let own = places.iter().all(|place| limit.admits(readings[*place]));
            *met += usize::from(own);
            meets &= own;
        }
        self.meeting += usize::from(meets);
        if meets {
            self.add_to_best(readings);
        }
        for sum in &mut self.sums {
            let value = readings.get(sum.measure.place).copied();
            if let Some(value) = value.filter(|value| value.is_finite()) {
                sum.add(value, self.designs);
            }
        }
    }

    /// Keeps a design that meets every limit, if it is among the best.
    fn add_to_best(&mut self, readings: &[f64]) {
        let Some((lead, is_most)) = &self.lead else { return };
        let Some(value) = readings.get(lead.place).copied().filter(|value| value.is_finite()) else { return };
        let score = if *is_most { value } else { -value.abs() };
        let place = self.best.partition_point(|(own, _)| *own >= score);
        if place < BEST {
            let Point { variant, values } = self.study.point(self.designs);
            self.best.insert(place, (score, Row { variant, values, result: Ok(readings.into()) }));
            self.best.truncate(BEST);
        }
    }

    fn add_failure(&mut self, reason: &str) {
        let kind = without_numbers(reason);
        let at = self.failures.iter().position(|(own, _)| *own == kind || own.is_empty());
        match at {
            Some(at) => self.failures[at].1.designs += 1,
            None => {
                let is_rest = self.failures.len() == REASONS;
                let kept = |text: &str| if is_rest { String::new() } else { text.to_owned() };
                let first = self.study.point(self.designs);
                let failure = Failure { reason: kept(reason), first, designs: 1 };
                self.failures.push((kept(&kind), failure));
            }
        }
    }

    /// The summary of what was added.
    pub fn summary(mut self) -> StudySummary {
        // The rest stay last.
        self.failures.sort_by_key(|(kind, own)| (kind.is_empty(), std::cmp::Reverse(own.designs)));
        let study = self.study;
        StudySummary {
            designs: self.designs,
            failures: self.failures.into_iter().map(|(_, failure)| failure).collect(),
            limits: self.limits.into_iter().map(|(limit, _, met)| (limit, met)).collect(),
            meeting: self.meeting,
            ranges: self.sums.into_iter().filter_map(|sum| sum.range(study)).collect(),
            best: self.best.into_iter().map(|(_, row)| row).collect(),
            best_is_most: self.lead.as_ref().is_some_and(|(_, is_most)| *is_most),
            best_by: self.lead.map(|(lead, _)| lead),
        }
    }
}

impl Sum {
    fn new(measure: &Measure) -> Self {
        let (least, most) = ((f64::INFINITY, 0), (0.0, 0));
        Sum { measure: measure.clone(), designs: 0, sum: 0.0, least, most }
    }

    fn add(&mut self, value: f64, design: usize) {
        if self.designs == 0 || value.abs() > self.most.0.abs() {
            self.most = (value, design);
        }
        if value.abs() < self.least.0.abs() {
            self.least = (value, design);
        }
        self.designs += 1;
        self.sum += value;
    }

    fn range(self, study: &Study) -> Option<ReadingRange> {
        let placed = |(value, design): (f64, usize)| (value, study.point(design));
        (self.designs > 0).then(|| ReadingRange {
            designs: self.designs,
            mean: self.sum / self.designs as f64,
            least: placed(self.least),
            most: placed(self.most),
            measure: self.measure,
        })
    }
}
