//! What is welded on: shapes in their orientations, sleeves and outlines of the user's.

use std::f64::consts::{FRAC_PI_2, PI};

use axlebow_sections::shape::{Angle, HalfPipe, Midlines, Tee};
use axlebow_sections::shear_coefficient::hollow_circle;
use axlebow_sections::{Contour, Outline, Placement, Profile, RoundTube, SaintVenant, Shape};

use crate::AxleError;
use crate::parts::orientation::Orientation;

/// What is welded on, in the axes of a stiffener on top of the axle.
#[derive(Debug, Clone, PartialEq)]
pub struct StiffenerForm {
    /// What it is called in results, such as `angle, toes down`.
    pub called: String,
    shape: Option<Shape>,
    outline: Outline,
    fit: Fit,
    plate: Plate,
    /// Midlines of the wall that closes a cell with the axle's, from one foot to the other.
    pub(crate) cell: Option<Midlines>,
}

/// How a form comes to lie on the axle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Fit {
    /// It is laid down until it rests on the wall.
    Rests,
    /// It lies where it was drawn, its heights from the outermost of the wall.
    Drawn,
    /// It fits round the tube.
    Round {
        /// Inside diameter, m.
        bore: f64,
    },
}

/// The plate of a form that its weld joins to the axle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Plate {
    /// m.
    pub thickness: f64,
    /// Whether the fillet is laid along its edge, as on a lap, and not along its face.
    pub along_its_edge: bool,
    /// Whether one plate stands between both feet, so that two welds hold it from both sides.
    pub between_the_feet: bool,
}

impl Plate {
    fn lapped(thickness: f64) -> Self {
        Plate { thickness, along_its_edge: true, between_the_feet: false }
    }

    fn standing(thickness: f64) -> Self {
        Plate { thickness, along_its_edge: false, between_the_feet: true }
    }

    fn beside_a_cell(thickness: f64) -> Self {
        Plate { thickness, along_its_edge: false, between_the_feet: false }
    }

    /// That of a shape in one of its orientations.
    ///
    /// The toes of an angle lie along the wall of a round tube, so that their fillet runs along the edge; those of a
    /// channel stand on it.
    fn of(shape: &Shape, orientation: Orientation) -> Self {
        match (shape, orientation) {
            (Shape::Angle(angle), Orientation::LegDown) => Plate::standing(angle.thickness),
            (Shape::Angle(angle), _) => Plate::lapped(angle.thickness),
            (Shape::Flat(flat), Orientation::OnEdge) => Plate::standing(flat.thickness),
            (Shape::Flat(flat), _) => Plate::lapped(flat.thickness),
            (Shape::Channel(channel), Orientation::ToesDown) => Plate::beside_a_cell(channel.flange),
            (Shape::Channel(channel), _) => Plate::beside_a_cell(channel.web.min(channel.flange)),
            (Shape::Tee(tee), Orientation::StemDown) => Plate::standing(tee.stem),
            (Shape::Tee(Tee { flange, .. }), _) => Plate::lapped(*flange),
            (Shape::HalfPipe(HalfPipe { tube }), _) => Plate::lapped(tube.wall()),
        }
    }

    /// That of an outline: its mean thickness, twice its area over its edge.
    fn of_outline(outline: &Outline) -> Self {
        Plate::beside_a_cell(2.0 * outline.area_properties().area / edge_length(outline))
    }
}

/// Chords that stand for a quarter of a circle where only its length counts.
const CHORDS: usize = 8;

/// Length of the edge of an outline, that of its holes included, m.
pub(crate) fn edge_length(outline: &Outline) -> f64 {
    let of = |contour: &Contour| {
        let edge = contour.polygon(CHORDS);
        let next = edge.iter().cycle().skip(1);
        edge.iter().zip(next).map(|(a, b)| (a[0] - b[0]).hypot(a[1] - b[1])).sum::<f64>()
    };
    of(outline.outside()) + outline.holes().iter().map(of).sum::<f64>()
}

impl StiffenerForm {
    /// A shape in one of its orientations.
    ///
    /// # Errors
    /// [`AxleError::Orientation`] when the shape cannot sit so; [`AxleError::Section`] for impossible sizes.
    pub fn of_shape(shape: &Shape, orientation: Orientation) -> Result<Self, AxleError> {
        let accepted = Orientation::of_shape(shape);
        if !accepted.contains(&orientation) {
            return Err(AxleError::Orientation { shape: shape.kind(), orientation, accepted });
        }
        let seated = seating(shape, orientation);
        let called = format!("{}, {}", shape.kind(), orientation.word().replace('-', " "));
        let cell = closes_a_cell(shape, orientation).then(|| shape.midlines().placed(&seated));
        let fit = match shape {
            Shape::HalfPipe(HalfPipe { tube }) => {
                Fit::Round { bore: tube.outside_diameter() - 2.0 * tube.wall() }
            }
            _ => Fit::Rests,
        };
        let (outline, plate) = (shape.outline()?.placed(&seated), Plate::of(shape, orientation));
        Ok(StiffenerForm { called, shape: Some(*shape), outline, fit, plate, cell })
    }

