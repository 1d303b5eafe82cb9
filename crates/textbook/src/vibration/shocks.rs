//! Shock spectra and step answers of one mass, and the period of its stepped motion.

use std::f64::consts::{FRAC_PI_2, PI, SQRT_2, TAU};
use std::ops::ControlFlow;

use axlebow_fe::linalg::SymmetricMatrix;
use axlebow_fe::{Direction, DynamicSystem, Record, Start, TimedLoad, TransientSettings};

use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::text;

const CHOPRA: &str = "A. K. Chopra, Dynamics of Structures, 5th ed. 2017, secs. 4.3-4.9, and Clough & Penzien, \
     Dynamics of Structures, 2nd ed. 1993, ch. 5; from memory, values recomputed from the closed forms";
const INTEGRATED: &str = "A. K. Chopra, Dynamics of Structures, 5th ed. 2017, sec. 4.9; from memory, value by \
     integration of the equation of motion";
const BATHE: &str = "K.-J. Bathe, Finite Element Procedures, 2nd ed. 2014, sec. 9.4: x/atan(x) − 1, x = π h/T; from \
     memory, recomputed";
const FINE: &str = "2000 steps to a period, or to a shorter pulse: the peak lies up to (π/2000)²/2 = 1.2e-6 between two samples, and the \
     period comes out (2π/2000)²/12 = 8e-7 too long";
const SAMPLED: &str = "the reference value is itself the greatest of samples and up to 5e-5 too small: of the \
     haversine of two periods it has 1.333294 where the closed form is 4/3";
const COARSE: &str = "200 steps to a period: the peak lies up to (π/200)²/2 = 1.2e-4 between two samples, and the \
     period comes out (2π/200)²/12 = 8e-5 too long";

const HALF_SINE: &str = "r = t_d/T; largest of (sin(π t/t_d) − sin(2 π t/T)/(2 r))/(1 − 1/(4 r²)) up to t_d and |4 r cos(π r)/(1 − 4 r²)| \
     after it; π/2 for r = 1/2";
const HAVERSINE: &str = "m ü + k u = p₀ (1 − cos(2 π t/t_d))/2 up to t_d, integrated in time";
const TRIANGLE: &str = "m ü + k u = p₀ (1 − |2 t/t_d − 1|) up to t_d, integrated in time";
const RECTANGLE: &str = "2 sin(π t_d/T) for t_d up to T/2";
const STEP: &str = "1 + exp(−π ζ/√(1 − ζ²))";

/// Inputs of a case: its own ones, and those of the mass.
macro_rules! mass {
    ($own:literal) => {
        concat!($own, "; period T = 1, stiffness k = 1, load p₀ = 1")
    };
}

