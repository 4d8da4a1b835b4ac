//! The general arrangement: the unit from above, along its middle, across it and from its end, to one scale, with its overall
//! dimensions, nozzles and levels.

use super::layout::{self, Around, Rooms};
use super::tables::{self, Titled};
use super::{Made, block, levels, lugs, support, vents};
use crate::Edition;
use crate::render::geometry::{Rect, pt};
use crate::render::lettering::{CAPTION, HEADING, text_width};
use crate::render::mark::{Axis, Balloon};
use crate::render::pen::Layer;
use crate::render::scale::{Spot, View};
use crate::render::scene::{Scene, TEXT};
use crate::render::schedule::{Column, Schedule};
use crate::render::sheet::{Sheet, SheetSize};
use crate::render::title_block::TitleBlock;
use crate::section::place::{STUB, Section, zero};
use crate::section::vessel::{drain, oil_draw, outlet, suction};
use crate::section::{title, view};
use crate::views;
use stillrise_search::Settled;

/// Height of a schedule's heading, mm.
const HEAD: f64 = 7.5;

/// The sheet, and the schedules that it has no room for; `None` where no scale brings the views onto it.
pub fn sheet(settled: &Settled, edition: Edition, size: SheetSize) -> Option<(Made, Vec<Titled>)> {
    let mut s = Section::new(settled, edition)?;
    let schedules = vec![("Nozzles".to_owned(), tables::nozzles(&s)), ("Levels".to_owned(), levels::table(&s))];
    let rooms = Rooms {
        plan: Around(25.0, 9.0, STUB + 8.0, 21.0),
        section: Around(30.0, 16.0, levels::ROOM, 29.0),
        end: Around(8.0, 12.0, 14.0, 18.0),
        cross: Around(25.0, 8.0, 16.0, 28.0),
    };
    let trial = Sheet::open(size, &TitleBlock::default(), "");
    // In small lettering where that leaves room for both beside the views.
    let found = |letters: f64| {
        let mut sizes: Vec<(f64, f64)> = schedules.iter().map(|titled| extent(titled, letters)).collect();
        let widest = sizes.iter().map(|(wide, _)| *wide).fold(0.0, f64::max);
        sizes.iter_mut().for_each(|(wide, _)| *wide = widest);
        Some((layout::find(&s, &trial, &rooms, &sizes)?, sizes, letters))
    };
    let large = found(TEXT)?;
    let whole = |at: &layout::Placed| at.tables.iter().all(Option::is_some);
    let small = if whole(&large.0) { None } else { found(CAPTION).filter(|small| whole(&small.0)) };
    let (at, sizes, letters) = small.unwrap_or(large);
    let mut sheet = Sheet::open(size, &block(&s, "General arrangement", Some(at.scale)), &title::description(&s));
    let scene = &mut sheet.scene;
    let mut carried = Vec::new();
    for ((spot, titled), (wide, high)) in at.tables.iter().zip(schedules).zip(&sizes) {
        match spot {
            Some(spot) => {
                let mut column = Column::new(Rect::new(spot.x, spot.y, *wide, *high + 2.0));
                column.heading(scene, &titled.0);
                column.size = letters;
                column.table(scene, &titled.1);
            }
            None => carried.push(titled),
        }
    }
    let station = views::station(&s);
    let seen = |name: &str, origin| View { name: name.to_owned(), scale: at.scale, origin };
    s.view = seen("Long section", at.section);
    long(&s, scene);
    s.view = seen("Plan", at.plan);
    support::above(&s, scene);
    views::plan(&s, scene, station);
    vents::above(&s, scene);
    lugs::above(&s, scene);
    s.view = seen(views::end_name(&s), at.end);
    support::across(&s, scene);
    views::end(&s, scene);
    lugs::across(&s, scene);
    s.view = seen("Section A-A", at.cross);
    views::cross(&s, scene, station);
    let (bar, length) = sheet.bar();
    s.view.scale_bar(&mut sheet.scene, bar, length, s.system);
    Some((Made { name: "general-arrangement", kind: "General arrangement", scale: Some(at.scale), sheet }, carried))
}

