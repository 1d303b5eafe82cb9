//! Damage by Miner's sum.

use axlebow_units::Kind;

use super::{Cycle, LifeCurve};
use crate::Check;

const SOURCE: &str = "M. A. Miner, \"Cumulative damage in fatigue\", J. Appl. Mech. 12 (1945) A159-A164; EN \
     1993-1-9:2005, A.5 (from memory)";

/// Damage of counted cycles, the sum of n/N; a crack is expected at 1.
///
/// - `cycles`: ranges in Pa
///
/// Source: M. A. Miner, *J. Appl. Mech.* 12 (1945) A159-A164.
pub fn damage(cycles: &[Cycle], curve: &LifeCurve) -> f64 {
    cycles.iter().map(|cycle| cycle.count / curve.cycles(cycle.range)).sum()
}

/// How often a history can repeat before a crack is expected; infinite where it does no damage.
pub fn repeats_to_crack(cycles: &[Cycle], curve: &LifeCurve) -> f64 {
    damage(cycles, curve).recip()
}

/// Damage over the wanted life against 1.
pub fn damage_check(what: impl Into<String>, damage: f64) -> Check {
    Check::at_most(what, Kind::Ratio, damage, 1.0).sourced(SOURCE).advising(
        "lower the stress range, move or taper the end of the attached part, or choose a better detail",
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Verdict, rainflow};
    use approx::assert_relative_eq;

    #[test]
    fn a_steady_range_lasts_as_the_curve_says() {
        let curve = LifeCurve::through(71e6, 2e6, 3.0).unwrap();
        let cycles = rainflow(&[0.0, 71e6, 0.0]).unwrap();
        assert_relative_eq!(repeats_to_crack(&cycles, &curve), 2e6, max_relative = 1e-12);
        assert_eq!(damage_check("seat weld", 2e6 * damage(&cycles, &curve)).verdict(), Verdict::Passes);
        assert_eq!(damage_check("seat weld", 2.1e6 * damage(&cycles, &curve)).verdict(), Verdict::Fails);
    }

    #[test]
    fn ranges_below_the_cut_off_do_no_damage() {
        let curve = LifeCurve::through(71e6, 2e6, 3.0).unwrap().ending_at(5e6).unwrap();
        assert_eq!(repeats_to_crack(&rainflow(&[0.0, 10e6, 0.0]).unwrap(), &curve), f64::INFINITY);
    }
}
