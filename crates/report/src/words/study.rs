//! What a study is called and what it shows, in words.

use axlebow_study::{
    Cost, DesignWarning, Limit, Measure, Quantity, Row, StudyOutcome, StudySummary, Varied, name,
};
use axlebow_units::{Kind, show};

use crate::number::{Numbers, Shown};
use crate::words::warning::sentence_of_designs;

/// Writes about one study in the units of one system.
#[derive(Debug, Clone, Copy)]
pub(crate) struct StudyWords<'a> {
    pub outcome: &'a StudyOutcome,
    pub numbers: Numbers,
}

impl<'a> StudyWords<'a> {
    /// Name of the line that a row is of: its variant, and the values of all keys but the last.
    pub fn line(&self, row: &Row) -> String {
        let fixed = row.values.len().saturating_sub(1);
        let values = self.outcome.varied.iter().zip(&row.values).take(fixed);
        let values = values
            .map(|(varied, &value)| format!(", {} {}", varied_words(varied), self.value_of(varied, value)));
        let variant = self.outcome.variants[row.variant].replace(char::is_control, "\u{fffd}");
        format!("{variant}{}", values.collect::<String>())
    }

    /// A key with its value, such as "tube wall 8 mm".
    pub fn setting(&self, varied: &Varied, value: f64) -> String {
        match varied.choices.is_empty() {
            true => format!("{} {}", varied_words(varied), self.rounded(value, varied.kind)),
            false => format!("{} {}", varied_words(varied), self.value_of(varied, value)),
        }
    }

    /// A value of a key with its unit, or the name of a choice.
    pub fn value_of(&self, varied: &Varied, value: f64) -> String {
        match varied.choices.get(value as usize) {
            Some(choice) => choice.name.replace(char::is_control, "\u{fffd}"),
            None => show(value, varied.kind, self.numbers.system),
        }
    }

    /// A value to four digits, without zeros at its end.
    pub fn rounded(&self, value: f64, kind: Kind) -> String {
        self.numbers.short(value, kind)
    }

    /// The key that varies fastest with its unit, such as "tube wall, mm".
    pub fn axis(&self) -> String {
        self.heading_of(self.outcome.varied.len().saturating_sub(1))
    }

    /// A key that varies with its unit, by its place among them.
    pub fn heading_of(&self, place: usize) -> String {
        let Some(varied) = self.outcome.varied.get(place) else { return String::new() };
        self.numbers.heading(&varied_words(varied), varied.kind)
    }

