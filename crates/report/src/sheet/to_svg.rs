//! Sheets as one SVG picture in true millimeters, one below the other.

use super::letters::CAPITAL;
use super::primitive::{Figure, Layer, Letters, Pen, Place, Sheet};
use crate::svg::{Canvas, Svg, coordinate, escaped};

/// Room between sheets, mm.
const BETWEEN: f64 = 5.0;

/// The picture of sheets.
pub(super) fn svg(sheets: &[Sheet], title: &str, description: &str) -> Svg {
    let mut canvas = Canvas::default();
    let (mut top, mut width) = (0.0, 0.0_f64);
    for sheet in sheets {
        let page = Page { top, height: sheet.size[1] };
        sheet.figures.iter().for_each(|(layer, figure)| page.draw(&mut canvas, *layer, figure));
        (top, width) = (top + sheet.size[1] + BETWEEN, width.max(sheet.size[0]));
    }
    canvas.finish_in_millimeters([width, (top - BETWEEN).max(0.0)], title, description)
}

/// Where a sheet lies in the picture.
struct Page {
    top: f64,
    height: f64,
}

impl Page {
    fn place(&self, [x, y]: Place) -> Place {
        [x, self.top + self.height - y]
    }

    fn draw(&self, canvas: &mut Canvas, layer: Layer, figure: &Figure) {
        let pen = layer.pen();
        match figure {
            Figure::Line(from, to) => canvas.line(self.place(*from), self.place(*to), &stroke(pen)),
            Figure::Arc { center, radius, from, to } => {
                let at = |angle: f64| {
                    self.place([center[0] + radius * angle.cos(), center[1] + radius * angle.sin()])
                };
                canvas.raw(&arc([at(*from), at(0.5 * (from + to)), at(*to)], *radius, pen));
            }
            Figure::Wedge(corners) => {
                canvas
                    .polygon(&corners.map(|corner| self.place(corner)), &format!(r#"fill="{}""#, color(pen)));
            }
            Figure::Text(letters) => self.text(canvas, letters, pen),
        }
    }

    /// A text of the width that was counted on, whichever font the reader has.
    fn text(&self, canvas: &mut Canvas, letters: &Letters, pen: Pen) {
        let [x, y] = self.place(letters.start()).map(coordinate);
        let (size, width) = (coordinate(letters.height / CAPITAL), coordinate(letters.width()));
        let (text, color) = (escaped(&letters.text), color(pen));
        canvas.raw(&format!(
            r#"<text x="{x}" y="{y}" font-size="{size}" textLength="{width}" lengthAdjust="spacingAndGlyphs" fill="{color}">{text}</text>"#
        ));
    }
}

/// Two arcs through three places, so that a whole circle is none of zero length.
fn arc(places: [Place; 3], radius: f64, pen: Pen) -> String {
    let [start, middle, end] =
        places.map(|place| format!("{} {}", coordinate(place[0]), coordinate(place[1])));
    let (radius, style) = (coordinate(radius), stroke(pen));
    format!(
        r#"<path d="M {start} A {radius} {radius} 0 0 0 {middle} A {radius} {radius} 0 0 0 {end}" fill="none" {style}/>"#
    )
}

fn color(pen: Pen) -> String {
    let [red, green, blue] = pen.color;
    format!("#{red:02x}{green:02x}{blue:02x}")
}

fn stroke(pen: Pen) -> String {
    let dashes: Vec<String> = pen.dashes.iter().map(|length| coordinate(*length)).collect();
    let dashes = if dashes.is_empty() {
        String::new()
    } else {
        format!(r#" stroke-dasharray="{}""#, dashes.join(" "))
    };
    format!(
        r#"stroke="{}" stroke-width="{}" stroke-linecap="round"{dashes}"#,
        color(pen),
        coordinate(pen.width)
    )
}
