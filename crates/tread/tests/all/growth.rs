//! Waves that feed themselves, against closed forms and an independent computation.

use approx::assert_relative_eq;
use axlebow_tread::{
    Carcass, Duty, Face, HubWaves, OneMass, Pose, ShoulderAlone, Tread, TreadWave, WearWaves, WheelInertia,
    fastest,
};
use nalgebra::{Complex, DMatrix};

type Matrix = DMatrix<Complex<f64>>;

const CARCASS: Carcass = Carcass { radius: 0.51, stiffness: 1.1e6, rated_load: 30e3 };
const INERTIA: WheelInertia = WheelInertia { spin: 20.0, damping_time: 1e-3 };

/// A tread that its sidewalls do not load, so that a rib carries its stiffness by its deflection.
fn tread(ribs: usize, crown: f64) -> Tread {
    Tread { ribs, crown, sidewall_share: 0.0, ..Tread::usual(0.3).unwrap() }
}

/// The face of a tread that a side force over load wears, to and fro.
fn face(tread: Tread, places: &[f64], side_force: f64) -> Face {
    let duty = Duty::steady(side_force).unwrap();
    Face::new(tread, CARCASS, places).unwrap().with_duty(duty, false).unwrap()
}

/// A dual wheel of five ribs a tire.
fn dual() -> Face {
    face(tread(5, 0.002), &[0.165, -0.165], 0.03)
}

/// A hub of 500 kg and 60 kg m² on springs and dampers that couple its rise and camber.
fn hub(omega: f64) -> Matrix {
    let dynamic = |stiffness: f64, damping: f64, mass: f64| {
        Complex::new(stiffness - omega * omega * mass, omega * damping)
    };
    let coupled = dynamic(1e5, 5e2, 0.0);
    let own = [dynamic(3e5, 8e3, 500.0), dynamic(2e6, 1e3, 60.0)];
    Matrix::from_row_slice(2, 2, &[own[0], coupled, coupled, own[1]]).try_inverse().unwrap()
}

/// (k_s − mω²)(k_s + k_t − mω²) + c²ω² < 0 for m = 300 kg, k_t = 2.0e6, k_s = 2.0e5 N/m; scripts/recompute_growth.py.
#[test]
fn one_mass_grows_waves_in_the_band_of_its_closed_form() {
    let of = |damping: f64| OneMass { mass: 300.0, contact_stiffness: 2e6, support_stiffness: 2e5, damping };
    let hertz = std::f64::consts::TAU;
    let cases = [
        (0.0, [4.10936, 13.62922]),
        (4e3, [4.16543, 13.44576]),
        (8e3, [4.35097, 12.87241]),
        (16e3, [5.63287, 9.94297]),
    ];
    for (damping, band) in cases {
        let ours = of(damping).growing_band().unwrap();
        for (ours, expected) in ours.into_iter().zip(band) {
            assert!((ours / hertz - expected).abs() <= 5e-6, "{damping}: {ours}");
        }
    }
    for (damping, least, at) in
        [(4e3, -2.165831, 12.5233), (8e3, -0.728870, 11.3098), (16e3, -0.059893, 8.3706)]
    {
        assert!((of(damping).load_ratio(hertz * at).re - least).abs() <= 1e-6, "{damping}");
    }
    let values = [(6.0, -0.095940, 0.186356), (10.0, -0.581757, 0.782828), (13.0, 0.149000, 2.802235)];
    for (frequency, real, imaginary) in values {
        let ours = of(8e3).load_ratio(hertz * frequency);
        assert!((ours - Complex::new(real, imaginary)).norm() <= 1e-6, "{frequency}: {ours}");
    }
    let threshold = of(0.0).threshold_damping();
    assert!((threshold - 17_944.50).abs() <= 0.005, "{threshold}");
    assert!(of(1.001 * threshold).growing_band().is_none() && of(0.999 * threshold).growing_band().is_some());
}

/// σ² − (4δ/3R) σ + s_u² < 0; scripts/recompute_growth.py.
#[test]
fn a_shoulder_alone_feeds_on_itself_between_the_slips_of_its_closed_form() {
    let cases =
        [(0.025, [2.360189e-4, 6.779119e-2], 3.401361e-2), (0.030, [1.964729e-4, 8.143618e-2], 4.081633e-2)];
    for (deflection, slips, none_from) in cases {
        let shoulder = ShoulderAlone { radius: 0.49, deflection, usual_slip: 0.004 };
        let ours = shoulder.growing_slips().unwrap();
        for (ours, expected) in ours.into_iter().zip(slips) {
            assert_relative_eq!(ours, expected, max_relative = 3e-7);
        }
        assert_relative_eq!(shoulder.usual_slip_without_growth(), none_from, max_relative = 2e-7);
        // Near 3 R s_u²/(4 δ), as long as that is small.
        assert_relative_eq!(ours[0], 0.75 * 0.49 * 0.004_f64.powi(2) / deflection, max_relative = 0.005);
        let none = ShoulderAlone { usual_slip: none_from * 1.000_001, ..shoulder };
        assert!(none.growing_slips().is_none());
    }
}

