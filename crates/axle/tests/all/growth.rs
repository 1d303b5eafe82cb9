//! Cups that grow on an axle.

use axlebow_axle::tread::{Duty, Tread};
use axlebow_axle::{Axle, GrowthOptions, GrowthOutcome, HeldSpeed, Side, growth, standard_cases};

use crate::example;

fn options(axle: &Axle) -> GrowthOptions {
    GrowthOptions {
        case: standard_cases(axle).swap_remove(0),
        speeds: [20.0, 30.0],
        steps: 3,
        counts: [1, 4],
        held: HeldSpeed { mean: 25.0, deviation: 0.0 },
        heights: Vec::new(),
    }
}

/// The example on flat treads under a duty, its seats with a damper.
fn axle(side_force: f64, damping: f64) -> Axle {
    let mut axle = example::axle().in_duty(Duty::steady(side_force).unwrap());
    for side in Side::BOTH {
        let wheel = axle.wheels.of_mut(side);
        let tread = Tread { crown: 0.0, ..*wheel.tread() };
        *wheel = wheel.with_tread(tread).unwrap();
        let seat = axle.seats.of_mut(side);
        (seat.damping, seat.rebound_damping) = (damping, damping);
    }
    axle
}

fn grown(axle: &Axle) -> GrowthOutcome {
    growth(axle, &options(axle)).unwrap()
}

#[test]
fn a_mirrored_axle_grows_the_same_waves_on_both_ends_and_the_map_holds_the_speed_held() {
    let outcome = grown(&axle(0.03, 12e3));
    let (left, right) = (&outcome.wheels.left, &outcome.wheels.right);
    for i in 0..4 {
        let (one, other) = (left.map[i][1], right.map[i][1]);
        assert!((one - other).abs() < 1e-6 * one.abs(), "{one} {other}");
        assert!((one - left.held[i].wave.rate).abs() < 1e-9 * one.abs(), "{one}");
    }
    assert_eq!(outcome.worst(), Side::Left);
}

/// A spread of speeds takes the mean of what each speed does: it lies between the least and the greatest.
#[test]
fn a_spread_of_speeds_lies_within_what_they_do() {
    let axle = axle(0.06, 2e3);
    let spread = HeldSpeed { mean: 25.0, deviation: 1.5 };
    let over = growth(&axle, &GrowthOptions { held: spread, ..options(&axle) }).unwrap();
    let each: Vec<f64> = (0..=30)
        .map(|i| {
            let held = HeldSpeed { mean: 20.5 + 0.3 * f64::from(i), deviation: 0.0 };
            growth(&axle, &GrowthOptions { held, steps: 1, counts: [1, 1], ..options(&axle) })
                .unwrap()
                .wheels
                .left
                .held[0]
                .wave
                .rate
        })
        .collect();
    let rate = over.wheels.left.held[0].wave.rate;
    let (least, most) = each.iter().fold((f64::MAX, f64::MIN), |(a, b), rate| (a.min(*rate), b.max(*rate)));
    assert!(least < rate && rate < most, "{least} {rate} {most}");
}

/// Where the tire levels its waves and the axle grows them, a damper ends it: below the threshold they grow, above not.
#[test]
fn waves_grow_below_the_threshold_damping_only() {
    let heavy = 0.09;
    let outcome = grown(&axle(heavy, 0.0));
    let threshold = outcome.threshold_damping.expect("a damper that ends it");
    assert!(threshold > 500.0, "{threshold}");
    let most = |damping: f64| grown(&axle(heavy, damping)).wheels.left.winner().wave.rate;
    assert!(most(0.95 * threshold) > 0.0 && most(1.05 * threshold) < 0.0, "{threshold}");
    assert!(outcome.wheels.left.held.iter().all(|held| held.hub_held < 0.0));
    // A light duty grows waves on an immovable hub, where no damper helps.
    assert_eq!(grown(&axle(0.01, 12e3)).threshold_damping, None);
}

#[test]
fn options_out_of_range_are_refused() {
    let axle = axle(0.03, 12e3);
    let good = options(&axle);
    let bad = [
        (GrowthOptions { speeds: [0.0, 30.0], ..good.clone() }, "lowest speed"),
        (GrowthOptions { speeds: [30.0, 20.0], ..good.clone() }, "highest speed"),
        (GrowthOptions { steps: 0, ..good.clone() }, "size of the map is 0 speeds"),
        (GrowthOptions { counts: [0, 4], ..good.clone() }, "least count is 0 cups"),
        (GrowthOptions { counts: [5, 4], ..good.clone() }, "highest count is 4 cups"),
        (
            GrowthOptions { held: HeldSpeed { mean: 0.0, deviation: 0.0 }, ..good.clone() },
            "mean of the speeds held",
        ),
        (
            GrowthOptions { held: HeldSpeed { mean: 20.0, deviation: 7.0 }, ..good.clone() },
            "standard deviation",
        ),
    ];
    for (options, thing) in bad {
        let error = growth(&axle, &options).unwrap_err().to_string();
        assert!(error.contains(thing), "{error}");
    }
}

/// The closed loop in time against the eigenvalues on the whole axle, within 0.5 %: reduced bases to 150 Hz on one side and 1.5
/// times the wave's frequency on the other, a turn in 360 steps. A wave of 20 um is small; a shoulder 12 mm high and low is
/// off the road for half of the turn and hardly grows.
#[test]
fn a_low_wave_grows_in_time_as_by_eigenvalue_and_a_high_one_hardly() {
    let axle = axle(0.03, 12e3);
    let options = GrowthOptions { heights: vec![2e-5, 0.012], ..options(&axle) };
    let in_time = growth(&axle, &options).unwrap().in_time.unwrap();
    let [low, high] = in_time.waves[..] else { panic!("two heights") };
    assert!((low.rate - in_time.small).abs() < 0.005 * in_time.small.abs(), "{in_time:?}");
    assert!((0.0..0.1 * low.rate).contains(&high.rate), "{in_time:?}");
    assert_eq!((low.off_road, low.bearing_loose), (0.0, None));
}

/// Without dampers and lightly loaded a high wave throws the tires off the road, and a loose bearing off its rollers.
#[test]
fn a_high_wave_under_a_light_load_leaves_the_road_and_a_loose_bearing_opens() {
    let mut axle = axle(0.06, 0.0);
    axle.loading.rated_load = 18e3;
    for side in Side::BOTH {
        axle.wheel_ends.of_mut(side).endplay = 5e-4;
    }
    let held = HeldSpeed { mean: 28.0, deviation: 0.0 };
    let options = GrowthOptions { held, counts: [2, 2], heights: vec![1e-5, 0.02], ..options(&axle) };
    let in_time = growth(&axle, &options).unwrap().in_time.unwrap();
    let [low, high] = in_time.waves[..] else { panic!("two heights") };
    assert_eq!((low.off_road, low.bearing_loose), (0.0, Some(0.0)));
    assert!(high.off_road > 0.0 && high.bearing_loose.is_some_and(|share| share > 0.0), "{in_time:?}");
}
