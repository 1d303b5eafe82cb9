//! What a hurried person types works, and the result says how it was read.

use std::fs;
use std::path::Path;

use tempfile::TempDir;

use crate::program::{Run, axlebow, axlebow_in, changed, demo, on_text, root};

const OUTSET: &str = "trailer-152-thin-wide-base-outset";

fn done(run: &Run) -> &str {
    assert_eq!(run.code, 0, "{}", run.err);
    &run.out
}

fn refused(run: &Run, words: &[&str]) {
    assert_eq!(run.code, 2, "out: {}\nerr: {}", run.out, run.err);
    for word in words {
        assert!(run.err.contains(word), "`{word}` missing in\n{}", run.err);
    }
}

fn set(name: &str, changes: &[&str]) -> Run {
    let model = demo(name);
    let mut arguments = vec!["flex", &model, "--case", "rated-load"];
    arguments.extend(changes.iter().flat_map(|change| ["--set", change]));
    axlebow(&arguments)
}

/// The lines under the heading, which names the settings of a run nowhere.
fn table(run: &Run) -> Vec<&str> {
    done(run).lines().filter(|line| line.starts_with("rated-load")).collect()
}

fn study(text: &str) -> Run {
    let folder = TempDir::new().expect("a folder");
    let text = text.replace("MODELS", &root().join("models").display().to_string());
    fs::write(folder.path().join("own.toml"), text).expect("the file is written");
    axlebow_in(folder.path(), &["study", "own"])
}

#[test]
fn a_mass_is_read_as_the_weight_that_it_is_and_the_result_says_so() {
    let run = set(OUTSET, &["loads.rated_load=20000 lb"]);
    assert_eq!(table(&run), table(&set(OUTSET, &["loads.rated_load=20000 lbf"])));
    let note = "loads.rated_load = 20000 lb read as weight, 20000 lbf (88.964 kN)";
    assert!(run.err.contains(note), "{}", run.err);
    let model = String::from_utf8(changed("rated_load = \"", "rated_load = \"9 t\" # \"")).expect("text");
    let run = on_text("flex", model.as_bytes());
    assert!(
        done(&run).contains("rated-load") && run.err.contains("9 t read as weight, 88.26 kN"),
        "{}",
        run.err
    );
    let json = axlebow(&["flex", &demo(OUTSET), "--json", "--set", "loads.rated_load=9000 kg"]);
    assert!(done(&json).contains("loads.rated_load = 9000 kg read as weight, 88.26 kN"));
}

#[test]
fn what_is_no_load_takes_no_mass_for_a_force() {
    refused(&set(OUTSET, &["seat.leaf.rate=200 kg/mm"]), &["seat"]);
    refused(&set(OUTSET, &["loads.rated_load=9 mm"]), &["length", "kN", "the mass that weighs so much"]);
    refused(&set(OUTSET, &["loads.rated_load=0"]), &["more than 0"]);
}

#[test]
fn a_file_may_be_named_without_its_ending() {
    let model = demo(OUTSET);
    let bare = model.trim_end_matches(".toml");
    assert_eq!(axlebow(&["flex", bare]).out, axlebow(&["flex", &model]).out);
    let tire = root().join("models/tires/deep-treaded").display().to_string();
    done(&axlebow(&["tire", bare, "--tire", &tire]));
    let road = root().join("models/roads/washboard").display().to_string();
    done(&axlebow(&["modes", bare]));
    done(&axlebow(&["cups", bare, "--count", "9", "--speed", "90 km/h", "--over", &road]));
    let study = root().join("studies/lightest-tube").display().to_string();
    done(&axlebow(&["study", &study, "--dry-run"]));
}

#[test]
fn a_missing_file_or_folder_is_named_with_what_is_there() {
    let folder = TempDir::new().expect("a folder");
    fs::create_dir(folder.path().join("models")).expect("a folder");
    fs::write(folder.path().join("drive.toml"), "").expect("the file is written");
    let flex = |name: &str| axlebow_in(folder.path(), &["flex", name]);
    refused(&flex("drve"), &["cannot read drve: no such file; did you mean drive.toml?"]);
    refused(&flex("drive.csv"), &["did you mean drive.toml?"]);
    refused(&flex("models-x/drive"), &["models-x/ does not exist; did you mean models/?"]);
    refused(&flex("drive"), &["drive.toml", "empty"]);
}

