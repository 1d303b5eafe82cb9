//! What a name in an expression stands for.

/// A number of a design that an expression names.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Named {
    /// The value of a varied key, by its place in [`Study::varied`](crate::Study::varied).
    Varied(usize),
    /// A result, by its name and the place of its ride.
    Result(&'static str, Option<usize>),
    /// A derived result, by its place in [`Study::derived`](crate::Study::derived).
    Derived(usize),
}
