//! Midlines of shapes, and the shear that thin walls along them carry.

use std::f64::consts::PI;

use super::{Angle, Channel, Flat, HalfPipe, Tee};
use crate::{Placement, SectionError, Shape, ThinWalled, Wall};

/// The walls of a shape along their midlines.
#[derive(Debug, Clone, PartialEq)]
pub struct Midlines {
    /// (x, z) (m).
    pub joints: Vec<[f64; 2]>,
    /// Which joints each one joins.
    pub walls: Vec<Wall>,
}

impl Midlines {
    /// The same midlines, turned and moved.
    pub fn placed(&self, placement: &Placement) -> Self {
        let joints = self.joints.iter().map(|joint| placement.of(*joint)).collect();
        Midlines { joints, walls: self.walls.clone() }
    }
}

impl Shape {
    /// Its midlines in its own axes, fillets left out; those of an angle, a channel and a half pipe run from one free end to
    /// the other.
    pub fn midlines(&self) -> Midlines {
        let (joints, walls) = match self {
            Self::Flat(Flat { width, thickness }) => {
                (vec![[-0.5 * width, 0.0], [0.5 * width, 0.0]], vec![straight([0, 1], *thickness)])
            }
            Self::Angle(Angle { height, width, thickness, .. }) => {
                let half = 0.5 * thickness;
                let joints = vec![[*width, half], [half, half], [half, *height]];
                (joints, vec![straight([0, 1], *thickness), straight([1, 2], *thickness)])
            }
            Self::Channel(Channel { height, width, web, flange, .. }) => {
                let (up, back) = (0.5 * (height - flange), 0.5 * web);
                let joints = vec![[*width, -up], [back, -up], [back, up], [*width, up]];
                let walls = [([0, 1], *flange), ([1, 2], *web), ([2, 3], *flange)];
                (joints, walls.map(|(ends, thickness)| straight(ends, thickness)).to_vec())
            }
            Self::Tee(Tee { height, width, stem, flange, .. }) => {
                let (half, top) = (0.5 * width, height - 0.5 * flange);
                let joints = vec![[0.0, 0.0], [0.0, top], [-half, top], [half, top]];
                let walls = [([0, 1], *stem), ([2, 1], *flange), ([1, 3], *flange)];
                (joints, walls.map(|(ends, thickness)| straight(ends, thickness)).to_vec())
            }
            Self::HalfPipe(HalfPipe { tube }) => {
                let (thickness, radius) = (tube.wall(), 0.5 * (tube.outside_diameter() - tube.wall()));
                let over = Wall { from: 0, to: 1, turn: -PI, thickness };
                (vec![[-radius, 0.0], [radius, 0.0]], vec![over])
            }
        };
        Midlines { joints, walls }
    }

    /// Shares of the area that carry a shear force along the axis of the greatest second moment and across it.
    ///
    /// Of the midlines, so that they change smoothly with every size; Cowper's rectangle for a flat,
    /// k = 10 (1 + nu) / (12 + 11 nu).
    ///
    /// Validity: thin walls; the tests beside it hold it against triangles.
    /// Source: [`ThinWalled::shear_coefficients`]; G. R. Cowper, *Journal of Applied Mechanics* 33 (1966) 335-340.
    ///
    /// Errors: [`SectionError::Length`] for walls without length.
    pub fn shear_coefficients(&self, poisson_ratio: f64) -> Result<[f64; 2], SectionError> {
        if let Self::Flat(_) = self {
            return Ok([10.0 * (1.0 + poisson_ratio) / (12.0 + 11.0 * poisson_ratio); 2]);
        }
        let Midlines { joints, walls } = self.midlines();
        let angle = ThinWalled::new(&joints, walls)?.area_properties().principal_axes().angle;
        let Midlines { joints, walls } =
            self.midlines().placed(&Placement { turn: -angle, ..Placement::default() });
        Ok(ThinWalled::new(&joints, walls)?.shear_coefficients())
    }
}

fn straight([from, to]: [usize; 2], thickness: f64) -> Wall {
    Wall { from, to, turn: 0.0, thickness }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{RoundTube, SaintVenant};

    /// Triangles on the same shape, turned into its principal axes.
    fn by_triangles(shape: &Shape) -> [f64; 2] {
        let outline = shape.outline().unwrap();
        let turn = -outline.area_properties().principal_axes().angle;
        let upright = outline.placed(&Placement { turn, x: 0.0, z: 0.0 });
        let whole = SaintVenant::of_outline(&upright, 0.0, 2.0).unwrap();
        [whole.shear_coefficient_x, whole.shear_coefficient_z]
    }

    /// Walls of a tenth to a twentieth of their length: corners are shorter than midlines by about as much.
    #[test]
    fn midlines_carry_shear_as_triangles_do() {
        let (height, width, t) = (0.08, 0.06, 0.004);
        let tube = RoundTube::new(0.16, 0.006).unwrap();
        for shape in [
            Shape::Flat(Flat { width: 0.06, thickness: 0.006 }),
            Shape::Angle(Angle { height, width, thickness: t, root_radius: 0.0, toe_radius: 0.0 }),
            Shape::Angle(Angle { height, width: height, thickness: t, root_radius: 0.0, toe_radius: 0.0 }),
            Shape::Channel(Channel { height, width, web: t, flange: 1.3 * t, root_radius: 0.0 }),
            Shape::Tee(Tee { height, width, stem: t, flange: 1.3 * t, root_radius: 0.0 }),
            Shape::HalfPipe(HalfPipe { tube }),
        ] {
            let midlines = shape.shear_coefficients(0.0).unwrap();
            for (own, whole) in midlines.into_iter().zip(by_triangles(&shape)) {
                assert!((own / whole - 1.0).abs() < 0.05, "{shape:?}: {own} {whole}");
            }
        }
    }
}
