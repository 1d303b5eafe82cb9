//! The ground along the way of one wheel.

use crate::error::{DISTANCES, accepted};
use crate::{Event, RoadError};

/// Contact lengths of tires, 1 mm to 2 m.
pub(crate) const CONTACT_LENGTHS: std::ops::RangeInclusive<f64> = 1e-3..=2.0;

/// Length over which the slope at a point is taken (m).
const POINT: f64 = 1e-3;

/// The ground along the way of one wheel: an event, where it lies, and the contact that feels it.
#[derive(Debug, Clone, PartialEq)]
pub struct Track {
    event: Event,
    place: f64,
    contact_length: Option<f64>,
}

impl Track {
    /// A track with an event at its own distances, felt at a point.
    pub fn new(event: impl Into<Event>) -> Self {
        Self { event: event.into(), place: 0.0, contact_length: None }
    }

    /// A level track.
    pub fn flat() -> Self {
        Self::new(Event::Flat)
    }

    /// The event of the track.
    pub fn event(&self) -> &Event {
        &self.event
    }

    /// The same track with its event moved along the road.
    ///
    /// - `distance`: (m), forward positive; the event stays within 100 km of its own frame
    ///
    /// Errors: [`RoadError::Range`].
    pub fn shifted(&self, distance: f64) -> Result<Self, RoadError> {
        let place = accepted("place of an event along the road", self.place + distance, "m", DISTANCES)?;
        Ok(Self { place, ..self.clone() })
    }

    /// The same track as felt by a tire, averaged over its contact:
    ///
    /// z̄(x) = (1/L) ∫ z dξ over x - L/2 to x + L/2
    ///
    /// The integral is taken in closed form for every event, so a straight slope is
    /// kept as it is and a step becomes a ramp of length L.
    ///
    /// - `contact_length`: L (m), 1 mm to 2 m; replaces one given before
    ///
    /// Validity: obstacles long against the tire's radius. A real tire also bridges
    /// holes shorter than its contact and meets an edge before the contact reaches
    /// it, which this leaves out.
    ///
    /// Errors: [`RoadError::Range`].
    ///
    /// Source: the moving average that stands for the enveloping of a tire in M. W.
    /// Sayers, Transp. Res. Rec. 1501 (1995) 1-12; the fixed-footprint tire of
    /// K. M. Captain, A. B. Boghani and D. N. Wormley, Vehicle System Dynamics 8
    /// (1979) 1-32, is the same average (from memory).
    pub fn enveloped(&self, contact_length: f64) -> Result<Self, RoadError> {
        let length = accepted("contact length of the tire", contact_length, "m", CONTACT_LENGTHS)?;
        Ok(Self { contact_length: Some(length), ..self.clone() })
    }

    /// Where the ground begins to differ from what it was before (m).
    pub fn start(&self) -> f64 {
        self.event.start() + self.place - 0.5 * self.contact_length.unwrap_or(0.0)
    }

    /// Where the ground reaches what it stays at (m).
    pub fn end(&self) -> f64 {
        self.event.end() + self.place + 0.5 * self.contact_length.unwrap_or(0.0)
    }

    /// Height of the ground as the wheel feels it (m, up).
    ///
    /// - `x`: distance along the road (m), any
    pub fn height(&self, x: f64) -> f64 {
        let own = x - self.place;
        match self.contact_length {
            None => self.event.height(own),
            Some(length) => self.event.mean_height(own - 0.5 * length, own + 0.5 * length),
        }
    }

    /// [`Height`](Self::height) (m) and [`slope`](Self::slope) (m/m) at one place, for less than both by themselves.
    ///
    /// - `x`: distance along the road (m), any
    pub fn height_and_slope(&self, x: f64) -> [f64; 2] {
        let Some(length) = self.contact_length else { return [self.height(x), self.slope(x)] };
        let own = x - self.place;
        let [mean, behind, ahead] = self.event.mean_and_ends(own - 0.5 * length, own + 0.5 * length);
        [mean, (ahead - behind) / length]
    }

