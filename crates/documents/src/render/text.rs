//! Plain text: tables, headings and paragraphs for the terminal and for mails. No colour, no tabs.

use core::fmt;
use serde_json::{Value, json};

/// Width of a terminal when nobody said.
pub const WIDTH: usize = 80;

/// Narrowest last column that is still wrapped rather than left long.
const NARROWEST: usize = 16;

/// Text made safe to print in one line: control characters (and so terminal codes) become
/// spaces, runs of spaces one space, ends trimmed.
#[must_use]
pub fn plain(text: &str) -> String {
    let invisible = |c: char| c.is_control() || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    text.split(|c: char| c.is_whitespace() || invisible(c)).filter(|w| !w.is_empty()).collect::<Vec<_>>().join(" ")
}

/// How many character cells text takes in a monospaced face: 0 for combining marks, 2 for wide characters.
#[must_use]
pub fn cells(text: &str) -> usize {
    text.chars()
        .map(|c| match u32::from(c) {
            0x300..=0x36F | 0x200B..=0x200F | 0xFE00..=0xFE0F | 0xFEFF => 0,
            0x1100..=0x115F | 0x2E80..=0xA4CF | 0xAC00..=0xD7A3 | 0xF900..=0xFAFF | 0xFE30..=0xFE6F => 2,
            0xFF00..=0xFF60 | 0xFFE0..=0xFFE6 | 0x1F300..=0x1FAFF | 0x20000..=0x3FFFD => 2,
            _ => 1,
        })
        .sum()
}

/// Breaks text into lines of at most `width` cells; a word longer than that is cut. Empty text is one empty line.
#[must_use]
pub fn lines(text: &str, width: usize) -> Vec<String> {
    let width = width.max(1);
    let mut all = vec![String::new()];
    let mut used = 0;
    for word in plain(text).split(' ') {
        let length = cells(word);
        if used > 0 && used + 1 + length > width {
            all.push(String::new());
            used = 0;
        }
        let mut last = all.pop().unwrap_or_default();
        if used > 0 {
            last.push(' ');
            used += 1;
        }
        for letter in word.chars() {
            let wide = cells(letter.encode_utf8(&mut [0; 4]));
            if used > 0 && used + wide > width {
                all.push(core::mem::take(&mut last));
                used = 0;
            }
            last.push(letter);
            used += wide;
        }
        all.push(last);
    }
    all
}

/// Paragraphs (separated by blank lines) wrapped to `width` cells, every line led by `indent` spaces.
#[must_use]
pub fn wrap(text: &str, width: usize, indent: usize) -> String {
    hang(text, width, indent, indent)
}

/// As [`wrap`], with another indent for the first line of each paragraph.
#[must_use]
pub fn hang(text: &str, width: usize, first: usize, rest: usize) -> String {
    let mut out = String::new();
    for paragraph in text.split("\n\n").filter(|p| !plain(p).is_empty()) {
        if !out.is_empty() {
            out.push('\n');
        }
        // The first line's own indent is reserved by a run of letters that is taken off again.
        let room = width.saturating_sub(rest).max(NARROWEST);
        let lead = first.saturating_sub(rest);
        let filler = if lead > 0 { "x".repeat(lead - 1) + " " } else { String::new() };
        for (k, line) in lines(&format!("{filler}{paragraph}"), room).iter().enumerate() {
            let (pad, line) =
                if k == 0 { (first, line.get(lead.min(line.len())..).unwrap_or("")) } else { (rest, line.as_str()) };
            out.push_str(format!("{}{line}", " ".repeat(pad)).trim_end());
            out.push('\n');
        }
    }
    out
}

/// A bulleted paragraph: `mark`, a space, and the text hanging under itself.
#[must_use]
pub fn item(mark: &str, text: &str, width: usize) -> String {
    let mark = plain(mark);
    let indent = cells(&mark) + 1;
    let body = wrap(text, width, indent);
    let body = if body.is_empty() { "\n".to_owned() } else { body };
    format!("{mark}{}", body.get(cells(&mark)..).unwrap_or(&body))
}

/// A section heading, underlined, with a blank line before it.
#[must_use]
pub fn heading(text: &str) -> String {
    let text = plain(text);
    format!("\n{text}\n{}\n", "-".repeat(cells(&text)))
}

/// Rows under a header. One table serves terminal, drawing sheet and page.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Table {
    /// Names of the columns; empty for a table without header.
    pub header: Vec<String>,
    /// The rows; short rows are filled up with empty cells.
    pub rows: Vec<Vec<String>>,
}

impl Table {
    /// A table with these column names.
    #[must_use]
    pub fn new<const N: usize>(header: [&str; N]) -> Table {
        Table { header: header.iter().map(|h| (*h).to_owned()).collect(), rows: Vec::new() }
    }

