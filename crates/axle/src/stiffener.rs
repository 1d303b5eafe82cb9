//! Stiffeners: shapes welded along the axle.
//!
//! A stiffener is described where it would sit on the top of the axle: X forward, Z away from the axle. Its clock
//! position turns it round the axle; then it slides inward until it rests on the wall.

use std::f64::consts::{FRAC_PI_2, PI};

use axlebow_sections::shape::{Angle, Channel, HalfPipe};
use axlebow_sections::{AreaProperties, Material, Outline, Placement, Profile, RoundTube, Shape};

use crate::AxleError;
use crate::error::{finite, not_negative, positive};

/// How a shape sits on the axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Attitude {
    /// An angle or a channel with both toes on the wall, closing a cell with it.
    ToesDown,
    /// An angle with the toe of one leg on the wall, that leg standing outward and the other across its end.
    LegDown,
    /// An angle with one leg flat on the wall and the other standing up from its rear edge.
    BackUp,
    /// A flat that stands outward on its edge.
    OnEdge,
    /// A flat, or a channel's web, that lies on the wall.
    Lying,
    /// A tee whose stem stands on the wall.
    StemDown,
    /// A tee whose flange lies on the wall.
    FlangeDown,
    /// A sleeve that fits round the tube.
    Round,
    /// An outline of the user's, sitting as it was drawn.
    AsDrawn,
}

impl Attitude {
    /// The word of files and results.
    pub fn word(self) -> &'static str {
        match self {
            Attitude::ToesDown => "toes-down",
            Attitude::LegDown => "leg-down",
            Attitude::BackUp => "back-up",
            Attitude::OnEdge => "on-edge",
            Attitude::Lying => "lying",
            Attitude::StemDown => "stem-down",
            Attitude::FlangeDown => "flange-down",
            Attitude::Round => "round",
            Attitude::AsDrawn => "as-drawn",
        }
    }

    /// Every attitude.
    pub const ALL: [Attitude; 9] = [
        Attitude::ToesDown,
        Attitude::LegDown,
        Attitude::BackUp,
        Attitude::OnEdge,
        Attitude::Lying,
        Attitude::StemDown,
        Attitude::FlangeDown,
        Attitude::Round,
        Attitude::AsDrawn,
    ];

    /// The attitude of a word.
    pub fn of_word(word: &str) -> Option<Self> {
        Attitude::ALL.into_iter().find(|attitude| attitude.word() == word)
    }

    /// Attitudes that a shape can take; the first is the usual one.
    pub fn of_shape(shape: &Shape) -> &'static [Attitude] {
        match shape {
            Shape::Angle(_) => &[Attitude::ToesDown, Attitude::LegDown, Attitude::BackUp],
            Shape::Flat(_) => &[Attitude::OnEdge, Attitude::Lying],
            Shape::Channel(_) => &[Attitude::ToesDown, Attitude::Lying],
            Shape::Tee(_) => &[Attitude::StemDown, Attitude::FlangeDown],
            Shape::HalfPipe(_) => &[Attitude::Round],
        }
    }
}

/// What is welded on, in the axes of a stiffener on top of the axle.
#[derive(Debug, Clone, PartialEq)]
pub struct StiffenerForm {
    /// What it is called in results, such as `angle, toes down`.
    pub called: String,
    outline: Outline,
    fits_round: bool,
    cell: Option<CellWall>,
}

/// Midline of a stiffener's wall that closes a cell with the axle's, from its rear foot to its front one.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct CellWall {
    pub line: Vec<[f64; 2]>,
    /// The wall from each point of the line to the next one.
    pub runs: Vec<CellRun>,
}

/// A straight or round stretch of a wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct CellRun {
    pub thickness: f64,
    /// Angle through which it turns, rad, counter-clockwise positive.
    pub turn: f64,
}

impl CellRun {
    fn straight(thickness: f64) -> Self {
        CellRun { thickness, turn: 0.0 }
    }
}

impl StiffenerForm {
    /// A shape in one of its attitudes.
    ///
    /// # Errors
    /// [`AxleError::Attitude`] when the shape cannot sit so; [`AxleError::Section`] for impossible sizes.
    pub fn of_shape(shape: &Shape, attitude: Attitude) -> Result<Self, AxleError> {
        let accepted = Attitude::of_shape(shape);
        if !accepted.contains(&attitude) {
            return Err(AxleError::Attitude { shape: shape.kind(), attitude, accepted });
        }
        let seated = seating(shape, attitude);
        let called = format!("{}, {}", shape.kind(), attitude.word().replace('-', " "));
        let cell = midline(shape, attitude).map(|wall| wall.placed(&seated));
        let fits_round = attitude == Attitude::Round;
        Ok(StiffenerForm { called, outline: shape.outline()?.placed(&seated), fits_round, cell })
    }

