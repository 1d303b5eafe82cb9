//! A payback that is asked for, and its outcome.

use std::path::PathBuf;

use axlebow_axle::outcome::Warning;
use axlebow_axle::{FlexOutcome, LoadCase, flex};
use axlebow_model::{Assumed, Model};
use axlebow_numerics::Distribution;

use super::cash_flow::CashFlowOutcome;
use super::draws::{DrawOptions, PaybackDraws};
use super::sensitivity::{BreakEven, Swing};
use super::terms::{PaybackInput, PaybackTerms, RemedyTerms};
use super::wear::{AxleChange, PaybackError, Rotation};

/// Mass that is none, kg.
const NOTHING: f64 = 1e-6;

/// Whether a remedy of an axle pays, as a file asks it.
#[derive(Debug, Clone)]
pub struct PaybackStudy {
    /// What it is called.
    pub name: String,
    /// What the reader must know.
    pub note: Option<String>,
    /// The currency, a label.
    pub currency: String,
    /// What the remedy is called.
    pub remedy: String,
    /// The axle of today.
    pub base: Model,
    /// The remedied axle.
    pub remedied: Model,
    /// Name of the load case for the tire faces.
    pub case: String,
    /// What becomes of tires while they are on the axle.
    pub rotation: Rotation,
    /// Prices and use.
    pub terms: PaybackTerms,
    /// Inputs that the file gives, in their order.
    pub inputs: Vec<PaybackInput>,
    /// Ranges of inputs.
    pub ranges: Vec<PaybackRange>,
    /// The draws.
    pub draws: DrawOptions,
    /// Defaults in use.
    pub assumed: Vec<Assumed>,
    /// How values were read, where that is not plain from the files.
    pub notes: Vec<String>,
    /// The model files.
    pub files: Vec<PathBuf>,
}

/// How an input is distributed.
#[derive(Debug, Clone, PartialEq)]
pub struct PaybackRange {
    /// The input.
    pub input: PaybackInput,
    /// Its distribution.
    pub distribution: Distribution,
}

/// Result of [`PaybackStudy::run`].
#[derive(Debug, Clone, PartialEq)]
pub struct PaybackOutcome {
    /// What the study is called.
    pub name: String,
    /// What the reader must know.
    pub note: Option<String>,
    /// The currency, a label.
    pub currency: String,
    /// What the remedy is called.
    pub remedy: String,
    /// Name of the load case.
    pub case: String,
    /// What becomes of tires while they are on the axle.
    pub rotation: Rotation,
    /// Prices and use.
    pub terms: PaybackTerms,
    /// What the remedy does to mass and wear of an axle.
    pub change: AxleChange,
    /// What that brings.
    pub cash_flow: CashFlowOutcome,
    /// The break-even of each input.
    pub break_even: Vec<BreakEven>,
    /// What each input does, those with a range first, the widest of each first.
    pub swings: Vec<Swing>,
    /// What it may come to; none where no input has a range.
    pub draws: Option<PaybackDraws>,
    /// Whether the remedied axle has stiffeners, so that its reader may come to weld.
    pub stiffened: bool,
    /// Doubts about the axles and the answer.
    pub warnings: Vec<Warning>,
}

impl PaybackOutcome {
    /// Whether the remedy pays, with the values that the file gives.
    pub fn pays(&self) -> bool {
        self.cash_flow.net_present_value > 0.0
    }
}

impl PaybackStudy {
    /// Solves both axles and works out what the remedy brings.
    ///
    /// # Errors
    /// [`PaybackError`].
    pub fn run(&self) -> Result<PaybackOutcome, PaybackError> {
        let models = [&self.base, &self.remedied];
        let [today, remedied] = [self.solved(models[0])?, self.solved(models[1])?];
        let change = self.change(models, remedied.unsprung_mass - today.unsprung_mass)?;
        Ok(PaybackOutcome {
            name: self.name.clone(),
            note: self.note.clone(),
            currency: self.currency.clone(),
            remedy: self.remedy.clone(),
            case: self.case.clone(),
            rotation: self.rotation,
            terms: self.terms,
            cash_flow: self.terms.outcome(&change),
            break_even: self.break_even(&change),
            swings: self.swings(&change),
            draws: self.drawn(&change),
            stiffened: remedied.cases.iter().any(|case| case.stiffening.is_some()),
            warnings: self.warnings(&change, [today, remedied]),
            change,
        })
    }

    /// What a change from one axle to another is worth for each axle over the years held, today, before anything is paid for it.
    ///
    /// # Errors
    /// [`PaybackError`].
    pub fn worth_of_an_axle(&self, models: [&Model; 2]) -> Result<f64, PaybackError> {
        let [today, changed] = models.map(|model| model.axle.unsprung_mass());
        let change = self.change(models, changed - today)?;
        let free = PaybackTerms { remedy: RemedyTerms::default(), ..self.terms };
        let axles = f64::from(self.terms.fleet.vehicles) * f64::from(self.terms.fleet.axles);
        Ok(free.outcome(&change).net_present_value / axles)
    }

    /// What becomes of mass (kg more) and wear from one axle to another.
    fn change(&self, models: [&Model; 2], mass: f64) -> Result<AxleChange, PaybackError> {
        let axles = models.map(|model| (&model.axle, self.case_of(model)));
        AxleChange::between(axles, mass, self.rotation)
    }

    fn solved(&self, model: &Model) -> Result<FlexOutcome, PaybackError> {
        Ok(flex(&model.axle, std::slice::from_ref(self.case_of(model)))?)
    }

    /// The load case of a model; the reader of the file has made sure that it has one.
    fn case_of<'m>(&self, model: &'m Model) -> &'m LoadCase {
        model.cases.iter().find(|case| case.name == self.case).unwrap_or(&model.cases[0])
    }

    fn warnings(&self, change: &AxleChange, [today, remedied]: [FlexOutcome; 2]) -> Vec<Warning> {
        let mut warnings = today.warnings;
        warnings.extend(
            remedied
                .warnings
                .into_iter()
                .map(|own| Warning { text: format!("{}: {}", self.remedy, own.text), advice: own.advice }),
        );
        let is_free = self.terms.mass.payload == 0.0 && self.terms.mass.fuel == 0.0;
        if change.mass.abs() > NOTHING && is_free {
            warnings.push(Warning {
                text: format!(
                    "the remedy changes the mass by {:.1} kg, and a kilogram has no price",
                    change.mass
                ),
                advice: "give `payload` or `fuel` in `[mass]`, or know that it counts for nothing".to_owned(),
            });
        }
        warnings
    }
}
