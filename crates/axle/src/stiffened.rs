//! The axle and its stiffeners as one section over the welded length.
//!
//! Plane sections stay plane across all parts, each counted by its modulus against the axle's. The beam then runs
//! along the common centroid, its axes along the principal ones. Left out: the shear stiffness of the stiffeners
//! themselves (the axle's wall alone carries shear) and the distance of the shear centre from the centroid.

use std::f64::consts::TAU;

use axlebow_fe::Rigidity;
use axlebow_sections::{
    AreaProperties, Composite, Material, Part, Placement, PrincipalAxes, Profile, StressField, ThinWalled,
    Wall,
};

use crate::body::Piece;
use crate::frame::piece_at;
use crate::outcome::Resultants;
use crate::stiffener::{CellWall, Seated, Stiffener, WeldPattern};
use crate::{Axle, AxleError};

/// A section of the axle with its stiffeners.
#[derive(Debug, Clone, PartialEq)]
pub struct StiffenedSection {
    /// Axle and stiffeners, the axle first.
    pub composite: Composite,
    /// Area properties in terms of the axle's modulus.
    pub area: AreaProperties,
    /// Torsion constant in terms of the axle's shear modulus, closed cells included, m⁴.
    pub torsion_constant: f64,
    /// Shear area along X and Z, that of the bare axle, m².
    pub shear_area: [f64; 2],
    /// Mass per length, kg/m.
    pub mass_per_length: f64,
    elastic_modulus: f64,
    shear_modulus: f64,
}

impl StiffenedSection {
    /// The section at a distance from the centre line of a piece, with each stiffener's share of its section.
    ///
    /// # Errors
    /// Those of [`Stiffener::on`]; [`axlebow_sections::SectionError::PartsOverlap`] where two of them meet.
    pub(crate) fn of(
        axle: &Axle,
        piece: &Piece,
        distance: f64,
        present: &[(&Stiffener, f64)],
    ) -> Result<Self, AxleError> {
        let profile = piece.profile_at(distance);
        let own = axle.body.material(piece.part);
        let bare = axle.body.properties(piece, distance);
        let wall =
            Part { name: piece.part.word().to_owned(), outline: profile.outline(), material: own.clone() };
        let mut parts = vec![wall];
        let (mut torsion_constant, mut mass) = (bare.torsion_constant, own.density() * bare.area);
        for (stiffener, share) in present {
            let seated = stiffener.on(&profile)?;
            let ratio = share * stiffener.material.shear_modulus() / own.shear_modulus();
            torsion_constant += ratio * torsion_gain(&profile, stiffener, &seated)?;
            mass += share * stiffener.material.density() * seated.area.area;
            let material = weakened(&stiffener.material, *share)?;
            parts.push(Part { name: stiffener.name.clone(), outline: seated.outline, material });
        }
        let composite = Composite::new(parts)?;
        Ok(StiffenedSection {
            area: composite.area_properties(),
            composite,
            torsion_constant,
            shear_area: [bare.shear_coefficient_x * bare.area, bare.shear_coefficient_z * bare.area],
            mass_per_length: mass,
            elastic_modulus: own.elastic_modulus(),
            shear_modulus: own.shear_modulus(),
        })
    }

    /// Whether stiffeners sit on the axle at a position (m) and clear of each other.
    ///
    /// # Errors
    /// As [`StiffenedSection::of`].
    pub(crate) fn fits(axle: &Axle, y: f64, there: &[&Stiffener]) -> Result<(), AxleError> {
        let whole: Vec<_> = there.iter().map(|stiffener| (*stiffener, 1.0)).collect();
        StiffenedSection::of(axle, &piece_at(axle, y), y.abs(), &whole).map(|_| ())
    }

    /// Normal stress in terms of the axle's modulus, for resultants about the axle's own line.
    pub fn stress_field(&self, resultants: &Resultants) -> StressField {
        let [x, z] = self.area.centroid;
        let own = resultants.moved([-x, -z]);
        self.area.stress_field(own.axial, own.moment_x, own.moment_z)
    }

    /// Mass moments of inertia per length about the beam's axes, of the transformed section in the axle's density.
    pub(crate) fn rotary_inertia(&self, angle: f64) -> [f64; 3] {
        let area = self.turned(angle);
        let density = self.mass_per_length / area.area;
        let (about_2, about_3) = (density * area.second_moment_z, density * area.second_moment_x);
        [about_2 + about_3, about_2, about_3]
    }

    fn turned(&self, angle: f64) -> AreaProperties {
        self.area.placed(&Placement { turn: -angle, x: 0.0, z: 0.0 })
    }

    /// Principal axes; a section as stiff every way has those of the axle.
    pub(crate) fn axes(&self) -> PrincipalAxes {
        self.area.principal_axes()
    }

    /// Rigidity about axes turned by an angle from X, counter-clockwise in (x, z).
    pub(crate) fn rigidity(&self, angle: f64) -> Rigidity {
        let area = self.turned(angle);
        let (e, g) = (self.elastic_modulus, self.shear_modulus);
        let (sine, cosine) = angle.sin_cos();
        let shear = |x: f64, z: f64| g * (x * x * self.shear_area[0] + z * z * self.shear_area[1]);
        Rigidity {
            axial: e * area.area,
            torsion: g * self.torsion_constant,
            bending_2: e * area.second_moment_z,
            bending_3: e * area.second_moment_x,
            shear_2: shear(-sine, cosine),
            shear_3: shear(cosine, sine),
        }
    }
}

/// A run-out of a stiffener's end counts as its whole section of a weaker material.
fn weakened(material: &Material, share: f64) -> Result<Material, AxleError> {
    if share >= 1.0 {
        return Ok(material.clone());
    }
    let least = share.max(LEAST_SHARE);
    let (e, nu) = (least * material.elastic_modulus(), material.poisson_ratio());
    Ok(Material::new(material.name(), e, nu, material.density())?)
}

/// Least share of a modulus that still is one.
const LEAST_SHARE: f64 = 1e-9;

/// What a stiffener adds to the torsion constant: its own walls, and the cell where it closes one.
fn torsion_gain(profile: &Profile, stiffener: &Stiffener, seated: &Seated) -> Result<f64, AxleError> {
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
