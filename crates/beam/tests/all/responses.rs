//! Moving and shaking forces against closed forms.

use std::f64::consts::PI;

use axlebow_beam::{
    BeamError, Element, Line, LineParts, Mesh, MovingForce, Shaking, Span, SpanSection, Support, SupportKind,
    passage, shaken,
};

use crate::{BENDING, STEEL, assert_near, line, tube};

const L: f64 = 40.0;

fn supported() -> Line {
    line(L, &[(0.0, SupportKind::PINNED), (L, SupportKind::PINNED)], &[])
}

/// EI and mass per length of the tube.
fn stiffness_and_mass() -> (f64, f64) {
    (STEEL.modulus * tube().second_moment, STEEL.density * tube().area.unwrap())
}

fn moving(ratio: f64, damping: f64) -> MovingForce {
    let (stiffness, mass) = stiffness_and_mass();
    let critical = PI / L * (stiffness / mass).sqrt();
    MovingForce { force: -1000.0, speed: ratio * critical, damping, modes: 16, at: None }
}

const FINE: Mesh = Mesh { elements: 40, ..BENDING };

/// The undamped simply supported beam: w(x, t) = 2PL³/(π⁴EI) ∑ sin(nπx/L)/(n²(n² − α²)) [sin nθ − (α/n) sin(n²θ/α)], θ = πvt/L,
/// here at the middle over PL³/(48 EI), summed to 200 terms.
///
/// Source: L. Frýba, *Vibration of Solids and Structures under Moving Loads*, 1972, sec. 1.3.2 (from memory, summed here).
fn closed(ratio: f64, theta: f64) -> f64 {
    let terms = (1..=200).map(|n| {
        let n = f64::from(n);
        let shape = (n * PI / 2.0).sin();
        shape / (n * n * (n * n - ratio * ratio))
            * ((n * theta).sin() - ratio / n * (n * n * theta / ratio).sin())
    });
    48.0 * 2.0 / PI.powi(4) * terms.sum::<f64>()
}

/// Whole histories, and the amplification at five speeds. M. Olsson, "On the fundamental moving load problem", *J. Sound Vib.* 145
/// (1991) 299-307, has 1.705 at half the critical speed and 1.548 at it (values from memory).
#[test]
fn a_moving_force_does_what_the_series_says() {
    for (ratio, amplification) in [
        (0.05, 1.048_247_5),
        (0.25, 1.257_609_7),
        (0.5, 1.705_445_1),
        (0.617, 1.731_674_0),
        (0.75, 1.701_613_2),
    ] {
        let own = passage(&supported(), &FINE, &moving(ratio, 0.0)).unwrap();
        assert_near(own.speed_ratio, ratio, 1e-6);
        assert_near(own.amplification(), amplification, 3e-5);
        for [_, place, deflection] in own.history.iter().filter(|point| point[1] <= L) {
            let expected = own.largest_static.abs() * closed(ratio, PI * place / L);
            assert!((-deflection - expected).abs() < 3e-5 * own.largest.abs(), "{ratio} at {place}");
        }
    }
}

#[test]
fn a_crawling_force_bends_as_it_stands_and_damping_leaves_less_behind() {
    let own = passage(&supported(), &FINE, &MovingForce { modes: 5, ..moving(0.01, 0.0) }).unwrap();
    let (stiffness, _) = stiffness_and_mass();
    assert_near(own.largest_static, -1000.0 * L.powi(3) / (48.0 * stiffness), 1e-6);
    assert_near(own.amplification(), 1.0, 0.02);
    let [free, damped] =
        [0.0, 0.1].map(|damping| passage(&supported(), &FINE, &moving(0.5, damping)).unwrap());
    assert!(damped.amplification() < free.amplification());
    assert!(damped.largest_after.abs() < 0.8 * free.largest_after.abs());
    assert!(damped.history.last().unwrap()[2].abs() < 0.3 * free.largest_after.abs());
    let history = &damped.history;
    assert!((500..=1200).contains(&history.len()), "{}", history.len());
}

/// After it has left, a force leaves a free vibration of the first mode and little else: at half the critical speed, by the first
/// term, w = 2P/(μLω₁²) · α/(1 − α²) · 2 cos(π/(2α)) at most, here none.
#[test]
fn a_force_at_half_the_critical_speed_leaves_what_the_series_leaves() {
    for ratio in [0.4, 0.75] {
        let own = passage(&supported(), &FINE, &moving(ratio, 0.0)).unwrap();
        // The series goes on as free vibrations: of each mode n from its state at θ = π.
        let (stiffness, mass) = stiffness_and_mass();
        let first = (PI / L).powi(2) * (stiffness / mass).sqrt();
        let unit = 2.0 * 1000.0 * L.powi(3) / (PI.powi(4) * stiffness);
        let free = |time: f64| -> f64 {
            (1..=60)
                .map(|n| {
                    let n = f64::from(n);
                    let (shape, omega) = ((n * PI / 2.0).sin(), n * n * first);
                    let factor = shape / (n * n * (n * n - ratio * ratio));
                    let end = n * n * PI / ratio;
                    // d/dt of sin nθ − (α/n) sin(n²θ/α), with θ' = ω₁α.
                    let rate = first * ratio * n * ((n * PI).cos() - end.cos());
                    factor
                        * (-ratio / n * end.sin() * (omega * time).cos()
                            + rate / omega * (omega * time).sin())
                })
                .sum::<f64>()
                * unit
        };
        let period = 2.0 * PI / first;
        let largest = (0..4000).map(|k| free(period * f64::from(k) / 2000.0).abs()).fold(0.0, f64::max);
        assert_near(own.largest_after.abs(), largest, 2e-3);
    }
}

