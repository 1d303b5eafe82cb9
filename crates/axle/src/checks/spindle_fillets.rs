//! Stress in the fillets of the spindles.

use axlebow_strength::{AllowableStress, Check, ShoulderFillet};
use axlebow_units::Kind;

use crate::checks::not_made::NotMade;
use crate::checks::placed_check::{CheckedPart, PlacedCheck};
use crate::checks::strength_options::StrengthOptions;
use crate::outcome::CaseOutcome;
use crate::parts::body::{Part, Piece};
use crate::{Axle, AxleError, Side};

const SOURCE: &str = "fiber stress of the thinner part times K_t of a shouldered round bar in bending, W. D. Pilkey & D. F. Pilkey, \
     Peterson's Stress Concentration Factors, 3rd ed., Wiley 2008; against first yield";

/// A fillet of the spindle that is given a radius.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SpindleFillet {
    /// The thinner part, outboard of it.
    pub piece: Piece,
    /// Stress in it over the fiber stress of that part.
    pub factor: f64,
}

/// The fillets of a spindle from the tube outward, and the steps whose fillet cannot be checked.
pub(crate) fn spindle_fillets(axle: &Axle) -> (Vec<SpindleFillet>, Vec<NotMade>) {
    let (mut found, mut not_made) = (Vec::new(), Vec::new());
    for pair in axle.body.pieces().windows(2).filter(|pair| pair[1].part == Part::Spindle) {
        let piece = pair[1];
        let [larger, smaller] = [pair[0].outboard, piece.inboard].map(|profile| {
            let reach = profile.edge_reach();
            2.0 * (reach.straight_z + reach.radius)
        });
        if larger <= smaller {
            continue;
        }
        let refused = |reason: String, advice: &str| NotMade {
            place: format!("spindle, {:.0} mm from the center line", 1e3 * piece.from),
            what: "stress in the fillet".to_owned(),
            reason,
            advice: advice.to_owned(),
        };
        let Some(radius) = piece.fillet else {
            let reason = "the radius of the fillet is not given".to_owned();
            not_made.push(refused(reason, "give `fillet` of that `spindle.step`"));
            continue;
        };
        match ShoulderFillet::new(larger, smaller, radius) {
            Ok(fillet) => found.push(SpindleFillet { piece, factor: fillet.bending_factor() }),
            Err(error) => not_made.push(refused(error.to_string(), "check `fillet` of that `spindle.step`")),
        }
    }
    (found, not_made)
}

impl SpindleFillet {
    /// Fiber stress of the thinner part at a side, K_t in it, Pa.
    fn stress(&self, axle: &Axle, case: &CaseOutcome, side: Side) -> Option<(f64, String)> {
        let y = side.sign() * self.piece.from;
        let there = case.stations.iter().find(|own| (own.y - y).abs() < crate::SMALLEST_STEP)?;
        let carried = there.axle_resultants;
        let properties = axle.body.properties(&self.piece, self.piece.from);
        let profile = self.piece.inboard;
        let (fiber, _) = profile.fiber_stress(&properties, carried.axial, carried.moment_x, carried.moment_z);
        Some((self.factor * fiber.abs(), there.name.clone()))
    }
}

/// The stress in every fillet of both spindles in a case.
pub(crate) fn fillet_checks(
    axle: &Axle,
    case: &CaseOutcome,
    ask: StrengthOptions,
) -> Result<Vec<PlacedCheck>, AxleError> {
    let Some(strength) = axle.body.material(Part::Spindle).yield_strength() else { return Ok(Vec::new()) };
    let allowable = AllowableStress::new(strength, ask.safety_factor)?;
    let (fillets, _) = spindle_fillets(axle);
    let both = fillets.iter().flat_map(|fillet| Side::BOTH.map(|side| (fillet, side)));
    let checks = both.filter_map(|(fillet, side)| {
        let (stress, place) = fillet.stress(axle, case, side)?;
        let check = Check::at_most("stress in the fillet", Kind::Stress, stress, allowable.normal())
            .sourced(SOURCE)
            .advising("make the radius of the fillet larger, lower the load, or bring the wheels inboard");
        Some(PlacedCheck {
            part: CheckedPart::Fillet,
            place,
            y: Some(side.sign() * fillet.piece.from),
            check,
        })
    });
    Ok(checks.collect())
}
