//! Levels in the unit: a triangle on each surface, a stem up to its words over the vessel. The words stand in rows, the row
//! of the leftmost stem highest, so that no stem meets words of another.

use super::clear::Clear;
use super::plan::Plan;
use super::tag::over;
use crate::render::geometry::{Rect, pt};
use crate::render::item::{Fill, Shape};
use crate::render::lettering::{Anchor, Text, text_width};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::{Item, Scene};
use crate::section::levels::{Mark, marks};
use crate::section::place::{Section, zero};
use crate::section::vessel::manways;
use stillrise_units::math;

/// Height and half the width of a triangle, mm.
const TRIANGLE: (f64, f64) = (2.0, 1.2);
/// Distance of stems, mm: least and usual.
const APART: (f64, f64) = (2.7, 4.0);
/// Room between the highest part of the vessel and the lowest row, mm.
const OVER: f64 = 3.0;
/// Room between a row's lettering and the line of the next, mm.
const BETWEEN: f64 = 0.7;

/// The marks of free surfaces; floor and ground are marked elsewhere.
fn surfaces(s: &Section) -> Vec<Mark> {
    marks(s).into_iter().filter(Mark::is_surface).collect()
}

/// Room that the rows need over the vessel, mm.
pub fn height(s: &Section, size: f64) -> f64 {
    let rows = u16::try_from(surfaces(s).len()).unwrap_or(8);
    OVER + 1.5 + f64::from(rows) * (size + over(size) + BETWEEN)
}

/// Draws them.
pub fn draw(plan: &Plan, s: &Section, scene: &mut Scene) {
    let all = surfaces(s);
    let end = s.unit().shape.length();
    let behind = s.oil_zone().1;
    let (from, to) = (s.at(behind, zero()).x, s.at(s.well_end(), zero()).x);
    let wells = all.iter().filter(|m| !m.ahead).count();
    // Stems of the clear well stand in it, those of the oil zone left of where its float hangs.
    let is_open = behind < end;
    let mut well = spread(if is_open { (from, to) } else { (to - 9.0, to) }, wells);
    let hang = s.at(s.oil_end().0, zero()).x - 2.0;
    let aheads = all.len() - wells;
    let mut ahead: Vec<f64> = (0..aheads).map(|k| hang - APART.1 * count(aheads - 1 - k)).collect();
    ahead.reverse();
    well.reverse();
    let walls = risers(s);
    let top = s.at(zero(), s.top()).y - s.wall() - OVER;
    let mut placed: Vec<(f64, &Mark)> = Vec::new();
    for mark in &all {
        let x = if mark.ahead { ahead.pop() } else { well.pop() };
        let taken: Vec<f64> = placed.iter().map(|(x, _)| *x).collect();
        let room = if mark.ahead { (f64::MIN, from - 1.2) } else { (from + 0.9, to - 0.9) };
        placed.extend(x.map(|x| (beside(x, room, &walls, &taken), mark)));
    }
    placed.sort_by(|a, b| a.0.total_cmp(&b.0));
    let rows = placed.len();
    for (k, (x, mark)) in placed.into_iter().enumerate() {
        let row = top - count(rows - 1 - k) * (plan.size + over(plan.size) + BETWEEN);
        flag(plan, s, scene, mark, (x, row));
    }
}

/// Stems of equal distance in a stretch, from the left.
fn spread((from, to): (f64, f64), number: usize) -> Vec<f64> {
    let step = math::max(APART.0, math::min(APART.1, (to - from) / count(number + 1)));
    let first = 0.5 * (from + to) - 0.5 * step * (count(number) - 1.0);
    (0..number).map(|k| first + step * count(k)).collect()
}

/// x on paper of the walls of risers, along which no stem may run.
fn risers(s: &Section) -> Vec<f64> {
    let Some(access) = &s.unit().access else { return Vec::new() };
    let half = access.opening.q * 0.5;
    manways(s).into_iter().flat_map(|x| [x - half, x + half]).map(|x| s.at(x, zero()).x).collect()
}

/// The place nearest to one, in a room, that keeps clear of walls and of other stems.
fn beside(x: f64, room: (f64, f64), walls: &[f64], taken: &[f64]) -> f64 {
    let places = || (0..24_u8).map(|k| 0.25 * f64::from(k)).flat_map(|off| [x - off, x + off]);
    let off_walls = |at: &f64, least: f64| walls.iter().all(|wall| (wall - at).abs() > least);
    let off_stems = |at: &f64, least: f64| taken.iter().all(|stem| (stem - at).abs() > least);
    let within = |at: &f64| *at >= room.0 && *at <= room.1;
    // Where a well is too narrow for all that stand in it, they stand nearer to one another.
    let usual = |at: &f64| within(at) && off_walls(at, 1.6) && off_stems(at, APART.0 - 0.1);
    let near = |at: &f64| within(at) && off_walls(at, 0.8) && off_stems(at, 1.4);
    let bare = |at: &f64| within(at) && off_stems(at, 1.4);
    let apart = |at: &f64| off_stems(at, 1.4);
    let found = places().find(usual).or_else(|| places().find(near)).or_else(|| places().find(bare));
    found.or_else(|| places().find(apart)).unwrap_or(x)
}

fn count(k: usize) -> f64 {
    f64::from(u16::try_from(k).unwrap_or(u16::MAX))
}

fn flag(plan: &Plan, s: &Section, scene: &mut Scene, mark: &Mark, (x, row): (f64, f64)) {
    let y = s.at(zero(), mark.level).y;
    let short = format!("{} {}", mark.name, s.write(mark.level));
    let long = s.datum(mark.level).map(|datum| format!("{short}, EL {datum}"));
    let title =
        format!("{}: {} above the floor", crate::summary::capital(&mark.name.to_lowercase()), s.write(mark.level));
    let id = format!("level-{}", mark.name.to_lowercase().replace(", ", "-").replace(' ', "-"));
    let clear = Clear::of(scene);
    scene.part(&id, &title, |scene| {
        scene.on(Layer::Level);
        let words = |text: &str, sign: f64| {
            let anchor = if sign < 0.0 { Anchor::End } else { Anchor::Start };
            Text::new(pt(x + sign * 0.9, row - over(plan.size)), text).sized(plan.size).anchored(anchor)
        };
        // Beside what stands high behind the unit words are shortened, or stand on the other side.
        let texts = [long.as_deref(), Some(short.as_str())].into_iter().flatten();
        let mut all = [1.0, -1.0].into_iter().flat_map(|sign| texts.clone().map(move |text| (text, sign)));
        let found = all.find(|(text, sign)| clear.is_free(&words(text, *sign).area()));
        let (height, half) = TRIANGLE;
        match found {
            Some((text, sign)) => {
                let end = x + sign * (0.9 + text_width(text, plan.size));
                scene.polyline(&[pt(x, y - height), pt(x, row), pt(end, row)], Pen::Thin);
                scene.text(words(text, sign));
            }
            None => scene.line(pt(x, y - height), pt(x, row), Pen::Thin),
        }
        let ring = vec![pt(x, y), pt(x - half, y - height), pt(x + half, y - height)];
        let fill = Fill::Paper;
        scene.add(Item::Shape(Shape::Path { rings: vec![ring], closed: true, pen: Some(Pen::Thin), fill }));
    });
    scene.reserve(Rect { x0: x - 0.5, y0: row, x1: x + 0.5, y1: y });
}
