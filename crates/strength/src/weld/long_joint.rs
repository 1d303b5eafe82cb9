//! Long laps, whose ends carry more than their middle.

/// Share of its strength that a long lap reaches, β_Lw.1 = 1.2 - 0.2 L/(150 a), at most 1.
///
/// - `length`: L (m) of the lap in the direction of the force
/// - `throat`: a (m)
///
/// Not for a shear flow that is the same all along, as in a built-up beam.
///
/// Source: EN 1993-1-8:2005, 4.11 (from memory).
pub fn en_long_lap_factor(length: f64, throat: f64) -> f64 {
    (1.2 - 0.2 * length / (150.0 * throat)).clamp(0.0, 1.0)
}

/// Effective length of a fillet loaded at its end (m): all of it to 100 w, 1.2 - 0.002 L/w of it to 300 w, then 180 w.
///
/// - `length`: L (m)
/// - `leg`: w (m)
///
/// Source: ANSI/AISC 360-22, J2.2b (from memory).
pub fn aisc_effective_length(length: f64, leg: f64) -> f64 {
    if length > 300.0 * leg {
        return 180.0 * leg;
    }
    length * (1.2 - 0.002 * length / leg).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn a_short_lap_is_wholly_effective() {
        assert_eq!(en_long_lap_factor(0.6, 0.004), 1.0);
        assert_relative_eq!(en_long_lap_factor(1.2, 0.004), 0.8);
        assert_eq!(en_long_lap_factor(100.0, 0.004), 0.0);
        assert_eq!(aisc_effective_length(0.6, 0.006), 0.6);
    }

    #[test]
    fn the_effective_length_joins_at_its_limits() {
        let leg = 0.006;
        for limit in [100.0, 300.0] {
            let (before, after) = (limit * leg * (1.0 - 1e-9), limit * leg * (1.0 + 1e-9));
            assert_relative_eq!(
                aisc_effective_length(before, leg),
                aisc_effective_length(after, leg),
                max_relative = 1e-8
            );
        }
    }
}
