//! Where along the axle which stiffeners are welded on.

use axlebow_sections::StressField;

use crate::assembly::stations::merged_positions;
use crate::mesh::stressed_section::StressedMember;
use crate::parts::stiffener::Stiffener;
use crate::sections::seated_section::section_with;
use crate::sections::stiffened::StiffenedSection;
use crate::statics::along::cut_through;
use crate::statics::static_design::StaticDesign;
use crate::{Axle, AxleError, LoadCase};

/// A length of axle with the same stiffeners from end to end.
#[derive(Debug, Clone, PartialEq)]
pub struct StiffenedStretch {
    /// Its right end, m; positive to the left.
    pub from: f64,
    /// Its left end, m.
    pub to: f64,
    /// Names of its stiffeners.
    pub stiffeners: Vec<String>,
    /// Section in its middle, the stiffeners whole.
    pub section: StiffenedSection,
}

/// Normal stress in a stretch where it is bent most.
#[derive(Debug, Clone, PartialEq)]
pub struct StretchStress {
    /// Position, m.
    pub y: f64,
    /// Stress of each part: the axle, then its stiffeners as their welds tie them.
    pub fields: Vec<StressField>,
}

impl StiffenedStretch {
    /// Stress in a load case of its axle; none where no station divides the stretch.
    ///
    /// # Errors
    /// As [`StaticDesign::case`].
    pub fn stress(&self, axle: &Axle, case: &LoadCase) -> Result<Option<StretchStress>, AxleError> {
        let design = StaticDesign::of(axle)?;
        let (_, state) = design.loaded(case)?;
        let inside = |y: f64| self.from < y && y < self.to;
        let own = design.frame.stretches.iter().filter(|one| inside(0.5 * (one.start_y + one.end_y)));
        let ends = own.flat_map(|stretch| [(stretch, stretch.start_y), (stretch, stretch.end_y)]);
        let bent = ends.map(|(stretch, y)| {
            let force = |beam| state.beam_forces(beam).at(y - stretch.start_y);
            let whole = cut_through(axle, stretch, y, force).whole;
            let members = StressedMember::each(axle, stretch, y);
            let fields = members.map(|member| member.field(&force(member.line.beam))).collect();
            (whole.moment_x.hypot(whole.moment_z), StretchStress { y, fields })
        });
        Ok(bent.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, stress)| stress))
    }
}

impl Axle {
    /// The stretches that have stiffeners, from right to left.
    ///
    /// # Errors
    /// As [`Stiffener::on`]; none for an axle that is [checked](Axle::checked).
    pub fn stiffened_stretches(&self) -> Result<Vec<StiffenedStretch>, AxleError> {
        let ends = self.stiffeners.iter().flat_map(|one| [one.from, one.to]);
        let changes = self.body.pieces().iter().flat_map(|piece| [piece.from, piece.to]);
        let tapers = changes.filter(|y| *y > 0.0).flat_map(|y| [y, -y]);
        let places = merged_positions(ends.chain(tapers));
        let stretches = places.windows(2).filter_map(|pair| self.stretch(pair[0], pair[1]).transpose());
        stretches.collect()
    }

    fn stretch(&self, from: f64, to: f64) -> Result<Option<StiffenedStretch>, AxleError> {
        let middle = 0.5 * (from + to);
        let there: Vec<(&Stiffener, f64)> = self
            .stiffeners
            .iter()
            .filter(|one| one.from < middle && middle < one.to)
            .map(|one| (one, 1.0))
            .collect();
        if there.is_empty() {
            return Ok(None);
        }
        let section = section_with(&self.body, middle, &there)?;
        let stiffeners = there.iter().map(|(one, _)| one.name.clone()).collect();
        Ok(Some(StiffenedStretch { from, to, stiffeners, section }))
    }
}
