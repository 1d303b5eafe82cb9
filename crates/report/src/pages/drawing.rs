//! The page of a drawing: what to ask the axle's maker, and how warm the steel must be.

use super::cautions::welding;
use super::notes::{JSON, defaults};
use super::preheat::preheat;
use crate::answer::drawing_answer;
use crate::page::{Block, Page};
use crate::sheet::questions::Question;
use crate::{ModelCard, ShopDrawing};

/// The questions, preheat and cautions; the sheets are its picture.
pub fn drawing(drawing: &ShopDrawing, card: &ModelCard) -> Page {
    let mut page = Page::of_model(card, drawing_answer(drawing, card));
    page.extend(questions(&drawing.questions));
    page.extend(preheat(&drawing.preheats, card.system));
    page.extend(defaults(card, JSON));
    if drawing.stiffener_mass > 0.0 {
        page.add(welding());
    }
    page
}

/// What to ask the axle's maker, a line each; nothing where there is nothing to ask.
fn questions(questions: &[Question]) -> Vec<Block> {
    if questions.is_empty() {
        return Vec::new();
    }
    let line = |own: &Question| format!("{}: {}", own.subject, own.text);
    vec![
        Block::heading("To ask the axle's maker, answers in writing"),
        Block::List(questions.iter().map(line).collect()),
    ]
}
