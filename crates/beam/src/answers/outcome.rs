//! Everything that is asked of a beam, worked out.

use crate::answers::asked::{Check, Checked, Results};
use crate::elements::mesh::{Element, Mesh};
use crate::error::BeamError;
use crate::exact::closed_form::{ClosedForm, closed_forms};
use crate::exact::closed_modes::{ClosedModes, closed_modes};
use crate::exact::convergence::{Convergence, convergence};
use crate::parts::line::Line;
use crate::solving::harmonic::{Shaken, Shaking, shaken};
use crate::solving::modes::{Mode, modes};
use crate::solving::moving::{MovingForce, Passage, passage};
use crate::solving::peaks::{Peak, peaks};
use crate::solving::solution::{Reaction, Solution, Station, solve};

/// Stations along a beam, at least.
const STATIONS: usize = 200;

/// What is asked of a beam.
#[derive(Debug, Clone, PartialEq)]
pub struct BeamOptions {
    /// How it is cut.
    pub mesh: Mesh,
    /// How many elastic modes are wanted; none for as many as a beam with mass gives easily.
    pub modes: Option<usize>,
    /// Elements in each piece whose results are set beside each other; empty for none.
    pub convergence: Vec<usize>,
    /// A force that drives over it, if any.
    pub moving: Option<MovingForce>,
    /// A force that shakes it, if any.
    pub shaking: Option<Shaking>,
    /// Values with which it is compared.
    pub checks: Vec<Check>,
}

/// Elastic modes where a file does not say how many.
const USUAL_MODES: usize = 3;

/// A beam worked out.
pub struct BeamOutcome {
    /// The beam.
    pub line: Line,
    /// How it was cut.
    pub mesh: Mesh,
    /// Elements in all.
    pub elements: usize,
    /// What the loads do; none where nothing loads it.
    pub bent: Option<Bent>,
    /// Its natural modes; none where they were not asked for or a section has no area.
    pub vibrating: Option<Vibrating>,
    /// Results of several meshes, where they were asked for.
    pub convergence: Option<Convergence>,
    /// What the moving force does.
    pub passage: Option<Passage>,
    /// What the shaking force does.
    pub shaken: Option<Shaken>,
    /// Values beside what was expected.
    pub checks: Vec<Checked>,
}

/// A beam under its loads.
pub struct Bent {
    /// Along it.
    pub stations: Vec<Station>,
    /// What each support does.
    pub reactions: Vec<Reaction>,
    /// The largest values.
    pub peaks: Vec<Peak>,
    /// The handbook case that it is, with what was computed for each of its values.
    pub closed: Option<(ClosedForm, Vec<f64>)>,
}

/// The natural modes of a beam.
pub struct Vibrating {
    /// Rigid motions and the elastic modes.
    pub modes: Vec<Mode>,
    /// How many of the first are rigid motions.
    pub rigid: usize,
    /// Whether none is missing by Sturm's count.
    pub complete: bool,
    /// The equation that it has, with its frequencies.
    pub closed: Option<ClosedModes>,
}

/// Works out everything that is asked of a beam.
///
/// # Errors
/// As [`solve`], [`modes`] and [`convergence`].
pub fn work_out(line: Line, options: &BeamOptions) -> Result<BeamOutcome, BeamError> {
    let mesh = options.mesh;
    let solution = if line.is_loaded() { Some(solve(&line, &mesh)?) } else { None };
    let bent = solution.as_ref().map(|solution| Bent::of(&line, &mesh, solution));
    let has_mass = line.spans().iter().all(|span| span.section_at(0.0).area.is_some());
    let wanted = options.modes.unwrap_or(if has_mass { USUAL_MODES } else { 0 });
    let vibrating = if wanted > 0 { Some(Vibrating::of(&line, &mesh, wanted)?) } else { None };
    let convergence = match options.convergence.as_slice() {
        [] => None,
        elements => Some(convergence(&line, &mesh, elements, wanted)?),
    };
    let elastic: Vec<&Mode> = vibrating.iter().flat_map(|own| &own.modes[own.rigid..]).collect();
    let (reactions, peaks) = bent.as_ref().map_or((&[][..], &[][..]), |own| (&own.reactions, &own.peaks));
    let results = Results { line: &line, solution: solution.as_ref(), reactions, peaks, elastic: &elastic };
    let compared = |check: &Check| Checked { check: check.clone(), computed: check.asked.value(&results) };
    let checks = options.checks.iter().map(compared).collect();
    let elements = mesh.members(&line)?.len();
    let passage = options.moving.as_ref().map(|own| passage(&line, &mesh, own)).transpose()?;
    let shaken = options.shaking.as_ref().map(|own| shaken(&line, &mesh, own)).transpose()?;
    Ok(BeamOutcome { line, mesh, elements, bent, vibrating, convergence, passage, shaken, checks })
}

impl BeamOutcome {
    /// Whether every value is near enough to what was expected.
    pub fn passed(&self) -> bool {
        self.checks.iter().all(Checked::passed)
    }

    /// Whether its elements leave nothing out of the statics.
    pub fn is_exact(&self) -> bool {
        self.mesh.element == Element::Flexibility && !self.line.has_foundation()
    }
}

impl Bent {
    fn of(line: &Line, mesh: &Mesh, solution: &Solution) -> Self {
        let closed = closed_forms(line, mesh.theory).map(|form| {
            let computed = form.values.iter().filter_map(|value| value.kind.of(&solution.at(value.at)));
            let computed = computed.collect();
            (form, computed)
        });
        Self {
            stations: solution.stations(STATIONS),
            reactions: solution.reactions.clone(),
            peaks: peaks(solution),
            closed,
        }
    }
}

impl Vibrating {
    fn of(line: &Line, mesh: &Mesh, wanted: usize) -> Result<Self, BeamError> {
        let mut found = modes(line, mesh, wanted + 2)?;
        let rigid = found.rigid();
        found.modes.truncate(rigid + wanted);
        let closed = closed_modes(line, mesh.theory, wanted);
        Ok(Self { modes: found.modes, rigid, complete: found.complete, closed })
    }
}
