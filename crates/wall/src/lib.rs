//! Shell submodels of a tube's wall at its seat; does not know the whole axle or files.
//!
//! Axes are those of the workspace: X forward, Y left along the axle, Z up, the origin on the axle's line at the seat's
//! center. A bracket or saddle sits under the axle, the block of a clamp above it.

mod beam_ends;
mod caveat;
mod compliance;
mod crush;
mod cubic_spline;
mod end_loads;
mod error;
mod grading;
mod joint_formula;
mod mesh_layout;
mod mid_line;
mod patch;
mod seat_buckling;
mod seat_stress;
mod seat_table;
mod seat_wall;
mod spread;
mod tube_mesh;
mod wall_picture;

pub use caveat::Caveat;
pub use compliance::{MOST_STIFFENED, SeatCompliance};
pub use crush::{ClampCrush, clamp_force};
pub use error::WallError;
pub use joint_formula::{JointFlexibility, joint_flexibility};
pub use mesh_layout::MeshLayout;
pub use mid_line::length_round;
pub use patch::Patch;
pub use seat_stress::{HotSpot, SeatResultants, SolvedSeat};
pub use seat_table::{SeatKind, SeatRun, SeatTable, TableAnswer};
pub use seat_wall::{SeatWall, Tie, UBolts};
pub use tube_mesh::Fineness;
pub use wall_picture::WallPicture;