#[test]
fn the_only_entry_of_a_list_needs_no_place() {
    let one = set(OUTSET, &["wheel.mass=300 kg", "seat.width=150 mm"]);
    assert_eq!(table(&one), table(&set(OUTSET, &["wheel[0].mass=300 kg", "seat[both].width=150 mm"])));
    let text = fs::read_to_string(demo(OUTSET)).expect("the model");
    let at = text.find("[[wheel]]").expect("a wheel");
    let end = at + 1 + text[at + 1..].find("\n[[seat]]").expect("a seat after it");
    let wheel = text[at..end].replace("side = \"both\"", "side = \"left\"");
    let right = wheel.replace("side = \"left\"", "side = \"right\"");
    let folder = TempDir::new().expect("a folder");
    let two = format!("{}{wheel}\n{right}{}", &text[..at], &text[end..]);
    fs::write(folder.path().join("two.toml"), two).expect("the file is written");
    let run = axlebow_in(folder.path(), &["flex", "two", "--set", "wheel.mass=300 kg"]);
    refused(&run, &["which `wheel` is meant", "has 2", "`wheel[left].mass`, `wheel[right].mass`"]);
}

#[test]
fn a_zero_needs_no_unit_on_the_command_line_and_does_in_a_file() {
    let zeroset = table(&set(OUTSET, &["wheel.offset=0 mm"])).join("\n");
    assert_eq!(table(&set(OUTSET, &["wheel.offset=0"])).join("\n"), zeroset);
    refused(&set(OUTSET, &["wheel.offset=1"]), &["the bare number `1` needs its unit"]);
    refused(&on_text("flex", &changed("od = \"127 mm\"", "od = 0")), &["the bare number `0` needs its unit"]);
    refused(&on_text("flex", &changed("od = \"127 mm\"", "od = \"0\"")), &["needs its unit"]);
}

#[test]
fn a_wheel_becomes_zeroset_in_one_step_and_keeps_its_offset_unused() {
    let run = set(OUTSET, &["wheel.position=zeroset"]);
    assert_eq!(table(&run), table(&set(OUTSET, &["wheel.offset=0"])));
    assert!(run.err.contains("wheel[both].offset = 51 mm is not used: the wheel is zeroset"), "{}", run.err);
    let back = set(OUTSET, &["wheel.position=zeroset", "wheel.position=outset"]);
    assert_eq!((table(&back), back.err.as_str()), (table(&set(OUTSET, &[])), ""));
    let text = fs::read_to_string(demo(OUTSET)).expect("the model").replace("\"outset\"", "\"zeroset\"");
    let in_file = on_text("flex", text.as_bytes());
    assert!(done(&in_file).contains("rated-load") && in_file.err.contains("is not used"), "{}", in_file.err);
    refused(
        &set(OUTSET, &["wheel.position=zeroset", "wheel.offset=30 mm"]),
        &["`offset` is set, but the wheel is zeroset"],
    );
    let tire = axlebow(&["tire", &demo(OUTSET), "--offset", "zeroset", "--offset", "51 mm"]);
    assert!(done(&tire).contains("zeroset"));
}

#[test]
fn a_study_takes_words_flags_weights_and_bare_zeros_as_values() {
    let run = study(
        r#"
name = "own"
kind = "sweep"
model = "MODELS/trailer-152-thin-wide-base-outset.toml"
case = "rated-load"
[[vary]]
path = "wheel.position"
values = ["outset", "zeroset"]
[[vary]]
path = "wheel.reversed"
values = [false, true]
[[vary]]
path = "loads.rated_load"
values = ["20000 lb", "9 t"]
[[vary]]
path = "seat.composite_fraction"
values = [0, "50 %"]
"#,
    );
    assert!(done(&run).contains("reversed true"), "{}", run.out);
    assert!(run.err.contains("zeroset: wheel[both].offset = 51 mm is not used"), "{}", run.err);
    assert!(run.err.contains("loads.rated_load: 9 t read as weight, 88.26 kN"), "{}", run.err);
}

#[test]
fn a_study_takes_bare_flags_in_changes_and_an_event_for_a_road() {
    let text = r#"
name = "own"
kind = "side-by-side"
model = "MODELS/trailer-152-thin-wide-base-outset.toml"
case = "rated-load"
[[variant]]
name = "as it is"
[[variant]]
name = "reversed"
change = { "wheel.reversed" = true, "wheel.disc_flexibility" = 0 }
[[ride]]
road = "pothole"
basis = "reduced"
"#;
    let run = study(text);
    assert!(done(&run).contains("pothole, depth 50 mm"), "{}", run.out);
    refused(&study(&text.replace("= true", "= \"yes\"")), &["wheel[0].reversed", "true or false"]);
    refused(
        &study(&text.replace("\"pothole\"", "\"pothle\"")),
        &["neither a file nor an event", "`pothole`"],
    );
}

