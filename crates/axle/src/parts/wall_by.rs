//! Where the local flexibility of the wall at a seat comes from.

/// Where the local flexibility of the wall at a seat comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WallBy {
    /// A value.
    Given,
    /// Published formulas for joints of tubes, extrapolated.
    Formula,
    /// Shells of the wall under a rigid bracket, which also say how far the seat stiffens its length.
    Shell,
    /// Shells of the wall under a bracket that spreads its force.
    ShellSpread,
}

impl WallBy {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            WallBy::Given => "given",
            WallBy::Formula => "formula",
            WallBy::Shell => "shell",
            WallBy::ShellSpread => "shell-spread",
        }
    }

    /// Whether shells of the wall are solved.
    pub fn is_shell(self) -> bool {
        matches!(self, WallBy::Shell | WallBy::ShellSpread)
    }
}
