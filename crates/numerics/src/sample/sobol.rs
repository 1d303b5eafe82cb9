//! Sobol's sequence by place, its digits scrambled.

use sobol::Sobol;
use sobol::params::JoeKuoD6;

use super::random::Key;

/// Binary digits of a coordinate.
const DIGITS: usize = 32;

/// Most dimensions: as many as the table of direction numbers has.
pub const MOST_DIMENSIONS: usize = 100;

/// Sobol's sequence in the order of Gray's code.
///
/// ```text
/// x_i = g₁v₁ ⊕ g₂v₂ ⊕ …,   g = i ⊕ ⌊i/2⌋ in binary digits, v the direction numbers of the axis
/// ```
///
/// Sources: S. Joe, F. Y. Kuo, SIAM J. Sci. Comput. 30 (2008) 2635-2654, direction numbers new-joe-kuo-6 (those of the crate
/// `sobol`); scrambling by a hash in the manner of Owen: B. Burley, J. Computer Graphics Techniques 9 (2020) no. 4, 1-20
/// (constants from memory; any even ones keep the digits before from depending on those after).
#[derive(Debug, Clone)]
pub(crate) struct Net {
    directions: Vec<Vec<u32>>,
    scrambles: Vec<u32>,
}

impl Net {
    /// A net whose digits are scrambled, each axis by itself.
    pub fn scrambled(dimensions: usize, key: &Key) -> Net {
        let directions = Sobol::<u32>::init_direction_vals::<u32>(dimensions, DIGITS, &JoeKuoD6::minimal());
        Net { directions, scrambles: key.own(dimensions) }
    }

    /// The 32 binary digits of a coordinate.
    pub fn digits(&self, place: usize, axis: usize) -> u32 {
        scrambled(self.plain(place, axis), self.scrambles[axis])
    }

    fn plain(&self, place: usize, axis: usize) -> u32 {
        let gray = (place ^ (place >> 1)) as u32;
        let directions = self.directions[axis].iter().enumerate();
        directions.filter(|(bit, _)| gray >> bit & 1 == 1).fold(0, |sum, (_, direction)| sum ^ direction)
    }
}

/// Digits permuted, each in a way that only those before it decide.
fn scrambled(digits: u32, seed: u32) -> u32 {
    let mut turned = digits.reverse_bits().wrapping_add(seed);
    for even in [0x6c50_b47c_u32, 0xb82f_1e52, 0xc7af_e638, 0x8d22_f6e6] {
        turned ^= turned.wrapping_mul(even);
    }
    turned.reverse_bits()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The first points, as the authors of the direction numbers print them (web.maths.unsw.edu.au/~fkuo/sobol, "the first
    /// ten points in three dimensions"; from memory).
    #[test]
    fn points_match_joe_kuo_first_ten() {
        let net = Net::scrambled(3, &Key::new(0, 0));
        let printed = [
            [0.0, 0.0, 0.0],
            [0.5, 0.5, 0.5],
            [0.75, 0.25, 0.25],
            [0.25, 0.75, 0.75],
            [0.375, 0.375, 0.625],
            [0.875, 0.875, 0.125],
            [0.625, 0.125, 0.875],
            [0.125, 0.625, 0.375],
            [0.1875, 0.3125, 0.9375],
            [0.6875, 0.8125, 0.4375],
        ];
        for (place, point) in printed.iter().enumerate() {
            let own: [f64; 3] = std::array::from_fn(|axis| f64::from(net.plain(place, axis)) / 2f64.powi(32));
            assert_eq!(own, *point, "{place}");
        }
    }

    /// A (0, m, 2)-net in base 2: 2^m points, one in every elementary interval of volume 2^-m; scrambling keeps it.
    #[test]
    fn two_axes_are_a_net_and_every_axis_is_stratified() {
        for (seed, m) in [(1, 4), (2, 7), (3, 10)] {
            let net = Net::scrambled(MOST_DIMENSIONS, &Key::new(seed, 0));
            for across in 0..=m {
                let mut hits = vec![0; 1 << m];
                for place in 0..1 << m {
                    let part = |axis, bits: usize| {
                        if bits == 0 { 0 } else { net.digits(place, axis) >> (32 - bits) }
                    };
                    hits[((part(0, across) << (m - across)) | part(1, m - across)) as usize] += 1;
                }
                assert!(hits.iter().all(|hits| *hits == 1), "{m} {across}: {hits:?}");
            }
            for axis in 0..MOST_DIMENSIONS {
                let mut strata: Vec<u32> =
                    (0..1 << m).map(|place| net.digits(place, axis) >> (32 - m)).collect();
                strata.sort_unstable();
                assert!(strata.iter().enumerate().all(|(i, own)| i == *own as usize), "axis {axis}");
            }
        }
    }

    /// Any 2^m points that begin at a multiple of 2^m are balanced too, so that parts and replicates are nets.
    #[test]
    fn later_blocks_are_balanced() {
        let net = Net::scrambled(9, &Key::new(5, 0));
        for axis in 0..9 {
            let below = (3 * 256..4 * 256).filter(|place| net.digits(*place, axis) < 1 << 31).count();
            assert_eq!(below, 128);
        }
    }

    #[test]
    fn a_digit_depends_on_none_after_it() {
        for (digits, seed) in [(0x1234_5678_u32, 0x9e37_79b9_u32), (0xffff_0000, 77), (1, u32::MAX)] {
            for kept in 1..32 {
                let other = digits ^ (u32::MAX >> kept);
                assert_eq!(scrambled(digits, seed) >> (32 - kept), scrambled(other, seed) >> (32 - kept));
            }
        }
    }
}
