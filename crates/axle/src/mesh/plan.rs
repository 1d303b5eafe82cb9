//! What is built, and the places at which there are nodes.

use crate::assembly::stations::{Place, places_with_welds};
use crate::mesh::seated_bar::SeatedBar;
use crate::mesh::weld_line::{WeldPiece, pieces};
use crate::parts::stiffener::Stiffener;
use crate::{Axle, AxleError};

/// How stiffeners are built in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum StiffenerModel {
    /// Each a beam of its own that its weld ties to the axle; fineness as of [`pieces`].
    Tied { fineness: f64 },
    /// One section with the axle over their length, as if no weld gave way: the upper bound of what they do.
    OneSection,
}

impl StiffenerModel {
    /// The model of every answer.
    pub(crate) const USUAL: Self = StiffenerModel::Tied { fineness: 1.0 };
}

/// What is built, and the places at which there are nodes.
pub(crate) struct Plan<'a> {
    pub axle: &'a Axle,
    pub places: Vec<Place>,
    pub vehicle_body: VehicleBody,
    pub stiffeners: StiffenerModel,
    /// Stiffeners that are beams of their own.
    pub tied: Vec<TiedPlan<'a>>,
}

/// A stiffener that is a beam of its own, with the pieces of its weld.
pub(crate) struct TiedPlan<'a> {
    pub stiffener: &'a Stiffener,
    pub bar: SeatedBar,
    pub weld: Vec<WeldPiece>,
}

impl<'a> Plan<'a> {
    /// Nodes at some places, and where the welds of tied stiffeners are held.
    pub(crate) fn of(
        axle: &'a Axle,
        vehicle_body: VehicleBody,
        (stiffeners, places): (StiffenerModel, Vec<Place>),
    ) -> Result<Self, AxleError> {
        let StiffenerModel::Tied { fineness } = stiffeners else {
            return Ok(Plan { axle, places, vehicle_body, stiffeners, tied: Vec::new() });
        };
        let bars = axle.stiffeners.iter().zip(SeatedBar::each(axle)?);
        let tied: Vec<TiedPlan> = bars
            .map(|(stiffener, bar)| {
                let weld = pieces(axle, stiffener, &bar, fineness);
                TiedPlan { stiffener, bar, weld }
            })
            .collect();
        let welds = tied.iter().flat_map(|own| &own.weld).map(|piece| piece.y);
        let places = places_with_welds(places, welds);
        Ok(Plan { axle, places, vehicle_body, stiffeners, tied })
    }
}

/// What the vehicle body does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum VehicleBody {
    /// It rests, and its seats with it.
    AtRest,
    /// It heaves and rolls; its mass is the caller's to add.
    Free,
}
