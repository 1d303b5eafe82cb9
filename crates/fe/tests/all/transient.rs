//! Motion in time against closed forms, energy and symmetry.

use std::f64::consts::{PI, TAU};
use std::ops::ControlFlow;

use axlebow_fe::linalg::SymmetricMatrix;
use axlebow_fe::{
    Attachment, Direction, DynamicSystem, Ended, FeError, ForceLaw, Freedom, LinearDamper, LocalLaw, Record,
    ReducedBasis, Scheme, Start, Structure, TimedLoad, Transient, TransientSettings,
};

const GRAVITY: f64 = 9.81;

fn diagonal(values: &[f64]) -> SymmetricMatrix {
    let mut matrix = SymmetricMatrix::banded(values.len(), 0);
    values.iter().enumerate().for_each(|(i, value)| matrix.add(i, i, *value));
    matrix
}

/// Equal masses in a row, with springs between them and from the ends to the ground.
fn row_of(masses: usize, stiffness: f64) -> DynamicSystem {
    let mut matrix = SymmetricMatrix::banded(masses, 1);
    for i in 0..masses {
        matrix.add(i, i, 2.0 * stiffness);
        if i > 0 {
            matrix.add(i, i - 1, -stiffness);
        }
    }
    DynamicSystem::new(matrix, diagonal(&vec![1.0; masses])).unwrap()
}

fn finish(system: &DynamicSystem, start: Start, settings: &TransientSettings) -> Transient {
    system.run(start, settings, |_| ControlFlow::Continue(())).unwrap()
}

fn given(u: &[f64], v: &[f64]) -> Start {
    Start::Given { u: u.to_vec(), v: v.to_vec() }
}

fn contact(stiffness: f64, damping: f64, clearance: f64) -> ForceLaw {
    ForceLaw::Contact { stiffness, damping, clearance }
}

/// A mass of 2 kg above a spring of 5000 N/m that it can leave.
fn bouncer(damping: f64) -> DynamicSystem {
    let mut system = DynamicSystem::new(diagonal(&[0.0]), diagonal(&[2.0])).unwrap();
    system.add_law(LocalLaw::along(Direction::along(0), contact(5000.0, damping, 0.0))).unwrap();
    system.add_load(TimedLoad::new(Direction::along(0), |_| -2.0 * GRAVITY)).unwrap();
    system
}

#[test]
fn energy_without_damping_drifts_less_than_1e_6_in_10000_steps() {
    let system = row_of(20, 4e4);
    let u: Vec<f64> = (0..20).map(|i| 0.01 * ((i * i) % 7) as f64).collect();
    let run = finish(&system, given(&u, &[0.0; 20]), &TransientSettings::new(1e-3, 10.0));
    assert_eq!((run.ended, run.steps), (Ended::Completed, 10_000));
    assert!(run.balance.drift() < 1e-10, "{:e}", run.balance.drift());
    assert!((run.balance.kinetic + run.balance.strain - run.balance.start).abs() < 1e-10 * run.balance.start);
}

#[test]
fn energy_balances_with_linear_damping_springs_and_a_moving_base() {
    let mut system = row_of(4, 2e3).with_damping(diagonal(&[3.0, 0.0, 1.0, 2.0])).unwrap();
    let spring = ForceLaw::Spring { stiffness: 900.0, damping: 20.0 };
    let law = LocalLaw::along(Direction::along(1), spring)
        .on_base(|t| [0.1 * (7.0 * t).sin(), 0.7 * (7.0 * t).cos()]);
    system.add_law(law).unwrap();
    system.add_load(TimedLoad::new(Direction::along(3), |t| 40.0 * (5.0 * t).cos())).unwrap();
    let run = finish(&system, given(&[0.0; 4], &[1.0, 0.0, -2.0, 0.0]), &TransientSettings::new(2e-3, 6.0));
    assert!(run.balance.work > 1.0 && run.balance.dissipated > 1.0, "{:?}", run.balance);
    // The base moves by its own law between steps, so the balance is exact only for the motion in between.
    assert!(run.balance.drift() < 1e-9, "{:e}", run.balance.drift());
}