    /// Slope of the ground as the wheel feels it (m/m, up along the road):
    ///
    /// dz̄/dx = (z(x + L/2) - z(x - L/2)) / L
    ///
    /// - `x`: distance along the road (m), any
    ///
    /// A track that is felt at a point has the slope between half a millimeter on either side.
    pub fn slope(&self, x: f64) -> f64 {
        let (own, length) = (x - self.place, self.contact_length.unwrap_or(POINT));
        (self.event.height(own + 0.5 * length) - self.event.height(own - 0.5 * length)) / length
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{HalfSineBump, MeasuredProfile, Step};
    use approx::{assert_abs_diff_eq, assert_relative_eq};

    #[test]
    fn a_step_becomes_a_ramp_as_long_as_the_contact() {
        let track = Track::new(Step::new(0.08).unwrap()).enveloped(0.25).unwrap();
        assert_eq!((track.start(), track.end()), (-0.125, 0.125));
        for (x, z) in [(-0.2, 0.0), (-0.125, 0.0), (-0.0625, 0.02), (0.0, 0.04), (0.125, 0.08), (1.0, 0.08)] {
            assert_abs_diff_eq!(track.height(x), z, epsilon = 1e-16);
        }
    }

    #[test]
    fn a_straight_slope_is_kept() {
        let (distances, heights): (Vec<f64>, Vec<f64>) =
            (0..=50).map(|i| f64::from(i) * 100.0).map(|x| (x, 1.0 + 0.05 * x)).unzip();
        let slope = Track::new(MeasuredProfile::new(&distances, &heights, 100.0).unwrap());
        let felt = slope.enveloped(0.25).unwrap();
        for x in [0.125, 99.9, 100.0, 2345.6, 4999.875] {
            assert_relative_eq!(felt.height(x), 1.0 + 0.05 * x, max_relative = 1e-12);
        }
    }

    #[test]
    fn the_slope_is_that_of_the_height_felt() {
        let felt = Track::new(HalfSineBump::new(0.1, 2.0).unwrap()).enveloped(0.5).unwrap();
        let h = 1e-5;
        for x in [-0.3, -0.2, 0.1, 0.9, 1.0, 1.7, 2.2, 3.0] {
            let slope = (felt.height(x + h) - felt.height(x - h)) / (2.0 * h);
            assert_abs_diff_eq!(felt.slope(x), slope, epsilon = 1e-9);
        }
        assert_relative_eq!(Track::new(Step::new(0.08).unwrap()).enveloped(0.25).unwrap().slope(0.1), 0.32);
    }

    #[test]
    fn a_wave_shrinks_by_the_sine_over_its_angle() {
        // Mean of sin over a half width b about a crest is sin(b)/b.
        let track = Track::new(HalfSineBump::new(0.1, 2.0).unwrap()).enveloped(0.5).unwrap();
        let b = 0.25 * std::f64::consts::FRAC_PI_2;
        assert_relative_eq!(track.height(1.0), 0.1 * b.sin() / b, max_relative = 1e-15);
    }

    /// The same digits as one by one, before, within and behind each event, and where the contact reaches over its ends.
    #[test]
    fn height_and_slope_together_are_those_one_by_one() {
        let (distances, heights): (Vec<f64>, Vec<f64>) = (0..=40)
            .map(|i| 0.05 * f64::from(i) + 1e-3 * f64::from(i % 3))
            .map(|x| (x, (7.0 * x).sin()))
            .unzip();
        let profile = MeasuredProfile::new(&distances, &heights, 1.0).unwrap();
        let tracks = [Track::new(profile), Track::new(HalfSineBump::new(0.1, 2.0).unwrap()), Track::flat()];
        for track in tracks {
            for felt in [track.clone(), track.enveloped(0.03).unwrap(), track.enveloped(0.23).unwrap()] {
                for x in (-20..240).map(|i| 0.01 * f64::from(i)) {
                    assert_eq!(felt.height_and_slope(x), [felt.height(x), felt.slope(x)], "{x}");
                }
            }
        }
    }

    #[test]
    fn places_and_contacts_out_of_range_are_refused() {
        assert!(Track::flat().shifted(f64::NAN).is_err());
        assert!(Track::flat().shifted(1.001e5).is_err());
        assert!(Track::flat().enveloped(2.01).is_err());
        assert_eq!(
            Track::flat().enveloped(0.0).unwrap_err().to_string(),
            "contact length of the tire is 0 m; accepted is 0.001 to 2 m"
        );
    }

    #[test]
    fn distances_that_are_no_places_give_no_panic() {
        let profile = MeasuredProfile::new(&[0.0, 1.0], &[0.5, 1.5], 1.0).unwrap();
        let felt = Track::new(profile).enveloped(0.2).unwrap();
        assert_eq!((felt.height(f64::NEG_INFINITY), felt.height(f64::INFINITY)), (0.5, 1.5));
        assert!(felt.height(f64::NAN).is_nan());
    }
}
