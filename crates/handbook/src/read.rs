//! Reading a formula's arguments as a person writes them: `d=60 um`, `group=crude`,
//! `areas=[0.5 acre: 0.9; 0.2 acre: 0.3]`.

use crate::page::{Arg, Group, Kind, Page, Symbol};
use stillrise_units::parse::{Gallon, Reading, quantity_of};
use stillrise_units::{Fault, nearest};

const READING: Reading = Reading { gallon: Some(Gallon::Us) };

/// Reads one value for a symbol.
///
/// # Errors
/// The first fault, whose place is the argument's name.
pub fn value(symbol: &Symbol, text: &str) -> Result<Arg, Fault> {
    every_fault(symbol, text).map_err(|faults| {
        let none = || Fault::new(symbol.name, "cannot be read", example(symbol));
        faults.into_iter().next().unwrap_or_else(none)
    })
}

/// Reads one value for a symbol; of a group every fault at once.
fn every_fault(symbol: &Symbol, text: &str) -> Result<Arg, Vec<Fault>> {
    match symbol.kind {
        Kind::Group(one) => group(&[one], text).map_err(|faults| placed(faults, symbol)),
        Kind::Groups(kinds) => groups(kinds, text).map_err(|faults| placed(faults, symbol)),
        _ => single(symbol, text).map_err(|fault| vec![fault]),
    }
}

fn placed(faults: Vec<Fault>, symbol: &Symbol) -> Vec<Fault> {
    faults.into_iter().map(|fault| fault.at(symbol.name)).collect()
}

fn single(symbol: &Symbol, text: &str) -> Result<Arg, Fault> {
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
        Kind::Group(_) | Kind::Groups(_) => Err(Fault::new(symbol.name, "is no single value", example(symbol))),
    }
}

/// One group: `tank(v_0=0.5 mm/s, model=ideal, index=0)`; where only one kind may stand, its word may be left out.
fn group(kinds: &[&'static Group], text: &str) -> Result<Arg, Vec<Fault>> {
    let words = || kinds.iter().map(|kind| kind.word).collect::<Vec<_>>().join(", ");
    let form = || {
        let remedy = format!("write word(name=value, ..); words: {}", words());
        vec![Fault::new("", format!("\"{text}\" is not a group"), remedy)]
    };
    let (word, rest) = text.trim().split_once('(').ok_or_else(form)?;
    let inner = rest.strip_suffix(')').ok_or_else(form)?;
    let kind = match (word.trim(), kinds) {
        ("", [one]) => one,
        (word, _) => kinds.iter().find(|kind| kind.word == word).ok_or_else(|| {
            vec![Fault::new("", format!("\"{word}\" is not known"), format!("write one of {}", words()))]
        })?,
    };
    let mut faults = Vec::new();
    let found = named(kind.fields, &split(inner), &mut faults);
    if faults.is_empty() { Ok(Arg::Group(kind, found)) } else { Err(faults) }
}

/// Groups in order: `[tank(..); plates(..)]`.
fn groups(kinds: &[&'static Group], text: &str) -> Result<Arg, Vec<Fault>> {
    let inner = text.trim().strip_prefix('[').and_then(|t| t.strip_suffix(']'));
    let inner = inner.ok_or_else(|| {
        vec![Fault::new("", format!("\"{text}\" is not a list"), "write [word(name=value, ..); word(..)]")]
    })?;
    let (mut found, mut faults) = (Vec::new(), Vec::new());
    for (_, part) in parted(inner, ";").into_iter().filter(|(_, part)| !part.is_empty()) {
        match group(kinds, part) {
            Ok(one) => found.push(one),
            Err(more) => faults.extend(more),
        }
    }
    if faults.is_empty() { Ok(Arg::Groups(found)) } else { Err(faults) }
}

/// The parts of a text between a mark that stands in no bracket, each with the place where it begins.
fn parted<'a>(text: &'a str, mark: &str) -> Vec<(usize, &'a str)> {
    let (mut parts, mut start, mut depth) = (Vec::new(), 0, 0_usize);
    for (i, c) in text.char_indices() {
        match c {
            '(' | '[' => depth += 1,
            ')' | ']' => depth = depth.saturating_sub(1),
            _ if depth == 0 && text[i..].starts_with(mark) => {
                parts.push((start, text[start..i].trim()));
                start = i + mark.len();
            }
            _ => {}
        }
    }
    parts.push((start, text[start..].trim()));
    parts
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
    let found = named(page.args, given, &mut faults);
    if faults.is_empty() { Ok(found) } else { Err(faults) }
}

/// Values by name for all symbols, in their order; whole only where there is no fault.
fn named(symbols: &'static [Symbol], given: &[&str], faults: &mut Vec<Fault>) -> Vec<Arg> {
    let mut found: Vec<Option<Arg>> = vec![None; symbols.len()];
    for text in given {
        let Some((name, value_text)) = text.split_once('=') else {
            faults.push(Fault::new(*text, "is not name=value", "write for instance d=\"60 um\""));
            continue;
        };
        let name = name.trim();
        match symbols.iter().position(|a| a.name == name) {
            None => {
                let near = nearest(name, symbols.iter().map(|a| a.name));
                let names: Vec<_> = symbols.iter().map(|a| a.name).collect();
                let remedy = near.map_or_else(
                    || format!("the arguments are {}", names.join(", ")),
                    |near| format!("did you mean {near}?"),
                );
                faults.push(Fault::new(name, "is not an argument of this formula", remedy));
            }
            Some(i) if found[i].is_some() => {
                faults.push(Fault::new(name, "is given twice", "give it once"));
            }
            Some(i) => match every_fault(&symbols[i], value_text) {
                Ok(arg) => found[i] = Some(arg),
                Err(more) => {
                    faults.extend(more);
                    found[i] = Some(Arg::Number(f64::NAN));
                }
            },
        }
    }
    for (symbol, arg) in symbols.iter().zip(&found) {
        if arg.is_none() {
            faults.push(Fault::new(symbol.name, format!("is missing: {}", symbol.meaning), example(symbol)));
        }
    }
    found.into_iter().flatten().collect()
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
        Kind::Group(one) => format!("write {}=\"({})\"", symbol.name, fields(one)),
        Kind::Groups(kinds) => {
            let kinds: Vec<String> = kinds.iter().map(|one| format!("{}({})", one.word, fields(one))).collect();
            format!("write {}=\"[one; more]\", each one of {}", symbol.name, kinds.join(", "))
        }
    }
}

