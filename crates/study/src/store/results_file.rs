//! A file that chunks of results are appended to as they come.

use std::collections::BTreeMap;
use std::fs::{File, TryLockError};
use std::io::{BufReader, Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use super::chunk::{self, Chunk, ChunkHead};
use super::error::StoreError;
use super::head::{Head, LONGEST};
use super::whole_file::{is_at, open_in_place};

/// What becomes of results that are there already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Earlier {
    /// They are an error.
    Refused,
    /// They are gone on with.
    Kept,
    /// They are thrown away.
    Dropped,
}

/// A file of results: its head, then chunks in the order in which they were done.
///
/// A process that dies leaves at most one chunk cut off, the last. Its check tells so, and the next run makes it anew.
#[derive(Debug)]
pub struct ResultsFile {
    path: PathBuf,
    head: Head,
    content: Mutex<Content>,
}

#[derive(Debug)]
struct Content {
    file: File,
    /// End of the last whole chunk.
    end: u64,
    /// Where each chunk begins, by its place.
    chunks: BTreeMap<usize, u64>,
}

impl ResultsFile {
    /// Begins a file, or goes on with one; nobody else may be at work on it.
    ///
    /// # Errors
    /// [`StoreError::Unfinished`], [`StoreError::Busy`], [`StoreError::Foreign`], [`StoreError::Damaged`],
    /// [`StoreError::NoResults`], and what the disk refuses: anything but a plain file at the path among it.
    pub fn begin(path: &Path, head: Head, earlier: Earlier) -> Result<ResultsFile, StoreError> {
        let refused = || StoreError::disk("write", path);
        let file = loop {
            let file = open_in_place(path).map_err(refused())?;
            held(path, file.try_lock())?;
            // The run that held it may have removed it just now.
            if is_at(&file, path).map_err(refused())? {
                break file;
            }
        };
        let is_new = file.metadata().map_err(StoreError::disk("read", path))?.len() == 0;
        match earlier {
            Earlier::Refused if !is_new => return Err(StoreError::Unfinished { path: path.to_owned() }),
            Earlier::Kept => {
                if let Some(found) = found_head(path, &file, &head)? {
                    head.check(&found.0, path)?;
                    return ResultsFile::found(path, file, found)?.without_torn_end();
                }
            }
            _ => (),
        }
        ResultsFile::anew(path, file, head)
    }

    /// A file without a name, gone with the process.
    ///
    /// # Errors
    /// What the disk refuses.
    pub fn nameless(head: Head) -> Result<ResultsFile, StoreError> {
        let folder = std::env::temp_dir();
        let file = tempfile::tempfile().map_err(StoreError::disk("write", &folder))?;
        ResultsFile::anew(&folder, file, head)
    }

    /// Opens a file to read, of a study that is known.
    ///
    /// # Errors
    /// As [`begin`](Self::begin).
    pub fn read(path: &Path, head: &Head) -> Result<ResultsFile, StoreError> {
        let file = File::open(path).map_err(StoreError::disk("read", path))?;
        held(path, file.try_lock_shared())?;
        let found = found_head(path, &file, head)?;
        let found = found.ok_or_else(|| StoreError::NoResults { path: path.to_owned() })?;
        let wanted = Head { part: found.0.part, ..head.clone() };
        wanted.check(&found.0, path)?;
        ResultsFile::found(path, file, found)
    }

    fn anew(path: &Path, mut file: File, head: Head) -> Result<ResultsFile, StoreError> {
        let text = head.text();
        let written = file.set_len(0).and_then(|()| file.rewind());
        written.and_then(|()| file.write_all(text.as_bytes())).map_err(StoreError::disk("write", path))?;
        let content = Content { file, end: text.len() as u64, chunks: BTreeMap::new() };
        Ok(ResultsFile { path: path.to_owned(), head, content: Mutex::new(content) })
    }

    /// A file whose head is known, with what it has.
    fn found(path: &Path, file: File, (head, end): (Head, u64)) -> Result<ResultsFile, StoreError> {
        let mut content = Content { file, end, chunks: BTreeMap::new() };
        content.find_chunks(&head).map_err(StoreError::disk("read", path))?;
        Ok(ResultsFile { path: path.to_owned(), head, content: Mutex::new(content) })
    }

