//! The report as a list of blocks, data for the template; all words of it pass through here.

use crate::render::text::plain;
use serde_json::{Value, json};
use stillrise_units::catalog::UNITS;

/// One column of a table.
#[derive(Debug, Clone)]
pub struct Column {
    head: String,
    /// Share of the free width; none for a column as wide as its content.
    share: Option<f64>,
    right: bool,
    /// Its width, mm, of a column that is written into.
    blank: Option<f64>,
}

/// A column to write into, so many mm wide.
pub fn blank(head: &str, mm: f64) -> Column {
    Column { head: head.to_owned(), share: None, right: false, blank: Some(mm) }
}

/// A column of words that takes a share of the free width.
pub fn wide(head: &str, share: f64) -> Column {
    Column { head: head.to_owned(), share: Some(share), right: false, blank: None }
}

/// A column of words as wide as its longest cell.
pub fn slim(head: &str) -> Column {
    Column { head: head.to_owned(), share: None, right: false, blank: None }
}

/// A column of numbers, set to the right, its unit in the head; `|` breaks the head's lines.
pub fn number(head: &str, unit: &str) -> Column {
    let head = if unit.is_empty() { head.to_owned() } else { format!("{head}|{unit}") };
    Column { head, share: None, right: true, blank: None }
}

/// A table with a head that repeats on every page.
#[derive(Debug, Clone, Default)]
pub struct Table {
    columns: Vec<Column>,
    rows: Vec<Vec<String>>,
    strong: Vec<usize>,
    marks: Vec<(usize, String)>,
    links: Vec<(usize, usize, String)>,
    /// Marks that its cells carry, explained at its foot.
    feet: Vec<&'static str>,
}

/// What many cells of a table say of where a value comes from: a mark, how it is explained, and the ways texts say it, the
/// longest first.
const MARKS: [(&str, &str, &[&str]); 2] = [
    (
        "†",
        "† from memory, to be confirmed before it is relied on",
        &[" [from memory, not confirmed]", ", from memory", " from memory", "From memory", "from memory"],
    ),
    ("‡", "‡ our proposal", &[", our proposal", " is our proposal", " our proposal", "Our proposal", "our proposal"]),
];

impl Table {
    /// A table with these columns.
    pub fn new(columns: impl IntoIterator<Item = Column>) -> Table {
        Table { columns: columns.into_iter().collect(), ..Table::default() }
    }
    /// Adds a row.
    pub fn row<S: Into<String>>(&mut self, cells: impl IntoIterator<Item = S>) {
        self.rows.push(cells.into_iter().map(Into::into).collect());
    }
    /// Adds a row that stands out.
    pub fn strong_row<S: Into<String>>(&mut self, cells: impl IntoIterator<Item = S>) {
        self.strong.push(self.rows.len());
        self.row(cells);
    }
    /// Marks the row that comes next, so that another paper may name its page.
    pub fn mark(&mut self, word: &str) {
        self.marks.push((self.rows.len(), word.to_owned()));
    }
    /// Makes a cell of the row that comes next lead to a place of another paper.
    pub fn link(&mut self, column: usize, to: &str) {
        self.links.push((self.rows.len(), column, to.to_owned()));
    }
    /// The same with marks in place of words that stand in many of its cells.
    pub fn marked(mut self) -> Self {
        for cell in self.rows.iter_mut().flatten() {
            for (mark, explains, ways) in &MARKS {
                let before = cell.clone();
                ways.iter().for_each(|way| *cell = cell.replace(way, mark));
                *cell = cell.replace(&format!("{mark}: "), &format!("{mark} "));
                if *cell != before && !self.feet.contains(explains) {
                    self.feet.push(explains);
                }
            }
        }
        self
    }
    /// Whether it has no rows.
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }
    /// Takes out columns whose cells all say the same, dashes aside, and returns what they say; they stay where any differ, or
    /// where there is one row alone.
    pub fn take_same(&mut self, columns: &[usize]) -> Option<String> {
        let cells = self.rows.iter().flat_map(|row| columns.iter().filter_map(|c| row.get(*c)));
        let said: Vec<&String> = cells.filter(|cell| !matches!(cell.as_str(), "–" | "")).collect();
        let first = (*said.first()?).clone();
        if self.rows.len() < 2 || said.len() < 2 || said.iter().any(|cell| **cell != first) {
            return None;
        }
        self.without(columns);
        Some(first)
    }
    /// Takes out columns that have nothing but dashes.
    pub fn take_empty(&mut self, columns: &[usize]) {
        let cells = self.rows.iter().flat_map(|row| columns.iter().filter_map(|c| row.get(*c)));
        if cells.into_iter().all(|cell| matches!(cell.as_str(), "–" | "")) {
            self.without(columns);
        }
    }
    fn without(&mut self, columns: &[usize]) {
        let kept = |k: &usize| !columns.contains(k);
        let keep = |row: &Vec<String>| (0..row.len()).filter(kept).filter_map(|k| row.get(k).cloned()).collect();
        self.rows = self.rows.iter().map(keep).collect();
        self.columns = (0..self.columns.len()).filter(kept).filter_map(|k| self.columns.get(k).cloned()).collect();
    }
    fn json(&self) -> Value {
        let columns: Vec<Value> = self
            .columns
            .iter()
            .map(|c| {
                // A unit stands on a line of its own, without the number that it stands behind elsewhere.
                let lines: Vec<String> = c.head.split('|').map(set).collect();
                json!({ "head": lines, "share": c.share, "right": c.right, "blank": c.blank })
            })
            .collect();
        let rows: Vec<Vec<String>> = self
            .rows
            .iter()
            .map(|r| (0..columns.len()).map(|c| r.get(c).map_or_else(String::new, |cell| set(cell))).collect())
            .collect();
        let by_row = |all: Vec<(usize, Value)>| -> Value {
            all.into_iter().map(|(row, what)| (row.to_string(), what)).collect::<serde_json::Map<_, _>>().into()
        };
        let marks = self.marks.iter().map(|(row, word)| (*row, json!(word))).collect();
        let links = self.links.iter().map(|(row, column, to)| (*row, json!({ "column": column, "to": to }))).collect();
        json!({
            "t": "table", "columns": columns, "rows": rows, "strong": self.strong,
            "marks": by_row(marks), "links": by_row(links),
        })
    }
}

