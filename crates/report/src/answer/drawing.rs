//! What a drawing answers.

use axlebow_units::Kind;

use super::first;
use super::phrases::several;
use crate::ModelCard;
use crate::ShopDrawing;
use crate::number::Numbers;
use crate::words::preheat::degrees;

/// What was drawn, how warm the steel must be, and how much must be asked before anybody welds.
pub fn drawing_answer(drawing: &ShopDrawing, card: &ModelCard) -> Vec<String> {
    first([Some(drawn(drawing, card)), preheat(drawing, card), asked(drawing)])
}

fn drawn(drawing: &ShopDrawing, card: &ModelCard) -> String {
    let n = Numbers { system: card.system };
    let mass = match drawing.stiffener_mass {
        0.0 => format!("a plain axle of {}", n.full(drawing.mass, Kind::Mass)),
        own => format!(
            "{} of stiffeners on an axle of {} in all",
            n.full(own, Kind::Mass),
            n.full(drawing.mass, Kind::Mass)
        ),
    };
    format!(
        "Drawn on {} of {}: {mass}, the elevation at 1 : {}, the sections at 1 : {}, weld symbols by {}.",
        several(drawing.sheet_count(), "sheet"),
        drawing.options.paper.name(),
        drawing.scale,
        drawing.section_scale,
        drawing.options.symbols.title()
    )
}

fn preheat(drawing: &ShopDrawing, card: &ModelCard) -> Option<String> {
    if drawing.stiffener_mass == 0.0 {
        return None;
    }
    let known: Vec<f64> = drawing.preheats.iter().filter_map(|steel| steel.temperature).collect();
    Some(match known.len() < drawing.preheats.len() {
        true => "How warm the steel must be is open: not every steel's composition is known and covered."
            .to_owned(),
        false => format!(
            "The steel must be at {} or more before and between passes.",
            degrees(known.into_iter().fold(0.0, f64::max), card.system)
        ),
    })
}

fn asked(drawing: &ShopDrawing) -> Option<String> {
    let count = drawing.questions.len();
    (count > 0).then(|| {
        format!(
            "{} to the axle's maker must be answered in writing first.",
            capital(&several(count, "question"))
        )
    })
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}
