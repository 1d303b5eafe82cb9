//! The tire face of one hub.

use crate::error::{at_most, finite_load, not_negative, positive};
use crate::{Duty, Tread, TreadError};

/// Steepest camber and toe, rad: beyond it a wheel has come off (common practice, no source).
const STEEPEST: f64 = 0.2;

/// What carries a tread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Carcass {
    /// Radius of the unloaded tire at the middle of its tread, m.
    pub radius: f64,
    /// Vertical stiffness of one tire at the rated inflation, N/m.
    pub stiffness: f64,
    /// Load of one tire at which its contact presses with the inflation pressure, N.
    pub rated_load: f64,
}

/// How a hub stands on the road.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Pose {
    /// Load of the road on all tires of the hub, N; zero or less is off the road.
    pub load: f64,
    /// Camber against the road, positive with the top leaning outward, rad.
    pub camber: f64,
    /// Toe, positive toe-in, rad.
    pub toe: f64,
}

/// All ribs on one hub, the outermost tire first, the inner shoulder of each first.
#[derive(Debug, Clone, PartialEq)]
pub struct Face {
    pub(crate) tread: Tread,
    pub(crate) carcass: Carcass,
    /// The tires, outermost first.
    pub(crate) tires: Vec<FittedTire>,
    /// The ribs of one tire.
    pub(crate) ribs: Vec<Rib>,
    pub(crate) duty: Duty,
    /// Side slip that each part of the duty asks for.
    pub(crate) duty_slips: Vec<f64>,
    pub(crate) driven: bool,
    /// Tilt of a tire's tread by a side force on it, rad/N.
    pub(crate) tilt_per_side_force: f64,
    /// Volume that a joule of scuff takes off an ordinary rubber, where it is known, m³/J.
    pub(crate) abrasion: Option<f64>,
}

/// One tire on its hub.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct FittedTire {
    /// Its center outboard of the point about which camber turns it, m.
    pub place: f64,
    /// Inflation, Pa.
    pub inflation: f64,
    /// Radius of the unloaded tire, m.
    pub radius: f64,
}

/// One rib of a tire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Rib {
    /// Place outboard of its own tire's center, m.
    pub on_tire: f64,
    /// How far it lies below the middle of its tread, m.
    pub crown: f64,
    /// Share of its width that lies in a shoulder.
    pub shoulder: f64,
}

impl Face {
    /// The face of one or two equal tires at their rated inflation, in line haul, not driven, on a carcass that side forces
    /// do not tilt.
    ///
    /// - `places`: centers of the tires, m outboard of the point about which camber turns them, outermost first
    ///
    /// # Errors
    /// [`TreadError::Value`] for an impossible tread or carcass, [`TreadError::Tires`].
    pub fn new(tread: Tread, carcass: Carcass, places: &[f64]) -> Result<Self, TreadError> {
        let tread = tread.checked()?;
        positive("tire radius", carcass.radius, "m")?;
        positive("tire vertical stiffness", carcass.stiffness, "N/m")?;
        positive("rated load of a tire", carcass.rated_load, "N")?;
        if !(1..=2).contains(&places.len()) {
            return Err(TreadError::Tires { count: places.len() });
        }
        let rib = |(on_tire, shoulder)| Rib { on_tire, crown: tread.crown_at(on_tire), shoulder };
        let fitted =
            |place: &f64| FittedTire { place: *place, inflation: tread.inflation, radius: carcass.radius };
        let face = Face {
            tread,
            carcass,
            tires: places.iter().map(fitted).collect(),
            ribs: tread.rib_places().zip(tread.shoulder_shares()).map(rib).collect(),
            duty: Duty::line_haul(),
            duty_slips: Vec::new(),
            driven: false,
            tilt_per_side_force: 0.0,
            abrasion: None,
        };
        Ok(face.in_duty(Duty::line_haul()))
    }

    /// The same face with an inflation (Pa) for each tire, outermost first.
    ///
    /// # Errors
    /// [`TreadError::Value`] for one that is not above zero, [`TreadError::Each`].
    pub fn with_inflations(mut self, inflations: &[f64]) -> Result<Self, TreadError> {
        self.check_each("inflation", inflations)?;
        for (tire, inflation) in self.tires.iter_mut().zip(inflations) {
            positive("inflation of a tire", *inflation, "Pa")?;
            tire.inflation = *inflation;
        }
        Ok(self)
    }

    /// The same face with an unloaded radius (m) for each tire, outermost first: duals that do not match.
    ///
    /// # Errors
    /// [`TreadError::Value`] for one that is not above zero, [`TreadError::Each`].
    pub fn with_radii(mut self, radii: &[f64]) -> Result<Self, TreadError> {
        self.check_each("tire radius", radii)?;
        for (tire, radius) in self.tires.iter_mut().zip(radii) {
            positive("tire radius", *radius, "m")?;
            tire.radius = *radius;
        }
        Ok(self)
    }

