//! `reply`: the fifteen-minute answer.

use super::under::Under;
use crate::{End, ended, out};
use serde_json::json;
use std::path::PathBuf;
use stillrise_desk::files;
use stillrise_documents::package::pretty;
use stillrise_documents::reply::reply;

/// The first answer as the text of a mail: size, footprint, weight, questions; budget of a range of your own
#[derive(clap::Args)]
pub struct Args {
    /// The enquiry file, or its folder
    file: PathBuf,
    /// The text inside JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    under: Under,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    match files::with_alternatives(&args.file, args.under.file()) {
        Err(trouble) => trouble.into(),
        Ok((mut settled, _)) => {
            // What explains the results belongs into the answer; where nothing can be said of it, the answer goes without.
            if settled.job.enquiry.unit_stands() && settled.job.enquiry.is_observed() {
                let _ = settled.diagnose();
            }
            let text = reply(&settled);
            if args.json {
                out::print(&String::from_utf8_lossy(&pretty(&json!({ "reply": text }))));
            } else {
                out::print(&text);
            }
            ended(&settled)
        }
    }
}
