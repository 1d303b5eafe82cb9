//! The model file of a guided start.

use axlebow_units::{Kind, UnitSystem, show};

use super::TypicalAxle;
use super::guided::{ARM_OF_HOUSING, GuidedStart, arm_path, base_outset, document, number};
use super::guided_answer::{Answer, TireCount, TiresAnswer};
use super::typical_keys::still_typical;
use crate::content::Document;
use crate::keys::MODEL;
use crate::read::read_bytes;

/// Letters of a line of lists.
const LINE: usize = 110;

/// A key with what the answers put there.
struct Edit {
    path: String,
    text: String,
    /// Whether somebody measured it, or it only follows from what was measured.
    is_measured: bool,
}

impl GuidedStart {
    /// The model file: the typical axle with what was answered, the rest marked as typical.
    ///
    /// # Errors
    /// A key that the typical axle cannot take, in words.
    pub fn file(&self, name: &str) -> Result<String, String> {
        let typical = self.typical_axle();
        let edits = self.edits(&document(typical));
        let measured: Vec<String> =
            edits.iter().filter(|own| own.is_measured).map(|own| own.path.clone()).collect();
        let own =
            read_bytes(typical.called(name).as_bytes(), name, &MODEL).map_err(|faults| faults.render())?;
        let texts: Vec<(String, String)> = edits.into_iter().map(|own| (own.path, own.text)).collect();
        let text = own.with_texts(&texts).map_err(|error| error.to_string())?;
        let entries: Vec<String> = own.root().texts("typical").iter().map(|own| own.text.clone()).collect();
        Ok(marked(&text, typical, &still_typical(own.root(), &entries, &measured), &measured))
    }

    fn edits(&self, axle: &Document) -> Vec<Edit> {
        let mut edits = self.tire_edits();
        let measured =
            |path: &str, text: &str| Edit { path: path.to_owned(), text: text.to_owned(), is_measured: true };
        if let Some(offset) = &self.offset {
            let position = if offset.value > 0.0 { "outset" } else { "inset" };
            let position = if offset.value == 0.0 { "zeroset" } else { position };
            edits.push(measured("wheel.position", position));
            if offset.value != 0.0 || base_outset(axle) != 0.0 {
                edits.push(measured("wheel.offset", &offset.written(offset.value.abs())));
            }
        }
        edits.extend(self.middle_edits(axle));
        if let Some(seats) = &self.seats {
            edits.push(measured("seat.at", &seats.written(0.5 * seats.value)));
        }
        edits.extend(self.size_edits());
        edits.extend(self.wall.iter().map(|wall| measured(self.wall_path(), &wall.text)));
        edits.extend(self.load.iter().map(|load| measured("loads.rated_load", &load.text)));
        edits
    }

    /// The tires; of one tire of ordinary width what the pair of a typical dual has for each.
    fn tire_edits(&self) -> Vec<Edit> {
        let Some(tires) = self.tires else { return Vec::new() };
        let edit =
            |key: &str, text: String, is_measured| Edit { path: format!("wheel.{key}"), text, is_measured };
        let mut edits = vec![edit("tires", tires.count.word().to_owned(), true)];
        let pair = GuidedStart { kind: self.kind, ..GuidedStart::default() };
        let pair = document(pair.typical_axle());
        if tires.count == TireCount::Single {
            let of_pair = |key: &str, kind, share| {
                edit(key, show(share * number(&pair, &format!("wheel.{key}")), kind, UnitSystem::Si), false)
            };
            edits.push(of_pair("loaded_radius", Kind::Length, 1.0));
            edits.push(of_pair("tire_width", Kind::Length, 1.0));
            edits.push(of_pair("tire_vertical_stiffness", Kind::Stiffness, 1.0));
            edits.push(of_pair("tire_lateral_stiffness", Kind::Stiffness, 1.0));
            edits.push(of_pair("mass", Kind::Mass, 0.5));
        }
        let sizes = self.sidewall_edits(tires, &pair);
        edits.retain(|own| sizes.iter().all(|size| size.path != own.path));
        edits.extend(sizes);
        edits
    }

