//! A page as text for a terminal.

use super::table_text::table_text;
use super::{Block, Caution, Page, paragraph};

/// Width of running text.
const WIDTH: usize = 98;

/// Title, answer and blocks, with an empty line between what does not belong together.
pub(super) fn page_text(page: &Page) -> String {
    let head = page.title.iter().chain(&page.subtitle);
    let mut text: String = head.map(|line| paragraph(line, WIDTH, 2)).collect();
    let mut above = (!text.is_empty()).then_some(false);
    if !page.answer.is_empty() {
        separate(&mut text, above.is_some());
        text += &paragraph(&page.answer.join(" "), WIDTH, 0);
        above = Some(false);
    }
    let shown = page.blocks.iter().filter(|block| !matches!(block, Block::Figure(_)));
    for block in shown {
        let is_close = above == Some(true) || block.is_attached();
        separate(&mut text, above.is_some() && !is_close);
        text += &block_text(block);
        above = Some(matches!(block, Block::Heading(_)));
    }
    text
}

fn separate(text: &mut String, is_apart: bool) {
    if is_apart {
        text.push('\n');
    }
}

fn block_text(block: &Block) -> String {
    match block {
        Block::Heading(text) | Block::Paragraph(text) | Block::Note(text) | Block::Defaults(text) => {
            paragraph(text, WIDTH, 2)
        }
        Block::Chapter(page) => page_text(page),
        Block::List(items) => list(items),
        Block::Table(table) => table_text(table, WIDTH),
        Block::Figure(_) => String::new(),
        Block::Warning(text) => format!("Warning: {}", paragraph(text, WIDTH - 9, 2)),
        Block::Caution(Caution { heading, items }) => paragraph(heading, WIDTH, 2) + &list(items),
    }
}

fn list(items: &[String]) -> String {
    items.iter().map(|item| paragraph(&format!("- {item}"), WIDTH, 2)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_answer_stands_before_the_blocks_as_a_paragraph_of_its_own() {
        let page = Page {
            title: Some("Axle".to_owned()),
            subtitle: None,
            answer: vec!["Tops lean in.".to_owned(), "Bending does most of it.".to_owned()],
            blocks: vec![
                Block::heading("CASE"),
                Block::paragraph("What acts."),
                Block::note("And more."),
                Block::Warning("it is soft; look at it.".to_owned()),
            ],
        };
        let text = "Axle\n\nTops lean in. Bending does most of it.\n\nCASE\nWhat acts.\nAnd more.\n\n\
                    Warning: it is soft; look at it.\n";
        assert_eq!(page_text(&page), text);
    }

    #[test]
    fn a_page_of_nothing_is_empty() {
        assert_eq!(page_text(&Page::default()), "");
    }
}
