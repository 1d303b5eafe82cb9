//! Ribs of a hub that carry small waves.

use super::scuff_slopes::{RollingState, ScuffSlopes, Slopes};
use crate::error::not_negative;
use crate::face::FittedTire;
use crate::rolling::{DrivenState, RollingRib};
use crate::{Face, Pose, TreadError};

/// Most ribs of a hub whose waves are solved for: the eigenvalues of a wave cost by the third power of it.
const MOST_RIBS: usize = 60;

/// What of a wheel matters to waves and not to the tire face.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WheelInertia {
    /// Moment of inertia of all that turns with the hub about its axis, kg m²; zero for a wheel that follows its ribs.
    pub spin: f64,
    /// Damping of a tire over its vertical stiffness, s.
    pub damping_time: f64,
}

/// The ribs of a hub about a pose, ready to carry waves.
#[derive(Debug, Clone, PartialEq)]
pub struct HubWaves {
    pub(super) inertia: WheelInertia,
    pub(super) ribs: Vec<RibWave>,
    pub(super) states: Vec<WearState>,
    /// How each rib's wear changes in the mean over the states.
    pub(super) mean_energy: Vec<Slopes>,
    /// Distance traveled over the angle turned, m.
    pub(super) travel: f64,
    /// Mean wear of the ribs, J/m² of an ordinary rubber for each passage.
    pub(super) mean_wear: f64,
    /// Depth that the ribs lose in the mean for each distance traveled, where it is known.
    worn_per_distance: Option<f64>,
}

/// A rib that carries a wave.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct RibWave {
    /// Outboard of the point about which camber turns the hub, m.
    pub outboard: f64,
    /// Vertical stiffness, N/m; zero off the road.
    pub stiffness: f64,
    /// Length of its contact, m.
    pub contact: f64,
}

/// A state of driving and how forward force and wear change in it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct WearState {
    /// Part of the way that is driven so.
    pub share: f64,
    /// For each rib; the energy by the tread's abradability and the rib's width.
    pub ribs: Vec<ScuffSlopes>,
}

impl HubWaves {
    /// The ribs of a face about a pose.
    ///
    /// # Errors
    /// As [`Face::rolling`]; [`TreadError::Value`] for a negative inertia or damping, a face of more than 60 ribs, and one
    /// that does not wear.
    pub fn new(face: &Face, pose: Pose, inertia: WheelInertia) -> Result<Self, TreadError> {
        not_negative("moment of inertia of a wheel", inertia.spin, "kg m²")?;
        not_negative("damping of a tire over its stiffness", inertia.damping_time, "s")?;
        if face.tires() * face.tread.ribs > MOST_RIBS {
            let (thing, value) = ("number of ribs on a hub", (face.tires() * face.tread.ribs) as f64);
            return Err(TreadError::Value {
                thing,
                value,
                unit: "",
                accepted: "at most 60 for waves that grow",
            });
        }
        let rolling = face.rolling(pose)?;
        let per_rib = |energy: f64| face.wear_of(energy);
        let total: f64 = rolling.ribs.iter().map(|rib| per_rib(rib.energy)).sum();
        let mean_wear = total / rolling.ribs.len() as f64;
        if !(mean_wear > 0.0) {
            let accepted = "a tire that wears: a load on the road, and a side force, camber or toe";
            return Err(TreadError::Value {
                thing: "mean wear of a tire",
                value: mean_wear,
                unit: "J/m²",
                accepted,
            });
        }
        let ribs =
            face.rib_springs().into_iter().zip(&rolling.load).map(|((outboard, stiffness), load)| RibWave {
                outboard,
                stiffness: if *load > 0.0 { stiffness } else { 0.0 },
                contact: face.contact_length(load * face.tread.ribs as f64),
            });
        let (ribs, states): (Vec<_>, Vec<_>) = (ribs.collect(), face.wear_states(pose)?);
        let mean = |rib: usize| {
            let each = states.iter().map(|state: &WearState| state.ribs[rib].energy.scaled(state.share));
            each.fold(Slopes::default(), Slopes::plus)
        };
        let mean_energy = (0..ribs.len()).map(mean).collect();
        let worn_per_distance = face.worn_per_distance(mean_wear, rolling.radius);
        Ok(HubWaves {
            inertia,
            ribs,
            states,
            mean_energy,
            travel: rolling.radius,
            mean_wear,
            worn_per_distance,
        })
    }

    /// Number of ribs.
    pub fn ribs(&self) -> usize {
        self.ribs.len()
    }

    /// Depth of tread that its ribs lose in the mean for each distance traveled; none where nobody knows what a joule takes off.
    pub fn worn_per_distance(&self) -> Option<f64> {
        self.worn_per_distance
    }

    /// Distance traveled over the angle turned, m.
    pub fn rolling_radius(&self) -> f64 {
        self.travel
    }
}

impl Face {
    /// Place outboard of the point about which camber turns the hub (m) and vertical stiffness (N/m) of each rib.
    pub(super) fn rib_springs(&self) -> Vec<(f64, f64)> {
        let of_tire = |tire: &FittedTire| {
            let (place, stiffness) = (tire.place, self.stiffness_at(tire.inflation) / self.tread.ribs as f64);
            self.ribs.iter().map(move |rib| (place + rib.on_tire, stiffness))
        };
        self.tires.iter().flat_map(of_tire).collect()
    }

    /// How each rib's forward force and wear change in every state of driving.
    pub(super) fn wear_states(&self, pose: Pose) -> Result<Vec<WearState>, TreadError> {
        pose.check()?;
        let slopes = |driven: &DrivenState, (rib, load): (&RollingRib, &f64)| {
            if *load <= 0.0 {
                return ScuffSlopes::default();
            }
            let rolling = RollingState {
                load: *load,
                radius: rib.radius(),
                travel: driven.travel,
                side: driven.asked.side,
                stiffness_per_load: self.shear_stiffness_per_load(),
                friction: self.tread.friction,
            };
            let slopes = rolling.slopes();
            ScuffSlopes { energy: slopes.energy.scaled(self.wear_of(1.0)), ..slopes }
        };
        let state = |driven: &DrivenState| WearState {
            share: driven.share,
            ribs: driven.ribs.iter().zip(&driven.loads).map(|rib| slopes(driven, rib)).collect(),
        };
        Ok(self.driven_states(pose).iter().map(state).collect())
    }
}
