//! Sections and spans of a beam file.

use axlebow_beam::{Elastic, SectionValues, Span, SpanSection};
use axlebow_sections::{Outline, Profile, RectangularTube, RoundBar, RoundTube, SaintVenant, taper};

use super::kind_keys::{KindKeys, check_keys};
use crate::build::{Builder, sized_shape};
use crate::content::Table;

/// Fineness of the triangles from which shear coefficients of outlines come: within 0.1 %.
const FINENESS: f64 = 1.0;

const SHAPES: &[KindKeys] = &[
    ("round-tube", &["od", "wall"], &[]),
    ("round-bar", &["diameter"], &[]),
    ("box", &["width", "height", "wall"], &["corner_radius"]),
    ("flat", &["width", "thickness"], &[]),
    ("angle", &["height", "width", "thickness"], &["root_radius", "toe_radius", "size"]),
    ("channel", &["height", "width", "web", "flange"], &["root_radius", "size"]),
    ("tee", &["height", "width", "web", "flange"], &["root_radius"]),
    ("outline", &["corners"], &["hole"]),
    ("values", &["second_moment"], &["area", "shear_coefficient", "depth"]),
];

/// Sizes that a standard size stands for.
const SIZES: [&str; 7] = ["height", "width", "thickness", "web", "flange", "root_radius", "toe_radius"];

impl Builder<'_> {
    /// The spans of the file.
    pub(super) fn spans(&mut self) -> Option<Vec<Span>> {
        let whole = self.root.table("material");
        let root = self.root;
        let spans: Vec<Option<Span>> =
            root.tables("span").iter().map(|table| self.span(table, whole)).collect();
        spans.into_iter().collect()
    }

    fn span(&mut self, table: &Table, whole: &Table) -> Option<Span> {
        let material = self.material(table.optional_table("material").unwrap_or(whole))?;
        let elastic = Elastic {
            modulus: material.elastic_modulus(),
            poisson_ratio: material.poisson_ratio(),
            density: material.density(),
        };
        let section = self.span_section(table, elastic.poisson_ratio)?;
        let span = self.kept(table.span(), Span::new(table.number("length"), section, elastic))?;
        Some(span.on_foundation(table.number("foundation")))
    }

    fn span_section(&mut self, table: &Table, poisson_ratio: f64) -> Option<SpanSection> {
        let start = table.table("section");
        let Some(end) = table.optional_table("end_section") else {
            return self.section_values(start, poisson_ratio).map(SpanSection::Uniform);
        };
        let profiles = [start, end].map(|own| self.profile(own));
        let [Some(from), Some(to)] = profiles else {
            if self.problems.is_empty() {
                let shape = [start, end].into_iter().find(|own| !is_profile(own)).unwrap_or(start);
                let message = format!("a taper has no way between sections of shape {}", shape.word("shape"));
                let accepted = Some("`round-tube`, `round-bar` or `box` at both ends".to_owned());
                self.problems.push(shape.span_of("shape"), message, accepted);
            }
            return None;
        };
        self.kept(end.span(), taper(&from, &to, 0.5))?;
        Some(SpanSection::Tapered { start: from, end: to })
    }

    /// The tube, bar or box of a table; none of other shapes, and a problem for one that cannot be.
    fn profile(&mut self, table: &Table) -> Option<Profile> {
        if !is_profile(table) || !check_keys(table, "shape", SHAPES, &mut self.problems) {
            return None;
        }
        let size = |key| table.optional_number(key).unwrap_or(0.0);
        let made = match table.word("shape") {
            "round-tube" => RoundTube::new(size("od"), size("wall")).map(Profile::from),
            "round-bar" => RoundBar::new(size("diameter")).map(Profile::from),
            _ => RectangularTube::new(size("width"), size("height"), size("wall"), size("corner_radius"))
                .map(Profile::from),
        };
        self.kept(table.span(), made)
    }

    fn section_values(&mut self, table: &Table, poisson_ratio: f64) -> Option<SectionValues> {
        if is_profile(table) {
            let profile = self.profile(table)?;
            return Some(SectionValues::of_profile(&profile, poisson_ratio));
        }
        if table.optional_text("size").is_none() && !check_keys(table, "shape", SHAPES, &mut self.problems) {
            return None;
        }
        if table.word("shape") == "values" {
            return Some(SectionValues {
                area: table.optional_number("area"),
                second_moment: table.number("second_moment"),
                shear_coefficient: table.optional_number("shear_coefficient").unwrap_or(1.0),
                fibers: table.optional_number("depth").map(|depth| [0.5 * depth; 2]),
            });
        }
        let outline = self.beam_outline(table)?;
        let solved = SaintVenant::of_outline(&outline, poisson_ratio, FINENESS);
        let shear_coefficient = self.kept(table.span(), solved)?.shear_coefficient_z;
        let (area, [_, [low, high]]) = (outline.area_properties(), outline.reach());
        Some(SectionValues {
            area: Some(area.area),
            second_moment: area.second_moment_x,
            shear_coefficient,
            fibers: Some([high - area.centroid[1], area.centroid[1] - low]),
        })
    }

    fn beam_outline(&mut self, table: &Table) -> Option<Outline> {
        if table.word("shape") == "outline" {
            return self.drawn_outline(table);
        }
        let shape = match table.optional_text("size") {
            Some(name) => {
                for key in SIZES.into_iter().filter(|key| table.entry(key).is_some()) {
                    let message = format!("`{key}` is given beside a standard `size`");
                    self.problems.push(table.span_of(key), message, Some("one of the two".to_owned()));
                }
                self.standard_shape(table, name)?
            }
            None => sized_shape(table)?,
        };
        self.kept(table.span(), shape.outline())
    }
}

/// Whether a section is one that a taper can blend.
fn is_profile(table: &Table) -> bool {
    ["round-tube", "round-bar", "box"].contains(&table.word("shape"))
}
