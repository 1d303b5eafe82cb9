//! Strata of a Latin hypercube: a permutation for each axis, had at one place without the others.

use super::random::Key;

/// Rounds of the network that permutes.
const ROUNDS: usize = 6;

/// A permutation of the strata for each axis.
///
/// A Feistel network permutes the numbers of an even count of bits, and is gone through again where it leaves the strata.
///
/// Source: M. Luby, C. Rackoff, SIAM J. Comput. 17 (1988) 373-386; J. Black, P. Rogaway, CT-RSA 2002, cycle walking (both
/// from memory).
#[derive(Debug, Clone)]
pub(crate) struct Strata {
    count: usize,
    /// Half of the bits that are permuted.
    half: u32,
    keys: Vec<[u32; ROUNDS]>,
}

impl Strata {
    pub fn new((count, dimensions): (usize, usize), key: &Key) -> Strata {
        let bits = usize::BITS - count.saturating_sub(1).leading_zeros();
        let keys = key.own(ROUNDS * dimensions);
        let keys = keys.chunks_exact(ROUNDS).map(|own| std::array::from_fn(|round| own[round])).collect();
        Strata { count, half: bits.div_ceil(2).max(1), keys }
    }

    /// Coordinate of the point at a place along an axis: in its stratum at a share `within` of the width.
    ///
    /// The share is cut to 24 bits, so that the coordinate never rounds up into the next stratum.
    pub fn coordinate(&self, (place, axis): (usize, usize), within: f64) -> f64 {
        const FINE: f64 = 16_777_216.0;
        let share = ((within * FINE).floor() + 0.5) / FINE;
        (self.stratum(place, axis) as f64 + share) / self.count as f64
    }

    fn stratum(&self, place: usize, axis: usize) -> usize {
        let mut at = self.permuted(place as u64, &self.keys[axis]);
        while at >= self.count as u64 {
            at = self.permuted(at, &self.keys[axis]);
        }
        at as usize
    }

    fn permuted(&self, at: u64, keys: &[u32; ROUNDS]) -> u64 {
        let mask = (1_u64 << self.half) - 1;
        let (mut high, mut low) = (at >> self.half, at & mask);
        for key in keys {
            (high, low) = (low, high ^ (u64::from(mixed(low as u32 ^ key)) & mask));
        }
        (high << self.half) | low
    }
}

/// Every bit of the result depends on every bit of the number.
///
/// Source: A. Appleby, MurmurHash3, finalizer of 32 bits, public domain (constants from memory; any good mixing serves).
fn mixed(number: u32) -> u32 {
    let mut h = number ^ (number >> 16);
    h = h.wrapping_mul(0x85eb_ca6b);
    h ^= h >> 13;
    h = h.wrapping_mul(0xc2b2_ae35);
    h ^ (h >> 16)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_stratum_of_every_axis_has_one_point() {
        for count in [1, 2, 3, 7, 16, 100, 1023, 1025] {
            let strata = Strata::new((count, 4), &Key::new(3, 0));
            for axis in 0..4 {
                let mut hit = vec![false; count];
                for place in 0..count {
                    for within in [1e-12, 0.5, 1.0 - 1e-12] {
                        let u = strata.coordinate((place, axis), within);
                        assert_eq!((u * count as f64).floor() as usize, strata.stratum(place, axis));
                    }
                    hit[strata.stratum(place, axis)] = true;
                }
                assert!(hit.iter().all(|hit| *hit), "{count} {axis}");
            }
        }
    }
}
