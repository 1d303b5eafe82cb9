//! A tire's size as its sidewall has it.

/// Nominal section width from which a tire of this trade runs by itself in the place of two, m (common practice, no source).
const WIDE_BASE_FROM: f64 = 0.380;
/// Widths in millimeters that a heavy tire may have (common practice, no source).
const WIDTHS: std::ops::RangeInclusive<f64> = 150.0..=500.0;
const INCH: f64 = 0.0254;

/// What a tire's size says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct TireSize {
    /// Nominal section width, m.
    pub width: f64,
    /// Radius of the unloaded tire, m; none where the size has no aspect ratio.
    pub unloaded_radius: Option<f64>,
}

impl TireSize {
    /// Reads `295/75R22.5` (width in mm / height in % of it, R, rim in inches) or `11R22.5` (width in inches), as ISO
    /// 4223-1 has them (from memory); blanks within are allowed.
    pub fn of(text: &str) -> Option<TireSize> {
        let text: String = text.chars().filter(|c| !c.is_whitespace()).collect::<String>().to_uppercase();
        let (section, rim) = text.split_once('R')?;
        let rim: f64 = rim.parse().ok().filter(|rim| (15.0..=26.0).contains(rim))?;
        let (width, aspect) = match section.split_once('/') {
            Some((width, aspect)) => (width.parse::<f64>().ok()? * 1e-3, Some(aspect.parse::<f64>().ok()?)),
            None => (section.parse::<f64>().ok()? * INCH, None),
        };
        let is_sound =
            WIDTHS.contains(&(width * 1e3)) && aspect.is_none_or(|own| (30.0..=110.0).contains(&own));
        let radius = |aspect: f64| 0.5 * rim * INCH + 0.01 * aspect * width;
        is_sound.then(|| TireSize { width, unloaded_radius: aspect.map(radius) })
    }

    /// Whether it runs by itself in the place of two.
    pub fn is_wide_base(self) -> bool {
        self.width >= WIDE_BASE_FROM
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked out by hand from what the parts of a size mean: 0.5 x 22.5 in + 0.75 x 295 mm = 507.0 mm.
    #[test]
    fn sizes_say_width_and_radius() {
        let metric = TireSize::of("295/75 r22.5").unwrap();
        assert!(
            (metric.width - 0.295).abs() < 1e-12 && (metric.unloaded_radius.unwrap() - 0.507).abs() < 1e-12
        );
        let inches = TireSize::of("11R22.5").unwrap();
        assert!((inches.width - 0.2794).abs() < 1e-12 && inches.unloaded_radius.is_none());
        assert!(TireSize::of("445/50R22.5").unwrap().is_wide_base() && !metric.is_wide_base());
        for wrong in ["", "dual", "295", "R", "295/R22.5", "2950/75R22.5", "295/75R225", "nanR22.5", "1/1R1"]
        {
            assert_eq!(TireSize::of(wrong), None, "{wrong}");
        }
    }
}
