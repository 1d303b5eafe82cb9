//! The columns of a study's results, and the designs' numbers in them.

use axlebow_axle::outcome::Warning;
use axlebow_results::key;
use axlebow_units::Kind;

use super::design::Design;
use super::quantity::{QUANTITIES, Quantity};
use crate::ask::{Derived, Named, Study};

/// A result that the designs of a study have: a column of their readings.
#[derive(Debug, Clone, PartialEq)]
pub struct Measure {
    /// Name in study files, such as `camber-peak-to-peak`.
    pub name: String,
    /// What tables and pictures call it.
    pub words: String,
    /// What it measures.
    pub kind: Kind,
    /// What it means, one sentence.
    pub meaning: String,
    /// Place of its ride in [`Study::rides`], if it is of one and not of the static load case.
    pub ride: Option<usize>,
    /// Place of its number among the readings of a design.
    pub place: usize,
    /// Places of the readings that its expression uses; none of a result that has no expression.
    pub uses: Option<Vec<usize>>,
}

impl Measure {
    /// Its name and SI unit as a key of JSON and CSV, such as `camber_peak_to_peak_rad`.
    pub fn key(&self) -> String {
        key(&self.name, self.kind.si())
    }
}

/// The results that a study asks of every design: those of the static load case first, then ride by ride, then derived
/// ones.
#[derive(Debug, Clone)]
pub(crate) struct Columns {
    /// Each quantity with the place of its ride.
    quantities: Vec<(&'static Quantity, usize)>,
    derived: Vec<(Derived, Vec<Source>)>,
}

/// Where a number in an expression comes from.
#[derive(Debug, Clone, Copy)]
enum Source {
    /// A varied key, by its place.
    Varied(usize),
    /// A reading before, by its place.
    Reading(usize),
}

impl Columns {
    pub fn of(study: &Study) -> Columns {
        let has = || QUANTITIES.iter().filter(|quantity| study.has(quantity));
        let standing = has().filter(|quantity| !quantity.is_of_ride()).map(|quantity| (quantity, 0));
        let rides = 0..study.rides.len();
        let driven = rides.flat_map(|ride| has().filter(|own| own.is_of_ride()).map(move |own| (own, ride)));
        let quantities: Vec<(&'static Quantity, usize)> = standing.chain(driven).collect();
        let sources = |derived: &Derived| {
            derived.uses.iter().filter_map(|(_, named)| source(*named, &quantities)).collect()
        };
        let derived = study.derived.iter().map(|derived| (derived.clone(), sources(derived))).collect();
        Columns { quantities, derived }
    }

    pub fn measures(&self) -> Vec<Measure> {
        let each = self.quantities.iter().enumerate();
        let measure = |(place, (quantity, ride)): (usize, &(&'static Quantity, usize))| Measure {
            name: quantity.name.clone(),
            words: quantity.words.clone(),
            kind: quantity.kind,
            meaning: quantity.meaning.clone(),
            ride: quantity.is_of_ride().then_some(*ride),
            place,
            uses: None,
        };
        let derived = self.derived.iter().enumerate().map(|(place, (own, sources))| Measure {
            name: own.name.clone(),
            words: own.name.replace('-', " "),
            kind: own.kind,
            meaning: own.expression.text().to_owned(),
            ride: None,
            place: self.quantities.len() + place,
            uses: Some(sources.iter().filter_map(Source::reading).collect()),
        });
        each.map(measure).chain(derived).collect()
    }

    /// A warning for each derived result that is not a number although all that it uses is, such as one over zero.
    pub fn not_numbers(&self, readings: &[f64]) -> Vec<Warning> {
        let has = |place: usize| readings[place].is_finite();
        let each = self.derived.iter().enumerate();
        let missing = each.filter(|(place, (_, sources))| {
            !has(self.quantities.len() + place) && sources.iter().filter_map(Source::reading).all(has)
        });
        missing.map(|(_, (derived, _))| not_a_number(derived)).collect()
    }

    /// The numbers of a design, in the order of [`measures`](Self::measures), SI; NaN where there is none.
    ///
    /// Arguments: `values` of the varied keys.
    pub fn readings(&self, design: &Design, values: &[f64]) -> Box<[f64]> {
        let own = self.quantities.iter().map(|(quantity, ride)| quantity.of(design, *ride));
        let mut readings: Vec<f64> = Vec::with_capacity(self.quantities.len() + self.derived.len());
        readings.extend(own);
        for (derived, sources) in &self.derived {
            let number = |source: &Source| match *source {
                Source::Varied(place) => values[place],
                Source::Reading(place) => readings[place],
            };
            let value = derived.value(sources.iter().map(number));
            readings.push(value);
        }
        readings.into()
    }
}

impl Source {
    /// Place of a reading, if it is one.
    fn reading(&self) -> Option<usize> {
        match *self {
            Source::Varied(_) => None,
            Source::Reading(place) => Some(place),
        }
    }
}

/// Where what a name stands for is found; every study has what its expressions name.
fn source(named: Named, quantities: &[(&'static Quantity, usize)]) -> Option<Source> {
    match named {
        Named::Varied(place) => Some(Source::Varied(place)),
        Named::Derived(place) => Some(Source::Reading(quantities.len() + place)),
        Named::Result(name, ride) => {
            let own = |(quantity, of): &(&Quantity, usize)| quantity.name == name && *of == ride.unwrap_or(0);
            quantities.iter().position(own).map(Source::Reading)
        }
    }
}

fn not_a_number(derived: &Derived) -> Warning {
    Warning {
        text: format!("the result {} is not a number: {}", derived.name, derived.expression.text()),
        advice: "look at what it divides by, and at what it takes a root or a logarithm of".to_owned(),
    }
}
