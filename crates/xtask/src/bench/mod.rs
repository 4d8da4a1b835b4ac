//! `cargo xtask bench`: whole-process wall times of the release build, beside peers of the same run.
//!
//! A time by itself says as much about the machine and its other guests as about the program.
//! So every round also starts two peers: the same program with nothing to do, and a fixed piece
//! of arithmetic. Rounds are interleaved, so that a busy moment falls on all alike; the ratios
//! are what to compare between days and machines. Nothing here is part of the tests.

mod rows;
mod steady;

use crate::run;
use std::path::{Path, PathBuf};
use std::process::Stdio;
use std::time::{Duration, Instant};
use xtask::tree;

const RUNS: usize = 15;
/// A worked job whose unit lies in the ground, for the times of a whole package.
const BURIED: &str = "fuel-pad";

/// Something to time: what it is, how to start it, and the time asked of it, if any.
struct Item {
    name: &'static str,
    program: PathBuf,
    /// `{round}` in an argument becomes the number of the round.
    args: Vec<String>,
    bar_ms: Option<f64>,
    times: Vec<Duration>,
}

/// The command.
pub fn main(args: &[String]) -> Result<(), String> {
    let (runs, named) = options(args)?;
    let root = tree::root()?;
    let all = run::jobs(&root)?;
    let chosen = named.map_or_else(|| all.first().cloned(), |name| all.iter().find(|j| **j == name).cloned());
    let job = chosen.ok_or_else(|| format!("no such worked job; there are: {}", all.join(", ")))?;
    // All at once, so that nothing is built twice for another set of features.
    let all = ["build", "--release", "--workspace", "--bin", "stillrise", "--bin", "xtask", "--bench", "sheet"];
    run::show(run::cargo(&root).args(all))?;
    let scratch = tempfile::tempdir().map_err(|e| format!("no scratch folder: {e}"))?;
    let mut items = items(&root, &job, scratch.path())?;
    for round in 0..=runs {
        for item in &mut items {
            let time = time(item, &root, round)?;
            // The first round warms the file cache and does not count.
            if round > 0 {
                item.times.push(time);
            }
        }
    }
    print(&mut items, &job, runs);
    run::show(run::plain(&run::built("release", "xtask")?, &root).arg("steady"))?;
    sheet(&root)
}

/// The sheet, served by the built program, in a real browser.
fn sheet(root: &Path) -> Result<(), String> {
    let program = run::built("release", "stillrise")?;
    let bench = ["bench", "--quiet", "--workspace", "--bench", "sheet"];
    run::show(run::cargo(root).env("STILLRISE_PROGRAM", program).args(bench))
}

fn options(args: &[String]) -> Result<(usize, Option<String>), String> {
    let (mut runs, mut job) = (RUNS, None);
    let mut rest = args.iter();
    while let Some(arg) = rest.next() {
        match arg.as_str() {
            "--runs" => {
                let number = rest.next().and_then(|n| n.parse().ok()).filter(|n| *n > 0);
                runs = number.ok_or("--runs wants a number above 0")?;
            }
            odd if odd.starts_with('-') => return Err(format!("`bench` takes no `{odd}`")),
            name => job = Some(name.to_owned()),
        }
    }
    Ok((runs, job))
}

fn items(root: &Path, job: &str, scratch: &Path) -> Result<Vec<Item>, String> {
    let (program, own) = (run::built("release", "stillrise")?, run::built("release", "xtask")?);
    let file = run::enquiry(job);
    let of_rows =
        |count| -> Result<String, String> { Ok(rows::of(count, root, scratch, job)?.to_string_lossy().into_owned()) };
    let (sixty, forty) = (of_rows(60)?, of_rows(40)?);
    let buried = run::enquiry(BURIED);
    let at = |what: &str| scratch.join(format!("{what}-{{round}}")).to_string_lossy().into_owned();
    let out = at("job");
    let item = |name, program: &Path, args: &[&str], bar_ms| Item {
        name,
        program: program.to_path_buf(),
        args: args.iter().map(|a| (*a).to_owned()).collect(),
        bar_ms,
        times: Vec::new(),
    };
    Ok(vec![
        item("peer: stillrise --version", &program, &["--version"], None),
        item("peer: fixed arithmetic", &own, &["reference"], None),
        item("size", &program, &["size", &file], Some(20.0)),
        item("size, of 60 rows", &program, &["size", &sixty], Some(100.0)),
        item("compare with 40 rows", &program, &["compare", &forty, "--with-range"], Some(200.0)),
        item("submittal", &program, &["submittal", &file, "--out", &out], Some(1000.0)),
        item("submittal, buried", &program, &["submittal", &buried, "--out", &at("buried")], Some(1000.0)),
        item(
            "submittal, buried, all",
            &program,
            &["submittal", &buried, "--for", "us", "--out", &at("all")],
            Some(3000.0),
        ),
    ])
}

fn time(item: &Item, root: &Path, round: usize) -> Result<Duration, String> {
    let mut command = run::plain(&item.program, root);
    command.args(item.args.iter().map(|a| a.replace("{round}", &round.to_string())));
    command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
    let begin = Instant::now();
    let status = command.status().map_err(|e| format!("{}: {e}", item.name))?;
    let time = begin.elapsed();
    // A worked job may end with 1, a rule that fails.
    if matches!(status.code(), Some(0 | 1)) { Ok(time) } else { Err(format!("{} ended with {status}", item.name)) }
}

fn print(items: &mut [Item], job: &str, runs: usize) {
    for item in &mut *items {
        item.times.sort();
    }
    let median = |item: &Item| item.times[item.times.len() / 2].as_secs_f64() * 1e3;
    let (start, fixed) = (median(&items[0]), median(&items[1]));
    println!("\nenquiries/{job}, release build, whole processes, {runs} rounds, milliseconds");
    println!("{:<28} {:>9} {:>9} {:>9} {:>9} {:>9}  bar", "", "min", "median", "max", "/version", "/fixed");
    for item in items {
        let ms = |t: Option<&Duration>| t.map_or(0.0, |t| t.as_secs_f64() * 1e3);
        let (min, mid, max) = (ms(item.times.first()), median(item), ms(item.times.last()));
        let bar = item
            .bar_ms
            .map_or_else(String::new, |bar| format!("{} {bar:.0} ms", if mid < bar { "under" } else { "OVER" }));
        let (a, b) = (mid / start, mid / fixed);
        println!("{:<28} {min:>9.2} {mid:>9.2} {max:>9.2} {a:>9.2} {b:>9.2}  {bar}", item.name);
    }
    println!("fixed arithmetic: {STEPS} steps of a Newton iteration for the cube root, one after another");
}

/// The steady evaluations, in the release build of this program.
pub fn steady() -> Result<(), String> {
    steady::main(&tree::root()?)
}

const STEPS: u64 = 1_000_000;

/// A chain of divisions that no compiler can shorten: each step needs the one before.
pub fn reference() -> Result<(), String> {
    let mut root = 1.0_f64;
    for n in 0..STEPS {
        let target = 2.0 + f64::from(u32::try_from(n % 1000).unwrap_or(0));
        root -= (root * root * root - target) / (3.0 * root * root);
        root = root.abs().max(0.5);
    }
    println!("{root}");
    Ok(())
}
