//! What a sheet says, as numbers and words that a state of the axle predicts.

use std::f64::consts::TAU;

use axlebow_axle::tread::Feather;
use axlebow_axle::{Actions, AxleError, LoadCase, Side, Sides, StaticDesign, TireSlot};
use axlebow_model::{CaseSheet, FeltFeather, SeenTire};

use super::parameter::Parameter;
use super::worn_axle::{WearPattern, WornAxle};

/// Standard error of the new depth where the sheet has it and where the axle's tire says it, m (judgments, no source).
const NEW_DEPTH_ERROR: [f64; 2] = [0.3e-3, 1.5e-3];
/// Standard deviations of the logarithm of wear for each kilometer between tires and trips, where the distance is known
/// (invented), and where it is not: anything.
const RATE_SPREAD: [f64; 2] = [0.6, 10.0];
/// How far pressure of a day is from that of a life, of it (a judgment, no source).
pub const PRESSURE_OF_THE_DAY: f64 = 0.05;
/// How far the radii of duals of today differ from those of a life by their own wear, m (a judgment, no source).
const MATCH_OF_THE_DAY: f64 = 1e-3;

/// A kind of reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Evidence {
    /// Tread depths of a tire.
    Depths(Side, TireSlot),
    /// How the ribs feel.
    Feathering,
    /// Cups, or that there are none.
    Cups,
    /// Pressures as found.
    Inflation,
    /// Lengths round the tires of duals.
    Circumference,
    /// Endplay.
    Endplay,
    /// Camber.
    Camber,
    /// Toe.
    Toe,
    /// Skew.
    Skew,
    /// Outset of the wheels.
    Offset,
    /// Wall by gauge.
    Wall,
    /// Mean load.
    Load,
    /// Runout.
    Runout,
    /// The state of the dampers.
    Damper,
}

impl Evidence {
    /// What was read, such as "depths of the left inner tire".
    pub fn words(self) -> String {
        let word = match self {
            Evidence::Depths(side, slot) => return format!("depths of the {}", slot.of_side(side.word())),
            Evidence::Feathering => "feathering",
            Evidence::Cups => "cups",
            Evidence::Inflation => "inflation",
            Evidence::Circumference => "circumferences of the duals",
            Evidence::Endplay => "endplay",
            Evidence::Camber => "camber",
            Evidence::Toe => "toe",
            Evidence::Skew => "skew",
            Evidence::Offset => "wheel offset",
            Evidence::Wall => "wall",
            Evidence::Load => "axle load",
            Evidence::Runout => "runout",
            Evidence::Damper => "dampers",
        };
        word.to_owned()
    }
}

/// A reading that is a number.
#[derive(Debug, Clone, PartialEq)]
pub struct NumberRead {
    /// What it is.
    pub evidence: Evidence,
    /// Its value: a worn depth, m, or a sum of parameters.
    pub value: f64,
    /// Standard error of the reading, in the same unit.
    pub error: f64,
    /// What predicts it.
    pub predicted_by: PredictedBy,
}

/// What predicts a reading.
#[derive(Debug, Clone, PartialEq)]
pub enum PredictedBy {
    /// A rib: its number among all and that of its tire.
    Rib {
        /// Among the ribs of all tires.
        rib: usize,
        /// Its tire among all.
        tire: usize,
    },
    /// Parameters, summed on top of a value.
    Parameters {
        /// The value without any of them.
        base: f64,
        /// The parameters.
        of: Vec<Parameter>,
    },
}

/// Readings that are words.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WordsRead {
    /// Feathering of tires, by their number among all: 0 inboard, 1 none, 2 outboard.
    pub feathering: Vec<(usize, usize)>,
    /// Cups of the worst tire: 0 none, 1 one to three, 2 more.
    pub cups: Option<usize>,
    /// Dampers: 0 good, 1 leaking, 2 dead.
    pub damper: Option<usize>,
}

/// What a sheet says.
#[derive(Debug, Clone, PartialEq)]
pub struct Observed {
    /// Numbers.
    pub numbers: Vec<NumberRead>,
    /// Words.
    pub words: WordsRead,
    /// Depth of the new tread, m, and its standard error.
    pub new_depth: (f64, f64),
    /// Logarithm of the depth that a unit of wear takes off, and its standard deviation.
    pub rate: (f64, f64),
}

