//! The way of the water across the site, from the surfaces to the outfall, with ground, inverts and groundwater.

use super::{Made, block};
use crate::profile::{Paper, plain};
use crate::render::sheet::{Sheet, SheetSize};
use crate::section::place::Section;

/// The sheet.
pub fn sheet(s: &Section, size: SheetSize) -> Option<Made> {
    let mut sheet = Sheet::open(size, &block(s, "Installation profile", None), "");
    let area = sheet.drawing.grown(-1.0);
    let profile = plain(s.settled, Paper { width: area.width(), height: area.height() });
    // Paper that a profile does not keep to is none that a sheet could hold.
    if profile.scene.width > area.width() + 1e-6 || profile.scene.height > area.height() + 1e-6 {
        return None;
    }
    sheet.scene.description.clone_from(&profile.scene.description);
    sheet.scene.take(&profile.scene, area.x0, area.y0);
    Some(Made { name: "installation-profile", kind: "Installation profile", scale: None, sheet })
}
