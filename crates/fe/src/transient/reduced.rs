//! A few shapes in place of all freedoms.

use super::damper::LinearDamper;
use super::system::DynamicSystem;
use crate::FeError;
use crate::linalg::{EigenFailure, Factor, Pencil, SymmetricMatrix};
use crate::model::direction::Direction;

/// Part of its length (in the norm of the mass) below which what is left of a shape counts as made of the
/// others.
const DEPENDENT: f64 = 1e-6;

/// Couplings of shapes through damping below this part of their own damping count as none.
const UNCOUPLED: f64 = 1e-12;

/// Part of the largest motion along a direction below which a shape does not move along it.
const UNMOVED: f64 = 1e-9;

/// Shapes Φ with `ΦᵀMΦ = 1` and `ΦᵀKΦ` diagonal, in which a system moves with few freedoms:
/// given shapes, most often natural modes, and what each load and each direction of a law does at rest.
///
/// The static part makes slow forces arrive exactly; R. R. Craig, A. J. Kurdila, Fundamentals of Structural
/// Dynamics, 2nd ed. 2006, ch. 17 (from memory).
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ReducedBasis {
    shapes: Vec<Vec<f64>>,
}

impl ReducedBasis {
    /// The basis of given shapes and the static answers of a system; shapes that others make up are left out.
    ///
    /// Where the stiffness alone is singular, the answers are those of the stiffness with the mass times the
    /// least eigenvalue of the given shapes that is not zero.
    ///
    /// # Errors
    /// [`FeError::ImpossibleDynamics`] when a shape has the wrong length; [`FeError::Loose`] when a motion has
    /// neither stiffness nor mass; [`FeError::NoModes`] when the shapes cannot be told apart.
    pub fn new(system: &DynamicSystem, given: impl IntoIterator<Item = Vec<f64>>) -> Result<Self, FeError> {
        ReducedBasis::held_by(&system.stiffness, system, given)
    }

    /// The basis of the natural modes up to a frequency (Hz) and the static answers of a system, its laws as
    /// stiff as they are where it rests at a time (s); shapes that no load and no law moves are left out.
    ///
    /// # Errors
    /// Those of [`DynamicSystem::equilibrium`]; [`FeError::NoModes`] when the modes cannot be told apart.
    pub fn up_to(frequency: f64, system: &DynamicSystem, time: f64) -> Result<Self, FeError> {
        let resting = system.linearized(&system.equilibrium(time)?, time)?;
        let pencil = Pencil { stiffness: &resting.stiffness, mass: &resting.mass };
        let limit = (std::f64::consts::TAU * frequency).powi(2);
        let order = system.order();
        let count = pencil.count_below(limit).unwrap_or(order);
        let pairs = pencil.lowest(count).map_err(|failure| refused(failure, order))?;
        let modes = (0..pairs.values.len()).filter(|mode| pairs.values[*mode] <= limit);
        let shapes = modes.map(|mode| pairs.vectors.column(mode).collect());
        Ok(ReducedBasis::held_by(&resting.stiffness, system, shapes)?.moved_by(system))
    }

    /// The basis with the static answers of a stiffness.
    fn held_by(
        stiffness: &SymmetricMatrix,
        system: &DynamicSystem,
        given: impl IntoIterator<Item = Vec<f64>>,
    ) -> Result<Self, FeError> {
        let mut basis = Joined::default();
        for shape in given {
            if shape.len() != system.order() {
                let (what, value) = ("length of a shape", shape.len() as f64);
                return Err(FeError::ImpossibleDynamics { what, value, accepted: "the order of the system" });
            }
            basis.join(&system.mass, shape);
        }
        let factor = basis.basis.static_factor(stiffness, &system.mass)?;
        for direction in system.loads.iter().map(|load| &load.direction).chain(system.directions()) {
            let mut answer = vec![0.0; system.order()];
            direction.add_to(1.0, &mut answer);
            factor.solve(&mut answer);
            basis.join(&system.mass, answer);
        }
        basis.basis.diagonalized(&system.stiffness)
    }

