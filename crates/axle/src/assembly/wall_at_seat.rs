//! What the axle's wall does at a seat beyond beam theory, as the beam model takes it.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

use axlebow_sections::{Material, Profile};
use axlebow_wall::{
    Caveat, Fineness, MOST_STIFFENED, MeshLayout, SeatCompliance, SeatWall, Tie, UBolts, WallError,
    joint_flexibility,
};

use crate::mesh::frame::{RX, piece_at};
use crate::parts::seat::Fixing;
use crate::{Axle, AxleError, Side, Sides};

/// Where the local flexibility of the wall at a seat comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WallBy {
    /// A value.
    Given,
    /// Published formulas for joints of tubes, extrapolated.
    Formula,
    /// Shells of the wall under a rigid bracket, which also say how far the seat stiffens its length.
    Shell,
    /// Shells of the wall under a bracket that spreads its force.
    ShellSpread,
}

impl WallBy {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            WallBy::Given => "given",
            WallBy::Formula => "formula",
            WallBy::Shell => "shell",
            WallBy::ShellSpread => "shell-spread",
        }
    }

    /// Whether shells of the wall are solved.
    pub fn is_shell(self) -> bool {
        matches!(self, WallBy::Shell | WallBy::ShellSpread)
    }
}

/// What the wall does at a seat; freedoms ux uy uz rx ry rz.
#[derive(Debug, Clone, PartialEq)]
pub struct WallAtSeat {
    /// Where it comes from.
    pub by: WallBy,
    /// Share of the flexibility under the seat that is taken away.
    pub composite_fraction: f64,
    /// Motion of the axle against the seat per force or moment through it, m/N, rad/(N m); negative where the seat
    /// stiffens more than the share says.
    pub compliance: [[f64; 6]; 6],
    /// Unknowns of the shells; none without, or where a table says what they would.
    pub unknowns: Option<usize>,
    /// Doubts.
    pub caveats: Vec<Caveat>,
}

impl WallAtSeat {
    /// The wall at the seat of one side.
    ///
    /// # Errors
    /// [`AxleError::Wall`] where shells or formulas do not suit it.
    pub fn of(axle: &Axle, side: Side) -> Result<Self, AxleError> {
        let seat = axle.seats.of(side);
        match seat.wall {
            WallBy::Given => {
                Ok(WallAtSeat::turning(seat.wall, seat.composite_fraction, seat.wall_flexibility))
            }
            WallBy::Formula => formula(axle, side),
            WallBy::Shell | WallBy::ShellSpread => WallAtSeat::of_shells(axle, side),
        }
    }

    /// As the axle's tables say, or else as shells do.
    fn of_shells(axle: &Axle, side: Side) -> Result<Self, AxleError> {
        let (by, seat) = (axle.seats.of(side).wall, seat_wall(axle, side));
        let (share, compliance, unknowns) = match axle.seat_tables.iter().find_map(|table| table.at(&seat)) {
            Some(answer) => (answer.stiffened_share, answer.local, None),
            None => {
                let solved = solved(&seat).map_err(|error| AxleError::Wall { side, error })?;
                (solved.stiffened_share, solved.local, Some(solved.unknowns))
            }
        };
        let (composite_fraction, caveats) = (share.clamp(0.0, MOST_STIFFENED), seat.caveats(share));
        Ok(WallAtSeat { by, composite_fraction, compliance, unknowns, caveats })
    }

    /// A wall that only turns about X.
    fn turning(by: WallBy, composite_fraction: f64, flexibility: f64) -> Self {
        let mut compliance = [[0.0; 6]; 6];
        compliance[RX][RX] = flexibility;
        WallAtSeat { by, composite_fraction, compliance, unknowns: None, caveats: Vec::new() }
    }

    /// Flexibility about X, rad/(N m).
    pub fn rotational_flexibility(&self) -> f64 {
        self.compliance[RX][RX]
    }

