//! Motion in time under loads, on moving bases, with forces that depend on single places.
//!
//! The structure is linear and its matrices are factored once for a length of step. What is not linear is a
//! short list of laws, each along one direction: the structure answers it through a column that is kept, so
//! that Newton's method works on a system as small as the list.

mod damper;
mod effective;
mod energy;
mod equilibrium;
mod forces;
mod integrator;
mod law;
mod linearized;
mod motion;
mod newton;
mod reduced;
mod scheme;
mod settings;
mod stamped;
mod system;
mod updated_factor;

pub use damper::LinearDamper;
pub use energy::EnergyBalance;
pub use integrator::Counts;
pub use law::{ForceLaw, LocalLaw};
pub use motion::Motion;
pub use reduced::ReducedBasis;
pub use scheme::Scheme;
pub use settings::TransientSettings;
pub use system::{DynamicSystem, TimedLoad};

use std::ops::ControlFlow;

use crate::FeError;
use integrator::{Integrator, Stop};

/// Steps from one look at the energy balance to the next.
const STOCK_EVERY: usize = 16;

/// How a run starts.
#[derive(Debug, Clone, PartialEq)]
pub enum Start {
    /// At rest where the loads and bases of the start time put it.
    Equilibrium,
    /// From given displacements (m, rad) and velocities (m/s, rad/s).
    Given {
        /// Displacements.
        u: Vec<f64>,
        /// Velocities.
        v: Vec<f64>,
    },
}

/// The system at one time.
#[derive(Debug, Clone, Copy)]
pub struct Sample<'a> {
    /// Time, s.
    pub time: f64,
    /// Motion of all freedoms.
    pub motion: &'a Motion,
    /// Force of each law along each of its directions, one law after the other, N.
    pub forces: &'a [f64],
    /// Compression of each law along each of its directions, m.
    pub compressions: &'a [f64],
    /// Displacement of the base of each law along each of its directions, m.
    pub bases: &'a [f64],
}

/// What a run reports while it goes on; nothing is kept.
#[derive(Debug, Clone, Copy)]
pub enum Record<'a> {
    /// The system after so many steps.
    Sample(Sample<'a>),
    /// A contact opened or closed.
    Contact {
        /// Time, s.
        time: f64,
        /// Number of the law.
        law: usize,
        /// Whether it now touches.
        touches: bool,
    },
}

/// How a run ended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Ended {
    /// All steps were taken.
    Completed,
    /// The caller broke off.
    BrokenOff {
        /// Time, s.
        time: f64,
    },
    /// Newton's method did not converge even in the smallest step; what was reported is a part.
    NoConvergence {
        /// Time from which there was no further step, s.
        time: f64,
        /// The law that was furthest from its solution.
        law: usize,
    },
    /// A load, a base or the motion was not a finite number; what was reported is a part.
    NotFinite {
        /// Time from which there was no further step, s.
        time: f64,
    },
}

/// What a run came to.
#[derive(Debug, Clone, PartialEq)]
pub struct Transient {
    /// How it ended.
    pub ended: Ended,
    /// Steps taken in full.
    pub steps: usize,
    /// What they took.
    pub counts: Counts,
    /// Energy balance at the end.
    pub balance: EnergyBalance,
    /// Motion at the end.
    pub last: Motion,
}

impl Transient {
    /// Whether less than asked for was reported.
    pub fn is_partial(&self) -> bool {
        self.ended != Ended::Completed
    }
}

