//! The doorway to linear algebra: against dense algebra, against itself, and on matrices that nothing holds.

use axlebow_fe::linalg::{Columns, Factor, PivotFailure, SymmetricMatrix};
use nalgebra::{Cholesky, DMatrix, DVector};
use proptest::prelude::*;

/// Lower triangle (row, column, value) of a positive definite band.
#[derive(Debug, Clone)]
struct Example {
    order: usize,
    width: usize,
    entries: Vec<(usize, usize, f64)>,
}

impl Example {
    /// Off-diagonal entries as given, in turn; each diagonal exceeds the sum of its row.
    fn dominant(order: usize, width: usize, given: &[f64]) -> Self {
        let mut given = given.iter().copied().cycle();
        let mut entries = Vec::new();
        let mut sums = vec![0.1; order];
        for column in 0..order {
            for row in column + 1..order.min(column + width + 1) {
                let value = given.next().unwrap_or(0.0);
                sums[row] += value.abs();
                sums[column] += value.abs();
                entries.push((row, column, value));
            }
        }
        entries.extend(sums.into_iter().enumerate().map(|(i, sum)| (i, i, sum)));
        Example { order, width, entries }
    }

    fn into(&self, mut matrix: SymmetricMatrix) -> SymmetricMatrix {
        self.entries.iter().for_each(|(row, column, value)| matrix.add(*row, *column, *value));
        matrix
    }

    fn banded(&self) -> SymmetricMatrix {
        self.into(SymmetricMatrix::banded(self.order, self.width))
    }

    fn sparse(&self) -> SymmetricMatrix {
        self.into(SymmetricMatrix::sparse(self.order))
    }

    fn dense(&self) -> DMatrix<f64> {
        let mut dense = DMatrix::zeros(self.order, self.order);
        for (row, column, value) in &self.entries {
            dense[(*row, *column)] = *value;
            dense[(*column, *row)] = *value;
        }
        dense
    }
}

fn examples() -> impl Strategy<Value = Example> {
    let width = prop_oneof![0_usize..30, Just(5), Just(11), Just(17), Just(23)];
    (1_usize..60, width, prop::collection::vec(-1.0..1.0_f64, 97))
        .prop_map(|(order, width, given)| Example::dominant(order, width, &given))
}

fn solved(matrix: &SymmetricMatrix, right: &[f64]) -> Vec<f64> {
    let mut x = right.to_vec();
    matrix.factor().expect("the matrix is positive definite").solve(&mut x);
    x
}

fn load(order: usize) -> Vec<f64> {
    (0..order).map(|i| 1.0 + ((5 * i) % 7) as f64).collect()
}

/// Largest difference relative to the largest value.
fn difference(a: &[f64], b: &[f64]) -> f64 {
    let size = b.iter().fold(f64::MIN_POSITIVE, |size, b| size.max(b.abs()));
    a.iter().zip(b).fold(0.0_f64, |most, (a, b)| most.max((a - b).abs())) / size
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn band_agrees_with_dense_cholesky(example in examples()) {
        let right = load(example.order);
        let dense = Cholesky::new(example.dense()).unwrap().solve(&DVector::from_vec(right.clone()));
        prop_assert!(difference(&solved(&example.banded(), &right), dense.as_slice()) < 1e-11);
    }

    #[test]
    fn band_and_sparse_agree(example in examples()) {
        let right = load(example.order);
        prop_assert!(difference(&solved(&example.sparse(), &right), &solved(&example.banded(), &right)) < 1e-10);
    }

    #[test]
    fn columns_are_solved_as_if_alone(example in examples(), count in 1_usize..20) {
        for matrix in [example.banded(), example.sparse()] {
            let mut columns = Columns::zeros(example.order, count);
            let of = |column: usize| load(example.order).iter().map(|x| x * (column as f64 - 2.5)).collect::<Vec<_>>();
            for column in 0..count {
                of(column).iter().enumerate().for_each(|(i, x)| columns.set(i, column, *x));
            }
            matrix.factor().unwrap().solve_columns(&mut columns);
            for column in 0..count {
                let alone = solved(&matrix, &of(column));
                prop_assert!(difference(&columns.column(column).collect::<Vec<_>>(), &alone) < 1e-12);
            }
        }
    }

    #[test]
    fn product_with_the_solution_is_the_load(example in examples()) {
        let right = load(example.order);
        for matrix in [example.banded(), example.sparse()] {
            let mut product = vec![0.0; example.order];
            matrix.multiply(&solved(&matrix, &right), &mut product);
            prop_assert!(difference(&product, &right) < 1e-12);
        }
    }
}

