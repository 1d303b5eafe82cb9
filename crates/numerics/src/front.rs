//! Entries none of which is better than another in everything.

/// Places of the entries that no other one is at least as good as in everything and better in something, in the order of
/// their first number; of equal entries the first.
///
/// Arguments: `entries`, numbers of which less is better.
pub fn nondominated(entries: &[Vec<f64>]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..entries.len()).collect();
    let by_all = |a: &usize, b: &usize| {
        let each = entries[*a].iter().zip(&entries[*b]).map(|(one, other)| one.total_cmp(other));
        each.fold(std::cmp::Ordering::Equal, std::cmp::Ordering::then)
    };
    order.sort_by(by_all);
    let mut front: Vec<usize> = Vec::new();
    for place in order {
        // Whoever comes before is no worse in the first number.
        let beaten = |own: &usize| entries[*own].iter().zip(&entries[place]).all(|(one, other)| one <= other);
        if !front.iter().any(beaten) {
            front.push(place);
        }
    }
    front
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_nothing_beats_is_left() {
        let entries = [[3.0, 1.0], [1.0, 3.0], [2.0, 2.0], [2.0, 3.0], [1.0, 3.0], [3.0, 0.5]].map(Vec::from);
        assert_eq!(nondominated(&entries), [1, 2, 5]);
        assert!(nondominated(&[]).is_empty());
    }

    #[test]
    fn three_numbers_are_traded_alike() {
        let entries = [[1.0, 2.0, 3.0], [1.0, 2.0, 2.0], [2.0, 1.0, 9.0], [2.0, 2.0, 2.0]].map(Vec::from);
        assert_eq!(nondominated(&entries), [1, 2]);
    }
}
