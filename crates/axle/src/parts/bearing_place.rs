//! The two bearings of a wheel end.

/// Place of a bearing on its spindle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum BearingPlace {
    /// Next to the tube.
    Inner,
    /// Next to the spindle's end.
    Outer,
}

impl BearingPlace {
    pub(crate) const BOTH: [BearingPlace; 2] = [BearingPlace::Inner, BearingPlace::Outer];

    /// The trade's word.
    pub(crate) fn word(self) -> &'static str {
        match self {
            BearingPlace::Inner => "inner",
            BearingPlace::Outer => "outer",
        }
    }
}

/// One value for each bearing of a wheel end.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Pair<T> {
    pub inner: T,
    pub outer: T,
}

impl<T> Pair<T> {
    pub(crate) fn of(&self, place: BearingPlace) -> &T {
        match place {
            BearingPlace::Inner => &self.inner,
            BearingPlace::Outer => &self.outer,
        }
    }

    pub(crate) fn of_mut(&mut self, place: BearingPlace) -> &mut T {
        match place {
            BearingPlace::Inner => &mut self.inner,
            BearingPlace::Outer => &mut self.outer,
        }
    }
}
