//! The ground under both sides of an axle.

use crate::{Event, RoadError, Track};

/// Which wheels meet an event.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wheels {
    /// Both sides.
    Both {
        /// How much later the right wheels meet it than the left (m); negative for the left later.
        lag: f64,
    },
    /// The left side only.
    Left,
    /// The right side only.
    Right,
}

/// The ground under both sides of an axle.
#[derive(Debug, Clone, PartialEq)]
pub struct Road {
    /// The track of the left wheels.
    pub left: Track,
    /// The track of the right wheels.
    pub right: Track,
}

impl Wheels {
    /// The same with left and right swapped.
    pub fn mirrored(self) -> Self {
        match self {
            Wheels::Both { lag } => Wheels::Both { lag: -lag },
            Wheels::Left => Wheels::Right,
            Wheels::Right => Wheels::Left,
        }
    }
}

impl Road {
    /// A road with one event; the side that meets it first has it at its own distances.
    ///
    /// - `event`: the event
    /// - `wheels`: which sides meet it; a lag is within 100 km
    ///
    /// Errors: [`RoadError::Range`].
    pub fn new(event: impl Into<Event>, wheels: Wheels) -> Result<Self, RoadError> {
        let track = Track::new(event);
        Ok(match wheels {
            Wheels::Both { lag } => {
                let later = track.shifted(lag.abs())?;
                if lag > 0.0 {
                    Self { left: track, right: later }
                } else {
                    Self { left: later, right: track }
                }
            }
            Wheels::Left => Self { left: track, right: Track::flat() },
            Wheels::Right => Self { left: Track::flat(), right: track },
        })
    }

    /// The road with left and right swapped.
    pub fn mirrored(self) -> Self {
        Self { left: self.right, right: self.left }
    }

    /// The road with both tracks moved along it; see [`Track::shifted`].
    ///
    /// Errors: [`RoadError::Range`].
    pub fn shifted(&self, distance: f64) -> Result<Self, RoadError> {
        Ok(Self { left: self.left.shifted(distance)?, right: self.right.shifted(distance)? })
    }

    /// The road as felt by tires with one contact length (m); see [`Track::enveloped`].
    ///
    /// Errors: [`RoadError::Range`].
    pub fn enveloped(&self, contact_length: f64) -> Result<Self, RoadError> {
        Ok(Self { left: self.left.enveloped(contact_length)?, right: self.right.enveloped(contact_length)? })
    }

    /// Where the first wheel meets something, or 0 on a flat road (m).
    pub fn start(&self) -> f64 {
        self.uneven().map(Track::start).reduce(f64::min).unwrap_or(0.0)
    }

    /// Where the last wheel has passed everything, or 0 on a flat road (m).
    pub fn end(&self) -> f64 {
        self.uneven().map(Track::end).reduce(f64::max).unwrap_or(0.0)
    }

    fn uneven(&self) -> impl Iterator<Item = &Track> {
        [&self.left, &self.right].into_iter().filter(|track| *track.event() != Event::Flat)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{HaversineBump, Step};

    fn bump() -> HaversineBump {
        HaversineBump::new(0.1, 2.0).unwrap()
    }

    #[test]
    fn a_lag_puts_the_right_side_later() {
        let road = Road::new(bump(), Wheels::Both { lag: 0.5 }).unwrap();
        assert_eq!((road.left.start(), road.right.start()), (0.0, 0.5));
        assert_eq!((road.start(), road.end()), (0.0, 2.5));
        let other = Road::new(bump(), Wheels::Both { lag: -0.5 }).unwrap();
        assert_eq!((other.left.start(), other.right.start()), (0.5, 0.0));
    }

    #[test]
    fn one_side_alone_leaves_the_other_level() {
        let road = Road::new(Step::new(0.1).unwrap(), Wheels::Right).unwrap().shifted(30.0).unwrap();
        assert_eq!((road.left.height(31.0), road.right.height(31.0)), (0.0, 0.1));
        assert_eq!((road.start(), road.end()), (30.0, 30.0));
        assert_eq!(Road::new(Event::Flat, Wheels::Left).unwrap().end(), 0.0);
    }

    #[test]
    fn a_lag_that_is_no_number_is_refused() {
        assert!(Road::new(bump(), Wheels::Both { lag: f64::NAN }).is_err());
        assert!(Road::new(bump(), Wheels::Both { lag: f64::INFINITY }).is_err());
    }
}
