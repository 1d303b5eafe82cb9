//! What loads a beam, and what is mounted on it.

use crate::error::{BeamError, Part};

/// A load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Load {
    /// A force at a place.
    Force {
        /// Where (m).
        at: f64,
        /// Upward force (N).
        force: f64,
    },
    /// A moment at a place.
    Moment {
        /// Where (m).
        at: f64,
        /// Moment (N m), positive where it turns the beam so that it rises with Y.
        moment: f64,
    },
    /// A load per length that goes evenly from one value to another.
    Distributed {
        /// Start (m).
        from: f64,
        /// End (m).
        to: f64,
        /// Upward load per length at the start (N/m).
        start: f64,
        /// The same at the end (N/m).
        end: f64,
    },
    /// A temperature difference through the depth, which bends a free beam to a curvature α ΔT/h.
    Thermal {
        /// Start (m).
        from: f64,
        /// End (m).
        to: f64,
        /// Free curvature (1/m), positive (ends up) where the bottom is the hotter.
        curvature: f64,
    },
    /// The beam's own weight.
    Weight {
        /// Acceleration of gravity, downward (m/s²).
        gravity: f64,
    },
}

/// A mass on the beam.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PointMass {
    /// Where (m).
    pub at: f64,
    /// Mass (kg).
    pub mass: f64,
    /// Mass moment of inertia about X (kg m²).
    pub inertia: f64,
}

impl Load {
    /// Places where it begins, acts or ends.
    pub(crate) fn places(&self) -> Vec<f64> {
        match *self {
            Self::Force { at, .. } | Self::Moment { at, .. } => vec![at],
            Self::Distributed { from, to, .. } | Self::Thermal { from, to, .. } => vec![from, to],
            Self::Weight { .. } => Vec::new(),
        }
    }

    pub(crate) fn check(&self, number: usize) -> Result<(), BeamError> {
        let part = Part::Load(number);
        let finite = |thing, value: f64, unit| {
            if value.is_finite() {
                return Ok(());
            }
            Err(BeamError::Value { part, thing, value, unit, accepted: "a finite number" })
        };
        let forward = |from: f64, to: f64| {
            if to > from { Ok(()) } else { Err(BeamError::Backward { part, from, to }) }
        };
        match *self {
            Self::Force { force, .. } => finite("force", force, "N"),
            Self::Moment { moment, .. } => finite("moment", moment, "N m"),
            Self::Distributed { from, to, start, end } => {
                finite("load per length", start, "N/m").and(finite("load per length", end, "N/m"))?;
                forward(from, to)
            }
            Self::Thermal { from, to, curvature } => {
                finite("free curvature", curvature, "1/m")?;
                forward(from, to)
            }
            Self::Weight { gravity } => finite("gravity", gravity, "m/s2"),
        }
    }
}

impl PointMass {
    pub(crate) fn check(&self, number: usize) -> Result<(), BeamError> {
        let part = Part::Mass(number);
        let check = |thing, value: f64, unit| {
            if value.is_finite() && value >= 0.0 {
                return Ok(());
            }
            Err(BeamError::Value { part, thing, value, unit, accepted: "0 or a finite number above 0" })
        };
        check("mass", self.mass, "kg").and(check("moment of inertia", self.inertia, "kg m2"))
    }
}
