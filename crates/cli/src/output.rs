//! Standard output, messages, and the one gate for all files that are written.

use std::cell::RefCell;
use std::fs::File;
use std::io::{BufWriter, ErrorKind, Write};
use std::path::{Path, PathBuf};

use axlebow_axle::Warning;
use axlebow_report::{ModelCard, Page, Svg, csv};
use axlebow_study::{WholeFile, unfinished_path};

use crate::args::ModelInput;
use crate::destination::{Destination, is_stream, plain_file};
use crate::failure::{Failure, unknown_picture};
use crate::paper::write_page;
use crate::{Fault, Run, input};

/// What pages are written as.
pub const PAGES: [&str; 2] = ["html", "pdf"];

/// Dots of a PNG for each unit of the picture: sharp on paper and on a dense screen.
const PNG_SCALE: f64 = 2.0;

thread_local! {
    /// What a run inside another program prints in this thread; none where the program itself runs.
    static KEPT: RefCell<Option<Run>> = const { RefCell::new(None) };
}

/// Runs something that prints and gives its exit code, and keeps what it prints.
pub fn kept(run: impl FnOnce() -> u8) -> Run {
    KEPT.set(Some(Run::default()));
    input::forget_read();
    let code = run();
    Run { code, ..KEPT.take().unwrap_or_default() }
}

/// Keeps what is wrong with the input, where a run is kept.
pub fn keep_faults(faults: impl IntoIterator<Item = Fault>) {
    keep(|run| run.faults.extend(faults));
}

/// Adds to what is kept; whether it is.
fn keep(add: impl FnOnce(&mut Run)) -> bool {
    KEPT.with_borrow_mut(|kept| kept.as_mut().map(add)).is_some()
}

/// Whether a run inside another program is kept in this thread.
pub fn is_kept() -> bool {
    keep(|_| ())
}

/// Whether messages go to a terminal.
pub fn on_terminal() -> bool {
    !is_kept() && std::io::IsTerminal::is_terminal(&std::io::stderr())
}

/// Prints a result.
pub fn print(text: &str) -> Result<(), Failure> {
    if keep(|run| run.out.push_str(text)) {
        return Ok(());
    }
    let mut out = std::io::stdout().lock();
    let written = out.write_all(text.as_bytes()).and_then(|()| out.flush());
    written.map_err(|error| match error.kind() {
        ErrorKind::BrokenPipe => Failure::Closed,
        _ => Failure::Input(format!("cannot write to standard output: {error}")),
    })
}

/// What stands before the heading of a CSV file: nothing where it is to be plain.
pub fn csv_head(plain: bool, card: Option<&ModelCard>, warnings: &[Warning]) -> String {
    if plain { String::new() } else { csv::provenance(card, warnings) }
}

/// Prints a message, control characters in it as they are written in code, so that no name steers a terminal; where
/// nobody can read it, the run goes on.
pub fn say(text: &str) {
    let mut shown = String::with_capacity(text.len());
    for letter in text.chars() {
        if is_control(letter) { shown.extend(letter.escape_unicode()) } else { shown.push(letter) }
    }
    say_styled(&shown);
}

/// Prints a message with escape sequences of our own.
pub fn say_styled(text: &str) {
    if keep(|run| [text, "\n"].into_iter().for_each(|part| run.err.push_str(part))) {
        return;
    }
    let _ = writeln!(std::io::stderr(), "{text}");
}

/// Whether a character may steer a terminal.
pub fn is_control(letter: char) -> bool {
    letter.is_control() && letter != '\n' && letter != '\t'
}

/// Writes a file; see [`stream_file`].
pub fn write_file(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    stream_file(path, |file| file.write_all(bytes).map_err(|error| Failure::on_file("write", path, &error)))
}

/// Writes an output bit by bit: the one way to all of them.
///
/// Symbolic links are followed. A plain file is replaced when the new one is whole, so that nobody sees half of it; never
/// one that the run reads. Pipes and devices are written to as it comes.
pub fn stream_file(
    path: &Path,
    write: impl FnOnce(&mut BufWriter<File>) -> Result<(), Failure>,
) -> Result<(), Failure> {
    stream_quietly(path, write)?;
    say(&format!("wrote {}", path.display()));
    Ok(())
}

fn stream_quietly(
    path: &Path,
    write: impl FnOnce(&mut BufWriter<File>) -> Result<(), Failure>,
) -> Result<(), Failure> {
    let failed = |error: std::io::Error| Failure::on_file("write", path, &error);
    match Destination::of(path).map_err(failed)? {
        Destination::File(place) => {
            refuse_read(path, &place)?;
            let mut file = WholeFile::begin(&place).map_err(failed)?;
            write(file.writer())?;
            file.finish().map_err(failed)?;
        }
        Destination::Stream(stream) => {
            let mut stream = BufWriter::new(stream);
            write(&mut stream)?;
            stream.flush().map_err(failed)?;
        }
    }
    Ok(())
}

/// Writes one file of many, of which nothing is said.
pub fn write_quietly(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    stream_quietly(path, |file| {
        file.write_all(bytes).map_err(|error| Failure::on_file("write", path, &error))
    })
}

