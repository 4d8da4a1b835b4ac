//! Level marks in one column at the outlet end, each with its elevation above the floor and in the site's datum.

use super::liquids::sludge_edge;
use super::place::{STUB, Section, zero};
use super::vessel::outlet;
use crate::render::geometry::pt;
use crate::render::item::Item;
use crate::render::mark::{Leader, Level, LevelKind, spread};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::{CAPTION, Scene, TEXT, Text, text_width};
use stillrise_design::stages::Place;
use stillrise_units::{Length, Typed, math};

/// One mark.
pub struct Mark {
    /// What stands there.
    pub name: String,
    /// Above the floor.
    pub level: Length,
    /// Whether it is the level of the oil zone and not of the clear well.
    pub ahead: bool,
    kind: LevelKind,
}

impl Mark {
    /// Whether it is a free surface, and not floor or ground.
    pub fn is_surface(&self) -> bool {
        self.kind == LevelKind::Liquid
    }
}

/// Distance of two marks' texts, mm, with and without a line for the datum.
const APART: (f64, f64) = (7.2, 4.8);
/// Most that lies between the wall and a mark's text, mm.
const LEAD: f64 = STUB + 20.0;

/// Levels at the largest flow.
const MAX_WELL: &str = "MAX, WELL";
const MAX_OIL: &str = "MAX, OIL ZONE";

/// The marks, from above to below; the two levels at the largest flow share one if they print alike.
pub fn marks(s: &Section) -> Vec<Mark> {
    let liquid = |name: &str, level, ahead| Mark { name: name.to_owned(), level, ahead, kind: LevelKind::Liquid };
    let mut all = vec![liquid("AT REST", s.unit().outlet.crest.q, false)];
    if let Some(alarm) = s.layer() {
        all.push(liquid("OIL SURFACE", alarm.surface.q, true));
        all.push(liquid("INTERFACE", alarm.interface.q, true));
    }
    // Water that would stand over the top of the vessel has no place in it: findings say so.
    if let Some(p) = s.highest().filter(|p| p.inlet.q <= s.unit().shape.height()) {
        all.push(liquid(MAX_OIL, p.chamber.q, true));
        all.push(liquid(MAX_WELL, p.well.q, false));
    }
    if let Some(level) = s.grade() {
        all.push(Mark { name: "GROUND".to_owned(), level, ahead: false, kind: LevelKind::Solid });
    }
    all.push(Mark { name: "FLOOR".to_owned(), level: zero(), ahead: false, kind: LevelKind::Solid });
    all.sort_by(|a, b| b.level.si().total_cmp(&a.level.si()));
    let mut merged: Vec<Mark> = Vec::new();
    for mark in all {
        match merged.last_mut().filter(|m| m.name == MAX_OIL && s.write(m.level) == s.write(mark.level)) {
            Some(last) if mark.name == MAX_WELL => last.name = "MAX".to_owned(),
            _ => merged.push(mark),
        }
    }
    merged
}

fn text(s: &Section, mark: &Mark) -> String {
    format!("{} {}", mark.name, s.write(mark.level))
}

/// Room the marks need to the right of the vessel, mm.
pub fn width(s: &Section, marks: &[Mark]) -> f64 {
    LEAD + marks.iter().map(|m| text_width(&text(s, m), TEXT)).fold(0.0, math::max) + 1.0
}

/// Draws them, and the sludge level in the hopper.
pub fn draw(s: &Section, scene: &mut Scene, marks: &[Mark]) {
    let wall = s.at(s.unit().shape.length(), zero()).x + s.wall();
    let start = wall + STUB + 1.5;
    let mut levels: Vec<Level> =
        marks.iter().map(|m| Level::new(pt(start, s.at(zero(), m.level).y), &text(s, m), m.kind)).collect();
    spread(&mut levels);
    let apart = if s.datum(zero()).is_some() { APART.0 } else { APART.1 };
    part(&mut levels, apart);
    let stub = outlet(s);
    let behind = s.at(s.oil_zone().1, zero()).x;
    for (level, mark) in levels.into_iter().zip(marks) {
        let y = level.at.y;
        scene.on(Layer::Level);
        if mark.ahead {
            scene.line(pt(behind, y), pt(wall - s.wall(), y), Pen::Thin);
        }
        if y < stub.y0 || y > stub.y1 {
            scene.line(pt(wall, y), pt(start, y), Pen::Thin);
        }
        let below = pt(start + level.landing, y + level.shift + CAPTION + 0.9);
        scene.add(Item::Level(level));
        if let Some(datum) = s.datum(mark.level) {
            scene.text(Text::new(below, &format!("EL {datum}")).sized(CAPTION));
        }
    }
    sludge(s, scene);
}

/// Moves texts so that each has its room, keeping the order; a kink leads to those that moved.
fn part(levels: &mut [Level], apart: f64) {
    let mut heights: Vec<f64> = levels.iter().map(|l| l.at.y).collect();
    for _ in 0..500 {
        let mut moved = false;
        for k in 1..heights.len() {
            let lack = apart - (heights[k] - heights[k - 1]);
            if lack > 1e-3 {
                heights[k - 1] -= 0.5 * lack;
                heights[k] += 0.5 * lack;
                moved = true;
            }
        }
        if !moved {
            break;
        }
    }
    let reach = levels.iter().map(|l| l.reach).fold(0.0, math::max);
    for (level, height) in levels.iter_mut().zip(heights) {
        let shift = height - level.at.y;
        level.shift = if shift.abs() < 0.01 { 0.0 } else { shift };
        level.landing = reach + 6.0;
    }
}

/// Names the sludge beside the hopper.
fn sludge(s: &Section, scene: &mut Scene) {
    let (Some(level), Some((from, to))) = (s.sludge(), sludge_edge(s)) else { return };
    let ahead = s.zone(Place::GravityZone).map_or(zero(), |(_, to)| to);
    let to = if to < ahead { to } else { ahead };
    let tip = s.at(from + (to - from) * 0.7, level).by(0.0, 1.6);
    // Beside a hopper there is room under the floor; sludge on the floor is named above itself.
    let (from, places) = if level < zero() {
        (s.at(ahead, zero()), [(4.0, 7.0), (4.0, 10.0), (9.0, 7.0), (9.0, 11.0), (2.0, 15.0)])
    } else {
        (tip, [(3.0, -6.0), (3.0, -9.0), (-3.0, -6.0), (-3.0, -9.0), (3.0, -14.0)])
    };
    let text = format!("SLUDGE {}", s.write(level));
    let leader = |(x, y): (f64, f64)| Leader { tip, knee: from.by(x, y), text: text.clone(), dot: true };
    scene.on(Layer::Level).place(places.map(|place| Item::Leader(leader(place))));
}
