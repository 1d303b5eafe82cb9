//! `axlebow study`.

use std::path::Path;
use std::process::ExitCode;
use std::time::Duration;

use axlebow_report::plot::study_figure;
use axlebow_report::{ModelCard, csv, json, table};
use axlebow_study::Study as StudyFile;
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

use super::study_size;
use crate::args::Study;
use crate::failure::Failure;
use crate::{input, output};

/// A run shorter than this shows no progress.
const PATIENCE: Duration = Duration::from_secs(1);

pub fn run(arguments: &Study) -> Result<ExitCode, Failure> {
    output::check_picture(arguments.plot.as_deref())?;
    let bytes = input::read_file(&arguments.study)?;
    let folder = arguments.study.parent().unwrap_or(Path::new(""));
    let study = StudyFile::from_bytes(&bytes, &arguments.study.display().to_string(), folder)
        .map_err(|problems| input::misread(problems, &bytes, input::FileKind::Study))?;
    let study = chosen(study, arguments)?;
    let card = card(&study, arguments);
    if arguments.dry_run {
        output::print(&study_size::told(&study, &card))?;
        return Ok(ExitCode::SUCCESS);
    }
    study_size::check(&study, arguments.large)?;
    if study.search.is_some() {
        return super::search::run(&study, arguments, &card);
    }
    study_size::announce(&study);
    let progress = Progress::over(study.count());
    let outcome = study.run(&|done, _| progress.at(done));
    progress.end();
    if let Some(path) = &arguments.plot {
        output::write_picture(path, &study_figure(&outcome, &card)?)?;
    }
    if let Some(path) = &arguments.csv {
        output::write_file(path, csv::study(&outcome).as_bytes())?;
        eprintln!("wrote {}", path.display());
    }
    output::print(&match arguments.json {
        true => json::study_document(&outcome, &card),
        false => table::study(&outcome, &card),
    })?;
    Ok(ExitCode::SUCCESS)
}

/// The study with the results and as many values as the user asks for.
fn chosen(mut study: StudyFile, arguments: &Study) -> Result<StudyFile, Failure> {
    if let Some(most) = arguments.coarse {
        study = study.coarse(most.into());
    }
    if !arguments.show.is_empty() {
        let named = arguments.show.iter().map(|name| result(name, &study));
        study.shown = named.collect::<Result<_, _>>()?;
    }
    Ok(study)
}

/// The name of a result, if the study has it.
fn result(name: &str, study: &StudyFile) -> Result<String, Failure> {
    study.result_named(name).map_err(|none| {
        let likely = none.likely.map_or(String::new(), |near| format!("; did you mean {near}?"));
        Failure::Input(format!("--show {name}: {}; accepted: {}{likely}", none.why, none.accepted))
    })
}

/// What results say about the models and roads of the study.
fn card(study: &StudyFile, arguments: &Study) -> ModelCard {
    let mut card = input::card_of(&study.base, arguments.units);
    card.assumed.extend(study.assumed.iter().map(|assumed| input::assumed("study: ", assumed)));
    for ride in &study.rides {
        card.invented |= ride.road.invented;
        let prefix = format!("ride {}: road.", ride.name);
        card.assumed.extend(ride.road.assumed.iter().map(|assumed| input::assumed(&prefix, assumed)));
    }
    card
}

/// A progress bar on standard error, only on a terminal and only once the run has taken a while.
pub struct Progress {
    bar: ProgressBar,
    started: std::time::Instant,
}

impl Progress {
    pub fn over(count: usize) -> Self {
        let bar = ProgressBar::with_draw_target(Some(count as u64), ProgressDrawTarget::hidden());
        let style = ProgressStyle::with_template("{bar:40} {pos} of {len} designs, {eta} to go");
        if let Ok(style) = style {
            bar.set_style(style);
        }
        Progress { bar, started: std::time::Instant::now() }
    }

    /// So many are done, of a number that was not known before.
    pub fn at_of(&self, done: usize, of: usize) {
        self.bar.set_length(of as u64);
        self.at(done);
    }

    pub fn at(&self, done: usize) {
        if self.bar.is_hidden() && self.started.elapsed() > PATIENCE {
            // indicatif draws on a terminal only.
            self.bar.set_draw_target(ProgressDrawTarget::stderr());
        }
        self.bar.set_position(done as u64);
    }

    pub fn end(&self) {
        self.bar.finish_and_clear();
    }
}
