//! `risk`: how sure the prediction is, and what carries the doubt.

use super::under::Under;
use crate::{End, ended, out, progress};
use serde_json::json;
use std::path::PathBuf;
use stillrise_desk::files;
use stillrise_documents::package::pretty;
use stillrise_documents::risk::{risk_json, risk_text};
use stillrise_search::risk::{SAMPLES, risk};

/// How sure the prediction is: bands, the chance to keep each limit, and which inputs carry the doubt
#[derive(clap::Args)]
pub struct Args {
    /// The enquiry file, or its folder
    file: PathBuf,
    /// Runs of the calculation, each with its inputs drawn from their ranges
    #[arg(long = "runs", alias = "samples", default_value_t = SAMPLES as u32, value_parser = clap::value_parser!(u32).range(20..=1_000_000))]
    samples: u32,
    /// The study as JSON
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
    if settled.job.design.performance.is_none() {
        let stops: Vec<String> = settled.job.design.stops.iter().map(ToString::to_string).collect();
        let reason = format!("There is no prediction to study: {}. See `stillrise size`.", stops.join("; "));
        if args.json {
            out::print(&String::from_utf8_lossy(&pretty(&json!({ "risk": null, "because": reason }))));
        } else {
            out::print(&format!("{reason}\n"));
        }
        return ended(&settled);
    }
    let progress = progress::Progress::new();
    let Some(study) = risk(&settled.job, args.samples as usize, &|done, of| progress.goes_on(done, of)) else {
        progress.clear();
        return End::Machine("Stopped; nothing was written.".to_owned());
    };
    progress.clear();
    if args.json {
        out::print(&String::from_utf8_lossy(&pretty(&risk_json(&settled, &study))));
    } else {
        out::print(&risk_text(&settled, &study, out::width()));
    }
    ended(&settled)
}
