//! What of the oil does not rise, asked once: a client knows the share that is dissolved no better than the one that is
//! emulsified, but one sample that has stood tells him both together.

use super::alike::water;
use crate::summary::capital;
use stillrise_design::enquiry::blocks::OilContent;
use stillrise_search::questions::Question;

/// The two kinds.
const KINDS: [&str; 2] = ["dissolved", "emulsified"];

fn kind(q: &Question) -> Option<&'static str> {
    match q.declared {
        key if key.is(OilContent::dissolved) => Some(KINDS[0]),
        key if key.is(OilContent::emulsified) => Some(KINDS[1]),
        _ => None,
    }
}

/// One question in place of all of both kinds; `None` where `q` is of neither, or only one kind is asked for.
pub(super) fn asked<'a>(all: impl Iterator<Item = &'a Question>, q: &Question) -> Option<String> {
    kind(q)?;
    let of_both: Vec<(&Question, &str)> = all.filter_map(|q| Some((q, kind(q)?))).collect();
    if KINDS.iter().any(|kind| of_both.iter().all(|(_, of)| of != kind)) {
        return None;
    }
    let mut waters: Vec<(&str, Vec<String>)> = Vec::new();
    for (q, kind) in &of_both {
        let taken = format!("{} {kind}", q.now);
        match waters.iter_mut().find(|(name, _)| *name == water(q)) {
            Some((_, all)) => all.push(taken),
            None => waters.push((water(q), vec![taken])),
        }
    }
    let each: Vec<String> =
        waters.iter().map(|(name, taken)| format!("{}: {}", capital(name), taken.join(" and "))).collect();
    Some(format!(
        "How much of the oil does not rise, being dissolved or emulsified (by detergent, pressure washing, pumping)? A sample that has stood for a day, taken from below its surface, shows it. We took for {}.",
        each.join("; ")
    ))
}

/// Whether a line of the mail asks for it.
pub(super) fn stands_in(line: &str, q: &Question, name: &str) -> bool {
    line.starts_with("How much of the oil does not rise") && kind(q).is_some() && line.to_lowercase().contains(name)
}
