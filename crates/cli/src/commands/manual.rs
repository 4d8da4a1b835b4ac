//! `manual`: the whole manual as pages in a folder.

use crate::{End, out};
use serde_json::json;
use std::path::PathBuf;
use stillrise_desk::packages::write_marked;
use stillrise_documents::package::{MANIFEST, MARK_OF_MANUAL, manifest_of_manual, pretty};
use stillrise_web::manual::site;

/// Writes the manual as pages that open from the disk: formulas, data, oils, rules, keys, causes, guide
#[derive(clap::Args)]
pub struct Args {
    /// Where to; a folder that exists is replaced only if it is a manual of ours
    #[arg(long, value_name = "DIR", default_value = "manual")]
    out: PathBuf,
    /// The list of files as JSON
    #[arg(long)]
    json: bool,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let mut files = site();
    let manifest = manifest_of_manual(&files);
    files.push((MANIFEST.to_owned(), manifest));
    if let Err(trouble) = write_marked(&args.out, MARK_OF_MANUAL, None, &files) {
        return trouble.into();
    }
    let pages = files.iter().filter(|(name, _)| name.ends_with(".html")).count();
    if args.json {
        let list: Vec<_> = files.iter().map(|(name, bytes)| json!({ "name": name, "bytes": bytes.len() })).collect();
        let told = json!({ "folder": args.out.display().to_string(), "files": list });
        out::print(&String::from_utf8_lossy(&pretty(&told)));
    } else {
        out::print(&format!("{pages} pages; they begin at {}\n", args.out.join("index.html").display()));
    }
    End::Done
}