    /// A round tube about the axle's own.
    ///
    /// # Errors
    /// [`AxleError::Section`] for impossible sizes.
    pub fn full_sleeve(bore: f64, wall: f64) -> Result<Self, AxleError> {
        let tube = RoundTube::new(bore + 2.0 * wall, wall)?;
        let called = "full sleeve".to_owned();
        Ok(StiffenerForm { called, outline: Profile::from(tube).outline(), fits_round: true, cell: None })
    }

    /// An outline of the user's, drawn with Z away from the axle.
    pub fn of_outline(called: &str, outline: Outline) -> Self {
        StiffenerForm { called: called.to_owned(), outline, fits_round: false, cell: None }
    }

    /// Whether it is a sleeve all round the tube.
    pub(crate) fn goes_round(&self) -> bool {
        self.fits_round && !self.outline.holes().is_empty()
    }

    /// Its edges, as it would lie on top of the axle at no particular height.
    pub fn outline(&self) -> &Outline {
        &self.outline
    }
}

/// How a shape, drawn in its own axes, is turned and moved to sit on top.
fn seating(shape: &Shape, attitude: Attitude) -> Placement {
    let turned = |turn: f64| Placement { turn, ..Placement::default() };
    match (shape, attitude) {
        (Shape::Angle(angle), Attitude::ToesDown) => tent(angle),
        (Shape::Angle(angle), Attitude::LegDown) => Placement { turn: PI, x: 0.5 * angle.thickness, z: 0.0 },
        (Shape::Angle(angle), _) => Placement { turn: 0.0, x: -0.5 * angle.width, z: 0.0 },
        (Shape::Flat(_), Attitude::OnEdge) => turned(FRAC_PI_2),
        (Shape::Channel(_), Attitude::ToesDown) => turned(-FRAC_PI_2),
        (Shape::Channel(_), _) => turned(FRAC_PI_2),
        (Shape::Tee(_), Attitude::FlangeDown) => turned(PI),
        _ => Placement::default(),
    }
}

/// Both toes level, heel up, the middle between the toes over the axle's middle.
fn tent(angle: &Angle) -> Placement {
    let turned = Placement { turn: -angle.height.atan2(-angle.width), x: 0.0, z: 0.0 };
    let [toe, other] = [turned.of([angle.width, 0.0]), turned.of([0.0, angle.height])];
    Placement { x: -0.5 * (toe[0] + other[0]), ..turned }
}

/// Midline of the wall that closes a cell with the axle, in the shape's own axes.
fn midline(shape: &Shape, attitude: Attitude) -> Option<CellWall> {
    match (shape, attitude) {
        (Shape::Angle(Angle { height, width, thickness, .. }), Attitude::ToesDown) => {
            let half = 0.5 * thickness;
            let line = vec![[*width, half], [half, half], [half, *height]];
            Some(CellWall { line, runs: vec![CellRun::straight(*thickness); 2] })
        }
        (Shape::Channel(Channel { height, width, web, flange, .. }), Attitude::ToesDown) => {
            let (up, back) = (0.5 * (height - flange), 0.5 * web);
            let line = vec![[*width, -up], [back, -up], [back, up], [*width, up]];
            Some(CellWall { line, runs: [*flange, *web, *flange].map(CellRun::straight).to_vec() })
        }
        (Shape::HalfPipe(HalfPipe { tube }), _) => {
            let radius = 0.5 * (tube.outside_diameter() - tube.wall());
            let over = CellRun { thickness: tube.wall(), turn: -PI };
            Some(CellWall { line: vec![[-radius, 0.0], [radius, 0.0]], runs: vec![over] })
        }
        _ => None,
    }
}

impl CellWall {
    pub(crate) fn placed(&self, placement: &Placement) -> Self {
        let line = self.line.iter().map(|place| placement.of(*place)).collect();
        CellWall { line, runs: self.runs.clone() }
    }
}

/// How an end of a stiffener runs out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StiffenerEnd {
    /// Cut square.
    Square,
    /// Its height runs out evenly over a length, m.
    Tapered {
        /// m.
        length: f64,
    },
    /// Its height runs out along a quarter circle, m.
    Radiused {
        /// m.
        radius: f64,
    },
}

