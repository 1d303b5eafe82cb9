//! Fits: known unknowns come back, intervals hold what they promise, and what readings cannot tell is said.

use std::f64::consts::TAU;
use std::path::Path;

use approx::assert_relative_eq;
use axlebow_axle::{Side, StaticDesign, modes};
use axlebow_model::{Document, MODEL, Model, ReadQuantity, Reading, read_bytes, readings};
use axlebow_study::{FitError, FitOutcome, Scale, Unknown, estimate, fit, usual_unknowns};
use axlebow_units::Kind;
use rand_chacha::ChaCha12Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

const MODEL_FILE: &str = "trailer-152-thin-dual.toml";
const WALL: &str = "tube.wall";
const SEAT: &str = "seat[0].rotational_stiffness";
const UNDER_SEAT: &str = "seat[0].wall_flexibility";

fn bytes(name: &str) -> Vec<u8> {
    std::fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models").join(name)).unwrap()
}

fn document() -> Document {
    read_bytes(&bytes(MODEL_FILE), MODEL_FILE, &MODEL).unwrap()
}

/// The demo's readings, their values replaced by those of a model with other values.
fn synthetic(truth: &[(&str, f64)]) -> Vec<Reading> {
    let model = Model::of(&document()).unwrap();
    let mut taken = readings(&bytes("readings/trailer-152-thin.csv"), "readings", &model).unwrap();
    let mut document = document();
    truth.iter().for_each(|(path, value)| document.set_number(path, *value).unwrap());
    let axle = Model::of(&document).unwrap().axle;
    let design = StaticDesign::of(&axle).unwrap();
    for reading in &mut taken {
        let standing = design.case(&reading.load).unwrap();
        reading.value = match &reading.quantity {
            ReadQuantity::Camber(side) => standing.wheels.of(*side).camber - side.sign() * standing.axle_roll,
            ReadQuantity::Toe(side) => standing.wheels.of(*side).toe,
            ReadQuantity::Bow => standing.bow,
            ReadQuantity::NaturalFrequency(name) => {
                let found = modes(&axle, reading.load.actions.axle_load, 12).unwrap().modes;
                found.iter().find(|mode| mode.name == *name).unwrap().frequency
            }
            ReadQuantity::TreadDepth(_) => panic!("no tire was removed: {reading:?}"),
        };
    }
    taken
}

fn fitted(readings: &[Reading], paths: &[&str]) -> FitOutcome {
    let paths: Vec<String> = paths.iter().map(|path| (*path).to_owned()).collect();
    fit(&document(), readings, &paths).unwrap()
}

#[test]
fn readings_without_noise_give_the_unknowns_back() {
    let truth = [(WALL, 8.43e-3), (SEAT, 271e3)];
    let outcome = fitted(&synthetic(&truth), &[WALL, SEAT]);
    for (own, (path, value)) in outcome.unknowns.iter().zip(truth) {
        assert_eq!(own.unknown.path, path);
        assert_relative_eq!(own.value, value, max_relative = 1e-6);
    }
    assert!(outcome.estimate.converged && outcome.estimate.chi_squared < 1e-9, "{outcome:?}");
}

/// The play of a bearing starts at the lower end of its range, where its derivative is one-sided.
#[test]
fn an_unknown_that_starts_at_its_bound_is_found() {
    let file = String::from_utf8(bytes(MODEL_FILE)).unwrap();
    let file = file.replace("hub_mass = \"85 kg\"", "hub_mass = \"85 kg\"\nendplay = \"0 mm\"");
    let document = read_bytes(file.as_bytes(), MODEL_FILE, &MODEL).unwrap();
    let endplay = "wheel_end[0].endplay";
    let mut taken = synthetic(&[]);
    taken.retain(|reading| matches!(reading.quantity, ReadQuantity::Camber(_)));
    let mut loose = document.clone();
    loose.set_number(endplay, 0.3e-3).unwrap();
    let axle = Model::of(&loose).unwrap().axle;
    for reading in &mut taken {
        let ReadQuantity::Camber(side) = reading.quantity else { continue };
        reading.value =
            *StaticDesign::of(&axle).unwrap().shop_reading(&reading.load).unwrap().camber.of(side);
    }
    let outcome = fit(&document, &taken, &[endplay.to_owned()]).unwrap();
    assert_relative_eq!(outcome.unknowns[0].value, 0.3e-3, max_relative = 1e-6);
}

