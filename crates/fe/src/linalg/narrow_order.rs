//! Numbers for rows that bring the entries of symmetric matrices near the diagonal.

use std::collections::VecDeque;

use super::matrix::SymmetricMatrix;

/// A new number for each row, by reverse Cuthill and McKee's way: from a row far out, neighbors one after the other, those
/// with few neighbors first.
///
/// Source: E. Cuthill, J. McKee, *Proc. 24th Nat. Conf. ACM* (1969) 157-172; reversed by A. George, 1971; the start by A.
/// George, J. W. H. Liu, *ACM Trans. Math. Softw.* 5 (1979) 284-295 (all from memory).
#[derive(Debug, Clone, PartialEq)]
pub struct NarrowOrder {
    numbers: Vec<usize>,
}

impl NarrowOrder {
    /// The order of matrices of one order taken together; rows keep their numbers where no other order is narrower.
    ///
    /// # Panics
    /// When a matrix has another order than the first.
    pub fn of(matrices: &[&SymmetricMatrix]) -> Self {
        let neighbors = neighbors(matrices);
        let natural: Vec<usize> = (0..neighbors.len()).collect();
        let mut visited = vec![false; neighbors.len()];
        let mut order = Vec::with_capacity(neighbors.len());
        for row in 0..neighbors.len() {
            if !visited[row] {
                let start = far_out(&neighbors, row);
                levels(&neighbors, start, &mut visited).into_iter().flatten().for_each(|own| order.push(own));
            }
        }
        let mut numbers = vec![0; order.len()];
        order.iter().rev().enumerate().for_each(|(number, row)| numbers[*row] = number);
        let narrower = reach(&neighbors, &numbers) < reach(&neighbors, &natural);
        NarrowOrder { numbers: if narrower { numbers } else { natural } }
    }

    /// Rows as they are numbered.
    pub fn natural(order: usize) -> Self {
        NarrowOrder { numbers: (0..order).collect() }
    }

    /// New number of a row.
    pub fn number(&self, row: usize) -> usize {
        self.numbers[row]
    }
}

/// For each row the others that it has an entry with, those with few neighbors first.
fn neighbors(matrices: &[&SymmetricMatrix]) -> Vec<Vec<usize>> {
    let order = matrices.first().map_or(0, |matrix| matrix.order());
    let mut neighbors = vec![Vec::new(); order];
    for matrix in matrices {
        assert_eq!(matrix.order(), order, "order of a matrix");
        matrix.for_each(|row, column, value| {
            if row != column && value != 0.0 {
                neighbors[row].push(column);
                neighbors[column].push(row);
            }
        });
    }
    for own in &mut neighbors {
        own.sort_unstable();
        own.dedup();
    }
    let counts: Vec<usize> = neighbors.iter().map(Vec::len).collect();
    neighbors.iter_mut().for_each(|own| own.sort_by_key(|row| (counts[*row], *row)));
    neighbors
}

/// Rows by their distance from a start, as far as they are not visited; marks them.
fn levels(neighbors: &[Vec<usize>], start: usize, visited: &mut [bool]) -> Vec<Vec<usize>> {
    visited[start] = true;
    let (mut levels, mut queue): (Vec<Vec<usize>>, _) = (Vec::new(), VecDeque::from([(start, 0)]));
    while let Some((row, level)) = queue.pop_front() {
        if levels.len() == level {
            levels.push(Vec::new());
        }
        levels[level].push(row);
        for &next in &neighbors[row] {
            if !std::mem::replace(&mut visited[next], true) {
                queue.push_back((next, level + 1));
            }
        }
    }
    levels
}

/// A row of the same part as a row from which the others lie as far as can be found.
fn far_out(neighbors: &[Vec<usize>], row: usize) -> usize {
    let (mut start, mut depth) = (row, 0);
    loop {
        let found = levels(neighbors, start, &mut vec![false; neighbors.len()]);
        let last = found.last().into_iter().flatten().copied();
        let farthest = last.min_by_key(|own| neighbors[*own].len());
        match farthest {
            Some(next) if found.len() > depth => (start, depth) = (next, found.len()),
            _ => return start,
        }
    }
}

/// Largest distance of an entry from the diagonal.
fn reach(neighbors: &[Vec<usize>], numbers: &[usize]) -> usize {
    let own = |(row, others): (usize, &Vec<usize>)| {
        others.iter().map(|other| numbers[row].abs_diff(numbers[*other])).max().unwrap_or(0)
    };
    neighbors.iter().enumerate().map(own).max().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ladder(rungs: usize) -> SymmetricMatrix {
        // Two chains, the second numbered after the first, as a stiffener's nodes after the axle's.
        let mut matrix = SymmetricMatrix::sparse(2 * rungs);
        for i in 0..rungs {
            matrix.add(i, i, 4.0);
            matrix.add(rungs + i, rungs + i, 4.0);
            matrix.add(i, rungs + i, -1.0);
            if i > 0 {
                matrix.add(i - 1, i, -1.0);
                matrix.add(rungs + i - 1, rungs + i, -1.0);
            }
        }
        matrix
    }

    #[test]
    fn a_ladder_becomes_as_narrow_as_its_rungs() {
        let matrix = ladder(30);
        let order = NarrowOrder::of(&[&matrix]);
        let neighbors = neighbors(&[&matrix]);
        assert_eq!(reach(&neighbors, &NarrowOrder::natural(60).numbers), 30);
        assert_eq!(reach(&neighbors, &order.numbers), 2);
        let mut sorted = order.numbers.clone();
        sorted.sort_unstable();
        assert!(sorted.into_iter().eq(0..60));
    }

    #[test]
    fn rows_apart_and_rows_that_are_narrow_already_are_kept() {
        let mut apart = SymmetricMatrix::sparse(3);
        (0..3).for_each(|row| apart.add(row, row, 1.0));
        assert_eq!(NarrowOrder::of(&[&apart]), NarrowOrder::natural(3));
        assert_eq!(NarrowOrder::of(&[]), NarrowOrder::natural(0));
    }
}
