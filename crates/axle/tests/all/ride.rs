//! Rides of a whole axle: rest, mirror, lift-off, and agreement with statics and modes.

use crate::example::{self, axle, wheel};
use approx::assert_relative_eq;
use axlebow_axle::{
    Axle, BumpStop, CamberSplit, RecordOptions, Ride, RideBasis, RideOutcome, RidingAxle, Scheme, Side,
    StopHits, TireLayout, UserStation, flex, modes, ride, standard_cases,
};
use axlebow_road::{HaversineBump, MeasuredProfile, Ramp, Road, Step, Track, Wheels};

fn over(axle: &Axle, road: Road, speed: f64) -> RideOutcome {
    over_for(axle, road, speed, 1.5)
}

fn over_for(axle: &Axle, road: Road, speed: f64, seconds: f64) -> RideOutcome {
    let asked = Ride { to: seconds * speed, ..ask(axle, road, speed) };
    ride(axle, &asked).unwrap()
}

fn ask(axle: &Axle, road: Road, speed: f64) -> Ride {
    Ride {
        speed,
        from: -1.0,
        to: 1.5 * speed,
        axle_load: axle.loading.rated_load,
        keep: RecordOptions { stresses: true, shapes: 11 },
        ..example::ride_over(road)
    }
}

/// The axle with a bump stop at each seat.
fn stopped(stop: BumpStop) -> Axle {
    let mut axle = axle();
    for side in Side::BOTH {
        axle.seats.of_mut(side).bump_stop = Some(stop);
    }
    axle
}

fn bump(height: f64, wheels: Wheels) -> Road {
    Road::new(HaversineBump::new(height, 1.0).unwrap(), wheels).unwrap()
}

const BOTH: Wheels = Wheels::Both { lag: 0.0 };

#[test]
fn at_rest_a_ride_is_the_static_case() {
    let axle = axle();
    let flat = over(&axle, Road { left: Track::flat(), right: Track::flat() }, 20.0);
    let rated = flex(&axle, &standard_cases(&axle)[..1]).unwrap().cases.remove(0);
    for side in Side::BOTH {
        let (moving, still) = (flat.wheels.of(side), rated.wheels.of(side));
        assert_relative_eq!(moving.load_at_rest, still.vertical_load, max_relative = 1e-8);
        // Beam weights act through consistent loads there and consistent masses here.
        assert_relative_eq!(moving.camber_at_rest, still.camber_change, max_relative = 1e-4);
        assert!(moving.camber_peak_to_peak < 1e-9 && moving.time_off_road == 0.0);
        assert_eq!(moving.dominant_frequency, None);
    }
}

/// The split of statics at rest; over a bump the bearings, which are the rest there, still give as their load says.
#[test]
fn a_ride_splits_its_peak_camber_as_statics_does() {
    let mut axle = axle();
    for side in Side::BOTH {
        axle.seats.of_mut(side).wall_flexibility = 1e-6;
        let outset = wheel(TireLayout::WideBase, 0.05);
        *axle.wheels.of_mut(side) = outset.with_disc_flexibility(8e-8).unwrap();
    }
    let rated = flex(&axle, &standard_cases(&axle)[..1]).unwrap().cases.remove(0);
    let flat = over(&axle, Road { left: Track::flat(), right: Track::flat() }, 20.0);
    let asked = ask(&axle, bump(0.04, Wheels::Left), 20.0);
    let driven = ride(&axle, &asked).unwrap();
    let reduced = ride(&axle, &Ride { basis: RideBasis::Reduced, ..asked }).unwrap();
    for side in Side::BOTH {
        let (moving, still) = (flat.wheels.of(side).camber_peak_split, rated.wheels.of(side).split);
        let parts = |split: &CamberSplit| {
            [split.bending, split.shear, split.seat, split.wall, split.bearing, split.disc]
        };
        for (moving, still) in parts(&moving).iter().zip(parts(&still)) {
            // Beam weights act through consistent loads there and consistent masses here.
            assert_relative_eq!(*moving, still, max_relative = 1e-3);
        }
        let wheel = driven.wheels.of(side);
        assert_relative_eq!(wheel.camber_peak_split.sum(), wheel.camber_peak, max_relative = 1e-12);
        assert!(wheel.camber_peak_split.bearing / wheel.camber_peak < 0.1, "{:?}", wheel.camber_peak_split);
        let near = reduced.wheels.of(side).camber_peak_split;
        for (full, reduced) in parts(&wheel.camber_peak_split).iter().zip(parts(&near)) {
            assert_relative_eq!(*full, reduced, epsilon = 0.01 * wheel.camber_peak.abs());
        }
    }
}

