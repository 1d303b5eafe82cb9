//! Builds the finite-element model of an axle.

use axlebow_fe::{Spring, Structure};

use crate::assembly::bearing_play::BearingRates;
use crate::assembly::stations::{fine_places, places};
use crate::assembly::wall_at_seat::WallAtSeat;
use crate::mesh::frame::Frame;
use crate::mesh::joints::Joints;
use crate::mesh::masses::add_masses;
use crate::mesh::nodes::{Nodes, add_nodes};
use crate::mesh::plan::{Plan, StiffenerModel, VehicleBody};
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
        let nodes = add_nodes(&plan, &mut structure);
        let mut stretches = add_stretches(&plan, &walls, &nodes.line, &mut structure)?;
        let tied = tie_stiffeners(&plan, (&nodes.line, &nodes.beside), &mut stretches, &mut structure)?;
        let Plan { axle, places, .. } = plan;
        let joints = Joints { axle, places: &places, nodes: &nodes };
        let mut add = |spring: Spring| structure.add_spring(spring);
        let inner_bearings = both(|side| Ok(add(joints.bearing(side, BearingPlace::Inner, rates))?))?;
        let outer_bearings = both(|side| Ok(add(joints.bearing(side, BearingPlace::Outer, rates))?))?;
        let brakes = both(|side| Ok(add(joints.brake(side))?))?;
        let discs = both(|side| Ok(joints.disc(side).map(&mut add).transpose()?))?;
        let seats = both(|side| Ok(add(joints.seat(side, walls.of(side))?)?))?;
        if axle.body.flexing().straight_between_seats {
            add(straight_seats(axle, &Sides::each(|side| joints.seat_node(side)), &walls))?;
        }
        add_masses(&joints, &mut structure);
        let Nodes { line, hubs, barrels, body, .. } = nodes;
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

/// Makes something for the left, then for the right.
fn both<T>(mut make: impl FnMut(Side) -> Result<T, AxleError>) -> Result<Sides<T>, AxleError> {
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
