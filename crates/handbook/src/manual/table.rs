//! A table of published data: columns with units, rows with their sources.

use super::search::{Entry, Kind};
use crate::page::Source;
use crate::spread::Spread;
use stillrise_units::spoken::in_both;
use stillrise_units::{System, Unit, print};

/// (US, SI) unit in print.
pub type Units = (&'static Unit, &'static Unit);

/// One table.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// What names it in an address.
    pub id: &'static str,
    /// Its title.
    pub title: &'static str,
    /// What to know of it, in one or two sentences.
    pub about: &'static str,
    /// Its columns, without the one of the rows' titles.
    pub columns: Vec<Column>,
    /// Its rows, in the order in which the handbook has them.
    pub rows: Vec<Row>,
}

/// One column.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    /// What stands in it.
    pub title: &'static str,
    /// In which units; none for words and pure numbers.
    pub units: Option<Units>,
}

/// One row.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Its word in files, or its name in the trade.
    pub word: String,
    /// Other words for it.
    pub also: &'static [&'static str],
    /// Its name in print.
    pub title: String,
    /// A cell for each column.
    pub cells: Vec<Cell>,
    /// Where the row comes from; a cell may have a source of its own.
    pub rests_on: Vec<&'static Source>,
}

/// One cell.
#[derive(Debug, Clone, PartialEq)]
pub struct Cell {
    /// What stands in it.
    pub value: Value,
    /// Where it comes from, where that is not the row's source.
    pub source: Option<&'static Source>,
    /// What to know of the number; empty when there is nothing.
    pub note: &'static str,
}

/// What stands in a cell; numbers in SI.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// Nothing is published, or it does not apply.
    Nothing,
    /// Words.
    Text(String),
    /// A number.
    Number(f64),
    /// Low and high.
    Range(f64, f64),
    /// Low, typical and high.
    Spread(f64, f64, f64),
}

