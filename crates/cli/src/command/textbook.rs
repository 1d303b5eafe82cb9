//! `axlebow textbook`.

use std::path::{Path, PathBuf};

use axlebow_beam::work_out;
use axlebow_model::given_file;
use axlebow_report::{TextbookRow, csv, json, table};
use axlebow_textbook::{Case, cases};

use super::beam;
use crate::args::Textbook;
use crate::failure::{Exit, Failure};
use crate::output;
use crate::paper::write_page;

pub fn run(arguments: &Textbook) -> Result<Exit, Failure> {
    output::check_kinds("--page", arguments.page.as_deref(), &output::PAGES)?;
    output::check_places(&[&arguments.csv, &arguments.page])?;
    let filter = arguments.filter.as_deref().unwrap_or_default();
    let rows: Vec<TextbookRow> = match &arguments.cases {
        Some(path) => {
            let named = |row: &TextbookRow| row.case.id.contains(filter) || row.case.topic.contains(filter);
            own_cases(path)?.into_iter().filter(named).collect()
        }
        None => {
            let wanted = |case: &Case| case.id.contains(filter) || case.topic.contains(filter);
            cases().into_iter().filter(wanted).map(TextbookRow::of).collect()
        }
    };
    if rows.is_empty() {
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

/// The values that beam files expect: of one file, or of all in a folder.
fn own_cases(path: &Path) -> Result<Vec<TextbookRow>, Failure> {
    let mut rows = Vec::new();
    for file in beam_files(path)? {
        let name = file.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        let read = beam::read(&file, &[])?;
        let at_fault =
            |error: axlebow_beam::BeamError| Failure::Input(format!("{}: {error}", file.display()));
        let outcome = work_out(read.line, &read.options).map_err(at_fault)?;
        if outcome.checks.is_empty() {
            let text = format!("{} expects no value; give it a `[[check]]` with its source", file.display());
            return Err(Failure::Input(text));
        }
        let row = |own| TextbookRow::of_beam(own, [&name, &read.name], read.system);
        rows.extend(outcome.checks.iter().map(row));
    }
    Ok(rows)
}

/// The files of a path: itself, or the .toml files in it by their names.
fn beam_files(path: &Path) -> Result<Vec<PathBuf>, Failure> {
    if !path.is_dir() {
        return Ok(vec![given_file(path, "toml")]);
    }
    let failed = |error: std::io::Error| Failure::on_file("read", path, &error);
    let entries = std::fs::read_dir(path).map_err(failed)?.collect::<Result<Vec<_>, _>>().map_err(failed)?;
    let mut files: Vec<PathBuf> =
        entries.into_iter().map(|entry| entry.path()).filter(|file| output::is_kind(file, "toml")).collect();
    files.sort();
    if files.is_empty() {
        return Err(Failure::Input(format!("{} has no .toml file in it", path.display())));
    }
    Ok(files)
}
