//! What must hold for every history, weld and curve.

use std::f64::consts::{FRAC_PI_2, TAU};

use axlebow_strength::*;
use proptest::prelude::*;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

fn any_history() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(-200.0..200.0, 2..60)
}

/// Whole numbers, so that equal ranges meet.
fn any_stepped_history() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec((-5..5).prop_map(f64::from), 2..60)
}

/// Counts by range, least first.
fn counts_by_range(history: &[f64]) -> Vec<(f64, f64)> {
    let mut cycles: Vec<_> = rainflow(history).unwrap().iter().map(|c| (c.range, c.count)).collect();
    cycles.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut sums: Vec<(f64, f64)> = Vec::new();
    for (range, count) in cycles {
        match sums.last_mut() {
            Some(last) if last.0 == range => last.1 += count,
            _ => sums.push((range, count)),
        }
    }
    sums
}

/// How often a history turns, its ends included.
fn reversals(history: &[f64]) -> usize {
    let mut steps: Vec<f64> = history.windows(2).map(|pair| pair[1] - pair[0]).collect();
    steps.retain(|step| *step != 0.0);
    if steps.is_empty() {
        return 1;
    }
    2 + steps.windows(2).filter(|pair| pair[0].signum() != pair[1].signum()).count()
}

fn any_fillet() -> impl Strategy<Value = Fillet> {
    (0.002..0.02).prop_map(|leg| Fillet::with_leg(leg).unwrap())
}

prop_compose! {
    fn any_load()(along in -1e6..1e6, across in -1e6..1e6, away in -1e6..1e6) -> WeldLoad {
        WeldLoad { along, across, away }
    }
}

fn any_curve() -> impl Strategy<Value = LifeCurve> {
    (0..DETAILS.len()).prop_map(|i| DETAILS[i].curve().unwrap())
}

