//! Vibration of a whole axle: what must hold for any axle, and what the trade sees.

use crate::example::{self, axle, mirrored, wheel};
use approx::assert_relative_eq;
use axlebow_axle::{Axle, ModesOutcome, STANDARD_GRAVITY, Side, Sides, TireLayout, modes};

fn found(axle: &Axle) -> ModesOutcome {
    modes(axle, axle.loading.rated_load, 12).unwrap()
}

fn frequency(outcome: &ModesOutcome, name: &str) -> f64 {
    let named = outcome.modes.iter().find(|mode| mode.name == name);
    named.unwrap_or_else(|| panic!("{name} among {:?}", names(outcome))).frequency
}

fn names(outcome: &ModesOutcome) -> Vec<(&str, f64)> {
    outcome.modes.iter().map(|mode| (mode.name.as_str(), mode.frequency)).collect()
}

#[test]
fn no_mode_is_missed_and_every_energy_is_whole() {
    let outcome = found(&axle());
    assert_eq!(outcome.found_below, outcome.counted_below);
    for mode in &outcome.modes {
        let strain = mode.strain;
        let strain = strain.beam + strain.seats + strain.bearings + strain.tires + strain.rest_of_vehicle;
        let motion = mode.motion;
        let kinetic = motion.vertical + motion.fore_aft + motion.lateral + motion.twist + motion.body;
        assert_relative_eq!(strain, 1.0, max_relative = 1e-7);
        assert_relative_eq!(kinetic, 1.0, max_relative = 1e-7);
        assert!(mode.residual < 1e-6, "{} {}", mode.name, mode.residual);
    }
}

/// A stiff axle on tires is the two-mass vehicle of the books (T. D. Gillespie, Fundamentals of Vehicle
/// Dynamics, SAE 1992, ch. 5; from memory): `(Ks + Kt − mu ω²)(Ks − ms ω²) = Ks²`.
#[test]
fn bounce_and_hop_match_the_two_mass_vehicle() {
    let mut axle = axle();
    let single = wheel(TireLayout::Single, 0.0);
    axle.wheels = Sides { left: single, right: single };
    // Rigid against tires and springs: a thousandfold modulus leaves a thousandth of the flexibility.
    let stiff = axlebow_sections::Material::new("stiff", 200e12, 0.3, 7850.0).unwrap();
    let spindle = axlebow_axle::Spindle {
        material: stiff.clone(),
        steps: vec![axlebow_axle::SpindleStep { length: 0.21, profile: example::bar(0.09), fillet: None }],
    };
    axle.body = axlebow_axle::Body::trailer_tube(example::tube(0.127, 0.0127), 1.6, stiff, &spindle).unwrap();
    for side in Side::BOTH {
        example::stiffen_bearings(axle.wheel_ends.of_mut(side), 1e12);
    }
    let outcome = found(&axle);
    let (ks, kt) = (2.0 * 1.5e6, 2.0 * 0.9e6);
    let unsprung = axle.unsprung_mass();
    let sprung = axle.loading.rated_load / STANDARD_GRAVITY - unsprung;
    let (a, b) = (sprung * unsprung, -(ks * unsprung + (ks + kt) * sprung));
    let root = (b * b - 4.0 * a * ks * kt).sqrt();
    let hertz = |value: f64| value.sqrt() / std::f64::consts::TAU;
    // What bends is a thousandth of the tires' give and less.
    let bounce = hertz((-b - root) / (2.0 * a));
    let hop = hertz((-b + root) / (2.0 * a));
    assert_relative_eq!(frequency(&outcome, "body bounce"), bounce, max_relative = 1e-3);
    assert_relative_eq!(frequency(&outcome, "wheel hop"), hop, max_relative = 1e-3);
}

/// Wheel hop lies at some 8 to 15 Hz: common practice, no source.
#[test]
fn the_trades_modes_are_there_in_the_trades_order() {
    let outcome = found(&axle());
    let (bounce, hop) = (frequency(&outcome, "body bounce"), frequency(&outcome, "wheel hop"));
    let bow = frequency(&outcome, "vertical bow");
    assert!(bounce < hop && hop < bow, "{:?}", names(&outcome));
    assert!((1.0..4.0).contains(&bounce) && (6.0..20.0).contains(&hop), "{:?}", names(&outcome));
}

/// Rayleigh: a softer part lowers every frequency, a mass raises none.
#[test]
fn softer_bearings_and_heavier_hubs_raise_no_frequency() {
    let plain = found(&axle());
    let mut softer = axle();
    let mut heavier = axle();
    for side in Side::BOTH {
        example::stiffen_bearings(softer.wheel_ends.of_mut(side), 1e8);
        heavier.wheel_ends.of_mut(side).hub_mass = 120.0;
    }
    // The axle load is given, so that a heavier hub is taken from the body; hold the body's mass instead.
    let load = heavier.loading.rated_load + 90.0 * STANDARD_GRAVITY;
    let heavier = modes(&heavier, load, 12).unwrap();
    for changed in [found(&softer), heavier] {
        for (new, old) in changed.modes.iter().zip(&plain.modes) {
            assert!(new.frequency <= old.frequency * (1.0 + 1e-9), "{} {}", new.name, old.name);
        }
    }
}

