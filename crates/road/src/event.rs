//! A shape in the road.

use crate::{HalfSineBump, HaversineBump, MeasuredProfile, Pothole, Ramp, Step, Washboard};

/// A shape in the road, in its own distances; the ground holds its last height beyond each end.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Event {
    /// Level ground at height 0.
    Flat,
    /// A half-sine bump.
    HalfSineBump(HalfSineBump),
    /// A haversine bump.
    HaversineBump(HaversineBump),
    /// A ramp to another level.
    Ramp(Ramp),
    /// A step to another level.
    Step(Step),
    /// A pothole.
    Pothole(Pothole),
    /// A row of sine waves.
    Washboard(Washboard),
    /// Measured or generated samples.
    Profile(MeasuredProfile),
}

/// What a shape says of itself; x lies from its start to its end wherever it is asked.
pub(crate) trait Shape {
    /// Where the shape begins (m).
    fn start(&self) -> f64 {
        0.0
    }

    /// Where the shape ends (m).
    fn end(&self) -> f64;

    /// Height of the ground before the start (m).
    fn before(&self) -> f64 {
        0.0
    }

    /// Height of the ground after the end (m).
    fn after(&self) -> f64 {
        0.0
    }

    /// Height inside the shape (m).
    fn height(&self, x: f64) -> f64;

    /// Integral of the height over `from..to` inside the shape (m²).
    fn area(&self, from: f64, to: f64) -> f64;

    /// The area over `from..to` inside the shape (m²) and the heights at both ends (m).
    fn area_and_ends(&self, from: f64, to: f64) -> [f64; 3] {
        [self.area(from, to), self.height(from), self.height(to)]
    }
}

/// Level ground, a shape without length.
struct Flat;

impl Shape for Flat {
    fn end(&self) -> f64 {
        0.0
    }

    fn height(&self, _: f64) -> f64 {
        0.0
    }

    fn area(&self, _: f64, _: f64) -> f64 {
        0.0
    }
}

impl Event {
    /// Where the event begins (m); 0 for all but a profile.
    pub fn start(&self) -> f64 {
        self.shape().start()
    }

    /// Where the event ends (m).
    pub fn end(&self) -> f64 {
        self.shape().end()
    }

    /// Height of the ground z(x) (m, up).
    ///
    /// - `x`: distance in the event's own frame (m), any
    pub fn height(&self, x: f64) -> f64 {
        let shape = self.shape();
        if x < shape.start() {
            shape.before()
        } else if x >= shape.end() {
            shape.after()
        } else {
            shape.height(x)
        }
    }

    /// Mean height of the ground over a stretch, ∫ z dx / (to - from) (m, up).
    ///
    /// - `from`, `to`: ends of the stretch in the event's own frame (m), from < to
    pub(crate) fn mean_height(&self, from: f64, to: f64) -> f64 {
        let shape = self.shape();
        let (start, end) = (shape.start(), shape.end());
        if to <= start {
            return shape.before();
        }
        if from >= end {
            return shape.after();
        }
        let before = shape.before() * (start - from).max(0.0);
        let after = shape.after() * (to - end).max(0.0);
        (before + shape.area(from.max(start), to.min(end)) + after) / (to - from)
    }

    /// Mean height of the ground over a stretch, and its height at both ends (m, up).
    pub(crate) fn mean_and_ends(&self, from: f64, to: f64) -> [f64; 3] {
        let shape = self.shape();
        let (start, end) = (shape.start(), shape.end());
        if to < start {
            return [shape.before(); 3];
        }
        if from >= end {
            return [shape.after(); 3];
        }
        if from >= start && to < end {
            let [area, at_from, at_to] = shape.area_and_ends(from, to);
            return [area / (to - from), at_from, at_to];
        }
        [self.mean_height(from, to), self.height(from), self.height(to)]
    }

    fn shape(&self) -> &dyn Shape {
        match self {
            Event::Flat => &Flat,
            Event::HalfSineBump(shape) => shape,
            Event::HaversineBump(shape) => shape,
            Event::Ramp(shape) => shape,
            Event::Step(shape) => shape,
            Event::Pothole(shape) => shape,
            Event::Washboard(shape) => shape,
            Event::Profile(shape) => shape,
        }
    }
}

impl From<HalfSineBump> for Event {
    fn from(shape: HalfSineBump) -> Self {
        Event::HalfSineBump(shape)
    }
}

impl From<HaversineBump> for Event {
    fn from(shape: HaversineBump) -> Self {
        Event::HaversineBump(shape)
    }
}

impl From<Ramp> for Event {
    fn from(shape: Ramp) -> Self {
        Event::Ramp(shape)
    }
}

impl From<Step> for Event {
    fn from(shape: Step) -> Self {
        Event::Step(shape)
    }
}

impl From<Pothole> for Event {
    fn from(shape: Pothole) -> Self {
        Event::Pothole(shape)
    }
}

impl From<Washboard> for Event {
    fn from(shape: Washboard) -> Self {
        Event::Washboard(shape)
    }
}

impl From<MeasuredProfile> for Event {
    fn from(shape: MeasuredProfile) -> Self {
        Event::Profile(shape)
    }
}
