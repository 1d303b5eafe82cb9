//! Colors that stand for values.

use plotters::style::colors::colormaps::ViridisRGB;

use crate::number::tick;
use crate::svg::palette::INK;
use crate::svg::{Canvas, Label, Point};

/// Draws the colors from low to high with a number at each level, over a height.
pub(crate) fn draw_color_bar(
    canvas: &mut Canvas,
    (corner, height): (Point, f64),
    range: [f64; 2],
    levels: &[f64],
) {
    const WIDTH: f64 = 22.0;
    const STEPS: u32 = 85;
    let place = |share: f64| corner[1] + height * (1.0 - share);
    for step in 0..STEPS {
        let [low, high] = [step, step + 1].map(|step| f64::from(step) / f64::from(STEPS));
        let value = range[0] + 0.5 * (low + high) * (range[1] - range[0]);
        let style = format!(r#"fill="{}" shape-rendering="crispEdges""#, color(value, range));
        canvas.rectangle([corner[0], place(high)], [WIDTH, place(low) - place(high)], &style);
    }
    for &level in levels {
        let y = place(share(level, range));
        let [left, right] = [corner[0], corner[0] + WIDTH + 5.0];
        canvas.line([left, y], [right, y], &format!(r#"stroke="{INK}" stroke-width="0.8""#));
        canvas.label(Label::new(tick(level), [right + 4.0, y + 4.0]).size(12.0));
    }
}

/// Color of a value; darker is less, in colors that keep their order in gray.
///
/// Source: the scale "viridis" of S. van der Walt and N. Smith (2015), uniform in lightness.
pub(crate) fn color(value: f64, range: [f64; 2]) -> String {
    let color = ViridisRGB::get_color_normalized(share(value, range) as f32, 0.0, 1.0);
    format!("#{:02x}{:02x}{:02x}", color.0, color.1, color.2)
}

/// Share of a range at which a value lies; the middle of a range that is one value.
pub(super) fn share(value: f64, [low, high]: [f64; 2]) -> f64 {
    if high <= low {
        return 0.5;
    }
    ((value - low) / (high - low)).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_map_of_one_value_has_a_color() {
        assert_eq!(color(3.0, [3.0, 3.0]), color(0.5, [0.0, 1.0]));
    }

    /// Luminance of ITU-R BT.709 rises along the colors: the map can be read in gray.
    #[test]
    fn colors_keep_their_order_in_gray() {
        let gray = |step: u32| {
            let text = color(f64::from(step), [0.0, 100.0]);
            let part = |at: usize| f64::from(u8::from_str_radix(&text[at..at + 2], 16).unwrap());
            0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5)
        };
        assert!((1..=100).all(|step| gray(step) >= gray(step - 1) - 1.0));
        assert!(gray(100) > 150.0 + gray(0));
    }
}
