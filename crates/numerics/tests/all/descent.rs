//! Descents: published optima and closed forms.

use approx::assert_relative_eq;
use axlebow_numerics::{Descent, Smooth, SmoothValues};

/// Goes down from the middle of a box; gives back the descent and the place in the box's own numbers.
fn least(
    ends: &[[f64; 2]],
    scale: f64,
    problem: impl Fn(&[f64]) -> (f64, Vec<f64>),
    from: f64,
) -> (Descent, Vec<f64>) {
    let own = |place: &[f64]| -> Vec<f64> {
        place.iter().zip(ends).map(|(share, [low, high])| low + share * (high - low)).collect()
    };
    let at = |place: &[f64]| {
        let (goal, misses) = problem(&own(place));
        Some(SmoothValues { goal: goal / scale, misses })
    };
    let descent = Smooth { dimensions: ends.len(), at: &at, beside: &|near, _| at(near) }
        .descend(&vec![from; ends.len()])
        .unwrap();
    let place = own(&descent.place);
    (descent, place)
}

/// Five-segment cantilever: K. Svanberg, Int. J. Numer. Methods Eng. 24 (1987) 359-373, sec. 5: least weight 1.340 at
/// (6.016, 5.309, 4.494, 3.502, 2.153), from memory.
#[test]
fn weight_of_the_cantilever_of_five_segments_is_svanbergs() {
    let weights = [61.0, 37.0, 19.0, 7.0, 1.0];
    let problem = |x: &[f64]| {
        let miss = x.iter().zip(weights).map(|(x, w)| w / x.powi(3)).sum::<f64>() - 1.0;
        (0.0624 * x.iter().sum::<f64>(), vec![miss])
    };
    let (descent, place) = least(&[[1.0, 10.0]; 5], 1.0, problem, 0.5);
    assert!((descent.values.goal - 1.340).abs() < 0.0005 && descent.converged, "{descent:?}");
    for (own, printed) in place.iter().zip([6.016, 5.309, 4.494, 3.502, 2.153]) {
        assert!((own - printed).abs() < 0.002, "{place:?}");
    }
    // Lagrange: x ∝ w^(1/4), so that the weight is 0.0624 (Σ w^(1/4))^(4/3).
    let exact = 0.0624 * weights.iter().map(|w: &f64| w.powf(0.25)).sum::<f64>().powf(4.0 / 3.0);
    assert_relative_eq!(descent.values.goal, exact, max_relative = 1e-7);
    // A weight ∝ limit^(−1/3) gives a third of itself for a unit of the limit.
    assert_relative_eq!(descent.multipliers[0], exact / 3.0, max_relative = 1e-3);
}

