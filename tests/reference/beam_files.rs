//! The beam files of textbook cases: each of their values is met, and those that name a case expect its reference value.

use std::path::{Path, PathBuf};

use axlebow_beam::work_out;
use axlebow_model::BeamFile;
use axlebow_textbook::cases;
use axlebow_units::parse;

fn files() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../studies/textbook");
    let mut files: Vec<PathBuf> =
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    files
}

fn read(path: &Path) -> BeamFile {
    let bytes = std::fs::read(path).unwrap();
    BeamFile::from_bytes(&bytes, &path.display().to_string())
        .unwrap_or_else(|problems| panic!("{}", problems.render()))
}

#[test]
fn beam_files_of_textbook_cases_meet_their_values() {
    let files = files();
    assert!(files.len() >= 30);
    for path in files {
        let file = read(&path);
        let outcome =
            work_out(file.line, &file.options).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        assert!(!outcome.checks.is_empty(), "{} expects nothing", path.display());
        for own in &outcome.checks {
            assert!(own.passed(), "{}: {own:?}", path.display());
        }
    }
}

#[test]
fn beam_files_expect_what_the_textbook_cases_do() {
    let cases = cases();
    let mut named = 0;
    for path in files() {
        for check in read(&path).options.checks {
            let Some(name) = check.case else { continue };
            let case = cases.iter().find(|case| case.id == name);
            let case = case.unwrap_or_else(|| panic!("{}: there is no case {name}", path.display()));
            let kind = check.asked.measured();
            let reference = match case.unit {
                "" => case.reference,
                unit => parse(&format!("{:?} {unit}", case.reference), kind).unwrap().value,
            };
            let error = check.expected.abs() / reference - 1.0;
            assert!(error.abs() < 1e-12, "{name}: {} for {reference}", check.expected);
            named += 1;
        }
    }
    assert!(named >= 60, "{named}");
}

#[test]
fn beam_files_say_their_source_in_their_heading() {
    for path in files() {
        let text = std::fs::read_to_string(&path).unwrap();
        let heading: Vec<&str> = text.lines().take_while(|line| line.starts_with('#')).collect();
        let heading = heading.join("\n");
        assert!(heading.contains("Source") || heading.contains("Expected"), "{}", path.display());
    }
}
