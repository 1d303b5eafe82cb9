//! What driving asks of a tire: the forces that wear it where it stands upright and runs straight.

use crate::TreadError;
use crate::error::{at_most, not_negative, positive};

/// Largest force along or across the road over the load that a duty may ask for, of the friction: past it a tire slides.
const MOST_OF_FRICTION: f64 = 0.9;
/// How far the shares of a duty may be from one in sum: a file writes them with two digits.
const ROUNDING: f64 = 1e-6;

/// A share of the distance over which driving asks the same of a tire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DutyPart {
    /// Share of the distance, 0 to 1.
    pub share: f64,
    /// Side force over load, to either side in turn.
    pub side: f64,
    /// Force along the road over load: positive drives, which only driven tires do; negative brakes.
    pub forward: f64,
}

/// A duty: forces over load, each with its share of the distance.
///
/// That wear follows the forces that the trip asks for, by their mean square, and not the distance alone: O. Le Maître,
/// M. Süssner, C. Zarak, Evaluation of tire wear performance, SAE 980256, 1998 (from memory). The numbers of the
/// [`usual`](Duty::usual) duties are assumed.
#[derive(Debug, Clone, PartialEq)]
pub struct Duty {
    name: DutyName,
    parts: Vec<DutyPart>,
}

/// Which duty it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DutyName {
    /// Long trips on motorways.
    LineHaul,
    /// Day trips on country roads.
    Regional,
    /// Deliveries in town: corners, starts and stops.
    City,
    /// One that the user states.
    Stated,
}

const fn part(share: f64, side: f64, forward: f64) -> DutyPart {
    DutyPart { share, side, forward }
}

/// Cruise, climbs, bends, braking (assumed). Driving asks for 0.02 of the load in the mean: some 100 kW at 25 m/s through two
/// driven axles of 85 kN each (from memory).
const LINE_HAUL: [DutyPart; 4] =
    [part(0.70, 0.015, 0.02), part(0.18, 0.03, 0.05), part(0.10, 0.05, 0.0), part(0.02, 0.03, -0.10)];
/// Country road, climbs, bends, braking (assumed).
const REGIONAL: [DutyPart; 4] =
    [part(0.55, 0.02, 0.03), part(0.25, 0.05, 0.06), part(0.15, 0.08, 0.0), part(0.05, 0.04, -0.15)];
/// Street, starts, corners, braking (assumed).
const CITY: [DutyPart; 4] =
    [part(0.40, 0.03, 0.03), part(0.30, 0.08, 0.08), part(0.20, 0.13, 0.0), part(0.10, 0.06, -0.20)];

impl DutyName {
    /// The duties whose forces are known here.
    pub const USUAL: [DutyName; 3] = [DutyName::LineHaul, DutyName::Regional, DutyName::City];

    /// Its word in files and options.
    pub fn word(self) -> &'static str {
        match self {
            DutyName::LineHaul => "line-haul",
            DutyName::Regional => "regional",
            DutyName::City => "city",
            DutyName::Stated => "stated",
        }
    }
}

impl Duty {
    /// A usual duty; `None` for [`DutyName::Stated`], which nobody but the user knows.
    pub fn usual(name: DutyName) -> Option<Duty> {
        let parts = match name {
            DutyName::LineHaul => LINE_HAUL,
            DutyName::Regional => REGIONAL,
            DutyName::City => CITY,
            DutyName::Stated => return None,
        };
        Some(Duty { name, parts: parts.to_vec() })
    }

    /// Line haul.
    pub fn line_haul() -> Duty {
        Duty { name: DutyName::LineHaul, parts: LINE_HAUL.to_vec() }
    }

    /// A duty of one's own.
    ///
    /// # Errors
    /// [`TreadError::Value`] for a share or side force below zero, [`TreadError::Shares`] where the shares do not sum
    /// to one.
    pub fn stated(parts: Vec<DutyPart>) -> Result<Duty, TreadError> {
        for part in &parts {
            not_negative("share of a duty", part.share, "")?;
            not_negative("side force of a duty", part.side, "")?;
            at_most("force along the road of a duty", (part.forward, ""), 1.0, "-1 to 1")?;
        }
        let sum: f64 = parts.iter().map(|part| part.share).sum();
        if (sum - 1.0).abs() > ROUNDING {
            return Err(TreadError::Shares { sum: (sum * ROUNDING.recip()).round() / ROUNDING.recip() });
        }
        Ok(Duty { name: DutyName::Stated, parts })
    }

