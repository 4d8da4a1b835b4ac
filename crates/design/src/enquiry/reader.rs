//! Reading a file of blocks with every fault at once, each with its place, reason and remedy.

use super::distribution::Distribution;
use super::keys::{Block, BlockSpec, Claim, Field, KeyKind, KeySpec, Quantity};
use stillrise_units::parse::{self, Gallon, Reading, Written};
use stillrise_units::{Dim, Fault, Typed, Unit, nearest, print};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// What is gathered while reading.
pub struct Reader {
    /// The faults so far, each with its line.
    faults: Vec<(usize, Fault)>,
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
        self.faults.push((self.line, Fault::new(place, reason, remedy)));
    }

    /// The faults from the top of the file to its end.
    fn in_order(mut self) -> Vec<Fault> {
        self.faults.sort_by_key(|(line, _)| *line);
        self.faults.into_iter().map(|(_, fault)| fault).collect()
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

    pub(super) fn keys<T: Block>(&mut self, block: &mut T, place: &str, table: &DeTable<'_>) {
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

    pub(super) fn quantity(
        &mut self,
        spec: &'static KeySpec,
        dim: Dim,
        place: &str,
        value: &DeValue<'_>,
    ) -> Option<Written> {
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
            let (least, most) = bounds(spec, dim);
            let si = written.si();
            if si < least || si > most {
                self.fault(place, format!("{} is not between {low} and {high}", written.text), "check number and unit");
                return None;
            }
        }
        for note in &written.notes {
            self.notes.push((place.to_owned(), note.clone()));
        }
        Some(written)
    }

    /// One claim: a plain quantity, or a table with value, low, high, distribution, from, chosen, because.
    fn claim(&mut self, spec: &'static KeySpec, dim: Dim, place: &str, value: &DeValue<'_>) -> Option<Claim> {
        let DeValue::Table(table) = value else {
            let written = self.quantity(spec, dim, place, value)?;
            return Some(Claim { written, from: None, chosen: false, because: None, range: None });
        };
        let mut claim = Claim { written: placeholder(dim), from: None, chosen: false, because: None, range: None };
        let mut found = false;
        let mut ends = [None, None];
        let mut distribution = None;
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
                ("low" | "high", value) => match self.quantity(spec, dim, &format!("{place}: {name}"), value) {
                    Some(written) => ends[usize::from(name == "high")] = Some(written),
                    None => return None,
                },
                ("distribution", DeValue::String(text)) => match self.distribution(place, text) {
                    Some(found) => distribution = Some(found),
                    None => return None,
                },
                ("from", DeValue::String(text)) => claim.from = Some(text.to_string()),
                ("because", DeValue::String(text)) => claim.because = Some(text.to_string()),
                ("chosen", DeValue::Boolean(chosen)) => claim.chosen = *chosen,
                (other, _) => self.fault(
                    place,
                    format!("\"{other}\" does not belong to a claim, or is of the wrong kind"),
                    "a claim has value, low, high, distribution, from, chosen and because",
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
        claim.range = self.range(spec, place, &claim.written, ends, distribution)?;
        Some(claim)
    }

    /// The word that says how a value spreads over its range.
    fn distribution(&mut self, place: &str, text: &str) -> Option<Distribution> {
        let found = Distribution::from_word(text);
        if found.is_none() {
            let words: Vec<&str> = Distribution::ALL.iter().map(|d| d.word()).collect();
            let remedy = match nearest(text, words.iter().copied()) {
                Some(near) => format!("did you mean \"{near}\"?"),
                None => format!("use one of {}", words.join(", ")),
            };
            self.fault(&format!("{place}: distribution"), format!("\"{text}\" is not known"), remedy);
        }
        found
    }

    /// The range of a claim: both ends or none, in order, around the value. `None` when it is faulty.
    fn range(
        &mut self,
        spec: &'static KeySpec,
        place: &str,
        value: &Written,
        ends: [Option<Written>; 2],
        distribution: Option<Distribution>,
    ) -> Option<Option<(Written, Written, Distribution)>> {
        let (reason, remedy) = match ends {
            [None, None] => match distribution {
                None => return Some(None),
                Some(_) => ("a distribution without a range".to_owned(), "give low and high with it".to_owned()),
            },
            [Some(low), Some(high)] => {
                let distribution = distribution.unwrap_or(Distribution::Triangular);
                if low.si() <= value.si() && value.si() <= high.si() {
                    let (from, to) = distribution.reach(low.si(), value.si(), high.si());
                    let (least, most) = bounds(spec, value.unit.dim);
                    // The ends of the others were held against the key's bounds already.
                    let ends = matches!(distribution, Distribution::Triangular | Distribution::Uniform);
                    if ends || from.is_finite() && from >= least && to <= most {
                        return Some(Some((low, high, distribution)));
                    }
                    let reason = format!(
                        "a {} range from {} to {}, with one in twenty beyond each end, reaches outside what \"{}\" can be",
                        distribution.word(),
                        low.text,
                        high.text,
                        spec.name
                    );
                    let remedy = "write distribution = \"triangular\" or \"uniform\", whose ends are the ends";
                    self.fault(place, reason, remedy);
                    return None;
                }
                let between = format!("from {} to {}", low.text, high.text);
                if low.si() > high.si() {
                    (format!("the range runs {between}: upside down"), "write the lower end as low".to_owned())
                } else {
                    (
                        format!("{} lies outside its own range {between}", value.text),
                        "give a range that holds the value".to_owned(),
                    )
                }
            }
            [low, _] => {
                let missing = if low.is_none() { "low" } else { "high" };
                (format!("the range has no \"{missing}\""), "give both low and high, or neither".to_owned())
            }
        };
        self.fault(place, reason, remedy);
        None
    }
}

/// What a key can be at all, SI.
fn bounds(spec: &KeySpec, dim: Dim) -> (f64, f64) {
    let bound = |text: &str| {
        parse::quantity_of(text, dim, &Reading { gallon: Some(Gallon::Us) }).map(|w| w.si()).unwrap_or(f64::NAN)
    };
    spec.bounds.map_or((f64::NEG_INFINITY, f64::INFINITY), |(low, high)| (bound(low), bound(high)))
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

/// Most blocks of one kind in a file: more is no enquiry, and would only take its time.
const MOST_BLOCKS: usize = 100;

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
            (DeValue::Array(list), true) if list.len() > MOST_BLOCKS => {
                let reason = format!("{} blocks of it; {MOST_BLOCKS} are the most that are read", list.len());
                reader.fault(key, reason, "put several into one, or split the job");
            }
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
    let notes = std::mem::take(&mut reader.notes);
    Outcome { file, faults: reader.in_order(), notes }
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
