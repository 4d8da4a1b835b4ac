//! `flow`: the water in the long section of the unit, resolved.

use super::under::Under;
use crate::{End, ended, out, progress};
use serde_json::json;
use std::path::PathBuf;
use stillrise_desk::files;
use stillrise_desk::packages::write_marked;
use stillrise_documents::flow::{files as files_of, flow_json, flow_text, resolved};
use stillrise_documents::package::{MARK_OF_WATER, pretty};

/// The water in the long section, resolved: how evenly the plates are fed, what runs back, what stands, the head it takes
#[derive(clap::Args)]
pub struct Args {
    /// The enquiry file, or its folder
    file: PathBuf,
    /// A folder for its picture with streamlines, its values as VTK and as CSV
    #[arg(long)]
    out: Option<PathBuf>,
    /// The flow as JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    under: Under,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let settled = match files::settled(&args.file, args.under.file()) {
        Err(trouble) => return trouble.into(),
        Ok((settled, _)) => settled,
    };
    let progress = progress::Progress::new();
    let found = resolved(&settled, &|done, of| progress.goes_on(done, of));
    progress.clear();
    let reason = match found {
        Some(Ok(found)) => {
            if let Some(folder) = &args.out {
                let title = settled.job.enquiry.head.title.0.as_deref();
                if let Err(trouble) = write_marked(folder, MARK_OF_WATER, title, &files_of(&settled, &found)) {
                    return trouble.into();
                }
            }
            if args.json {
                out::print(&String::from_utf8_lossy(&pretty(&flow_json(&settled, &found))));
            } else {
                out::print(&flow_text(&settled, &found, out::width()));
            }
            return ended(&settled);
        }
        Some(Err(unfit)) => format!("The flow cannot be resolved. {unfit}."),
        None => "There is no unit whose water could be looked at. See `stillrise size`.".to_owned(),
    };
    if args.json {
        out::print(&String::from_utf8_lossy(&pretty(&json!({ "flow": null, "because": reason }))));
    } else {
        out::print(&format!("{reason}\n"));
    }
    ended(&settled)
}
