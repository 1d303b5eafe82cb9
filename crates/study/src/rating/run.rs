//! From a model file to the load that its axle may carry.

use std::cell::RefCell;
use std::rc::Rc;

use axlebow_axle::{
    CheckedPart, DetailLife, Governing, LifeOptions, LoadCase, STANDARD_GRAVITY, StrengthOutcome, life,
    strength,
};
use axlebow_model::{Document, DutyFile, Model};
use rayon::prelude::*;

use super::limit_load::{LimitLoad, limit_load};
use super::outcome::{Limiter, PartLoad, RatingOutcome, RatingPoint};

/// Least load that is looked at, over the weight of axle and wheels, which it must lift.
const ABOVE_WEIGHT: f64 = 1.02;
/// How near loads are found, as a share of them: those of checks, and those of lives, each of which drives the duty's roads.
const NEAR: f64 = 1e-8;
const NEAR_BY_LIFE: f64 = 1e-3;
/// Offsets that differ by less are one, m.
const ALIKE: f64 = 1e-6;

/// What is asked of a rating.
#[derive(Debug, Clone)]
pub struct RatingOptions {
    /// Offsets of the wheels, m outboard of the mounting face; the model's own is added.
    pub offsets: Vec<f64>,
    /// Names of the load cases that count; all of the model where none is given.
    pub cases: Vec<String>,
    /// How long the axle must last; not looked at where none is stated.
    pub lasting: Option<Lasting>,
}

/// How long no detail may crack.
#[derive(Debug, Clone)]
pub struct Lasting {
    /// What the axle goes through; its loads follow the rated and the unladen load.
    pub duty: DutyFile,
    /// Years until 5 % of the details that crack first have a crack.
    pub years: f64,
}

/// The axle load at which the first check of [`strength`] binds, over the wheels' offset: at each offset the model's
/// rated load is moved, and with it every case that is made from it, until the check that uses most of its limit uses all
/// of it. The unladen load stays.
///
/// # Errors
/// A model that cannot be built or checked as it is, in words. An offset at which that is so is a point with its reason.
pub fn rating(document: &Document, ask: &RatingOptions) -> Result<RatingOutcome, String> {
    let model = Model::of(document).map_err(|problems| problems.render())?;
    let own_offset = model.axle.wheels.left.outset();
    let as_it_is = strength(&model.axle, &chosen(&model, &ask.cases), model.strength);
    let as_it_is = as_it_is.map_err(|error| error.to_string())?;
    let mut offsets: Vec<f64> =
        ask.offsets.iter().copied().filter(|offset| (offset - own_offset).abs() >= ALIKE).collect();
    offsets.push(own_offset);
    offsets.sort_by(f64::total_cmp);
    offsets.dedup();
    let rated = Rated { document, model: &model, ask };
    let points = offsets.into_par_iter().map(|offset| rated.point(offset)).collect();
    Ok(RatingOutcome {
        stated_load: model.axle.loading.rated_load,
        own_offset,
        ask: model.strength,
        lasting: ask.lasting.as_ref().map(|own| (own.duty.name.clone(), own.years)),
        points,
        not_made: as_it_is.not_made,
        warnings: as_it_is.warnings,
    })
}

/// The load cases of a model that count.
fn chosen(model: &Model, names: &[String]) -> Vec<LoadCase> {
    let counts = |case: &&LoadCase| names.is_empty() || names.contains(&case.name);
    model.cases.iter().filter(counts).cloned().collect()
}

/// A model under a rated load (N).
fn under(document: &Document, load: f64) -> Result<Model, String> {
    let mut document = document.clone();
    document.set_number("loads.rated_load", load).map_err(|error| error.to_string())?;
    Model::of(&document).map_err(|problems| problems.render())
}

/// The detail of which 5 % have a crack first, under a rated load (N).
fn first_to_crack(document: &Document, lasting: &Lasting, load: f64) -> Result<Option<DetailLife>, String> {
    let model = under(document, load)?;
    let duty = lasting.duty.duty(&model.axle).map_err(|error| error.to_string())?;
    let ask = LifeOptions::from(&model.strength);
    let outcome = life(&model.axle, &duty, ask).map_err(|error| error.to_string())?;
    Ok(outcome.details.into_iter().min_by(|a, b| a.years[0].total_cmp(&b.years[0])))
}

/// A model whose load and offset are moved.
struct Rated<'a> {
    document: &'a Document,
    model: &'a Model,
    ask: &'a RatingOptions,
}

