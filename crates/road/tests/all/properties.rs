//! What must hold for every road, whatever lies on it.

use axlebow_road::{
    Coherence, Event, HalfSineBump, HaversineBump, MeasuredProfile, Pothole, Ramp, RandomRoad, Road,
    RoughnessSpectrum, Step, Track, Washboard, WaveBand, Wheels,
};
use proptest::prelude::*;

prop_compose! {
    fn any_profile()(samples in prop::collection::vec((0.05..0.5, -0.1..0.1), 2..40), first in -5.0..5.0)
        -> MeasuredProfile {
        let mut x = first;
        let (mut distances, mut heights) = (Vec::new(), Vec::new());
        for (spacing, height) in samples {
            x += spacing;
            distances.push(x);
            heights.push(height);
        }
        MeasuredProfile::new(&distances, &heights, 0.5).unwrap()
    }
}

fn any_event() -> impl Strategy<Value = Event> {
    let size = || (-0.2..0.2, 0.1..6.0);
    prop_oneof![
        size().prop_map(|(h, l)| HalfSineBump::new(h, l).unwrap().into()),
        size().prop_map(|(h, l)| HaversineBump::new(h, l).unwrap().into()),
        size().prop_map(|(h, l)| Ramp::new(h, l).unwrap().into()),
        (-0.2..0.2).prop_map(|h| Step::new(h).unwrap().into()),
        (0.01..0.2, 0.1..2.0, 1.0..9.0)
            .prop_map(|(d, l, s)| Pothole::new(d, l, s * 2.0 * d / l).unwrap().into()),
        (0.1..1.5, 0.0..0.05, 1_usize..20).prop_map(|(l, a, n)| Washboard::new(l, a, n).unwrap().into()),
        any_profile().prop_map(Event::from),
    ]
}

fn any_wheels() -> impl Strategy<Value = Wheels> {
    prop_oneof![(-5.0..5.0).prop_map(|lag| Wheels::Both { lag }), Just(Wheels::Left), Just(Wheels::Right)]
}

prop_compose! {
    /// A multiple of 1/64 m, which sums keep exact.
    fn exact(low: i32, high: i32)(count in low..high) -> f64 {
        f64::from(count) / 64.0
    }
}

fn bits(track: &Track, x: f64) -> u64 {
    // Adding 0 makes one zero of the two.
    (track.height(x) + 0.0).to_bits()
}

