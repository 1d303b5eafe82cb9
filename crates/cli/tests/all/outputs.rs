//! Where outputs go: through links, pipes and devices, whole or not at all, and never over what a run reads.
#![cfg(unix)]

use std::ffi::OsStr;
use std::fs;
use std::os::unix::ffi::OsStrExt;
use std::os::unix::fs::{FileTypeExt, MetadataExt, symlink};
use std::path::Path;
use std::process::{Command, Output, Stdio};

use tempfile::TempDir;

use crate::program::{axlebow_in, demo, program, root};

/// A folder with a model, a study of six walls and a measured road.
fn folder() -> TempDir {
    let folder = TempDir::new().expect("a folder");
    let write = |name: &str, text: &str| fs::write(folder.path().join(name), text).expect("a file");
    fs::copy(demo("trailer-127-thick-dual"), folder.path().join("m.toml")).expect("a copy");
    write(
        "s.toml",
        "name = \"Walls\"\nkind = \"sweep\"\nmodel = \"m.toml\"\ncase = \"rated-load\"\n\
         [[vary]]\npath = \"tube.wall\"\nfrom = \"8 mm\"\nto = \"16 mm\"\npoints = 6\n",
    );
    folder
}

fn text(folder: &TempDir, name: &str) -> String {
    fs::read_to_string(folder.path().join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// Runs a line of a shell in which `axlebow` is the program.
fn shell(folder: &TempDir, line: &str) -> Output {
    let mut command = Command::new("bash");
    command.args(["-c", &line.replace("axlebow", "\"$AXLEBOW\"")]).env("AXLEBOW", program());
    command.current_dir(folder.path()).output().expect("bash runs")
}

fn names(folder: &TempDir) -> Vec<String> {
    let names = fs::read_dir(folder.path()).expect("the folder").flatten();
    let mut names: Vec<String> =
        names.map(|entry| entry.file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

const RIDE: &str = "axlebow ride m.toml --over haversine-bump --reduced";

#[test]
fn pipes_and_devices_are_written_to() {
    let folder = folder();
    let csv = |ended: &Output| {
        let out = String::from_utf8_lossy(&ended.stdout).into_owned();
        assert!(ended.status.success() && out.contains("camber"), "{out} {ended:?}");
        out
    };
    assert!(shell(&folder, &format!("{RIDE} --csv out.csv")).status.success());
    let whole = text(&folder, "out.csv");
    assert!(csv(&shell(&folder, &format!("{RIDE} --csv /dev/stdout | cat"))).starts_with(&whole));
    // A file that standard output goes to gets both, one after the other.
    let to_file = shell(&folder, &format!("{RIDE} --csv /dev/stdout > both; cat both"));
    assert!(csv(&to_file).starts_with(&whole));
    let piped = shell(&folder, &format!("{RIDE} --csv >(cat > piped); wait; sleep 0.2; cat piped"));
    assert!(csv(&piped).contains(&whole));
    let line = format!("mkfifo fifo; cat fifo > got & {RIDE} --csv fifo; wait; cat got");
    assert!(csv(&shell(&folder, &line)).contains(&whole));
    let fifo = fs::symlink_metadata(folder.path().join("fifo")).expect("the pipe is still there");
    assert!(fifo.file_type().is_fifo());
    assert!(shell(&folder, &format!("{RIDE} --csv /dev/null")).status.success());
    assert!(fs::metadata("/dev/null").expect("the device").file_type().is_char_device());
    // A reader that has enough is no error.
    let closed = shell(&folder, &format!("{RIDE} --csv >(true) >/dev/null"));
    assert_eq!(closed.status.code(), Some(0), "{closed:?}");
}

#[test]
fn a_study_into_a_pipe_saves_nothing_beside_it() {
    let folder = folder();
    assert!(shell(&folder, "axlebow study s.toml --csv out.csv").status.success());
    let ended = shell(&folder, "axlebow study s.toml --csv /dev/stdout | cat");
    let out = String::from_utf8_lossy(&ended.stdout).into_owned();
    assert!(out.starts_with(&text(&folder, "out.csv")), "{out}");
    let refused =
        shell(&folder, "axlebow study s.toml --part 1/2 --csv /dev/stdout | cat; exit ${PIPESTATUS[0]}");
    assert_eq!(refused.status.code(), Some(2), "{refused:?}");
    assert_eq!(names(&folder), ["m.toml", "out.csv", "s.toml"]);
}

#[test]
fn symbolic_links_are_followed_and_stay() {
    let folder = folder();
    let path = |name: &str| folder.path().join(name);
    fs::create_dir(path("deep")).expect("a folder");
    for (link, target) in [("old.csv", "deep/old.csv"), ("new.csv", "deep/new.csv")] {
        symlink(target, path(link)).expect("a link");
    }
    fs::write(path("deep/old.csv"), "old").expect("a file");
    let before = fs::metadata(path("deep/old.csv")).expect("a file").ino();
    for link in ["old.csv", "new.csv"] {
        assert!(shell(&folder, &format!("{RIDE} --csv {link}")).status.success(), "{link}");
        assert!(fs::symlink_metadata(path(link)).expect("a link").is_symlink(), "{link}");
        assert!(text(&folder, link).contains("camber"), "{link}");
    }
    assert_ne!(fs::metadata(path("deep/old.csv")).expect("a file").ino(), before, "it is replaced whole");
}

#[test]
fn no_output_replaces_what_the_run_reads() {
    let folder = folder();
    let path = |name: &str| folder.path().join(name);
    fs::copy(root().join("models/roads/measured-lane.csv"), path("lane.csv")).expect("a copy");
    let road = "name = \"Lane\"\nkind = \"measured-profile\"\nprofile = \"lane.csv\"\nspeed = \"60 km/h\"\n";
    fs::write(path("road.toml"), road).expect("a file");
    let ride = "\n[[ride]]\nname = \"lane\"\nroad = \"road.toml\"\n";
    fs::write(path("rides.toml"), text(&folder, "s.toml") + ride).expect("a file");
    symlink("m.toml", path("link.csv")).expect("a link");
    fs::hard_link(path("m.toml"), path("x.csv.unfinished")).expect("a link");
    assert!(shell(&folder, "axlebow study s.toml --csv o.csv --part 1/1").status.success());
    let read = ["m.toml", "s.toml", "lane.csv", "road.toml", "rides.toml", "o.csv.part-1-of-1"];
    let before: Vec<Vec<u8>> = read.iter().map(|name| fs::read(path(name)).expect("a file")).collect();
    for line in [
        "axlebow response m.toml --csv m.toml",
        "axlebow response m.toml --csv ./link.csv",
        "axlebow response x.csv.unfinished --csv x.csv",
        "axlebow ride m.toml --over road.toml --csv lane.csv",
        "axlebow ride m.toml --over lane.csv --csv lane.csv",
        "axlebow ride m.toml --over road.toml --csv road.toml",
        "axlebow study s.toml --csv m.toml",
        "axlebow study s.toml --csv s.toml",
        "axlebow study rides.toml --csv lane.csv",
        "axlebow study rides.toml --csv road.toml",
        "axlebow gather s.toml o.csv.part-1-of-1 --csv o.csv.part-1-of-1",
        "axlebow fit m.toml --readings lane.csv -o m.toml",
    ] {
        let ended = shell(&folder, line);
        let err = String::from_utf8_lossy(&ended.stderr).into_owned();
        assert_eq!(ended.status.code(), Some(2), "{line}: {err}");
        let after: Vec<Vec<u8>> = read.iter().map(|name| fs::read(path(name)).expect("a file")).collect();
        assert!(before == after, "{line}");
        assert!(
            line.contains(" fit ") || err.contains("this run reads it; give another file"),
            "{line}: {err}"
        );
    }
    let ended = shell(&folder, "axlebow response m.toml --csv out.svg --plot out.svg");
    let err = String::from_utf8_lossy(&ended.stderr).into_owned();
    assert!(ended.status.code() == Some(2) && err.contains("two outputs"), "{err}");
    // Results that the run would save where one of its files is.
    fs::rename(path("s.toml"), path("s.csv.work")).expect("another name");
    let ended = shell(&folder, "axlebow study s.csv.work --csv s.csv --restart");
    assert_eq!(ended.status.code(), Some(2), "{ended:?}");
    assert!(text(&folder, "s.csv.work").starts_with("name = "));
}

#[test]
fn own_files_do_not_follow_links() {
    let folder = folder();
    let path = |name: &str| folder.path().join(name);
    fs::write(path("precious"), "precious").expect("a file");
    for (link, options) in [
        ("out.csv.work", ["--restart"]),
        ("out.csv.unfinished", ["--restart"]),
        ("out.csv.work", ["--resume"]),
    ] {
        symlink("precious", path(link)).expect("a link");
        let run = axlebow_in(
            folder.path(),
            &[["study", "s.toml", "--csv", "out.csv"].as_slice(), &options].concat(),
        );
        assert!(
            run.code == 2 && run.err.contains("a link, folder or device stands there"),
            "{link}: {}",
            run.err
        );
        assert_eq!(text(&folder, "precious"), "precious", "{link}");
        fs::remove_file(path(link)).expect("the link");
        let _ = fs::remove_file(path("out.csv.work"));
    }
}

#[test]
fn messages_that_nobody_can_read_stop_nothing() {
    if !Path::new("/dev/full").exists() {
        eprintln!("skipped: this system has no /dev/full");
        return;
    }
    let folder = folder();
    let ended = shell(&folder, "axlebow study s.toml --csv out.csv 2>/dev/full");
    assert_eq!(ended.status.code(), Some(0));
    assert_eq!(names(&folder), ["m.toml", "out.csv", "s.toml"]);
    let ended = shell(&folder, "axlebow flex nowhere.toml 2>/dev/full");
    assert_eq!(ended.status.code(), Some(2));
}

#[test]
fn a_run_that_was_killed_leaves_nothing_that_the_next_does_not_clear() {
    let folder = folder();
    fs::write(folder.path().join("out.svg.unfinished"), vec![b'x'; 1 << 20]).expect("a file");
    assert!(shell(&folder, "axlebow flex m.toml --plot out.svg").status.success());
    assert_eq!(names(&folder), ["m.toml", "out.svg", "s.toml"]);
    assert!(text(&folder, "out.svg").ends_with("</svg>\n"));
}

#[test]
fn paths_need_not_be_utf_8() {
    let folder = folder();
    let run = |options: &[&str]| {
        let mut command = Command::new(program());
        command.args(["study", "s.toml", "--csv"]).arg(OsStr::from_bytes(b"b\xffd it's.csv")).args(options);
        command.current_dir(folder.path()).stdout(Stdio::null()).output().expect("axlebow runs")
    };
    let work = folder.path().join(OsStr::from_bytes(b"b\xffd it's.csv.work"));
    fs::write(&work, "something").expect("a file");
    let ended = run(&[]);
    let err = String::from_utf8_lossy(&ended.stderr).into_owned();
    assert_eq!(ended.status.code(), Some(2), "{err}");
    assert!(err.contains(r"study s.toml --csv $'b\xffd it\'s.csv' --resume"), "{err}");
    assert_eq!(run(&["--restart"]).status.code(), Some(0));
}