/// A damping matrix `Σ c bbᵀ` written out, and the same as dampers along directions over the whole row.
#[test]
fn dampers_along_directions_move_a_system_as_their_matrix_does() {
    let directions = [(2.5, [0.3, -1.0, 0.5, 0.8]), (0.7, [1.0, 1.0, 1.0, 1.0]), (0.0, [9.0, 0.0, 0.0, 9.0])];
    let mut matrix = SymmetricMatrix::banded(4, 3);
    let mut along = row_of(4, 2e3);
    for (damping, parts) in directions {
        for i in 0..4 {
            (0..=i).for_each(|j| matrix.add(i, j, damping * parts[i] * parts[j]));
        }
        let direction = Direction::new(parts.into_iter().enumerate());
        along.add_damper(LinearDamper { direction, damping }).unwrap();
    }
    let written = row_of(4, 2e3).with_damping(matrix).unwrap();
    let spring = ForceLaw::Spring { stiffness: 900.0, damping: 20.0 };
    let [along, written] = [along, written].map(|mut system| {
        system.add_law(LocalLaw::along(Direction::along(1), spring)).unwrap();
        let start = given(&[0.0; 4], &[1.0, 0.0, -2.0, 0.0]);
        finish(&system, start, &TransientSettings::new(2e-3, 1.0))
    });
    for (a, b) in along.last.u.iter().zip(&written.last.u) {
        assert!((a - b).abs() < 1e-12, "{a} {b}");
    }
    assert!((along.balance.dissipated / written.balance.dissipated - 1.0).abs() < 1e-9);
    assert!(along.balance.dissipated > 1.0 && along.balance.drift() < 1e-9, "{:?}", along.balance);
}

/// Error at t = 1 of a damped mass under a harmonic load that keeps it in its steady motion.
fn steady_error(scheme: Scheme, step: f64) -> f64 {
    let (k, c, omega, force) = (400.0, 4.0, 11.0_f64, 30.0);
    let mut system = DynamicSystem::new(diagonal(&[k]), diagonal(&[1.0])).unwrap();
    system = system.with_damping(diagonal(&[c])).unwrap();
    system.add_load(TimedLoad::new(Direction::along(0), move |t| force * (omega * t).cos())).unwrap();
    let (real, imaginary) = (k - omega * omega, c * omega);
    let (size, lag) = (force / real.hypot(imaginary), imaginary.atan2(real));
    let start = given(&[size * lag.cos()], &[size * omega * lag.sin()]);
    let run = finish(&system, start, &TransientSettings { scheme, ..TransientSettings::new(step, 1.0) });
    (run.last.u[0] - size * (omega - lag).cos()).abs() / size
}

#[test]
fn error_falls_with_the_square_of_the_step() {
    let soft = Scheme::GeneralizedAlpha { spectral_radius: 0.6 };
    for scheme in [Scheme::AverageAcceleration, soft] {
        let order = (steady_error(scheme, 4e-3) / steady_error(scheme, 2e-3)).log2();
        assert!((order - 2.0).abs() < 0.1, "{scheme:?}: {order}");
    }
}

#[test]
fn fast_motions_decay_by_the_spectral_radius() {
    let system = DynamicSystem::new(diagonal(&[1e12]), diagonal(&[1.0])).unwrap();
    let last = |rho, steps: f64| {
        let scheme = Scheme::GeneralizedAlpha { spectral_radius: rho };
        let settings = TransientSettings { scheme, ..TransientSettings::new(0.1, 0.1 * steps) };
        finish(&system, given(&[1.0], &[0.0]), &settings).last.u[0].abs()
    };
    for rho in [0.5, 0.8] {
        // The double root at −ρ adds a factor that grows with the number of steps.
        let ratio = last(rho, 81.0) / last(rho, 80.0);
        assert!((ratio / rho - 1.0).abs() < 0.03, "{rho}: {ratio}");
    }
    assert!(last(0.0, 4.0) < 1e-6);
}

/// Times of touch and lift-off.
fn contacts(system: &DynamicSystem, start: Start, settings: &TransientSettings) -> Vec<(f64, bool)> {
    let mut changes = Vec::new();
    let run = system.run(start, settings, |record| {
        if let Record::Contact { time, touches, .. } = record {
            changes.push((time, touches));
        }
        ControlFlow::Continue(())
    });
    assert_eq!(run.unwrap().ended, Ended::Completed);
    changes
}

