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
            &Own(|draws: &Self| Mean(draws.peak_stress)),
        ),
    ];
}

impl Record for DrawnWheel {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "dynamic-load-factor",
            "Largest wheel load over that at rest.",
            &Own(|wheel: &Self| Mean(wheel.dynamic_load_factor)),
        ),
        part(
            "dynamic-load-coefficient",
            "Standard deviation of the wheel load over the load at rest.",
            &Own(|wheel: &Self| Mean(wheel.dynamic_load_coefficient)),
        ),
        number(
            "time-off-road",
            Kind::Time,
            "Time off the road.",
            &Own(|wheel: &Self| Mean(wheel.time_off_road)),
        ),
        number(
            "camber-peak-to-peak",
            Kind::Angle,
            "Peak-to-peak camber change.",
            &Own(|wheel: &Self| Mean(wheel.camber_peak_to_peak)),
        ),
        number(
            "camber-rms",
            Kind::Angle,
            "Standard deviation of the camber change.",
            &Own(|wheel: &Self| Mean(wheel.camber_rms)),
        ),
    ];
}

/// A mean with its interval by Student's t.
struct Mean(Estimated);

impl Record for Mean {
    const FIELDS: &'static [Field<Self>] = &[
        part("value", "The estimate.", &Own(|mean: &Self| mean.0.value)),
        part(
            "interval",
            "Its interval, low and high; null where the sample cannot tell.",
            &Part(|mean: &Self| &mean.0.interval),
        ),
    ];
}
