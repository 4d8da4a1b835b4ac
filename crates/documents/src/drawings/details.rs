//! Details of internals at a larger scale: where oil is held and drawn off, and how the plates stand.

use crate::render::clip::inset;
use crate::render::geometry::{Point, Rect, apart, arc, pt};
use crate::render::item::{Fill, Item};
use crate::render::lettering::{Anchor, HEADING, Text};
use crate::render::mark::Leader;
use crate::render::pen::{Layer, Pen};
use crate::render::scale::{Scale, View};
use crate::render::scene::{Scene, TEXT, text_width};
use crate::section::place::{STUB, Section, zero};
use crate::section::view;
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_units::catalog::{DEG, IN, MM};
use stillrise_units::{Length, Typed, math};

/// Room that a title needs under a detail, mm.
const TITLE: f64 = 13.0;
/// Least distance of plates on paper, mm.
const PITCH: f64 = 5.0;
/// How many plates are shown, least width and height of what is shown, and its greatest height, mm.
const SHOWN: f64 = 5.0;
const LEAST: (f64, f64) = (28.0, 24.0);
const MOST: f64 = 44.0;
/// Higher than this is a sheet of its own, mm.
const OWN: f64 = 150.0;

/// Draws the details into a column, from above; answers how many found room.
pub fn draw(s: &Section, scene: &mut Scene, column: &Rect) -> usize {
    let mut y = column.y0;
    let mut drawn = 0;
    let half = 0.5 * (column.height() - 8.0);
    for detail in [oil as fn(&Section, &mut Scene, &Rect, usize) -> Option<f64>, plates] {
        let area = Rect { y0: y, y1: math::min(y + half, column.y1), ..*column };
        if let Some(low) = detail(s, scene, &area, drawn + 1) {
            y = low + 8.0;
            drawn += 1;
        }
    }
    drawn
}

/// Draws the details on a sheet of their own, side by side; answers how many there are.
pub fn on_own_sheet(s: &Section, scene: &mut Scene, room: &Rect) -> usize {
    let mut drawn = 0;
    let half = Rect { x1: room.x0 + 0.55 * room.width(), ..*room };
    if oil(s, scene, &half, 1).is_some() {
        drawn += 1;
    }
    let rest = if drawn > 0 { Rect { x0: half.x1 + 10.0, ..*room } } else { *room };
    drawn + usize::from(plates(s, scene, &rest, drawn + 1).is_some())
}

/// Set points of the oil that the float is mounted for, in the end of the unit where it is held.
fn oil(s: &Section, scene: &mut Scene, area: &Rect, number: usize) -> Option<f64> {
    let oil = s.governing()?;
    let unit = s.unit();
    let (from, to) = (s.oil_end().0, unit.shape.length());
    let mut lines: Vec<(String, Length)> = Vec::new();
    for level in &oil.levels {
        let text = level.point.word.to_uppercase();
        // Set points at one height share their line.
        match lines.iter_mut().find(|(_, z)| (z.si() - level.interface.q.si()).abs() < 1e-6) {
            Some((name, _)) => *name = format!("{name}, {text}"),
            None => lines.push((text, level.interface.q)),
        }
    }
    let lowest = lines.iter().map(|(_, z)| *z).fold(unit.retention.oil_draw.q, |a, b| if b < a { b } else { a });
    let rim = unit.shape.height();
    let margin = (rim - lowest) * 0.12;
    let (low, high) = (lowest - margin, rim + margin * 0.4);
    let words: Vec<String> = lines.iter().map(|(name, z)| format!("{name} {}", s.write(*z))).collect();
    let wide = words.iter().map(|w| text_width(w, TEXT)).fold(0.0, math::max) + 6.0;
    let room = (area.width() - wide - STUB - 4.0, area.height() - TITLE - 4.0);
    let scale = Scale::fitting_between(to - from, high - low, room, s.system)?;
    if scale.ratio() >= 0.9 * s.view.scale.ratio() || to <= from {
        return None;
    }
    let own = placed(s, scale, &format!("Detail {number}, oil levels"), pt(0.0, 0.0));
    let mut trial = Scene::new("", "", scene.width, scene.height);
    view(&own, &mut trial);
    let (a, b) = (own.at(from, high), own.at(to, low));
    let window = Rect { x0: a.x, y0: a.y, x1: b.x + own.wall() + STUB, y1: b.y };
    let at = pt(area.x0, area.y0 + 2.0);
    inset(scene, &trial, &window, at);
    let (dx, dy) = (at.x - window.x0, at.y - window.y0);
    // Where the detail ends the vessel goes on.
    for (p, q) in [
        (pt(at.x, at.y), pt(at.x, at.y + window.height())),
        (pt(at.x, at.y + window.height()), pt(b.x + dx + own.wall(), at.y + window.height())),
    ] {
        scene.on(Layer::Vessel).line(p, q, Pen::Phantom);
    }
    let behind = own.at(s.oil_zone().1, zero()).x + dx;
    let end = at.x + window.width();
    let mut heights: Vec<f64> = lines.iter().map(|(_, z)| own.at(zero(), *z).y + dy).collect();
    let shown = heights.clone();
    apart(&mut heights, TEXT + 1.4);
    for ((word, y), text_y) in words.iter().zip(shown).zip(heights) {
        scene.on(Layer::Level).line(pt(at.x, y), pt(behind, y), Pen::Surface);
        scene.polyline(&[pt(behind, y), pt(end, y), pt(end + 3.0, text_y)], Pen::Thin);
        scene.text(Text::new(pt(end + 3.8, text_y + 0.5 * TEXT), word).anchored(Anchor::Start));
    }
    let low = at.y + window.height() + 7.0;
    let half = 0.5 * text_width(&own.view.name, HEADING) + 2.0;
    own.view.title(scene, pt(math::max(at.x + 0.5 * window.width(), area.x0 + half), low));
    Some(low + 7.0)
}

