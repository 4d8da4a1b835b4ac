//! What was decided about a finding, in print: by whom, why, and on which day.

use crate::edition::Edition;
use stillrise_checks::Judged;

/// The word of a decision: `accepted`, or `accepted by company rule`; nothing where none was made.
#[must_use]
pub fn word(judged: &Judged) -> Option<String> {
    let word = judged.decision.as_ref()?.decision.0.map_or("open", |word| word.word());
    Some(if judged.is_by_company() { format!("{word} by company rule") } else { word.to_owned() })
}

/// Who decided and when, in brackets; who did is ours alone. What nobody wrote is told to us, as a decision without it can be
/// laid before nobody.
#[must_use]
pub fn by(judged: &Judged, edition: Edition) -> String {
    let Some(decision) = &judged.decision else { return String::new() };
    let who = decision.who.as_deref().filter(|who| !who.trim().is_empty()).unwrap_or("nobody named");
    let date = decision.date.0.map_or_else(|| "no date".to_owned(), |date| date.to_string());
    match (edition.is_internal(), decision.date.0) {
        (true, _) => format!(" ({who}, {date})"),
        (false, Some(_)) => format!(" ({date})"),
        (false, None) => String::new(),
    }
}

/// The whole of it: `accepted: heat tracing by others (J. Example, 2026-03-02)`.
#[must_use]
pub fn told(judged: &Judged, edition: Edition) -> Option<String> {
    let because = judged.decision.as_ref()?.because.as_deref().unwrap_or("no reason given");
    Some(format!("{}: {because}{}", word(judged)?, by(judged, edition)))
}
