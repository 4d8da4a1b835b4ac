//! Writing to the terminal: quietly when the reader has gone, plain when it is no terminal.

use std::io::{self, Write};
use std::sync::OnceLock;
use stillrise_units::Fault;

/// Why the output could not be written, if it could not.
static LOST: OnceLock<String> = OnceLock::new();

/// Prints to standard output. A closed pipe is the reader's business and ends the output; any other fault is kept
/// for [`lost`].
pub fn print(text: &str) {
    let mut stdout = io::stdout().lock();
    if let Err(error) = stdout.write_all(text.as_bytes()).and_then(|()| stdout.flush())
        && error.kind() != io::ErrorKind::BrokenPipe
    {
        let _ = LOST.set(error.to_string());
    }
}

/// Why the output could not be written, if it could not.
pub fn lost() -> Option<&'static str> {
    LOST.get().map(String::as_str)
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
    for fault in faults.iter().take(SHOWN) {
        let [place, reason, remedy] = [&fault.place, &fault.reason, &fault.remedy].map(|text| cut(text));
        text.push_str(&format!("  {place}\n    {reason}\n    {remedy}\n"));
    }
    if faults.len() > SHOWN {
        text.push_str(&format!("  and {} more; is this the right file?\n", faults.len() - SHOWN));
    }
    text
}

/// Faults that are printed.
const SHOWN: usize = 40;
/// Characters of a line that are printed.
const LONGEST: usize = 600;

/// A line, shortened in its middle where it quotes without end.
fn cut(text: &str) -> String {
    let count = text.chars().count();
    if count <= LONGEST {
        return text.to_owned();
    }
    let head: String = text.chars().take(LONGEST / 2).collect();
    let tail: String = text.chars().skip(count - LONGEST / 4).collect();
    format!("{head} [...] {tail}")
}
