//! `rate`: a unit that stands, against its duty and what was observed.

use super::under::Under;
use crate::{End, ended, out};
use std::path::PathBuf;
use stillrise_desk::files;
use stillrise_documents::package::pretty;
use stillrise_documents::rating::{rating_json, rating_text};
use stillrise_units::Fault;

/// A unit that stands: what it should do, and what explains that it does not
#[derive(clap::Args)]
pub struct Args {
    /// The enquiry file with `unit.dimensions` or `unit.model` and `[[observed]]`, or its folder
    file: PathBuf,
    /// The rating as JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    under: Under,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let mut settled = match files::settled(&args.file, args.under.file()) {
        Err(trouble) => return trouble.into(),
        Ok((settled, _)) => settled,
    };
    let unit = &settled.job.enquiry.unit;
    let place = || args.file.display().to_string();
    if unit.dimensions.is_none() && unit.model.is_none() {
        let remedy = "write [unit] with dimensions = { .. }, or with the model that stands there";
        return End::Refused(vec![Fault::new(place(), "the unit that stands there is not described", remedy)]);
    }
    if let Err(stop) = settled.diagnose() {
        return End::Refused(vec![Fault::new(place(), stop.reason, "see `stillrise schema enquiry`")]);
    }
    if let Some(diagnosis) = &settled.diagnosis {
        if args.json {
            out::print(&String::from_utf8_lossy(&pretty(&rating_json(&settled, diagnosis))));
        } else {
            out::print(&rating_text(&settled, diagnosis, out::width()));
        }
    }
    ended(&settled)
}