    fn without_torn_end(self) -> Result<ResultsFile, StoreError> {
        let content = self.content();
        content.file.set_len(content.end).map_err(StoreError::disk("write", &self.path))?;
        drop(content);
        Ok(self)
    }

    /// Where it is.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Which study it is of.
    pub fn head(&self) -> &Head {
        &self.head
    }

    /// Chunks of its part that it has not.
    pub fn missing(&self) -> Vec<usize> {
        let content = self.content();
        self.head.own_chunks().filter(|chunk| !content.chunks.contains_key(chunk)).collect()
    }

    /// How many designs it has.
    pub fn designs(&self) -> usize {
        self.content().chunks.keys().map(|chunk| self.head.designs_of(*chunk).len()).sum()
    }

    /// Whether it has a chunk.
    pub fn has(&self, chunk: usize) -> bool {
        self.content().chunks.contains_key(&chunk)
    }

    /// Appends a chunk. A disk that is full leaves the file as it was.
    ///
    /// # Errors
    /// What the disk refuses.
    pub fn append(&self, chunk: &Chunk) -> Result<(), StoreError> {
        let bytes = chunk.encoded(&self.head.hash);
        let content = &mut *self.content();
        let begin = content.end;
        let file = &mut content.file;
        let written = file.seek(SeekFrom::Start(begin)).and_then(|_| file.write_all(&bytes));
        if let Err(error) = written {
            // Whatever stays is known as torn by its check.
            let _ = file.set_len(begin);
            return Err(StoreError::disk("write", &self.path)(error));
        }
        content.end += bytes.len() as u64;
        content.chunks.insert(chunk.place, begin);
        Ok(())
    }

    /// A chunk that it has.
    ///
    /// # Errors
    /// What the disk refuses, and [`StoreError::NoResults`] where the chunk is not there or not whole any more.
    pub fn chunk(&self, place: usize) -> Result<Chunk, StoreError> {
        let none = || StoreError::NoResults { path: self.path.clone() };
        let (head, bytes) = {
            let content = &mut *self.content();
            let begin = *content.chunks.get(&place).ok_or_else(none)?;
            content.bytes_at(begin).map_err(StoreError::disk("read", &self.path))?.ok_or_else(none)?
        };
        head.chunk(&bytes, (&self.head.hash, self.head.readings)).ok_or_else(none)
    }

    fn content(&self) -> MutexGuard<'_, Content> {
        self.content.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Content {
    /// Finds the whole chunks behind the head.
    fn find_chunks(&mut self, head: &Head) -> std::io::Result<()> {
        let length = self.file.metadata()?.len();
        let mut at = self.end;
        self.file.seek(SeekFrom::Start(at))?;
        let mut file = BufReader::with_capacity(1 << 20, &self.file);
        while let Some((own, bytes)) = next(&mut file, length - at)? {
            let next = at + (chunk::HEAD + own.length) as u64;
            let found = own.chunk(&bytes, (&head.hash, head.readings));
            let is_whole = |found: &Chunk| {
                own.place < head.chunks() && found.designs() == head.designs_of(own.place).len()
            };
            if found.filter(is_whole).is_some() {
                self.chunks.insert(own.place, at);
                self.end = next;
            }
            at = next;
        }
        Ok(())
    }

    fn bytes_at(&mut self, begin: u64) -> std::io::Result<Option<(ChunkHead, Vec<u8>)>> {
        let left = self.file.metadata()?.len().saturating_sub(begin);
        self.file.seek(SeekFrom::Start(begin))?;
        next(&mut self.file, left)
    }
}

/// The head that a file begins with, and where it ends; none where the file ends within the one that is wanted.
fn found_head(path: &Path, file: &File, wanted: &Head) -> Result<Option<(Head, u64)>, StoreError> {
    let mut begin = Vec::new();
    file.take(LONGEST).read_to_end(&mut begin).map_err(StoreError::disk("read", path))?;
    let path = path.to_owned();
    match Head::of(&begin) {
        None if wanted.text().as_bytes().starts_with(&begin) => Ok(None),
        None => Err(StoreError::NoResults { path }),
        Some((head, end)) => Ok(Some((head, end as u64))),
    }
}

/// The next chunk's head and content, where so many bytes are left; none where they are too few.
fn next(file: &mut impl Read, left: u64) -> std::io::Result<Option<(ChunkHead, Vec<u8>)>> {
    let mut head = [0; chunk::HEAD];
    let Some(left) = left.checked_sub(head.len() as u64) else { return Ok(None) };
    file.read_exact(&mut head)?;
    let Some(head) = ChunkHead::of(&head).filter(|head| head.length as u64 <= left) else { return Ok(None) };
    let mut bytes = vec![0; head.length];
    file.read_exact(&mut bytes)?;
    Ok(Some((head, bytes)))
}

/// Whether the lock was had; a file system that knows no locks gives none and is trusted.
fn held(path: &Path, lock: Result<(), TryLockError>) -> Result<(), StoreError> {
    match lock {
        Err(TryLockError::WouldBlock) => Err(StoreError::Busy { path: path.to_owned() }),
        _ => Ok(()),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)] // tests
mod tests {
    use super::*;
    use crate::store::Part;

