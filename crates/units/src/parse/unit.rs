//! The unit behind a number, and what is said of one that is not known.

use super::{Gallon, Reading};
use crate::catalog::{Dim, GAL, GPD, GPH, GPM, IMP_GAL, IMP_GPD, IMP_GPH, IMP_GPM, MG_L, UNITS, Unit};
use crate::fault::{Fault, distance};

/// The unit of a name, and whether it is the US gallon for want of a word; of an unknown one the fault names what fits
/// `wanted`, if the caller knows what it wants.
pub(super) fn unit(
    text: &str,
    wanted: Option<Dim>,
    reading: &Reading,
    notes: &mut Vec<String>,
) -> Result<(&'static Unit, bool), Fault> {
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    if text.eq_ignore_ascii_case("ppm") {
        notes.push("\"ppm\" was read as mg/L; by volume it would be another number".to_owned());
        return Ok((&MG_L, false));
    }
    let found = UNITS
        .iter()
        .find(|u| u.symbol == text || u.also.contains(&text.as_str()))
        .or_else(|| unique_ignoring_case(&text));
    let Some(unit) = found else {
        return Err(Fault::new("", format!("the unit \"{text}\" is not known"), instead(&text, wanted)));
    };
    let imperial = [(&GAL, &IMP_GAL), (&GPM, &IMP_GPM), (&GPH, &IMP_GPH), (&GPD, &IMP_GPD)]
        .into_iter()
        .find_map(|(us, imperial)| (**unit == *us).then_some(imperial));
    let stated_us = text.to_ascii_lowercase().starts_with("us");
    match (imperial, reading.gallon) {
        (Some(imperial), Some(Gallon::Imperial)) if !stated_us => Ok((imperial, false)),
        (Some(_), None) if !stated_us => {
            notes.push(format!("\"{text}\" was read as US gallons; nobody said which gallon"));
            Ok((unit, true))
        }
        _ => Ok((unit, false)),
    }
}

/// What to write instead of an unknown unit.
fn instead(text: &str, wanted: Option<Dim>) -> String {
    let fits = |u: &&&Unit| wanted.is_none_or(|dim| u.dim == dim);
    let near = meant(text, UNITS.iter().filter(fits).copied());
    match (near, wanted.map(units_of)) {
        (Some(near), Some(list)) => format!("did you mean \"{near}\"? use {list}"),
        (Some(near), None) => format!("did you mean \"{near}\"?"),
        (None, Some(list)) => format!("use {list}"),
        (None, None) => "use a unit listed by the schema".to_owned(),
    }
}

/// The spelling that was meant: none where two units are equally near, since "m3/u" may be an hour's or a second's, and
/// a slip of the pen in a quotient is one letter at the most.
fn meant(text: &str, units: impl Iterator<Item = &'static Unit>) -> Option<&'static str> {
    let allowed = if text.contains('/') { 1 } else { 1 + text.chars().count() / 3 };
    let lower = text.to_lowercase();
    let each = units.filter_map(|u| {
        let names = core::iter::once(u.symbol).chain(u.also.iter().copied());
        let lettered = names.filter(|n| n.chars().any(char::is_alphabetic));
        lettered.map(|n| (distance(&lower, &n.to_lowercase()), n)).min_by_key(|(d, _)| *d)
    });
    let mut each: Vec<(usize, &'static str)> = each.filter(|(d, _)| *d <= allowed).collect();
    each.sort_by_key(|(d, _)| *d);
    match each[..] {
        [(d, name), (next, _), ..] if d < next => Some(name),
        [(_, name)] => Some(name),
        _ => None,
    }
}

/// The units of a dimension in a sentence: `gpm, L/s or m3/h`.
pub(super) fn units_of(dim: Dim) -> String {
    let symbols: Vec<&str> = Unit::of_dim(dim).map(|u| u.symbol).filter(|s| !s.is_empty()).collect();
    let bare = if dim == Dim::Ratio { "a number without a unit, " } else { "" };
    match symbols.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{bare}{} or {last}", rest.join(", ")),
        _ => format!("{bare}{}", symbols.join("")),
    }
}

/// A unit whose spelling matches but for case, when only one dimension can be meant.
fn unique_ignoring_case(text: &str) -> Option<&'static &'static Unit> {
    let mut matches = UNITS
        .iter()
        .filter(|u| u.symbol.eq_ignore_ascii_case(text) || u.also.iter().any(|a| a.eq_ignore_ascii_case(text)));
    let first = matches.next()?;
    matches.next().is_none().then_some(first)
}
