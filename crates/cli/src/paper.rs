//! Pages on paper: a browser of this machine prints them.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::failure::Failure;
use crate::output;

/// Names under which the browser is sought, where the environment names none.
const BROWSERS: [&str; 3] = ["chromium", "chromium-browser", "headless_shell"];
/// The variable of the environment that names one.
const VARIABLE: &str = "AXLEBOW_BROWSER";

/// Writes a page, as HTML or, where the file name ends in .pdf, printed by a browser that needs no screen.
pub fn write_page(path: &Path, html: &str) -> Result<(), Failure> {
    if !output::is_kind(path, "pdf") {
        return output::write_file(path, html.as_bytes());
    }
    let failed = |error: std::io::Error| Failure::on_file("write", path, &error);
    let folder = tempfile::tempdir().map_err(failed)?;
    let (page, printed) = (folder.path().join("page.html"), folder.path().join("page.pdf"));
    std::fs::write(&page, html).map_err(failed)?;
    print(path, [&page, &printed])?;
    output::write_file(path, &std::fs::read(&printed).map_err(failed)?)
}

fn print(path: &Path, [page, printed]: [&PathBuf; 2]) -> Result<(), Failure> {
    let named = std::env::var(VARIABLE).ok();
    let names = named.iter().map(String::as_str).chain(BROWSERS);
    for name in names {
        // In a container a browser refuses its own sandbox; the page has no script and asks for nothing.
        for sandbox in [&[][..], &["--no-sandbox"]] {
            let mut target = std::ffi::OsString::from("--print-to-pdf=");
            target.push(printed);
            let run = Command::new(name)
                .args(["--headless", "--disable-gpu", "--no-pdf-header-footer"])
                .args(sandbox)
                .arg(target)
                .arg(page)
                .stdout(Stdio::null())
                .stderr(Stdio::null())
                .status();
            if run.is_err() {
                break;
            }
            if printed.exists() {
                return Ok(());
            }
        }
    }
    Err(Failure::Input(format!(
        "cannot write {}: no browser here prints it ({} or {VARIABLE} is looked for); write a .html and print it from any browser",
        path.display(),
        BROWSERS.join(", ")
    )))
}