impl StiffenerEnd {
    /// Length over which it runs out, m.
    pub fn length(self) -> f64 {
        match self {
            StiffenerEnd::Square => 0.0,
            StiffenerEnd::Tapered { length } => length,
            StiffenerEnd::Radiused { radius } => radius,
        }
    }

    /// Share of the section that is there at a distance (m) from the end.
    pub fn share(self, distance: f64) -> f64 {
        let within = |length: f64| (distance / length).clamp(0.0, 1.0);
        match self {
            StiffenerEnd::Square => 1.0,
            StiffenerEnd::Tapered { length } => within(length),
            StiffenerEnd::Radiused { radius } => (1.0 - (1.0 - within(radius)).powi(2)).sqrt(),
        }
    }

    /// Length of whole section that weighs as much as what is there up to a distance (m) from the end, the integral of
    /// [`Self::share`], m.
    fn whole_length(self, distance: f64) -> f64 {
        let beyond = (distance - self.length()).max(0.0);
        let within = |length: f64| (distance / length).clamp(0.0, 1.0);
        match self {
            StiffenerEnd::Square => distance,
            StiffenerEnd::Tapered { length } => 0.5 * length * within(length).powi(2) + beyond,
            StiffenerEnd::Radiused { radius } => {
                // ∫ √(1 - u²) du from u, what is left of the radius, to 1.
                let left = 1.0 - within(radius);
                let part = 0.25 * PI - 0.5 * (left * (1.0 - left * left).sqrt() + left.asin());
                radius * part + beyond
            }
        }
    }
}

/// Where along the stiffener there is weld.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WeldPattern {
    /// From end to end.
    Continuous,
    /// Stitches of a length at a pitch from middle to middle; the first and the last lie at the ends.
    Stitched {
        /// Length of a stitch, m.
        length: f64,
        /// Distance from middle to middle, m.
        pitch: f64,
    },
}

/// The weld of a stiffener.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StiffenerWeld {
    /// Leg of the fillet, m.
    pub leg: f64,
    /// Pattern along it.
    pub pattern: WeldPattern,
    /// Whether both of its sides are welded; one only leaves no cell closed.
    pub both_sides: bool,
    /// Stiffness of the weld along the axle per length of weld, N/m².
    pub stiffness: f64,
}

/// A stiffener on the axle.
#[derive(Debug, Clone, PartialEq)]
pub struct Stiffener {
    /// Name, different from every other stiffener's.
    pub name: String,
    /// What is welded on.
    pub form: StiffenerForm,
    /// Material.
    pub material: Material,
    /// Angle round the axle from the top toward the front, rad.
    pub clock: f64,
    /// Its right end, m; positive to the left.
    pub from: f64,
    /// Its left end, m.
    pub to: f64,
    /// How both ends run out.
    pub end: StiffenerEnd,
    /// Its weld.
    pub weld: StiffenerWeld,
}

/// A stiffener where it rests on a section of the axle.
#[derive(Debug, Clone, PartialEq)]
pub struct Seated {
    /// Its edges, in the axes of the section.
    pub outline: Outline,
    /// Area properties of the outline.
    pub area: AreaProperties,
    /// Where its rear and its front weld run, (x, z), m.
    pub feet: [[f64; 2]; 2],
    /// Gap under each foot, m.
    pub gaps: [f64; 2],
    pub(crate) cell: Option<CellWall>,
}

impl Stiffener {
    /// Length, m.
    pub fn length(&self) -> f64 {
        self.to - self.from
    }

    /// Mass, kg; an end that runs out counts the section that is there.
    pub fn mass(&self) -> f64 {
        self.mass_between(self.from, self.to)
    }

    /// Mass of what lies between two positions (m), the second one to the left, kg.
    pub(crate) fn mass_between(&self, from: f64, to: f64) -> f64 {
        let half = 0.5 * self.length();
        // From the middle, negative to the right.
        let up_to = |y: f64| {
            let away = y.clamp(self.from, self.to) - self.from - half;
            (self.end.whole_length(half) - self.end.whole_length(half - away.abs())).copysign(away)
        };
        let area = self.form.outline.area_properties().area;
        self.material.density() * area * (up_to(to) - up_to(from))
    }

    /// Whether a weld from end to end on both sides closes a cell between it and the axle.
    pub(crate) fn closes_a_cell(&self) -> bool {
        self.form.cell.is_some() && self.weld.both_sides && self.weld.pattern == WeldPattern::Continuous
    }