    /// Work of one force through the seat on the motion of another.
    pub(crate) fn work(&self, one: &[f64; 6], other: &[f64; 6]) -> f64 {
        let row = |i: usize| (0..6).map(|j| self.compliance[i][j] * other[j]).sum::<f64>();
        (0..6).map(|i| one[i] * row(i)).sum()
    }
}

/// Refuses a seat whose wall no shells or formulas suit; does not solve shells.
pub(crate) fn check(axle: &Axle, side: Side) -> Result<(), AxleError> {
    match axle.seats.of(side).wall {
        WallBy::Given => Ok(()),
        WallBy::Formula => formula(axle, side).map(|_| ()),
        WallBy::Shell | WallBy::ShellSpread => {
            let seat = seat_wall(axle, side);
            seat.check(&Fineness::USUAL).map_err(|error| AxleError::Wall { side, error })
        }
    }
}

fn formula(axle: &Axle, side: Side) -> Result<WallAtSeat, AxleError> {
    let seat = axle.seats.of(side);
    let (profile, material) = section_at(axle, side);
    let Profile::RoundTube(tube) = profile else { return Err(AxleError::FormulaNeedsTube { side }) };
    let found =
        joint_flexibility(&tube, material, seat.width).map_err(|error| AxleError::Wall { side, error })?;
    let turning = WallAtSeat::turning(seat.wall, seat.composite_fraction, found.rotational);
    Ok(WallAtSeat { caveats: found.caveats, ..turning })
}

/// The seat of one side for shells of its wall.
pub fn seat_wall(axle: &Axle, side: Side) -> SeatWall {
    let seat = axle.seats.of(side);
    let (profile, material) = section_at(axle, side);
    let bolts = UBolts { diameter: seat.bracket.u_bolt_diameter, count: seat.bracket.u_bolts };
    SeatWall {
        profile,
        material: material.clone(),
        width: seat.width,
        breadth: seat.bracket.breadth,
        clamp: (seat.fixing == Fixing::Clamped).then_some(bolts),
        tie: if seat.wall == WallBy::ShellSpread { Tie::Spread } else { Tie::Rigid },
        layout: axle.seat_layouts.of(side).clone(),
    }
}

/// Layout of the mesh of each seat; none where it is the seat's own.
pub type SeatLayouts = Sides<Option<Arc<MeshLayout>>>;

/// The layouts of an axle's shells, for axles near it that are compared with it; none where no shells are solved.
pub fn seat_layouts(axle: &Axle) -> SeatLayouts {
    Sides::each(|side| {
        let seat = seat_wall(axle, side);
        let solved =
            axle.seats.of(side).wall.is_shell() && axle.seat_tables.iter().all(|own| own.at(&seat).is_none());
        solved.then(|| seat.mesh_layout(&Fineness::USUAL).ok()).flatten().map(Arc::new)
    })
}

/// Yield strength of the axle at a seat, Pa, where it is known.
pub(crate) fn yield_strength_at(axle: &Axle, side: Side) -> Option<f64> {
    section_at(axle, side).1.yield_strength()
}

fn section_at(axle: &Axle, side: Side) -> (Profile, &Material) {
    let at = axle.seats.of(side).at;
    let piece = piece_at(axle, at);
    (piece.profile_at(at), axle.body.material(piece.part))
}

/// Shells that were solved before in this run; most axles have two seats alike, and studies many.
static SOLVED: Mutex<BTreeMap<String, Arc<SeatCompliance>>> = Mutex::new(BTreeMap::new());

/// Most seats that are kept.
const KEPT: usize = 4096;

fn solved(seat: &SeatWall) -> Result<Arc<SeatCompliance>, WallError> {
    // Debug text of a float is exact, so that the key tells any two seats apart.
    let key = format!("{seat:?}");
    let kept = || SOLVED.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some(known) = kept().get(&key) {
        return Ok(Arc::clone(known));
    }
    let found = Arc::new(seat.compliance(&Fineness::USUAL)?);
    let mut all = kept();
    if all.len() >= KEPT {
        all.clear();
    }
    all.insert(key, Arc::clone(&found));
    Ok(found)
}
