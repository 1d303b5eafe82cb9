//! Frequencies at which answers are looked at.

use crate::ModeOutcome;

/// Growth of the distances from a mode, as a logarithm: the area under a resonance is then 6e-4 too large.
const GROWTH: f64 = 0.06;
/// Distance from a mode, in spacings of the logarithmic scale, from which that scale is fine enough.
const FAR: f64 = 10.0;
/// Damping ratio below which a mode is left out: nothing that drives it is large against its damping.
const LEAST_DAMPING: f64 = 1e-7;

/// Frequencies evenly apart on a logarithmic scale.
#[derive(Debug, Clone, Copy)]
pub(crate) struct FrequencyGrid {
    /// Lowest and highest, Hz.
    pub ends: [f64; 2],
    /// How many.
    pub points: usize,
}

impl FrequencyGrid {
    /// These frequencies and more about each mode, in rising order.
    ///
    /// About a mode of frequency f₀ and damping ratio ζ they lie at `f₀ (1 ± ζ sinh x)` with x evenly apart: evenly
    /// within the half width ζf₀ of its resonance, ever farther apart in its tails, until the logarithmic scale
    /// is fine enough.
    pub(crate) fn near(&self, modes: &[ModeOutcome]) -> Vec<f64> {
        let [low, high] = self.ends;
        let last = self.points - 1;
        let ratio = (high / low).ln() / last as f64;
        let mut all: Vec<f64> = (0..last).map(|i| low * (ratio * i as f64).exp()).collect();
        all.push(high);
        for mode in modes.iter().filter(|mode| mode.damping_ratio > LEAST_DAMPING) {
            let zeta = mode.damping_ratio;
            let beside = ((FAR * ratio / zeta).asinh() / GROWTH).ceil() as i32;
            let about =
                (-beside..=beside).map(|i| mode.frequency * (1.0 + zeta * (GROWTH * f64::from(i)).sinh()));
            all.extend(about.filter(|frequency| *frequency > low && *frequency < high));
        }
        all.sort_by(f64::total_cmp);
        all.dedup();
        all
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Motion, Sides, Strain};

    fn mode(frequency: f64, damping_ratio: f64) -> ModeOutcome {
        ModeOutcome {
            name: "mode".to_owned(),
            frequency,
            damping_ratio,
            modal_mass: 1.0,
            residual: 0.0,
            strain: Strain::default(),
            motion: Motion::default(),
            shape: Vec::new(),
            camber: Sides::default(),
            body: [0.0; 2],
        }
    }

    /// `∫ dr/((1 − r²)² + (2ζr)²) = π/(4ζ)` over all r (S. H. Crandall, W. D. Mark, 1963, from memory).
    #[test]
    fn area_under_a_resonance_is_the_closed_form() {
        let grid = FrequencyGrid { ends: [1e-3, 1e3], points: 961 };
        for zeta in [1e-5, 1e-3, 0.02, 0.3] {
            let frequencies = grid.near(&[mode(10.0, zeta)]);
            let answer = |f: f64| {
                let r = f / 10.0;
                1.0 / ((1.0 - r * r).powi(2) + (2.0 * zeta * r).powi(2))
            };
            let strips = frequencies.windows(2).map(|f| 0.05 * (f[1] - f[0]) * (answer(f[0]) + answer(f[1])));
            let share = strips.sum::<f64>() * 4.0 * zeta / std::f64::consts::PI;
            assert!((share - 1.0).abs() < 1e-3, "{zeta}: {share}");
        }
    }

    #[test]
    fn frequencies_rise_from_end_to_end() {
        let grid = FrequencyGrid { ends: [0.5, 60.0], points: 50 };
        let frequencies = grid.near(&[mode(0.4, 0.5), mode(13.0, 0.0), mode(60.0, 0.01)]);
        assert_eq!((frequencies[0], frequencies[frequencies.len() - 1]), (0.5, 60.0));
        assert!(frequencies.is_sorted_by(|a, b| a < b) && frequencies.len() > 50);
        assert_eq!(grid.near(&[]).len(), 50);
    }
}
