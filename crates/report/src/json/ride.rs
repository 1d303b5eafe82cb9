//! The document of a ride, `axlebow/ride/1`.

use axlebow_axle::{
    Band, BasisComparison, BesideFull, RideBasis, RideMethod, RideOutcome, RideWheel, Scheme, StationPeak,
    StopHits,
};
use axlebow_study::{DrawnRides, DrawnWheel, Estimated};
use schemars::JsonSchema;
use serde::Serialize;

use super::flex::{SplitEntry, WarningEntry};
use super::{AssumedEntry, ModelEntry, assumed, model, pretty, schema_of};
use crate::{BesideRide, ModelCard};

/// Name and version of the document.
pub const RIDE_SCHEMA: &str = "axlebow/ride/1";

/// The document of a ride as JSON text: pretty, ending in a new line, same bytes for the same outcome.
///
/// Histories are left out: [`crate::csv::write_ride`] writes them. A value that is not finite is written as `null`.
pub fn ride_document(outcome: &RideOutcome, beside: BesideRide, card: &ModelCard) -> String {
    pretty(&RideDocument::new(outcome, beside, card))
}

/// The JSON Schema (2020-12) of the document of a ride.
pub fn ride_schema() -> String {
    schema_of::<RideDocument>(RIDE_SCHEMA)
}

/// What a ride over a road says.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RideDocument {
    /// `axlebow/ride/1`.
    pub schema: &'static str,
    /// The model that was run.
    pub model: ModelEntry,
    /// Name of the road.
    pub road: String,
    /// Speed, m/s.
    pub speed_m_s: f64,
    /// Time driven over the end of a road that repeats before the first sample, s; zero on other roads.
    pub run_in_s: f64,
    /// Each wheel end.
    pub wheels: RideWheelsEntry,
    /// What the bump stops went through.
    pub bump_stops: BumpStopsEntry,
    /// Peak fiber stress of each place on the axle, from left to right.
    pub stations: Vec<StationPeakEntry>,
    /// How it was solved.
    pub method: RideMethodEntry,
    /// Means over several random roads, of which the rest of this document is about the first; null for one road.
    pub draws: Option<DrawsEntry>,
    /// Results of a reduced basis beside those of the full one; null unless both were asked for.
    pub comparison: Option<BasisComparisonEntry>,
    /// Power spectral density of each wheel's camber change; null for a ride of fewer than 16 samples.
    pub camber_spectrum: Option<SpectrumEntry>,
    /// Time steps, and parts of steps where contact changed.
    pub steps: usize,
    /// Newton iterations.
    pub iterations: usize,
    /// Times that a tire left the road or came back.
    pub contact_changes: usize,
    /// Greatest lack of energy balance over the greatest energy.
    pub energy_drift: f64,
    /// True when the ride was driven to its end.
    pub complete: bool,
    /// Why the ride ended early; null when it did not.
    pub partial: Option<String>,
    /// Defaults that were used.
    pub assumed: Vec<AssumedEntry>,
    /// Things that the reader must know, each with what to do.
    pub warnings: Vec<WarningEntry>,
}

/// Both wheel ends of a ride.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RideWheelsEntry {
    /// Left of the vehicle.
    pub left: RideWheelEntry,
    /// Right of the vehicle.
    pub right: RideWheelEntry,
}

/// One wheel end over a ride; camber change is against the unloaded axle, positive with the tire's top outward.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RideWheelEntry {
    /// Load at the start, at rest, N.
    pub load_at_rest_n: f64,
    /// Largest load, N.
    pub largest_load_n: f64,
    /// Smallest load, N.
    pub smallest_load_n: f64,
    /// Largest load over the load at rest.
    pub dynamic_load_factor: f64,
    /// Root mean square of the load's deviation from its mean, over the load at rest.
    pub dynamic_load_coefficient: f64,
    /// Time off the road, s.
    pub time_off_road_s: f64,
    /// Camber change at rest, rad.
    pub camber_at_rest_rad: f64,
    /// Camber change of largest magnitude, rad.
    pub camber_peak_rad: f64,
    /// That change by source; a bearing counts with what it takes up of its clearance.
    pub camber_peak_split_rad: SplitEntry,
    /// Peak-to-peak camber change, rad.
    pub camber_peak_to_peak_rad: f64,
    /// Root mean square of the camber change's deviation from its mean, rad.
    pub camber_rms_rad: f64,
    /// Frequency that dominates the camber, Hz; null when it hardly moves.
    pub dominant_frequency_hz: Option<f64>,
    /// Cups that this frequency prints in one turn of the tire at this speed.
    pub cups_per_turn: Option<f64>,
    /// Distance from cup to cup along the tread, m.
    pub cup_spacing_m: Option<f64>,
    /// International roughness index of the track, m/m (0.001 is 1 m/km); null where the road has none.
    pub roughness_index: Option<f64>,
}

