//! The charts of an enquiry, with what they say. With a folder behind it, each is written there as SVG; with an enquiry file behind
//! that, of that one; with the word `study` behind both, also those of a study of what is uncertain:
//! `cargo run --example charts -- DIR FILE study`.

#![allow(clippy::print_stdout, reason = "an example tells what it made")]

use std::error::Error;
use std::path::Path;
use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::charts::{arrivals, charts, plain, time_line};
use stillrise_search::settle;

fn main() -> Result<(), Box<dyn Error>> {
    let mut asked = std::env::args().skip(1);
    let (folder, file) = (asked.next(), asked.next());
    let text = match &file {
        Some(file) => std::fs::read_to_string(file)?,
        None => include_str!("../../../enquiries/machine-shop/enquiry.toml").to_owned(),
    };
    let beside = |name: &str| std::fs::read(Path::new(file.as_deref().unwrap_or("")).with_file_name(name)).ok();
    let enquiry = read_enquiry(&text, &beside).map_err(|faults| format!("{faults:?}"))?;
    let mut settled = settle(&enquiry, &read_range(include_str!("../../../ranges/demo.toml")).file);
    if asked.any(|word| word == "study") {
        settled.study(200);
    }
    if settled.diagnose().is_err() {
        println!("nothing was observed that could be explained");
    }
    for chart in charts(&settled).into_iter().chain(arrivals(&settled)).chain(time_line(&settled)) {
        println!("{}: {}. {}\n    {}", chart.name, chart.title, chart.says, chart.description);
        if let Some(folder) = &folder {
            std::fs::write(Path::new(folder).join(format!("{}.svg", chart.name)), chart.svg)?;
        }
    }
    for (name, says) in plain(&settled) {
        println!("{name}: {says}");
    }
    Ok(())
}
