//! What holds for every axle: random valid ones, lopsided, on all kinds of seats and tires.

use axlebow_axle::{
    Axle, BearingStiffness, Body, CaseOutcome, FixedMass, Ground, LoadCase, Loading, Seat, Side, Sides,
    Spindle, SpindleStep, StaticDesign, Suspension, Tire, TireLayout, Wheel, WheelEnd, standard_cases,
};
use axlebow_sections::{Material, RoundBar, RoundTube};
use proptest::prelude::*;

use crate::example;

/// Units in which an axle is written: of length and force. Standard gravity keeps its number, so that a mass is a force.
#[derive(Debug, Clone, Copy)]
struct Units {
    length: f64,
    force: f64,
}

const SI: Units = Units { length: 1.0, force: 1.0 };

/// Shares from 0 to 1 of the ranges of one end's numbers.
type End = [f64; 8];

#[derive(Debug, Clone)]
struct Numbers {
    tube: [f64; 3],
    ends: Sides<End>,
    arms: bool,
    standing: bool,
    dual: Sides<bool>,
    load: f64,
    body: [f64; 2],
}

fn numbers() -> impl Strategy<Value = Numbers> {
    let end = || proptest::array::uniform8(0.0..1.0_f64);
    let tube = proptest::array::uniform3(0.0..1.0_f64);
    let body = proptest::array::uniform2(0.0..1.0_f64);
    let kinds = (any::<bool>(), any::<bool>(), any::<bool>(), any::<bool>());
    (tube, end(), end(), kinds, 0.0..1.0_f64, body).prop_map(|(tube, left, right, kinds, load, body)| {
        let (arms, standing, left_dual, right_dual) = kinds;
        let (ends, dual) = (Sides { left, right }, Sides { left: left_dual, right: right_dual });
        Numbers { tube, ends, arms, standing, dual, load, body }
    })
}

fn within(share: f64, from: f64, to: f64) -> f64 {
    from + share * (to - from)
}

impl Numbers {
    fn mirrored(&self) -> Numbers {
        let swapped = |sides: &Sides<End>| Sides { left: sides.right, right: sides.left };
        let dual = Sides { left: self.dual.right, right: self.dual.left };
        Numbers { ends: swapped(&self.ends), dual, ..self.clone() }
    }