/// Readings of the motion against statics, which finds stress from the forces of each beam.
#[test]
fn stress_at_rest_is_that_of_statics_at_every_station() {
    let axle = axle();
    let asked = ask(&axle, Road { left: Track::flat(), right: Track::flat() }, 20.0);
    let rated = flex(&axle, &standard_cases(&axle)[..1]).unwrap().cases.remove(0);
    for basis in [RideBasis::Full, RideBasis::Reduced] {
        let flat = ride(&axle, &Ride { basis, ..asked.clone() }).unwrap();
        let largest = flat.stations.iter().fold(0.0_f64, |most, station| most.max(station.stress.abs()));
        for still in &rated.stations {
            let Some(moving) = flat.stations.iter().find(|own| own.name == still.name) else { continue };
            // Weight of a beam between its ends bends it there, and statics adds that to what its ends carry.
            assert_relative_eq!(moving.stress.abs(), still.stress.abs(), epsilon = 2e-3 * largest);
        }
    }
}

#[test]
fn one_axle_made_ready_gives_the_rides_of_many_and_refuses_another_load() {
    let axle = axle();
    let ready = RidingAxle::of(&axle, axle.loading.rated_load).unwrap();
    for basis in [RideBasis::Full, RideBasis::Reduced] {
        for speed in [8.0, 15.0] {
            let asked = Ride { basis, ..ask(&axle, bump(0.08, Wheels::Left), speed) };
            assert_eq!(ready.ride(&asked).unwrap(), ride(&axle, &asked).unwrap());
        }
    }
    let unladen = Ride { axle_load: 25e3, ..ask(&axle, bump(0.08, BOTH), 15.0) };
    assert!(ready.ride(&unladen).unwrap_err().to_string().contains("axle load of the ride"));
}

#[test]
fn both_time_schemes_agree_on_a_gentle_ride() {
    let axle = axle();
    let asked = ask(&axle, bump(0.01, BOTH), 15.0);
    let usual = ride(&axle, &asked).unwrap();
    let average = ride(&axle, &Ride { scheme: Scheme::AverageAcceleration, ..asked.clone() }).unwrap();
    // Both are of second order; bow at 30 Hz has 33 steps a period, (2 pi / 33)^2 / 12 = 0.3 % of period each.
    let (a, b) = (usual.wheels.left.camber_peak_to_peak, average.wheels.left.camber_peak_to_peak);
    assert_relative_eq!(a, b, max_relative = 0.01);
    let outside = Scheme::GeneralizedAlpha { spectral_radius: 1.2 };
    let refused = ride(&axle, &Ride { scheme: outside, ..asked }).unwrap_err().to_string();
    assert!(refused.contains("spectral radius is 1.2") && refused.contains("from 0 to 1"), "{refused}");
}

#[test]
fn a_mirrored_bump_gives_the_mirrored_ride() {
    let axle = axle();
    let (left, right) =
        (over(&axle, bump(0.03, Wheels::Left), 15.0), over(&axle, bump(0.03, Wheels::Right), 15.0));
    for (a, b) in [(left.wheels.left, right.wheels.right), (left.wheels.right, right.wheels.left)] {
        assert_relative_eq!(a.largest_load, b.largest_load, max_relative = 1e-7);
        assert_relative_eq!(a.camber_peak_to_peak, b.camber_peak_to_peak, max_relative = 1e-7);
    }
}

#[test]
fn a_gentle_bump_scales_and_a_hard_one_lifts_the_tires() {
    let axle = axle();
    let gentle = over(&axle, bump(0.002, BOTH), 10.0);
    let double = over(&axle, bump(0.004, BOTH), 10.0);
    assert_eq!(gentle.contact_changes, 0);
    assert_relative_eq!(
        double.wheels.left.camber_peak_to_peak,
        2.0 * gentle.wheels.left.camber_peak_to_peak,
        max_relative = 1e-6
    );
    let hard = over(&axle, bump(0.12, BOTH), 15.0);
    assert!(hard.wheels.left.time_off_road > 0.0 && hard.contact_changes > 0);
    assert!(hard.wheels.left.smallest_load == 0.0 && hard.wheels.left.dynamic_load_factor > 1.5);
    assert_eq!(hard.partial, None);
    assert!(hard.energy_drift < 1e-2, "{}", hard.energy_drift);
}