/// A body that leans puts its weight beside the axle, as a spring of `-W h` would: with as much roll stiffness of the rest of
/// the vehicle the two leave nothing, and by itself it takes from what the rest of the vehicle has, here nothing.
#[test]
fn the_weight_of_a_leaning_body_counts_with_the_rest_of_the_vehicle() {
    let mut axle = axle();
    let rest = |axle: &Axle| -> Vec<f64> {
        found(axle).modes.iter().map(|mode| mode.strain.rest_of_vehicle).collect()
    };
    axle.body_roll_stiffness = 0.0;
    let alone = rest(&axle);
    assert!(alone.iter().all(|share| *share < 1e-9) && alone.iter().any(|share| *share < -0.01), "{alone:?}");
    let sprung = axle.loading.rated_load - axle.unsprung_mass() * STANDARD_GRAVITY;
    axle.body_roll_stiffness = sprung * (axle.body_height - example::tire().loaded_radius);
    let balanced = rest(&axle);
    assert!(balanced.iter().all(|share| share.abs() < 1e-9), "{balanced:?}");
}

#[test]
fn a_mirrored_axle_has_the_same_frequencies() {
    let mut axle = axle();
    axle.seats.left.at = 0.45;
    axle.wheels.right = wheel(TireLayout::Single, 0.03);
    let (plain, mirror) = (found(&axle), found(&mirrored(&axle)));
    for (a, b) in plain.modes.iter().zip(&mirror.modes) {
        assert_relative_eq!(a.frequency, b.frequency, max_relative = 1e-8);
        assert_relative_eq!(a.damping_ratio, b.damping_ratio, max_relative = 1e-5, epsilon = 1e-9);
    }
}

#[test]
fn a_load_below_the_weight_is_refused() {
    let axle = axle();
    assert!(modes(&axle, 100.0, 5).is_err());
}

/// A free bar of length l, `ω = (βl)² √(EI/m)/l²` with βl from cos βl cosh βl = 1 (R. D. Blevins, Formulas for Natural
/// Frequency and Mode Shape, 1979, table 8-1; from memory). An axle of one section has one element from the middle to each
/// seat.
#[test]
fn bows_of_a_plain_bar_are_within_a_thousandth_of_the_closed_form() {
    let (outside, inside, half) = (0.004, 0.0033, 1.0);
    let axle = plain_bar(outside, 0.5 * (outside - inside), half);
    let outcome = modes(&axle, 10.0, 18).unwrap();
    let radius = (outside * outside + inside * inside).sqrt() / 4.0;
    let speed = radius * (200e9_f64 / 7850.0).sqrt();
    for beta in [4.730_041, 7.853_205, 10.995_608, 14.137_165] {
        let closed = beta * beta * speed / (2.0 * half).powi(2) / std::f64::consts::TAU;
        // Shear and rotary inertia, which the closed form leaves out, are 3e-4 of it at most, springs and wheels 1e-4.
        let off = |frequency: f64| (frequency / closed - 1.0).abs();
        let nearest = outcome.modes.iter().map(|mode| off(mode.frequency)).fold(1.0, f64::min);
        assert!(nearest < 1e-3, "{closed}: {nearest} of {:?}", names(&outcome));
    }
    assert!(outcome.mesh.is_settled(), "{:?}", outcome.mesh);
}

/// A tube without anything on it that weighs or holds.
fn plain_bar(outside: f64, wall: f64, half: f64) -> Axle {
    let mut plain = axle();
    plain.body_height = example::tire().loaded_radius;
    let tube = example::tube(outside, wall);
    let spindle = axlebow_axle::Spindle {
        material: example::steel(),
        steps: vec![axlebow_axle::SpindleStep { length: 0.2, profile: tube, fillet: None }],
    };
    plain.body =
        axlebow_axle::Body::trailer_tube(tube, 2.0 * (half - 0.2), example::steel(), &spindle).unwrap();
    let (soft, tire) = (3e-3, axlebow_axle::Tire { vertical_stiffness: 3e-3, ..example::tire() });
    for side in Side::BOTH {
        let end = plain.wheel_ends.of_mut(side);
        end.hub_mass = 1e-8;
        example::stiffen_bearings(end, 1e7);
        *plain.wheels.of_mut(side) = axlebow_axle::Wheel::new(TireLayout::Single, 0.0, tire, 1e-8).unwrap();
        let seat = plain.seats.of_mut(side);
        seat.rotational_stiffness = 0.0;
        seat.suspension = axlebow_axle::Suspension::Leaf {
            vertical: soft,
            lateral: soft,
            fore_aft: soft,
            wind_up: soft,
            yaw: soft,
        };
    }
    plain
}

/// Half the loss factor of each part by its share of the strain (Ungar & Kerwin 1962), where nothing else damps.
#[test]
fn hysteresis_damps_a_mode_by_where_its_strain_is() {
    let mut axle = axle();
    let steel = example::steel().with_loss_factor(0.004).unwrap();
    let steps = vec![axlebow_axle::SpindleStep { length: 0.21, profile: example::bar(0.08), fillet: None }];
    let spindle = axlebow_axle::Spindle { material: steel.clone(), steps };
    axle.body = axlebow_axle::Body::trailer_tube(example::tube(0.127, 0.0127), 1.6, steel, &spindle).unwrap();
    let tire = axlebow_axle::Tire { damping: 0.0, ..example::tire() };
    for side in Side::BOTH {
        let seat = axle.seats.of_mut(side);
        (seat.damping, seat.rebound_damping, seat.loss_factor) = (0.0, 0.0, 0.1);
        *axle.wheels.of_mut(side) = axlebow_axle::Wheel::new(TireLayout::Single, 0.0, tire, 150.0).unwrap();
    }
    (axle.body_roll_stiffness, axle.body_roll_damping) = (600e3, 0.0);
    // The body's weight at the height of the axle rolls it no further, so that strain is all the energy there is.
    axle.body_height = tire.loaded_radius;
    for mode in found(&axle).modes {
        let strain = mode.strain;
        let loss = 0.1 * strain.seats + 0.004 * (strain.beam + strain.bearings);
        assert_relative_eq!(mode.damping_ratio, 0.5 * loss, max_relative = 1e-9);
    }
}
