//! Equations for one value at each node, held by nothing: what warping obeys.

use std::collections::VecDeque;

use crate::SectionError;

/// Symmetric equations for one value at each node, of which a constant costs nothing.
///
/// Rows are ordered from a far node outwards (E. Cuthill & J. McKee 1969), each kept from its first entry to
/// the diagonal, so that a ring or a strip stays narrow.
#[derive(Debug, Clone)]
pub(crate) struct ScalarSystem {
    row_of_node: Vec<usize>,
    /// Each row from its first column to the diagonal.
    rows: Vec<Vec<f64>>,
}

impl ScalarSystem {
    /// Equations with room for the couplings within each group of nodes.
    ///
    /// Errors: [`SectionError::NotJoined`] where some nodes hang together with the rest by no group.
    pub fn new(nodes: usize, groups: &[Vec<usize>]) -> Result<Self, SectionError> {
        let mut neighbors = vec![Vec::new(); nodes];
        for group in groups {
            for &node in group {
                neighbors[node].extend(group.iter().copied().filter(|&other| other != node));
            }
        }
        for list in &mut neighbors {
            list.sort_unstable();
            list.dedup();
        }
        let far = *levels(&neighbors, 0).last().unwrap_or(&0);
        let order = levels(&neighbors, far);
        if order.len() < nodes {
            return Err(SectionError::NotJoined { reached: order.len(), nodes });
        }
        let mut row_of_node = vec![0; nodes];
        order.iter().enumerate().for_each(|(row, &node)| row_of_node[node] = row);
        let width = |row: usize| {
            let first = neighbors[order[row]].iter().map(|&node| row_of_node[node]).min().unwrap_or(row);
            row - first.min(row) + 1
        };
        let rows = (0..nodes).map(|row| vec![0.0; width(row)]).collect();
        Ok(Self { row_of_node, rows })
    }

    /// Adds a coupling; of a pair of nodes both orders are to be added, one of them is kept.
    pub fn add(&mut self, one: usize, other: usize, value: f64) {
        let (row, column) = (self.row_of_node[one], self.row_of_node[other]);
        if column <= row {
            let place = column + self.rows[row].len() - 1 - row;
            self.rows[row][place] += value;
        }
    }

    /// The Cholesky factor, with the node of the first row held at 0.
    pub fn factored(mut self) -> Self {
        self.rows[0][0] *= 2.0;
        for i in 0..self.rows.len() {
            let (done, rest) = self.rows.split_at_mut(i);
            let row = &mut rest[0];
            let first = i + 1 - row.len();
            for j in first..i {
                let start = (j + 1 - done[j].len()).max(first);
                let (left, right) =
                    (&row[start - first..j - first], &done[j][start + done[j].len() - 1 - j..]);
                let product: f64 = left.iter().zip(right).map(|(a, b)| a * b).sum();
                let diagonal = done[j][done[j].len() - 1];
                row[j - first] = (row[j - first] - product) / diagonal;
            }
            let (last, before) = (row.len() - 1, row[..row.len() - 1].iter().map(|a| a * a).sum::<f64>());
            row[last] = (row[last] - before).sqrt();
        }
        self
    }

    /// Values at the nodes under loads that sum to 0; of the factored system only.
    pub fn solution(&self, loads: &[f64]) -> Vec<f64> {
        let mut values = vec![0.0; loads.len()];
        self.row_of_node.iter().zip(loads).for_each(|(&row, &load)| values[row] = load);
        for (i, row) in self.rows.iter().enumerate() {
            let (first, last) = (i + 1 - row.len(), row.len() - 1);
            let product: f64 = row[..last].iter().zip(&values[first..i]).map(|(a, b)| a * b).sum();
            values[i] = (values[i] - product) / row[last];
        }
        for (i, row) in self.rows.iter().enumerate().rev() {
            let (first, last) = (i + 1 - row.len(), row.len() - 1);
            values[i] /= row[last];
            let value = values[i];
            values[first..i].iter_mut().zip(row).for_each(|(below, a)| *below -= a * value);
        }
        self.row_of_node.iter().map(|&row| values[row]).collect()
    }
}

/// Nodes in the order of their distance from a start; those that are not joined to it are left out.
fn levels(neighbors: &[Vec<usize>], start: usize) -> Vec<usize> {
    let mut seen = vec![false; neighbors.len()];
    let (mut queue, mut order) = (VecDeque::from([start]), Vec::new());
    seen[start] = true;
    while let Some(node) = queue.pop_front() {
        order.push(node);
        for &next in &neighbors[node] {
            if !seen[next] {
                seen[next] = true;
                queue.push_back(next);
            }
        }
    }
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ring_of_springs_shares_its_load() {
        let groups: Vec<Vec<usize>> = (0..6).map(|i| vec![i, (i + 1) % 6]).collect();
        let mut system = ScalarSystem::new(6, &groups).unwrap();
        for group in &groups {
            for &a in group {
                for &b in group {
                    system.add(a, b, if a == b { 1.0 } else { -1.0 });
                }
            }
        }
        let values = system.factored().solution(&[1.0, 0.0, 0.0, -1.0, 0.0, 0.0]);
        assert!((values[0] - values[3] - 1.5).abs() < 1e-14);
        assert!((values[1] - values[5]).abs() < 1e-14);
    }

    #[test]
    fn nodes_apart_are_refused() {
        assert!(ScalarSystem::new(4, &[vec![0, 1], vec![2, 3]]).is_err());
    }
}
