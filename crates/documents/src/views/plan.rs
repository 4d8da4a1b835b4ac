//! The unit from above, cut at the water at rest.

use super::walls;
use crate::instruments;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::lettering::{Anchor, HEADING, Text};
use crate::render::mark::Axis;
use crate::render::pen::{Layer, Pen};
use crate::render::scale::Spot;
use crate::render::scene::{Scene, TEXT};
use crate::section::dimensions::{written, zones};
use crate::section::names::places;
use crate::section::place::{STUB, Section, zero};
use crate::section::{every, manways};
use stillrise_design::stages::plate_pack::Dimensions;
use stillrise_design::stages::stage::Line;
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_units::{Length, Typed, math};

/// Thickness of plates on paper, mm; nominal.
const SHEET: f64 = 0.7;
/// How far the chain of zones stands under the plan on paper, mm.
const DOWN: f64 = 9.5;

/// Draws it, with the line of the cross section at a station.
pub fn draw(s: &Section, scene: &mut Scene, station: Length) {
    bare(s, scene, station);
    let (wide, left) = (half(s), s.at(zero(), middle(s)));
    let lowest = dimensions(s, scene);
    names(s, scene);
    s.view.title(scene, pt(s.middle(), math::max(lowest + 6.0, left.y + wide + s.wall() + DOWN + 18.0)));
}

/// Draws it with its widths alone: lengths and names stand in the long section.
pub fn overall(s: &Section, scene: &mut Scene, station: Length) {
    bare(s, scene, station);
    widths(s, scene);
    s.view.title(scene, pt(s.middle(), s.at(zero(), zero()).y + s.wall() + 13.5));
}

/// What is seen, with the line of the cross section.
fn bare(s: &Section, scene: &mut Scene, station: Length) {
    outline(s, scene);
    channels(s, scene);
    hopper(s, scene);
    for part in s.drawn() {
        scene.part(part.id, part.name, |scene| part.lines.iter().for_each(|line| one(s, scene, line)));
    }
    nozzles(s, scene);
    for x in manways(s) {
        let half = s.view.scale.mm(s.unit().access.as_ref().map_or(zero(), |access| access.opening.q)) * 0.5;
        scene.part("manway", "Manways", |scene| {
            scene.on(Layer::Vessel).circle(s.at(x, middle(s)), half, Some(Pen::Phantom), Fill::None);
        });
    }
    let (left, right) = (s.at(zero(), middle(s)), s.at(s.unit().shape.length(), middle(s)));
    scene.on(Layer::Centre).line(
        left.by(-s.wall() - STUB - 3.0, 0.0),
        right.by(s.wall() + STUB + 3.0, 0.0),
        Pen::Centre,
    );
    cutting(s, scene, station);
}

/// The line on which the unit is symmetrical.
fn middle(s: &Section) -> Length {
    s.broad() * 0.5
}

/// Half of the largest width on paper, mm.
fn half(s: &Section) -> f64 {
    0.5 * s.view.scale.mm(s.broad())
}

/// Clear width at a station and a level.
fn width(s: &Section, x: Length, z: Length) -> Length {
    s.broad_at(x, z)
}

/// The level at which the plan is cut: the water at rest, or half the height where the vessel is wider there.
fn level(s: &Section) -> Length {
    if is_widest_at_the_water(s) { s.unit().outlet.crest.q } else { s.unit().shape.height() * 0.5 }
}

/// Whether the vessel is as wide at the water as anywhere.
pub fn is_widest_at_the_water(s: &Section) -> bool {
    let shape = &s.unit().shape;
    (shape.width_at(shape.length() * 0.5, s.unit().outlet.crest.q) - shape.width()).si().abs() < 1e-6
}

