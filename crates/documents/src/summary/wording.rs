//! How limits and contents are worded wherever they are told.

use stillrise_design::basis::limits::LimitState;
use stillrise_design::performance::promise::Promise;
use stillrise_design::train::Train;
use stillrise_search::Settled;
use stillrise_units::catalog::MG_L;
use stillrise_units::print::{digits, with_unit};
use stillrise_units::{Concentration, Typed};

/// How much a limit allows, in prose.
pub(crate) fn allows(limit: &LimitState) -> String {
    match &limit.unseen {
        Some(_) => format!("none to be seen (we took {} of free oil)", mg_l(limit.value.q)),
        None => mg_l(limit.value.q),
    }
}

/// A limit with how much it allows: `Oil and grease of 15 mg/L`.
pub(crate) fn limit(limit: &LimitState) -> String {
    let of = if limit.unseen.is_some() { "," } else { " of" };
    format!("{}{of} {}", limit.title(), allows(limit))
}

/// The statistic of a limit; of one that nobody said, that it was taken.
pub(crate) fn statistic(settled: &Settled, limit: &LimitState) -> String {
    let word = limit.statistic.q.word();
    match settled.subject().assumed(limit.statistic.at) {
        Some(_) => format!("{word} (taken, as no statistic was stated)"),
        None => word.to_owned(),
    }
}

/// A concentration in mg/L, four digits.
pub(crate) fn mg_l(c: Concentration) -> String {
    with_unit(c.si(), &MG_L)
}

/// Total oil out in a table: never a number below the published floor, unless the influent is lower.
pub(crate) fn total_out(expected: Concentration, influent: Concentration) -> String {
    Promise::of(expected, influent).brief()
}

/// The unit or units of a train: `Demo 180`, `2 x Demo 180`.
pub(crate) fn units(train: &Train) -> String {
    let (count, model) = (train.count.q.si(), &train.unit.particulars.model);
    if count > 1.0 { format!("{} x {model}", digits(count, 2)) } else { model.clone() }
}

/// The same text with a capital letter.
pub(crate) fn capital(text: &str) -> String {
    let mut chars = text.chars();
    match chars.next() {
        Some(first) => first.to_uppercase().chain(chars).collect(),
        None => String::new(),
    }
}

/// Figures by their number: "one figure", "3 figures".
pub(crate) fn figures(n: usize) -> String {
    if n == 1 { "one figure".to_owned() } else { format!("{n} figures") }
}

/// The same text with a small letter, unless it begins with an abbreviation.
pub(crate) fn lower(text: &str) -> String {
    let mut chars = text.chars();
    match (chars.next(), chars.next()) {
        // `A limit`, and no more: letters alone are signs.
        (Some(first), Some(second)) if second.is_lowercase() || (first, second) == ('A', ' ') => {
            first.to_lowercase().chain(core::iter::once(second)).chain(chars).collect()
        }
        _ => text.to_owned(),
    }
}
