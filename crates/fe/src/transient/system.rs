//! What moves: matrices, loads and local laws.

use std::fmt;
use std::sync::Arc;

use super::damper::LinearDamper;
use super::law::LocalLaw;
use super::stamped::widened;
use crate::FeError;
use crate::linalg::SymmetricMatrix;
use crate::model::direction::Direction;

/// A load along one direction that changes with time.
#[derive(Clone)]
pub struct TimedLoad {
    /// Where it acts.
    pub direction: Direction,
    history: Arc<dyn Fn(f64) -> f64 + Send + Sync>,
}

/// A linear structure with loads in time and forces that depend on single places:
/// `M ü + C u̇ + K u = Σ b F(t) + Σ b f(δ, δ̇)`, with linear dampers along single directions as part of C.
///
/// Stiffness and mass may each be singular, as long as every motion has one of them.
#[derive(Debug, Clone)]
pub struct DynamicSystem {
    pub(crate) stiffness: SymmetricMatrix,
    pub(crate) mass: SymmetricMatrix,
    pub(crate) damping: Option<SymmetricMatrix>,
    pub(crate) dampers: Vec<LinearDamper>,
    pub(crate) loads: Vec<TimedLoad>,
    pub(crate) laws: Vec<LocalLaw>,
}

impl TimedLoad {
    /// A load of `history(t)` (N or N m at a time in s) along a direction.
    ///
    /// Where it jumps at the end of a step, it best has the mean of both sides there: the steps beside it then
    /// add up to its impulse.
    pub fn new(direction: Direction, history: impl Fn(f64) -> f64 + Send + Sync + 'static) -> Self {
        TimedLoad { direction, history: Arc::new(history) }
    }

    /// Its value at a time.
    pub fn at(&self, time: f64) -> f64 {
        (self.history)(time)
    }

    /// The same history along another direction.
    pub(super) fn along(&self, direction: Direction) -> Self {
        TimedLoad { direction, history: Arc::clone(&self.history) }
    }
}

impl fmt::Debug for TimedLoad {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("TimedLoad").field("direction", &self.direction).finish_non_exhaustive()
    }
}

impl DynamicSystem {
    /// A system without damping, loads and laws.
    ///
    /// # Errors
    /// [`FeError::ImpossibleDynamics`] when the matrices differ in order.
    pub fn new(stiffness: SymmetricMatrix, mass: SymmetricMatrix) -> Result<Self, FeError> {
        let width = wider(&stiffness, &mass);
        same_order("order of the mass matrix", &mass, &stiffness)?;
        let (stiffness, mass) = (widened(stiffness, width), widened(mass, width));
        Ok(DynamicSystem {
            stiffness,
            mass,
            damping: None,
            dampers: Vec::new(),
            loads: Vec::new(),
            laws: Vec::new(),
        })
    }

    /// The same system with a damping matrix.
    ///
    /// # Errors
    /// [`FeError::ImpossibleDynamics`] when its order is not that of the stiffness.
    pub fn with_damping(self, damping: SymmetricMatrix) -> Result<Self, FeError> {
        same_order("order of the damping matrix", &damping, &self.stiffness)?;
        let width = wider(&self.stiffness, &damping);
        let (stiffness, mass) = (widened(self.stiffness, width), widened(self.mass, width));
        Ok(DynamicSystem { stiffness, mass, damping: Some(widened(damping, width)), ..self })
    }

    /// Adds a load.
    ///
    /// # Errors
    /// [`FeError::ImpossibleDynamics`] when its direction names a freedom that is not there.
    pub fn add_load(&mut self, load: TimedLoad) -> Result<(), FeError> {
        self.check_direction(&load.direction)?;
        self.loads.push(load);
        Ok(())
    }

    /// Adds a linear damper.
    ///
    /// # Errors
    /// [`FeError::ImpossibleDynamics`] when its direction names a freedom that is not there, or its damping is
    /// negative or not finite.
    pub fn add_damper(&mut self, damper: LinearDamper) -> Result<(), FeError> {
        self.check_direction(&damper.direction)?;
        let value = damper.damping;
        if !(value.is_finite() && value >= 0.0) {
            let (what, accepted) = ("damping of a damper", "a finite value of zero or more");
            return Err(FeError::ImpossibleDynamics { what, value, accepted });
        }
        self.dampers.push(damper);
        Ok(())
    }

