//! The charts of an enquiry, each as an SVG file: `cargo run --example charts -- DIR FILE`. With the word `study` behind them
//! also those of a study of what is uncertain.

#![allow(clippy::print_stdout, reason = "an example tells what it made")]

use std::error::Error;
use std::path::Path;
use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::charts::{arrivals, charts, plain, time_line};
use stillrise_search::settle;

fn main() -> Result<(), Box<dyn Error>> {
    let asked: Vec<String> = std::env::args().skip(1).collect();
    let [folder, file, more @ ..] = &asked[..] else {
        return Err("a folder and an enquiry file are wanted".into());
    };
    let beside = |name: &str| std::fs::read(Path::new(file).with_file_name(name)).ok();
    let enquiry = read_enquiry(&std::fs::read_to_string(file)?, &beside).map_err(|faults| format!("{faults:?}"))?;
    let mut settled = settle(&enquiry, &read_range(include_str!("../../../ranges/demo.toml")).file);
    if more.iter().any(|word| word == "study") {
        settled.study(200);
    }
    if settled.diagnose().is_err() {
        println!("nothing was observed that could be explained");
    }
    for chart in charts(&settled).into_iter().chain(arrivals(&settled)).chain(time_line(&settled)) {
        println!("{}: {}. {}\n    {}", chart.name, chart.title, chart.says, chart.description);
        std::fs::write(Path::new(folder).join(format!("{}.svg", chart.name)), chart.svg)?;
    }
    for (name, says) in plain(&settled) {
        println!("{name}: {says}");
    }
    Ok(())
}
