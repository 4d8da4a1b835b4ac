//! Who may ask: only whoever has this start's key, from this machine, and no page of another origin in his name.

use axum::Json;
use axum::body::Body;
use axum::extract::{Request, State};
use axum::http::header::{
    AUTHORIZATION, CACHE_CONTROL, CONTENT_SECURITY_POLICY, COOKIE, HOST, HeaderMap, HeaderName, HeaderValue, LOCATION,
    ORIGIN, REFERRER_POLICY, SET_COOKIE, X_CONTENT_TYPE_OPTIONS, X_FRAME_OPTIONS,
};
use axum::http::{Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use serde_json::json;
use std::net::SocketAddr;
use std::sync::Arc;
use subtle::ConstantTimeEq;

/// What a request is held against.
#[derive(Debug)]
pub struct Guard {
    hosts: [String; 2],
    token: String,
    cookie: String,
}

/// What a page may do: nothing but what came with it.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; \
                      frame-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'self'";

/// A key that nobody can guess.
///
/// # Errors
/// When the machine has no random numbers.
pub fn token() -> Result<String, getrandom::Error> {
    let mut bytes = [0_u8; 24];
    getrandom::fill(&mut bytes)?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}

impl Guard {
    /// For a server at an address.
    #[must_use]
    pub fn new(address: SocketAddr, token: String) -> Self {
        let port = address.port();
        // Cookies are shared by all ports of a host: each server has its own.
        Self {
            hosts: [format!("127.0.0.1:{port}"), format!("localhost:{port}")],
            token,
            cookie: format!("sheet-{port}"),
        }
    }

    fn is_token(&self, text: &str) -> bool {
        text.as_bytes().ct_eq(self.token.as_bytes()).into()
    }

    /// Whether a request was meant for this server: another name that leads to this machine is a trick.
    fn is_for_us(&self, headers: &HeaderMap) -> bool {
        let host = headers.get(HOST).and_then(|host| host.to_str().ok());
        host.is_some_and(|host| self.hosts.iter().any(|own| own == host))
    }

    fn has_cookie(&self, headers: &HeaderMap) -> bool {
        let pairs = headers.get_all(COOKIE).iter().filter_map(|value| value.to_str().ok()).flat_map(|v| v.split(';'));
        pairs
            .filter_map(|pair| pair.trim().split_once('='))
            .any(|(name, value)| name == self.cookie && self.is_token(value))
    }

    fn has_bearer(&self, headers: &HeaderMap) -> bool {
        let value = headers.get(AUTHORIZATION).and_then(|value| value.to_str().ok());
        value.and_then(|value| value.strip_prefix("Bearer ")).is_some_and(|token| self.is_token(token))
    }

    /// Whether a page of this server asks; a browser says where a request comes from.
    fn is_own_page(&self, method: &Method, headers: &HeaderMap) -> bool {
        let text = |name: &HeaderName| headers.get(name).and_then(|value| value.to_str().ok());
        let site = headers.get("sec-fetch-site").and_then(|value| value.to_str().ok());
        let from_here = site.is_none_or(|site| matches!(site, "same-origin" | "none"));
        let reads = matches!(*method, Method::GET | Method::HEAD);
        match text(&ORIGIN) {
            Some(origin) => from_here && self.hosts.iter().any(|host| origin.strip_prefix("http://") == Some(host)),
            // A link from elsewhere may be followed, and what it shows may not be changed by it.
            None => {
                reads && site.is_none_or(|site| site != "cross-site" || is_navigation(headers))
                    || !reads && site == Some("same-origin")
            }
        }
    }
}

/// Whether somebody goes to a page, and no script fetches it.
fn is_navigation(headers: &HeaderMap) -> bool {
    headers.get("sec-fetch-mode").is_some_and(|mode| mode == "navigate")
}

/// Lets a request through, or says why not; every answer carries what protects the page.
pub async fn watch(State(guard): State<Arc<Guard>>, request: Request, next: Next) -> Response {
    let mut answer = match refusal(&guard, &request) {
        Some(answer) => answer,
        None => next.run(request).await,
    };
    let headers = answer.headers_mut();
    let mut set = |name: HeaderName, value: &'static str| headers.insert(name, HeaderValue::from_static(value));
    set(CONTENT_SECURITY_POLICY, POLICY);
    set(X_CONTENT_TYPE_OPTIONS, "nosniff");
    set(X_FRAME_OPTIONS, "SAMEORIGIN");
    set(REFERRER_POLICY, "no-referrer");
    set(HeaderName::from_static("cross-origin-opener-policy"), "same-origin");
    set(HeaderName::from_static("cross-origin-resource-policy"), "same-origin");
    headers.entry(CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    answer
}

/// The answer to a request that is not let through; `None` lets it.
fn refusal(guard: &Guard, request: &Request<Body>) -> Option<Response> {
    let (headers, uri, method) = (request.headers(), request.uri(), request.method());
    // A program is told in the same form as of any other refusal.
    let for_program = uri.path().starts_with("/api/") || uri.path() == "/openapi.json";
    let say = |status: StatusCode, text: &'static str| {
        let as_json = for_program && !crate::answer::wants_html(headers);
        Some(if as_json {
            (status, Json(json!({ "error": text.trim() }))).into_response()
        } else {
            (status, text).into_response()
        })
    };
    if !guard.is_for_us(headers) {
        return say(StatusCode::MISDIRECTED_REQUEST, "This is not the host you asked for.\n");
    }
    if *method == Method::GET && uri.path() == "/" {
        let said = |name: &str| uri.query()?.split('&').find_map(|pair| pair.strip_prefix(name)?.strip_prefix('='));
        if let Some(key) = said("key") {
            let sheet = said("sheet").unwrap_or_default();
            return if guard.is_token(key) { Some(let_in(guard, sheet)) } else { say(StatusCode::UNAUTHORIZED, STALE) };
        }
    }
    if guard.has_bearer(headers) {
        return None;
    }
    if !guard.has_cookie(headers) {
        return say(StatusCode::UNAUTHORIZED, STALE);
    }
    if !guard.is_own_page(method, headers) {
        return say(StatusCode::FORBIDDEN, "Only pages of this server may ask for that.\n");
    }
    None
}

/// Why a key does not fit.
const STALE: &str = "Open the sheet by the address that was printed when it was started: it holds the key, and each start \
                     has its own.\n";

/// Keeps the key in a cookie and takes it out of the address, which leads on to a sheet or to all of them.
fn let_in(guard: &Guard, sheet: &str) -> Response {
    // A name as it stands in an address, and nothing that leads elsewhere.
    let plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.' | '%');
    let on = if !sheet.is_empty() && sheet.chars().all(plain) { format!("/sheet/{sheet}") } else { "/".to_owned() };
    let cookie = format!("{}={}; HttpOnly; SameSite=Strict; Path=/", guard.cookie, guard.token);
    let mut answer = StatusCode::SEE_OTHER.into_response();
    if let Ok(on) = HeaderValue::from_str(&on) {
        answer.headers_mut().insert(LOCATION, on);
    }
    if let Ok(cookie) = HeaderValue::from_str(&cookie) {
        answer.headers_mut().insert(SET_COOKIE, cookie);
    }
    answer
}
