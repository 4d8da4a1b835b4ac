//! Line types, layers, styles of text and of dimensions, and the records of blocks.

use super::Paper;
use super::ink::{Ink, Placed};
use super::layers::{Shown, layer_name};
use super::tags::{Handle, Handles, Tags};
use crate::render::dimension::STEP;
use crate::render::lettering::TEXT;
use crate::render::mark::{ARROW, Dimension, Ends};
use crate::render::pen::{Layer, Pen};
use std::collections::{BTreeMap, BTreeSet};
use stillrise_units::System;
use stillrise_units::catalog::MM;

/// Style of ordinary lettering.
pub const TEXT_STYLE: &str = "LETTERING";
/// Style of heavy lettering.
pub const BOLD_STYLE: &str = "LETTERING-BOLD";

/// A style of dimensions by the scale of what it measures, and what stands at its ends.
pub fn dimension_style(ratio: f64, ends: Ends) -> String {
    let scale = stillrise_units::print::digits(ratio, 9).replace('.', "_");
    match ends {
        Ends::Arrows => format!("SCALE-1-{scale}"),
        Ends::Ticks => format!("SCALE-1-{scale}-TICKS"),
    }
}

/// Names and handles that several sections speak of.
pub struct Plan {
    /// The root of all objects.
    pub root: Handle,
    /// Record, block and end of the model, and its layout.
    pub model: [Handle; 4],
    /// The same of the paper.
    pub paper: [Handle; 4],
    /// Record, block and end of each dimension's picture.
    pub pictures: Vec<[Handle; 3]>,
    layers: BTreeSet<(Layer, Shown)>,
    styles: BTreeMap<String, (f64, Ends)>,
    own: Handles,
}

/// How much larger than on paper a dimension is, as a scale says it: a share of 1e-9 of it is rounding.
pub fn ratio(dimension: &Dimension) -> f64 {
    use stillrise_units::Typed;
    let ratio = dimension.length.in_unit(&MM) / dimension.paper_length();
    let near = (ratio * 1e3).round() / 1e3;
    if (near - ratio).abs() <= 1e-9 * ratio { near } else { ratio }
}

impl Plan {
    /// What a drawing needs.
    pub fn new(paper: &Paper, ink: &[Placed], next: &mut Handles) -> Plan {
        let root = next.take();
        let model = [(); 4].map(|()| next.take());
        let other = [(); 4].map(|()| next.take());
        let mut plan = Plan {
            root,
            model,
            paper: other,
            pictures: Vec::new(),
            layers: BTreeSet::new(),
            styles: BTreeMap::new(),
            own: Handles::default(),
        };
        let main = paper.options.scale.ratio();
        plan.styles.insert(dimension_style(main, Ends::Arrows), (main, Ends::Arrows));
        for placed in ink {
            plan.layers.insert((placed.layer, placed.shown));
            if let Ink::Dimension(dimension, parts) = &placed.ink {
                plan.pictures.push([(); 3].map(|()| next.take()));
                plan.layers.extend(parts.iter().map(|part| (part.layer, part.shown)));
                let own = ratio(dimension);
                plan.styles.insert(dimension_style(own, dimension.ends), (own, dimension.ends));
            }
        }
        // Tables and their entries take theirs in one run, so that they can be written in any order.
        plan.own = next.clone();
        let entries = 9 + 1 + (3 + DASHED.len()) + (1 + plan.layers.len()) + 3 + 1 + (1 + plan.styles.len());
        for _ in 0..entries {
            next.take();
        }
        plan
    }

    /// The record that owns a block.
    pub fn records(&self) -> Vec<(String, Handle)> {
        let pictures = self.pictures.iter().enumerate().map(|(k, own)| (picture(k), own[0]));
        [("*Model_Space".to_owned(), self.model[0]), ("*Paper_Space".to_owned(), self.paper[0])]
            .into_iter()
            .chain(pictures)
            .collect()
    }
}

/// The block that shows a dimension, by its place among them.
pub fn picture(k: usize) -> String {
    format!("*D{}", k + 1)
}

