//! Files that are written whole or not at all.

use std::fs::{self, File, OpenOptions};
use std::io::{self, BufWriter, ErrorKind, Write};
use std::path::{Path, PathBuf};

/// A file that is written under another name and gets its own when it is whole, so that nobody sees half of it.
///
/// The other name is always the same, `NAME.unfinished`, so that a run that is killed leaves nothing that the next one does
/// not write over. Two runs that write the same file do so one after the other. What is not [finished](Self::finish) is
/// removed.
#[derive(Debug)]
pub struct WholeFile {
    path: PathBuf,
    unfinished: PathBuf,
    file: BufWriter<File>,
    is_whole: bool,
}

impl WholeFile {
    /// Begins to write a file.
    ///
    /// # Errors
    /// What the disk refuses; a file that is there and may not be written to; anything but a plain file, such as a
    /// symbolic link, at the other name.
    pub fn begin(path: &Path) -> io::Result<WholeFile> {
        if fs::metadata(path).is_ok_and(|there| there.permissions().readonly()) {
            return Err(io::Error::new(ErrorKind::PermissionDenied, "the file is read-only"));
        }
        let unfinished = unfinished_path(path);
        let file = loop {
            let file = open_in_place(&unfinished)?;
            // A file system that knows no locks is trusted.
            let _ = file.lock();
            // Another run may have finished the file while this one waited.
            if is_at(&file, &unfinished)? {
                break file;
            }
        };
        file.set_len(0)?;
        let file = BufWriter::with_capacity(1 << 20, file);
        Ok(WholeFile { path: path.to_owned(), unfinished, file, is_whole: false })
    }

    /// What its content is written to.
    pub fn writer(&mut self) -> &mut BufWriter<File> {
        &mut self.file
    }

    /// Gives the file its name, with the permissions of the one that it replaces.
    ///
    /// # Errors
    /// What the disk refuses.
    pub fn finish(mut self) -> io::Result<()> {
        self.file.flush()?;
        let file = self.file.get_ref();
        if let Ok(earlier) = fs::metadata(&self.path) {
            file.set_permissions(earlier.permissions())?;
        }
        file.sync_all()?;
        fs::rename(&self.unfinished, &self.path)?;
        self.is_whole = true;
        Ok(())
    }
}

impl Drop for WholeFile {
    fn drop(&mut self) {
        if !self.is_whole {
            let _ = fs::remove_file(&self.unfinished);
        }
    }
}

/// The name that a file has while it is written.
pub fn unfinished_path(path: &Path) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(".unfinished");
    name.into()
}

/// Opens the plain file at a path, or makes it; never what a symbolic link there points to. Its content stays.
///
/// # Errors
/// What the disk refuses; anything but a plain file at the path.
pub(super) fn open_in_place(path: &Path) -> io::Result<File> {
    let is_gone = |error: &io::Error| error.kind() == ErrorKind::NotFound;
    loop {
        let made = OpenOptions::new().read(true).write(true).create_new(true).open(path);
        match made {
            Err(error) if error.kind() == ErrorKind::AlreadyExists => (),
            _ => return made,
        }
        let opened = fs::symlink_metadata(path).and_then(|there| {
            if !there.is_file() {
                return Err(io::Error::other("a link, folder or device stands there; move it away"));
            }
            OpenOptions::new().read(true).write(true).open(path)
        });
        match opened {
            Ok(file) if is_at(&file, path)? => return Ok(file),
            Err(error) if !is_gone(&error) => return Err(error),
            _ => (),
        }
    }
}

/// Whether an open file is what stands at a path itself.
#[cfg(unix)]
pub(super) fn is_at(file: &File, path: &Path) -> io::Result<bool> {
    use std::os::unix::fs::MetadataExt;
    let own = file.metadata()?;
    match fs::symlink_metadata(path) {
        Ok(there) => Ok((there.dev(), there.ino()) == (own.dev(), own.ino())),
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(false),
        Err(error) => Err(error),
    }
}

/// Whether a plain file stands at a path.
#[cfg(not(unix))]
pub(super) fn is_at(_: &File, path: &Path) -> io::Result<bool> {
    Ok(fs::symlink_metadata(path).is_ok_and(|there| there.is_file()))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)] // tests
mod tests {
    use super::*;

    fn write(path: &Path, text: &str) -> io::Result<()> {
        let mut file = WholeFile::begin(path)?;
        file.writer().write_all(text.as_bytes())?;
        file.finish()
    }

    #[test]
    fn a_file_is_whole_or_as_it_was() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("out.csv");
        fs::write(unfinished_path(&path), "what a killed run left, longer than the new text").unwrap();
        write(&path, "first").unwrap();
        let mut second = WholeFile::begin(&path).unwrap();
        second.writer().write_all(b"sec").unwrap();
        drop(second);
        assert_eq!(fs::read_to_string(&path).unwrap(), "first");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
    }

    #[test]
    fn runs_that_write_one_file_do_so_one_after_the_other() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("out.csv");
        std::thread::scope(|scope| {
            for letter in ["a", "b", "c", "d"] {
                let path = &path;
                scope.spawn(move || (0..50).for_each(|_| write(path, &letter.repeat(5000)).unwrap()));
            }
        });
        let text = fs::read_to_string(&path).unwrap();
        assert!(text.len() == 5000 && text.bytes().all(|letter| letter == text.as_bytes()[0]));
    }

    #[cfg(unix)]
    #[test]
    fn links_are_not_followed_and_permissions_stay() {
        use std::os::unix::fs::{PermissionsExt, symlink};
        let folder = tempfile::tempdir().unwrap();
        let (path, precious) = (folder.path().join("out.csv"), folder.path().join("precious"));
        fs::write(&precious, "precious").unwrap();
        symlink(&precious, unfinished_path(&path)).unwrap();
        assert!(write(&path, "text").unwrap_err().to_string().contains("link"));
        assert_eq!(fs::read_to_string(&precious).unwrap(), "precious");
        fs::remove_file(unfinished_path(&path)).unwrap();
        write(&path, "text").unwrap();
        fs::set_permissions(&path, fs::Permissions::from_mode(0o600)).unwrap();
        write(&path, "private").unwrap();
        assert_eq!(fs::metadata(&path).unwrap().permissions().mode() & 0o777, 0o600);
        fs::set_permissions(&path, fs::Permissions::from_mode(0o444)).unwrap();
        assert!(write(&path, "text").unwrap_err().to_string().contains("read-only"));
    }
}
