//! The place of the unit where none was taken: an empty frame with the reason.

use super::plan::Plan;
use super::stations::What;
use crate::render::geometry::{Rect, pt};
use crate::render::item::Fill;
use crate::render::lettering::{Anchor, CAPTION, Text};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::render::schedule::letters;
use crate::render::text::lines;
use stillrise_units::math;

/// Draws it.
pub fn draw(plan: &Plan, scene: &mut Scene) {
    let Some(stop) = plan.stops.iter().find(|stop| stop.what == What::Unit) else { return };
    let (inlet, outlet) = plan.stubs();
    let l = &plan.levels;
    let top = math::max(math::min(l.inlet, l.outlet) - l.bore - 8.0, plan.drawing.y0 + 2.0);
    let low = math::min(math::max(l.inlet, l.outlet) + 30.0, plan.drawing.y1 - 2.0);
    let frame = Rect { x0: inlet, x1: outlet, y0: top, y1: low };
    scene.part(&stop.station.id, &stop.station.title, |scene| {
        scene.on(Layer::Vessel).rect(&frame, Some(Pen::Phantom), Fill::Paper);
        let says = stop.station.says.iter().map(String::as_str).collect::<Vec<_>>().join(": ");
        let room = frame.width() - 4.0;
        let most = ((frame.height() - 6.0) / (1.5 * CAPTION)).max(1.0);
        let mut y = frame.y0 + 5.0;
        let folded = lines(&crate::summary::capital(&says), letters(room, CAPTION));
        let count = folded.len();
        for (k, line) in folded.into_iter().enumerate() {
            let last = f64::from(u16::try_from(k + 2).unwrap_or(u16::MAX)) > most;
            let text = if last && k + 1 < count { format!("{line}…") } else { line };
            scene.on(Layer::Note).text(Text::new(pt(frame.x0 + 2.0, y), &text).sized(CAPTION).anchored(Anchor::Start));
            y += 1.5 * CAPTION;
            if last {
                break;
            }
        }
    });
}