impl DynamicSystem {
    /// Moves the system through time and reports as it goes; the memory does not grow with the duration.
    ///
    /// `report` gets samples and contact changes in the order of time, and breaks the run off by
    /// [`ControlFlow::Break`]. A contact that opens and closes again within one step is not seen.
    ///
    /// # Errors
    /// [`FeError::ImpossibleDynamics`] for settings that no run can be made with or a start of the wrong
    /// length; [`FeError::Loose`] when a motion has neither stiffness nor mass; for a start at rest, those of
    /// [`DynamicSystem::equilibrium`]. A run that stops on its way is no error: see [`Ended`].
    ///
    /// A mass of 2 kg on a spring of 8π² N/m, let go from 1 m, is back after 1 s:
    /// ```
    /// use std::ops::ControlFlow;
    /// use axlebow_fe::{DynamicSystem, Start, TransientSettings, linalg::SymmetricMatrix};
    /// let matrix = |value| {
    ///     let mut matrix = SymmetricMatrix::banded(1, 0);
    ///     matrix.add(0, 0, value);
    ///     matrix
    /// };
    /// let pi = std::f64::consts::PI;
    /// let system = DynamicSystem::new(matrix(8.0 * pi * pi), matrix(2.0))?;
    /// let start = Start::Given { u: vec![1.0], v: vec![0.0] };
    /// let run = system.run(start, &TransientSettings::new(1e-3, 1.0), |_| ControlFlow::Continue(()))?;
    /// assert!((run.last.u[0] - 1.0).abs() < 1e-9);
    /// # Ok::<(), axlebow_fe::FeError>(())
    /// ```
    pub fn run(
        &self,
        start: Start,
        settings: &TransientSettings,
        mut report: impl FnMut(Record) -> ControlFlow<()>,
    ) -> Result<Transient, FeError> {
        settings.check()?;
        let mut run = Integrator::new(self, settings, self.motion_at(start, settings.start)?)?;
        let (mut ended, mut steps) = (Ended::Completed, 0);
        let mut flow =
            if settings.sample_every > 0 { report(run.sample(0)) } else { ControlFlow::Continue(()) };
        while flow.is_continue() && steps < settings.steps {
            let taken = run.step(steps, |time, law, touches| {
                if flow.is_continue() {
                    flow = report(Record::Contact { time, law, touches });
                }
            })?;
            if let Err(stop) = taken {
                ended = stop.into();
                break;
            }
            steps += 1;
            if steps.is_multiple_of(STOCK_EVERY) {
                run.take_stock();
            }
            if flow.is_continue() && settings.sample_every > 0 && steps.is_multiple_of(settings.sample_every)
            {
                flow = report(run.sample(steps));
            }
        }
        if flow.is_break() && steps < settings.steps && ended == Ended::Completed {
            ended = Ended::BrokenOff { time: run.time(steps, 0) };
        }
        run.take_stock();
        Ok(Transient { ended, steps, counts: run.counts, balance: run.balance, last: run.now })
    }

    fn motion_at(&self, start: Start, time: f64) -> Result<Motion, FeError> {
        let order = self.order();
        let (u, v) = match start {
            Start::Equilibrium => (self.equilibrium(time)?, vec![0.0; order]),
            Start::Given { u, v } => (u, v),
        };
        for given in [&u, &v] {
            let fault = |what, value, accepted| Err(FeError::ImpossibleDynamics { what, value, accepted });
            if given.len() != order {
                return fault("length of the start", given.len() as f64, "the order of the system");
            }
            if let Some(value) = given.iter().find(|value| !value.is_finite()) {
                return fault("motion at the start", *value, "a finite value");
            }
        }
        Ok(Motion { u, v, a: vec![0.0; order] })
    }
}

impl Integrator<'_> {
    fn sample(&self, steps: usize) -> Record<'_> {
        let (time, forces) = (self.time(steps, 0), &self.forces);
        let (laws, compressions, bases) = (&forces.laws, &forces.compressions, &forces.bases);
        Record::Sample(Sample { time, motion: &self.now, forces: laws, compressions, bases })
    }
}

impl From<Stop> for Ended {
    fn from(stop: Stop) -> Self {
        match stop {
            Stop::NoConvergence { time, law } => Ended::NoConvergence { time, law },
            Stop::NotFinite { time } => Ended::NotFinite { time },
        }
    }
}
