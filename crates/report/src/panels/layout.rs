//! Sizes and places that figures share, in units of the canvas.

use crate::svg::palette::{INK, MUTED};
use crate::svg::{Canvas, Label, Point};

/// Width of a figure over one long axis.
pub(crate) const WIDTH: f64 = 1200.0;
/// Left end of the plotting area of such a figure.
pub(crate) const LEFT: f64 = 110.0;
/// Right end of the plotting area of such a figure.
pub(crate) const RIGHT: f64 = 1140.0;
/// Room under its last panel for axis numbers, axis title and footnote.
pub(crate) const FOOT: f64 = 84.0;
/// Base line of the first line of a title.
pub(crate) const FIRST_LINE: f64 = 46.0;
/// Base line of the first line of a study's name; the lower one is that over maps and bars.
pub(crate) const STUDY_FIRST_LINE: f64 = 44.0;
pub(crate) const STUDY_FIRST_LINE_LOWER: f64 = 48.0;
/// Letters of a line of the title.
pub(crate) const TITLE_LETTERS: usize = 72;
/// Lines of a title at most.
pub(crate) const TITLE_LINES: usize = 2;
/// From the lower end of a panel to the base line of its axis numbers.
pub(crate) const TO_NUMBERS: f64 = 17.0;
/// From the lower end of a panel to the base line of its axis title.
pub(crate) const TO_AXIS_TITLE: f64 = 44.0;

/// Name of a model over its figure.
pub(crate) const TITLE: Lines = Lines { size: 22.0, step: 28.0, bold: true, color: INK };
/// Name of a study over its figure.
pub(crate) const STUDY_TITLE: Lines = Lines { size: 20.0, step: 26.0, bold: true, color: INK };
/// What is drawn, under the title.
pub(crate) const SUBTITLE: Lines = Lines { size: 14.0, step: 20.0, bold: false, color: INK };
/// Title of a part of a figure.
pub(crate) const PART_TITLE: Lines = Lines { size: 15.0, step: 20.0, bold: true, color: INK };
/// How it is drawn, and notes under a figure.
pub(crate) const NOTE: Lines = Lines { size: 12.0, step: 17.0, bold: false, color: MUTED };

/// How lines of text stand under one another.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Lines {
    /// Height of the letters.
    pub size: f64,
    /// From base line to base line.
    pub step: f64,
    /// Whether letters are bold.
    pub bold: bool,
    /// Color of the letters.
    pub color: &'static str,
}

impl Lines {
    /// Draws lines from a base line on; gives back the base line that one more would have.
    pub fn draw(self, canvas: &mut Canvas, lines: impl IntoIterator<Item = String>, [x, y]: Point) -> f64 {
        let mut level = y;
        for line in lines {
            canvas.label(self.label(line, [x, level]));
            level += self.step;
        }
        level
    }

    /// One line.
    pub fn label(self, line: impl Into<String>, at: Point) -> Label {
        let label = Label::new(line, at).size(self.size).color(self.color);
        if self.bold { label.bold() } else { label }
    }
}