/// The vessel as it is cut.
fn outline(s: &Section, scene: &mut Scene) {
    let (shape, cut) = (&s.unit().shape, level(s));
    let side = walls::side(zero(), shape.length(), |x| width(s, x, cut));
    let far = side.iter().map(|(x, own)| s.at(*x, middle(s) + *own));
    let near = side.iter().rev().map(|(x, own)| s.at(*x, middle(s) - *own));
    let ring = walls::ring(far.chain(near));
    walls::draw(s, scene, &ring, false);
}

/// Walls between parallel channels.
fn channels(s: &Section, scene: &mut Scene) {
    // Inlet and outlet are one each: the chambers at both ends are common to all channels.
    let (ahead, behind) = s.oil_zone();
    for (near, far) in walls::between_channels(s) {
        let (a, b) = (s.at(ahead, near), s.at(behind, far));
        scene.part("channels", "Walls between the channels", |scene| {
            walls::between(s, scene, &Rect { x0: a.x, y0: b.y, x1: b.x, y1: a.y });
        });
    }
}

/// The hopper under the floor.
fn hopper(s: &Section, scene: &mut Scene) {
    let (Some((a, b)), Some(own)) = (s.hopper(), &s.unit().hopper) else { return };
    let (centre, bottom) = ((a + b) * 0.5, s.unit().shape.bottom());
    let box_of = |long: Length, wide: Length| {
        let (low, high) =
            (s.at(centre - long * 0.5, middle(s) - wide * 0.5), s.at(centre + long * 0.5, middle(s) + wide * 0.5));
        Rect { x0: low.x, y0: high.y, x1: high.x, y1: low.y }
    };
    let upper = box_of(own.length.q, s.unit().shape.width());
    let lower = box_of(b - a, width(s, centre, bottom));
    scene.part("hopper", "Sludge hopper", |scene| {
        scene.on(Layer::Vessel).rect(&upper, Some(Pen::Hidden), Fill::None);
        scene.rect(&lower, Some(Pen::Hidden), Fill::None);
        for (from, to) in [
            (pt(upper.x0, upper.y0), pt(lower.x0, lower.y0)),
            (pt(upper.x1, upper.y0), pt(lower.x1, lower.y0)),
            (pt(upper.x0, upper.y1), pt(lower.x0, lower.y1)),
            (pt(upper.x1, upper.y1), pt(lower.x1, lower.y1)),
        ] {
            scene.line(from, to, Pen::Hidden);
        }
    });
}

/// A rectangle across the unit between two stations, as wide as a width.
fn across(s: &Section, (from, to): (Length, Length), wide: Length) -> Rect {
    let (low, high) = (s.at(from, middle(s) - wide * 0.5), s.at(to, middle(s) + wide * 0.5));
    Rect { x0: low.x, y0: high.y, x1: high.x, y1: low.y }
}

