//! Names of the zones: in the water where they find room, otherwise beside the vessel with a leader.

use super::dimensions::PACK;
use super::place::{STUB, Section, zero};
use crate::render::geometry::{Rect, pt};
use crate::render::item::{Item, Shape};
use crate::render::mark::Leader;
use crate::render::pen::Layer;
use crate::render::scene::{Anchor, Scene, TEXT, Text, text_width};
use stillrise_design::stages::Place;
use stillrise_design::train::unit::Compartment;
use stillrise_units::math;

/// Names all zones but those whose parts have numbers.
pub fn draw(s: &Section, scene: &mut Scene) {
    scene.on(Layer::Note);
    let mut beside = Vec::new();
    for zone in s.unit().compartments.iter().filter(|c| !matches!(c.place, Place::PlatePack | Place::Mesh)) {
        let name = zone.place.word().to_uppercase();
        let room = room(s, zone);
        // Only a place that is wholly free: a name that stands on a dimension helps nobody.
        let taken = scene.text_boxes();
        let free = |text: &Text| {
            let area = text.area();
            room.holds(&area) && taken.iter().all(|(_, rect)| rect.overlap(&area.grown(0.3)) <= 0.0)
        };
        let inside: Vec<Item> = places(&name, &room, TEXT)
            .into_iter()
            .filter(free)
            .map(|t| Item::Shape(Shape::Text(t.cleared())))
            .collect();
        if inside.is_empty() {
            beside.push((zone, name));
        } else {
            scene.place(inside);
        }
    }
    // A leader finds its way past names that stand.
    for (zone, name) in beside {
        outside(s, scene, zone, &name);
    }
}

/// The part of a zone, on paper, that is under water and clear of dimensions.
pub fn room(s: &Section, zone: &Compartment) -> Rect {
    let (from, to) = (zone.from, zone.to);
    let top = s.layer().map_or(s.unit().outlet.crest.q, |alarm| alarm.interface.q);
    let weir = s.unit().outlet.weir_at(s.unit()).filter(|_| zone.place == Place::ClearWell);
    let to = weir.unwrap_or(to);
    let (a, b) = (s.at(from, top), s.at(to, zero()));
    let right = match zone.place {
        Place::GravityZone if s.unit().pack.is_some() => PACK + TEXT + 2.0,
        _ => 0.3,
    };
    Rect { x0: a.x + 0.8, y0: a.y + 1.5, x1: b.x - right - 0.5, y1: b.y - 1.0 }
}

/// Places in a zone: across if that fits, otherwise reading upward.
pub fn places(name: &str, room: &Rect, size: f64) -> Vec<Text> {
    let mut places = Vec::new();
    if text_width(name, size) + 2.0 < room.width() {
        for share in [0.45, 0.6, 0.3, 0.75] {
            let at = pt(room.centre().x, room.y0 + share * room.height());
            places.push(Text::new(at, name).sized(size).anchored(Anchor::Middle));
        }
    }
    // A line of lettering is a third deeper than its capitals.
    let spare = math::max(room.width() - 1.35 * size, 0.0);
    for x in [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.0, 1.0] {
        for y in [0.4, 0.5, 0.6, 0.3, 0.7] {
            let at = pt(room.x0 + x * spare + size, room.y0 + y * room.height());
            places.push(Text::new(at, name).sized(size).anchored(Anchor::Middle).up());
        }
    }
    places
}

/// To the right of the vessel, between the level marks; zones at the inlet end go without.
fn outside(s: &Section, scene: &mut Scene, zone: &Compartment, name: &str) {
    let (share, deep) = match zone.place {
        Place::ClearWell => (0.35, 0.62),
        Place::Retention => (0.5, 0.5),
        _ => return,
    };
    let x = s.at(s.unit().shape.length(), zero()).x + s.wall() + STUB + 2.0;
    let (crest, floor) = (s.at(zero(), s.unit().outlet.crest.q).y, s.at(zero(), zero()).y);
    let along = s.along((zone.from, zone.to), share);
    // From a third of the depth down to a little below the floor; nothing where all is taken.
    let start = crest + 0.3 * (floor - crest);
    let most = floor + 12.0 - start;
    let knees = (0..40_u8).map(|k| 2.0 * f64::from(k)).filter(|down| *down <= most).map(|down| pt(x, start + down));
    let leaders = knees.flat_map(|knee| {
        let tips = [deep, 0.8, 0.4, 0.9, 0.25].map(|deep| pt(along, crest + deep * (floor - crest)));
        tips.map(|tip| Item::Leader(Leader { tip, knee, text: name.to_owned(), dot: true }))
    });
    let taken = scene.text_boxes();
    let free = |item: &Item| {
        item.text_boxes().iter().all(|(_, area)| taken.iter().all(|(_, rect)| rect.overlap(&area.grown(0.4)) <= 0.0))
    };
    scene.place(leaders.filter(free).collect::<Vec<_>>());
}
