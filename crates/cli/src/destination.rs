//! Where an output goes: a plain file, or what takes bytes as they come.

use std::fs::{self, File, Metadata, OpenOptions};
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

/// Symbolic links in a row that are followed.
const MOST_LINKS: usize = 40;

/// Where an output goes.
#[derive(Debug)]
pub enum Destination {
    /// A plain file, there or not yet, that is replaced as a whole.
    File(PathBuf),
    /// A pipe, a device, or what standard output or standard error goes to: it stays, and bytes are handed on to it.
    Stream(File),
}

impl Destination {
    /// Where a path leads, symbolic links followed. Waits for the reader of a named pipe.
    pub fn of(path: &Path) -> io::Result<Destination> {
        if !is_stream(path) {
            return plain_file(path).map(Destination::File);
        }
        let own = fs::metadata(path).ok().and_then(|there| standard_stream(&there));
        let stream = own.map_or_else(|| OpenOptions::new().write(true).open(path), Ok);
        stream.map(Destination::Stream)
    }
}

/// Whether a path leads to what takes bytes as they come.
pub fn is_stream(path: &Path) -> bool {
    let is_stream =
        |there: Metadata| !there.is_dir() && (!there.is_file() || standard_stream(&there).is_some());
    fs::metadata(path).is_ok_and(is_stream)
}

/// Where the plain file of a path is or will be, symbolic links followed.
///
/// # Errors
/// A folder, and one that is not there.
pub fn plain_file(path: &Path) -> io::Result<PathBuf> {
    match fs::metadata(path) {
        Ok(there) if there.is_dir() => Err(io::Error::other("it is a folder")),
        Ok(_) => fs::canonicalize(path),
        Err(error) if error.kind() == ErrorKind::NotFound => {
            let end = end_of_links(path)?;
            let name = end.file_name().ok_or_else(|| io::Error::other("it is no name for a file"))?;
            let folder =
                end.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
            let folder = fs::canonicalize(folder);
            Ok(folder.map_err(|_| io::Error::other("its folder does not exist"))?.join(name))
        }
        Err(error) => Err(error),
    }
}

/// Where symbolic links lead that end in nothing yet.
fn end_of_links(path: &Path) -> io::Result<PathBuf> {
    let mut path = path.to_owned();
    for _ in 0..MOST_LINKS {
        match fs::read_link(&path) {
            Ok(next) => path = path.parent().unwrap_or(Path::new("")).join(next),
            Err(_) => return Ok(path),
        }
    }
    Err(io::Error::other("too many symbolic links in a row"))
}

/// Standard output or standard error, where one of them goes to that same thing.
#[cfg(unix)]
fn standard_stream(there: &Metadata) -> Option<File> {
    use std::os::fd::AsFd;
    use std::os::unix::fs::MetadataExt;
    let own = [io::stdout().as_fd().try_clone_to_owned(), io::stderr().as_fd().try_clone_to_owned()];
    let is_that =
        |own: &File| own.metadata().is_ok_and(|own| (own.dev(), own.ino()) == (there.dev(), there.ino()));
    own.into_iter().flatten().map(File::from).find(is_that)
}

#[cfg(not(unix))]
fn standard_stream(_: &Metadata) -> Option<File> {
    None
}
