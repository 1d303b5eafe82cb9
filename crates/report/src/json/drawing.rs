//! The document of a drawing.

use axlebow_axle::Warning;
use axlebow_results::{Field, Own, Part, Record, Text, json, number, part, schema};
use axlebow_strength::WELDING_CAUTIONS;
use axlebow_units::Kind;

use super::frame::{Contents, Frame};
use crate::answer::drawing_answer;
use crate::{ModelCard, ShopDrawing};

const DRAWING: Frame = Frame { tag: "axlebow/drawing/1", meaning: "A shop drawing of an axle." };

impl Record for ShopDrawing {
    const FIELDS: &'static [Field<Self>] = &[
        part("paper", "`A4`, `A3` or `letter`.", &Own(|own: &Self| own.options.paper.name())),
        part("sheets", "How many sheets it has.", &Own(|own: &Self| own.sheet_count())),
        part("scale", "Scale of the elevation, as 1 to what.", &Own(|own: &Self| own.scale as usize)),
        part(
            "section-scale",
            "Scale of the sections, as 1 to what.",
            &Own(|own: &Self| own.section_scale as usize),
        ),
        part("symbols", "Standard of the weld symbols.", &Own(|own: &Self| own.options.symbols.title())),
        part("revision", "Revision, as the shop counts them.", &Text(|own: &Self| &own.options.revision)),
        number("mass", Kind::Mass, "Mass of the bare axle, stiffeners counted.", &Own(|own: &Self| own.mass)),
        number(
            "stiffener-mass",
            Kind::Mass,
            "Mass of the stiffeners.",
            &Own(|own: &Self| own.stiffener_mass),
        ),
        part(
            "preheat",
            "What each steel that is welded says about preheat.",
            &Part(|own: &Self| &own.preheats),
        ),
        part("questions", "What to ask the axle's maker.", &Part(|own: &Self| &own.questions)),
    ];
}

/// The document of a drawing.
pub fn drawing_document(drawing: &ShopDrawing, card: &ModelCard) -> String {
    let cautions = if drawing.stiffener_mass > 0.0 { WELDING_CAUTIONS.to_vec() } else { Vec::new() };
    DRAWING.text::<Warning>(Contents {
        card: Some(card),
        answer: drawing_answer(drawing, card),
        results: vec![json(drawing)],
        warnings: &[],
        cautions,
    })
}

/// The JSON Schema of the document of a drawing.
pub fn drawing_schema() -> String {
    DRAWING.schema::<Warning>(&[schema::<ShopDrawing>()])
}