    fn axle(&self, units: Units) -> Axle {
        let Units { length: m, force: n } = units;
        let steel = Material::new("steel", 205e9 * n / m / m, 0.29, 7850.0 * n / m.powi(3)).unwrap();
        let [diameter, wall, bearing] = self.tube;
        let tube = RoundTube::new(within(diameter, 0.11, 0.16) * m, within(wall, 0.007, 0.016) * m).unwrap();
        let step = |length: f64, diameter: f64| SpindleStep {
            length: length * m,
            profile: RoundBar::new(diameter * m).unwrap().into(),
            fillet: None,
        };
        let spindle = Spindle { material: steel.clone(), steps: vec![step(0.09, 0.09), step(0.13, 0.07)] };
        let body = Body::trailer_tube(tube.into(), 1.6 * m, steel, &spindle).unwrap();
        let rate = within(bearing, 2e8, 4e9) * n / m;
        let wheel_end = |[camber, toe, ..]: End| WheelEnd {
            inner_bearing: 0.84 * m,
            outer_bearing: 0.96 * m,
            mounting_face: 0.92 * m,
            inner_stiffness: BearingStiffness { radial: rate, axial: 0.4 * rate },
            outer_stiffness: BearingStiffness { radial: 0.8 * rate, axial: 0.3 * rate },
            hub_mass: 80.0 * n,
            camber: within(camber, -0.03, 0.03),
            toe: within(toe, -0.01, 0.01),
            ..example::wheel_end()
        };
        let wheel = |side: Side| {
            let [.., outset, stiffness] = *self.ends.of(side);
            let tire = Tire {
                loaded_radius: 0.49 * m,
                vertical_stiffness: within(stiffness, 0.6e6, 1.2e6) * n / m,
                lateral_stiffness: 0.35e6 * n / m,
                width: 0.28 * m,
                damping: 0.0,
            };
            let dual = *self.dual.of(side);
            let layout = if dual { TireLayout::Dual { spacing: 0.33 * m } } else { TireLayout::WideBase };
            Wheel::new(layout, within(outset, -0.06, 0.08) * m, tire, 150.0 * n).unwrap()
        };
        let (rate, turning) = (n / m, n * m);
        let suspension = |stiffness: f64| match self.arms {
            true => Suspension::TrailingArm {
                pivot_ahead: 0.5 * m,
                pivot_above: 0.05 * m,
                bush_radial: 2e7 * rate,
                bush_axial: 5e6 * rate,
                spring_behind: 0.38 * m,
                spring_rate: within(stiffness, 1e5, 6e5) * rate,
            },
            false => Suspension::Leaf {
                vertical: within(stiffness, 5e5, 3e6) * rate,
                lateral: 4e6 * rate,
                fore_aft: 8e6 * rate,
                wind_up: 6e4 * turning,
                yaw: 8e4 * turning,
            },
        };
        let seat = |[_, _, at, share, turn, stiffness, ..]: End| Seat {
            at: within(at, 0.4, 0.6) * m,
            width: 0.1 * m,
            composite_fraction: within(share, 0.0, 0.9),
            rotational_stiffness: within(turn, 0.0, 6e5) * turning,
            suspension: suspension(stiffness),
            wall_flexibility: 1e-7 / turning,
            ..example::seat()
        };
        let [height, aside] = self.body;
        let loading = Loading {
            rated_load: within(self.load, 40e3, 120e3) * n,
            unladen_load: 20e3 * n,
            raise: 0.04 * m,
            ..example::loading()
        };
        let axle = Axle {
            body,
            wheel_ends: Sides { left: wheel_end(self.ends.left), right: wheel_end(self.ends.right) },
            wheels: Sides { left: wheel(Side::Left), right: wheel(Side::Right) },
            seats: Sides { left: seat(self.ends.left), right: seat(self.ends.right) },
            fixed_masses: vec![FixedMass { y: 0.0, mass: within(aside, 0.0, 200.0) * n }],
            body_height: within(height, 0.8, 2.6) * m,
            body_roll_radius: 0.8 * m,
            body_roll_stiffness: 4e5 * turning,
            ground: if self.standing { Ground::Standing } else { Ground::Rolling },
            loading,
            weld_keep_out: 0.05 * m,
            ..example::axle()
        };
        axle.checked().unwrap()
    }
}

fn solved(axle: &Axle, case: &LoadCase) -> Result<CaseOutcome, String> {
    StaticDesign::of(axle).and_then(|design| design.case(case)).map_err(|error| error.to_string())
}

/// Camber and toe change, loads of the wheel and of its tires.
fn read(case: &CaseOutcome, side: Side) -> Vec<f64> {
    let wheel = case.wheels.of(side);
    let tires = wheel.contacts.iter().map(|contact| contact.vertical_load);
    [wheel.camber_change, wheel.toe_change, wheel.vertical_load].into_iter().chain(tires).collect()
}

