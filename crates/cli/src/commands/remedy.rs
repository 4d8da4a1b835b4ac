//! `remedy`: what would settle a finding, each change tried.

use super::under::Under;
use crate::{End, out};
use std::path::PathBuf;
use stillrise_desk::remedies::{Found, of_file};
use stillrise_documents::package::pretty;
use stillrise_documents::remedies::{follows, remedies_json};
use stillrise_documents::render::text::hang;

/// Changes that we or the client may decide and that settle a finding, each tried by working the
/// changed enquiry through
#[derive(clap::Args)]
pub struct Args {
    /// The enquiry file, or its folder
    file: PathBuf,
    /// The rule, by the id that stands in brackets beside the finding
    rule: String,
    /// As JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    under: Under,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    match of_file(&args.file, args.under.file(), &args.rule) {
        Err(trouble) => trouble.into(),
        Ok(found) => {
            if args.json {
                let told = remedies_json(&found.settled, found.rule, &found.remedies);
                out::print(&String::from_utf8_lossy(&pretty(&told)));
            } else {
                out::print(&told(&found, out::width()));
            }
            End::Done
        }
    }
}

fn told(found: &Found, width: usize) -> String {
    let Found { settled, rule, remedies } = found;
    let verdict = settled.judged(rule).map(|judged| &judged.verdict);
    let says = verdict.map_or_else(String::new, |v| format!("{} {} [{}]: {}", v.word(), rule.title, rule.id, v.says()));
    let mut text = hang(&says, width, 0, 2);
    if remedies.is_empty() {
        let open = verdict.is_some_and(|v| v.is_finding() || !v.asks().is_empty());
        let why = if open {
            format!(
                "None of the changes that we or the client may decide alone settles it. What to do: {}",
                rule.remedy
            )
        } else {
            "Nothing is to be settled.".to_owned()
        };
        text.push_str(&hang(&why, width, 0, 0));
    }
    for (k, remedy) in remedies.iter().enumerate() {
        text.push_str(&hang(&format!("{}. {}", k + 1, remedy.says), width, 0, 3));
        for (path, value) in &remedy.keys {
            text.push_str(&hang(&format!("set {path} = {value}"), width, 3, 5));
        }
        for line in follows(settled, remedy) {
            text.push_str(&hang(&format!("- {line}"), width, 3, 5));
        }
    }
    text
}
