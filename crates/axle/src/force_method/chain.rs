//! The line of a bare axle as stretches in a row.

use axlebow_fe::Flexibility;

use super::line_sections::LineSections;
use super::row_flexibility::RowFlexibility;
use crate::assembly::bearing_play::has_play;
use crate::assembly::stations::clear_places;
use crate::assembly::wall_at_seat::WallAtSeat;
use crate::mesh::stretches::{clamped_share, stretch_flexibility};
use crate::road_contact::ground::STANDARD_GRAVITY;
use crate::{Axle, AxleError, Side, Sides};

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

/// The line of a bare axle, from right to left.
#[derive(Debug)]
pub(crate) struct Chain<'a> {
    pub axle: &'a Axle,
    pub sections: LineSections<'a>,
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
}

impl<'a> Chain<'a> {
    /// The line of an axle; none where the force method does not reach: with stiffeners, with play in a bearing, held straight
    /// between its seats, or where two places lie closer together than a stretch may be long.
    pub(crate) fn of(axle: &'a Axle) -> Result<Option<Self>, AxleError> {
        if !axle.stiffeners.is_empty() || has_play(axle) || axle.body.flexing().straight_between_seats {
            return Ok(None);
        }
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
        Ok(Some(Chain { axle, sections, places, links, walls, seats, inner, outer }))
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

    /// The stretches from a seat to its inner bearing.
    pub(crate) fn overhang(&self, side: Side) -> (usize, usize) {
        ordered(*self.seats.of(side), *self.inner.of(side))
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
    let at = |distance: f64| sections.at(piece, distance).properties;
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
