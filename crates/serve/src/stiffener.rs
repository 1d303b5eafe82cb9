//! The stiffener's controls: the size and length of the one that the model has, or of an angle that is put on top of a tube.

use axlebow_model::Document;
use axlebow_study::TopAngle;
use axlebow_units::UnitSystem;

use crate::controls::{Control, Form, Target, length_form};
use crate::values::Edit;

/// The key of the control of its size.
const SIZE: &str = "stiffener-size";
/// The key of the control of its length.
pub(crate) const LENGTH: &str = "stiffener-length";

/// The word for none.
const NONE: &str = "none";

/// Angles that are offered, with the leg of their welds, mm, under the thickness of their legs (a judgment, no source).
const ANGLES: [(&str, u32); 6] =
    [("L50x50x5", 4), ("L60x60x6", 5), ("L75x75x8", 6), ("L100x100x10", 8), ("L2x2x1/4", 5), ("L3x3x3/8", 8)];

/// Where a stiffener is or may come.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Site {
    /// Whether the model has one already.
    is_there: bool,
    /// Length of one that is there, or as long as the keep-outs at both seats let it be, m.
    length: f64,
    /// Units of its length.
    system: UnitSystem,
}

/// The controls of a stiffener; none where the axle is a housing without one, or where its sizes are its own.
pub(crate) fn controls(document: &Document, system: UnitSystem) -> Vec<Control> {
    let root = document.root();
    let mut found = Vec::new();
    match root.tables("stiffener").first() {
        None if root.optional_table("tube").is_some() => {
            let site = Site { is_there: false, length: TopAngle::longest(document), system };
            found.push(size_control(&site, NONE));
            found.push(site.length_control());
        }
        None => {}
        Some(own) => {
            let Some(length) = own.optional_number("length") else { return found };
            let site = Site { is_there: true, length, system };
            if let Some(size) = own.optional_text("size") {
                found.push(size_control(&site, size));
            }
            found.push(site.length_control());
        }
    }
    found
}

fn size_control(site: &Site, value: &str) -> Control {
    let mut words: Vec<String> = ANGLES.iter().map(|(size, _)| (*size).to_owned()).collect();
    if !words.iter().any(|word| word == value) {
        words.insert(0, value.to_owned());
    }
    Control {
        key: SIZE,
        label: if site.is_there { "Stiffener size" } else { "Angle welded on top" },
        group: "stiffener",
        form: Form::Choice { words, value: value.to_owned() },
        target: Target::StiffenerSize(site.clone()),
    }
}

impl Site {
    /// The control of its length.
    pub fn length_control(&self) -> Control {
        Control {
            key: LENGTH,
            label: "Stiffener length",
            group: "stiffener",
            form: length_form(self.length, self.length, self.system),
            target: Target::StiffenerLength(self.clone()),
        }
    }

    /// What another size changes; one that is put on has the length of its control.
    pub fn size_edits(&self, size: &str, length: Option<String>) -> Vec<Edit> {
        if size == NONE {
            return Vec::new();
        }
        if self.is_there {
            return vec![Edit::Set("stiffener[0].size".to_owned(), size.to_owned())];
        }
        let length = length.unwrap_or_else(|| format!("{} mm", (1e3 * self.length).floor()));
        let leg = ANGLES.iter().find(|(own, _)| *own == size).map_or(6, |(_, leg)| *leg);
        vec![Edit::Add(TopAngle { size, length: &length, weld_leg: leg }.table())]
    }

    /// What another length changes; nothing where the size that is put on has it already, or none is put on.
    pub fn length_edits(&self, length: &str) -> Vec<Edit> {
        if self.is_there {
            vec![Edit::Set("stiffener[0].length".to_owned(), length.to_owned())]
        } else {
            Vec::new()
        }
    }
}
