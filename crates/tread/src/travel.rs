//! The travel for each radian at which ribs that roll at one speed give the force asked of them.

use crate::rolling::{Asked, RollingRib};

/// Rounds of Newton's method; four do, where the ribs can give what is asked.
const NEWTON_ROUNDS: usize = 12;
/// Change of the travel, as a share of it, after which the next one would be lost in its digits.
const NEWTON_TOLERANCE: f64 = 1e-9;

/// Rounds within which a bracketed travel is found.
const ROUNDS: usize = 60;
/// Share of the bracket within which it is found.
const TOLERANCE: f64 = 1e-13;
/// Share of the radii by which the bracket is widened until the force asked for lies in it, and how often it is doubled.
const WIDENING: f64 = 0.01;
/// Most doublings of the bracket.
const DOUBLINGS: usize = 12;

/// Radius at which the forward forces of the ribs sum to what is asked.
///
/// Forces fall as it grows, smoothly: Newton's method from where they would do so under small slip. Where it does not end, as
/// where ribs that slide altogether cannot give what is asked, it is sought between the radii.
pub(crate) fn rolling_radius(ribs: &[RollingRib], asked: Asked) -> f64 {
    let on_road = || ribs.iter().filter(|rib| rib.is_on_road());
    if on_road().next().is_none() {
        return ribs.iter().map(RollingRib::radius).fold(0.0, f64::max);
    }
    by_newton(ribs, asked).unwrap_or_else(|| between_radii(ribs, asked))
}

/// Forward force of the ribs beyond what is asked (N) where the face travels `radius` for each radian, and how it changes with
/// that (N/m).
pub(crate) fn surplus(ribs: &[RollingRib], asked: Asked, radius: f64) -> [f64; 2] {
    let mut sum = [-asked.forward_force, 0.0];
    for rib in ribs {
        let [force, change] = rib.forward_force(radius, asked.side);
        sum = [sum[0] + force, sum[1] + change];
    }
    sum
}

fn by_newton(ribs: &[RollingRib], asked: Asked) -> Option<f64> {
    let small = ribs.iter().map(RollingRib::small_slip).fold([0.0; 2], |a, b| [a[0] + b[0], a[1] + b[1]]);
    let mut travel = (small[1] - asked.forward_force) / small[0];
    for _ in 0..NEWTON_ROUNDS {
        let [over, change] = surplus(ribs, asked, travel);
        let step = over / change;
        travel -= step;
        if !(travel > 0.0 && change < 0.0) {
            return None;
        }
        if step.abs() <= NEWTON_TOLERANCE * travel {
            return Some(travel);
        }
    }
    None
}

/// From all driving at the least radius of a rib on the road to all braking at the largest, and further beyond.
fn between_radii(ribs: &[RollingRib], asked: Asked) -> f64 {
    let on_road = || ribs.iter().filter(|rib| rib.is_on_road()).map(RollingRib::radius);
    let (least, largest) = (on_road().fold(f64::INFINITY, f64::min), on_road().fold(0.0, f64::max));
    let excess = |radius: f64| surplus(ribs, asked, radius)[0];
    let (mut low, mut high) = (least, largest);
    for doubling in 0..DOUBLINGS {
        let step = WIDENING * largest * f64::from(1_u16 << doubling);
        match (excess(low) < 0.0, excess(high) > 0.0) {
            (true, _) if low > step => low -= step,
            (_, true) => high += step,
            _ => break,
        }
    }
    root_between(excess, [low, high])
}

