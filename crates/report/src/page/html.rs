//! A page as one HTML document that needs nothing else: no font, script or picture from elsewhere.

use super::{Block, Caution, FAILS, Page, Table};
use crate::svg::escaped;

/// Style of every page: readable on a phone and on paper, in light and dark.
const STYLE: &str = include_str!("page.css");

/// The document.
///
/// - `made_from`: what the page was made from, a line each
pub(super) fn page_html(page: &Page, made_from: &[String]) -> String {
    let title = escaped(page.title.as_deref().unwrap_or("axlebow"));
    let subtitle = page.subtitle.iter().map(|line| paragraph("subtitle", line)).collect::<String>();
    let answer =
        if page.answer.is_empty() { String::new() } else { paragraph("answer", &page.answer.join(" ")) };
    let blocks: String = page.blocks.iter().map(|own| block(own, 2)).collect();
    let made_from = list(made_from);
    format!(
        r#"<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title}</title>
<style>
{STYLE}</style>
</head>
<body>
<main>
<h1>{title}</h1>
{subtitle}{answer}{blocks}</main>
<footer>
<details>
<summary>What this page was made from</summary>
{made_from}</details>
</footer>
</body>
</html>
"#
    )
}

/// A block; its headings are of a level.
fn block(block: &Block, level: u8) -> String {
    match block {
        Block::Heading(text) => format!("<h{level}>{}</h{level}>\n", escaped(text)),
        Block::Chapter(page) => chapter(page, level),
        Block::Paragraph(text) | Block::Defaults(text) => paragraph("text", text),
        Block::Note(text) => paragraph("note", text),
        Block::List(items) => list(items),
        Block::Table(own) => table(own),
        Block::Figure(picture) => format!("<figure>\n{}</figure>\n", picture.text()),
        Block::Warning(text) => {
            format!("<p class=\"warning\"><strong>Warning:</strong> {}</p>\n", escaped(text))
        }
        Block::Caution(Caution { heading, items }) => {
            format!("<section class=\"caution\">\n<h2>{}</h2>\n{}</section>\n", escaped(heading), list(items))
        }
    }
}

/// A page within a page: its own headings are a level lower.
fn chapter(page: &Page, level: u8) -> String {
    let title = page
        .title
        .iter()
        .map(|title| format!("<h{level}>{}</h{level}>\n", escaped(title)))
        .collect::<String>();
    let answer =
        if page.answer.is_empty() { String::new() } else { paragraph("told", &page.answer.join(" ")) };
    let blocks: String = page.blocks.iter().map(|own| block(own, level + 1)).collect();
    format!("<section class=\"chapter\">\n{title}{answer}{blocks}</section>\n")
}

fn paragraph(class: &str, text: &str) -> String {
    format!("<p class=\"{class}\">{}</p>\n", unbroken(text))
}

/// A text whose percent signs stay with their numbers.
fn unbroken(text: &str) -> String {
    escaped(text).replace(" %", "\u{a0}%")
}

fn list(items: &[String]) -> String {
    let items: String = items.iter().map(|item| format!("<li>{}</li>\n", escaped(item))).collect();
    format!("<ul>\n{items}</ul>\n")
}

/// A table that scrolls by itself where it is wider than the screen.
fn table(table: &Table) -> String {
    let caption = table.caption.iter().map(|text| format!("<caption>{}</caption>\n", escaped(text)));
    let class = |is_words: bool| if is_words { "words" } else { "number" };
    let headings = table.columns.iter().map(|column| {
        let unit = Some(&column.unit).filter(|unit| !unit.is_empty());
        let unit =
            unit.map_or(String::new(), |unit| format!("<br><span class=\"unit\">{}</span>", escaped(unit)));
        format!(
            "<th scope=\"col\" class=\"{}\">{}{unit}</th>",
            class(column.is_words),
            escaped(&column.heading)
        )
    });
    let row = |cells: &Vec<String>| {
        let cells = table.columns.iter().zip(cells).map(|(column, cell)| {
            let shown = if column.is_words { words(cell) } else { number(cell) };
            format!("<td class=\"{}\">{shown}</td>", class(column.is_words))
        });
        format!("<tr>{}</tr>\n", cells.collect::<String>())
    };
    format!(
        "<div class=\"table\" tabindex=\"0\">\n<table>\n{}<thead>\n<tr>{}</tr>\n</thead>\n<tbody>\n{}</tbody>\n</table>\n</div>\n",
        caption.collect::<String>(),
        headings.collect::<String>(),
        table.rows.iter().map(row).collect::<String>(),
    )
}

fn words(cell: &str) -> String {
    if cell == FAILS { format!("<strong class=\"fails\">{FAILS}</strong>") } else { escaped(cell) }
}

/// A number with a true minus sign; a lone dash says that there is none.
fn number(cell: &str) -> String {
    match cell.strip_prefix('-').filter(|rest| !rest.is_empty()) {
        Some(rest) => format!("\u{2212}{}", escaped(rest)),
        None => escaped(cell),
    }
}

#[cfg(test)]
mod tests {
    use super::super::Column;
    use super::*;

    fn page() -> Page {
        let mut table =
            Table::new([Column::words("Wheel"), Column::number("camber", "deg")]).with_caption("Both");
        table.add_row(["<left>", "-0.38"]);
        let blocks = vec![
            Block::heading("CASE & load"),
            Block::Table(table),
            Block::Warning("soft; look.".to_owned()),
            Block::Caution(Caution {
                heading: "Before anybody welds:".to_owned(),
                items: vec!["ask".to_owned()],
            }),
        ];
        Page {
            title: Some("<script>alert(1)</script>".to_owned()),
            subtitle: None,
            answer: vec!["Tops lean in.".to_owned(), "A \"lot\".".to_owned()],
            blocks,
        }
    }

    #[test]
    fn every_text_is_escaped_and_nothing_comes_from_elsewhere() {
        let html = page_html(&page(), &["setting: <b>".to_owned()]);
        assert!(!html.contains("<script") && !html.contains("<left>") && !html.contains("<b>"), "{html}");
        assert!(!html.contains("http") && !html.contains("src=") && !html.contains("url("), "{html}");
        for wanted in ["CASE &amp; load", "&lt;left&gt;", "<caption>Both</caption>", "setting: &lt;b&gt;"] {
            assert!(html.contains(wanted), "{wanted}\n{html}");
        }
    }

    #[test]
    fn the_answer_comes_first_and_numbers_are_to_the_right() {
        let html = page_html(&page(), &[]);
        let at = |text: &str| html.find(text).unwrap_or(usize::MAX);
        assert!(at("class=\"answer\"") < at("<h2>CASE") && at("<h2>CASE") < at("<table>"));
        assert!(
            html.contains(
                "<th scope=\"col\" class=\"number\">camber<br><span class=\"unit\">deg</span></th>"
            )
        );
        assert!(
            html.contains("<td class=\"number\">\u{2212}0.38</td>") && html.contains("<td class=\"words\">")
        );
        assert!(html.contains("<section class=\"caution\">") && html.contains("<li>ask</li>"));
    }
}