/// Means over several random roads of one kind.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct DrawsEntry {
    /// Number of roads.
    pub count: usize,
    /// Probability that an interval holds the mean over all roads of the kind.
    pub confidence: f64,
    /// Left of the vehicle.
    pub left: DrawnWheelEntry,
    /// Right of the vehicle.
    pub right: DrawnWheelEntry,
    /// Magnitude of the largest fiber stress along the axle, Pa.
    pub peak_stress_pa: MeanEntry,
}

/// One wheel end over several random roads.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct DrawnWheelEntry {
    /// Largest load over the load at rest.
    pub dynamic_load_factor: MeanEntry,
    /// Root mean square of the load's deviation from its mean, over the load at rest.
    pub dynamic_load_coefficient: MeanEntry,
    /// Time off the road, s.
    pub time_off_road_s: MeanEntry,
    /// Peak-to-peak camber change, rad.
    pub camber_peak_to_peak_rad: MeanEntry,
    /// Root mean square of the camber change's deviation from its mean, rad.
    pub camber_rms_rad: MeanEntry,
}

/// A mean with its interval by Student's t.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct MeanEntry {
    /// The mean.
    pub mean: f64,
    /// Its interval, low and high.
    pub interval: Option<[f64; 2]>,
}

/// How a ride was solved.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RideMethodEntry {
    /// `full` or `reduced`.
    pub basis: &'static str,
    /// Freedoms of the full basis or shapes of a reduced one.
    pub unknowns: usize,
    /// Frequency up to which a reduced basis has all natural modes that the ride can move, Hz; null for the full.
    pub modes_up_to_hz: Option<f64>,
    /// `generalized-alpha` or `average-acceleration`.
    pub scheme: &'static str,
    /// What a step leaves of motions far faster than it; null for average acceleration.
    pub spectral_radius: Option<f64>,
    /// Length of a time step, s.
    pub step_s: f64,
}

/// A ride in a reduced basis beside the same in the full one.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct BasisComparisonEntry {
    /// How the reduced ride was solved.
    pub reduced: RideMethodEntry,
    /// Peak-to-peak camber change of the wheel where it is largest, rad.
    pub camber_peak_to_peak_rad: BesideFullEntry,
    /// Largest load of a wheel, N.
    pub largest_load_n: BesideFullEntry,
    /// Largest magnitude of fiber stress, Pa.
    pub peak_stress_pa: BesideFullEntry,
}

/// One result in both bases.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct BesideFullEntry {
    /// In the full basis.
    pub full: f64,
    /// In the reduced basis.
    pub reduced: f64,
    /// Reduced less full, as a share of the full.
    pub difference: f64,
}

/// Both bump stops; null where a seat has none.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct BumpStopsEntry {
    /// Left of the vehicle.
    pub left: Option<BumpStopEntry>,
    /// Right of the vehicle.
    pub right: Option<BumpStopEntry>,
}

/// One bump stop.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct BumpStopEntry {
    /// How often it was hit.
    pub hits: usize,
    /// Largest force, N.
    pub largest_force_n: f64,
}

/// Peak fiber stress at a place.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StationPeakEntry {
    /// Name.
    pub name: String,
    /// Position, left positive, m.
    pub y_m: f64,
    /// Fiber stress of largest magnitude, tension positive, Pa.
    pub stress_pa: f64,
    /// When, from the start of the ride, s.
    pub time_s: f64,
}

/// One-sided power spectral density of each wheel's camber change about its mean, in bands of about 1/16 octave, or
/// of one line where lines lie wider. Density times width, summed over all bands, is the mean square.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SpectrumEntry {
    /// Segments of the ride over which the density is the mean; 1 for the ride as a whole.
    pub segments: usize,
    /// Middle of each band, Hz.
    pub frequency_hz: Vec<f64>,
    /// Width of each band, Hz.
    pub width_hz: Vec<f64>,
    /// Density of the left wheel, rad²/Hz.
    pub left_rad2_per_hz: Vec<f64>,
    /// Density of the right wheel, rad²/Hz.
    pub right_rad2_per_hz: Vec<f64>,
}

impl SpectrumEntry {
    fn of(outcome: &RideOutcome) -> Option<Self> {
        let spectra = outcome.history.camber_spectra()?;
        let (left, right) = (spectra.left.bands(), spectra.right.bands());
        let densities = |bands: &[Band]| bands.iter().map(|band| band.density).collect();
        Some(Self {
            segments: spectra.left.segments,
            frequency_hz: left.iter().map(|band| band.frequency).collect(),
            width_hz: left.iter().map(|band| band.width).collect(),
            left_rad2_per_hz: densities(&left),
            right_rad2_per_hz: densities(&right),
        })
    }
}

