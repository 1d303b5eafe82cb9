//! Published formulas for the local flexibility of a brace on a tube.
//!
//! The bracket is taken as a round brace square to the tube whose diameter is the seat's width, bent in the plane of
//! brace and tube: γ = D/(2T), β = d/D, τ = t/T.

use axlebow_sections::{Material, RoundTube};

use crate::WallError;
use crate::caveat::Caveat;
use crate::error::positive;

/// What the formulas say of a seat.
#[derive(Debug, Clone, PartialEq)]
pub struct JointFlexibility {
    /// Rotation about X per moment through the seat, the larger of both formulas, rad/(N m).
    pub rotational: f64,
    /// H. Fessler, P. B. Mockford & J. J. Webster, Proc. Instn Civ. Engrs Part 2, 81 (1986) 659-673:
    /// `134·γ^1.73·exp(−4.52·β)/(E·D³)`, rad/(N m).
    pub fessler: f64,
    /// J. Buitrago, B. E. Healy & T. Y. Chang, Proc. 12th OMAE (1993) I, 405-417, from memory:
    /// `1.39·τ^−0.238·β^−2.245·γ^1.898/(E·D³)`, rad/(N m).
    pub buitrago: f64,
    /// D/(2T).
    pub gamma: f64,
    /// d/D.
    pub beta: f64,
    /// What the reader must know.
    pub caveats: Vec<Caveat>,
}

/// Ranges in which the formulas were fitted (from memory): both, then each.
const GAMMA: [f64; 2] = [10.0, 20.0];
const BETA: [f64; 2] = [0.33, 0.76];
/// Wall of the brace over that of the tube: a bracket's plate is about as thick as the wall (common practice, no
/// source); the flexibility goes with its power −0.238.
const TAU: f64 = 1.0;

/// Flexibility in bending in the plane of a brace square to a round tube.
///
/// - `tube`: D and T (m)
/// - `width`: width of the seat along the axle, d (m), above 0
///
/// Valid for 10 ≤ γ ≤ 20 and 0.33 ≤ β ≤ 0.76 (from memory); axle tubes have γ of 4 to 9, for which the two formulas are
/// extrapolated and differ by up to 64 %.
///
/// # Errors
/// [`WallError::Value`] for a width out of range.
pub fn joint_flexibility(
    tube: &RoundTube,
    material: &Material,
    width: f64,
) -> Result<JointFlexibility, WallError> {
    let d = positive("seat width", width, "m")?;
    let outer = tube.outside_diameter();
    let (gamma, beta) = (outer / (2.0 * tube.wall()), d / outer);
    let per = material.elastic_modulus() * outer.powi(3);
    let fessler = 134.0 * gamma.powf(1.73) * (-4.52 * beta).exp() / per;
    let buitrago = 1.39 * TAU.powf(-0.238) * beta.powf(-2.245) * gamma.powf(1.898) / per;
    let caveats = extrapolated(gamma, beta, fessler / buitrago).into_iter().collect();
    Ok(JointFlexibility { rotational: fessler.max(buitrago), fessler, buitrago, gamma, beta, caveats })
}

fn extrapolated(gamma: f64, beta: f64, ratio: f64) -> Option<Caveat> {
    let within = |value: f64, [low, high]: [f64; 2]| (low..=high).contains(&value);
    if within(gamma, GAMMA) && within(beta, BETA) {
        return None;
    }
    Some(Caveat {
        text: format!(
            "the joint formulas are extrapolated: D/(2T) is {gamma:.1} (fitted from {} to {}) and the seat's width over D is {beta:.2} (fitted from {} to {}); the two differ by a factor of {:.1} here",
            GAMMA[0],
            GAMMA[1],
            BETA[0],
            BETA[1],
            ratio.max(1.0 / ratio)
        ),
        advice: "use wall_flexibility = \"shell\", or a measured value".to_owned(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Flexibility times E·D³ for a brace of wall equal to that of the tube.
    fn factors(outer: f64, wall: f64, width: f64) -> (f64, f64, usize) {
        let steel = Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
        let found = joint_flexibility(&RoundTube::new(outer, wall).unwrap(), &steel, width).unwrap();
        let per = 200e9 * outer.powi(3);
        (found.fessler * per, found.buitrago * per, found.caveats.len())
    }

    /// Evaluations of the formulas apart from this code; those of Buitrago et al. less τ^−0.238 of their τ.
    #[test]
    fn flexibility_matches_fessler_1986_and_buitrago_1993() {
        for (tube, width, tau, fessler, buitrago, doubts) in [
            ((0.5, 0.0125), 0.25, 0.64_f64, 2491.04, 2159.29, 0),
            ((0.5, 0.016), 0.25, 0.625, 1625.20, 1359.18, 0),
            ((0.127, 0.0127), 0.0635, 8.0 / 12.7, 226.37, 156.04, 1),
        ] {
            let (f, b, caveats) = factors(tube.0, tube.1, width);
            assert!((f - fessler).abs() < 0.005, "{f}");
            assert!((b * tau.powf(-0.238) - buitrago).abs() < 0.005, "{b}");
            assert_eq!(caveats, doubts);
        }
    }
}
