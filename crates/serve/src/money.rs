//! What the changes bring, by the prices of a payback study.

use axlebow_report::json::payback_document;
use axlebow_study::PaybackStudy;

use crate::choice::Choice;
use crate::server::Live;
use crate::trouble::Trouble;
use crate::values::Changed;

/// The payback of the axle as it stands on the page against the one that the page began with; null without prices.
pub(crate) fn money(live: &Live, choice: &Choice) -> Result<String, Trouble> {
    let Some(prices) = &live.options.prices else { return Ok("null".to_owned()) };
    let own = choice.model(live)?;
    let untouched = Changed { document: own.source.document.clone(), edits: Vec::new() };
    let (base, _) = untouched.built(live.options.system)?;
    let study = PaybackStudy {
        remedy: "the changes on the live page".to_owned(),
        base,
        remedied: own.model,
        case: choice.case.clone(),
        // Ranges take thousands of draws, which no slider waits for.
        ranges: Vec::new(),
        ..prices.clone()
    };
    let outcome = study.run().map_err(|error| Trouble::Refused(error.to_string()))?;
    Ok(payback_document(&outcome, &own.card))
}
