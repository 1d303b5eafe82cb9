//! The nodes of an axle.

use axlebow_fe::{Freedom, NodeId, Structure};

use crate::assembly::station_names::HUB;
use crate::assembly::stations::{nearest, reach};
use crate::mesh::plan::{Plan, VehicleBody};
use crate::mesh::springs::disc_rates;
use crate::{Side, Sides};

/// The nodes of an axle by what they are.
pub(crate) struct Nodes {
    pub line: Vec<NodeId>,
    /// Nodes of each tied stiffener.
    pub beside: Vec<Vec<NodeId>>,
    pub hubs: Sides<NodeId>,
    pub barrels: Sides<NodeId>,
    pub body: Option<NodeId>,
}

/// Line nodes from right to left, those of tied stiffeners beside them, each hub's node next to its outer bearing's
/// and the body's in the middle, so that the band stays narrow.
pub(crate) fn add_nodes(plan: &Plan, structure: &mut Structure) -> Nodes {
    let Plan { axle, places, vehicle_body, .. } = plan;
    let mut body = None;
    let reaches: Vec<_> = plan.tied.iter().map(|own| reach(places, own.stiffener)).collect();
    let mut beside = vec![Vec::new(); reaches.len()];
    let center = nearest(places, 0.0);
    let mut line = Vec::with_capacity(places.len());
    let mut hubs = Sides { left: None, right: None };
    let mut barrels = hubs;
    let mut hub = |side: Side, structure: &mut Structure| {
        let y = side.sign() * axle.wheel_ends.of(side).mounting_face;
        let wheel = structure.add_node(*HUB.of(side), [0.0, y, 0.0]);
        let flexible = disc_rates(axle.wheels.of(side)).is_some();
        let barrel = if flexible { structure.add_node("hub barrel", [0.0, y, 0.0]) } else { wheel };
        (*hubs.of_mut(side), *barrels.of_mut(side)) = (Some(wheel), Some(barrel));
    };
    let bearings = Sides::each(|side| nearest(places, side.sign() * axle.wheel_ends.of(side).outer_bearing));
    for (number, place) in places.iter().enumerate() {
        if number == bearings.left {
            hub(Side::Left, structure);
        }
        line.push(structure.add_node(place.name().clone(), [0.0, place.y, 0.0]));
        for (nodes, _) in beside.iter_mut().zip(&reaches).filter(|(_, reach)| reach.contains(&number)) {
            nodes.push(structure.add_node("stiffener", [0.0, place.y, 0.0]));
        }
        if number == bearings.right {
            hub(Side::Right, structure);
        }
        if number == center && *vehicle_body == VehicleBody::Free {
            let node = structure.add_node("vehicle-body", [0.0, 0.0, 0.0]);
            structure.hold(node, &[Freedom::Ux, Freedom::Uy, Freedom::Ry, Freedom::Rz]);
            body = Some(node);
        }
    }
    let each = |nodes: Sides<Option<NodeId>>| {
        Sides::each(|side| nodes.of(side).expect("every axle has its outer bearings among its places"))
    };
    Nodes { line, beside, hubs: each(hubs), barrels: each(barrels), body }
}