/// Angles within a share of 10 mrad, loads within a share of the axle load.
fn assert_alike(one: &[f64], other: &[f64], load: f64, share: f64) {
    for (i, (one, other)) in one.iter().zip(other).enumerate() {
        let scale = if i < 2 { 0.01 } else { load };
        assert!((one - other).abs() <= share * scale, "{i}: {one} {other}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(48) })]

    /// Loads on the road are the axle's, no tire pulls, the roll is small, and all forces balance; or the vehicle falls.
    #[test]
    fn a_vehicle_stands_in_balance_or_falls(numbers in numbers(), ratio in 0.0..0.9_f64, raise in 0.0..0.2_f64) {
        let mut axle = numbers.axle(SI);
        (axle.loading.side_force_ratio, axle.loading.raise) = (ratio, raise);
        for case in standard_cases(&axle) {
            match solved(&axle, &case) {
                Ok(outcome) => {
                    let tires = || Side::BOTH.iter().flat_map(|side| &outcome.wheels.of(*side).contacts);
                    let load: f64 = tires().map(|tire| tire.vertical_load).sum();
                    prop_assert!((load / case.actions.axle_load - 1.0).abs() < 1e-9, "{}: {load}", case.name);
                    prop_assert!(tires().all(|tire| tire.vertical_load >= -1e-9 * load), "{}", case.name);
                    prop_assert!(outcome.axle_roll.abs() < 0.3, "{}: {}", case.name, outcome.axle_roll);
                    prop_assert!(outcome.equilibrium_residual < 1e-7, "{}: {}", case.name, outcome.equilibrium_residual);
                }
                Err(error) => prop_assert!(error.contains("tips over") || error.contains("rolls"), "{error}"),
            }
        }
    }

    /// Seats carry the weight of the sprung mass.
    #[test]
    fn seats_carry_what_the_axle_does_not_weigh(numbers in numbers()) {
        let axle = numbers.axle(SI);
        let case = &standard_cases(&axle)[0];
        let outcome = solved(&axle, case).unwrap();
        let carried = outcome.seats.left.vertical + outcome.seats.right.vertical;
        let sprung = case.actions.axle_load - axle.unsprung_mass() * axlebow_axle::STANDARD_GRAVITY;
        prop_assert!((carried + sprung).abs() < 1e-7 * sprung, "{carried} {sprung}");
    }

    #[test]
    fn a_mirror_swaps_left_and_right(numbers in numbers()) {
        let (plain, mirror) = (numbers.axle(SI), numbers.mirrored().axle(SI));
        for case in ["rated-load", "unladen", "braking"] {
            let of = |axle: &Axle| solved(axle, &LoadCase::standard(axle, case).unwrap()).unwrap();
            let (plain, mirror) = (of(&plain), of(&mirror));
            for (side, opposite) in [(Side::Left, Side::Right), (Side::Right, Side::Left)] {
                let (one, other) = (read(&plain, side), read(&mirror, opposite));
                assert_alike(&one, &other, numbers.load.max(1.0) * 120e3, 1e-9);
            }
        }
    }

    /// An axle written in other units of length and force leans as much, and carries the same load in them.
    #[test]
    fn units_do_not_matter(numbers in numbers(), length in 0.1..50.0_f64, force in 0.1..10.0_f64) {
        let units = Units { length, force };
        let (plain, other) = (numbers.axle(SI), numbers.axle(units));
        for (case, scaled) in standard_cases(&plain).iter().zip(standard_cases(&other)) {
            match (solved(&plain, case), solved(&other, &scaled)) {
                (Ok(one), Ok(other)) => for side in Side::BOTH {
                    let loads = |i: usize, value: f64| if i < 2 { value } else { value / force };
                    let other = read(&other, side).into_iter().enumerate().map(|(i, value)| loads(i, value));
                    assert_alike(&read(&one, side), &other.collect::<Vec<_>>(), case.actions.axle_load, 1e-7);
                },
                (one, other) => prop_assert!(one.is_err() && other.is_err(), "{}: {one:?} {other:?}", case.name),
            }
        }
    }

    /// Curb forces and raised wheels add up while every tire stays on the road.
    #[test]
    fn curbs_and_raises_add_up(numbers in numbers(), curb in 0.0..0.1_f64, raise in 0.0..0.01_f64) {
        let axle = numbers.axle(SI);
        let rated = standard_cases(&axle).swap_remove(0);
        let with = |curb: f64, raise: f64| {
            let mut case = rated.clone();
            case.actions.curb_force.left = curb * case.actions.axle_load;
            case.actions.raise.right = raise;
            let outcome = solved(&axle, &case).unwrap();
            let on_road = Side::BOTH.iter().all(|side| {
                outcome.wheels.of(*side).contacts.iter().all(|contact| !contact.off_road)
            });
            (Side::BOTH.map(|side| read(&outcome, side)), on_road)
        };
        let cases = [with(0.0, 0.0), with(curb, 0.0), with(0.0, raise), with(curb, raise)];
        prop_assume!(cases.iter().all(|(_, on_road)| *on_road));
        let [none, one, other, both] = cases.map(|(read, _)| read);
        for side in 0..2 {
            let sum: Vec<f64> = (0..none[side].len())
                .map(|i| one[side][i] + other[side][i] - none[side][i])
                .collect();
            assert_alike(&both[side], &sum, rated.actions.axle_load, 1e-8);
        }
    }
}