#[test]
fn bouncing_mass_flies_and_presses_as_long_as_the_closed_form_says() {
    let (height, omega) = (0.05, (5000.0_f64 / 2.0).sqrt());
    let speed = (2.0 * GRAVITY * height).sqrt();
    let fall = speed / GRAVITY;
    // g/ω² (1 − cos θ) + v/ω sin θ = 0.
    let press = 2.0 / omega * (PI - (speed * omega / GRAVITY).atan());
    let settings = TransientSettings { event_tolerance: 1e-6, ..TransientSettings::new(1e-3, 1.0) };
    let found = contacts(&bouncer(0.0), given(&[height], &[0.0]), &settings);
    assert!(found.len() >= 4, "{found:?}");
    let mut expected = fall;
    for (index, (time, touches)) in found.into_iter().enumerate() {
        assert_eq!(touches, index % 2 == 0);
        // 1 kHz on a spring of 8 Hz: the period comes out (ωh)²/12 = 2e-4 of the 65 ms in contact too long.
        assert!((time - expected).abs() < 3e-5 * (1 + index) as f64, "{index}: {time} for {expected}");
        expected += if touches { press } else { 2.0 * fall };
    }
}

#[test]
fn bounce_times_converge_with_the_step() {
    let omega = 50.0_f64;
    let press = 2.0 / omega * (PI - ((2.0 * GRAVITY * 0.05).sqrt() * omega / GRAVITY).atan());
    let error = |step| {
        let settings = TransientSettings {
            event_tolerance: 1e-7,
            most_halvings: 16,
            ..TransientSettings::new(step, 0.3)
        };
        let found = contacts(&bouncer(0.0), given(&[0.05], &[0.0]), &settings);
        (found[1].0 - found[0].0 - press).abs()
    };
    assert!(error(5e-4) < 0.3 * error(1e-3) && error(5e-4) < 1e-5, "{} {}", error(1e-3), error(5e-4));
}

#[test]
fn energy_of_a_bouncing_mass_balances() {
    let settings =
        TransientSettings { event_tolerance: 1e-7, most_halvings: 16, ..TransientSettings::new(1e-3, 2.0) };
    for (damping, least, allowed) in [(0.0, 0.0, 1e-6), (20.0, 0.5, 1e-5)] {
        let run = finish(&bouncer(damping), given(&[0.05], &[0.0]), &settings);
        assert!(run.balance.drift() < allowed, "{damping}: {:e} {:?}", run.balance.drift(), run.balance);
        assert!(run.balance.dissipated >= least, "{:?}", run.balance);
    }
}

#[test]
fn rest_is_where_springs_and_contacts_balance_and_stays_there() {
    let system = bouncer(30.0);
    let u = system.equilibrium(0.0).unwrap();
    assert!((u[0] + 2.0 * GRAVITY / 5000.0).abs() < 1e-15);
    let run = finish(&system, Start::Equilibrium, &TransientSettings::new(1e-3, 1.0));
    assert!((run.last.u[0] - u[0]).abs() < 1e-12 && run.last.v[0].abs() < 1e-9);
}

#[test]
fn rest_finds_which_contacts_stay_open() {
    let mut system = row_of(3, 100.0);
    for (freedom, clearance) in [(0, -0.02), (1, 0.5), (2, 0.01)] {
        let law = LocalLaw::along(Direction::along(freedom), contact(1e6, 0.0, clearance));
        system.add_law(law).unwrap();
    }
    let u = system.equilibrium(0.0).unwrap();
    assert!((u[0] - 0.02).abs() < 1e-4 && u[1] > 0.0 && u[2] > 0.0, "{u:?}");
}

#[test]
fn plane_gap_carries_a_load_along_it_at_any_angle() {
    for angle in [0.0_f64, 0.4, 2.0, 4.5] {
        let mut system = DynamicSystem::new(diagonal(&[1.0, 1.0]), diagonal(&[3.0, 3.0])).unwrap();
        let pair = [Direction::along(0), Direction::along(1)];
        system.add_law(LocalLaw::plane_gap(pair, 1e6, 5e-4)).unwrap();
        let (cosine, sine) = (angle.cos(), angle.sin());
        for (freedom, share) in [(0, cosine), (1, sine)] {
            system.add_load(TimedLoad::new(Direction::along(freedom), move |_| 1000.0 * share)).unwrap();
        }
        let u = system.equilibrium(0.0).unwrap();
        // k (r − c) + 1·r = F.
        let r = (1000.0 + 1e6 * 5e-4) / (1e6 + 1.0);
        assert!((u[0] - r * cosine).abs() < 1e-12 && (u[1] - r * sine).abs() < 1e-12, "{u:?}");
        let run = finish(&system, given(&[0.0; 2], &[0.0; 2]), &TransientSettings::new(1e-4, 0.5));
        assert_eq!(run.ended, Ended::Completed);
        assert!(run.balance.drift() < 1e-3, "{:e}", run.balance.drift());
    }
}

