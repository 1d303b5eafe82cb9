//! Files that a user names: with or without their ending, there or not.

use std::path::{Path, PathBuf};

use crate::faults::likely;

/// The file that a name leads to: itself, or with its usual ending where only that is there.
///
/// Arguments: `ending`, such as `toml`. It is added, not put in place of another one, so that `tube-12.7` is
/// `tube-12.7.toml`.
pub fn given_file(path: &Path, ending: &str) -> PathBuf {
    let with_ending = with_ending(path, ending);
    let is_there = path.exists() && !path.is_dir();
    if !is_there && with_ending.is_file() { with_ending } else { path.to_owned() }
}

/// Why there is no file at a path, and what was likely meant: "models-x/ does not exist", "no such file; did you mean
/// drive.toml?".
pub fn why_missing(path: &Path) -> String {
    match missing_folder(path) {
        Some(folder) => format!("{}/ does not exist{}", folder.display(), meant(folder, true)),
        None => format!("no such file{}", meant(path, false)),
    }
}

/// The first folder on the way to a path that is not there.
pub(super) fn missing_folder(path: &Path) -> Option<&Path> {
    let folders = path.ancestors().skip(1).filter(|folder| !folder.as_os_str().is_empty());
    folders.filter(|folder| !folder.exists()).last()
}

/// What is there and named most like what is not.
fn meant(path: &Path, is_folder: bool) -> String {
    let near = near(path, is_folder).map(|near| path.with_file_name(near));
    let mark = if is_folder { "/" } else { "" };
    near.map_or(String::new(), |near| format!("; did you mean {}{mark}?", near.display()))
}

fn near(path: &Path, is_folder: bool) -> Option<String> {
    let wanted = path.file_name()?.to_str()?;
    let names = names_beside(path, |beside| beside.is_dir() == is_folder)?;
    let stem = |name: &str| Path::new(name).file_stem().and_then(|stem| stem.to_str()).map(str::to_owned);
    let alike = names.iter().find(|name| !is_folder && stem(name) == stem(wanted)).cloned();
    alike.or_else(|| likely(wanted, names.iter().map(String::as_str))).or_else(|| {
        let found = likely(wanted, names.iter().filter_map(|name| name.strip_suffix(".toml")))?;
        Some(format!("{found}.toml"))
    })
}

/// Names of what is in the folder of a path, of those that are `wanted`.
pub(super) fn names_beside(path: &Path, wanted: impl Fn(&Path) -> bool) -> Option<Vec<String>> {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let entries = std::fs::read_dir(folder).ok()?.filter_map(Result::ok);
    let found = entries.filter(|entry| wanted(&entry.path()));
    let mut names: Vec<String> = found.filter_map(|entry| entry.file_name().into_string().ok()).collect();
    names.sort();
    Some(names)
}

fn with_ending(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(".");
    name.push(ending);
    PathBuf::from(name)
}
