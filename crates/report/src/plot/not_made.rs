//! Checks that could not be made, under a figure.

use axlebow_axle::NotMade;

use crate::answer::plain;
use crate::panels::layout::NOTE;
use crate::svg::{Canvas, Label, Point};
use crate::words::wrapped;

/// Letters of a line, and lines of one check.
const LETTERS: usize = 165;
const LINES: usize = 2;

/// Lists them from a base line on; gives back the base line that one more would have.
pub(super) fn draw_not_made(canvas: &mut Canvas, list: &[NotMade], [x, mut level]: Point) -> f64 {
    if list.is_empty() {
        return level;
    }
    canvas.label(Label::new("Not made, which is no pass", [x, level]).bold());
    level += NOTE.step + 1.0;
    for own in list {
        let text = format!("{}: {}: {}; {}.", plain(&own.place), own.what, own.reason, own.advice);
        level = NOTE.draw(canvas, wrapped(&text, LETTERS, LINES), [x, level]);
    }
    level
}
