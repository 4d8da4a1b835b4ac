//! The list of documents on the terminal, for programs, and in a text that is marked up.

use super::{Document, Told, all};
use crate::Edition;
use crate::render::text::{hang, heading};
use serde_json::{Value, json};

/// In a cell, of a document that every edition has.
const ALL: &str = "all";

/// For whom a document is made, in a cell.
fn editions(document: &Document) -> String {
    match document.editions {
        all if all.len() == Edition::ALL.len() => ALL.to_owned(),
        some => some.iter().map(|edition| edition.word()).collect::<Vec<_>>().join(", "),
    }
}

fn listed(edition: Option<Edition>) -> impl Iterator<Item = Document> {
    all().into_iter().filter(move |one| edition.is_none_or(|edition| one.editions.contains(&edition)))
}

/// What documents there are, all or those of an edition.
#[must_use]
pub fn list_text(edition: Option<Edition>, width: usize) -> String {
    let mut out = String::new();
    for one in listed(edition) {
        out.push_str(&line(&one, &format!(", for {}", readers(&one)), width));
    }
    out
}

/// A document in two lines: what it is called and where it lies, who uses it for what.
fn line(one: &Document, more: &str, width: usize) -> String {
    hang(&format!("{} ({}){more}", one.title, one.file), width, 0, 4) + &hang(one.about, width, 4, 4)
}

/// For whom it is made, in words.
fn readers(one: &Document) -> String {
    match editions(one) {
        all if all == ALL => "all readers".to_owned(),
        some => some.replace("us", "ourselves").replace("regulator", "the authority").replace("client", "the client"),
    }
}

/// The same for programs.
#[must_use]
pub fn list_json(edition: Option<Edition>) -> Value {
    listed(edition).map(|one| described(&one)).collect()
}

/// The same as a table of a text that is marked up.
#[must_use]
pub fn list_markdown() -> String {
    let mut out = "| document | file | for | who uses it for what |\n|---|---|---|---|\n".to_owned();
    for one in all() {
        out.push_str(&format!("| {} | `{}` | {} | {} |\n", one.title, one.file, editions(&one), one.about));
    }
    out
}

fn described(one: &Document) -> Value {
    let editions: Vec<&str> = one.editions.iter().map(|edition| edition.word()).collect();
    json!({ "name": one.name, "title": one.title, "file": one.file, "for": editions, "about": one.about })
}

/// What a job gives, and why not the others.
#[must_use]
pub fn told_text(all: &[Told], edition: Edition, width: usize) -> String {
    let mut out = heading(&format!("What this job gives, {}", edition.name()));
    for one in all.iter().filter(|one| one.lacks.is_none()) {
        out.push_str(&line(&one.document, "", width));
    }
    if let Some(drawings) = all.iter().find(|one| !one.sheets.is_empty()) {
        out.push_str(&heading("Sheets of the drawings"));
        for (k, sheet) in drawings.sheets.iter().enumerate() {
            let scale = sheet.scale.map_or_else(String::new, |scale| format!(", {scale}"));
            out.push_str(&hang(&format!("{}. {}{scale}", k + 1, sheet.title), width, 0, 3));
        }
    }
    let mut others = all.iter().filter_map(|one| Some((one, one.lacks.as_ref()?))).peekable();
    if others.peek().is_some() {
        out.push_str(&heading("What it does not give"));
        for (one, why) in others {
            out.push_str(&hang(&format!("{}: {why}.", one.document.title), width, 0, 2));
        }
    }
    out
}

/// The same for programs.
#[must_use]
pub fn told_json(all: &[Told], edition: Edition) -> Value {
    let one = |told: &Told| {
        let mut value = described(&told.document);
        value["given"] = told.lacks.is_none().into();
        value["why_not"] = told.lacks.clone().into();
        let sheets = told.sheets.iter().map(|s| json!({ "title": s.title, "scale": s.scale, "file": s.file }));
        value["sheets"] = sheets.collect();
        value
    };
    json!({ "edition": edition.word(), "documents": all.iter().map(one).collect::<Vec<_>>() })
}
