//! Whether the steels that are welded want warming first.

use axlebow_strength::{Check, preheat, preheat_check};

use crate::parts::body::Part;
use crate::{Axle, AxleError};

/// What a steel that is welded says about preheat.
#[derive(Debug, Clone, PartialEq)]
pub struct Preheat {
    /// The parts that are made of it, such as `tube, top angle`.
    pub parts: String,
    /// Carbon equivalent, per cent; none where the composition is not known.
    pub carbon_equivalent: Option<f64>,
    /// The carbon equivalent against its limit.
    pub check: Option<Check>,
}

/// What to do where the composition is not known.
const UNKNOWN: &str = "ask the axle maker, or the mill for the certificate of this heat, for C, Mn, Cr, Mo, V, Ni and Cu in \
     per cent, and give `composition` or `carbon_equivalent` of its material; until then take it that it must be preheated";

impl Preheat {
    /// How much preheat is called for: `unneeded`, `usual`, `controlled` or `unknown`.
    pub fn need(&self) -> &'static str {
        self.carbon_equivalent.map_or("unknown", |equivalent| preheat(equivalent).word())
    }

    /// What to do.
    pub fn advice(&self) -> &'static str {
        self.carbon_equivalent.map_or(UNKNOWN, |equivalent| preheat(equivalent).advice())
    }
}

/// Each steel that is welded: that of tube or housing, and those of stiffeners where they differ.
///
/// # Errors
/// [`AxleError::Strength`] for a carbon equivalent out of range.
pub fn preheats(axle: &Axle) -> Result<Vec<Preheat>, AxleError> {
    if !axle.has_welds() {
        return Ok(Vec::new());
    }
    let part = axle.body.pieces()[0].part;
    let mut steels = vec![(axle.body.material(Part::Tube), part.word().to_owned())];
    for stiffener in &axle.stiffeners {
        match steels.iter_mut().find(|(steel, _)| **steel == stiffener.material) {
            Some((_, parts)) => *parts += &format!(", {}", stiffener.name),
            None => steels.push((&stiffener.material, stiffener.name.clone())),
        }
    }
    let each = steels.into_iter().map(|(steel, parts)| {
        let carbon_equivalent = steel.carbon_equivalent();
        let check = carbon_equivalent.map(preheat_check).transpose()?;
        Ok(Preheat { parts, carbon_equivalent, check })
    });
    each.collect()
}
