//! Years to a crack and of bearings under a duty.

use crate::example::{self, axle};
use approx::assert_relative_eq;
use axlebow_axle::{
    Actions, Axle, Duty, DutyEvent, DutyRoad, Fixing, LifeOptions, LifeOutcome, RandomRide, Ride, RideBasis,
    Seat, SeatStress, Side, Sides, WallBy, WheelEnd, flex, life,
};
use axlebow_road::{Coherence, FeltSpectrum, RandomRoad, RoughnessClass, WaveBand, iso_8608_spectrum};
use axlebow_strength::{LifeScatter, MeanStress, Reliability};

const ASK: LifeOptions = LifeOptions {
    scatter: LifeScatter::USUAL,
    reliability: Reliability::Ninety,
    mean_stress: MeanStress::Ignored,
    seat_stress: SeatStress::Nominal,
};

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
    life(&welded(), duty, ASK).unwrap()
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
    let outcome = life(&axle(), &Duty { loadings: 1e5, ..idle() }, ASK).unwrap();
    let lists = |what: &str| outcome.not_made.iter().filter(|own| own.what == what).count();
    assert_eq!(lists("bearing life"), 4);
    assert!(outcome.bearings.is_empty());
    // The clamps where seats are clamped, the joint of the tube, the fillets of both steps.
    assert!(lists("years to a crack") >= 3);
}

/// A fiber in tension from unladen to rated is not spared; the rebound of a rough road past zero is, and by no more than 40 %
/// of its range: at slope 3 to 5 by less than 1/0.6⁵.
#[test]
fn relief_of_residual_stress_spares_what_is_compressed() {
    let years = |duty: &Duty, mean_stress| {
        let outcome = life(&welded(), duty, LifeOptions { mean_stress, ..ASK }).unwrap();
        let plain = outcome.details.iter().find(|own| own.name.starts_with("plain")).unwrap();
        [median(&outcome, SEAT), plain.years[1]]
    };
    let loads = Duty { loadings: 1e5, ..idle() };
    assert_eq!(years(&loads, MeanStress::Relieved), years(&loads, MeanStress::Ignored));
    let rough = Duty { roads: vec![road(RoughnessClass::D, 300.0, 1)], ..idle() };
    let [ignored, unwelded, relieved] = MeanStress::ALL.map(|own| years(&rough, own));
    assert_eq!(ignored[0], unwelded[0]);
    assert_eq!(unwelded[1], relieved[1]);
    for (spared, all) in relieved.iter().zip(ignored) {
        assert!(*spared > 1.001 * all && *spared < all / f64::powi(0.6, 5), "{spared} {all}");
    }
}

/// The nominal stress of the edge times the hot spot's share of it, against FAT 90: the lives of a steady range on slope 3
/// are as (90/63 or 90/56 over that share)³.
#[test]
fn a_hot_spot_lasts_by_its_share_of_the_nominal_stress() {
    let axle = welded();
    let seat = |side: Side| Seat { wall: WallBy::Shell, ..*axle.seats.of(side) };
    let axle = Axle { seats: Sides::each(seat), ..axle.clone() };
    let duty = Duty { loadings: 1e5, ..idle() };
    let lived = |seat_stress| life(&axle, &duty, LifeOptions { seat_stress, ..ASK }).unwrap();
    let [nominal, spot] = [SeatStress::Nominal, SeatStress::HotSpot].map(lived);
    let spot = spot.details.iter().find(|own| own.name.starts_with("hot spot at the left")).unwrap().clone();
    let edge = spot.name.replace("hot spot", "weld");
    let edge = nominal.details.iter().find(|own| own.name == edge).unwrap();
    let share = spot.greatest_range / edge.greatest_range;
    assert!((0.8..4.0).contains(&share), "{share}");
    let stronger = spot.detail.category / edge.detail.category / share;
    assert_relative_eq!(spot.years[0], edge.years[0] * stronger.powi(3), max_relative = 1e-3);
    assert!(spot.geometry.contains(&format!("{share:.2} of the nominal stress")), "{}", spot.geometry);
}

#[test]
fn a_hot_spot_without_shells_is_not_made() {
    let ask = LifeOptions { seat_stress: SeatStress::HotSpot, ..ASK };
    let outcome = life(&welded(), &Duty { loadings: 1e5, ..idle() }, ask).unwrap();
    assert!(outcome.details.iter().any(|own| own.name == SEAT));
    let missing = outcome.not_made.iter().filter(|own| own.what == "years to a crack by the hot spot");
    assert_eq!(missing.count(), 2);
}

/// A preload of a tenth of the rated load presses both bearings of a side, so that each wears out sooner; together with
/// endplay it is refused.
#[test]
fn a_preload_shortens_the_life_of_bearings() {
    let with = |preload: f64| {
        let own = welded();
        let end = |side: Side| WheelEnd { preload, ..*own.wheel_ends.of(side) };
        let axle = Axle { wheel_ends: Sides::each(end), ..own.clone() };
        let duty = Duty { roads: vec![road(RoughnessClass::A, 300.0, 1)], ..idle() };
        life(&axle, &duty, ASK).unwrap().bearings
    };
    let (set, pressed) = (with(0.0), with(20e3));
    for own in &set {
        let same = pressed.iter().find(|other| other.place == own.place).unwrap();
        assert!(same.years < own.years, "{}", own.place);
    }
    let both = WheelEnd { preload: 1e3, endplay: 0.1e-3, ..*welded().wheel_ends.of(Side::Left) }.checked();
    assert!(both.unwrap_err().to_string().contains("leave one out"));
}
/// The example's axle has no roll stiffness: on a road that lifts a tire off for long it tips over, which is no life.
#[test]
fn an_axle_that_tips_over_has_no_life() {
    let duty = Duty { roads: vec![road(RoughnessClass::E, 300.0, 1)], ..idle() };
    let error = life(&welded(), &duty, ASK).unwrap_err().to_string();
    assert!(error.contains("the motion ran away at"), "{error}");
}
