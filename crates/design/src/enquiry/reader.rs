//! Reading a file of blocks with every fault at once, each with its place, reason and remedy.

use super::keys::{Block, BlockSpec, Claim, Field, KeyKind, KeySpec, Quantity};
use stillrise_handbook::page::{Argument, Kind};
use stillrise_units::parse::{self, Gallon, Reading, Written};
use stillrise_units::{Dim, Fault, Typed, Unit, nearest, print};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// What is gathered while reading.
pub struct Reader {
    /// The faults so far.
    pub faults: Vec<Fault>,
    /// What was interpreted: place and sentence.
    pub notes: Vec<(String, String)>,
    /// How ambiguous text is read.
    pub reading: Reading,
    line_starts: Vec<usize>,
    line: usize,
}

impl Reader {
    fn new(text: &str, reading: Reading) -> Self {
        let mut line_starts = vec![0];
        line_starts.extend(text.match_indices('\n').map(|(i, _)| i + 1));
        Self { faults: Vec::new(), notes: Vec::new(), reading, line_starts, line: 0 }
    }
    fn line_of(&self, offset: usize) -> usize {
        self.line_starts.partition_point(|start| *start <= offset)
    }
    /// Adds a fault at a place of the current line.
    pub fn fault(&mut self, place: &str, reason: impl Into<String>, remedy: impl Into<String>) {
        let place = if self.line == 0 { place.to_owned() } else { format!("line {}, {place}", self.line) };
        self.faults.push(Fault::new(place, reason, remedy));
    }

    /// Reads the keys of a block into `T`.
    pub fn block<T: Block>(&mut self, place: &str, value: &Spanned<DeValue<'_>>) -> T {
        let mut block = T::default();
        self.line = self.line_of(value.span().start);
        let DeValue::Table(table) = value.get_ref() else {
            self.fault(
                place,
                format!("is a {}, not a block", value.get_ref().type_str()),
                format!("write [{}] and its keys", T::spec().name),
            );
            return block;
        };
        self.keys(&mut block, place, table);
        block
    }

    fn keys<T: Block>(&mut self, block: &mut T, place: &str, table: &DeTable<'_>) {
        let start = self.line;
        for (key, value) in table {
            self.line = self.line_of(key.span().start);
            let name: &str = key.get_ref();
            if !block.read_key(name, self, &format!("{place}: {name}"), value.get_ref()) {
                let known = T::spec().keys.iter().map(|k| k.name);
                let remedy = match nearest(name, known.clone()) {
                    Some(near) => format!("did you mean \"{near}\"?"),
                    None => format!("the keys here are {}", known.collect::<Vec<_>>().join(", ")),
                };
                self.fault(place, format!("\"{name}\" is not a key of this block"), remedy);
            }
        }
        self.line = start;
        for key in T::spec().keys.iter().filter(|k| k.needed) {
            if !table.iter().any(|(k, _)| k.get_ref() == key.name) {
                self.fault(
                    place,
                    format!("has no \"{}\": {}", key.name, key.doc),
                    format!("write {} = {}", key.name, key.like),
                );
            }
        }
    }

    fn quantity(&mut self, spec: &'static KeySpec, dim: Dim, place: &str, value: &DeValue<'_>) -> Option<Written> {
        let text = match value {
            DeValue::String(text) => text.to_string(),
            DeValue::Integer(number) => number.as_str().to_owned(),
            DeValue::Float(number) => number.as_str().to_owned(),
            other => {
                self.fault(
                    place,
                    format!("is a {}, not a quantity", other.type_str()),
                    format!("write {} = {}", spec.name, spec.like),
                );
                return None;
            }
        };
        let written = match parse::quantity_of(&text, dim, &self.reading) {
            Ok(written) => written,
            Err(fault) => {
                self.fault(place, fault.reason, fault.remedy);
                return None;
            }
        };
        if let Some((low, high)) = spec.bounds {
            let bound = |text: &str| {
                parse::quantity_of(text, dim, &Reading { gallon: Some(Gallon::Us) }).map(|w| w.si()).unwrap_or(f64::NAN)
            };
            let si = written.si();
            if si < bound(low) || si > bound(high) {
                self.fault(place, format!("{} is not between {low} and {high}", written.text), "check number and unit");
                return None;
            }
        }
        for note in &written.notes {
            self.notes.push((place.to_owned(), note.clone()));
        }
        Some(written)
    }

    /// One claim: a plain quantity, or a table with value, from, chosen, because.
    fn claim(&mut self, spec: &'static KeySpec, dim: Dim, place: &str, value: &DeValue<'_>) -> Option<Claim> {
        let DeValue::Table(table) = value else {
            let written = self.quantity(spec, dim, place, value)?;
            return Some(Claim { written, from: None, chosen: false, because: None });
        };
        let mut claim = Claim { written: placeholder(dim), from: None, chosen: false, because: None };
        let mut found = false;
        for (key, value) in table {
            let name: &str = key.get_ref();
            match (name, value.get_ref()) {
                ("value", value) => match self.quantity(spec, dim, place, value) {
                    Some(written) => {
                        claim.written = written;
                        found = true;
                    }
                    None => return None,
                },
                ("from", DeValue::String(text)) => claim.from = Some(text.to_string()),
                ("because", DeValue::String(text)) => claim.because = Some(text.to_string()),
                ("chosen", DeValue::Boolean(chosen)) => claim.chosen = *chosen,
                (other, _) => self.fault(
                    place,
                    format!("\"{other}\" does not belong to a claim, or is of the wrong kind"),
                    "a claim has value, from, chosen and because",
                ),
            }
        }
        if !found {
            self.fault(
                place,
                "a claim without value",
                format!("write {} = {{ value = {}, from = \"...\" }}", spec.name, spec.like),
            );
            return None;
        }
        Some(claim)
    }
}

