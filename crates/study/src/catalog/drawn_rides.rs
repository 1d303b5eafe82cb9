//! Results over several random roads of one kind.

use axlebow_results::{Field, Own, Part, Record, number, part};
use axlebow_units::Kind;

use crate::{DrawnRides, DrawnWheel, Estimated};

impl Record for DrawnRides {
    const FIELDS: &'static [Field<Self>] = &[
        part("count", "Number of roads.", &Own(|draws: &Self| draws.count)),
        part(
            "confidence",
            "Probability that an interval holds the mean over all roads of the kind.",
            &Own(|draws: &Self| draws.confidence),
        ),
        part("wheels", "Each wheel end.", &Part(|draws: &Self| &draws.wheels)),
        number(
            "peak-stress",
            Kind::Stress,
            "Magnitude of the largest fiber stress along the axle.",
            &Part(|draws: &Self| &draws.peak_stress),
        ),
    ];
}

impl Record for DrawnWheel {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "dynamic-load-factor",
            "Largest wheel load over that at rest.",
            &Part(|wheel: &Self| &wheel.dynamic_load_factor),
        ),
        part(
            "dynamic-load-coefficient",
            "Standard deviation of the wheel load over the load at rest.",
            &Part(|wheel: &Self| &wheel.dynamic_load_coefficient),
        ),
        number("time-off-road", Kind::Time, "Time off the road.", &Part(|wheel: &Self| &wheel.time_off_road)),
        number(
            "camber-peak-to-peak",
            Kind::Angle,
            "Peak-to-peak camber change.",
            &Part(|wheel: &Self| &wheel.camber_peak_to_peak),
        ),
        number(
            "camber-rms",
            Kind::Angle,
            "Standard deviation of the camber change.",
            &Part(|wheel: &Self| &wheel.camber_rms),
        ),
    ];
}

/// A mean with its interval by Student's t.
impl Record for Estimated {
    const FIELDS: &'static [Field<Self>] = &[
        part("value", "The estimate.", &Own(|mean: &Self| mean.value)),
        part(
            "interval",
            "Its interval, low and high; null where the sample cannot tell.",
            &Part(|mean: &Self| &mean.interval),
        ),
    ];
}