/// Two masses on springs with stops on both sides, a two-slope damper and a gap between them.
fn stopped(sign: f64, order: [usize; 2]) -> DynamicSystem {
    let [a, b] = order;
    let mut system = row_of(2, 3e3);
    let along = |freedom, factor| Direction::new([(freedom, factor)]);
    for factor in [1.0, -1.0] {
        system.add_law(LocalLaw::along(along(a, factor), contact(1e5, 0.0, 0.01))).unwrap();
    }
    let damper = ForceLaw::Damper { compression: 10.0, extension: 40.0 };
    system.add_law(LocalLaw::along(along(b, sign), damper)).unwrap();
    system.add_load(TimedLoad::new(Direction::along(b), move |t| sign * 200.0 * (20.0 * t).sin())).unwrap();
    system
}

#[test]
fn opposite_input_gives_exactly_opposite_motion() {
    let settings = TransientSettings::new(1e-3, 2.0);
    let one = finish(&stopped(1.0, [0, 1]), given(&[0.0; 2], &[0.0; 2]), &settings);
    let other = finish(&stopped(-1.0, [0, 1]), given(&[0.0; 2], &[0.0; 2]), &settings);
    assert!(one.counts.contact_changes > 4);
    for (u, opposite) in one.last.u.iter().zip(&other.last.u) {
        assert_eq!(*u, -opposite);
    }
}

#[test]
fn straight_pieces_solved_at_once_move_as_those_iterated_to_the_end() {
    let run = |tolerance: f64| {
        let settings = TransientSettings { newton_tolerance: tolerance, ..TransientSettings::new(1e-3, 0.5) };
        finish(&stopped(1.0, [0, 1]), given(&[0.0; 2], &[0.0; 2]), &settings)
    };
    // One ends where the laws keep their slopes, the other looks at what is left; 22 impacts let rounding grow.
    let (once, iterated) = (run(1e-11), run(1e-14));
    assert_eq!(once.counts.contact_changes, iterated.counts.contact_changes);
    for (u, expected) in once.last.u.iter().zip(&iterated.last.u) {
        assert!((u - expected).abs() < 1e-12, "{u} {expected}");
    }
}

#[test]
fn exchanged_sides_give_exchanged_motion() {
    let settings = TransientSettings { newton_tolerance: 1e-14, ..TransientSettings::new(1e-3, 0.5) };
    let one = finish(&stopped(1.0, [0, 1]), given(&[0.0; 2], &[0.0; 2]), &settings);
    let other = finish(&stopped(1.0, [1, 0]), given(&[0.0; 2], &[0.0; 2]), &settings);
    assert_eq!(one.counts, other.counts);
    // Elimination takes the freedoms in their order, so only rounding may differ.
    for (u, exchanged) in one.last.u.iter().zip(other.last.u.iter().rev()) {
        assert!((u - exchanged).abs() < 1e-12, "{u} {exchanged}");
    }
}

#[test]
fn what_does_not_converge_ends_the_run_and_says_where() {
    let settings = TransientSettings { newton_tolerance: 1e-300, ..TransientSettings::new(1e-3, 1.0) };
    let mut samples = 0;
    let run = bouncer(3.0).run(given(&[0.05], &[0.0]), &settings, |record| {
        samples += usize::from(matches!(record, Record::Sample(_)));
        ControlFlow::Continue(())
    });
    let run = run.unwrap();
    let Ended::NoConvergence { time, law } = run.ended else { panic!("{:?}", run.ended) };
    assert!(run.is_partial() && law == 0 && time > 0.09 && samples == run.steps + 1, "{time} {samples}");
}

#[test]
fn numbers_that_are_not_finite_end_the_run() {
    let mut system = bouncer(3.0);
    system.add_load(TimedLoad::new(Direction::along(0), |t| if t > 0.5 { f64::NAN } else { 0.0 })).unwrap();
    let run = finish(&system, given(&[0.05], &[0.0]), &TransientSettings::new(1e-3, 1.0));
    assert!(matches!(run.ended, Ended::NotFinite { time } if (time - 0.5).abs() < 1e-9), "{:?}", run.ended);
}

