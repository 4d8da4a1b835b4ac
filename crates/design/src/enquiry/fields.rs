//! What the value of a key may be besides a quantity: lists, texts, names, words, flags, counts, tables.

use super::keys::{Block, Field, KeyKind, KeySpec, Quantity};
use super::reader::Reader;
use stillrise_handbook::page::{Argument, Kind, Series};
use stillrise_units::parse::quantity_of;
use stillrise_units::{Dim, Fault, Typed, nearest};
use toml::de::DeValue;

/// A list of quantities, one for each thing (each pump), each with its own claim.
#[derive(Debug, Clone)]
pub struct Quantities<Q>(pub Vec<Quantity<Q>>);

impl<Q> Default for Quantities<Q> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<Q: Typed> Field for Quantities<Q> {
    const KIND: KeyKind = KeyKind::Quantities(Q::DIM);
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let mut one = |place: &str, value: &DeValue<'_>| {
            let read = <Quantity<Q> as Field>::read(reader, spec, place, value);
            read.is_given().then_some(read)
        };
        Self(match value {
            // A list within the list: claims on one thing.
            DeValue::Array(list) => {
                list.iter().enumerate().filter_map(|(i, v)| one(&format!("{place}.{}", i + 1), v.get_ref())).collect()
            }
            value => one(place, value).into_iter().collect(),
        })
    }
}

/// Names are the same whatever their case, and whether written with spaces, dashes or underscores.
fn same(name: &str, text: &str) -> bool {
    let plain = |t: &str| t.trim().to_lowercase().replace(['-', '_'], " ");
    plain(name) == plain(text)
}

/// Free text, or a name of a list.
pub type Text = Option<String>;

impl Field for Text {
    const KIND: KeyKind = KeyKind::Text;
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let DeValue::String(text) = value else {
            reader.fault(
                place,
                format!("is a {}, not a text", value.type_str()),
                format!("write {} = {}", spec.name, spec.like),
            );
            return None;
        };
        if let KeyKind::Named(names) = spec.kind {
            let names = names();
            let Some(name) = names.iter().find(|name| same(name, text)) else {
                let remedy = match nearest(text, names.iter().map(String::as_str)) {
                    Some(near) => format!("did you mean \"{near}\"?"),
                    None => format!("use one of {}", names.join(", ")),
                };
                reader.fault(place, format!("\"{text}\" is not known"), remedy);
                return None;
            };
            return Some(name.clone());
        }
        Some(text.to_string())
    }
}

impl Field for Vec<String> {
    const KIND: KeyKind = KeyKind::Texts;
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        match value {
            DeValue::String(text) => vec![text.to_string()],
            DeValue::Array(list) if list.iter().all(|v| v.get_ref().is_str()) => {
                list.iter().filter_map(|v| v.get_ref().as_str().map(str::to_owned)).collect()
            }
            _ => {
                reader.fault(place, "is not a list of texts", format!("write {} = {}", spec.name, spec.like));
                Vec::new()
            }
        }
    }
}

/// One of a closed set of words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Word<C>(pub Option<C>);

impl<C> Default for Word<C> {
    fn default() -> Self {
        Word(None)
    }
}

/// The words of a choice.
const fn words<C: Argument>() -> &'static [(&'static str, &'static str)] {
    match C::KIND {
        Kind::Choice(words) => words,
        _ => &[],
    }
}

impl<C: Argument> Field for Word<C> {
    const KIND: KeyKind = KeyKind::Choice(words::<C>());
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let text = value.as_str().unwrap_or("");
        let found = words::<C>().iter().find(|(word, _)| *word == text);
        let choice = found.and_then(|(word, _)| C::from_arg(&stillrise_handbook::page::Arg::Choice(word)));
        if choice.is_none() {
            let names: Vec<&str> = words::<C>().iter().map(|(word, _)| *word).collect();
            let remedy = match nearest(text, names.iter().copied()) {
                Some(near) if !text.is_empty() => format!("did you mean \"{near}\"?"),
                _ => format!("use one of {}", names.join(", ")),
            };
            reader.fault(place, format!("\"{text}\" is not a word of \"{}\"", spec.name), remedy);
        }
        Word(choice)
    }
}

