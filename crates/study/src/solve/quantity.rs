//! The results of a design that studies tabulate, draw and export: one list for all of them.
//!
//! Names, units and meanings are those of the catalog of the outcome that a result is of; a row here says which of its
//! wheels speaks, and what it costs.

mod of_cups;
mod of_ride;
mod standing;

use std::sync::LazyLock;

use axlebow_axle::{CamberSplit, HeldWave, RideWheel, Side, Sides, TireFace};
use axlebow_model::likely;
use axlebow_results::{Field, Term, Unit, key};
use axlebow_units::Kind;

use super::design::{Beside, Design};
use super::design_cups::DesignCups;
use super::design_ride::DesignRide;

/// A result of a design: what it is called, what it measures and what it means.
#[derive(Debug, Clone)]
pub struct Quantity {
    /// Name in study files, such as `camber-peak-to-peak`.
    pub name: String,
    /// What tables and pictures call it.
    pub words: String,
    /// What it measures.
    pub kind: Kind,
    /// What it means, one sentence.
    pub meaning: String,
    /// What a study must solve for it.
    pub cost: Cost,
    read: Reader,
}

/// What a study must solve for a result.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cost {
    /// The static load case, which every design has.
    Free,
    /// The same; but only the welds of stiffeners have it, so that it is shown where it is asked for.
    Welds,
    /// The static load case with axle and stiffeners one section.
    Composite,
    /// The tire faces.
    Tires,
    /// Waves of wear that grow.
    Cups,
    /// The damping that would end them.
    CupDamping,
    /// The checks of strength.
    Strength,
    /// The load at which the first check of strength binds.
    Rating,
    /// Cracks and bearings under the study's duty.
    Life,
    /// A ride.
    Ride,
}

impl Cost {
    /// Whether every design has such results, asked for or not.
    pub fn is_always_paid(self) -> bool {
        matches!(self, Cost::Free | Cost::Ride)
    }
}

