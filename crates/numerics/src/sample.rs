//! Points spread over the unit cube, each had by its place without those before it.

mod latin;
mod random;
mod sobol;

use latin::Strata;
use random::{Key, uniform, uniforms};
use sobol::Net;

pub use random::resampled;
pub use sobol::MOST_DIMENSIONS;

/// How points are spread over the unit cube.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spread {
    /// Each axis in as many strata as there are points, each stratum with one point, at random within.
    LatinHypercube,
    /// Sobol's sequence, its digits scrambled.
    Sobol,
    /// Every coordinate at random by itself.
    Random,
}

/// Points of the unit cube; the same for the same spread, size, seed and replicate on every machine.
///
/// The seed fills a ChaCha key; every point has a stream of its own, so that a point is had by its place.
///
/// Sources: M. D. McKay, R. J. Beckman, W. J. Conover, Technometrics 21 (1979) 239-245 for Latin hypercubes (from memory);
/// `sample::sobol` for Sobol's sequence.
#[derive(Debug, Clone)]
pub struct Sampler {
    dimensions: usize,
    key: Key,
    places: Places,
}

#[derive(Debug, Clone)]
enum Places {
    Latin(Strata),
    Sobol(Net),
    Random,
}

impl Sampler {
    /// A sampler.
    ///
    /// Arguments: `count`, how many points, at least 1 and at most 2³²; `dimensions`, at most [`MOST_DIMENSIONS`] for
    /// Sobol's sequence; `seed`, any; `replicate`, 0 for the first of several independent samples of one seed.
    pub fn new(
        spread: Spread,
        (count, dimensions): (usize, usize),
        (seed, replicate): (u64, u64),
    ) -> Sampler {
        let key = Key::new(seed, replicate);
        let places = match spread {
            Spread::LatinHypercube => Places::Latin(Strata::new((count, dimensions), &key)),
            Spread::Sobol => Places::Sobol(Net::scrambled(dimensions, &key)),
            Spread::Random => Places::Random,
        };
        Sampler { dimensions, key, places }
    }

    /// The point at a place; every coordinate is above 0 and below 1.
    pub fn point(&self, place: usize) -> Vec<f64> {
        match &self.places {
            Places::Latin(strata) => {
                let within = uniforms(&self.key, (place, self.dimensions));
                (0..self.dimensions).map(|axis| strata.coordinate((place, axis), within[axis])).collect()
            }
            Places::Sobol(net) => (0..self.dimensions).map(|axis| uniform(net.digits(place, axis))).collect(),
            Places::Random => uniforms(&self.key, (place, self.dimensions)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ALL: [Spread; 3] = [Spread::LatinHypercube, Spread::Sobol, Spread::Random];

    #[test]
    fn coordinates_are_inside_the_cube_and_depend_on_seed_and_replicate() {
        for spread in ALL {
            let of = |seed, replicate| {
                let sampler = Sampler::new(spread, (97, 6), (seed, replicate));
                (0..97).flat_map(|i| sampler.point(i)).collect::<Vec<f64>>()
            };
            let first = of(1, 0);
            assert!(first.iter().all(|u| *u > 0.0 && *u < 1.0));
            assert_eq!(first, of(1, 0));
            assert!(first != of(2, 0) && first != of(1, 1), "{spread:?}");
        }
    }

    /// The mean of n coordinates of a random sample has the standard deviation 1/√(12 n); five of them are never reached.
    #[test]
    fn coordinates_are_level_and_strangers_to_one_another() {
        let count = 4096;
        let bound = 5.0 / (12.0 * count as f64).sqrt();
        for spread in ALL {
            let sampler = Sampler::new(spread, (count, 5), (7, 0));
            let points: Vec<Vec<f64>> = (0..count).map(|i| sampler.point(i)).collect();
            for axis in 0..5 {
                let mean = points.iter().map(|p| p[axis]).sum::<f64>() / count as f64;
                assert!((mean - 0.5).abs() < bound, "{spread:?} {axis}: {mean}");
                for other in 0..axis {
                    let product = points.iter().map(|p| (p[axis] - 0.5) * (p[other] - 0.5)).sum::<f64>();
                    let correlation = 12.0 * product / count as f64;
                    assert!(correlation.abs() < 5.0 / (count as f64).sqrt(), "{spread:?}: {correlation}");
                }
            }
        }
    }
}
