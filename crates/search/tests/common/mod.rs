//! What these tests share: worked jobs, changes of one value, and the real chain from a file to a
//! settled job.
#![allow(dead_code, reason = "each test program uses its own part of it")]

pub mod bases;
pub mod hand;

use std::path::{Path, PathBuf};
use stillrise_design::enquiry::range::{Range, read_range};
use stillrise_design::enquiry::{Enquiry, blocks, read_enquiry};
use stillrise_design::provenance::{Entry, Pair};
use stillrise_handbook::page::Arg;
use stillrise_search::{Settled, settle};
use stillrise_units::Fault;
use toml::{Table, Value};

/// A file of the repository, from its top.
pub fn at_top(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(path)
}

/// A file beside these tests.
pub fn at_data(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data").join(path)
}

fn text_of(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

/// The demo range.
pub fn demo() -> Range {
    let outcome = read_range(&text_of(&at_top("ranges/demo.toml")));
    assert!(outcome.faults.is_empty(), "{:?}", outcome.faults);
    outcome.file
}

/// An enquiry as plain TOML, and the folder of the files it names.
#[derive(Debug, Clone)]
pub struct Sheet {
    /// Its name, for messages.
    pub name: String,
    /// Its folder.
    pub folder: PathBuf,
    /// Its blocks.
    pub table: Table,
}

impl Sheet {
    fn read(name: &str, path: &Path) -> Self {
        let table = text_of(path).parse().unwrap_or_else(|e| panic!("{}: {e}", path.display()));
        let folder = path.parent().map(Path::to_path_buf).unwrap_or_default();
        Self { name: name.to_owned(), folder, table }
    }

    /// A base enquiry of these tests.
    pub fn data(name: &str) -> Self {
        Self::read(name, &at_data(&format!("{name}.toml")))
    }

    /// An enquiry written in a test.
    pub fn text(name: &str, text: &str) -> Self {
        let table = text.parse().unwrap_or_else(|e| panic!("{name}: {e}"));
        Self { name: name.to_owned(), folder: at_data(""), table }
    }

    /// Reads it as the tool does.
    pub fn enquiry(&self) -> Result<Enquiry, Vec<Fault>> {
        let text = toml::to_string(&self.table).expect("a table can be written");
        read_enquiry(&text, &|file| std::fs::read(self.folder.join(file)).ok())
    }

    /// The whole chain.
    pub fn settle(&self, demo: &Range) -> Settled {
        match self.enquiry() {
            Ok(enquiry) => settle(&enquiry, demo),
            Err(faults) => panic!("{} is refused: {faults:?}", self.name),
        }
    }

    /// The same sheet with one value set; see [`set`].
    pub fn with(&self, key: &str, value: &str) -> Self {
        let mut sheet = self.clone();
        set(&mut sheet.table, key, value).unwrap_or_else(|e| panic!("{}: {key} = {value}: {e}", self.name));
        sheet
    }
}

/// All worked jobs, in the order of their names.
pub fn worked() -> Vec<Sheet> {
    let folder = at_top("enquiries");
    let list = std::fs::read_dir(&folder).unwrap_or_else(|e| panic!("{}: {e}", folder.display()));
    let mut sheets: Vec<Sheet> = list
        .filter_map(|entry| entry.ok().map(|e| e.path().join("enquiry.toml")))
        .filter(|path| path.is_file())
        .map(|path| {
            let job = path.parent().and_then(Path::file_name).map(|n| n.to_string_lossy().into_owned());
            Sheet::read(&job.unwrap_or_default(), &path)
        })
        .collect();
    sheets.sort_by(|a, b| a.name.cmp(&b.name));
    assert!(sheets.len() >= 2, "the worked jobs were not found");
    sheets
}

/// The word that takes a key out.
pub const OUT: &str = "-";

/// A value as TOML where it can be read as one, else as text: `54 in` needs no quotes.
fn value_of(text: &str) -> Value {
    match format!("x = {text}").parse::<Table>() {
        Ok(mut table) => match table.remove("x") {
            Some(Value::Datetime(_)) | None => Value::String(text.to_owned()),
            Some(value) => value,
        },
        Err(_) => Value::String(text.to_owned()),
    }
}

/// Names that a block may be called by.
const NAMES: [&str; 6] = ["name", "kind", "model", "product", "pollutant", "rule"];

/// Sets one value: `outlet.pipe`, `stream.flow` (of the first one), `stream "rinse".oil.mean`. A
/// block that is not there is added; [`OUT`] takes the key out, or the whole block.
pub fn set(table: &mut Table, path: &str, value: &str) -> Result<(), String> {
    let (head, name, keys) = match path.split_once('"') {
        Some((head, rest)) => {
            let (name, keys) = rest.rsplit_once('"').ok_or("a quote is not closed")?;
            // `limit 2 "oil and grease"`: one of several of that name, by its place.
            match head.trim().split_once(' ') {
                Some((block, place)) => (block, Some(place), keys.trim_start_matches('.')),
                None => (head.trim(), Some(name), keys.trim_start_matches('.')),
            }
        }
        None => {
            let (head, keys) = path.split_once('.').unwrap_or((path, ""));
            (head, None, keys)
        }
    };
    let many = blocks().find(|(spec, _)| spec.name == head).ok_or_else(|| format!("no block \"{head}\""))?.1;
    if keys.is_empty() {
        return match (value, table.remove(head)) {
            (OUT, Some(_)) => Ok(()),
            _ => Err("a block can only be taken out".to_owned()),
        };
    }
    let fresh = || if many { Value::Array(Vec::new()) } else { Value::Table(Table::new()) };
    let mut place = table.entry(head).or_insert_with(fresh);
    if let Value::Array(list) = place {
        let index = match name {
            None if list.is_empty() => {
                list.push(Value::Table(Table::new()));
                0
            }
            None => 0,
            Some(place) if place.parse::<usize>().is_ok_and(|k| (1..=list.len()).contains(&k)) => {
                place.parse::<usize>().map_or(0, |k| k - 1)
            }
            Some(name) => match list.iter().enumerate().position(|(i, item)| is_called(item, head, i, name)) {
                Some(index) => index,
                // An oil is called by its kind: a block of that kind is what the key speaks of.
                None if head == "oil" => {
                    list.push(Value::Table(Table::from_iter([("kind".to_owned(), Value::String(name.to_owned()))])));
                    list.len() - 1
                }
                None => return Err(format!("no {head} is called \"{name}\"")),
            },
        };
        place = &mut list[index];
    }
    let keys: Vec<&str> = keys.split('.').collect();
    let (last, way) = keys.split_last().ok_or("no key")?;
    for key in way {
        let inner = place.as_table_mut().ok_or("not a table")?;
        place = inner.entry(*key).or_insert_with(|| Value::Table(Table::new()));
    }
    let inner = place.as_table_mut().ok_or("not a table")?;
    if value == OUT {
        inner.remove(*last).map(|_| ()).ok_or_else(|| "there is no such key to take out".to_owned())
    } else {
        inner.insert((*last).to_owned(), value_of(value));
        Ok(())
    }
}

fn is_called(item: &Value, head: &str, index: usize, name: &str) -> bool {
    let plain = |t: &str| t.trim().to_lowercase().replace(['-', '_'], " ");
    let named = |key: &str| item.get(key).and_then(Value::as_str).is_some_and(|n| plain(n) == plain(name));
    NAMES.iter().any(|key| named(key)) || name == format!("{head} {}", index + 1)
}

/// A number as a person could write it, without loss: in the SI print unit.
pub fn written(si: f64, units: Option<Pair>) -> String {
    match units {
        Some((_, unit)) => format!("{} {}", unit.from_si(si), unit.symbol).trim().to_owned(),
        None => si.to_string(),
    }
}

/// The value of an entry as a person would write it.
pub fn answer(entry: &Entry) -> String {
    match &entry.value {
        Arg::Number(si) => written(*si, entry.units),
        // Flags are asked as yes or no and written as true or false.
        Arg::Choice("yes") => "true".to_owned(),
        Arg::Choice("no") => "false".to_owned(),
        Arg::Choice(word) => (*word).to_owned(),
        Arg::Series(_) | Arg::Group(..) | Arg::Groups(_) => panic!("{} is no single value", entry.label),
    }
}

/// The same to the last bit.
pub fn same_bits(a: &Arg, b: &Arg) -> bool {
    match (a, b) {
        (Arg::Number(a), Arg::Number(b)) => a.to_bits() == b.to_bits(),
        (Arg::Series(a), Arg::Series(b)) => {
            let bits = |s: &[(f64, f64)]| s.iter().map(|(x, y)| (x.to_bits(), y.to_bits())).collect::<Vec<_>>();
            bits(a) == bits(b)
        }
        (Arg::Group(one, a), Arg::Group(other, b)) => one == other && all_same_bits(a, b),
        (Arg::Groups(a), Arg::Groups(b)) => all_same_bits(a, b),
        (a, b) => a == b,
    }
}

fn all_same_bits(a: &[Arg], b: &[Arg]) -> bool {
    a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same_bits(a, b))
}