/// One line of a part, from above.
fn one(s: &Section, scene: &mut Scene, line: &Line) {
    let cut = level(s);
    let pipe = |scene: &mut Scene, (near, far): (Length, Length), bore: Length| {
        let run = across(s, (near, far), bore);
        scene.on(Layer::Piping).rect(&run, None, Fill::Paper);
        scene.line(pt(run.x0, run.y0), pt(run.x1, run.y0), Pen::Medium);
        scene.line(pt(run.x0, run.y1), pt(run.x1, run.y1), Pen::Medium);
    };
    let leg = |scene: &mut Scene, (near, far): (Length, Length), bore: Length| {
        let at = s.at((near + far) * 0.5, middle(s));
        scene.on(Layer::Piping).circle(at, 0.5 * s.view.scale.mm(bore), Some(Pen::Outline), Fill::Paper);
    };
    match line {
        Line::Plate { at, low, high } => {
            let level = if *high < cut {
                *high
            } else if *low > cut {
                *low
            } else {
                cut
            };
            let area = across(s, (*at, *at), width(s, *at, level));
            let below = *high < cut && (cut - *high).si() > 1e-6;
            if below {
                scene.on(Layer::Internals).line(pt(area.x0, area.y0), pt(area.x0, area.y1), Pen::Outline);
            } else {
                let strip = Rect { x0: area.x0 - 0.5 * SHEET, x1: area.x0 + 0.5 * SHEET, ..area };
                scene.on(Layer::Internals).rect(&strip, None, Fill::Ink);
            }
        }
        Line::Perforated { at, .. } => {
            let area = across(s, (*at, *at), width(s, *at, cut));
            scene.on(Layer::Internals);
            let mut y = area.y1;
            while y > area.y0 + 1e-9 {
                let next = math::max(y - 2.0, area.y0);
                scene.rect(
                    &Rect { x0: area.x0 - 0.5 * SHEET, y0: next, x1: area.x0 + 0.5 * SHEET, y1: y },
                    None,
                    Fill::Ink,
                );
                y -= 3.0;
            }
        }
        Line::Inclined((from, z), (to, _)) => {
            let area = across(s, (*from, *to), width(s, *to, *z));
            scene.on(Layer::Internals).rect(&area, Some(Pen::Hidden), Fill::None);
        }
        Line::Bed { between, low, high } => {
            let area = across(s, *between, narrower(s, between.0, *low, *high));
            scene.on(Layer::Internals).rect(&area, Some(Pen::Medium), Fill::Over(Hatch::Mesh));
        }
        Line::Plates { between, laid, top, modules } => pack(s, scene, (laid, *top), *between, *modules),
        Line::TurnedDown(p) => {
            pipe(scene, (zero(), p.leg.1), p.bore);
            leg(scene, p.leg, p.bore);
        }
        Line::Dipping(p) => {
            pipe(scene, (p.leg.0, s.unit().shape.length()), p.bore);
            leg(scene, p.leg, p.bore);
        }
        Line::Pump(at) => {
            let at = s.at(*at, middle(s));
            scene.on(Layer::Piping).circle(at, 1.9, Some(Pen::Medium), Fill::Paper);
            scene.circle(at, 0.7, Some(Pen::Thin), Fill::None);
        }
        Line::Level(..) => {}
    }
}

/// The smaller of the widths at two levels.
pub fn narrower(s: &Section, x: Length, low: Length, high: Length) -> Length {
    let (a, b) = (width(s, x, low), width(s, x, high));
    if a < b { a } else { b }
}

/// The pack, module by module along the flow, cut square to its height.
fn pack(s: &Section, scene: &mut Scene, (laid, top): (&Dimensions, Length), between: (Length, Length), modules: u32) {
    let whole = across(s, between, narrower(s, between.0, laid.bottom.q, top));
    let one = whole.width() / f64::from(modules);
    // A level cut meets plates that stand at an angle farther apart than they are.
    let pitch = s.view.scale.mm(laid.gap.q + laid.plate.q) / math::max(math::sin(laid.angle.q.si()), 0.1);
    let angle = if laid.run.q == PlateRun::CrossFlow { 0.0 } else { 90.0 };
    let hatch = Hatch::Lines { angle, spacing: pitch * f64::from(every(pitch)) };
    scene.on(Layer::Internals);
    for k in 0..modules {
        let x0 = whole.x0 + one * f64::from(k) + if k > 0 { 0.5 } else { 0.0 };
        let x1 = whole.x0 + one * f64::from(k + 1) - if k + 1 < modules { 0.5 } else { 0.0 };
        scene.rect(&Rect { x0, x1, ..whole }, Some(Pen::Medium), Fill::Over(hatch));
    }
}

