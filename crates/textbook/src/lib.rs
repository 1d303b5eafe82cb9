//! The textbook cases with their reference values; does not draw.
//!
//! Each case is written once: what it asks, its formula and inputs, the reference value and where its digits come from,
//! how near the computed value must come, and the call into the real code that computes it. Numbers stay in the units
//! of the source, which are consistent, so that nothing stands between the reference value and the code under test.

mod beams;
mod case;
mod cash_flows;
mod cross_sections;
mod durability;
mod shells;
mod tire_faces;
mod vibration;

/// The code under test, for checks beside these that come from no book.
pub use {axlebow_fe as fe, axlebow_sections as sections, axlebow_strength as strength};

pub use case::{Case, Checked, Compute, Provenance, Tolerance};
pub use shells::obstacle_course;

/// Every case, in the order in which a report lists them.
pub fn cases() -> Vec<Case> {
    [
        beams::overhung_axle::CASES,
        beams::cantilevers::CASES,
        beams::supported_beams::CASES,
        beams::varying_beams::CASES,
        beams::foundation::CASES,
        beams::partial_interaction::CASES,
        cross_sections::standard_tubes::CASES,
        cross_sections::shear_coefficients::CASES,
        cross_sections::torsion::CASES,
        cross_sections::angles::CASES,
        cross_sections::solid_torsion::CASES,
        cross_sections::shear_centers::CASES,
        vibration::modes::CASES,
        vibration::modes_of_tubes::CASES,
        vibration::shocks::CASES,
        vibration::moving_force::CASES,
        shells::shell_obstacles::CASES,
        shells::dented_cylinder::CASES,
        shells::plates_and_rings::CASES,
        durability::welds::CASES,
        durability::wall_classes::CASES,
        durability::rainflow_cycles::CASES,
        durability::fatigue_lives::CASES,
        durability::random_stress::CASES,
        durability::wheel_bearings::CASES,
        tire_faces::CASES,
        cash_flows::CASES,
    ]
    .concat()
}

/// An error of a lower crate as the text that a failed case shows.
fn text(error: impl std::fmt::Display) -> String {
    error.to_string()
}