#[test]
fn storage_follows_the_half_bandwidth() {
    assert_eq!(SymmetricMatrix::for_coupling(100, 17).half_bandwidth(), Some(17));
    assert_eq!(SymmetricMatrix::for_coupling(1000, 500).half_bandwidth(), None);
    assert_eq!(SymmetricMatrix::for_coupling(1000, 500).order(), 1000);
}

#[test]
fn either_triangle_may_be_given_and_entries_add_up() {
    for mut matrix in [SymmetricMatrix::banded(2, 1), SymmetricMatrix::sparse(2)] {
        matrix.add(0, 0, 2.0);
        matrix.add(1, 1, 3.0);
        matrix.add(0, 1, 0.5);
        matrix.add(1, 0, 0.5);
        let mut product = [0.0; 2];
        matrix.multiply(&[1.0, 10.0], &mut product);
        assert_eq!(product, [12.0, 31.0]);
        assert_eq!(matrix.diagonal(1), 3.0);
        matrix.reset();
        assert_eq!(matrix.diagonal(1), 0.0);
    }
}

#[test]
fn a_factor_takes_any_later_matrix() {
    let examples = [(40, 11), (40, 11), (12, 30), (40, 5), (1, 0)]
        .map(|(n, w)| Example::dominant(n, w, &[0.3, -0.7, 0.9]));
    let mut factor: Factor = examples[0].banded().factor().unwrap();
    for example in &examples {
        for matrix in [example.banded(), example.sparse(), example.sparse(), example.banded()] {
            matrix.factor_into(&mut factor).unwrap();
            let mut x = load(example.order);
            factor.solve(&mut x);
            assert!(difference(&x, &solved(&matrix, &load(example.order))) < 1e-14);
        }
    }
}

#[test]
fn a_system_without_unknowns_is_solved() {
    for matrix in [SymmetricMatrix::banded(0, 5), SymmetricMatrix::sparse(0)] {
        let factor = matrix.factor().unwrap();
        factor.solve(&mut []);
        factor.solve_columns(&mut Columns::zeros(0, 3));
    }
}

/// Six freedoms a node, each node of a square grid coupled to the next by springs, corner held.
#[test]
fn a_large_grid_is_solved() {
    let (side, freedoms) = (16, 6);
    let number = |i: usize, j: usize, f: usize| (i * side + j) * freedoms + f;
    let mut matrix = SymmetricMatrix::for_coupling(side * side * freedoms, (side + 1) * freedoms);
    assert_eq!(matrix.half_bandwidth(), None);
    let mut spring = |a: usize, b: usize| {
        matrix.add(a, a, 3.0);
        matrix.add(b, b, 3.0);
        matrix.add(a, b, -3.0);
    };
    for (i, j) in (0..side).flat_map(|i| (0..side).map(move |j| (i, j))) {
        for (f, g) in (0..freedoms).flat_map(|f| (0..freedoms).map(move |g| (f, g))) {
            if i + 1 < side {
                spring(number(i, j, f), number(i + 1, j, g));
            }
            if j + 1 < side {
                spring(number(i, j, f), number(i, j + 1, g));
            }
        }
    }
    let loose = matrix.factor().unwrap_err();
    assert!(loose.null_vector.iter().all(|x| (x - 1.0).abs() < 1e-6), "all move together");
    matrix.add(0, 0, 1.0);
    let right = load(matrix.order());
    let mut product = vec![0.0; matrix.order()];
    matrix.multiply(&solved(&matrix, &right), &mut product);
    assert!(difference(&product, &right) < 1e-9);
}

/// Plane beams of unit bending stiffness in a row: deflection and rotation of each node.
fn beams(count: usize, length: f64, mut matrix: SymmetricMatrix) -> SymmetricMatrix {
    let h = length / count as f64;
    let (a, b, c, d) = (12.0 / h.powi(3), 6.0 / h.powi(2), 4.0 / h, 2.0 / h);
    let stiffness = [[a, b, -a, b], [b, c, -b, d], [-a, -b, a, -b], [b, d, -b, c]];
    for first in (0..count).map(|beam| 2 * beam) {
        for (i, j) in (0..4).flat_map(|i| (0..=i).map(move |j| (i, j))) {
            matrix.add(first + i, first + j, stiffness[i][j]);
        }
    }
    matrix
}

fn both(order: usize) -> [SymmetricMatrix; 2] {
    [SymmetricMatrix::banded(order, 3), SymmetricMatrix::sparse(order)]
}