impl RideDocument {
    /// The document of an outcome.
    pub fn new(outcome: &RideOutcome, beside: BesideRide, card: &ModelCard) -> Self {
        let wheels = &outcome.wheels;
        Self {
            schema: RIDE_SCHEMA,
            model: model(card),
            road: outcome.name.clone(),
            speed_m_s: outcome.speed,
            run_in_s: outcome.run_in,
            wheels: RideWheelsEntry { left: (&wheels.left).into(), right: (&wheels.right).into() },
            bump_stops: BumpStopsEntry {
                left: outcome.stops.left.as_ref().map(BumpStopEntry::from),
                right: outcome.stops.right.as_ref().map(BumpStopEntry::from),
            },
            stations: outcome.stations.iter().map(StationPeakEntry::from).collect(),
            method: (&outcome.method).into(),
            draws: beside.draws.map(DrawsEntry::from),
            comparison: beside.comparison.map(BasisComparisonEntry::from),
            camber_spectrum: SpectrumEntry::of(outcome),
            steps: outcome.parts,
            iterations: outcome.iterations,
            contact_changes: outcome.contact_changes,
            energy_drift: outcome.energy_drift,
            complete: outcome.partial.is_none(),
            partial: outcome.partial.clone(),
            assumed: assumed(card),
            warnings: outcome.warnings.iter().map(WarningEntry::from).collect(),
        }
    }
}

impl From<&RideWheel> for RideWheelEntry {
    fn from(wheel: &RideWheel) -> Self {
        Self {
            load_at_rest_n: wheel.load_at_rest,
            largest_load_n: wheel.largest_load,
            smallest_load_n: wheel.smallest_load,
            dynamic_load_factor: wheel.dynamic_load_factor,
            dynamic_load_coefficient: wheel.dynamic_load_coefficient,
            time_off_road_s: wheel.time_off_road,
            camber_at_rest_rad: wheel.camber_at_rest,
            camber_peak_rad: wheel.camber_peak,
            camber_peak_split_rad: SplitEntry::from(&wheel.camber_peak_split),
            camber_peak_to_peak_rad: wheel.camber_peak_to_peak,
            camber_rms_rad: wheel.camber_rms,
            dominant_frequency_hz: wheel.dominant_frequency,
            cups_per_turn: wheel.cups_per_turn,
            cup_spacing_m: wheel.cup_spacing,
            roughness_index: wheel.roughness_index,
        }
    }
}

impl From<&StopHits> for BumpStopEntry {
    fn from(hits: &StopHits) -> Self {
        Self { hits: hits.count, largest_force_n: hits.largest_force }
    }
}

impl From<&StationPeak> for StationPeakEntry {
    fn from(peak: &StationPeak) -> Self {
        Self { name: peak.name.clone(), y_m: peak.y, stress_pa: peak.stress, time_s: peak.time }
    }
}

impl From<&RideMethod> for RideMethodEntry {
    fn from(method: &RideMethod) -> Self {
        let (scheme, spectral_radius) = match method.scheme {
            Scheme::AverageAcceleration => ("average-acceleration", None),
            Scheme::GeneralizedAlpha { spectral_radius } => ("generalized-alpha", Some(spectral_radius)),
        };
        let basis = match method.basis {
            RideBasis::Full => "full",
            RideBasis::Reduced => "reduced",
        };
        let (unknowns, modes_up_to_hz, step_s) = (method.unknowns, method.modes_up_to, method.step);
        Self { basis, unknowns, modes_up_to_hz, scheme, spectral_radius, step_s }
    }
}

impl From<&DrawnRides> for DrawsEntry {
    fn from(draws: &DrawnRides) -> Self {
        Self {
            count: draws.count,
            confidence: draws.confidence,
            left: (&draws.wheels.left).into(),
            right: (&draws.wheels.right).into(),
            peak_stress_pa: draws.peak_stress.into(),
        }
    }
}

impl From<&DrawnWheel> for DrawnWheelEntry {
    fn from(wheel: &DrawnWheel) -> Self {
        Self {
            dynamic_load_factor: wheel.dynamic_load_factor.into(),
            dynamic_load_coefficient: wheel.dynamic_load_coefficient.into(),
            time_off_road_s: wheel.time_off_road.into(),
            camber_peak_to_peak_rad: wheel.camber_peak_to_peak.into(),
            camber_rms_rad: wheel.camber_rms.into(),
        }
    }
}

impl From<Estimated> for MeanEntry {
    fn from(Estimated { value, interval }: Estimated) -> Self {
        Self { mean: value, interval }
    }
}

impl From<&BasisComparison> for BasisComparisonEntry {
    fn from(comparison: &BasisComparison) -> Self {
        Self {
            reduced: (&comparison.reduced).into(),
            camber_peak_to_peak_rad: comparison.camber_peak_to_peak.into(),
            largest_load_n: comparison.largest_load.into(),
            peak_stress_pa: comparison.peak_stress.into(),
        }
    }
}

impl From<BesideFull> for BesideFullEntry {
    fn from(beside: BesideFull) -> Self {
        Self { full: beside.full, reduced: beside.reduced, difference: beside.difference() }
    }
}