/// The room of a schedule under its heading, mm.
fn extent((heading, table): &Titled, letters: f64) -> (f64, f64) {
    let (wide, high) = Schedule::new(table, 400.0, letters).extent();
    (wide.max(text_width(heading, HEADING)), high + HEAD)
}

/// The long section with its overall dimensions, nozzles and levels.
fn long(s: &Section, scene: &mut Scene) {
    let unit = s.unit();
    let shape = &unit.shape;
    support::along(s, scene);
    view(s, scene);
    lugs::along(s, scene);
    vents::along(s, scene);
    let low = s.at(zero(), zero() - support::depth(s)).y + s.wall();
    let lowest = s.view.across(
        scene,
        (zero(), shape.bottom()),
        (shape.length(), shape.bottom()),
        low + 9.0,
        &s.write(shape.length()),
    );
    let left = s.at(zero(), zero()).x - s.wall();
    let invert = unit.inlet.invert.q;
    s.view.up(scene, (zero(), zero()), (zero(), invert), left - STUB - 4.0, &s.write(invert));
    let mut heights: Vec<Spot> = vec![(zero(), zero()), (zero(), shape.height())];
    if let Some((edge, _)) = s.hopper() {
        heights.insert(0, (edge, shape.bottom()));
    }
    if let Some(base) = support::base(s) {
        heights.insert(0, (zero(), zero() - base));
    }
    s.view.dimensions(scene, Axis::Up, &heights, left - STUB - 12.5, |l| s.write(l));
    levels::draw(s, scene);
    nozzles(s, scene);
    s.view.title(scene, pt(s.middle(), lowest + 1.5));
}

/// A balloon at each nozzle.
fn nozzles(s: &Section, scene: &mut Scene) {
    let unit = s.unit();
    let mut balloon = |tip: crate::render::geometry::Point, number: &str, places: &[(f64, f64)]| {
        let one = Balloon { tip, centre: tip, number: number.to_owned(), heavy: false, dot: true };
        scene.on(Layer::Note).place(one.at(places.iter().map(|(x, y)| tip.by(*x, *y))));
    };
    let rim = s.at(zero(), s.top()).y;
    let inlet = s.at(zero(), unit.inlet.invert.q + unit.inlet.bore.q).by(-s.wall() - 4.0, 0.0);
    balloon(inlet, "N1", &[(-3.0, -8.0), (-8.0, -8.0), (-10.0, -12.0), (-3.0, -14.0), (-12.0, -18.0), (-3.0, -22.0)]);
    let stub = outlet(s);
    let at = pt(stub.x0 + 3.5, s.at(zero(), unit.outlet.invert.q + unit.outlet.bore.q).y);
    balloon(
        at,
        "N2",
        &[(2.0, -9.0), (2.0, -13.0), (0.5, -13.0), (4.0, -18.0), (4.0, -24.0), (4.0, -30.0), (4.0, 12.0), (4.0, 18.0)],
    );
    let draw = oil_draw(s);
    let tip = draw.0.by(0.4, -draw.1);
    let up = |more: f64| rim - 9.0 - more - tip.y;
    balloon(tip, "N3", &[(0.0, up(0.0)), (-7.0, up(0.0)), (7.0, up(0.0)), (0.0, up(6.0))]);
    if let Some(at) = suction(s) {
        let tip = at.by(0.0, -3.0);
        balloon(tip, "N4", &[(0.0, -9.0), (-6.0, -9.0), (6.0, -9.0), (0.0, -15.0), (-8.0, -15.0), (8.0, -15.0)]);
    }
    if let Some(at) = drain(s) {
        let at = at.by(1.2, 0.6);
        balloon(at, "N4", &[(9.0, -1.5), (-11.4, -1.5), (9.0, 0.0), (14.0, -1.5), (14.0, 2.0)]);
    }
}
