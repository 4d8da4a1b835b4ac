//! Tables as sheets of a workbook: numbers as numbers, text as text, and nothing that somebody wrote becomes a formula.

use super::text::{cells, plain};
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Format, FormatAlign, Formula, Workbook, XlsxError};

/// A cell.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// Nothing.
    Empty,
    /// Text, whatever it begins with.
    Text(String),
    /// A number.
    Number(f64),
    /// Room for somebody to write a number into.
    Room,
    /// A formula of ours, and what it gives as long as the room it speaks of is empty.
    Formula(String, f64),
}

impl Cell {
    /// Text.
    #[must_use]
    pub fn text(text: impl AsRef<str>) -> Cell {
        let text = plain(text.as_ref());
        if text.is_empty() { Cell::Empty } else { Cell::Text(text) }
    }

    /// A number, where there is one.
    #[must_use]
    pub fn number(value: Option<f64>) -> Cell {
        value.filter(|v| v.is_finite()).map_or(Cell::Empty, Cell::Number)
    }
}

/// A sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Grid {
    /// Its name, at most 31 letters.
    pub name: &'static str,
    /// Headings, units included.
    pub header: Vec<String>,
    /// Rows.
    pub rows: Vec<Vec<Cell>>,
}

impl Grid {
    /// An empty sheet.
    #[must_use]
    pub fn new<const N: usize>(name: &'static str, header: [&str; N]) -> Grid {
        Grid { name, header: header.iter().map(|h| (*h).to_owned()).collect(), rows: Vec::new() }
    }

    /// Adds a row.
    pub fn row(&mut self, cells: impl IntoIterator<Item = Cell>) {
        self.rows.push(cells.into_iter().collect());
    }
}

/// No cell of such a file holds more letters.
const LONGEST: usize = 32_000;
/// Widest and narrowest column, letters.
const WIDTHS: (usize, usize) = (60, 8);

/// The sheets as a workbook; `date` is a day as `2026-03-02`, of which nothing else but the enquiry knows.
///
/// # Errors
/// Where the format has no room for what is asked.
pub fn xlsx(title: &str, date: Option<&str>, grids: &[Grid]) -> Result<Vec<u8>, XlsxError> {
    let mut book = Workbook::new();
    // A file of the same input is the same: no clock is asked. Without a date it is a day that says so.
    let day = date.and_then(|day| ExcelDateTime::parse_from_str(day).ok());
    let day = day.map_or_else(|| ExcelDateTime::from_ymd(2000, 1, 1), Ok)?;
    let properties = DocProperties::new().set_title(plain(title)).set_author("Stillrise").set_creation_datetime(&day);
    book.set_properties(&properties);
    let head = Format::new().set_bold().set_text_wrap().set_align(FormatAlign::Top);
    let words = Format::new().set_text_wrap().set_align(FormatAlign::Top);
    let room = Format::new().set_unlocked().set_background_color(0xFF_F4_CC).set_num_format("#,##0.00");
    let money = Format::new().set_num_format("#,##0.00");
    let digits = ["0", "0.0", "0.00", "0.0000", "0.00E+00"].map(|format| Format::new().set_num_format(format));
    for grid in grids {
        let sheet = book.add_worksheet();
        sheet.set_name(grid.name)?.set_freeze_panes(1, 0)?;
        for (c, text) in (0..).zip(&grid.header) {
            sheet.write_string_with_format(0, c, text, &head)?;
            sheet.set_column_width(c, width(grid, usize::from(c)))?;
        }
        for (r, row) in (1..).zip(&grid.rows) {
            for (c, cell) in (0..).zip(row) {
                match cell {
                    Cell::Empty => {}
                    Cell::Text(text) => {
                        let text: String = text.chars().take(LONGEST).collect();
                        sheet.write_string_with_format(r, c, text, &words)?;
                    }
                    Cell::Number(value) => {
                        sheet.write_number_with_format(r, c, *value, &digits[shown(*value)])?;
                    }
                    Cell::Room => {
                        sheet.write_blank(r, c, &room)?;
                    }
                    Cell::Formula(text, value) => {
                        let formula = Formula::new(text).set_result(format!("{value}"));
                        sheet.write_formula_with_format(r, c, formula, &money)?;
                    }
                }
            }
        }
    }
    book.save_to_buffer()
}

/// Which of the formats shows a number with some three digits; the number itself keeps all of them.
fn shown(value: f64) -> usize {
    let size = value.abs();
    if value.fract() == 0.0 && size < 1e9 {
        0
    } else if size >= 100.0 {
        1
    } else if size >= 1.0 {
        2
    } else if size >= 0.001 {
        3
    } else {
        4
    }
}

/// As wide as its longest text, within bounds; headings may break.
fn width(grid: &Grid, column: usize) -> f64 {
    let own = |cell: Option<&Cell>| match cell {
        Some(Cell::Text(text)) => cells(text),
        Some(Cell::Number(_) | Cell::Room | Cell::Formula(..)) => 11,
        _ => 0,
    };
    let head = grid.header.get(column).map_or(0, |text| cells(text).min(18));
    let widest = grid.rows.iter().map(|row| own(row.get(column))).fold(head, usize::max);
    let letters = widest.clamp(WIDTHS.1, WIDTHS.0) + 2;
    f64::from(u32::try_from(letters).unwrap_or(0))
}
