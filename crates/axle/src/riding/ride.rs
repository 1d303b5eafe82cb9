//! A ride: the axle in time over a road, with tires that may leave it.
//!
//! The axle, its springs, the body and what the rest of the vehicle puts against its roll are linear; each tire pushes on the road through a one-sided spring and
//! damper, dampers and bump stops act between axle and body at the seats, and a bearing with play presses when
//! its hub has crossed the gap. The ride starts at rest on the road's first height.

use axlebow_fe::Scheme;
use axlebow_road::Road;

use crate::AxleError;
use crate::parts::error::{finite, positive};
use crate::riding::record_options::RecordOptions;
use crate::riding::ride_basis::RideBasis;

/// The road input, and how it is driven.
#[derive(Debug, Clone, PartialEq)]
pub struct Ride {
    /// Name for results.
    pub name: String,
    /// Height of the road under each side's wheels against distance.
    pub road: Road,
    /// Whether the road repeats after its end, as a random one does: the ride then has a run-in over the road's end, so that
    /// its samples begin in the motion of a long ride and not at rest.
    pub repeats: bool,
    /// Speed, m/s.
    pub speed: f64,
    /// Length of a tire's contact with the road, over which it takes the mean height, m.
    pub contact_length: f64,
    /// Distance from where the road's event begins at which the ride begins, m; negative for a run-up.
    pub from: f64,
    /// Distance at which the ride ends, m.
    pub to: f64,
    /// Length of a time step, s.
    pub step: f64,
    /// Load of the axle on the road at rest, N.
    pub axle_load: f64,
    /// The motions that it is solved in.
    pub basis: RideBasis,
    /// How it advances in time.
    pub scheme: Scheme,
    /// What is kept beside the histories that always are.
    pub keep: RecordOptions,
}

impl Ride {
    /// Refuses what cannot be driven; how long the ride takes, s.
    pub(crate) fn check(&self) -> Result<f64, AxleError> {
        positive("speed", self.speed, "m/s")?;
        positive("contact length", self.contact_length, "m")?;
        positive("time step", self.step, "s")?;
        if let Scheme::GeneralizedAlpha { spectral_radius: value } = self.scheme
            && !(0.0..=1.0).contains(&value)
        {
            let (what, accepted) = ("spectral radius", "a value from 0 to 1");
            return Err(AxleError::Value { what, value, unit: "", accepted });
        }
        finite("start of the ride", self.from, "m")?;
        let duration = (self.to - self.from) / self.speed;
        positive("length of the ride in time", duration, "s")?;
        Ok(duration)
    }
}
