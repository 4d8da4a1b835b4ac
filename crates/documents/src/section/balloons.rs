//! Numbered balloons: parts in a row above the vessel, nozzles beside their pipes, findings where they stand clear.

use super::findings::Group;
use super::place::{Section, zero};
use super::schedules::items;
use super::vessel::{drain, oil_draw, outlet, suction};
use crate::render::geometry::{Point, Rect, apart, pt};
use crate::render::item::Item;
use crate::render::mark::Balloon;
use crate::render::pen::Layer;
use crate::render::scene::Scene;
use stillrise_checks::Part;
use stillrise_design::stages::Place;
use stillrise_units::{Typed, math};

/// Least distance of balloons in the row, mm.
const APART: f64 = 9.0;
/// Height of the row over the rim, mm.
const ROW: f64 = 10.0;

/// Draws all balloons.
pub fn draw(s: &Section, scene: &mut Scene, findings: &[Group]) {
    let rim = s.at(zero(), s.top()).y;
    let mut row: Vec<(Point, String)> = Vec::new();
    for (k, item) in items(s).iter().enumerate() {
        let number = (k + 1).to_string();
        let at = item.tip;
        if item.in_row {
            row.push((at, number));
        } else {
            let centre = at.by(-5.5, 6.5);
            let places = [(0.0, 0.0), (-6.0, 0.0), (0.0, 4.0), (8.0, 0.0)].map(|(x, y)| centre.by(x, y));
            balloon(scene, at, &number, false, places);
        }
    }
    row.extend(suction(s).map(|at| (at.by(0.0, -3.0), "N4".to_owned())));
    row.push((oil_draw(s).0.by(0.4, -oil_draw(s).1), "N3".to_owned()));
    row.sort_by(|a, b| a.0.x.total_cmp(&b.0.x));
    let mut places: Vec<f64> = row.iter().map(|(at, _)| at.x).collect();
    apart(&mut places, APART);
    for ((at, number), x) in row.into_iter().zip(places) {
        balloon(scene, at, &number, false, [0.0, 7.0, 14.0].map(|up| pt(x, rim - ROW - up)));
    }
    let unit = s.unit();
    let inlet = s.at(zero(), unit.inlet.invert.q + unit.inlet.bore.q).by(-s.wall() - 4.0, 0.0);
    balloon(
        scene,
        inlet,
        "N1",
        false,
        [(-3.0, -8.0), (-8.0, -8.0), (-10.0, -12.0), (-3.0, -14.0), (-12.0, -18.0), (-3.0, -22.0)]
            .map(|(x, y)| inlet.by(x, y)),
    );
    let stub = outlet(s);
    let at = pt(stub.x0 + 3.5, s.at(zero(), unit.outlet.invert.q + unit.outlet.bore.q).y);
    let centres = [(4.0, -9.0), (4.0, -13.0), (0.5, -13.0), (4.0, -18.0), (4.0, -24.0), (4.0, 12.0), (4.0, 18.0)];
    balloon(scene, at, "N2", false, centres.map(|(x, y)| at.by(x, y)));
    if let Some(at) = drain(s) {
        let at = at.by(1.2, 0.6);
        balloon(
            scene,
            at,
            "N4",
            false,
            [(9.0, -1.5), (-11.4, -1.5), (9.0, 0.0), (14.0, -1.5), (14.0, 2.0)].map(|(x, y)| at.by(x, y)),
        );
    }
    for group in findings {
        let Some(at) = concern(s, group.part) else { continue };
        let mut centres = Vec::new();
        for reach in [9.0, 12.0, 15.0, 19.0, 24.0, 30.0] {
            for (x, y) in
                [(0.7, -0.7), (-0.7, -0.7), (0.7, 0.7), (-0.7, 0.7), (1.0, 0.0), (-1.0, 0.0), (0.0, -1.0), (0.0, 1.0)]
            {
                centres.push(at.by(reach * x, reach * y));
            }
        }
        balloon(scene, at, &group.mark, group.is_heavy(), centres);
    }
}

fn balloon(scene: &mut Scene, tip: Point, number: &str, heavy: bool, centres: impl IntoIterator<Item = Point>) {
    let balloon = Balloon { tip, centre: tip, number: number.to_owned(), heavy, dot: true };
    let places: Vec<Item> = balloon.at(centres);
    scene.on(Layer::Note).place(places);
}

/// Where a finding on a part points to; nowhere if it concerns no part of the vessel.
pub fn concern(s: &Section, part: Part) -> Option<Point> {
    let unit = s.unit();
    let (crest, (inlet, well)) = (unit.outlet.crest.q, (&unit.inlet, &unit.outlet));
    let deep = |share: f64| s.at(zero(), crest * share).y;
    let over = |place, share| s.along(s.zone(place).unwrap_or_else(|| s.oil_zone()), share);
    Some(match part {
        Part::Inlet => s.at(zero(), inlet.invert.q + inlet.bore.q * 0.5).by(-3.0, 0.0),
        Part::Chamber => pt(over(Place::GravityZone, 0.35), deep(0.2)),
        Part::Hopper if unit.hopper.is_some() => {
            let length = unit.hopper.as_ref().map_or(zero(), |hopper| hopper.length.q);
            s.at(length * 0.5, unit.shape.bottom() * 0.25)
        }
        Part::Hopper => pt(over(Place::GravityZone, 0.25), s.at(zero(), zero()).y - 0.8),
        Part::Pack => {
            let bottom = unit.pack.as_ref().map_or(crest * 0.5, |pack| pack.laid.bottom.q);
            pt(over(Place::PlatePack, 0.62), s.at(zero(), bottom).y - 4.0)
        }
        Part::OilZone => pt(over(Place::PlatePack, 0.75), deep(0.99)),
        Part::Downcomer => {
            let x = s.dip_pipe().map_or(s.oil_zone().1, |(from, to)| (from + to) * 0.5);
            s.at(x, unit.underflow.edge().q).by(0.0, -3.0)
        }
        Part::Outlet | Part::Effluent => {
            let stub: Rect = outlet(s);
            pt(stub.x0 + math::min(5.5, stub.width()), s.at(zero(), well.invert.q + well.bore.q * 0.5).y)
        }
        Part::Unit => s.at(s.unit().shape.length(), s.unit().shape.height() * 0.32).by(0.5 * s.wall(), 0.0),
        Part::Enquiry | Part::Site => return None,
    })
    .filter(|p| p.x.is_finite() && crest.si().is_finite())
}
