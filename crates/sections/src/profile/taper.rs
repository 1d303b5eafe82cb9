//! The section part-way along a taper.

use crate::{Profile, RectangularTube, RoundBar, RoundTube, SectionError};

/// The section part-way along a taper: every dimension is blended linearly.
///
/// d = (1 - t) d_a + t d_b
///
/// - `a`, `b`: the sections at the start and at the end, of the same kind
/// - `t`: place along the taper, 0 (start) to 1 (end)
///
/// Errors: [`SectionError::TaperKinds`], [`SectionError::TaperPlace`].
pub fn taper(a: &Profile, b: &Profile, t: f64) -> Result<Profile, SectionError> {
    if !(0.0..=1.0).contains(&t) {
        return Err(SectionError::TaperPlace { value: t });
    }
    let blend = |start: f64, end: f64| (1.0 - t) * start + t * end;
    match (a, b) {
        (Profile::RoundTube(a), Profile::RoundTube(b)) => {
            RoundTube::new(blend(a.outside_diameter(), b.outside_diameter()), blend(a.wall(), b.wall()))
                .map(Profile::from)
        }
        (Profile::RoundBar(a), Profile::RoundBar(b)) => {
            RoundBar::new(blend(a.diameter(), b.diameter())).map(Profile::from)
        }
        (Profile::RectangularTube(a), Profile::RectangularTube(b)) => {
            blended_box(a, b, blend).map(Profile::from)
        }
        _ => Err(SectionError::TaperKinds { from: a.kind(), to: b.kind() }),
    }
}

fn blended_box(
    a: &RectangularTube,
    b: &RectangularTube,
    blend: impl Fn(f64, f64) -> f64,
) -> Result<RectangularTube, SectionError> {
    let (width, height) = (blend(a.width(), b.width()), blend(a.height(), b.height()));
    // Rounding must not push a full radius past half the side.
    let radius = blend(a.corner_radius(), b.corner_radius()).min(0.5 * width.min(height));
    RectangularTube::new(width, height, blend(a.wall(), b.wall()), radius)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_of_a_taper_are_the_given_sections() {
        let a = Profile::from(RoundTube::new(0.127, 0.0127).unwrap());
        let b = Profile::from(RoundTube::new(0.09, 0.019).unwrap());
        assert_eq!(taper(&a, &b, 0.0), Ok(a));
        assert_eq!(taper(&a, &b, 1.0), Ok(b));
    }

    #[test]
    fn places_outside_and_mixed_kinds_are_refused() {
        let bar = Profile::from(RoundBar::new(0.08).unwrap());
        let tube = Profile::from(RoundTube::new(0.127, 0.0127).unwrap());
        for bad in [-1e-9, 1.0 + 1e-9, f64::NAN] {
            assert!(taper(&bar, &bar, bad).is_err(), "{bad}");
        }
        assert_eq!(
            taper(&bar, &tube, 0.5).unwrap_err().to_string(),
            "a taper from a round bar to a round tube has no blend; both ends must be of the same kind"
        );
    }
}
