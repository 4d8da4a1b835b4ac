//! The drawing set of an enquiry. With a folder behind it, each sheet is written there as SVG; with an enquiry file behind
//! that, of that one: `cargo run --example drawing_set -- DIR FILE`.

#![allow(clippy::print_stdout, reason = "an example tells what it found")]

use std::error::Error;
use std::path::Path;
use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::{Edition, drawings};
use stillrise_search::settle;

fn main() -> Result<(), Box<dyn Error>> {
    let mut asked = std::env::args().skip(1);
    let (folder, file) = (asked.next(), asked.next());
    let text = match &file {
        Some(file) => std::fs::read_to_string(file)?,
        None => include_str!("../../../enquiries/truck-wash/enquiry.toml").to_owned(),
    };
    let beside = |name: &str| std::fs::read(Path::new(file.as_deref().unwrap_or("")).with_file_name(name)).ok();
    let enquiry = read_enquiry(&text, &beside).map_err(|faults| format!("{faults:?}"))?;
    let range = read_range(include_str!("../../../ranges/demo.toml")).file;
    let settled = settle(&enquiry, &range);
    for (k, sheet) in drawings::set(&settled, Edition::Us).iter().enumerate() {
        let scale = sheet.scale.map_or("no scale", |scale| scale.text());
        println!("sheet {}: {}, {scale}, {} texts", k + 1, sheet.title, sheet.sheet_texts.lines().count());
        if let Some(folder) = &folder {
            std::fs::write(Path::new(folder).join(format!("{}-{}.svg", k + 1, sheet.name)), &sheet.svg)?;
        }
    }
    Ok(())
}
