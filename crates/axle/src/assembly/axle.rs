//! A whole axle.

use std::sync::Arc;

use axlebow_wall::{MeshLayout, SeatTable};

use crate::parts::body::Body;
use crate::parts::load_case::{Ground, Loading};
use crate::parts::running::Running;
use crate::parts::seat::{Fixing, Seat};
use crate::parts::stiffener::Stiffener;
use crate::parts::wheel::{TirePlace, Wheel};
use crate::parts::wheel_end::WheelEnd;
use crate::{Side, Sides};

/// A place along the axle that the user wants results at.
#[derive(Debug, Clone, PartialEq)]
pub struct UserStation {
    /// Name, different from every other station's.
    pub name: String,
    /// Position, m; positive to the left.
    pub y: f64,
}

/// A mass fixed to the axle beside hubs and wheels: brake chambers, brackets, a drive carrier.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FixedMass {
    /// Position, m; positive to the left.
    pub y: f64,
    /// Mass, kg.
    pub mass: f64,
}

/// An axle with its wheels, seats and loads.
#[derive(Debug, Clone, PartialEq)]
pub struct Axle {
    /// Tube or housing with spindles.
    pub body: Body,
    /// Hubs and bearings.
    pub wheel_ends: Sides<WheelEnd>,
    /// Wheels and tires.
    pub wheels: Sides<Wheel>,
    /// Seats.
    pub seats: Sides<Seat>,
    /// Stiffeners welded along it.
    pub stiffeners: Vec<Stiffener>,
    /// Length inboard of the tube's or housing's end in which nothing may be welded, m.
    pub weld_keep_out: f64,
    /// Further masses fixed to the axle.
    pub fixed_masses: Vec<FixedMass>,
    /// Height of the sprung mass's center above the road, m.
    pub body_height: f64,
    /// Radius of gyration of the sprung mass about the fore-aft axis, m.
    pub body_roll_radius: f64,
    /// Roll stiffness that the rest of the vehicle puts against an uneven road under this axle, N m/rad: it acts on
    /// roll of the body away from where it rests on a level road.
    pub body_roll_stiffness: f64,
    /// Damping of the same roll by the rest of the vehicle, N m s/rad.
    pub body_roll_damping: f64,
    /// What the ground does sideways.
    pub ground: Ground,
    /// Loads.
    pub loading: Loading,
    /// How it runs on the road.
    pub running: Running,
    /// Further stations.
    pub stations: Vec<UserStation>,
    /// Tables from which shells of the wall at a seat are interpolated where they reach; shells are solved elsewhere.
    pub seat_tables: Vec<Arc<SeatTable>>,
    /// Layouts of the meshes of another axle's seats, taken over where shells are solved; each seat's own without.
    pub seat_layouts: SeatLayouts,
}

/// Layout of the mesh of each seat; none where it is the seat's own.
pub type SeatLayouts = Sides<Option<Arc<MeshLayout>>>;

/// Smallest distance between two stations that are not one, m: a shorter element would be stiffer than the
/// arithmetic can resolve.
pub const SMALLEST_STEP: f64 = 1e-4;

impl Axle {
    /// The same axle on tires that roll straight.
    pub(crate) fn rolling(&self) -> Axle {
        Axle { ground: Ground::Rolling, ..self.clone() }
    }

    /// Whether anything is welded to it.
    pub(crate) fn has_welds(&self) -> bool {
        let welded = |side: &Side| self.seats.of(*side).fixing == Fixing::Welded;
        !self.stiffeners.is_empty() || Side::BOTH.iter().any(welded)
    }

    /// Mass of the bare axle: tube or housing, spindles and stiffeners, kg.
    pub fn mass(&self) -> f64 {
        self.body.mass() + self.stiffeners.iter().map(Stiffener::mass).sum::<f64>()
    }

    /// Mass between road and suspension, kg.
    pub fn unsprung_mass(&self) -> f64 {
        let ends = Side::BOTH.map(|side| self.wheel_ends.of(side).hub_mass + self.wheels.of(side).mass());
        let fixed: f64 = self.fixed_masses.iter().map(|fixed| fixed.mass).sum();
        self.mass() + ends.iter().sum::<f64>() + fixed
    }

    /// Height of the axle's line above the road, m: the mean of both ends.
    pub(crate) fn line_height(&self) -> f64 {
        let radius = |side: Side| self.wheels.of(side).tire().loaded_radius;
        0.5 * (radius(Side::Left) + radius(Side::Right))
    }

    /// Height of the sprung mass's center above the axle's line, about which the body rolls, m.
    pub(crate) fn body_above(&self) -> f64 {
        self.body_height - self.line_height()
    }

    /// How far the manufactured camber of an end, which turns the wheel about the middle of its face, and a radius below that
    /// of its neighbor lift a tire off the road, m.
    pub(crate) fn tire_rise(&self, side: Side, place: TirePlace) -> f64 {
        -self.wheel_ends.of(side).camber * (place.outboard - self.wheels.of(side).outset()) - place.larger
    }

    /// Distance between the two hubs' mounting faces, m.
    pub(crate) fn hub_distance(&self) -> f64 {
        self.wheel_ends.left.mounting_face + self.wheel_ends.right.mounting_face
    }

    /// Position of a tire's center, m, for a distance outboard of the hub's mounting face.
    pub fn tire_y(&self, side: Side, outboard: f64) -> f64 {
        side.sign() * (self.wheel_ends.of(side).mounting_face + outboard)
    }
}