/// Steps to be ticked, each with the value that is to be seen, and room for who did it and when.
#[derive(Debug, Clone, Default)]
pub struct Checks {
    value: String,
    rows: Vec<Value>,
}

impl Checks {
    /// An empty list; `value` stands over the values.
    pub fn new(value: &str) -> Checks {
        Checks { value: set(value), rows: Vec::new() }
    }
    /// A line over the steps that follow.
    pub fn group(&mut self, title: &str) {
        self.rows.push(json!({ "group": set(title) }));
    }
    /// A step. Where its value is left empty it is written in.
    pub fn step(&mut self, step: &str, value: &str) {
        self.rows.push(json!({ "step": set(step), "value": set(value) }));
    }
}

/// The blocks, in order.
#[derive(Debug, Default)]
pub struct Blocks(pub Vec<Value>);

impl Blocks {
    fn text(&mut self, kind: &str, text: &str) {
        self.0.push(json!({ "t": kind, "s": set(text) }));
    }
    /// A numbered section; every one stands in the list of contents.
    pub fn section(&mut self, title: &str) {
        self.text("section", title);
    }
    /// A section that begins on a new page. Pages between such breaks are set side by side, which
    /// is why the long sections have one.
    pub fn section_on_new_page(&mut self, title: &str) {
        self.new_page();
        self.section(title);
    }
    /// A heading within a section.
    pub fn heading(&mut self, title: &str) {
        self.text("heading", title);
    }
    /// A paragraph.
    pub fn para(&mut self, text: &str) {
        self.text("para", text);
    }
    /// A paragraph that stays with the table behind it.
    pub fn intro(&mut self, text: &str) {
        self.text("intro", text);
    }
    /// A remark in small type.
    pub fn remark(&mut self, text: &str) {
        self.text("remark", text);
    }
    /// A paragraph that begins with words in bold.
    pub fn lead(&mut self, lead: &str, text: &str) {
        self.0.push(json!({ "t": "lead", "lead": set(lead), "s": set(text) }));
    }
    /// The same, with what stands there instead where the paper would have too many pages.
    pub fn lead_or(&mut self, lead: &str, text: &str, instead: &str) {
        self.0.push(json!({ "t": "lead", "lead": set(lead), "s": set(text), "instead": set(instead) }));
    }
    /// A remark, with what stands there instead where the paper would have too many pages.
    pub fn remark_or(&mut self, text: &str, instead: &str) {
        self.0.push(json!({ "t": "remark", "s": set(text), "instead": set(instead) }));
    }
    /// Marks the last block as one that is left out where the paper would have too many pages.
    pub fn spare(&mut self) {
        if let Some(block) = self.0.last_mut() {
            block["spare"] = true.into();
        }
    }
    /// A list; `numbered` for steps in order. Each item with a remark behind it, such as its source.
    pub fn list(&mut self, numbered: bool, items: impl IntoIterator<Item = (String, String)>) {
        let items: Vec<Value> = items.into_iter().map(|(s, r)| json!({ "s": set(&s), "r": set(&r) })).collect();
        self.0.push(json!({ "t": "list", "numbered": numbered, "items": items }));
    }
    /// A table, unless it has no rows.
    pub fn table(&mut self, table: &Table) {
        if !table.is_empty() {
            self.0.push(table.json());
            if !table.feet.is_empty() {
                self.remark(&format!("{}.", table.feet.join("; ")));
            }
        }
    }
    /// A list to be ticked.
    pub fn checks(&mut self, checks: &Checks) {
        self.0.push(json!({ "t": "checks", "value": checks.value, "rows": checks.rows }));
    }
    /// A form: a table with all its lines, whose empty cells are written into and are at least so many mm high.
    pub fn form(&mut self, table: &Table, high: f64) {
        let mut form = table.json();
        form["t"] = "form".into();
        form["high"] = high.into();
        self.0.push(form);
    }
    /// A page of its own for what follows.
    pub fn new_page(&mut self) {
        self.0.push(json!({ "t": "break" }));
    }
    /// The same, of what is taken out and copied: it stays on a page of its own.
    pub fn page_to_copy(&mut self, title: &str) {
        self.0.push(json!({ "t": "break", "keep": true }));
        self.section(title);
    }
    /// A block of its own kind.
    pub fn other(&mut self, block: Value) {
        self.0.push(block);
    }
}

