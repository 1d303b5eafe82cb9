//! Frequency response and random answers against closed forms and against motion in time.

use std::f64::consts::{PI, TAU};
use std::ops::ControlFlow;

use axlebow_fe::linalg::SymmetricMatrix;
use axlebow_fe::{
    Direction, DynamicSystem, Excitation, FeError, ForceLaw, LinearDamper, LocalLaw, Record, ReducedBasis,
    Start, TimedLoad, TransientSettings,
};

fn diagonal(values: &[f64]) -> SymmetricMatrix {
    let mut matrix = SymmetricMatrix::banded(values.len(), 0);
    values.iter().enumerate().for_each(|(i, value)| matrix.add(i, i, *value));
    matrix
}

/// 1 kg with √k = ω and damping 2 ζ ω.
fn oscillator(omega: f64, zeta: f64) -> DynamicSystem {
    let system = DynamicSystem::new(diagonal(&[omega * omega]), diagonal(&[1.0])).unwrap();
    system.with_damping(diagonal(&[2.0 * zeta * omega])).unwrap()
}

/// Eight masses in a row on springs, damped at three of them.
fn row() -> DynamicSystem {
    let mut stiffness = SymmetricMatrix::banded(8, 1);
    for i in 0..8 {
        stiffness.add(i, i, 2e4);
        if i > 0 {
            stiffness.add(i, i - 1, -1e4);
        }
    }
    let masses: Vec<f64> = (0..8).map(|i| 1.0 + 0.2 * i as f64).collect();
    let damping = diagonal(&[0.0, 8.0, 0.0, 0.0, 20.0, 0.0, 0.0, 5.0]);
    DynamicSystem::new(stiffness, diagonal(&masses)).unwrap().with_damping(damping).unwrap()
}

/// `1/√((ω₀² − ω²)² + (2ζω₀ω)²)`.
#[test]
fn answer_of_one_mass_is_the_closed_form() {
    let (omega, zeta) = (30.0, 0.08);
    let input = Excitation::force(Direction::along(0));
    let frequencies: Vec<f64> = (0..60).map(|i| 0.2 * f64::from(i)).collect();
    let found =
        oscillator(omega, zeta).frequency_response(&input, &[Direction::along(0)], &frequencies).unwrap();
    for (f, [real, imaginary]) in frequencies.iter().zip(&found.outputs[0]) {
        let w = TAU * f;
        let (a, b) = (omega * omega - w * w, 2.0 * zeta * omega * w);
        let size = a * a + b * b;
        assert!((real - a / size).abs() < 1e-14 && (imaginary + b / size).abs() < 1e-14, "{f}");
    }
}

/// Mean square of the displacement under a white force of two-sided density S₀ per rad/s: π S₀/(2 ζ ω³) for
/// 1 kg (Crandall & Mark 1963, from memory); S₀ = G/(4π) for the one-sided density G per Hz.
#[test]
fn white_noise_gives_the_closed_form() {
    let (omega, zeta, density) = (30.0, 0.05, 4.0);
    let input = Excitation::force(Direction::along(0));
    let frequencies: Vec<f64> = (0..=200_000).map(|i| 1e-3 * f64::from(i)).collect();
    let found =
        oscillator(omega, zeta).frequency_response(&input, &[Direction::along(0)], &frequencies).unwrap();
    let expected = (PI * density / (4.0 * PI) / (2.0 * zeta * f64::powi(omega, 3))).sqrt();
    // What lies above 200 Hz is G/(3 (2π)⁴ f³) of the mean square, 2e-8 of it.
    let rms = found.root_mean_square(0, 0, |_| density);
    assert!((rms / expected - 1.0).abs() < 1e-6, "{rms} {expected}");
}

#[test]
fn answer_through_a_spring_and_damper_goes_to_one_at_rest() {
    let (omega, zeta) = (30.0, 0.2);
    let input =
        Excitation { direction: Direction::along(0), stiffness: omega * omega, damping: 2.0 * zeta * omega };
    // At √2 of the natural frequency the base motion is passed on without change, whatever the damping.
    let frequencies = [0.0, omega * 2.0_f64.sqrt() / TAU];
    let found =
        oscillator(omega, zeta).frequency_response(&input, &[Direction::along(0)], &frequencies).unwrap();
    assert!(found.sizes(0).iter().all(|size| (size - 1.0).abs() < 1e-12), "{found:?}");
}

