//! What a stiffener adds to the torsion constant of the axle.

use std::f64::consts::TAU;

use axlebow_sections::{Profile, ThinWalled, Wall};

use crate::AxleError;
use crate::stiffener::{CellWall, Seated, Stiffener, WeldPattern};

/// What a stiffener adds to the torsion constant: its own walls, and the cell where it closes one.
pub(crate) fn torsion_gain(
    profile: &Profile,
    stiffener: &Stiffener,
    seated: &Seated,
) -> Result<f64, AxleError> {
    let weld = &stiffener.weld;
    let closed = weld.both_sides && weld.pattern == WeldPattern::Continuous;
    if let (Some(wall), true) = (&seated.cell, closed) {
        let throat = weld.leg * std::f64::consts::FRAC_1_SQRT_2;
        return cell_gain(profile, (wall, seated.feet), throat);
    }
    Ok(own_constant(seated))
}

/// Torsion constant of a stiffener by itself: I_x + I_z of a full sleeve, a round tube; else that of a strip as thick as twice its area over its edge:
/// J = A t²/3.
pub(crate) fn own_constant(seated: &Seated) -> f64 {
    if !seated.outline.holes().is_empty() {
        return seated.area.polar_moment();
    }
    let edge = seated.outline.outside().polygon(CHORDS);
    let next = edge.iter().cycle().skip(1);
    let length: f64 = edge.iter().zip(next).map(|(a, b)| (a[0] - b[0]).hypot(a[1] - b[1])).sum();
    let thickness = 2.0 * seated.area.area / length;
    seated.area.area * thickness.powi(2) / 3.0
}

/// Chords that stand for a quarter of a circle where only its length counts.
const CHORDS: usize = 8;

/// What a wall over a closed cell adds to the torsion constant of the axle: thin walls with the cell less thin
/// walls without, the welds as walls of their throat.
fn cell_gain(
    profile: &Profile,
    (wall, feet): (&CellWall, [[f64; 2]; 2]),
    throat: f64,
) -> Result<f64, AxleError> {
    let (mut joints, mut walls) = ring(profile, feet);
    let bare = ThinWalled::new(&joints, walls.clone())?.torsion().torsion_constant;
    let first = joints.len();
    joints.extend(&wall.line);
    let last = joints.len() - 1;
    let straight = |from, to, thickness| Wall { from, to, turn: 0.0, thickness };
    walls.extend(wall.thickness.iter().enumerate().map(|(i, t)| straight(first + i, first + i + 1, *t)));
    // The midline runs from one foot to the other; which is which, the nearer end says.
    let near = |foot: usize, end: usize| apart(joints[foot], joints[end]);
    let ends = if near(0, first) <= near(1, first) { [first, last] } else { [last, first] };
    walls.extend([0, 1].map(|foot| straight(foot, ends[foot], throat)));
    Ok(ThinWalled::new(&joints, walls)?.torsion().torsion_constant - bare)
}

fn apart(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

/// The midline of the axle's wall as joints and walls; the first two joints lie under the feet.
fn ring(profile: &Profile, feet: [[f64; 2]; 2]) -> (Vec<[f64; 2]>, Vec<Wall>) {
    match profile {
        Profile::RectangularTube(tube) => {
            let (x, z) = (0.5 * (tube.width() - tube.wall()), 0.5 * (tube.height() - tube.wall()));
            let onto = |[a, b]: [f64; 2]| {
                let side = (a.abs() / x > b.abs() / z, a.clamp(-x, x), b.clamp(-z, z));
                if side.0 { [x.copysign(a), side.2] } else { [side.1, z.copysign(b)] }
            };
            let mut joints: Vec<[f64; 2]> = feet.map(onto).to_vec();
            joints.extend([[x, -z], [x, z], [-x, z], [-x, -z]]);
            (joints.clone(), round_walls(&joints, |_, _| 0.0, tube.wall()))
        }
        Profile::RoundTube(tube) => {
            round_ring(0.5 * (tube.outside_diameter() - tube.wall()), tube.wall(), feet)
        }
        // Stiffeners sit on tubes and housings; a bar is as a tube of all its radius.
        Profile::RoundBar(bar) => round_ring(0.25 * bar.diameter(), 0.5 * bar.diameter(), feet),
    }
}

fn round_ring(radius: f64, thickness: f64, feet: [[f64; 2]; 2]) -> (Vec<[f64; 2]>, Vec<Wall>) {
    let joints = feet.map(|[x, z]| [x, z].map(|part| part * radius / x.hypot(z)));
    let turn = |a: [f64; 2], b: [f64; 2]| (angle(b) - angle(a)).rem_euclid(TAU);
    (joints.to_vec(), round_walls(&joints, turn, thickness))
}

fn angle([x, z]: [f64; 2]) -> f64 {
    z.atan2(x)
}

/// Walls from joint to joint round the axle, counter-clockwise.
fn round_walls(joints: &[[f64; 2]], turn: impl Fn([f64; 2], [f64; 2]) -> f64, thickness: f64) -> Vec<Wall> {
    let mut order: Vec<usize> = (0..joints.len()).collect();
    order.sort_by(|a, b| angle(joints[*a]).total_cmp(&angle(joints[*b])));
    let next = order.iter().cycle().skip(1);
    let walls = order.iter().zip(next);
    walls.map(|(&from, &to)| Wall { from, to, turn: turn(joints[from], joints[to]), thickness }).collect()
}
