//! What a study is called and what it shows, in words.

use axlebow_study::{DesignWarning, Limit, Measure, Row, StudyKind, StudyOutcome, StudySummary, Varied};
use axlebow_units::{Kind, display_unit, show};

use crate::ModelCard;
use crate::number::{Numbers, Shown};
use crate::page::Column;
use crate::warning_words::sentence_of_designs;

/// Writes about one study in the units of one system.
#[derive(Debug, Clone, Copy)]
pub(crate) struct StudyWords<'a> {
    pub outcome: &'a StudyOutcome,
    pub numbers: Numbers,
}

/// What a study shows, a sentence each, made from its numbers: the designs that lean least and most, what the
/// best and the worst line do at an equal axle mass, and how many designs have no result. Where there is a summary, it says
/// the first and the last.
///
/// Camber change is that of the left wheel; the less it is, of either sign, the better.
pub fn study_findings(outcome: &StudyOutcome, card: &ModelCard) -> Vec<String> {
    let words = StudyWords { outcome, numbers: Numbers { system: card.system } };
    let range = match (outcome.kind, outcome.shown.as_slice()) {
        (StudyKind::SideBySide { .. } | StudyKind::Uncertainty | StudyKind::Search, _) => None,
        (_, []) => words.range(),
        (_, [lead, ..]) => words.range_of(lead),
    };
    let seats = crate::seat_words::seat_findings(&words);
    let others = [range, words.equal_mass()].into_iter().flatten();
    let told = crate::uncertainty_words::uncertainty_findings(&words);
    if outcome.summary.is_some() {
        return told.into_iter().chain(words.equal_mass()).collect();
    }
    told.into_iter().chain(others).chain(seats).chain(words.limits()).chain(words.failures()).collect()
}

