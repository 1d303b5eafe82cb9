//! What the section of a span is.

use std::cmp::Ordering;

use axlebow_sections::{Profile, taper};

use crate::error::{BeamError, Part};

/// What a planar beam needs to know of its section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionValues {
    /// Area A (m²); only shear and mass need it.
    pub area: Option<f64>,
    /// Second moment of area I about X (m⁴).
    pub second_moment: f64,
    /// Share of the area that carries shear.
    pub shear_coefficient: f64,
    /// Distance of the top and the bottom fiber from the centroid (m); none where stress is not asked for.
    pub fibers: Option<[f64; 2]>,
}

/// The section along a span.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SpanSection {
    /// The same all along.
    Uniform(SectionValues),
    /// Every dimension goes evenly from that at the start to that at the end.
    Tapered {
        /// At the start.
        start: Profile,
        /// At the end, of the same kind.
        end: Profile,
    },
}

impl SectionValues {
    /// Those of a profile; its shear coefficient depends on Poisson's ratio.
    pub fn of_profile(profile: &Profile, poisson_ratio: f64) -> Self {
        let properties = profile.properties(poisson_ratio);
        Self {
            area: Some(properties.area),
            second_moment: properties.second_moment_x,
            shear_coefficient: properties.shear_coefficient_z,
            fibers: Some([0.5 * properties.height; 2]),
        }
    }

    /// Largest bending stress of a moment, M c/I (Pa, tension positive), c that of the farther fiber; of two equal ones
    /// the tension.
    pub fn bending_stress(&self, moment: f64) -> Option<f64> {
        let [top, bottom] = self.fibers?;
        let gradient = moment / self.second_moment;
        Some(match top.total_cmp(&bottom) {
            Ordering::Greater => -gradient * top,
            Ordering::Less => gradient * bottom,
            Ordering::Equal => gradient.abs() * top,
        })
    }

    fn check(&self, part: Part) -> Result<(), BeamError> {
        let positive = |thing, value: f64, unit| {
            if value > 0.0 && value.is_finite() {
                return Ok(());
            }
            Err(BeamError::Value { part, thing, value, unit, accepted: "a finite number above 0" })
        };
        positive("second moment of area", self.second_moment, "m4")?;
        positive("shear coefficient", self.shear_coefficient, "")?;
        self.area.map_or(Ok(()), |area| positive("area", area, "m2"))?;
        let mut fibers = self.fibers.into_iter().flatten();
        fibers.try_for_each(|fiber| positive("distance of a fiber from the centroid", fiber, "m"))
    }
}

impl SpanSection {
    /// The values at a share 0 (start) to 1 (end) of the span.
    pub fn at(&self, share: f64, poisson_ratio: f64) -> SectionValues {
        match self {
            Self::Uniform(values) => *values,
            Self::Tapered { start, end } => {
                let profile = taper(start, end, share.clamp(0.0, 1.0)).unwrap_or(*start);
                SectionValues::of_profile(&profile, poisson_ratio)
            }
        }
    }

    /// Whether it is the same all along.
    pub fn is_uniform(&self) -> bool {
        matches!(self, Self::Uniform(_))
    }

    /// Whether there is such a section.
    ///
    /// # Errors
    /// [`BeamError::Value`]; [`BeamError::Section`] for a taper between unlike profiles.
    pub(crate) fn check(&self, part: Part) -> Result<(), BeamError> {
        match self {
            Self::Uniform(values) => values.check(part),
            Self::Tapered { start, end } => {
                taper(start, end, 0.5).map(|_| ()).map_err(|reason| BeamError::Section { part, reason })
            }
        }
    }
}
