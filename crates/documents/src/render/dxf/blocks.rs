//! Blocks: the model, the paper, and a picture of each dimension, which shows it wherever dimensions are not drawn anew.

use super::Paper;
use super::entities;
use super::ink::{Ink, Placed};
use super::tables::{Plan, picture};
use super::tags::{Handle, Handles, Tags};

/// Writes them.
pub fn write(out: &mut Tags, plan: &Plan, paper: &Paper, ink: &[Placed], next: &mut Handles) {
    block(out, "*Model_Space", [plan.model[0], plan.model[1], plan.model[2]], 0, |_| {});
    block(out, "*Paper_Space", [plan.paper[0], plan.paper[1], plan.paper[2]], 0, |_| {});
    let dimensions = ink.iter().filter_map(|placed| match &placed.ink {
        Ink::Dimension(_, parts) => Some(parts),
        _ => None,
    });
    for (k, (parts, own)) in dimensions.zip(&plan.pictures).enumerate() {
        block(out, &picture(k), *own, 1, |out| {
            for part in parts {
                entities::entity(out, part, paper, own[0], next);
            }
        });
    }
}

fn block(out: &mut Tags, name: &str, [record, own, end]: [Handle; 3], flags: u8, fill: impl FnOnce(&mut Tags)) {
    out.object("BLOCK", own, record).class("AcDbEntity");
    if name == "*Paper_Space" {
        out.put(67, 1);
    }
    out.put(8, "0").class("AcDbBlockBegin").put(2, name).put(70, flags).point(10, (0.0, 0.0)).put(3, name).put(1, "");
    fill(out);
    out.object("ENDBLK", end, record).class("AcDbEntity");
    if name == "*Paper_Space" {
        out.put(67, 1);
    }
    out.put(8, "0").class("AcDbBlockEnd");
}
