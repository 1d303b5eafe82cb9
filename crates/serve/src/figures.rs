//! What an axle does, as the documents of the command line.

use axlebow_axle::{LoadCase, flex, strength, tires};
use axlebow_report::{answer, axle_scene, json};
use axlebow_results::json as record;
use axlebow_study::{RankBy, RatingOptions, RemedyOptions, rating, remedies};
use serde_json::json;

use crate::choice::{Choice, Chosen};
use crate::server::Live;
use crate::trouble::Trouble;

impl Chosen {
    /// The load case of a name.
    fn case(&self, name: &str) -> Vec<LoadCase> {
        self.model.cases.iter().filter(|case| case.name == name).cloned().collect()
    }
}

/// Flex and tire faces of the case, with what is drawn; quick enough for a slider.
pub(crate) fn figures(live: &Live, choice: &Choice) -> Result<String, Trouble> {
    let own = choice.model(live)?;
    let (axle, cases) = (&own.model.axle, own.case(&choice.case));
    let flexed = flex(axle, &cases)?;
    let faces = tires(axle, &cases)?;
    let scene = axle_scene(&flexed.cases[0], axle);
    let settings: Vec<String> = own.changed.settings().collect();
    Ok(format!(
        "{{\"set\":{},\"scene\":{},\"flex\":{},\"tire\":{}}}",
        json!(settings),
        scene,
        json::flex_document(&flexed, &own.card),
        json::tire_document(&faces, None, &own.card),
    ))
}

/// The worst strength check of all load cases.
pub(crate) fn checks(live: &Live, choice: &Choice) -> Result<String, Trouble> {
    let own = choice.model(live)?;
    let outcome = strength(&own.model.axle, &own.model.cases, own.model.strength)?;
    let worst = outcome.governing();
    Ok(json!({
        "answer": answer::strength_answer(&outcome, &own.card),
        "holds": outcome.holds(),
        "worst": worst.map(|worst| record(worst.placed)),
        "case": worst.and_then(|worst| worst.case).map(|case| case.name.clone()),
    })
    .to_string())
}

/// The axle load at which the first check binds, wheels as they are.
pub(crate) fn rated(live: &Live, choice: &Choice) -> Result<String, Trouble> {
    let own = choice.model(live)?;
    let options = RatingOptions { offsets: Vec::new(), cases: Vec::new(), lasting: None };
    let outcome = rating(&own.changed.document, &options).map_err(Trouble::Refused)?;
    Ok(json::rating_document(&outcome, &own.card))
}

/// Every standard remedy tried on the axle.
pub(crate) fn remedied(live: &Live, choice: &Choice) -> Result<String, Trouble> {
    let own = choice.model(live)?;
    let options =
        RemedyOptions { case: &choice.case, ride: None, own: Vec::new(), rank: RankBy::Wear, prices: None };
    let outcome = remedies(&own.changed.document, &options);
    let outcome = outcome.map_err(|why| Trouble::Refused(why.to_string()))?;
    Ok(json::remedies_document(&outcome, &own.card))
}

/// The HTML report of the axle.
pub(crate) fn report(live: &Live, choice: &Choice) -> Result<String, Trouble> {
    let own = choice.model(live)?;
    (live.options.report)(&own.changed.document, &own.card).map_err(Trouble::Refused)
}
