//! What comes from the company's settings, wherever it is shown: each thing with its key, and what the enquiry states in its place.

use crate::edition::Edition;
use crate::render::text::hang;
use serde_json::{Value, json};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::settings::FromSettings;

/// A line on one thing: `drawing.size: A3; the enquiry says A4 instead`.
#[must_use]
pub fn line(one: &FromSettings) -> String {
    let instead = one.instead.as_ref().map_or_else(String::new, |said| format!("; the enquiry says {said} instead"));
    format!("{}: {}{instead}", one.key, one.value)
}

/// All of it on the terminal; nothing where there are no settings.
pub(crate) fn text(enquiry: &Enquiry, width: usize) -> String {
    let Some(settings) = &enquiry.settings else { return String::new() };
    let mut out = hang(&format!("They stand in {}.", settings.file), width, 0, 2);
    for one in enquiry.from_settings() {
        out.push_str(&hang(&line(&one), width, 2, 4));
    }
    out
}

/// The same for programs; null where there are no settings. Where the file lies and who accepts a rule is ours alone.
pub(crate) fn json(enquiry: &Enquiry, edition: Edition) -> Value {
    let Some(settings) = &enquiry.settings else { return Value::Null };
    let all: Vec<Value> = shown(enquiry, edition)
        .iter()
        .map(|one| json!({ "key": one.key, "what": one.what, "value": one.value, "above": one.above, "instead": one.instead }))
        .collect();
    json!({ "file": edition.is_internal().then_some(&settings.file), "says": all })
}

/// What an edition shows of it.
pub(crate) fn shown(enquiry: &Enquiry, edition: Edition) -> Vec<FromSettings> {
    let mut all = enquiry.from_settings();
    if !edition.is_internal() {
        // Who accepts a rule is ours alone; that it is accepted stands at its finding.
        let named: Vec<String> =
            enquiry.settings.iter().flat_map(|s| &s.accepts).map(|a| a.rule().path().into_owned()).collect();
        all.retain(|one| !named.contains(&one.key));
    }
    all
}