/// Tip of a cantilever: W/F = (sin λ cosh λ − cos λ sinh λ)/(EI k³ (1 + cos λ cosh λ)), λ = kL, k⁴ = μω²/EI.
///
/// Source: R. E. D. Bishop & D. C. Johnson, *The Mechanics of Vibration*, 1960, table of receptances (from memory; it follows from
/// the four end conditions).
#[test]
fn a_shaken_cantilever_answers_by_its_receptance() {
    let cantilever = line(L, &[(0.0, SupportKind::FIXED)], &[]);
    let (stiffness, mass) = stiffness_and_mass();
    let shaking = Shaking {
        at: L,
        force: 10.0,
        frequencies: [5.0, 4000.0],
        points: 60,
        damping: 0.0,
        modes: 20,
        read_at: None,
    };
    let own = shaken(&cantilever, &FINE, &shaking).unwrap();
    assert_near(own.at_rest, 10.0 * L.powi(3) / (3.0 * stiffness), 1e-9);
    for [frequency, amplitude, phase] in own.answers {
        let k = (mass * (2.0 * PI * frequency).powi(2) / stiffness).powf(0.25);
        let (sin, cos, sinh, cosh) = ((k * L).sin(), (k * L).cos(), (k * L).sinh(), (k * L).cosh());
        let exact = 10.0 * (sin * cosh - cos * sinh) / (stiffness * k.powi(3) * (1.0 + cos * cosh));
        assert_near(amplitude, exact.abs(), 2e-4);
        assert_near(phase.cos(), exact.signum(), 1e-9);
    }
}

/// A damped single mode stands at 1/(2ζ) of its share at resonance, a quarter turn behind; at rest it does what statics does.
#[test]
fn damping_bounds_resonance() {
    let shaking = Shaking {
        at: 0.5 * L,
        force: 1.0,
        frequencies: [1.0, 100.0],
        points: 3,
        damping: 0.02,
        modes: 12,
        read_at: None,
    };
    let (stiffness, mass) = stiffness_and_mass();
    let first = (PI / L).powi(2) * (stiffness / mass).sqrt() / (2.0 * PI);
    let at = Shaking { frequencies: [first, 2.0 * first], points: 2, ..shaking };
    let own = shaken(&supported(), &FINE, &at).unwrap();
    let share = 2.0 * L.powi(3) / (PI.powi(4) * stiffness);
    let left = own.at_rest - share;
    assert_near(own.answers[0][1], (share / 0.04).hypot(left), 1e-3);
    assert!((own.answers[0][2] - PI / 2.0).abs() < 0.01, "{}", own.answers[0][2]);
    assert_eq!(own.natural.len(), 1);
    assert_near(own.largest().unwrap()[0], first, 1e-12);
    let slow = shaken(&supported(), &FINE, &shaking).unwrap();
    assert_near(slow.answers[0][1], slow.at_rest, 1e-3);
}

#[test]
fn reading_and_shaking_may_change_places() {
    let of = |at, read_at| {
        let shaking = Shaking {
            at,
            force: 3.0,
            frequencies: [20.0, 900.0],
            points: 7,
            damping: 0.01,
            modes: 10,
            read_at: Some(read_at),
        };
        shaken(&supported(), &Mesh { element: Element::Hermite, ..FINE }, &shaking).unwrap().answers
    };
    for (a, b) in of(11.3, 27.1).iter().zip(of(27.1, 11.3)) {
        assert_near(a[1], b[1], 1e-9);
    }
}

#[test]
fn responses_that_cannot_be_are_refused() {
    let refused = |own: &MovingForce| passage(&supported(), &FINE, own).unwrap_err().to_string();
    let good = moving(0.5, 0.0);
    assert!(refused(&MovingForce { speed: 0.0, ..good }).contains("speed"));
    assert!(refused(&MovingForce { damping: 1.0, ..good }).contains("damping ratio"));
    assert!(refused(&MovingForce { force: f64::NAN, ..good }).contains("force"));
    assert!(refused(&MovingForce { at: Some(41.0), ..good }).contains("moving or shaking force"));
    let free = line(L, &[], &[]);
    assert!(matches!(passage(&free, &FINE, &good), Err(BeamError::Mechanism { .. })));
    let massless =
        Span::new(L, SpanSection::Uniform(axlebow_beam::SectionValues { area: None, ..tube() }), STEEL);
    let parts = LineParts {
        spans: vec![massless.unwrap()],
        supports: vec![Support { at: 0.0, kind: SupportKind::FIXED }],
        ..LineParts::default()
    };
    assert!(matches!(passage(&Line::new(parts).unwrap(), &FINE, &good), Err(BeamError::NoArea { .. })));
    let wide = Shaking {
        at: 1.0,
        force: 1.0,
        frequencies: [10.0, 10.0],
        points: 4,
        damping: 0.0,
        modes: 4,
        read_at: None,
    };
    assert!(shaken(&line(L, &[(0.0, SupportKind::FIXED)], &[]), &FINE, &wide).is_err());
}