/// Midpoint sums of z and of (z - last z)² over a stretch.
fn sums(track: &Track, from: f64, to: f64) -> (f64, f64) {
    let count = 20_000;
    let step = (to - from) / f64::from(count);
    let rest = track.height(to);
    (0..count)
        .map(|i| track.height(from + (f64::from(i) + 0.5) * step))
        .fold((0.0, 0.0), |(area, energy), z| (area + z * step, energy + (z - rest).powi(2) * step))
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn a_mirrored_event_is_swapped_tracks_to_the_bit(
        event in any_event(), wheels in any_wheels(), x in -10.0..20.0, contact in prop::option::of(0.05..0.4)
    ) {
        let feel = |road: Road| contact.map_or(road.clone(), |length| road.enveloped(length).unwrap());
        let road = feel(Road::new(event.clone(), wheels).unwrap());
        let mirrored = feel(Road::new(event, wheels.mirrored()).unwrap());
        prop_assert_eq!(&road.clone().mirrored(), &mirrored);
        prop_assert_eq!(bits(&road.left, x), bits(&mirrored.right, x));
        prop_assert_eq!(bits(&road.right, x), bits(&mirrored.left, x));
        prop_assert_eq!(road.clone().mirrored().mirrored(), road);
    }

    #[test]
    fn a_shifted_road_is_the_same_ground_elsewhere(
        event in any_event(), wheels in any_wheels(), x in exact(-640, 1280), far in exact(-64_000, 64_000)
    ) {
        let road = Road::new(event, wheels).unwrap();
        let moved = road.shifted(far).unwrap();
        for (here, there) in [(&road.left, &moved.left), (&road.right, &moved.right)] {
            // A side that comes later lies at no exact place of its own.
            if here.start() == here.event().start() {
                prop_assert_eq!(bits(here, x), bits(there, x + far));
            }
            prop_assert!((there.start() - here.start() - far).abs() < 1e-12 * (1.0 + far.abs()));
        }
    }

    #[test]
    fn an_event_changes_nothing_outside_its_ends(event in any_event(), away in 1e-9..50.0) {
        let track = Track::new(event).enveloped(0.2).unwrap();
        let (first, last) = (track.height(track.start() - 100.0), track.height(track.end() + 100.0));
        prop_assert_eq!(track.height(track.start() - away), first);
        prop_assert_eq!(track.height(track.end() + away), last);
    }

    #[test]
    fn the_felt_height_is_the_mean_of_the_ground(
        event in any_event(), share in 0.0..1.0, contact in 0.05..0.4
    ) {
        let track = Track::new(event);
        let felt = track.enveloped(contact).unwrap();
        let x = felt.start() + share * (felt.end() - felt.start());
        let mean = sums(&track, x - 0.5 * contact, x + 0.5 * contact).0 / contact;
        // The midpoint sum errs by up to one of its 20 000 steps times the tallest edge, 0.2 m.
        prop_assert!((felt.height(x) - mean).abs() < 1.1e-5, "{} {mean}", felt.height(x));
    }

    #[test]
    fn enveloping_keeps_the_area_and_adds_no_energy(
        height in -0.2..0.2, length in 0.1..3.0, contact in 0.05..0.4
    ) {
        for event in [Event::from(HalfSineBump::new(height, length).unwrap()),
                      Pothole::new(0.1, length, 0.25 / length).unwrap().into()] {
            let track = Track::new(event);
            let felt = track.enveloped(contact).unwrap();
            let (from, to) = (felt.start() - 0.1, felt.end() + 0.1);
            let ((area, energy), (felt_area, felt_energy)) = (sums(&track, from, to), sums(&felt, from, to));
            prop_assert!((felt_area - area).abs() < 1e-6 * (1e-3 + area.abs()));
            prop_assert!(felt_energy < energy * (1.0 + 1e-6));
        }
    }

    #[test]
    fn resampling_at_its_own_places_keeps_a_profile(heights in prop::collection::vec(-0.1..0.1, 3..50)) {
        let distances: Vec<f64> = (0..heights.len()).map(|i| i as f64 * 0.25).collect();
        let profile = MeasuredProfile::new(&distances, &heights, 0.25).unwrap();
        prop_assert_eq!(profile.resampled(0.25).unwrap(), profile);
    }

    #[test]
    fn the_energy_of_a_random_road_is_that_of_its_spectrum(
        density in 1e-6..1e-2, seed in any::<u64>(), length in 100.0..600.0
    ) {
        let spectrum = RoughnessSpectrum::new(density).unwrap();
        let random = RandomRoad {
            spectrum, coherence: Coherence::isotropic(0.0).unwrap(), band: WaveBand::default(),
            length, spacing: 0.125, seed,
        };
        let [left, right] = random.profiles().unwrap();
        prop_assert_eq!(&left, &right); // no separation, the same ground
        let count = left.heights().len() - 1;
        let energy = left.heights()[1..].iter().map(|z| z * z).sum::<f64>() / count as f64;
        // Parseval: the mean square is the sum of the density over the harmonics.
        let step = 1.0 / left.length();
        let sum: f64 = (1..count / 2).map(|k| k as f64 * step).filter(|&n| WaveBand::default().contains(n))
            .map(|n| spectrum.density(n) * step).sum();
        prop_assert!((energy / sum - 1.0).abs() < 1e-10, "{energy} {sum}");
    }

    #[test]
    fn a_seed_gives_the_same_bits_on_any_thread(seed in any::<u64>()) {
        let random = RandomRoad {
            spectrum: RoughnessSpectrum::new(64e-6).unwrap(), coherence: Coherence::isotropic(1.8).unwrap(),
            band: WaveBand::default(), length: 100.0, spacing: 0.1, seed,
        };
        let here = random.profiles().unwrap();
        let there = std::thread::spawn(move || random.profiles().unwrap()).join().unwrap();
        prop_assert_eq!(&here, &there);
        let other = RandomRoad { seed: seed ^ 1, ..random }.profiles().unwrap();
        prop_assert_ne!(&here[0], &other[0]);
    }
}