/// The cases.
pub(crate) const CASES: &[Case] = &[
    pulse(
        "shock_peak_matches_chopra_section_4_7_half_sine_0_10",
        HALF_SINE,
        mass!("t_d = 0.10, ζ = 0"),
        0.396_274,
        || peak(half_sine, 0.10, FINER),
    ),
    pulse(
        "shock_peak_matches_chopra_section_4_7_half_sine_0_25",
        HALF_SINE,
        mass!("t_d = 0.25, ζ = 0"),
        0.942_809,
        || peak(half_sine, 0.25, FINER),
    ),
    pulse(
        "shock_peak_matches_chopra_section_4_7_half_sine_0_50",
        HALF_SINE,
        mass!("t_d = 0.50, ζ = 0"),
        FRAC_PI_2,
        || peak(half_sine, 0.50, FINER),
    ),
    pulse(
        "shock_peak_matches_chopra_section_4_7_half_sine_0_75",
        HALF_SINE,
        mass!("t_d = 0.75, ζ = 0"),
        1.763_356,
        || peak(half_sine, 0.75, FINER),
    ),
    pulse(
        "shock_peak_matches_chopra_section_4_7_half_sine_0_81",
        HALF_SINE,
        mass!("t_d = 0.81, ζ = 0"),
        1.768_458,
        || peak(half_sine, 0.81, FINER),
    ),
    pulse(
        "shock_peak_matches_chopra_section_4_7_half_sine_1_00",
        HALF_SINE,
        mass!("t_d = 1.00, ζ = 0"),
        1.732_051,
        || peak(half_sine, 1.00, FINER),
    ),
    pulse(
        "shock_peak_matches_chopra_section_4_7_half_sine_1_50",
        HALF_SINE,
        mass!("t_d = 1.50, ζ = 0"),
        1.500_000,
        || peak(half_sine, 1.50, FINER),
    ),
    pulse(
        "shock_peak_matches_chopra_section_4_7_half_sine_2_00",
        HALF_SINE,
        mass!("t_d = 2.00, ζ = 0"),
        1.268_075,
        || peak(half_sine, 2.00, FINER),
    ),
    pulse(
        "shock_peak_matches_chopra_section_4_7_half_sine_3_00",
        HALF_SINE,
        mass!("t_d = 3.00, ζ = 0"),
        1.169_913,
        || peak(half_sine, 3.00, FINER),
    ),
    coarse(
        "shock_peak_matches_chopra_section_4_7_half_sine_0_81_in_200_steps",
        HALF_SINE,
        mass!("t_d = 0.81, ζ = 0"),
        1.768_458,
        || peak(half_sine, 0.81, COARSER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_haversine_0_25",
        HAVERSINE,
        mass!("t_d = 0.25, ζ = 0"),
        0.754_247,
        || peak(haversine, 0.25, FINER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_haversine_0_50",
        HAVERSINE,
        mass!("t_d = 0.50, ζ = 0"),
        1.333_333,
        || peak(haversine, 0.50, FINER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_haversine_0_75",
        HAVERSINE,
        mass!("t_d = 0.75, ζ = 0"),
        1.631_090,
        || peak(haversine, 0.75, FINER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_haversine_1_00",
        HAVERSINE,
        mass!("t_d = 1.00, ζ = 0"),
        1.705_129,
        || peak(haversine, 1.00, FINER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_haversine_1_50",
        HAVERSINE,
        mass!("t_d = 1.50, ζ = 0"),
        1.562_485,
        || peak(haversine, 1.50, FINER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_haversine_2_00",
        HAVERSINE,
        mass!("t_d = 2.00, ζ = 0"),
        1.333_294,
        || peak(haversine, 2.00, FINER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_triangle_0_25",
        TRIANGLE,
        mass!("t_d = 0.25, ζ = 0"),
        0.745_845,
        || peak(triangle, 0.25, FINER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_triangle_0_50",
        TRIANGLE,
        mass!("t_d = 0.50, ζ = 0"),
        1.273_240,
        || peak(triangle, 0.50, FINER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_triangle_0_75",
        TRIANGLE,
        mass!("t_d = 0.75, ζ = 0"),
        1.489_059,
        || peak(triangle, 0.75, FINER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_triangle_1_00",
        TRIANGLE,
        mass!("t_d = 1.00, ζ = 0"),
        1.508_444,
        || peak(triangle, 1.00, FINER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_triangle_1_50",
        TRIANGLE,
        mass!("t_d = 1.50, ζ = 0"),
        1.287_850,
        || peak(triangle, 1.50, FINER),
    ),
    integrated(
        "shock_peak_matches_chopra_section_4_9_triangle_2_00",
        TRIANGLE,
        mass!("t_d = 2.00, ζ = 0"),
        1.000_000,
        || peak(triangle, 2.00, FINER),
    ),
    pulse(
        "shock_peak_matches_chopra_section_4_8_rectangle_0_10",
        RECTANGLE,
        mass!("t_d = 0.10, ζ = 0"),
        0.618_034,
        || peak(rectangle, 0.10, FINER),
    ),
    pulse(
        "shock_peak_matches_chopra_section_4_8_rectangle_0_25",
        RECTANGLE,
        mass!("t_d = 0.25, ζ = 0"),
        SQRT_2,
        || peak(rectangle, 0.25, FINER),
    ),
    pulse("step_peak_matches_chopra_section_4_3_undamped", STEP, mass!("ζ = 0"), 2.0, || step_peak(0.0)),
    pulse("step_peak_matches_chopra_section_4_3_damping_0_02", STEP, mass!("ζ = 0.02"), 1.939_090, || {
        step_peak(0.02)
    }),
    pulse("step_peak_matches_chopra_section_4_3_damping_0_05", STEP, mass!("ζ = 0.05"), 1.854_468, || {
        step_peak(0.05)
    }),
    pulse("step_peak_matches_chopra_section_4_3_damping_0_10", STEP, mass!("ζ = 0.10"), 1.729_248, || {
        step_peak(0.1)
    }),
    pulse("step_peak_matches_chopra_section_4_3_damping_0_20", STEP, mass!("ζ = 0.20"), 1.526_620, || {
        step_peak(0.2)
    }),
    period(
        "period_elongation_matches_bathe_section_9_4_step_0_01",
        "h = 0.01, T = 1, free motion from rest at u = 1",
        3.289_003e-4,
        || elongation(0.01),
    )
    .rounded_to(1e-10),
    period(
        "period_elongation_matches_bathe_section_9_4_step_0_05",
        "h = 0.05, T = 1, free motion from rest at u = 1",
        8.171_243e-3,
        || elongation(0.05),
    )
    .rounded_to(1e-9),
    period(
        "period_elongation_matches_bathe_section_9_4_step_0_10",
        "h = 0.10, T = 1, free motion from rest at u = 1",
        3.207_491e-2,
        || elongation(0.1),
    )
    .rounded_to(1e-8),
    period(
        "period_elongation_matches_bathe_section_9_4_step_0_20",
        "h = 0.20, T = 1, free motion from rest at u = 1",
        0.120_033_1,
        || elongation(0.2),
    )
    .rounded_to(1e-7),
];

const fn pulse(
    id: &'static str,
    formula: &'static str,
    inputs: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "answer of one mass to a shock",
        quantity: "peak displacement over the static one",
        unit: "",
        source: CHOPRA,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Relative { share: 1e-5, reason: Some(FINE) },
        computed,
        difference: None,
    }
}

const fn coarse(
    id: &'static str,
    formula: &'static str,
    inputs: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    pulse(id, formula, inputs, reference, computed).within(1e-3, COARSE)
}

const fn integrated(
    id: &'static str,
    formula: &'static str,
    inputs: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    pulse(id, formula, inputs, reference, computed)
        .sourced(INTEGRATED)
        .with_provenance(Provenance::Independent)
        .within(1e-3, SAMPLED)
}

const fn period(id: &'static str, inputs: &'static str, reference: f64, computed: Compute) -> Case {
    Case {
        topic: "period of a stepped motion",
        quantity: "share by which the period is too long, average acceleration",
        source: BATHE,
        ..pulse(id, "x/atan(x) − 1, x = π h/T", inputs, reference, computed)
    }
}

/// Steps to a period, or to a shorter pulse.
const FINER: f64 = 2000.0;
const COARSER: f64 = 200.0;

/// Load over its peak at a share of the duration, within 0 to 1.
type Shape = fn(f64) -> f64;

fn half_sine(share: f64) -> f64 {
    (PI * share).sin()
}

fn haversine(share: f64) -> f64 {
    0.5 * (1.0 - (TAU * share).cos())
}

fn triangle(share: f64) -> f64 {
    1.0 - (2.0 * share - 1.0).abs()
}

fn rectangle(_share: f64) -> f64 {
    1.0
}

/// Part of a duration that is taken for none.
const ROUNDING: f64 = 1e-9;

/// Greatest displacement of an undamped mass of period 1 under a pulse, over that under its peak at rest.
///
/// At a jump of the load counts the mean of both sides, so that the steps beside it add up to its impulse.
fn peak(shape: Shape, duration: f64, steps_to_period: f64) -> Result<f64, String> {
    let load = move |t: f64| match t / duration {
        share if (share - 1.0).abs() < ROUNDING => 0.5 * shape(1.0),
        share if share < 1.0 => shape(share),
        _ => 0.0,
    };
    greatest(load, 0.0, (duration + 1.0, steps_to_period / duration.min(1.0)))
}

fn step_peak(damping_ratio: f64) -> Result<f64, String> {
    greatest(|_| 1.0, damping_ratio, (2.0, FINER))
}

/// Greatest displacement under a load that is 1 at its peak, of a mass of period 1 and stiffness 1.
fn greatest(
    load: impl Fn(f64) -> f64 + Send + Sync + 'static,
    damping_ratio: f64,
    (duration, steps_to_period): (f64, f64),
) -> Result<f64, String> {
    let mut system = mass(damping_ratio)?;
    system.add_load(TimedLoad::new(Direction::along(0), load)).map_err(text)?;
    let settings = TransientSettings::new(1.0 / steps_to_period, duration);
    let mut greatest = 0.0_f64;
    let start = Start::Given { u: vec![0.0], v: vec![0.0] };
    let run = system.run(start, &settings, |record| {
        if let Record::Sample(sample) = record {
            greatest = greatest.max(sample.motion.u[0].abs());
        }
        ControlFlow::Continue(())
    });
    run.map_err(text)?;
    Ok(greatest)
}

/// A free undamped motion is stepped as the cosine of a longer period.
fn elongation(step: f64) -> Result<f64, String> {
    let start = Start::Given { u: vec![1.0], v: vec![0.0] };
    let run = mass(0.0)?.run(start, &TransientSettings::new(step, step), |_| ControlFlow::Continue(()));
    Ok(TAU * step / run.map_err(text)?.last.u[0].acos() - 1.0)
}

/// Stiffness 1, period 1.
fn mass(damping_ratio: f64) -> Result<DynamicSystem, String> {
    let matrix = |value| {
        let mut matrix = SymmetricMatrix::banded(1, 0);
        matrix.add(0, 0, value);
        matrix
    };
    let system = DynamicSystem::new(matrix(1.0), matrix(1.0 / (TAU * TAU))).map_err(text)?;
    system.with_damping(matrix(2.0 * damping_ratio / TAU)).map_err(text)
}
