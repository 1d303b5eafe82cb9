//! What a stiffener of a file is made of: a standard size, sizes of its own, or corners.

use axlebow_axle::{AxleError, Orientation, StiffenerForm, sleeve};
use axlebow_sections::shape::{Angle, Channel, Flat, Tee};
use axlebow_sections::{Contour, Corner, Outline, Shape, StandardSize};
use axlebow_units::{Kind, show};

use super::builder::Builder;
use super::stiffener_site::Site;
use crate::content::Table;
use crate::faults::Problems;

/// Keys that say how large a shape is, beside a standard `size`.
const SIZES: [&str; 10] =
    ["height", "width", "thickness", "web", "flange", "root_radius", "toe_radius", "bore", "corners", "hole"];

/// Sizes that a shape needs, and those that it may have.
fn sizes_of(shape: &str) -> (&'static [&'static str], &'static [&'static str]) {
    match shape {
        "angle" => (&["height", "width", "thickness"], &["root_radius", "toe_radius"]),
        "flat" => (&["width", "thickness"], &[]),
        "channel" | "tee" => (&["height", "width", "web", "flange"], &["root_radius"]),
        "outline" => (&["corners"], &["hole"]),
        _ => (&["thickness"], &["bore"]),
    }
}

impl Builder<'_> {
    /// What is welded on, on an axle of a width (m).
    pub(crate) fn stiffener_form(&mut self, site: Site<'_>, axle_width: f64) -> Option<StiffenerForm> {
        let table = site.table;
        let word = table.word("shape");
        if !check_sizes(table, word, &mut self.problems) {
            return None;
        }
        if word == "outline" {
            self.orientation(site, (word, &[Orientation::AsDrawn]))?;
            return Some(StiffenerForm::of_outline(word, self.drawn_outline(table)?));
        }
        if word == "full-sleeve" {
            self.orientation(site, (word, &[Orientation::Round]))?;
            let (bore, wall) = self.sleeve_sizes(site, axle_width);
            return self.kept(table.span_of("thickness"), StiffenerForm::full_sleeve(bore, wall));
        }
        let shape = self.stiffener_shape(site, axle_width)?;
        let orientation = self.orientation(site, (word, Orientation::of_shape(&shape)))?;
        let place = if table.entry("size").is_some() { "size" } else { "shape" };
        self.kept(table.span_of(place), StiffenerForm::of_shape(&shape, orientation))
    }

    /// The outline that corners and holes draw.
    pub(crate) fn drawn_outline(&mut self, table: &Table) -> Option<Outline> {
        let outside = self.drawn_contour(table)?;
        let holes = table.tables("hole").iter().map(|hole| self.drawn_contour(hole));
        let holes = holes.collect::<Option<Vec<_>>>()?;
        self.kept(table.span_of("corners"), Outline::with_holes(outside, holes))
    }

    fn drawn_contour(&mut self, table: &Table) -> Option<Contour> {
        let corners = table.optional_corners("corners")?;
        let corners = corners.iter().map(|&[x, z]| Corner { x, z, turn: 0.0 }).collect();
        self.kept(table.span_of("corners"), Contour::new(corners))
    }

    fn stiffener_shape(&mut self, site: Site<'_>, axle_width: f64) -> Option<Shape> {
        let table = site.table;
        if let Some(name) = table.optional_text("size") {
            return self.standard_shape(table, name);
        }
        sized_shape(table).or_else(|| {
            let (bore, wall) = self.sleeve_sizes(site, axle_width);
            self.kept(table.span_of("thickness"), sleeve(bore, wall))
        })
    }

    /// The shape of a standard size, which must be that of the table.
    pub(crate) fn standard_shape(&mut self, table: &Table, name: &str) -> Option<Shape> {
        let found = self.kept(table.span_of("size"), StandardSize::named(name))?;
        let (kind, wanted) = (found.shape.kind(), table.word("shape"));
        if kind != wanted {
            let message = format!("size {} is of another shape, {kind}", found.name);
            let accepted = format!("shape = \"{kind}\", or a size of shape {wanted}");
            self.problems.push(table.span_of("size"), message, Some(accepted));
            return None;
        }
        Some(found.shape)
    }

    /// Bore and wall of a sleeve.
    fn sleeve_sizes(&mut self, site: Site<'_>, axle_width: f64) -> (f64, f64) {
        let bore = site.table.optional_number("bore").unwrap_or_else(|| {
            self.assume(site, "bore", show(axle_width, Kind::Length, self.system));
            axle_width
        });
        (bore, site.table.number("thickness"))
    }

    /// How it sits, which must be one of the ways that its shape can.
    fn orientation(
        &mut self,
        site: Site<'_>,
        (shape, accepted): (&'static str, &'static [Orientation]),
    ) -> Option<Orientation> {
        let Some(word) = site.table.optional_word("orientation") else {
            self.assume(site, "orientation", accepted[0].word().to_owned());
            return Some(accepted[0]);
        };
        let orientation = Orientation::of_word(word)?;
        let sits = if accepted.contains(&orientation) {
            Ok(orientation)
        } else {
            Err(AxleError::Orientation { shape, orientation, accepted })
        };
        self.kept(site.table.span_of("orientation"), sits)
    }
}

/// The angle, flat, channel or tee that a table gives by its sizes; none of any other shape.
pub(crate) fn sized_shape(table: &Table) -> Option<Shape> {
    let size = |key| table.optional_number(key).unwrap_or(0.0);
    let (height, width, thickness) = (size("height"), size("width"), size("thickness"));
    let (web, flange) = (size("web"), size("flange"));
    let (root_radius, toe_radius) = (size("root_radius"), size("toe_radius"));
    match table.word("shape") {
        "angle" => Some(Shape::Angle(Angle { height, width, thickness, root_radius, toe_radius })),
        "flat" => Some(Shape::Flat(Flat { width, thickness })),
        "channel" => Some(Shape::Channel(Channel { height, width, web, flange, root_radius })),
        "tee" => Some(Shape::Tee(Tee { height, width, stem: web, flange, root_radius })),
        _ => None,
    }
}

/// Whether a shape has all of its sizes and no other ones.
fn check_sizes(table: &Table, shape: &str, problems: &mut Problems) -> bool {
    let (needed, allowed) = sizes_of(shape);
    let standard = table.entry("size").is_some();
    let named = ["angle", "flat", "channel"].contains(&shape);
    let mut sound = true;
    let mut fault = |key: &str, message: String, accepted: String| {
        problems.push(table.span_of(key), message, Some(accepted));
        sound = false;
    };
    if standard && !named {
        fault("size", format!("shape {shape} has no standard sizes"), words(needed));
        return sound;
    }
    for key in SIZES.into_iter().filter(|key| table.entry(key).is_some()) {
        if standard {
            fault(key, format!("`{key}` is given beside a standard `size`"), "one of the two".to_owned());
        } else if !needed.contains(&key) && !allowed.contains(&key) {
            fault(key, format!("shape {shape} has no `{key}`"), words(&[needed, allowed].concat()));
        }
    }
    let missing = needed.iter().filter(|key| !standard && table.entry(key).is_none());
    for key in missing {
        let accepted = if named { format!("a standard `size`, or {}", words(needed)) } else { words(needed) };
        fault("shape", format!("shape {shape} needs its `{key}`"), accepted);
    }
    sound
}

fn words(keys: &[&str]) -> String {
    keys.iter().map(|key| format!("`{key}`")).collect::<Vec<_>>().join(", ")
}
