//! What a remedy changes in a model.

use axlebow_axle::{Axle, Side, Sides};
use axlebow_model::{Document, Problems, Table};

use super::outcome::WhyNot;
use super::remedy::{Remedy, Standard, StockAngle};
use super::top_angle::TopAngle;
use crate::solve::in_words;

/// Largest endplay that TMC RP 618 accepts, m.
const MOST_ENDPLAY: f64 = 0.127e-3;
/// Endplay that bearings are set to: the middle of what TMC RP 618 accepts, mm.
const SET_ENDPLAY: &str = "0.076 mm";
/// Toe below which nothing is corrected, rad (a judgment, no source).
const STRAIGHT: f64 = 0.35e-3;
/// Camber below which no spindle is bent for it, rad (a judgment, no source).
const UPRIGHT: f64 = 0.9e-3;
/// Share of the rated inflation that a tire may be off, and difference of the radii of duals, m, within which nothing is done
/// (judgments, no source).
const NOT_RATED: f64 = 0.02;
const UNLIKE: f64 = 0.5e-3;
/// What a deeper-treaded tire has more, m, and the depth up to which there are such (common practice, no source).
const MORE_TREAD: f64 = 5e-3;
const DEEPEST_TREAD: f64 = 23e-3;
/// A step of wall of tubes and of housings, m, and of a tube's diameter, m (common practice, no source).
const WALL_STEP: [f64; 2] = [2e-3, 1.5e-3];
const DIAMETER_STEP: f64 = 25.4e-3;
/// Damping of stronger dampers over today's (a judgment, no source).
const STRONGER: f64 = 1.5;

/// A change of a model.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// A key set to what a file would write there.
    Key {
        /// Its path.
        path: String,
        /// The new value.
        text: String,
    },
    /// Stiffeners put on, as `[[stiffener]]` tables of a model file.
    Stiffener(String),
}

/// The axle that changes are for, as it is: as a document, as built, and how its wheels lean under load.
#[derive(Clone, Copy)]
pub(super) struct AsItIs<'a> {
    pub document: &'a Document,
    pub axle: &'a Axle,
    /// Camber change of each wheel in the load case, rad.
    pub camber_change: &'a Sides<f64>,
    /// Whether a road is driven.
    pub rides: bool,
}

impl Remedy {
    /// What it changes; nothing where the axle does not need it or has nothing of the kind.
    pub(super) fn changes(&self, of: AsItIs<'_>) -> Vec<Change> {
        match self {
            Remedy::Standard(own) => own.changes(of),
            Remedy::Own(own) => own.changes.clone(),
            Remedy::Pair(both) => both.iter().flat_map(|own| own.changes(of)).collect(),
        }
    }
}

impl Standard {
    fn changes(self, of: AsItIs<'_>) -> Vec<Change> {
        let axle = of.axle;
        let outset = |side: Side| axle.wheels.of(side).outset() > 0.0;
        match self {
            Standard::SetBearings => of.each("wheel_end", |end, _| {
                (end.number("endplay") > MOST_ENDPLAY).then(|| ("endplay", SET_ENDPLAY.to_owned()))
            }),
            Standard::ReverseWheels => of.each("wheel", |wheel, side| {
                (outset(side) && !wheel.flag("reversed")).then(|| ("reversed", "true".to_owned()))
            }),
            Standard::ZerosetWheels => of.each("wheel", |wheel, side| {
                let off_center = wheel.word("position") != "zeroset" && outset(side);
                off_center.then(|| ("position", "zeroset".to_owned()))
            }),
            Standard::CorrectToe => of.each("wheel_end", |end, _| {
                (end.number("toe").abs() > STRAIGHT).then(|| ("toe", "0 deg".to_owned()))
            }),
            Standard::SetInflation => of.each("wheel", rated_inflation),
            Standard::MatchDuals => of.each("wheel", matched_duals),
            Standard::SquareAxle => {
                let skewed = axle.running.skew.abs() > STRAIGHT;
                let square = || Change::Key { path: "running.skew".to_owned(), text: "0 deg".to_owned() };
                skewed.then(square).into_iter().collect()
            }
            Standard::BuiltInCamber => of.each("wheel_end", |end, side| {
                let against = end.number("camber") - of.camber_change.of(side);
                (of.camber_change.of(side).abs() > UPRIGHT).then(|| ("camber", degrees(against)))
            }),
            Standard::DeeperTread => of.each("wheel", |wheel, _| {
                let depth = wheel.table("tread").number("depth") + MORE_TREAD;
                (depth <= DEEPEST_TREAD).then(|| ("tread.depth", millimeters(depth)))
            }),
            Standard::StrongerDampers if of.rides => of.each("seat", |seat, _| {
                let damping = seat.number("damping");
                (damping > 0.0).then(|| ("damping", format!("{:.4} kN s/m", 1e-3 * STRONGER * damping)))
            }),
            Standard::StrongerDampers => Vec::new(),
            Standard::HeavierWall => of.larger(["tube.wall", "housing.wall"], WALL_STEP),
            Standard::LargerTube => of.larger(["tube.od"], [DIAMETER_STEP]),
            Standard::TopAngle(angle) => top_angle(of, angle),
        }
    }
}

