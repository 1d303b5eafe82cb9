//! Answers to a harmonic and to a random road: closed forms, symmetry, and agreement with rides.

use std::f64::consts::TAU;

use crate::example::{self, axle, bar, mirrored, stiffen_bearings, tube, wheel};
use approx::assert_relative_eq;
use axlebow_axle::{
    Axle, AxleError, Body, Input, RandomAnswer, RandomRide, ResponseOptions, ResponseOutcome, Ride,
    RideOutcome, STANDARD_GRAVITY, Side, Sides, Spindle, SpindleStep, StationResponse, TireLayout,
    TransferFunction, response, ride,
};
use axlebow_road::{
    Coherence, FeltSpectrum, MeasuredProfile, RandomRoad, Road, RoughnessClass, Track, Washboard, WaveBand,
    Wheels, iso_8608_spectrum,
};
use axlebow_sections::Material;

const CONTACT: f64 = 0.2;

fn ask(axle: &Axle, input: Input) -> ResponseOptions {
    ResponseOptions {
        axle_load: axle.loading.rated_load,
        input,
        frequencies: [0.5, 60.0],
        points: 120,
        stations: Vec::new(),
        over: None,
    }
}

fn found(axle: &Axle, input: Input) -> ResponseOutcome {
    response(axle, &ask(axle, input)).unwrap()
}

#[track_caller]
fn assert_alike(a: &TransferFunction, b: &TransferFunction, share: f64) {
    let largest = a.gains().into_iter().fold(0.0, f64::max);
    for (a, b) in a.values.iter().zip(&b.values) {
        assert!((a[0] - b[0]).hypot(a[1] - b[1]) < share * largest, "{a:?} {b:?} of {largest}");
    }
}

/// The load of a two-mass vehicle on a road of height 1 (T. D. Gillespie, Fundamentals of Vehicle Dynamics, SAE
/// 1992, ch. 5; from memory), by Cramer's rule with tires `kt + iωct` and springs `ks + iωcs`:
/// `F = Kt (1 − zu)`, `zu = Kt (Ks − ms ω²)/((Ks + Kt − mu ω²)(Ks − ms ω²) − Ks²)`.
#[test]
fn wheel_load_of_a_stiff_axle_is_that_of_the_two_mass_vehicle() {
    let mut axle = axle();
    let single = wheel(TireLayout::Single, 0.0);
    axle.wheels = Sides { left: single, right: single };
    // Rigid against tires and springs: a thousandfold modulus leaves a thousandth of the flexibility.
    let stiff = Material::new("stiff", 200e12, 0.3, 7850.0).unwrap();
    let steps = vec![SpindleStep { length: 0.21, profile: bar(0.09), fillet: None }];
    let spindle = Spindle { material: stiff.clone(), steps };
    axle.body = Body::trailer_tube(tube(0.127, 0.0127), 1.6, stiff, &spindle).unwrap();
    for side in Side::BOTH {
        stiffen_bearings(axle.wheel_ends.of_mut(side), 1e12);
    }
    let outcome = found(&axle, Input::Both);
    let complex = nalgebra::Complex::new;
    let unsprung = axle.unsprung_mass();
    let sprung = axle.loading.rated_load / STANDARD_GRAVITY - unsprung;
    let (gains, mut largest) = (outcome.load.left.gains(), 0.0_f64);
    for (frequency, gain) in outcome.frequencies.iter().zip(gains).filter(|(f, _)| **f < 20.0) {
        let w = TAU * frequency;
        let (tire, spring) = (complex(1.8e6, w * 1400.0), complex(3.0e6, w * 24e3));
        let (body, wheels) = (spring - sprung * w * w, spring + tire - unsprung * w * w);
        let rise = tire * body / (wheels * body - spring * spring);
        let load = (tire * (1.0 - rise)).norm() / 2.0;
        largest = largest.max(load);
        // What is left of the flexibility shifts a resonance by parts of a thousandth.
        assert!((gain - load).abs() < 5e-3 * largest.max(load), "{frequency}: {gain} {load}");
    }
}

