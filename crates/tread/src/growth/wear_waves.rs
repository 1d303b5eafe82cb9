//! The feedback of a wave on itself, as a matrix over ribs.

use std::f64::consts::TAU;
use std::ops::Range;

use nalgebra::{Complex, DMatrix};

use super::hub_waves::{HubWaves, RibWave, WearState};
use crate::error::positive;
use crate::{ROLLING_SHARE, TreadError};

type Matrix = DMatrix<Complex<f64>>;

/// A wave that goes round a tire `count` times, driven at a speed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TreadWave {
    /// Waves round the tire.
    pub count: u16,
    /// Speed, m/s.
    pub speed: f64,
}

/// The ribs of all hubs of an axle.
#[derive(Debug, Clone, PartialEq)]
pub struct WearWaves {
    hubs: Vec<HubWaves>,
}

impl TreadWave {
    /// `ω = n V/R_e`, rad/s, on a tire that travels R_e (m) for each radian.
    pub fn angular_frequency(&self, rolling_radius: f64) -> f64 {
        f64::from(self.count) * self.speed / rolling_radius
    }

    fn check(&self) -> Result<(), TreadError> {
        positive("number of cups", f64::from(self.count), "")?;
        positive("speed", self.speed, "m/s")
    }
}

impl WearWaves {
    /// The ribs of hubs that share an axle, in the order of its compliance.
    pub fn new(hubs: Vec<HubWaves>) -> Self {
        WearWaves { hubs }
    }

    /// The hubs.
    pub fn hubs(&self) -> &[HubWaves] {
        &self.hubs
    }

    /// The frequency that a wave excites, Hz, on the mean rolling radius of the hubs.
    pub fn frequency(&self, wave: TreadWave) -> f64 {
        wave.angular_frequency(self.rolling_radius()) / TAU
    }

    fn rolling_radius(&self) -> f64 {
        self.hubs.iter().map(|hub| hub.travel).sum::<f64>() / self.hubs.len() as f64
    }

    /// Growth Λ of waves on all ribs, 1/m of tread worn in the mean of the hubs: `dd/dh = Λ d`. Waves of several hubs are
    /// taken to keep their places against one another.
    ///
    /// - `compliance`: C at the frequency of the wave; for each hub in turn its rise (m) and camber (rad) by an upward
    ///   force (N) at the point about which camber turns it and a moment (N m) that works on camber, without the tires
    ///
    /// # Errors
    /// [`TreadError::Value`] for a count or a speed of zero.
    pub fn growth(&self, wave: TreadWave, compliance: &Matrix) -> Result<Matrix, TreadError> {
        wave.check()?;
        let mean = self.hubs.iter().map(|hub| hub.mean_wear).sum::<f64>() / self.hubs.len() as f64;
        let feedback = self.feedback(wave, compliance, 0..self.hubs.len());
        Ok(feedback * Complex::from(-1.0 / mean))
    }

    /// As [`WearWaves::growth`] for the waves of one hub where the other tires are round or, as tires that turn
    /// independently of one another do, meet it in every phase; 1/m of tread worn in the mean of this hub.
    ///
    /// # Errors
    /// As [`WearWaves::growth`].
    pub fn growth_of_hub(
        &self,
        hub: usize,
        wave: TreadWave,
        compliance: &Matrix,
    ) -> Result<Matrix, TreadError> {
        wave.check()?;
        let feedback = self.feedback(wave, compliance, hub..hub + 1);
        Ok(feedback * Complex::from(-1.0 / self.hubs[hub].mean_wear))
    }

    /// W of some hubs: wear of each of their ribs for each passage by the radius wave of each, J/m² of an ordinary rubber for
    /// each m; the tires of the other hubs are round.
    fn feedback(&self, wave: TreadWave, compliance: &Matrix, hubs: Range<usize>) -> Matrix {
        let ribs = self.ribs(wave);
        let count = |hubs: &[HubWaves]| hubs.iter().map(HubWaves::ribs).sum::<usize>();
        let (before, order) = (count(&self.hubs[..hubs.start]), count(&self.hubs[hubs.clone()]));
        let own = before..before + order;
        let motion = ribs.motion(compliance, own.clone());
        let (stiffness, felt) = (&ribs.stiffness[own.clone()], &ribs.felt[own]);
        let load = Matrix::from_fn(order, order, |r, s| {
            let felt = if r == s { felt[r] } else { Complex::ZERO };
            stiffness[r] * (felt - motion[(r, s)])
        });
        let radius = Matrix::from_fn(order, order, |r, s| {
            let felt = if r == s { felt[r] * (1.0 - ROLLING_SHARE) } else { Complex::ZERO };
            felt + motion[(r, s)] * ROLLING_SHARE
        });
        let (mut wear, mut first) = (Matrix::zeros(order, order), 0);
        for hub in &self.hubs[hubs] {
            let travel: Vec<_> = hub
                .states
                .iter()
                .map(|state| hub.travel_gain(state, wave, (&load, &radius, first)))
                .collect();
            for (i, by) in hub.mean_energy.iter().enumerate() {
                let r = first + i;
                for s in 0..order {
                    let mut sum = load[(r, s)] * by.load + radius[(r, s)] * by.radius;
                    for (state, travel) in hub.states.iter().zip(&travel) {
                        sum += travel[s] * (state.ribs[i].energy.travel * state.share);
                    }
                    wear[(r, s)] = felt[r] * sum;
                }
            }
            first += hub.ribs();
        }
        wear
    }