/// Inlet, outlet, draw-off and drain.
fn nozzles(s: &Section, scene: &mut Scene) {
    let (inlet, outlet) = (&s.unit().inlet, &s.unit().outlet);
    for (id, name, invert, bore, side) in [
        ("inlet", "Inlet nozzle", inlet.invert.q, inlet.bore.q, -1.0),
        ("outlet", "Outlet nozzle", outlet.invert.q, outlet.bore.q, 1.0),
    ] {
        let radius = 0.5 * s.view.scale.mm(bore);
        let tip = if side < 0.0 { zero() } else { s.unit().shape.length() };
        let (at, root) = (s.at(tip, middle(s)), s.at(s.end_at(invert + bore * 0.5, side > 0.0), middle(s)));
        scene.part(id, name, |scene| {
            let far = at.x + side * (s.wall() + STUB);
            let (x0, x1) = if side < 0.0 { (far, root.x) } else { (root.x, far) };
            let stub = Rect { x0, x1, y0: at.y - radius, y1: at.y + radius };
            scene.on(Layer::Piping).rect(&stub, None, Fill::Paper);
            scene.line(pt(x0, stub.y0), pt(x1, stub.y0), Pen::Outline);
            scene.line(pt(x0, stub.y1), pt(x1, stub.y1), Pen::Outline);
            let flange =
                Rect::new(if side < 0.0 { far } else { far - 1.1 }, at.y - radius - 1.6, 1.1, 2.0 * radius + 3.2);
            scene.rect(&flange, Some(Pen::Medium), Fill::Paper);
            let (tail, tip) = (at.x + side * (s.wall() + STUB - 2.0), at.x + side * (s.wall() - 0.5));
            let (tail, tip) = if side < 0.0 { (tail, tip) } else { (tip, tail) };
            scene.arrow(pt(tail, at.y + radius + 2.6), pt(tip, at.y + radius + 2.6), Pen::Medium);
        });
    }
    draws(s, scene);
    if let Some((a, b)) = s.hopper() {
        let (pen, title) =
            if s.is_sunk() { (Pen::Medium, "Sludge suction pipe") } else { (Pen::Hidden, "Sludge drain nozzle") };
        scene.part("drain", title, |scene| {
            scene.on(Layer::Piping).circle(s.at((a + b) * 0.5, middle(s)), 1.2, Some(pen), Fill::None);
        });
    }
    for (x, y, _) in instruments::places(s) {
        scene.part("float", "Level switches", |scene| {
            scene.on(Layer::Internals).circle(s.at(x, y), 1.5, Some(Pen::Medium), Fill::Paper);
        });
    }
}

/// Where oil is drawn off: through a side wall, and from each channel; from one that lies between others upward.
fn draws(s: &Section, scene: &mut Scene) {
    let station = s.oil_end().0 + (s.oil_end().1 - s.oil_end().0) * 0.66;
    let x = s.at(station, zero()).x;
    let half = width(s, station, s.unit().retention.oil_draw.q) * 0.5;
    let channels = s.channels();
    let mut through = |y: f64, out: f64| {
        scene.part("oil-draw", "Oil draw-off nozzle", |scene| {
            let end = y + 4.0 * out;
            let (y0, y1) = if out < 0.0 { (end, y) } else { (y, end) };
            scene.on(Layer::Piping).rect(&Rect { x0: x - 1.2, y0, x1: x + 1.2, y1 }, None, Fill::Paper);
            for side in [-1.2, 1.2] {
                scene.line(pt(x + side, y), pt(x + side, end), Pen::Outline);
            }
            let flange = if out < 0.0 { end - 1.1 } else { end };
            scene.rect(&Rect::new(x - 2.8, flange, 5.6, 1.1), Some(Pen::Medium), Fill::Paper);
        });
    };
    through(s.at(station, middle(s) + half).y - s.wall(), -1.0);
    if channels.len() > 1 {
        through(s.at(station, middle(s) - half).y + s.wall(), 1.0);
    }
    for (near, far) in channels.iter().skip(1).take(channels.len().saturating_sub(2)) {
        scene.part("oil-draw", "Oil draw-off pipe", |scene| {
            let at = s.at(station, *near + (*far - *near) * 0.8);
            scene.on(Layer::Piping).circle(at, 1.2, Some(Pen::Outline), Fill::Paper);
        });
    }
}

