//! The standard load cases of an axle.

use crate::parts::load_case::{Actions, LoadCase, Loading, STANDARD_CASES};
use crate::{Axle, Side, Sides};

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