/// Pens with dashes.
const DASHED: [Pen; 3] = [Pen::Hidden, Pen::Centre, Pen::Phantom];

/// Name of a pen's line type.
pub fn line_type(pen: Pen) -> String {
    if pen.dashes().is_empty() { "Continuous".to_owned() } else { pen.name().to_uppercase() }
}

/// Width of a pen in hundredths of a millimetre, as such files state it.
pub fn weight(pen: Pen) -> String {
    format!("{:.0}", pen.width() * 100.0)
}

/// Writes all tables.
pub fn write(out: &mut Tags, plan: &Plan, paper: &Paper) {
    let mut next = plan.own.clone();
    let heads = [(); 9].map(|()| next.take());
    let [ports, types, layers, styles, views, systems, programs, dimensions, records] = heads;
    table(out, "VPORT", ports, 1, |out| view(out, next.take(), ports, paper));
    table(out, "LTYPE", types, 3 + DASHED.len(), |out| {
        for name in ["ByBlock", "ByLayer", "Continuous"] {
            entry(out, "LTYPE", (next.take(), types), "AcDbLinetypeTableRecord", name);
            out.put(70, 0).put(3, "").put(72, 65).put(73, 0).real(40, 0.0);
        }
        for pen in DASHED {
            dashes(out, (next.take(), types), pen, paper);
        }
    });
    table(out, "LAYER", layers, 1 + plan.layers.len(), |out| {
        layer(out, (next.take(), layers), "0", Pen::Thin);
        for (own, shown) in &plan.layers {
            layer(out, (next.take(), layers), &layer_name(*own, *shown), usual(*own, *shown));
        }
    });
    let lettering = |k: usize| if k == 2 { "DejaVuSansMono-Bold.ttf" } else { "DejaVuSansMono.ttf" };
    let mut text_style = Handle::NONE;
    table(out, "STYLE", styles, 3, |out| {
        for (k, name) in ["Standard", TEXT_STYLE, BOLD_STYLE].into_iter().enumerate() {
            let own = next.take();
            text_style = if k == 1 { own } else { text_style };
            entry(out, "STYLE", (own, styles), "AcDbTextStyleTableRecord", name);
            out.put(70, 0).real(40, 0.0).real(41, 1.0).real(50, 0.0).put(71, 0);
            out.real(42, paper.plain(TEXT)).put(3, lettering(k)).put(4, "");
        }
    });
    table(out, "VIEW", views, 0, |_| {});
    table(out, "UCS", systems, 0, |_| {});
    table(out, "APPID", programs, 1, |out| {
        entry(out, "APPID", (next.take(), programs), "AcDbRegAppTableRecord", "ACAD");
        out.put(70, 0);
    });
    out.put(0, "TABLE").put(2, "DIMSTYLE").put(5, dimensions).put(330, Handle::NONE).class("AcDbSymbolTable");
    out.put(70, 1 + plan.styles.len()).class("AcDbDimStyleTable");
    let main = paper.options.scale.ratio();
    style(out, (next.take(), dimensions), ("Standard", main, Ends::Arrows), text_style, paper);
    for (name, (ratio, ends)) in &plan.styles {
        style(out, (next.take(), dimensions), (name, *ratio, *ends), text_style, paper);
    }
    out.put(0, "ENDTAB");
    let all = plan.records();
    table(out, "BLOCK_RECORD", records, all.len(), |out| {
        for (name, own) in &all {
            entry(out, "BLOCK_RECORD", (*own, records), "AcDbBlockTableRecord", name);
            let layout = [plan.model, plan.paper].into_iter().find(|of| of[0] == *own);
            out.put(340, layout.map_or(Handle::NONE, |of| of[3])).put(70, 0).put(280, 1).put(281, 0);
        }
    });
}

fn table(out: &mut Tags, name: &str, own: Handle, count: usize, fill: impl FnOnce(&mut Tags)) {
    out.put(0, "TABLE").put(2, name).put(5, own).put(330, Handle::NONE).class("AcDbSymbolTable").put(70, count);
    fill(out);
    out.put(0, "ENDTAB");
}

