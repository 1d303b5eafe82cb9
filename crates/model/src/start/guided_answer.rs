//! Answers of a guided start, from text.

use axlebow_units::{Kind, UnitSystem, parse_load, parse_or_zero, show};

use super::tire_size::TireSize;

/// Times that an answer may be as large or as small as the typical value: beyond, its unit is wrong (common practice, no
/// source).
const LARGEST_RATIO: f64 = 5.0;

/// A length, a load or a thickness that was answered.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Answer {
    /// SI.
    pub value: f64,
    pub system: UnitSystem,
    pub text: String,
}

impl Answer {
    /// Reads a length.
    pub fn length(text: &str) -> Result<Answer, String> {
        let read = parse_or_zero(text, Kind::Length)
            .map_err(|error| format!("{}; accepted: {}", error.message(), error.accepted()))?;
        let system = read.system.unwrap_or(UnitSystem::Si);
        Ok(Answer { value: read.value, system, text: text.trim().to_owned() })
    }

    /// Reads a load: a force, or a mass whose weight is meant.
    pub fn load(text: &str) -> Result<Answer, String> {
        let read = parse_load(text)
            .map_err(|error| format!("{}; accepted: {}", error.message(), axlebow_units::accepted_loads()))?;
        let system = read.force.system.unwrap_or(UnitSystem::Si);
        Ok(Answer { value: read.force.value, system, text: text.trim().to_owned() })
    }

    /// The answer where its size is believable beside the typical one.
    pub fn beside(self, typical: f64, kind: Kind) -> Result<Answer, String> {
        let ratio = self.value / typical;
        if (1.0 / LARGEST_RATIO..=LARGEST_RATIO).contains(&ratio) {
            return Ok(self);
        }
        Err(format!(
            "{} is far from the typical {}; check the unit (accepted: a fifth to five times that)",
            show(self.value, kind, self.system),
            show(typical, kind, self.system)
        ))
    }

    /// Another length in the units of this one, as a file writes it.
    pub fn written(&self, value: f64) -> String {
        show(value, Kind::Length, self.system)
    }
}

/// How the tires of an end sit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum TireCount {
    Dual,
    WideBase,
    Single,
}

impl TireCount {
    const ALL: [TireCount; 3] = [TireCount::Dual, TireCount::WideBase, TireCount::Single];

    /// The word of a model file.
    pub fn word(self) -> &'static str {
        match self {
            TireCount::Dual => "dual",
            TireCount::WideBase => "wide-base",
            TireCount::Single => "single",
        }
    }
}

/// The tires of an end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct TiresAnswer {
    pub count: TireCount,
    pub size: Option<TireSize>,
}

impl TiresAnswer {
    /// Reads `dual`, `445/50R22.5` or `single 11R22.5`, with a note where the size alone decided how many there are.
    pub fn of(text: &str) -> Result<(TiresAnswer, Option<String>), String> {
        let lower = text.to_lowercase().replace("wide base", "wide-base");
        let said = TireCount::ALL.into_iter().find(|count| lower.contains(count.word()));
        let rest = said.map_or(lower.clone(), |count| lower.replacen(count.word(), "", 1));
        let rest = rest.trim().trim_start_matches("s ").trim();
        let size = TireSize::of(rest);
        match (said, size) {
            (Some(count), _) if rest.is_empty() || rest == "s" => {
                Ok((TiresAnswer { count, size: None }, None))
            }
            (Some(count), Some(_)) => Ok((TiresAnswer { count, size }, None)),
            (None, Some(own)) => {
                let count = if own.is_wide_base() { TireCount::WideBase } else { TireCount::Dual };
                let note = format!(
                    "{} read as {}; write `single {0}` for one of ordinary width",
                    text.trim(),
                    count.word()
                );
                Ok((TiresAnswer { count, size }, Some(note)))
            }
            (_, None) => Err(format!(
                "`{}` is no kind of tires; accepted: dual, wide-base or single, the size on the sidewall such as \
                 295/75R22.5, or both",
                text.trim()
            )),
        }
    }
}

/// Reads how far the tire's middle lies outboard of the mounting face: `2 in`, `outset 51 mm`, `inset 1 in`, `-25 mm`, `0`.
pub(super) fn wheel_offset(text: &str) -> Result<Answer, String> {
    let lower = text.trim().to_lowercase();
    if lower == "zeroset" {
        return Answer::length("0");
    }
    let inset = lower.contains("inset");
    let number = lower.replace("outset", "").replace("inset", "");
    let answer = Answer::length(number.trim())?;
    Ok(if inset { Answer { value: -answer.value, ..answer } } else { answer })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tires_are_read_by_word_by_size_and_by_both() {
        let read =
            |text| TiresAnswer::of(text).map(|(own, note)| (own.count, own.size.is_some(), note.is_some()));
        assert_eq!(read("dual"), Ok((TireCount::Dual, false, false)));
        assert_eq!(read("Duals"), Ok((TireCount::Dual, false, false)));
        assert_eq!(read("wide base 445/50R22.5"), Ok((TireCount::WideBase, true, false)));
        assert_eq!(read("445/50R22.5"), Ok((TireCount::WideBase, true, true)));
        assert_eq!(read("11R22.5 single"), Ok((TireCount::Single, true, false)));
        assert_eq!(read("11R22.5"), Ok((TireCount::Dual, true, true)));
        for wrong in ["triple", "dual 12", "", "22"] {
            assert!(read(wrong).unwrap_err().contains("295/75R22.5"), "{wrong}");
        }
    }

    #[test]
    fn offsets_are_outboard_unless_they_say_inset() {
        for (text, millimeters) in [
            ("2 in", 50.8),
            ("outset 51 mm", 51.0),
            ("1\" inset", -25.4),
            ("-25 mm", -25.0),
            ("zeroset", 0.0),
            ("0", 0.0),
        ] {
            assert!((wheel_offset(text).unwrap().value - 1e-3 * millimeters).abs() < 1e-12, "{text}");
        }
        assert!(wheel_offset("2").unwrap_err().contains("accepted"));
    }

    #[test]
    fn what_is_far_from_typical_has_a_wrong_unit() {
        let beside = |text| Answer::length(text).unwrap().beside(0.127, Kind::Length);
        assert!(beside("5 in").is_ok() && beside("25.5 mm").is_ok() && beside("24.9 in").is_ok());
        let refusal = beside("127 in").unwrap_err();
        assert!(refusal.contains("127 in") && refusal.contains("typical 5 in"), "{refusal}");
        assert!(beside("25.3 mm").is_err() && beside("-5 in").is_err());
    }
}
