//! The words of a drawing: what is welded, how warm, where not, and what must be asked and signed first.

use axlebow_axle::{Axle, Preheat, Side, Stiffener, StrengthOptions, StrengthRules};
use axlebow_strength::{CLAMPING_CAUTIONS, Fillet, WELDING_CAUTIONS};
use axlebow_units::{Kind, UnitSystem};

use super::notes::Note;
use super::proposal::{Lengths, clock, keep_outs};
use super::questions::Question;
use super::weld_symbol::WeldSymbols;
use crate::number::{Numbers, fixed};
use crate::words::preheat::temperature;

/// What the words are about.
pub(super) struct ShopNotes<'a> {
    pub axle: &'a Axle,
    pub strength: StrengthOptions,
    pub preheats: &'a [Preheat],
    pub questions: &'a [Question],
    pub symbols: WeldSymbols,
    pub lengths: Lengths,
}

impl ShopNotes<'_> {
    pub fn notes(&self) -> Vec<Note> {
        let mut notes = vec![Note::Heading("Material and mass".to_owned())];
        notes.extend(self.materials().into_iter().map(Note::Item));
        if !self.axle.stiffeners.is_empty() {
            notes.push(Note::Heading("Stiffeners and welds".to_owned()));
            notes.extend(self.axle.stiffeners.iter().flat_map(|own| self.stiffener(own)).map(Note::Item));
            notes.push(Note::Heading("Preheat and consumables".to_owned()));
            notes.extend(self.heat().into_iter().map(Note::Item));
            notes.push(Note::Heading("No weld here".to_owned()));
            notes.extend(self.no_weld().into_iter().map(Note::Item));
            notes.push(Note::Heading("Before anybody welds".to_owned()));
            notes.extend(WELDING_CAUTIONS.iter().map(|own| Note::Item((*own).to_owned())));
        }
        if self.is_clamped() {
            notes.push(Note::Heading("Before anybody tightens a U-bolt".to_owned()));
            notes.extend(CLAMPING_CAUTIONS.iter().map(|own| Note::Item((*own).to_owned())));
        }
        if !self.questions.is_empty() {
            notes.push(Note::Heading("To ask the axle's maker, answers in writing".to_owned()));
            let question = |(number, own): (usize, &Question)| {
                Note::Question(format!("{}. {}: {}", number + 1, own.subject, own.text))
            };
            notes.extend(self.questions.iter().enumerate().map(question));
        }
        notes
    }

    fn numbers(&self) -> Numbers {
        self.lengths.numbers
    }

    fn is_clamped(&self) -> bool {
        let clamped = |side: &Side| self.axle.seats.of(*side).fixing == axlebow_axle::Fixing::Clamped;
        Side::BOTH.iter().any(clamped)
    }

    fn materials(&self) -> Vec<String> {
        let n = self.numbers();
        let strength =
            |own: Option<f64>| own.map_or("not given".to_owned(), |own| n.short(own, Kind::Stress));
        let line = |part: &str, own: &axlebow_sections::Material| {
            format!(
                "{part}: {}, yield strength {}, tensile strength {}.",
                own.name(),
                strength(own.yield_strength()),
                strength(own.ultimate_strength())
            )
        };
        let body = self.axle.body.pieces()[0].part;
        let mut lines = vec![line(body.word(), self.axle.body.material(body))];
        let others = self.axle.stiffeners.iter().filter(|own| own.material != *self.axle.body.material(body));
        lines.extend(others.map(|own| line(&own.name, &own.material)));
        let stiffeners: f64 = self.axle.stiffeners.iter().map(Stiffener::mass).sum();
        let of_which = if stiffeners > 0.0 {
            format!(", stiffeners {}", n.full(stiffeners, Kind::Mass))
        } else {
            String::new()
        };
        lines.push(format!(
            "Mass of the bare axle, without hubs and wheels: {}{of_which}.",
            n.full(self.axle.mass(), Kind::Mass)
        ));
        lines
    }

    fn stiffener(&self, own: &Stiffener) -> Vec<String> {
        let lengths = self.lengths;
        let fillet = Fillet::with_leg(own.weld.leg).map_or(0.0, |fillet| fillet.throat());
        let pattern = match &lengths.fillet(own).stitches {
            None => "from end to end".to_owned(),
            Some(own) => format!(
                "in {} stitches of {}, {} from middle to middle, clear gap {}",
                own.number, own.length, own.pitch, own.gap
            ),
        };
        let sides = if own.weld.both_sides { "front and rear" } else { "front only" };
        vec![
            format!(
                "{}: {}; length {}, mass {}.",
                own.name,
                lengths.stiffener(own),
                lengths.full(own.length()),
                self.numbers().full(own.mass(), Kind::Mass)
            ),
            format!("Clock position {}, seen from the right; {}.", clock(own), lengths.ends(own.end)),
            format!(
                "Fillet weld {sides}, {pattern}: leg {} (throat {}), to be measured when finished. The calculation has no weld across the ends: lay none there unless the procedure says so.",
                lengths.full(own.weld.leg),
                lengths.full(fillet)
            ),
        ]
    }

    fn heat(&self) -> Vec<String> {
        let system = self.numbers().system;
        let line =
            |steel: &Preheat| format!("{}: {}{}.", steel.parts, steel.advice(), temperature(steel, system));
        let mut lines: Vec<String> = self.preheats.iter().map(line).collect();
        lines.push(self.consumable());
        lines
    }

    /// The class of weld metal by its tensile strength, in the words of the symbols' standard.
    fn consumable(&self) -> String {
        let strength = self.strength.electrode_strength;
        let given = match (self.symbols, self.numbers().system) {
            (WeldSymbols::Aws, _) | (_, UnitSystem::Us) => format!("{} ksi", fixed(strength / KSI, 0)),
            _ => format!("{} MPa", fixed(1e-6 * strength, 0)),
        };
        let class = match self.symbols {
            WeldSymbols::Aws => {
                format!("AWS class E{}, diffusible hydrogen H4 or H8", fixed(strength / KSI, 0))
            }
            WeldSymbols::Iso => format!(
                "ISO class by tensile strength (system B) {}, diffusible hydrogen H5",
                iso_class(strength).map_or("of its own".to_owned(), |class| class.to_string())
            ),
        };
        let by = match self.strength.rules {
            StrengthRules::Aisc => "the strength checks count on it",
            StrengthRules::En => "the strength checks go by the steel instead",
        };
        format!(
            "Weld metal of {given} tensile strength or more, low hydrogen: {class} (classes from memory); {by}."
        )
    }

    fn no_weld(&self) -> Vec<String> {
        let lengths = self.lengths;
        let zone = |[from, to]: [f64; 2]| format!("{} to {}", lengths.bare(from), lengths.full(to));
        let line = |side: Side| {
            let zones: Vec<String> = keep_outs(self.axle, side).into_iter().map(zone).collect();
            format!("{}, from the center: {}.", side.word(), zones.join("; "))
        };
        let mut lines: Vec<String> = Side::BOTH.map(line).to_vec();
        if lines[0].split_once(',').map(|own| own.1) == lines[1].split_once(',').map(|own| own.1) {
            lines.truncate(1);
            lines[0] = lines[0].replacen(Side::BOTH[0].word(), "left and right", 1);
        }
        lines.push("Clamp the welder's ground to the stiffener or the tube beside the weld: no current through bearings, seals or wheels. Unload the axle and support it on stands.".to_owned());
        lines
    }
}

/// One thousand pounds on a square inch, Pa.
const KSI: f64 = 6_894_757.293_168;

/// Classes of covered electrodes and wires by tensile strength, MPa over 10 (ISO 2560, 14341 and 18276, system B, from
/// memory): the lowest that is as strong.
fn iso_class(strength: f64) -> Option<u32> {
    const CLASSES: [(u32, f64); 8] = [
        (43, 430e6),
        (49, 490e6),
        (55, 550e6),
        (59, 590e6),
        (62, 620e6),
        (69, 690e6),
        (76, 760e6),
        (83, 830e6),
    ];
    // A class named in ksi is a little off its metric twin: 70 ksi, 482.6 MPa, is class 49.
    CLASSES.into_iter().find(|(_, own)| own * 1.02 >= strength).map(|(class, _)| class)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn classes_in_ksi_find_their_metric_twins() {
        let classes = [60.0, 70.0, 80.0, 90.0, 110.0, 120.0].map(|own| iso_class(own * KSI));
        assert_eq!(classes, [43, 49, 55, 62, 76, 83].map(Some));
        assert_eq!(iso_class(900e6), None);
    }
}
