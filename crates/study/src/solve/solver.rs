//! Solves designs one after the other with what one leaves to the next.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry;
use std::sync::{Mutex, PoisonError};

use axlebow_axle::{Axle, LoadCase, SeatLayouts, StaticSolver, StrengthOptions, seat_layouts};
use axlebow_model::{Document, ModelError, VariableAxle};

use super::design::in_words;
use super::quantity::Cost;
use super::setting::Setting;
use crate::ask::{Point, Study};
use crate::rating::{RatingOptions, rating};

/// What solving a design leaves to the next: a built axle of each variant and choice, and what is known of its line.
#[derive(Debug, Default)]
pub(crate) struct Solver {
    axles: BTreeMap<VariantKey, (VariableAxle, StaticSolver)>,
    /// Found at the first design.
    extras: Option<Extras>,
    /// Meshes that are taken over from another design.
    layouts: SeatLayouts,
}

/// What designs have in common that differ in numbers only: their variant and their choices.
type VariantKey = (usize, Vec<usize>);

/// Most axles that a solver keeps.
const KEPT: usize = 256;

/// Results that cost a solution of their own: whether they are asked for.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Extras {
    /// With axle and stiffeners one section.
    pub composite: bool,
    /// At the tire faces.
    pub tires: bool,
    /// Waves of wear.
    pub cups: bool,
    /// The damping that would end them.
    pub cup_damping: bool,
    /// Checks of strength.
    pub strength: bool,
    /// The load at which one binds.
    pub rating: bool,
    /// Cracks and bearings under the duty.
    pub life: bool,
}

/// An axle ready to be solved.
pub(crate) struct Ready<'a> {
    pub axle: &'a Axle,
    pub case: &'a LoadCase,
    /// What strength is asked for and in which load cases, where the study asks for checks of it.
    pub strength: Option<(StrengthOptions, Vec<LoadCase>)>,
    pub extras: Extras,
    /// The load that it may carry, where the study asks for it, N.
    pub rating: Option<f64>,
    /// What is known of its line.
    pub statics: &'a mut StaticSolver,
}

impl Solver {
    /// Builds the axle of a design and does something with it.
    ///
    /// # Errors
    /// Why there is no such axle, in words; those of `then`.
    pub fn with_axle<T>(
        &mut self,
        study: &Study,
        point: &Point,
        then: impl FnOnce(Ready) -> Result<T, String>,
    ) -> Result<T, String> {
        if self.axles.len() >= KEPT {
            self.axles.clear();
        }
        let settings = study.settings(point);
        let (variable, statics) = match self.axles.entry(study.kin(point)) {
            Entry::Occupied(kept) => kept.into_mut(),
            Entry::Vacant(place) => {
                let made = study.variable_axle(point.variant, &settings);
                place.insert((made.map_err(|refusal| refusal.to_string())?, StaticSolver::default()))
            }
        };
        for (number, (_, value)) in numbers(&settings).enumerate() {
            variable.set(number, value).map_err(|refusal| refusal.to_string())?;
        }
        let is_as_built = study.seat_tables.is_empty() && self.layouts == SeatLayouts::default();
        if !(variable.keeps_line() && is_as_built) {
            statics.new_line();
        }
        let extras = *self.extras.get_or_insert_with(|| Extras::of(study));
        let asked = extras.strength || extras.life;
        let strength = asked.then(|| study.strength_options(variable)).transpose()?;
        let rating = extras.rating.then(|| study.rating_of(point.variant, &settings)).transpose()?.flatten();
        let (axle, case) = variable.built().map_err(|problems| in_words(&problems))?;
        if is_as_built {
            return then(Ready { axle, case, strength, extras, rating, statics });
        }
        let (seat_tables, seat_layouts) = (study.seat_tables.clone(), self.layouts.clone());
        let axle = Axle { seat_tables, seat_layouts, ..axle.clone() };
        then(Ready { axle: &axle, case, strength, extras, rating, statics })
    }
}

