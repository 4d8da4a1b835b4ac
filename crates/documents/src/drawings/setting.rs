//! What the unit stands on or lies in: across it with ground, groundwater, bed and cover, its footprint with what it carries,
//! and the loads that whoever designs the base needs.

use super::loads::{Told, said, written};
use super::{Made, block, support};
use crate::Edition;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::{Fill, Item};
use crate::render::lettering::{TEXT, Text, text_width};
use crate::render::mark::{Axis, Leader, Level, LevelKind};
use crate::render::pen::{Layer, Pen};
use crate::render::scale::{Scale, View};
use crate::render::scene::Scene;
use crate::render::schedule::Column;
use crate::render::sheet::{Sheet, SheetSize};
use crate::render::title_block::TitleBlock;
use crate::section::place::{Section, WALL, zero};
use crate::section::{manways, title};
use crate::views;
use stillrise_search::Settled;
use stillrise_units::{Length, Typed, math};

/// Room around the section, mm: left, above, right, below.
const SECTION: (f64, f64, f64, f64) = (34.0, 16.0, 14.0, 32.0);
/// Room around the footprint, mm.
const PLAN: (f64, f64, f64, f64) = (22.0, 12.0, 14.0, 34.0);
/// Width of the column of loads, mm.
const LOADS: f64 = 112.0;
/// What is drawn of the bed under the unit, mm; nominal.
const BED: f64 = 5.0;

/// What stands at a leg.
const SUPPORT: &str = "SUPPORT, BY THE MAKER";

/// The sheet; `None` where no scale brings the views onto it, or of one that is built in its place.
pub fn sheet(settled: &Settled, edition: Edition, size: SheetSize) -> Option<Made> {
    let mut s = Section::new(settled, edition)?;
    if s.unit().arrangement.is_built_in() {
        return None;
    }
    let trial = Sheet::open(size, &TitleBlock::default(), "");
    let said = said(&s);
    let best = [Order::Beside, Order::Under].into_iter().filter_map(|order| laid(&s, &trial, order, &said));
    let at = best.min_by(|a, b| a.scale.ratio().total_cmp(&b.scale.ratio()))?;
    let mut sheet = Sheet::open(size, &block(&s, "Setting and loads", Some(at.scale)), &title::description(&s));
    let scene = &mut sheet.scene;
    s.view = View { name: "Across the unit, as set".to_owned(), scale: at.scale, origin: at.section };
    across(&s, scene);
    s.view = View { name: "Footprint".to_owned(), scale: at.scale, origin: at.plan };
    footprint(&s, scene);
    written(scene, &said, at.columns);
    let (bar, length) = sheet.bar();
    s.view.scale_bar(&mut sheet.scene, bar, length, s.system);
    Some(Made { name: "setting", kind: "Setting and loads", scale: Some(at.scale), sheet })
}

/// Where tables and notes stand.
#[derive(Clone, Copy, PartialEq)]
enum Order {
    /// In a column at the right.
    Beside,
    /// In two columns under the footprint.
    Under,
}

/// Where everything stands.
struct Laid {
    scale: Scale,
    section: Point,
    plan: Point,
    columns: [Option<Column>; 2],
}

