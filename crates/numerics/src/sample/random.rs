//! Random numbers by place: a ChaCha stream for each point.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// Stream of the numbers that are a sample's own and no point's: beyond the places of all points.
const OF_SAMPLE: u64 = u64::MAX;

/// Key of a sample's random numbers.
#[derive(Debug, Clone)]
pub(crate) struct Key([u8; 32]);

impl Key {
    /// The key of a seed and of one of its independent samples.
    pub fn new(seed: u64, replicate: u64) -> Key {
        let mut key = [0; 32];
        key[..8].copy_from_slice(&seed.to_le_bytes());
        key[8..16].copy_from_slice(&replicate.to_le_bytes());
        Key(key)
    }

    fn stream(&self, number: u64) -> ChaCha8Rng {
        let mut stream = ChaCha8Rng::from_seed(self.0);
        stream.set_stream(number);
        stream
    }

    /// So many numbers of 32 bits that are the sample's own.
    pub fn own(&self, count: usize) -> Vec<u32> {
        let mut stream = self.stream(OF_SAMPLE);
        (0..count).map(|_| stream.next_u32()).collect()
    }
}

/// The middle of the interval that 32 binary digits leave open, (k + ½)/2³².
pub(crate) fn uniform(digits: u32) -> f64 {
    (f64::from(digits) + 0.5) / 4_294_967_296.0
}

/// Random coordinates of the point at a place.
pub(crate) fn uniforms(key: &Key, (place, count): (usize, usize)) -> Vec<f64> {
    let mut stream = key.stream(place as u64);
    (0..count).map(|_| uniform(stream.next_u32())).collect()
}

/// So many places below `count`, each at random with all others left in: a bootstrap sample.
///
/// Arguments: `count`, from 1 to 2³²; `seed` and `number`, which sample.
pub fn resampled(count: usize, (seed, number): (u64, u64)) -> Vec<usize> {
    let mut stream = Key::new(seed, 0).stream(number);
    // A product of two 32-bit numbers, its upper half: level to 1 in 2³²/count.
    let below = |bits: u32| ((u64::from(bits) * count as u64) >> 32) as usize;
    (0..count).map(|_| below(stream.next_u32())).collect()
}
