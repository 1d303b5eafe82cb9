//! The tire face of one hub.

use crate::error::{at_most, finite_load, positive};
use crate::{Tread, TreadError};

/// Steepest camber and toe, rad: beyond it a wheel has come off (common practice, no source).
const STEEPEST: f64 = 0.2;

/// What carries a tread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Carcass {
    /// Radius of the unloaded tire at the middle of its tread, m.
    pub radius: f64,
    /// Vertical stiffness of one tire, N/m.
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
    /// Centers of the tires outboard of the point about which camber turns them, outermost first, m.
    pub(crate) places: Vec<f64>,
    pub(crate) ribs: Vec<Rib>,
}

/// One rib of a face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Rib {
    /// Place outboard of its own tire's center, m.
    pub on_tire: f64,
    /// How far it lies below the middle of its tread, m.
    pub crown: f64,
}

impl Face {
    /// The face of one or two equal tires.
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
        let rib = |on_tire: f64| Rib { on_tire, crown: tread.crown_at(on_tire) };
        let ribs = places.iter().flat_map(|_| tread.rib_places().map(rib)).collect();
        Ok(Face { tread, carcass, places: places.to_vec(), ribs })
    }

    /// The tread.
    pub fn tread(&self) -> &Tread {
        &self.tread
    }

    /// Number of tires.
    pub fn tires(&self) -> usize {
        self.places.len()
    }

    /// Vertical stiffness of one rib, N/m.
    pub(crate) fn rib_stiffness(&self) -> f64 {
        self.carcass.stiffness / self.tread.ribs as f64
    }

    /// Shear stiffness of a rib for each newton that it carries: `(G/h) F/(2 p² w)` with the rated load F of a tire, the
    /// inflation pressure p and the tread's width w.
    ///
    /// A brush of width b and contact length l has `(G/h) b l²/2`. At the rated load the contact is `F/(p w)` long; with
    /// other loads its length goes by the square root (Pacejka, sec. 3.2.1, from memory), so that the stiffness goes by
    /// the load.
    pub(crate) fn shear_stiffness_per_load(&self) -> f64 {
        let tread = &self.tread;
        let shear = tread.shear_modulus / tread.depth;
        0.5 * shear * self.carcass.rated_load / (tread.inflation.powi(2) * tread.width)
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
