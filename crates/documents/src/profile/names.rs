//! Names of the unit's zones, where the water leaves them room.

use super::clear::Clear;
use super::plan::Plan;
use crate::render::lettering::CAPTION;
use crate::render::pen::Layer;
use crate::render::scene::Scene;
use crate::section::names::{places, room};
use crate::section::place::Section;

/// Names zones in the water, across or reading upward; a zone without room goes without.
pub fn draw(plan: &Plan, s: &Section, scene: &mut Scene) {
    for zone in &s.unit().compartments {
        let name = zone.place.word().to_uppercase();
        let room = room(s, zone);
        let clear = Clear::of(scene);
        let sizes = if plan.size > CAPTION { [plan.size, CAPTION] } else { [CAPTION, CAPTION] };
        let mut all = sizes.into_iter().flat_map(|size| places(&name, &room, size));
        let free = all.find(|text| room.holds(&text.area()) && clear.is_free(&text.area()));
        if let Some(text) = free {
            scene.on(Layer::Note).text(text.cleared());
        }
    }
}