#[test]
fn steady_motion_in_time_has_the_size_and_phase_of_the_response() {
    let (mut system, frequency) = (row(), 9.0);
    let input = Excitation::force(Direction::along(1));
    let found = system.frequency_response(&input, &[Direction::along(6)], &[frequency]).unwrap();
    let [real, imaginary] = found.outputs[0][0];
    system.add_load(TimedLoad::new(Direction::along(1), move |t| (TAU * frequency * t).cos())).unwrap();
    let (mut worst, read) = (0.0_f64, Direction::along(6));
    let start = Start::Given { u: vec![0.0; 8], v: vec![0.0; 8] };
    let run = system.run(start, &TransientSettings::new(1e-4, 25.0), |record| {
        if let Record::Sample(sample) = record
            && sample.time > 24.0
        {
            let (sine, cosine) = (TAU * frequency * sample.time).sin_cos();
            worst = worst.max((read.dot(&sample.motion.u) - (real * cosine - imaginary * sine)).abs());
        }
        ControlFlow::Continue(())
    });
    run.unwrap();
    // The step makes periods (ωh)²/12 longer, here 3e-6, which near a resonance counts some tens of times.
    assert!(worst < 1e-4 * real.hypot(imaginary), "{worst} {real} {imaginary}");
}

/// Damping `Σ c bbᵀ` written out as a matrix, and the same as dampers along directions over the whole row.
#[test]
fn dampers_along_directions_answer_as_their_matrix_does() {
    let (mut along, mut matrix) = (row(), SymmetricMatrix::banded(8, 7));
    for (i, c) in [(1, 8.0), (4, 20.0), (7, 5.0)] {
        matrix.add(i, i, c);
    }
    for (damping, wave) in [(3.0, 1.0), (1.5, 2.0)] {
        let part = |i: usize| (wave * (i as f64 + 1.0) * PI / 9.0).sin();
        for i in 0..8 {
            (0..=i).for_each(|j| matrix.add(i, j, damping * part(i) * part(j)));
        }
        let direction = Direction::new((0..8).map(|i| (i, part(i))));
        along.add_damper(LinearDamper { direction, damping }).unwrap();
    }
    let written = row().with_damping(matrix).unwrap();
    let frequencies: Vec<f64> = (0..40).map(f64::from).collect();
    let (input, output) = (Excitation::force(Direction::along(1)), [Direction::along(6)]);
    let [along, written] = [along, written]
        .map(|system| system.frequency_response(&input, &output, &frequencies).unwrap().outputs.remove(0));
    for (a, b) in along.iter().zip(&written) {
        assert!((a[0] - b[0]).hypot(a[1] - b[1]) < 1e-12 * b[0].hypot(b[1]), "{a:?} {b:?}");
    }
}

#[test]
fn reduced_basis_answers_like_the_full_system() {
    let mut system = row();
    let over_all = Direction::new((0..8).map(|i| (i, 1.0 + i as f64)));
    system.add_damper(LinearDamper { direction: over_all, damping: 0.4 }).unwrap();
    for freedom in [1, 6] {
        system.add_load(TimedLoad::new(Direction::along(freedom), |_| 0.0)).unwrap();
    }
    let shapes = (1..=8).map(|k| (1..=8).map(|i| (PI * f64::from(i * k) / 9.0).sin()).collect());
    let basis = ReducedBasis::new(&system, shapes).unwrap();
    let reduced = basis.reduced(&system).unwrap();
    let frequencies: Vec<f64> = (0..80).map(|i| 0.5 * f64::from(i)).collect();
    let (from, to) = (Direction::along(1), Direction::along(6));
    let full =
        system.frequency_response(&Excitation::force(from.clone()), std::slice::from_ref(&to), &frequencies);
    let few = reduced.frequency_response(
        &Excitation::force(basis.direction(&from)),
        &[basis.direction(&to)],
        &frequencies,
    );
    let (full, few) = (full.unwrap(), few.unwrap());
    let greatest = full.sizes(0).into_iter().fold(0.0, f64::max);
    for (a, b) in full.outputs[0].iter().zip(&few.outputs[0]) {
        assert!((a[0] - b[0]).hypot(a[1] - b[1]) < 1e-10 * greatest);
    }
}

