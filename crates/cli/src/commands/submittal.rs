//! `submittal`: the package of documents.

use super::under::Under;
use crate::{End, ended, out};
use clap::ValueEnum;
use serde_json::json;
use std::path::PathBuf;
use stillrise_desk::{files, packages};
use stillrise_documents::Edition;
use stillrise_documents::contents::list_text;
use stillrise_documents::package::{package, pretty};
use stillrise_search::risk::SAMPLES;

/// The package: papers, drawings, model, schedules and a list with hashes (see `stillrise documents`)
#[derive(clap::Args)]
#[command(after_long_help = documents())]
pub struct Args {
    /// The enquiry file, or its folder
    file: PathBuf,
    /// Where to; a folder that exists is replaced only if it is a package of ours
    #[arg(long, value_name = "DIR", default_value = "submittal")]
    out: PathBuf,
    /// For whom
    #[arg(long = "for", value_enum, default_value_t = For::Client)]
    edition: For,
    /// The list of files as JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    under: Under,
}

/// For whom a package is made.
#[derive(Clone, Copy, ValueEnum)]
pub enum For {
    /// The client
    Client,
    /// The authority: every step of the trail
    Regulator,
    /// Ourselves: everything
    Us,
}

impl From<For> for Edition {
    fn from(edition: For) -> Self {
        match edition {
            For::Client => Edition::Client,
            For::Regulator => Edition::Regulator,
            For::Us => Edition::Us,
        }
    }
}

/// What a package consists of, for the long help.
fn documents() -> String {
    format!("What it consists of:\n\n{}", list_text(None, HELP))
}

/// Letters in a line of the help.
const HELP: usize = 100;

/// Runs it.
pub fn run(args: &Args) -> End {
    if let Err(trouble) = packages::may_replace(&args.out, None) {
        return trouble.into();
    }
    let (mut settled, taken) = match files::with_alternatives(&args.file, args.under.file()) {
        Ok(found) => found,
        Err(trouble) => return trouble.into(),
    };
    settled.study(SAMPLES);
    if settled.job.enquiry.is_observed()
        && let Err(stop) = settled.diagnose()
    {
        settled.job.design.stops.push(stop);
    }
    let documents = match package(&settled, args.edition.into(), &taken.inputs()) {
        Ok(documents) => documents,
        Err(fault) => return End::Machine(format!("the {} could not be made: {}", fault.document, fault.reason)),
    };
    if let Err(trouble) = packages::write_folder(&args.out, settled.job.enquiry.head.title.as_deref(), &documents) {
        return trouble.into();
    }
    if args.json {
        let list: Vec<_> =
            documents.iter().map(|(name, bytes)| json!({ "name": name, "bytes": bytes.len() })).collect();
        out::print(&String::from_utf8_lossy(&pretty(
            &json!({ "folder": args.out.display().to_string(), "files": list }),
        )));
    } else {
        let mut text = format!("{}\n", args.out.display());
        for (name, bytes) in &documents {
            text.push_str(&format!("  {name}  {} kB\n", bytes.len().div_ceil(1000)));
        }
        out::print(&text);
    }
    ended(&settled)
}
