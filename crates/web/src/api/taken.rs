//! What a request brings, taken apart; where that fails a program is told in JSON, as of any other refusal.

use crate::answer::wants_html;
use axum::extract::{FromRequest, FromRequestParts, Json, Path, Query, Request};
use axum::http::StatusCode;
use axum::http::header::HeaderMap;
use axum::http::request::Parts;
use axum::response::{IntoResponse, Response};
use serde::de::DeserializeOwned;
use serde_json::{Map, Value, json};

/// The body, an object in JSON.
pub struct Body<T>(pub T);

/// The body, a list of objects in JSON.
pub struct Bodies<T>(pub Vec<T>);

/// What stands behind the question mark.
pub struct Asks<T>(pub T);

/// What stands in the path.
pub struct At<T>(pub T);

/// A refusal in words.
pub fn refused(headers: &HeaderMap, status: StatusCode, says: String) -> Response {
    if wants_html(headers) {
        (status, says).into_response()
    } else {
        (status, Json(json!({ "error": says }))).into_response()
    }
}

impl<S: Send + Sync, T: DeserializeOwned> FromRequest<S> for Body<T> {
    type Rejection = Response;

    async fn from_request(request: Request, state: &S) -> Result<Self, Response> {
        let headers = request.headers().clone();
        let map: Map<String, Value> = read(request, state).await?;
        object(map).map(Self).map_err(|why| refused(&headers, StatusCode::UNPROCESSABLE_ENTITY, why))
    }
}

impl<S: Send + Sync, T: DeserializeOwned> FromRequest<S> for Bodies<T> {
    type Rejection = Response;

    async fn from_request(request: Request, state: &S) -> Result<Self, Response> {
        let headers = request.headers().clone();
        let all: Vec<Map<String, Value>> = read(request, state).await?;
        let all: Result<Vec<T>, String> = all.into_iter().map(object).collect();
        all.map(Self).map_err(|why| refused(&headers, StatusCode::UNPROCESSABLE_ENTITY, why))
    }
}

/// JSON of a body.
async fn read<S: Send + Sync, T: DeserializeOwned>(request: Request, state: &S) -> Result<T, Response> {
    let headers = request.headers().clone();
    let taken = Json::<T>::from_request(request, state).await;
    taken.map(|Json(body)| body).map_err(|why| refused(&headers, why.status(), why.body_text()))
}

/// What an object holds. A list of values without their names would else be taken for one.
fn object<T: DeserializeOwned>(map: Map<String, Value>) -> Result<T, String> {
    serde_json::from_value(Value::Object(map)).map_err(|why| format!("The body has not the shape described: {why}"))
}

impl<S: Send + Sync, T: DeserializeOwned> FromRequestParts<S> for Asks<T> {
    type Rejection = Response;

    async fn from_request_parts(parts: &mut Parts, state: &S) -> Result<Self, Response> {
        let taken = Query::<T>::from_request_parts(parts, state).await;
        taken.map(|Query(asks)| Self(asks)).map_err(|why| refused(&parts.headers, why.status(), why.body_text()))
    }
}

impl<S: Send + Sync, T: DeserializeOwned + Send> FromRequestParts<S> for At<T> {
    type Rejection = Response;

    async fn from_request_parts(parts: &mut Parts, state: &S) -> Result<Self, Response> {
        let taken = Path::<T>::from_request_parts(parts, state).await;
        taken.map(|Path(at)| Self(at)).map_err(|why| refused(&parts.headers, why.status(), why.body_text()))
    }
}
