//! Warnings of the designs of a study, counted.

use axlebow_axle::outcome::Warning;

use crate::ask::{Point, Study};

/// A warning of some designs of a study, the same for all of them but for the numbers in it.
#[derive(Debug, Clone, PartialEq)]
pub struct DesignWarning {
    /// The warning as the first of them has it.
    pub warning: Warning,
    /// The first of them.
    pub first: Point,
    /// How many have it.
    pub designs: usize,
}

/// A warning of some designs, the first by its place.
#[derive(Debug, Clone, PartialEq)]
pub struct CountedWarning {
    /// What it says.
    pub warning: Warning,
    /// Place of the first design that has it.
    pub first: usize,
    /// How many have it.
    pub designs: usize,
}

/// Counts warnings of designs that come in their order.
#[derive(Debug, Clone, Default)]
pub(crate) struct WarningCounts(Vec<CountedWarning>);

impl WarningCounts {
    /// Adds the warnings of the design at a place; one that it has twice but for the numbers counts once.
    pub fn add_design(&mut self, place: usize, warnings: &[Warning]) {
        for (i, warning) in warnings.iter().enumerate() {
            if !warnings[..i].iter().any(|earlier| are_alike(earlier, warning)) {
                self.add(CountedWarning { warning: warning.clone(), first: place, designs: 1 });
            }
        }
    }

    /// Adds counted warnings of later designs.
    pub fn add(&mut self, counted: CountedWarning) {
        match self.0.iter_mut().find(|own| are_alike(&own.warning, &counted.warning)) {
            Some(own) => own.designs += counted.designs,
            None => self.0.push(counted),
        }
    }

    /// The warnings in the order of the first designs that have them.
    pub fn into_counted(self) -> Vec<CountedWarning> {
        self.0
    }

    /// The warnings of a study's designs, those of most designs first.
    pub fn of_study(self, study: &Study) -> Vec<DesignWarning> {
        self.with_points(|place| study.point(place))
    }

    /// The warnings, those of most designs first, with the design at each place.
    pub fn with_points(self, point: impl Fn(usize) -> Point) -> Vec<DesignWarning> {
        let each = self.0.into_iter().map(|CountedWarning { warning, first, designs }| DesignWarning {
            warning,
            first: point(first),
            designs,
        });
        let mut all: Vec<DesignWarning> = each.collect();
        all.sort_by_key(|own| std::cmp::Reverse(own.designs));
        all
    }
}

fn are_alike(one: &Warning, other: &Warning) -> bool {
    one.text == other.text || without_numbers(&one.text) == without_numbers(&other.text)
}

/// A text without its numbers, so that it is one for all designs of which the same is said.
pub(crate) fn without_numbers(text: &str) -> String {
    let mut kind = String::with_capacity(text.len());
    for letter in text.chars() {
        let is_number = letter.is_ascii_digit() || letter == '.' || letter == '-';
        match (is_number, kind.ends_with('#')) {
            (false, _) => kind.push(letter),
            (true, false) => kind.push('#'),
            (true, true) => (),
        }
    }
    kind
}

#[cfg(test)]
mod tests {
    use super::*;

    fn warning(text: &str) -> Warning {
        Warning { text: text.to_owned(), advice: "measure".to_owned() }
    }

    #[test]
    fn texts_are_alike_but_for_their_numbers() {
        let (one, other) = ("wall 9.25 mm is over 8 mm", "wall 10 mm is over 8.5 mm");
        assert_eq!(without_numbers(one), without_numbers(other));
        assert_ne!(without_numbers(one), without_numbers("wall 9.25 mm is under 8 mm"));
    }

    #[test]
    fn a_warning_is_counted_once_a_design_and_the_first_is_kept() {
        let mut counts = WarningCounts::default();
        counts.add_design(3, &[warning("bump of 9 mm"), warning("bump of 8 mm"), warning("step")]);
        counts.add_design(4, &[]);
        counts.add_design(5, &[warning("bump of 7 mm")]);
        counts.add(CountedWarning { warning: warning("bump of 6 mm"), first: 8, designs: 4 });
        let all = counts.with_points(|place| Point { variant: place, values: Vec::new() });
        let told = all.iter().map(|own| (own.warning.text.as_str(), own.first.variant, own.designs));
        assert_eq!(told.collect::<Vec<_>>(), [("bump of 9 mm", 3, 6), ("step", 3, 1)]);
    }
}
