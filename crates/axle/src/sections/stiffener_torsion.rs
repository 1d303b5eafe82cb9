//! What stiffeners do to the torsion constant and the shear center of the axle.

use std::f64::consts::{FRAC_1_SQRT_2, TAU};

use axlebow_sections::{Profile, SaintVenant, ThinWalled, ThinWalledTorsion, Wall};

use crate::AxleError;
use crate::parts::stiffener::{Seated, Stiffener};
use crate::parts::stiffener_form::{StiffenerForm, edge_length};

/// What a stiffener adds to the torsion constant, in terms of its own shear modulus, m⁴: its own walls, and the cell
/// where it closes one.
pub(crate) fn torsion_gain(
    profile: &Profile,
    stiffener: &Stiffener,
    seated: &Seated,
) -> Result<f64, AxleError> {
    if !stiffener.closes_a_cell() {
        return own_constant(&stiffener.form, stiffener.material.poisson_ratio());
    }
    let bare = axle_walls(profile, &[(stiffener, seated)], false)?;
    Ok(axle_walls(profile, &[(stiffener, seated)], true)?.torsion_constant - bare.torsion_constant)
}

/// Shear center (x, z) of axle and stiffeners, m; none where a stiffener leaves its part of the section open.
///
/// A sleeve all round the tube leaves it where it is. Open stiffeners move it as well, but only by the shear that runs
/// into them, which is not reckoned here.
pub(crate) fn shear_center(
    profile: &Profile,
    stiffeners: &[(&Stiffener, &Seated)],
) -> Result<Option<[f64; 2]>, AxleError> {
    let one_sided = stiffeners.iter().filter(|(stiffener, _)| !stiffener.form.goes_round());
    let one_sided: Vec<_> = one_sided.copied().collect();
    if one_sided.is_empty() {
        return Ok(Some([0.0; 2]));
    }
    if !one_sided.iter().all(|(stiffener, _)| stiffener.closes_a_cell()) {
        return Ok(None);
    }
    Ok(Some(axle_walls(profile, &one_sided, true)?.shear_center))
}

/// Torsion constant of a stiffener by itself, wherever it sits, m⁴: I_x + I_z of a full sleeve, a round tube; by triangles where it has
/// holes; else that of a strip as thick as twice its area over its edge: J = A t²/3.
pub(crate) fn own_constant(form: &StiffenerForm, poisson_ratio: f64) -> Result<f64, AxleError> {
    let (outline, area) = (form.outline(), form.outline().area_properties());
    if outline.holes().is_empty() {
        let thickness = 2.0 * area.area / edge_length(outline);
        return Ok(area.area * thickness.powi(2) / 3.0);
    }
    if form.goes_round() {
        return Ok(area.polar_moment());
    }
    Ok(SaintVenant::of_outline(outline, poisson_ratio, 1.0)?.torsion_constant)
}

/// The axle as thin walls, `with` the walls of stiffeners over their cells, the welds as walls of their throat.
fn axle_walls(
    profile: &Profile,
    stiffeners: &[(&Stiffener, &Seated)],
    with: bool,
) -> Result<ThinWalledTorsion, AxleError> {
    let feet: Vec<[f64; 2]> = stiffeners.iter().flat_map(|(_, seated)| seated.feet).collect();
    let (mut joints, mut walls) = ring(profile, &feet);
    let cells = stiffeners.iter().filter_map(|(stiffener, seated)| Some((stiffener, seated.cell.as_ref()?)));
    for (number, (stiffener, cell)) in cells.enumerate().filter(|_| with) {
        let first = joints.len();
        joints.extend(&cell.joints);
        let last = joints.len() - 1;
        let own = cell.walls.iter();
        walls.extend(own.map(|wall| Wall { from: first + wall.from, to: first + wall.to, ..*wall }));
        // The midline runs from one foot to the other; which is which, the nearer end says.
        let [one, other] = [2 * number, 2 * number + 1];
        let near = |foot: usize, end: usize| apart(joints[foot], joints[end]);
        let ends = if near(one, first) <= near(one, last) { [first, last] } else { [last, first] };
        let thickness = stiffener.weld.leg * FRAC_1_SQRT_2;
        let weld = |from, to| Wall { from, to, turn: 0.0, thickness };
        walls.extend([weld(one, ends[0]), weld(other, ends[1])]);
    }
    Ok(ThinWalled::new(&joints, walls)?.torsion())
}

fn apart(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

/// The midline of the axle's wall as joints and walls; the first joints lie under the feet.
fn ring(profile: &Profile, feet: &[[f64; 2]]) -> (Vec<[f64; 2]>, Vec<Wall>) {
    match profile {
        Profile::RectangularTube(tube) => {
            let (x, z) = (0.5 * (tube.width() - tube.wall()), 0.5 * (tube.height() - tube.wall()));
            let onto = |[a, b]: [f64; 2]| {
                let side = (a.abs() / x > b.abs() / z, a.clamp(-x, x), b.clamp(-z, z));
                if side.0 { [x.copysign(a), side.2] } else { [side.1, z.copysign(b)] }
            };
            let mut joints: Vec<[f64; 2]> = feet.iter().copied().map(onto).collect();
            joints.extend([[x, -z], [x, z], [-x, z], [-x, -z]]);
            let walls = round_walls(&joints, |_, _| 0.0, tube.wall());
            (joints, walls)
        }
        Profile::RoundTube(tube) => {
            round_ring(0.5 * (tube.outside_diameter() - tube.wall()), tube.wall(), feet)
        }
        // Stiffeners sit on tubes and housings; a bar is as a tube of all its radius.
        Profile::RoundBar(bar) => round_ring(0.25 * bar.diameter(), 0.5 * bar.diameter(), feet),
    }
}

fn round_ring(radius: f64, thickness: f64, feet: &[[f64; 2]]) -> (Vec<[f64; 2]>, Vec<Wall>) {
    let onto = |[x, z]: [f64; 2]| [x, z].map(|part| part * radius / x.hypot(z));
    let joints: Vec<[f64; 2]> = feet.iter().copied().map(onto).collect();
    let turn = |a: [f64; 2], b: [f64; 2]| (angle(b) - angle(a)).rem_euclid(TAU);
    let walls = round_walls(&joints, turn, thickness);
    (joints, walls)
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