/// The largest scale at which views, tables and notes find room in an order, and where they stand.
fn laid(s: &Section, trial: &Sheet, order: Order, said: &Told) -> Option<Laid> {
    let area = trial.drawing;
    let shape = &s.unit().shape;
    let wall = s.unit().particulars.wall.map_or(zero(), |wall| wall.q);
    let legs = support::legs(s).map_or(zero(), |legs| legs.size * 1.5);
    let (long, wide) = (shape.length() + wall * 2.0, shape.width() + wall * 2.0 + legs * 2.0);
    let high = s.top() + support::depth(s) + wall;
    let right = if order == Order::Beside { area.x1 - LOADS } else { area.x1 };
    let room = Rect { x1: right, y1: trial.corner.y1, ..area };
    // Side by side, the footprint turned along the sheet; between them stand the elevations.
    let free = (
        room.width() - SECTION.0 - PLAN.0 - PLAN.2 - 4.0 * WALL,
        room.height() - SECTION.1 - SECTION.3 - BED - 4.0 * WALL,
    );
    Scale::all(s.system).into_iter().find_map(|scale| {
        let between = beside(s, &scale);
        let hole = pit_rim(s).map_or(0.0, |_| 2.0 * PIT);
        let (broad, tall) = (scale.mm(wide) + 4.0 * WALL + hole, scale.mm(high));
        // The title block stands under the footprint, which ends above it; the section reaches down beside it.
        let fits = scale.mm(long + wide) + between + hole <= free.0
            && tall <= free.1
            && scale.mm(wide) <= area.height() - PLAN.1 - PLAN.3 - 4.0 * WALL
            && (area.x0 + SECTION.0 + between + broad <= trial.corner.x1
                || SECTION.1 + tall + SECTION.3 + BED + 4.0 * WALL <= area.height());
        if !fits {
            return None;
        }
        let thick = math::max(scale.mm(wall), WALL);
        let spare = math::max(free.0 - scale.mm(long + wide) - between - hole, 0.0) / 3.0;
        let down =
            math::min(free.1, if area.x0 + SECTION.0 + between + broad <= trial.corner.x1 { free.1 } else { tall });
        let floor = room.y0 + SECTION.1 + scale.mm(s.top()) + thick + math::min(0.5 * (down - tall), 14.0);
        let beside = scale.mm(legs);
        let x = room.x0 + SECTION.0 + thick + beside + hole + math::min(spare, 20.0);
        let plan_x = x - beside + scale.mm(wide) + between + PLAN.0 + math::min(spare, 30.0);
        let drop = if order == Order::Beside { 16.0 } else { 4.0 };
        let plan_y = area.y0 + PLAN.1 + scale.mm(wide) - beside + 2.0 * thick + drop;
        let columns = match order {
            Order::Beside => {
                [Some(Column::new(Rect { x0: area.x1 - LOADS + 8.0, y0: area.y0, x1: area.x1, y1: area.y1 })), None]
            }
            Order::Under => {
                let x0 = math::min(plan_x - PLAN.0 + 4.0, area.x1 - 1.55 * LOADS);
                let middle = x0 + 0.46 * (area.x1 - x0);
                let top = plan_y + beside + thick + PLAN.3 + if beside > 0.0 { 6.0 } else { -2.0 };
                let own = x - beside + scale.mm(wide) + between - 8.0;
                if x0 < own {
                    return None;
                }
                [
                    Some(Column::new(Rect { x0, y0: top, x1: middle - 3.0, y1: area.y1 })),
                    Some(Column::new(Rect { x0: middle + 3.0, y0: top, x1: area.x1, y1: area.y1 })),
                ]
            }
        };
        let mut scratch = Scene::new("", "", area.x1 + 20.0, area.y1 + 60.0);
        let found = order == Order::Beside || written(&mut scratch, said, columns.clone());
        found.then_some(Laid { scale, section: pt(x, floor), plan: pt(plan_x, plan_y), columns })
    })
}

/// How far the ground that is drawn beside the unit reaches, mm.
fn reach(s: &Section, scale: &Scale) -> f64 {
    math::max(0.35 * (scale.mm(s.unit().shape.width()) + 2.0 * WALL), 14.0)
}

/// Room at the right of the section, mm: for the ground and the words of the elevations.
fn beside(s: &Section, scale: &Scale) -> f64 {
    let widest = s.datum(zero()).map_or(0.0, |datum| text_width(&format!("GROUNDWATER {datum}"), TEXT));
    let support = support::base(s).map_or(0.0, |_| text_width(SUPPORT, TEXT) - 8.0);
    let widest = math::max(widest, support);
    let ground = if s.cover().is_some() { reach(s, scale) } else { 0.0 };
    ground + SECTION.2 + widest + 12.0 + pit_rim(s).map_or(0.0, |_| 2.0 * PIT)
}