impl AsItIs<'_> {
    /// Keys of each entry of a list that are to change, with what is to stand there.
    fn each<K: IntoIterator<Item = (&'static str, String)>>(
        &self,
        list: &str,
        new: impl Fn(&Table, Side) -> K,
    ) -> Vec<Change> {
        let tables = self.document.root().tables(list).iter().enumerate();
        let changes = |(place, table): (usize, &Table)| {
            let side = if table.optional_word("side") == Some("right") { Side::Right } else { Side::Left };
            let change = move |(key, text)| Change::Key { path: format!("{list}[{place}].{key}"), text };
            new(table, side).into_iter().map(change)
        };
        tables.flat_map(changes).collect()
    }

    /// The first of some keys that the model has, a step larger.
    fn larger<const N: usize>(&self, paths: [&str; N], steps: [f64; N]) -> Vec<Change> {
        let larger = |(path, step): (&str, f64)| {
            let text = millimeters(self.document.number(path).ok()? + step);
            Some(Change::Key { path: path.to_owned(), text })
        };
        paths.into_iter().zip(steps).find_map(larger).into_iter().collect()
    }
}

/// Keys of a wheel's inflation that are off what its tread is rated at.
fn rated_inflation(wheel: &Table, _: Side) -> Vec<(&'static str, String)> {
    let rated = wheel.table("tread").number("inflation");
    let off =
        |key: &&str| wheel.optional_number(key).is_some_and(|own| (own / rated - 1.0).abs() > NOT_RATED);
    let set = |key| (key, format!("{} kPa", (1e-3 * rated).round()));
    ["inflation", "inner_inflation"].into_iter().filter(off).map(set).collect()
}

/// Both radii of duals that differ, set to their mean.
fn matched_duals(wheel: &Table, _: Side) -> Vec<(&'static str, String)> {
    const RADII: [&str; 2] = ["outer_radius", "inner_radius"];
    let [Some(outer), Some(inner)] = RADII.map(|key| wheel.optional_number(key)) else { return Vec::new() };
    let set = |key| (key, millimeters(0.5 * (outer + inner)));
    if (outer - inner).abs() > UNLIKE { RADII.map(set).to_vec() } else { Vec::new() }
}

/// An angle on top of a tube that has no stiffener yet, as long as the keep-outs at both seats let it be.
fn top_angle(of: AsItIs<'_>, angle: StockAngle) -> Vec<Change> {
    let is_tube = of.document.root().optional_table("tube").is_some();
    if !is_tube || !of.axle.stiffeners.is_empty() {
        return Vec::new();
    }
    let length = millimeters(TopAngle::longest(of.document));
    let own = TopAngle { size: angle.size(), length: &length, weld_leg: angle.weld_leg() };
    vec![Change::Stiffener(own.table())]
}

/// Why a changed model does not fit together.
pub(super) fn misfit(problems: Problems) -> WhyNot {
    WhyNot::Misfit(in_words(&problems))
}

/// A model with changes made.
pub(super) fn changed(document: &Document, changes: &[Change]) -> Result<Document, WhyNot> {
    let mut document = document.clone();
    for change in changes {
        match change {
            Change::Key { path, text } => document.set(path, text).map_err(WhyNot::Refused)?,
            Change::Stiffener(text) => document = document.with_stiffener(text).map_err(misfit)?,
        }
    }
    Ok(document)
}

/// Rounded to a thousandth of a millimeter.
fn millimeters(length: f64) -> String {
    format!("{} mm", (1e6 * length).round() / 1e3)
}

/// Rounded to a hundredth of a degree.
fn degrees(angle: f64) -> String {
    format!("{} deg", (1e2 * angle.to_degrees()).round() / 1e2)
}