    /// What the size on the sidewall says: width, and the loaded radius, which is not measured by it.
    fn sidewall_edits(&self, tires: TiresAnswer, pair: &Document) -> Vec<Edit> {
        let Some(size) = tires.size else { return Vec::new() };
        let edit = |key: &str, length: f64, is_measured| Edit {
            path: format!("wheel.{key}"),
            text: show(length, Kind::Length, UnitSystem::Si),
            is_measured,
        };
        let width = edit("tire_width", size.width, true);
        let deflection = self.tire_deflection(tires.count, pair);
        let radius = size.unloaded_radius.map(|radius| edit("loaded_radius", radius - deflection, false));
        std::iter::once(width).chain(radius).collect()
    }

    /// Deflection of a tire under its share of the typical load, m: load over stiffness.
    fn tire_deflection(&self, count: TireCount, pair: &Document) -> f64 {
        let own = document(self.typical_axle());
        let (axle, tires) = match count {
            TireCount::Dual => (pair, 2.0),
            TireCount::Single => (pair, 1.0),
            TireCount::WideBase => (&own, 1.0),
        };
        0.5 * number(axle, "loads.rated_load") / tires / number(axle, "wheel.tire_vertical_stiffness")
    }

    /// The mounting faces where the middles of the tires want them, and with them bearings and ends of the body.
    fn middle_edits(&self, axle: &Document) -> Vec<Edit> {
        let Some(middles) = &self.middles else { return Vec::new() };
        let face = 0.5 * middles.value - self.outset(axle);
        let shift = face - number(axle, "wheel_end.mounting_face_at");
        let (end, ends) = if self.is_drive() {
            (arm_path(ARM_OF_HOUSING[1], "at"), 1.0)
        } else {
            ("tube.length".into(), 2.0)
        };
        let moved =
            [("wheel_end.inner_bearing_at", 1.0), ("wheel_end.outer_bearing_at", 1.0), (end.as_str(), ends)];
        let edit = |path: &str, value: f64, is_measured| Edit {
            path: path.to_owned(),
            text: middles.written(value),
            is_measured,
        };
        let faces = std::iter::once(edit("wheel_end.mounting_face_at", face, true));
        faces
            .chain(moved.map(|(path, share)| edit(path, number(axle, path) + share * shift, false)))
            .collect()
    }

    fn size_edits(&self) -> Vec<Edit> {
        let Some((size, width)) = &self.size else { return Vec::new() };
        let measured =
            |path: String, answer: &Answer| Edit { path, text: answer.text.clone(), is_measured: true };
        if !self.is_drive() {
            return vec![measured("tube.od".to_owned(), size)];
        }
        let sides = [("height", Some(size)), ("width", width.as_ref())];
        let given = sides.into_iter().filter_map(|(key, side)| Some((key, side?)));
        given
            .flat_map(|(key, side)| ARM_OF_HOUSING.map(|place| measured(arm_path(place, key), side)))
            .collect()
    }
}

/// The file's text under a head that says what was measured, with what is still typical.
fn marked(text: &str, from: &TypicalAxle, typical: &[String], measured: &[String]) -> String {
    let nothing = ["nothing yet".to_owned()];
    let measured = if measured.is_empty() { &nothing[..] } else { measured };
    let head = format!(
        "# Begun from the typical axle {}. Measured on this one:\n{}\
         # What `typical` lists is common practice, no source: no maker's axle. Measure yours, put the number in, and take its\n\
         # key out of `typical`.\n",
        from.name,
        lines_of(measured, "# ")
    );
    let quoted: Vec<String> = typical.iter().map(|key| format!("\"{key}\"")).collect();
    let body = text.lines().skip_while(|line| line.starts_with('#'));
    let lines = body.map(|line| match line.starts_with("typical = [") {
        true => format!("typical = [\n{}]\n", lines_of(&quoted, "    ")),
        false => format!("{line}\n"),
    });
    head + &lines.collect::<String>()
}

/// Items with commas between them, in lines that begin with `start`.
fn lines_of(items: &[String], start: &str) -> String {
    let (mut lines, mut line) = (String::new(), String::new());
    for (number, item) in items.iter().enumerate() {
        let comma = if number + 1 < items.len() { ", " } else { "" };
        if !line.is_empty() && start.len() + line.len() + item.len() > LINE {
            lines += &format!("{start}{}\n", line.trim_end());
            line.clear();
        }
        line += &format!("{item}{comma}");
    }
    format!("{lines}{start}{line}\n")
}
