//! `cargo xtask test`: everything a change must pass, in the order in which it is cheapest to fail.

use crate::{bless, browser, commands, docs, exchange, pdf, run};
use std::path::Path;
use std::time::{Duration, Instant};
use xtask::tree;

/// How a step ended without failing.
pub enum Done {
    /// Everything it looks at is in order.
    Passed,
    /// It could not look; why, and what to do. Never counted as passed.
    NotRun(String),
}

/// Names the seconds each fuzz test runs.
const FUZZ: &str = "STILLRISE_FUZZ_SECONDS";

/// A step: its name, what it asserts, and the function that does it.
struct Step {
    name: &'static str,
    about: &'static str,
    run: fn(&Path) -> Result<Done, String>,
}

const STEPS: &[Step] = &[
    Step { name: "tree", about: "the tree keeps its own rules", run: rules },
    Step { name: "format", about: "the code is formatted", run: format },
    Step { name: "lint", about: "clippy has nothing to say", run: lint },
    Step { name: "tests", about: "all tests and documentation examples pass", run: tests },
    Step { name: "browser", about: "the sheet does in a browser what a person asks of it", run: browser::run },
    Step {
        name: "docs",
        about: "the documentation builds without warnings, every way in the manual leads somewhere",
        run: docs::step,
    },
    Step { name: "examples", about: "every example runs", run: examples },
    Step { name: "commands", about: "every command works as a user would run it", run: commands::run },
    Step { name: "accepted", about: "the worked jobs give their accepted outputs", run: bless::check },
    Step { name: "pdf", about: "another program reads the PDF files back", run: pdf::run },
    Step { name: "exchange", about: "other programs read drawings, models and workbooks back", run: exchange::run },
];

/// Runs the steps named, or all.
pub fn main(args: &[String]) -> Result<(), String> {
    if args.iter().any(|a| a == "--list") {
        for step in STEPS {
            println!("{:<10} {}", step.name, step.about);
        }
        return Ok(());
    }
    if let Some(odd) = args.iter().find(|a| !STEPS.iter().any(|s| s.name == **a)) {
        let names: Vec<_> = STEPS.iter().map(|s| s.name).collect();
        return Err(format!("no step `{odd}`; there are {}", names.join(", ")));
    }
    let root = tree::root()?;
    let chosen: Vec<&Step> = STEPS.iter().filter(|s| args.is_empty() || args.iter().any(|a| a == s.name)).collect();
    let mut ended: Vec<(&Step, Duration, Result<Done, String>)> = Vec::new();
    for (n, step) in chosen.iter().enumerate() {
        println!("\n== {}/{} {}: {}", n + 1, chosen.len(), step.name, step.about);
        let start = Instant::now();
        let result = (step.run)(&root);
        let time = start.elapsed();
        match &result {
            Ok(Done::Passed) => {}
            Ok(Done::NotRun(why)) => println!("NOT RUN: {why}"),
            Err(why) => println!("{why}"),
        }
        println!("-- {} {}, {}", step.name, word(&result), seconds(time));
        let failed = result.is_err();
        ended.push((step, time, result));
        if failed {
            break;
        }
    }
    summary(&chosen, &ended)
}

/// The closing lines: every step with its result and time, then one line that says it all.
///
/// They go to standard output with the rest, in order; the error is empty because all is said.
fn summary(chosen: &[&Step], ended: &[(&Step, Duration, Result<Done, String>)]) -> Result<(), String> {
    println!("\n== summary");
    let (mut not_run, mut failed) = (0, None);
    for (step, time, result) in ended {
        println!("{:<8} {:<10} {:>9}  {}", word(result), step.name, seconds(*time), step.about);
        match result {
            Ok(Done::Passed) => {}
            Ok(Done::NotRun(why)) => {
                not_run += 1;
                println!("         NOT RUN: {why}");
            }
            Err(_) => failed = Some(step.name),
        }
    }
    for step in &chosen[ended.len()..] {
        println!("{:<8} {:<10} {:>9}  {}", "not run", step.name, "-", step.about);
    }
    let total = seconds(ended.iter().map(|(_, time, _)| *time).sum());
    if let Some(name) = failed {
        let left = chosen.len() - ended.len();
        println!("FAILED at step `{name}` after {total}; {left} steps after it were not run");
        return Err(String::new());
    }
    let passed = chosen.len() - not_run;
    match not_run {
        0 => println!("PASSED: {passed} steps in {total}"),
        n => println!("PASSED {passed} of {} steps in {total}; {n} could NOT BE RUN here: see above", chosen.len()),
    }
    Ok(())
}

fn word(result: &Result<Done, String>) -> &'static str {
    match result {
        Ok(Done::Passed) => "passed",
        Ok(Done::NotRun(_)) => "NOT RUN",
        Err(_) => "FAILED",
    }
}

fn seconds(time: Duration) -> String {
    format!("{:.1} s", time.as_secs_f64())
}

