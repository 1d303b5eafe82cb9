//! The weld of a stiffener against its limits, from the forces with which it ties the stiffener to the axle.

use axlebow_sections::Material;
use axlebow_strength::{
    AiscBasis, AiscWeld, BaseMetal, Check, EnWeld, Fillet, StitchedPart, Stitches, WeldLoad, WeldRun,
    correlation_factor,
};

use crate::checks::placed_check::{CheckedPart, PlacedCheck};
use crate::checks::strength_options::{StrengthOptions, StrengthRules};
use crate::outcome::CaseOutcome;
use crate::outcome::stiffening_outcome::{Foot, WeldForce};
use crate::{Axle, AxleError, Stiffener, WeldPattern};

/// Checks of every stiffener's weld in one case: its throat and the parts beside it where the force peaks, its size,
/// its stitches.
pub(crate) fn weld_checks(
    axle: &Axle,
    case: &CaseOutcome,
    ask: StrengthOptions,
) -> Result<Vec<PlacedCheck>, AxleError> {
    let Some(stiffening) = &case.stiffening else { return Ok(Vec::new()) };
    let mut found = Vec::new();
    for (stiffener, outcome) in axle.stiffeners.iter().zip(&stiffening.stiffeners) {
        let peak = outcome.peak;
        let checks = CheckedWeld::at(axle, stiffener, &peak)?.checks(ask)?;
        found.extend(checks.into_iter().map(|check| PlacedCheck {
            part: CheckedPart::Weld,
            place: format!("{}, {} foot", stiffener.name, peak.foot.word()),
            y: Some(peak.y),
            check,
        }));
    }
    Ok(found)
}

/// A stiffener's weld where its force peaks, with the two parts that it joins there.
pub(crate) struct CheckedWeld<'a> {
    stiffener: &'a Stiffener,
    fillet: Fillet,
    load: WeldLoad,
    wall: Joined<'a>,
    plate: Joined<'a>,
}

/// A part that a weld joins.
struct Joined<'a> {
    name: &'static str,
    material: &'a Material,
    /// m.
    thickness: f64,
}

impl<'a> CheckedWeld<'a> {
    pub(crate) fn at(axle: &'a Axle, stiffener: &'a Stiffener, peak: &WeldForce) -> Result<Self, AxleError> {
        let piece = axle.body.piece_at(peak.y);
        let profile = piece.profile_at(peak.y.abs());
        let [rear, front] = stiffener.on(&profile)?.gaps;
        let gap = match peak.foot {
            Foot::Rear => rear,
            Foot::Front => front,
        };
        let fillet = Fillet::with_leg(stiffener.leg_over(gap))?;
        let plate = stiffener.form.plate();
        let both = plate.between_the_feet && stiffener.weld.both_sides;
        Ok(CheckedWeld {
            stiffener,
            fillet: if both { fillet } else { fillet.one_sided() },
            load: WeldLoad { along: peak.along, across: peak.across, away: peak.outward },
            wall: Joined {
                name: "wall",
                material: axle.body.material(piece.part),
                thickness: profile.wall(),
            },
            plate: Joined { name: "stiffener", material: &stiffener.material, thickness: plate.thickness },
        })
    }

    /// Its strength, its size and its stitches.
    pub(crate) fn checks(&self, ask: StrengthOptions) -> Result<Vec<Check>, AxleError> {
        let mut checks = self.strength_checks(ask)?;
        checks.extend(self.size_checks(ask.rules)?);
        Ok(checks)
    }

    /// The throat, and the two parts beside it where their strength is known.
    pub(crate) fn strength_checks(&self, ask: StrengthOptions) -> Result<Vec<Check>, AxleError> {
        let beside = [&self.wall, &self.plate].map(|part| part.beside_weld(ask));
        let beside: Vec<BaseMetal> =
            beside.into_iter().collect::<Result<Vec<_>, _>>()?.into_iter().flatten().collect();
        let checks = match ask.rules {
            StrengthRules::Aisc => {
                let weld = AiscWeld::new(ask.electrode_strength, AiscBasis::FactoredLoads)?;
                let parts = beside.iter().flat_map(|part| weld.base_metal_checks(part, &self.load));
                std::iter::once(weld.check(&self.fillet, &self.load)).chain(parts).collect()
            }
            StrengthRules::En => {
                let parts = beside.iter().map(|part| EnWeld::base_metal_check(part, &self.load));
                self.en_throat_checks()?.into_iter().chain(parts).collect::<Vec<_>>()
            }
        };
        Ok(checks.into_iter().map(|check| check.with_safety_factor(ask.safety_factor)).collect())
    }

    /// By the weaker of the parts whose strength is known.
    fn en_throat_checks(&self) -> Result<Vec<Check>, AxleError> {
        let known = [&self.wall, &self.plate].into_iter().filter_map(|part| strengths(part.material));
        let weaker = known.min_by(|a, b| a[1].total_cmp(&b[1]));
        let Some([yield_strength, ultimate_strength]) = weaker else { return Ok(Vec::new()) };
        let weld = EnWeld::new(ultimate_strength, correlation_factor(yield_strength))?;
        Ok(weld.checks(&self.fillet, &self.load))
    }

    fn size_checks(&self, rules: StrengthRules) -> Result<Vec<Check>, AxleError> {
        let (length, stitches) = match self.stiffener.weld.pattern {
            WeldPattern::Continuous => (self.stiffener.length(), None),
            WeldPattern::Stitched { length, pitch } => {
                (length, Some(Stitches::new(self.fillet, length, pitch)?))
            }
        };
        let thinner = self.wall.thickness.min(self.plate.thickness);
        let mut run = WeldRun::new(self.fillet, length, thinner)?;
        if self.stiffener.form.plate().along_its_edge {
            run = run.along_edge(self.plate.thickness)?;
        }
        let [[rear, front], _] = self.stiffener.form.outline().reach();
        let part = StitchedPart { thinner, width: front - rear };
        Ok(match rules {
            StrengthRules::Aisc => {
                let more = stitches.into_iter().flat_map(|stitches| stitches.aisc_checks(&part));
                run.aisc_checks().into_iter().chain(more).collect()
            }
            StrengthRules::En => {
                let more = stitches.into_iter().flat_map(|stitches| stitches.en_checks(&part, true));
                run.en_checks().into_iter().chain(more).collect()
            }
        })
    }
}

impl Joined<'_> {
    /// The part as the weld's heat leaves it; none where its strength is not known.
    fn beside_weld(&self, ask: StrengthOptions) -> Result<Option<BaseMetal>, AxleError> {
        let Some([yielding, ultimate]) = strengths(self.material) else { return Ok(None) };
        let zone = ask.beside_weld(yielding)?;
        let (yielding, ultimate) = (zone.weakened(yielding), zone.weakened(ultimate));
        Ok(Some(BaseMetal::new(self.name, self.thickness, yielding, ultimate)?))
    }
}

/// Yield and ultimate strength, Pa; the latter is at least the former, where the file knows no more.
fn strengths(material: &Material) -> Option<[f64; 2]> {
    let yield_strength = material.yield_strength()?;
    Some([yield_strength, material.ultimate_strength().unwrap_or(yield_strength)])
}