    /// Unit in which a key is shown.
    pub fn unit_of(&self, varied: &Varied) -> &'static str {
        self.numbers.unit(varied.kind)
    }

    /// A value of a key in the unit in which it is shown.
    pub fn scaled_of(&self, varied: &Varied, value: f64) -> f64 {
        self.numbers.scaled(value, varied.kind)
    }

    /// Value of the key that varies fastest, in its display unit.
    pub fn along(&self, row: &Row) -> f64 {
        let kind = self.outcome.varied.last().map_or(Kind::Ratio, |last| last.kind);
        row.values.last().map_or(f64::NAN, |value| self.numbers.scaled(*value, kind))
    }

    /// A result of the static load case by its name, SI; NaN where a design has none.
    pub fn standing(&self, row: &Row, name: &str) -> f64 {
        self.outcome.standing(name).and_then(|measure| row.value(measure)).unwrap_or(f64::NAN)
    }

    /// The designs that have a result.
    pub fn solved(&self) -> impl DoubleEndedIterator<Item = &Row> {
        self.outcome.rows.iter().filter(|row| row.result.is_ok())
    }

    /// Whether both wheels lean alike in every design, but for round-off.
    pub fn sides_alike(&self) -> bool {
        self.solved().all(|row| {
            let side = |name| self.standing(row, name);
            let (left, right) = (side(name::LEFT_CAMBER_CHANGE), side(name::RIGHT_CAMBER_CHANGE));
            (left - right).abs() <= 1e-6 * left.abs().max(right.abs())
        })
    }

    /// What a measure is called, with its ride where there are several.
    pub fn measure(&self, measure: &Measure) -> String {
        let ride = measure.ride.and_then(|ride| self.outcome.rides.get(ride));
        match ride.filter(|_| self.outcome.rides.len() > 1) {
            Some(ride) => format!("{}, {}", measure.words, ride.name),
            None => measure.words.clone(),
        }
    }

    /// A ride with its speed, such as "haversine bump at 60 km/h".
    pub fn ride(&self, place: usize) -> String {
        let Some(ride) = self.outcome.rides.get(place) else { return String::new() };
        match ride.speed {
            Some(speed) => format!("{} at {}", ride.road, self.rounded(speed, Kind::Speed)),
            None => ride.road.clone(),
        }
    }

    /// The results that the study is about: what it ranks by; of tires, cups, strength, rating and life the first that it
    /// shows of each, as these are solved only for who asks; then camber; without any of them what is shown first.
    pub fn leads(&self) -> Vec<&'a Measure> {
        let outcome = self.outcome;
        if let Some(lead) = &outcome.ranked_by {
            return vec![lead];
        }
        let mut leads: Vec<&Measure> = Vec::new();
        for own in outcome.shown.iter().filter(|own| subject(own).is_some()) {
            if leads.iter().all(|lead| subject(lead) != subject(own)) {
                leads.push(own);
            }
        }
        let camber = |own: &&Measure| own.ride.is_none() && own.name.ends_with(name::CAMBER_CHANGE);
        leads.extend(outcome.shown.iter().find(camber));
        if leads.is_empty() { outcome.shown.first().into_iter().collect() } else { leads }
    }

    /// The measure that is mapped over two keys, if the study has a map: a sweep of two keys with a ride or a rank.
    pub fn mapped(&self) -> Option<&Measure> {
        let numbers = self.outcome.varied.iter().all(|varied| varied.choices.is_empty());
        let two = self.outcome.is_grid && self.outcome.varied.len() == 2 && numbers;
        self.outcome
            .shown
            .first()
            .filter(|_| two && (!self.outcome.rides.is_empty() || self.outcome.ranked_by.is_some()))
    }

    /// A value of a measure in a sentence: which way a camber leans the tops is a word, such as "0.224 deg in".
    pub fn told(&self, measure: &Measure, value: f64) -> String {
        match leans(measure) {
            true => self.lean(value),
            false => self.numbers.full(value, shown(measure)),
        }
    }

    /// A camber with the way in which it leans the tops, such as "0.224 deg in".
    pub fn lean(&self, camber: f64) -> String {
        let size = self.numbers.full(camber.abs(), Kind::Angle);
        match camber {
            0.0 => size,
            inward if inward < 0.0 => format!("{size} in"),
            _ => format!("{size} out"),
        }
    }

    /// A mass, such as "65 kg".
    pub fn mass(&self, mass: f64) -> String {
        self.numbers.full(mass, Kind::Mass).replace(".0 ", " ")
    }

    /// How many of very many designs meet the limits.
    pub fn met(&self, summary: &StudySummary) -> String {
        let each: Vec<_> = summary.limits.iter().map(|(limit, met)| (limit, *met)).collect();
        self.limits_met((summary.meeting, summary.designs), &each)
    }

    /// How many designs meet every limit, and each of them.
    pub fn limits_met(&self, (meeting, of): (usize, usize), each: &[(&Limit, usize)]) -> String {
        let each = each.iter().map(|(limit, met)| format!("{} ({met})", limit.words(self.numbers.system)));
        let each = each.collect::<Vec<_>>().join(", ");
        format!("{meeting} of {of} designs meet every limit: {each}.")
    }

    /// How many designs a picture shows, where it does not show all.
    pub fn selected(&self) -> Option<String> {
        let of = self.outcome.summary.as_ref()?.designs;
        Some(format!("{} of {of} designs, evenly spaced.", self.outcome.rows.len()))
    }

    /// A design in words: its variant and the value of every key.
    pub fn design(&self, variant: usize, values: &[f64]) -> String {
        let settings = self.outcome.varied.iter().zip(values);
        let settings: Vec<_> = settings.map(|(varied, &value)| self.setting(varied, value)).collect();
        let with = if settings.is_empty() { "" } else { " with " };
        format!("{}{with}{}", self.outcome.variants[variant], settings.join(", "))
    }

    /// Warnings of the designs, a sentence each.
    pub fn warnings(&self) -> Vec<String> {
        let sentence = |own: &DesignWarning| {
            let first = self.design(own.first.variant, &own.first.values);
            sentence_of_designs(own, self.outcome.designs(), &first)
        };
        self.outcome.warnings.iter().map(sentence).collect()
    }
}