#[test]
fn after_a_bump_the_camber_rings_at_a_mode() {
    let axle = axle();
    let rung = over_for(&axle, bump(0.01, BOTH), 20.0, 6.0);
    let found = modes(&axle, axle.loading.rated_load, 12).unwrap();
    let frequency = rung.wheels.left.dominant_frequency.unwrap();
    // Light damping shifts a resonance by less than the spectrum resolves, 1/6 Hz of 2 Hz.
    let nearest = found.modes.iter().map(|mode| (mode.frequency / frequency - 1.0).abs()).fold(1.0, f64::min);
    assert!(nearest < 0.03, "{frequency} {nearest}");
    // Slower than the wheel turns at 20 m/s: such a bounce prints no cups.
    assert_eq!(rung.wheels.left.cups_per_turn, None);
    assert!(rung.stations.iter().any(|station| station.stress.abs() > 1e8));
}

#[test]
fn a_step_settles_to_its_statics() {
    let axle = axle();
    let road = Road::new(Step::new(0.02).unwrap(), BOTH).unwrap();
    let outcome = over_for(&axle, road, 20.0, 15.0);
    let last = outcome.history.load.left.last().unwrap();
    // The body's bounce has died down to this share of the load.
    assert_relative_eq!(*last, outcome.wheels.left.load_at_rest, max_relative = 1e-3);
}

/// A road that rises slowly under one wheel ends where statics is with that wheel raised: the rest of the vehicle is the
/// same there and here, on an axle whose body leans at rest too.
#[test]
fn a_slow_rise_under_one_wheel_ends_as_statics_with_that_wheel_raised() {
    let mut lopsided = stiff_vehicle();
    lopsided.seats.left.at = 0.42;
    lopsided.wheels.right = wheel(TireLayout::Dual { spacing: 0.33 }, 0.03);
    for axle in [stiff_vehicle(), lopsided] {
        let cases = standard_cases(&axle);
        let raised = cases.iter().find(|case| case.name == "one-wheel-raised").unwrap();
        let still = flex(&axle, std::slice::from_ref(raised)).unwrap().cases.remove(0);
        let road = Road::new(Ramp::new(axle.loading.raise, 20.0).unwrap(), Wheels::Left).unwrap();
        let asked = Ride { to: 45.0, step: 0.02, ..ask(&axle, road, 1.0) };
        let history = ride(&axle, &asked).unwrap().history;
        for side in Side::BOTH {
            let (load, camber) = (history.load.of(side).last(), history.camber.of(side).last());
            assert_relative_eq!(*load.unwrap(), still.wheels.of(side).vertical_load, max_relative = 1e-5);
            assert_relative_eq!(*camber.unwrap(), still.wheels.of(side).camber_change, max_relative = 2e-4);
        }
    }
}

/// The axle under a vehicle whose rest resists roll, and well damped.
fn stiff_vehicle() -> Axle {
    let mut axle = axle();
    (axle.body_roll_stiffness, axle.body_roll_damping) = (600e3, 100e3);
    axle
}

/// At rest under more than the rated load the spring k and the stop kₛ share what comes on top, once the spring
/// has closed the clearance c: F = kₛ (S − S_rated − k c)/(k + kₛ), S the body's weight on one seat.
#[test]
fn an_overloaded_axle_rests_on_its_bump_stops() {
    let (k, stiffness, clearance) = (1.5e6, 2.5e6, 4e-3);
    let axle = stopped(BumpStop { clearance, stiffness, damping: 5e3 });
    let more = 60e3;
    let flat = Road { left: Track::flat(), right: Track::flat() };
    let outcome = ride(&axle, &Ride { axle_load: 89e3 + more, ..ask(&axle, flat, 20.0) }).unwrap();
    let force = stiffness * (0.5 * more - k * clearance) / (k + stiffness);
    for side in Side::BOTH {
        let hits = outcome.stops.of(side).unwrap();
        // Beam weights act through consistent loads in the rest that the clearance is measured from.
        assert_relative_eq!(hits.largest_force, force, max_relative = 1e-6);
        assert_eq!(hits.count, 0);
        assert!(outcome.wheels.of(side).camber_peak_to_peak < 1e-9);
    }
    let rated = ride(&axle, &ask(&axle, Road { left: Track::flat(), right: Track::flat() }, 20.0));
    assert_eq!(rated.unwrap().stops.left, Some(StopHits::default()));
}