    /// Number of shapes.
    pub fn count(&self) -> usize {
        self.shapes.len()
    }

    /// A direction over the shapes, `Φᵀb`.
    pub fn direction(&self, direction: &Direction) -> Direction {
        Direction::new(self.shapes.iter().map(|shape| direction.dot(shape)).enumerate())
    }

    /// Motion of all freedoms, `Φ·y`.
    pub fn motion(&self, shares: &[f64]) -> Vec<f64> {
        let mut sum = vec![0.0; self.shapes.first().map_or(0, Vec::len)];
        self.shapes.iter().zip(shares).for_each(|(shape, share)| add(*share, shape, &mut sum));
        sum
    }

    /// Shares of the shapes in a motion of all freedoms, `ΦᵀM·u`.
    pub fn shares(&self, system: &DynamicSystem, motion: &[f64]) -> Vec<f64> {
        let momenta = product(&system.mass, motion);
        self.shapes.iter().map(|shape| dot(shape, &momenta)).collect()
    }

    /// The system with the shapes as its freedoms.
    ///
    /// # Errors
    /// Those of building a [`DynamicSystem`], which a basis of this system does not meet.
    pub fn reduced(&self, system: &DynamicSystem) -> Result<DynamicSystem, FeError> {
        let mut reduced = DynamicSystem::new(
            self.diagonal(|shape| dot(shape, &product(&system.stiffness, shape))),
            self.diagonal(|_| 1.0),
        )?;
        if let Some(damping) = self.damping(system) {
            reduced = reduced.with_damping(damping)?;
        }
        for load in &system.loads {
            reduced.add_load(load.along(self.direction(&load.direction)))?;
        }
        for law in &system.laws {
            let directions = law.directions.iter().map(|direction| self.direction(direction)).collect();
            reduced.add_law(law.with_directions(directions))?;
        }
        Ok(reduced)
    }

    /// The shapes that a load or a law moves.
    fn moved_by(self, system: &DynamicSystem) -> Self {
        let directions = system.loads.iter().map(|load| &load.direction).chain(system.directions());
        let moved = directions.map(|direction| {
            let parts: Vec<f64> = self.shapes.iter().map(|shape| direction.dot(shape).abs()).collect();
            let largest = parts.iter().copied().fold(0.0, f64::max);
            parts.into_iter().map(|part| part > UNMOVED * largest).collect::<Vec<bool>>()
        });
        let moved = moved.reduce(|a, b| a.iter().zip(&b).map(|(a, b)| *a || *b).collect());
        let Some(moved) = moved else { return self };
        let shapes = self.shapes.into_iter().zip(moved).filter_map(|(shape, moved)| moved.then_some(shape));
        ReducedBasis { shapes: shapes.collect() }
    }

    /// Factor that gives static answers.
    fn static_factor(&self, stiffness: &SymmetricMatrix, mass: &SymmetricMatrix) -> Result<Factor, FeError> {
        if let Ok(factor) = stiffness.factor() {
            return Ok(factor);
        }
        let values: Vec<_> = self.shapes.iter().map(|shape| dot(shape, &product(stiffness, shape))).collect();
        let greatest = values.iter().copied().fold(0.0, f64::max);
        let least = values.into_iter().filter(|value| *value > 1e-9 * greatest).fold(f64::INFINITY, f64::min);
        let shift = if least.is_finite() { least } else { 1.0 };
        let shifted = stiffness.plus(shift, mass).factor();
        shifted.map_err(|failure| FeError::Loose { equation: failure.index })
    }

    /// Turns the shapes so that the stiffness is diagonal.
    fn diagonalized(self, stiffness: &SymmetricMatrix) -> Result<Self, FeError> {
        let freedoms = self.count();
        // The mass is 1 over these shapes. The general solution by K⁻¹ would lose the stiffest of them where some
        // move almost freely.
        let vectors = self.full(stiffness).eigenvectors().ok_or(FeError::NoModes { freedoms })?;
        let turned = (0..freedoms).map(|i| self.motion(&vectors.column(i).collect::<Vec<_>>()));
        Ok(ReducedBasis { shapes: turned.collect() })
    }

