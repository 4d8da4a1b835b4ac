//! What goes wrong, as an answer: a page's piece for a page, JSON for a program.

use axum::Json;
use axum::body::Body;
use axum::http::header::{ACCEPT, CONTENT_TYPE, HeaderMap, HeaderValue};
use axum::http::{Response as HttpResponse, StatusCode};
use axum::response::{IntoResponse, Response};
use core::any::Any;
use maud::{Markup, html};
use serde_json::{Value, json};
use stillrise_desk::Trouble;
use stillrise_desk::save::Unsaved;
use stillrise_units::Fault;

/// Why something was not done. Whatever stood before stands.
#[derive(Debug)]
pub enum Refusal {
    /// The input is refused; every fault.
    Faults(Vec<Fault>),
    /// It was meant for another state of the enquiry than the one that stands now.
    Conflict(String),
    /// There is no such thing.
    Missing(String),
    /// The machine failed.
    Machine(String),
}

impl From<Trouble> for Refusal {
    fn from(trouble: Trouble) -> Self {
        match trouble {
            Trouble::Refused(faults) => Refusal::Faults(faults),
            Trouble::Machine(reason) => Refusal::Machine(reason),
        }
    }
}

impl From<Fault> for Refusal {
    fn from(fault: Fault) -> Self {
        Refusal::Faults(vec![fault])
    }
}

impl From<Unsaved> for Refusal {
    fn from(unsaved: Unsaved) -> Self {
        match unsaved {
            Unsaved::Disk(reason) => Refusal::Machine(reason),
            other => Refusal::Conflict(format!("Nothing was saved: {other}.")),
        }
    }
}

impl Refusal {
    /// A key or place is not there.
    pub fn missing(what: impl Into<String>) -> Self {
        Refusal::Missing(what.into())
    }

    fn status(&self) -> StatusCode {
        match self {
            Refusal::Faults(_) => StatusCode::UNPROCESSABLE_ENTITY,
            Refusal::Conflict(_) => StatusCode::CONFLICT,
            Refusal::Missing(_) => StatusCode::NOT_FOUND,
            Refusal::Machine(_) => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    /// As JSON.
    #[must_use]
    pub fn json(&self) -> Value {
        match self {
            Refusal::Faults(faults) => json!({ "refused": faults.iter().map(fault).collect::<Vec<_>>() }),
            Refusal::Conflict(says) | Refusal::Missing(says) | Refusal::Machine(says) => json!({ "error": says }),
        }
    }

    /// As a piece of a page.
    #[must_use]
    pub fn html(&self) -> Markup {
        html! {
            div #trouble data-patch role="alert" {
                @match self {
                    Refusal::Faults(faults) => {
                        p { strong { "Not taken." } " What stood before stands." }
                        ul { @for fault in faults { li { (said(fault)) } } }
                    }
                    Refusal::Conflict(says) | Refusal::Missing(says) | Refusal::Machine(says) => p { (says) }
                }
                button type="button" data-close="trouble" { "Close" }
            }
        }
    }

    /// For whoever asked: a page takes a piece of a page, a program JSON.
    #[must_use]
    pub fn answer(&self, headers: &HeaderMap) -> Response {
        if wants_html(headers) {
            (self.status(), self.html()).into_response()
        } else {
            (self.status(), Json(self.json())).into_response()
        }
    }
}

/// A fault in a sentence: where, why, what helps.
pub fn said(fault: &Fault) -> Markup {
    html! { b { (fault.place) } ": " (fault.reason) "; " (fault.remedy) "." }
}

/// A fault as JSON.
#[must_use]
pub fn fault(fault: &Fault) -> Value {
    json!({ "place": fault.place, "reason": fault.reason, "remedy": fault.remedy })
}

/// Whether whoever asks takes HTML.
#[must_use]
pub fn wants_html(headers: &HeaderMap) -> bool {
    headers.get(ACCEPT).and_then(|accept| accept.to_str().ok()).is_some_and(|accept| accept.contains("text/html"))
}

/// The same for a program.
#[allow(clippy::needless_pass_by_value)]
pub fn panicked_json(_: Box<dyn Any + Send + 'static>) -> HttpResponse<Body> {
    let says = "The program failed at this request; nothing was changed by it, and all else goes on. Please tell us what you did.";
    (StatusCode::INTERNAL_SERVER_ERROR, Json(json!({ "error": says }))).into_response()
}

/// The answer where the program itself failed: that one request ends, and no other.
#[allow(clippy::needless_pass_by_value)]
pub fn panicked(_: Box<dyn Any + Send + 'static>) -> HttpResponse<Body> {
    let text = "The program failed at this request; nothing was changed by it, and all else goes on. Please tell us what you did.\n";
    let mut answer = HttpResponse::new(Body::from(text));
    *answer.status_mut() = StatusCode::INTERNAL_SERVER_ERROR;
    answer.headers_mut().insert(CONTENT_TYPE, HeaderValue::from_static("text/plain; charset=utf-8"));
    answer
}