/// Arm and wall under the seat act in series: at one wall thickness only their sum shows in any reading about X.
#[test]
fn two_flexibilities_in_series_cannot_be_told_apart_by_camber() {
    let mut taken = synthetic(&[(SEAT, 300e3)]);
    taken.retain(|reading| matches!(reading.quantity, ReadQuantity::Camber(_)));
    let outcome = fitted(&taken, &[SEAT, UNDER_SEAT]);
    let warnings = &outcome.estimate.warnings;
    let both = warnings.iter().any(|own| own.text.contains(SEAT) && own.text.contains(UNDER_SEAT));
    assert!(both, "{warnings:?}");
    assert!(outcome.unknowns.iter().all(|own| own.interval.is_none()), "{:?}", outcome.unknowns);
    // What they do together is fitted all the same.
    assert!(outcome.estimate.converged && outcome.estimate.chi_squared < 1e-9, "{outcome:?}");
}

#[test]
fn an_unknown_that_no_reading_feels_is_named() {
    let mut taken = synthetic(&[]);
    taken.retain(|reading| matches!(reading.quantity, ReadQuantity::Camber(_)));
    let outcome = fitted(&taken, &[WALL, "loads.body_roll_radius"]);
    let warnings = &outcome.estimate.warnings;
    assert!(
        warnings.iter().any(|own| own.text == "the readings do not depend on loads.body_roll_radius"),
        "{warnings:?}"
    );
    assert!(outcome.unknowns[0].interval.is_some() && outcome.unknowns[1].interval.is_none());
}

/// The reading that is named leaves as much of the worst standard error as is said, once it is taken.
#[test]
fn a_further_reading_keeps_its_promise() {
    let taken = synthetic(&[(WALL, 8.43e-3), (SEAT, 271e3)]);
    let before = fitted(&taken, &[WALL, SEAT]);
    let best = &before.further[0];
    let mut more = taken.clone();
    more.push(best.reading.clone());
    let after = fitted(&more, &[WALL, SEAT]);
    let det = |outcome: &FitOutcome| {
        let errors: Vec<f64> = outcome.unknowns.iter().map(|own| own.stated_error.unwrap()).collect();
        let correlation = outcome.estimate.correlation[0][1].unwrap();
        errors[0] * errors[1] * (1.0 - correlation * correlation).sqrt()
    };
    assert!(best.leaves < 1.0 && det(&after) < det(&before), "{best:?}");
}

#[test]
fn what_cannot_be_fitted_is_refused() {
    let taken = synthetic(&[]);
    let refused = |readings: &[Reading], paths: &[&str]| {
        let paths: Vec<String> = paths.iter().map(|path| (*path).to_owned()).collect();
        fit(&document(), readings, &paths).unwrap_err().to_string()
    };
    assert_eq!(
        fit(&document(), &taken[..1], &[WALL.to_owned(), SEAT.to_owned()]).unwrap_err(),
        FitError::TooFew { readings: 1, unknowns: 2 }
    );
    assert!(refused(&taken, &[WALL, WALL]).contains("asked for twice"));
    assert!(refused(&taken, &["tube.wal"]).contains("did you mean `wall`?"));
    assert!(refused(&taken, &["kind"]).contains("is not a number"));
    let mut other = taken.clone();
    other[0].quantity = ReadQuantity::NaturalFrequency("wheel hip".to_owned());
    assert!(refused(&other, &[WALL]).contains("it has no mode `wheel hip`; accepted: body bounce"));
}

#[test]
fn wall_and_seats_are_the_usual_unknowns() {
    assert_eq!(usual_unknowns(&document(), &[]), [WALL, SEAT]);
}

