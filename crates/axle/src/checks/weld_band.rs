//! How far the verdict on a weld hangs on how stiff it is taken to be, and what would pass.
//!
//! A stiffer weld hands the same force on over less length, so that its force per length rises with its stiffness and
//! the stiff end is the safe one for the weld; the help that the stiffener gives falls with it, so that the soft end is
//! the safe one for the camber.

use axlebow_strength::{Check, Verdict, worst_verdict};

use crate::checks::strength_options::StrengthOptions;
use crate::checks::weld_strength::CheckedWeld;
use crate::mesh::seated_bar::SeatedBar;
use crate::mesh::weld_line::{giving_stiffness, weld_stiffness};
use crate::parts::stiffener::{Stiffener, StiffenerEnd};
use crate::statics::static_design::StaticDesign;
use crate::statics::stiffening::weld_peaks;
use crate::{Axle, AxleError, LoadCase};

/// What the weld of a stiffener uses of its strength over the band of its stiffness, the worst of all cases.
#[derive(Debug, Clone, PartialEq)]
pub struct WeldBand {
    /// Name of the stiffener.
    pub stiffener: String,
    /// With walls that give as plates.
    pub soft: WeldUse,
    /// As the model has it.
    pub modeled: WeldUse,
    /// Between walls that do not give.
    pub stiff: WeldUse,
    /// Changes that would let it pass as modeled, one at a time; none where it passes.
    pub remedies: Vec<WeldRemedy>,
}

/// What a weld uses of its strength at one stiffness.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeldUse {
    /// Stiffness per length of weld, N/m².
    pub stiffness: f64,
    /// Greatest share of a strength that its throat or the steel beside it uses.
    pub used: f64,
    /// Whether that passes.
    pub verdict: Verdict,
}

/// A change that would let a weld pass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WeldRemedy {
    /// Run each end out over a length, m.
    RunOut(f64),
    /// A leg, m.
    Leg(f64),
    /// A length of the stiffener about its middle, m.
    Length(f64),
}

/// The band of each stiffener's weld under load cases.
///
/// # Errors
/// As [`crate::strength`].
pub fn weld_bands(axle: &Axle, cases: &[LoadCase], ask: StrengthOptions) -> Result<Vec<WeldBand>, AxleError> {
    if axle.stiffeners.is_empty() {
        return Ok(Vec::new());
    }
    let bars = SeatedBar::each(axle)?;
    (0..axle.stiffeners.len()).map(|number| Trial { axle, cases, ask, number }.band(&bars[number])).collect()
}

/// Some of the checks of a weld.
type WhichChecks = fn(&CheckedWeld, StrengthOptions) -> Result<Vec<Check>, AxleError>;

/// A stiffener whose weld is tried at other values.
#[derive(Clone, Copy)]
struct Trial<'a> {
    axle: &'a Axle,
    cases: &'a [LoadCase],
    ask: StrengthOptions,
    number: usize,
}

impl Trial<'_> {
    fn band(&self, bar: &SeatedBar) -> Result<WeldBand, AxleError> {
        let own = &self.axle.stiffeners[self.number];
        let modeled = own.weld.stiffness;
        let soft = giving_stiffness(self.axle, own, bar).min(modeled);
        let stiff = weld_stiffness(own.material.shear_modulus()).max(modeled);
        let [soft, modeled, stiff] = [soft, modeled, stiff].map(|stiffness| self.at_stiffness(stiffness));
        let modeled = modeled?;
        let remedies = if modeled.verdict == Verdict::Fails { self.remedies() } else { Vec::new() };
        Ok(WeldBand { stiffener: own.name.clone(), soft: soft?, modeled, stiff: stiff?, remedies })
    }

    fn at_stiffness(&self, stiffness: f64) -> Result<WeldUse, AxleError> {
        let checks =
            self.checks(&|own| own.weld.stiffness = stiffness, |weld, ask| weld.strength_checks(ask))?;
        let used = checks.iter().map(Check::utilization).fold(0.0, f64::max);
        Ok(WeldUse { stiffness, used, verdict: worst_verdict(&checks) })
    }

    /// Checks of its weld in all cases, with the stiffener changed.
    fn checks(&self, change: &dyn Fn(&mut Stiffener), which: WhichChecks) -> Result<Vec<Check>, AxleError> {
        let mut axle = self.axle.clone();
        change(&mut axle.stiffeners[self.number]);
        let axle = axle.checked().map_err(|mut errors| errors.remove(0))?;
        let design = StaticDesign::of(&axle)?;
        let mut checks = Vec::new();
        for case in self.cases {
            let (_, state) = design.loaded(case)?;
            let peak = weld_peaks(&design, &state)[self.number];
            checks.extend(which(&CheckedWeld::at(&axle, &axle.stiffeners[self.number], &peak)?, self.ask)?);
        }
        Ok(checks)
    }

    /// Each kind of change, the least of it that passes.
    fn remedies(&self) -> Vec<WeldRemedy> {
        let own = &self.axle.stiffeners[self.number];
        let (length, middle) = (own.length(), 0.5 * (own.from + own.to));
        let run_out = |length: f64| self.passes(&|own| own.end = StiffenerEnd::Tapered { length });
        let leg = |leg: f64| self.passes(&|own| own.weld.leg = leg);
        let shorter = |length: f64| {
            self.passes(&|own| (own.from, own.to) = (middle - 0.5 * length, middle + 0.5 * length))
        };
        let run_outs = steps([own.end.length(), 0.5 * length], 5e-3);
        let legs = steps([own.weld.leg, 2.0 * own.weld.leg], 0.5e-3);
        let lengths = steps([length, SHORTEST * length], 5e-3);
        let found = [
            run_outs.into_iter().find(|value| run_out(*value)).map(WeldRemedy::RunOut),
            legs.into_iter().find(|value| leg(*value)).map(WeldRemedy::Leg),
            lengths.into_iter().find(|value| shorter(*value)).map(WeldRemedy::Length),
        ];
        found.into_iter().flatten().collect()
    }

    /// Whether its weld passes when it is changed; a change that does not fit the axle does not.
    fn passes(&self, change: &dyn Fn(&mut Stiffener)) -> bool {
        let checks = self.checks(change, |weld, ask| weld.checks(ask));
        checks.is_ok_and(|checks| worst_verdict(&checks) != Verdict::Fails)
    }
}

/// Sizes of a change that are tried.
const STEPS: u32 = 8;

/// Shortest stiffener that is tried, over its length.
const SHORTEST: f64 = 0.1;

/// Values to try from one to another, the first left out, in whole multiples of a size that a shop can measure (m).
fn steps([from, to]: [f64; 2], size: f64) -> Vec<f64> {
    let at = |i: u32| from + (to - from) * f64::from(i) / f64::from(STEPS);
    (1..=STEPS).map(|i| (at(i) / size).round() * size).collect()
}
