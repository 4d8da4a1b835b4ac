//! The settings of the file.

use super::Paper;
use super::tables::{TEXT_STYLE, dimension_style};
use super::tags::{Handles, Tags};
use crate::render::geometry::pt;
use crate::render::mark::Ends;
use crate::render::scene::Scene;
use stillrise_units::System;

/// Writes them. What tells of a clock is left out.
pub fn write(out: &mut Tags, paper: &Paper, scene: &Scene, next: &Handles) {
    let (ratio, system) = (paper.options.scale.ratio(), paper.options.system);
    let (units, metric, form, digits) = match system {
        // Millimetres in whole numbers; inches as feet, inches and eighths.
        System::Si => (4, 1, 2, 0),
        System::Us => (1, 0, 4, 3),
    };
    let far = paper.at(pt(scene.width, 0.0));
    out.put(9, "$ACADVER").put(1, "AC1024");
    out.put(9, "$DWGCODEPAGE").put(3, "ANSI_1252");
    out.put(9, "$HANDSEED").put(5, next.seed());
    out.put(9, "$INSBASE").point(10, (0.0, 0.0));
    out.put(9, "$EXTMIN").point(10, (0.0, 0.0));
    out.put(9, "$EXTMAX").point(10, far);
    out.put(9, "$LIMMIN").flat(10, (0.0, 0.0));
    out.put(9, "$LIMMAX").flat(10, far);
    out.put(9, "$LTSCALE").real(40, ratio);
    out.put(9, "$TEXTSTYLE").put(7, TEXT_STYLE);
    out.put(9, "$CLAYER").put(8, "0");
    out.put(9, "$DIMSTYLE").put(2, dimension_style(ratio, Ends::Arrows));
    out.put(9, "$LUNITS").put(70, form);
    out.put(9, "$LUPREC").put(70, digits);
    out.put(9, "$MEASUREMENT").put(70, metric);
    out.put(9, "$INSUNITS").put(70, units);
    out.put(9, "$LWDISPLAY").put(290, 1);
    out.put(9, "$PSTYLEMODE").put(290, 1);
}
