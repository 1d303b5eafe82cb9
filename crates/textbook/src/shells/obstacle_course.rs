//! The shell obstacle course: thin walls that lock where an element is too stiff.
//!
//! Each function solves one problem on a mesh of the given fineness.

use std::f64::consts::FRAC_PI_2;

use axlebow_fe::Freedom::{self, Rx, Ry, Rz, Ux, Uy, Uz};
use axlebow_fe::{Attachment, Loads, Wall};

use crate::shells::sheet::{Sheet, Side, Surface};

/// Freedoms that a plane of symmetry holds.
const ACROSS_X: [Freedom; 3] = [Ux, Ry, Rz];
const ACROSS_Y: [Freedom; 3] = [Uy, Rx, Rz];
const ACROSS_Z: [Freedom; 3] = [Uz, Rx, Ry];

/// Pinched cylinder with rigid end diaphragms, R = 300, L = 600, t = 3, E = 3e6, nu = 0.3, one octant of
/// `parts` × `parts`: radial deflection under one of two opposite unit loads.
pub fn pinched_cylinder(parts: usize) -> Result<f64, String> {
    let (radius, half) = (300.0, 300.0);
    let mut sheet = barrel((parts, parts), &Wall::new(3.0, 3e6, 0.3), (radius, half, FRAC_PI_2))?;
    sheet.hold(Side::LastU, &ACROSS_Z);
    let loaded = sheet.node(0, 0);
    let mut loads = Loads::new(&sheet.structure, 1);
    loads.add_force(0, &Attachment::at(loaded), [0.0, 0.0, -0.25]);
    Ok(-sheet.solved(loads)?.of(loaded, 0)[2])
}

/// Scordelis-Lo roof, R = 25, L = 50, 40 degrees each side, t = 0.25, E = 4.32e8, nu = 0, diaphragms at its curved
/// ends, 90 per area downward, one quarter of `parts` × `parts`: downward deflection of the middle of the free edge.
pub fn scordelis_lo_roof(parts: usize) -> Result<f64, String> {
    Ok(-roof(parts)?[0])
}

/// The same roof: upward deflection of the crown.
pub fn scordelis_lo_crown(parts: usize) -> Result<f64, String> {
    Ok(roof(parts)?[1])
}

fn roof(parts: usize) -> Result<[f64; 2], String> {
    let sheet = barrel((parts, parts), &Wall::new(0.25, 4.32e8, 0.0), (25.0, 25.0, 40_f64.to_radians()))?;
    let mut loads = Loads::new(&sheet.structure, 1);
    for shell in &sheet.shells {
        loads.add_area_load(&sheet.structure, 0, *shell, [0.0, 0.0, -90.0]);
    }
    let displacements = sheet.solved(loads)?;
    Ok([parts, 0].map(|i| displacements.of(sheet.node(i, 0), 0)[2]))
}

/// A quarter of a barrel along Y from its middle to a diaphragm, from its crown through `angle`.
fn barrel(
    parts: (usize, usize),
    wall: &Wall,
    (radius, half_length, angle): (f64, f64, f64),
) -> Result<Sheet, String> {
    let normal = |u: f64, _: f64| [(angle * u).sin(), 0.0, (angle * u).cos()];
    let place = |u: f64, v: f64| {
        let [x, _, z] = normal(u, v);
        [radius * x, half_length * v, radius * z]
    };
    let mut sheet = Sheet::new(parts, wall, &Surface { place: &place, normal: &normal })?;
    sheet.hold(Side::FirstU, &ACROSS_X);
    sheet.hold(Side::FirstV, &ACROSS_Y);
    sheet.hold(Side::LastV, &[Ux, Uz]);
    Ok(sheet)
}

/// Hemisphere with a hole of 18 degrees, R = 10, t = 0.04, E = 6.825e7, nu = 0.3, pulled out and pushed in by forces
/// of 2 at 90 degrees round its equator, one quadrant of `parts` × `parts` with forces of 1: deflection along them.
pub fn pinched_hemisphere(parts: usize) -> Result<f64, String> {
    let normal = |u: f64, v: f64| {
        let (around, up) = (FRAC_PI_2 * u, 72_f64.to_radians() * v);
        [up.cos() * around.cos(), up.cos() * around.sin(), up.sin()]
    };
    let place = |u: f64, v: f64| normal(u, v).map(|x| 10.0 * x);
    let surface = Surface { place: &place, normal: &normal };
    let mut sheet = Sheet::new((parts, parts), &Wall::new(0.04, 6.825e7, 0.3), &surface)?;
    sheet.hold(Side::FirstU, &ACROSS_Y);
    sheet.hold(Side::LastU, &ACROSS_X);
    let (out, inward) = (sheet.node(0, 0), sheet.node(parts, 0));
    sheet.structure.hold(out, &[Uz]);
    let mut loads = Loads::new(&sheet.structure, 1);
    loads.add_force(0, &Attachment::at(out), [1.0, 0.0, 0.0]);
    loads.add_force(0, &Attachment::at(inward), [0.0, -1.0, 0.0]);
    Ok(sheet.solved(loads)?.of(out, 0)[0])
}

/// A strip of 12 by 1.1 twisted by 90 degrees, clamped at one end, E = 29e6, nu = 0.22.
#[derive(Debug, Clone, Copy)]
pub struct TwistedStrip {
    /// Thickness.
    pub thickness: f64,
    /// Force on the free end, spread over its width.
    pub force: f64,
}

impl TwistedStrip {
    /// Deflections of the free end along forces parallel to its width and to its thickness, on a mesh of `parts`
    /// across and six times as many along.
    pub fn deflections(&self, parts: usize) -> Result<[f64; 2], String> {
        let mut sheet = self.sheet((parts, 6 * parts))?;
        sheet.hold(Side::FirstV, &Freedom::ALL);
        let mut loads = Loads::new(&sheet.structure, 2);
        let per_length = self.force / 1.1;
        let first = sheet.shells.len() - parts;
        for shell in &sheet.shells[first..] {
            loads.add_edge_load(&sheet.structure, 0, (*shell, 2), [0.0, 0.0, per_length]);
            loads.add_edge_load(&sheet.structure, 1, (*shell, 2), [per_length, 0.0, 0.0]);
        }
        let tip = sheet.node(parts / 2, 6 * parts);
        let displacements = sheet.solved(loads)?;
        Ok([displacements.of(tip, 0)[2], displacements.of(tip, 1)[0]])
    }

    fn sheet(&self, parts: (usize, usize)) -> Result<Sheet, String> {
        let turn = |v: f64| FRAC_PI_2 * v;
        let rate = FRAC_PI_2 / 12.0;
        let across = |u: f64| 1.1 * (u - 0.5);
        let place = |u: f64, v: f64| [across(u) * turn(v).cos(), 12.0 * v, across(u) * turn(v).sin()];
        let normal = |u: f64, v: f64| {
            let (sin, cos) = turn(v).sin_cos();
            [-sin, -across(u) * rate, cos]
        };
        let wall = Wall::new(self.thickness, 29e6, 0.22);
        Sheet::new(parts, &wall, &Surface { place: &place, normal: &normal })
    }
}
