//! Refusals of parts in the units of the file.

use axlebow_axle::AxleError;
use axlebow_sections::SectionError;
use axlebow_units::{Kind, UnitSystem, display_unit, show};

/// A length, to a tenth of a millimeter or a thousandth of an inch.
pub(super) fn shown_length(value: f64, system: UnitSystem) -> String {
    let unit = display_unit(Kind::Length, system);
    let step = if system == UnitSystem::Us { 1e3 } else { 1e1 };
    show((value / unit.factor * step).round() / step * unit.factor, Kind::Length, system)
}

/// The refusal of a section, its lengths in the units of the file.
pub(super) fn section_error(error: &SectionError, system: UnitSystem) -> String {
    let length = |value: f64| show(value, Kind::Length, system);
    match error {
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

/// The refusal of an axle, its lengths in the units of the file.
pub(super) fn axle_error(error: &AxleError, system: UnitSystem) -> String {
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
        other => other.to_string(),
    }
}
