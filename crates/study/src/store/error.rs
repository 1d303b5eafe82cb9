//! Why results could not be saved or read.

use std::path::PathBuf;

use super::part::Part;

/// Why results could not be saved or read.
#[non_exhaustive]
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// The disk refuses.
    #[error("cannot {what} {}: {error}", path.display())]
    Disk {
        /// What was asked of it.
        what: &'static str,
        /// The file.
        path: PathBuf,
        /// What the system says.
        error: std::io::Error,
    },
    /// Results are there, and nobody said what becomes of them.
    #[error("{} holds results of a run that did not end", path.display())]
    Unfinished {
        /// The file.
        path: PathBuf,
    },
    /// Another process is at work on the same results.
    #[error("another run is at work on {}", path.display())]
    Busy {
        /// The file.
        path: PathBuf,
    },
    /// A file that holds no results.
    #[error("{} holds no results of a study", path.display())]
    NoResults {
        /// The file.
        path: PathBuf,
    },
    /// Results of something else.
    #[error("{} holds results of another study: {why}", path.display())]
    Foreign {
        /// The file.
        path: PathBuf,
        /// What differs.
        why: String,
    },
    /// A file whose first lines are not as they were written.
    #[error("{} is damaged: it says `{line}` where `{due}` was written", path.display())]
    Damaged {
        /// The file.
        path: PathBuf,
        /// A line of it.
        line: String,
        /// What the line was.
        due: String,
    },
    /// Results that no file has.
    #[error("results of {designs} of {of} designs are missing")]
    Missing {
        /// Parts that make them.
        parts: Vec<Part>,
        /// Designs that are missing.
        designs: usize,
        /// Designs of the study.
        of: usize,
    },
    /// A part that cannot be.
    #[error("part {text:?}: accepted: K/N with K from 1 to N, such as 2/8, N at most {most}")]
    NoPart {
        /// What was written.
        text: String,
        /// Most parts.
        most: usize,
    },
}

impl StoreError {
    /// Names what was asked of the disk, and where.
    pub(crate) fn disk(
        what: &'static str,
        path: &std::path::Path,
    ) -> impl FnOnce(std::io::Error) -> StoreError {
        let path = path.to_owned();
        move |error| StoreError::Disk { what, path, error }
    }
}
