//! Bearings with play: closed forms of the lean that they allow, and what must hold for any axle.

use crate::example::{self, axle, mirrored, wheel};
use approx::assert_relative_eq;
use axlebow_axle::{
    Axle, BearingOutcome, CaseOutcome, Ground, Ride, RideOutcome, STEEPEST_CUP, Side, Sides, TireLayout,
    flex, modes, ride, standard_cases,
};
use axlebow_road::{HaversineBump, Road, Track, Wheels};

fn loose(endplay: f64) -> Axle {
    let mut axle = axle();
    for side in Side::BOTH {
        axle.wheel_ends.of_mut(side).endplay = endplay;
    }
    axle
}

fn case(name: &str, axle: &Axle) -> CaseOutcome {
    let case = standard_cases(axle).into_iter().find(|case| case.name == name).unwrap();
    flex(axle, &[case]).unwrap().cases.remove(0)
}

fn bearing<'a>(outcome: &'a CaseOutcome, side: Side, place: &str) -> &'a BearingOutcome {
    outcome.bearings.iter().find(|own| own.side == side && own.place == place).unwrap()
}

/// 0.005 in of play over bearings 5 in apart let a wheel lean by 0.0573 degrees: the upper bound, where cups of 45
/// degrees turn all endplay into radial play. Arithmetic, 0.005/5 rad; the play is that of TMC RP 618.
#[test]
fn lean_matches_play_over_span_0_005_in_over_5_in() {
    let mut axle = loose(0.005 * 0.0254);
    for side in Side::BOTH {
        let end = axle.wheel_ends.of_mut(side);
        end.cup_angle = STEEPEST_CUP;
        (end.inner_bearing, end.outer_bearing) = (0.82, 0.82 + 5.0 * 0.0254);
    }
    let outcome = case("rated-load", &axle);
    for side in Side::BOTH {
        // The load is nearer to the outer bearing, so that this one rises into its play: the top leans in.
        let lean = outcome.wheels.of(side).split.clearance.to_degrees();
        assert!((lean + 0.0573).abs() < 0.00005, "{lean}");
        assert_relative_eq!(lean.to_radians(), -0.001, max_relative = 1e-8);
        assert_relative_eq!(bearing(&outcome, side, "outer").clearance, 0.005 * 0.0254, max_relative = 1e-12);
        assert_eq!(bearing(&outcome, side, "inner").clearance, 0.0);
    }
}

/// The thrust of the bearing that carries more opens it; see `axlebow_axle`'s module on bearing play.
#[test]
fn the_bearing_that_carries_more_has_the_play() {
    let clearance = 0.2e-3 * 15_f64.to_radians().tan();
    for (outset, place, sign) in [(0.02, "outer", -1.0), (-0.06, "inner", 1.0), (0.08, "outer", -1.0)] {
        let mut axle = loose(0.2e-3);
        let wheel = wheel(TireLayout::Single, outset);
        axle.wheels = Sides { left: wheel, right: wheel };
        let outcome = case("rated-load", &axle);
        for side in Side::BOTH {
            assert_eq!(bearing(&outcome, side, place).clearance, clearance, "{outset}");
            let lean = outcome.wheels.of(side).split.clearance;
            assert_relative_eq!(lean, sign * clearance / 0.11, max_relative = 1e-8);
        }
    }
}

#[test]
fn split_sums_and_bearings_balance_in_every_case_with_play() {
    for ground in [Ground::Rolling, Ground::Standing] {
        let mut axle = loose(0.4e-3);
        axle.ground = ground;
        axle.wheel_ends.right.endplay = 0.1e-3;
        axle.seats.right.suspension = example::trailing_arm();
        axle.wheels.left = wheel(TireLayout::Single, 0.05);
        for outcome in flex(&axle, &standard_cases(&axle)).unwrap().cases {
            for side in Side::BOTH {
                let wheel = outcome.wheels.of(side);
                assert_relative_eq!(wheel.split.sum(), wheel.camber_change, max_relative = 1e-8);
                assert!(wheel.split.clearance != 0.0, "{}", outcome.name);
                let own = outcome.bearings.iter().filter(|own| own.side == side);
                let sums = own.fold([0.0; 2], |sum, own| [sum[0] + own.vertical, sum[1] + own.fore_aft]);
                let weight = (75.0 + axle.wheels.of(side).mass()) * axlebow_axle::STANDARD_GRAVITY;
                assert_relative_eq!(sums[0], wheel.vertical_load - weight, max_relative = 1e-8);
                // Hub and wheels push on by their own mass as they slow down.
                let braked = if outcome.name == "braking" { 0.5 * weight } else { 0.0 };
                assert_relative_eq!(
                    sums[1],
                    wheel.longitudinal_load + braked,
                    epsilon = 1e-4,
                    max_relative = 1e-8
                );
            }
            assert!(outcome.equilibrium_residual < 1e-9, "{} {}", outcome.name, outcome.equilibrium_residual);
        }
    }
}

#[test]
fn play_turns_the_wheel_the_way_that_braking_pushes_it() {
    // On single tires: duals share load and braking force anew as the wheel leans.
    let single = wheel(TireLayout::Single, 0.0);
    let on_singles = |axle: Axle| Axle { wheels: Sides { left: single, right: single }, ..axle };
    let (tight, loose) = (case("braking", &on_singles(axle())), case("braking", &on_singles(loose(0.5e-3))));
    // The play lies along the bearing's force.
    let own = bearing(&loose, Side::Left, "outer");
    let (toe, camber) =
        (loose.wheels.left.toe_change - tight.wheels.left.toe_change, loose.wheels.left.split.clearance);
    assert!(toe < 0.0 && camber < 0.0, "{toe} {camber}");
    assert_relative_eq!(toe / camber, -own.fore_aft / own.vertical, max_relative = 1e-3);
}