/// The motion is free: its energy is nothing beside that of moving its largest freedom alone.
fn assert_free(matrix: &SymmetricMatrix, failure: &PivotFailure) {
    let x = &failure.null_vector;
    let mut force = vec![0.0; x.len()];
    matrix.multiply(x, &mut force);
    let energy: f64 = force.iter().zip(x).map(|(f, x)| f * x).sum();
    let largest = x.iter().position(|x| *x == 1.0).expect("the largest component is 1");
    assert!(
        energy.abs() < 1e-9 * matrix.diagonal(largest),
        "order {}, energy {energy:e}, {failure:?}",
        x.len()
    );
    assert!(x.iter().all(|x| x.abs() <= 1.0) && x[failure.index] != 0.0);
}

#[test]
fn a_row_of_beams_on_one_pin_turns_about_it() {
    for count in [1, 3, 10, 40, 200] {
        for (matrix, held) in both(2 * count + 2).into_iter().flat_map(|m| [(m.clone(), 0), (m, count)]) {
            let mut matrix = beams(count, 2.0, matrix);
            matrix.add(2 * held, 2 * held, matrix.diagonal(2 * held));
            let failure = matrix.factor().unwrap_err();
            assert_free(&matrix, &failure);
            let place = |node: usize| 2.0 * (node as f64 - held as f64) / count as f64;
            let slope = failure.null_vector[1];
            for node in 0..=count {
                let expected = slope * place(node);
                assert!((failure.null_vector[2 * node] - expected).abs() < 1e-3, "{count} {held} {node}");
            }
        }
    }
}

#[test]
fn a_row_of_beams_that_nothing_holds_is_refused() {
    for count in [1, 2, 7, 30, 100] {
        for matrix in both(2 * count + 2) {
            let matrix = beams(count, 3.0, matrix);
            assert_free(&matrix, &matrix.factor().unwrap_err());
        }
    }
}

#[test]
fn the_tip_of_a_cantilever_is_not_taken_for_a_mechanism() {
    for count in [1, 10, 100, 1000] {
        for matrix in both(2 * count + 2) {
            let mut matrix = beams(count, 2.0, matrix);
            let stiff = 1e9 * matrix.diagonal(0);
            matrix.add(0, 0, stiff);
            matrix.add(1, 1, stiff);
            let mut right = vec![0.0; matrix.order()];
            right[2 * count] = 1.0;
            // Rounding of the stiffness entries grows with the fourth power of the number of beams.
            let tolerance = 1e-15 * (count as f64).powi(4) + 1e-8;
            assert!((solved(&matrix, &right)[2 * count] / (8.0 / 3.0) - 1.0).abs() < tolerance.min(0.01));
        }
    }
}

#[test]
fn a_soft_support_under_stiff_bearings_holds() {
    for soft in [1e-3, 1.0, 1e3] {
        for mut matrix in both(3) {
            for (a, b) in [(0, 1), (1, 2)] {
                matrix.add(a, a, 1e9);
                matrix.add(b, b, 1e9);
                matrix.add(b, a, -1e9);
            }
            let failure = matrix.factor().unwrap_err();
            assert!(failure.null_vector.iter().all(|x| (x - 1.0).abs() < 1e-9));
            matrix.add(0, 0, soft);
            // The support is what rounding leaves of 1e9 + soft; the pivot on it carries rounding of 1e9.
            let held = matrix.diagonal(0) - 1e9;
            let expected = 1.0 / held + 2.0 / 1e9;
            let x = solved(&matrix, &[0.0, 0.0, 1.0]);
            assert!((x[2] / expected - 1.0).abs() < 1e-6 / soft, "{soft} {}", x[2]);
        }
    }
}

#[test]
fn an_empty_row_is_named() {
    for mut matrix in both(4) {
        [0, 1, 3].into_iter().for_each(|i| matrix.add(i, i, 5.0));
        let failure = matrix.factor().unwrap_err();
        assert_eq!((failure.index, failure.scale), (2, 0.0));
        assert!(failure.pivot.abs() < 1e-20);
        assert_eq!(failure.null_vector, [0.0, 0.0, 1.0, 0.0]);
        assert!(failure.to_string().contains("freedom 2 is not held"));
    }
}

#[test]
fn indefinite_and_non_finite_matrices_are_refused() {
    for bad in [-1.0, f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        for mut matrix in both(3) {
            (0..3).for_each(|i| matrix.add(i, i, 1.0));
            matrix.add(1, 1, 2.0 * bad);
            assert_eq!(matrix.factor().unwrap_err().index, 1);
        }
    }
    for bad in [2.0, f64::NAN, f64::INFINITY] {
        for mut matrix in both(3) {
            (0..3).for_each(|i| matrix.add(i, i, 1.0));
            matrix.add(2, 1, bad);
            assert!(matrix.factor().is_err());
        }
    }
}
