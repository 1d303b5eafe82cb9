//! A stiffener as a beam of its own, tied to the axle by its weld.
//!
//! Its nodes lie beside the axle's and rigid arms carry it along its own centroid. Each piece of weld is a spring
//! between the two at a foot: along the axle, across the wall and off the wall alike, because a fillet is about as
//! stiff every way (our estimate, no source). A foot without weld is held off the wall only, as by contact that never
//! opens. Left out: warping, and with it the cell that a stiffener closes.

use axlebow_fe::{Attachment, BeamId, NodeId, Spring, SpringId, Structure};

use crate::assembly::stations::{Place, nearest};
use crate::mesh::seated_bar::SeatedBar;
use crate::mesh::weld_line::WeldPiece;
use crate::parts::stiffener::Stiffener;
use crate::{AxleError, SMALLEST_STEP};

/// A stiffener in the finite-element model.
#[derive(Debug, Clone)]
pub(crate) struct TiedStiffener {
    /// From right to left.
    pub beams: Vec<TiedBeam>,
    /// Links of the weld, from right to left, the rear foot before the front one.
    pub links: Vec<WeldLink>,
    /// Springs of all links, those of a foot that only bears on the wall included.
    pub springs: Vec<SpringId>,
}

/// A beam of a tied stiffener.
#[derive(Debug, Clone, Copy)]
pub(crate) struct TiedBeam {
    pub beam: BeamId,
    /// Its right end, m.
    pub start_y: f64,
    /// Its left end, m.
    pub end_y: f64,
}

/// A piece of weld at one foot.
#[derive(Debug, Clone, Copy)]
pub(crate) struct WeldLink {
    pub spring: SpringId,
    pub piece: WeldPiece,
    /// 0 the rear foot, 1 the front one.
    pub foot: usize,
}

/// The places along a stiffener, with its own node and the axle's at each.
pub(crate) struct Beside<'a> {
    pub places: &'a [Place],
    pub own: &'a [NodeId],
    pub line: &'a [NodeId],
    /// Pieces of its weld.
    pub weld: &'a [WeldPiece],
}

/// Puts a stiffener beside the axle's line.
pub(crate) fn tie(
    stiffener: &Stiffener,
    bar: &SeatedBar,
    Beside { places, own, line, weld }: &Beside,
    structure: &mut Structure,
) -> Result<TiedStiffener, AxleError> {
    let mut beams = Vec::with_capacity(places.len());
    for (ends, nodes) in places.windows(2).zip(own.windows(2)) {
        let (start_y, end_y) = (ends[0].y, ends[1].y);
        let beam = structure.add_beam(bar.beam(stiffener, (start_y, end_y), [nodes[0], nodes[1]]))?;
        beams.push(TiedBeam { beam, start_y, end_y });
    }
    let mut links = Vec::with_capacity(2 * weld.len());
    let mut springs = Vec::with_capacity(2 * weld.len());
    for &piece in *weld {
        let place = nearest(places, piece.y);
        for (foot, welded) in stiffener.welded_feet().into_iter().enumerate() {
            let [x, z] = bar.seated(piece.y).feet[foot];
            let at = |node: NodeId| Attachment::on_arm(node, [x, piece.y - places[place].y, z]);
            let k = bar.weld_stiffness(stiffener) * piece.length;
            let stiffness = if welded { welded_stiffness(k) } else { bearing_stiffness(k, stiffener.clock) };
            let spring = Spring { near: at(own[place]), far: Some(at(line[place])), stiffness };
            let spring = structure.add_spring(spring)?;
            springs.push(spring);
            if welded {
                links.push(WeldLink { spring, piece, foot });
            }
        }
    }
    Ok(TiedStiffener { beams, links, springs })
}

/// Stiffness of a piece of weld of stiffness k (N/m), per motion of the stiffener against the axle.
///
/// Sections turn against each other in shear, which a weld does not hinder; they are held in turning by as much as a piece
/// of [`SMALLEST_STEP`] is, so that a bar without stiffness of its own stays where it is.
fn welded_stiffness(k: f64) -> [[f64; 6]; 6] {
    let turning = k * SMALLEST_STEP.powi(2) / 12.0;
    let mut stiffness = [[0.0; 6]; 6];
    for (freedom, rate) in [k, k, k, turning, 0.0, turning].into_iter().enumerate() {
        stiffness[freedom][freedom] = rate;
    }
    stiffness
}

/// The same of a foot without weld at a clock position (rad), which is held off the wall only.
fn bearing_stiffness(k: f64, clock: f64) -> [[f64; 6]; 6] {
    let (sine, cosine) = clock.sin_cos();
    let mut stiffness = [[0.0; 6]; 6];
    for (i, a) in [(0, sine), (2, cosine)] {
        for (j, b) in [(0, sine), (2, cosine)] {
            stiffness[i][j] = k * a * b;
        }
    }
    stiffness
}