/// The unit cut square to the flow, in or over the ground.
fn across(s: &Section, scene: &mut Scene) {
    let shape = &s.unit().shape;
    let station = views::station(s);
    let wide = shape.width();
    let (left, right) = (s.at(zero(), zero()).x - s.wall(), s.at(wide, zero()).x + s.wall());
    let reach = reach(s, &s.view.scale);
    let bottom = s.at(zero(), zero()).y + s.wall();
    let buried = s.cover().is_some();
    if buried {
        let top = s.at(zero(), s.top()).y;
        let pit = [
            pt(left - reach, top),
            pt(right + reach, top),
            pt(right + 0.5 * reach, bottom + BED),
            pt(left - 0.5 * reach, bottom + BED),
        ];
        scene.part("backfill", "Backfill and bed", |scene| {
            scene.on(Layer::Ground).polygon(&pit, Some(Pen::Phantom), Fill::Hatch(Hatch::Sand));
        });
        if let Some(water) = groundwater(s) {
            // Through the pit and the ground beside it; the vessel covers it.
            let y = s.at(zero(), water).y;
            scene.part("groundwater", "Groundwater", |scene| {
                scene.on(Layer::Ground).line(pt(left - reach - 8.0, y), pt(right + reach + 9.0, y), Pen::Phantom);
            });
        }
        ground_line(scene, (left - reach - 8.0, right + reach + 8.0), top, &risers(s, left, right));
        risers_drawn(s, scene, top);
    }
    if buried {
        views::cleared(s, scene, station);
    }
    views::cross_seen(s, scene, station);
    if !buried {
        support::across(s, scene);
        pit(s, scene, (left, right));
        // Of one for the ground whose depth follows from nothing, no ground is drawn.
        if support::base(s).is_none() && !s.unit().arrangement.is_in_ground() {
            ground_line(scene, (left - reach, right + reach), bottom, &[]);
        }
    }
    let axis = 0.5 * (left + right);
    let low = bottom + if buried { BED } else { s.view.scale.mm(support::depth(s)) };
    let mut heights = vec![(zero(), zero()), (zero(), shape.height())];
    if buried {
        heights.push((zero(), s.top()));
    } else if let Some(base) = support::base(s) {
        heights.insert(0, (zero(), zero() - base));
    }
    let out = pit_rim(s).map_or(0.0, |_| 2.0 * PIT);
    let line = left - if buried { reach + 12.0 } else { 12.0 + out + support::beside(s) };
    s.view.dimensions(
        scene,
        Axis::Up,
        &heights,
        math::max(line, s.view.origin.x - support::beside(s) - out - SECTION.0 + 4.0),
        |l| s.write(l),
    );
    s.view.across(scene, (zero(), zero()), (wide, zero()), low + 8.0, &s.write(wide));
    let pit = pit_rim(s).map_or(0.0, |_| 2.0 * PIT);
    levels(s, scene, right + if buried { reach + 9.0 } else { 10.0 + pit + support::beside(s) });
    let mut tell = |tip: Point, text: &str, places: &[(f64, f64)]| {
        let leader =
            |&(x, y): &(f64, f64)| Item::Leader(Leader { tip, knee: tip.by(x, y), text: text.to_owned(), dot: true });
        scene.on(Layer::Note).place(places.iter().map(leader).collect::<Vec<_>>());
    };
    if buried {
        tell(pt(right + 0.3 * reach, bottom - 2.0), "BACKFILL", &[(8.0, 7.0), (8.0, 11.0), (8.0, -6.0)]);
        tell(pt(axis, bottom + 0.6 * BED), "BED", &[(26.0, 13.0), (30.0, 17.0)]);
    } else if support::base(s).is_some() {
        tell(
            pt(right + 0.7 * support::beside(s), low - 3.0),
            SUPPORT,
            &[(8.0, 8.0), (8.0, 12.0), (8.0, 15.0), (-60.0, 12.0), (-64.0, 16.0)],
        );
    }
    s.view.title(scene, pt(axis, low + 24.0));
}

/// How far the walls of a pit stand from what stands out beside the unit, mm; nominal.
const PIT: f64 = 6.0;

/// The ground at the pit that the unit stands in, over its floor, where both are known and drawn.
fn pit_rim(s: &Section) -> Option<Length> {
    let floor = s.performance?.site.floor.as_ref().filter(|_| s.is_sunk() && s.cover().is_none())?.q;
    let over = s.settled.job.enquiry.site.ground.q()? - floor;
    (over > zero() - support::depth(s) && over <= s.top()).then_some(over)
}

