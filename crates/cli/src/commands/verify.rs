//! `verify`: every check value of the handbook, on this machine.

use crate::{End, out};
use serde_json::json;
use stillrise_documents::package::pretty;
use stillrise_documents::render::text::Table;
use stillrise_handbook::evidence::{Outcome, verify, verify_page};
use stillrise_handbook::manual::named;
use stillrise_handbook::page::Evidence;
use stillrise_handbook::pages;

/// Runs every check value of the handbook on this machine
#[derive(clap::Args)]
pub struct Args {
    /// Only the checks of this formula, each shown
    formula: Option<String>,
    /// As JSON
    #[arg(long)]
    json: bool,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let outcomes = match args.formula.as_deref().map(named) {
        None => verify(),
        Some(Ok(page)) => verify_page(page),
        Some(Err(fault)) => return End::Refused(vec![fault]),
    };
    let failed = outcomes.iter().filter(|o| !o.holds).count();
    let count = |kind: &str| outcomes.iter().filter(|o| o.kind == kind).count();
    if args.json {
        let value = json!({
            "formulas": pages().filter(|p| outcomes.iter().any(|o| o.page == p.id)).count(),
            "checks": outcomes.len(), "fail": failed,
            "by_evidence": Evidence::KINDS.iter().map(|k| ((*k).to_owned(), json!(count(k)))).collect::<serde_json::Map<_, _>>(),
            "outcomes": outcomes.iter().map(|o| json!({
                "formula": o.page, "given": o.given, "expected": o.expected, "obtained": o.obtained, "tolerance": o.tolerance, "tolerance_reason": o.reason, "evidence": o.evidence, "kind": o.kind, "holds": o.holds,
            })).collect::<Vec<_>>(),
        });
        out::print(&String::from_utf8_lossy(&pretty(&value)));
    } else {
        out::print(&text(&outcomes, args.formula.is_some(), failed, &count));
    }
    if failed == 0 { End::Done } else { End::Fails }
}

fn text(outcomes: &[Outcome], each: bool, failed: usize, count: &dyn Fn(&str) -> usize) -> String {
    let mut text = String::new();
    for o in outcomes.iter().filter(|o| each || !o.holds) {
        let word = if o.holds { "holds" } else { "FAILS" };
        text.push_str(&format!(
            "{word}  {}: {}\n       expected {}, obtained {}\n       tolerance {}: {}\n       {}\n",
            o.page, o.given, o.expected, o.obtained, o.tolerance, o.reason, o.evidence
        ));
    }
    let mut table = Table::new(["evidence", "checks"]);
    for kind in Evidence::KINDS {
        table.row([kind.to_owned(), count(kind).to_string()]);
    }
    text.push_str(&table.render(out::width()));
    text.push_str(&format!("{} checks, {failed} fail\n", outcomes.len()));
    text
}