proptest! {
    #[test]
    fn every_range_between_reversals_is_counted_as_a_half(history in any_stepped_history()) {
        let total: f64 = rainflow(&history).unwrap().iter().map(|cycle| cycle.count).sum();
        prop_assert_eq!(total, 0.5 * (reversals(&history) - 1) as f64);
    }

    #[test]
    fn the_greatest_range_is_that_of_the_history(history in any_history()) {
        let greatest = rainflow(&history).unwrap().iter().map(|cycle| cycle.range).fold(0.0, f64::max);
        let high = history.iter().copied().fold(f64::MIN, f64::max);
        let low = history.iter().copied().fold(f64::MAX, f64::min);
        prop_assert_eq!(greatest, high - low);
    }

    #[test]
    fn a_history_upside_down_has_the_same_ranges(history in any_stepped_history()) {
        let turned: Vec<f64> = history.iter().map(|value| -value).collect();
        prop_assert_eq!(counts_by_range(&history), counts_by_range(&turned));
    }

    #[test]
    fn a_history_run_backwards_has_the_same_ranges(history in any_history()) {
        let backwards: Vec<f64> = history.iter().rev().copied().collect();
        prop_assert_eq!(counts_by_range(&history), counts_by_range(&backwards));
    }

    #[test]
    fn ranges_scale_with_the_history_and_means_shift_with_it(history in any_stepped_history()) {
        let changed: Vec<f64> = history.iter().map(|value| 4.0 * value + 8.0).collect();
        let (plain, other) = (rainflow(&history).unwrap(), rainflow(&changed).unwrap());
        prop_assert_eq!(plain.len(), other.len());
        for (a, b) in plain.iter().zip(&other) {
            prop_assert_eq!((4.0 * a.range, 4.0 * a.mean + 8.0, a.count), (b.range, b.mean, b.count));
        }
    }

    #[test]
    fn cycles_name_the_places_of_their_reversals(history in any_history()) {
        for cycle in rainflow(&history).unwrap() {
            prop_assert!(cycle.from < cycle.to);
            prop_assert_eq!((history[cycle.to] - history[cycle.from]).abs(), cycle.range);
        }
    }

    #[test]
    fn life_falls_as_the_range_grows_without_a_jump(curve in any_curve(), range in 1e6..600e6) {
        let (here, past) = (curve.cycles(range), curve.cycles(range * (1.0 + 1e-9)));
        prop_assert!(past <= here);
        // Only the cut-off jumps; every knee joins.
        prop_assert!(here.is_infinite() || past >= here * (1.0 - 1e-7));
    }

    #[test]
    fn range_and_life_undo_each_other(curve in any_curve(), cycles in 1e3..0.99e8) {
        let back = curve.cycles(curve.range(cycles));
        prop_assert!((back / cycles - 1.0).abs() < 1e-9, "{back} of {cycles}");
    }

    #[test]
    fn a_weld_gets_no_weaker_as_it_grows_or_turns_to_the_load(
        fillet in any_fillet(), angle in 0.0..FRAC_PI_2, growth in 1.0..2.0
    ) {
        let weld = AiscWeld::new(482.6e6, AiscBasis::FactoredLoads).unwrap();
        let larger = Fillet::with_leg(fillet.leg() * growth).unwrap();
        prop_assert!(weld.strength(&larger, angle) >= weld.strength(&fillet, angle) * (1.0 - 1e-12));
        let turned = (angle * 1.1).min(FRAC_PI_2);
        prop_assert!(weld.strength(&fillet, turned) >= weld.strength(&fillet, angle) * (1.0 - 1e-12));
    }

    #[test]
    fn more_load_uses_more_of_a_weld(fillet in any_fillet(), load in any_load(), growth in 1.0..3.0) {
        let (aisc, en) = (
            AiscWeld::new(482.6e6, AiscBasis::WorkingLoads).unwrap(),
            EnWeld::new(470e6, 0.9).unwrap(),
        );
        let used = |load: &WeldLoad| {
            let [equivalent, normal] = en.directional_checks(&fillet, load);
            [aisc.check(&fillet, load), en.simplified_check(&fillet, load), equivalent, normal]
                .map(|check| check.utilization())
        };
        for (more, less) in used(&load.times(growth)).into_iter().zip(used(&load)) {
            prop_assert!((more - growth * less).abs() <= 1e-9 * more);
        }
    }

    #[test]
    fn the_directional_method_never_asks_for_more_than_the_simplified_one(
        fillet in any_fillet(), load in any_load()
    ) {
        let en = EnWeld::new(470e6, 0.9).unwrap();
        let [equivalent, _] = en.directional_checks(&fillet, &load);
        prop_assert!(equivalent.utilization() <= en.simplified_check(&fillet, &load).utilization() * (1.0 + 1e-9));
    }

    #[test]
    fn a_wide_band_does_no_more_damage_than_a_narrow_one(low in 1.0..10.0, width in 0.5..20.0, level in 1e12..1e15) {
        let moments = StressSpectrum::new(vec![(low, level), (low + width, level)]).unwrap().moments();
        let curve = LifeCurve::through(71e6, 2e6, 3.0).unwrap();
        let wide = RangeDistribution::dirlik(&moments).damage_rate(&curve);
        prop_assert!(wide > 0.0);
        prop_assert!(wide <= RangeDistribution::narrow_band(&moments).damage_rate(&curve) * 1.01);
    }

    #[test]
    fn every_spectrum_does_some_damage_and_its_weights_sum_to_one(
        points in prop::collection::vec((0.1..8.0, 1e14..1e15), 2..7)
    ) {
        let mut frequency = 0.0;
        let points = points.into_iter().map(|(step, density)| {
            frequency += step;
            (frequency, density)
        });
        let ranges = RangeDistribution::dirlik(&StressSpectrum::new(points.collect()).unwrap().moments());
        let (weights, q, r) = ranges.coefficients();
        prop_assert!((weights.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        prop_assert!(q > 0.0 && r.is_finite(), "Q {q}, R {r}");
        let damage = ranges.damage_rate(&Detail::named("attachment-long").unwrap().curve().unwrap());
        prop_assert!(damage.is_finite() && damage > 0.0, "{damage}");
    }

    #[test]
    fn a_cut_off_takes_damage_away_and_a_partial_factor_adds_some(level in 1e12..1e15) {
        let moments = StressSpectrum::new(vec![(5.0, level), (15.0, level)]).unwrap().moments();
        let ranges = RangeDistribution::dirlik(&moments);
        let detail = Detail::named("attachment-long").unwrap().curve().unwrap();
        let endless = LifeCurve::through(56e6, 2e6, 3.0).unwrap();
        prop_assert!(ranges.damage_rate(&detail) <= ranges.damage_rate(&endless) * (1.0 + 1e-6));
        prop_assert!(ranges.damage_rate(&detail.clone().divided_by(1.35).unwrap()) >= ranges.damage_rate(&detail));
    }
}

/// A Gaussian history of 160 s, flat from 5 to 15 Hz, 200 points a second: sixteen pieces of cosines of random phase.
fn gaussian_history() -> Vec<f64> {
    const LINES: usize = 100;
    const POINTS: usize = 2000;
    let mut random = ChaCha8Rng::seed_from_u64(1);
    let amplitude = (2.0 * 2500.0 / LINES as f64).sqrt();
    let piece = |_| {
        let phases: [f64; LINES] =
            std::array::from_fn(|_| TAU * f64::from(random.next_u32()) / 2f64.powi(32));
        let line = |t: f64, k: usize| (TAU * (5.05 + 0.1 * k as f64) * t + phases[k]).cos();
        let value = |i: usize| amplitude * (0..LINES).map(|k| line(i as f64 / 200.0, k)).sum::<f64>();
        (0..POINTS).map(value).collect::<Vec<_>>()
    };
    (0..16).flat_map(piece).collect()
}

#[test]
fn counting_a_random_history_does_the_damage_that_its_spectrum_foretells() {
    // 160 s hold 1665 upcrossings. The cube of a Rayleigh range scatters by √(Γ(4)/Γ(5/2)² - 1) = 1.55 of its mean, so
    // their sum by 1.55/√1665 = 3.8 %. Three of that are allowed; the joints of the pieces and peaks between samples
    // move it by about 1 %.
    let curve = LifeCurve::through(71.0, 2e6, 3.0).unwrap();
    let counted = damage(&rainflow(&gaussian_history()).unwrap(), &curve) / 160.0;
    let moments = StressSpectrum::new(vec![(5.0, 250.0), (15.0, 250.0)]).unwrap().moments();
    let foretold = RangeDistribution::dirlik(&moments).damage_rate(&curve);
    assert!((counted / foretold - 1.0).abs() < 3.0 * 0.038, "{counted} of {foretold}");
}