/// W. Hock & K. Schittkowski, Test Examples for Nonlinear Programming Codes, 1981, problems 35, 43 and 76, from memory:
/// 1/9; −44 at (0, 1, 2, −1); −4.681818.
#[test]
fn problems_of_hock_and_schittkowski_have_their_optima() {
    let (thirty_five, _) = least(
        &[[0.0, 3.0]; 3],
        1.0,
        |x| {
            let goal = 9.0 - 8.0 * x[0] - 6.0 * x[1] - 4.0 * x[2]
                + 2.0 * x[0] * x[0]
                + 2.0 * x[1] * x[1]
                + x[2] * x[2]
                + 2.0 * x[0] * x[1]
                + 2.0 * x[0] * x[2];
            (goal, vec![x[0] + x[1] + 2.0 * x[2] - 3.0])
        },
        0.2,
    );
    assert_relative_eq!(thirty_five.values.goal, 1.0 / 9.0, max_relative = 1e-6);
    let (rosen_suzuki, place) = least(
        &[[-3.0, 3.0]; 4],
        10.0,
        |x| {
            let squares = |weights: [f64; 4]| x.iter().zip(weights).map(|(x, w)| w * x * x).sum::<f64>();
            let goal = squares([1.0, 1.0, 2.0, 1.0]) - 5.0 * x[0] - 5.0 * x[1] - 21.0 * x[2] + 7.0 * x[3];
            let misses = vec![
                (squares([1.0; 4]) + x[0] - x[1] + x[2] - x[3] - 8.0) / 8.0,
                (squares([1.0, 2.0, 1.0, 2.0]) - x[0] - x[3] - 10.0) / 10.0,
                (squares([2.0, 1.0, 1.0, 0.0]) + 2.0 * x[0] - x[1] - x[3] - 5.0) / 5.0,
            ];
            (goal, misses)
        },
        0.5,
    );
    assert_relative_eq!(10.0 * rosen_suzuki.values.goal, -44.0, max_relative = 1e-6);
    for (own, printed) in place.iter().zip([0.0, 1.0, 2.0, -1.0]) {
        assert!((own - printed).abs() < 1e-3, "{place:?}");
    }
    let (seventy_six, _) = least(
        &[[0.0, 5.0]; 4],
        1.0,
        |x| {
            let goal = x[0] * x[0] + 0.5 * x[1] * x[1] + x[2] * x[2] + 0.5 * x[3] * x[3] - x[0] * x[2]
                + x[2] * x[3]
                - x[0]
                - 3.0 * x[1]
                + x[2]
                - x[3];
            let misses = vec![
                x[0] + 2.0 * x[1] + x[2] + x[3] - 5.0,
                3.0 * x[0] + x[1] + 2.0 * x[2] - x[3] - 4.0,
                1.5 - x[1] - 4.0 * x[2],
            ];
            (goal, misses)
        },
        0.1,
    );
    assert!((seventy_six.values.goal + 4.681818).abs() < 5e-7 * 10.0, "{seventy_six:?}");
}

/// A cantilever b wide and h high, h ≤ 3 b, tip force F at length L: stress 6FL/(bh²) ≤ σ and deflection 4FL³/(Ebh³) ≤ w.
/// With stress alone in the way, b = h/3 and h³ = 18FL/σ; with deflection alone, h⁴ = 12FL³/(Ew).
#[test]
fn a_cantilever_under_stress_and_deflection_has_its_closed_form() {
    let (force, length, modulus, stress) = (5000.0, 0.8, 200e9, 150e6);
    for (deflection, stress_rules) in [(0.02, true), (0.001, false)] {
        let problem = |x: &[f64]| {
            let [b, h] = [x[0], x[1]];
            let misses = vec![
                6.0 * force * length / (b * h * h) / stress - 1.0,
                4.0 * force * f64::powi(length, 3) / (modulus * b * h.powi(3)) / deflection - 1.0,
                h / (3.0 * b) - 1.0,
            ];
            (b * h, misses)
        };
        let (descent, place) = least(&[[0.005, 0.2], [0.005, 0.4]], 1e-3, problem, 0.5);
        let height = match stress_rules {
            true => f64::cbrt(18.0 * force * length / stress),
            false => (12.0 * force * f64::powi(length, 3) / (modulus * deflection)).powf(0.25),
        };
        assert_relative_eq!(place[1], height, max_relative = 1e-4);
        assert_relative_eq!(1e-3 * descent.values.goal, height * height / 3.0, max_relative = 1e-6);
        assert_eq!(descent.multipliers[0] > 1e-3, stress_rules, "{descent:?}");
        assert_eq!(descent.multipliers[1] > 1e-3, !stress_rules, "{descent:?}");
    }
}

#[test]
fn where_nothing_meets_the_limits_the_worst_miss_is_small() {
    let problem = |x: &[f64]| (x[0], vec![1.0 - x[0], x[0] - 0.5]);
    let (descent, _) = least(&[[0.0, 2.0]], 1.0, problem, 0.9);
    assert!(descent.values.worst() > 0.2 && descent.values.worst() <= 0.5 + 1e-6, "{descent:?}");
}
