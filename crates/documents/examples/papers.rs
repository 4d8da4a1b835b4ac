//! The papers of an enquiry, with their pages. With a folder behind it, each is written there as PDF; with an enquiry file behind
//! that, of that one, all or those named: `cargo run --example papers -- DIR FILE NAME...`.

#![allow(clippy::print_stdout, reason = "an example tells what it made")]

use std::error::Error;
use std::path::Path;
use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::{Edition, charts, papers};
use stillrise_search::settle;

fn main() -> Result<(), Box<dyn Error>> {
    let mut asked = std::env::args().skip(1);
    let (folder, file) = (asked.next(), asked.next());
    let names: Vec<String> = asked.collect();
    let text = match &file {
        Some(file) => std::fs::read_to_string(file)?,
        None => include_str!("../../../enquiries/machine-shop/enquiry.toml").to_owned(),
    };
    let beside = |name: &str| std::fs::read(Path::new(file.as_deref().unwrap_or("")).with_file_name(name)).ok();
    let enquiry = read_enquiry(&text, &beside).map_err(|faults| format!("{faults:?}"))?;
    let settled = settle(&enquiry, &read_range(include_str!("../../../ranges/demo.toml")).file);
    let drawn = charts::charts(&settled);
    let mut set = papers::Set::new(&settled, Edition::Client, &drawn);
    for paper in papers::of(&settled, Edition::Client)
        .filter(|paper| names.is_empty() || names.iter().any(|name| name == paper.name))
    {
        let made = set.paper(paper).map_err(|fault| format!("{fault:?}"))?;
        println!("{}: {} pages", paper.name, made.pages);
        if let Some(folder) = &folder {
            std::fs::write(Path::new(folder).join(format!("{}.pdf", paper.name)), made.bytes)?;
        }
    }
    Ok(())
}