/// The pit of one that stands in one, which others build.
fn pit(s: &Section, scene: &mut Scene, (left, right): (f64, f64)) {
    let (Some(rim), Some(base)) = (pit_rim(s), support::base(s)) else { return };
    let (top, low) = (s.at(zero(), rim).y, s.at(zero(), zero() - base).y);
    let out = support::beside(s) + PIT;
    let (near, far) = (left - out, right + out);
    scene.part("ground", "Ground", |scene| {
        scene.on(Layer::Ground);
        scene.polyline(&[pt(near, top), pt(near, low), pt(far, low), pt(far, top)], Pen::Outline);
    });
    ground_line(scene, (near - PIT, near), top, &[]);
    ground_line(scene, (far, far + PIT), top, &[]);
}

/// The groundwater over the floor, where both are known and it lies within what is drawn.
fn groundwater(s: &Section) -> Option<Length> {
    let floor = s.performance?.site.floor.as_ref()?.q;
    let over = s.settled.job.enquiry.site.groundwater.q()? - floor;
    shown(s, over).then_some(over)
}

/// Whether a height lies within what is drawn.
fn shown(s: &Section, z: Length) -> bool {
    z >= zero() - support::depth(s) - s.top() * 0.1 && z <= s.top() * 1.1
}

/// Where the ground is open for a riser, on paper.
fn risers(s: &Section, left: f64, right: f64) -> Vec<(f64, f64)> {
    let Some(access) = &s.unit().access else { return Vec::new() };
    let half = 0.5 * s.view.scale.mm(access.opening.q);
    let axis = 0.5 * (left + right);
    if manways(s).is_empty() { Vec::new() } else { vec![(axis - half, axis + half)] }
}

/// The riser of a manway behind the cut, from the crown to the ground.
fn risers_drawn(s: &Section, scene: &mut Scene, top: f64) {
    let Some(access) = &s.unit().access else { return };
    let middle = s.unit().shape.width() * 0.5;
    let half = access.opening.q * 0.5;
    let (a, b) = (s.at(middle - half, s.unit().shape.height()), s.at(middle + half, s.unit().shape.height()));
    scene.part("manway", "Manways with risers", |scene| {
        let area = Rect { x0: a.x, y0: top, x1: b.x, y1: a.y };
        scene.on(Layer::Vessel).rect(&area, Some(Pen::Medium), Fill::Paper);
        let lid = Rect { x0: a.x - 1.2, y0: top - 0.9, x1: b.x + 1.2, y1: top };
        scene.rect(&lid, Some(Pen::Medium), Fill::Paper);
    });
}

/// The line of the ground with its strokes, open at some stretches.
fn ground_line(scene: &mut Scene, (from, to): (f64, f64), y: f64, open: &[(f64, f64)]) {
    scene.part("ground", "Ground", |scene| {
        scene.on(Layer::Ground);
        let mut start = from;
        for (a, b) in open.iter().copied().chain([(to, to)]) {
            scene.line(pt(start, y), pt(a, y), Pen::Outline);
            let mut mark = start + 1.5;
            while mark < a - 0.2 {
                scene.line(pt(mark, y), pt(mark - 1.2, y + 1.6), Pen::Thin);
                mark += 3.0;
            }
            start = b;
        }
    });
}

/// Elevations of ground, groundwater and floor, where the site's datum is known.
fn levels(s: &Section, scene: &mut Scene, x: f64) {
    let Some(floor) = s.performance.and_then(|p| p.site.floor.as_ref()).map(|floor| floor.q) else { return };
    let site = &s.settled.job.enquiry.site;
    let mut all: Vec<(&str, Length, LevelKind)> = vec![("FLOOR", zero(), LevelKind::Solid)];
    all.extend(site.ground.q().map(|z| ("GROUND", z - floor, LevelKind::Solid)));
    all.extend(site.groundwater.q().map(|z| ("GROUNDWATER", z - floor, LevelKind::Liquid)));
    all.retain(|(_, z, _)| shown(s, *z));
    all.sort_by(|a, b| b.1.si().total_cmp(&a.1.si()));
    let mut marks: Vec<Level> = all
        .iter()
        .filter_map(|(name, z, kind)| {
            let text = format!("{name} {}", s.datum(*z)?);
            Some(Level::new(pt(x, s.at(zero(), *z).y), &text, *kind))
        })
        .collect();
    crate::render::mark::spread(&mut marks);
    for mark in marks {
        scene.on(Layer::Level).add(Item::Level(mark));
    }
}