/// How a design gives it.
#[derive(Clone, Copy)]
enum Reader {
    Design(fn(&Design) -> Option<f64>),
    Beside(fn(&Design, &Beside) -> f64),
    /// A part of the camber change of one wheel.
    Split(Side, &'static Field<CamberSplit>),
    /// Of the tire faces, the larger one of both wheels.
    Tires(fn(&TireFace) -> Option<f64>),
    Cups(fn(&DesignCups) -> Option<f64>),
    /// Of the wave of wear that grows fastest.
    Wave(&'static Field<HeldWave>),
    Ride(fn(&DesignRide) -> Option<f64>),
    /// Of a ride, what a wheel says.
    Wheel(Says, &'static Field<RideWheel>),
    /// A part of the peak camber change of the wheel that leans most in a ride.
    PeakSplit(&'static Field<CamberSplit>),
}

/// Which of both wheels says what a ride has done.
#[derive(Debug, Clone, Copy)]
enum Says {
    /// The one with the larger value.
    Larger,
    /// The one with the larger magnitude.
    LargerMagnitude,
    /// The one whose camber moves most.
    CamberMovesMost,
}

impl std::fmt::Debug for Reader {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Reader")
    }
}

/// Two quantities are the same when their names are.
impl PartialEq for Quantity {
    fn eq(&self, other: &Self) -> bool {
        self.name == other.name
    }
}

/// Every result of a design, those of the static load case first, then those of a ride.
///
/// What costs a solution is there only where a study shows it or ranks by it ([`Cost`]). What a ride says is that of the
/// worse wheel; cups and frequency are those of the wheel whose camber moves most.
pub static QUANTITIES: LazyLock<Vec<Quantity>> = LazyLock::new(|| {
    standing::quantities().into_iter().chain(of_cups::quantities()).chain(of_ride::quantities()).collect()
});

impl Quantity {
    /// The quantity of a name.
    ///
    /// # Errors
    /// The name that was likely meant, if that can be told.
    pub fn named(name: &str) -> Result<&'static Quantity, Option<String>> {
        let found = QUANTITIES.iter().find(|quantity| quantity.name == name);
        found.ok_or_else(|| likely(name, QUANTITIES.iter().map(|quantity| quantity.name.as_str())))
    }

    /// Whether it is of a ride, not of the static load case.
    pub fn is_of_ride(&self) -> bool {
        self.cost == Cost::Ride
    }

    /// Its name and SI unit as a key of JSON and CSV, such as `camber_peak_to_peak_rad`.
    pub fn key(&self) -> String {
        key(&self.name, self.kind.si())
    }

    /// Its value in a design, SI, of the ride at a place; NaN where there is none, such as cups of a camber that does
    /// not move, or what an axle without stiffeners has gained by them.
    pub(crate) fn of(&self, design: &Design, ride: usize) -> f64 {
        let ride = || design.rides.get(ride);
        let value = match self.read {
            Reader::Design(value) => value(design),
            Reader::Beside(value) => design.beside.map(|beside| value(design, &beside)),
            Reader::Split(side, part) => part.read.number(design.split.of(side)),
            Reader::Tires(value) => design.tires.as_ref().and_then(|tires| worse(tires, value)),
            Reader::Cups(value) => design.cups.as_ref().and_then(value),
            Reader::Wave(field) => {
                design.cups.as_ref().and_then(|cups| field.read.number(cups.worse().winner()))
            }
            Reader::Ride(value) => ride().and_then(value),
            Reader::Wheel(says, field) => ride().and_then(|ride| says.of(ride, field)),
            Reader::PeakSplit(part) => {
                ride().and_then(|ride| part.read.number(&leaning(ride).camber_peak_split))
            }
        };
        value.filter(|value| value.is_finite()).unwrap_or(f64::NAN)
    }

    /// A result as the catalog has it.
    fn of_term(term: &Term, words: &str, cost: Cost, read: Reader) -> Quantity {
        let kind = match term.unit {
            Unit::Of(kind) => kind,
            Unit::Si(_) | Unit::None => Kind::Ratio,
        };
        let (name, meaning) = (term.name.to_owned(), term.meaning.to_owned());
        Quantity { name, words: words.to_owned(), kind, meaning, cost, read }
    }
}

/// A result that only studies have.
struct OfStudies {
    name: &'static str,
    words: &'static str,
    kind: Kind,
    meaning: &'static str,
}

impl OfStudies {
    fn read(self, cost: Cost, read: Reader) -> Quantity {
        let OfStudies { name, words, kind, meaning } = self;
        Quantity {
            name: name.to_owned(),
            words: words.to_owned(),
            kind,
            meaning: meaning.to_owned(),
            cost,
            read,
        }
    }
}

impl Says {
    /// What the wheel says that is to be heard.
    fn of(self, ride: &DesignRide, field: &Field<RideWheel>) -> Option<f64> {
        let value = |side: Side| field.read.number(ride.wheels.of(side));
        let each = || Side::BOTH.into_iter().filter_map(value);
        match self {
            Says::Larger => each().reduce(f64::max),
            Says::LargerMagnitude => each().reduce(|a, b| if b.abs() > a.abs() { b } else { a }),
            Says::CamberMovesMost => field.read.number(ride.wheel_with_larger_camber_range()),
        }
    }
}

/// The larger one of both wheels.
fn worse(tires: &Sides<TireFace>, value: fn(&TireFace) -> Option<f64>) -> Option<f64> {
    Side::BOTH.into_iter().filter_map(|side| value(tires.of(side))).reduce(f64::max)
}

/// The wheel that leans more.
fn leaning(ride: &DesignRide) -> &RideWheel {
    let Sides { left, right } = &ride.wheels;
    if right.camber_peak.abs() > left.camber_peak.abs() { right } else { left }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_name_that_pages_pick_out_is_a_result() {
        let declared =
            include_str!("name.rs").lines().filter_map(|line| line.strip_suffix("\";")?.split('"').nth(1));
        let missing: Vec<&str> = declared.filter(|name| Quantity::named(name).is_err()).collect();
        assert_eq!(missing, [""; 0]);
    }
}
