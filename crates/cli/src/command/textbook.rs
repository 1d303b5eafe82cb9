//! `axlebow textbook`.

use std::process::ExitCode;

use axlebow_report::{TextbookRow, json, table};
use axlebow_textbook::{Case, cases};

use crate::args::Textbook;
use crate::failure::{CHECK_FAILS, Failure};
use crate::output;

pub fn run(arguments: &Textbook) -> Result<ExitCode, Failure> {
    let wanted = |case: &Case| {
        let filter = arguments.filter.as_deref().unwrap_or_default();
        case.id.contains(filter) || case.topic.contains(filter)
    };
    let rows: Vec<TextbookRow> = cases().into_iter().filter(wanted).map(TextbookRow::of).collect();
    if rows.is_empty() {
        let filter = arguments.filter.as_deref().unwrap_or_default();
        return Err(Failure::Input(format!("no published case has `{filter}` in its name or topic")));
    }
    let text = if arguments.json { json::textbook_document(&rows) } else { table::textbook(&rows) };
    output::print(&text)?;
    let failed = rows.iter().any(|row| !row.passed());
    Ok(if failed { ExitCode::from(CHECK_FAILS) } else { ExitCode::SUCCESS })
}
