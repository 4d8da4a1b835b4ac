//! Where the views of the general arrangement stand: to one scale, the largest at which all of them and the schedules find
//! room, aligned as the projection asks.

use crate::render::geometry::{Point, Rect, pt};
use crate::render::scale::Scale;
use crate::render::sheet::Sheet;
use crate::section::place::{Section, WALL, zero};
use stillrise_units::{Length, System, math};

/// Room kept around a view on paper, mm: left, above, right, below.
#[derive(Clone, Copy)]
pub struct Around(pub f64, pub f64, pub f64, pub f64);

/// A view on paper: its size and the room around it.
#[derive(Clone, Copy)]
struct Cell {
    wide: f64,
    high: f64,
    around: Around,
}

impl Cell {
    fn width(&self) -> f64 {
        self.around.0 + self.wide + self.around.2
    }
    fn height(&self) -> f64 {
        self.around.1 + self.high + self.around.3
    }
}

/// Where everything stands.
pub struct Placed {
    /// The scale of all views.
    pub scale: Scale,
    /// Origin of the plan: the inside of the inlet end at one side wall.
    pub plan: Point,
    /// Origin of the long section: the floor at the inside of the inlet end.
    pub section: Point,
    /// Origin of the end view: the floor at the inside of a side wall.
    pub end: Point,
    /// Origin of the cross section, likewise.
    pub cross: Point,
    /// Where schedules stand, in the order of their sizes; nothing for one without room.
    pub tables: Vec<Option<Point>>,
}

/// Room around each view.
pub struct Rooms {
    /// Around the plan.
    pub plan: Around,
    /// Around the long section.
    pub section: Around,
    /// Around the end view.
    pub end: Around,
    /// Around the cross section.
    pub cross: Around,
}

/// How the views stand to each other.
#[derive(Clone, Copy, PartialEq)]
enum Order {
    /// Long section, end view and cross section in a row; the plan over or under it.
    Row,
    /// The end view and the cross section in a row of their own, for what is much longer than high.
    Rows,
}

/// Distance between views, mm.
const BETWEEN: f64 = 3.0;
/// How far the marks in the middle of the sheet's edges reach into it, mm.
const MARK: f64 = 5.0;
/// A scale this much smaller is taken so that schedules stand beside the views.
const WORTH: f64 = 1.34;

/// Finds it; `None` where no scale brings the views onto the sheet.
pub fn find(s: &Section, sheet: &Sheet, rooms: &Rooms, tables: &[(f64, f64)]) -> Option<Placed> {
    let all = Scale::all(s.system);
    let best = |needed: bool| {
        all.iter().find_map(|scale| {
            let tried = [Order::Row, Order::Rows].map(|order| placed(s, sheet, rooms, *scale, order, tables));
            tried.into_iter().flatten().find(|placed| !needed || placed.tables.iter().all(Option::is_some))
        })
    };
    let views = best(false)?;
    match best(true) {
        Some(whole) if whole.scale.ratio() <= WORTH * views.scale.ratio() => Some(whole),
        _ => Some(views),
    }
}

