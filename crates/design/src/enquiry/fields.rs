//! What the value of a key may be besides a quantity: lists, texts, names, words, flags, counts, tables. Each takes
//! claims as a quantity does.

pub use super::curve::Curve;
use super::keys::{Block, Differing, Field, KeyKind, KeySpec, Place, Quantity, Safe};
use super::reader::Reader;
use super::said::{Claimed, claims};
pub use super::said::{Said, Word};
use stillrise_handbook::page::{Argument, Kind};
use stillrise_units::{Typed, nearest};
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
    fn is_said(&self) -> bool {
        !self.0.is_empty()
    }
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
pub type Text = Said<String>;

impl Field for Text {
    const KIND: KeyKind = KeyKind::Text;
    fn is_said(&self) -> bool {
        self.0.is_some()
    }
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let mut one =
            |reader: &mut Reader, value: &DeValue<'_>| text(reader, spec, place, value).map(|t| (t.clone(), t));
        claims(reader, spec, place, value, false, &mut one).into()
    }
    fn claimed<'a>(&'a self, found: &mut Vec<&'a dyn Claimed>) {
        found.push(self);
    }
    fn claimed_mut<'a>(&'a mut self, found: &mut Vec<&'a mut dyn Claimed>) {
        found.push(self);
    }
}

fn text(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Option<String> {
    let DeValue::String(text) = value else {
        reader.fault(
            place,
            format!("is a {}, not a text", value.type_str()),
            format!("write {} = {}", spec.name, spec.like),
        );
        return None;
    };
    let KeyKind::Named(names) = spec.kind else { return Some(text.to_string()) };
    let names = names();
    let found = names.iter().find(|name| same(name, text)).cloned();
    if found.is_none() {
        let remedy = match nearest(text, names.iter().map(String::as_str)) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => format!("use one of {}", names.join(", ")),
        };
        reader.fault(place, format!("\"{text}\" is not known"), remedy);
    }
    found
}

impl Field for Vec<String> {
    const KIND: KeyKind = KeyKind::Texts;
    fn is_said(&self) -> bool {
        !self.is_empty()
    }
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

/// The words of a choice.
pub(super) const fn words<C: Argument>() -> &'static [(&'static str, &'static str)] {
    match C::KIND {
        Kind::Choice(words) => words,
        _ => &[],
    }
}

impl<C: Argument + PartialEq> Field for Word<C> {
    const KIND: KeyKind = KeyKind::Choice(words::<C>());
    fn is_said(&self) -> bool {
        self.0.is_some()
    }
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let mut one = |reader: &mut Reader, value: &DeValue<'_>| {
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
            choice.map(|choice| (choice, text.to_owned()))
        };
        claims(reader, spec, place, value, false, &mut one).into()
    }
    fn claimed<'a>(&'a self, found: &mut Vec<&'a dyn Claimed>) {
        found.push(self);
    }
    fn claimed_mut<'a>(&'a mut self, found: &mut Vec<&'a mut dyn Claimed>) {
        found.push(self);
    }
}

/// Yes, no, or not said.
pub type Flag = Said<bool>;

impl Field for Flag {
    const KIND: KeyKind = KeyKind::Flag;
    fn is_said(&self) -> bool {
        self.0.is_some()
    }
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let mut one = |reader: &mut Reader, value: &DeValue<'_>| {
            if let DeValue::Boolean(flag) = value {
                return Some((*flag, flag.to_string()));
            }
            reader.fault(
                place,
                format!("is a {}, not true or false", value.type_str()),
                format!("write {} = true", spec.name),
            );
            None
        };
        let mut claims = claims(reader, spec, place, value, false, &mut one);
        // Of yes and no the safe one is taken, whichever was written first.
        let safe = match spec.safe {
            Safe::Larger => Some(true),
            Safe::Smaller => Some(false),
            Safe::First => None,
        };
        if let Some(safe) = safe {
            claims.list.sort_by_key(|told| told.value != safe);
        }
        claims.into()
    }
    fn claimed<'a>(&'a self, found: &mut Vec<&'a dyn Claimed>) {
        found.push(self);
    }
    fn claimed_mut<'a>(&'a mut self, found: &mut Vec<&'a mut dyn Claimed>) {
        found.push(self);
    }
}

/// A whole number, one or more, or not said.
pub type Count = Said<u32>;

impl Field for Count {
    const KIND: KeyKind = KeyKind::Count;
    fn is_said(&self) -> bool {
        self.0.is_some()
    }
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let mut one = |reader: &mut Reader, value: &DeValue<'_>| {
            let whole = value.as_integer().and_then(|i| i.as_str().parse::<u32>().ok());
            let count = whole.filter(|n| (1..=1000).contains(n));
            if count.is_none() {
                reader.fault(
                    place,
                    "is not a whole number between 1 and 1000",
                    format!("write {} = {}", spec.name, spec.like),
                );
            }
            count.map(|count| (count, count.to_string()))
        };
        claims(reader, spec, place, value, false, &mut one).into()
    }
    fn claimed<'a>(&'a self, found: &mut Vec<&'a dyn Claimed>) {
        found.push(self);
    }
    fn claimed_mut<'a>(&'a mut self, found: &mut Vec<&'a mut dyn Claimed>) {
        found.push(self);
    }
}

/// Several keys of their own, if written.
impl<T: Block> Field for Option<T> {
    const KIND: KeyKind = KeyKind::Table(T::spec);
    fn is_said(&self) -> bool {
        self.is_some()
    }
    fn stand(&mut self, at: impl FnOnce() -> Place) {
        if let Some(block) = self {
            block.stand(at());
        }
    }
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
    fn claimed<'a>(&'a self, found: &mut Vec<&'a dyn Claimed>) {
        if let Some(block) = self {
            block.claimed(found);
        }
    }
    fn claimed_mut<'a>(&'a mut self, found: &mut Vec<&'a mut dyn Claimed>) {
        if let Some(block) = self {
            block.claimed_mut(found);
        }
    }
    fn differing<'a>(&'a self, found: &mut Vec<Differing<'a>>) {
        if let Some(block) = self {
            block.differing(found);
        }
    }
}
