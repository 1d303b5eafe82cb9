//! What a sheet is drawn with: lines, arcs, filled arrow heads and texts on layers by meaning.

use super::letters::text_width;

/// A place on a sheet: right and up from its lower left corner, mm.
pub(super) type Place = [f64; 2];

/// What a figure means; it decides pen and color.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Layer {
    Frame,
    Axle,
    Hidden,
    Center,
    Seat,
    Stiffener,
    Weld,
    KeepOut,
    Hatch,
    Dimension,
    Symbol,
    Text,
}

/// How a layer is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Pen {
    /// Width of its lines, mm (ISO 128-2, line group 0.5: 0.5 and 0.25, from memory).
    pub width: f64,
    /// Red, green, blue.
    pub color: [u8; 3],
    /// Dashes and gaps, mm; none for a full line.
    pub dashes: &'static [f64],
    /// Number of the nearest color of DXF.
    pub color_number: u8,
}

const BLACK: [u8; 3] = [0, 0, 0];
const BLUE: [u8; 3] = [0, 80, 150];
const RED: [u8; 3] = [190, 30, 20];

impl Layer {
    pub const ALL: [Layer; 12] = [
        Layer::Frame,
        Layer::Axle,
        Layer::Hidden,
        Layer::Center,
        Layer::Seat,
        Layer::Stiffener,
        Layer::Weld,
        Layer::KeepOut,
        Layer::Hatch,
        Layer::Dimension,
        Layer::Symbol,
        Layer::Text,
    ];

    /// Its name in a DXF file.
    pub fn name(self) -> &'static str {
        match self {
            Layer::Frame => "FRAME",
            Layer::Axle => "AXLE",
            Layer::Hidden => "HIDDEN",
            Layer::Center => "CENTER",
            Layer::Seat => "SEAT",
            Layer::Stiffener => "STIFFENER",
            Layer::Weld => "WELD",
            Layer::KeepOut => "KEEP_OUT",
            Layer::Hatch => "HATCH",
            Layer::Dimension => "DIMENSION",
            Layer::Symbol => "WELD_SYMBOL",
            Layer::Text => "TEXT",
        }
    }

    pub fn pen(self) -> Pen {
        let pen = |width, color, color_number| Pen { width, color, color_number, dashes: &[] };
        match self {
            Layer::Frame | Layer::Axle => pen(0.5, BLACK, 7),
            Layer::Hidden => Pen { dashes: &[2.0, 1.0], ..pen(0.25, BLACK, 8) },
            Layer::Center => Pen { dashes: &[6.0, 1.0, 0.5, 1.0], ..pen(0.18, BLACK, 8) },
            Layer::Seat => pen(0.25, BLACK, 7),
            Layer::Stiffener => pen(0.5, BLUE, 5),
            Layer::Weld => pen(0.9, BLUE, 5),
            Layer::KeepOut => pen(0.18, RED, 1),
            Layer::Hatch => pen(0.13, BLACK, 8),
            Layer::Dimension | Layer::Symbol | Layer::Text => pen(0.18, BLACK, 7),
        }
    }
}

/// Which end of a text stands at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

/// A line of text on its base line.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Letters {
    pub text: String,
    pub at: Place,
    /// Height of a capital, mm.
    pub height: f64,
    pub anchor: Anchor,
}

impl Letters {
    /// Where its base line starts.
    pub fn start(&self) -> Place {
        let share = match self.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => 0.5,
            Anchor::End => 1.0,
        };
        [self.at[0] - share * self.width(), self.at[1]]
    }

    /// mm.
    pub fn width(&self) -> f64 {
        text_width(&self.text, self.height)
    }
}

/// One figure.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Figure {
    Line(Place, Place),
    /// Counter-clockwise from the first angle to the second, rad.
    Arc {
        center: Place,
        radius: f64,
        from: f64,
        to: f64,
    },
    /// A filled triangle.
    Wedge([Place; 3]),
    Text(Letters),
}

/// What is drawn on one sheet of paper.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Sheet {
    /// Width and height, mm.
    pub size: [f64; 2],
    /// In the order in which they are drawn.
    pub figures: Vec<(Layer, Figure)>,
}

