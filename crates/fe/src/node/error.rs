//! What can go wrong in the finite-element layer.

use crate::Freedom;

/// Errors of this crate.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum FeError {
    /// Nothing holds a freedom: the structure can move without any force.
    #[error(
        "nothing holds the {} at {station}: the structure can move there without any force; add a support, a spring or a member that resists it",
        freedom.words()
    )]
    Unsupported {
        /// Station at which the free motion is largest.
        station: String,
        /// Freedom in which the free motion is largest.
        freedom: Freedom,
    },
    /// A stiffness, length or load is not a finite number, or a stiffness is so far out of range that the
    /// equations overflow.
    #[error(
        "{what} of the member from {from} to {to} is {value}; a finite value greater than zero is accepted"
    )]
    ImpossibleMember {
        /// Quantity.
        what: &'static str,
        /// Its value.
        value: f64,
        /// Station of the start.
        from: String,
        /// Station of the end.
        to: String,
    },
    /// A wall that cannot exist.
    #[error("{what} of the wall is {value}; {accepted} is accepted")]
    ImpossibleWall {
        /// Quantity.
        what: &'static str,
        /// Its value.
        value: f64,
        /// What is accepted.
        accepted: &'static str,
    },
    /// A quadrilateral that cannot be a shell.
    #[error(
        "the quadrilateral at {station} cannot be a shell: {why}; give its corners in turn, all surfaces the same way round, and part surfaces at folds"
    )]
    ImpossibleQuadrilateral {
        /// Station of the corner.
        station: String,
        /// What is wrong.
        why: &'static str,
    },
    /// A node that cannot be tied to a hub.
    #[error("{station} cannot be tied rigidly: {why}; tie free nodes of members to one free hub each")]
    ImpossibleTie {
        /// Station of the node.
        station: String,
        /// What is wrong.
        why: &'static str,
    },
    /// A mass that no body can have.
    #[error("{what} of the mass at {station} is {value}; a finite value of zero or more is accepted")]
    ImpossibleMass {
        /// Quantity.
        what: &'static str,
        /// Its value.
        value: f64,
        /// Station that carries it.
        station: String,
    },
    /// The search for natural modes did not converge.
    #[error(
        "the natural modes of {freedoms} freedoms did not converge; bring stiffnesses and masses within fifteen decades"
    )]
    NoModes {
        /// Number of free freedoms.
        freedoms: usize,
    },
    /// The loads hold a number that is not finite.
    #[error("the load at {station} in {} is {value}; a finite value is accepted", freedom.words())]
    ImpossibleLoad {
        /// Station.
        station: String,
        /// Freedom.
        freedom: Freedom,
        /// Its value.
        value: f64,
    },
    /// A number with which nothing can move.
    #[error("the {what} is {value}; {accepted} is accepted")]
    ImpossibleDynamics {
        /// Quantity.
        what: &'static str,
        /// Its value.
        value: f64,
        /// What is accepted.
        accepted: &'static str,
    },
    /// A motion with neither stiffness nor mass.
    #[error(
        "nothing holds equation {equation}: it has neither stiffness nor mass; add a member or a law that resists it, or a mass"
    )]
    Loose {
        /// Number of the equation, counted from 0.
        equation: usize,
    },
    /// No place of rest was found.
    #[error(
        "no place of rest: the force of local law {law} does not settle; check that the contacts that stay closed hold the structure"
    )]
    NoEquilibrium {
        /// Number of the law that is furthest from its solution, counted from 0.
        law: usize,
    },
}