    /// A round tube about the axle's own.
    ///
    /// # Errors
    /// [`AxleError::Section`] for impossible sizes.
    pub fn full_sleeve(bore: f64, wall: f64) -> Result<Self, AxleError> {
        let tube = RoundTube::new(bore + 2.0 * wall, wall)?;
        let (called, outline) = ("full sleeve".to_owned(), Profile::from(tube).outline());
        let (fit, plate) = (Fit::Round { bore }, Plate::lapped(wall));
        Ok(StiffenerForm { called, shape: None, outline, fit, plate, cell: None })
    }

    /// An outline of the user's, drawn where it lies: Z away from the axle, 0 at the outermost of its wall.
    pub fn of_outline(called: &str, outline: Outline) -> Self {
        let plate = Plate::of_outline(&outline);
        StiffenerForm { called: called.to_owned(), shape: None, outline, fit: Fit::Drawn, plate, cell: None }
    }

    /// Shares of its area that carry a shear force along its stiff axis and across it; by triangles for an outline.
    ///
    /// # Errors
    /// Those of [`Shape::shear_coefficients`] and [`SaintVenant::of_outline`].
    pub(crate) fn shear_coefficients(&self, poisson_ratio: f64) -> Result<[f64; 2], AxleError> {
        if let Some(shape) = &self.shape {
            return Ok(shape.shear_coefficients(poisson_ratio)?);
        }
        if let Fit::Round { bore } = self.fit {
            let thickness = self.plate.thickness;
            return Ok([hollow_circle(bore / (bore + 2.0 * thickness), poisson_ratio); 2]);
        }
        let turn = -self.outline.area_properties().principal_axes().angle;
        let upright = self.outline.placed(&Placement { turn, x: 0.0, z: 0.0 });
        let shear = SaintVenant::of_outline(&upright, poisson_ratio, 1.0)?;
        Ok([shear.shear_coefficient_x, shear.shear_coefficient_z])
    }

    /// Whether it lies on the wall as a cover plate: a flat, half of a tube, a sleeve.
    pub(crate) fn covers_the_wall(&self) -> bool {
        let lies =
            matches!(self.shape, Some(Shape::Flat(_) | Shape::HalfPipe(_))) && self.plate.along_its_edge;
        lies || self.goes_round()
    }

    /// Whether it is a sleeve all round the tube.
    pub fn goes_round(&self) -> bool {
        matches!(self.fit, Fit::Round { .. }) && !self.outline.holes().is_empty()
    }

    pub(crate) fn fit(&self) -> Fit {
        self.fit
    }

    /// The shape, none of a full sleeve and of an outline of the user's.
    pub fn shape(&self) -> Option<&Shape> {
        self.shape.as_ref()
    }

    /// Inside diameter of a sleeve, half or full, m.
    pub fn bore(&self) -> Option<f64> {
        match self.fit {
            Fit::Round { bore } => Some(bore),
            Fit::Rests | Fit::Drawn => None,
        }
    }

    /// Thickness of the plate that its weld joins to the axle, m.
    pub fn thickness(&self) -> f64 {
        self.plate.thickness
    }

    /// Whether one plate stands between both of its welds, which then are the two sides of one joint.
    pub fn stands_between_welds(&self) -> bool {
        self.plate.between_the_feet
    }

    /// The plate that its weld joins to the axle.
    pub(crate) fn plate(&self) -> Plate {
        self.plate
    }

    /// Its edges, as it would lie on top of the axle at no particular height.
    pub fn outline(&self) -> &Outline {
        &self.outline
    }
}

/// How a shape, drawn in its own axes, is turned and moved to sit on top.
fn seating(shape: &Shape, orientation: Orientation) -> Placement {
    let turned = |turn: f64| Placement { turn, ..Placement::default() };
    match (shape, orientation) {
        (Shape::Angle(angle), Orientation::ToesDown) => tent(angle),
        (Shape::Angle(angle), Orientation::LegDown) => {
            Placement { turn: PI, x: 0.5 * angle.thickness, z: 0.0 }
        }
        (Shape::Angle(angle), _) => Placement { turn: 0.0, x: -0.5 * angle.width, z: 0.0 },
        (Shape::Flat(_), Orientation::OnEdge) => turned(FRAC_PI_2),
        (Shape::Channel(_), Orientation::ToesDown) => turned(-FRAC_PI_2),
        (Shape::Channel(_), _) => turned(FRAC_PI_2),
        (Shape::Tee(_), Orientation::FlangeDown) => turned(PI),
        _ => Placement::default(),
    }
}

/// Both toes level, heel up, the middle between the toes over the axle's middle.
fn tent(angle: &Angle) -> Placement {
    let turned = Placement { turn: -angle.height.atan2(-angle.width), x: 0.0, z: 0.0 };
    let [toe, other] = [turned.of([angle.width, 0.0]), turned.of([0.0, angle.height])];
    Placement { x: -0.5 * (toe[0] + other[0]), ..turned }
}

/// Whether a shape closes a cell with the axle.
fn closes_a_cell(shape: &Shape, orientation: Orientation) -> bool {
    match shape {
        Shape::Angle(_) | Shape::Channel(_) => orientation == Orientation::ToesDown,
        Shape::HalfPipe(_) => true,
        Shape::Flat(_) | Shape::Tee(_) => false,
    }
}

/// The half pipe that fits round a tube.
pub fn sleeve(bore: f64, wall: f64) -> Result<Shape, AxleError> {
    let tube = RoundTube::new(bore + 2.0 * wall, wall)?;
    Ok(Shape::HalfPipe(HalfPipe { tube }))
}
