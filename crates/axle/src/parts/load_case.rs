//! Load cases: what acts on the axle, as any linear combination of the standard ones.

use crate::Sides;

/// What the ground does to a tire sideways.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ground {
    /// The tire rolls straight: no side force but the case's own.
    Rolling,
    /// The tire stands: it resists sideways motion of its contact by its lateral stiffness.
    Standing,
}

/// Generalized actions; every field is linear, so that actions can be added and multiplied.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Actions {
    /// Load of the whole axle on the road, N.
    pub axle_load: f64,
    /// Gravity on the axle, hubs, wheels and tires, in units of standard gravity.
    pub gravity: f64,
    /// Side force of the road on the whole axle, to the left, N; tires share it as they share the load.
    pub side_force: f64,
    /// Braking force of the road on the whole axle, rearward, N; tires share it as they share the load.
    pub braking_force: f64,
    /// Driving force of the road on the whole axle, forward, N, by the torque of its drive shafts; tires share it as they
    /// share the load.
    pub traction_force: f64,
    /// Curb force on each wheel's outer tire, inboard, N.
    pub curb_force: Sides<f64>,
    /// Height by which the road is raised under each wheel, m.
    pub raise: Sides<f64>,
}

impl Actions {
    /// These actions plus `factor` times `other`.
    pub fn plus(self, other: &Actions, factor: f64) -> Actions {
        let add = |a: f64, b: f64| a + factor * b;
        let sides =
            |a: Sides<f64>, b: Sides<f64>| Sides { left: add(a.left, b.left), right: add(a.right, b.right) };
        Actions {
            axle_load: add(self.axle_load, other.axle_load),
            gravity: add(self.gravity, other.gravity),
            side_force: add(self.side_force, other.side_force),
            braking_force: add(self.braking_force, other.braking_force),
            traction_force: add(self.traction_force, other.traction_force),
            curb_force: sides(self.curb_force, other.curb_force),
            raise: sides(self.raise, other.raise),
        }
    }
}

/// A named load case.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadCase {
    /// Name, kebab-case.
    pub name: String,
    /// One sentence: what acts.
    pub description: String,
    /// Factor by which all actions are multiplied.
    pub dynamic_factor: f64,
    /// Actions before the factor.
    pub actions: Actions,
}

impl LoadCase {
    /// Actions after the dynamic factor; road heights are not multiplied.
    pub(crate) fn factored(&self) -> Actions {
        let raise = self.actions.raise;
        Actions { raise, ..Actions::default().plus(&self.actions, self.dynamic_factor) }
    }
}

/// The measures from which the standard cases are made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Loading {
    /// Rated load on the road, N.
    pub rated_load: f64,
    /// Unladen load on the road, N.
    pub unladen_load: f64,
    /// Height by which one wheel is raised, m.
    pub raise: f64,
    /// Side force over axle load.
    pub side_force_ratio: f64,
    /// Braking force over axle load.
    pub braking_force_ratio: f64,
    /// Curb force over the rated load of one wheel end.
    pub curb_force_ratio: f64,
    /// Driving force over axle load.
    pub traction_force_ratio: f64,
    /// Turns of the propeller shaft for one turn of the wheels.
    pub final_drive_ratio: f64,
    /// Dynamic factor of each standard case, in the order of [`STANDARD_CASES`].
    pub dynamic_factors: [f64; STANDARD_CASES.len()],
}

/// Names of the standard cases; the last one is of drive axles only.
pub const STANDARD_CASES: [&str; 7] =
    ["rated-load", "unladen", "one-wheel-raised", "side-load", "braking", "curb", "traction"];
