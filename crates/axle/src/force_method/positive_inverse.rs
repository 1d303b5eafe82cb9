//! Inverse of the small stiffness matrix of two seats.

/// Rows of a matrix over the motions of two seats.
pub(crate) type Square12 = [[f64; 12]; 12];

/// Share of its diagonal below which a pivot may be rounding: then something may not be held.
const ROUNDING: f64 = 1e-12;

/// The inverse of a symmetric positive definite matrix, by Gauss-Jordan elimination in place; none where a pivot is
/// hardly more than rounding.
pub(crate) fn positive_inverse(mut a: Square12) -> Option<Square12> {
    let diagonal: [f64; 12] = std::array::from_fn(|i| a[i][i]);
    for p in 0..12 {
        if !(a[p][p] > ROUNDING * diagonal[p]) {
            return None;
        }
        let reciprocal = 1.0 / a[p][p];
        let mut row = a[p].map(|value| value * reciprocal);
        row[p] = reciprocal;
        for i in (0..12).filter(|i| *i != p) {
            let factor = std::mem::take(&mut a[i][p]);
            for j in 0..12 {
                a[i][j] -= factor * row[j];
            }
        }
        a[p] = row;
    }
    Some(a)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_matrix_times_its_inverse_is_one() {
        let root: Square12 =
            std::array::from_fn(|i| std::array::from_fn(|j| ((5 * i + 3 * j) % 7) as f64 - 2.5));
        let dot = |a: &[f64; 12], b: &[f64; 12]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        let own = |i: usize, j: usize| if i == j { 3.0 } else { 0.0 };
        let matrix: Square12 =
            std::array::from_fn(|i| std::array::from_fn(|j| dot(&root[i], &root[j]) + own(i, j)));
        let inverse = positive_inverse(matrix).unwrap();
        for i in 0..12 {
            for j in 0..12 {
                let product = dot(&matrix[i], &inverse[j]);
                assert!((product - if i == j { 1.0 } else { 0.0 }).abs() < 1e-12, "{i} {j} {product}");
            }
        }
    }

    #[test]
    fn what_nothing_holds_has_no_inverse() {
        let mut matrix = [[1.0; 12]; 12];
        assert_eq!(positive_inverse(matrix), None);
        matrix[0][0] = f64::NAN;
        assert_eq!(positive_inverse(matrix), None);
    }
}
