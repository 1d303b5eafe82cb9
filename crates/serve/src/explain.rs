//! A case sheet that was filled in on the page, explained.

use axlebow_model::CaseSheet;
use axlebow_report::{CauseInWords, answer, next_checks};
use axlebow_study::{WearCause, explain};
use serde::Deserialize;
use serde_json::json;

use crate::choice::Choice;
use crate::server::Live;
use crate::trouble::Trouble;

/// Checks that are shown.
const CHECKS: usize = 3;

/// What was seen on the page's axle.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct SheetQuestion {
    /// The axle.
    pub axle: Choice,
    /// A case sheet as its file would say it; the axle that it names does not count.
    pub sheet: String,
}

/// The causes that it may have, the most probable first, and what to check next.
pub(crate) fn explained(live: &Live, asked: &SheetQuestion) -> Result<String, Trouble> {
    let own = asked.axle.model(live)?;
    let sheet = CaseSheet::on_axle(asked.sheet.as_bytes(), own.changed.document, &WearCause::words())?;
    let outcome = explain(&sheet)?;
    let mut checks = next_checks(&outcome);
    checks.truncate(CHECKS);
    Ok(json!({
        "answer": answer::explain_answer(&outcome, &own.card),
        "causes": CauseInWords::all(&outcome, own.card.system),
        "checks": checks,
    })
    .to_string())
}
