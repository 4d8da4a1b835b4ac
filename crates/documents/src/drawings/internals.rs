//! What stands inside the unit: the long section on a sheet of its own, with every dimension and a number at every part, and
//! details beside it where they find room.

use super::{Made, block, details};
use crate::Edition;
use crate::render::geometry::{Rect, pt};
use crate::render::scale::{Scale, View};
use crate::render::sheet::{Sheet, SheetSize};
use crate::render::title_block::TitleBlock;
use crate::section::place::{STUB, Section, WALL, zero};
use crate::section::{balloons, dimensions, names, title, view};
use stillrise_search::Settled;
use stillrise_units::math;

/// Room around the view, mm: left, above, right, below.
const AROUND: (f64, f64, f64, f64) = (26.0, 28.0, STUB + 24.0, 44.0);
/// Width of the column of details, mm.
const DETAILS: f64 = 116.0;
/// A scale this much smaller is taken so that details stand beside the view.
const WORTH: f64 = 1.3;

/// The sheets: the section, and one for details that it has no room for; none where no scale brings the view onto it.
pub fn sheets(settled: &Settled, edition: Edition, size: SheetSize) -> Vec<Made> {
    let Some(mut s) = Section::new(settled, edition) else { return Vec::new() };
    let trial = Sheet::open(size, &TitleBlock::default(), "");
    let beside = Rect { x1: trial.drawing.x1 - DETAILS, ..trial.drawing };
    let fit = |rooms: &[Rect]| {
        let found = rooms.iter().filter_map(|room| Some((scale(&s, room)?, *room)));
        found.min_by(|a, b| a.0.ratio().total_cmp(&b.0.ratio()))
    };
    // Beside the title block where it is short, over it where it is long.
    let short = Rect { x1: trial.corner.x1, y1: trial.corner.y1, ..trial.drawing };
    let Some(alone) = fit(&[short, trial.drawing]) else { return Vec::new() };
    let with = fit(&[short, beside]).filter(|with| with.0.ratio() <= WORTH * alone.0.ratio());
    let (scale, room) = with.unwrap_or(alone);
    place(&mut s, scale, &room);
    let mut sheet = Sheet::open(size, &block(&s, "Internals", Some(scale)), &title::description(&s));
    let scene = &mut sheet.scene;
    view(&s, scene);
    let lowest = dimensions::draw(&s, scene);
    names::draw(&s, scene);
    balloons::draw(&s, scene, &[]);
    s.view.title(scene, pt(s.middle(), lowest + 8.5));
    let column = Rect { x0: room.x1 + 6.0, y0: trial.drawing.y0 + 4.0, x1: trial.drawing.x1, y1: trial.drawing.y1 };
    if with.is_some() {
        details::draw(&s, scene, &column);
    }
    let (bar, length) = sheet.bar();
    s.view.scale_bar(&mut sheet.scene, bar, length, s.system);
    let mut all = vec![Made { name: "internals", kind: "Internals", scale: Some(scale), sheet }];
    if with.is_none() {
        let mut sheet = Sheet::open(size, &block(&s, "Details", None), "Details of the internals.");
        let whole = Rect { x0: trial.drawing.x0 + 6.0, y0: trial.drawing.y0 + 6.0, ..trial.drawing };
        if details::on_own_sheet(&s, &mut sheet.scene, &whole) > 0 {
            all.push(Made { name: "details", kind: "Details", scale: None, sheet });
        }
    }
    all
}

/// The largest scale that brings the view into a room.
fn scale(s: &Section, room: &Rect) -> Option<Scale> {
    let wall = s.unit().particulars.wall.map_or(zero(), |wall| wall.q);
    let (long, high) = (s.unit().shape.length() + wall * 2.0, s.top() - s.unit().shape.bottom() + wall);
    let free = (room.width() - AROUND.0 - AROUND.2 - 2.0 * WALL, room.height() - AROUND.1 - AROUND.3 - 2.0 * WALL);
    Scale::fitting_between(long, high, free, s.system)
}

/// Puts the view into the middle of a room.
fn place(s: &mut Section, scale: Scale, room: &Rect) {
    let wall = s.unit().particulars.wall.map_or(zero(), |wall| wall.q);
    let thick = math::max(scale.mm(wall), WALL);
    let long = scale.mm(s.unit().shape.length()) + 2.0 * thick;
    let high = scale.mm(s.top() - s.unit().shape.bottom()) + 2.0 * thick;
    let spare = (room.width() - AROUND.0 - AROUND.2 - long, room.height() - AROUND.1 - AROUND.3 - high);
    let x = room.x0 + AROUND.0 + thick + math::max(0.5 * spare.0, 0.0);
    let y = room.y0 + AROUND.1 + thick + scale.mm(s.top()) + math::max(0.5 * spare.1, 0.0);
    s.view = View { name: "Long section".to_owned(), scale, origin: pt(x, y) };
}
