//! The bending member: a tube or a housing with a spindle at each end.

use axlebow_sections::{Material, Profile, RectangularTube, SectionProperties, taper};

use crate::parts::error::positive;
use crate::{AxleError, Flexing};

/// What a piece of the axle is part of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// Trailer axle tube.
    Tube,
    /// Drive axle housing.
    Housing,
    /// Spindle.
    Spindle,
}

impl Part {
    /// The trade's word.
    pub fn word(self) -> &'static str {
        match self {
            Part::Tube => "tube",
            Part::Housing => "housing",
            Part::Spindle => "spindle",
        }
    }
}

/// A length of axle whose section is constant or tapers linearly.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// What it is part of.
    pub part: Part,
    /// Distance of its inboard end from the center line, m.
    pub from: f64,
    /// Distance of its outboard end from the center line, m.
    pub to: f64,
    /// Section at the inboard end.
    pub inboard: Profile,
    /// Section at the outboard end.
    pub outboard: Profile,
    /// Radius of the fillet at its inboard end, m, of a spindle that is given one.
    pub fillet: Option<f64>,
}

impl Piece {
    /// Whether its section changes along it.
    pub fn is_tapered(&self) -> bool {
        self.inboard != self.outboard
    }

    /// Section at a distance from the center line (m), clamped to the piece.
    pub fn profile_at(&self, distance: f64) -> Profile {
        if !self.is_tapered() {
            return self.inboard;
        }
        let share = ((distance - self.from) / (self.to - self.from)).clamp(0.0, 1.0);
        // Both ends were checked to blend when the body was made.
        taper(&self.inboard, &self.outboard, share).unwrap_or(self.inboard)
    }
}

/// A step of a spindle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpindleStep {
    /// Length along the axle, m.
    pub length: f64,
    /// Section.
    pub profile: Profile,
    /// Radius of the fillet at its inboard end, m; none where it is not known.
    pub fillet: Option<f64>,
}

/// One corner of a housing's profile along the axle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HousingPoint {
    /// Distance from the center line, m.
    pub at: f64,
    /// Section there; between two points each dimension changes linearly.
    pub section: RectangularTube,
}

/// The bending member, the same to the left and to the right of the center line.
#[derive(Debug, Clone, PartialEq)]
pub struct Body {
    material: Material,
    spindle_material: Material,
    pieces: Vec<Piece>,
    flexing: Flexing,
}

impl Body {
    /// A trailer axle: a tube of constant section and a stepped spindle at each end.
    ///
    /// - `tube`: section of the tube
    /// - `length`: length of the tube from end to end, m
    /// - `spindle`: steps of the spindle from the tube's end outward
    ///
    /// # Errors
    /// [`AxleError::Value`] for a length that is not a finite value above zero.
    pub fn trailer_tube(
        tube: Profile,
        length: f64,
        material: Material,
        spindle: &Spindle,
    ) -> Result<Self, AxleError> {
        let half = 0.5 * positive("tube length", length, "m")?;
        let piece =
            Piece { part: Part::Tube, from: 0.0, to: half, inboard: tube, outboard: tube, fillet: None };
        Body::finished(vec![piece], material, spindle)
    }

    /// A drive axle: a housing given by its sections at points from the center outward, and a stepped
    /// spindle at each end.
    ///
    /// # Errors
    /// [`AxleError::BrokenLine`] when the points do not start at the center line or do not run outward.
    pub fn drive_housing(
        points: &[HousingPoint],
        material: Material,
        spindle: &Spindle,
    ) -> Result<Self, AxleError> {
        let first = points.first().map_or(f64::NAN, |point| point.at);
        if first != 0.0 || points.len() < 2 {
            return Err(AxleError::BrokenLine { at: first });
        }
        let mut pieces = Vec::with_capacity(points.len());
        for pair in points.windows(2) {
            let (a, b) = (&pair[0], &pair[1]);
            if !(b.at.is_finite() && b.at > a.at) {
                return Err(AxleError::BrokenLine { at: b.at });
            }
            let (inboard, outboard) = (Profile::from(a.section), Profile::from(b.section));
            pieces.push(Piece { part: Part::Housing, from: a.at, to: b.at, inboard, outboard, fillet: None });
        }
        Body::finished(pieces, material, spindle)
    }

