//! What has changed since a revision was issued, in words and for programs.

use super::changes::{Because, By, Changes, Number};
use crate::render::text::{hang, heading};
use crate::summary::CAUTION;
use serde_json::{Value, json};

/// Version of this tool.
const TOOL: &str = env!("CARGO_PKG_VERSION");
/// Numbers that the terminal lists; programs get all.
const SHOWN: usize = 60;

impl Changes {
    /// What has changed, and by what, in a sentence or two.
    #[must_use]
    pub fn says(&self) -> String {
        let then = self.tool.as_deref().unwrap_or("an unknown version");
        let tool = match then == TOOL {
            true => format!("this build of the tool works otherwise than the one it was issued with, both {TOOL}"),
            false => format!("the tool changed, {then} then and {TOOL} now"),
        };
        let (by_tool, by_inputs) = (numbers(self.count(By::Tool)), numbers(self.count(By::Inputs)));
        match self.because {
            Because::Refused => format!(
                "This version of the tool, {TOOL}, refuses the inputs as issued by {then}; whether results differ by the inputs or by the tool cannot be told."
            ),
            Because::TextAlone => format!(
                "Of this revision the text of the enquiry alone was kept, so what the tool changed since cannot be told. By what was said, {by_inputs} differ."
            ),
            Because::Known(None) if self.inputs.is_empty() => {
                format!("Nothing has changed: the same inputs give the same {} numbers.", self.held)
            }
            Because::Known(None) => "Inputs differ in their text, and no number by that.".to_owned(),
            Because::Known(Some(By::Inputs)) => format!(
                "The inputs changed, and {by_inputs} by that. On the inputs as issued the tool gives the numbers as issued."
            ),
            Because::Known(Some(By::Tool)) if self.inputs.is_empty() => {
                format!("The inputs are the same, and {by_tool} differ because {tool}.")
            }
            Because::Known(Some(By::Tool)) => {
                format!("Inputs differ in their text, and no number by that; {by_tool} differ because {tool}.")
            }
            Because::Known(Some(By::Both)) => format!(
                "The inputs changed, and {by_inputs} by that. Besides, {by_tool} differ on the inputs as issued because {tool}."
            ),
        }
    }
}

fn numbers(count: usize) -> String {
    if count == 1 { "1 number".to_owned() } else { format!("{count} numbers") }
}

/// A line on what differs: as issued, on the same inputs today, now.
fn line(n: &Number) -> String {
    let shown = |text: &Option<String>| text.clone().unwrap_or_else(|| "–".to_owned());
    match n.by {
        By::Inputs => {
            format!("{}: {} -> {}", n.what, shown(if n.issued.is_some() { &n.issued } else { &n.again }), shown(&n.now))
        }
        By::Tool => format!("{}: {} -> {}, by the tool", n.what, shown(&n.issued), shown(&n.now)),
        By::Both => format!(
            "{}: {} -> {} by the tool -> {} by the inputs",
            n.what,
            shown(&n.issued),
            shown(&n.again),
            shown(&n.now)
        ),
    }
}

/// The comparison as plain text.
#[must_use]
pub fn changes_text(found: &Changes, width: usize) -> String {
    let mut out = heading(&format!("Since revision {} was issued", found.revision));
    out.push_str(&hang(&found.says(), width, 0, 0));
    for fault in &found.faults {
        out.push_str(&hang(&fault.to_string(), width, 2, 4));
    }
    let mut list = |title: &str, lines: Vec<String>| {
        if !lines.is_empty() {
            out.push_str(&heading(title));
            let more = lines.len().saturating_sub(SHOWN);
            lines.iter().take(SHOWN).for_each(|line| out.push_str(&hang(line, width, 0, 2)));
            if more > 0 {
                out.push_str(&hang(&format!("and {more} more; --json lists all"), width, 0, 2));
            }
        }
    };
    list(
        "Inputs that differ",
        found
            .inputs
            .iter()
            .map(|(name, was, is)| match (was, is) {
                (Some(_), None) => format!("{name}: no longer read"),
                (None, Some(_)) => format!("{name}: was not read then"),
                _ => format!("{name}: another content"),
            })
            .collect(),
    );
    let shown = |text: Option<&Option<String>>| text.cloned().flatten().unwrap_or_else(|| "–".to_owned());
    list(
        "What was said that differs",
        found
            .said
            .iter()
            .map(|line| format!("{}: {} -> {}", line.what, shown(line.values.first()), shown(line.values.get(1))))
            .collect(),
    );
    list("What it comes to", found.results.iter().map(line).collect());
    list("What rules say", found.rules.iter().map(line).collect());
    list("Numbers, in the order of the calculation", found.numbers.iter().map(line).collect());
    out.push('\n');
    out.push_str(&hang(CAUTION, width, 0, 0));
    out
}

/// The comparison as JSON.
#[must_use]
pub fn changes_json(found: &Changes) -> Value {
    let list = |all: &[Number]| -> Vec<Value> {
        all.iter()
            .map(|n| json!({ "what": n.what, "issued": n.issued, "again": n.again, "now": n.now, "by": n.by.word() }))
            .collect()
    };
    let because = match found.because {
        Because::Known(by) => by.map_or("nothing", By::word),
        Because::TextAlone => "text alone",
        Because::Refused => "refused",
    };
    json!({
        "caution": CAUTION, "revision": found.revision, "date": found.date,
        "tool": { "issued": found.tool, "now": TOOL },
        "because": because, "says": found.says(), "held": found.held,
        "inputs": found.inputs.iter().map(|(name, was, is)| json!({ "name": name, "issued": was, "now": is })).collect::<Vec<_>>(),
        "refused": found.faults.iter().map(|f| json!({ "place": f.place, "reason": f.reason, "remedy": f.remedy })).collect::<Vec<_>>(),
        "said": found.said.iter().map(|line| json!({ "what": line.what, "issued": line.values.first(), "now": line.values.get(1) })).collect::<Vec<_>>(),
        "results": list(&found.results), "rules": list(&found.rules), "numbers": list(&found.numbers),
    })
}
