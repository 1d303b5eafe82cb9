//! Refusals of parts in the units of the file.

use axlebow_axle::AxleError;
use axlebow_axle::tread::TreadError;
use axlebow_beam::BeamError;
use axlebow_sections::{SECTION_LENGTHS, SectionError};
use axlebow_units::{Kind, UnitSystem, display_unit, parse, show};

/// A refusal in the units of a reader.
pub(crate) trait InUnits {
    /// The refusal in words.
    fn in_units(&self, system: UnitSystem) -> String;
}

impl InUnits for AxleError {
    fn in_units(&self, system: UnitSystem) -> String {
        refusal_in_units(self, system)
    }
}

impl InUnits for SectionError {
    fn in_units(&self, system: UnitSystem) -> String {
        section_error(self, system)
    }
}

/// Of a span, the only part of a beam that is refused by itself; places along the beam are told by its file.
impl InUnits for BeamError {
    fn in_units(&self, system: UnitSystem) -> String {
        match self {
            BeamError::Section { part, reason } => format!("{part}: {}", section_error(reason, system)),
            other => other.to_string(),
        }
    }
}

/// Tells no length.
impl InUnits for TreadError {
    fn in_units(&self, _: UnitSystem) -> String {
        self.to_string()
    }
}

/// A length, to a tenth of a millimeter or a thousandth of an inch.
pub(super) fn shown_length(value: f64, system: UnitSystem) -> String {
    let unit = display_unit(Kind::Length, system);
    let step = if system == UnitSystem::Us { 1e3 } else { 1e1 };
    show((value / unit.factor * step).round() / step * unit.factor, Kind::Length, system)
}

/// The refusal of a section, its lengths in the units of the file.
fn section_error(error: &SectionError, system: UnitSystem) -> String {
    let length = |value: f64| show(value, Kind::Length, system);
    match error {
        SectionError::Length { thing, value } if system == UnitSystem::Us => format!(
            "{thing} is {}; accepted is {} to {}",
            length(*value),
            length(*SECTION_LENGTHS.start()),
            length(*SECTION_LENGTHS.end())
        ),
        SectionError::WallTooThick { wall, limit } => format!(
            "wall is {}; accepted is less than {}, half the outside size (for a solid section use a round bar)",
            length(*wall),
            length(*limit)
        ),
        SectionError::CornerRadius { radius, limit } => format!(
            "corner radius is {}; accepted is {} to {}, half the smaller side",
            length(*radius),
            length(0.0),
            length(*limit)
        ),
        other => other.to_string(),
    }
}

/// The refusal of an axle in the units of a reader.
pub fn refusal_in_units(error: &AxleError, system: UnitSystem) -> String {
    let length = |value: f64| shown_length(value, system);
    match error {
        AxleError::Misplaced { side, what, at, relation, against, against_at } => format!(
            "the {} {what} lies {} from the center line, {relation} the {against} at {}",
            side.word(),
            length(*at),
            length(*against_at)
        ),
        AxleError::StiffenerRoom { stiffener, what, length: own, room } => format!(
            "the {what} of stiffener {stiffener} is {}, {} more than the {} that it has",
            length(*own),
            length(own - room),
            length(*room)
        ),
        AxleError::StiffenerMeets { stiffener, side, against, at, by } => format!(
            "stiffener {stiffener} runs {} into the {against}, which begins {} from the center line on the {}",
            length(*by),
            length(*at),
            side.word()
        ),
        AxleError::Section(error) => section_error(error, system),
        _ if system == UnitSystem::Us => in_us_units(error, length),
        other => other.to_string(),
    }
}

/// A refusal that states SI units of its own, in US units.
fn in_us_units(error: &AxleError, length: impl Fn(f64) -> String) -> String {
    match error {
        AxleError::Value { what, value, unit, accepted } => match in_us_unit(*value, unit) {
            Some(shown) => format!("{what} is {shown}; {accepted} is accepted"),
            None => error.to_string(),
        },
        AxleError::BrokenLine { at } => {
            format!("the axle has a gap or an overlap at {} from its center line", length(*at))
        }
        AxleError::LoadBelowWeight { case, load, weight } => {
            let force = |value: f64| show(value, Kind::Force, UnitSystem::Us);
            format!(
                "the axle load of case {case} is {}, less than the {} that axle, hubs, wheels and tires weigh; a larger load \
                 is accepted",
                force(*load),
                force(*weight)
            )
        }
        AxleError::Floats { stiffener, gap } => format!(
            "stiffener {stiffener} does not sit on the axle: {} lie between them; a gap of at most {} under a foot, and of \
             less than the leg of its weld, is accepted",
            length(*gap),
            length(axlebow_axle::LARGEST_ROOT_OPENING)
        ),
        AxleError::SleeveBore { stiffener, bore, diameter, widest } => format!(
            "sleeve {stiffener} has a bore of {} on a tube of {}; a bore of {} to {} is accepted: take another tube, or pack \
             it and count the packing as part of its wall",
            length(*bore),
            length(*diameter),
            length(*diameter),
            length(*widest)
        ),
        AxleError::DrawnOffWall { stiffener, clear } => {
            let (lies, moved) = if *clear > 0.0 { ("clear of", "lower") } else { ("into", "raise") };
            format!(
                "the outline of stiffener {stiffener} is drawn {} {lies} the wall; an outline that touches it is accepted: \
                 {moved} its corners by {0} (their second coordinate is 0 at the outermost of the wall)",
                length(clear.abs())
            )
        }
        other => other.to_string(),
    }
}

/// A value in US units, where its unit is one of length, force, mass, stiffness or damping.
fn in_us_unit(value: f64, unit: &str) -> Option<String> {
    let kinds =
        [Kind::Length, Kind::Force, Kind::Mass, Kind::Stiffness, Kind::RotationalStiffness, Kind::Damping];
    let of = |kind: Kind| {
        let one = parse(&format!("1 {unit}"), kind).ok()?.value;
        Some(show(value * one, kind, UnitSystem::Us))
    };
    kinds.into_iter().find_map(of)
}
