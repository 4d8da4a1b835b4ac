//! `issue`: freezes a revision.

use super::under::Under;
use crate::{End, out};
use serde_json::json;
use std::path::PathBuf;
use stillrise_desk::frozen::issue_file;
use stillrise_documents::package::pretty;

/// Freezes a revision beside its enquiry: every input, the results by number, and their hashes. Refused where a rule fails
/// undecided, or revision, date or status do not stand; what was issued is never replaced by another content
#[derive(clap::Args)]
pub struct Args {
    /// The enquiry file, or its folder
    file: PathBuf,
    /// Issues it as this revision, and writes that into the enquiry
    #[arg(long, value_name = "NAME")]
    revision: Option<String>,
    /// What was done, as JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    under: Under,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let issued = match issue_file(&args.file, args.under.file(), args.revision.as_deref()) {
        Ok(issued) => issued,
        Err(trouble) => return trouble.into(),
    };
    let folder = issued.folder.display().to_string();
    if args.json {
        let done = json!({ "revision": issued.revision, "folder": folder, "written": issued.fresh });
        out::print(&String::from_utf8_lossy(&pretty(&done)));
        return End::Done;
    }
    let revision = &issued.revision;
    out::print(&match issued.fresh {
        true => format!(
            "Revision {revision} is issued: {folder}\nNow: stillrise compare {} --with-issued {revision}\n",
            args.file.display()
        ),
        false => format!("Revision {revision} stands as it was issued, with the same content: {folder}\n"),
    });
    End::Done
}