impl Solver {
    /// Lets the designs that follow have the shells of their seats meshed as those of one near them, for differences.
    pub fn mesh_as(&mut self, study: &Study, point: &Point) {
        self.mesh_freely();
        let own = self.with_axle(study, point, |ready| Ok(seat_layouts(ready.axle)));
        self.layouts = own.unwrap_or_default();
    }

    /// Lets each design that follows have a mesh of its own.
    pub fn mesh_freely(&mut self) {
        self.layouts = SeatLayouts::default();
    }
}

impl Extras {
    fn of(study: &Study) -> Self {
        Extras {
            composite: study.asks_for(Cost::Composite),
            tires: study.asks_for(Cost::Tires),
            cups: study.asks_for(Cost::Cups) || study.asks_for(Cost::CupDamping),
            cup_damping: study.asks_for(Cost::CupDamping),
            strength: study.asks_for(Cost::Strength),
            rating: study.asks_for(Cost::Rating),
            life: study.asks_for(Cost::Life),
        }
    }
}

/// The numbers among settings that are of the model, with their paths.
fn numbers<'s>(settings: &'s [Setting<'s>]) -> impl Iterator<Item = (&'s str, f64)> {
    settings.iter().filter(|setting| !setting.is_of_road()).filter_map(Setting::number)
}

impl Study {
    fn kin(&self, point: &Point) -> VariantKey {
        let each = self.varied.iter().zip(&point.values);
        let chosen = each.filter(|(varied, _)| !varied.choices.is_empty()).map(|(_, value)| *value as usize);
        (point.variant, chosen.collect())
    }

    /// What strength is asked for and the load cases that it is checked in.
    fn strength_options(
        &self,
        variable: &mut VariableAxle,
    ) -> Result<(StrengthOptions, Vec<LoadCase>), String> {
        let mut cases = variable.load_cases().map_err(|problems| in_words(&problems))?;
        cases.retain(|case| self.strength_cases.is_empty() || self.strength_cases.contains(&case.name));
        Ok((variable.strength(), cases))
    }

    /// The load that a design may carry, N: zero where a check is past its limit at any load, none where none binds.
    fn rating_of(&self, variant: usize, settings: &[Setting]) -> Result<Option<f64>, String> {
        let document = self.document(variant, settings).map_err(|refusal| refusal.to_string())?;
        let ask = RatingOptions { offsets: Vec::new(), cases: self.strength_cases.clone(), lasting: None };
        let outcome = rating(&document, &ask)?;
        Ok(outcome.own().and_then(|own| own.load.or(own.limiter.as_ref().map(|_| 0.0))))
    }

    /// A variant with the settings of a design made in it.
    fn document(&self, variant: usize, settings: &[Setting]) -> Result<Document, ModelError> {
        let mut document = self.variants[variant].document.clone();
        for setting in settings.iter().filter(|setting| !setting.is_of_road()) {
            setting.make(&mut document)?;
        }
        Ok(document)
    }

    /// The axle of a variant with the settings of a design made in it.
    fn variable_axle(&self, variant: usize, settings: &[Setting]) -> Result<VariableAxle, ModelError> {
        // A key that the file leaves out has its place from now on.
        let document = self.document(variant, settings)?;
        let paths: Vec<&str> = numbers(settings).map(|(path, _)| path).collect();
        VariableAxle::of(&document, &paths, &self.case)
    }
}

/// Solvers that nobody uses at the moment.
#[derive(Debug, Default)]
pub(crate) struct Solvers(Mutex<Vec<Solver>>);

impl Solvers {
    /// Lends a solver; which one makes no difference to results.
    pub fn lend<T>(&self, then: impl FnOnce(&mut Solver) -> T) -> T {
        let idle = || self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let mut solver = idle().pop().unwrap_or_default();
        let result = then(&mut solver);
        idle().push(solver);
        result
    }
}
