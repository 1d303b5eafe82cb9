//! Studies whose results are saved as they come: stopped, gone on with, run in parts, gathered.

use std::fs;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

use tempfile::TempDir;

use crate::program::{axlebow_in, demo, program};

/// A folder with a sweep of so many walls by so many diameters; some walls are thicker than a tube can be.
pub fn folder_with_sweep(diameters: u32, walls: u32) -> TempDir {
    let folder = TempDir::new().expect("a folder");
    let text = format!(
        "name = \"Many walls\"\nkind = \"sweep\"\nmodel = {:?}\ncase = \"rated-load\"\n\
         [[vary]]\npath = \"tube.od\"\nfrom = \"120 mm\"\nto = \"160 mm\"\npoints = {diameters}\n\
         [[vary]]\npath = \"tube.wall\"\nfrom = \"6 mm\"\nto = \"66 mm\"\npoints = {walls}\n",
        demo("trailer-127-thick-dual")
    );
    fs::write(folder.path().join("many.toml"), text).expect("the study is written");
    folder
}

fn study_in(folder: &Path, options: &[&str]) -> crate::program::Run {
    let arguments: Vec<&str> = ["study", "many.toml"].into_iter().chain(options.iter().copied()).collect();
    axlebow_in(folder, &arguments)
}

#[track_caller]
pub fn done(folder: &Path, options: &[&str]) -> crate::program::Run {
    let run = study_in(folder, options);
    assert_eq!(run.code, 0, "{options:?}: {}", run.err);
    run
}

#[track_caller]
fn refused(folder: &Path, options: &[&str], wanted: &[&str]) {
    let run = study_in(folder, options);
    assert_eq!(run.code, 2, "{options:?}: {}", run.err);
    wanted.iter().for_each(|text| assert!(run.err.contains(text), "{text:?} is not in {}", run.err));
}

