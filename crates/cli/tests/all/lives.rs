//! Ratings and lives on the command line.

use tempfile::TempDir;

use crate::program::{axlebow, demo, root};

fn duty(name: &str) -> String {
    root().join("models/duties").join(format!("{name}.toml")).display().to_string()
}

#[test]
fn a_rating_names_its_limiter_and_fails_below_the_stated_load() {
    let plate = ["--case", "rated-load", "--points", "2"];
    let run = |name: &str| axlebow(&[&["rating", &demo(name)][..], &plate].concat());
    let carried = run("trailer-127-thick-wide-base-zeroset");
    assert_eq!(carried.code, 0, "{}", carried.err);
    assert!(carried.out.contains("limits it") && carried.out.contains("Not made"), "{}", carried.out);
    assert!(carried.out.lines().all(|line| line.chars().count() <= 100), "{}", carried.out);
    let short = run("drive-housing-9.5-wide-base-outset");
    assert!(short.code == 1 && short.out.contains("of the stated"), "{}", short.out);
}

#[test]
fn a_rating_goes_to_csv_and_picture() {
    let folder = TempDir::new().expect("a folder");
    let [csv, picture] = ["own.csv", "own.svg"].map(|name| folder.path().join(name).display().to_string());
    let run = axlebow(&[
        "rating",
        &demo("trailer-127-thick-dual"),
        "--case",
        "rated-load",
        "--csv",
        &csv,
        "--plain-csv",
        "--plot",
        &picture,
    ]);
    assert_eq!(run.code, 0, "{}", run.err);
    let text = std::fs::read_to_string(&csv).expect("a file");
    let lines: Vec<&str> = text.lines().collect();
    assert!(lines[0].starts_with("offset_m,load_n,limiter_part,limiter"), "{}", lines[0]);
    assert_eq!(lines.len(), 8);
    assert!(std::fs::read_to_string(&picture).expect("a file").contains("wheel bearing"));
}

#[test]
fn offsets_the_wrong_way_round_and_unknown_cases_are_refused() {
    let model = demo("trailer-127-thick-dual");
    let run = axlebow(&["rating", &model, "--from", "51 mm", "--to", "-51 mm"]);
    assert!(run.code == 2 && run.err.contains("inboard of"), "{}", run.err);
    assert_eq!(axlebow(&["rating", &model, "--case", "kerb"]).code, 2);
    assert_eq!(axlebow(&["rating", &model, "--from", "5"]).code, 2);
}

#[test]
fn a_life_says_what_cracks_first_and_what_was_not_made() {
    let folder = TempDir::new().expect("a folder");
    let csv = folder.path().join("own.csv").display().to_string();
    let model = demo("trailer-152-thin-dual");
    let plot = folder.path().join("own.svg").display().to_string();
    let asked = ["life", &model, "--duty", &duty("line-haul"), "--csv", &csv, "--plain-csv", "--plot", &plot];
    let run = axlebow(&asked);
    assert_eq!(run.code, 0, "{}", run.err);
    let picture = std::fs::read_to_string(&plot).expect("a picture");
    assert!(picture.contains("First to crack is the") && picture.contains("Not made, which is no pass"));
    assert!(run.out.contains("first crack") && run.out.contains("Not made"), "{}", run.out);
    assert!(run.out.contains("licensed engineer") && run.out.contains("from memory"), "{}", run.out);
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    let text = std::fs::read_to_string(&csv).expect("a file");
    assert!(text.starts_with("name,y_m,detail,category_pa"), "{text}");
    let commas = |line: &str| line.matches(',').count();
    assert!(text.lines().all(|line| commas(line) == commas(text.lines().next().unwrap_or(""))), "{text}");
}

#[test]
fn a_duty_that_cannot_be_is_refused_with_its_place() {
    let folder = TempDir::new().expect("a folder");
    let text = std::fs::read_to_string(duty("quarry")).expect("a duty");
    let path = folder.path().join("own.toml");
    std::fs::write(&path, text.replacen("share = 0.40", "share = 0.50", 1)).expect("written");
    let path = path.display().to_string();
    let run = axlebow(&["life", &demo("trailer-127-thick-dual"), "--duty", &path]);
    assert!(run.code == 2 && run.err.contains("sum to 1.1"), "{}", run.err);
    assert_eq!(axlebow(&["life", &demo("trailer-127-thick-dual"), "--duty", "nowhere"]).code, 2);
}
