//! What the value of a key may be besides a quantity: lists, texts, names, words, flags, counts, tables.

use super::keys::{Block, Field, KeyKind, KeySpec};
use super::reader::Reader;
use stillrise_handbook::page::{Argument, Kind};
use stillrise_units::parse::Written;
use stillrise_units::{Typed, nearest};
use toml::de::DeValue;

/// A list of quantities, one for each thing (each pump).
#[derive(Debug, Clone, Default)]
pub struct Quantities<Q> {
    /// The items, in order.
    pub items: Vec<(Q, Written)>,
    /// Where the list stands.
    pub place: String,
}

impl<Q: Typed + Default> Field for Quantities<Q> {
    const KIND: KeyKind = KeyKind::Quantities(Q::DIM);
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let mut items = Vec::new();
        let mut push = |reader: &mut Reader, value: &DeValue<'_>| {
            if let Some(written) = reader.quantity(spec, Q::DIM, place, value) {
                items.push((Q::from_si(written.si()), written));
            }
        };
        match value {
            DeValue::Array(list) => list.iter().for_each(|v| push(reader, v.get_ref())),
            value => push(reader, value),
        }
        Self { items, place: place.to_owned() }
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
