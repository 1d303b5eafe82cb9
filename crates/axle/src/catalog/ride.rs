//! Results of a ride; histories are not among them.

use axlebow_fe::Scheme;
use axlebow_results::{Field, Own, Part, Read, Record, Text, in_unit, number, part};
use axlebow_units::Kind;

use crate::{
    Band, BasisComparison, BesideFull, Refined, RideBasis, RideMethod, RideOutcome, RideWheel, Sides,
    Spectrum, StationPeak, StepRefinement, StopHits,
};

impl Record for RideOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("road", "Name of the road.", &Text(|ride: &Self| &ride.name)),
        number("speed", Kind::Speed, "Speed.", &Own(|ride: &Self| ride.speed)),
        number(
            "run-in",
            Kind::Time,
            "Time driven over the end of a road that repeats before the first sample; zero on other roads.",
            &Own(|ride: &Self| ride.run_in),
        ),
        part("wheels", "Each wheel end.", &Part(|ride: &Self| &ride.wheels)),
        part(
            "bump-stops",
            "Each seat's bump stop; null where there is none.",
            &Part(|ride: &Self| &ride.stops),
        ),
        part(
            "stations",
            "Peak fiber stress of each place on the axle, from left to right.",
            &Part(|ride: &Self| &ride.stations),
        ),
        part("method", "How it was solved.", &Part(|ride: &Self| &ride.method)),
        part(
            "camber-spectrum",
            "Power spectral density of each wheel's camber change; null for a ride of fewer than 16 samples.",
            &Own(|ride: &Self| ride.history.camber_spectra().map(|spectra| Bands::of(&spectra))),
        ),
        part(
            "steps",
            "Time steps, and parts of steps where contact changed.",
            &Own(|ride: &Self| ride.parts),
        ),
        part("iterations", "Newton iterations.", &Own(|ride: &Self| ride.iterations)),
        part(
            "contact-changes",
            "Times that a tire left the road or came back.",
            &Own(|ride: &Self| ride.contact_changes),
        ),
        part(
            "energy-drift",
            "Greatest lack of energy balance over the greatest energy.",
            &Own(|ride: &Self| ride.energy_drift),
        ),
        part(
            "complete",
            "True when the ride was driven to its end.",
            &Own(|ride: &Self| ride.partial.is_none()),
        ),
        part(
            "partial",
            "Why the ride ended early; null when it did not.",
            &Part(|ride: &Self| &ride.partial),
        ),
    ];
}

/// Camber change is against the unloaded axle, positive with the tire's top outward.
impl Record for RideWheel {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "load-at-rest",
            Kind::Force,
            "Load at the start, at rest.",
            &Own(|wheel: &Self| wheel.load_at_rest),
        ),
        number("largest-load", Kind::Force, "Largest load.", &Own(|wheel: &Self| wheel.largest_load)),
        number("smallest-load", Kind::Force, "Smallest load.", &Own(|wheel: &Self| wheel.smallest_load)),
        part(
            "dynamic-load-factor",
            "Largest wheel load over that at rest.",
            &Own(|wheel: &Self| wheel.dynamic_load_factor),
        ),
        part(
            "dynamic-load-coefficient",
            "Standard deviation of the wheel load over the load at rest.",
            &Own(|wheel: &Self| wheel.dynamic_load_coefficient),
        ),
        number("time-off-road", Kind::Time, "Time off the road.", &Own(|wheel: &Self| wheel.time_off_road)),
        number(
            "camber-at-rest",
            Kind::Angle,
            "Camber change at rest.",
            &Own(|wheel: &Self| wheel.camber_at_rest),
        ),
        number(
            "camber-peak",
            Kind::Angle,
            "Camber change of largest magnitude, static change included.",
            &Own(|wheel: &Self| wheel.camber_peak),
        ),
        part(
            "camber-peak-split",
            "That change by source; a bearing counts with what it takes up of its clearance.",
            &Part(|wheel: &Self| &wheel.camber_peak_split),
        ),
        number(
            "camber-peak-to-peak",
            Kind::Angle,
            "Peak-to-peak camber change.",
            &Own(|wheel: &Self| wheel.camber_peak_to_peak),
        ),
        number(
            "camber-rms",
            Kind::Angle,
            "Standard deviation of the camber change.",
            &Own(|wheel: &Self| wheel.camber_rms),
        ),
        number(
            "camber-frequency",
            Kind::Frequency,
            "Dominant frequency of the camber; null when it hardly moves.",
            &Part(|wheel: &Self| &wheel.dominant_frequency),
        ),
        part(
            "cups-per-turn",
            "Cups that this frequency prints in one turn of the tire at this speed; null below one.",
            &Part(|wheel: &Self| &wheel.cups_per_turn),
        ),
        number(
            "cup-spacing",
            Kind::Length,
            "Distance from cup to cup along the tread.",
            &Part(|wheel: &Self| &wheel.cup_spacing),
        ),
        part(
            "roughness-index",
            "International roughness index of the track, m/m (0.001 is 1 m/km); null where the road has none.",
            &Part(|wheel: &Self| &wheel.roughness_index),
        ),
    ];
}

impl Record for RideMethod {
    const FIELDS: &'static [Field<Self>] = &[
        part("basis", "`full` or `reduced`.", &Text(|method: &Self| basis(method.basis))),
        part(
            "unknowns",
            "Degrees of freedom of the full basis or shapes of a reduced one.",
            &Own(|method: &Self| method.unknowns),
        ),
        number(
            "modes-up-to",
            Kind::Frequency,
            "Frequency up to which a reduced basis has all natural modes that the ride can move; null for the full.",
            &Part(|method: &Self| &method.modes_up_to),
        ),
        part(
            "scheme",
            "`generalized-alpha` or `average-acceleration`.",
            &Text(|method: &Self| scheme(method.scheme).0),
        ),
        part(
            "spectral-radius",
            "Spectral radius at infinite frequency; null for average acceleration.",
            &Own(|method: &Self| scheme(method.scheme).1),
        ),
        number("step", Kind::Time, "Length of a time step.", &Own(|method: &Self| method.step)),
    ];
}

