//! The ground equations of a slightly different axle at a solution of this one, and their adjoint.

use axlebow_fe::{NodeId, State};
use nalgebra::SMatrix;

use super::{Case, Footing, GroundModel, Hubs, ROLL, TIRES, Unknowns};
use crate::{Axle, AxleError, Sides};

/// By how much a reading falls for each unit by which an equation of the ground is missed.
#[derive(Debug, Clone)]
pub(crate) struct FootingDual(Unknowns);

/// Every footing of a case: on an even road, and on an uneven one if it is so.
#[derive(Debug, Clone)]
pub(crate) struct Footings {
    pub even: Footing,
    pub uneven: Option<Footing>,
}

impl GroundModel {
    /// The ground under another axle, whose compliance is not known.
    pub(crate) fn of_unsolved(axle: &Axle) -> GroundModel {
        GroundModel::answering(axle, SMatrix::zeros())
    }

    /// How the tires stand in a case, the hubs having moved by `moved` without the road.
    ///
    /// # Errors
    /// As [`GroundModel::contact`].
    pub(crate) fn stands(&self, case: &Case, moved: &Hubs) -> Result<Footings, AxleError> {
        let (even, uneven) = self.footings(case, moved)?;
        Ok(Footings { even, uneven })
    }

    /// Dual of a reading of the axle's motion, of which `motion` is the motion of both hubs under its gradient as loads.
    pub(crate) fn dual(&self, footing: &Footing, case: &Case, motion: &Hubs) -> Option<FootingDual> {
        let mut gradient = Unknowns::zeros();
        for (k, tire) in self.tires.iter().enumerate().filter(|(k, _)| footing.on_road[*k]) {
            gradient[k] = motion.dot(&self.per_load(tire, &case.actions));
            gradient[TIRES + k] = if self.standing { motion.dot(&tire.unit[1]) } else { 0.0 };
        }
        self.transposed(footing, case, &gradient)
    }

    /// Dual of the body's roll.
    pub(crate) fn dual_of_roll(&self, footing: &Footing, case: &Case) -> Option<FootingDual> {
        let mut gradient = Unknowns::zeros();
        gradient[ROLL] = 1.0;
        self.transposed(footing, case, &gradient)
    }

    fn transposed(&self, footing: &Footing, case: &Case, gradient: &Unknowns) -> Option<FootingDual> {
        let still = Hubs::zeros();
        let problem = self.problem(case, &still, footing.rest);
        let (matrix, _) = self.equations(&problem, &footing.on_road);
        let dual = matrix.transpose().lu().solve(gradient)?;
        dual.iter().all(|value| value.is_finite()).then_some(FootingDual(dual))
    }

    /// Hub forces that do on any motion of the hubs what a dual makes of the equations' dependence on it.
    pub(crate) fn hub_forces(&self, dual: &FootingDual, footing: &Footing) -> Hubs {
        let mut forces = Hubs::zeros();
        for (k, tire) in self.tires.iter().enumerate().filter(|(k, _)| footing.on_road[*k]) {
            forces += tire.unit[2] * (tire.vertical_stiffness * dual.0[k]);
            if self.standing {
                forces += tire.unit[1] * (tire.lateral_stiffness * dual.0[TIRES + k]);
            }
        }
        forces
    }

    /// What a dual makes of the misses of the equations under this axle, at the footing and hub motions of another one.
    ///
    /// - `rest`: roll of the body at which the rest of the vehicle does nothing; none on an even road
    pub(crate) fn missed(
        &self,
        (footing, rest): (&Footing, Option<f64>),
        (case, motion): (&Case, &Hubs),
        dual: &FootingDual,
    ) -> f64 {
        // Under hubs that no force moves, whatever they have moved by is given.
        let problem = self.problem(case, motion, rest);
        let (matrix, right) = self.equations(&problem, &footing.on_road);
        (matrix * footing.unknowns - right).dot(&dual.0)
    }
}

/// Motion of both hubs in a state.
pub(crate) fn hubs_in(hubs: &Sides<NodeId>, state: &State) -> Hubs {
    let (left, right) = (state.motion(hubs.left), state.motion(hubs.right));
    Hubs::from_iterator(left.into_iter().chain(right))
}