    fn finished(mut pieces: Vec<Piece>, material: Material, spindle: &Spindle) -> Result<Self, AxleError> {
        for piece in &pieces {
            taper(&piece.inboard, &piece.outboard, 0.5)?;
        }
        let mut from = pieces.last().map_or(0.0, |piece| piece.to);
        for step in &spindle.steps {
            let to = from + positive("spindle step length", step.length, "m")?;
            pieces.push(Piece {
                part: Part::Spindle,
                from,
                to,
                inboard: step.profile,
                outboard: step.profile,
                fillet: step.fillet,
            });
            from = to;
        }
        Ok(Body { material, spindle_material: spindle.material.clone(), pieces, flexing: Flexing::default() })
    }

    /// The same body with another part of its flexibility acting; mass and stress stay those of its sections.
    pub fn with_flexing(self, flexing: Flexing) -> Self {
        Body { flexing, ..self }
    }

    /// How much of its flexibility acts.
    pub fn flexing(&self) -> Flexing {
        self.flexing
    }

    /// Whether it is the housing of a drive.
    pub fn is_driven(&self) -> bool {
        self.pieces.iter().any(|piece| piece.part == Part::Housing)
    }

    /// The piece at a position (m); that of the spindle's end beyond it.
    pub(crate) fn piece_at(&self, y: f64) -> Piece {
        let inside = |piece: &&Piece| y.abs() <= piece.to;
        *self.pieces.iter().find(inside).unwrap_or(&self.pieces[self.pieces.len() - 1])
    }

    /// Pieces from the center line outward.
    pub fn pieces(&self) -> &[Piece] {
        &self.pieces
    }

    /// Material of a part.
    pub fn material(&self, part: Part) -> &Material {
        match part {
            Part::Tube | Part::Housing => &self.material,
            Part::Spindle => &self.spindle_material,
        }
    }

    /// Distance of the tube's or housing's end from the center line, m.
    pub fn tube_end(&self) -> f64 {
        let bodies = self.pieces.iter().filter(|piece| piece.part != Part::Spindle);
        bodies.map(|piece| piece.to).fold(0.0, f64::max)
    }

    /// Distance of the spindle's end from the center line, m.
    pub fn spindle_end(&self) -> f64 {
        self.pieces.last().map_or(0.0, |piece| piece.to)
    }

    /// Section constants at a distance from the center line along a piece.
    pub fn properties(&self, piece: &Piece, distance: f64) -> SectionProperties {
        piece.profile_at(distance).properties(self.material(piece.part).poisson_ratio())
    }

    /// Length round the middle of the wall at a distance from the center line, m; zero where the axle is solid.
    pub fn length_round_at(&self, distance: f64) -> f64 {
        let inside = |piece: &&Piece| distance <= piece.to;
        let piece = self.pieces.iter().find(inside).or(self.pieces.last());
        piece.map_or(0.0, |piece| axlebow_wall::length_round(&piece.profile_at(distance)).unwrap_or(0.0))
    }

    /// Mass of a stretch of a piece, kg: area by Simpson's rule, exact because a blended section's area is
    /// quadratic along the piece.
    pub(crate) fn mass_of(&self, piece: &Piece, from: f64, to: f64) -> f64 {
        let area = |distance: f64| self.properties(piece, distance).area;
        let mean = if piece.is_tapered() {
            (area(from) + 4.0 * area(0.5 * (from + to)) + area(to)) / 6.0
        } else {
            area(from)
        };
        self.material(piece.part).density() * mean * (to - from)
    }

    /// Mass of tube or housing and both spindles, kg.
    pub fn mass(&self) -> f64 {
        2.0 * self.pieces.iter().map(|piece| self.mass_of(piece, piece.from, piece.to)).sum::<f64>()
    }
}

/// The spindle, given once for both ends.
#[derive(Debug, Clone, PartialEq)]
pub struct Spindle {
    /// Material.
    pub material: Material,
    /// Steps from the tube's end outward.
    pub steps: Vec<SpindleStep>,
}