/// A few plates as they stand across their run.
fn plates(s: &Section, scene: &mut Scene, area: &Rect, number: usize) -> Option<f64> {
    let pack = s.unit().pack.as_ref()?;
    let (gap, plate, angle) = (pack.laid.gap.q, pack.laid.plate.q, pack.laid.angle.q);
    // On a sheet of its own there is room for a larger scale.
    let (pitch, most) = if area.height() > OWN { (2.0 * PITCH, 2.0 * MOST) } else { (PITCH, MOST) };
    let scale = Scale::all(s.system).into_iter().rev().find(|scale| scale.mm(gap + plate) >= pitch)?;
    let (run, rise) = (math::cos(angle.si()), math::sin(angle.si()));
    let (pitch, thick) = (scale.mm(gap + plate), scale.mm(plate));
    // As many plates as make a pack of them plain, and no more than the column holds beside the words.
    let fine = |q: Length| s.show(q, (&IN, &MM));
    let words =
        math::max(text_width(&format!("PLATE {}", fine(plate)), TEXT), text_width(&format!("GAP {}", fine(gap)), TEXT));
    let wide = (SHOWN * pitch / math::max(rise, 0.3)).clamp(LEAST.0, math::max(area.width() - words - 14.0, LEAST.0));
    let high = math::min((SHOWN * pitch / math::max(run, 0.5)).clamp(LEAST.1, most), area.height() - TITLE - 4.0);
    if high < 20.0 {
        return None;
    }
    let window = Rect::new(area.x0 + 4.0, area.y0 + 2.0, wide, high);
    let centre = window.centre();
    let mut trial = Scene::new("", "", scene.width, scene.height);
    trial.on(Layer::Internals);
    let mut k = -20.0;
    while k <= 20.0 {
        // Along the plate, and square to it.
        let at = |along: f64, off: f64| centre.by(along * run - off * rise, -along * rise - off * run);
        let base = k * pitch;
        let ring = [at(-90.0, base), at(90.0, base), at(90.0, base + thick), at(-90.0, base + thick)];
        trial.polygon(&ring, Some(Pen::Medium), if thick > 0.8 { Fill::None } else { Fill::Ink });
        k += 1.0;
    }
    inset(scene, &trial, &window, pt(window.x0, window.y0));
    let at = |along: f64, off: f64| centre.by(along * run - off * rise, -along * rise - off * run);
    // The gap, square to the plates, between arrow heads.
    let (p, q) = (at(0.0, thick), at(0.0, pitch));
    scene.on(Layer::Dimension);
    let out = |from: Point, to: Point| from.toward(to, -5.0);
    scene.arrow(out(p, q), p, Pen::Thin);
    scene.arrow(out(q, p), q, Pen::Thin);
    let knee = pt(window.x1 + 6.0, window.y0 + 8.0);
    let words = format!("GAP {}", fine(gap));
    scene.on(Layer::Note).add(Item::Leader(Leader {
        tip: p.toward(q, 0.5 * (pitch - thick)),
        knee,
        text: words,
        dot: true,
    }));
    let tip = at(6.0, -pitch + 0.5 * thick);
    let words = format!("PLATE {}", fine(plate));
    scene.add(Item::Leader(Leader { tip, knee: knee.by(0.0, 7.0), text: words, dot: true }));
    // The angle from the level, at the lowest edge of the window.
    let foot = pt(window.x0 + 2.0, window.y1 + 2.5);
    let long = 16.0;
    scene.on(Layer::Dimension).line(foot, foot.by(long, 0.0), Pen::Thin);
    scene.line(foot, foot.by(0.62 * long * run, -0.62 * long * rise), Pen::Thin);
    scene.polyline(&arc(foot, 8.0, 8.0, 0.0, angle.in_unit(&DEG), 16), Pen::Thin);
    let words = format!("{} FROM THE LEVEL", s.show(angle, (&DEG, &DEG)));
    scene.text(Text::new(foot.by(long + 2.0, 0.9), &words));
    let own = placed(s, scale, &format!("Detail {number}, {}", seen(pack.laid.run.q)), centre);
    let low = foot.y + 9.0;
    // A title may be wider than what it names.
    let half = 0.5 * text_width(&own.view.name, HEADING) + 2.0;
    own.view.title(scene, pt(math::max(centre.x, area.x0 + half), low));
    Some(low + 7.0)
}

fn seen(run: PlateRun) -> &'static str {
    if run == PlateRun::CrossFlow { "plates seen along the flow" } else { "plates seen from the side" }
}

/// The same unit in another view.
fn placed<'a>(s: &Section<'a>, scale: Scale, name: &str, origin: Point) -> Section<'a> {
    Section { view: View { name: name.to_owned(), scale, origin }, ..*s }
}