#[test]
fn roads_for_each_wheel_add_up() {
    let axle = axle();
    let [both, left, right, opposed] =
        [Input::Both, Input::Left, Input::Right, Input::Opposed].map(|input| found(&axle, input));
    let combined = |sign: f64, of: &dyn Fn(&ResponseOutcome) -> TransferFunction| {
        let (a, b) = (of(&left), of(&right));
        let values = a.values.iter().zip(&b.values);
        let values = values.map(|(a, b)| [a[0] + sign * b[0], a[1] + sign * b[1]]).collect();
        TransferFunction { values, resonances: Vec::new() }
    };
    type Of = fn(&ResponseOutcome) -> TransferFunction;
    let of: [Of; 3] = [|o| o.camber.left.clone(), |o| o.load.right.clone(), |o| o.stress[0].transfer.clone()];
    for of in of {
        assert_alike(&of(&both), &combined(1.0, &of), 1e-12);
        assert_alike(&of(&opposed), &combined(-1.0, &of), 1e-12);
    }
    // The example is the same on both sides.
    assert_alike(&left.camber.left, &right.camber.right, 1e-7);
    assert_alike(&left.load.right, &right.load.left, 1e-7);
}

#[test]
fn a_mirrored_axle_answers_in_a_mirror() {
    let mut axle = axle();
    axle.seats.left.at = 0.45;
    axle.wheels.right = wheel(TireLayout::Single, 0.03);
    let (plain, mirror) = (found(&axle, Input::Left), found(&mirrored(&axle), Input::Right));
    let same_grid =
        plain.frequencies.iter().zip(&mirror.frequencies).all(|(a, b)| (a / b - 1.0).abs() < 1e-6);
    assert!(same_grid && plain.frequencies.len() == mirror.frequencies.len());
    assert_alike(&plain.camber.left, &mirror.camber.right, 1e-4);
    assert_alike(&plain.load.right, &mirror.load.left, 1e-4);
}

#[test]
fn a_road_that_rises_slowly_changes_nothing() {
    let axle = axle();
    let slow = ResponseOptions { frequencies: [1e-3, 1.0], ..ask(&axle, Input::Both) };
    let outcome = response(&axle, &slow).unwrap();
    assert!(outcome.load.left.gains()[0] < 1e-3 * outcome.load.left.gains().into_iter().fold(0.0, f64::max));
    assert_relative_eq!(
        outcome.load_at_rest.left + outcome.load_at_rest.right,
        axle.loading.rated_load,
        max_relative = 1e-6
    );
}

#[test]
fn resonances_bear_the_names_of_modes_that_the_road_reaches() {
    let axle = axle();
    let names = |input| {
        let outcome = found(&axle, input);
        let peaks = [&outcome.camber.left, &outcome.load.left].map(|transfer| transfer.resonances.clone());
        let names = peaks.into_iter().flatten().filter_map(|peak| peak.mode.map(|(name, _)| name));
        names.collect::<Vec<_>>()
    };
    let (both, opposed) = (names(Input::Both), names(Input::Opposed));
    assert!(both.iter().any(|name| name == "wheel hop"), "{both:?}");
    assert!(opposed.iter().any(|name| name == "axle tramp" || name == "body roll"), "{opposed:?}");
    assert!(!both.iter().any(|name| name == "axle tramp" || name == "body roll"), "{both:?}");
}

fn driven(axle: &Axle, road: Road, speed: f64, (to, step): (f64, f64)) -> RideOutcome {
    let asked = Ride {
        speed,
        contact_length: CONTACT,
        to,
        step,
        axle_load: axle.loading.rated_load,
        ..example::ride_over(road)
    };
    ride(axle, &asked).unwrap()
}

/// Half the swing of the last waves.
fn swing(history: &[f64], samples: usize) -> f64 {
    let last = &history[history.len() - samples..];
    let most = |sign: f64| last.iter().map(|value| sign * value).fold(f64::NEG_INFINITY, f64::max);
    0.5 * (most(1.0) + most(-1.0))
}

