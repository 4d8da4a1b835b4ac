//! The way of the water across the site, from the surfaces to the outfall, with ground, inverts and groundwater.

use super::{Made, block};
use crate::profile::{Paper, plain};
use crate::render::geometry::pt;
use crate::render::lettering::{CAPTION, TEXT, Text};
use crate::render::pen::Layer;
use crate::render::scale::View;
use crate::render::sheet::{Sheet, SheetSize};
use crate::render::title_block::TitleBlock;
use crate::section::place::Section;

/// The sheet.
pub fn sheet(s: &Section, size: SheetSize) -> Option<Made> {
    let trial = Sheet::open(size, &TitleBlock::default(), "");
    let area = trial.drawing.grown(-1.0);
    let profile = plain(s.settled, Paper { width: area.width(), height: area.height() });
    // Paper that a profile does not keep to is none that a sheet could hold.
    if profile.scene.width > area.width() + 1e-6 || profile.scene.height > area.height() + 1e-6 {
        return None;
    }
    let scale = profile.scale;
    let mut sheet = Sheet::open(size, &block(s, "Installation profile", scale), "");
    sheet.scene.description.clone_from(&profile.scene.description);
    sheet.scene.take(&profile.scene, area.x0, area.y0);
    if let Some(scale) = scale {
        let (bar, length) = sheet.bar();
        let view = View { name: String::new(), scale, origin: bar };
        view.scale_bar(&mut sheet.scene, bar, length, s.system);
        let at = pt(bar.x, sheet.strip.y0 + 2.0 + TEXT);
        sheet.scene.on(Layer::Note).text(Text::new(at, &format!("SCALE {}", scale.text())));
        let at = pt(bar.x, sheet.strip.y0 + 4.0 + TEXT + CAPTION);
        sheet.scene.text(Text::new(at, "lengths of pipes not to scale").sized(CAPTION));
    }
    Some(Made { name: "installation-profile", kind: "Installation profile", scale, sheet })
}
