//! What must fit together on an axle.

use crate::assembly::axle::SMALLEST_STEP;
use crate::assembly::seat_wall;
use crate::assembly::station_names::is_standard_name;
use crate::parts::body::Part;
use crate::parts::error::{not_negative, positive};
use crate::parts::stiffener::Stiffener;
use crate::sections::seated_section::section_with;
use crate::{Axle, AxleError, Side};

/// Largest skew of an axle, rad (common practice, no source).
const STEEPEST_SKEW: f64 = 0.1;

/// What a place may miss by in arithmetic, m.
const ROUNDING: f64 = 1e-9;

impl Axle {
    /// The same axle when everything fits together.
    ///
    /// # Errors
    /// Every misfit found: seats against tube ends and wheels, bearings against the spindle, loads.
    pub fn checked(self) -> Result<Self, Vec<AxleError>> {
        let errors = self.validation_errors();
        if errors.is_empty() { Ok(self) } else { Err(errors) }
    }

    /// Everything that does not fit together: seats against tube ends and wheels, bearings against the spindle, loads.
    pub fn validation_errors(&self) -> Vec<AxleError> {
        let mut errors = Vec::new();
        for side in Side::BOTH {
            self.check_side(side, &mut errors);
        }
        self.check_loads(&mut errors);
        if errors.is_empty() {
            errors.extend(Side::BOTH.into_iter().filter_map(|side| seat_wall::check(self, side).err()));
        }
        self.check_stations(&mut errors);
        if errors.is_empty() {
            self.check_stiffeners(&mut errors);
        }
        errors
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
        order(inner_edge, "inboard of", ("center line", 0.0), seat.inner_edge() < 0.0);
        order(outer_edge, "outboard of", ("tube end", tube), seat.outer_edge() > tube);
        order(
            outer_edge,
            "outboard of",
            ("wheel's inner tire center", inner_tire),
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
        let skew = self.running.skew;
        if skew.is_nan() || skew.abs() > STEEPEST_SKEW {
            let (what, accepted) = ("skew", "-0.1 to 0.1 rad");
            errors.push(AxleError::Value { what, value: skew, unit: "rad", accepted });
        }
        errors.extend(positive("final drive ratio", loading.final_drive_ratio, "").err());
        errors.extend(not_negative("body roll damping", self.body_roll_damping, "N m s/rad").err());
        for factor in loading.dynamic_factors {
            errors.extend(positive("dynamic factor", factor, "").err());
        }
        let ratios = [
            ("side force ratio", loading.side_force_ratio),
            ("braking force ratio", loading.braking_force_ratio),
            ("traction force ratio", loading.traction_force_ratio),
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
            if again || is_standard_name(&station.name) {
                errors.push(AxleError::DuplicateStation { name: station.name.clone() });
            }
        }
    }

    fn check_stiffeners(&self, errors: &mut Vec<AxleError>) {
        errors.extend(not_negative("weld keep-out", self.weld_keep_out, "m").err());
        for (i, stiffener) in self.stiffeners.iter().enumerate() {
            if self.stiffeners[..i].iter().any(|earlier| earlier.name == stiffener.name) {
                errors.push(AxleError::DuplicateStiffener { name: stiffener.name.clone() });
            }
            let validation_errors = errors.len();
            errors.extend(stiffener.check().err());
            errors.extend(stiffener.check_metal(self.body.material(Part::Tube)).err());
            Side::BOTH.into_iter().for_each(|side| self.check_room(stiffener, side, errors));
            if errors.len() == validation_errors {
                errors.extend(self.check_sections(i).err());
            }
        }
    }

    /// A stiffener against the tube's end, the seat of one side and the keep-outs beside them.
    fn check_room(&self, stiffener: &Stiffener, side: Side, errors: &mut Vec<AxleError>) {
        let (seat, tube_end) = (self.seats.of(side), self.body.tube_end());
        let [near, far] = match side {
            Side::Left => [stiffener.from, stiffener.to],
            Side::Right => [-stiffener.to, -stiffener.from],
        };
        let mut meets = |against, at: f64, by: f64| {
            if by > 0.0 {
                let stiffener = stiffener.name.clone();
                errors.push(AxleError::StiffenerMeets { stiffener, side, against, at, by });
            }
        };
        let keep_out = tube_end - self.weld_keep_out;
        let past = far - tube_end;
        meets("spindle", tube_end, past);
        if past <= 0.0 {
            meets("keep-out beside the spindle", keep_out, far - keep_out);
        }
        if near < seat.outer_edge() && far > seat.inner_edge() {
            let by = (far.min(seat.outer_edge()) - near.max(seat.inner_edge())).max(f64::MIN_POSITIVE);
            meets("seat", seat.inner_edge(), by);
            return;
        }
        let [inboard, outboard] =
            [seat.inner_edge() - seat.weld_keep_out, seat.outer_edge() + seat.weld_keep_out];
        let (at, by) =
            if far <= seat.inner_edge() { (inboard, far - inboard) } else { (outboard, outboard - near) };
        meets("keep-out beside the seat", at, by - ROUNDING);
    }

    /// The sections along a stiffener, with what else is welded on there.
    fn check_sections(&self, number: usize) -> Result<(), AxleError> {
        let own = &self.stiffeners[number];
        let ends = self.stiffeners[..=number].iter().flat_map(|other| [other.from, other.to]);
        let changes = self.body.pieces().iter().flat_map(|piece| [piece.to, -piece.to]);
        let mut places: Vec<f64> = ends.chain(changes).filter(|y| (own.from..=own.to).contains(y)).collect();
        places.sort_by(f64::total_cmp);
        for pair in places.windows(2).filter(|pair| pair[1] - pair[0] > SMALLEST_STEP) {
            for share in [1e-3, 0.5, 1.0 - 1e-3] {
                let y = pair[0] + share * (pair[1] - pair[0]);
                let there = self.stiffeners[..=number].iter().filter(|one| one.share_at(y) > 0.0);
                section_with(&self.body, y, &there.map(|one| (one, 1.0)).collect::<Vec<_>>())?;
            }
        }
        Ok(())
    }
}
