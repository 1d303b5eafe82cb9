//! A finished picture and the canvas on which it is drawn.

use std::sync::Arc;

use axlebow_axle::Warning;
use resvg::{tiny_skia, usvg};

use crate::words::warning::sentence;
use crate::words::wrapped;
use crate::{ModelCard, ReportError};

mod canvas;
pub(crate) mod palette;

use palette::VERMILLION;

pub(crate) use canvas::{Canvas, Label, Point, coordinate, escaped};

/// Font of every text: built into the PNG, and asked for first by the SVG.
pub(crate) const FONT_FAMILY: &str = "DejaVu Sans, Verdana, Arial, sans-serif";

const REGULAR: &[u8] = include_bytes!("../fonts/DejaVuSans.ttf");
const BOLD: &[u8] = include_bytes!("../fonts/DejaVuSans-Bold.ttf");

/// Largest side of a PNG, pixels.
const LARGEST_SIDE: f64 = 20_000.0;

/// Pixels of a millimeter at 96 to the inch, as readers of SVG count.
const PIXELS_OF_MILLIMETER: f64 = 96.0 / 25.4;

/// Left edge of lines under a picture.
const UNDER_LEFT: f64 = 50.0;
/// Height of such a line, and width of a letter of it.
const UNDER_LINE: [f64; 2] = [17.0, 6.6];
/// Lines of one warning, at most.
const LINES_OF_WARNING: usize = 3;

/// A picture as SVG text.
#[derive(Debug, Clone, PartialEq)]
pub struct Svg {
    text: String,
    width: f64,
    height: f64,
    drawn: Drawn,
}

/// What a picture is made of.
#[derive(Debug, Clone, PartialEq)]
struct Drawn {
    canvas: Canvas,
    title: String,
    description: String,
    /// What the picture was made from, a line each; no reader draws it.
    metadata: Vec<String>,
    /// Unit of its width and height; none where they are pixels.
    unit: &'static str,
}

impl Svg {
    /// The SVG document.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Width and height, in the SVG's user units.
    pub fn size(&self) -> [f64; 2] {
        [self.width, self.height]
    }

    /// Pixels of a user unit.
    fn pixels(&self) -> f64 {
        if self.drawn.unit == "mm" { PIXELS_OF_MILLIMETER } else { 1.0 }
    }

    /// The picture as a page of its own size, for a browser to print.
    pub fn html_page(&self) -> String {
        let [width, height] = self.size().map(|size| size * self.pixels());
        format!(
            "<!doctype html><meta charset=\"utf-8\"><style>@page {{ size: {width}px {height}px; margin: 0 }} body {{ margin: 0 }} \
             svg {{ display: block }}</style>{}",
            self.text
        )
    }

    /// The same picture with what it was made from as its metadata, which no reader draws.
    pub fn with_provenance(self, card: &ModelCard) -> Svg {
        Drawn { metadata: card.provenance(), ..self.drawn }.finished([self.width, self.height])
    }

    /// The same picture with warnings under it.
    pub fn with_warnings(&self, warnings: &[Warning]) -> Svg {
        self.with_warning_sentences(warnings.iter().map(sentence))
    }

    /// The same picture with warnings in words under it.
    pub(crate) fn with_warning_sentences(&self, sentences: impl Iterator<Item = String>) -> Svg {
        let mut drawn = self.drawn.clone();
        let letters = ((self.width - 2.0 * UNDER_LEFT) / UNDER_LINE[1]) as usize;
        let mut level = self.height;
        for line in sentences.flat_map(|own| wrapped(&format!("Warning: {own}"), letters, LINES_OF_WARNING)) {
            drawn.canvas.label(Label::new(line, [UNDER_LEFT, level]).size(12.0).color(VERMILLION));
            level += UNDER_LINE[0];
        }
        drawn.finished([self.width, level])
    }

    /// The picture as a PNG file, with the built-in font; no font of the system is used.
    ///
    /// - `scale`: pixels per user unit, above 0; 2 suits a printed page
    ///
    /// # Errors
    /// A picture with a side of less than one or more than 20 000 pixels.
    pub fn to_png(&self, scale: f64) -> Result<Vec<u8>, ReportError> {
        let [width, height] = self.size().map(|side| (side * self.pixels() * scale).ceil());
        let sides = 1.0..=LARGEST_SIDE;
        if !sides.contains(&width) || !sides.contains(&height) {
            return Err(ReportError::PictureSize { width, height, limit: LARGEST_SIDE });
        }
        let failed = |reason: String| ReportError::Drawing(reason);
        let tree = usvg::Tree::from_str(&self.text, &options()).map_err(|fault| failed(fault.to_string()))?;
        let mut pixels = tiny_skia::Pixmap::new(width as u32, height as u32)
            .ok_or_else(|| failed("no memory for the picture".to_owned()))?;
        pixels.fill(tiny_skia::Color::WHITE);
        let zoom = tiny_skia::Transform::from_scale(scale as f32, scale as f32);
        resvg::render(&tree, zoom, &mut pixels.as_mut());
        pixels.encode_png().map_err(|fault| failed(fault.to_string()))
    }
}

/// Reading options that know the built-in fonts only.
fn options() -> usvg::Options<'static> {
    let mut fonts = usvg::fontdb::Database::new();
    fonts.load_font_data(REGULAR.to_vec());
    fonts.load_font_data(BOLD.to_vec());
    fonts.set_sans_serif_family("DejaVu Sans");
    usvg::Options {
        fontdb: Arc::new(fonts),
        font_family: "DejaVu Sans".to_owned(),
        ..usvg::Options::default()
    }
}
