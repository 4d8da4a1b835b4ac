//! One way for programs: what it answers to, what it takes, what it answers, and who does it. Router, description and manual
//! are made from the same list of these, so that none can be without the others.

use crate::desk::Desk;
use axum::handler::Handler;
use axum::routing::{MethodRouter, delete, get, post, put};
use serde_json::Value;
use std::sync::Arc;

/// A value of an address.
#[derive(Debug, Clone)]
pub struct Asked {
    /// Its name.
    pub name: &'static str,
    /// What it is.
    pub says: &'static str,
    /// What it takes.
    pub takes: Value,
}

/// What an answer holds.
#[derive(Debug, Clone)]
pub enum Holds {
    /// JSON of a shape.
    Json(Value),
    /// A document of a kind.
    File(&'static str),
    /// Nothing.
    Nothing,
}

/// One way.
pub struct Route {
    /// The method, in small letters.
    pub method: &'static str,
    /// The path, with names in braces.
    pub path: &'static str,
    /// What programs call it.
    pub id: &'static str,
    /// What it does.
    pub says: &'static str,
    /// Values behind the question mark.
    pub asks: Vec<Asked>,
    /// The shape of the body, where it takes one.
    pub takes: Option<Value>,
    /// The status of the answer when it is done, and what that holds.
    pub answers: (u16, Holds),
    /// Statuses of its own refusals, beside those of all.
    pub refuses: &'static [u16],
    /// Who does it.
    pub by: MethodRouter<Arc<Desk>>,
}

impl Route {
    fn new(method: &'static str, path: &'static str, id: &'static str, by: MethodRouter<Arc<Desk>>) -> Self {
        Self {
            method,
            path,
            id,
            says: "",
            asks: Vec::new(),
            takes: None,
            answers: (200, Holds::Nothing),
            refuses: &[],
            by,
        }
    }

    /// One that reads.
    pub fn get<H: Handler<T, Arc<Desk>>, T: 'static>(path: &'static str, id: &'static str, by: H) -> Self {
        Self::new("get", path, id, get(by))
    }

    /// One that does something.
    pub fn post<H: Handler<T, Arc<Desk>>, T: 'static>(path: &'static str, id: &'static str, by: H) -> Self {
        Self::new("post", path, id, post(by))
    }

    /// One that replaces.
    pub fn put<H: Handler<T, Arc<Desk>>, T: 'static>(path: &'static str, id: &'static str, by: H) -> Self {
        Self::new("put", path, id, put(by))
    }

    /// One that ends something.
    pub fn delete<H: Handler<T, Arc<Desk>>, T: 'static>(path: &'static str, id: &'static str, by: H) -> Self {
        Self::new("delete", path, id, delete(by))
    }

    /// What it does, in a sentence.
    pub fn says(self, says: &'static str) -> Self {
        Self { says, ..self }
    }

    /// A value behind the question mark that may be left out.
    pub fn asks(mut self, name: &'static str, takes: Value, says: &'static str) -> Self {
        self.asks.push(Asked { name, says, takes });
        self
    }

    /// The shape of its body.
    pub fn takes(self, shape: Value) -> Self {
        Self { takes: Some(shape), ..self }
    }

    /// That it answers JSON of a shape.
    pub fn answers(self, shape: Value) -> Self {
        Self { answers: (200, Holds::Json(shape)), ..self }
    }

    /// That it answers another status or another thing than JSON.
    pub fn ends(self, status: u16, holds: Holds) -> Self {
        Self { answers: (status, holds), ..self }
    }

    /// Its own refusals.
    pub fn refuses(self, refuses: &'static [u16]) -> Self {
        Self { refuses, ..self }
    }

    /// The names in braces of its path.
    pub fn names(&self) -> impl Iterator<Item = &'static str> {
        self.path
            .split('/')
            .filter_map(|part| part.strip_prefix('{')?.strip_suffix('}'))
            .map(|name| name.trim_start_matches('*'))
    }

    /// The path as it is described; a name that takes the rest of a path is one like any other.
    pub fn described_path(&self) -> String {
        self.path.replace("{*", "{")
    }

    /// All statuses of refusals, in order.
    pub fn refusals(&self) -> Vec<u16> {
        // A bad address, no key, no page of this server, another host, and a failure of the machine or of time.
        let mut all = vec![400, 401, 403, 421, 500, 503];
        if self.takes.is_some() {
            all.extend([413, 415, 422]);
        }
        all.extend(self.refuses);
        all.sort_unstable();
        all.dedup();
        all
    }
}
