//! Writing to the terminal: quietly when the reader has gone, plain when it is no terminal.

use std::io::{self, Write};
use stillrise_units::Fault;

/// Prints to standard output. A closed pipe is the reader's business and ends the output.
pub fn print(text: &str) {
    let mut stdout = io::stdout().lock();
    let _ = stdout.write_all(text.as_bytes()).and_then(|()| stdout.flush());
}

/// Prints to the error stream.
pub fn complain(text: &str) {
    let _ = io::stderr().lock().write_all(text.as_bytes());
}

/// Width of the output: what `COLUMNS` says, else 110.
pub fn width() -> usize {
    std::env::var("COLUMNS").ok().and_then(|c| c.parse().ok()).unwrap_or(110).clamp(60, 160)
}

/// All faults, each with place, reason and remedy.
pub fn faults(faults: &[Fault]) -> String {
    let mut text = match faults.len() {
        1 => "The input is refused; nothing was written. One fault:\n".to_owned(),
        n => format!("The input is refused; nothing was written. {n} faults:\n"),
    };
    for fault in faults {
        text.push_str(&format!("  {}\n    {}\n    {}\n", fault.place, fault.reason, fault.remedy));
    }
    text
}
