//! Dictionaries, and how model and paper are plotted.

use super::Paper;
use super::tables::Plan;
use super::tags::{Handle, Handles, Tags};
use crate::render::scene::Scene;
use stillrise_units::System;

/// Writes them.
pub fn write(out: &mut Tags, plan: &Plan, paper: &Paper, scene: &Scene, next: &mut Handles) {
    let (groups, layouts) = (next.take(), next.take());
    dictionary(out, plan.root, Handle::NONE, &[("ACAD_GROUP", groups), ("ACAD_LAYOUT", layouts)]);
    dictionary(out, groups, plan.root, &[]);
    dictionary(out, layouts, plan.root, &[("Layout1", plan.paper[3]), ("Model", plan.model[3])]);
    layout(out, plan.model, layouts, ("Model", 0), paper, scene);
    layout(out, plan.paper, layouts, ("Layout1", 1), paper, scene);
}

fn dictionary(out: &mut Tags, own: Handle, owner: Handle, entries: &[(&str, Handle)]) {
    out.object("DICTIONARY", own, owner).class("AcDbDictionary").put(281, 1);
    for (name, handle) in entries {
        out.put(3, name).put(350, handle);
    }
}

/// Where a sheet is plotted, at which scale: at the main one it comes out as large as its paper.
fn layout(
    out: &mut Tags,
    [record, _, _, own]: [Handle; 4],
    owner: Handle,
    (name, order): (&str, u8),
    paper: &Paper,
    scene: &Scene,
) {
    let (unit, model) = (u8::from(paper.options.system == System::Si), order == 0);
    out.object("LAYOUT", own, owner).class("AcDbPlotSettings").put(1, "").put(2, "none_device").put(4, "").put(6, "");
    for code in 40..=43 {
        out.real(code, 0.0);
    }
    // Paper sizes are always millimetres here.
    out.real(44, scene.width).real(45, scene.height).real(46, 0.0).real(47, 0.0);
    let far = (paper.length(scene.width), paper.length(scene.height));
    out.real(48, 0.0)
        .real(49, 0.0)
        .real(140, if model { far.0 } else { 0.0 })
        .real(141, if model { far.1 } else { 0.0 });
    out.real(142, 1.0).real(143, if model { paper.options.scale.ratio() } else { 1.0 });
    // Model type (1024), line weights (128), extents plotted, no standard scale.
    out.put(70, if model { 1152 } else { 128 }).put(72, unit).put(73, 0).put(74, 1).put(7, "").put(75, 0);
    out.real(147, 1.0).real(148, 0.0).real(149, 0.0);
    let limits = if model { far } else { (paper.plain(scene.width), paper.plain(scene.height)) };
    out.class("AcDbLayout").put(1, name).put(70, 1).put(71, order).flat(10, (0.0, 0.0)).flat(11, limits);
    out.point(12, (0.0, 0.0)).point(14, (0.0, 0.0)).point(15, limits).real(146, 0.0).point(13, (0.0, 0.0));
    out.point(16, (1.0, 0.0)).point(17, (0.0, 1.0)).put(76, 0).put(330, record);
}
