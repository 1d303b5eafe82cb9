//! A model file from what a tape measure gives: the typical axle that is most like the answers, with them in it.

use axlebow_units::{Kind, UnitSystem, display_unit, show};

use super::guided_answer::{Answer, TireCount, TiresAnswer, wheel_offset};
use super::question::GuidedQuestion;
use super::{KINDS, TYPICAL, TypicalAxle};
use crate::Model;
use crate::content::{Document, Table};
use crate::keys::MODEL;
use crate::read::read_bytes;

/// The profile places of a typical housing between its bowl and its end.
pub(super) const ARM_OF_HOUSING: [usize; 2] = [2, 3];

/// What was answered so far.
#[derive(Debug, Clone, Default)]
pub struct GuidedStart {
    pub(super) kind: Option<&'static str>,
    pub(super) tires: Option<TiresAnswer>,
    pub(super) offset: Option<Answer>,
    pub(super) middles: Option<Answer>,
    pub(super) seats: Option<Answer>,
    pub(super) size: Option<(Answer, Option<Answer>)>,
    pub(super) wall: Option<Answer>,
    pub(super) load: Option<Answer>,
}

impl GuidedStart {
    /// Whether the axle is a drive axle, as far as was answered.
    pub fn is_drive(&self) -> bool {
        self.kind() == KINDS[1]
    }

    /// Whether most answers are in US units.
    pub fn in_us_units(&self) -> bool {
        let answers = [&self.offset, &self.middles, &self.seats, &self.wall, &self.load];
        let size = self.size.iter().map(|(height, _)| height);
        let systems: Vec<UnitSystem> =
            answers.into_iter().flatten().chain(size).map(|own| own.system).collect();
        let us = systems.iter().filter(|own| **own == UnitSystem::Us).count();
        2 * us > systems.len()
    }

    /// The typical axle that is most like what was answered.
    pub fn typical_axle(&self) -> &'static TypicalAxle {
        let wants_dual = self.tires.is_none_or(|tires| tires.count == TireCount::Dual);
        let fits = |root: &Table| {
            let is_dual = root.tables("wheel").iter().any(|wheel| wheel.word("tires") == "dual");
            root.word("kind") == self.kind() && is_dual == wants_dual
        };
        let distance = |root: &Table| {
            let own = root.optional_table("tube").map(|tube| tube.number("od"));
            own.zip(self.size.as_ref()).map_or(0.0, |(own, (size, _))| (own - size.value).abs())
        };
        let fitting = TYPICAL.iter().filter(|own| fits(document(own).root()));
        let nearest =
            fitting.min_by(|a, b| distance(document(a).root()).total_cmp(&distance(document(b).root())));
        // Each kind has one of either; the tests look.
        nearest.unwrap_or(&TYPICAL[0])
    }

    /// The typical answer to a question, after what was answered before.
    pub fn typical_answer(&self, question: GuidedQuestion) -> String {
        let axle = document(self.typical_axle());
        match question {
            GuidedQuestion::AxleKind => "trailer".to_owned(),
            GuidedQuestion::Tires => TireCount::Dual.word().to_owned(),
            GuidedQuestion::WheelOffset => match base_outset(&axle) {
                0.0 => "0".to_owned(),
                outset => both(outset),
            },
            GuidedQuestion::TireMiddles => {
                both(2.0 * (number(&axle, "wheel_end.mounting_face_at") + self.outset(&axle)))
            }
            GuidedQuestion::SpringSeats => both(2.0 * number(&axle, "seat.at")),
            GuidedQuestion::OutsideSize if self.is_drive() => {
                let side = |key: &str| both(number(&axle, &arm_path(ARM_OF_HOUSING[0], key)));
                format!("{} x {}", side("height"), side("width"))
            }
            GuidedQuestion::OutsideSize => both(number(&axle, "tube.od")),
            GuidedQuestion::Wall => both(number(&axle, self.wall_path())),
            GuidedQuestion::AxleLoad => {
                let load = number(&axle, "loads.rated_load");
                let [us, si] = [UnitSystem::Us, UnitSystem::Si].map(|system| show(load, Kind::Force, system));
                format!("{us}, {si}")
            }
        }
    }

    /// Takes an answer; an empty one leaves the typical value.
    ///
    /// Returns how it was read, where that is not plain.
    ///
    /// # Errors
    /// Text that does not answer the question, and an axle that cannot be; what was answered before stays.
    pub fn answer(&mut self, question: GuidedQuestion, text: &str) -> Result<Option<String>, String> {
        if text.trim().is_empty() {
            return Ok(None);
        }
        let mut tried = self.clone();
        let note = tried.take(question, text.trim())?;
        let file = tried.file("x")?;
        Model::from_bytes(file.as_bytes(), "x").map_err(|problems| {
            let first = problems.iter().next();
            let accepted = |own: &str| format!("; accepted: {own}");
            first.map_or_else(String::new, |own| {
                format!("{}{}", own.message, own.accepted.as_deref().map_or(String::new(), accepted))
            })
        })?;
        *self = tried;
        Ok(note)
    }

    fn take(&mut self, question: GuidedQuestion, text: &str) -> Result<Option<String>, String> {
        let axle = document(self.typical_axle());
        let double = |path: &str| 2.0 * number(&axle, path);
        match question {
            GuidedQuestion::AxleKind => self.kind = Some(kind_of(text)?),
            GuidedQuestion::Tires => {
                let (tires, note) = TiresAnswer::of(text)?;
                self.tires = Some(tires);
                return Ok(note);
            }
            GuidedQuestion::WheelOffset => self.offset = Some(wheel_offset(text)?),
            GuidedQuestion::TireMiddles => {
                self.middles = Some(length_beside(text, double("wheel_end.mounting_face_at"))?);
            }
            GuidedQuestion::SpringSeats => self.seats = Some(length_beside(text, double("seat.at"))?),
            GuidedQuestion::OutsideSize => self.size = Some(self.outside_size(text, &axle)?),
            GuidedQuestion::Wall => self.wall = Some(length_beside(text, number(&axle, self.wall_path()))?),
            GuidedQuestion::AxleLoad => {
                let load = Answer::load(text)?;
                self.load = Some(load.beside(number(&axle, "loads.rated_load"), Kind::Force)?);
            }
        }
        Ok(None)
    }

    /// The diameter of a tube; the height of a housing with its width, if that was given too.
    fn outside_size(&self, text: &str, axle: &Document) -> Result<(Answer, Option<Answer>), String> {
        if !self.is_drive() {
            return Ok((length_beside(text, number(axle, "tube.od"))?, None));
        }
        let side =
            |text: &str, key: &str| length_beside(text, number(axle, &arm_path(ARM_OF_HOUSING[0], key)));
        match text.split_once(['x', 'X', '\u{d7}']) {
            Some((height, width)) => Ok((side(height, "height")?, Some(side(width, "width")?))),
            None => Ok((side(text, "height")?, None)),
        }
    }

    pub(super) fn kind(&self) -> &'static str {
        self.kind.unwrap_or(KINDS[0])
    }

    pub(super) fn wall_path(&self) -> &'static str {
        if self.is_drive() { "housing.wall" } else { "tube.wall" }
    }

    /// How far the middle of the tires lies outboard of the mounting face, m.
    pub(super) fn outset(&self, axle: &Document) -> f64 {
        self.offset.as_ref().map_or_else(|| base_outset(axle), |offset| offset.value)
    }
}

