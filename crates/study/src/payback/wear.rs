//! From tire faces to when tires come off.
//!
//! ```text
//! L_p = c ((1 − s) + s m/w_p)       distance at which the tire at position p comes off today
//! L'_p = c ((1 − s) + s m/w'_p)     and with the remedy
//! ```
//!
//! s the share of removals that the wear of a shoulder decides, w_p the wear of the worst rib of that tire over the depth of its
//! tread, m its mean over the positions, c such that the tires come off at the distance D of the fleet: `Σ 1/L_p = N/D`. The
//! other removals come at the same distance before and after. Where one tire in the place of another has another life, tires
//! come off as often as the mean of the lives says (renewal theory; W. Feller, An Introduction to Probability Theory and Its
//! Applications, vol. 2, chapter XI, from memory). A tire that a shoulder no longer takes off is longer on the road for other
//! things to do so. That is left out: if all causes ran beside one another at constant hazards, it would take at most
//! `s (1 − s)(w/w' − 1)²` of the distance.
//!
//! Even wear of the tread is the bound: the worst rib cannot wear slower than the mean of its tire does.

use axlebow_axle::{Axle, AxleError, LoadCase, Side, Sides, TireFace, TireSlot, tires};

use super::terms::TireTerms;

/// Where a tire of an axle is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TirePosition {
    /// Its side.
    pub side: Side,
    /// Which tire of that side.
    pub slot: TireSlot,
}

/// How fast the tire at a position wears, for each meter of tread depth; relative.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PositionWear {
    /// The position.
    pub position: TirePosition,
    /// Wear of its worst rib today.
    pub today: f64,
    /// The same with the remedy, as the model says.
    pub remedied: f64,
    /// Mean wear of its ribs with the remedy: what the worst would have if the tread wore evenly.
    pub even: f64,
}

/// What becomes of tires while they are on an axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rotation {
    /// Each stays where it was fitted.
    None,
    /// Each runs the same distance at every position; a wheel that moves between the outside and the inside of a dual is
    /// turned round, so that its inner shoulder comes to stand outside (common practice, no source).
    Positions,
}

/// What a remedy changes at an axle.
#[derive(Debug, Clone, PartialEq)]
pub struct AxleChange {
    /// Mass of the remedied axle with its wheels less that of today's, kg.
    pub mass: f64,
    /// Wear at each position.
    pub wear: Vec<PositionWear>,
}

/// Why two axles cannot be compared by their tires.
#[non_exhaustive]
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PaybackError {
    /// An axle cannot be solved.
    #[error("{0}")]
    Axle(#[from] AxleError),
    /// The axles have different numbers of tires.
    #[error(
        "the axle has {today} tires today and {remedied} with the remedy; accepted: as many before and after, because a price of \
         tires is that of one kind"
    )]
    Tires {
        /// Tires today.
        today: usize,
        /// Tires with the remedy.
        remedied: usize,
    },
    /// A tire does not wear, so that nothing can be said of its distance.
    #[error("the {} does not wear in the load case; accepted: a `case` that loads every tire", .position.slot.of_side(.position.side.word()))]
    NoWear {
        /// Where it is.
        position: TirePosition,
    },
}

impl AxleChange {
    /// What a remedied axle changes under a load case.
    ///
    /// Arguments: the axle of today and the remedied one, each with the load case as its model has it; `rotation` of the tires.
    ///
    /// # Errors
    /// Those of [`axlebow_axle::tires`]; axles with different numbers of tires; a tire that does not wear.
    pub fn between(
        [today, remedied]: [(&Axle, &LoadCase); 2],
        mass: f64,
        rotation: Rotation,
    ) -> Result<AxleChange, PaybackError> {
        let [before, after] = [rib_rates(today)?, rib_rates(remedied)?];
        if before.len() != after.len() {
            return Err(PaybackError::Tires { today: before.len(), remedied: after.len() });
        }
        let [before, after] = [rotation.of(before), rotation.of(after)];
        let both = before.into_iter().zip(after);
        let wear = both.map(|((position, before), (_, after))| {
            let wear =
                PositionWear { position, today: worst(&before), remedied: worst(&after), even: mean(&after) };
            let wears = wear.today > 0.0 && wear.remedied > 0.0;
            if wears { Ok(wear) } else { Err(PaybackError::NoWear { position }) }
        });
        Ok(AxleChange { mass, wear: wear.collect::<Result<_, _>>()? })
    }

