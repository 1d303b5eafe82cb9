//! The axle as finite elements, held by its seats to a vehicle body at rest.
//!
//! Tires and road are left out on purpose: what the road does is a handful of forces on the hubs
//! ([`crate::road_contact::ground`]), so that one factorization serves every load case, and the camber change splits
//! among parts of the axle only.

use axlebow_fe::{BeamId, NodeId, SpringId, Structure};

use crate::assembly::stations::{Place, nearest};
use crate::assembly::wall_at_seat::WallAtSeat;
use crate::mesh::stretch::Stretch;
use crate::mesh::tied_stiffener::TiedStiffener;
use crate::parts::bearing_place::BearingPlace;
use crate::{Side, Sides};

/// The finite-element model of an axle and where its parts are in it.
#[derive(Debug)]
pub(crate) struct Frame {
    pub structure: Structure,
    pub places: Vec<Place>,
    /// Node of each place.
    pub line: Vec<NodeId>,
    pub stretches: Vec<Stretch>,
    /// Where the wheels are bolted to their hubs; they move with the wheels.
    pub hubs: Sides<NodeId>,
    /// The hubs on their bearings; the same nodes where disc and flange are rigid.
    pub barrels: Sides<NodeId>,
    /// Disc and flange between hub and wheel, where they are not rigid.
    pub discs: Sides<Option<SpringId>>,
    pub inner_bearings: Sides<SpringId>,
    pub outer_bearings: Sides<SpringId>,
    pub brakes: Sides<SpringId>,
    pub seats: Sides<SpringId>,
    /// The wall at each seat.
    pub walls: Sides<WallAtSeat>,
    /// Node of the vehicle body where it is free to move.
    pub body: Option<NodeId>,
    /// Stiffeners that are beams of their own; none where they are one section with the axle.
    pub tied: Vec<TiedStiffener>,
}

impl Frame {
    /// Node of the place nearest to a position (m).
    pub(crate) fn node_at(&self, y: f64) -> NodeId {
        self.line[nearest(&self.places, y)]
    }

    /// Every beam of axle and stiffeners.
    pub(crate) fn beams(&self) -> impl Iterator<Item = BeamId> {
        let bars = self.tied.iter().flat_map(|tied| &tied.beams).map(|bar| bar.beam);
        self.stretches.iter().map(|stretch| stretch.beam).chain(bars)
    }

    /// Every spring between a stiffener and the axle.
    pub(crate) fn welds(&self) -> impl Iterator<Item = SpringId> {
        self.tied.iter().flat_map(|tied| tied.springs.iter().copied())
    }

    /// The places at which results are given, with their nodes, from right to left.
    pub(crate) fn stations(&self) -> impl DoubleEndedIterator<Item = (&Place, NodeId)> {
        self.places.iter().zip(self.line.iter().copied()).filter(|(place, _)| place.is_station())
    }

    /// Of each place the number of its station, counted from the left; none where there is no station.
    pub(crate) fn station_numbers(&self) -> Vec<Option<usize>> {
        let mut left = self.stations().count();
        let mut number = |place: &Place| {
            left -= usize::from(place.is_station());
            place.is_station().then_some(left)
        };
        self.places.iter().map(&mut number).collect()
    }

    /// The spring of a bearing.
    pub(crate) fn bearing(&self, side: Side, place: BearingPlace) -> SpringId {
        match place {
            BearingPlace::Inner => *self.inner_bearings.of(side),
            BearingPlace::Outer => *self.outer_bearings.of(side),
        }
    }
}