/// Yes, no, or not said.
pub type Flag = Option<bool>;

impl Field for Flag {
    const KIND: KeyKind = KeyKind::Flag;
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        if let DeValue::Boolean(flag) = value {
            return Some(*flag);
        }
        reader.fault(
            place,
            format!("is a {}, not true or false", value.type_str()),
            format!("write {} = true", spec.name),
        );
        None
    }
}

/// A whole number, one or more, or not said.
pub type Count = Option<u32>;

impl Field for Count {
    const KIND: KeyKind = KeyKind::Count;
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let count = value.as_integer().and_then(|i| i.as_str().parse::<u32>().ok()).filter(|n| (1..=1000).contains(n));
        if count.is_none() {
            reader.fault(
                place,
                "is not a whole number between 1 and 1000",
                format!("write {} = {}", spec.name, spec.like),
            );
        }
        count
    }
}

/// Several keys of their own, if written.
impl<T: Block> Field for Option<T> {
    const KIND: KeyKind = KeyKind::Table(T::spec);
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let DeValue::Table(table) = value else {
            reader.fault(
                place,
                format!("is a {}, not a table", value.type_str()),
                format!("write {} = {}", spec.name, spec.like),
            );
            return None;
        };
        let mut block = T::default();
        reader.keys(&mut block, place, table);
        Some(block)
    }
}

/// A measured curve: droplet size and a share, size rising; empty when not said.
#[derive(Debug, Clone, Default)]
pub struct Curve {
    /// Size (m) and share.
    pub rows: Series,
    /// The rows as typed.
    pub text: String,
    /// Where it stands.
    pub place: String,
}

impl Curve {
    /// Whether anybody said anything.
    #[must_use]
    pub fn is_given(&self) -> bool {
        !self.rows.0.is_empty()
    }
}

impl Field for Curve {
    const KIND: KeyKind = KeyKind::Curve;
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let texts: Vec<&str> = value.as_array().into_iter().flatten().filter_map(|v| v.get_ref().as_str()).collect();
        let length = value.as_array().map_or(0, |list| list.len());
        if length < 2 || texts.len() < length {
            reader.fault(place, "is not a list of at least two rows", format!("write {} = {}", spec.name, spec.like));
            return Self::default();
        }
        let mut rows: Vec<(f64, f64)> = Vec::new();
        let mut faults = 0;
        let reading = reader.reading;
        for (i, text) in texts.iter().enumerate() {
            let place = format!("{place}, row {}", i + 1);
            let mut fault = |reason: String, remedy: &str| {
                reader.fault(&place, reason, remedy);
                faults += 1;
            };
            let Some((size, share)) = text.split_once(':') else {
                fault(format!("\"{text}\" is not size: share"), "write for instance \"60 um: 45 %\"");
                continue;
            };
            let mut notes = Vec::new();
            let mut read = |text: &str, dim| {
                let written = quantity_of(text, dim, &reading)?;
                notes.extend_from_slice(&written.notes);
                Ok::<f64, Fault>(written.si())
            };
            match (read(size, Dim::Length), read(share, Dim::Ratio)) {
                (Ok(size), Ok(share)) if size > 0.0 && (0.0..=1.0).contains(&share) => {
                    if rows.last().is_some_and(|(before, _)| size <= *before) {
                        fault(format!("the size in \"{text}\" does not rise"), "sort the rows, smallest size first");
                    }
                    rows.push((size, share));
                }
                (Ok(size), Ok(_)) if size > 0.0 => {
                    fault(
                        format!("the share in \"{text}\" is not between 0 and 100 %"),
                        "check the share; 45 % or 0.45",
                    );
                }
                (Ok(_), Ok(_)) => fault(format!("the size in \"{text}\" is not above zero"), "check the size"),
                (Err(wrong), _) | (_, Err(wrong)) => fault(wrong.reason, &wrong.remedy),
            }
            reader.note(&place, &notes);
        }
        if faults > 0 {
            return Self::default();
        }
        Self { rows: Series(rows), text: texts.join("; "), place: place.to_owned() }
    }
}
