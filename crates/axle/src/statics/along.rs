//! Resultants, stress and shape along the axle line.

use axlebow_fe::{BeamForces, BeamId, EndForce, State};

use crate::Axle;
use crate::mesh::stressed_section::StressedMember;
use crate::mesh::stretch::Stretch;
use crate::outcome::{DiagramPoint, Resultants};
use crate::statics::seat_line::SeatLineFrame;
use crate::statics::static_design::StaticDesign;

/// Points drawn inside each stretch, its ends included.
pub(crate) const POINTS: usize = 7;

/// The axle line from left to right.
pub(crate) fn diagram(design: &StaticDesign, state: &State, leveled: &SeatLineFrame) -> Vec<DiagramPoint> {
    let mut points = Vec::with_capacity(POINTS * design.frame.stretches.len());
    for stretch in design.frame.stretches.iter().rev() {
        let forces: Vec<(BeamId, BeamForces)> =
            stretch.lines().map(|line| (line.beam, state.beam_forces(line.beam))).collect();
        let length = stretch.end_y - stretch.start_y;
        for share in points_from_left() {
            let y = stretch.start_y + share * length;
            let of = |beam: BeamId| forces.iter().find(|(own, _)| *own == beam).map(|(_, of)| of);
            let Cut { whole, stress, .. } = cut_through(design.axle, stretch, y, |beam| {
                of(beam).map_or(EndForce::default(), |forces| forces.at(share * length))
            });
            let [ux, uz] = shape(state, stretch, share);
            points.push(DiagramPoint { y, uz: uz - leveled.height_at(y), ux, resultants: whole, stress });
        }
    }
    points
}

/// Shares of a stretch's length at which points are drawn, from its left end.
pub(crate) fn points_from_left() -> impl Iterator<Item = f64> {
    (0..POINTS).map(|i| 1.0 - i as f64 / (POINTS - 1) as f64)
}

/// Stresses that differ by less than this share of themselves are equal.
const EQUAL_STRESSES: f64 = 1e-9;

/// The stress of larger magnitude; of equal ones the first.
#[inline]
pub(crate) fn larger_stress(one: f64, other: f64) -> f64 {
    if other.abs() > one.abs() * (1.0 + EQUAL_STRESSES) { other } else { one }
}

/// The point of largest stress magnitude; of equal ones the leftmost.
pub(crate) fn peak_stress(diagram: &[DiagramPoint]) -> DiagramPoint {
    let larger = |a: DiagramPoint, b: &DiagramPoint| {
        if larger_stress(a.stress, b.stress) == a.stress { a } else { *b }
    };
    diagram.iter().fold(DiagramPoint::default(), larger)
}

/// What a cut through a stretch carries.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Cut {
    /// All together, about the axle's own line.
    pub whole: Resultants,
    /// The axle itself, without the stiffeners that its welds tie to it.
    pub axle: Resultants,
    /// Fiber stress of largest magnitude in axle and stiffeners, Pa; under a clamp that of the bare axle.
    pub stress: f64,
}

/// The cut at `y`; `force` gives what a beam carries there.
pub(crate) fn cut_through(axle: &Axle, stretch: &Stretch, y: f64, force: impl Fn(BeamId) -> EndForce) -> Cut {
    let own = stretch.line().resultants(&force(stretch.beam));
    let mut cut = Cut { axle: own, ..Cut::default() };
    for member in StressedMember::each(axle, stretch, y) {
        let force = force(member.line.beam);
        cut.whole = cut.whole.plus(&member.line.resultants(&force));
        cut.stress = larger_stress(cut.stress, member.section.extreme_stress(member.terms(&force)));
    }
    cut
}

/// Forward and upward displacement inside a stretch, for drawing: the cubic through the displacements of
/// its ends with their rotations as slopes (the shear angle is small against them).
fn shape(state: &State, stretch: &Stretch, share: f64) -> [f64; 2] {
    let (a, b) = (state.motion(stretch.start), state.motion(stretch.end));
    let length = stretch.end_y - stretch.start_y;
    let (x, rest) = (share, 1.0 - share);
    let cubic = |start: f64, start_slope: f64, end: f64, end_slope: f64| {
        start * rest * rest * (1.0 + 2.0 * x)
            + end * x * x * (3.0 - 2.0 * x)
            + length * x * rest * (start_slope * rest - end_slope * x)
    };
    [cubic(a[0], -a[5], b[0], -b[5]), cubic(a[2], a[3], b[2], b[3])]
}
