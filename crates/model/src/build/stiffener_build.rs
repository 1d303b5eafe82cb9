//! Stiffeners of a file: where they lie, how they end and how they are welded.

use axlebow_axle::{
    AxleError, Body, Part, Side, Stiffener, StiffenerEnd, StiffenerWeld, WeldPattern, weld_stiffness,
};
use axlebow_sections::{Material, SectionError};
use axlebow_units::{Kind, show};

use super::builder::Builder;
use super::stiffener_site::Site;
use crate::content::Table;
use crate::faults::Span;

impl Builder<'_> {
    /// The stiffeners of the file, if all can be made.
    pub(crate) fn stiffeners(&mut self, body: &Body) -> Option<Vec<Stiffener>> {
        let sites = self.root.tables("stiffener").iter().enumerate();
        let made: Vec<Option<Stiffener>> =
            sites.map(|(number, table)| self.stiffener(Site { table, number }, body)).collect();
        made.into_iter().collect()
    }

    fn stiffener(&mut self, site: Site<'_>, body: &Body) -> Option<Stiffener> {
        let material = self.stiffener_material(site, body);
        let form = self.stiffener_form(site, body.pieces()[0].inboard.width());
        let (reach, end) = (self.stiffener_reach(site.table), self.stiffener_end(site.table));
        let weld = material.as_ref().and_then(|material| self.stiffener_weld(site, material));
        let (from, to) = reach?;
        Some(Stiffener {
            name: site.table.text("name").to_owned(),
            form: form?,
            material: material?,
            clock: site.table.number("clock"),
            from,
            to,
            end: end?,
            weld: weld?,
        })
    }

    fn stiffener_material(&mut self, site: Site<'_>, body: &Body) -> Option<Material> {
        match site.table.optional_table("material") {
            Some(table) => self.material(table),
            None => {
                let material = body.material(Part::Tube);
                let text = format!("{}, that of tube or housing", material.name());
                self.assume(site, "material", text);
                Some(material.clone())
            }
        }
    }

    /// Its right and its left end.
    fn stiffener_reach(&mut self, table: &Table) -> Option<(f64, f64)> {
        let key = |key| table.optional_number(key);
        match (key("from"), key("to"), key("length"), key("center")) {
            (Some(from), Some(to), None, None) if to > from => Some((from, to)),
            (Some(_), Some(_), None, None) => {
                let message = "`to` does not lie to the left of `from`, so that nothing is between them";
                self.problems.push(table.span_of("to"), message, Some("a `to` above `from`".to_owned()));
                None
            }
            (None, None, Some(length), Some(center)) => Some((center - 0.5 * length, center + 0.5 * length)),
            _ => {
                let message = format!("it is not plain where stiffener {} lies", table.text("name"));
                let accepted = "`from` and `to`, or `length` and `center`";
                self.problems.push(table.span_of("name"), message, Some(accepted.to_owned()));
                None
            }
        }
    }

    fn stiffener_end(&mut self, table: &Table) -> Option<StiffenerEnd> {
        match (table.word("end"), table.optional_number("end_length")) {
            ("square", None) => Some(StiffenerEnd::Square),
            ("square", Some(_)) => {
                let message = "`end_length` is given, but the ends are square";
                let accepted = Some("end = \"tapered\" or \"radiused\"".to_owned());
                self.problems.push(table.span_of("end_length"), message, accepted);
                None
            }
            (word, None) => {
                let message = format!("a {word} end needs its `end_length`");
                let accepted = Some(format!("end_length = \"{}\", for one", self.example("60 mm", "2.5 in")));
                self.problems.push(table.span_of("end"), message, accepted);
                None
            }
            ("tapered", Some(length)) => Some(StiffenerEnd::Tapered { length }),
            (_, Some(radius)) => Some(StiffenerEnd::Radiused { radius }),
        }
    }

    fn stiffener_weld(&mut self, site: Site<'_>, material: &Material) -> Option<StiffenerWeld> {
        let table = site.table;
        let pattern = self.weld_pattern(table)?;
        let leg = table.number("weld_leg");
        let stiffness = table.optional_number("weld_stiffness").unwrap_or_else(|| {
            let stiffness = weld_stiffness(material.shear_modulus());
            self.assume(site, "weld_stiffness", show(stiffness, Kind::Stress, self.system));
            stiffness
        });
        Some(StiffenerWeld { leg, pattern, both_sides: table.word("weld_sides") == "both", stiffness })
    }

    fn weld_pattern(&mut self, table: &Table) -> Option<WeldPattern> {
        let stitch = (table.optional_number("stitch_length"), table.optional_number("stitch_pitch"));
        match (table.word("weld"), stitch) {
            ("continuous", (None, None)) => Some(WeldPattern::Continuous),
            ("continuous", (length, _)) => {
                let key = if length.is_some() { "stitch_length" } else { "stitch_pitch" };
                let message = format!("`{key}` is given, but the weld is continuous");
                self.problems.push(table.span_of(key), message, Some("weld = \"stitched\"".to_owned()));
                None
            }
            (_, (Some(length), Some(pitch))) => Some(WeldPattern::Stitched { length, pitch }),
            _ => {
                let message = "a stitched weld needs its `stitch_length` and its `stitch_pitch`";
                let (length, pitch) = (self.example("50 mm", "2 in"), self.example("150 mm", "6 in"));
                let accepted =
                    format!("stitch_length = \"{length}\" and stitch_pitch = \"{pitch}\", for one");
                self.problems.push(table.span_of("weld"), message, Some(accepted));
                None
            }
        }
    }

    fn is_stiffener(&self, name: &str) -> bool {
        self.root.tables("stiffener").iter().any(|table| table.text("name") == name)
    }

    /// Where in the file a misfit of a stiffener shows.
    pub(crate) fn place_of_stiffener(&self, error: &AxleError) -> Option<Span> {
        let (name, key) = match error {
            AxleError::StiffenerMeets { stiffener, side: Side::Left, .. } => (stiffener, "to"),
            AxleError::StiffenerMeets { stiffener, .. } => (stiffener, "from"),
            AxleError::Floats { stiffener, .. } => (stiffener, "shape"),
            AxleError::SleeveBore { stiffener, .. } => (stiffener, "bore"),
            AxleError::DrawnOffWall { stiffener, .. } => (stiffener, "corners"),
            AxleError::UnlikeMetals { stiffener, .. } => (stiffener, "material"),
            AxleError::StiffenerRoom { stiffener, what, .. } if what.contains("stitch") => {
                (stiffener, "stitch_length")
            }
            AxleError::StiffenerRoom { stiffener, .. } => (stiffener, "end_length"),
            AxleError::DuplicateStiffener { name } => (name, "name"),
            AxleError::Section(SectionError::PartsOverlap { first, second, .. }) => {
                (second, if self.is_stiffener(first) { "clock" } else { "shape" })
            }
            _ => return None,
        };
        let mut tables = self.root.tables("stiffener").iter().rev();
        let own = tables.find(|table| table.text("name") == name)?;
        let mut entries = [key, "length", "name"].into_iter().filter_map(|key| own.entry(key));
        entries.find(|entry| !entry.assumed).map(|entry| entry.span.clone())
    }
}
