//! The band under the drawing: a cell for each station with its name and what is said of it, and a line on scale and levels.

use super::plan::Plan;
use super::stations::{Stop, What};
use crate::render::geometry::{Rect, pt};
use crate::render::lettering::{CAPTION, TEXT, Text};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::render::schedule::letters;
use crate::render::text::{cells, lines};
use hypher::{Lang, hyphenate};
use stillrise_units::math;

/// Distance of lines over the height of capitals.
const LINE: f64 = 1.5;
/// Most lines of a fact.
const MOST: u8 = 6;
/// Room at the sides of a cell, mm.
const BESIDE: f64 = 0.8;

/// Height of the band with the line under it, mm.
pub fn depth(height: f64) -> f64 {
    math::min(math::max(0.19 * height, 20.0), 27.0)
}

/// Draws it; `notes` stand in the line at the foot.
pub fn draw(plan: &Plan, scene: &mut Scene, notes: &[String]) {
    let band = &plan.band;
    let foot = foot(plan, scene, notes);
    scene.on(Layer::Table).line(pt(band.x0, band.y0), pt(band.x1, band.y0), Pen::Medium);
    for (k, (stop, column)) in plan.stops.iter().zip(&plan.columns).enumerate() {
        let Some((x0, x1)) = *column else { continue };
        let cell = Rect { x0, x1, y0: band.y0, y1: foot };
        if k > 0 && x0 > band.x0 + 1.0 {
            scene.on(Layer::Table).line(pt(x0, band.y0), pt(x0, foot), Pen::Hatching);
        }
        scene.part(&stop.station.id, &stop.station.title, |scene| write(scene.on(Layer::Table), stop, &cell));
    }
    scene.on(Layer::Table).line(pt(band.x0, foot), pt(band.x1, foot), Pen::Thin);
}

/// Name and facts of a station, folded into its cell; what has no room is cut and the tooltip keeps it.
fn write(scene: &mut Scene, stop: &Stop, cell: &Rect) {
    let room = cell.width() - 2.0 * BESIDE;
    let names = |size: f64| folded(&stop.name, letters(room, size));
    let size = if names(TEXT).len() <= 1 && stop.what == What::Unit { TEXT } else { CAPTION };
    let mut y = cell.y0 + 0.9;
    for line in cut(names(size), 3) {
        scene.text(Text::new(pt(cell.x0 + BESIDE, y + size), &line).sized(size).bold());
        y += LINE * size;
    }
    let wide = letters(room, CAPTION);
    for fact in &stop.station.says {
        // As many lines as find room, and no fewer than three.
        let room = (3..=MOST).rev().find(|n| y + ((f64::from(*n) - 1.0) * LINE + 1.4) * CAPTION <= cell.y1);
        let lines = cut(folded(fact, wide), usize::from(room.unwrap_or(3)));
        let count = f64::from(u16::try_from(lines.len()).unwrap_or(u16::MAX));
        // A fact that has not its whole room is left to the tooltip.
        if y + ((count - 1.0) * LINE + 1.4) * CAPTION > cell.y1 {
            return;
        }
        for line in lines {
            scene.text(Text::new(pt(cell.x0 + BESIDE, y + CAPTION), &line).sized(CAPTION));
            y += LINE * CAPTION;
        }
    }
}

/// The first lines, the last with an ellipsis where there are more.
fn cut(mut lines: Vec<String>, most: usize) -> Vec<String> {
    if lines.len() > most {
        lines.truncate(most);
        if let Some(last) = lines.last_mut() {
            last.pop();
            last.push('…');
        }
    }
    lines
}

/// Text in lines; a word that is longer than a line is parted with a hyphen, at a syllable where one fits.
fn folded(text: &str, width: usize) -> Vec<String> {
    let width = width.max(4);
    let parted: Vec<String> = text.split(' ').map(|word| parts(word, width).join(" ")).collect();
    lines(&parted.join(" "), width)
}

/// A word in parts that fit.
fn parts(word: &str, width: usize) -> Vec<String> {
    let mut all = Vec::new();
    let mut rest = word.to_owned();
    while cells(&rest) > width {
        let most = syllables(&rest, width).unwrap_or_else(|| {
            // In halves where two lines take it, so that no few letters are left alone.
            let half = rest.chars().count().div_ceil(2) + 1;
            if half < width { half } else { width - 1 }
        });
        let at = rest.char_indices().nth(most).map_or(rest.len(), |(at, _)| at);
        let behind = rest.split_off(at);
        all.push(if rest.ends_with('-') { rest } else { rest + "-" });
        rest = behind;
    }
    all.push(rest);
    all
}

/// Letters of the most syllables that fit with a hyphen behind them; none where the first does not.
fn syllables(word: &str, width: usize) -> Option<usize> {
    let mut end = 0;
    let ends = hyphenate(word, Lang::English).map(|syllable| {
        end += syllable.chars().count();
        end
    });
    ends.take_while(|end| *end < width).last()
}

/// Writes the line at the foot; answers the y of the rule over it.
fn foot(plan: &Plan, scene: &mut Scene, notes: &[String]) -> f64 {
    let band = &plan.band;
    let room = letters(band.width() - 2.0 * BESIDE, CAPTION);
    let text = notes.join("; ");
    let lines = cut(lines(&text, room), 2);
    let mut y = band.y1 - 0.7;
    for line in lines.iter().rev() {
        scene.on(Layer::Table).text(Text::new(pt(band.x0 + BESIDE, y), line).sized(CAPTION));
        y -= LINE * CAPTION;
    }
    y + LINE * CAPTION - CAPTION - 0.8
}