#[test]
fn manufactured_camber_and_toe_are_unknown_where_camber_and_toe_are_read() {
    let mut taken = synthetic(&[]);
    assert_eq!(usual_unknowns(&document(), &taken), [WALL, SEAT, "wheel_end[0].camber"]);
    taken[0].quantity = ReadQuantity::Toe(Side::Left);
    let file = String::from_utf8(bytes(MODEL_FILE)).unwrap();
    let ends = file.find("[[wheel_end]]").unwrap();
    let end = file[ends + 1..].find("\n[").unwrap() + ends + 2;
    let two = format!("{}{}\n{}", &file[..end], &file[ends..end], &file[end..]);
    let two = read_bytes(two.as_bytes(), MODEL_FILE, &MODEL).unwrap();
    let made = ["wheel_end[0].camber", "wheel_end[0].toe", "wheel_end[1].camber"];
    assert_eq!(usual_unknowns(&two, &taken)[2..], made);
}

/// A wheel end that was not made upright comes back beside wall and seat, which it would else have made wrong.
#[test]
fn manufactured_camber_is_told_from_flex() {
    let truth = [(WALL, 8.43e-3), (SEAT, 271e3), ("wheel_end[0].camber", -1.5e-3)];
    let outcome = fitted(&synthetic(&truth), &truth.map(|(path, _)| path));
    for (own, (_, value)) in outcome.unknowns.iter().zip(truth) {
        assert_relative_eq!(own.value, value, max_relative = 1e-5);
    }
    let wrong = fitted(&synthetic(&truth), &[WALL, SEAT]);
    assert!(wrong.estimate.doubt().is_some(), "{:?}", wrong.estimate.chi_squared);
}

/// Two cambers at two loads, alike on both sides to the last digit, do not tell wall and seat apart: the seat runs to the end
/// of its range. An interval of the wall there would be narrow and without its true 9.6 mm.
#[test]
fn a_search_that_runs_off_tells_no_interval() {
    let mut taken = synthetic(&[(WALL, 9.6e-3), (SEAT, 300e3)]);
    taken.retain(|own| matches!(own.quantity, ReadQuantity::Camber(_)) && own.load.name != "55 kN");
    let step = 1e-6_f64.to_radians();
    taken.iter_mut().for_each(|own| own.value = (own.value / step).round() * step);
    let outcome = fitted(&taken, &[WALL, SEAT]);
    assert!(!outcome.estimate.converged && outcome.estimate.doubt().is_some(), "{outcome:?}");
    assert!(outcome.unknowns.iter().all(|own| own.interval.is_none() && own.stated_error.is_none()));
    assert!(outcome.estimate.covariance.iter().flatten().all(Option::is_none));
    let narrow = fitted(&taken, &[WALL]);
    let own = &narrow.unknowns[0];
    let [low, high] = own.interval.unwrap();
    // Readings that agree to the last digit do not make the gauge any better than it is.
    assert!(high - low > 2.0 * own.stated_error.unwrap() && (low..high).contains(&9.6e-3), "{own:?}");
}

/// Independent normal deviates (Box and Muller 1958).
fn normal(random: &mut ChaCha12Rng) -> f64 {
    let uniform = |random: &mut ChaCha12Rng| (random.next_u64() >> 11) as f64 * 2f64.powi(-53);
    let (u, v) = (1.0 - uniform(random), uniform(random));
    (-2.0 * u.ln()).sqrt() * (TAU * v).cos()
}

/// A cantilever of stiffness EI on a seat of rotational stiffness k: `w(x) = F x² (3L − x) / 6EI + F L x / k`
/// (superposition of textbook cases).
fn deflections(values: &[f64]) -> Vec<f64> {
    let (force, length) = (20e3, 1.5);
    let deflection = |step: u32| {
        let x = f64::from(step) * length / 8.0;
        force * (x * x * (3.0 * length - x) / (6.0 * values[0]) + length * x / values[1])
    };
    (1..=8).map(deflection).collect()
}

/// Bending stiffness (N m²) and rotational stiffness of the seat (N m/rad).
const TRUTH: [f64; 2] = [1.9e6, 2.9e6];

fn cantilever() -> [Unknown; 2] {
    let unknown = |path: &str, start: f64| Unknown {
        path: path.to_owned(),
        kind: Kind::Ratio,
        start,
        scale: Scale::Logarithm,
    };
    [unknown("bending stiffness", 1.5e6), unknown("seat", 3.5e6)]
}