/// All ribs in phase on one mass are one rib: `Λ = −φ² (k_t/F) Re H/k_t`, φ from the contact length alone.
#[test]
fn ribs_in_phase_on_a_mass_grow_as_one_rib_on_it() {
    let load = 25e3;
    let face = face(tread(4, 0.0), &[0.0], 0.03);
    let still = WheelInertia::default();
    let pose = Pose { load, camber: 0.0, toe: 0.0 };
    let waves = WearWaves::new(vec![HubWaves::new(&face, pose, still).unwrap()]);
    let mass = OneMass { mass: 300.0, contact_stiffness: 1.1e6, support_stiffness: 2e5, damping: 6e3 };
    let radius = waves.hubs()[0].rolling_radius();
    let length = 30e3 / (760e3 * 0.3) * (load / 30e3_f64).sqrt();
    for (count, speed) in [(1, 25.0), (2, 25.0), (3, 10.0), (5, 25.0)] {
        let wave = TreadWave { count, speed };
        let omega = wave.angular_frequency(radius);
        let dynamic = Complex::new(2e5 - 300.0 * omega * omega, 6e3 * omega);
        let compliance = Matrix::from_row_slice(2, 2, &[dynamic.inv(), 0.0.into(), 0.0.into(), 0.0.into()]);
        let half = 0.5 * f64::from(count) * length / radius;
        let expected = mass.load_ratio(omega) * -(half.sin() / half).powi(2) * (1.1e6 / load);
        let growth = waves.growth(wave, &compliance).unwrap();
        let together = growth.row_sum();
        for sum in together.iter() {
            assert!((sum - expected).norm() < 1e-9 * expected.norm(), "{count} {speed}: {sum} {expected}");
        }
        if expected.re > 0.0 {
            let wave = fastest(&growth).unwrap();
            assert_relative_eq!(wave.rate, expected.re, max_relative = 1e-9);
            assert_relative_eq!(wave.turning, expected.im, max_relative = 1e-9);
            assert!(wave.ribs.iter().all(|rib| (rib - Complex::from(1.0)).norm() < 1e-6), "{:?}", wave.ribs);
        }
    }
}

/// A dual wheel that leans and toes, its free speed held by the wheel's inertia: scripts/recompute_growth.py, where slopes are
/// central differences (hence 1e-5) and all unknowns of a wave are solved for at once.
#[test]
fn a_leaning_dual_grows_waves_as_computed_independently() {
    let cases = [
        ([40e3, -0.01, 0.001], (7, 25.0), 55.344_948_90, [196.305_267, -10.944_829]),
        ([40e3, -0.01, 0.001], (3, 29.0), 27.514_346_02, [238.278_563, -1.052_670]),
        ([55e3, 0.004, -0.002], (12, 22.0), 83.861_617_14, [51.546_101, -7.564_889]),
    ];
    for ([load, camber, toe], (count, speed), frequency, [rate, turning]) in cases {
        let pose = Pose { load, camber, toe };
        let waves = WearWaves::new(vec![HubWaves::new(&dual(), pose, INERTIA).unwrap()]);
        let wave = TreadWave { count, speed };
        assert_relative_eq!(waves.frequency(wave), frequency, max_relative = 1e-9);
        let compliance = hub(std::f64::consts::TAU * frequency);
        let ours = fastest(&waves.growth(wave, &compliance).unwrap()).unwrap();
        assert_relative_eq!(ours.rate, rate, max_relative = 1e-5);
        assert!((ours.turning - turning).abs() < 1e-5 * rate, "{} {turning}", ours.turning);
    }
}

/// Cambers at which the shoulders of a flatter tread on its usual duty turn, by root finding over central differences:
/// scripts/recompute_growth.py.
#[test]
fn the_critical_camber_is_where_a_shoulder_stops_leveling() {
    let flatter = face(tread(5, 0.0002), &[0.165, -0.165], 0.05);
    let critical = flatter.critical_camber(Pose { load: 40e3, camber: -0.01, toe: 0.001 }).unwrap();
    let (inner, outer) = (critical.inner.unwrap(), critical.outer.unwrap());
    assert!((inner + 0.006_192_06).abs() < 1e-8 && (outer - 0.006_192_06).abs() < 1e-8, "{critical:?}");
    assert!(!critical.is_upright());
    assert_relative_eq!(critical.margin(0.5 * inner).unwrap(), -0.5 * inner, max_relative = 1e-12);
    assert_relative_eq!(critical.margin(2.0 * outer).unwrap(), -outer, max_relative = 1e-12);
    // A tire whose crown makes both shoulders drag feeds on itself upright.
    let crowned = dual().critical_camber(Pose { load: 40e3, camber: 0.0, toe: 0.001 }).unwrap();
    assert!(crowned.is_upright() && crowned.margin(-0.01).unwrap() < 0.0, "{crowned:?}");
}