#[test]
fn on_a_long_washboard_a_ride_swings_as_the_transfer_function_says() {
    let mut axle = axle();
    // So that roll of the body, which the washboard starts, dies away on it.
    for side in Side::BOTH {
        let seat = axle.seats.of_mut(side);
        (seat.damping, seat.rebound_damping) = (60e3, 60e3);
    }
    let (frequency, speed, amplitude) = (8.0, 16.0, 1e-3);
    let length = speed / frequency;
    let road = Road::new(Washboard::new(length, amplitude, 160).unwrap(), Wheels::Left).unwrap();
    let run = driven(&axle, road, speed, (159.0 * length, 1e-3));
    assert_eq!(run.contact_changes, 0);
    let band = ResponseOptions { frequencies: [frequency, 9.0], ..ask(&axle, Input::Left) };
    let outcome = response(&axle, &band).unwrap();
    let angle = std::f64::consts::PI * CONTACT / length;
    let felt = amplitude * angle.sin() / angle;
    // Samples of 1 ms meet the crest of a wave of 125 ms to 1 − cos(π/125) = 3e-4; the step makes waves
    // longer by parts of a thousandth.
    for (history, transfer) in [
        (&run.history.load.left, &outcome.load.left),
        (&run.history.load.right, &outcome.load.right),
        (&run.history.camber.left, &outcome.camber.left),
        (&run.history.camber.right, &outcome.camber.right),
    ] {
        assert_relative_eq!(swing(history, 250), felt * transfer.gains()[0], max_relative = 5e-3);
    }
}

fn random_road(length: f64) -> RandomRoad {
    RandomRoad {
        spectrum: iso_8608_spectrum(RoughnessClass::A),
        coherence: Coherence::isotropic(1.9).unwrap(),
        band: WaveBand::default(),
        length,
        spacing: 0.025,
        seed: 11,
    }
}

/// The road twice over.
fn two_laps(road: &RandomRoad) -> Road {
    let [left, right] = road.profiles().unwrap().map(|lap| {
        let heights: Vec<f64> = [&lap.heights()[1..], &lap.heights()[1..]].concat();
        let distances: Vec<f64> = (0..heights.len()).map(|i| road.spacing * i as f64).collect();
        Track::new(MeasuredProfile::new(&distances, &heights, 1.0).unwrap())
    });
    Road { left, right }
}

fn named(road: FeltSpectrum) -> RandomRide {
    RandomRide { name: "test".to_owned(), road }
}

fn mean_square(history: &[f64]) -> f64 {
    let mean = history.iter().sum::<f64>() / history.len() as f64;
    history.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / history.len() as f64
}

/// Standard error of a mean square over a time T as a share of it, `√(∫G² df/T)/∫G df` (J. S. Bendat, A. G.
/// Piersol, Random Data, 4th ed. 2010, ch. 8, from memory): `1/√(BT)` for a flat band B.
fn standard_error(answer: &RandomAnswer, frequencies: &[f64], time: f64) -> f64 {
    let strips = frequencies.windows(2).zip(answer.density.windows(2));
    let square: f64 = strips.map(|(f, g)| 0.5 * (f[1] - f[0]) * (g[0] * g[0] + g[1] * g[1])).sum();
    (square / time).sqrt() / answer.rms.powi(2)
}

