//! Reading a formula's arguments as a person writes them: `d=60 um`, `group=crude`,
//! `areas=[0.5 acre: 0.9; 0.2 acre: 0.3]`.

use crate::page::{Arg, Kind, Page, Symbol};
use stillrise_units::parse::{Gallon, Reading, quantity_of};
use stillrise_units::{Fault, nearest};

const READING: Reading = Reading { gallon: Some(Gallon::Us) };

/// Reads one value for a symbol.
///
/// # Errors
/// A fault whose place is the argument's name.
pub fn value(symbol: &Symbol, text: &str) -> Result<Arg, Fault> {
    let place = |fault: Fault| fault.at(symbol.name);
    match symbol.kind {
        Kind::Quantity(dim) => quantity_of(text, dim, &READING).map(|w| Arg::Number(w.si())).map_err(place),
        Kind::Choice(words) => match words.iter().find(|(word, _)| *word == text.trim()) {
            Some((word, _)) => Ok(Arg::Choice(word)),
            None => {
                let names: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
                let near = nearest(text, names.iter().copied());
                let remedy = match near {
                    Some(near) => format!("did you mean \"{near}\"?"),
                    None => format!("write one of {}", names.join(", ")),
                };
                Err(Fault::new(symbol.name, format!("\"{text}\" is not known"), remedy))
            }
        },
        Kind::Series => series(symbol, text).map_err(place),
    }
}

fn series(symbol: &Symbol, text: &str) -> Result<Arg, Fault> {
    let inner = text
        .trim()
        .strip_prefix('[')
        .and_then(|t| t.strip_suffix(']'))
        .ok_or_else(|| Fault::new("", format!("\"{text}\" is not a list"), "write pairs as [x: y; x: y]"))?;
    let dims = [symbol.units, symbol.second].map(|units| units.map(|(_, si)| si.dim));
    let [Some(first), Some(second)] = dims else {
        return Err(Fault::new("", "takes no pairs", "see `stillrise work --list`"));
    };
    let mut pairs = Vec::new();
    for row in inner.split(';').filter(|row| !row.trim().is_empty()) {
        let (x, y) = row.split_once(':').ok_or_else(|| {
            Fault::new("", format!("\"{}\" is not a pair", row.trim()), "write pairs as [x: y; x: y]")
        })?;
        pairs.push((quantity_of(x, first, &READING)?.si(), quantity_of(y, second, &READING)?.si()));
    }
    Ok(Arg::Series(pairs))
}

/// Reads all arguments of a page from `name=value` texts, with every fault at once.
///
/// # Errors
/// All faults: unknown names, values that cannot be read, arguments missing or given twice.
pub fn arguments(page: &Page, given: &[&str]) -> Result<Vec<Arg>, Vec<Fault>> {
    let mut faults = Vec::new();
    let mut found: Vec<Option<Arg>> = vec![None; page.args.len()];
    for text in given {
        let Some((name, value_text)) = text.split_once('=') else {
            faults.push(Fault::new(*text, "is not name=value", "write for instance d=\"60 um\""));
            continue;
        };
        let name = name.trim();
        match page.args.iter().position(|a| a.name == name) {
            None => {
                let near = nearest(name, page.args.iter().map(|a| a.name));
                let names: Vec<_> = page.args.iter().map(|a| a.name).collect();
                let remedy = near.map_or_else(
                    || format!("the arguments are {}", names.join(", ")),
                    |near| format!("did you mean {near}?"),
                );
                faults.push(Fault::new(name, "is not an argument of this formula", remedy));
            }
            Some(i) if found[i].is_some() => {
                faults.push(Fault::new(name, "is given twice", "give it once"));
            }
            Some(i) => match value(&page.args[i], value_text) {
                Ok(arg) => found[i] = Some(arg),
                Err(fault) => {
                    faults.push(fault);
                    found[i] = Some(Arg::Number(f64::NAN));
                }
            },
        }
    }
    for (symbol, arg) in page.args.iter().zip(&found) {
        if arg.is_none() {
            faults.push(Fault::new(symbol.name, format!("is missing: {}", symbol.meaning), example(symbol)));
        }
    }
    if faults.is_empty() { Ok(found.into_iter().flatten().collect()) } else { Err(faults) }
}

/// What one could write for a symbol.
#[must_use]
pub fn example(symbol: &Symbol) -> String {
    match symbol.kind {
        Kind::Quantity(_) => {
            let unit = symbol.units.map_or("", |(us, _)| us.symbol);
            format!("write {}=\"<number> {unit}\"", symbol.name)
        }
        Kind::Choice(words) => {
            let names: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
            format!("write {}=\"<one of {}>\"", symbol.name, names.join(", "))
        }
        Kind::Series => format!("write {}=\"[x: y; x: y]\"", symbol.name),
    }
}

/// Splits `"a=1 ft, b=[1: 2; 3: 4]"` at the commas between arguments.
#[must_use]
pub fn split(given: &str) -> Vec<&str> {
    // A comma parts arguments when a name and an equals sign follow it.
    let mut parts = Vec::new();
    let mut start = 0;
    for (i, _) in given.match_indices(", ") {
        let rest = &given[i + 2..];
        let name_end = rest.find(|c: char| !(c.is_alphanumeric() || c == '_')).unwrap_or(rest.len());
        if name_end > 0 && rest[name_end..].starts_with('=') {
            parts.push(given[start..i].trim());
            start = i + 2;
        }
    }
    if !given[start..].trim().is_empty() {
        parts.push(given[start..].trim());
    }
    parts
}