#[test]
fn a_hard_bump_hits_the_stop_of_its_side_and_energy_balances() {
    let axle = stopped(BumpStop { clearance: 15e-3, stiffness: 2e6, damping: 2e3 });
    let left = over(&axle, bump(0.08, Wheels::Left), 15.0);
    let right = over(&axle, bump(0.08, Wheels::Right), 15.0);
    let hits = left.stops.left.unwrap();
    assert!(hits.count > 0 && hits.largest_force > 5e3, "{hits:?}");
    assert!(left.energy_drift < 1e-2 && left.partial.is_none(), "{}", left.energy_drift);
    let mirror = right.stops.right.unwrap();
    assert_eq!(mirror.count, hits.count);
    assert_relative_eq!(mirror.largest_force, hits.largest_force, max_relative = 1e-6);
    let without = over(&example::axle(), bump(0.08, Wheels::Left), 15.0);
    assert_eq!(without.stops.left, None);
    let distant = stopped(BumpStop { clearance: 0.4, stiffness: 2e6, damping: 2e3 });
    let distant = over(&distant, bump(0.08, Wheels::Left), 15.0);
    assert_eq!(distant.stops.left, Some(StopHits::default()));
    let (far, none) = (&distant.wheels.left, &without.wheels.left);
    assert_relative_eq!(far.largest_load, none.largest_load, max_relative = 1e-8);
    assert_relative_eq!(far.camber_peak_to_peak, none.camber_peak_to_peak, max_relative = 1e-8);
}

/// A half cycle in bump and one in rebound decay by exp(−π ζ) of their own, so that a cycle decays as with the
/// mean of both. Source: closed form of damped free vibration, S. S. Rao, Mechanical Vibrations, 6th ed. 2017,
/// sec. 2.6, from memory.
#[test]
fn dampers_of_two_slopes_decay_as_their_mean() {
    let decay = |bump_part: f64| {
        let mut axle = axle();
        for side in Side::BOTH {
            let seat = axle.seats.of_mut(side);
            (seat.damping, seat.rebound_damping) = (24e3 * bump_part, 24e3 * (1.0 - bump_part));
        }
        let outcome = over_for(&axle, bump(0.01, BOTH), 20.0, 6.0);
        let (load, rest) = (&outcome.history.load.left, outcome.wheels.left.load_at_rest);
        let late = load[1000..].windows(3).filter(|near| near[1] > near[0] && near[1] >= near[2]);
        let crests: Vec<f64> = late.map(|near| near[1] - rest).collect();
        (crests[4] / crests[0], outcome.wheels.left.largest_load)
    };
    let (even, bump_only, rebound_only) = (decay(0.5), decay(1.0), decay(0.0));
    // What the closed form neglects, tires in series with the springs, is of second order in a light damping.
    for (ratio, _) in [bump_only, rebound_only] {
        assert_relative_eq!(ratio, even.0, max_relative = 0.02);
    }
    assert!(bump_only.1 > rebound_only.1, "a damper in bump pushes the tire on the bump");
}

/// A short ride with its doubts.
fn doubts(road: Road, change: impl Fn(&mut Ride)) -> Vec<String> {
    let (axle, to) = (axle(), road.end() + 1.0);
    let mut asked = Ride { from: road.start() - 1.0, to, ..ask(&axle, road.clone(), 20.0) };
    change(&mut asked);
    ride(&axle, &asked).unwrap().warnings.into_iter().map(|warning| warning.text).collect()
}

fn profile(spacing: f64, count: u32, height: f64) -> Track {
    let (x, z): (Vec<_>, Vec<_>) = (0..count).map(|i| (f64::from(i) * spacing, height)).unzip();
    Track::new(MeasuredProfile::new(&x, &z, spacing).unwrap())
}