/// Runs a fit of the thin tube's wall to rows of a sheet.
fn fit(rows: &str) -> Run {
    let folder = TempDir::new().expect("a folder");
    fs::copy(demo("trailer-152-thin-dual"), folder.path().join("axle.toml")).expect("a copy");
    let sheet = format!("quantity,of,load,ground,value,standard error\n{rows}");
    fs::write(folder.path().join("sheet.csv"), sheet).expect("the file is written");
    axlebow_in(folder.path(), &["fit", "axle", "--readings", "sheet", "--unknown", "tube.wall", "--doubtful"])
}

#[test]
fn blank_readings_are_skipped_and_a_blank_sheet_is_refused() {
    let run = fit("bow,middle,20000 lb,rolling,-4.1 mm,0.3 mm\n\
                   camber,left,rated-load,rolling,,0.05 deg\n\
                   bow,middle,rated-load,rolling,-4.2 mm,0.3 mm\n\
                   camber,right,rated-load,rolling, ,0.05 deg\n");
    assert!(run.code < 2, "{}", run.err);
    assert!(run.err.contains("lines 3, 5 are skipped: their readings are not filled in"), "{}", run.err);
    assert!(
        run.err.contains("load of line 2: 20000 lb read as weight, 20000 lbf (88.964 kN)"),
        "{}",
        run.err
    );
    refused(
        &fit("bow,middle,rated-load,rolling,,0.3 mm\nbow,middle,unladen,rolling,,0.3 mm\n"),
        &["none of the 2 readings is filled in", "-0.2 deg"],
    );
}

#[test]
fn every_kind_of_file_reports_two_errors_at_once() {
    let text = String::from_utf8(changed("wall = \"12.7 mm\"", "wall = \"70 mm\"")).expect("text");
    let two = text.replacen("position = \"zeroset\"", "position = \"outset\"", 1);
    refused(&on_text("flex", two.as_bytes()), &["wall is 70 mm", "needs its `offset`"]);
    let with = |name: &str, text: &str, arguments: &[&str]| {
        let folder = TempDir::new().expect("a folder");
        fs::write(Path::new(folder.path()).join(name), text).expect("the file is written");
        axlebow_in(folder.path(), arguments)
    };
    let model = demo("trailer-127-thick-dual");
    let road = "kind = \"pothole\"\ndepth = \"50 mm\"\namplitude = \"3 mm\"\n";
    refused(&with("own.toml", road, &["ride", &model, "--over", "own"]), &["`length`", "`amplitude`"]);
    let tire = "name = \"t\"\n[tread]\ndepth = \"-3 mm\"\nribs = \"five\"\n";
    refused(&with("own.toml", tire, &["tire", &model, "--tire", "own"]), &["tread.depth", "tread.ribs"]);
    let missing = "name = \"s\"\nkind = \"side-by-side\"\ncase = \"rated-load\"\n[[variant]]\nname = \"a\"\n\
                   model = \"one.toml\"\n[[variant]]\nname = \"b\"\nmodel = \"two.toml\"\n";
    refused(&study(missing), &["one.toml", "two.toml", "no such file"]);
    refused(
        &fit("bow,middle,rated,rolling,-4 mm,0.3 mm\ncamber,up,unladen,rolling,1 deg,0.1 deg\n"),
        &["rated", "`up`"],
    );
}

#[test]
fn a_file_in_inches_is_answered_in_inches() {
    let text = fs::read_to_string(demo("trailer-127-thick-dual")).expect("the model");
    let us: Vec<String> = text.lines().map(in_inches).collect();
    let us = us.join("\n");
    let thick = us.replace("wall = \"0.5 in\"", "wall = \"3 in\"");
    assert_ne!(us, thick);
    let run = on_text("flex", thick.as_bytes());
    refused(&run, &["wall is 3 in; accepted is less than 2.5 in"]);
    assert!(!run.err.contains(" mm"), "{}", run.err);
}

/// A line of a model with its millimeters in inches.
fn in_inches(line: &str) -> String {
    let Some((before, rest)) = line.split_once(" = \"") else { return line.to_owned() };
    let Some((number, after)) = rest.split_once(" mm\"") else { return line.to_owned() };
    match number.parse::<f64>() {
        Ok(number) => format!("{before} = \"{} in\"{after}", number / 25.4),
        Err(_) => line.to_owned(),
    }
}