/// Where a falling function is zero between two places: regula falsi that halves the value at an end which stays (Illinois;
/// M. Dowell, P. Jarratt, BIT 11 (1971) 168-174, from memory).
fn root_between(excess: impl Fn(f64) -> f64, [mut low, mut high]: [f64; 2]) -> f64 {
    let width = high - low;
    let (mut over, mut under) = (excess(low), excess(high));
    if over <= 0.0 || under >= 0.0 {
        return if over <= 0.0 { low } else { high };
    }
    let (mut last, mut middle) = (0.0, low);
    for _ in 0..ROUNDS {
        let before = middle;
        middle = low + over / (over - under) * (high - low);
        let value = excess(middle);
        if value == 0.0 || (middle - before).abs() <= TOLERANCE * width {
            break;
        }
        let stays = value * last > 0.0;
        if value > 0.0 {
            (low, over) = (middle, value);
            under *= if stays { 0.5 } else { 1.0 };
        } else {
            (high, under) = (middle, value);
            over *= if stays { 0.5 } else { 1.0 };
        }
        last = value;
    }
    middle
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Brush;

    /// Ribs of unlike radii and loads, some off the road, that a face is made of.
    fn ribs(seed: u32, count: usize) -> Vec<RollingRib> {
        let mut state = seed;
        let mut share = || {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            f64::from(state >> 8) / f64::from(1_u32 << 24)
        };
        let rib = |_| {
            let load = 8e3 * (share() - 0.1).max(0.0);
            RollingRib::new(0.49 + 0.02 * share(), Brush { stiffness: 14.0 * load, limit: 0.8 * load })
        };
        (0..count).map(rib).collect()
    }

    /// The rib by its brush, as it is defined.
    fn defined((radius, brush): (f64, Brush), travel: f64, side: f64) -> [f64; 2] {
        let forward = (radius - travel) / travel;
        let sliding = forward.hypot(side);
        let force = brush.force(sliding * travel / radius);
        [force * forward / sliding, force * sliding]
    }

    #[test]
    fn forward_force_and_energy_are_those_of_the_brush_and_change_as_said() {
        let (radius, brush) = (0.5, Brush { stiffness: 60e3, limit: 4e3 });
        let rib = RollingRib::new(radius, brush);
        for travel in [0.3, 0.45, 0.49, 0.4999, 0.5001, 0.505, 0.6] {
            for side in [0.0, 0.002, 0.03, 0.19, 0.25] {
                let [force, energy] = defined((radius, brush), travel, side);
                let [found, change] = rib.forward_force(travel, side);
                let near = |a: f64, b: f64, scale: f64| {
                    assert!((a - b).abs() < 1e-9 * scale, "{travel} {side}: {a} {b}")
                };
                near(found, force, 4e3);
                near(rib.energy(travel, side), energy, energy);
                let h = 1e-7;
                let at = |travel| rib.forward_force(travel, side)[0];
                let slope = (at(travel + h) - at(travel - h)) / (2.0 * h);
                assert!((slope - change).abs() < 1e-5 * 120e3, "{travel} {side}: {slope} {change}");
            }
        }
    }

    /// The search between the radii is the check of Newton's method, up to what friction can give.
    #[test]
    fn newton_finds_what_the_search_between_the_radii_finds() {
        for seed in 0..400 {
            let ribs = ribs(seed, 1 + seed as usize % 10);
            let most: f64 = ribs
                .iter()
                .map(|rib| surplus(&[*rib], Asked { side: 0.0, forward_force: 0.0 }, 1e-3)[0])
                .sum();
            for side in [0.0, 1e-3, 0.02, -0.1] {
                for share in [0.0, 0.02, -0.1, 0.3, -0.5] {
                    let asked = Asked { side, forward_force: share * most };
                    let [newton, searched] = [rolling_radius(&ribs, asked), between_radii(&ribs, asked)];
                    assert!((newton - searched).abs() < 1e-11, "{seed} {side} {share}: {newton} {searched}");
                }
            }
        }
    }

    #[test]
    fn what_no_friction_gives_is_sought_between_the_radii() {
        let ribs = [RollingRib::new(0.5, Brush { stiffness: 60e3, limit: 4e3 })];
        let asked = Asked { side: 0.3, forward_force: 5e3 };
        assert_eq!(by_newton(&ribs, asked), None);
        assert!(rolling_radius(&ribs, asked) < 0.4);
    }
}