#[test]
fn a_road_that_the_ride_cannot_feel_is_doubted() {
    let only = |found: Vec<String>, words: &str| {
        assert!(found.len() == 1 && found[0].contains(words), "{words}: {found:?}");
    };
    assert_eq!(doubts(bump(0.02, BOTH), |_| ()), [""; 0]);
    let short = || Road::new(HaversineBump::new(0.02, 0.19).unwrap(), BOTH).unwrap();
    only(doubts(short(), |_| ()), "190 mm long, shorter than the tire's contact of 200 mm");
    assert_eq!(doubts(short(), |ride| ride.contact_length = 0.15), [""; 0]);
    only(doubts(bump(0.02, BOTH), |ride| ride.to = 0.5), "from -1.000 m to 0.500 m, but the road has");
    only(doubts(bump(0.02, BOTH), |ride| ride.from = 0.5), "the road has its bumps from 0.000 m");
    only(doubts(bump(0.02, BOTH), |ride| ride.step = 2.6e-3), "a time step passes 52 mm");
    assert_eq!(doubts(bump(0.02, BOTH), |ride| ride.step = 2.5e-3), [""; 0]);
    let coarse = Road { left: profile(0.25, 9, 0.0), right: profile(0.1, 21, 0.0) };
    only(doubts(coarse, |_| ()), "samples of the road lie up to 250 mm apart");
    // 5 degrees over the distance of the hubs is more than 100 mm and less than 300 mm on this axle.
    let lean = |height| Road { left: profile(0.1, 21, height), right: profile(0.1, 21, 0.0) };
    only(doubts(lean(0.3), |_| ()), "begin 300 mm apart in height");
    assert_eq!(doubts(lean(0.1), |_| ()), [""; 0]);
}

#[test]
fn a_profile_long_enough_has_its_roughness_index() {
    let axle = axle();
    let road = Road { left: profile(0.25, 100, 0.0), right: profile(0.25, 40, 0.0) };
    let outcome = over(&axle, road, 20.0);
    assert_eq!(
        (outcome.wheels.left.roughness_index, outcome.wheels.right.roughness_index),
        (Some(0.0), None)
    );
    assert_eq!(over(&axle, bump(0.02, BOTH), 20.0).wheels.left.roughness_index, None);
}

#[test]
fn speeds_and_loads_out_of_range_are_refused() {
    let axle = axle();
    let good = Ride { to: 10.0, ..example::ride_over(bump(0.01, BOTH)) };
    for bad in [
        Ride { speed: 0.0, ..good.clone() },
        Ride { speed: f64::NAN, ..good.clone() },
        Ride { step: -1e-3, ..good.clone() },
        Ride { to: -1.0, ..good.clone() },
        Ride { step: 1e-9, ..good.clone() },
        Ride { axle_load: 10.0, ..good.clone() },
    ] {
        assert!(ride(&axle, &bad).is_err(), "{bad:?}");
    }
}

/// Histories that would take more than 400 MB are refused before anything is solved, with what to do.
#[test]
fn a_ride_too_long_to_keep_is_refused_before_it_starts() {
    let axle = axle();
    let flat = Road { left: Track::flat(), right: Track::flat() };
    let keep = RecordOptions { stresses: false, shapes: 0 };
    let long = Ride { from: 0.0, to: 100.0, step: 1.1e-6, keep, ..ask(&axle, flat, 20.0) };
    let refused = |asked: &Ride| ride(&axle, asked).unwrap_err().to_string();
    let text = refused(&long);
    assert!(text.starts_with("the ride has 4.55 million time steps, and at most 4.17 million"), "{text}");
    assert!(text.contains("longer `time_step`") && !text.contains("station"), "{text}");
    let keep = RecordOptions { stresses: true, shapes: 0 };
    let text = refused(&Ride { step: 2.5e-6, keep, ..long });
    assert!(text.contains("or leave out the stress of the stations"), "{text}");
}