    /// Wear of the worst rib of all positions with the remedy, as the model says, over that of today.
    pub fn worst_ratio(&self) -> f64 {
        let most = |of: fn(&PositionWear) -> f64| self.wear.iter().map(of).fold(0.0, f64::max);
        most(|own| own.remedied) / most(|own| own.today)
    }

    /// Distances at which the tires come off, of each position today and with the remedy, m.
    pub(crate) fn distances(&self, terms: &TireTerms) -> Vec<[f64; 2]> {
        let TireTerms { shoulder_share: s, removal_distance, wear_effect, .. } = *terms;
        let count = self.wear.len() as f64;
        let m = self.wear.iter().map(|own| own.today).sum::<f64>() / count;
        let life = |wear: f64| (1.0 - s) + s * m / wear;
        let c = removal_distance * self.wear.iter().map(|own| life(own.today).recip()).sum::<f64>() / count;
        self.wear
            .iter()
            .map(|own| [own.today, own.expected(wear_effect)].map(|wear| c * life(wear)))
            .collect()
    }
}

impl PositionWear {
    /// Wear of the worst rib with a remedy that does `effect` times what the model says, but never less than even wear of the
    /// tread, unless today's is less.
    fn expected(&self, effect: f64) -> f64 {
        let floor = self.even.min(self.today);
        (self.today - effect * (self.today - self.remedied)).max(floor)
    }
}

/// Wear of the ribs of a tire, over the depth of its tread.
type Ribs = (TirePosition, Vec<f64>);

/// Wear of every rib of every tire of an axle.
fn rib_rates((axle, case): (&Axle, &LoadCase)) -> Result<Vec<Ribs>, AxleError> {
    let outcome = tires(axle, std::slice::from_ref(case))?;
    let wheels: &Sides<TireFace> = &outcome.cases[0].wheels;
    let of_side = |side: Side| {
        let depth = axle.wheels.of(side).tread().depth;
        let all = &wheels.of(side).worn.tires;
        all.iter().enumerate().map(move |(tire, worn)| {
            let ribs = worn.ribs.iter().map(|rib| rib.wear / depth).collect();
            (TirePosition { side, slot: TireSlot::of(tire, all.len()) }, ribs)
        })
    };
    Ok(Side::BOTH.into_iter().flat_map(of_side).collect())
}

impl Rotation {
    /// The ribs of each position as tires that are so rotated wear.
    fn of(self, all: Vec<Ribs>) -> Vec<Ribs> {
        if self == Rotation::None {
            return all;
        }
        let ribs = all.iter().map(|(_, ribs)| ribs.len()).min().unwrap_or(0);
        // The outer wheel of a dual is the inner one turned round.
        let rib = |(position, own): &Ribs, rib: usize| {
            let turned = position.slot == TireSlot::Outer;
            own[if turned { own.len() - 1 - rib } else { rib }]
        };
        let shared: Vec<f64> =
            (0..ribs).map(|at| all.iter().map(|own| rib(own, at)).sum::<f64>() / all.len() as f64).collect();
        all.iter().map(|(position, _)| (*position, shared.clone())).collect()
    }
}

fn worst(ribs: &[f64]) -> f64 {
    ribs.iter().copied().fold(0.0, f64::max)
}

fn mean(ribs: &[f64]) -> f64 {
    ribs.iter().sum::<f64>() / ribs.len() as f64
}

#[cfg(test)]
mod tests {
    use approx::assert_relative_eq;

    use super::*;

    const OUTER: TirePosition = TirePosition { side: Side::Left, slot: TireSlot::Outer };
    const INNER: TirePosition = TirePosition { side: Side::Left, slot: TireSlot::Inner };

    fn terms(shoulder_share: f64, wear_effect: f64) -> TireTerms {
        TireTerms {
            new: 500.0,
            retread: 200.0,
            retreads: 2,
            casing: 60.0,
            fitting: 40.0,
            removal_distance: 200e6,
            shoulder_share,
            wear_effect,
        }
    }

