//! Sheets as a PDF file, a page each, with the font that every reader has built in.

use pdf_writer::types::LineCapStyle;
use pdf_writer::{Content, Name, Pdf, Rect, Ref, Str, TextStr};

use super::letters::CAPITAL;
use super::primitive::{Figure, Letters, Pen, Sheet};
use crate::subject::PROGRAM;

/// Points of a millimeter.
const POINT: f32 = 72.0 / 25.4;
/// The most that one cubic curve turns.
const QUARTER: f64 = std::f64::consts::FRAC_PI_2;
const FONT: Name = Name(b"F1");

const CATALOG: Ref = Ref::new(1);
const PAGES: Ref = Ref::new(2);
const HELVETICA: Ref = Ref::new(3);
const INFORMATION: Ref = Ref::new(4);

/// Page and contents of a sheet.
fn references(number: usize) -> [Ref; 2] {
    let first = 5 + 2 * number as i32;
    [Ref::new(first), Ref::new(first + 1)]
}

/// The file of sheets.
pub(super) fn pdf(sheets: &[Sheet], title: &str) -> Vec<u8> {
    let mut file = Pdf::new();
    file.catalog(CATALOG).pages(PAGES);
    let kids = (0..sheets.len()).map(|number| references(number)[0]);
    file.pages(PAGES).kids(kids).count(sheets.len() as i32);
    file.document_info(INFORMATION).title(TextStr(title)).creator(TextStr(PROGRAM));
    file.type1_font(HELVETICA).base_font(Name(b"Helvetica")).encoding_predefined(Name(b"WinAnsiEncoding"));
    for (number, sheet) in sheets.iter().enumerate() {
        let [page, contents] = references(number);
        let [width, height] = sheet.size.map(points);
        let mut own = file.page(page);
        own.parent(PAGES).media_box(Rect::new(0.0, 0.0, width, height)).contents(contents);
        own.resources().fonts().pair(FONT, HELVETICA);
        drop(own); // a page is written when its writer is dropped
        file.stream(contents, &content(sheet));
    }
    file.finish()
}

fn points(millimeters: f64) -> f32 {
    millimeters as f32 * POINT
}

fn content(sheet: &Sheet) -> Vec<u8> {
    let mut content = Content::new();
    content.set_line_cap(LineCapStyle::RoundCap);
    for (layer, figure) in &sheet.figures {
        set_pen(&mut content, layer.pen());
        match figure {
            Figure::Line(from, to) => {
                let ([x, y], [to_x, to_y]) = (from.map(points), to.map(points));
                content.move_to(x, y).line_to(to_x, to_y).stroke();
            }
            Figure::Arc { center, radius, from, to } => arc(&mut content, (*center, *radius), [*from, *to]),
            Figure::Wedge(corners) => {
                let [a, b, c] = corners.map(|corner| corner.map(points));
                content
                    .move_to(a[0], a[1])
                    .line_to(b[0], b[1])
                    .line_to(c[0], c[1])
                    .close_path()
                    .fill_nonzero();
            }
            Figure::Text(letters) => text(&mut content, letters),
        }
    }
    content.finish().to_vec()
}

fn set_pen(content: &mut Content, pen: Pen) {
    let [red, green, blue] = pen.color.map(|part| f32::from(part) / 255.0);
    content.set_stroke_rgb(red, green, blue).set_fill_rgb(red, green, blue);
    content.set_line_width(points(pen.width));
    content.set_dash_pattern(pen.dashes.iter().map(|length| points(*length)), 0.0);
}

/// Arcs of at most a quarter by cubic curves, off by less than 0.03 % of the radius.
fn arc(content: &mut Content, (center, radius): ([f64; 2], f64), [from, to]: [f64; 2]) {
    let steps = ((to - from) / QUARTER - 1e-9).ceil().max(1.0);
    let turn = (to - from) / steps;
    let reach = 4.0 / 3.0 * (0.25 * turn).tan() * radius;
    let at = |angle: f64, along: f64| {
        let (sine, cosine) = angle.sin_cos();
        [center[0] + radius * cosine - along * sine, center[1] + radius * sine + along * cosine].map(points)
    };
    let [x, y] = at(from, 0.0);
    content.move_to(x, y);
    for step in 0..steps as usize {
        let (start, end) = (from + turn * step as f64, from + turn * (step + 1) as f64);
        let ([x1, y1], [x2, y2], [x3, y3]) = (at(start, reach), at(end, -reach), at(end, 0.0));
        content.cubic_to(x1, y1, x2, y2, x3, y3);
    }
    content.stroke();
}

fn text(content: &mut Content, letters: &Letters) {
    let [x, y] = letters.start().map(points);
    content.begin_text().set_font(FONT, points(letters.height / CAPITAL));
    content.next_line(x, y).show(Str(&encoded(&letters.text))).end_text();
}

/// A text in the encoding of the font, which is Latin-1 for all that a drawing needs.
fn encoded(text: &str) -> Vec<u8> {
    let latin = |letter: char| match u32::from(letter) {
        code @ (0x20..=0x7e | 0xa0..=0xff) => code as u8,
        _ => b'?',
    };
    text.chars().map(latin).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_of_drawings_are_in_the_font_and_others_are_marked() {
        assert_eq!(encoded("\u{d8}9\u{b0}\u{d7}"), [0xd8, b'9', 0xb0, 0xd7]);
        assert_eq!(encoded("\u{3a9}\u{7}"), b"??");
    }
}
