//! Why a key could not be found or set by its path.

/// Why a key could not be found or set by its path.
#[non_exhaustive]
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ModelError {
    /// The path is not keys joined by points, with `[n]` or `[name]` after a list.
    #[error(
        "`{path}` is not a path; accepted: keys joined by points, such as `tube.wall`, `seat[0].width` or \
         `stiffener[top angle].length`"
    )]
    BadPath {
        /// The path.
        path: String,
    },
    /// The path leads to a key that does not exist.
    #[error("`{path}` leads nowhere: {name} has no key `{key}`; accepted: {accepted}{}", .likely.as_ref().map_or(String::new(), |l| format!("; did you mean `{l}`?")))]
    UnknownKey {
        /// The path.
        path: String,
        /// The table that was looked in.
        name: String,
        /// The key that it does not have.
        key: String,
        /// The keys that it has.
        accepted: String,
        /// The key that was likely meant.
        likely: Option<String>,
    },
    /// The path names an entry that the list does not have.
    #[error("`{path}` leads nowhere: no {key} has that name; accepted: {accepted}{}", .likely.as_ref().map_or(String::new(), |l| format!("; did you mean `{l}`?")))]
    NoSuchEntry {
        /// The path.
        path: String,
        /// The list that was looked in.
        key: String,
        /// The names that entries have.
        accepted: String,
        /// The name that was likely meant.
        likely: Option<String>,
    },
    /// The path leaves out which entry of a list is meant.
    #[error("`{path}` does not say which `{key}` is meant, and the file has {count}; accepted: {accepted}")]
    WhichEntry {
        /// The path.
        path: String,
        /// The list.
        key: String,
        /// Count of its entries.
        count: usize,
        /// The path with each of them.
        accepted: String,
    },
    /// The key exists, but the file does not have it.
    #[error("the file has nothing at `{path}`")]
    Absent {
        /// The path up to what is not there.
        path: String,
    },
    /// The path ends at a table or list where one value is wanted.
    #[error("`{path}` is a table or a list; accepted: one value, such as `tube.wall` or `seat[0].width`")]
    NotOneValue {
        /// The path.
        path: String,
    },
    /// A road of a duty cannot be made.
    #[error("the duty cannot be driven: {reason}")]
    Duty {
        /// Why.
        reason: String,
    },
    /// The value is not accepted.
    #[error("{message}{}", .accepted.as_ref().map_or(String::new(), |a| format!("; accepted: {a}")))]
    Refused {
        /// The path.
        path: String,
        /// What is wrong.
        message: String,
        /// What is accepted.
        accepted: Option<String>,
        /// What was likely meant.
        likely: Option<String>,
    },
}
