//! Lines, shapes and texts written as SVG elements.

use std::fmt::Write as _;

use super::{Drawn, FONT_FAMILY, Svg};

/// A place on the canvas: right and down, user units.
pub(crate) type Point = [f64; 2];

/// SVG elements in the order in which they are drawn.
#[derive(Debug, Clone, Default, PartialEq)]
pub(crate) struct Canvas {
    body: String,
}

impl Canvas {
    /// A straight line; `style` is a list of SVG attributes.
    pub fn line(&mut self, from: Point, to: Point, style: &str) {
        let [x1, y1, x2, y2] = [from[0], from[1], to[0], to[1]].map(coordinate);
        self.push(format_args!(r#"<line x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}" {style}/>"#));
    }

    /// A line through several points.
    pub fn polyline(&mut self, points: &[Point], style: &str) {
        let points = list(points);
        self.push(format_args!(r#"<polyline points="{points}" fill="none" {style}/>"#));
    }

    /// A closed shape.
    pub fn polygon(&mut self, points: &[Point], style: &str) {
        let points = list(points);
        self.push(format_args!(r#"<polygon points="{points}" {style}/>"#));
    }

    /// A rectangle from its upper left corner and size.
    pub fn rectangle(&mut self, corner: Point, size: Point, style: &str) {
        let [x, y, width, height] = [corner[0], corner[1], size[0], size[1]].map(coordinate);
        self.push(format_args!(r#"<rect x="{x}" y="{y}" width="{width}" height="{height}" {style}/>"#));
    }

    /// A disc.
    pub fn disc(&mut self, center: Point, radius: f64, style: &str) {
        let [x, y, radius] = [center[0], center[1], radius].map(coordinate);
        self.push(format_args!(r#"<circle cx="{x}" cy="{y}" r="{radius}" {style}/>"#));
    }

    /// An arrow with a filled head at `to`, in one color.
    pub fn arrow(&mut self, from: Point, to: Point, color: &str) {
        const HEAD: f64 = 9.0;
        const HALF_WIDTH: f64 = 4.5;
        let run = [to[0] - from[0], to[1] - from[1]];
        let length = run[0].hypot(run[1]).max(f64::MIN_POSITIVE);
        let [x, y] = [run[0] / length, run[1] / length];
        let neck = [to[0] - HEAD * x, to[1] - HEAD * y];
        self.line(from, neck, &format!(r#"stroke="{color}" stroke-width="2.5""#));
        let side = [HALF_WIDTH * y, -HALF_WIDTH * x];
        let corners = [to, [neck[0] + side[0], neck[1] + side[1]], [neck[0] - side[0], neck[1] - side[1]]];
        self.polygon(&corners, &format!(r#"fill="{color}""#));
    }

    /// A text.
    pub fn label(&mut self, label: Label) {
        self.push(format_args!("{}", label.element()));
    }

    /// What `draw` draws, moved and turned by an SVG transform.
    pub fn group(&mut self, attributes: &str, draw: impl FnOnce(&mut Canvas)) {
        self.push(format_args!("<g {attributes}>"));
        draw(self);
        self.push(format_args!("</g>"));
    }

    /// Ready-made SVG elements.
    pub fn raw(&mut self, elements: &str) {
        self.push(format_args!("{elements}"));
    }

    /// The document, on white, with a title and a description for readers who do not see it.
    pub fn finish(self, size: Point, title: &str, description: &str) -> Svg {
        let (title, description) = (title.to_owned(), description.to_owned());
        Drawn { canvas: self, title, description, metadata: Vec::new(), unit: "" }.finished(size)
    }

    /// The same, its user unit a millimeter of paper.
    pub fn finish_in_millimeters(self, size: Point, title: &str, description: &str) -> Svg {
        Drawn { unit: "mm", ..self.finish(size, title, description).drawn }.finished(size)
    }

    fn push(&mut self, element: std::fmt::Arguments) {
        let _ = writeln!(self.body, "{element}"); // a String takes every write
    }
}

impl Drawn {
    /// The picture of a size.
    pub(super) fn finished(self, [width, height]: Point) -> Svg {
        let (w, h, body) = (coordinate(width), coordinate(height), &self.canvas.body);
        let [title, description] = [&self.title, &self.description].map(|text| escaped(text));
        let lines: String = self.metadata.iter().map(|line| escaped(line) + "\n").collect();
        let unit = self.unit;
        let metadata = if lines.is_empty() { lines } else { format!("<metadata>\n{lines}</metadata>\n") };
        let text = format!(
            r##"<svg xmlns="http://www.w3.org/2000/svg" width="{w}{unit}" height="{h}{unit}" viewBox="0 0 {w} {h}" role="img" font-family="{FONT_FAMILY}">
<title>{title}</title>
<desc>{description}</desc>
{metadata}<rect width="{w}" height="{h}" fill="#ffffff"/>
{body}</svg>
"##
        );
        Svg { text, width, height, drawn: self }
    }
}

/// A text and how it stands.
#[derive(Debug, Clone)]
pub(crate) struct Label {
    text: String,
    at: Point,
    size: f64,
    anchor: &'static str,
    color: &'static str,
    bold: bool,
    halo: bool,
    turn: f64,
}

impl Label {
    /// Dark text of 13 units that starts at a point of its base line.
    pub fn new(text: impl Into<String>, at: Point) -> Self {
        let (anchor, color) = ("start", crate::svg::palette::INK);
        Self { text: text.into(), at, size: 13.0, anchor, color, bold: false, halo: false, turn: 0.0 }
    }

    /// Height of the font.
    pub fn size(self, size: f64) -> Self {
        Self { size, ..self }
    }

    /// Centered on the point.
    pub fn middle(self) -> Self {
        Self { anchor: "middle", ..self }
    }

    /// Ends at the point.
    pub fn end(self) -> Self {
        Self { anchor: "end", ..self }
    }

    /// In a color.
    pub fn color(self, color: &'static str) -> Self {
        Self { color, ..self }
    }

    /// Bold.
    pub fn bold(self) -> Self {
        Self { bold: true, ..self }
    }

    /// With a white edge, to be read over lines.
    pub fn halo(self) -> Self {
        Self { halo: true, ..self }
    }

    /// Turned clockwise about the point, degrees.
    pub fn turn(self, turn: f64) -> Self {
        Self { turn, ..self }
    }

    fn element(&self) -> String {
        let [x, y, size, turn] = [self.at[0], self.at[1], self.size, self.turn].map(coordinate);
        let (anchor, color, text) = (self.anchor, self.color, escaped(&self.text));
        let weight = if self.bold { r#" font-weight="bold""# } else { "" };
        let halo = if self.halo {
            r##" paint-order="stroke" stroke="#ffffff" stroke-width="4" stroke-linejoin="round""##
        } else {
            ""
        };
        let turned =
            if self.turn == 0.0 { String::new() } else { format!(r#" transform="rotate({turn} {x} {y})""#) };
        format!(
            r#"<text x="{x}" y="{y}" font-size="{size}" text-anchor="{anchor}" fill="{color}"{weight}{halo}{turned}>{text}</text>"#
        )
    }
}

/// A coordinate to a hundredth, as short as it can be.
pub(crate) fn coordinate(value: f64) -> String {
    let text = crate::number::fixed(value, 2);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn list(points: &[Point]) -> String {
    let pairs: Vec<String> =
        points.iter().map(|p| format!("{},{}", coordinate(p[0]), coordinate(p[1]))).collect();
    pairs.join(" ")
}

/// Text that is safe inside an element or an attribute; characters that XML forbids become a space.
pub(crate) fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '&' => safe.push_str("&amp;"),
            '"' => safe.push_str("&quot;"),
            '\u{FFFE}' | '\u{FFFF}' => safe.push(' '),
            other if other.is_control() => safe.push(' '),
            other => safe.push(other),
        }
    }
    safe
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_is_escaped() {
        assert_eq!(escaped("a<b>&\"c\"\u{0}\n"), "a&lt;b&gt;&amp;&quot;c&quot;  ");
    }

    #[test]
    fn coordinates_are_short() {
        assert_eq!(coordinate(10.0), "10");
        assert_eq!(coordinate(-0.001), "0");
        assert_eq!(coordinate(1.256), "1.26");
    }
}
