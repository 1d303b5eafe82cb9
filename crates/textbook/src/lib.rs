//! The textbook cases with their reference values; does not draw.
//!
//! Each case is written once: what it asks, its formula and inputs, the reference value and where its digits come from,
//! how near the computed value must come, and the call into the real code that computes it. Numbers stay in the units
//! of the source, which are consistent, so that nothing stands between the reference value and the code under test.

mod angles;
mod beam_line;
mod cantilevers;
mod case;
mod cash_flows;
mod dented_cylinder;
mod fatigue_lives;
mod foundation;
mod modes;
mod modes_of_tubes;
mod moving_force;
pub mod obstacle_course;
mod overhung_axle;
mod partial_interaction;
mod plates_and_rings;
mod rainflow_cycles;
mod random_stress;
mod shear_centers;
mod shear_coefficients;
mod sheet;
mod shell_obstacles;
mod shocks;
mod solid_torsion;
mod standard_tubes;
mod supported_beams;
mod tire_faces;
mod torsion;
mod varying_beams;
mod vibrating_line;
mod wall_classes;
mod welds;
mod wheel_bearings;

/// The code under test, for checks beside these that come from no book.
pub use {axlebow_fe as fe, axlebow_sections as sections, axlebow_strength as strength};

pub use case::{Case, Checked, Compute, Provenance, Tolerance};

/// Every case, in the order in which a report lists them.
pub fn cases() -> Vec<Case> {
    [
        overhung_axle::CASES,
        cantilevers::CASES,
        supported_beams::CASES,
        varying_beams::CASES,
        foundation::CASES,
        partial_interaction::CASES,
        standard_tubes::CASES,
        shear_coefficients::CASES,
        torsion::CASES,
        angles::CASES,
        solid_torsion::CASES,
        shear_centers::CASES,
        modes::CASES,
        modes_of_tubes::CASES,
        shocks::CASES,
        moving_force::CASES,
        shell_obstacles::CASES,
        dented_cylinder::CASES,
        plates_and_rings::CASES,
        welds::CASES,
        wall_classes::CASES,
        rainflow_cycles::CASES,
        fatigue_lives::CASES,
        random_stress::CASES,
        wheel_bearings::CASES,
        tire_faces::CASES,
        cash_flows::CASES,
    ]
    .concat()
}

/// An error of a lower crate as the text that a failed case shows.
fn text(error: impl std::fmt::Display) -> String {
    error.to_string()
}
