//! The step `commands`: the program as a user meets it, from `--help` to a package on disk.
//!
//! The list of commands is read off the program's own help, so that a command without a run
//! here fails the step.

use crate::run::{self, Output};
use crate::test::Done;
use std::path::Path;
use std::process::Stdio;

/// What standard output must be.
#[derive(Clone, Copy)]
enum Wants {
    /// Not empty, and containing this.
    Text(&'static str),
    /// One JSON value.
    Json,
    /// Empty, with a message on standard error.
    Refusal,
}

/// One run: arguments, exit codes allowed, output wanted. `{job}` is repeated for every worked
/// job, `{dir}` is one scratch folder for the whole step.
type Run = (&'static [&'static str], &'static [i32], Wants);

/// Done, or done with a rule that fails: a worked job may be either.
const DONE: &[i32] = &[0, 1];

const RUNS: &[Run] = &[
    (&["--version"], &[0], Wants::Text("stillrise ")),
    (&["help"], &[0], Wants::Text("Commands:")),
    (&["no-such-command"], &[2], Wants::Refusal),
    (&["size", "{job}"], DONE, Wants::Text("")),
    (&["size", "{job}", "--json"], DONE, Wants::Json),
    (&["size", "{dir}/absent.toml"], &[2], Wants::Refusal),
    (&["size", "{dir}/broken.toml"], &[2], Wants::Refusal),
    (&["submittal", "{dir}/broken.toml", "--out", "{dir}/refused"], &[2], Wants::Refusal),
    (&["new", "{dir}/started"], &[0], Wants::Text("")),
    (&["size", "{dir}/started/enquiry.toml"], DONE, Wants::Text("")),
    (&["reply", "{job}"], DONE, Wants::Text("")),
    (&["compare", "{job}", "enquiries/tram-depot"], DONE, Wants::Text("What they come to")),
    (&["compare", "enquiries/truck-wash", "enquiries/tram-depot", "--json"], DONE, Wants::Json),
    (&["compare", "{dir}/absent.toml", "{dir}/broken.toml"], &[2], Wants::Refusal),
    (&["compare", "{job}"], &[2], Wants::Refusal),
    (&["compare", "{job}", "--with-issued"], &[2], Wants::Refusal),
    (&["compare", "{job}", "--with-range"], DONE, Wants::Text("Every unit of the range")),
    (&["words"], &[0], Wants::Text("design droplet")),
    (&["words", "free oil", "--json"], &[0], Wants::Json),
    (&["words", "free oyl"], &[2], Wants::Refusal),
    (&["compare", "{job}", "--with-range", "--json"], DONE, Wants::Json),
    (&["compare", "{job}", "{job}", "--with-range"], &[2], Wants::Refusal),
    (&["new", "{dir}/company", "--settings"], &[0], Wants::Text("stillrise-settings.toml")),
    (
        &["size", "{job}", "--settings", "{dir}/company/stillrise-settings.toml"],
        DONE,
        Wants::Text("From the company's settings"),
    ),
    (&["size", "{job}", "--settings", "{dir}/broken.toml"], &[2], Wants::Refusal),
    // A worked job is for discussion alone.
    (&["issue", "{job}"], &[2], Wants::Refusal),
    (&["issue", "{dir}/released"], &[0], Wants::Text("Revision A is issued")),
    (&["issue", "{dir}/released", "--json"], &[0], Wants::Json),
    (&["compare", "{dir}/released", "--with-issued"], DONE, Wants::Text("Nothing has changed")),
    (&["compare", "{dir}/released", "--with-issued", "A", "--json"], DONE, Wants::Json),
    (&["compare", "{dir}/released", "--with-issued", "B"], &[2], Wants::Refusal),
    (&["risk", "{job}", "--samples", "100"], DONE, Wants::Text("What carries the spread")),
    (&["risk", "{job}", "--samples", "100", "--json"], DONE, Wants::Json),
    (&["flow", "{job}"], DONE, Wants::Text("How far to trust it")),
    (&["flow", "{job}", "--json"], DONE, Wants::Json),
    (&["flow", "enquiries/vehicle-yard", "--out", "{dir}/water"], DONE, Wants::Text("Through the pack, by level")),
    (&["flow", "enquiries/vehicle-yard", "--out", "{dir}/released"], &[2], Wants::Refusal),
    (&["schema", "flow"], &[0], Wants::Json),
    (&["rate", "enquiries/machine-shop"], DONE, Wants::Text("What explains it")),
    (&["rate", "enquiries/machine-shop", "--json"], DONE, Wants::Json),
    (&["rate", "enquiries/vehicle-yard"], &[2], Wants::Refusal),
    (&["documents"], &[0], Wants::Text("Compliance matrix (compliance-matrix.pdf), for all readers")),
    (&["documents", "--for", "us", "--json"], &[0], Wants::Json),
    (&["documents", "enquiries/tram-depot"], &[0], Wants::Text("What this job gives")),
    (&["documents", "enquiries/tram-depot", "--for", "us", "--json"], &[0], Wants::Json),
    (&["read", "enquiries/tram-depot/README.md"], &[0], Wants::Text("could answer")),
    (&["read", "enquiries/tram-depot/README.md", "--json"], &[0], Wants::Json),
    (&["remedy", "enquiries/truck-wash", "frost-outdoors"], &[0], Wants::Text("It passes then")),
    (&["remedy", "enquiries/truck-wash", "frost-outdoors", "--json"], &[0], Wants::Json),
    (&["remedy", "enquiries/truck-wash", "no-such-rule"], &[2], Wants::Refusal),
    (&["read", "enquiries/tram-depot/README.md", "--for", "enquiries/tram-depot", "--json"], &[0], Wants::Json),
    (&["read", "{dir}/absent.txt"], &[2], Wants::Refusal),
    // What it serves is worked by tests of its own; here it only says that a file is no folder.
    (&["serve", "{dir}/broken.toml", "--no-open"], &[2], Wants::Refusal),
    (&["work", "--list"], &[0], Wants::Text("stokes-rise")),
    (
        &["work", "stokes-rise", "d=60 um", "rho_w=998.2 kg/m3", "rho_o=840 kg/m3", "mu=1.0016 mPa s"],
        &[0],
        Wants::Text("stokes-rise"),
    ),
    (&["work", "no-such-formula"], &[2], Wants::Refusal),
    (&["verify"], &[0], Wants::Text("")),
    (&["schema", "enquiry"], &[0], Wants::Json),
    (&["schema", "settings"], &[0], Wants::Json),
    (&["schema", "issued"], &[0], Wants::Json),
    (&["schema", "changes"], &[0], Wants::Json),
    (&["completions", "bash"], &[0], Wants::Text("stillrise")),
    (&["man"], &[0], Wants::Text("stillrise")),
    (&["manual", "--out", "{dir}/manual"], &[0], Wants::Text("index.html")),
    (&["manual", "--out", "{dir}/manual", "--json"], &[0], Wants::Json),
    (&["manual", "--out", "{dir}/started"], &[2], Wants::Refusal),
];

/// Commands that the program must have whatever else it lacks.
const NEEDED: &[&str] = &["size", "submittal"];

/// The step.
pub fn run(root: &Path) -> Result<Done, String> {
    let program = run::stillrise(root)?;
    let help = run::capture(run::plain(&program, root).arg("--help"))?;
    let offered = offered(&help.stdout);
    if let Some(missing) = NEEDED.iter().find(|n| !offered.iter().any(|o| o == **n)) {
        return Err(format!("`stillrise --help` does not offer `{missing}`; it offers: {}", offered.join(", ")));
    }
    if let Some(new) = offered.iter().find(|o| *o != "help" && !RUNS.iter().any(|r| r.0[0] == **o)) {
        return Err(format!("no run is written for `stillrise {new}`; add one in crates/xtask/src/commands.rs"));
    }
    let jobs = run::jobs(root)?;
    let Some(first) = jobs.first() else {
        return Ok(Done::NotRun("there are no worked jobs in enquiries/ yet".to_owned()));
    };
    let scratch = tempfile::tempdir().map_err(|e| format!("no scratch folder: {e}"))?;
    let dir = scratch.path().to_string_lossy().into_owned();
    let broken = "[enquiry]\ntitel = \"a misspelt key\"\n";
    std::fs::write(scratch.path().join("broken.toml"), broken).map_err(|e| format!("{dir}: {e}"))?;
    released(root, scratch.path())?;
    let mut count = 0;
    for (args, exit, wants) in RUNS {
        let is_command = !args[0].starts_with('-') && !["help", "no-such-command"].contains(&args[0]);
        if is_command && !offered.iter().any(|o| o == args[0]) {
            continue;
        }
        let each: &[String] = if args.contains(&"{job}") { &jobs } else { &jobs[..1] };
        for job in each {
            let words = args.iter().map(|a| a.replace("{job}", &run::enquiry(job)).replace("{dir}", &dir));
            let mut command = run::plain(&program, root);
            command.args(words);
            let out = run::capture(&mut command)?;
            judge(&out, exit, *wants).map_err(|why| {
                format!(
                    "`{}`: {why}\nstdout: {}\nstderr: {}",
                    run::words(&command),
                    start(&out.stdout),
                    start(&out.stderr)
                )
            })?;
            count += 1;
        }
    }
    if scratch.path().join("refused").exists() {
        return Err("a refused enquiry left something behind where --out pointed".to_owned());
    }
    same_twice(&program, root, first, scratch.path())?;
    closed_pipe(&program, root, first)?;
    println!("{} commands, {count} runs, one package written twice alike, one pipe closed early", offered.len());
    Ok(Done::Passed)
}

/// A worked job that goes out, in a folder of its own.
fn released(root: &Path, scratch: &Path) -> Result<(), String> {
    let (from, to) = (root.join("enquiries/vehicle-yard"), scratch.join("released"));
    let told = |error: std::io::Error| format!("{}: {error}", to.display());
    std::fs::create_dir_all(&to).map_err(told)?;
    std::fs::copy(from.join("rain.csv"), to.join("rain.csv")).map_err(told)?;
    let text = std::fs::read_to_string(from.join("enquiry.toml")).map_err(told)?;
    let text = text.replace("status = \"preliminary\"", "status = \"for approval\"");
    std::fs::write(to.join("enquiry.toml"), text).map_err(told)
}

/// Commands in the help text: the names that stand two blanks in, under `Commands:`.
fn offered(help: &str) -> Vec<String> {
    let list = help.lines().skip_while(|l| l.trim() != "Commands:").skip(1);
    list.take_while(|l| !l.trim().is_empty())
        .filter(|l| l.starts_with("  ") && !l.starts_with("   "))
        .filter_map(|l| l.split_whitespace().next().map(str::to_owned))
        .collect()
}

fn judge(out: &Output, exit: &[i32], wants: Wants) -> Result<(), String> {
    if !out.code.is_some_and(|code| exit.contains(&code)) {
        return Err(format!("exit code {:?}, wanted one of {exit:?}", out.code));
    }
    match wants {
        Wants::Text(part) if out.stdout.trim().is_empty() || !out.stdout.contains(part) => {
            Err(format!("`{part}` is not on standard output"))
        }
        Wants::Json => serde_json::from_str::<serde_json::Value>(&out.stdout)
            .map(|_| ())
            .map_err(|e| format!("standard output is not JSON: {e}")),
        Wants::Refusal if !out.stdout.is_empty() => Err("a refusal wrote to standard output".to_owned()),
        Wants::Refusal if out.stderr.trim().is_empty() => Err("refused without saying why".to_owned()),
        _ => Ok(()),
    }
}

/// Same input, same bytes: the package is written twice, the second time by one thread, from another folder, in another zone and
/// language, and compared.
fn same_twice(program: &Path, root: &Path, job: &str, scratch: &Path) -> Result<(), String> {
    let first = scratch.join("first");
    crate::bless::submittal(program, root, job, &first)?;
    let elsewhere = scratch.join("elsewhere");
    copied(&root.join("enquiries").join(job), &elsewhere).map_err(|e| format!("{}: {e}", elsewhere.display()))?;
    let mut command = run::plain(program, scratch);
    command.args(["submittal", "elsewhere/enquiry.toml", "--for", "us", "--out", "second"]);
    command.envs([
        ("RAYON_NUM_THREADS", "1"),
        ("TZ", "Pacific/Auckland"),
        ("LC_ALL", "de_DE.UTF-8"),
        ("COLUMNS", "66"),
    ]);
    command.stdout(Stdio::null());
    let status = command.status().map_err(|e| e.to_string())?;
    if !matches!(status.code(), Some(0 | 1)) {
        return Err(format!("{job}: the second package ended with {status}"));
    }
    let packages = [crate::bless::hashes(&first)?, crate::bless::hashes(&scratch.join("second"))?];
    let diff = xtask::diff::lines(&packages[0], &packages[1]);
    if diff.is_empty() { Ok(()) } else { Err(format!("{job}: two packages of one enquiry differ\n{diff}")) }
}

/// Copies the files of a folder, none of its folders, into a new one.
fn copied(from: &Path, to: &Path) -> std::io::Result<()> {
    std::fs::create_dir_all(to)?;
    for entry in std::fs::read_dir(from)? {
        let entry = entry?;
        if entry.file_type()?.is_file() {
            std::fs::copy(entry.path(), to.join(entry.file_name()))?;
        }
    }
    Ok(())
}

/// A reader that goes away early, as `head` does, is no reason to panic.
fn closed_pipe(program: &Path, root: &Path, job: &str) -> Result<(), String> {
    let mut command = run::plain(program, root);
    command.args(["size", &run::enquiry(job)]).stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = command.spawn().map_err(|e| e.to_string())?;
    drop(child.stdout.take());
    let out = child.wait_with_output().map_err(|e| e.to_string())?;
    let said = String::from_utf8_lossy(&out.stderr);
    if out.status.code() == Some(101) || said.contains("panicked") {
        return Err(format!("a closed pipe makes `size` panic: {said}"));
    }
    Ok(())
}

/// The beginning of a long text, for a message.
fn start(text: &str) -> String {
    text.lines().take(12).collect::<Vec<_>>().join("\n  ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn commands_are_read_off_the_help() {
        let help = "Sizes\n\nUsage: x\n\nCommands:\n  size       Sizes\n             and more\n  submittal  Writes\n\nOptions:\n  -h\n";
        assert_eq!(offered(help), ["size", "submittal"]);
        assert_eq!(offered("Usage: x"), Vec::<String>::new());
    }

    #[test]
    fn wrong_ends_are_found() {
        let out = |code, stdout: &str, stderr: &str| Output { code, stdout: stdout.into(), stderr: stderr.into() };
        assert!(judge(&out(Some(101), "x", ""), DONE, Wants::Text("")).is_err());
        assert!(judge(&out(None, "x", ""), DONE, Wants::Text("")).is_err());
        assert!(judge(&out(Some(0), " ", ""), DONE, Wants::Text("")).is_err());
        assert!(judge(&out(Some(0), "{", ""), DONE, Wants::Json).is_err());
        assert!(judge(&out(Some(2), "", ""), &[2], Wants::Refusal).is_err());
        assert!(judge(&out(Some(2), "", "line 2: unknown key"), &[2], Wants::Refusal).is_ok());
    }
}
