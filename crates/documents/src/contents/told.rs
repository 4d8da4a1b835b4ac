//! Which documents a job gives, with the sheets of its drawings, and why the others do not apply.

use super::{Document, all, sheet_file};
use crate::Edition;
use stillrise_search::Settled;

/// A document, and what this job makes of it.
pub struct Told {
    /// The document.
    pub document: Document,
    /// Why the job does not give it; `None` where it does.
    pub lacks: Option<String>,
    /// The sheets, of a drawing set.
    pub sheets: Vec<Sheet>,
}

/// A sheet of the drawing set.
pub struct Sheet {
    /// What it shows.
    pub title: String,
    /// Its scale, where it has one.
    pub scale: Option<&'static str>,
    /// Its file.
    pub file: String,
}

/// All documents as a job gives them in an edition.
#[must_use]
pub fn told(settled: &Settled, edition: Edition) -> Vec<Told> {
    let set = crate::drawings::set(settled, edition);
    let sheets = |ending: &'static str| {
        let sheet = |(k, drawing): (usize, &crate::drawings::Drawing)| Sheet {
            title: drawing.title.clone(),
            scale: drawing.scale.map(|scale| scale.text()),
            file: if ending == "pdf" { format!("drawings.pdf#page={}", k + 1) } else { sheet_file(k, drawing, ending) },
        };
        set.iter().enumerate().map(sheet).collect::<Vec<_>>()
    };
    let one = |document: Document| {
        let of_sheets = match document.name {
            "drawings" => Some("pdf"),
            "drawing-pictures" => Some("svg"),
            "drawing-exchange" => Some("dxf"),
            _ => None,
        };
        let in_edition = document.editions.contains(&edition);
        let lacks = match document.lacks(settled) {
            Some(why) => Some(why.to_owned()),
            None if !in_edition => Some(format!("it is no part of the {}", edition.name())),
            None if of_sheets.is_some() && set.is_empty() => Some("no scale brings the unit onto a sheet".to_owned()),
            None => None,
        };
        let sheets = of_sheets.filter(|_| lacks.is_none()).map(sheets).unwrap_or_default();
        Told { document, lacks, sheets }
    };
    all().into_iter().map(one).collect()
}