fn rules(root: &Path) -> Result<Done, String> {
    let files = tree::read(root)?;
    let faults: Vec<String> = tree::RULES.iter().flat_map(|r| r.faults(&files)).map(|f| f.to_string()).collect();
    println!("{} rules over {} files", tree::RULES.len(), files.len());
    if faults.is_empty() { Ok(Done::Passed) } else { Err(faults.join("\n")) }
}

fn format(root: &Path) -> Result<Done, String> {
    component("fmt", "rustfmt", root)?;
    run::show(run::cargo(root).args(["fmt", "--all", "--check"])).map_err(|e| format!("{e}; `cargo fmt` mends it"))?;
    Ok(Done::Passed)
}

fn lint(root: &Path) -> Result<Done, String> {
    component("clippy", "clippy", root)?;
    run::show(run::cargo(root).args(["clippy", "--workspace", "--all-targets", "--quiet", "--", "-D", "warnings"]))?;
    Ok(Done::Passed)
}

/// A small Rust installation lacks these two; rustup can add them.
fn component(command: &str, name: &str, root: &Path) -> Result<(), String> {
    let there = || run::capture(run::cargo(root).args([command, "--version"])).is_ok_and(|out| out.code == Some(0));
    if there() {
        return Ok(());
    }
    let tried = run::show(std::process::Command::new("rustup").current_dir(root).args(["component", "add", name]));
    if tried.is_ok() && there() {
        return Ok(());
    }
    Err(format!("`cargo {command}` is not installed; `rustup component add {name}`, or the system's package of it"))
}

fn tests(root: &Path) -> Result<Done, String> {
    // Readers and parsers are fuzzed longer here than when a developer runs one test.
    let fuzz = std::env::var(FUZZ).unwrap_or_else(|_| "20".to_owned());
    let cargo = |args: &[&str]| run::show(run::cargo(root).env(FUZZ, &fuzz).args(args));
    if run::capture(run::cargo(root).args(["nextest", "--version"])).is_ok_and(|out| out.code == Some(0)) {
        // What needs a browser has a step of its own.
        cargo(&["nextest", "run", "--workspace", "--status-level", "fail", "-E", "not binary(browser)"])?;
        // The other runner does not see examples in documentation.
        cargo(&["test", "--workspace", "--doc", "--quiet"])?;
    } else {
        let mut all = vec!["test".to_owned(), "--workspace".to_owned(), "--quiet".to_owned()];
        all.extend(["--lib", "--bins"].map(str::to_owned));
        for name in test_targets(root)?.into_iter().filter(|name| name != "browser") {
            all.extend(["--test".to_owned(), name]);
        }
        cargo(&all.iter().map(String::as_str).collect::<Vec<_>>())?;
        cargo(&["test", "--workspace", "--doc", "--quiet"])?;
    }
    Ok(Done::Passed)
}

/// Names of all targets that are tests of their own.
fn test_targets(root: &Path) -> Result<Vec<String>, String> {
    let out = run::capture(run::cargo(root).args(["metadata", "--no-deps", "--format-version", "1"]))?;
    let meta: serde_json::Value = serde_json::from_str(&out.stdout).map_err(|e| format!("cargo metadata: {e}"))?;
    let list = |v: &serde_json::Value| v.as_array().cloned().unwrap_or_default();
    let targets = list(&meta["packages"]).into_iter().flat_map(|package| list(&package["targets"]));
    let tests = targets.filter(|target| list(&target["kind"]).iter().any(|kind| kind == "test"));
    let mut names: Vec<String> = tests.filter_map(|target| target["name"].as_str().map(str::to_owned)).collect();
    names.sort();
    names.dedup();
    Ok(names)
}

/// Every target of kind `example` that cargo knows of.
fn examples(root: &Path) -> Result<Done, String> {
    let out = run::capture(run::cargo(root).args(["metadata", "--no-deps", "--format-version", "1"]))?;
    let meta: serde_json::Value = serde_json::from_str(&out.stdout).map_err(|e| format!("cargo metadata: {e}"))?;
    let list = |v: &serde_json::Value| v.as_array().cloned().unwrap_or_default();
    let mut count = 0;
    for package in list(&meta["packages"]) {
        for target in list(&package["targets"]) {
            let is_example = list(&target["kind"]).iter().any(|k| k == "example");
            let Some(name) = target["name"].as_str().filter(|_| is_example) else { continue };
            // All at once, and as the tests were built: one package alone would build what it rests on anew.
            if count == 0 {
                run::show(run::cargo(root).args(["build", "--quiet", "--workspace", "--examples"]))?;
            }
            count += 1;
            run::show(&mut run::plain(&run::built("debug/examples", name)?, root))?;
        }
    }
    if count == 0 {
        return Ok(Done::NotRun("there are no examples in crates/*/examples yet".to_owned()));
    }
    Ok(Done::Passed)
}