/// Where the unit stands, from above, with the places of its supports.
fn footprint(s: &Section, scene: &mut Scene) {
    let shape = &s.unit().shape;
    let (a, b) = (s.at(zero(), zero()), s.at(shape.length(), shape.width()));
    let area = Rect { x0: a.x - s.wall(), y0: b.y - s.wall(), x1: b.x + s.wall(), y1: a.y + s.wall() };
    scene.part("shell", "Outline of the vessel", |scene| {
        scene.on(Layer::Vessel).polygon(&outside(s, &area), Some(Pen::Outline), Fill::None);
    });
    let middle = area.centre();
    scene.on(Layer::Centre).line(pt(area.x0 - 5.0, middle.y), pt(area.x1 + 5.0, middle.y), Pen::Centre);
    support::above(s, scene);
    if let Some(centre) = s.performance.and_then(|p| p.shop.as_ref()?.weights.as_ref()?.centre) {
        let at = pt(s.at(centre.q, zero()).x, middle.y);
        scene.part("centre", "Centre of gravity, empty", |scene| {
            scene.on(Layer::Note).circle(at, 1.8, Some(Pen::Medium), Fill::Paper);
            scene.line(at.by(-3.0, 0.0), at.by(3.0, 0.0), Pen::Thin);
            scene.line(at.by(0.0, -3.0), at.by(0.0, 3.0), Pen::Thin);
        });
        let word = Text::new(at.by(4.0, -3.5), "CG, EMPTY").cleared();
        scene.label(
            &word,
            &[(at.by(4.0, -3.5), word.anchor), (at.by(4.0, 6.0), word.anchor), (at.by(4.0, 10.0), word.anchor)],
        );
    }
    let (mut low, mut left) = (area.y1 + support::beside(s) + 8.0, area.x0 - 6.0);
    if let Some(legs) = support::legs(s) {
        low =
            s.view.across(scene, (legs.x[0], legs.y[0]), (legs.x[1], legs.y[0]), low, &s.write(legs.x[1] - legs.x[0]));
    }
    // Over the walls where these are known, which is what the base is made for.
    let wall = s.unit().particulars.wall.map_or(zero(), |wall| wall.q);
    let (near, far, side) = (zero() - wall, shape.length() + wall, shape.width() + wall);
    let low = s.view.across(scene, (near, zero()), (far, zero()), low, &s.write(far - near));
    left = s.view.up(scene, (zero(), near), (zero(), side), left, &s.write(side - near));
    if let Some(legs) = support::legs(s) {
        s.view.up(scene, (legs.x[0], legs.y[0]), (legs.x[0], legs.y[1]), left, &s.write(legs.y[1] - legs.y[0]));
    }
    s.view.title(scene, pt(middle.x, low + 6.0));
}

/// The outline of the vessel from above with its walls, around the rectangle that it fills.
fn outside(s: &Section, area: &Rect) -> Vec<Point> {
    let shape = &s.unit().shape;
    let heights = [0.02, 0.5, 0.98].map(|share| shape.height() * share);
    let share = |x: f64| {
        let all = heights.iter().map(|z| shape.width_at(shape.length() * x, *z).si() / shape.width().si());
        all.fold(0.0, math::max)
    };
    // A box is as wide at its very end as elsewhere.
    if share(0.001) > 0.99 {
        return area.corners().to_vec();
    }
    let (middle, count) = (area.centre(), 64_u8);
    // Closer points where the outline turns.
    let along = (0..=count).map(|k| {
        let turn = core::f64::consts::PI * f64::from(k) / f64::from(count);
        0.5 - 0.5 * math::cos(turn)
    });
    let upper: Vec<Point> =
        along.map(|x| pt(area.x0 + x * area.width(), middle.y - 0.5 * area.height() * share(x))).collect();
    let lower: Vec<Point> = upper.iter().rev().map(|p| pt(p.x, 2.0 * middle.y - p.y)).collect();
    [upper, lower].concat()
}
