//! Standard output and files that are written whole or not at all.

use std::fs::{File, OpenOptions, TryLockError};
use std::io::{BufWriter, ErrorKind, Write};
use std::path::Path;

use axlebow_report::Svg;

use crate::failure::{Failure, unknown_picture};

/// Dots of a PNG for each unit of the picture: sharp on paper and on a dense screen.
const PNG_SCALE: f64 = 2.0;

/// Prints a result.
pub fn print(text: &str) -> Result<(), Failure> {
    let mut out = std::io::stdout().lock();
    let written = out.write_all(text.as_bytes()).and_then(|()| out.flush());
    written.map_err(|error| match error.kind() {
        ErrorKind::BrokenPipe => Failure::Closed,
        _ => Failure::Input(format!("cannot write to standard output: {error}")),
    })
}

/// Writes a file by way of a temporary one beside it, so that nobody sees half of it.
pub fn write_file(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let failed = |error: &std::io::Error| Failure::on_file("write", path, error);
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut file = tempfile::Builder::new()
        .prefix(".axlebow-")
        .permissions(plain_permissions())
        .tempfile_in(folder)
        // The message of the temporary file's own error would name a file that nobody asked for.
        .map_err(|error| failed(&error.kind().into()))?;
    file.write_all(bytes).and_then(|()| file.as_file().sync_all()).map_err(|error| failed(&error))?;
    file.persist(path).map_err(|error| failed(&error.error))?;
    Ok(())
}

/// Writes a file bit by bit under another name and gives it its own when it is whole, so that nobody sees half of it.
///
/// The other name is always the same, so that a run that was killed leaves nothing that the next does not write over.
pub fn stream_file(
    path: &Path,
    written: &mut dyn FnMut(&mut BufWriter<File>) -> Result<(), Failure>,
) -> Result<(), Failure> {
    let failed = |error: std::io::Error| Failure::on_file("write", path, &error);
    let mut unfinished = path.as_os_str().to_owned();
    unfinished.push(".unfinished");
    let file =
        OpenOptions::new().write(true).create(true).truncate(false).open(&unfinished).map_err(failed)?;
    if let Err(TryLockError::WouldBlock) = file.try_lock() {
        let path = path.display();
        return Err(Failure::Input(format!("cannot write {path}: another run is writing it; wait for it")));
    }
    file.set_len(0).map_err(failed)?;
    let mut file = BufWriter::with_capacity(1 << 20, file);
    let whole = written(&mut file).and_then(|()| {
        let whole = file.into_inner().map_err(|error| failed(error.into_error()))?;
        whole.sync_all().and_then(|()| std::fs::rename(&unfinished, path)).map_err(failed)
    });
    if whole.is_err() {
        let _ = std::fs::remove_file(&unfinished);
    } else {
        eprintln!("wrote {}", path.display());
    }
    whole
}

/// Refuses a Parquet file that is named otherwise, or that this build cannot write.
pub fn check_parquet(path: Option<&Path>) -> Result<(), Failure> {
    check_kind("--parquet", path, "parquet")?;
    if path.is_some() && !cfg!(feature = "parquet") {
        let text = "--parquet: this axlebow was built without Parquet; --csv writes the same columns, and \
                    `cargo build --release -p axlebow-cli --features parquet` builds one with it";
        return Err(Failure::Input(text.to_owned()));
    }
    Ok(())
}

/// Refuses a picture's file name that is neither SVG nor PNG before any work is done.
pub fn check_picture(path: Option<&Path>) -> Result<(), Failure> {
    match path {
        Some(path) if !is_kind(path, "svg") && !is_kind(path, "png") => Err(unknown_picture(path)),
        _ => Ok(()),
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

/// Writes a picture in the kind that its file name says.
pub fn write_picture(path: &Path, picture: &Svg) -> Result<(), Failure> {
    if is_kind(path, "svg") {
        write_file(path, picture.text().as_bytes())?;
    } else {
        write_file(path, &picture.to_png(PNG_SCALE)?)?;
    }
    eprintln!("wrote {}", path.display());
    Ok(())
}

fn is_kind(path: &Path, kind: &str) -> bool {
    path.extension().is_some_and(|extension| extension.eq_ignore_ascii_case(kind))
}

/// Permissions of a file that anybody may read, less what the user's mask takes away.
#[cfg(unix)]
fn plain_permissions() -> std::fs::Permissions {
    std::os::unix::fs::PermissionsExt::from_mode(0o666)
}

#[cfg(not(unix))]
fn plain_permissions() -> std::fs::Permissions {
    std::fs::Permissions::from(std::fs::metadata(".").map_or_else(|_| unreachable!(), |m| m.permissions()))
}