    /// The same face in a duty, on tires that drive or do not.
    ///
    /// # Errors
    /// [`TreadError::Value`] for a duty that asks for more than the friction can give.
    pub fn with_duty(self, duty: Duty, driven: bool) -> Result<Self, TreadError> {
        duty.check_friction(self.tread.friction)?;
        Ok(Face { driven, ..self }.in_duty(duty))
    }

    fn in_duty(self, duty: Duty) -> Self {
        let duty_slips = duty.parts().iter().map(|part| self.slip_for(part.side)).collect();
        Face { duty, duty_slips, ..self }
    }

    /// The same face on a carcass that side forces tilt.
    ///
    /// - `tilt`: lean of the tread for each newton of side force on its tire, rad/N; the top leans away from where the road
    ///   pushes the tread
    ///
    /// # Errors
    /// [`TreadError::Value`] for one that is negative or not finite.
    pub fn with_tilt_per_side_force(self, tilt: f64) -> Result<Self, TreadError> {
        not_negative("tilt of a tread by side force", tilt, "rad/N")?;
        Ok(Face { tilt_per_side_force: tilt, ..self })
    }

    /// The same face where it is known what a joule of scuff takes off an ordinary rubber, m³/J: wear then has a depth.
    ///
    /// # Errors
    /// [`TreadError::Value`] for one that is not above zero.
    pub fn with_abrasion(self, abrasion: Option<f64>) -> Result<Self, TreadError> {
        abrasion.map_or(Ok(()), |abrasion| positive("abrasion", abrasion, "m³/J"))?;
        Ok(Face { abrasion, ..self })
    }

    /// Depth worn off for each distance traveled, `K w/(2π R)`: each piece of tread wears by w (J/m²) whenever it passes the
    /// contact, once on the way 2πR (m); none where the abrasion K is not known.
    pub(crate) fn worn_per_distance(&self, wear: f64, radius: f64) -> Option<f64> {
        Some(self.abrasion? * wear / (std::f64::consts::TAU * radius))
    }

    /// The tread.
    pub fn tread(&self) -> &Tread {
        &self.tread
    }

    /// Number of tires.
    pub fn tires(&self) -> usize {
        self.tires.len()
    }

    /// What driving asks of the tires.
    pub fn duty(&self) -> &Duty {
        &self.duty
    }

    /// A tire as it is meant to run, in the middle of the hub: rated inflation, the carcass's radius.
    pub(crate) fn rated_tire(&self) -> FittedTire {
        FittedTire { place: 0.0, inflation: self.tread.inflation, radius: self.carcass.radius }
    }

    /// Vertical stiffness of a tire at an inflation (Pa), N/m.
    pub(crate) fn stiffness_at(&self, inflation: f64) -> f64 {
        self.carcass.stiffness * self.tread.stiffness_over_rated(inflation)
    }

    /// Shear stiffness of a rib for each newton that it carries: `(G/h) F/(2 p² w)` with the rated load F of a tire, its
    /// rated inflation p and the tread's width w.
    ///
    /// A brush of width b and contact length l has `(G/h) b l²/2`. At the rated load the contact is `F/(p w)` long; with
    /// other loads its length goes by the square root (Pacejka, sec. 3.2.1, from memory), so that the stiffness goes by
    /// the load. Inflation is left out: less of it makes the contact longer and the carcass softer, and what remains of the
    /// two for the slip that a side force takes differs in sign from tire to tire (from memory).
    pub(crate) fn shear_stiffness_per_load(&self) -> f64 {
        let tread = &self.tread;
        let shear = tread.shear_modulus / tread.depth;
        0.5 * shear * self.carcass.rated_load / (tread.inflation.powi(2) * tread.width)
    }

    /// Length of the contact of a tire under a load, m: see [`shear_stiffness_per_load`](Self::shear_stiffness_per_load).
    pub(crate) fn contact_length(&self, load: f64) -> f64 {
        let rated = self.carcass.rated_load;
        rated / (self.tread.inflation * self.tread.width) * (load.max(0.0) / rated).sqrt()
    }

    fn check_each(&self, thing: &'static str, values: &[f64]) -> Result<(), TreadError> {
        let (count, tires) = (values.len(), self.tires.len());
        if count == tires { Ok(()) } else { Err(TreadError::Each { thing, count, tires }) }
    }
}

impl Pose {
    /// The same load on a wheel that stands upright and runs straight.
    pub fn upright(self) -> Pose {
        Pose { camber: 0.0, toe: 0.0, ..self }
    }

    pub(crate) fn check(&self) -> Result<(), TreadError> {
        finite_load(self.load)?;
        let accepted = "-0.2 to 0.2 rad";
        at_most("camber", (self.camber, "rad"), STEEPEST, accepted)?;
        at_most("toe", (self.toe, "rad"), STEEPEST, accepted)
    }
}
