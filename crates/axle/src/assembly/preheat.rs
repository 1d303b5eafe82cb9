//! Whether the steels that are welded want warming first.

use axlebow_sections::{Material, Profile};
use axlebow_strength::{Check, WeldHeat, preheat, preheat_check, preheat_temperature};

use crate::parts::body::Part;
use crate::{Axle, AxleError};

/// What a steel that is welded says about preheat.
#[derive(Debug, Clone, PartialEq)]
pub struct Preheat {
    /// The parts that are made of it, such as `tube, top angle`.
    pub parts: String,
    /// Carbon equivalent, per cent; none where the composition is not known.
    pub carbon_equivalent: Option<f64>,
    /// Carbon equivalent of cold cracking, CET, per cent; none where the composition is not known.
    pub cold_cracking_equivalent: Option<f64>,
    /// Thickest of the parts, m.
    pub thickness: f64,
    /// Least temperature of the steel, °C, for [`WeldHeat::USUAL`]; none where CET is not known or not covered.
    pub temperature: Option<f64>,
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
    steels(axle).into_iter().map(|steel| steel.preheat()).collect()
}

/// A steel that is welded, in the parts that are made of it.
struct WeldedSteel<'a> {
    material: &'a Material,
    parts: String,
    thickness: f64,
}

fn steels(axle: &Axle) -> Vec<WeldedSteel<'_>> {
    let pieces = axle.body.pieces().iter().filter(|piece| piece.part != Part::Spindle);
    let walls = pieces.flat_map(|piece| [piece.inboard, piece.outboard]);
    let mut steels = vec![WeldedSteel {
        material: axle.body.material(Part::Tube),
        parts: axle.body.pieces()[0].part.word().to_owned(),
        thickness: walls.map(|profile| Profile::wall(&profile)).fold(0.0, f64::max),
    }];
    for own in &axle.stiffeners {
        let thickness = own.form.thickness();
        match steels.iter_mut().find(|steel| *steel.material == own.material) {
            Some(steel) => {
                steel.parts += &format!(", {}", own.name);
                steel.thickness = steel.thickness.max(thickness);
            }
            None => steels.push(WeldedSteel { material: &own.material, parts: own.name.clone(), thickness }),
        }
    }
    steels
}

impl WeldedSteel<'_> {
    fn preheat(self) -> Result<Preheat, AxleError> {
        let (carbon_equivalent, cet) =
            (self.material.carbon_equivalent(), self.material.cold_cracking_equivalent());
        let temperature = |cet| preheat_temperature(cet, self.thickness, WeldHeat::USUAL);
        Ok(Preheat {
            carbon_equivalent,
            cold_cracking_equivalent: cet,
            thickness: self.thickness,
            temperature: cet.map(temperature).transpose()?.flatten(),
            check: carbon_equivalent.map(preheat_check).transpose()?,
            parts: self.parts,
        })
    }
}