    fn ribs(&self, wave: TreadWave) -> Ribs {
        let omega = wave.angular_frequency(self.rolling_radius());
        let all = || {
            self.hubs.iter().enumerate().flat_map(|(i, hub)| hub.ribs.iter().map(move |rib| (i, hub, rib)))
        };
        let order = all().count();
        let mut places = Matrix::zeros(order, 2 * self.hubs.len());
        for (r, (i, _, rib)) in all().enumerate() {
            places[(r, 2 * i)] = Complex::from(1.0);
            places[(r, 2 * i + 1)] = Complex::from(-rib.outboard);
        }
        let stiffness = |(_, hub, rib): (usize, &HubWaves, &RibWave)| {
            Complex::new(rib.stiffness, rib.stiffness * hub.inertia.damping_time * omega)
        };
        let felt = |(_, hub, rib): (usize, &HubWaves, &RibWave)| {
            Complex::from(mean_over_contact(0.5 * f64::from(wave.count) * rib.contact / hub.travel))
        };
        Ribs { places, stiffness: all().map(stiffness).collect(), felt: all().map(felt).collect() }
    }
}

impl HubWaves {
    /// How the travel for each radian follows a wave: the ribs' forward forces turn the wheel's inertia.
    fn travel_gain(
        &self,
        state: &WearState,
        wave: TreadWave,
        (load, radius, first): (&Matrix, &Matrix, usize),
    ) -> Vec<Complex<f64>> {
        let omega = wave.angular_frequency(self.travel);
        let held: f64 = state.ribs.iter().map(|rib| -rib.forward.travel).sum();
        let inertia = omega * self.inertia.spin * wave.speed / self.travel.powi(3);
        let held = Complex::new(held, inertia);
        let force = |s: usize| -> Complex<f64> {
            let ribs = state.ribs.iter().enumerate();
            ribs.map(|(i, rib)| {
                load[(first + i, s)] * rib.forward.load + radius[(first + i, s)] * rib.forward.radius
            })
            .sum()
        };
        (0..load.ncols()).map(|s| force(s) / held).collect()
    }
}

/// All ribs at one frequency.
struct Ribs {
    /// B: rise of each rib by rise and camber of each hub.
    places: Matrix,
    /// z, N/m.
    stiffness: Vec<Complex<f64>>,
    /// φ.
    felt: Vec<Complex<f64>>,
}

impl Ribs {
    /// Rise of the contacts of some ribs by the radius wave of each of them: `B (1 + C BᵀzB)⁻¹ C Bᵀ z φ`.
    fn motion(&self, compliance: &Matrix, own: Range<usize>) -> Matrix {
        let mut pressed = self.places.transpose();
        for (mut column, stiffness) in pressed.column_iter_mut().zip(&self.stiffness) {
            column *= *stiffness;
        }
        let hubs = compliance.nrows();
        let system = Matrix::identity(hubs, hubs) + compliance * (&pressed * &self.places);
        let (first, order) = (own.start, own.len());
        let mut pushed = compliance * pressed.columns(first, order);
        for (mut column, felt) in pushed.column_iter_mut().zip(&self.felt[own]) {
            column *= *felt;
        }
        let moved = system.lu().solve(&pushed).unwrap_or_else(|| Matrix::zeros(hubs, order));
        self.places.rows(first, order) * moved
    }
}

/// What a mean over the contact leaves of a wave, `sin x/x` with half of its phase over the contact x.
fn mean_over_contact(half: f64) -> f64 {
    if half == 0.0 { 1.0 } else { half.sin() / half }
}
