//! What the model says where a shop has read.

use axlebow_axle::{
    Axle, AxleError, Ground, LoadCase, ModesOutcome, ShopReading, Sides, StaticDesign, TireFace, modes,
    tire_faces,
};
use axlebow_model::{Document, Model, ReadQuantity, Reading, RemovedRib};

use super::unknown::Unknown;
use crate::solve::in_words;

/// Modes that are looked through.
pub(crate) const MODES: usize = 12;

/// A model's value of each reading, or why there is none.
pub(crate) fn predicted(axle: &Axle, readings: &[Reading]) -> Vec<Result<f64, String>> {
    let mut values = vec![Err(String::new()); readings.len()];
    for ground in [Ground::Standing, Ground::Rolling] {
        let on_it: Vec<usize> = (0..readings.len()).filter(|i| readings[*i].ground == ground).collect();
        if on_it.is_empty() {
            continue;
        }
        let axle = Axle { ground, ..axle.clone() };
        let mut solved = Solved {
            axle: &axle,
            design: StaticDesign::of(&axle),
            standing: Vec::new(),
            moving: Vec::new(),
            worn: Vec::new(),
        };
        for i in on_it {
            values[i] = solved.value(&readings[i]).map_err(|error| error.to_string()).flatten();
        }
    }
    values
}

/// The axle of a model with other values of the unknowns.
pub(crate) fn axle_with(document: &Document, unknowns: &[Unknown], values: &[f64]) -> Result<Axle, String> {
    let mut document = document.clone();
    for (unknown, value) in unknowns.iter().zip(values) {
        document.set_number(&unknown.path, *value).map_err(|refusal| refusal.to_string())?;
    }
    Ok(Model::of(&document).map_err(|problems| in_words(&problems))?.axle)
}

/// An axle on one ground, with what was solved of it.
struct Solved<'a> {
    axle: &'a Axle,
    design: Result<StaticDesign<'a>, AxleError>,
    standing: Vec<(LoadCase, Result<ShopReading, AxleError>)>,
    moving: Vec<(f64, Result<ModesOutcome, AxleError>)>,
    worn: Vec<(LoadCase, Result<Sides<TireFace>, AxleError>)>,
}

impl Solved<'_> {
    fn value(&mut self, reading: &Reading) -> Result<Result<f64, String>, AxleError> {
        match &reading.quantity {
            ReadQuantity::Camber(side) => Ok(Ok(*self.standing(&reading.load)?.camber.of(*side))),
            ReadQuantity::Toe(side) => Ok(Ok(*self.standing(&reading.load)?.toe.of(*side))),
            ReadQuantity::Bow => Ok(Ok(self.standing(&reading.load)?.bow)),
            ReadQuantity::NaturalFrequency(name) => {
                let moving = self.moving(reading.load.actions.axle_load)?;
                let found = moving.modes.iter().find(|mode| mode.name == *name);
                let known =
                    || moving.modes.iter().map(|mode| mode.name.as_str()).collect::<Vec<_>>().join(", ");
                let lacking = || format!("it has no mode `{name}`; accepted: {}", known());
                Ok(found.map(|mode| mode.frequency).ok_or_else(lacking))
            }
            ReadQuantity::TreadDepth(rib) => self.tread_left(rib, &reading.load),
        }
    }

    fn standing(&mut self, case: &LoadCase) -> Result<ShopReading, AxleError> {
        if let Some((_, known)) = self
            .standing
            .iter()
            .find(|(own, _)| own.actions == case.actions && own.dynamic_factor == case.dynamic_factor)
        {
            return known.clone();
        }
        let design = self.design.as_ref().map_err(Clone::clone)?;
        let solved = design.shop_reading(case);
        self.standing.push((case.clone(), solved.clone()));
        solved
    }

    /// Depth that a rib has left, m: what is worn off a thin tread is not held against its stiffness.
    fn tread_left(&mut self, rib: &RemovedRib, case: &LoadCase) -> Result<Result<f64, String>, AxleError> {
        let wheel = self.axle.wheels.of(rib.side);
        let tire = wheel.tires().position(|place| place.slot == rib.tire);
        let new = wheel.tread().depth;
        let faces = self.worn(case)?;
        let own = tire.and_then(|tire| faces.of(rib.side).worn.tires[tire].ribs.get(rib.rib));
        let rate = own.and_then(|own| own.worn_per_distance);
        Ok(rate.map(|rate| new - rate * rib.distance).ok_or_else(|| "it has no such rib".to_owned()))
    }

    fn worn(&mut self, case: &LoadCase) -> Result<&Sides<TireFace>, AxleError> {
        let place = self.worn.iter().position(|(own, _)| own.actions == case.actions);
        let place = match place {
            Some(place) => place,
            None => {
                let design = self.design.as_ref().map_err(Clone::clone)?;
                let faces = design.case(case).and_then(|solved| tire_faces(self.axle, &solved));
                self.worn.push((case.clone(), faces));
                self.worn.len() - 1
            }
        };
        self.worn[place].1.as_ref().map_err(Clone::clone)
    }

    fn moving(&mut self, load: f64) -> Result<&ModesOutcome, AxleError> {
        let place = self.moving.iter().position(|(own, _)| *own == load);
        let place = place.unwrap_or_else(|| {
            self.moving.push((load, modes(self.axle, load, MODES)));
            self.moving.len() - 1
        });
        self.moving[place].1.as_ref().map_err(Clone::clone)
    }
}
