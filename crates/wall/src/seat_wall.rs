//! The wall of a tube or housing at a seat.

use std::sync::Arc;

use axlebow_sections::{Material, Profile};

use crate::mesh_layout::MeshLayout;
use crate::patch::Patch;
use crate::tube_mesh::Fineness;

/// U-bolts that hold a block against the axle opposite the saddle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UBolts {
    /// Diameter of the bolts' legs, m.
    pub diameter: f64,
    /// Number of bolts, each with two legs; spread evenly over the seat's width.
    pub count: u32,
}

/// What is known of the wall at a seat.
#[derive(Debug, Clone, PartialEq)]
pub struct SeatWall {
    /// Section of the axle at the seat.
    pub profile: Profile,
    /// Its material.
    pub material: Material,
    /// Width of the seat along the axle, m.
    pub width: f64,
    /// Breadth of bracket or saddle round the middle line of the wall, m.
    pub breadth: f64,
    /// What clamps it; none for a welded bracket.
    pub clamp: Option<UBolts>,
    /// How what is fixed to the wall hands its force on.
    pub tie: Tie,
    /// Layout of another seat's mesh, taken over where it fits; its own without.
    pub layout: Option<Arc<MeshLayout>>,
}

/// How a bracket or saddle hands its force on to the wall under it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tie {
    /// It moves as a rigid body with the wall under it: the stiffest that it can be.
    Rigid,
    /// It spreads its force over the wall and follows the mean of its motion: the softest that it can be.
    Spread,
}

impl SeatWall {
    /// Half the length of wall that is modeled, m.
    pub(crate) fn half_length(&self, fineness: &Fineness) -> f64 {
        0.5 * self.width + fineness.beside * self.profile.width().max(self.profile.height())
    }

    /// Under the axle the bracket or saddle, above it the block of a clamp.
    pub(crate) fn patches(&self) -> Vec<Patch> {
        let along = [-0.5 * self.width, 0.5 * self.width];
        let below = if self.clamp.is_some() { "saddle" } else { "bracket" };
        let bracket = Patch { name: below, clock: 0.5, breadth: self.breadth, along };
        let block = self.clamp.map(|_| Patch { name: "clamp block", clock: 0.0, ..bracket });
        std::iter::once(bracket).chain(block).collect()
    }
}
