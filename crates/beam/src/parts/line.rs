//! A straight beam with what holds and loads it.

use crate::error::{BeamError, FreeMotion, Part};
use crate::hold::Hold;
use crate::parts::load::{Load, PointMass};
use crate::parts::span::Span;
use crate::parts::support::Support;

/// Places closer than this part of the beam's length are one.
pub(crate) const SAME: f64 = 1e-9;

/// What a beam is made of, not yet checked.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LineParts {
    /// Spans, one behind the other from 0 on.
    pub spans: Vec<Span>,
    /// What holds it.
    pub supports: Vec<Support>,
    /// What loads it.
    pub loads: Vec<Load>,
    /// What is mounted on it; only modes see these.
    pub masses: Vec<PointMass>,
}

/// A straight beam with what holds and loads it, checked.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    parts: LineParts,
    length: f64,
}

impl Line {
    /// Checks every part and its place.
    ///
    /// # Errors
    /// [`BeamError`] of the first part that cannot be: a value, a place off the beam, two supports at a place.
    pub fn new(parts: LineParts) -> Result<Self, BeamError> {
        if parts.spans.is_empty() {
            return Err(BeamError::NoSpan);
        }
        parts.spans.iter().enumerate().try_for_each(|(number, span)| span.check(number))?;
        let line = Self { length: parts.spans.iter().map(|span| span.length).sum(), parts };
        line.check_supports()?;
        for (number, load) in line.loads().iter().enumerate() {
            load.check(number)?;
            load.places().into_iter().try_for_each(|at| line.check_place(Part::Load(number), at))?;
        }
        for (number, mass) in line.masses().iter().enumerate() {
            mass.check(number)?;
            line.check_place(Part::Mass(number), mass.at)?;
        }
        Ok(line)
    }

    /// Length (m).
    pub fn length(&self) -> f64 {
        self.length
    }

    /// Spans, one behind the other.
    pub fn spans(&self) -> &[Span] {
        &self.parts.spans
    }

    /// What holds it.
    pub fn supports(&self) -> &[Support] {
        &self.parts.supports
    }

    /// What loads it.
    pub fn loads(&self) -> &[Load] {
        &self.parts.loads
    }

    /// What is mounted on it.
    pub fn masses(&self) -> &[PointMass] {
        &self.parts.masses
    }

    /// Whether a part of it lies on a foundation.
    pub fn has_foundation(&self) -> bool {
        self.spans().iter().any(|span| span.foundation > 0.0)
    }

    /// Where each span starts, and where the last one ends (m).
    pub fn span_ends(&self) -> Vec<f64> {
        let mut ends = vec![0.0];
        for span in self.spans() {
            ends.push(ends[ends.len() - 1] + span.length);
        }
        ends
    }

    /// Whether anything bends it: a load, or a support that has moved.
    pub fn is_loaded(&self) -> bool {
        let moved =
            |hold: &Hold| !matches!(hold, Hold::Free | Hold::Rigid(0.0) | Hold::Elastic { value: 0.0, .. });
        !self.loads().is_empty()
            || self.supports().iter().any(|support| support.kind.holds(true).iter().any(moved))
    }

    /// Ends of pieces: places where something happens, ascending, from the start to the end of the beam (m).
    pub fn piece_ends(&self) -> Vec<f64> {
        let mut places = self.span_ends();
        places.extend(self.supports().iter().map(|support| support.at));
        places.extend(self.loads().iter().flat_map(Load::places));
        places.extend(self.masses().iter().map(|mass| mass.at));
        places.iter_mut().for_each(|place| *place = place.clamp(0.0, self.length));
        places.sort_by(f64::total_cmp);
        places.dedup_by(|later, earlier| self.is_same(*later, *earlier));
        places
    }

    /// Whether two places are one.
    pub(crate) fn is_same(&self, a: f64, b: f64) -> bool {
        (a - b).abs() <= SAME * self.length
    }

    /// The motion that nothing resists even where every stop touches, where there is one.
    pub fn mechanism(&self) -> Option<FreeMotion> {
        self.free_motion(&vec![true; self.supports().len()])
    }

    /// The motion that nothing resists, where there is one.
    ///
    /// - `touches`: of each support, whether it touches if it is a stop
    pub(crate) fn free_motion(&self, touches: &[bool]) -> Option<FreeMotion> {
        if self.has_foundation() {
            return None;
        }
        let holds = |(support, touches): (&Support, &bool)| (support.at, support.kind.holds(*touches));
        let held: Vec<_> = self.supports().iter().zip(touches).map(holds).collect();
        if held.iter().any(|(_, [up, turning])| *up != Hold::Free && *turning != Hold::Free) {
            return None;
        }
        let mut up = held.iter().filter(|(_, [up, _])| *up != Hold::Free).map(|(at, _)| *at);
        let turning = held.iter().any(|(_, [_, turning])| *turning != Hold::Free);
        match (up.next(), up.next(), turning) {
            (None, _, false) => Some(FreeMotion::All),
            (None, _, true) => Some(FreeMotion::UpAndDown),
            (Some(at), None, false) => Some(FreeMotion::TurningAbout { at }),
            _ => None,
        }
    }

    /// The same beam with a node at a place where nothing happens.
    pub(crate) fn with_node(&self, at: f64) -> Line {
        let mut line = self.clone();
        line.parts.loads.push(Load::Force { at, force: 0.0 });
        line
    }

    /// A place of a response, which lies on the beam.
    pub(crate) fn checked_place(&self, at: f64) -> Result<f64, BeamError> {
        self.check_place(Part::Response, at)?;
        Ok(at.clamp(0.0, self.length))
    }

    /// Refuses a beam with a section that has no area.
    pub(crate) fn check_areas(&self, what: &'static str) -> Result<(), BeamError> {
        let bare = |span: &Span| span.section_at(0.0).area.is_none();
        match self.spans().iter().position(bare) {
            Some(number) => Err(BeamError::NoArea { part: Part::Span(number), what }),
            None => Ok(()),
        }
    }

    fn check_supports(&self) -> Result<(), BeamError> {
        for (number, support) in self.supports().iter().enumerate() {
            let (part, at) = (Part::Support(number), support.at);
            support.kind.check(number)?;
            self.check_place(part, at)?;
            if self.supports()[..number].iter().any(|earlier| self.is_same(earlier.at, at)) {
                return Err(BeamError::SamePlace { part, at });
            }
        }
        Ok(())
    }

    fn check_place(&self, part: Part, at: f64) -> Result<(), BeamError> {
        let slack = SAME * self.length;
        if (-slack..=self.length + slack).contains(&at) {
            return Ok(());
        }
        Err(BeamError::OffTheBeam { part, at, length: self.length })
    }
}