    fn change(wear: [[f64; 3]; 2]) -> AxleChange {
        let own =
            |position, [today, remedied, even]: [f64; 3]| PositionWear { position, today, remedied, even };
        AxleChange { mass: 0.0, wear: vec![own(OUTER, wear[0]), own(INNER, wear[1])] }
    }

    /// Wear 1 and 2, all removals by a shoulder: lives as 2 to 1, 1/L + 1/(2L) = 2/D, so L = 3/4 D and 3/2 D; halved wear of
    /// the inner tire doubles its life.
    #[test]
    fn tires_come_off_at_the_distance_of_the_fleet_and_last_as_they_wear() {
        let own = change([[1.0, 1.0, 0.5], [2.0, 1.0, 0.5]]).distances(&terms(1.0, 1.0));
        assert_relative_eq!(own[0][0], 300e6, max_relative = 1e-12);
        assert_relative_eq!(own[1][0], 150e6, max_relative = 1e-12);
        assert_relative_eq!(own[0][1], 300e6, max_relative = 1e-12);
        assert_relative_eq!(own[1][1], 300e6, max_relative = 1e-12);
    }

    /// A share of 0.4: m/w = 1.5 and 0.75, lives 0.6 + 0.6 = 1.2 and 0.6 + 0.3 = 0.9; c = D (1/1.2 + 1/0.9)/2.
    #[test]
    fn only_the_share_that_a_shoulder_decides_moves() {
        let own = change([[1.0, 1.0, 0.5], [2.0, 1.0, 0.5]]).distances(&terms(0.4, 1.0));
        let c = 200e6 * 0.5 * (1.0 / 1.2 + 1.0 / 0.9);
        assert_relative_eq!(own[1][0], 0.9 * c, max_relative = 1e-12);
        assert_relative_eq!(own[1][1], 1.2 * c, max_relative = 1e-12);
        assert_relative_eq!(1.0 / own[0][0] + 1.0 / own[1][0], 2.0 / 200e6, max_relative = 1e-12);
    }

    #[test]
    fn even_wear_bounds_what_a_remedy_does_and_a_worse_axle_is_not_bounded() {
        let own = PositionWear { position: INNER, today: 2.0, remedied: 1.6, even: 1.5 };
        assert_eq!(own.expected(0.0), 2.0);
        assert_relative_eq!(own.expected(1.0), 1.6);
        assert_eq!(own.expected(10.0), 1.5);
        let worse = PositionWear { remedied: 2.4, even: 2.2, ..own };
        assert_relative_eq!(worse.expected(0.5), 2.2);
        assert_relative_eq!(worse.expected(2.0), 2.8);
        assert_eq!(worse.expected(0.0), 2.0);
    }

    #[test]
    fn rotated_tires_share_the_wear_and_the_outer_one_is_turned_round() {
        let all = vec![(OUTER, vec![1.0, 2.0, 9.0]), (INNER, vec![5.0, 4.0, 3.0])];
        assert_eq!(Rotation::None.of(all.clone()), all);
        let shared = Rotation::Positions.of(all);
        assert_eq!(shared[0].1, [7.0, 3.0, 2.0]);
        assert_eq!(shared[1].1, shared[0].1);
        let single = |side| TirePosition { side, slot: TireSlot::Single };
        let singles = vec![(single(Side::Left), vec![1.0, 3.0]), (single(Side::Right), vec![5.0, 5.0])];
        assert_eq!(Rotation::Positions.of(singles)[1].1, [3.0, 4.0]);
    }

    #[test]
    fn the_worst_rib_of_all_positions_is_compared() {
        assert_eq!(change([[1.0, 1.5, 0.5], [2.0, 1.0, 0.5]]).worst_ratio(), 0.75);
    }

    /// (500 + 2 · 200 − 60)/3 + 40 = 320.
    #[test]
    fn a_life_costs_its_share_of_casing_and_retreads() {
        assert_eq!(terms(1.0, 1.0).cost_of_a_life(), 320.0);
    }
}