#[test]
fn the_caller_can_break_off() {
    let run =
        bouncer(3.0).run(given(&[0.05], &[0.0]), &TransientSettings::new(1e-3, 1.0), |record| match record {
            Record::Sample(sample) if sample.time > 0.1 => ControlFlow::Break(()),
            _ => ControlFlow::Continue(()),
        });
    assert!(matches!(run.unwrap().ended, Ended::BrokenOff { time } if (time - 0.101).abs() < 1e-9));
}

#[test]
fn impossible_input_is_refused() {
    let one = || DynamicSystem::new(diagonal(&[1.0]), diagonal(&[1.0])).unwrap();
    let refused =
        |result: Result<(), FeError>| assert!(matches!(result, Err(FeError::ImpossibleDynamics { .. })));
    refused(DynamicSystem::new(diagonal(&[1.0]), diagonal(&[1.0, 1.0])).map(drop));
    refused(one().with_damping(diagonal(&[1.0, 2.0])).map(drop));
    refused(one().add_load(TimedLoad::new(Direction::along(1), |_| 0.0)));
    refused(one().add_law(LocalLaw::along(Direction::along(0), contact(-1.0, 0.0, 0.0))).map(drop));
    refused(one().add_law(LocalLaw::along(Direction::along(0), contact(1.0, 0.0, f64::NAN))).map(drop));
    let settings = TransientSettings::new(1e-3, 1.0);
    let run = |start, settings| one().run(start, &settings, |_| ControlFlow::Continue(())).map(drop);
    refused(run(given(&[0.0; 2], &[0.0]), settings));
    refused(run(given(&[f64::NAN], &[0.0]), settings));
    refused(run(given(&[0.0], &[0.0]), TransientSettings { step: 0.0, ..settings }));
    refused(run(given(&[0.0], &[0.0]), TransientSettings { most_halvings: 31, ..settings }));
    let scheme = Scheme::GeneralizedAlpha { spectral_radius: 1.5 };
    refused(run(given(&[0.0], &[0.0]), TransientSettings { scheme, ..settings }));
    let loose = DynamicSystem::new(diagonal(&[0.0]), diagonal(&[0.0])).unwrap();
    let run = loose.run(given(&[0.0], &[0.0]), &settings, |_| ControlFlow::Continue(()));
    assert!(matches!(run, Err(FeError::Loose { equation: 0 })));
}

#[test]
fn a_free_structure_without_closed_contacts_has_no_rest() {
    let mut system = bouncer(0.0);
    system.add_load(TimedLoad::new(Direction::along(0), |_| 100.0)).unwrap();
    assert!(matches!(system.equilibrium(0.0), Err(FeError::NoEquilibrium { law: 0 })));
}

/// The discrete motion of an undamped mass is a cosine of period T (1 + PE).
#[test]
fn period_is_elongated_as_bathe_says() {
    for (ratio, expected) in
        [(0.01, 3.289_003e-4), (0.05, 8.171_243e-3), (0.1, 3.207_491e-2), (0.2, 0.120_033_1)]
    {
        let system = DynamicSystem::new(diagonal(&[TAU * TAU]), diagonal(&[1.0])).unwrap();
        let run = finish(&system, given(&[1.0], &[0.0]), &TransientSettings::new(ratio, ratio));
        let elongation = TAU * ratio / run.last.u[0].acos() - 1.0;
        assert!((elongation - expected).abs() < 1e-6, "{ratio}: {elongation} {expected}");
    }
}

/// Ten masses in a row whose lowest shapes are known: sin(π i k/11).
fn row_shapes(count: usize) -> impl Iterator<Item = Vec<f64>> {
    (1..=count).map(|k| (1..=10).map(|i| (PI * (i * k) as f64 / 11.0).sin()).collect())
}

fn driven_row(damped: bool) -> DynamicSystem {
    let mut system = row_of(10, 5e4);
    if damped {
        system = system.with_damping(diagonal(&[0.0, 2.0, 0.0, 0.0, 5.0, 0.0, 0.0, 0.0, 1.0, 0.0])).unwrap();
        let over_all = Direction::new((0..10).map(|i| (i, 0.5 - (i % 3) as f64)));
        system.add_damper(LinearDamper { direction: over_all, damping: 0.5 }).unwrap();
    }
    system.add_law(LocalLaw::along(Direction::along(7), contact(2e4, 20.0, 0.01))).unwrap();
    system.add_load(TimedLoad::new(Direction::along(2), |t| 500.0 * (30.0 * t).sin())).unwrap();
    system
}

