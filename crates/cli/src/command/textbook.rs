//! `axlebow textbook`.

use axlebow_report::{TextbookRow, csv, json, table};
use axlebow_textbook::{Case, cases};

use crate::args::Textbook;
use crate::failure::{Exit, Failure};
use crate::output;
use crate::paper::write_page;

pub fn run(arguments: &Textbook) -> Result<Exit, Failure> {
    output::check_kinds("--page", arguments.page.as_deref(), &output::PAGES)?;
    output::check_places(&[&arguments.csv, &arguments.page])?;
    let wanted = |case: &Case| {
        let filter = arguments.filter.as_deref().unwrap_or_default();
        case.id.contains(filter) || case.topic.contains(filter)
    };
    let rows: Vec<TextbookRow> = cases().into_iter().filter(wanted).map(TextbookRow::of).collect();
    if rows.is_empty() {
        let filter = arguments.filter.as_deref().unwrap_or_default();
        return Err(Failure::Input(format!("no textbook case has `{filter}` in its name or topic")));
    }
    if let Some(path) = &arguments.csv {
        let head = output::csv_head(arguments.plain_csv, None, &[]);
        output::write_file(path, (head + &csv::textbook(&rows)).as_bytes())?;
    }
    if let Some(path) = &arguments.page {
        write_page(path, &table::methods(&rows).html_alone())?;
    }
    output::print(&match arguments.json {
        true => json::textbook_document(&rows),
        false => table::textbook(&rows, arguments.formulas).text(),
    })?;
    let failed = rows.iter().any(|row| !row.passed());
    Ok(if failed { Exit::CheckFails } else { Exit::Done })
}
