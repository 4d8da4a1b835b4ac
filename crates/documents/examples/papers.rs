//! The papers of an enquiry as PDFs into a folder, all of them or those named: `cargo run --example papers -- DIR FILE NAME...`.

#![allow(clippy::print_stdout, reason = "an example tells what it made")]

use std::error::Error;
use std::path::Path;
use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::{Edition, charts, papers};
use stillrise_search::settle;

fn main() -> Result<(), Box<dyn Error>> {
    let mut asked = std::env::args().skip(1);
    let (Some(folder), Some(file)) = (asked.next(), asked.next()) else {
        return Err("a folder and an enquiry, please".into());
    };
    let names: Vec<String> = asked.collect();
    let beside = |name: &str| std::fs::read(Path::new(&file).with_file_name(name)).ok();
    let enquiry = read_enquiry(&std::fs::read_to_string(&file)?, &beside).map_err(|faults| format!("{faults:?}"))?;
    let settled = settle(&enquiry, &read_range(include_str!("../../../ranges/demo.toml")).file);
    let drawn = charts::charts(&settled);
    for paper in papers::of(&settled, Edition::Client)
        .filter(|paper| names.is_empty() || names.iter().any(|name| name == paper.name))
    {
        let made = papers::typeset(&settled, Edition::Client, paper, &drawn).map_err(|fault| format!("{fault:?}"))?;
        println!("{}: {} pages", paper.name, made.pages);
        std::fs::write(Path::new(&folder).join(format!("{}.pdf", paper.name)), made.bytes)?;
    }
    Ok(())
}
