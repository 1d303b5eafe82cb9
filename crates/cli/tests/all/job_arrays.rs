//! Studies in parts by the scripts: processes of this machine, and jobs of Slurm.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};
use std::thread::sleep;
use std::time::{Duration, Instant};

use crate::program::{program, root};
use crate::saved_studies::{bytes, done, folder_with_sweep, wait_for};

/// A script of the project, run in a folder with the program under a name that has a blank in it.
fn script(folder: &Path, name: &str) -> Command {
    let own = folder.join("the program");
    if !own.exists() {
        std::os::unix::fs::symlink(program(), &own).expect("a link");
    }
    let mut command = Command::new(root().join("scripts").join(name));
    command.current_dir(folder).env("AXLEBOW", own);
    command
}

#[track_caller]
fn succeeds(ended: &Output) {
    let said = [&ended.stdout, &ended.stderr].map(|text| String::from_utf8_lossy(text));
    assert!(ended.status.success(), "{}{}", said[0], said[1]);
}

#[test]
fn processes_run_a_study_in_parts_and_begin_anew_after_a_change() {
    let folder = folder_with_sweep(50, 100);
    let run = |first: &[&str]| {
        let mut parallel = script(folder.path(), "study-parallel");
        parallel.args(first).args(["many.toml", "a {}.csv", "4"]).output().expect("the script runs")
    };
    succeeds(&run(&[]));
    let file = folder.path().join("many.toml");
    let text = fs::read_to_string(&file).expect("the study");
    fs::write(&file, text.replace("66 mm", "65 mm")).expect("it is written");
    let refused = run(&[]);
    let said = String::from_utf8_lossy(&refused.stderr);
    assert_eq!(refused.status.code(), Some(1), "{said}");
    assert!(said.contains("--restart") && said.contains("a part failed"), "{said}");
    succeeds(&run(&["--restart"]));
    done(folder.path(), &["--csv", "whole.csv"]);
    assert!(bytes(folder.path(), "a {}.csv") == bytes(folder.path(), "whole.csv"));
}

#[test]
fn processes_of_a_study_end_with_the_script() {
    let folder = folder_with_sweep(600, 1000);
    let at_work = || {
        let processes = fs::read_dir("/proc").expect("a list of processes").flatten();
        let commands = processes.filter_map(|process| fs::read(process.path().join("cmdline")).ok());
        let own = folder.path().join("the program").display().to_string();
        commands.filter(|command| String::from_utf8_lossy(command).starts_with(&own)).count()
    };
    let mut run = script(folder.path(), "study-parallel");
    let mut run = run.args(["many.toml", "out.csv", "2"]).spawn().expect("the script runs");
    wait_for(&folder.path().join("out.csv.part-1-of-2"), 100_000);
    assert!(at_work() > 0);
    let sent = Command::new("kill").arg(run.id().to_string()).status().expect("kill runs");
    assert!(sent.success());
    assert_eq!(run.wait().expect("it ends").code(), Some(143), "128 and the number of the signal");
    let until = Instant::now() + Duration::from_secs(20);
    while at_work() > 0 {
        assert!(Instant::now() < until, "processes live on");
        sleep(Duration::from_millis(20));
    }
}

/// What is done beside a Slurm: `$1` is the script, `$2` a program that fails in the second part.
const JOBS: &str = r#"
set -euo pipefail
ended() {
    for _ in $(seq 600); do [ -n "$(squeue --noheader)" ] || return 0; sleep 0.2; done
    squeue
    exit 1
}
"$1" many.toml out.csv 3
ended
cmp out.csv whole.csv
mv out.csv first.csv
AXLEBOW=$2 "$1" --restart many.toml out.csv 3
ended
[ ! -e out.csv ] && [ ! -e out.csv.part-2-of-3 ]
"$1" many.toml out.csv 3
ended
cmp out.csv whole.csv
"#;

#[test]
fn jobs_of_slurm_run_a_study_in_parts_and_none_waits_for_ever() {
    let folder = folder_with_sweep(20, 200);
    done(folder.path(), &["--csv", "whole.csv"]);
    let failing = folder.path().join("failing");
    let text = "#!/bin/sh\ncase \"$*\" in *2/3*) exit 9 ;; esac\nexec './the program' \"$@\"\n";
    fs::write(&failing, text).expect("it is written");
    fs::set_permissions(&failing, std::os::unix::fs::PermissionsExt::from_mode(0o755)).expect("it is ours");
    fs::create_dir(folder.path().join("slurm")).expect("a folder");
    let mut jobs = script(folder.path(), "../crates/cli/tests/all/one-node-slurm");
    jobs.args(["slurm", "bash", "-c", JOBS, "jobs"]).arg(root().join("scripts/study-slurm")).arg(failing);
    let ended = jobs.output().expect("the script runs");
    if ended.status.code() == Some(77) {
        eprintln!("skipped: {}", String::from_utf8_lossy(&ended.stderr).trim());
        return;
    }
    succeeds(&ended);
}

#[test]
fn a_script_that_is_called_otherwise_says_how() {
    let folder = folder_with_sweep(2, 2);
    for name in ["study-slurm", "study-parallel"] {
        for arguments in
            [&["many.toml"][..], &["many.toml", "out.csv", "0"], &["--restart", "many.toml", "out.csv"]]
        {
            let ended = script(folder.path(), name).args(arguments).output().expect("the script runs");
            let said = String::from_utf8_lossy(&ended.stderr);
            assert_eq!(ended.status.code(), Some(2), "{name} {arguments:?}: {said}");
            assert!(said.contains(&format!("scripts/{name} [--restart] STUDY.toml OUT.csv 8")), "{said}");
        }
    }
}