/// Tires of an axle in the order of patterns: the left ones, outermost first, then the right ones.
pub fn tire_slots(worn: &WornAxle<'_>) -> Vec<(Side, TireSlot)> {
    let of = |side: Side| worn.axle().wheels.of(side).tires().map(move |place| (side, place.slot));
    Side::BOTH.into_iter().flat_map(of).collect()
}

impl Observed {
    /// What a sheet says of an axle.
    ///
    /// # Errors
    /// An empty axle that cannot stand, where camber or toe was read.
    pub fn of(sheet: &CaseSheet, worn: &WornAxle<'_>, usual: &WearPattern) -> Result<Observed, AxleError> {
        let known = usize::from(sheet.new_depth.is_none());
        let new = sheet.new_depth.unwrap_or(worn.axle().wheels.left.tread().depth);
        let reader = SheetReader { sheet, worn, new };
        let numbers =
            [reader.depths(), reader.pressures(), reader.matches(), reader.ends()?, reader.axle()].concat();
        let way = usize::from(sheet.distance.is_none());
        let distance = sheet.distance.unwrap_or(sheet.usual_distance);
        let mean = usual.log_wear.iter().map(|log| log.exp()).sum::<f64>() / usual.log_wear.len() as f64;
        let rate = (0.5 * new * distance / sheet.usual_distance / mean).ln();
        Ok(Observed {
            numbers,
            words: reader.words(),
            new_depth: (new, NEW_DEPTH_ERROR[known]),
            rate: (rate, RATE_SPREAD[way]),
        })
    }

    /// Kinds of readings that there are, in the order of a sheet.
    pub fn evidence(&self) -> Vec<Evidence> {
        let words = [
            (!self.words.feathering.is_empty(), Evidence::Feathering),
            (self.words.cups.is_some(), Evidence::Cups),
            (self.words.damper.is_some(), Evidence::Damper),
        ];
        let numbers = self.numbers.iter().map(|read| read.evidence);
        let words = words.into_iter().filter(|(is_there, _)| *is_there).map(|(_, evidence)| evidence);
        let mut all: Vec<Evidence> = Vec::new();
        for evidence in numbers.chain(words) {
            if !all.contains(&evidence) {
                all.push(evidence);
            }
        }
        all
    }
}

struct SheetReader<'a> {
    sheet: &'a CaseSheet,
    worn: &'a WornAxle<'a>,
    new: f64,
}

fn of_parameters(
    evidence: Evidence,
    (value, error): (f64, f64),
    base: f64,
    of: Vec<Parameter>,
) -> NumberRead {
    NumberRead { evidence, value, error, predicted_by: PredictedBy::Parameters { base, of } }
}

