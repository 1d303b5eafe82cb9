//! What can be moved on the page: a slider, a switch or a choice for each quantity that an axle is designed by.

use axlebow_model::{Document, Table};
use axlebow_units::{Kind, UnitSystem, parse};
use serde::Serialize;

use crate::stiffener::{self, LENGTH};
use crate::trouble::Trouble;
use crate::values::{Edit, Setting, Values};

/// Something that can be moved.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(crate) struct Control {
    /// By which a page names it.
    pub key: &'static str,
    /// What it is, on its label.
    pub label: &'static str,
    /// What it is a part of.
    pub group: &'static str,
    /// How it moves.
    pub form: Form,
    /// What it sets.
    #[serde(skip)]
    pub target: Target,
}

/// How a control moves.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
pub(crate) enum Form {
    /// A slider, in `unit`.
    Slider { unit: &'static str, min: f64, max: f64, step: f64, value: f64 },
    /// A switch.
    Switch { value: bool },
    /// One of some words.
    Choice { words: Vec<String>, value: String },
}

/// What a control sets.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Target {
    /// The same value at each of some paths.
    Paths(Vec<String>),
    /// Position and offset of each wheel: positive outset, negative inset, zero zeroset.
    Offset(usize),
    /// Size of a stiffener, or of one that is added.
    StiffenerSize(stiffener::Site),
    /// Its length.
    StiffenerLength(stiffener::Site),
}