fn placeholder(dim: Dim) -> Written {
    Written { text: String::new(), value: 0.0, unit: dim.coherent(), notes: Vec::new() }
}

impl<Q: Typed> Field for Quantity<Q> {
    const KIND: KeyKind = KeyKind::Quantity(Q::DIM);
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let claims: Vec<Claim> = match value {
            DeValue::Array(list) => {
                list.iter().filter_map(|v| reader.claim(spec, Q::DIM, place, v.get_ref())).collect()
            }
            value => reader.claim(spec, Q::DIM, place, value).into_iter().collect(),
        };
        if claims.iter().filter(|c| c.chosen).count() > 1 {
            reader.fault(place, "more than one claim is marked chosen", "mark one");
        }
        Quantity::new(claims, spec, place)
    }
}

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

/// How one kind of block is taken up by the file.
pub struct Slot<F> {
    /// The block as declared.
    pub spec: fn() -> &'static BlockSpec,
    /// Whether it may stand more than once.
    pub many: bool,
    /// Takes one block up.
    pub take: fn(&mut F, &mut Reader, &str, &Spanned<DeValue<'_>>),
}

/// What came of reading.
pub struct Outcome<F> {
    /// The file, as far as it could be read.
    pub file: F,
    /// All faults; the file counts only when there are none.
    pub faults: Vec<Fault>,
    /// What was interpreted.
    pub notes: Vec<(String, String)>,
}

/// Reads a file of blocks.
pub fn read<F: Default>(text: &str, slots: &[Slot<F>]) -> Outcome<F> {
    let mut file = F::default();
    let (table, errors) = DeTable::parse_recoverable(text);
    let mut reader = Reader::new(text, Reading { gallon: gallon(table.get_ref()) });
    for error in errors {
        reader.line = error.span().map_or(0, |s| reader.line_of(s.start));
        reader.fault("the file", error.message().to_owned(), "mend the TOML syntax there");
    }
    for (name, value) in table.get_ref() {
        reader.line = reader.line_of(name.span().start);
        let key: &str = name.get_ref();
        let Some(slot) = slots.iter().find(|s| (s.spec)().name == key) else {
            let known = slots.iter().map(|s| (s.spec)().name);
            let remedy = match nearest(key, known.clone()) {
                Some(near) => format!("did you mean \"{near}\"?"),
                None => format!("the blocks are {}", known.collect::<Vec<_>>().join(", ")),
            };
            reader.fault("the file", format!("\"{key}\" is not a block"), remedy);
            continue;
        };
        match (value.get_ref(), slot.many) {
            (DeValue::Array(list), true) => {
                for (i, item) in list.iter().enumerate() {
                    let place = place_of(key, i, item.get_ref());
                    (slot.take)(&mut file, &mut reader, &place, item);
                }
            }
            (DeValue::Array(_), false) => {
                reader.fault(key, "may stand only once", format!("write [{key}], with single brackets"))
            }
            (_, true) => {
                let place = place_of(key, 0, value.get_ref());
                (slot.take)(&mut file, &mut reader, &place, value);
            }
            (_, false) => (slot.take)(&mut file, &mut reader, key, value),
        }
    }
    Outcome { file, faults: reader.faults, notes: reader.notes }
}

/// `stream "bus wash rinse"`, or `stream 2` when it has no name.
fn place_of(key: &str, index: usize, value: &DeValue<'_>) -> String {
    let named = ["name", "model", "product", "pollutant", "rule"].iter().find_map(|k| {
        value
            .as_table()
            .and_then(|t| t.iter().find(|(name, _)| name.get_ref() == k))
            .and_then(|(_, v)| v.get_ref().as_str())
    });
    named.map_or_else(|| format!("{key} {}", index + 1), |name| format!("{key} \"{name}\""))
}

/// The gallon the enquiry states, needed before anything else is read.
fn gallon(table: &DeTable<'_>) -> Option<Gallon> {
    let enquiry =
        table.iter().find(|(k, _)| k.get_ref() == "enquiry" || k.get_ref() == "range")?.1.get_ref().as_table()?;
    let word = |key: &str| enquiry.iter().find(|(k, _)| k.get_ref() == key).and_then(|(_, v)| v.get_ref().as_str());
    // Who prints in US units means US gallons unless he says otherwise.
    let gallon = word("gallon").or_else(|| word("print").filter(|p| *p == "us"))?;
    match gallon {
        "us" => Some(Gallon::Us),
        "imperial" => Some(Gallon::Imperial),
        _ => None,
    }
}

/// A bound or default in print, for schema and documentation.
#[must_use]
pub fn shown(si: f64, unit: &Unit) -> String {
    print::with_unit(si, unit)
}
