//! Camber change by source at a moment of a ride.
//!
//! The unit states of [`crate::statics::split`] are in balance by themselves, and so hold on a body that moves too: their work on
//! what beams and springs deform by is the camber change of that moment, inertia and all. What a beam, a seat or a disc gives is a
//! linear reading of the motion; bearings, those with play too, give the rest.

use axlebow_fe::{Direction, MotionReader, ReducedBasis};

use crate::dynamics::vibration::VibrationModel;
use crate::outcome::CamberSplit;
use crate::riding::ride_readings::sum;
use crate::statics::split::CamberUnits;
use crate::statics::static_design::StaticDesign;
use crate::{AxleError, Side, Sides};

/// Readings of the parts of one wheel's camber change, rad.
#[derive(Debug, Clone)]
pub(crate) struct SplitReadings {
    bending: Direction,
    shear: Direction,
    seat: Direction,
    wall: Direction,
    disc: Direction,
}

impl SplitReadings {
    /// Readings over all freedoms.
    pub(crate) fn of(model: &VibrationModel) -> Result<Sides<Self>, AxleError> {
        let design = StaticDesign::of(model.axle)?;
        let units = CamberUnits::of(&design);
        let reader = MotionReader::of(&model.frame.structure);
        Ok(Sides::each(|side| SplitReadings::of_side(model, (&design, &units, &reader), side)))
    }

    fn of_side(
        model: &VibrationModel,
        (design, units, reader): (&StaticDesign, &CamberUnits, &MotionReader),
        side: Side,
    ) -> Self {
        let unit = units.state(side);
        let (mut bending, mut shear) = (Vec::new(), Vec::new());
        for (moving, held) in model.frame.beams().zip(design.frame.beams()) {
            let [bent, sheared] =
                reader.beam_readings(moving, |forces| unit.beam_work_on(forces, held).into());
            bending.push(bent);
            shear.push(sheared);
        }
        for (moving, held) in model.frame.welds().zip(design.frame.welds()) {
            let force = unit.spring_force(held);
            let [slip] = reader.spring_readings(moving, |deformation, _| {
                [force.iter().zip(deformation).map(|(f, d)| f * d).sum()]
            });
            shear.push(slip);
        }
        let (mut seats, mut walls, mut discs) = (Vec::new(), Vec::new(), Vec::new());
        for end in Side::BOTH {
            let force = unit.spring_force(*design.frame.seats.of(end));
            let wall = design.frame.walls.of(end);
            let [seat, wall] = reader.spring_readings(*model.frame.seats.of(end), |deformation, real| {
                let work = force.iter().zip(deformation).map(|(f, d)| f * d).sum();
                [work, wall.work(&force, real)]
            });
            seats.push(seat);
            walls.push(wall);
            if let (Some(moving), Some(held)) = (model.frame.discs.of(end), design.frame.discs.of(end)) {
                let force = unit.spring_force(*held);
                let work = |deformation: &[f64; 6]| force.iter().zip(deformation).map(|(f, d)| f * d).sum();
                let [disc] = reader.spring_readings(*moving, |deformation, _| [work(deformation)]);
                discs.push(disc);
            }
        }
        let (bending, shear) = (sum(&bending), sum(&shear));
        SplitReadings { bending, shear, seat: sum(&seats), wall: sum(&walls), disc: sum(&discs) }
    }

    /// The same readings over the shapes of a basis.
    pub(crate) fn over(&self, basis: &ReducedBasis) -> Self {
        SplitReadings {
            bending: basis.direction(&self.bending),
            shear: basis.direction(&self.shear),
            seat: basis.direction(&self.seat),
            wall: basis.direction(&self.wall),
            disc: basis.direction(&self.disc),
        }
    }

    /// The parts of a camber change (rad), from what the readings say of its moment.
    pub(crate) fn split(&self, camber: f64, read: impl Fn(&Direction) -> f64) -> CamberSplit {
        let (bending, shear, seat) = (read(&self.bending), read(&self.shear), read(&self.seat));
        let disc = read(&self.disc);
        let bearing = camber - bending - shear - seat - disc;
        CamberSplit { bending, shear, seat, wall: read(&self.wall), bearing, disc, clearance: 0.0 }
    }
}
