//! Why there is no answer, as the page is told.

use axlebow_axle::AxleError;
use axlebow_model::{ModelError, Problem, Problems};
use axlebow_report::ReportError;
use axum::http::StatusCode;
use axum::http::header::CONTENT_TYPE;
use axum::response::{IntoResponse, Response};
use serde_json::{Value, json};

/// Why there is no answer.
#[derive(Debug)]
pub(crate) enum Trouble {
    /// A file or a combination of values is wrong, each problem with its place.
    Problems(Problems),
    /// Something is refused, in words.
    Refused(String),
    /// A request that no page of ours makes.
    Malformed(String),
    /// What was asked about is no longer held; the page must begin again.
    Gone,
    /// A fault of this program.
    Internal,
}

impl Trouble {
    fn status(&self) -> StatusCode {
        match self {
            Trouble::Problems(_) | Trouble::Refused(_) => StatusCode::UNPROCESSABLE_ENTITY,
            Trouble::Malformed(_) => StatusCode::BAD_REQUEST,
            Trouble::Gone => StatusCode::GONE,
            Trouble::Internal => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    /// The problems, each with its line where it has one.
    pub fn document(&self) -> Value {
        let lone = |message: &str| json!([{ "message": message }]);
        let problems = match self {
            Trouble::Problems(problems) => problems.iter().map(problem).collect(),
            Trouble::Refused(text) | Trouble::Malformed(text) => lone(text),
            Trouble::Gone => lone("the page is older than the server; load it again"),
            Trouble::Internal => lone("the program failed on this; the terminal that runs it may say more"),
        };
        json!({ "problems": problems })
    }
}

fn problem(own: &Problem) -> Value {
    json!({
        "line": own.line,
        "column": own.column,
        "message": own.message,
        "accepted": own.accepted,
        "likely": own.likely,
    })
}

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        (self.status(), [(CONTENT_TYPE, "application/json")], self.document().to_string()).into_response()
    }
}

impl From<Problems> for Trouble {
    fn from(problems: Problems) -> Self {
        Trouble::Problems(problems)
    }
}

impl From<AxleError> for Trouble {
    fn from(error: AxleError) -> Self {
        Trouble::Refused(error.to_string())
    }
}

impl From<ModelError> for Trouble {
    fn from(error: ModelError) -> Self {
        Trouble::Refused(error.to_string())
    }
}

impl From<ReportError> for Trouble {
    fn from(error: ReportError) -> Self {
        Trouble::Refused(error.to_string())
    }
}