/// A flat tread that only leans passes the closed form: the shoulder's braking slip at its critical camber is the critical
/// slip at its own deflection, as long as the brush is linear. The closed form has wear by s²; a brush slips by its sliding
/// over the speed at which its rib rolls, so that a higher rib wears less by `2δ/(3R)` and the critical slip is as much lower.
#[test]
fn a_flat_shoulder_turns_at_the_critical_slip() {
    let face = face(Tread { friction: 50.0, ..tread(40, 0.0) }, &[0.0], 0.01);
    let upright = Pose { load: 30e3, camber: 0.0, toe: 0.0 };
    let camber = face.critical_camber(upright).unwrap().inner.unwrap();
    assert!(camber < 0.0);
    let leaning = Pose { camber, ..upright };
    let (pressed, rolling) = (face.pressed(leaning).unwrap(), face.rolling(leaning).unwrap());
    let shear = 0.5 * (1.2e6 / 0.016) * 30e3 / (760e3_f64.powi(2) * 0.3);
    let radius = 0.51 - pressed.deflection[0] / 3.0;
    let shoulder = ShoulderAlone { radius, deflection: pressed.deflection[0], usual_slip: 0.01 / shear };
    let critical = shoulder.growing_slips().unwrap()[0];
    let lower = 1.0 - shoulder.usual_slip_without_growth();
    assert!(lower > 0.95);
    assert_relative_eq!(-rolling.ribs[0].slip_forward, critical * lower, max_relative = 1e-3);
}

/// Another abradability wears faster and grows no faster for each millimeter worn.
#[test]
fn growth_for_tread_worn_does_not_depend_on_the_abradability() {
    let pose = Pose { load: 40e3, camber: -0.01, toe: 0.001 };
    let wave = TreadWave { count: 7, speed: 25.0 };
    let rate = |abradability: f64| {
        let face = face(Tread { abradability, ..tread(5, 0.002) }, &[0.165, -0.165], 0.03);
        let waves = WearWaves::new(vec![HubWaves::new(&face, pose, INERTIA).unwrap()]);
        fastest(&waves.growth(wave, &hub(350.0)).unwrap()).unwrap().rate
    };
    assert_relative_eq!(rate(1.0), rate(2.5), max_relative = 1e-9);
}

/// Two hubs that nothing joins grow as each alone; waves of one whose fellow is round are a part of the whole.
#[test]
fn hubs_apart_do_not_meet() {
    let pose = Pose { load: 40e3, camber: -0.01, toe: 0.0 };
    let one = HubWaves::new(&dual(), pose, INERTIA).unwrap();
    let wave = TreadWave { count: 5, speed: 25.0 };
    let pair = WearWaves::new(vec![one.clone(), one.clone()]);
    let own = hub(300.0);
    let mut joined = Matrix::zeros(4, 4);
    joined.view_mut((0, 0), (2, 2)).copy_from(&own);
    joined.view_mut((2, 2), (2, 2)).copy_from(&own);
    let alone = WearWaves::new(vec![one]).growth(wave, &own).unwrap();
    let both = pair.growth(wave, &joined).unwrap();
    assert!((both.view((0, 0), (10, 10)) - &alone).norm() < 1e-9 * alone.norm());
    assert!(both.view((0, 10), (10, 10)).norm() < 1e-9 * alone.norm());
    let second = pair.growth_of_hub(1, wave, &joined).unwrap();
    assert!((second - &alone).norm() < 1e-9 * alone.norm());
}

#[test]
fn waves_that_cannot_be_are_refused() {
    let pose = Pose { load: 40e3, camber: 0.0, toe: 0.0 };
    let waves = WearWaves::new(vec![HubWaves::new(&dual(), pose, INERTIA).unwrap()]);
    let compliance = hub(300.0);
    for (count, speed, thing) in [(0, 25.0, "number of cups"), (3, 0.0, "speed"), (3, f64::NAN, "speed")] {
        let error = waves.growth(TreadWave { count, speed }, &compliance).unwrap_err();
        assert!(error.to_string().starts_with(thing), "{error}");
        assert!(waves.growth_of_hub(0, TreadWave { count, speed }, &compliance).is_err());
    }
    let still = face(tread(5, 0.0), &[0.0], 0.0);
    let error = HubWaves::new(&still, pose, INERTIA).unwrap_err().to_string();
    assert!(error.contains("a tire that wears"), "{error}");
    let many = face(tread(61, 0.0), &[0.0], 0.03);
    assert!(HubWaves::new(&many, pose, INERTIA).unwrap_err().to_string().contains("at most 60"));
    let negative = WheelInertia { spin: -1.0, damping_time: 0.0 };
    assert!(HubWaves::new(&dual(), pose, negative).is_err());
    let nothing = Matrix::from_element(2, 2, Complex::new(f64::NAN, 0.0));
    assert!(fastest(&nothing).is_err());
}