    /// Adds a local law; returns its number, counted from 0.
    ///
    /// # Errors
    /// [`FeError::ImpossibleDynamics`] when a direction names a freedom that is not there, or a number of the
    /// law is negative or not finite.
    pub fn add_law(&mut self, law: LocalLaw) -> Result<usize, FeError> {
        law.directions.iter().try_for_each(|direction| self.check_direction(direction))?;
        if !law.clearance().is_finite() {
            let (what, value) = ("clearance of a local law", law.clearance());
            return Err(FeError::ImpossibleDynamics { what, value, accepted: "a finite value" });
        }
        for (what, value) in law.numbers() {
            if !(value.is_finite() && value >= 0.0) {
                let accepted = "a finite value of zero or more";
                return Err(FeError::ImpossibleDynamics { what, value, accepted });
            }
        }
        self.laws.push(law);
        Ok(self.laws.len() - 1)
    }

    /// Puts laws, by their numbers, on one base that moves along the first direction of each: `motion` gives its
    /// displacement (m) and velocity (m/s) at a time (s). Numbers of no law are passed over.
    pub fn put_on_base(&mut self, laws: &[usize], motion: impl Fn(f64) -> [f64; 2] + Send + Sync + 'static) {
        let mut on: Option<LocalLaw> = None;
        let mut motion = Some(motion);
        for number in laws {
            let Some(law) = self.laws.get_mut(*number) else { continue };
            *law = match (&on, motion.take()) {
                (Some(on), _) => law.clone().on_base_of(on),
                (None, Some(motion)) => law.clone().on_base(motion),
                (None, None) => continue,
            };
            on = Some(law.clone());
        }
    }

    /// Number of freedoms.
    pub fn order(&self) -> usize {
        self.stiffness.order()
    }

    /// Number of directions of all laws.
    pub(super) fn rows(&self) -> usize {
        self.directions().count()
    }

    /// Directions of all laws, one after the other.
    pub(super) fn directions(&self) -> impl Iterator<Item = &Direction> {
        self.laws.iter().flat_map(|law| &law.directions)
    }

    /// Components of a vector along all directions.
    pub(super) fn along_laws(&self, vector: &[f64], components: &mut [f64]) {
        components.iter_mut().zip(self.directions()).for_each(|(x, direction)| *x = direction.dot(vector));
    }

    /// Adds forces along all directions to a vector.
    pub(super) fn add_law_forces(&self, forces: &[f64], vector: &mut [f64]) {
        self.directions().zip(forces).for_each(|(direction, force)| direction.add_to(*force, vector));
    }

    /// Adds `factor · C u̇` of the dampers to a vector.
    pub(super) fn add_damper_forces(&self, factor: f64, velocity: &[f64], sum: &mut [f64]) {
        for LinearDamper { direction, damping } in &self.dampers {
            direction.add_to(factor * damping * direction.dot(velocity), sum);
        }
    }

    pub(crate) fn check_direction(&self, direction: &Direction) -> Result<(), FeError> {
        match direction.last().filter(|last| *last >= self.order()) {
            None => Ok(()),
            Some(last) => Err(FeError::ImpossibleDynamics {
                what: "freedom of a direction",
                value: last as f64,
                accepted: "a number below the order of the system",
            }),
        }
    }
}

fn same_order(what: &'static str, matrix: &SymmetricMatrix, other: &SymmetricMatrix) -> Result<(), FeError> {
    if matrix.order() == other.order() {
        return Ok(());
    }
    let accepted = "the order of the stiffness matrix";
    Err(FeError::ImpossibleDynamics { what, value: matrix.order() as f64, accepted })
}

/// The wider of two bands; none for entries anywhere.
fn wider(a: &SymmetricMatrix, b: &SymmetricMatrix) -> Option<usize> {
    Some(a.half_bandwidth()?.max(b.half_bandwidth()?))
}
