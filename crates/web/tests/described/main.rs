//! A client that knows the interface for programs from its description alone: what it asks, rightly or wrongly, is answered as
//! described, breaks nothing, and where it is refused changes nothing.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod requests;
#[path = "../served/mod.rs"]
mod served;
mod shape;

use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::TestRunner;
use requests::{Request, requests};
use serde_json::{Value, json};
use served::{Answer, Served, served};
use shape::astray;
use stillrise_desk::jobs::JOBS;

/// The job that requests are about.
const JOB: &str = "machine-shop";

fn asked(served: &Served, request: &Request) -> Answer {
    let key = served.key();
    let kind = request.kind.map(|kind| format!("Content-Type: {kind}"));
    let headers: Vec<&str> = kind.as_deref().into_iter().chain([key.as_str()]).collect();
    served.ask(&request.method, &request.path, &headers, &request.body)
}

/// Holds an answer against what is described.
fn keeps(root: &Value, operation: &Value, request: &Request, answer: &Answer) {
    let said = || {
        format!(
            "{} {} {}",
            request.method,
            request.path,
            String::from_utf8_lossy(&request.body).chars().take(400).collect::<String>()
        )
    };
    assert!((200..500).contains(&answer.status), "{}: {} {}", said(), answer.status, answer.text());
    let described = &operation["responses"][answer.status.to_string()];
    assert!(described.is_object(), "{}: {} is not described: {}", said(), answer.status, answer.text());
    let Some(content) = described["content"].as_object() else {
        assert!(answer.body.is_empty(), "{}: {} holds something", said(), answer.status);
        return;
    };
    if let Some(schema) = content.get("application/json").map(|json| &json["schema"]) {
        assert!(answer.kind().starts_with("application/json"), "{}: {}", said(), answer.kind());
        let astray = astray(root, schema, &answer.json(), "answer");
        assert_eq!(astray, None, "{}: {}", said(), answer.status);
    } else {
        let kind = content.keys().next().map_or("", String::as_str);
        assert!(kind == "*/*" || answer.kind().starts_with(kind), "{}: {}", said(), answer.kind());
    }
}

#[test]
fn what_is_described_is_what_is_answered() {
    let served = served(&[JOB]);
    let root = served.get("/openapi.json").json();
    let mut runner = TestRunner::deterministic();
    let mut counts: Vec<(u16, usize)> = Vec::new();
    let paths = root["paths"].as_object().unwrap();
    assert!(paths.len() > 20, "{}", paths.len());
    for (path, methods) in paths {
        for (method, operation) in methods.as_object().unwrap() {
            // What makes enquiries or packages is asked less: each of them is worked.
            let (right, wrong) = match (method.as_str(), path.as_str()) {
                ("post", "/api/sheets") => (5, 30),
                ("post", at) if at.ends_with("/packages") => (2, 20),
                ("get", _) => (12, 0),
                _ => (30, 40),
            };
            for k in 0..right + wrong {
                let request =
                    requests(&root, method, path, operation, k < right).new_tree(&mut runner).unwrap().current();
                let before = served.file(JOB);
                let answer = asked(&served, &request);
                keeps(&root, operation, &request, &answer);
                let shape = operation.pointer("/requestBody/content/application~1json/schema");
                let sent = shape.zip(serde_json::from_slice::<Value>(&request.body).ok());
                if let Some(wrong) = sent.and_then(|(shape, sent)| astray(&root, shape, &sent, "body")) {
                    assert!(answer.status >= 400, "{request:?}: {wrong}, and was taken: {}", answer.status);
                }
                let after = served.file(JOB);
                if answer.status >= 400 || request.method == "GET" {
                    assert_eq!(before, after, "{request:?} changed the enquiry: {}", answer.status);
                }
                assert!(stillrise_edit::headings(&after).is_ok(), "{request:?} left no enquiry behind");
                match counts.iter_mut().find(|(status, _)| *status == answer.status) {
                    Some((_, n)) => *n += 1,
                    None => counts.push((answer.status, 1)),
                }
            }
            let path = path.replace("{name}", JOB).replace(['{', '}'], "");
            let stranger = served.ask(&method.to_uppercase(), &path, &["Authorization: Bearer 0"], b"");
            assert_eq!(stranger.status, 401, "{method} {path}");
            assert_eq!(
                astray(&root, &json!({ "$ref": "#/components/schemas/Error" }), &stranger.json(), "answer"),
                None
            );
        }
        for method in ["GET", "POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE"] {
            if methods.get(method.to_lowercase()).is_none() {
                let path = path.replace("{name}", JOB).replace(['{', '}'], "");
                let answer = served.ask(method, &path, &[&served.key()], b"");
                assert_eq!(answer.status, 405, "{method} {path}");
                assert_eq!(
                    astray(&root, &json!({ "$ref": "#/components/schemas/Error" }), &answer.json(), "answer"),
                    None
                );
            }
        }
        assert_eq!(served.get("/api/sheets/machine-shop/version").status, 200, "after {path}");
    }
    // Each kind of answer was seen, so that the above was no idle talk.
    for status in [200, 201, 202, 400, 404, 409, 415, 422] {
        assert!(counts.iter().any(|(seen, _)| *seen == status), "{status} was never answered: {counts:?}");
    }
    for number in 1..9 {
        served.ask("DELETE", &format!("/api/packages/{number}"), &[&served.key()], b"");
    }
}

#[test]
fn every_worked_job_is_answered_in_the_shapes_described() {
    let names: Vec<&str> = JOBS.iter().map(|job| job.name).collect();
    let served = served(&names);
    let root = served.get("/openapi.json").json();
    let mut seen = 0;
    for name in &names {
        for (path, methods) in root["paths"].as_object().unwrap() {
            let operation = &methods["get"];
            if !path.starts_with("/api/sheets/{name}") || !operation.is_object() || path.ends_with("/risk") {
                continue;
            }
            let path = format!(
                "{}?with={}",
                path.replace("{name}", name).replace("{entry}", "40").replace("{rule}", "frost-outdoors"),
                names[0]
            );
            let answer = served.get(&path);
            let request = Request { method: "GET".to_owned(), path: path.clone(), kind: None, body: Vec::new() };
            keeps(&root, operation, &request, &answer);
            let may_lack = path.contains("/rating") || path.contains("/changes") || path.contains("/drawing.svg");
            assert!(answer.status == 200 || may_lack && answer.status == 404, "{path}: {}", answer.status);
            seen += usize::from(answer.status == 200);
        }
        let text = served.get(&format!("/api/sheets/{name}/text")).json();
        let found = served.post("/api/read", &json!({ "text": text["text"] }));
        assert!(found.json()["finds"].as_array().is_some_and(|all| !all.is_empty()), "{name}");
        assert_eq!(
            astray(&root, &json!({ "$ref": "#/components/schemas/Read" }), &found.json(), "found"),
            None,
            "{name}"
        );
    }
    assert!(seen > 10 * names.len(), "{seen}");
}

#[test]
fn the_manual_lists_every_way_that_is_described() {
    let served = served(&[]);
    let page = served.get("/manual/programs").text();
    let root = served.get("/openapi.json").json();
    for path in root["paths"].as_object().unwrap().keys() {
        assert!(page.contains(path.as_str()), "{path}");
    }
    assert!(
        !page.contains(&served.at.port().to_string()) && !page.contains(&served.token),
        "the page holds what is of this machine"
    );
}
