//! The levels of a unit that a drawing marks.

use super::place::{Section, zero};
use crate::render::mark::LevelKind;
use stillrise_units::{Length, Typed};

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