impl StudyWords<'_> {
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
    fn setting(&self, varied: &Varied, value: f64) -> String {
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
    fn rounded(&self, value: f64, kind: Kind) -> String {
        self.numbers.short(value, kind)
    }

    /// The key that varies fastest with its unit, such as "tube wall, mm".
    pub fn axis(&self) -> String {
        self.heading_of(self.outcome.varied.len().saturating_sub(1))
    }

    /// The column of the key that varies fastest.
    pub fn axis_column(&self) -> Column {
        let Some(varied) = self.outcome.varied.last() else { return Column::plain("") };
        Column::number(varied_words(varied), self.unit_of(varied))
    }

    /// A key that varies with its unit, by its place among them.
    pub fn heading_of(&self, place: usize) -> String {
        let Some(varied) = self.outcome.varied.get(place) else { return String::new() };
        match display_unit(varied.kind, self.numbers.system).symbol {
            "" => varied_words(varied),
            unit => format!("{}, {unit}", varied_words(varied)),
        }
    }

    /// Unit in which a key is shown.
    pub fn unit_of(&self, varied: &Varied) -> &'static str {
        display_unit(varied.kind, self.numbers.system).symbol
    }

    /// A value of a key in the unit in which it is shown.
    pub fn scaled_of(&self, varied: &Varied, value: f64) -> f64 {
        value / display_unit(varied.kind, self.numbers.system).factor
    }

    /// Value of the key that varies fastest, in its display unit.
    pub fn along(&self, row: &Row) -> f64 {
        let kind = self.outcome.varied.last().map_or(Kind::Ratio, |last| last.kind);
        row.values.last().map_or(f64::NAN, |value| value / display_unit(kind, self.numbers.system).factor)
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
            let (left, right) = (side("left-camber-change"), side("right-camber-change"));
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
        let size = self.numbers.full(camber.abs(), Shown::Angle);
        match camber {
            0.0 => size,
            inward if inward < 0.0 => format!("{size} in"),
            _ => format!("{size} out"),
        }
    }

    /// A mass, such as "65 kg".
    pub fn mass(&self, mass: f64) -> String {
        self.numbers.full(mass, Shown::Mass).replace(".0 ", " ")
    }

    fn range(&self) -> Option<String> {
        let (least, most) = self.extremes(&self.outcome.rows)?;
        let whose = if self.sides_alike() { "" } else { " of the left wheel" };
        Some(format!(
            "The least camber change{whose}, {}; the most, {}.",
            self.place_of(least),
            self.place_of(most)
        ))
    }

    fn place_of(&self, row: &Row) -> String {
        format!(
            "{}, is that of {} and an axle mass of {}",
            self.lean(self.standing(row, "left-camber-change")),
            self.settings(row),
            self.numbers.full(self.standing(row, "axle-mass"), Shown::Mass),
        )
    }

    /// A row in words: its line, and the value of the key that varies fastest.
    fn settings(&self, row: &Row) -> String {
        let last = self.outcome.varied.last().zip(row.values.last());
        let last = last.map(|(varied, &value)| format!(" with {}", self.setting(varied, value)));
        format!("{}{}", self.line(row), last.unwrap_or_default())
    }

    /// Whose result a row has: that of a variant, if there are several, or that at a setting.
    fn whose(&self, row: &Row) -> String {
        if self.outcome.variants.len() > 1 || row.values.is_empty() {
            return format!("that of {}", self.settings(row));
        }
        let settings = self.outcome.varied.iter().zip(&row.values);
        let settings: Vec<String> = settings.map(|(varied, &value)| self.setting(varied, value)).collect();
        format!("at {}", settings.join(" and "))
    }

    /// The designs in which a measure is least and most, of either sign.
    pub fn range_of(&self, measure: &Measure) -> Option<String> {
        let found = || self.outcome.rows.iter().filter_map(|row| Some((row, row.value(measure)?.abs())));
        let least = found().min_by(|one, other| one.1.total_cmp(&other.1))?;
        // The first of equals, as for the least.
        let most = found().rev().max_by(|one, other| one.1.total_cmp(&other.1))?;
        let [least, most] = [least, most].map(|(row, _)| {
            let value = row.value(measure).unwrap_or(f64::NAN);
            format!("{}, is {}", self.told(measure, value), self.whose(row))
        });
        Some(format!("The least {}, {least}; the most, {most}.", self.measure(measure)))
    }

    /// The line that leans least against the one that leans most, at the middle one of the masses that at
    /// least two lines reach.
    fn equal_mass(&self) -> Option<String> {
        let shared: Vec<_> =
            self.outcome.constant_mass.iter().filter(|equal| equal.points.len() > 1).collect();
        let equal = *shared.get(shared.len() / 2)?;
        let (best, worst) = self.extremes(&equal.points)?;
        let angle = |value: f64| self.numbers.full(value, Shown::Angle);
        let stress = |row: &Row| self.numbers.full(self.standing(row, "peak-stress").abs(), Shown::Stress);
        let [less_camber, more_camber] = [best, worst].map(|row| self.standing(row, "left-camber-change"));
        let [less_bending, more_bending] = [best, worst].map(|row| self.standing(row, "left-bending").abs());
        let varied = self.outcome.varied.last()?;
        let value = |row: &Row| row.values.last().map_or(0.0, |value| *value);
        Some(format!(
            "At an equal axle mass of {}, {} leans {} less than {} ({} against {}), {} of it in bending of the \
             beam, with {} instead of {} and a peak stress of {} instead of {}.",
            self.mass(equal.mass),
            self.line(best),
            angle(more_camber.abs() - less_camber.abs()),
            self.line(worst),
            self.lean(less_camber),
            self.lean(more_camber),
            angle(more_bending - less_bending),
            self.setting(varied, value(best)),
            self.rounded(value(worst), varied.kind),
            stress(best),
            stress(worst),
        ))
    }

    /// The designs whose left wheel leans least and most.
    fn extremes<'r>(&self, rows: &'r [Row]) -> Option<(&'r Row, &'r Row)> {
        let lean = |row: &Row| self.standing(row, "left-camber-change").abs();
        let mut found = None;
        for row in rows.iter().filter(|row| row.result.is_ok()) {
            let (least, most) = found.unwrap_or((row, row));
            found = Some((
                if lean(row) < lean(least) { row } else { least },
                if lean(row) > lean(most) { row } else { most },
            ));
        }
        found
    }

    /// How many designs meet the limits.
    fn limits(&self) -> Option<String> {
        let StudyOutcome { limits, rows, measures, .. } = self.outcome;
        if limits.is_empty() || self.outcome.kind == StudyKind::Uncertainty {
            return None;
        }
        let met = |limit: &Limit| rows.iter().filter(|row| limit.is_met(row, measures)).count();
        let each: Vec<_> = limits.iter().map(|limit| (limit, met(limit))).collect();
        let meeting = rows.iter().filter(|row| self.outcome.meets(row)).count();
        Some(self.limits_met((meeting, rows.len()), &each))
    }

    /// How many of very many designs meet the limits.
    pub fn met(&self, summary: &StudySummary) -> String {
        let each: Vec<_> = summary.limits.iter().map(|(limit, met)| (limit, *met)).collect();
        self.limits_met((summary.meeting, summary.designs), &each)
    }

    fn limits_met(&self, (meeting, of): (usize, usize), each: &[(&Limit, usize)]) -> String {
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

    fn failures(&self) -> Option<String> {
        let failed = || self.outcome.rows.iter().filter(|row| row.result.is_err());
        let first = failed().next()?;
        Some(format!(
            "{} of {} designs have no result; the first is {}: {}.",
            failed().count(),
            self.outcome.rows.len(),
            self.design(first.variant, &first.values),
            first.result.as_ref().err().map_or("", |reason| reason.as_str()),
        ))
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
        "camber-change",
        "left-camber-change",
        "right-camber-change",
        "camber-peak",
        "composite-camber-change",
    ];
    SIGNED.contains(&measure.name.as_str())
}

/// How a measure is written.
pub(crate) fn shown(measure: &Measure) -> Shown {
    match measure.kind {
        Kind::Mass => Shown::Mass,
        Kind::Angle => Shown::Angle,
        Kind::AnglePerMass => Shown::AnglePerMass,
        Kind::Stress => Shown::Stress,
        Kind::Force => Shown::Force,
        Kind::Time => Shown::Time,
        Kind::Frequency => Shown::Frequency,
        Kind::Stiffness => Shown::ForcePerLength,
        Kind::Length if measure.ride.is_some() => Shown::Place,
        Kind::Length => Shown::Deflection,
        Kind::Ratio if axlebow_study::Quantity::named(&measure.name).is_err() => Shown::Free,
        _ => Shown::Factor,
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
