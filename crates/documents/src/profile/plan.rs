//! Where everything stands on the paper: columns of the stations, the unit's scale and place, levels of the site.

use super::levels::{Heights, Levels};
use super::stations::{Side, Stop, What, stop};
use super::{Paper, band, flags};
use crate::Edition;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::lettering::{CAPTION, TEXT};
use crate::render::scale::{Scale, View};
use crate::section::place::{Section, WALL, zero};
use stillrise_search::Settled;
use stillrise_units::{Length, System, math};

/// Edge of the paper that stays blank, mm.
const EDGE: f64 = 2.0;
/// Least width of a column of weight 1, and most, mm.
const COLUMN: (f64, f64) = (11.2, 27.0);
/// Width of a column of weight 1 in which its words find room, mm, and the smaller scale that is taken for that.
const COMFORT: f64 = 19.0;
const WORTH: f64 = 1.7;
/// Least room for the unit across, mm.
const LEAST: f64 = 62.0;
/// Room beside the vessel, mm: a pipe may drop on its left, and stubs stand out on both sides.
pub const BESIDE: (f64, f64) = (17.0, 11.0);
/// From this width of the paper on lettering of levels is of the usual height.
const WIDE: f64 = 280.0;

/// The plan of the drawing.
pub struct Plan<'a> {
    /// The job.
    pub settled: &'a Settled,
    /// Units of print.
    pub system: System,
    /// The stations, in the direction of flow.
    pub stops: Vec<Stop>,
    /// Their columns; nothing for one that stands in the column of another.
    pub columns: Vec<Option<(f64, f64)>>,
    /// Room for the drawing.
    pub drawing: Rect,
    /// Room for the words under it.
    pub band: Rect,
    /// Height of capitals of levels and names.
    pub size: f64,
    /// The unit, placed.
    pub section: Option<Section<'a>>,
    /// Levels on paper.
    pub levels: Levels,
}

