//! Builds the finite-element model of an axle.

use axlebow_fe::{Attachment, Spring, SpringId, Structure};

use crate::assembly::bearing_play::BearingRates;
use crate::assembly::stations::{fine_places, nearest, places};
use crate::assembly::wall_at_seat::WallAtSeat;
use crate::mesh::frame::Frame;
use crate::mesh::masses::add_masses;
use crate::mesh::nodes::{Nodes, add_nodes};
use crate::mesh::plan::{Plan, StiffenerModel, VehicleBody};
use crate::mesh::springs::{BRAKE_STIFFNESS, disc_rates, seat_spring};
use crate::mesh::straight_seats::straight_seats;
use crate::mesh::stretches::{add_stretches, tie_stiffeners};
use crate::parts::bearing_place::BearingPlace;
use crate::{Axle, AxleError, Side, Sides};

impl Frame {
    /// Builds the model with bearings without play.
    pub(crate) fn of(axle: &Axle, vehicle_body: VehicleBody) -> Result<Frame, AxleError> {
        Frame::with_rates(axle, vehicle_body, &BearingRates::tight(axle))
    }

    /// Builds the model with bearings of given radial stiffness.
    pub(crate) fn with_rates(
        axle: &Axle,
        vehicle_body: VehicleBody,
        rates: &BearingRates,
    ) -> Result<Frame, AxleError> {
        Frame::fine(axle, vehicle_body, (rates, f64::INFINITY))
    }

    /// The same with elements no longer than `longest` (m).
    pub(crate) fn fine(
        axle: &Axle,
        vehicle_body: VehicleBody,
        (rates, longest): (&BearingRates, f64),
    ) -> Result<Frame, AxleError> {
        let stations = fine_places(axle, longest);
        Frame::built(Plan::of(axle, vehicle_body, (StiffenerModel::USUAL, stations))?, rates)
    }

    /// Builds the model with its stiffeners in a given way; the body rests and bearings have no play.
    pub(crate) fn with_stiffeners(axle: &Axle, stiffeners: StiffenerModel) -> Result<Frame, AxleError> {
        let plan = Plan::of(axle, VehicleBody::AtRest, (stiffeners, places(axle)))?;
        Frame::built(plan, &BearingRates::tight(axle))
    }

    fn built(plan: Plan, rates: &BearingRates) -> Result<Frame, AxleError> {
        let mut structure = Structure::new();
        let walls = Sides {
            left: WallAtSeat::of(plan.axle, Side::Left)?,
            right: WallAtSeat::of(plan.axle, Side::Right)?,
        };
        let Nodes { line, beside, hubs, barrels, body } = add_nodes(&plan, &mut structure);
        let mut stretches = add_stretches(&plan, &walls, &line, &mut structure)?;
        let tied = tie_stiffeners(&plan, (&line, &beside), &mut stretches, &mut structure)?;
        let Plan { axle, places, .. } = plan;
        // Where places are merged, what acts beside one does so on an arm.
        let on_line = |y: f64| {
            let number = nearest(&places, y);
            Attachment::on_arm(line[number], [0.0, y - places[number].y, 0.0])
        };
        let mut bearing = |side: Side, place: BearingPlace| {
            let end = axle.wheel_ends.of(side);
            let y = side.sign() * end.bearing_at(place);
            let face = side.sign() * end.mounting_face;
            let hub_point = Attachment::on_arm(*barrels.of(side), [0.0, y - face, 0.0]);
            let [forward, up] = rates.of(side, place);
            let rates = [forward, end.bearing_stiffness(place).axial, up, 0.0, 0.0, 0.0];
            Ok(structure.add_spring(Spring::between(hub_point, on_line(y), rates))?)
        };
        let inner_bearings = both(|side| bearing(side, BearingPlace::Inner))?;
        let outer_bearings = both(|side| bearing(side, BearingPlace::Outer))?;
        let brakes = both(|side| {
            let spindle = on_line(side.sign() * axle.wheel_ends.of(side).inner_bearing);
            let rates = [0.0, 0.0, 0.0, 0.0, BRAKE_STIFFNESS, 0.0];
            // A pure couple: the point at which it acts does not matter.
            Ok(structure.add_spring(Spring::between(Attachment::at(*barrels.of(side)), spindle, rates))?)
        })?;
        let mut discs = Sides::default();
        for side in Side::BOTH {
            if let Some(rates) = disc_rates(axle.wheels.of(side)) {
                let (barrel, wheel) = (Attachment::at(*barrels.of(side)), Attachment::at(*hubs.of(side)));
                *discs.of_mut(side) = Some(structure.add_spring(Spring::between(wheel, barrel, rates))?);
            }
        }
        let seats = both(|side| {
            let seat = axle.seats.of(side);
            let y = side.sign() * seat.at;
            let far = body.map(|body| Attachment::on_arm(body, [0.0, y, 0.0]));
            let spring =
                seat_spring(seat, walls.of(side), on_line(y)).ok_or(AxleError::SeatTooStiff { side })?;
            Ok(structure.add_spring(Spring { far, ..spring })?)
        })?;
        if axle.body.flexing().straight_between_seats {
            let nodes = Sides::each(|side| line[nearest(&places, side.sign() * axle.seats.of(side).at)]);
            structure.add_spring(straight_seats(axle, &nodes, &walls))?;
        }
        add_masses(axle, (&hubs, &barrels), on_line, &mut structure);
        Ok(Frame {
            structure,
            places,
            line,
            stretches,
            hubs,
            barrels,
            discs,
            inner_bearings,
            outer_bearings,
            brakes,
            seats,
            walls,
            body,
            tied,
        })
    }
}

fn both(mut make: impl FnMut(Side) -> Result<SpringId, AxleError>) -> Result<Sides<SpringId>, AxleError> {
    Ok(Sides { left: make(Side::Left)?, right: make(Side::Right)? })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example::stiffening::{loose_seats, tent};
    use crate::{Stiffener, StiffenerEnd};

    /// However an end runs out and whatever stations cut it, what acts is what is reported.
    #[test]
    fn the_mass_that_acts_is_that_of_the_axle() {
        for end in [
            StiffenerEnd::Square,
            StiffenerEnd::Tapered { length: 0.1 },
            StiffenerEnd::Radiused { radius: 0.12 },
            StiffenerEnd::Radiused { radius: 0.35 },
        ] {
            let mut axle = loose_seats(vec![Stiffener { end, ..tent() }]);
            axle.stations.push(crate::UserStation { name: "in the run-out".into(), y: 0.31 });
            for stiffeners in [StiffenerModel::USUAL, StiffenerModel::OneSection] {
                let frame = Frame::with_stiffeners(&axle, stiffeners).unwrap();
                let (acting, reported) = (frame.structure.mass(), axle.unsprung_mass());
                assert!((acting / reported - 1.0).abs() < 1e-9, "{end:?}: {acting} kg, not {reported} kg");
            }
        }
    }
}