impl Rated<'_> {
    fn point(&self, offset: f64) -> RatingPoint {
        match self.loads(offset) {
            Ok(parts) => RatingPoint::of(offset, parts),
            Err(reason) => RatingPoint { reason: Some(reason), ..RatingPoint::of(offset, Vec::new()) },
        }
    }

    /// The load of each part that is checked.
    fn loads(&self, offset: f64) -> Result<Vec<PartLoad>, String> {
        let least = ABOVE_WEIGHT * STANDARD_GRAVITY * self.model.axle.unsprung_mass();
        let first = self.model.axle.loading.rated_load;
        let document = self.at_offset(offset)?;
        let checks = Under::new(|load| self.checked(&document, load));
        let checked = checks.at(first)?;
        let parts = CheckedPart::ALL.into_iter().filter(|part| checked.governing_of(*part).is_some());
        let parts = parts.map(|part| {
            let binding = |load: f64| {
                Ok(checks
                    .at(load)?
                    .governing_of(part)
                    .map(|own| Binding { used: own.placed.check.utilization(), limiter: Limiter::of(&own) }))
            };
            PartLoad::of(part, binding, ([first, least], NEAR))
        });
        let lasting = self.ask.lasting.as_ref().map(|own| {
            let cracks = Under::new(|load| first_to_crack(&document, own, load));
            let binding = |load: f64| {
                Ok(cracks.at(load)?.as_ref().as_ref().map(|detail| Binding {
                    used: own.years / detail.years[0],
                    limiter: Limiter::of_crack(detail),
                }))
            };
            PartLoad::of(CheckedPart::Fatigue, binding, ([first, least], NEAR_BY_LIFE))
        });
        parts.chain(lasting).collect()
    }

    /// The checks under a rated load (N).
    fn checked(&self, document: &Document, load: f64) -> Result<StrengthOutcome, String> {
        let model = under(document, load)?;
        let cases = chosen(&model, &self.ask.cases);
        strength(&model.axle, &cases, model.strength).map_err(|error| error.to_string())
    }

    /// The model with its wheels at an offset (m), as a file would say it; untouched at its own.
    fn at_offset(&self, offset: f64) -> Result<Document, String> {
        let mut document = self.document.clone();
        if offset == self.model.axle.wheels.left.outset() {
            return Ok(document);
        }
        for number in 0..self.document.root().tables("wheel").len() {
            let wheel = &self.document.root().tables("wheel")[number];
            let outset =
                if wheel.flag("reversed") { wheel.number("disc_thickness") - offset } else { offset };
            let mut set = |key: &str, text: &str| {
                document.set(&format!("wheel[{number}].{key}"), text).map_err(|error| error.to_string())
            };
            match outset {
                0.0 => set("position", "zeroset")?,
                _ => {
                    set("position", if outset > 0.0 { "outset" } else { "inset" })?;
                    set("offset", &format!("{:?} m", outset.abs()))?;
                }
            }
        }
        Ok(document)
    }
}

/// How much of its limit a part uses, and by what.
struct Binding {
    used: f64,
    limiter: Limiter,
}

impl PartLoad {
    /// The load at which a part binds.
    ///
    /// - `binding`: what binds it under a rated load (N); none where nothing does
    /// - `loads`: as [`limit_load`] takes them
    fn of(
        part: CheckedPart,
        binding: impl Fn(f64) -> Result<Option<Binding>, String>,
        ([first, least], near): ([f64; 2], f64),
    ) -> Result<Self, String> {
        let used = |load: f64| Ok::<_, String>(binding(load)?.map_or(0.0, |own| own.used));
        let limiter = |load: f64| Ok::<_, String>(binding(load)?.map(|own| own.limiter));
        let (load, limiter) = match limit_load(used, [first, least], near)? {
            LimitLoad::At(load) => (Some(load), limiter(load)?),
            LimitLoad::Always => (None, limiter(least)?),
            LimitLoad::Never => (None, None),
        };
        Ok(PartLoad { part, load, limiter })
    }
}

/// What is worked out under one rated load (N) after the other, each once.
struct Under<T, F> {
    work_out: F,
    made: RefCell<Vec<(f64, Rc<T>)>>,
}

impl<T, F: Fn(f64) -> Result<T, String>> Under<T, F> {
    fn new(work_out: F) -> Self {
        Under { work_out, made: RefCell::default() }
    }

    fn at(&self, load: f64) -> Result<Rc<T>, String> {
        let known = self.made.borrow().iter().find(|(own, _)| *own == load).map(|(_, made)| made.clone());
        if let Some(made) = known {
            return Ok(made);
        }
        let made = Rc::new((self.work_out)(load)?);
        self.made.borrow_mut().push((load, made.clone()));
        Ok(made)
    }
}

impl RatingPoint {
    /// The part that binds first limits; one that is past its limit at any load before all others.
    fn of(offset: f64, parts: Vec<PartLoad>) -> Self {
        let always = parts.iter().find(|own| own.load.is_none() && own.limiter.is_some());
        let least = parts.iter().filter(|own| own.load.is_some()).min_by(|a, b| {
            let load = |own: &PartLoad| own.load.unwrap_or(f64::INFINITY);
            load(a).total_cmp(&load(b))
        });
        let first = always.or(least);
        let limiter = first.and_then(|own| own.limiter.clone());
        let reason = match (always, least) {
            (Some(_), _) => Some("a check is past its limit at any load".to_owned()),
            (None, None) => Some("no check binds at any load".to_owned()),
            _ => None,
        };
        RatingPoint { offset, load: first.and_then(|own| own.load), limiter, parts, reason }
    }
}

impl Limiter {
    fn of_crack(detail: &DetailLife) -> Self {
        Limiter {
            part: CheckedPart::Fatigue,
            what: "first crack".to_owned(),
            place: detail.name.clone(),
            case: None,
            advice: "see `axlebow life`: a smoother detail, less stress or another duty",
        }
    }

    fn of(governing: &Governing) -> Self {
        let placed = governing.placed;
        Limiter {
            part: placed.part,
            what: placed.check.what.clone(),
            place: placed.place.clone(),
            case: governing.case.map(|case| case.name.clone()),
            advice: placed.check.advice,
        }
    }
}
