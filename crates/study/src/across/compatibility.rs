//! Which tire forgives which axle: inner-shoulder wear of every axle on every tire at every wheel offset.

use axlebow_axle::outcome::Warning;
use axlebow_axle::{Axle, AxleError, LoadCase, Side, Sides, tires};
use axlebow_model::TireFile;
use rayon::prelude::*;

use crate::findings::without_numbers;

/// An axle of the table, with the case that it is loaded by.
#[derive(Debug, Clone)]
pub struct TableAxle {
    /// What it is called.
    pub name: String,
    /// The axle.
    pub axle: Axle,
    /// Its load.
    pub case: LoadCase,
}

/// What is put together: every axle with every tire at every offset.
#[derive(Debug, Clone)]
pub struct Compatibility {
    /// The axles.
    pub axles: Vec<TableAxle>,
    /// Tires to put on them; the axles' own where there are none.
    pub tires: Vec<TireFile>,
    /// Offsets of the wheels, m, positive outset; the axles' own where there are none.
    pub offsets: Vec<f64>,
}

/// Result of [`Compatibility::run`].
#[derive(Debug, Clone, PartialEq)]
pub struct CompatibilityOutcome {
    /// Name of the load case.
    pub case: String,
    /// Names of the axles, one for each row.
    pub axles: Vec<String>,
    /// Tire and offset of each column.
    pub columns: Vec<TireColumn>,
    /// For each axle each column.
    pub cells: Vec<Vec<TireCell>>,
    /// Doubts about the axles, each once, with the name of the first axle that has it.
    pub warnings: Vec<Warning>,
}

/// A column of the table.
#[derive(Debug, Clone, PartialEq)]
pub struct TireColumn {
    /// Name of the tire; none for the axles' own.
    pub tire: Option<String>,
    /// Offset of the wheels, m; none for the axles' own.
    pub offset: Option<f64>,
}

/// One axle on one tire at one offset: the wheel end whose inner shoulder wears most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TireCell {
    /// Camber against the road, rad.
    pub camber: f64,
    /// How fast the inner shoulder uses its tread's depth up, over the mean of the first axle on the first tire, upright
    /// and straight; none where that does not wear.
    pub rate: Option<f64>,
    /// Wear of the inner shoulder over that of the same rib upright; none where that does not wear.
    pub against_upright: Option<f64>,
    /// Wear of the inner over that of the outer shoulder of the innermost tire; none where the outer does not wear.
    pub shoulders: Option<f64>,
}

/// A cell before it is compared with the first one.
struct Raw {
    cell: TireCell,
    /// Wear of the inner shoulder and mean wear upright, over the tread's depth.
    rates: [f64; 2],
    warnings: Vec<Warning>,
}

impl Compatibility {
    /// Solves every cell.
    ///
    /// # Errors
    /// As [`axlebow_axle::tires`]; a tread that is wider than a tire, a wheel that cannot be.
    pub fn run(&self) -> Result<CompatibilityOutcome, AxleError> {
        let columns = self.columns();
        let all: Vec<(usize, usize)> = (0..self.axles.len())
            .flat_map(|row| (0..columns.len()).map(move |column| (row, column)))
            .collect();
        let raw: Vec<Raw> =
            all.par_iter().map(|(row, column)| self.cell(*row, *column)).collect::<Result<_, _>>()?;
        let base = raw.first().map_or(0.0, |first| first.rates[1]);
        let finished = |raw: &Raw| TireCell { rate: (base > 0.0).then(|| raw.rates[0] / base), ..raw.cell };
        let rows = raw.chunks(columns.len().max(1));
        Ok(CompatibilityOutcome {
            case: self.axles.first().map_or(String::new(), |first| first.case.name.clone()),
            axles: self.axles.iter().map(|axle| axle.name.clone()).collect(),
            columns,
            cells: rows.map(|row| row.iter().map(finished).collect()).collect(),
            warnings: self.warnings(&raw),
        })
    }

    /// Warnings of all cells, each once.
    fn warnings(&self, raw: &[Raw]) -> Vec<Warning> {
        let columns = raw.len() / self.axles.len().max(1);
        let (mut texts, mut all) = (Vec::new(), Vec::new());
        for (cell, raw) in raw.iter().enumerate() {
            let axle = &self.axles[cell / columns].name;
            for own in &raw.warnings {
                let kind = without_numbers(&own.text);
                if !texts.contains(&kind) {
                    texts.push(kind);
                    all.push(Warning { text: format!("{axle}: {}", own.text), advice: own.advice.clone() });
                }
            }
        }
        all
    }

    /// Tires, each at every offset.
    fn columns(&self) -> Vec<TireColumn> {
        let tires: Vec<Option<String>> = match self.tires.is_empty() {
            true => vec![None],
            false => self.tires.iter().map(|tire| Some(tire.name.clone())).collect(),
        };
        let offsets: Vec<Option<f64>> = match self.offsets.is_empty() {
            true => vec![None],
            false => self.offsets.iter().copied().map(Some).collect(),
        };
        let column = |tire: &Option<String>| {
            let tire = tire.clone();
            offsets
                .iter()
                .map(move |offset| TireColumn { tire: tire.clone(), offset: *offset })
                .collect::<Vec<_>>()
        };
        tires.iter().flat_map(column).collect()
    }

    fn cell(&self, row: usize, column: usize) -> Result<Raw, AxleError> {
        let TableAxle { axle, case, .. } = &self.axles[row];
        let offsets = self.offsets.len().max(1);
        let fitted = match self.tires.get(column / offsets) {
            Some(tire) => tire.fitted(axle)?,
            None => axle.clone(),
        };
        let set = match self.offsets.get(column % offsets) {
            Some(offset) => at_offset(&fitted, *offset)?,
            None => fitted,
        };
        let outcome = tires(&set, std::slice::from_ref(case))?;
        let [left, right] = Side::BOTH.map(|side| raw(&set, &outcome.cases[0].wheels, side));
        let worse = if right.rates[0] > left.rates[0] { right } else { left };
        Ok(Raw { warnings: outcome.warnings, ..worse })
    }
}

fn at_offset(axle: &Axle, offset: f64) -> Result<Axle, AxleError> {
    let wheels =
        Sides { left: axle.wheels.left.with_outset(offset)?, right: axle.wheels.right.with_outset(offset)? };
    Axle { wheels, ..axle.clone() }.checked().map_err(|mut errors| errors.swap_remove(0))
}

fn raw(axle: &Axle, wheels: &Sides<axlebow_axle::TireFace>, side: Side) -> Raw {
    let face = wheels.of(side);
    let depth = axle.wheels.of(side).tread().depth;
    let innermost = &face.worn.tires[face.worn.tires.len() - 1];
    let shoulder = innermost.inner_shoulder();
    Raw {
        cell: TireCell {
            camber: face.pose.camber,
            rate: None,
            against_upright: shoulder.against_upright,
            shoulders: innermost.shoulder_wear_ratio(),
        },
        rates: [shoulder.wear / depth, face.worn.upright / depth],
        warnings: Vec::new(),
    }
}