    /// The same trips driven harder or more gently: every force by a factor.
    ///
    /// # Errors
    /// [`TreadError::Value`] for a factor that is not above zero.
    pub fn by_severity(&self, severity: f64) -> Result<Duty, TreadError> {
        positive("severity of a duty", severity, "")?;
        let harder = |own: &DutyPart| part(own.share, severity * own.side, severity * own.forward);
        Ok(Duty { name: self.name, parts: self.parts.iter().map(harder).collect() })
    }

    /// One side force over load, to and fro, all the way.
    ///
    /// # Errors
    /// As [`stated`](Duty::stated).
    pub fn steady(side: f64) -> Result<Duty, TreadError> {
        Duty::stated(vec![part(1.0, side, 0.0)])
    }

    /// Which duty it is.
    pub fn name(&self) -> DutyName {
        self.name
    }

    /// Its parts.
    pub fn parts(&self) -> &[DutyPart] {
        &self.parts
    }

    /// Root mean square of the side force over load, along the distance.
    pub fn side_rms(&self) -> f64 {
        self.parts.iter().map(|part| part.share * part.side * part.side).sum::<f64>().sqrt()
    }

    /// Refuses forces that a friction cannot give.
    ///
    /// # Errors
    /// [`TreadError::Value`] for a force of more than nine tenths of the friction by load.
    pub(crate) fn check_friction(&self, friction: f64) -> Result<(), TreadError> {
        let force = |part: &DutyPart| f64::hypot(part.side, part.forward);
        let most = self.parts.iter().map(force).fold(0.0, f64::max);
        let accepted = "at most nine tenths of the tread's friction";
        at_most("force over load that a duty asks for", (most, ""), MOST_OF_FRICTION * friction, accepted)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn usual_duties_sum_to_the_whole_way_and_town_asks_for_more() {
        let duties = DutyName::USUAL.map(|name| Duty::usual(name).unwrap());
        for duty in &duties {
            assert!(Duty::stated(duty.parts.clone()).is_ok(), "{duty:?}");
        }
        // By hand: 0.70 × 0.015² + 0.18 × 0.03² + 0.10 × 0.05² + 0.02 × 0.03² = 0.0005875.
        assert!((duties[0].side_rms().powi(2) - 0.000_587_5).abs() < 1e-15);
        assert!(duties.windows(2).all(|pair| pair[1].side_rms() > pair[0].side_rms()));
    }

    #[test]
    fn severity_multiplies_every_force_and_leaves_the_shares() {
        let harder = Duty::line_haul().by_severity(1.5).unwrap();
        assert_eq!(harder.name(), DutyName::LineHaul);
        for (own, usual) in harder.parts().iter().zip(Duty::line_haul().parts()) {
            assert_eq!(own, &part(usual.share, 1.5 * usual.side, 1.5 * usual.forward));
        }
        for severity in [0.0, -1.0, f64::NAN] {
            assert!(Duty::line_haul().by_severity(severity).is_err(), "{severity}");
        }
    }

    #[test]
    fn a_duty_whose_shares_do_not_sum_to_one_is_refused() {
        let error = Duty::stated(vec![part(0.5, 0.02, 0.0), part(0.4, 0.05, 0.0)]).unwrap_err();
        assert_eq!(error.to_string(), "the shares of a duty sum to 0.9; a sum of 1 is accepted");
        assert!(Duty::stated(Vec::new()).is_err());
        assert!(Duty::stated(vec![part(1.0, -0.1, 0.0)]).is_err());
        assert!(Duty::stated(vec![part(1.5, 0.1, 0.0), part(-0.5, 0.1, 0.0)]).is_err());
        assert!(Duty::steady(f64::NAN).is_err());
        assert!(Duty::steady(0.7).unwrap().check_friction(0.8).is_ok());
        assert!(Duty::steady(0.75).unwrap().check_friction(0.8).is_err());
    }
}
