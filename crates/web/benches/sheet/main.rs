//! How fast the sheet is, in a release build and a real browser, beside peers of the same run. `cargo xtask bench` builds all
//! that it needs and starts it; the bars are those of the project, for two cores.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a bench that cannot measure ends")]
#![allow(clippy::print_stdout, reason = "a bench prints what it measured")]

#[path = "../../tests/browser/chromium.rs"]
mod chromium;
mod line;
mod many;
mod marking;
mod peer;
mod program;
mod steady;
mod times;
mod window;

use std::process::ExitCode;

fn main() -> ExitCode {
    let Some(program) = std::env::var_os("STILLRISE_PROGRAM") else {
        println!("This bench times a built program: run it by `cargo xtask bench`.");
        return ExitCode::FAILURE;
    };
    println!("\nthe sheet, release build, program and browser on one machine, milliseconds");
    let fixed = peer::fixed();
    println!("{:<44} {fixed:>8.2}", "peer: fixed arithmetic");
    // A part can be named by itself: `cargo bench --bench sheet -- steady`.
    let named: Vec<String> = std::env::args().skip(1).filter(|word| !word.starts_with('-')).collect();
    let is_asked = |part: &str| named.is_empty() || named.iter().any(|name| name == part);
    if is_asked("window") {
        window::measure(&program, fixed);
    }
    if is_asked("many") {
        many::measure(&program, fixed);
    }
    if is_asked("marking") {
        marking::measure(&program, fixed);
    }
    if is_asked("steady") {
        steady::measure(&program);
    }
    ExitCode::SUCCESS
}
