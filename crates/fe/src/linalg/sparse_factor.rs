//! Sparse Cholesky factorization L·Lᵀ with a fill-reducing order, by an outside library.

use faer::dyn_stack::{MemBuffer, MemStack};
use faer::linalg::cholesky::ldlt::factor::LdltRegularization;
use faer::linalg::cholesky::llt::factor::LltRegularization;
use faer::sparse::linalg::cholesky::supernodal::SupernodalLltRef;
use faer::sparse::linalg::cholesky::{
    LltRef, SymbolicCholesky, SymbolicCholeskyRaw, SymmetricOrdering, factorize_symbolic_cholesky,
};
use faer::sparse::{SparseColMatRef, SymbolicSparseColMatRef};
use faer::{Conj, MatMut, Par, Side};

use super::pivot::{PivotFailure, ROUNDING, SUSPICIOUS};
use super::sparse::{Pattern, Sparse};

/// Parts of the diagonal added to a matrix that cannot be factored, to find out what moves freely in it: the
/// least that lets it be factored distorts the motion least.
const STIFFENING: [f64; 3] = [1e-14, 1e-12, 1e-10];

/// Steps of inverse iteration, each of which leaves a small part of the distortion.
const STEPS: usize = 4;

/// Factor of a sparse matrix; keeps the order of elimination while the places of the entries stay the same.
#[derive(Debug, Default)]
pub(super) struct SparseFactor {
    pattern: Pattern,
    symbolic: Option<SymbolicCholesky<usize>>,
    values: Vec<f64>,
}

impl SparseFactor {
    /// Number of unknowns.
    pub(super) fn order(&self) -> usize {
        self.symbolic.as_ref().map_or(0, SymbolicCholesky::nrows)
    }

    /// Factors a matrix into this storage.
    pub(super) fn refactor(&mut self, matrix: &Sparse) -> Result<(), PivotFailure> {
        refuse_non_finite(matrix)?;
        self.analyze(matrix);
        if self.factor_values(&matrix.values()) {
            let small = |(index, pivot): &(usize, f64)| *pivot <= SUSPICIOUS * matrix.diagonal(*index);
            let vanished = self.pivots().filter(small).find_map(|(index, _)| self.vanished(matrix, index));
            return vanished.map_or(Ok(()), Err);
        }
        Err(self.free_motion(matrix))
    }

    /// Number of negative pivots of a matrix, which is that of its negative eigenvalues (Sylvester's law of
    /// inertia); none when a pivot is zero or not finite.
    pub(super) fn negative_pivots(matrix: &Sparse) -> Option<usize> {
        refuse_non_finite(matrix).ok()?;
        let mut factor = SparseFactor::default();
        factor.analyze(matrix);
        if !factor.factor_values_of_any_sign(&matrix.values()) {
            return None;
        }
        let pivots = factor.diagonal();
        let counted = pivots.iter().filter(|pivot| **pivot < 0.0).count();
        pivots.iter().all(|pivot| pivot.is_finite()).then_some(counted)
    }

    /// Solves in place for rows of `count` right-hand sides.
    pub(super) fn solve(&self, rows: &mut [f64], count: usize) {
        let Some(symbolic) = &self.symbolic else { return };
        let rows = MatMut::from_row_major_slice_mut(rows, symbolic.nrows(), count);
        let mut memory = MemBuffer::new(symbolic.solve_in_place_scratch::<f64>(count, Par::Seq));
        let stack = MemStack::new(&mut memory);
        LltRef::new(symbolic, &self.values).solve_in_place_with_conj(Conj::No, rows, Par::Seq, stack);
    }

    /// Finds the order of elimination, unless the entries stand where they stood before.
    fn analyze(&mut self, matrix: &Sparse) {
        let pattern = matrix.pattern();
        if self.symbolic.is_some() && self.pattern == pattern {
            return;
        }
        self.pattern = pattern;
        let (order, places) = (matrix.order(), self.places());
        let found =
            factorize_symbolic_cholesky(places, Side::Lower, SymmetricOrdering::Amd, Default::default());
        let symbolic = found.unwrap_or_else(|error| panic!("matrix of order {order}: {error}"));
        self.values = vec![0.0; symbolic.len_val()];
        self.symbolic = Some(symbolic);
    }