/// A slider for a quantity: where the model keeps it, in which units, and how far it moves.
struct Row {
    key: &'static str,
    label: &'static str,
    group: &'static str,
    kind: Kind,
    /// Units and steps: SI, US.
    units: [(&'static str, f64); 2],
    reach: Reach,
}

/// How far a slider moves.
#[derive(Debug, Clone, Copy)]
enum Reach {
    /// Shares of its first value.
    Shares(f64, f64),
    /// Values, SI.
    Between(f64, f64),
}

use Reach::{Between, Shares};

const MM: [(&str, f64); 2] = [("mm", 0.5), ("in", 0.02)];
const FINE: [(&str, f64); 2] = [("mm", 0.1), ("in", 0.005)];
const LONG: [(&str, f64); 2] = [("mm", 1.0), ("in", 0.05)];
const PLAY: [(&str, f64); 2] = [("mm", 0.01), ("in", 0.0005)];
const DEGREES: [(&str, f64); 2] = [("deg", 0.01), ("deg", 0.01)];
const PRESSURE: [(&str, f64); 2] = [("kPa", 10.0), ("psi", 1.0)];
const LOAD: [(&str, f64); 2] = [("kN", 0.5), ("lbf", 100.0)];
const SHARE: [(&str, f64); 2] = [("", 0.01), ("", 0.01)];

/// Most that a wheel is set off, m (common practice, no source).
const MOST_OFFSET: f64 = 0.1016;
/// Most endplay of the slider, m: four times what TMC RP 618 accepts.
const MOST_ENDPLAY: f64 = 0.508e-3;
/// Most toe of the slider, rad.
const MOST_TOE: f64 = 8.7266e-3;

/// A row with its paths: the key of each table of a list, or one path.
type Placed = (Row, Vec<String>);

/// The controls of a model, in the order of the page.
pub(crate) fn controls(document: &Document, system: UnitSystem) -> Vec<Control> {
    let root = document.root();
    let mut rows = body_rows(root);
    rows.push((
        row("seat-place", "Seat, from the center line", "seats", LONG, Shares(0.75, 1.25)),
        each(root, "seat", "at"),
    ));
    rows.push((
        row("seat-width", "Seat width", "seats", LONG, Shares(0.4, 2.0)),
        each(root, "seat", "width"),
    ));
    let mut found: Vec<Control> = rows.iter().filter_map(|placed| slider(document, placed, system)).collect();
    found.extend(stiffener::controls(document, system));
    found.extend(offset(root, system));
    found.push(Control {
        key: "wheel-reversed",
        label: "Wheels reversed",
        group: "wheels",
        form: Form::Switch { value: root.tables("wheel")[0].flag("reversed") },
        target: Target::Paths(each(root, "wheel", "reversed")),
    });
    found.extend(wheel_rows(root).iter().filter_map(|placed| slider(document, placed, system)));
    found
}

fn row(
    key: &'static str,
    label: &'static str,
    group: &'static str,
    units: [(&'static str, f64); 2],
    reach: Reach,
) -> Row {
    Row { key, label, group, kind: Kind::Length, units, reach }
}

fn body_rows(root: &Table) -> Vec<Placed> {
    if root.optional_table("tube").is_some() {
        let od = row("diameter", "Outside diameter of the tube", "axle", MM, Shares(0.8, 1.35));
        let wall = row("wall", "Wall of the tube", "axle", FINE, Shares(0.5, 1.8));
        return vec![(od, vec!["tube.od".to_owned()]), (wall, vec!["tube.wall".to_owned()])];
    }
    let height = row("height", "Height of the housing beside the bowl", "axle", MM, Shares(0.8, 1.35));
    let wall = row("wall", "Wall of the housing", "axle", FINE, Shares(0.5, 1.8));
    vec![(height, beside_the_bowl(root)), (wall, vec!["housing.wall".to_owned()])]
}

/// The height of the last place of a housing: the arm outside the bowl.
fn beside_the_bowl(root: &Table) -> Vec<String> {
    let places = root.optional_table("housing").map_or(0, |housing| housing.tables("profile").len());
    vec![format!("housing.profile[{}].height", places.saturating_sub(1))]
}

fn wheel_rows(root: &Table) -> Vec<Placed> {
    let of = |kind: Kind, own: Row| Row { kind, ..own };
    vec![
        (
            row("endplay", "Endplay of the bearings", "wheels", PLAY, Between(0.0, MOST_ENDPLAY)),
            each(root, "wheel_end", "endplay"),
        ),
        (
            of(Kind::Angle, row("toe", "Toe, in positive", "wheels", DEGREES, Between(-MOST_TOE, MOST_TOE))),
            each(root, "wheel_end", "toe"),
        ),
        (
            of(
                Kind::Stress,
                row("inflation", "Inflation of the tires", "wheels", PRESSURE, Shares(0.6, 1.3)),
            ),
            each(root, "wheel", "inflation"),
        ),
        (
            of(Kind::Force, row("load", "Rated axle load", "load", LOAD, Shares(0.4, 1.3))),
            vec!["loads.rated_load".to_owned()],
        ),
        (
            of(
                Kind::Ratio,
                row(
                    "side-force",
                    "Side force over load, in case side-load",
                    "load",
                    SHARE,
                    Between(0.0, 0.6),
                ),
            ),
            vec!["loads.side_force_ratio".to_owned()],
        ),
    ]
}

/// The path of a key in each table of a list.
fn each(root: &Table, list: &str, key: &str) -> Vec<String> {
    (0..root.tables(list).len()).map(|place| format!("{list}[{place}].{key}")).collect()
}

/// A slider from the value that the model has; none where it has none.
fn slider(document: &Document, (row, paths): &Placed, system: UnitSystem) -> Option<Control> {
    let value = number(document, paths.first()?)?;
    let form = form(value, row.kind, row.units, row.reach, system);
    Some(Control {
        key: row.key,
        label: row.label,
        group: row.group,
        form,
        target: Target::Paths(paths.clone()),
    })
}

/// The value at a path, SI; of an inflation that is left out that of its tread.
fn number(document: &Document, path: &str) -> Option<f64> {
    let rated = || {
        document
            .number(&path.strip_suffix(".inflation").map(|wheel| format!("{wheel}.tread.inflation"))?)
            .ok()
    };
    document.number(path).ok().or_else(rated)
}

/// A slider whose steps go through its first value, so that it stands on it exactly.
fn form(value: f64, kind: Kind, units: [(&'static str, f64); 2], reach: Reach, system: UnitSystem) -> Form {
    let (unit, step) = if system == UnitSystem::Si { units[0] } else { units[1] };
    let one = parse(&format!("1 {unit}"), kind).map_or(1.0, |parsed| parsed.value);
    let shown = tidy(value / one);
    let (low, high) = match reach {
        Shares(low, high) => (low * shown, high * shown),
        Between(low, high) => ((low / one).min(shown), (high / one).max(shown)),
    };
    let steps = |room: f64| (room / step + 1e-6).floor();
    let min = tidy(shown - step * steps(shown - low));
    let max = tidy(shown + step * steps(high - shown));
    Form::Slider { unit, min, max, step, value: shown }
}

/// Rounded to what a reader can tell apart, so that 0.1 + 0.2 is 0.3.
fn tidy(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}

fn offset(root: &Table, system: UnitSystem) -> Option<Control> {
    let wheel = root.tables("wheel").first()?;
    let distance = wheel.optional_number("offset").unwrap_or(0.0);
    let value = match wheel.word("position") {
        "outset" => distance,
        "inset" => -distance,
        _ => 0.0,
    };
    let form = form(value, Kind::Length, LONG, Between(-MOST_OFFSET, MOST_OFFSET), system);
    let target = Target::Offset(root.tables("wheel").len());
    Some(Control {
        key: "wheel-offset",
        label: "Wheel offset, outset positive",
        group: "wheels",
        form,
        target,
    })
}

/// A slider for the length of a stiffener, m, up to a length.
pub(crate) fn length_form(value: f64, most: f64, system: UnitSystem) -> Form {
    let units = [("mm", 10.0), ("in", 0.5)];
    form(value, Kind::Length, units, Between(0.25 * most, most), system)
}

impl Control {
    /// What its value changes in the model.
    ///
    /// Arguments: `all`, the values of the other controls, because a stiffener needs both of its own.
    pub fn edits(&self, setting: &Setting, all: &Values) -> Result<Vec<Edit>, Trouble> {
        let text = self.text(setting)?;
        let edits = match &self.target {
            Target::Paths(paths) => paths.iter().map(|path| Edit::Set(path.clone(), text.clone())).collect(),
            Target::Offset(wheels) => offset_edits(*wheels, &text),
            Target::StiffenerSize(site) => {
                let length = all.get(LENGTH).map(|own| site.length_control().text(own)).transpose()?;
                site.size_edits(&text, length)
            }
            Target::StiffenerLength(site) => site.length_edits(&text),
        };
        Ok(edits)
    }

    /// A value as a model file would write it, without quotes.
    fn text(&self, setting: &Setting) -> Result<String, Trouble> {
        match (&self.form, setting) {
            (Form::Slider { unit, .. }, Setting::Number(value)) if value.is_finite() => {
                Ok(format!("{} {unit}", tidy(*value)).trim_end().to_owned())
            }
            (Form::Switch { .. }, Setting::Flag(value)) => Ok(value.to_string()),
            (Form::Choice { words, .. }, Setting::Word(word)) if words.contains(word) => Ok(word.clone()),
            _ => Err(Trouble::Malformed(format!("`{}` cannot stand at {setting:?}", self.key))),
        }
    }
}

fn offset_edits(wheels: usize, text: &str) -> Vec<Edit> {
    let position = match text.strip_prefix('-') {
        Some(_) => "inset",
        None if text.starts_with("0 ") => "zeroset",
        None => "outset",
    };
    let distance = text.trim_start_matches('-');
    let mut edits = Vec::new();
    for wheel in 0..wheels {
        edits.push(Edit::Set(format!("wheel[{wheel}].position"), position.to_owned()));
        if position != "zeroset" {
            edits.push(Edit::Set(format!("wheel[{wheel}].offset"), distance.to_owned()));
        }
    }
    edits
}