/// Text as it goes to the template: one line, no control characters, units set.
pub fn set(text: &str) -> String {
    units(&plain(text))
}

/// Units as they are set: `ft2` behind a number becomes `ft²`. A person's words do not change.
pub fn units(text: &str) -> String {
    if !text.contains(['2', '3']) {
        return text.to_owned();
    }
    let mut out = String::with_capacity(text.len() + 8);
    let mut behind_number = true;
    for (k, word) in text.split(' ').enumerate() {
        if k > 0 {
            out.push(' ');
        }
        let core = word.trim_end_matches([',', '.', ';', ':', ')']);
        let is_unit = UNITS.iter().any(|u| u.symbol == core && core.ends_with(|c: char| c.is_alphanumeric()));
        if behind_number && is_unit && core.contains(['2', '3']) {
            out.push_str(&core.replace('2', "²").replace('3', "³"));
            out.push_str(word.get(core.len()..).unwrap_or(""));
        } else {
            out.push_str(word);
        }
        // In a sentence about a column the unit stands behind a comma.
        behind_number = word.ends_with(|c: char| c.is_ascii_digit() || c == ',' || c == '=');
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_many_cells_say_is_a_mark_that_the_foot_explains() {
        let mut table = Table::new([wide("From", 1.0)]);
        table.row(["our proposal: 2 in"]);
        table.row(["65 to 75 wet, from memory"]);
        let mut blocks = Blocks::default();
        blocks.table(&table.marked());
        assert_eq!(blocks.0[0]["rows"], json!([["‡ 2 in"], ["65 to 75 wet†"]]));
        let foot = "‡ our proposal; † from memory, to be confirmed before it is relied on.";
        assert_eq!(blocks.0[1]["s"], foot);
        let mut plain = Blocks::default();
        let mut table = Table::new([wide("From", 1.0)]);
        table.row(["a standard"]);
        plain.table(&table.marked());
        assert_eq!(plain.0.len(), 1);
    }

    #[test]
    fn units_are_set_and_words_are_left() {
        assert_eq!(units("2600 ft2, 1.4 mm2/s"), "2600 ft², 1.4 mm²/s");
        assert_eq!(units("area, m2"), "area, m²");
        assert_eq!(units("pit m3 of yard, model C-3"), "pit m3 of yard, model C-3");
    }
}
