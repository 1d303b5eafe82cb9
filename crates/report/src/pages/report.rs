//! One page of everything that is known of an axle, for a reader.

use super::inputs::inputs;
use crate::ModelCard;
use crate::page::{Block, Page};

/// Who reads a report.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Audience {
    /// Whoever pays: wear, remedies and what they take first.
    Fleet,
    /// Whoever welds: strength, sections and cautions first.
    Shop,
    /// Whoever checks: flex, modes and sections in full first.
    Research,
}

/// A part of a report.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// How far the axle bows and what it is made of.
    Flex,
    /// What the tires make of it.
    Tire,
    /// Remedies by rank.
    Remedies,
    /// Checks.
    Strength,
    /// What to ask the axle's maker, and the drawing.
    Drawing,
    /// Cross-sections.
    Sections,
    /// Natural modes.
    Modes,
}

impl Part {
    /// The command whose page it is.
    pub fn word(self) -> &'static str {
        match self {
            Part::Flex => "flex",
            Part::Tire => "tire",
            Part::Remedies => "remedies",
            Part::Strength => "strength",
            Part::Drawing => "drawing",
            Part::Sections => "section",
            Part::Modes => "modes",
        }
    }

    /// What heads it.
    fn heading(self) -> &'static str {
        match self {
            Part::Flex => "How far the axle bows",
            Part::Tire => "What that does at the tires",
            Part::Remedies => "What would help",
            Part::Strength => "Whether it holds",
            Part::Drawing => "What to make and what to ask",
            Part::Sections => "What it is made of",
            Part::Modes => "How it vibrates",
        }
    }
}

impl Audience {
    /// The parts in the order in which this reader wants them.
    fn order(self) -> &'static [Part] {
        use Part::{Drawing, Flex, Modes, Remedies, Sections, Strength, Tire};
        match self {
            Audience::Fleet => &[Tire, Remedies, Flex, Strength, Sections, Modes],
            Audience::Shop => &[Strength, Drawing, Sections, Remedies, Flex, Tire, Modes],
            Audience::Research => &[Flex, Modes, Sections, Strength, Tire, Remedies],
        }
    }

    /// Which sentences of which part make the answer of the whole.
    fn answer(self) -> &'static [(Part, usize)] {
        match self {
            Audience::Fleet => &[(Part::Remedies, 0), (Part::Remedies, 1), (Part::Remedies, 2)],
            Audience::Shop => &[(Part::Strength, 0), (Part::Strength, 1), (Part::Remedies, 2)],
            Audience::Research => &[(Part::Flex, 0), (Part::Flex, 1), (Part::Modes, 0)],
        }
    }
}

/// A report: the answer, each part with its own, then inputs and cautions, each of these once.
///
/// Arguments: `parts`, the pages of the commands whose parts they are.
pub fn report(parts: &[(Part, Page)], audience: Audience, card: &ModelCard) -> Page {
    let page_of = |wanted: Part| parts.iter().find(|(part, _)| *part == wanted).map(|(_, page)| page);
    let sentence = |(part, number): &(Part, usize)| page_of(*part)?.answer.get(*number).cloned();
    let answer = audience.answer().iter().filter_map(sentence).collect();
    let mut page = Page::of_model(card, answer);
    let mut once: Vec<Block> = Vec::new();
    for part in audience.order() {
        let Some(own) = page_of(*part) else { continue };
        let (kept, last) = own.blocks.iter().cloned().partition(is_of_part);
        let chapter = Page { title: Some(part.heading().to_owned()), blocks: kept, ..own.clone() };
        page.add(Block::Chapter(Box::new(Page { subtitle: None, ..chapter })));
        let last: Vec<Block> = last;
        let new = last.into_iter().filter(|block| !matches!(block, Block::Defaults(_)));
        new.for_each(|block| {
            if !once.contains(&block) {
                once.push(block)
            }
        });
    }
    page.extend(inputs(card));
    page.extend(once);
    page
}

/// Whether a block stays in its part: cautions and doubts stand once, at the end, and defaults as a list.
fn is_of_part(block: &Block) -> bool {
    !matches!(block, Block::Caution(_) | Block::Warning(_) | Block::Defaults(_))
}