/// A length in both systems, no finer than a tape or a gauge reads.
fn both(value: f64) -> String {
    let inch = display_unit(Kind::Length, UnitSystem::Us).factor;
    let steps = if value < inch { 1e3 } else { 1e2 };
    let us = (value / inch * steps).round() / steps * inch;
    let si = (value * 1e4).round() / 1e4;
    format!("{}, {}", show(us, Kind::Length, UnitSystem::Us), show(si, Kind::Length, UnitSystem::Si))
}

fn kind_of(text: &str) -> Result<&'static str, String> {
    let text = text.to_lowercase();
    let own = KINDS
        .into_iter()
        .find(|kind| kind.starts_with(&text) || text.starts_with(kind.split('-').next().unwrap_or(kind)));
    own.ok_or_else(|| format!("`{text}` is no kind of axle; accepted: trailer or drive"))
}

fn length_beside(text: &str, typical: f64) -> Result<Answer, String> {
    Answer::length(text.trim())?.beside(typical, Kind::Length)
}

/// The outset of a typical axle's wheels, m; none of them is inset.
pub(super) fn base_outset(axle: &Document) -> f64 {
    axle.root().tables("wheel").first().and_then(|wheel| wheel.optional_number("offset")).unwrap_or(0.0)
}

pub(super) fn arm_path(place: usize, key: &str) -> String {
    format!("housing.profile[{place}].{key}")
}

/// A number of a typical axle, which has it: the tests look.
pub(super) fn number(axle: &Document, path: &str) -> f64 {
    axle.number(path).unwrap_or(f64::NAN)
}

/// The file of a typical axle, which is good: the tests look.
pub(super) fn document(axle: &TypicalAxle) -> Document {
    read_bytes(axle.text().as_bytes(), axle.name, &MODEL)
        .unwrap_or_else(|faults| panic!("{}", faults.render()))
}
