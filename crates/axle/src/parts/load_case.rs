//! Load cases: what acts on the axle, as any linear combination of the standard ones.

use crate::{Axle, Side, Sides};

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

/// The standard cases of an axle, in the order of [`STANDARD_CASES`].
pub fn standard_cases(axle: &Axle) -> Vec<LoadCase> {
    names(axle).iter().enumerate().map(|(number, _)| standard(&axle.loading, number)).collect()
}

impl LoadCase {
    /// A standard case of an axle by its name, if the axle has one of this name.
    pub fn standard(axle: &Axle, name: &str) -> Option<LoadCase> {
        let number = names(axle).iter().position(|own| *own == name)?;
        Some(standard(&axle.loading, number))
    }
}

/// Names of the standard cases of an axle.
fn names(axle: &Axle) -> &'static [&'static str] {
    if axle.body.is_driven() { &STANDARD_CASES } else { &STANDARD_CASES[..STANDARD_CASES.len() - 1] }
}

fn standard(loading: &Loading, number: usize) -> LoadCase {
    LoadCase {
        name: STANDARD_CASES[number].to_owned(),
        description: description(loading, number),
        dynamic_factor: loading.dynamic_factors[number],
        actions: standard_actions(loading)[number],
    }
}

fn standard_actions(loading: &Loading) -> [Actions; STANDARD_CASES.len()] {
    let rated = Actions { axle_load: loading.rated_load, gravity: 1.0, ..Actions::default() };
    let mut raise = Sides::default();
    *raise.of_mut(Side::Left) = loading.raise;
    let mut curb_force = Sides::default();
    *curb_force.of_mut(Side::Left) = loading.curb_force_ratio * 0.5 * loading.rated_load;
    [
        rated,
        Actions { axle_load: loading.unladen_load, ..rated },
        Actions { raise, ..rated },
        Actions { side_force: loading.side_force_ratio * loading.rated_load, ..rated },
        Actions { braking_force: loading.braking_force_ratio * loading.rated_load, ..rated },
        Actions { curb_force, ..rated },
        Actions { traction_force: loading.traction_force_ratio * loading.rated_load, ..rated },
    ]
}

fn description(loading: &Loading, number: usize) -> String {
    match number {
        0 => "rated load on the road, both wheels alike".to_owned(),
        1 => "unladen load on the road, both wheels alike".to_owned(),
        2 => format!("rated load, the road {:.0} mm higher under the left wheel", loading.raise * 1e3),
        3 => format!("rated load, the road pushes to the left with {:.2} of it", loading.side_force_ratio),
        4 => format!("rated load, the road pushes rearward with {:.2} of it", loading.braking_force_ratio),
        6 => {
            format!("rated load, drive torque pushes forward with {:.2} of it", loading.traction_force_ratio)
        }
        _ => format!(
            "rated load, a curb pushes the left wheel inboard with {:.2} of that wheel's load",
            loading.curb_force_ratio
        ),
    }
}