/// Camber, load and stress of a reduced basis against the full one, through lift-off, on few elements and on many.
#[test]
fn a_reduced_basis_gives_the_ride_of_the_full_one_within_one_percent() {
    let mut many = axle();
    let cut = |i: u8| UserStation { name: format!("cut-{i}"), y: -0.79 + 0.0353 * f64::from(i) };
    many.stations = (0..45).map(cut).collect();
    let many = many.checked().unwrap();
    for (axle, wheels) in [(axle(), BOTH), (axle(), Wheels::Left), (many, BOTH)] {
        let asked = ask(&axle, bump(0.12, wheels), 15.0);
        let full = ride(&axle, &asked).unwrap();
        let reduced = ride(&axle, &Ride { basis: RideBasis::Reduced, ..asked }).unwrap();
        assert!(full.wheels.left.time_off_road > 0.0);
        assert_eq!(full.method.modes_up_to, None);
        assert!(reduced.method.unknowns < full.method.unknowns / 5, "{:?}", reduced.method);
        for side in Side::BOTH {
            let (a, b) = (full.wheels.of(side), reduced.wheels.of(side));
            assert_relative_eq!(a.camber_peak_to_peak, b.camber_peak_to_peak, max_relative = 0.01);
            assert_relative_eq!(a.largest_load, b.largest_load, max_relative = 0.01);
            // The stiffest of the shapes keep fewer digits the shorter an element is.
            assert_relative_eq!(a.load_at_rest, b.load_at_rest, max_relative = 1e-8);
        }
        let largest = full.stations.iter().fold(0.0_f64, |most, station| most.max(station.stress.abs()));
        for (a, b) in full.stations.iter().zip(&reduced.stations) {
            assert_relative_eq!(a.stress, b.stress, epsilon = 0.01 * largest);
        }
    }
}

#[test]
fn stresses_and_shapes_are_kept_when_asked_for() {
    let axle = axle();
    let outcome = over(&axle, bump(0.03, Wheels::Left), 15.0);
    let history = &outcome.history;
    assert_eq!(history.stresses.len(), outcome.stations.len());
    for (station, stresses) in outcome.stations.iter().zip(&history.stresses) {
        assert_eq!(stresses.len(), history.time.len());
        let largest = stresses.iter().fold(0.0_f64, |most, stress| most.max(stress.abs()));
        assert_eq!(largest, station.stress.abs(), "{}", station.name);
    }
    let samples: Vec<usize> = history.shapes.iter().map(|shape| shape.sample).collect();
    let last = history.time.len() - 1;
    assert_eq!((samples.len(), samples[0], samples[10]), (11, 0, last));
    for shape in &history.shapes {
        assert_eq!(shape.line.len(), outcome.stations.len());
        let hubs = shape.hubs;
        let apart = axle.wheel_ends.left.mounting_face + axle.wheel_ends.right.mounting_face;
        let lean = (hubs.left.up - hubs.right.up) / apart;
        assert_relative_eq!(lean, history.roll[shape.sample], max_relative = 1e-12);
        assert_relative_eq!(lean - hubs.left.turn, history.camber.left[shape.sample], max_relative = 1e-9);
        // Bearings give tenths of a millimeter; places in the wrong order would be off by the roll.
        let end = shape.line[0];
        let inboard = outcome.stations[0].y - axle.wheel_ends.left.mounting_face;
        let at_hub = end.up - inboard * end.turn;
        assert!((at_hub - hubs.left.up).abs() < 5e-4, "{at_hub} {}", hubs.left.up);
    }
}

#[test]
fn nothing_more_is_kept_unless_asked_for() {
    let axle = axle();
    let road = bump(0.03, BOTH);
    let asked = Ride { keep: RecordOptions::default(), ..ask(&axle, road, 15.0) };
    let history = ride(&axle, &asked).unwrap().history;
    assert!(history.stresses.is_empty() && history.shapes.is_empty());
}

/// The usual step of 1 ms over a bump and over a kerb that throws the wheels off: what it leaves of the error of peak camber is
/// below 0.2 %.
#[test]
fn the_usual_step_leaves_little_of_the_error_of_peak_camber() {
    let axle = axle();
    for (road, speed) in [(bump(0.02, BOTH), 20.0), (bump(0.05, Wheels::Left), 15.0)] {
        let asked = Ride { to: speed, basis: RideBasis::Reduced, ..ask(&axle, road, speed) };
        let riding = RidingAxle::of(&axle, asked.axle_load).unwrap();
        let outcome = riding.ride(&asked).unwrap();
        let refined = riding.refined(&asked, &outcome).unwrap();
        let camber = refined.camber_peak_to_peak;
        assert_eq!(camber.0[0], outcome.camber_peak_to_peak());
        assert!(camber.error().abs() < 2e-3, "{refined:?} by {} s", asked.step);
    }
}