/// Refuses, before any work is done, outputs that could not be written: a folder, a file that the run reads, one file twice.
pub fn check_places(asked: &[&Option<PathBuf>]) -> Result<(), Failure> {
    let mut places = Vec::new();
    for path in asked.iter().copied().flatten().filter(|path| !is_stream(path)) {
        let place = plain_file(path).map_err(|error| Failure::on_file("write", path, &error))?;
        refuse_read(path, &place)?;
        if places.contains(&place) {
            let path = path.display();
            return Err(Failure::Input(format!(
                "cannot write two outputs to {path}; give each a file of its own"
            )));
        }
        places.push(place);
    }
    Ok(())
}

/// Refuses a place where, or beside it while the file is not whole, a file would be lost that the run reads.
fn refuse_read(path: &Path, place: &Path) -> Result<(), Failure> {
    if !input::has_read(place) && !input::has_read(&unfinished_path(place)) {
        return Ok(());
    }
    let path = path.display();
    Err(Failure::Input(format!("cannot write {path}: this run reads it; give another file")))
}

/// Refuses a Parquet file that is named otherwise, or that this build cannot write.
pub fn check_parquet(path: Option<&Path>) -> Result<(), Failure> {
    check_kind("--parquet", path, "parquet")?;
    if path.is_some() && !cfg!(feature = "parquet") {
        let text = "--parquet: this axlebow was built without Parquet; --csv writes the same columns, and \
                    `cargo build --release -p axlebow-cli` builds one with it";
        return Err(Failure::Input(text.to_owned()));
    }
    Ok(())
}

/// Refuses a picture's file name that is none of SVG, PNG and PDF before any work is done.
pub fn check_picture(path: Option<&Path>) -> Result<(), Failure> {
    match path {
        Some(path) if !["svg", "png", "pdf"].iter().any(|kind| is_kind(path, kind)) => {
            Err(unknown_picture(path))
        }
        _ => Ok(()),
    }
}

/// Refuses a file name that ends in none of the kinds that are written.
pub fn check_kinds(option: &str, path: Option<&Path>, kinds: &[&str]) -> Result<(), Failure> {
    match path.filter(|path| !kinds.iter().any(|kind| is_kind(path, kind))) {
        Some(path) => {
            let (path, kinds) = (path.display(), kinds.join(", ."));
            Err(Failure::Input(format!(
                "{option} {path}: .{kinds} are written; let the file name end in one of them"
            )))
        }
        None => Ok(()),
    }
}

/// Refuses a file name that does not end in the only kind that is written.
pub fn check_kind(option: &str, path: Option<&Path>, kind: &str) -> Result<(), Failure> {
    match path.filter(|path| !is_kind(path, kind)) {
        Some(path) => {
            let path = path.display();
            Err(Failure::Input(format!(
                "{option} {path}: only .{kind} is written; let the file name end in it"
            )))
        }
        None => Ok(()),
    }
}

/// Refuses names of a picture and of a page that are of no kind that is written, before any work is done.
pub fn check_shown(plot: &Option<PathBuf>, page: &Option<PathBuf>) -> Result<(), Failure> {
    check_picture(plot.as_deref())?;
    check_kinds("--page", page.as_deref(), &PAGES)
}

/// A picture that a file or a page asks for; drawn only then, and written to its file.
pub fn picture(
    file: &Option<PathBuf>,
    page: &Option<PathBuf>,
    card: &ModelCard,
    draw: impl FnOnce() -> Result<Svg, Failure>,
) -> Result<Option<Svg>, Failure> {
    if file.is_none() && page.is_none() {
        return Ok(None);
    }
    let picture = draw()?;
    if let Some(path) = file {
        write_picture(path, picture.clone(), card)?;
    }
    Ok(page.is_some().then_some(picture))
}

/// How a result is to be shown.
#[derive(Clone, Copy)]
pub struct Shown<'a> {
    /// Whether its document is printed in place of its text.
    pub json: bool,
    /// The file of its page.
    pub page: &'a Option<PathBuf>,
}

impl<'a> From<&'a ModelInput> for Shown<'a> {
    fn from(ModelInput { json, page, .. }: &'a ModelInput) -> Self {
        Shown { json: *json, page }
    }
}

impl Shown<'_> {
    /// What is to be printed of a result; its page is made only where it is printed or written, and written where it is
    /// asked for.
    pub fn text(
        self,
        card: &ModelCard,
        page: impl FnOnce() -> Page,
        document: impl FnOnce() -> String,
    ) -> Result<String, Failure> {
        let page = (!self.json || self.page.is_some()).then(page);
        if let (Some(path), Some(page)) = (self.page, &page) {
            write_page(path, &page.html(card))?;
        }
        Ok(page.filter(|_| !self.json).map_or_else(document, |page| page.text()))
    }

    /// Prints that.
    pub fn print(
        self,
        card: &ModelCard,
        page: impl FnOnce() -> Page,
        document: impl FnOnce() -> String,
    ) -> Result<(), Failure> {
        print(&self.text(card, page, document)?)
    }
}

/// Writes a picture in the kind that its file name says; an SVG says what it was made from.
pub fn write_picture(path: &Path, picture: Svg, card: &ModelCard) -> Result<(), Failure> {
    match () {
        () if is_kind(path, "svg") => write_file(path, picture.with_provenance(card).text().as_bytes()),
        () if is_kind(path, "pdf") => write_page(path, &picture.with_provenance(card).html_page()),
        () => write_file(path, &picture.to_png(PNG_SCALE)?),
    }
}

pub fn is_kind(path: &Path, kind: &str) -> bool {
    path.extension().is_some_and(|extension| extension.eq_ignore_ascii_case(kind))
}
