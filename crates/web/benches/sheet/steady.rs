//! Memory over ten thousand changes of one sheet.

use crate::line::Line;
use crate::program::Program;
use std::ffi::OsStr;
use std::thread::sleep;
use std::time::Duration;

/// Changes after which the memory is looked at: past the first thousand, undo holds all it ever will.
const LOOKS: [usize; 4] = [1_000, 4_000, 7_000, 10_000];
/// Growth, of what stood after the first look, that is called flat.
const FLAT: f64 = 0.1;

/// Looks at the memory, and the pause ahead of each: the least counts, as an allocator gives back in its own time.
const SAMPLES: (usize, Duration) = (10, Duration::from_millis(200));

/// Changes the sheet, and tells what the program holds.
pub fn measure(program: &OsStr) {
    let program = Program::over(program, &[("one".to_owned(), "vehicle-yard")]);
    let mut line = Line::to(&program);
    let mut held = Vec::new();
    for n in 1..=LOOKS[LOOKS.len() - 1] {
        line.set("one", "water.coldest", &format!("{:.3} °F", 40.0 + (n % 2_000) as f64 * 0.01));
        if LOOKS.contains(&n) {
            let samples = (0..SAMPLES.0).filter_map(|_| {
                sleep(SAMPLES.1);
                program.memory()
            });
            match samples.reduce(f64::min) {
                Some(megabytes) => held.push(megabytes),
                None => return println!("memory over 10000 changes: this system does not tell; not measured"),
            }
        }
    }
    let grown = held[held.len() - 1] / held[0] - 1.0;
    let told: Vec<String> = LOOKS.iter().zip(&held).map(|(n, held)| format!("{held:.1} after {n}")).collect();
    let word = if grown < FLAT { "flat" } else { "GROWS" };
    println!("memory, MB: {}; {:+.1} %: {word}", told.join(", "), grown * 100.0);
}
