//! `compare`: jobs side by side.

use crate::{End, out};
use std::path::PathBuf;
use stillrise_desk::files;
use stillrise_documents::compare::{compare, compare_json, compare_text};
use stillrise_documents::package::pretty;
use stillrise_search::Settled;

/// Jobs side by side: revisions of one, or one asked for in several ways
#[derive(clap::Args)]
pub struct Args {
    /// Two or more enquiry files, or their folders
    #[arg(required = true, num_args = 2..=6)]
    files: Vec<PathBuf>,
    /// As JSON
    #[arg(long)]
    json: bool,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let (mut jobs, mut faults): (Vec<(String, Settled)>, Vec<_>) = (Vec::new(), Vec::new());
    for path in &args.files {
        match files::settled(path) {
            Ok((settled, _)) => jobs.push((path.display().to_string(), settled)),
            Err(stillrise_desk::Trouble::Refused(found)) => {
                let place = path.display().to_string();
                faults.extend(found.into_iter().map(|mut fault| {
                    if !fault.place.contains(&place) {
                        fault.place = format!("{place}: {}", fault.place);
                    }
                    fault
                }));
            }
            Err(trouble) => return trouble.into(),
        }
    }
    if !faults.is_empty() {
        return End::Refused(faults);
    }
    let beside: Vec<(String, &Settled)> = jobs.iter().map(|(name, settled)| (name.clone(), settled)).collect();
    let found = compare(&beside);
    if args.json {
        out::print(&String::from_utf8_lossy(&pretty(&compare_json(&found))));
    } else {
        out::print(&compare_text(&found, out::width()));
    }
    if jobs.iter().any(|(_, settled)| settled.fails()) { End::Fails } else { End::Done }
}
