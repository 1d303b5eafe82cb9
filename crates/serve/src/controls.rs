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

/// A slider for a quantity: how a page names it, where the model keeps it, and how it moves.
struct Row {
    key: &'static str,
    label: &'static str,
    group: &'static str,
    place: Place,
    travel: Travel,
}

/// Where a model keeps a quantity.
#[derive(Debug, Clone, Copy)]
enum Place {
    /// At a path.
    Lone(&'static str),
    /// At a key of each table of a list.
    Each(&'static str, &'static str),
    /// Height of a housing at the last place of its profile: the arm beside the bowl.
    HousingArm,
}

/// How a slider moves: what it measures, units and steps of SI and US, and its ends.
#[derive(Debug, Clone, Copy)]
struct Travel {
    kind: Kind,
    units: [(&'static str, f64); 2],
    ends: Ends,
}

/// Ends of a slider.
#[derive(Debug, Clone, Copy)]
enum Ends {
    /// Shares of its first value.
    Shares(f64, f64),
    /// Values, SI.
    Between(f64, f64),
}

use Ends::{Between, Shares};
use Place::{Each, HousingArm, Lone};

const fn length(units: [(&'static str, f64); 2], ends: Ends) -> Travel {
    Travel { kind: Kind::Length, units, ends }
}

const MM: [(&str, f64); 2] = [("mm", 0.5), ("in", 0.02)];
const FINE: [(&str, f64); 2] = [("mm", 0.1), ("in", 0.005)];
const LONG: [(&str, f64); 2] = [("mm", 1.0), ("in", 0.05)];
const PLAY: [(&str, f64); 2] = [("mm", 0.01), ("in", 0.0005)];

/// Most that a wheel is set off, m (common practice, no source).
const MOST_OFFSET: f64 = 0.1016;
/// Most endplay of the slider, m: four times what TMC RP 618 accepts.
const MOST_ENDPLAY: f64 = 0.508e-3;
/// Most toe of the slider, rad: half a degree.
const MOST_TOE: f64 = 8.7266e-3;

const DEGREES: Travel =
    Travel { kind: Kind::Angle, units: [("deg", 0.01); 2], ends: Between(-MOST_TOE, MOST_TOE) };
const PRESSURE: Travel =
    Travel { kind: Kind::Stress, units: [("kPa", 10.0), ("psi", 1.0)], ends: Shares(0.6, 1.3) };
const LOAD: Travel =
    Travel { kind: Kind::Force, units: [("kN", 0.5), ("lbf", 100.0)], ends: Shares(0.4, 1.3) };
const SHARE: Travel = Travel { kind: Kind::Ratio, units: [("", 0.01); 2], ends: Between(0.0, 0.6) };

const fn row(
    (key, label): (&'static str, &'static str),
    group: &'static str,
    place: Place,
    travel: Travel,
) -> Row {
    Row { key, label, group, place, travel }
}

/// Sliders of axle and seats, in the order of the page; what a model does not have is left out.
static BODY: [Row; 6] = [
    row(("diameter", "Outside diameter of the tube"), "axle", Lone("tube.od"), length(MM, Shares(0.8, 1.35))),
    row(("wall", "Wall of the tube"), "axle", Lone("tube.wall"), length(FINE, Shares(0.5, 1.8))),
    row(
        ("height", "Height of the housing beside the bowl"),
        "axle",
        HousingArm,
        length(MM, Shares(0.8, 1.35)),
    ),
    row(("wall", "Wall of the housing"), "axle", Lone("housing.wall"), length(FINE, Shares(0.5, 1.8))),
    row(
        ("seat-place", "Seat, from the center line"),
        "seats",
        Each("seat", "at"),
        length(LONG, Shares(0.75, 1.25)),
    ),
    row(("seat-width", "Seat width"), "seats", Each("seat", "width"), length(LONG, Shares(0.4, 2.0))),
];

/// Sliders of wheels and load.
static WHEELS: [Row; 5] = [
    row(
        ("endplay", "Endplay of the bearings"),
        "wheels",
        Each("wheel_end", "endplay"),
        length(PLAY, Between(0.0, MOST_ENDPLAY)),
    ),
    row(("toe", "Toe, in positive"), "wheels", Each("wheel_end", "toe"), DEGREES),
    row(("inflation", "Inflation of the tires"), "wheels", Each("wheel", "inflation"), PRESSURE),
    row(("load", "Rated axle load"), "load", Lone("loads.rated_load"), LOAD),
    row(
        ("side-force", "Side force over load, in case side-load"),
        "load",
        Lone("loads.side_force_ratio"),
        SHARE,
    ),
];

/// The controls of a model, in the order of the page.
pub(crate) fn controls(document: &Document, system: UnitSystem) -> Vec<Control> {
    let root = document.root();
    let sliders = |rows: &'static [Row]| rows.iter().filter_map(|row| row.slider(document, system));
    let mut found: Vec<Control> = sliders(&BODY).collect();
    found.extend(stiffener::controls(document, system));
    found.extend(offset(root, system));
    found.push(Control {
        key: "wheel-reversed",
        label: "Wheels reversed",
        group: "wheels",
        form: Form::Switch { value: root.tables("wheel")[0].flag("reversed") },
        target: Target::Paths(Each("wheel", "reversed").paths(root)),
    });
    found.extend(sliders(&WHEELS));
    found
}

impl Place {
    /// The paths, the first of which the slider begins from.
    fn paths(self, root: &Table) -> Vec<String> {
        match self {
            Lone(path) => vec![path.to_owned()],
            Each(list, key) => {
                (0..root.tables(list).len()).map(|place| format!("{list}[{place}].{key}")).collect()
            }
            HousingArm => {
                let places = root.optional_table("housing").map_or(0, |own| own.tables("profile").len());
                vec![format!("housing.profile[{}].height", places.saturating_sub(1))]
            }
        }
    }
}

impl Row {
    /// The slider at the value that the model has; none where it has none.
    fn slider(&self, document: &Document, system: UnitSystem) -> Option<Control> {
        let paths = self.place.paths(document.root());
        let form = self.travel.form(number(document, paths.first()?)?, system);
        let Row { key, label, group, .. } = *self;
        Some(Control { key, label, group, form, target: Target::Paths(paths) })
    }
}

/// The value at a path, SI; of an inflation that is left out that of its tread.
fn number(document: &Document, path: &str) -> Option<f64> {
    let rated = || {
        let wheel = path.strip_suffix(".inflation")?;
        document.number(&format!("{wheel}.tread.inflation")).ok()
    };
    document.number(path).ok().or_else(rated)
}

impl Travel {
    /// A slider whose steps go through its first value (SI), so that it stands on it exactly.
    fn form(self, value: f64, system: UnitSystem) -> Form {
        let (unit, step) = if system == UnitSystem::Si { self.units[0] } else { self.units[1] };
        let one = parse(&format!("1 {unit}"), self.kind).map_or(1.0, |parsed| parsed.value);
        let shown = tidy(value / one);
        let (low, high) = match self.ends {
            Shares(low, high) => (low * shown, high * shown),
            Between(low, high) => ((low / one).min(shown), (high / one).max(shown)),
        };
        let steps = |room: f64| (room / step + 1e-6).floor();
        let min = tidy(shown - step * steps(shown - low));
        let max = tidy(shown + step * steps(high - shown));
        Form::Slider { unit, min, max, step, value: shown }
    }
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
    let form = length(LONG, Between(-MOST_OFFSET, MOST_OFFSET)).form(value, system);
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
    length([("mm", 10.0), ("in", 0.5)], Between(0.25 * most, most)).form(value, system)
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
