//! What the axle's wall does at a seat beyond beam theory, as the beam model takes it.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

use axlebow_wall::{Caveat, Fineness, MOST_STIFFENED, SeatCompliance, SeatWall, WallError};

use crate::assembly::seat_wall::{by_formula, seat_wall};
use crate::parts::freedoms::RX;
use crate::parts::wall_by::WallBy;
use crate::{Axle, AxleError, Side};

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
            WallBy::Formula => {
                let found = by_formula(axle, side)?;
                let turning = WallAtSeat::turning(seat.wall, seat.composite_fraction, found.rotational);
                Ok(WallAtSeat { caveats: found.caveats, ..turning })
            }
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
