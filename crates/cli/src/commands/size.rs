//! `size`: triage, basis, train, performance, verdicts and open questions.

use super::under::Under;
use crate::{End, ended, out};
use std::path::PathBuf;
use stillrise_desk::files;
use stillrise_documents::{Edition, package::pretty, result::result, summary::summary};

/// Triage, basis, train, performance, verdicts and open questions of an enquiry
#[derive(clap::Args)]
pub struct Args {
    /// The enquiry file, or its folder
    file: PathBuf,
    /// Everything, as JSON (see `stillrise schema result`)
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    under: Under,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    match files::settled(&args.file, args.under.file()) {
        Err(trouble) => trouble.into(),
        Ok((settled, _)) => {
            if args.json {
                out::print(&String::from_utf8_lossy(&pretty(&result(&settled, Edition::Us))));
            } else {
                out::print(&summary(&settled, out::width()));
            }
            ended(&settled)
        }
    }
}
