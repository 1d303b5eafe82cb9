//! Years to a crack and of bearings under a duty.

use crate::example::{self, axle};
use approx::assert_relative_eq;
use axlebow_axle::{
    Actions, Axle, Duty, DutyEvent, DutyRoad, Fixing, LifeOptions, LifeOutcome, RandomRide, Ride, RideBasis,
    Seat, Side, Sides, WheelEnd, flex, life,
};
use axlebow_road::{Coherence, FeltSpectrum, RandomRoad, RoughnessClass, WaveBand, iso_8608_spectrum};
use axlebow_strength::Reliability;

const ASK: Reliability = Reliability::Ninety;

/// The example's axle on welded seats and rated bearings.
fn welded() -> Axle {
    let axle = axle();
    let seat = |side: Side| Seat { fixing: Fixing::Welded, ..*axle.seats.of(side) };
    let end = |side: Side| WheelEnd {
        inner_rating: Some(240e3),
        outer_rating: Some(185e3),
        ..*axle.wheel_ends.of(side)
    };
    Axle { seats: Sides::each(seat), wheel_ends: Sides::each(end), ..axle.clone() }
}

fn idle() -> Duty {
    Duty {
        name: "test".to_owned(),
        distance: 1e8,
        roads: Vec::new(),
        bumps: Vec::new(),
        events: Vec::new(),
        loadings: 0.0,
    }
}

fn braking(per_distance: f64) -> DutyEvent {
    let actions = Actions { axle_load: 89e3, gravity: 1.0, braking_force: 0.3 * 89e3, ..Actions::default() };
    DutyEvent { name: "braking".to_owned(), actions, per_distance, length: 50.0 }
}

/// A sample of a random road at 25 m/s under 89 kN.
fn road(class: RoughnessClass, length: f64, seed: u64) -> DutyRoad {
    let random = RandomRoad {
        spectrum: iso_8608_spectrum(class),
        coherence: Coherence::isotropic(1.9).unwrap(),
        band: WaveBand::default(),
        length,
        spacing: 0.05,
        seed,
    };
    let ride = Ride {
        repeats: true,
        speed: 25.0,
        from: 0.0,
        to: length,
        basis: RideBasis::Reduced,
        ..example::ride_over(random.road().unwrap())
    };
    let spectrum = FeltSpectrum::new(&random, 25.0, ride.contact_length).unwrap();
    let name = "road".to_owned();
    let spectrum = RandomRide { name: name.clone(), road: spectrum };
    DutyRoad { name, share: 1.0, ride, spectrum }
}

fn lived(duty: &Duty) -> LifeOutcome {
    life(&welded(), duty, LifeOptions::with_reliability(ASK)).unwrap()
}

fn median(outcome: &LifeOutcome, name: &str) -> f64 {
    outcome.details.iter().find(|own| own.name == name).unwrap().years[1]
}

const SEAT: &str = "weld at the left seat inner edge";

/// By hand: one range, from unladen to rated, so often a year; category 56 (a bracket longer than 100 mm), slope 3 to 5e6
/// cycles; half of the details last 10^(1.645 · 0.2) times the code's life.
#[test]
fn a_steady_range_lasts_as_by_hand() {
    let axle = welded();
    let outcome = lived(&Duty { loadings: 1e5, ..idle() });
    let rated = axlebow_axle::standard_cases(&axle);
    let cases = flex(&axle, &rated[..2]).unwrap().cases;
    let stress = |number: usize| {
        let there = cases[number].stations.iter().find(|own| own.name == "left-seat-inner-edge");
        there.unwrap().stress
    };
    let range = (stress(0) - stress(1)).abs();
    let category = if welded().seats.left.width > 0.1 { 56e6 } else { 63e6 };
    let years = 2e6 * f64::powi(category / range, 3) / 1e5;
    let detail = outcome.details.iter().find(|own| own.name == SEAT).unwrap();
    assert_eq!(detail.detail.category, category);
    assert!(years * 1e5 < 5e6, "{years}");
    assert_relative_eq!(detail.years[0], years, max_relative = 1e-3);
    assert_relative_eq!(detail.years[1], 2.132_901 * years, max_relative = 1e-3);
    assert_relative_eq!(detail.greatest_range, range, max_relative = 1e-3);
    assert_eq!(detail.shares.loadings, 1.0);
    assert_eq!(detail.spectral_ratio, None);
}

#[test]
fn damages_add_up_and_twice_as_often_is_half_as_long() {
    let loads = Duty { loadings: 1e5, ..idle() };
    let brakes = Duty { events: vec![braking(1e-3)], ..idle() };
    let both = Duty { events: vec![braking(1e-3)], ..loads.clone() };
    let [loads, brakes, both] = [loads, brakes, both].map(|duty| median(&lived(&duty), SEAT).recip());
    assert!(loads > 0.0 && brakes > 0.0);
    assert_relative_eq!(both, loads + brakes, max_relative = 2e-3);
    let twice = median(&lived(&Duty { loadings: 2e5, ..idle() }), SEAT).recip();
    assert_relative_eq!(twice, 2.0 * loads, max_relative = 1e-9);
}

#[test]
fn a_duty_of_nothing_cracks_nothing() {
    let outcome = lived(&idle());
    assert!(outcome.first_to_crack().is_none());
    assert!(outcome.details.iter().all(|own| own.years.iter().all(|years| years.is_infinite())));
}

/// Two ways to one damage: cycles counted along 4 km, and Dirlik's formula on the spectrum of the response. A sample of 4 km
/// has some 1600 wheel hops, and what they do grows with the fifth power of the stress: the two agree within a factor of
/// two here, and by half of that where the stress never nears the cut-off. A class D road would lift tires.
#[test]
fn the_spectrum_of_a_random_road_agrees_with_its_counted_cycles() {
    let duty = Duty { roads: vec![road(RoughnessClass::C, 4000.0, 3)], ..idle() };
    let outcome = lived(&duty);
    let detail = outcome.details.iter().find(|own| own.name == SEAT).unwrap();
    let ratio = detail.spectral_ratio.unwrap();
    assert!((0.5..2.0).contains(&ratio), "{ratio}");
    assert_relative_eq!(detail.shares.roads, 1.0, max_relative = 1e-9);
}

#[test]
fn rough_roads_wear_bearings_faster_than_level_ones_and_a_heavier_pull_too() {
    let worst = |duty: &Duty| lived(duty).bearings[0].clone();
    let smooth = worst(&Duty { roads: vec![road(RoughnessClass::A, 500.0, 1)], ..idle() });
    let rough = worst(&Duty { roads: vec![road(RoughnessClass::C, 500.0, 1)], ..idle() });
    assert!(rough.mean_load > smooth.mean_load && rough.years < smooth.years);
    assert_relative_eq!(smooth.years, smooth.distance / 1e8, max_relative = 1e-12);
    let brakes =
        Duty { roads: vec![road(RoughnessClass::A, 500.0, 1)], events: vec![braking(0.01)], ..idle() };
    assert!(worst(&brakes).years < smooth.years);
}

#[test]
fn what_has_no_category_or_rating_is_listed_and_no_pass() {
    let outcome =
        life(&axle(), &Duty { loadings: 1e5, ..idle() }, LifeOptions::with_reliability(ASK)).unwrap();
    let lists = |what: &str| outcome.not_made.iter().filter(|own| own.what == what).count();
    assert_eq!(lists("bearing life"), 4);
    assert!(outcome.bearings.is_empty());
    // The clamps where seats are clamped, the joint of the tube, the fillets of both steps.
    assert!(lists("years to a crack") >= 3);
}