/// The fields of a group as one could write them.
fn fields(group: &Group) -> String {
    let each: Vec<String> = group.fields.iter().map(|field| format!("{}=..", field.name)).collect();
    each.join(", ")
}

/// Splits `"a=1 ft, b=[1: 2; 3: 4]"` at the commas between arguments.
#[must_use]
pub fn split(given: &str) -> Vec<&str> {
    // A comma parts arguments when a name and an equals sign follow it.
    let begins = |text: &str| {
        let name_end = text.find(|c: char| !(c.is_alphanumeric() || c == '_')).unwrap_or(text.len());
        name_end > 0 && text[name_end..].starts_with('=')
    };
    let mut parts: Vec<&str> = Vec::new();
    let mut start = 0;
    for (at, part) in parted(given, ", ") {
        if at > start && begins(part) {
            parts.push(given[start..at].trim().trim_end_matches(',').trim_end());
            start = at;
        }
    }
    if !given[start..].trim().is_empty() {
        parts.push(given[start..].trim());
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::separation::remaining_oil;

    /// What is wrong within groups comes all at once, each with its place.
    #[test]
    fn every_fault_within_a_group_is_told() {
        let given = [
            "droplets=(law=log-normall, d50=47 gpm, shape=2, largest=1e9 um, table=[])",
            "from=0 um",
            "to=1e9 um",
            "liquids=(rho_w=999 kg/m3, rho_o=871 kg/m3, mu=1.3 cP, t=9 °C, law=drag)",
            "stages=[tank(v_0=2 mm/s, model=mixed); plate(v_0=1 mm/s)]",
        ];
        let faults = arguments(&remaining_oil::PAGE, &given).err().unwrap_or_default();
        let told: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(told.len(), 4, "{told:?}");
        for (fault, word) in told.iter().zip(["law", "d50", "index", "plate"]) {
            assert!(fault.contains(word), "{fault}: {word}");
        }
    }
}
