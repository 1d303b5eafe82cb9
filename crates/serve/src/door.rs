//! Who may come in: the token in the address, the host and the origin of a request.

use std::fmt::Write as _;
use std::io;
use std::sync::Arc;

use axum::extract::{Request, State};
use axum::http::header::{
    CACHE_CONTROL, CONTENT_SECURITY_POLICY, CONTENT_TYPE, HOST, HeaderName, ORIGIN, REFERRER_POLICY,
    X_CONTENT_TYPE_OPTIONS,
};
use axum::http::{HeaderValue, Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

/// Bytes of the token: 128 bits.
const TOKEN: usize = 16;

/// What a page may load: its own files, and nothing from elsewhere.
const POLICY: HeaderValue = HeaderValue::from_static(
    "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self' data:; \
     form-action 'none'; base-uri 'none'; frame-ancestors 'none'",
);

/// The same for a report, which carries its style within and has no script.
pub(crate) const REPORT_POLICY: HeaderValue = HeaderValue::from_static(
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; form-action 'none'; base-uri 'none'; \
     frame-ancestors 'none'",
);

/// The way in.
#[derive(Debug)]
pub(crate) struct Door {
    pub port: u16,
    pub token: String,
}

/// A token from the random numbers of the system, hexadecimal.
pub(crate) fn token() -> io::Result<String> {
    let mut bytes = [0u8; TOKEN];
    getrandom::fill(&mut bytes).map_err(io::Error::other)?;
    let mut text = String::with_capacity(2 * TOKEN);
    for byte in bytes {
        // Writing to a text does not fail.
        let _ = write!(text, "{byte:02x}");
    }
    Ok(text)
}

impl Door {
    /// The address of the page.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}/{}/", self.port, self.token)
    }

    /// Names by which this server is called.
    fn hosts(&self) -> [String; 2] {
        ["127.0.0.1", "localhost"].map(|name| format!("{name}:{}", self.port))
    }

    /// Why a request may not come in: another host's name (a name that was bent to this machine), another page's request,
    /// or a body that a form of another page could have sent.
    fn refusal(&self, request: &Request) -> Option<(StatusCode, &'static str)> {
        let header = |name: HeaderName| request.headers().get(name).map(HeaderValue::as_bytes);
        let hosts = self.hosts();
        let Some(host) = hosts.iter().find(|own| header(HOST) == Some(own.as_bytes())) else {
            return Some((
                StatusCode::FORBIDDEN,
                "this server answers to 127.0.0.1 and localhost with its port only",
            ));
        };
        if header(ORIGIN).is_some_and(|origin| origin != format!("http://{host}").as_bytes()) {
            return Some((StatusCode::FORBIDDEN, "this server answers its own page only"));
        }
        let is_json = header(CONTENT_TYPE) == Some(b"application/json");
        if request.method() == Method::POST && !is_json {
            return Some((StatusCode::UNSUPPORTED_MEDIA_TYPE, "a body of type application/json is accepted"));
        }
        None
    }
}

/// Lets a request in or refuses it, and says what the browser may do with the answer.
pub(crate) async fn guard(State(door): State<Arc<Door>>, request: Request, next: Next) -> Response {
    let mut response = match door.refusal(&request) {
        Some(refusal) => refusal.into_response(),
        None => next.run(request).await,
    };
    let headers = response.headers_mut();
    headers.entry(CONTENT_SECURITY_POLICY).or_insert(POLICY);
    headers.insert(X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    headers.insert(REFERRER_POLICY, HeaderValue::from_static("no-referrer"));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static("no-store"));
    headers.insert(
        HeaderName::from_static("cross-origin-resource-policy"),
        HeaderValue::from_static("same-origin"),
    );
    response
}