/// SciPy's `curve_fit` and Student's t on the same readings, by scripts/recompute_fit.py; its derivatives are one-sided
/// differences of 1.5e-8, good for six digits of an interval's width.
#[test]
fn fit_and_intervals_match_scipy() {
    let offsets = [3.0, -5.0, 8.0, -2.0, -9.0, 6.0, 4.0, -7.0];
    let exact = deflections(&TRUTH);
    let readings: Vec<(f64, f64)> =
        exact.iter().zip(offsets).map(|(exact, off)| (exact + off * 1e-5, 0.1e-3)).collect();
    let found = estimate(&cantilever(), &readings, &|values, _| Ok(deflections(values))).unwrap();
    let scipy = [
        (1.912_108_329e6, [1.822_192_924e6, 2.006_460_575e6]),
        (2.890_100_098e6, [2.799_928_721e6, 2.983_175_435e6]),
    ];
    for (i, (value, interval)) in scipy.into_iter().enumerate() {
        assert_relative_eq!(found.values[i], value, max_relative = 1e-7);
        let own = found.intervals[i].unwrap();
        assert_relative_eq!(own[0], interval[0], max_relative = 1e-6);
        assert_relative_eq!(own[1], interval[1], max_relative = 1e-6);
    }
    assert_relative_eq!(found.correlation[0][1].unwrap(), -0.982_145_845, epsilon = 1e-6);
}

/// Of 1000 seeded fits, 95 % intervals hold the true value in 93 to 97 %: 2.9 standard deviations of the count.
#[test]
fn intervals_hold_the_truth_as_often_as_they_say() {
    let unknowns = cantilever();
    let exact = deflections(&TRUTH);
    let mut random = ChaCha12Rng::seed_from_u64(152);
    let (trials, error) = (1000, 0.1e-3);
    let mut held = [0; 2];
    for _ in 0..trials {
        let readings: Vec<(f64, f64)> =
            exact.iter().map(|own| (own + error * normal(&mut random), error)).collect();
        let found = estimate(&unknowns, &readings, &|values, _| Ok(deflections(values))).unwrap();
        for i in 0..2 {
            let [low, high] = found.intervals[i].unwrap();
            held[i] += usize::from((low..high).contains(&TRUTH[i]));
        }
    }
    println!("held {held:?} of {trials}");
    assert!(held.iter().all(|held| (930..=970).contains(held)), "{held:?}");
}

/// Slope, intercept and the slope's standard error of a straight line, in closed form: NIST/SEMATECH e-Handbook of Statistical
/// Methods, section 4.1.4.1 (formulas from memory).
#[test]
fn a_straight_line_has_the_closed_form_and_its_interval() {
    let (x, y) = ([1.0, 2.0, 3.0, 4.0, 5.0], [2.1, 3.9, 6.2, 7.8, 10.1]);
    let unknown = |path: &str| Unknown {
        path: path.to_owned(),
        kind: Kind::Ratio,
        start: 1.0,
        scale: Scale::Plain { size: 1.0 },
    };
    let readings = y.map(|y| (y, 0.5));
    let line = |values: &[f64], _: Option<&[f64]>| Ok(x.iter().map(|x| values[0] + values[1] * x).collect());
    let found = estimate(&[unknown("intercept"), unknown("slope")], &readings, &line).unwrap();
    let (mean_x, mean_y) = (3.0, y.iter().sum::<f64>() / 5.0);
    let slope = x.iter().zip(y).map(|(x, y)| (x - mean_x) * (y - mean_y)).sum::<f64>() / 10.0;
    let intercept = mean_y - slope * mean_x;
    let squares: f64 = x.iter().zip(y).map(|(x, y)| (y - intercept - slope * x).powi(2)).sum();
    let error = (squares / 3.0 / 10.0).sqrt();
    assert_relative_eq!(found.values[1], slope, max_relative = 1e-8);
    assert_relative_eq!(found.values[0], intercept, max_relative = 1e-7);
    // Student's t of 3 degrees of freedom, 97.5 %: 3.182 (NIST/SEMATECH e-Handbook, 1.3.6.7.2; from memory).
    let [low, high] = found.intervals[1].unwrap();
    assert_relative_eq!(0.5 * (high - low) / error, 3.182, epsilon = 0.0005);
}