/// What is shown of the static load case and of each ride, under a title.
pub(crate) fn groups<'a>(words: &StudyWords<'a>) -> Vec<(String, Vec<&'a Measure>)> {
    let shown = &words.outcome.shown;
    let own = |wanted: Option<usize>| -> Vec<&Measure> {
        shown.iter().filter(|measure| measure.ride == wanted).collect()
    };
    let standing = (format!("Standing: case {}", words.outcome.case), own(None));
    let rides = (0..words.outcome.rides.len()).map(|i| (format!("Ride: {}", words.ride(i)), own(Some(i))));
    [standing].into_iter().chain(rides).filter(|(_, measures)| !measures.is_empty()).collect()
}

/// The magnitude of a value as a share of the baseline's; none where either is missing or the baseline's is zero.
pub(crate) fn share(value: Option<f64>, baseline: Option<f64>) -> Option<f64> {
    let (value, baseline) = (value?, baseline.filter(|baseline| *baseline != 0.0)?);
    Some((value / baseline).abs())
}

/// Whether the sign of a measure says which way the tops lean.
fn leans(measure: &Measure) -> bool {
    const SIGNED: [&str; 5] = [
        name::CAMBER_CHANGE,
        name::LEFT_CAMBER_CHANGE,
        name::RIGHT_CAMBER_CHANGE,
        name::CAMBER_PEAK,
        name::COMPOSITE_CAMBER_CHANGE,
    ];
    SIGNED.contains(&measure.name.as_str())
}

/// What a result is about that is solved only where a study asks for it; none of other results.
fn subject(measure: &Measure) -> Option<Cost> {
    match Quantity::named(&measure.name).ok()?.cost {
        Cost::Cups | Cost::CupDamping => Some(Cost::Cups),
        own @ (Cost::Tires | Cost::Strength | Cost::Rating | Cost::Life) => Some(own),
        Cost::Free | Cost::Welds | Cost::Composite | Cost::Ride => None,
    }
}

/// How a measure is written.
pub(crate) fn shown(measure: &Measure) -> Shown {
    match measure.kind {
        Kind::Mass | Kind::Angle | Kind::AnglePerMass | Kind::Stress => measure.kind.into(),
        Kind::Force | Kind::Time | Kind::Frequency | Kind::Damping => measure.kind.into(),
        Kind::Stiffness => Shown::ForcePerLength,
        Kind::Length if measure.name == name::DISTANCE_FOR_E_FOLD => Shown::RoadDistance,
        Kind::Length if measure.ride.is_some() => Shown::Place,
        Kind::Length => Shown::Deflection,
        Kind::Ratio if [name::YEARS_TO_CRACK, name::BEARING_YEARS].contains(&measure.name.as_str()) => {
            Shown::Years
        }
        Kind::Ratio if Quantity::named(&measure.name).is_err() => Shown::Free(Kind::Ratio),
        _ => Shown::Usual(Kind::Ratio),
    }
}

/// What a key that is varied is called: as the file calls it, else its path in words.
pub(crate) fn varied_words(varied: &Varied) -> String {
    match varied.is_named {
        true => varied.name.replace('_', " ").replace(char::is_control, "\u{fffd}"),
        false => key_words(&varied.path),
    }
}

/// A path in words: `tube.wall` becomes "tube wall", `seat[0].at` "first seat at" and `stiffener[top angle].length`
/// "top angle length".
pub(crate) fn key_words(path: &str) -> String {
    let parted = path.split_once('[').and_then(|(key, rest)| Some((key, rest.split_once(']')?)));
    let words = match parted {
        Some((key, (place, rest))) => match place.parse().ok().map(|place: usize| ORDINALS.get(place)) {
            Some(Some(ordinal)) => format!("{ordinal} {key}{rest}"),
            Some(None) => format!("{key} {place}{rest}"),
            None => format!("{place}{rest}"),
        },
        None => path.to_owned(),
    };
    words.replace(['.', '_'], " ")
}

const ORDINALS: [&str; 6] = ["first", "second", "third", "fourth", "fifth", "sixth"];
