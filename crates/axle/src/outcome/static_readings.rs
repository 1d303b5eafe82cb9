//! The few numbers that studies ask of a static case.

use crate::Sides;
use crate::outcome::{CamberSplit, CaseOutcome};

/// What studies ask of a static case: the same numbers as those of [`StaticDesign::case`](crate::StaticDesign::case) but for rounding.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StaticReadings {
    /// Both wheels.
    pub wheels: Sides<WheelReadings>,
    /// Fiber stress of largest magnitude along the axle, tension positive, Pa.
    pub peak_stress: f64,
    /// Position of the peak stress, m.
    pub peak_stress_y: f64,
    /// Height of the axle's center above the line through the hubs, m.
    pub bow: f64,
    /// Rigid roll of the line through the hubs on tires and road, rad.
    pub axle_roll: f64,
    /// Largest miss of the balance of forces over the largest load.
    pub residual: f64,
    /// Greatest force per length of the welds of stiffeners, N/m; none without stiffeners.
    pub weld_peak: Option<f64>,
}

/// What studies ask of a wheel.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WheelReadings {
    /// Camber change, positive with the tire's top outward, rad.
    pub camber_change: f64,
    /// Toe change, positive toe-in, rad.
    pub toe_change: f64,
    /// Upward force of the road, N.
    pub vertical_load: f64,
    /// Which tires are off the road: the single or outer one, the inner one.
    pub off_road: [bool; 2],
    /// Camber change by source, rad.
    pub split: CamberSplit,
}

impl From<&CaseOutcome> for StaticReadings {
    fn from(case: &CaseOutcome) -> Self {
        let wheels = Sides::each(|side| {
            let wheel = case.wheels.of(side);
            let off = |number: usize| wheel.contacts.get(number).is_some_and(|contact| contact.off_road);
            WheelReadings {
                camber_change: wheel.camber_change,
                toe_change: wheel.toe_change,
                vertical_load: wheel.vertical_load,
                off_road: [off(0), off(1)],
                split: wheel.split,
            }
        });
        StaticReadings {
            wheels,
            peak_stress: case.peak_stress,
            peak_stress_y: case.peak_stress_y,
            bow: case.bow,
            axle_roll: case.axle_roll,
            residual: case.equilibrium_residual,
            weld_peak: None,
        }
    }
}