/// The views at a scale in an order, if they find room.
fn placed(
    s: &Section,
    sheet: &Sheet,
    rooms: &Rooms,
    scale: Scale,
    order: Order,
    tables: &[(f64, f64)],
) -> Option<Placed> {
    let unit = s.unit();
    let shape = &unit.shape;
    let wall = unit.particulars.wall.map_or(zero(), |wall| wall.q);
    let thick = math::max(scale.mm(wall), WALL);
    let mm = |q: Length| scale.mm(q) + 2.0 * thick;
    // Legs stand out beside the walls from above and from the end.
    let legs = super::support::legs(s).map_or(0.0, |legs| scale.mm(legs.size) * 1.5);
    let (long, inner) = (mm(shape.length()), mm(s.broad()));
    let broad = inner + 2.0 * legs;
    let rise = scale.mm(s.top()) + thick;
    let high = rise + scale.mm(super::support::depth(s));
    let cell = |wide, high, around| Cell { wide, high, around };
    let (plan, section) = (cell(long, broad, rooms.plan), cell(long, high, rooms.section));
    let (end, cross) = (cell(broad, high, rooms.end), cell(inner, high, rooms.cross));
    // Plan and long section share their left edge.
    let left = math::max(plan.around.0, section.around.0);
    let column = left + long + math::max(plan.around.2, section.around.2);
    let beside = end.width() + BETWEEN + cross.width();
    let (above, below) = (
        math::max(section.around.1, math::max(end.around.1, cross.around.1)),
        math::max(section.around.3, math::max(end.around.3, cross.around.3)),
    );
    let third = s.system == System::Us;
    let whole = Rect { y1: sheet.strip.y0 - 1.0, ..sheet.frame.grown(-2.0) };
    let block = Rect { x0: sheet.corner.x1 + 2.0, y0: sheet.drawing.y1 + 2.0, x1: whole.x1, y1: sheet.frame.y1 };
    // Rows from above: which cells with which height.
    let lines: Vec<(Line, f64)> = match (order, third) {
        (Order::Row, true) => vec![(Line::Plan, plan.height()), (Line::All, above + high + below)],
        (Order::Row, false) => vec![(Line::All, above + high + below), (Line::Plan, plan.height())],
        (Order::Rows, true) => {
            vec![
                (Line::Plan, plan.height()),
                (Line::Long, section.height()),
                (Line::Short, end.height().max(cross.height())),
            ]
        }
        (Order::Rows, false) => {
            vec![
                (Line::Long, section.height()),
                (Line::Plan, plan.height()),
                (Line::Short, end.height().max(cross.height())),
            ]
        }
    };
    let wide = |line: Line| match line {
        Line::Plan => left + long + plan.around.2,
        Line::Long => left + long + section.around.2,
        Line::All => column + BETWEEN + beside,
        Line::Short => beside,
    };
    let widest = lines.iter().map(|(line, _)| wide(*line)).fold(0.0, math::max);
    if widest > whole.width() {
        return None;
    }
    let used: f64 = lines.iter().map(|(_, height)| height).sum();
    let free = whole.width() - widest;
    let x = whole.x0 + 0.5 * math::min(free, 16.0);
    // Sets the rows with some room between them; answers the origins and what each view takes.
    let set = |gap: f64| {
        let mut at = [pt(0.0, 0.0); 4];
        let mut taken: Vec<Rect> = Vec::new();
        let mut y = whole.y0;
        for &(line, height) in &lines {
            y += gap;
            if line == Line::Plan {
                at[0] = pt(x + left + thick, y + plan.around.1 + broad - thick - legs);
                taken.push(Rect::new(x, y, left + long + plan.around.2, height));
            }
            if line == Line::Long || line == Line::All {
                let top = if line == Line::All { above } else { section.around.1 };
                at[1] = pt(x + left + thick, y + top + rise);
                taken.push(Rect::new(x, y, left + long + section.around.2, top + high + section.around.3));
            }
            if line == Line::Short || line == Line::All {
                let top = if line == Line::All { above } else { math::max(end.around.1, cross.around.1) };
                let from = if line == Line::All { x + column + BETWEEN + math::min(0.3 * free, 24.0) } else { x };
                let floor = y + top + rise;
                at[2] = pt(from + end.around.0 + thick + legs, floor);
                taken.push(Rect::new(from, y, end.width(), top + high + end.around.3));
                let from =
                    from + end.width() + BETWEEN + if line == Line::All { math::min(0.2 * free, 16.0) } else { 0.0 };
                at[3] = pt(from + cross.around.0 + thick, floor);
                // Only what lies in the ground or hangs under the floor reaches lower than the cut.
                taken.push(Rect::new(from, y, cross.width(), top + rise + thick + cross.around.3));
            }
            y += height + gap;
        }
        let clear = taken.iter().all(|view| whole.holds(view) && view.overlap(&block) <= 0.0);
        clear.then_some((at, taken))
    };
    let most = (whole.height() - used) / (2.0 * f64::from(u8::try_from(lines.len()).unwrap_or(2)));
    let (at, mut taken) = [8.0, 6.0, 4.0, 2.0, 1.0, 0.0].into_iter().filter(|gap| *gap <= most).find_map(set)?;
    taken.extend([block, Rect { y1: sheet.frame.y1, ..sheet.strip }]);
    // The marks in the middle of the edges reach into the drawing.
    let middle = sheet.frame.centre();
    taken.extend([
        Rect { x0: middle.x - 1.0, y0: whole.y0, x1: middle.x + 1.0, y1: sheet.frame.y0 + MARK },
        Rect { x0: whole.x0, y0: middle.y - 1.0, x1: sheet.frame.x0 + MARK, y1: middle.y + 1.0 },
        Rect { x0: sheet.frame.x1 - MARK, y0: middle.y - 1.0, x1: whole.x1, y1: middle.y + 1.0 },
    ]);
    let mut spots = Vec::new();
    for &size in tables {
        let spot = clear(&whole, &taken, size);
        taken.extend(spot.map(|at| Rect::new(at.x, at.y, size.0, size.1)));
        spots.push(spot);
    }
    let [plan, section, end, cross] = at;
    Some(Placed { scale, plan, section, end, cross, tables: spots })
}

/// What stands in a row.
#[derive(Clone, Copy, PartialEq)]
enum Line {
    Plan,
    Long,
    All,
    Short,
}

/// Where something of a size stands clear of all that is taken: as far right, then as far up as it can.
fn clear(whole: &Rect, taken: &[Rect], (wide, high): (f64, f64)) -> Option<Point> {
    let steps = |from: f64, to: f64| {
        let count = math::max((to - from) / 2.0, -1.0);
        (0..200_u16).map(f64::from).take_while(move |k| *k <= count).map(move |k| from + 2.0 * k)
    };
    let columns: Vec<f64> = steps(whole.x0, whole.x1 - wide).collect();
    columns.into_iter().rev().find_map(|x| {
        steps(whole.y0 + 1.0, whole.y1 - high)
            .map(|y| Rect::new(x, y, wide, high))
            .find(|area| taken.iter().all(|other| other.overlap(&area.grown(1.5)) <= 0.0))
            .map(|area| pt(area.x0, area.y0))
    })
}
