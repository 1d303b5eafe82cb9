//! Stretches of the axle with the same stiffeners.

use axlebow_axle::{Axle, AxleError, LoadCase, StiffenedStretch, StretchStress};

/// A stretch of the axle with the same stiffeners, for tables and drawings.
#[derive(Debug, Clone, PartialEq)]
pub struct StiffenedCard {
    /// What is welded on.
    pub stretch: StiffenedStretch,
    /// Stress where the stretch is bent most, if a load case is asked for.
    pub stress: Option<SectionStress>,
}

/// Normal stress in a section under a load case.
#[derive(Debug, Clone, PartialEq)]
pub struct SectionStress {
    /// Name of the load case.
    pub case: String,
    /// Where, and in which parts.
    pub own: StretchStress,
}

impl StiffenedCard {
    /// Every stretch of an axle with stiffeners, with its stress in a load case.
    ///
    /// # Errors
    /// A stiffener that does not sit on the axle, or a load case without a solution.
    pub fn all_of(axle: &Axle, case: Option<&LoadCase>) -> Result<Vec<StiffenedCard>, AxleError> {
        let card = |stretch: StiffenedStretch| {
            let stress = |case: &LoadCase| {
                let own = stretch.stress(axle, case)?;
                Ok::<_, AxleError>(own.map(|own| SectionStress { case: case.name.clone(), own }))
            };
            let stress = case.map(stress).transpose()?.flatten();
            Ok(StiffenedCard { stretch, stress })
        };
        axle.stiffened_stretches()?.into_iter().map(card).collect()
    }

    /// Names of what is welded on, as in "tube + top angle".
    pub fn name(&self) -> String {
        let parts = self.stretch.section.composite.parts();
        parts.iter().map(|part| part.name.as_str()).collect::<Vec<_>>().join(" + ")
    }

    /// Stress at the corners of a part, Pa, with their places (x, z), and on its arcs where it is lowest and highest;
    /// none without such a part or a load case.
    pub fn corner_stresses(&self, part: usize) -> Option<Vec<([f64; 2], f64)>> {
        let field = self.stress.as_ref()?.own.fields.get(part)?;
        let corners = self.stretch.section.composite.parts().get(part)?.outline.corner_places();
        let mut points: Vec<_> = corners.into_iter().map(|place| (place, field.at(place))).collect();
        points.extend(self.extremes(part)?);
        points.dedup();
        Some(points)
    }

    /// Lowest and highest stress in a part, Pa, with the places (x, z) where they act; none without such a part or
    /// a load case.
    pub fn extremes(&self, part: usize) -> Option<[([f64; 2], f64); 2]> {
        let outline = &self.stretch.section.composite.parts().get(part)?.outline;
        let field = self.stress.as_ref()?.own.fields.get(part)?;
        let end = |side: f64| {
            let place = outline.farthest_place([side * field.gradient_x, side * field.gradient_z]);
            (place, field.at(place))
        };
        Some([end(-1.0), end(1.0)])
    }
}
