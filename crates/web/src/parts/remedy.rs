//! What would settle a finding: each change that was tried, with a button that makes it and what follows from it.

use crate::answer::Refusal;
use crate::desk::Desk;
use crate::sheet::{Sheet, State};
use maud::{Markup, html};
use serde_json::{Value, json};
use stillrise_checks::Rule;
use stillrise_desk::remedies;
use stillrise_documents::remedies::{follows, remedies_json};
use stillrise_search::Settled;
use stillrise_search::remedies::{AGREE, Remedy};

/// The panel of a rule.
///
/// # Errors
/// [`Refusal`] when there is no such rule, or the text of the sheet is refused.
pub fn piece(desk: &Desk, sheet: &Sheet, id: &str) -> Result<Markup, Refusal> {
    let state = sheet.now();
    let (settled, rule, found) = found(desk, sheet, &state, id)?;
    let says = settled.verdicts.iter().find(|j| *j.rule == *rule).map_or("", |j| j.verdict.says());
    Ok(html! {
        aside #panel data-patch aria-label="What would settle a finding" {
            button.close type="button" data-close="panel" { "Close" }
            h2 tabindex="-1" { "What would settle it: " (rule.title) }
            p { (says) }
            @if found.is_empty() {
                p { "None of the changes that we or the client may decide alone settles it. What to do: " (rule.remedy) }
            } @else {
                p.small { "Each was tried by working the changed enquiry through." }
                ol.remedies { @for remedy in &found { (one(settled, rule, remedy, state.is_locked())) } }
            }
        }
    })
}

fn one(settled: &Settled, rule: &'static Rule, remedy: &Remedy, locked: bool) -> Markup {
    let mut act: Vec<Value> =
        remedy.keys.iter().map(|(path, value)| json!({ "do": "set", "path": path, "value": value })).collect();
    // What the client has not agreed to yet stays open, and the reply asks for it.
    if remedy.says.contains(AGREE) {
        act.push(json!({ "do": "decide", "rule": rule.id, "decision": "open", "because": remedy.says }));
    }
    html! {
        li {
            @if locked { b { (remedy.says) } } @else {
                button type="button" data-act=(Value::Array(act)) data-settles="" { (remedy.says) }
            }
            p.small { @for (path, value) in &remedy.keys { code { (path) " = " (value) } " " } }
            ul { @for line in follows(settled, remedy) { li { (line) } } }
        }
    }
}

/// The same for a program.
///
/// # Errors
/// As [`piece`].
pub fn told(desk: &Desk, sheet: &Sheet, id: &str) -> Result<Value, Refusal> {
    let state = sheet.now();
    let (settled, rule, found) = found(desk, sheet, &state, id)?;
    Ok(remedies_json(settled, rule, &found))
}

fn found<'a>(
    desk: &Desk,
    sheet: &Sheet,
    state: &'a State,
    id: &str,
) -> Result<(&'a Settled, &'static Rule, Vec<Remedy>), Refusal> {
    let rule = remedies::rule(id).map_err(|fault| Refusal::missing(format!("{}; {}", fault.reason, fault.remedy)))?;
    let settled = state.outcome.settled.as_ref();
    let settled = settled.ok_or_else(|| Refusal::Faults(state.outcome.faults.clone()))?;
    let files = |name: &str| desk.folder.beside(&sheet.place, name);
    Ok((settled, rule, remedies::of(&state.text, &files, settled, &desk.demo, rule)))
}
