//! Schedules, parts, scope and notes, in columns over as many sheets as they need: nothing is left out for want of room.

use super::tables::{self, Titled};
use super::{Made, block};
use crate::render::geometry::Rect;
use crate::render::lettering::CAPTION;
use crate::render::scene::TEXT;
use crate::render::schedule::{Column, Schedule};
use crate::render::sheet::{Sheet, SheetSize};
use crate::render::text::Table;
use crate::section::place::Section;

/// What a sheet is filled with.
enum Piece {
    Schedule(Titled),
    Note(String, String),
}

/// Height of a heading with the room under it, mm.
const HEAD: f64 = 7.5;
/// Distance of columns, mm.
const BETWEEN: f64 = 7.0;

/// The sheets: on the usual paper where the set goes onto a larger one, and in small lettering where that leaves one sheet less.
pub fn sheets(s: &Section, size: SheetSize, carried: &[Titled], texts: &[String]) -> Vec<Made> {
    let usual = SheetSize::of(s.system);
    let size = if usual.paper().0 + 20.0 < size.paper().0 { usual } else { size };
    let set = |set: Set| lettered(s, size, carried.to_vec(), texts.to_vec(), set);
    let large = set(Set { letters: TEXT, tight: false });
    if large.len() < 2 {
        return large;
    }
    let less = [Set { letters: CAPTION, tight: false }, Set { letters: CAPTION, tight: true }];
    less.into_iter().map(set).find(|small| small.len() < large.len()).unwrap_or(large)
}

/// How a sheet is set.
#[derive(Clone, Copy)]
struct Set {
    /// Height of capitals, mm.
    letters: f64,
    /// Whether a schedule that would find room in an empty column is parted all the same.
    tight: bool,
}

/// The sheets in a lettering.
fn lettered(s: &Section, size: SheetSize, carried: Vec<Titled>, texts: Vec<String>, how: Set) -> Vec<Made> {
    let mut pieces: Vec<Piece> = tables::rest(s, carried).into_iter().map(Piece::Schedule).collect();
    pieces.extend(texts.into_iter().enumerate().map(|(k, text)| Piece::Note((k + 1).to_string(), text)));
    let mut sheets = Vec::new();
    let mut queue: std::collections::VecDeque<Piece> = pieces.into();
    // Each sheet takes at least one piece, so this ends.
    while !queue.is_empty() {
        let mut sheet = Sheet::open(size, &block(s, "Schedules and notes", None), "Schedules and notes of the unit.");
        let mut columns = columns(&sheet);
        columns.iter_mut().for_each(|column| column.size = how.letters);
        let before = queue.len();
        let mut headed = false;
        for column in &mut columns {
            while let Some(piece) = queue.pop_front() {
                match set(&mut sheet, column, piece, &mut headed, how.tight) {
                    None => {}
                    Some(left) => {
                        queue.push_front(left);
                        break;
                    }
                }
            }
            headed = false;
        }
        if queue.len() == before && !shrunk(&mut sheet, &mut columns, &mut queue) {
            break;
        }
        sheets.push(Made { name: "schedules", kind: "Schedules and notes", scale: None, sheet });
    }
    sheets
}

/// Three columns; those over the title block end above it.
fn columns(sheet: &Sheet) -> Vec<Column> {
    // Clear of the marks in the middle of the edges, which reach into the drawing.
    let whole = Rect { x0: sheet.drawing.x0 + 3.5, y0: sheet.drawing.y0 + 2.5, ..sheet.drawing };
    let count = 3_u8;
    let wide = (whole.width() - BETWEEN * f64::from(count - 1)) / f64::from(count);
    (0..count)
        .map(|k| {
            let x0 = whole.x0 + f64::from(k) * (wide + BETWEEN);
            let y1 = if x0 + wide <= sheet.corner.x1 { sheet.corner.y1 } else { whole.y1 };
            Column::new(Rect { x0, y0: whole.y0, x1: x0 + wide, y1 })
        })
        .collect()
}

/// Sets a piece into a column; answers what of it is left.
fn set(sheet: &mut Sheet, column: &mut Column, piece: Piece, headed: &mut bool, tight: bool) -> Option<Piece> {
    match piece {
        Piece::Note(mark, text) => {
            let mut trial = sheet.scene.clone();
            let mut own = column.clone();
            let fits = (*headed || own.heading(&mut trial, "Notes")) && own.item(&mut trial, &mark, &text);
            if !fits {
                return Some(Piece::Note(mark, text));
            }
            (sheet.scene, *column, *headed) = (trial, own, true);
            None
        }
        Piece::Schedule((heading, table)) => {
            let wide = column.area.width();
            let room = column.room() - HEAD - column.size;
            let whole = |size: f64, table: &Table| {
                let natural = Schedule::new(table, 1000.0, size).widths;
                let set = Schedule::new(table, wide, size);
                let broken =
                    natural.iter().zip(&set.widths).enumerate().any(|(c, (n, w))| table.is_number(c) && w + 1e-9 < *n);
                (!broken && set.extent().0 <= wide + 1e-6).then(|| set.extent().1)
            };
            let fitting = [column.size, CAPTION].into_iter().find_map(|size| Some((size, whole(size, &table)?)));
            let (size, high) = fitting.unwrap_or_else(|| (CAPTION, Schedule::new(&table, wide, CAPTION).extent().1));
            // As many rows as find room; the rest goes on in the next column.
            let mut keep = table.rows.len();
            if high > room {
                // What finds room in an empty column goes there whole.
                if !tight && column.next > column.area.y0 && high < column.area.height() - HEAD - column.size {
                    return Some(Piece::Schedule((heading, table)));
                }
                while keep > 0 && Schedule::new(&first(&table, keep), wide, size).extent().1 > room {
                    keep -= 1;
                }
                if keep < 3.min(table.rows.len()) {
                    return Some(Piece::Schedule((heading, table)));
                }
            }
            let usual = column.size;
            column.heading(&mut sheet.scene, &heading);
            column.size = size;
            column.table(&mut sheet.scene, &first(&table, keep));
            column.size = usual;
            column.skip(1.5);
            let rest = after(&table, keep);
            let heading = if heading.ends_with("continued") { heading } else { format!("{heading}, continued") };
            (!rest.rows.is_empty()).then_some(Piece::Schedule((heading, rest)))
        }
    }
}

fn first(table: &Table, rows: usize) -> Table {
    Table { rows: table.rows.iter().take(rows).cloned().collect(), ..table.clone() }
}

fn after(table: &Table, rows: usize) -> Table {
    Table { rows: table.rows.iter().skip(rows).cloned().collect(), ..table.clone() }
}

/// A note longer than a whole column is set in small lettering; without effect there is nothing more to be done.
fn shrunk(sheet: &mut Sheet, columns: &mut [Column], queue: &mut std::collections::VecDeque<Piece>) -> bool {
    let (Some(column), Some(piece)) = (columns.first_mut(), queue.pop_front()) else { return false };
    column.size = CAPTION;
    set(sheet, column, piece, &mut false, false).is_none()
}
