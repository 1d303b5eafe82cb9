//! A horizontal axis about zero under rows of bars.

use super::layout::TO_NUMBERS;
use super::panel::Panel;
use super::round::levels;
use crate::number::tick;
use crate::svg::palette::{GRID, INK, MUTED};
use crate::svg::{Canvas, Label};

/// Numbers under the rows, grid lines and the line of zero.
pub(crate) fn draw_axis(canvas: &mut Canvas, panel: &Panel) {
    let step = levels(panel.x);
    let [top, bottom] = [panel.corner[1], panel.corner[1] + panel.size[1]];
    for value in step {
        let x = panel.at(value, 0.0)[0];
        let zero = value.abs() < 1e-9;
        let color = if zero { INK } else { GRID };
        canvas.line([x, top], [x, bottom], &format!(r#"stroke="{color}" stroke-width="1""#));
        canvas.label(Label::new(tick(value), [x, bottom + TO_NUMBERS]).size(12.0).middle().color(MUTED));
    }
}
