//! The equations of a riding axle in one basis.

use std::borrow::Cow;

use axlebow_fe::{DynamicSystem, FeError, ReducedBasis};

use crate::Sides;
use crate::riding::ride_basis;
use crate::riding::ride_readings::Readings;
use crate::riding::ride_split::SplitReadings;

/// The equations in one basis, and how results are read from their motion.
#[derive(Debug)]
pub(crate) struct Moving {
    pub system: DynamicSystem,
    pub readings: Readings,
    pub splits: Sides<SplitReadings>,
    /// Shapes of a reduced basis; none where every freedom moves by itself.
    pub shapes: Option<ReducedBasis>,
}

impl Moving {
    /// Motion of all freedoms.
    pub(crate) fn all_freedoms<'m>(&self, motion: &'m [f64]) -> Cow<'m, [f64]> {
        match &self.shapes {
            Some(shapes) => shapes.motion(motion).into(),
            None => motion.into(),
        }
    }

    /// The same in a reduced basis.
    pub(crate) fn reduced(&self) -> Result<Moving, FeError> {
        let shapes = ride_basis::shapes(&self.system)?;
        let (system, readings) = (shapes.reduced(&self.system)?, self.readings.over(&shapes));
        let splits = Sides::each(|side| self.splits.of(side).over(&shapes));
        Ok(Moving { system, readings, splits, shapes: Some(shapes) })
    }
}
