//! `compare`: jobs side by side.

use super::under::Under;
use crate::{End, out};
use std::path::PathBuf;
use stillrise_desk::{files, frozen, jobs};
use stillrise_documents::compare::{compare, compare_json, compare_text};
use stillrise_documents::issue::{changes_json, changes_text};
use stillrise_documents::package::pretty;
use stillrise_documents::with_range::{lines, with_range_json, with_range_text};
use stillrise_search::Settled;
use stillrise_search::sizes::every;
use stillrise_units::Fault;

/// Jobs side by side: revisions of one, or one asked for in several ways
#[derive(clap::Args)]
pub struct Args {
    /// Two or more enquiry files, or their folders; one with `--with-issued` or `--with-range`
    #[arg(required = true, num_args = 1..=6)]
    files: Vec<PathBuf>,
    /// Holds one enquiry against a revision of it that was issued, number by number: this one; without a name its own revision, or
    /// the only one
    #[arg(long, value_name = "REVISION", num_args = 0..=1)]
    with_issued: Option<Option<String>>,
    /// Every unit of the range beside the others for the duty of one enquiry, each with all rules
    #[arg(long, conflicts_with = "with_issued")]
    with_range: bool,
    /// As JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    under: Under,
}

/// What a file is called: by its folder where all of them are called alike.
fn called(path: &std::path::Path) -> String {
    let folder = path.file_name().is_some_and(|name| name == "enquiry.toml").then(|| path.parent()).flatten();
    let own = folder.filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(path);
    own.file_name().map_or_else(|| own.display().to_string(), |name| name.to_string_lossy().into_owned())
}

/// Runs it.
pub fn run(args: &Args) -> End {
    match (&args.with_issued, args.files.as_slice()) {
        (_, [file]) if args.with_range => return with_range(args, file),
        _ if args.with_range => {
            let remedy = "name one enquiry; the units of its range are held side by side";
            return End::Refused(vec![Fault::new("--with-range", "holds the units of one enquiry's range", remedy)]);
        }
        (Some(revision), [file]) => return with_issued(args, file, revision.as_deref()),
        (Some(_), _) => {
            let remedy = "name one enquiry; its revisions lie beside it";
            return End::Refused(vec![Fault::new("--with-issued", "holds one enquiry against itself", remedy)]);
        }
        (None, [_]) => {
            let remedy = "name another beside it, a revision of it with --with-issued, or the units of the range with --with-range";
            return End::Refused(vec![Fault::new(
                "compare",
                "there is one enquiry, and nothing to compare it with",
                remedy,
            )]);
        }
        _ => {}
    }
    let (mut jobs, mut faults): (Vec<(String, Settled)>, Vec<_>) = (Vec::new(), Vec::new());
    for path in &args.files {
        match files::settled(path, args.under.file()) {
            Ok((settled, _)) => jobs.push((called(path), settled)),
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
    // Two of one name are told apart by their whole paths.
    let alike = |k: usize| jobs.iter().enumerate().any(|(other, (name, _))| other != k && *name == jobs[k].0);
    let twice: Vec<bool> = (0..jobs.len()).map(alike).collect();
    for (k, (name, _)) in jobs.iter_mut().enumerate().filter(|(k, _)| twice[*k]) {
        *name = args.files[k].display().to_string();
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

/// Every unit of the range for one enquiry.
fn with_range(args: &Args, path: &std::path::Path) -> End {
    let settled = match files::settled(path, args.under.file()) {
        Ok((settled, _)) => settled,
        Err(trouble) => return trouble.into(),
    };
    let found = lines(&settled, &every(&settled, &jobs::demo_range()));
    if args.json {
        out::print(&String::from_utf8_lossy(&pretty(&with_range_json(&found))));
    } else {
        out::print(&with_range_text(&found, out::width()));
    }
    // What is looked for is a unit that nothing bars.
    if found.iter().any(|line| line.barred.is_empty()) { End::Done } else { End::Fails }
}

/// One enquiry against a revision of it that was issued. That the same inputs give other results is a check that fails.
fn with_issued(args: &Args, path: &std::path::Path, revision: Option<&str>) -> End {
    let (settled, taken) = match files::settled(path, args.under.file()) {
        Ok(found) => found,
        Err(trouble) => return trouble.into(),
    };
    let found = match frozen::since(&files::file_of(path), revision, &settled, &taken, &jobs::demo_range()) {
        Ok(found) => found,
        Err(trouble) => return trouble.into(),
    };
    if args.json {
        out::print(&String::from_utf8_lossy(&pretty(&changes_json(&found))));
    } else {
        out::print(&changes_text(&found, out::width()));
    }
    if found.tool_differs() || settled.fails() { End::Fails } else { End::Done }
}