fn entry(out: &mut Tags, kind: &str, (own, owner): (Handle, Handle), class: &str, name: &str) {
    out.object(kind, own, owner).class("AcDbSymbolTableRecord").class(class).put(2, name);
}

/// The one view: all of the sheet.
fn view(out: &mut Tags, own: Handle, owner: Handle, paper: &Paper) {
    entry(out, "VPORT", (own, owner), "AcDbViewportTableRecord", "*Active");
    let height = paper.length(paper.height);
    out.put(70, 0).flat(10, (0.0, 0.0)).flat(11, (1.0, 1.0)).flat(12, (0.7 * height, 0.5 * height));
    out.flat(13, (0.0, 0.0)).flat(14, (1.0, 1.0)).flat(15, (1.0, 1.0)).point(17, (0.0, 0.0));
    out.real(16, 0.0).real(26, 0.0).real(36, 1.0);
    out.real(40, 1.05 * height).real(41, 1.5).real(42, 50.0).real(43, 0.0).real(44, 0.0).real(50, 0.0).real(51, 0.0);
    out.put(71, 0).put(72, 100).put(73, 1).put(74, 3).put(75, 0).put(76, 0).put(77, 0).put(78, 0);
}

/// A line type, its lengths as on paper: the scale of line types makes them true.
fn dashes(out: &mut Tags, place: (Handle, Handle), pen: Pen, paper: &Paper) {
    let pieces: Vec<f64> = pen.dashes().iter().map(|mm| paper.plain(*mm)).collect();
    entry(out, "LTYPE", place, "AcDbLinetypeTableRecord", &line_type(pen));
    out.put(70, 0).put(3, pen.name()).put(72, 65).put(73, pieces.len()).real(40, pieces.iter().sum());
    for (k, piece) in pieces.iter().enumerate() {
        // What is left out has a sign.
        out.real(49, if k % 2 == 0 { *piece } else { -piece }).put(74, 0);
    }
}

/// The pen that most of a layer is drawn with; each line has its own all the same.
fn usual(layer: Layer, shown: Shown) -> Pen {
    match (layer, shown) {
        (_, Shown::Hatching) => Pen::Hatching,
        (Layer::Vessel | Layer::Piping | Layer::Internals, Shown::Element) => Pen::Outline,
        (Layer::Centre, Shown::Element) => Pen::Centre,
        _ => Pen::Thin,
    }
}

fn layer(out: &mut Tags, place: (Handle, Handle), name: &str, pen: Pen) {
    entry(out, "LAYER", place, "AcDbLayerTableRecord", name);
    out.put(70, 0).put(62, 7).put(6, line_type(pen)).put(290, 1).put(370, weight(pen));
}

/// A style of dimensions for what stands at a scale.
fn style(
    out: &mut Tags,
    (own, owner): (Handle, Handle),
    (name, ratio, ends): (&str, f64, Ends),
    text_style: Handle,
    paper: &Paper,
) {
    out.put(0, "DIMSTYLE").put(105, own).put(330, owner);
    out.class("AcDbSymbolTableRecord").class("AcDbDimStyleTableRecord").put(2, name).put(70, 0);
    let main = paper.options.scale.ratio();
    let tick = match ends {
        Ends::Arrows => 0.0,
        Ends::Ticks => 1.2,
    };
    out.real(40, main).real(41, paper.plain(ARROW)).real(42, paper.plain(1.0)).real(43, paper.plain(STEP));
    out.real(44, paper.plain(2.0)).real(140, paper.plain(TEXT)).real(142, paper.plain(tick));
    out.real(144, ratio / main).real(147, paper.plain(1.1));
    // Text stands over the line and turns with it.
    out.put(73, 0).put(74, 0).put(77, 1);
    let (form, digits) = match paper.options.system {
        System::Si => (2, 0),
        System::Us => (4, 3),
    };
    out.put(271, digits).put(276, 2).put(277, form).put(278, 46).put(340, text_style);
}
