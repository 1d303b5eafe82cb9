//! Head of a file of results: which study it is of.

use std::path::Path;

use super::error::StoreError;
use super::part::Part;

/// First line; its number grows when what follows changes its meaning.
const FIRST: &str = "axlebow results 2";
/// Longest head that is read, bytes.
pub(super) const LONGEST: u64 = 1 << 16;

/// Which study a file of results is of.
#[derive(Debug, Clone, PartialEq)]
pub struct Head {
    /// Name of the study.
    pub study: String,
    /// Hash of all that its results depend on.
    pub hash: String,
    /// Version and build of axlebow.
    pub program: String,
    /// Designs of the whole study.
    pub designs: usize,
    /// Designs of a chunk; the last one may have fewer.
    pub chunk: usize,
    /// Readings of a design.
    pub readings: usize,
    /// Which part of the study the file has.
    pub part: Part,
}

impl Head {
    /// Chunks of the whole study.
    pub fn chunks(&self) -> usize {
        self.designs.div_ceil(self.chunk)
    }

    /// The designs of a chunk, by their places in the study.
    pub fn designs_of(&self, chunk: usize) -> std::ops::Range<usize> {
        let first = chunk * self.chunk;
        first.min(self.designs)..(first + self.chunk).min(self.designs)
    }

    /// Chunks of its part.
    pub fn own_chunks(&self) -> impl Iterator<Item = usize> {
        (0..self.chunks()).filter(|chunk| self.part.has(*chunk))
    }

    /// How many designs its part has.
    pub fn own_designs(&self) -> usize {
        self.own_chunks().map(|chunk| self.designs_of(chunk).len()).sum()
    }

    /// Lines that a person can read, ended by an empty one.
    pub(super) fn text(&self) -> String {
        let Head { hash, program, designs, chunk, readings, part, .. } = self;
        let study = self.study.replace(char::is_control, " ");
        format!(
            "{FIRST}\nstudy {study}\nhash {hash}\nprogram {program}\ndesigns {designs}\nchunk {chunk}\nreadings \
             {readings}\npart {part}\n\n"
        )
    }

    /// The head that a file begins with, and its length in bytes; `None` where it does not begin with one.
    pub(super) fn of(bytes: &[u8]) -> Option<(Head, usize)> {
        let length = bytes.windows(2).position(|pair| pair == b"\n\n")? + 2;
        let mut lines = std::str::from_utf8(&bytes[..length]).ok()?.lines();
        if lines.next()? != FIRST {
            return None;
        }
        let mut value = |key: &str| lines.next()?.strip_prefix(key)?.strip_prefix(' ').map(str::to_owned);
        let head = Head {
            study: value("study")?,
            hash: value("hash")?,
            program: value("program")?,
            designs: value("designs")?.parse().ok()?,
            chunk: value("chunk")?.parse().ok().filter(|chunk| *chunk > 0)?,
            readings: value("readings")?.parse().ok()?,
            part: value("part")?.parse().ok()?,
        };
        Some((head, length))
    }

    /// Refuses the head that a file begins with unless it is this one in every line.
    pub(super) fn check(&self, found: &Head, path: &Path) -> Result<(), StoreError> {
        let path = path.to_owned();
        let (own, other) = (self.text(), found.text());
        let mut lines = other.lines().zip(own.lines());
        match lines.find(|(other, own)| other != own) {
            None => Ok(()),
            // The hash is of all the other lines, so that one of them is not as it was written.
            Some((other, own)) if self.hash == found.hash && self.part == found.part => {
                Err(StoreError::Damaged { path, line: other.to_owned(), due: own.to_owned() })
            }
            Some(_) => Err(StoreError::Foreign { path, why: self.difference(found) }),
        }
    }

    /// How another head's study or part is not this one.
    fn difference(&self, other: &Head) -> String {
        let named = |head: &Head| head.study.replace(char::is_control, " ");
        if self.hash == other.hash {
            format!("part {}, and this is part {}", other.part, self.part)
        } else if named(self) != named(other) {
            format!("{:?}, and this one is {:?}", named(other), named(self))
        } else if self.program != other.program {
            format!("made by axlebow {}, and this is {}", other.program, self.program)
        } else if (self.designs, self.readings) != (other.designs, other.readings) {
            format!(
                "{} designs of {} results, and this one has {} of {}",
                other.designs, other.readings, self.designs, self.readings
            )
        } else {
            "the study file or a file that it points to has changed since".to_owned()
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)] // tests
mod tests {
    use super::*;

    fn head() -> Head {
        Head {
            study: "wall against diameter".to_owned(),
            hash: "12ab".to_owned(),
            program: "0.1.0".to_owned(),
            designs: 2500,
            chunk: 1000,
            readings: 7,
            part: "2/3".parse().unwrap(),
        }
    }

    #[test]
    fn a_head_is_read_as_it_was_written() {
        let text = head().text() + "more\n\n";
        assert_eq!(Head::of(text.as_bytes()).unwrap(), (head(), text.len() - 6));
        for cut in 0..text.len() - 6 {
            assert!(Head::of(&text.as_bytes()[..cut]).is_none(), "{cut}");
        }
        assert!(Head::of(b"another file\n\n").is_none());
    }

    #[test]
    fn the_last_chunk_may_be_short() {
        let designs: Vec<_> = (0..head().chunks()).map(|chunk| head().designs_of(chunk)).collect();
        assert_eq!(designs, [0..1000, 1000..2000, 2000..2500]);
        assert_eq!(head().own_chunks().collect::<Vec<_>>(), [1]);
    }

    #[test]
    fn what_differs_is_said() {
        let other = |hash: &str| Head { hash: hash.to_owned(), ..head() };
        assert!(head().difference(&other("9")).contains("has changed since"));
        let fewer = Head { designs: 3, ..other("9") };
        assert!(head().difference(&fewer).starts_with("3 designs"));
        let named = Head { study: "another\none".to_owned(), ..other("9") };
        assert!(head().difference(&named).starts_with("\"another one\""));
    }

    #[test]
    fn a_head_is_the_same_in_every_line_or_refused() {
        let check = |found: &Head| head().check(found, Path::new("out.csv.work"));
        assert!(check(&head()).is_ok());
        let damaged = [
            Head { chunk: 2000, ..head() },
            Head { designs: usize::MAX, ..head() },
            Head { readings: 8, ..head() },
            Head { program: "0.2.0".to_owned(), ..head() },
            Head { study: "wall against width".to_owned(), ..head() },
        ];
        for found in damaged {
            assert!(matches!(check(&found), Err(StoreError::Damaged { .. })), "{found:?}");
        }
        let text = check(&Head { chunk: 2000, ..head() }).unwrap_err().to_string();
        assert_eq!(text, "out.csv.work is damaged: it says `chunk 2000` where `chunk 1000` was written");
        let other = Head { part: "1/3".parse().unwrap(), ..head() };
        assert!(check(&other).unwrap_err().to_string().contains("part 1/3, and this is part 2/3"));
    }
}