    fn diagonal(&self, entry: impl Fn(&[f64]) -> f64) -> SymmetricMatrix {
        let mut matrix = SymmetricMatrix::banded(self.count(), 0);
        self.shapes.iter().enumerate().for_each(|(i, shape)| matrix.add(i, i, entry(shape)));
        matrix
    }

    /// `ΦᵀCΦ`, diagonal where the shapes are not coupled; none without damping. Dampers along single directions are part of
    /// it: over the shapes each reaches all freedoms, so that together they are no more than a full matrix.
    fn damping(&self, system: &DynamicSystem) -> Option<SymmetricMatrix> {
        let mut sum = match &system.damping {
            Some(damping) => self.full(damping),
            None if system.dampers.is_empty() => return None,
            None => self.room(),
        };
        for LinearDamper { direction, damping } in &system.dampers {
            let parts: Vec<f64> = self.shapes.iter().map(|shape| direction.dot(shape)).collect();
            for (column, part) in parts.iter().enumerate() {
                (column..parts.len()).for_each(|row| sum.add(row, column, damping * part * parts[row]));
            }
        }
        Some(self.without_couplings(sum))
    }

    fn without_couplings(&self, full: SymmetricMatrix) -> SymmetricMatrix {
        let own = |i: usize| full.diagonal(i).abs();
        let mut coupled = false;
        full.for_each(|row, column, value| {
            coupled |= row != column && value.abs() > UNCOUPLED * (own(row) * own(column)).sqrt();
        });
        if coupled {
            return full;
        }
        let mut diagonal = SymmetricMatrix::banded(self.count(), 0);
        (0..self.count()).for_each(|i| diagonal.add(i, i, full.diagonal(i)));
        diagonal
    }

    /// Zeros with room for the couplings of all shapes.
    fn room(&self) -> SymmetricMatrix {
        SymmetricMatrix::banded(self.count(), self.count().saturating_sub(1))
    }

    fn full(&self, matrix: &SymmetricMatrix) -> SymmetricMatrix {
        let mut full = self.room();
        for (column, shape) in self.shapes.iter().enumerate() {
            let image = product(matrix, shape);
            (column..self.count()).for_each(|row| full.add(row, column, dot(&self.shapes[row], &image)));
        }
        full
    }
}

/// Shapes of length 1 square to each other, with what the mass makes of each.
#[derive(Default)]
struct Joined {
    basis: ReducedBasis,
    momenta: Vec<Vec<f64>>,
}

impl Joined {
    /// Adds what a shape has beyond the others, at length 1.
    fn join(&mut self, mass: &SymmetricMatrix, mut shape: Vec<f64>) {
        let length = dot(&shape, &product(mass, &shape)).sqrt();
        // Once is not enough where most of the shape is taken away.
        for _ in 0..2 {
            for (other, momenta) in self.basis.shapes.iter().zip(&self.momenta) {
                let share = dot(momenta, &shape);
                add(-share, other, &mut shape);
            }
        }
        let mut momenta = product(mass, &shape);
        let left = dot(&shape, &momenta).sqrt();
        if left > DEPENDENT * length {
            shape.iter_mut().chain(&mut momenta).for_each(|x| *x /= left);
            self.basis.shapes.push(shape);
            self.momenta.push(momenta);
        }
    }
}

fn refused(failure: EigenFailure, freedoms: usize) -> FeError {
    match failure {
        EigenFailure::Unheld(failure) => FeError::Loose { equation: failure.index },
        EigenFailure::NoConvergence => FeError::NoModes { freedoms },
    }
}

fn product(matrix: &SymmetricMatrix, x: &[f64]) -> Vec<f64> {
    let mut y = vec![0.0; x.len()];
    matrix.multiply(x, &mut y);
    y
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

fn add(factor: f64, x: &[f64], sum: &mut [f64]) {
    sum.iter_mut().zip(x).for_each(|(sum, x)| *sum += factor * x);
}