#[test]
fn no_play_is_no_change_and_little_play_little() {
    let tight = case("side-load", &axle());
    let mut flat = loose(0.5e-3);
    for side in Side::BOTH {
        flat.wheel_ends.of_mut(side).cup_angle = 0.0;
    }
    let mut flat = case("side-load", &flat);
    flat.description.clone_from(&tight.description);
    assert_eq!(flat, tight);
    let little = case("side-load", &loose(1e-10));
    for side in Side::BOTH {
        let (a, b) = (little.wheels.of(side).camber_change, tight.wheels.of(side).camber_change);
        assert_relative_eq!(a, b, epsilon = 1e-8);
    }
}

#[test]
fn a_mirrored_axle_with_play_gives_the_mirrored_answer() {
    let mut axle = loose(0.3e-3);
    axle.wheels.left = wheel(TireLayout::Single, -0.06);
    axle.wheel_ends.right.endplay = 0.1e-3;
    let (plain, mirror) = (case("braking", &axle), case("braking", &mirrored(&axle)));
    for (a, b) in [(&plain.wheels.left, &mirror.wheels.right), (&plain.wheels.right, &mirror.wheels.left)] {
        assert_relative_eq!(a.camber_change, b.camber_change, max_relative = 1e-9);
        assert_relative_eq!(a.split.clearance, b.split.clearance, max_relative = 1e-8);
    }
}

/// As a side force turns the load of the right outer bearing from up to down, the hub crosses the gap, where the
/// bearing has no stiffness and carries nothing; a tight one carries nothing at one side force only. Its cups are
/// flat, so that the side force outweighs the thrust of the inner bearing and leaves the outer one the play.
#[test]
fn within_its_play_a_bearing_carries_nothing() {
    let free = |endplay: f64| {
        let of = |step: u32| {
            let mut axle = loose(endplay);
            axle.wheel_ends.right.cup_angle = 5_f64.to_radians();
            axle.loading.side_force_ratio = 0.14 + 1e-4 * f64::from(step);
            bearing(&case("side-load", &axle), Side::Right, "outer").radial
        };
        (0..400).filter(|step| of(*step) < 0.1).count()
    };
    let (tight, some, twice) = (free(0.0), free(2e-3), free(4e-3));
    assert!(tight <= 1 && some > 10, "{tight} {some}");
    // The range of side forces grows with the gap; counted in steps, it is known to one.
    assert!(twice.abs_diff(2 * some) <= 2, "{some} {twice}");
}

fn over(axle: &Axle, road: Road, seconds: f64) -> RideOutcome {
    let asked = Ride {
        speed: 15.0,
        from: -1.0,
        to: 15.0 * seconds,
        axle_load: axle.loading.rated_load,
        ..example::ride_over(road)
    };
    ride(axle, &asked).unwrap()
}

fn bump(height: f64, wheels: Wheels) -> Road {
    Road::new(HaversineBump::new(height, 1.0).unwrap(), wheels).unwrap()
}

#[test]
fn a_ride_with_play_starts_at_the_static_case() {
    let mut axle = loose(0.4e-3);
    axle.wheels.left = wheel(TireLayout::Single, -0.06);
    let flat = over(&axle, Road { left: Track::flat(), right: Track::flat() }, 0.5);
    let rated = case("rated-load", &axle);
    for side in Side::BOTH {
        let (moving, still) = (flat.wheels.of(side), rated.wheels.of(side));
        assert_relative_eq!(moving.load_at_rest, still.vertical_load, max_relative = 1e-7);
        // Beam weights act through consistent loads there and consistent masses here.
        assert_relative_eq!(moving.camber_at_rest, still.camber_change, max_relative = 1e-4);
        assert!(moving.camber_peak_to_peak < 1e-9);
    }
}

#[test]
fn wheels_that_leave_the_road_cross_the_play() {
    let (tight, loose) = (axle(), loose(0.5e-3));
    let hard = |axle: &Axle, wheels| over(axle, bump(0.12, wheels), 1.5);
    let both = Wheels::Both { lag: 0.0 };
    let (before, after) = (hard(&tight, both), hard(&loose, both));
    assert_eq!(after.partial, None);
    assert!(after.wheels.left.time_off_road > 0.0);
    assert!(after.wheels.left.camber_peak_to_peak > before.wheels.left.camber_peak_to_peak);
    assert!(after.energy_drift < 1e-2, "{}", after.energy_drift);
    let (left, right) = (hard(&loose, Wheels::Left), hard(&loose, Wheels::Right));
    assert_relative_eq!(left.wheels.left.largest_load, right.wheels.right.largest_load, max_relative = 1e-6);
}

/// Pressed up against its race, a hub keeps the bearing's stiffness up and down and loses some of it fore and aft.
#[test]
fn modes_are_those_of_the_loaded_rest() {
    let rated = axle().loading.rated_load;
    let (tight, loose) = (modes(&axle(), rated, 14).unwrap(), modes(&loose(0.5e-3), rated, 14).unwrap());
    for (a, b) in tight.modes.iter().zip(&loose.modes) {
        assert!(b.frequency < a.frequency * (1.0 + 1e-9), "{} {}", a.name, b.name);
        if a.motion.vertical > 0.99 && b.motion.vertical > 0.99 {
            assert_relative_eq!(a.frequency, b.frequency, max_relative = 1e-6);
        }
    }
    let lower = |(a, b): (&axlebow_axle::ModeOutcome, &axlebow_axle::ModeOutcome)| {
        b.frequency < a.frequency * (1.0 - 1e-4)
    };
    assert!(tight.modes.iter().zip(&loose.modes).any(lower));
}