    /// Share of its section at a position (m), 0 beyond its ends.
    pub fn share_at(&self, y: f64) -> f64 {
        let distance = (y - self.from).min(self.to - y);
        if distance < 0.0 { 0.0 } else { self.end.share(distance) }
    }

    /// The stiffener on a section of the axle.
    ///
    /// # Errors
    /// [`AxleError::Floats`] when it would pass the axle by or a sleeve does not fit.
    pub fn on(&self, profile: &Profile) -> Result<Seated, AxleError> {
        let axle = axle_outline(profile, self.clock);
        let rise = if self.form.fits_round { Some(0.0) } else { self.form.outline.rise_to_rest_on(&axle) };
        let floats = |gap: f64| AxleError::Floats { stiffener: self.name.clone(), gap };
        let rise = rise.ok_or_else(|| floats(self.form.outline.distance_from_edge([0.0, 0.0])))?;
        let upright = self.form.outline.placed(&Placement { turn: 0.0, x: 0.0, z: rise });
        let feet = [-1.0, 1.0].map(|side| foot(&upright, &axle, side));
        let gaps = feet.map(|place| axle.distance_from_edge(place));
        let round = Placement { turn: -self.clock, x: 0.0, z: 0.0 };
        let outline = upright.placed(&round);
        if let Some(gap) = gaps.into_iter().find(|gap| *gap > LARGEST_GAP * profile.height()) {
            return Err(floats(gap));
        }
        let risen = Placement { turn: 0.0, x: 0.0, z: rise };
        let cell = self.form.cell.as_ref().map(|wall| wall.placed(&risen).placed(&round));
        let area = outline.area_properties();
        Ok(Seated { outline, area, feet: feet.map(|place| round.of(place)), gaps, cell })
    }

    pub(crate) fn check(&self) -> Result<(), AxleError> {
        finite("clock position of a stiffener", self.clock, "rad")?;
        finite("right end of a stiffener", self.from, "m")?;
        positive("length of a stiffener", self.length(), "m")?;
        positive("leg of a stiffener's weld", self.weld.leg, "m")?;
        positive("stiffness of a stiffener's weld", self.weld.stiffness, "N/m2")?;
        not_negative("run-out of a stiffener's end", self.end.length(), "m")?;
        if self.end.length() > 0.5 * self.length() {
            return Err(self.does_not_fit("run-outs of its ends", 2.0 * self.end.length(), self.length()));
        }
        if let WeldPattern::Stitched { length, pitch } = self.weld.pattern {
            positive("length of a stitch", length, "m")?;
            positive("pitch of the stitches", pitch, "m")?;
            if length > self.length() {
                return Err(self.does_not_fit("stitch", length, self.length()));
            }
            if length > pitch {
                return Err(self.does_not_fit("stitch, against its pitch,", length, pitch));
            }
        }
        Ok(())
    }

    fn does_not_fit(&self, what: &'static str, length: f64, room: f64) -> AxleError {
        AxleError::StiffenerRoom { stiffener: self.name.clone(), what, length, room }
    }
}

/// Largest gap under a foot, as a share of the axle's height, that a weld could be made to bridge at all; a
/// wider one is a stiffener that does not sit on the axle.
const LARGEST_GAP: f64 = 0.1;

/// The outside of the axle, turned so that the clock position is up.
fn axle_outline(profile: &Profile, clock: f64) -> Outline {
    profile.outline().placed(&Placement { turn: clock, x: 0.0, z: 0.0 })
}

/// The corner of the rear (-1) or front (1) half that is nearest to the axle, the outermost of equal ones.
fn foot(outline: &Outline, axle: &Outline, side: f64) -> [f64; 2] {
    let own = |place: &[f64; 2]| side * place[0] > 0.0;
    let gaps =
        outline.corner_places().into_iter().filter(own).map(|place| (axle.distance_from_edge(place), place));
    let nearest = gaps.min_by(|a, b| a.0.total_cmp(&b.0));
    nearest.map_or([0.0, outline.reach()[1][0]], |(_, place)| place)
}

/// The half pipe that fits round a tube.
pub fn sleeve(bore: f64, wall: f64) -> Result<Shape, AxleError> {
    let tube = RoundTube::new(bore + 2.0 * wall, wall)?;
    Ok(Shape::HalfPipe(HalfPipe { tube }))
}
