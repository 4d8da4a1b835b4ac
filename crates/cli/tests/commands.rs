//! Every command as a user runs it.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{folder, job, jobs, program, run};
use serde_json::Value;
use std::io::Read;
use std::path::Path;
use std::process::Stdio;

fn here() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Ctrl-C ends a long study at once; nothing is printed of it.
#[cfg(unix)]
#[test]
fn a_long_study_is_stopped() {
    let child = program()
        .args(["risk", &job("truck-wash").to_string_lossy(), "--samples", "500000"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    std::thread::sleep(std::time::Duration::from_secs(3));
    let kill = std::process::Command::new("kill").args(["-INT", &child.id().to_string()]).status();
    assert!(kill.expect("kill runs").success());
    let out = child.wait_with_output().expect("it ends");
    let said = String::from_utf8_lossy(&out.stderr).into_owned();
    assert_eq!((out.status.code(), out.stdout.len()), (Some(3), 0), "{said}");
    assert!(said.contains("Stopped; nothing was written."), "{said}");
}

#[test]
fn help_names_every_command_and_the_exit_codes() {
    let (code, out, _) = run(here(), &["--help"]);
    assert_eq!(code, 0);
    for word in [
        "new",
        "size",
        "reply",
        "submittal",
        "risk",
        "rate",
        "issue",
        "work",
        "verify",
        "schema",
        "completions",
        "man",
        "Exit codes",
    ] {
        assert!(out.contains(word), "{word}");
    }
    for command in
        ["new", "size", "reply", "submittal", "risk", "rate", "work", "verify", "schema", "completions", "man"]
    {
        let (code, out, _) = run(here(), &[command, "--help"]);
        assert!(code == 0 && out.contains("Usage"), "{command}");
    }
}

#[test]
fn the_result_has_the_shape_its_schema_states_and_no_clock() {
    let (_, schema, _) = run(here(), &["schema", "result"]);
    let schema: Value = serde_json::from_str(&schema).expect("JSON");
    for name in jobs() {
        let path = job(&name).to_string_lossy().into_owned();
        let (_, first, _) = run(here(), &["size", &path, "--json"]);
        let (_, second, _) = run(here(), &["size", &path, "--json"]);
        assert_eq!(first, second, "{name}");
        let result: Value = serde_json::from_str(&first).expect("JSON");
        let result = result.as_object().expect("an object");
        let stated = schema["properties"].as_object().expect("properties");
        for key in result.keys() {
            assert!(stated.contains_key(key), "{key} is not in the schema");
        }
        for key in schema["required"].as_array().expect("a list") {
            assert!(result.contains_key(key.as_str().expect("a name")), "{key} is missing");
        }
        assert!(result["trail"].as_array().is_some_and(|t| t.len() > 100));
    }
}

#[test]
fn every_worked_job_sizes_and_replies_without_colour() {
    for (name, code) in [("vehicle-yard", 0), ("transformer-yard", 1), ("truck-wash", 1), ("machine-shop", 1)] {
        let path = job(name).to_string_lossy().into_owned();
        for command in ["size", "reply"] {
            let (got, out, err) = run(here(), &[command, &path]);
            assert_eq!((got, err.as_str()), (code, ""), "{command} {name}");
            assert!(!out.contains('\u{1b}'), "escape codes in {command}");
            assert!(out.contains("licensed engineer"), "{command} {name} carries no caution");
        }
    }
}

#[test]
fn a_closed_pipe_is_no_fault() {
    for args in [&["size", "--json"][..], &["size"], &["reply"]] {
        let path = job("vehicle-yard").to_string_lossy().into_owned();
        let mut child = program()
            .args([args[0], &path])
            .args(&args[1..])
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("starts");
        let mut first = [0u8; 10];
        child.stdout.take().expect("a pipe").read_exact(&mut first).expect("ten bytes");
        let out = child.wait_with_output().expect("ends");
        assert!(out.stderr.is_empty(), "{}", String::from_utf8_lossy(&out.stderr));
        assert!(out.status.code().is_some_and(|c| c <= 1), "{:?}", out.status);
    }
}

#[test]
fn new_starts_an_enquiry_that_sizes_and_overwrites_nothing() {
    let dir = tempfile::tempdir().expect("a folder");
    for name in jobs() {
        let (code, out, _) = run(dir.path(), &["new", &name, "--like", &name]);
        assert!(code == 0 && out.contains("enquiry.toml"));
        let (code, ..) = run(dir.path(), &["size", &name]);
        assert!(code <= 1, "{name}");
        let (code, _, err) = run(dir.path(), &["new", &name, "--like", &name]);
        assert!(code == 2 && err.contains("exists already"), "{err}");
    }
}

#[test]
fn the_blank_enquiry_names_every_key_of_the_schema() {
    let dir = tempfile::tempdir().expect("a folder");
    let (code, ..) = run(dir.path(), &["new", "blank", "--blank"]);
    assert_eq!(code, 0);
    let text = std::fs::read_to_string(dir.path().join("blank/enquiry.toml")).expect("written");
    let (_, schema, _) = run(dir.path(), &["schema", "enquiry"]);
    let schema: Value = serde_json::from_str(&schema).expect("JSON");
    for (block, spec) in schema["properties"].as_object().expect("blocks") {
        assert!(text.contains(&format!("[{block}]")), "{block}");
        let keys = if spec["items"].is_object() { &spec["items"]["properties"] } else { &spec["properties"] };
        for key in keys.as_object().expect("keys").keys() {
            assert!(text.contains(&format!("{key} =")), "{block}.{key}");
        }
    }
    // With a stream it is an enquiry.
    let filled = format!("{text}\n[[stream]]\nflow = \"10 gpm\"\n");
    let dir = folder(&filled);
    let (code, _, err) = run(dir.path(), &["size", "enquiry.toml"]);
    assert!(code <= 1, "{err}");
}

#[test]
fn verify_counts_checks_by_evidence_and_none_fails() {
    let (code, out, _) = run(here(), &["verify", "--json"]);
    let value: Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(code, 0);
    assert!(value["checks"].as_u64().is_some_and(|n| n > 3000), "{}", value["checks"]);
    assert!(value["formulas"].as_u64().is_some_and(|n| n >= 35));
    let by: u64 = value["by_evidence"].as_object().expect("kinds").values().filter_map(Value::as_u64).sum();
    assert_eq!(Some(by), value["checks"].as_u64());
    let said = |o: &Value, name: &str| o[name].as_str().is_some_and(|text| !text.is_empty());
    let outcomes = value["outcomes"].as_array().expect("outcomes");
    assert!(outcomes.iter().all(|o| said(o, "tolerance") && said(o, "tolerance_reason")));
}

#[test]
fn verify_says_how_far_a_value_may_lie_off_and_why() {
    let (code, out, _) = run(here(), &["verify", "stokes-rise"]);
    assert_eq!(code, 0);
    for part in [
        "tolerance 5e-7 m/s: digits printed in the source",
        "tolerance 0.1 %: the source cuts digits off",
        "tolerance exact: nothing, not something small",
        "tolerance 5e-5 mm/s: digits of the value worked apart",
    ] {
        assert!(out.contains(part), "{part}: {out}");
    }
}

#[test]
fn work_shows_the_equation_with_numbers() {
    let (code, out, _) =
        run(here(), &["work", "stokes-rise", "d=60 um", "rho_w=998.2 kg/m3", "rho_o=840 kg/m3", "mu=1.0016 mPa s"]);
    assert_eq!(code, 0);
    for part in ["g·(ρ_w - ρ_o)·d·d/(18·µ)", "0.3098 mm/s", "source"] {
        assert!(out.contains(part), "{part}: {out}");
    }
}

/// A line on the way has no unit, the result's line has the result's.
#[test]
fn work_gives_the_unit_of_the_result_to_the_result_alone() {
    let args = ["work", "oil-density", "rho_15=850 kg/m3", "t=5 °C", "group=crude"];
    let (code, out, _) = run(here(), &args);
    assert_eq!(code, 0);
    let flat = out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("= 857.204 kg/m3") && flat.contains("- 15 = -10 "), "{out}");
    assert!(!flat.contains("0.000849789 kg/m3") && !flat.contains("-10 kg/m3"), "{out}");
    let (_, json, _) = run(here(), &[&args[..], &["--json"]].concat());
    let value: Value = serde_json::from_str(&json).expect("JSON");
    let units: Vec<_> = value["worked"].as_array().expect("lines").iter().map(|l| l["unit"].as_str()).collect();
    assert_eq!(units, [Some(""), Some(""), Some("kg/m3")]);
}

#[test]
fn risk_gives_bands_that_are_the_same_on_every_run() {
    let path = job("machine-shop").to_string_lossy().into_owned();
    let args = ["risk", &path, "--samples", "300", "--json"];
    let (code, first, err) = run(here(), &args);
    assert_eq!((code, err.as_str()), (1, ""));
    assert_eq!(run(here(), &args).1, first);
    let study: Value = serde_json::from_str(&first).expect("JSON");
    assert_eq!(study["samples"], 300);
    let expected = &study["total_oil_out"]["expected"];
    let number = |name: &str| expected[name].as_f64().expect("a number");
    assert!(number("p05") < number("median") && number("median") < number("p95"), "{expected}");
    assert!(study["carriers"].as_array().is_some_and(|c| !c.is_empty()));
    let (_, text, _) = run(here(), &["risk", &path, "--samples", "300"]);
    for words in ["governs", "results kept", "What carries the spread", "licensed engineer"] {
        assert!(text.contains(words), "{words}");
    }
}

#[test]
fn risk_refuses_what_it_cannot_draw() {
    let path = job("machine-shop").to_string_lossy().into_owned();
    let (code, _, err) = run(here(), &["risk", &path, "--samples", "0"]);
    assert!(code == 2 && err.contains("20"), "{err}");
}

#[test]
fn rate_explains_what_was_observed() {
    let path = job("machine-shop").to_string_lossy().into_owned();
    let (code, text, err) = run(here(), &["rate", &path]);
    assert_eq!((code, err.as_str()), (1, ""));
    for words in ["emulsified", "What to test next", "larger unit would not help", "flammable vapour"] {
        assert!(text.contains(words), "{words}\n{text}");
    }
    let (_, json, _) = run(here(), &["rate", &path, "--json"]);
    let rating: Value = serde_json::from_str(&json).expect("JSON");
    assert_eq!(rating["causes"][0]["cause"], "emulsion");
    assert_eq!(rating["larger_unit"]["helps"], false);
}

#[test]
fn rate_refuses_an_enquiry_without_a_unit_or_without_observations() {
    for (name, words) in [("vehicle-yard", "not described"), ("truck-wash", "not described")] {
        let path = job(name).to_string_lossy().into_owned();
        let (code, out, err) = run(here(), &["rate", &path]);
        assert!(code == 2 && out.is_empty() && err.contains(words), "{name}: {err}");
    }
}

/// Whether a value has the shape that a schema states, as far as ours go; the first place where it has not.
fn astray(schema: &Value, value: &Value, at: &str) -> Option<String> {
    if let Some(any) = schema["anyOf"].as_array() {
        let all: Option<Vec<String>> = any.iter().map(|s| astray(s, value, at)).collect();
        return all.and_then(|found| found.into_iter().next());
    }
    let kind = match value {
        Value::Null => "null",
        Value::Bool(_) => "boolean",
        Value::Number(n) if n.is_f64() => "number",
        Value::Number(_) => "integer",
        Value::String(_) => "string",
        Value::Array(_) => "array",
        Value::Object(_) => "object",
    };
    let fits = |t: &Value| t == kind || t == "number" && kind == "integer";
    if !schema["type"].as_array().map_or_else(|| fits(&schema["type"]), |list| list.iter().any(fits)) {
        return Some(format!("{at} is a {kind}"));
    }
    match value {
        Value::Array(list) => {
            list.iter().enumerate().find_map(|(k, v)| astray(&schema["items"], v, &format!("{at}[{k}]")))
        }
        Value::Object(map) => {
            let stated = schema["properties"].as_object()?;
            let missing = stated.keys().find(|k| !map.contains_key(*k)).map(|k| format!("{at} has no {k}"));
            missing.or_else(|| {
                map.iter().find_map(|(k, v)| match stated.get(k) {
                    None => Some(format!("{at} has {k}, which the schema has not")),
                    Some(schema) => astray(schema, v, &format!("{at}.{k}")),
                })
            })
        }
        _ => None,
    }
}

#[test]
fn rate_by_change_has_a_time_line_steps_and_the_shape_its_schema_states() {
    let path = here().join("../search/tests/data/changed.toml").to_string_lossy().into_owned();
    let (_, text, err) = run(here(), &["rate", &path]);
    assert_eq!(err, "");
    for words in
        ["Time line", ">> new cleaner", "good period", "up to three causes", "Sample again", "not before", "put right"]
    {
        assert!(squeezed(&text).contains(words), "{words}\n{text}");
    }
    let (_, schema, _) = run(here(), &["schema", "rating"]);
    let schema: Value = serde_json::from_str(&schema).expect("JSON");
    let machine = job("machine-shop").to_string_lossy().into_owned();
    for path in [&path, &machine] {
        let (_, json, _) = run(here(), &["rate", path, "--json"]);
        let rating: Value = serde_json::from_str(&json).expect("JSON");
        assert_eq!(astray(&schema, &rating, "rating"), None);
    }
}

/// On one line.
fn squeezed(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn the_readme_lists_the_documents_that_a_package_is_made_of() {
    let readme = std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("../../README.md")).expect("read");
    let table = stillrise_documents::contents::list_markdown();
    assert!(readme.contains(&table), "README has another table than this:\n{table}");
}

#[test]
fn documents_tells_what_there_is_and_what_a_job_gives() {
    let (code, all, err) = run(here(), &["documents", "--json"]);
    assert_eq!((code, err.as_str()), (0, ""));
    let all: Value = serde_json::from_str(&all).expect("JSON");
    let titles = |value: &Value| -> Vec<String> {
        value.as_array().into_iter().flatten().filter_map(|one| one["title"].as_str().map(str::to_owned)).collect()
    };
    let named = titles(&all);
    assert!(named.len() > 20, "{named:?}");
    let (_, text, _) = run(here(), &["documents"]);
    let (_, help, _) = run(here(), &["submittal", "--help"]);
    for title in &named {
        assert!(text.contains(title.as_str()) && help.contains(title.as_str()), "{title}");
    }
    let (_, own, _) = run(here(), &["documents", "--for", "client", "--json"]);
    let own = titles(&serde_json::from_str(&own).expect("JSON"));
    assert!(own.len() < named.len() && !own.contains(&"Inputs".to_owned()), "{own:?}");
    // The unit of this job stands: nothing is bought.
    let stands = job("foundry").to_string_lossy().into_owned();
    let (code, told, _) = run(here(), &["documents", &stands, "--json"]);
    let told: Value = serde_json::from_str(&told).expect("JSON");
    assert_eq!((code, told["documents"].as_array().map(Vec::len)), (0, Some(named.len())));
    for one in told["documents"].as_array().into_iter().flatten() {
        assert_eq!(one["given"] == true, one["why_not"].is_null(), "{one}");
        match one["name"].as_str() {
            Some("bill-of-materials") => assert!(one["why_not"].as_str().is_some_and(|why| why.contains("stands"))),
            Some("drawings") => assert!(one["sheets"].as_array().is_some_and(|sheets| sheets.len() > 3), "{one}"),
            _ => {}
        }
    }
    let (code, _, said) = run(here(), &["documents", "no-such-file.toml"]);
    assert!(code == 2 && said.contains("no-such-file.toml"), "{code} {said}");
}
