//! A whole axle, checked for what must fit together.

use crate::body::Body;
use crate::error::{not_negative, positive};
use crate::load_case::{Ground, Loading};
use crate::seat::Seat;
use crate::wheel::Wheel;
use crate::wheel_end::WheelEnd;
use crate::{AxleError, Side, Sides};

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
    /// Further masses fixed to the axle.
    pub fixed_masses: Vec<FixedMass>,
    /// Height of the sprung mass's centre above the road, m.
    pub body_height: f64,
    /// Radius of gyration of the sprung mass about the fore-aft axis, m.
    pub body_roll_radius: f64,
    /// Roll stiffness that the rest of the vehicle puts against an uneven road under this axle, N m/rad.
    pub body_roll_stiffness: f64,
    /// What the ground does sideways.
    pub ground: Ground,
    /// Loads.
    pub loading: Loading,
    /// Further stations.
    pub stations: Vec<UserStation>,
}

/// Smallest distance between two stations that are not one, m: a shorter element would be stiffer than the
/// arithmetic can resolve.
pub const SMALLEST_STEP: f64 = 1e-4;

impl Axle {
    /// The same axle when everything fits together.
    ///
    /// # Errors
    /// Every misfit found: seats against tube ends and wheels, bearings against the spindle, loads.
    pub fn checked(self) -> Result<Self, Vec<AxleError>> {
        let mut errors = Vec::new();
        for side in Side::BOTH {
            self.check_side(side, &mut errors);
        }
        self.check_loads(&mut errors);
        self.check_stations(&mut errors);
        if errors.is_empty() { Ok(self) } else { Err(errors) }
    }

    fn check_side(&self, side: Side, errors: &mut Vec<AxleError>) {
        let (seat, end) = (self.seats.of(side), self.wheel_ends.of(side));
        let wheel = self.wheels.of(side);
        errors.extend(seat.checked().err());
        errors.extend(end.checked().err());
        let innermost = wheel.tires().map(|tire| tire.outboard).fold(f64::INFINITY, f64::min);
        let inner_tire = end.mounting_face + innermost;
        let (tube, spindle) = (self.body.tube_end(), self.body.spindle_end());
        let mut order = |(what, at), relation, (against, against_at), wrong: bool| {
            if wrong {
                errors.push(AxleError::Misplaced { side, what, at, relation, against, against_at });
            }
        };
        let outer_edge = ("seat's outer edge", seat.outer_edge());
        let inner_edge = ("seat's inner edge", seat.inner_edge());
        order(inner_edge, "inboard of", ("centre line", 0.0), seat.inner_edge() < 0.0);
        order(outer_edge, "outboard of", ("tube end", tube), seat.outer_edge() > tube);
        order(
            outer_edge,
            "outboard of",
            ("wheel's inner tire centre", inner_tire),
            seat.outer_edge() > inner_tire,
        );
        let (inner, outer) = (("inner bearing", end.inner_bearing), ("outer bearing", end.outer_bearing));
        order(inner, "inboard of", ("tube end", tube), end.inner_bearing < tube);
        order(outer, "not outboard of", inner, end.outer_bearing < end.inner_bearing + SMALLEST_STEP);
        order(outer, "outboard of", ("spindle end", spindle), end.outer_bearing > spindle);
    }

    fn check_loads(&self, errors: &mut Vec<AxleError>) {
        let loading = &self.loading;
        errors.extend(positive("rated load", loading.rated_load, "N").err());
        errors.extend(positive("unladen load", loading.unladen_load, "N").err());
        errors.extend(not_negative("raise of one wheel", loading.raise, "m").err());
        errors.extend(positive("body height", self.body_height, "m").err());
        errors.extend(positive("body roll radius", self.body_roll_radius, "m").err());
        errors.extend(not_negative("body roll stiffness", self.body_roll_stiffness, "N m/rad").err());
        for factor in loading.dynamic_factors {
            errors.extend(positive("dynamic factor", factor, "").err());
        }
        let ratios = [
            ("side force ratio", loading.side_force_ratio),
            ("braking force ratio", loading.braking_force_ratio),
            ("curb force ratio", loading.curb_force_ratio),
        ];
        errors.extend(ratios.into_iter().filter_map(|(what, value)| not_negative(what, value, "").err()));
        for mass in &self.fixed_masses {
            errors.extend(not_negative("fixed mass", mass.mass, "kg").err());
        }
    }

    fn check_stations(&self, errors: &mut Vec<AxleError>) {
        for (i, station) in self.stations.iter().enumerate() {
            let end = self.body.spindle_end();
            let side = if station.y < 0.0 { Side::Right } else { Side::Left };
            let on_the_axle = station.y.abs() <= end;
            if !on_the_axle {
                errors.push(AxleError::Misplaced {
                    side,
                    what: "station",
                    at: station.y.abs(),
                    relation: "outboard of",
                    against: "spindle end",
                    against_at: end,
                });
            }
            let again = self.stations[..i].iter().any(|earlier| earlier.name == station.name);
            if again || crate::stations::is_standard_name(&station.name) {
                errors.push(AxleError::DuplicateStation { name: station.name.clone() });
            }
        }
    }

    /// Mass between road and suspension, kg.
    pub fn unsprung_mass(&self) -> f64 {
        let ends = Side::BOTH.map(|side| self.wheel_ends.of(side).hub_mass + self.wheels.of(side).mass());
        let fixed: f64 = self.fixed_masses.iter().map(|fixed| fixed.mass).sum();
        self.body.mass() + ends.iter().sum::<f64>() + fixed
    }

    /// Distance between the two hubs' mounting faces, m.
    pub(crate) fn hub_distance(&self) -> f64 {
        self.wheel_ends.left.mounting_face + self.wheel_ends.right.mounting_face
    }

    /// Position of a tire's centre, m, for a distance outboard of the hub's mounting face.
    pub fn tire_y(&self, side: Side, outboard: f64) -> f64 {
        side.sign() * (self.wheel_ends.of(side).mounting_face + outboard)
    }
}
