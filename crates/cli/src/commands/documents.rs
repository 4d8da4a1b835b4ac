//! `documents`: what documents there are, for whom, and which of them a job gives.

use super::submittal::For;
use super::under::Under;
use crate::{End, out};
use serde_json::Value;
use std::path::PathBuf;
use stillrise_desk::files;
use stillrise_documents::contents::{list_json, list_text, told, told_json, told_text};
use stillrise_documents::package::pretty;
use stillrise_documents::{Edition, render::text::hang};

/// The documents of a package: for whom each is, and what it answers; with an enquiry, which of them it gives and why not the
/// others
#[derive(clap::Args)]
pub struct Args {
    /// The enquiry file, or its folder
    file: Option<PathBuf>,
    /// Those for one reader; with an enquiry the client where nobody is named
    #[arg(long = "for", value_enum)]
    edition: Option<For>,
    /// As JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    under: Under,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let edition: Option<Edition> = args.edition.map(Into::into);
    let Some(file) = &args.file else {
        return said(args.json, || list_json(edition), || list_text(edition, out::width()) + &more());
    };
    let (settled, _) = match files::settled(file, args.under.file()) {
        Ok(found) => found,
        Err(trouble) => return trouble.into(),
    };
    let edition = edition.unwrap_or_default();
    let all = told(&settled, edition);
    said(args.json, || told_json(&all, edition), || told_text(&all, edition, out::width()))
}

fn said(as_json: bool, json: impl Fn() -> Value, text: impl Fn() -> String) -> End {
    if as_json {
        out::print(&String::from_utf8_lossy(&pretty(&json())));
    } else {
        out::print(&text());
    }
    End::Done
}

/// How they are made.
fn more() -> String {
    hang(
        "stillrise submittal FILE makes them; stillrise documents FILE tells which of them a job gives.",
        out::width(),
        0,
        0,
    )
}
