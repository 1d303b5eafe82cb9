//! The line of a bare axle as stretches in a row.

use axlebow_fe::Flexibility;

use super::line_sections::LineSections;
use super::row_flexibility::RowFlexibility;
use crate::assembly::bearing_play::has_play;
use crate::assembly::stations::{clear_places, nearest_of};
use crate::assembly::wall_at_seat::WallAtSeat;
use crate::mesh::stretches::{clamped_share, stretch_flexibility};
use crate::road_contact::ground::STANDARD_GRAVITY;
use crate::{Axle, AxleError, FixedMass, Side, Sides};

/// A stretch of axle between two neighboring places.
#[derive(Debug)]
pub(crate) struct Link {
    /// Its right end.
    pub start: f64,
    pub length: f64,
    /// Piece of the body that it belongs to.
    pub piece: usize,
    pub flexibility: Flexibility,
    /// Its weight, N/m.
    pub weight: f64,
}

/// The line of a bare axle, from right to left: what stays when only loads, tires, wheels or the stiffness of bearings change.
#[derive(Debug)]
pub(crate) struct Chain {
    pub sections: LineSections,
    /// Places, in order of rising y.
    pub places: Vec<f64>,
    /// Stretches between them.
    pub links: Vec<Link>,
    pub walls: Sides<WallAtSeat>,
    /// Places of the seats.
    pub seats: Sides<usize>,
    /// Places of the inner bearings.
    pub inner: Sides<usize>,
    /// Places of the outer bearings.
    pub outer: Sides<usize>,
    /// Positions of the mounting faces, m.
    pub faces: Sides<f64>,
    /// What is fixed to the line, each with the place next to it.
    pub fixed_masses: Vec<(usize, FixedMass)>,
}

/// Whether the force method may reach an axle: it has no stiffeners and no play in a bearing, and is not held straight between
/// its seats.
pub(crate) fn is_reached(axle: &Axle) -> bool {
    axle.stiffeners.is_empty() && !has_play(axle) && !axle.body.flexing().straight_between_seats
}

impl Chain {
    /// The line of an axle that [`is_reached`]; none where two places lie closer together than a stretch may be long.
    pub(crate) fn of(axle: &Axle) -> Result<Option<Self>, AxleError> {
        let Some(places) = clear_places(axle) else { return Ok(None) };
        let (left, right) = (WallAtSeat::of(axle, Side::Left)?, WallAtSeat::of(axle, Side::Right)?);
        let sections = LineSections::of(&axle.body);
        let walls = Sides { left, right };
        let ends = places.windows(2).map(|ends| (ends[0], ends[1]));
        let links = ends.map(|ends| link(axle, &sections, &walls, ends)).collect();
        let place = |y: f64| places.partition_point(|place| *place < y);
        let at =
            |distance: fn(&Axle, Side) -> f64| Sides::each(|side| place(side.sign() * distance(axle, side)));
        let seats = at(|axle, side| axle.seats.of(side).at);
        let inner = at(|axle, side| axle.wheel_ends.of(side).inner_bearing);
        let outer = at(|axle, side| axle.wheel_ends.of(side).outer_bearing);
        let faces = Sides::each(|side| side.sign() * axle.wheel_ends.of(side).mounting_face);
        let fixed = axle.fixed_masses.iter().map(|fixed| (nearest_of(&places, fixed.y), *fixed));
        let fixed_masses = fixed.collect();
        Ok(Some(Chain { sections, places, links, walls, seats, inner, outer, faces, fixed_masses }))
    }

    /// Place of the center.
    pub(crate) fn center(&self) -> usize {
        self.places.partition_point(|place| *place < 0.0)
    }

    /// Flexibility of the stretches between two places, seen from `y`.
    pub(crate) fn flexibility(&self, (right, left): (usize, usize), y: f64) -> RowFlexibility {
        let mut sum = RowFlexibility::default();
        for link in &self.links[right..left] {
            sum.add(&link.flexibility, link.start - y);
        }
        sum
    }

    /// Flexibility of the stretches from a seat to its inner bearing, seen from the mounting face.
    pub(crate) fn overhang(&self, side: Side) -> RowFlexibility {
        let stretches = ordered(*self.seats.of(side), *self.inner.of(side));
        self.flexibility(stretches, *self.faces.of(side))
    }

    /// Flexibility of the stretches between the two bearings of a side, seen from the outer one.
    pub(crate) fn spindle(&self, side: Side) -> RowFlexibility {
        self.flexibility(self.between_bearings(side), self.places[*self.outer.of(side)])
    }

    /// From a hub's face to its seat, to the left, m.
    pub(crate) fn to_seat(&self, side: Side) -> f64 {
        self.places[*self.seats.of(side)] - self.faces.of(side)
    }

    /// The stretches between the two bearings of a side.
    pub(crate) fn between_bearings(&self, side: Side) -> (usize, usize) {
        ordered(*self.inner.of(side), *self.outer.of(side))
    }
}

fn ordered(one: usize, other: usize) -> (usize, usize) {
    (one.min(other), one.max(other))
}

fn link(axle: &Axle, sections: &LineSections, walls: &Sides<WallAtSeat>, (start, end): (f64, f64)) -> Link {
    let middle = 0.5 * (start + end);
    let pieces = axle.body.pieces();
    let piece = pieces.iter().position(|piece| middle.abs() <= piece.to).unwrap_or(pieces.len() - 1);
    let at = |distance: f64| sections.at(&axle.body, piece, distance).properties;
    let share = clamped_share(axle, walls, start, end);
    let flexibility = stretch_flexibility(axle, &pieces[piece], (start, end), at).scaled(1.0 - share);
    let (near, far) = (start.abs().min(end.abs()), start.abs().max(end.abs()));
    let mean = if sections.uniform(piece).is_some() {
        at(near).area
    } else {
        // Simpson's rule is exact for a section that blends.
        (at(near).area + 4.0 * at(0.5 * (near + far)).area + at(far).area) / 6.0
    };
    let weight = STANDARD_GRAVITY * axle.body.material(pieces[piece].part).density() * mean;
    Link { start, length: end - start, piece, flexibility, weight }
}
