//! Static flex: bow, slope, camber and toe change, moment and stress along the axle.

use crate::assembly::preheat::preheats;
use crate::outcome::{CaseOutcome, FlexOutcome};
use crate::parts::load_case::LoadCase;
use crate::statics::stiffening::add_stiffening;
use crate::statics::warnings;
use crate::{Axle, AxleError, StaticDesign};

/// Solves every case of an axle.
///
/// # Errors
/// [`AxleError::LoadBelowWeight`], [`AxleError::NoEquilibrium`], or [`AxleError::Fe`] when nothing holds the
/// axle somewhere.
pub fn flex(axle: &Axle, cases: &[LoadCase]) -> Result<FlexOutcome, AxleError> {
    let design = StaticDesign::of(axle)?;
    let mut outcomes: Vec<CaseOutcome> =
        cases.iter().map(|case| design.case(case)).collect::<Result<_, _>>()?;
    add_stiffening(&design, cases, &mut outcomes)?;
    let walls = design.frame.walls.clone();
    let of_walls = warnings::of_walls(&walls);
    let warnings = warnings::warnings(axle, &outcomes).into_iter().chain(of_walls).collect();
    let (axle_mass, unsprung_mass) = (axle.mass(), axle.unsprung_mass());
    let preheat = if axle.stiffeners.is_empty() { Vec::new() } else { preheats(axle)? };
    Ok(FlexOutcome { axle_mass, unsprung_mass, walls, cases: outcomes, preheat, warnings })
}
