//! What a study asks of every design, and designs solved for it.

use crate::ask::{Point, Study, StudyKind};
use crate::findings::{Row, SolvedDesign};
use crate::solve::{Beside, Columns, Design, Solver, Solvers};

/// What a study asks of every design.
#[derive(Debug)]
pub(crate) struct Asked {
    pub columns: Columns,
    pub solvers: Solvers,
    /// Side by side, what all designs are compared with.
    baseline: Option<Beside>,
}

impl Study {
    /// What is asked of every design.
    pub(crate) fn asked(&self) -> Asked {
        Asked { columns: Columns::of(self), baseline: self.baseline(), solvers: Solvers::default() }
    }

    /// Side by side, the design that all are compared with, if it has a result.
    fn baseline(&self) -> Option<Beside> {
        let StudyKind::SideBySide { baseline } = self.kind else { return None };
        let point = Point { variant: baseline, values: Vec::new() };
        let design = self.standing(&point, &mut Solver::default()).ok()?;
        Some(Beside { axle_mass: design.axle_mass, camber_change: design.camber_change })
    }

    /// Solves designs of one axle.
    pub(crate) fn solve(&self, points: &[Point], asked: &Asked, solver: &mut Solver) -> Vec<SolvedDesign> {
        let results = self.designs(points, solver).into_iter();
        let solved = |(point, result): (&Point, Result<Design, String>)| {
            let mut warnings = result.as_ref().map_or(Vec::new(), |design| design.warnings(self));
            let result = result.map(|design| asked.readings(design, &point.values));
            warnings.extend(result.iter().flat_map(|readings| asked.columns.not_numbers(readings)));
            let row = Row { variant: point.variant, values: point.values.clone(), result };
            SolvedDesign { row, warnings }
        };
        points.iter().zip(results).map(solved).collect()
    }
}

impl Asked {
    /// The numbers that the study keeps of a design.
    fn readings(&self, design: Design, values: &[f64]) -> Box<[f64]> {
        let beside = self.baseline.or(design.beside);
        self.columns.readings(&Design { beside, ..design }, values)
    }
}
