//! Fifty people at fifty sheets of one program.

use crate::line::Line;
use crate::program::Program;
use crate::times::Times;
use std::ffi::OsStr;
use std::thread;
use std::time::{Duration, Instant};
use stillrise_desk::jobs::JOBS;

const PEOPLE: usize = 50;
const EDITS: usize = 15;
/// From one change of a person to the next: sooner than anybody types, points and reads.
const PAUSE: Duration = Duration::from_secs(2);
const BAR: f64 = 250.0;

/// Changes all of them at once; each answer has to hold what was typed, and each file the last of it.
pub fn measure(program: &OsStr, fixed: f64) {
    let copies: Vec<(String, &str)> = (0..PEOPLE).map(|k| (format!("sheet-{k}"), JOBS[k % JOBS.len()].name)).collect();
    let program = Program::over(program, &copies);
    let mut first = Line::to(&program);
    for (name, _) in &copies {
        first.ask("GET", &format!("/sheet/{name}/pieces"), "");
    }
    let mut all = Vec::new();
    thread::scope(|scope| {
        let people: Vec<_> = copies
            .iter()
            .enumerate()
            .map(|(k, (name, _))| {
                let program = &program;
                scope.spawn(move || {
                    let mut line = Line::to(program);
                    // They do not all type in the same moment.
                    thread::sleep(PAUSE.mul_f64(k as f64 / PEOPLE as f64));
                    let mut times = Vec::new();
                    for n in 0..EDITS {
                        let value = typed(k, n);
                        let begun = Instant::now();
                        for (key, typed) in [("enquiry.client", &value), ("water.coldest", &coldest(k, n))] {
                            let asked = Instant::now();
                            let answer = line.set(name, key, typed);
                            times.push(asked.elapsed().as_secs_f64() * 1e3);
                            assert!(answer.contains(&value), "{name} answers for another");
                        }
                        thread::sleep(PAUSE.saturating_sub(begun.elapsed()));
                    }
                    times
                })
            })
            .collect();
        for person in people {
            all.extend(person.join().unwrap());
        }
    });
    for (k, (name, _)) in copies.iter().enumerate() {
        let text = std::fs::read_to_string(program.folder.path().join(name).join("enquiry.toml")).unwrap();
        assert!(text.contains(&typed(k, EDITS - 1)) && text.contains(&coldest(k, EDITS - 1)), "{name} lost a change");
    }
    Times::of(all).tell("50 sheets, two changes each 2 s, each", 0.99, BAR, fixed);
}

fn typed(k: usize, n: usize) -> String {
    format!("Invented client {k} of turn {n}")
}

fn coldest(k: usize, n: usize) -> String {
    format!("{}.{k:02} °F", 40 + n)
}
