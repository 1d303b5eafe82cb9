//! What a study is called and what it shows, in words.

use axlebow_study::{Design, Row, StudyOutcome, Varied};
use axlebow_units::{DisplayUnit, Kind, display_unit, show};

use crate::ModelCard;
use crate::number::{Numbers, Shown, significant};

/// Writes about one study in the units of one system.
#[derive(Debug, Clone, Copy)]
pub(crate) struct StudyWords<'a> {
    pub outcome: &'a StudyOutcome,
    pub numbers: Numbers,
}

/// What a study shows, a sentence each, made from its numbers: the designs that lean least and most, what the
/// best and the worst line do at an equal axle mass, and how many designs have no result.
///
/// Camber change is that of the left wheel; the less it is, of either sign, the better.
pub fn study_findings(outcome: &StudyOutcome, card: &ModelCard) -> Vec<String> {
    let words = StudyWords { outcome, numbers: Numbers { system: card.system } };
    [words.range(), words.equal_mass(), words.failures()].into_iter().flatten().collect()
}

impl StudyWords<'_> {
    /// Name of the line that a row is of: its variant, and the values of all keys but the last.
    pub fn line(&self, row: &Row) -> String {
        let fixed = row.values.len().saturating_sub(1);
        let values = self.outcome.varied.iter().zip(&row.values).take(fixed);
        let values = values.map(|(varied, &value)| {
            format!(", {} {}", key_words(&varied.path), show(value, varied.kind, self.numbers.system))
        });
        let variant = self.outcome.variants[row.variant].replace(char::is_control, "\u{fffd}");
        format!("{variant}{}", values.collect::<String>())
    }

    /// A key with its value, such as "tube wall 8 mm".
    fn setting(&self, varied: &Varied, value: f64) -> String {
        format!("{} {}", key_words(&varied.path), self.rounded(value, varied.kind))
    }

    /// A value to four digits, without zeros at its end.
    fn rounded(&self, value: f64, kind: Kind) -> String {
        let DisplayUnit { symbol, factor } = display_unit(kind, self.numbers.system);
        let number = significant(value / factor, 4);
        let plain = number.contains('.') && !number.contains('e');
        let number = if plain { number.trim_end_matches('0').trim_end_matches('.') } else { &number };
        format!("{number} {symbol}").trim_end().to_owned()
    }

    /// The key that varies fastest with its unit, such as "tube wall, mm".
    pub fn axis(&self) -> String {
        let Some(last) = self.outcome.varied.last() else { return String::new() };
        match display_unit(last.kind, self.numbers.system).symbol {
            "" => key_words(&last.path),
            unit => format!("{}, {unit}", key_words(&last.path)),
        }
    }

    /// Value of the key that varies fastest, in its display unit.
    pub fn along(&self, row: &Row) -> f64 {
        let kind = self.outcome.varied.last().map_or(Kind::Ratio, |last| last.kind);
        row.values.last().map_or(f64::NAN, |value| value / display_unit(kind, self.numbers.system).factor)
    }

    /// Whether both wheels lean alike in every design, but for round-off.
    pub fn sides_alike(&self) -> bool {
        let mut designs = self.outcome.rows.iter().filter_map(|row| row.result.as_ref().ok());
        designs.all(|design| {
            let camber = &design.camber_change;
            (camber.left - camber.right).abs() <= 1e-6 * camber.left.abs().max(camber.right.abs())
        })
    }

    /// A mass, such as "65 kg".
    pub fn mass(&self, mass: f64) -> String {
        self.numbers.full(mass, Shown::Mass).replace(".0 ", " ")
    }

    fn range(&self) -> Option<String> {
        let (least, most) = extremes(self.outcome.rows.iter())?;
        let whose = if self.sides_alike() { "" } else { " of the left wheel" };
        Some(format!(
            "The least camber change{whose}, {}; the most, {}.",
            self.place_of(least),
            self.place_of(most)
        ))
    }

    fn place_of(&self, (row, design): Solved<'_>) -> String {
        let last = self.outcome.varied.last().zip(row.values.last());
        let last = last.map(|(varied, &value)| format!(" with {}", self.setting(varied, value)));
        format!(
            "{}, is that of {}{} and an axle mass of {}",
            self.numbers.full(design.camber_change.left, Shown::Angle),
            self.line(row),
            last.unwrap_or_default(),
            self.numbers.full(design.axle_mass, Shown::Mass),
        )
    }

    /// The line that leans least against the one that leans most, at the middle one of the masses that at
    /// least two lines reach.
    fn equal_mass(&self) -> Option<String> {
        let shared: Vec<_> =
            self.outcome.constant_mass.iter().filter(|equal| equal.points.len() > 1).collect();
        let equal = *shared.get(shared.len() / 2)?;
        let ((best, less), (worst, more)) = extremes(equal.points.iter())?;
        let angle = |value: f64| self.numbers.full(value, Shown::Angle);
        let stress = |design: &Design| self.numbers.full(design.peak_stress.abs(), Shown::Stress);
        let (less_camber, more_camber) = (less.camber_change.left, more.camber_change.left);
        let bending = more.split.left.bending.abs() - less.split.left.bending.abs();
        let varied = self.outcome.varied.last()?;
        let value = |row: &Row| row.values.last().map_or(0.0, |value| *value);
        Some(format!(
            "At an equal axle mass of {}, {} leans {} less than {} ({} against {}), {} of it in bending of the \
             beam, with {} instead of {} and a peak stress of {} instead of {}.",
            self.mass(equal.mass),
            self.line(best),
            angle(more_camber.abs() - less_camber.abs()),
            self.line(worst),
            angle(less_camber),
            angle(more_camber),
            angle(bending),
            self.setting(varied, value(best)),
            self.rounded(value(worst), varied.kind),
            stress(less),
            stress(more),
        ))
    }

    fn failures(&self) -> Option<String> {
        let failed = || self.outcome.rows.iter().filter(|row| row.result.is_err());
        let first = failed().next()?;
        let settings = self.outcome.varied.iter().zip(&first.values);
        let settings: Vec<_> = settings.map(|(varied, &value)| self.setting(varied, value)).collect();
        Some(format!(
            "{} of {} designs have no result; the first is {} with {}: {}.",
            failed().count(),
            self.outcome.rows.len(),
            self.outcome.variants[first.variant],
            settings.join(", "),
            first.result.as_ref().err().map_or("", |reason| reason.as_str()),
        ))
    }
}

/// A row that has a result.
type Solved<'r> = (&'r Row, &'r Design);

/// The designs whose left wheel leans least and most.
fn extremes<'r>(rows: impl Iterator<Item = &'r Row>) -> Option<(Solved<'r>, Solved<'r>)> {
    let solved = rows.filter_map(|row| row.result.as_ref().ok().map(|design| (row, design)));
    let lean = |(_, design): &Solved<'r>| design.camber_change.left.abs();
    let mut found = None;
    for one in solved {
        let (least, most) = found.unwrap_or((one, one));
        found = Some((
            if lean(&one) < lean(&least) { one } else { least },
            if lean(&one) > lean(&most) { one } else { most },
        ));
    }
    found
}

/// A path in words: `tube.wall` becomes "tube wall".
fn key_words(path: &str) -> String {
    path.replace(['.', '_'], " ")
}