    /// Adds a row.
    pub fn row<I: IntoIterator<Item = S>, S: Into<String>>(&mut self, cells: I) {
        self.rows.push(cells.into_iter().map(Into::into).collect());
    }

    /// Number of columns.
    #[must_use]
    pub fn columns(&self) -> usize {
        self.rows.iter().map(Vec::len).fold(self.header.len(), usize::max)
    }

    /// One cell, made [`plain`]; empty where the row is short.
    #[must_use]
    pub fn cell(&self, row: usize, column: usize) -> String {
        self.rows.get(row).and_then(|r| r.get(column)).map_or_else(String::new, |c| plain(c))
    }

    /// Whether a column holds numbers and is set to the right: every cell with content begins
    /// with a number and has at most a unit behind it.
    #[must_use]
    pub fn is_number(&self, column: usize) -> bool {
        let mut any = false;
        for row in 0..self.rows.len() {
            let cell = self.cell(row, column);
            if matches!(cell.as_str(), "" | "-" | "–" | "—") {
                continue;
            }
            if !is_quantity(&cell) {
                return false;
            }
            any = true;
        }
        any
    }

    /// Width of each column in cells.
    #[must_use]
    pub fn widths(&self) -> Vec<usize> {
        (0..self.columns())
            .map(|c| {
                let head = self.header.get(c).map_or(0, |h| cells(&plain(h)));
                (0..self.rows.len()).map(|r| cells(&self.cell(r, c))).fold(head, usize::max)
            })
            .collect()
    }

    /// The table as text at most `width` cells wide, by wrapping the last column.
    ///
    /// Where the other columns alone leave it too little room, lines grow longer instead.
    #[must_use]
    pub fn render(&self, width: usize) -> String {
        let mut widths = self.widths();
        let Some(last) = widths.len().checked_sub(1) else {
            return String::new();
        };
        let before: usize = widths.iter().take(last).map(|w| w + 2).sum();
        if let Some(w) = widths.last_mut() {
            *w = (*w).min(width.saturating_sub(before).max(NARROWEST.min(*w)));
        }
        let right: Vec<bool> = (0..=last).map(|c| self.is_number(c)).collect();
        let mut out = String::new();
        let mut line = |row: &[String]| {
            let empty = String::new();
            let folded = lines(row.get(last).unwrap_or(&empty), widths[last]);
            for (k, piece) in folded.iter().enumerate() {
                let mut text = String::new();
                for (c, &w) in widths.iter().enumerate() {
                    let cell = if c == last {
                        piece
                    } else if k == 0 {
                        row.get(c).unwrap_or(&empty)
                    } else {
                        &empty
                    };
                    let pad = " ".repeat(w.saturating_sub(cells(cell)));
                    let gap = if c == 0 { "" } else { "  " };
                    text += &if right[c] { format!("{gap}{pad}{cell}") } else { format!("{gap}{cell}{pad}") };
                }
                out.push_str(text.trim_end());
                out.push('\n');
            }
        };
        if !self.header.is_empty() {
            line(&self.header.iter().map(|h| plain(h)).collect::<Vec<_>>());
            line(&widths.iter().map(|&w| "-".repeat(w)).collect::<Vec<_>>());
        }
        for r in 0..self.rows.len() {
            line(&(0..=last).map(|c| self.cell(r, c)).collect::<Vec<_>>());
        }
        out
    }

    /// The table as data for a typst page: `header`, `rows` (all of equal length) and `right`,
    /// which tells the columns of numbers.
    #[must_use]
    pub fn json(&self) -> Value {
        let columns = self.columns();
        let rows: Vec<Vec<String>> =
            (0..self.rows.len()).map(|r| (0..columns).map(|c| self.cell(r, c)).collect()).collect();
        let right: Vec<bool> = (0..columns).map(|c| self.is_number(c)).collect();
        json!({ "header": self.header.iter().map(|h| plain(h)).collect::<Vec<_>>(), "rows": rows, "right": right })
    }
}

impl fmt::Display for Table {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.render(WIDTH))
    }
}

/// Whether text is a number with at most one short word, a unit, behind it.
fn is_quantity(text: &str) -> bool {
    let (number, unit) = text.split_once(' ').unwrap_or((text, ""));
    let digits = number.trim_start_matches(['+', '-', '−', '<', '>', '~']);
    let date = number.len() == 10 && number.split('-').map(str::len).eq([4, 2, 2]);
    !date
        && digits.starts_with(|c: char| c.is_ascii_digit())
        && digits.chars().all(|c| c.is_ascii_digit() || ".,e+-'\"%/:".contains(c))
        && cells(unit) <= 8
        && !unit.contains(' ')
}
