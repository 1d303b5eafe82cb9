//! `axlebow textbook`.

use std::process::ExitCode;

use axlebow_report::{TextbookRow, csv, json, table};
use axlebow_textbook::{Case, cases};

use crate::args::Textbook;
use crate::failure::{CHECK_FAILS, Failure};
use crate::output;

pub fn run(arguments: &Textbook) -> Result<ExitCode, Failure> {
    output::check_places(&[&arguments.csv])?;
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
    output::print(&match arguments.json {
        true => json::textbook_document(&rows),
        false => table::textbook(&rows, arguments.formulas).text(),
    })?;
    let failed = rows.iter().any(|row| !row.passed());
    Ok(if failed { ExitCode::from(CHECK_FAILS) } else { ExitCode::SUCCESS })
}