impl Table {
    /// A table without rows.
    pub(super) fn new(
        id: &'static str,
        title: &'static str,
        about: &'static str,
        columns: &[(&'static str, Option<Units>)],
    ) -> Self {
        let columns = columns.iter().map(|(title, units)| Column { title, units: *units }).collect();
        Self { id, title, about, columns, rows: Vec::new() }
    }
    /// The same with these rows.
    pub(super) fn with(mut self, rows: impl IntoIterator<Item = Row>) -> Self {
        self.rows.extend(rows);
        self
    }
    /// The row of this word.
    #[must_use]
    pub fn row(&self, word: &str) -> Option<&Row> {
        self.rows.iter().find(|row| row.word == word)
    }
    /// All its sources, each once, in the order of the rows.
    #[must_use]
    pub fn sources(&self) -> Vec<&'static Source> {
        let mut found = Vec::new();
        self.rows.iter().flat_map(Row::sources).for_each(|source| {
            if !found.contains(&source) {
                found.push(source);
            }
        });
        found
    }
}

impl Column {
    /// Title and unit, as they head the column.
    #[must_use]
    pub fn head(&self, system: System) -> String {
        match self.units.map(|units| system.pick(units).symbol) {
            None | Some("") => self.title.to_owned(),
            Some(unit) => format!("{}, {unit}", self.title),
        }
    }
}

impl Row {
    pub(super) fn new(word: impl Into<String>, title: impl Into<String>) -> Self {
        Self { word: word.into(), also: &[], title: title.into(), cells: Vec::new(), rests_on: Vec::new() }
    }
    /// Says where the row comes from; several times where it comes from several.
    pub(super) fn from(mut self, source: &'static Source) -> Self {
        self.rests_on.push(source);
        self
    }
    fn cell(mut self, value: Value) -> Self {
        self.cells.push(Cell { value, source: None, note: "" });
        self
    }
    pub(super) fn text(self, text: impl Into<String>) -> Self {
        let text = in_both(&text.into());
        self.cell(if text.is_empty() { Value::Nothing } else { Value::Text(text) })
    }
    pub(super) fn number(self, value: f64, unit: &Unit) -> Self {
        self.cell(Value::Number(unit.to_si(value)))
    }
    pub(super) fn number_if(self, value: Option<f64>, unit: &Unit) -> Self {
        self.cell(value.map_or(Value::Nothing, |value| Value::Number(unit.to_si(value))))
    }
    pub(super) fn range(self, low: f64, high: f64, unit: &Unit) -> Self {
        self.cell(Value::Range(unit.to_si(low), unit.to_si(high)))
    }
    pub(super) fn three(self, (low, typical, high): (f64, f64, f64), unit: &Unit) -> Self {
        self.cell(Value::Spread(unit.to_si(low), unit.to_si(typical), unit.to_si(high)))
    }
    pub(super) fn spread(self, s: &Spread) -> Self {
        self.three((s.low, s.typical, s.high), s.unit).cited(s.source).noted(s.note)
    }
    /// Gives the last cell a source of its own.
    pub(super) fn cited(mut self, source: &'static Source) -> Self {
        if let Some(cell) = self.cells.last_mut() {
            cell.source = Some(source);
        }
        self
    }
    /// Says something of the last cell.
    pub(super) fn noted(mut self, note: &'static str) -> Self {
        if let Some(cell) = self.cells.last_mut() {
            cell.note = note;
        }
        self
    }
    /// All its sources, each once.
    #[must_use]
    pub fn sources(&self) -> Vec<&'static Source> {
        let mut found: Vec<&'static Source> = Vec::new();
        for source in self.rests_on.iter().copied().chain(self.cells.iter().filter_map(|cell| cell.source)) {
            if !found.contains(&source) {
                found.push(source);
            }
        }
        found
    }
    /// The row as a search finds it.
    pub(super) fn entry(&self, table: &Table, head: &str) -> Entry {
        let mut keys = vec![self.word.as_str(), table.title, head];
        keys.extend(self.also);
        let mut text: Vec<String> = Vec::new();
        for (column, cell) in table.columns.iter().zip(&self.cells) {
            if let Value::Text(words) = &cell.value {
                text.push(words.clone());
            } else if cell.value != Value::Nothing {
                text.push(format!("{} {}.", column.title, cell.with_unit(column, System::Si)));
            }
        }
        text.extend(self.cells.iter().filter(|cell| !cell.note.is_empty()).map(|cell| cell.note.to_owned()));
        text.extend(self.sources().iter().map(ToString::to_string));
        // A word alone does not say what it is of.
        let bare = self.title.contains(&self.word);
        Entry {
            kind: Kind::Data,
            id: format!("{}/{}", table.id, self.word),
            title: if bare { format!("{}: {}", table.title, self.title) } else { self.title.clone() },
            keys: keys.join(" "),
            text: text.join(" "),
        }
    }
}

impl Cell {
    /// What stands in it, in the unit of the column's head: `"830 (820 to 845)"`.
    #[must_use]
    pub fn shown(&self, column: &Column, system: System) -> String {
        let unit = column.units.map(|units| system.pick(units));
        let number = |si: f64| print::digits(print::or_nothing(unit.map_or(si, |unit| unit.from_si(si))), 4);
        match &self.value {
            Value::Nothing => String::new(),
            Value::Text(text) => text.clone(),
            Value::Number(si) => number(*si),
            Value::Range(low, high) if low == high => number(*low),
            Value::Range(low, high) => format!("{} to {}", number(*low), number(*high)),
            Value::Spread(low, typical, high) if low == high => number(*typical),
            Value::Spread(low, typical, high) => {
                format!("{} ({} to {})", number(*typical), number(*low), number(*high))
            }
        }
    }
    /// The same with the unit behind it.
    #[must_use]
    pub fn with_unit(&self, column: &Column, system: System) -> String {
        let shown = self.shown(column, system);
        match (&self.value, column.units.map(|units| system.pick(units).symbol)) {
            (Value::Nothing | Value::Text(_), _) | (_, None | Some("")) => shown,
            (_, Some(unit)) => format!("{shown} {unit}"),
        }
    }
}
