//! A customer's mail of five thousand words, marked.

use crate::line::Line;
use crate::program::Program;
use crate::times::Times;
use std::ffi::OsStr;
use std::path::Path;
use std::time::Instant;
use stillrise_mail::read_mail;
use stillrise_units::parse::Reading;

const WORDS: usize = 5_000;
const ROUNDS: usize = 30;
const BAR: f64 = 20.0;

/// The invented mails that the reading is tested with, one after the other, to their five thousandth word.
fn mail() -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../mail/tests/mails");
    let entries = std::fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().path());
    let mut files: Vec<_> = entries.filter(|path| path.extension().is_some_and(|ext| ext == "txt")).collect();
    files.sort();
    let all: String =
        files.iter().cycle().take(100).map(|path| std::fs::read_to_string(path).unwrap() + "\n").collect();
    let end = all.split_whitespace().nth(WORDS).map(|word| word.as_ptr() as usize - all.as_ptr() as usize);
    all[..end.expect("the mails hold words enough")].to_owned()
}

/// Reading alone, and the piece of the page with every mark and the sheet's own answer around it.
pub fn measure(program: &OsStr, fixed: f64) {
    let text = mail();
    let time = |of: &mut dyn FnMut()| {
        let begun = Instant::now();
        of();
        begun.elapsed().as_secs_f64() * 1e3
    };
    let read = || (0..ROUNDS).map(|_| time(&mut || drop(read_mail(&text, &Reading::default())))).collect();
    Times::of(read()).tell("a mail of 5000 words, read", 0.95, BAR, fixed);
    let program = Program::over(program, &[("one".to_owned(), "vehicle-yard")]);
    let mut line = Line::to(&program);
    line.ask("PUT", "/api/sheets/one/mail", &serde_json::json!({ "mail": text }).to_string());
    let mut marked = || drop(line.ask("GET", "/sheet/one/beside/mail", ""));
    marked();
    Times::of((0..ROUNDS).map(|_| time(&mut marked)).collect()).tell("the same, marked on the page", 0.95, BAR, fixed);
}