impl SheetReader<'_> {
    fn seen(&self, side: Side, slot: TireSlot) -> Option<&SeenTire> {
        self.sheet.tires.iter().find(|own| (own.side, own.slot) == (side, slot))
    }

    /// Worn depths: new depth less depth.
    fn depths(&self) -> Vec<NumberRead> {
        let error = self.sheet.errors.depth;
        let mut all = Vec::new();
        let mut first = 0;
        for (tire, (side, slot)) in tire_slots(self.worn).into_iter().enumerate() {
            let depths = self.seen(side, slot).map_or(&[][..], |seen| &seen.depths);
            for (rib, depth) in depths.iter().enumerate().filter_map(|(rib, depth)| Some((rib, (*depth)?))) {
                let predicted_by = PredictedBy::Rib { rib: first + rib, tire };
                let evidence = Evidence::Depths(side, slot);
                all.push(NumberRead { evidence, value: self.new - depth, error, predicted_by });
            }
            first += self.worn.axle().wheels.of(side).tread().ribs;
        }
        all
    }

    fn pressures(&self) -> Vec<NumberRead> {
        let read = |side: Side| {
            self.worn.axle().wheels.of(side).tires().filter_map(move |place| {
                let found = self.seen(side, place.slot)?.inflation?;
                let error = (self.sheet.errors.inflation / found).hypot(PRESSURE_OF_THE_DAY);
                let of = vec![Parameter::Inflation, Parameter::TireInflation(side, place.slot)];
                let value = (found / place.inflation).ln();
                Some(of_parameters(Evidence::Inflation, (value, error), 0.0, of))
            })
        };
        Side::BOTH.into_iter().flat_map(read).collect()
    }

    /// Differences of the radii of duals.
    fn matches(&self) -> Vec<NumberRead> {
        let read = |side: Side| {
            let round = |slot| self.seen(side, slot)?.circumference;
            let value = (round(TireSlot::Outer)? - round(TireSlot::Inner)?) / TAU;
            let error = (self.sheet.errors.circumference * 2.0_f64.sqrt() / TAU).hypot(MATCH_OF_THE_DAY);
            let base = self.worn.axle().wheels.of(side).fit().outer_less_inner;
            let of = vec![Parameter::OuterLessInner(side)];
            Some(of_parameters(Evidence::Circumference, (value, error), base, of))
        };
        Side::BOTH.into_iter().filter_map(read).collect()
    }

    fn ends(&self) -> Result<Vec<NumberRead>, AxleError> {
        let (errors, mut all) = (self.sheet.errors, Vec::new());
        let has_angle = |side: Side| {
            let seen = self.sheet.ends.of(side);
            seen.camber.is_some() || seen.toe.is_some()
        };
        let empty = if Side::BOTH.into_iter().any(has_angle) { Some(empty_stance(self.worn)?) } else { None };
        for side in Side::BOTH {
            let seen = self.sheet.ends.of(side);
            let mut add = |evidence, value: Option<f64>, error, base, parameter| {
                all.extend(value.map(|value| of_parameters(evidence, (value, error), base, vec![parameter])));
            };
            add(Evidence::Endplay, seen.endplay, errors.endplay, 0.0, Parameter::Endplay(side));
            add(Evidence::Runout, seen.runout, errors.runout, 0.0, Parameter::Runout(side));
            let [camber, toe] = empty.map_or([0.0; 2], |stance| *stance.of(side));
            add(Evidence::Camber, seen.camber, errors.angle, camber, Parameter::Camber(side));
            add(Evidence::Toe, seen.toe, errors.angle, toe, Parameter::Toe(side));
        }
        Ok(all)
    }

    fn axle(&self) -> Vec<NumberRead> {
        let (sheet, axle) = (self.sheet, self.worn.axle());
        let mut all = Vec::new();
        let mut add = |evidence, read: Option<(f64, f64)>, base, parameter| {
            all.extend(read.map(|read| of_parameters(evidence, read, base, vec![parameter])));
        };
        let errors = sheet.errors;
        let load = sheet.axle_load.map(|load| ((load / axle.loading.rated_load).ln(), errors.load));
        add(Evidence::Load, load, 0.0, Parameter::Load);
        let offset = sheet.offset.map(|offset| (offset, errors.offset));
        add(Evidence::Offset, offset, axle.wheels.left.outset(), Parameter::Outset);
        let skew = sheet.skew.map(|skew| (skew, errors.angle));
        add(Evidence::Skew, skew, axle.running.skew, Parameter::Skew);
        let wall =
            sheet.wall.zip(self.worn.wall()).map(|(wall, own)| ((wall / own).ln(), errors.wall / wall));
        add(Evidence::Wall, wall, 0.0, Parameter::Wall);
        all
    }

    fn words(&self) -> WordsRead {
        let felt = |(tire, (side, slot)): (usize, (Side, TireSlot))| {
            let class = match self.seen(side, slot)?.feather? {
                FeltFeather::Points(Feather::Inboard) => 0,
                FeltFeather::None => 1,
                FeltFeather::Points(Feather::Outboard) => 2,
            };
            Some((tire, class))
        };
        WordsRead {
            feathering: tire_slots(self.worn).into_iter().enumerate().filter_map(felt).collect(),
            cups: self.sheet.tires.iter().filter_map(|own| own.cups).max().map(cup_class),
            damper: self.sheet.damper.map(|state| state as usize),
        }
    }
}

/// Place of a count of cups among no cups, one to three, and more.
pub fn cup_class(count: u32) -> usize {
    match count {
        0 => 0,
        1..=3 => 1,
        _ => 2,
    }
}

/// Camber against the road and toe of each wheel of the empty axle.
fn empty_stance(worn: &WornAxle<'_>) -> Result<Sides<[f64; 2]>, AxleError> {
    let axle = worn.axle();
    let actions = Actions { axle_load: axle.loading.unladen_load, gravity: 1.0, ..Actions::default() };
    let (name, description) = ("empty".to_owned(), "The empty vehicle on a level floor.".to_owned());
    let reading = StaticDesign::of(axle)?.shop_reading(&LoadCase {
        name,
        description,
        dynamic_factor: 1.0,
        actions,
    })?;
    Ok(Sides::each(|side| [*reading.camber.of(side), *reading.toe.of(side)]))
}
