//! What a rating says.

use axlebow_axle::{CheckedPart, NotMade, StrengthOptions, Warning};

/// Result of [`crate::rating`].
#[derive(Debug, Clone, PartialEq)]
pub struct RatingOutcome {
    /// Load that the model says the axle is rated for, N.
    pub stated_load: f64,
    /// Offset of the model's wheels, m outboard.
    pub own_offset: f64,
    /// What strength was asked for.
    pub ask: StrengthOptions,
    /// Name of the duty, and years until 5 % of the details that crack first may have a crack; none where it was not asked.
    pub lasting: Option<(String, f64)>,
    /// A point for each offset, the innermost first; the model's own is among them.
    pub points: Vec<RatingPoint>,
    /// Checks that could not be made; no load is limited by them.
    pub not_made: Vec<NotMade>,
    /// Things that the reader must know, each with what to do.
    pub warnings: Vec<Warning>,
}

/// The rating at one offset.
#[derive(Debug, Clone, PartialEq)]
pub struct RatingPoint {
    /// Tire center outboard of the mounting face, m; negative for inset.
    pub offset: f64,
    /// Axle load at which the first check binds, N; none where none binds, or where one is past its limit at any load.
    pub load: Option<f64>,
    /// The check that binds first, or is past its limit at any load.
    pub limiter: Option<Limiter>,
    /// The same for each part by itself.
    pub parts: Vec<PartLoad>,
    /// Why there is no rating; none where there is.
    pub reason: Option<String>,
}

/// The axle load at which the first check of a part binds.
#[derive(Debug, Clone, PartialEq)]
pub struct PartLoad {
    /// The part.
    pub part: CheckedPart,
    /// N; none where none binds, or one is past its limit at any load.
    pub load: Option<f64>,
    /// The check that binds, or is past its limit at any load; none where none binds.
    pub limiter: Option<Limiter>,
}

/// A check that binds.
#[derive(Debug, Clone, PartialEq)]
pub struct Limiter {
    /// What it is made of.
    pub part: CheckedPart,
    /// What is checked.
    pub what: String,
    /// Where.
    pub place: String,
    /// Load case; none for a wall or a bearing.
    pub case: Option<String>,
    /// What to do about it.
    pub advice: &'static str,
}

impl RatingOutcome {
    /// The point of the model's own offset.
    pub fn own(&self) -> Option<&RatingPoint> {
        self.at(self.own_offset)
    }

    /// The point of an offset, m.
    pub fn at(&self, offset: f64) -> Option<&RatingPoint> {
        self.points.iter().find(|point| point.offset == offset)
    }

    /// The parts that have a load at any offset, in the order of tables.
    pub fn parts(&self) -> Vec<CheckedPart> {
        let has = |part: &CheckedPart| {
            self.points
                .iter()
                .flat_map(|point| &point.parts)
                .any(|own| own.part == *part && own.load.is_some())
        };
        CheckedPart::ALL.into_iter().filter(has).collect()
    }
}

impl RatingPoint {
    /// The load of a part, N.
    pub fn load_of(&self, part: CheckedPart) -> Option<f64> {
        self.parts.iter().find(|own| own.part == part)?.load
    }
}
