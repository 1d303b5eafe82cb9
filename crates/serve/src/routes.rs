//! What is asked and who answers.

use std::sync::Arc;

use axlebow_model::{Model, TYPICAL};
use axum::Router;
use axum::body::Bytes;
use axum::extract::{DefaultBodyLimit, Path, Query, State};
use axum::http::header::{CONTENT_SECURITY_POLICY, CONTENT_TYPE};
use axum::http::{HeaderValue, StatusCode};
use axum::middleware::from_fn_with_state;
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};

use crate::apply::apply;
use crate::bump::bump;
use crate::controls::controls;
use crate::disk::{FILE, Source};
use crate::door::{Door, REPORT_POLICY, guard};
use crate::explain::explained;
use crate::figures::{checks, figures, rated, remedied, report};
use crate::lanes::{Lane, in_lane};
use crate::money::money;
use crate::save::save;
use crate::server::Live;
use crate::trouble::Trouble;
use crate::values::{Changed, Values};

/// Largest body of a request, bytes: a page's own are a few hundred.
const LARGEST_BODY: usize = 64 * 1024;

type Answer = Result<Response, Trouble>;
type Shared = State<Arc<Live>>;

/// Everything that the server answers, under the token.
pub(crate) fn router(door: &Arc<Door>, live: Arc<Live>) -> Router {
    let own = Router::new()
        .route("/", get(|| async { file("text/html; charset=utf-8", include_str!("../page/page.html")) }))
        .route("/page.css", get(|| async { file("text/css", include_str!("../page/page.css")) }))
        .route("/{script}", get(|Path(name): Path<String>| async move { script(&name) }))
        .route("/controls", get(begin))
        .route("/disk", get(disk))
        .route("/figures", post(|live: Shared, body: Bytes| ask(live, body, |lanes| &lanes.figures, figures)))
        .route("/checks", post(|live: Shared, body: Bytes| ask(live, body, |lanes| &lanes.checks, checks)))
        .route("/rating", post(|live: Shared, body: Bytes| ask(live, body, |lanes| &lanes.rating, rated)))
        .route("/money", post(|live: Shared, body: Bytes| ask(live, body, |lanes| &lanes.rating, money)))
        .route("/remedies", post(|live: Shared, body: Bytes| ask(live, body, |lanes| &lanes.slow, remedied)))
        .route("/bump", post(|live: Shared, body: Bytes| ask(live, body, |lanes| &lanes.slow, bump)))
        .route("/explain", post(|live: Shared, body: Bytes| ask(live, body, |lanes| &lanes.slow, explained)))
        .route("/apply", post(|live: Shared, body: Bytes| ask(live, body, |lanes| &lanes.slow, apply)))
        .route("/save", post(|live: Shared, body: Bytes| ask(live, body, |lanes| &lanes.slow, save)))
        .route("/report", get(show_report));
    Router::new()
        .nest(&format!("/{}/", door.token), own)
        .layer(DefaultBodyLimit::max(LARGEST_BODY))
        .layer(from_fn_with_state(door.clone(), guard))
        .with_state(live)
}

fn file(kind: &'static str, text: &'static str) -> Response {
    ([(CONTENT_TYPE, kind)], text).into_response()
}

/// The scripts of the page, each a module.
const SCRIPTS: [(&str, &str); 12] = [
    ("page.js", include_str!("../page/page.js")),
    ("case.js", include_str!("../page/case.js")),
    ("asking.js", include_str!("../page/asking.js")),
    ("controls.js", include_str!("../page/controls.js")),
    ("details.js", include_str!("../page/details.js")),
    ("figures.js", include_str!("../page/figures.js")),
    ("panels.js", include_str!("../page/panels.js")),
    ("remedies.js", include_str!("../page/remedies.js")),
    ("ride.js", include_str!("../page/ride.js")),
    ("sheet.js", include_str!("../page/sheet.js")),
    ("state.js", include_str!("../page/state.js")),
    ("words.js", include_str!("../page/words.js")),
];

fn script(name: &str) -> Response {
    match SCRIPTS.iter().find(|(own, _)| *own == name) {
        Some((_, text)) => file("text/javascript", text),
        None => StatusCode::NOT_FOUND.into_response(),
    }
}

fn document(text: String) -> Response {
    ([(CONTENT_TYPE, "application/json")], text).into_response()
}

/// Reads a question and answers it in its lane.
async fn ask<Q: DeserializeOwned + Send + 'static>(
    State(live): Shared,
    body: Bytes,
    lane: fn(&crate::lanes::Lanes) -> &Lane,
    answer: fn(&Live, &Q) -> Result<String, Trouble>,
) -> Answer {
    let asked: Q = read(&body)?;
    let own = live.clone();
    in_lane(lane(&live.lanes), move || answer(&own, &asked)).await.map(document)
}

fn read<Q: DeserializeOwned>(body: &[u8]) -> Result<Q, Trouble> {
    serde_json::from_slice(body)
        .map_err(|error| Trouble::Malformed(format!("the body is not as it should be: {error}")))
}

/// What a page begins with.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Begin {
    from: Option<String>,
}

async fn begin(State(live): Shared, Query(begin): Query<Begin>) -> Answer {
    let own = live.clone();
    let work = move || opened(&own, begin.from.as_deref());
    in_lane(&live.lanes.slow, work).await.map(document)
}

/// What can be moved, and what there is to begin from.
fn opened(live: &Live, from: Option<&str>) -> Result<String, Trouble> {
    let first = if live.shelf.file().is_some() { FILE } else { TYPICAL[0].name };
    let from = from.unwrap_or(first);
    begun(live, &*live.shelf.read(from)?)
}

/// The controls of what a page begins with or goes on from, and what else there is to begin from.
pub(crate) fn begun(live: &Live, source: &Source) -> Result<String, Trouble> {
    let changed = Changed::of(source, &Values::new(), live.options.system)?;
    let system = live.options.system.unwrap_or(source.document.system());
    let model = Model::of(&changed.document)?;
    let cases: Vec<Value> = model
        .cases
        .iter()
        .map(|case| json!({ "name": case.name, "description": case.description }))
        .collect();
    let starts = TYPICAL.iter().map(|own| json!({ "from": own.name, "about": own.about }));
    let own = live.shelf.file().map(|path| json!({ "from": FILE, "about": path.display().to_string() }));
    Ok(json!({
        "revision": source.revision,
        "from": if source.file.is_some() { FILE } else { source.stem.as_str() },
        "file": source.file.as_ref().map(|path| path.display().to_string()),
        "system": if system == axlebow_units::UnitSystem::Si { "si" } else { "us" },
        "controls": controls(&changed.document, system),
        "cases": cases,
        "starts": own.into_iter().chain(starts).collect::<Vec<_>>(),
        "prices": live.options.prices.is_some(),
    })
    .to_string())
}

async fn disk(State(live): Shared) -> Answer {
    let own = live.clone();
    let work = move || Ok(json!({ "revision": own.shelf.revision_on_disk() }).to_string());
    in_lane(&live.lanes.slow, work).await.map(document)
}

/// A report's question, in its address because a browser opens it in a page of its own.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct ReportQuestion {
    ask: String,
}

async fn show_report(State(live): Shared, Query(question): Query<ReportQuestion>) -> Answer {
    let asked = read(question.ask.as_bytes())?;
    let own = live.clone();
    let text = in_lane(&live.lanes.slow, move || report(&own, &asked)).await?;
    let kind = HeaderValue::from_static("text/html; charset=utf-8");
    Ok(([(CONTENT_TYPE, kind), (CONTENT_SECURITY_POLICY, REPORT_POLICY)], text).into_response())
}