/// Marks where the cross section is taken, and which way it looks.
fn cutting(s: &Section, scene: &mut Scene, station: Length) {
    let at = s.at(station, middle(s));
    let reach = half(s) + s.wall();
    scene.on(Layer::Centre).line(at.by(0.0, -reach - 4.0), at.by(0.0, reach + 4.0), Pen::Centre);
    for side in [-1.0, 1.0] {
        let tip = at.by(0.0, side * (reach + 4.0));
        scene.on(Layer::Note).line(tip.by(0.0, -side * 2.5), tip, Pen::Frame);
        scene.arrow(tip, tip.by(6.0, 0.0), Pen::Medium);
        let letter = Text::new(tip.by(-2.6, 1.2), "A").sized(HEADING).bold().anchored(Anchor::Middle);
        scene.text(letter);
    }
}

/// Zones and length below, widths at the left; answers the y of the lowest line.
fn dimensions(s: &Section, scene: &mut Scene) -> f64 {
    let shape = &s.unit().shape;
    let base = s.at(zero(), zero()).y + s.wall();
    let stations: Vec<Spot> = zones(s).into_iter().map(|(x, _)| (x, zero())).collect();
    let line = s.view.dimensions(scene, Axis::Across, &stations, base + DOWN, |l| written(s, l));
    // A single compartment is the whole length already.
    if stations.len() > 2 {
        s.view.across(scene, (zero(), zero()), (shape.length(), zero()), line, &s.write(shape.length()));
    }
    widths(s, scene);
    line
}

/// The width, and those of parallel channels.
fn widths(s: &Section, scene: &mut Scene) {
    let left = s.at(zero(), zero()).x - s.wall() - STUB;
    let mut rows: Vec<Spot> = vec![(zero(), zero())];
    rows.extend(walls::between_channels(s).into_iter().flat_map(|(near, far)| [(zero(), near), (zero(), far)]));
    rows.push((zero(), s.broad()));
    rows.dedup();
    let next = s.view.dimensions(scene, Axis::Up, &rows, left - 3.5, |l| s.write(l));
    if rows.len() > 2 {
        s.view.up(scene, rows[0], rows[rows.len() - 1], next, &s.write(s.broad()));
    }
}

/// Names of the compartments, where they find room: beside the centre line if they can, over no part of the unit if they can.
fn names(s: &Section, scene: &mut Scene) {
    scene.on(Layer::Note);
    for zone in &s.unit().compartments {
        let name = zone.place.word().to_uppercase();
        let whole = across(s, (zone.from, zone.to), s.broad()).grown(-1.0);
        let axis = whole.centre().y;
        let halves = [Rect { y1: axis - 1.0, ..whole }, Rect { y0: axis + 1.0, ..whole }];
        let taken = scene.text_boxes();
        let lines = |layers: &dyn Fn(Layer) -> bool| -> Vec<(Point, Point)> {
            scene.items().iter().filter(|p| layers(p.layer)).flat_map(|p| p.item.lines()).collect()
        };
        let (all, dimensions) = (lines(&|_| true), lines(&|layer| layer == Layer::Dimension));
        let free = |text: &Text, room: &Rect, lines: &[(Point, Point)]| {
            let area = text.area();
            room.holds(&area)
                && taken.iter().all(|(_, other)| other.overlap(&area.grown(0.3)) <= 0.0)
                && !lines.iter().any(|(a, b)| area.crossed_by(*a, *b))
        };
        let clear =
            halves.iter().find_map(|room| places(&name, room, TEXT).into_iter().find(|text| free(text, room, &all)));
        let over = || places(&name, &whole, TEXT).into_iter().find(|text| free(text, &whole, &dimensions));
        if let Some(text) = clear.or_else(over) {
            scene.text(text.cleared());
        }
    }
}
