//! `cargo xtask`: the project's own chores, one command a file.

#![allow(clippy::print_stdout, clippy::print_stderr, reason = "this program speaks to a terminal")]

mod bench;
mod bless;
mod browser;
mod commands;
mod docs;
mod exchange;
mod pdf;
mod run;
mod test;
mod validation;

use std::process::ExitCode;
use xtask::tree;

const USAGE: &str = "\
cargo xtask COMMAND

  test [STEP ...]           everything a change must pass, or only the steps named; `test --list`
  bless [--check] [JOB ...] rewrites the accepted outputs of the worked jobs, or compares them;
                            `bless validation` writes docs/validation.md alone, `bless pictures` docs/pictures
  docs [--out DIR]          the manual as pages that open from the disk, to target/manual
  bench [--runs N] [JOB]    whole-process times of the release build beside stated peers
  tree                      the rules about the tree itself
";

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let (command, rest) = args.split_first().map_or(("", &[][..]), |(first, rest)| (first.as_str(), rest));
    let done = match command {
        "test" => test::main(rest),
        "bless" => bless::main(rest),
        "docs" => docs::main(rest),
        "bench" => bench::main(rest),
        "tree" => show_tree(rest),
        // The fixed numeric peer that `bench` starts as a process of its own.
        "reference" => bench::reference(),
        // The steady evaluations, which `bench` starts in the release build.
        "steady" => bench::steady(),
        "" | "help" | "--help" | "-h" => {
            print!("{USAGE}");
            return ExitCode::SUCCESS;
        }
        other => Err(format!("no command `{other}`\n\n{USAGE}")),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            if !why.is_empty() {
                eprintln!("{why}");
            }
            ExitCode::FAILURE
        }
    }
}

/// Prints every rule with its faults.
fn show_tree(args: &[String]) -> Result<(), String> {
    if let Some(odd) = args.first() {
        return Err(format!("`tree` takes no `{odd}`"));
    }
    let files = tree::read(&tree::root()?)?;
    let mut count = 0;
    for rule in tree::RULES {
        let faults = rule.faults(&files);
        count += faults.len();
        println!("{} {:<12} {}", if faults.is_empty() { "ok  " } else { "FAIL" }, rule.name, rule.holds);
        for fault in faults {
            println!("       {fault}");
        }
    }
    if count == 0 { Ok(()) } else { Err(format!("{count} places in the tree break a rule")) }
}
