//! Solves static cases of many axles one after another.

use axlebow_fe::StaticSystem;

use super::chain::{Chain, is_reached};
use super::seated_chain::SeatedChain;
use crate::outcome::static_readings::StaticReadings;
use crate::outcome::stiffening_outcome::WeldForce;
use crate::statics::stiffening::weld_peaks;
use crate::{Axle, AxleError, LoadCase, StaticDesign};

/// Solves static cases of axles that differ in loads, tires, wheels and the stiffness of bearings at most: places, what bends
/// between them and the seats are one line, which is solved once. A [new line](Self::new_line) is said so.
#[derive(Debug, Default)]
pub struct StaticSolver {
    /// Storage of the elements' equations.
    system: StaticSystem,
    /// That line, once forces have solved it.
    seated: Option<SeatedChain>,
}

impl StaticSolver {
    /// Forgets the line: that of the axles that follow is another one.
    pub fn new_line(&mut self) {
        self.seated = None;
    }

    /// Solves one case of an axle: by forces where that reaches, else by finite elements.
    ///
    /// # Errors
    /// As [`StaticDesign::of`] and [`StaticDesign::case`].
    pub fn readings(&mut self, axle: &Axle, case: &LoadCase) -> Result<StaticReadings, AxleError> {
        if !is_reached(axle) {
            return self.by_elements(axle, case);
        }
        if self.seated.is_none()
            && let Some(chain) = Chain::of(axle)?
        {
            self.seated = SeatedChain::of(axle, chain)?;
        }
        match &mut self.seated {
            Some(seated) => seated.readings(axle, case),
            None => self.by_elements(axle, case),
        }
    }

    fn by_elements(&mut self, axle: &Axle, case: &LoadCase) -> Result<StaticReadings, AxleError> {
        let design = StaticDesign::with_system(axle, &mut self.system)?;
        let (_, state) = design.loaded(case)?;
        let weld_peak = weld_peaks(&design, &state).iter().map(WeldForce::magnitude).reduce(f64::max);
        Ok(StaticReadings { weld_peak, ..StaticReadings::from(&design.case(case)?) })
    }
}

impl StaticReadings {
    /// Solves one case of one axle.
    ///
    /// # Errors
    /// As [`StaticDesign::of`] and [`StaticDesign::case`].
    pub fn of(axle: &Axle, case: &LoadCase) -> Result<Self, AxleError> {
        StaticSolver::default().readings(axle, case)
    }
}
