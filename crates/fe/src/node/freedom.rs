//! The six freedoms of a node.

/// A freedom of a node, in the order in which they are stored.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Freedom {
    /// Displacement along X.
    Ux,
    /// Displacement along Y.
    Uy,
    /// Displacement along Z.
    Uz,
    /// Rotation about X.
    Rx,
    /// Rotation about Y.
    Ry,
    /// Rotation about Z.
    Rz,
}

impl Freedom {
    /// All six, in storage order.
    pub const ALL: [Freedom; 6] =
        [Freedom::Ux, Freedom::Uy, Freedom::Uz, Freedom::Rx, Freedom::Ry, Freedom::Rz];

    /// Place in a node's six values, 0 to 5.
    pub fn index(self) -> usize {
        self as usize
    }

    /// What it is, in words for a message.
    pub fn words(self) -> &'static str {
        match self {
            Freedom::Ux => "displacement along X",
            Freedom::Uy => "displacement along Y",
            Freedom::Uz => "displacement along Z",
            Freedom::Rx => "rotation about X",
            Freedom::Ry => "rotation about Y",
            Freedom::Rz => "rotation about Z",
        }
    }
}
