//! What a ride says, as linear readings of the motion.
//!
//! Camber, toe, roll, and the mean stress and stress gradients of every place are each a row over the freedoms, or
//! over the shapes of a reduced basis; the stress itself follows from the last three.

use axlebow_fe::{Attachment, BeamForces, Direction, MotionReader, ReducedBasis};

use crate::dynamics::vibration::VibrationModel;
use crate::mesh::stressed_section::{StressedMember, StressedSection};
use crate::mesh::stretch::Stretch;
use crate::parts::freedoms::RX;
use crate::{Side, Sides};

/// Freedom about Z in a six-vector.
const RZ: usize = 5;

/// Share of the largest number of a place's rows below which a whole row is rounding.
const NOTHING: f64 = 1e-12;

/// Linear readings of a motion.
#[derive(Debug, Clone)]
pub(crate) struct Readings {
    /// Number of freedoms or shapes.
    pub order: usize,
    /// Camber change of each wheel, rad.
    pub camber: Sides<Direction>,
    /// Toe change of each wheel, rad.
    pub toe: Sides<Direction>,
    /// Roll of the line through the hubs, rad.
    pub roll: Direction,
    /// Axle and stiffeners on both sides of every station, from right to left.
    pub fibers: Vec<Fibers>,
}

/// Fiber stress of axle or stiffener at one end of a stretch.
#[derive(Debug, Clone)]
pub(crate) struct Fibers {
    /// Number of its station, counted from the left.
    pub place: usize,
    pub section: StressedSection,
    /// Mean stress and its gradients along X and Z; none where it is nothing beside the others.
    pub rows: [Option<Direction>; 3],
}

impl Readings {
    /// Readings over all freedoms.
    pub(crate) fn of(model: &VibrationModel) -> Self {
        let structure = &model.frame.structure;
        let reader = MotionReader::of(structure);
        let hub = |side: Side, direction: usize, factor: f64| {
            let at = Attachment::at(*model.frame.hubs.of(side));
            let mut motions = [[0.0; 3]; 2];
            motions[direction / 3][direction % 3] = factor;
            Direction::of_motion(structure, &at, motions)
        };
        let distance = model.axle.hub_distance();
        let rise = |side: Side| hub(side, 2, side.sign() / distance);
        let roll = sum(&[rise(Side::Left), rise(Side::Right)]);
        let camber = Sides::each(|side| {
            let turned = hub(side, RX, -side.sign());
            sum(&[turned, scaled(&roll, side.sign())])
        });
        let ahead = |side: Side| hub(side, 0, -side.sign() / distance);
        let turn = sum(&[ahead(Side::Left), ahead(Side::Right)]);
        let toe = Sides::each(|side| sum(&[hub(side, RZ, -side.sign()), scaled(&turn, side.sign())]));
        let stations = &model.frame.station_numbers();
        let ends = model.frame.stretches.iter().enumerate().flat_map(|(i, stretch)| {
            let ends = [(i, stretch.start_y), (i + 1, stretch.end_y)].into_iter();
            ends.filter_map(move |(place, y)| Some((stretch, y, stations[place]?)))
        });
        let fibers = ends.flat_map(|(stretch, y, place)| {
            let members = StressedMember::each(model.axle, stretch, y);
            members.map(|member| Fibers::at(&reader, member, (stretch, y), place)).collect::<Vec<_>>()
        });
        Readings { order: reader.order(), camber, toe, roll, fibers: fibers.collect() }
    }

    /// The same readings over the shapes of a basis.
    pub(crate) fn over(&self, basis: &ReducedBasis) -> Self {
        let camber = Sides::each(|side| basis.direction(self.camber.of(side)));
        let toe = Sides::each(|side| basis.direction(self.toe.of(side)));
        let fibers = self.fibers.iter().map(|fibers| fibers.over(basis)).collect();
        Readings { order: basis.count(), camber, toe, roll: basis.direction(&self.roll), fibers }
    }
}

impl Fibers {
    fn at(
        reader: &MotionReader,
        member: StressedMember,
        (stretch, y): (&Stretch, f64),
        place: usize,
    ) -> Self {
        let terms = |forces: &BeamForces| member.terms(&forces.at(y - stretch.start_y));
        let rows = reader.beam_readings(member.line.beam, terms);
        Fibers { place, section: member.section, rows: rows.map(Some) }
    }

    /// Over the shapes of a basis, without rows of mere rounding.
    fn over(&self, basis: &ReducedBasis) -> Self {
        let rows = self.rows.each_ref().map(|row| row.as_ref().map(|row| basis.direction(row)));
        let size = |row: &Option<Direction>| {
            row.iter().flat_map(Direction::parts).fold(0.0_f64, |most, (_, part)| most.max(part.abs()))
        };
        // A mean stress weighs as much as a gradient over the outside of the section.
        let outside = self.section.reach();
        let weights = [1.0, outside, outside];
        let sizes: [f64; 3] = std::array::from_fn(|i| weights[i] * size(&rows[i]));
        let largest = sizes.iter().copied().fold(0.0, f64::max);
        let mut kept = sizes.iter().map(|size| *size > NOTHING * largest);
        Fibers { rows: rows.map(|row| row.filter(|_| kept.next().unwrap_or(true))), ..self.clone() }
    }
}

/// The reading that gives what all of them give together.
pub(crate) fn sum(directions: &[Direction]) -> Direction {
    Direction::new(directions.iter().flat_map(|direction| direction.parts().iter().copied()))
}

fn scaled(direction: &Direction, factor: f64) -> Direction {
    Direction::new(direction.parts().iter().map(|(freedom, part)| (*freedom, factor * part)))
}