/// A generated road repeats after its length, so on its second lap the motion does too and holds the harmonics
/// of the road and nothing else. What is left to chance in one wheel's mean square is how the mean and the
/// difference of the tracks fall together, at most the error of any Gaussian history; on an axle with two equal
/// sides the two wheels' chances cancel.
#[test]
fn random_answers_agree_with_a_long_ride_within_the_error_of_sampling() {
    let mut axle = axle();
    for side in Side::BOTH {
        // Roll and bounce then die down within the first lap, and no resonance slips between two harmonics.
        let seat = axle.seats.of_mut(side);
        (seat.damping, seat.rebound_damping) = (60e3, 60e3);
    }
    let (road, speed, step) = (random_road(600.0), 20.0, 1e-3);
    let run = driven(&axle, two_laps(&road), speed, (1200.0, step));
    assert_eq!(run.contact_changes, 0);
    let over = FeltSpectrum::new(&road, speed, CONTACT).unwrap();
    let found =
        response(&axle, &ResponseOptions { over: Some(named(over)), ..ask(&axle, Input::Both) }).unwrap();
    let slowest = found.modes.iter().take(2).map(|mode| mode.damping_ratio * mode.frequency);
    assert!(slowest.fold(f64::INFINITY, f64::min) > speed / 600.0);
    let random = found.random.unwrap();
    let lap = |history: &[f64]| mean_square(&history[history.len() - (30.0 / step) as usize..]);
    for (histories, answers) in [(&run.history.camber, &random.camber), (&run.history.load, &random.load)] {
        let ratio = |side: Side| lap(histories.of(side)) / answers.of(side).rms.powi(2);
        for side in Side::BOTH {
            let error = standard_error(answers.of(side), &random.frequencies, 30.0);
            assert!((ratio(side) - 1.0).abs() < 3.0 * error, "{} against {error}", ratio(side));
        }
        // Straight lines between samples d apart take (2π n d)²/6 off a wave's mean square: 1 % at 30 Hz, and
        // steps of 1 ms shift and damp what lies there by as much.
        assert_relative_eq!(0.5 * (ratio(Side::Left) + ratio(Side::Right)), 1.0, max_relative = 0.02);
    }
}

fn random_answer(axle: &Axle, class: RoughnessClass, speed: f64) -> ResponseOutcome {
    let road = RandomRoad { spectrum: iso_8608_spectrum(class), ..random_road(100.0) };
    let over = Some(named(FeltSpectrum::new(&road, speed, CONTACT).unwrap()));
    response(axle, &ResponseOptions { over, ..ask(axle, Input::Both) }).unwrap()
}

#[test]
fn a_class_up_doubles_every_answer_and_crossings_stay() {
    let axle = axle();
    let [a, b] =
        [RoughnessClass::A, RoughnessClass::B].map(|class| random_answer(&axle, class, 22.0).random.unwrap());
    for (a, b) in
        [(&a.camber.left, &b.camber.left), (&a.load.right, &b.load.right), (&a.stress[0], &b.stress[0])]
    {
        assert_relative_eq!(b.rms, 2.0 * a.rms, max_relative = 1e-12);
        assert_relative_eq!(b.crossing_rate, a.crossing_rate, max_relative = 1e-12);
        assert_eq!(a.dominant_frequency, b.dominant_frequency);
        // The densest frequency and the mean crossing lie in the band that the road holds.
        assert!(a.crossing_rate > 0.011 * 22.0 && a.crossing_rate < 2.83 * 22.0);
    }
}

#[test]
fn impossible_questions_are_refused() {
    let axle = axle();
    let good = ask(&axle, Input::Both);
    for bad in [
        ResponseOptions { frequencies: [0.0, 10.0], ..good.clone() },
        ResponseOptions { frequencies: [10.0, 5.0], ..good.clone() },
        ResponseOptions { frequencies: [1.0, f64::NAN], ..good.clone() },
        ResponseOptions { points: 1, ..good.clone() },
        ResponseOptions { axle_load: 10.0, ..good.clone() },
    ] {
        assert!(response(&axle, &bad).is_err(), "{bad:?}");
    }
    let at =
        |name: &str| response(&axle, &ResponseOptions { stations: vec![name.to_owned()], ..good.clone() });
    let found: StationResponse = at("right-seat").unwrap().stress.remove(0);
    assert!(found.y < 0.0 && found.name == "right-seat");
    let error = at("right-saet").unwrap_err();
    assert!(matches!(error, AxleError::UnknownStation { .. }) && error.to_string().contains("right-seat"));
}
