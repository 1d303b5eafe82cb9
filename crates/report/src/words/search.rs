//! What a search says, in words.

use axlebow_study::{DesignWarning, FoundLimit, Measure, Proof, Row, SearchOutcome, Varied, name};

use crate::number::{Numbers, Shown};
use crate::words::warning::sentence_of_designs;

/// The words of a search in one unit system.
#[derive(Debug, Clone, Copy)]
pub(crate) struct SearchWords<'a> {
    pub outcome: &'a SearchOutcome,
    pub numbers: Numbers,
}

impl SearchWords<'_> {
    /// The value of a varied key or the name of a choice.
    pub fn varied(&self, varied: &Varied, value: f64) -> String {
        match varied.choices.get(value as usize).filter(|_| !varied.choices.is_empty()) {
            Some(choice) => choice.name.clone(),
            None => self.numbers.full(value, Shown::Free(varied.kind)),
        }
    }

    /// As [`varied`](Self::varied), with a word on a value that would go further.
    pub fn found(&self, varied: &Varied, value: f64) -> String {
        let text = self.varied(varied, value);
        let ends = varied.distribution.as_ref().map(|_| [varied.at_share(0.0), varied.at_share(1.0)]);
        let at_end = |[low, high]: [f64; 2]| (value - low).min(high - value) < 1e-6 * (high - low);
        if ends.is_some_and(at_end) { format!("{text}, the end of its range") } else { text }
    }

    /// A result with its unit; a dash where there is none.
    pub fn result(&self, row: &Row, measure: &Measure) -> String {
        row.value(measure).map_or("-".to_owned(), |value| self.numbers.full(value, Shown::Free(measure.kind)))
    }

    /// Warnings of the designs that are given, a sentence each.
    pub fn warnings(&self) -> Vec<String> {
        let SearchOutcome { best, nearest, front, warnings, .. } = self.outcome;
        let given = best.iter().chain(nearest).chain(front);
        let mut points: Vec<_> = given.map(|row| (row.variant, row.values.as_slice())).collect();
        points.sort_by(|one, other| one.partial_cmp(other).unwrap_or(std::cmp::Ordering::Equal));
        points.dedup();
        let sentence = |own: &DesignWarning| {
            let settings = self.outcome.varied.iter().zip(&own.first.values);
            let settings =
                settings.map(|(varied, value)| format!("{} {}", varied.path, self.varied(varied, *value)));
            let settings = settings.collect::<Vec<_>>().join(", ");
            let first = format!("{} with {settings}", self.outcome.variants[own.first.variant]);
            sentence_of_designs(own, points.len(), &first)
        };
        warnings.iter().map(sentence).collect()
    }

    /// What was found, in a sentence.
    pub fn finding(&self) -> String {
        let goal = &self.outcome.goal;
        let which = if goal.least { "Least" } else { "Most" };
        match &self.outcome.best {
            Some(best) => {
                let value = self.result(best, &goal.measure);
                format!("{which} {} within the limits: {value}.", goal.measure.words)
            }
            None => self.nothing(),
        }
    }

    fn nothing(&self) -> String {
        let limits = &self.outcome.limits;
        let Some(worst) = limits.iter().max_by(|a, b| a.missed.total_cmp(&b.missed)) else {
            let why = self.outcome.failed.1.clone().unwrap_or_default();
            return format!("No design could be solved: {why}.");
        };
        format!(
            "No design meets every limit. The nearest one misses {} by {}: it has {}.",
            worst.limit.words(self.numbers.system),
            crate::number::fixed(100.0 * worst.missed, 1) + " %",
            self.numbers.full(worst.value, Shown::Free(worst.limit.kind)),
        )
    }

    /// What stands behind the best being best.
    pub fn proof(&self) -> String {
        let solved = self.outcome.solved;
        let mut text = match self.outcome.proof {
            Proof::Every { combinations } => {
                format!("All {combinations} combinations were solved, so that none is better.")
            }
            Proof::Starts { combinations: 1, starts, agreed } => format!(
                "Searched from {starts} places, of which {agreed} came to this goal ({solved} designs solved); what is best \
                 near each place, not proven for the whole range."
            ),
            Proof::Starts { combinations, starts, agreed } => format!(
                "All {combinations} combinations of listed values were searched from {starts} places each; of those of the \
                 best, {agreed} came to its goal ({solved} designs solved). What is best near each place, not proven for the \
                 whole range."
            ),
        };
        if let (failed @ 1.., Some(why)) = &self.outcome.failed {
            text += &format!(" {failed} could not be solved, the first because {why}.");
        }
        text
    }

    /// How much the goal changes when it becomes another one; a dash where there is none.
    pub fn gain(&self, other: Option<f64>) -> String {
        let measure = &self.outcome.goal.measure;
        let own = self.outcome.best.as_ref().and_then(|best| best.value(measure));
        let change = other.zip(own).map(|(other, own)| other - own);
        let kept = |change: &f64| own.is_some_and(|own| change.abs() > 1e-6 * own.abs());
        change
            .filter(kept)
            .map_or("-".to_owned(), |change| self.numbers.full(change, Shown::Free(measure.kind)))
    }

    /// Whether a limit stands in the way.
    pub fn status(&self, found: &FoundLimit) -> &'static str {
        match (found.missed > 1e-6, found.active) {
            (true, _) => "missed",
            (false, true) => "active",
            (false, false) => "inactive",
        }
    }

    /// Names of the results that a search is about: the goal, what is traded, what is limited, then the usual ones.
    pub fn results(&self) -> Vec<&Measure> {
        let usual = [name::AXLE_MASS, name::CAMBER_CHANGE, name::PEAK_STRESS, name::BOW];
        let limited = self.outcome.limits.iter().map(|found| found.limit.of.as_str());
        let named = limited
            .chain(usual)
            .flat_map(|name| self.outcome.measures.iter().filter(move |own| own.name == name));
        let mut all: Vec<&Measure> = Vec::new();
        for own in std::iter::once(&self.outcome.goal.measure).chain(&self.outcome.against).chain(named) {
            if !all.contains(&own) {
                all.push(own);
            }
        }
        all
    }
}
