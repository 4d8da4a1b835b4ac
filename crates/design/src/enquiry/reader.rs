//! Reading a file of blocks with every fault at once, each with its place, reason and remedy.

use super::keys::{Block, BlockSpec, Differing, Place};
use super::said::{Claimed, plain_text};
use stillrise_units::parse::{Gallon, Reading};
use stillrise_units::{Fault, Unit, nearest, print};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// What is gathered while reading.
pub struct Reader {
    /// The faults so far, each with its line.
    faults: Vec<(usize, Fault)>,
    /// What was interpreted: place and sentence.
    pub notes: Vec<(String, String)>,
    /// Whether anything was read in US gallons because nobody said which gallon.
    pub(super) gallon_open: bool,
    /// How ambiguous text is read.
    pub reading: Reading,
    /// The pollutant that the block being read names, if it does: a limit on pH is no concentration.
    pub(super) pollutant: Option<String>,
    line_starts: Vec<usize>,
    line: usize,
}

impl Reader {
    fn new(text: &str, reading: Reading) -> Self {
        let mut line_starts = vec![0];
        line_starts.extend(text.match_indices('\n').map(|(i, _)| i + 1));
        Self {
            faults: Vec::new(),
            notes: Vec::new(),
            gallon_open: false,
            reading,
            pollutant: None,
            line_starts,
            line: 0,
        }
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
        let named = table.iter().find(|(key, _)| key.get_ref() == "pollutant");
        self.pollutant = named.and_then(|(_, value)| plain_text(value.get_ref())).map(str::to_owned);
        self.keys(&mut block, place, table);
        block.stand(Place::read(T::spec().name, place));
        block
    }

    pub(super) fn keys<T: Block>(&mut self, block: &mut T, place: &str, table: &DeTable<'_>) {
        let start = self.line;
        for (key, value) in table {
            self.line = self.line_of(key.span().start);
            let name: &str = key.get_ref();
            if !block.read_key(name, self, &format!("{place}: {name}"), value.get_ref()) {
                let known = T::spec().keys().into_iter().map(|k| k.name);
                let remedy = match nearest(name, known.clone()) {
                    Some(near) => format!("did you mean \"{near}\"?"),
                    None => format!("the keys here are {}", known.collect::<Vec<_>>().join(", ")),
                };
                self.fault(place, format!("\"{name}\" is not a key of this block"), remedy);
            }
        }
        self.line = start;
        for key in T::spec().keys().into_iter().filter(|k| k.needed) {
            if !table.iter().any(|(k, _)| k.get_ref() == key.name) {
                self.fault(
                    place,
                    format!("has no \"{}\": {}", key.name, key.doc),
                    format!("write {} = {}", key.name, key.like),
                );
            }
        }
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
    /// What was said in such blocks besides quantities.
    pub claimed: for<'a> fn(&'a F, &mut Vec<&'a dyn Claimed>),
    /// The same, so that another claim may be taken.
    pub claimed_mut: for<'a> fn(&'a mut F, &mut Vec<&'a mut dyn Claimed>),
    /// Quantities in such blocks on which claims differ and nobody chose.
    pub differing: for<'a> fn(&'a F, &mut Vec<Differing<'a>>),
}

/// The blocks of a file and the fields that hold them: `one` always there, `maybe` an option, `many` a list.
macro_rules! slots {
    (@one $block:ident $field:ident) => { $crate::enquiry::reader::Slot {
        spec: <$block as $crate::enquiry::keys::Block>::spec, many: false,
        take: |f, r, p, v| f.$field = r.block(p, v),
        claimed: |f, found| $crate::enquiry::keys::Block::claimed(&f.$field, found),
        claimed_mut: |f, found| $crate::enquiry::keys::Block::claimed_mut(&mut f.$field, found),
        differing: |f, found| $crate::enquiry::keys::Block::differing(&f.$field, found),
    } };
    (@maybe $block:ident $field:ident) => { $crate::enquiry::reader::Slot {
        spec: <$block as $crate::enquiry::keys::Block>::spec, many: false,
        take: |f, r, p, v| f.$field = Some(r.block(p, v)),
        claimed: |f, found| f.$field.iter().for_each(|b| $crate::enquiry::keys::Block::claimed(b, found)),
        claimed_mut: |f, found| f.$field.iter_mut().for_each(|b| $crate::enquiry::keys::Block::claimed_mut(b, found)),
        differing: |f, found| f.$field.iter().for_each(|b| $crate::enquiry::keys::Block::differing(b, found)),
    } };
    (@many $block:ident $field:ident) => { $crate::enquiry::reader::Slot {
        spec: <$block as $crate::enquiry::keys::Block>::spec, many: true,
        take: |f, r, p, v| f.$field.push(r.block(p, v)),
        claimed: |f, found| f.$field.iter().for_each(|b| $crate::enquiry::keys::Block::claimed(b, found)),
        claimed_mut: |f, found| f.$field.iter_mut().for_each(|b| $crate::enquiry::keys::Block::claimed_mut(b, found)),
        differing: |f, found| f.$field.iter().for_each(|b| $crate::enquiry::keys::Block::differing(b, found)),
    } };
    ($($how:ident $block:ident $field:ident;)+) => { &[$($crate::enquiry::reader::slots!(@$how $block $field)),+] };
}
pub(crate) use slots;

/// What came of reading.
pub struct Outcome<F> {
    /// The file, as far as it could be read.
    pub file: F,
    /// All faults; the file counts only when there are none.
    pub faults: Vec<Fault>,
    /// What was interpreted.
    pub notes: Vec<(String, String)>,
    /// Whether anything was read in US gallons because nobody said which gallon.
    pub gallon_open: bool,
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
    let gallon_open = reader.gallon_open;
    Outcome { file, faults: reader.in_order(), notes, gallon_open }
}

/// `stream "bus wash rinse"`, or `stream 2` when it has no name.
fn place_of(key: &str, index: usize, value: &DeValue<'_>) -> String {
    let named = ["name", "model", "product", "pollutant", "rule"].iter().find_map(|k| {
        value
            .as_table()
            .and_then(|t| t.iter().find(|(name, _)| name.get_ref() == k))
            .and_then(|(_, v)| plain_text(v.get_ref()))
    });
    named.map_or_else(|| format!("{key} {}", index + 1), |name| format!("{key} \"{name}\""))
}

/// The gallon the enquiry states, needed before anything else is read.
fn gallon(table: &DeTable<'_>) -> Option<Gallon> {
    let enquiry =
        table.iter().find(|(k, _)| k.get_ref() == "enquiry" || k.get_ref() == "range")?.1.get_ref().as_table()?;
    let word = |key: &str| enquiry.iter().find(|(k, _)| k.get_ref() == key).and_then(|(_, v)| plain_text(v.get_ref()));
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
