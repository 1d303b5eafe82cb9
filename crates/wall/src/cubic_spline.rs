//! Interpolation of scattered values in a few dimensions.
//!
//! `s(x) = Σ λ_k·|x − x_k|³ + b₀ + b·x`, the natural spline of radial cubics (J. Duchon, RAIRO Anal. Numér. 10 (1976)
//! 5-12, from memory). What each point would be from all others follows without another solution:
//! `s(x_k) − s₋ₖ(x_k) = λ_k/(A⁻¹)_kk` (S. Rippa, Adv. Comput. Math. 11 (1999) 193-210, from memory).

use nalgebra::DMatrix;

/// Several values over the same points.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct CubicSpline {
    dimensions: usize,
    /// Points one after the other.
    points: Vec<f64>,
    /// For each value: a weight for each point, then the plane.
    weights: Vec<Vec<f64>>,
    /// For each value and point what the others make of it less what it is.
    left_out: Vec<Vec<f64>>,
}

impl CubicSpline {
    /// The spline through values at points; none where the points lie in a plane or two are one.
    ///
    /// - `points`: coordinates of each point
    /// - `values`: for each value its number at each point
    pub(crate) fn through(points: &[Vec<f64>], values: &[Vec<f64>]) -> Option<Self> {
        let (count, dimensions) = (points.len(), points.first()?.len());
        let order = count + 1 + dimensions;
        let entry = |i: usize, j: usize| -> f64 {
            let plane = |point: &[f64], k: usize| if k == 0 { 1.0 } else { point[k - 1] };
            match (i < count, j < count) {
                (true, true) => cubic(&points[i], &points[j]),
                (true, false) => plane(&points[i], j - count),
                (false, true) => plane(&points[j], i - count),
                (false, false) => 0.0,
            }
        };
        let inverse = DMatrix::from_fn(order, order, entry).try_inverse()?;
        let weigh = |own: &Vec<f64>| -> Vec<f64> {
            (0..order).map(|i| (0..count).map(|k| inverse[(i, k)] * own[k]).sum()).collect()
        };
        let weights: Vec<Vec<f64>> = values.iter().map(weigh).collect();
        let leave =
            |weights: &Vec<f64>| (0..count).map(|k| -weights[k] / inverse[(k, k)]).collect::<Vec<f64>>();
        let left_out = weights.iter().map(leave).collect();
        let points = points.iter().flatten().copied().collect();
        Some(CubicSpline { dimensions, points, weights, left_out })
    }

    /// All values at a point.
    pub(crate) fn at(&self, point: &[f64]) -> Vec<f64> {
        let cubics: Vec<f64> =
            self.points.chunks_exact(self.dimensions).map(|own| cubic(own, point)).collect();
        let value = |weights: &Vec<f64>| {
            let (far, plane) = weights.split_at(cubics.len());
            let sum: f64 = far.iter().zip(&cubics).map(|(weight, cubic)| weight * cubic).sum();
            sum + plane[0] + plane[1..].iter().zip(point).map(|(b, x)| b * x).sum::<f64>()
        };
        self.weights.iter().map(value).collect()
    }

    /// What the other points make of a value at each point, less what it is there.
    pub(crate) fn left_out(&self, value: usize) -> &[f64] {
        &self.left_out[value]
    }
}

/// |a − b|³.
fn cubic(a: &[f64], b: &[f64]) -> f64 {
    let square: f64 = a.iter().zip(b).map(|(a, b)| (a - b) * (a - b)).sum();
    square * square.sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn points() -> Vec<Vec<f64>> {
        (0..40).map(|k| vec![(k as f64 * 0.754_877).fract(), (k as f64 * 0.569_840).fract()]).collect()
    }

    fn hill(point: &[f64]) -> f64 {
        (1.3 * point[0]).sin() * (0.7 * point[1]).exp()
    }

    #[test]
    fn a_spline_meets_its_points_and_any_plane() {
        let points = points();
        let plane = |point: &Vec<f64>| 1.0 + 2.0 * point[0] - 3.0 * point[1];
        let values = [points.iter().map(|point| hill(point)).collect(), points.iter().map(plane).collect()];
        let spline = CubicSpline::through(&points, &values).unwrap();
        for (k, point) in points.iter().enumerate() {
            assert!((spline.at(point)[0] - values[0][k]).abs() < 1e-9);
        }
        let between = vec![0.31, 0.47];
        assert!((spline.at(&between)[1] - plane(&between)).abs() < 1e-9);
        assert!((spline.at(&between)[0] - hill(&between)).abs() < 5e-3);
    }

    #[test]
    fn what_is_left_out_is_what_the_others_say() {
        let points = points();
        let values: Vec<f64> = points.iter().map(|point| hill(point)).collect();
        let spline = CubicSpline::through(&points, std::slice::from_ref(&values)).unwrap();
        let others = CubicSpline::through(&points[1..], &[values[1..].to_vec()]).unwrap();
        let error = others.at(&points[0])[0] - values[0];
        assert!((spline.left_out(0)[0] - error).abs() < 1e-9, "{} {error}", spline.left_out(0)[0]);
    }
}