fn basis(basis: RideBasis) -> &'static str {
    match basis {
        RideBasis::Full => "full",
        RideBasis::Reduced => "reduced",
    }
}

fn scheme(scheme: Scheme) -> (&'static str, Option<f64>) {
    match scheme {
        Scheme::AverageAcceleration => ("average-acceleration", None),
        Scheme::GeneralizedAlpha { spectral_radius } => ("generalized-alpha", Some(spectral_radius)),
    }
}

/// The results by which rides are compared.
const fn compared_camber<T>(read: &'static dyn Read<T>) -> Field<T> {
    let meaning = "Peak-to-peak camber change of the wheel where it is largest.";
    number("camber-peak-to-peak", Kind::Angle, meaning, read)
}

const fn compared_load<T>(read: &'static dyn Read<T>) -> Field<T> {
    number("largest-load", Kind::Force, "Largest load of a wheel.", read)
}

const fn compared_stress<T>(read: &'static dyn Read<T>) -> Field<T> {
    number("peak-stress", Kind::Stress, "Largest magnitude of fiber stress.", read)
}

/// A ride in a reduced basis beside the same in the full one.
impl Record for BasisComparison {
    const FIELDS: &'static [Field<Self>] = &[
        part("reduced", "How the reduced ride was solved.", &Part(|own: &Self| &own.reduced)),
        compared_camber(&Part(|own: &Self| &own.camber_peak_to_peak)),
        compared_load(&Part(|own: &Self| &own.largest_load)),
        compared_stress(&Part(|own: &Self| &own.peak_stress)),
    ];
}

impl Record for BesideFull {
    const FIELDS: &'static [Field<Self>] = &[
        part("full", "In the full basis.", &Own(|own: &Self| own.full)),
        part("reduced", "In the reduced basis.", &Own(|own: &Self| own.reduced)),
        part("difference", "Reduced less full, as a share of the full.", &Own(|own: &Self| own.difference())),
    ];
}

impl Record for StepRefinement {
    const FIELDS: &'static [Field<Self>] = &[
        number("step", Kind::Time, "The longest of the steps.", &Own(|own: &Self| own.step)),
        compared_camber(&Part(|own: &Self| &own.camber_peak_to_peak)),
        compared_load(&Part(|own: &Self| &own.largest_load)),
        compared_stress(&Part(|own: &Self| &own.peak_stress)),
    ];
}

impl Record for Refined {
    const FIELDS: &'static [Field<Self>] = &[
        part("by-step", "By the step, by half and by a quarter of it.", &Own(|own: &Self| own.0.to_vec())),
        part("extrapolated", "Where that goes with the step.", &Own(Refined::extrapolated)),
        part(
            "order",
            "Order in the step at which it settles; null where halving changes nothing, or not less the second time.",
            &Own(Refined::order),
        ),
        part("error", "What the longest step is off, as a share of what it goes to.", &Own(Refined::error)),
    ];
}

impl Record for StopHits {
    const FIELDS: &'static [Field<Self>] = &[
        part("hits", "How often it was hit.", &Own(|stop: &Self| stop.count)),
        number("largest-force", Kind::Force, "Largest force.", &Own(|stop: &Self| stop.largest_force)),
    ];
}

impl Record for StationPeak {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Name.", &Text(|at: &Self| &at.name)),
        number("y", Kind::Length, "Position, left positive.", &Own(|at: &Self| at.y)),
        number(
            "stress",
            Kind::Stress,
            "Fiber stress of largest magnitude, tension positive.",
            &Own(|at: &Self| at.stress),
        ),
        number("time", Kind::Time, "When, from the start of the ride.", &Own(|at: &Self| at.time)),
    ];
}

/// One-sided power spectral density of each wheel's camber change about its mean, in bands of about 1/16 octave, or of one
/// line where lines lie wider: density times width, summed over all bands, is the mean square.
struct Bands {
    segments: usize,
    left: Vec<Band>,
    right: Vec<Band>,
}

impl Bands {
    fn of(spectra: &Sides<Spectrum>) -> Bands {
        Bands { segments: spectra.left.segments, left: spectra.left.bands(), right: spectra.right.bands() }
    }
}

impl Record for Bands {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "segments",
            "Segments of the ride over which the density is the mean; 1 for the ride as a whole.",
            &Own(|own: &Self| own.segments),
        ),
        number(
            "frequency",
            Kind::Frequency,
            "Middle of each band.",
            &Own(|own: &Self| each(&own.left, |band| band.frequency)),
        ),
        number(
            "width",
            Kind::Frequency,
            "Width of each band.",
            &Own(|own: &Self| each(&own.left, |band| band.width)),
        ),
        in_unit(
            "left",
            "rad2/Hz",
            "Density of the left wheel.",
            &Own(|own: &Self| each(&own.left, |band| band.density)),
        ),
        in_unit(
            "right",
            "rad2/Hz",
            "Density of the right wheel.",
            &Own(|own: &Self| each(&own.right, |band| band.density)),
        ),
    ];
}

fn each(bands: &[Band], value: fn(&Band) -> f64) -> Vec<f64> {
    bands.iter().map(value).collect()
}