impl Sheet {
    pub fn line(&mut self, layer: Layer, from: Place, to: Place) {
        self.figures.push((layer, Figure::Line(from, to)));
    }

    /// Lines through places.
    pub fn path(&mut self, layer: Layer, places: &[Place]) {
        places.windows(2).for_each(|pair| self.line(layer, pair[0], pair[1]));
    }

    /// A rectangle between two corners.
    pub fn rectangle(&mut self, layer: Layer, [x, y]: Place, [to_x, to_y]: Place) {
        self.path(layer, &[[x, y], [to_x, y], [to_x, to_y], [x, to_y], [x, y]]);
    }

    /// Texts that a line other than a center line or a hatch runs through.
    pub fn crossed_texts(&self) -> Vec<String> {
        let lines = || {
            self.figures.iter().filter_map(|(layer, figure)| match figure {
                Figure::Line(from, to) if !matches!(layer, Layer::Center | Layer::Hatch) => {
                    Some([*from, *to])
                }
                _ => None,
            })
        };
        let texts = self.figures.iter().filter_map(|(_, figure)| match figure {
            Figure::Text(own) => Some(own),
            _ => None,
        });
        let crossed = texts.filter(|own| {
            let [x, y] = own.start();
            lines().any(|line| runs_through(line, [[x, x + own.width()], [y, y + own.height]]))
        });
        crossed.map(|own| own.text.clone()).collect()
    }

    /// An arc, counter-clockwise from the first angle to the second, rad.
    pub fn arc(&mut self, layer: Layer, (center, radius): (Place, f64), [from, to]: [f64; 2]) {
        self.figures.push((layer, Figure::Arc { center, radius, from, to }));
    }

    /// A filled head whose tip is at `tip` and which points along `direction`, a unit vector.
    pub fn arrow_head(&mut self, layer: Layer, tip: Place, [x, y]: Place) {
        const LENGTH: f64 = 2.5;
        const HALF_WIDTH: f64 = 0.42;
        let neck = [tip[0] - LENGTH * x, tip[1] - LENGTH * y];
        let side = [-HALF_WIDTH * y, HALF_WIDTH * x];
        let corners = [tip, [neck[0] + side[0], neck[1] + side[1]], [neck[0] - side[0], neck[1] - side[1]]];
        self.figures.push((layer, Figure::Wedge(corners)));
    }

    /// A text whose capitals have a height, mm.
    pub fn text(
        &mut self,
        layer: Layer,
        (at, anchor): (Place, Anchor),
        height: f64,
        text: impl Into<String>,
    ) {
        let text = text.into();
        self.figures.push((layer, Figure::Text(Letters { text, at, height, anchor })));
    }
}

/// Whether a line has a part inside a box, given by its reach across and up (Liang and Barsky, *ACM Transactions on Graphics*
/// 3, 1984).
fn runs_through([from, to]: [Place; 2], reach: [[f64; 2]; 2]) -> bool {
    let (mut start, mut end) = (0.0_f64, 1.0_f64);
    for axis in 0..2 {
        let (run, [low, high]) = (to[axis] - from[axis], reach[axis]);
        if run == 0.0 {
            if from[axis] <= low || from[axis] >= high {
                return false;
            }
            continue;
        }
        let cuts = [(low - from[axis]) / run, (high - from[axis]) / run];
        start = start.max(cuts[0].min(cuts[1]));
        end = end.min(cuts[0].max(cuts[1]));
    }
    start < end
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_runs_through_a_box_or_passes_it() {
        let reach = [[10.0, 20.0], [0.0, 2.0]];
        let through = |from, to| runs_through([from, to], reach);
        assert!(through([15.0, -5.0], [15.0, 5.0]) && through([0.0, 1.0], [12.0, 1.0]));
        assert!(through([12.0, 0.5], [13.0, 1.5]) && through([8.0, -1.0], [12.0, 3.0]));
        assert!(!through([9.0, -5.0], [9.0, 5.0]) && !through([15.0, 2.0], [15.0, 5.0]));
        assert!(!through([8.0, 1.0], [12.0, 9.0]) && !through([0.0, 1.0], [9.0, 1.0]));
    }
}
