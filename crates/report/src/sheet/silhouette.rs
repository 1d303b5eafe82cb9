//! A stiffener as it is seen from the rear.

use axlebow_axle::{Axle, Stiffener};
use axlebow_sections::Profile;

/// Steps along an end that runs out.
const STEPS: usize = 8;

/// A stiffener as it is seen from the rear.
#[derive(Debug, Clone, PartialEq)]
pub struct Silhouette {
    /// The stiffener.
    pub own: Stiffener,
    /// Lowest point at its middle, above the axle's line, m.
    pub low: f64,
    /// Highest point at its middle, m.
    pub high: f64,
    /// Where it is welded, m.
    pub foot: f64,
    /// Whether the axle is before it.
    pub hidden: bool,
    /// Whether it is before the axle.
    pub covers: bool,
}

impl Silhouette {
    /// A stiffener as it sits in the middle of its length; none if it does not sit there, which the model's checks refuse.
    pub fn of(axle: &Axle, own: &Stiffener) -> Option<Self> {
        let profile = profile_at(axle, 0.5 * (own.from + own.to));
        let seated = own.on(&profile).ok()?;
        let [[_, _], [low, high]] = seated.outline.reach();
        let beside = 0.5 * profile.height();
        let within = high < beside && low > -beside;
        let forward = seated.area.centroid[0];
        let (hidden, covers) = (within && forward > 1e-6, within && forward < -1e-6);
        Some(Silhouette { own: own.clone(), low, high, foot: seated.feet[0][1], hidden, covers })
    }

    /// Its lower and its upper edge from right to left: position and height, m. At ends that run out the edge away from the
    /// axle comes down to the other one; seen from above or all round, neither does.
    pub fn edges(&self) -> [Vec<[f64; 2]>; 2] {
        let up = self.own.clock.cos();
        let stays = match up {
            _ if self.own.form.goes_round() => Some(0.0),
            up if up.abs() < 0.5 => None,
            up => Some(if up > 0.0 { self.low } else { self.high }),
        };
        let height = |edge: f64, share: f64| stays.map_or(edge, |stays| stays + share * (edge - stays));
        [self.low, self.high]
            .map(|edge| run_out(&self.own).into_iter().map(|(y, share)| [y, height(edge, share)]).collect())
    }

    /// Lengths of weld in sight, from right to left, m.
    pub fn welds(&self) -> Vec<[f64; 2]> {
        let in_front = !self.own.weld.both_sides && self.own.clock.cos().abs() > 0.5;
        if in_front { Vec::new() } else { self.own.weld_runs() }
    }
}

/// Section of the axle at a position, m.
pub(super) fn profile_at(axle: &Axle, y: f64) -> Profile {
    let pieces = axle.body.pieces();
    let own = pieces.iter().find(|piece| y.abs() <= piece.to).unwrap_or(&pieces[pieces.len() - 1]);
    own.profile_at(y.abs())
}

/// Positions along a stiffener with the share of its section that is there.
fn run_out(own: &Stiffener) -> Vec<(f64, f64)> {
    let length = own.end.length();
    let there: Vec<f64> = (0..=STEPS).map(|step| length * step as f64 / STEPS as f64).collect();
    let right = there.iter().map(|distance| (own.from + distance, own.end.share(*distance)));
    let left = there.iter().rev().map(|distance| (own.to - distance, own.end.share(*distance)));
    right.chain(left).collect()
}