    fn head(hash: &str) -> Head {
        Head {
            study: "invented".to_owned(),
            hash: hash.to_owned(),
            program: "0".to_owned(),
            designs: 10,
            chunk: 4,
            readings: 2,
            part: Part::WHOLE,
        }
    }

    fn chunk(place: usize) -> Chunk {
        let designs = head("a").designs_of(place);
        let readings = designs.flat_map(|design| [design as f64, 0.1 * design as f64]).collect();
        let reasons = vec![(1, "too thin".to_owned())];
        Chunk { place, width: 2, readings, reasons, warnings: Vec::new() }
    }

    #[test]
    fn a_file_cut_off_anywhere_is_gone_on_with() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("results");
        let file = ResultsFile::begin(&path, head("a"), Earlier::Refused).unwrap();
        [2, 0, 1].iter().for_each(|place| file.append(&chunk(*place)).unwrap());
        drop(file);
        let whole = std::fs::read(&path).unwrap();
        for cut in (0..whole.len()).rev() {
            std::fs::write(&path, &whole[..cut]).unwrap();
            let file = ResultsFile::begin(&path, head("a"), Earlier::Kept).unwrap();
            let missing = file.missing();
            assert!(!missing.is_empty());
            missing.iter().for_each(|place| file.append(&chunk(*place)).unwrap());
            assert!((0..3).all(|place| file.chunk(place).unwrap() == chunk(place)), "cut at {cut}");
        }
    }

    #[test]
    fn a_chunk_that_a_disk_has_spoilt_is_made_anew() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("results");
        let file = ResultsFile::begin(&path, head("a"), Earlier::Refused).unwrap();
        (0..3).for_each(|place| file.append(&chunk(place)).unwrap());
        drop(file);
        let mut bytes = std::fs::read(&path).unwrap();
        let middle = head("a").text().len() + chunk(0).encoded("a").len() + chunk::HEAD + 5;
        bytes[middle] ^= 1;
        std::fs::write(&path, bytes).unwrap();
        let file = ResultsFile::begin(&path, head("a"), Earlier::Kept).unwrap();
        assert_eq!(file.missing(), [1]);
    }

    #[test]
    fn what_is_there_is_refused_kept_or_dropped() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("results");
        let begin = |hash: &str, earlier| ResultsFile::begin(&path, head(hash), earlier);
        let file = begin("a", Earlier::Refused).unwrap();
        file.append(&chunk(1)).unwrap();
        assert!(matches!(begin("a", Earlier::Kept), Err(StoreError::Busy { .. })));
        drop(file);
        assert!(matches!(begin("a", Earlier::Refused), Err(StoreError::Unfinished { .. })));
        assert!(matches!(begin("b", Earlier::Kept), Err(StoreError::Foreign { .. })));
        assert_eq!(begin("a", Earlier::Kept).unwrap().missing(), [0, 2]);
        assert_eq!(begin("b", Earlier::Dropped).unwrap().missing(), [0, 1, 2]);
        std::fs::write(&path, "letters").unwrap();
        assert!(matches!(begin("a", Earlier::Kept), Err(StoreError::NoResults { .. })));
    }
}