pub fn bytes(folder: &Path, name: &str) -> Vec<u8> {
    fs::read(folder.join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// Names of the files of a folder, in order.
fn names(folder: &Path) -> Vec<String> {
    let names = fs::read_dir(folder).expect("the folder").flatten();
    let mut names: Vec<String> =
        names.map(|entry| entry.file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

fn started(folder: &Path, options: &[&str]) -> Child {
    let mut command = Command::new(program());
    command.args(["study", "many.toml"]).args(options).current_dir(folder);
    command.stdout(Stdio::null()).stderr(Stdio::piped()).spawn().expect("axlebow starts")
}

/// Waits until a file is longer than so many bytes.
pub fn wait_for(path: &Path, longer: u64) {
    let until = Instant::now() + Duration::from_secs(60);
    while fs::metadata(path).map_or(0, |file| file.len()) <= longer {
        assert!(Instant::now() < until, "{} stays short", path.display());
        sleep(Duration::from_millis(2));
    }
}

#[test]
fn a_study_that_is_killed_fifty_times_ends_with_the_same_bytes() {
    const KILLS: u64 = 50;
    let folder = folder_with_sweep(80, 200);
    let begun = Instant::now();
    done(folder.path(), &["--csv", "whole.csv"]);
    let whole_run = begun.elapsed();
    // Delays of a linear congruential generator (Knuth's multiplier), up to a fifth of an undisturbed run: the last ones fall
    // while the file is put together.
    let mut state: u64 = 20;
    for _ in 0..KILLS {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let mut run = started(folder.path(), &["--csv", "out.csv", "--resume"]);
        sleep(whole_run.mul_f64(0.2 * (state >> 40) as f64 / (1_u64 << 24) as f64));
        run.kill().expect("it is killed");
        run.wait().expect("it ends");
    }
    done(folder.path(), &["--csv", "out.csv", "--resume"]);
    assert!(bytes(folder.path(), "out.csv") == bytes(folder.path(), "whole.csv"));
    assert_eq!(names(folder.path()), ["many.toml", "out.csv", "whole.csv"], "nothing is left behind");
}

#[test]
fn a_stop_from_the_keyboard_says_how_to_go_on() {
    let folder = folder_with_sweep(200, 200);
    let run = started(folder.path(), &["--csv", "out.csv"]);
    wait_for(&folder.path().join("out.csv.work"), 100_000);
    let sent = Command::new("kill").args(["-INT", &run.id().to_string()]).status().expect("kill runs");
    assert!(sent.success());
    let ended = run.wait_with_output().expect("it ends");
    let said = String::from_utf8_lossy(&ended.stderr);
    assert_eq!(ended.status.code(), Some(130), "{said}");
    assert!(said.contains("designs are saved in out.csv.work"), "{said}");
    assert!(said.contains("study many.toml --csv out.csv --resume` goes on"), "{said}");
    refused(folder.path(), &["--csv", "out.csv"], &["out.csv.work holds results", "--resume", "--restart"]);
    assert!(!folder.path().join("out.csv").exists());
}

#[test]
fn results_that_are_there_are_kept_or_thrown_away_as_one_says() {
    let folder = folder_with_sweep(100, 100);
    let work = folder.path().join("out.csv.work");
    done(folder.path(), &["--csv", "whole.csv"]);
    let mut run = started(folder.path(), &["--csv", "out.csv"]);
    wait_for(&work, 100_000);
    run.kill().and_then(|()| run.wait()).expect("it is killed");
    refused(folder.path(), &["--csv", "out.csv"], &["out.csv.work holds results of a run that did not end"]);
    refused(
        folder.path(),
        &["--csv", "out.csv", "--coarse", "9", "--resume"],
        &["another study", "this one has 81 of"],
    );
    // A chunk that lost its end is made anew.
    let torn = bytes(folder.path(), "out.csv.work");
    fs::write(&work, &torn[..torn.len() - 1]).expect("it is cut off");
    let run = done(folder.path(), &["--csv", "out.csv", "--resume"]);
    assert!(run.err.contains("wrote out.csv"), "{}", run.err);
    assert!(bytes(folder.path(), "out.csv") == bytes(folder.path(), "whole.csv"));
    fs::write(&work, "letters of somebody").expect("a file in the way");
    refused(
        folder.path(),
        &["--csv", "out.csv", "--resume"],
        &["out.csv.work holds no results", "move it away"],
    );
    done(folder.path(), &["--csv", "out.csv", "--restart"]);
    assert!(!work.exists());
}

#[test]
fn a_study_that_changes_under_its_results_is_refused() {
    let folder = folder_with_sweep(4, 50);
    done(folder.path(), &["--csv", "out.csv", "--part", "1/1"]);
    let file = folder.path().join("many.toml");
    let text = fs::read_to_string(&file).expect("the study");
    // Layout and comments do not change what a study is.
    fs::write(&file, format!("# a remark\n{text}")).expect("it is written");
    done(folder.path(), &["--csv", "out.csv", "--part", "1/1", "--resume"]);
    fs::write(&file, text.replace("66 mm", "65 mm")).expect("it is written");
    let wanted = ["holds results of another study", "has changed since", "--restart"];
    refused(folder.path(), &["--csv", "out.csv", "--part", "1/1", "--resume"], &wanted);
}

#[test]
fn parts_are_gathered_to_the_same_bytes() {
    let folder = folder_with_sweep(60, 100);
    let whole = done(folder.path(), &["--csv", "whole.csv"]);
    for part in ["3/3", "1/3"] {
        done(folder.path(), &["--csv", "out.csv", "--part", part]);
    }
    let gather = |parts: &[&str]| {
        let fixed = ["gather", "many.toml", "--csv", "out.csv"];
        axlebow_in(folder.path(), &fixed.into_iter().chain(parts.iter().copied()).collect::<Vec<_>>())
    };
    let two = ["out.csv.part-3-of-3", "out.csv.part-1-of-3"];
    let run = gather(&two);
    assert_eq!(run.code, 2);
    let command = "axlebow study many.toml --csv out.csv --part 2/3 --resume";
    assert!(run.err.contains("2048 of 6000 designs are missing"), "{}", run.err);
    assert!(run.err.contains(command), "{}", run.err);
    done(folder.path(), &["--csv", "out.csv", "--part", "2/3", "--resume"]);
    let run = gather(&[two[0], two[1], "out.csv.part-2-of-3"]);
    assert_eq!((run.code, run.out), (0, whole.out), "{}", run.err);
    assert!(bytes(folder.path(), "out.csv") == bytes(folder.path(), "whole.csv"));
    let run = gather(&["many.toml"]);
    assert!(run.code == 2 && run.err.contains("many.toml holds no results of a study"), "{}", run.err);
    let run = gather(&["nowhere.part-1-of-1"]);
    assert!(run.code == 2 && run.err.contains("cannot read nowhere.part-1-of-1"), "{}", run.err);
}

#[test]
fn a_part_tells_its_own_size() {
    let folder = folder_with_sweep(2000, 1000);
    let mut run = started(folder.path(), &["--csv", "out.csv", "--part", "2/4"]);
    let mut said = String::new();
    BufReader::new(run.stderr.take().expect("a pipe")).read_line(&mut said).expect("text");
    run.kill().and_then(|()| run.wait()).expect("it is killed");
    // 1954 chunks of 1024, 128 in the last: the second, the sixth and so on to the last are those of the part.
    assert!(said.starts_with("part 2/4: 499840 designs, about "), "{said}");
}

#[test]
fn a_study_of_many_designs_is_summed_up_alike_on_any_number_of_threads() {
    let folder = folder_with_sweep(60, 100);
    let on = |threads: &str| {
        let mut command = Command::new(program());
        command.args(["study", "many.toml", "--csv", "out.csv", "--restart"]).current_dir(folder.path());
        let ended = command.env("RAYON_NUM_THREADS", threads).output().expect("axlebow runs");
        (ended.stdout, bytes(folder.path(), "out.csv"))
    };
    let (one, three) = (on("1"), on("3"));
    assert!(one == three);
    let text = String::from_utf8(one.0).expect("text");
    for wanted in
        ["6000 designs; ", "the first: ", "least", "mean", "most", "The 10 designs of least axle mass"]
    {
        assert!(text.contains(wanted), "{wanted:?} is not in {text}");
    }
    assert!(text.lines().all(|line| line.chars().count() <= 100), "{text}");
    let rows = String::from_utf8(one.1).expect("text");
    assert_eq!(rows.lines().filter(|line| !line.starts_with('#')).count(), 6001);
    let run = done(folder.path(), &["--json", "--plot", "many.svg"]);
    let document: serde_json::Value = serde_json::from_str(&run.out).expect("JSON");
    assert_eq!(document["summary"]["designs"], 6000);
    assert_eq!(document["rows"].as_array().map(Vec::len), Some(0));
}

#[test]
fn places_that_cannot_be_written_are_refused_before_any_work() {
    let folder = folder_with_sweep(2, 3);
    fs::create_dir(folder.path().join("folder.csv")).expect("a folder");
    fs::write(folder.path().join("file"), "").expect("a file");
    refused(folder.path(), &["--csv", "folder.csv"], &["cannot write folder.csv: it is a folder"]);
    refused(
        folder.path(),
        &["--csv", "nowhere/out.csv"],
        &["cannot write nowhere/out.csv: its folder does not exist"],
    );
    refused(folder.path(), &["--csv", "file/out.csv"], &["cannot write file/out.csv: Not a directory"]);
    refused(folder.path(), &["--csv", "out.csv", "--part", "3/2"], &["part \"3/2\"", "such as 2/8"]);
    refused(folder.path(), &["--part", "1/2"], &["--csv"]);
    refused(folder.path(), &["--resume"], &["--csv"]);
    refused(folder.path(), &["--csv", "a.csv", "--resume", "--restart"], &["cannot be used with"]);
    assert_eq!(names(folder.path()), ["file", "folder.csv", "many.toml"]);
}

#[test]
fn the_default_build_writes_parquet_beside_csv() {
    let folder = folder_with_sweep(2, 2);
    let asked = ["--csv", "out.csv", "--parquet", "out.parquet"];
    let run = study_in(folder.path(), &asked);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(
        bytes(folder.path(), "out.parquet").starts_with(b"PAR1")
            && !bytes(folder.path(), "out.csv").is_empty()
    );
}