impl<'a> Plan<'a> {
    /// Lays the drawing out.
    pub fn new(settled: &'a Settled, stops: Vec<Stop>, paper: Paper) -> Plan<'a> {
        let system = settled.job.enquiry.system();
        let size = if paper.width >= WIDE { TEXT } else { CAPTION };
        let whole = Rect::new(EDGE, EDGE, paper.width - 2.0 * EDGE, paper.height - 2.0 * EDGE);
        let stops = merged(stops, whole.width() - LEAST);
        let weights: f64 = stops.iter().map(|stop| stop.what.weight()).sum();
        let depth = band::depth(paper.height);
        let band = Rect { y0: whole.y1 - depth, ..whole };
        let drawing = Rect { y1: band.y0 - 1.0, ..whole };
        let mut section = Section::new(settled, Edition::Client);
        let room = whole.width() - weights * COLUMN.0;
        let (above, below) = section.as_ref().map_or((0.0, 0.0), |s| (flags::height(s, size), under(paper.height)));
        let upright = drawing.height() - above - below;
        let mut across = section.as_mut().map_or(LEAST, |s| scaled(s, room, upright));
        // On paper that is printed the words of the stations are not cut where a smaller scale leaves them room.
        let least = whole.width() - weights * COMFORT;
        if let Some(s) = section.as_mut().filter(|_| paper.width >= WIDE && across > least) {
            let known = s.view.clone();
            let narrower = scaled(s, least, upright);
            if s.view.scale.ratio() <= WORTH * known.scale.ratio() && narrower <= least {
                across = narrower;
            } else {
                s.view = known;
            }
        }
        let each = if weights > 0.0 { math::min((whole.width() - across) / weights, COLUMN.1) } else { 0.0 };
        let unit = whole.width() - each * weights;
        let mut columns = Vec::new();
        let mut x = whole.x0;
        for stop in &stops {
            let width = if stop.what == What::Unit { unit } else { stop.what.weight() * each };
            columns.push((width > 0.0).then_some((x, x + width)));
            x += width;
        }
        let middle = Rect { y0: drawing.y0 + above, y1: drawing.y1 - below, ..drawing };
        let place = stops.iter().zip(&columns).find(|(stop, _)| stop.what == What::Unit).and_then(|(_, c)| *c);
        let heights = Heights::of(settled);
        if let (Some(s), Some(place)) = (section.as_mut(), place) {
            let origin = placed(s, place, &middle, &heights, &drawing);
            s.view.origin = origin;
        }
        let levels = Levels::new(settled, section.as_ref(), &heights, &drawing);
        Plan { settled, system, stops, columns, drawing, band, size, section, levels }
    }

    /// The column of a kind of station.
    pub fn column(&self, what: What) -> Option<(f64, f64)> {
        let found = self.stops.iter().position(|stop| stop.what == what)?;
        self.columns.get(found).copied().flatten()
    }

    /// The stations on a side that have a column, each with it.
    pub fn on(&self, side: Side) -> Vec<(&Stop, (f64, f64))> {
        let all = self.stops.iter().zip(&self.columns);
        all.filter(|(stop, _)| stop.what.side() == side).filter_map(|(stop, c)| Some((stop, (*c)?))).collect()
    }

    /// Whether a kind of station stands.
    pub fn has(&self, what: What) -> bool {
        self.stops.iter().any(|stop| stop.what == what)
    }

    /// The column of the unit.
    pub fn unit(&self) -> (f64, f64) {
        self.column(What::Unit).unwrap_or((self.drawing.x0, self.drawing.x1))
    }

    /// Where the unit's inlet and outlet stubs end on paper.
    pub fn stubs(&self) -> (f64, f64) {
        let (x0, x1) = self.unit();
        match &self.section {
            Some(s) => {
                let (left, right) = (s.at(zero(), zero()).x, s.at(s.unit().shape.length(), zero()).x);
                let stub = s.wall() + crate::section::place::STUB;
                (left - stub, right + stub)
            }
            None => (x0 + 10.0, x1 - 8.0),
        }
    }
}

/// Room under the vessel for its dimensions, mm.
fn under(height: f64) -> f64 {
    if height >= 125.0 {
        27.0
    } else if height >= 105.0 {
        21.5
    } else {
        14.0
    }
}

/// Gives the unit the largest scale at which it fits; answers the width that it takes.
fn scaled(s: &mut Section, across: f64, upright: f64) -> f64 {
    let shape = &s.unit().shape;
    let thick = s.unit().particulars.wall.map_or(zero(), |wall| wall.q);
    let (length, height) = (shape.length() + thick * 2.0, s.top() - shape.bottom() + thick);
    let room = (across - BESIDE.0 - BESIDE.1 - 2.0 * WALL, upright - 2.0 * WALL);
    if let Some(scale) = Scale::fitting_between(length, height, room, s.system) {
        s.view = View { name: s.view.name.clone(), scale, origin: pt(0.0, 0.0) };
    }
    s.view.scale.mm(length) + BESIDE.0 + BESIDE.1 + 2.0 * WALL
}

/// Where the unit's origin stands: in the middle of its column, and as high or low as the levels of the site find most room.
fn placed(s: &Section, (x0, x1): (f64, f64), room: &Rect, heights: &Heights, drawing: &Rect) -> Point {
    let shape = &s.unit().shape;
    let mm = |length: Length| s.view.scale.mm(length);
    let slack = math::max(room.height() - mm(s.top() - shape.bottom()) - 2.0 * WALL, 0.0);
    let top = room.y0 + WALL + mm(s.top());
    let spare = math::max(x1 - x0 - mm(shape.length()) - BESIDE.0 - BESIDE.1, 0.0);
    let x = x0 + BESIDE.0 + 0.5 * spare;
    let floor = s.performance.and_then(|p| p.site.floor.as_ref()).map(|floor| floor.q);
    let beyond = |share: f64| {
        let y = top + share * slack;
        let of = |z: Option<Length>, up: f64, down: f64| {
            z.zip(floor).map_or(0.0, |(z, floor)| {
                let at = y - mm(z - floor);
                math::max(drawing.y0 + up - at, 0.0) + math::max(at - drawing.y1 + down, 0.0)
            })
        };
        of(heights.incoming, 29.0, 14.0)
            + of(heights.ground, 18.0, if heights.incoming.is_none() { 17.0 } else { 4.0 })
            + of(heights.outfall, 12.0, 8.0)
            + of(heights.tailwater, 10.0, 5.0)
            + of(heights.groundwater, 10.0, 4.0)
    };
    let shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.0, 1.0];
    let best = shares.into_iter().min_by(|a, b| beyond(*a).total_cmp(&beyond(*b))).unwrap_or(0.5);
    pt(x, top + best * slack)
}

/// Sources, and then containments, drawn as one where there is no room for a column each.
fn merged(stops: Vec<Stop>, room: f64) -> Vec<Stop> {
    let stops =
        folded(stops, room, What::MoreSources, "more sources", |w| matches!(w, What::Surface(_) | What::Stream(_)));
    folded(stops, room, What::MoreContainments, "more containments", |w| matches!(w, What::Containment(_)))
}

fn folded(stops: Vec<Stop>, room: f64, more: What, name: &str, of: impl Fn(What) -> bool) -> Vec<Stop> {
    let wide = |stops: &[Stop]| stops.iter().map(|stop| stop.what.weight()).sum::<f64>() * COLUMN.0;
    if wide(&stops) <= room {
        return stops;
    }
    let places: Vec<usize> = (0..stops.len()).filter(|&k| of(stops[k].what)).collect();
    // One or two stay; the last ones go together.
    for kept in (1..places.len().saturating_sub(1)).rev() {
        let (first, gone) = (places[kept], &places[kept..]);
        let gathered: Vec<&Stop> = gone.iter().map(|&k| &stops[k]).collect();
        let says = gathered.iter().take(4).map(|stop| stop.name.clone()).collect();
        let mut blocks: Vec<&str> = gathered.iter().flat_map(|s| &s.station.blocks).map(String::as_str).collect();
        blocks.sort_unstable();
        blocks.dedup();
        let one = stop(more, &format!("{} {name}", gone.len()), says, &blocks);
        let mut left: Vec<Stop> = Vec::new();
        for (k, stop) in stops.iter().enumerate() {
            if k == first {
                left.push(one.clone());
            } else if !gone.contains(&k) {
                left.push(stop.clone());
            }
        }
        if wide(&left) <= room || kept == 1 {
            return left;
        }
    }
    stops
}