#[test]
fn small_motions_take_springs_of_closed_contacts_and_the_mean_of_two_slopes() {
    let mut system = DynamicSystem::new(diagonal(&[0.0, 1.0]), diagonal(&[2.0, 2.0])).unwrap();
    let contact = ForceLaw::Contact { stiffness: 700.0, damping: 6.0, clearance: 0.0 };
    let damper = ForceLaw::Damper { compression: 3.0, extension: 5.0 };
    let both = Direction::new([(0, 1.0), (1, -1.0)]);
    for (direction, force) in [(Direction::along(0), contact), (Direction::along(1), contact), (both, damper)]
    {
        system.add_law(LocalLaw::along(direction, force)).unwrap();
    }
    let small = system.linearized(&[-0.1, 0.1], 0.0).unwrap();
    let found =
        small.frequency_response(&Excitation::force(Direction::along(0)), &[Direction::along(1)], &[1.0]);
    let [real, imaginary] = found.unwrap().outputs[0][0];
    // Two freedoms: the second column of the inverse of [a b; b d].
    let w = TAU;
    let (a, d, b) = ([700.0 - 2.0 * w * w, 10.0 * w], [1.0 - 2.0 * w * w, 4.0 * w], [0.0, -4.0 * w]);
    let times = |x: [f64; 2], y: [f64; 2]| [x[0] * y[0] - x[1] * y[1], x[0] * y[1] + x[1] * y[0]];
    let (ad, bb) = (times(a, d), times(b, b));
    let determinant = [ad[0] - bb[0], ad[1] - bb[1]];
    let back = times(determinant, [real, imaginary]);
    assert!((back[0] + b[0]).abs() < 1e-9 && (back[1] + b[1]).abs() < 1e-9, "{back:?}");
}

#[test]
fn impossible_frequencies_are_refused() {
    let undamped = DynamicSystem::new(diagonal(&[0.0]), diagonal(&[1.0])).unwrap();
    for frequency in [-1.0, f64::NAN, 0.0] {
        let found = undamped.frequency_response(
            &Excitation::force(Direction::along(0)),
            &[Direction::along(0)],
            &[frequency],
        );
        assert!(matches!(found, Err(FeError::ImpossibleDynamics { .. })), "{frequency}");
    }
}

#[test]
fn several_inputs_at_once_answer_as_one_by_one() {
    let system = row();
    let inputs = [1, 6].map(|freedom| Excitation::force(Direction::along(freedom)));
    let outputs = [Direction::along(3), Direction::new([(0, 1.0), (7, -2.0)])];
    let frequencies: Vec<f64> = (0..20).map(f64::from).collect();
    let both = system.frequency_responses(&inputs, &outputs, &frequencies).unwrap();
    for (input, response) in inputs.iter().zip(&both) {
        assert_eq!(&system.frequency_response(input, &outputs, &frequencies).unwrap(), response);
    }
    assert!(system.frequency_responses(&[], &outputs, &frequencies).unwrap().is_empty());
}

/// `√((1 + (2ζr)²)/((1 − r²)² + (2ζr)²))` at r times the natural frequency (S. S. Rao, Mechanical Vibrations,
/// 6th ed. 2017, sec. 3.6, motion of the base; from memory).
#[test]
fn motion_passed_on_from_a_base_is_the_textbook_ratio() {
    let omega = 30.0;
    for zeta in [0.05, 0.25, 1.0] {
        let input = Excitation {
            direction: Direction::along(0),
            stiffness: omega * omega,
            damping: 2.0 * zeta * omega,
        };
        let ratios = [0.0, 0.3, 1.0, 2.0, 5.0];
        let found = oscillator(omega, zeta)
            .frequency_response(&input, &[Direction::along(0)], &ratios.map(|r| r * omega / TAU))
            .unwrap();
        for (r, size) in ratios.iter().zip(found.sizes(0)) {
            let damped = f64::powi(2.0 * zeta * r, 2);
            let printed = ((1.0 + damped) / ((1.0 - r * r).powi(2) + damped)).sqrt();
            assert!((size / printed - 1.0).abs() < 1e-12, "{zeta} {r}: {size} {printed}");
        }
    }
}