fn history(system: &DynamicSystem, read: &Direction) -> Vec<f64> {
    let mut history = Vec::new();
    let start = given(&vec![0.0; system.order()], &vec![0.0; system.order()]);
    let run = system.run(start, &TransientSettings::new(5e-4, 1.0), |record| {
        if let Record::Sample(sample) = record {
            history.push(read.dot(&sample.motion.u));
        }
        ControlFlow::Continue(())
    });
    assert_eq!(run.unwrap().ended, Ended::Completed);
    history
}

#[test]
fn all_shapes_give_the_full_motion_and_few_give_nearly_it() {
    for damped in [false, true] {
        let (system, read) = (driven_row(damped), Direction::along(4));
        let full = history(&system, &read);
        let greatest = full.iter().fold(0.0_f64, |most, u| most.max(u.abs()));
        for (shapes, count, allowed) in [(10, 10, 1e-6), (5, 7, 0.02)] {
            let basis = ReducedBasis::new(&system, row_shapes(shapes)).unwrap();
            assert_eq!(basis.count(), count);
            let reduced = history(&basis.reduced(&system).unwrap(), &basis.direction(&read));
            let error = full.iter().zip(&reduced).fold(0.0_f64, |most, (a, b)| most.max((a - b).abs()));
            assert!(error < allowed * greatest, "{shapes} {damped}: {error} of {greatest}");
        }
    }
}

#[test]
fn static_answers_are_exact_with_any_shapes() {
    let mut system = row_of(10, 5e4);
    system.add_load(TimedLoad::new(Direction::along(2), |_| 300.0)).unwrap();
    let spring = ForceLaw::Spring { stiffness: 3e4, damping: 0.0 };
    system.add_law(LocalLaw::along(Direction::along(7), spring)).unwrap();
    let basis = ReducedBasis::new(&system, row_shapes(1)).unwrap();
    let shares = basis.reduced(&system).unwrap().equilibrium(0.0).unwrap();
    let full = system.equilibrium(0.0).unwrap();
    for (u, expected) in basis.motion(&shares).iter().zip(&full) {
        assert!((u - expected).abs() < 1e-12, "{u} {expected}");
    }
    let again = basis.motion(&basis.shares(&system, &full));
    assert!(again.iter().zip(&full).all(|(a, b)| (a - b).abs() < 1e-12));
}

#[test]
fn direction_at_a_point_moves_with_its_arm_and_leaves_out_held_freedoms() {
    let mut structure = Structure::new();
    let [first, second] = ["first", "second"].map(|name| structure.add_node(name, [0.0; 3]));
    structure.hold(first, &[Freedom::Ux]);
    structure.hold(second, &[Freedom::Rx]);
    let point = Direction::at(&structure, &Attachment::on_arm(second, [0.1, 0.2, 0.3]), [0.0, 0.0, 1.0]);
    // Five freedoms of the first node, then ux uy uz ry rz; arm × z = (0.2, −0.1, 0).
    assert_eq!(point.parts(), [(7, 1.0), (8, -0.1)]);
    assert_eq!(Direction::of_freedom(&structure, second, Freedom::Uz), Direction::along(7));
    assert!(Direction::of_freedom(&structure, first, Freedom::Ux).parts().is_empty());
}

#[test]
fn a_law_may_join_freedoms_far_beyond_the_band() {
    let (mut system, load) = (row_of(60, 100.0), 7.0);
    let ends = Direction::new([(0, 1.0), (59, -1.0)]);
    system
        .add_law(LocalLaw::along(ends.clone(), ForceLaw::Spring { stiffness: 50.0, damping: 1.0 }))
        .unwrap();
    system.add_load(TimedLoad::new(ends.clone(), move |_| load)).unwrap();
    let u = system.equilibrium(0.0).unwrap();
    // By symmetry the middle rests: each end hangs on its own spring beside 29.5 others in series.
    let each = (load - 50.0 * ends.dot(&u)) / (100.0 + 100.0 / 29.5);
    assert!((u[0] - each).abs() < 1e-12 && (u[59] + each).abs() < 1e-12, "{} {each}", u[0]);
    let run = finish(&system, Start::Equilibrium, &TransientSettings::new(1e-2, 1.0));
    assert!((run.last.u[0] - each).abs() < 1e-12);
}