    fn places(&self) -> SymbolicSparseColMatRef<'_, usize> {
        let order = self.pattern.starts.len() - 1;
        SymbolicSparseColMatRef::new_checked(order, order, &self.pattern.starts, None, &self.pattern.rows)
    }

    /// Whether all pivots are positive.
    fn factor_values(&mut self, values: &[f64]) -> bool {
        let mut storage = std::mem::take(&mut self.values);
        let factored = self.symbolic.as_ref().is_some_and(|symbolic| {
            let scratch = symbolic.factorize_numeric_llt_scratch::<f64>(Par::Seq, Default::default());
            symbolic
                .factorize_numeric_llt(
                    &mut storage,
                    SparseColMatRef::new(self.places(), values),
                    Side::Lower,
                    LltRegularization::default(),
                    Par::Seq,
                    MemStack::new(&mut MemBuffer::new(scratch)),
                    Default::default(),
                )
                .is_ok()
        });
        self.values = storage;
        factored
    }

    /// Factors L·D·Lᵀ, whatever the signs of D; whether no pivot was zero.
    fn factor_values_of_any_sign(&mut self, values: &[f64]) -> bool {
        let mut storage = std::mem::take(&mut self.values);
        let factored = self.symbolic.as_ref().is_some_and(|symbolic| {
            let scratch = symbolic.factorize_numeric_ldlt_scratch::<f64>(Par::Seq, Default::default());
            symbolic
                .factorize_numeric_ldlt(
                    &mut storage,
                    SparseColMatRef::new(self.places(), values),
                    Side::Lower,
                    LdltRegularization::default(),
                    Par::Seq,
                    MemStack::new(&mut MemBuffer::new(scratch)),
                    Default::default(),
                )
                .is_ok()
        });
        self.values = storage;
        factored
    }

    /// Freedoms with their pivots, the squares of the diagonal of L, in the order of elimination.
    fn pivots(&self) -> impl Iterator<Item = (usize, f64)> {
        let diagonal = self.diagonal();
        let order = self.symbolic.as_ref().and_then(SymbolicCholesky::perm).map(|order| order.arrays().0);
        let freedom = move |place: usize| order.map_or(place, |order| order[place]);
        diagonal.into_iter().enumerate().map(move |(place, entry)| (freedom(place), entry * entry))
    }

    /// Diagonal of the factor, or D where it has one, in the order of elimination.
    fn diagonal(&self) -> Vec<f64> {
        match self.symbolic.as_ref().map(SymbolicCholesky::raw) {
            Some(SymbolicCholeskyRaw::Simplicial(symbolic)) => {
                symbolic.col_ptr()[..symbolic.ncols()].iter().map(|start| self.values[*start]).collect()
            }
            Some(SymbolicCholeskyRaw::Supernodal(symbolic)) => {
                let factor = SupernodalLltRef::new(symbolic, &self.values);
                let nodes = (0..symbolic.n_supernodes()).map(|node| factor.supernode(node).val());
                nodes.flat_map(|block| (0..block.ncols()).map(move |i| block[(i, i)])).collect()
            }
            None => Vec::new(),
        }
    }

    /// The failure of a suspicious pivot, if the energy of its motion is no more than rounding.
    ///
    /// The motion is A⁻¹e_i made 1 at i, so that all other freedoms follow; its energy is 1/(A⁻¹)_ii.
    fn vanished(&self, matrix: &Sparse, index: usize) -> Option<PivotFailure> {
        let motion = self.response(index);
        let (energy, scale) = (1.0 / motion[index], matrix.diagonal(index));
        let motion: Vec<f64> = motion.iter().map(|x| x * energy).collect();
        let sound = energy > ROUNDING * matrix.magnitude(&motion);
        (!sound).then(|| PivotFailure::new(index, energy, scale, motion))
    }

    /// A⁻¹e_i.
    fn response(&self, index: usize) -> Vec<f64> {
        let mut x = vec![0.0; self.order()];
        x[index] = 1.0;
        self.solve(&mut x, 1);
        x
    }

    /// What moves freely in a matrix that cannot be factored: the softest motion of the matrix with a little
    /// added to its diagonal. For a matrix that is indefinite beyond that, the smallest diagonal is named.
    fn free_motion(&mut self, matrix: &Sparse) -> PivotFailure {
        let diagonal: Vec<f64> = (0..matrix.order()).map(|i| matrix.diagonal(i)).collect();
        let largest = diagonal.iter().copied().fold(f64::MIN_POSITIVE, f64::max);
        let own = |i: usize| if diagonal[i] > 0.0 { diagonal[i] } else { largest };
        let smallest = |a: &(usize, f64), b: &(usize, f64)| (a.1 / own(a.0)).total_cmp(&(b.1 / own(b.0)));
        for part in STIFFENING {
            let mut values = matrix.values();
            for i in 0..diagonal.len() {
                values[self.pattern.starts[i]] += part * own(i);
            }
            if !self.factor_values(&values) {
                continue;
            }
            if let Some((index, pivot)) = self.pivots().min_by(smallest) {
                let motion = self.softest_motion(index, own);
                return PivotFailure::new(index, pivot - part * own(index), diagonal[index], motion);
            }
        }
        let index = (0..diagonal.len()).min_by(|a, b| diagonal[*a].total_cmp(&diagonal[*b])).unwrap_or(0);
        PivotFailure::new(index, diagonal[index], diagonal[index], vec![0.0; diagonal.len()])
    }

    /// Inverse iteration from one freedom, measured by the added stiffness of each.
    fn softest_motion(&self, index: usize, added: impl Fn(usize) -> f64) -> Vec<f64> {
        let mut x = self.response(index);
        for _ in 1..STEPS {
            let largest = x.iter().fold(0.0_f64, |largest, x| largest.max(x.abs()));
            x.iter_mut().enumerate().for_each(|(i, x)| *x *= added(i) / largest);
            self.solve(&mut x, 1);
        }
        x
    }
}

fn refuse_non_finite(matrix: &Sparse) -> Result<(), PivotFailure> {
    let mut found = None;
    matrix.for_each(|row, _, value| {
        if !value.is_finite() && found.is_none() {
            found = Some((row, value));
        }
    });
    match found {
        Some((row, value)) => {
            Err(PivotFailure::new(row, value, matrix.diagonal(row), vec![0.0; matrix.order()]))
        }
        None => Ok(()),
    }
}
