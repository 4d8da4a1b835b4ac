//! What drawings of a unit must keep.
#![allow(clippy::panic, reason = "helpers of tests fail as tests do")]

#[path = "../common/mod.rs"]
mod common;
mod redlines;
mod set;
mod sheets;

use common::{ENQUIRY, RAIN, range, yard as job};
use stillrise_documents::drawings::Drawing;
use stillrise_documents::render::geometry::Rect;
use stillrise_documents::render::pen::Layer;

/// What a customer may write; to be seen as written, nowhere to be obeyed.
const HOSTILE: &str = "</text><script>alert(1)</script> & 'x' \u{1b}[31m";

/// An existing unit with a weir, no hopper and no mesh, for three oils.
const EXISTING: &str = r#"
[unit]
count = 2
[unit.dimensions]
model = "Old <unit> & co"
length = "3 m"
width = "1 m"
height = "1.6 m"
control = "weir"
weir_crest = "1.1 m"
weir_length = "0.8 m"
outlet_invert = "0.9 m"
outlet_pipe = "DN 150"
inlet_invert = "1.3 m"
inlet_pipe = "DN 150"
inlet_length = "300 mm"
pack_length = "1200 mm"
pack_height = "700 mm"
pack_bottom = "150 mm"
gap = "12 mm"
angle = "45 deg"
run = "counter-current"
pack_modules = 3
retention_length = "400 mm"
well_length = "300 mm"
lip = "220 mm"
[[oil]]
name = "light <oil>"
kind = "gasoline"
[[oil]]
name = "heavy & black"
kind = "gear-oil"
"#;

/// All but the frame's own marks lies inside the frame.
fn inside(drawing: &Drawing) {
    let scene = &drawing.scene;
    let frame = Rect { x0: 20.0, y0: 10.0, x1: scene.width - 10.0, y1: scene.height - 10.0 }.grown(1e-6);
    assert_eq!(scene.outside(), [""; 0]);
    for placed in scene.items().iter().filter(|p| p.layer != Layer::Frame) {
        for (text, area) in placed.item.text_boxes() {
            assert!(frame.holds(&area), "{}: {text}", drawing.title);
        }
        for (a, b) in placed.item.lines() {
            let area = Rect { x0: a.x.min(b.x), y0: a.y.min(b.y), x1: a.x.max(b.x), y1: a.y.max(b.y) };
            assert!(frame.holds(&area), "{}: {a:?} {b:?}", drawing.title);
        }
    }
}

/// True size per size on paper as the written scale says: `1:n`, or inches on paper = feet of the thing.
fn printed(scale: &str) -> f64 {
    let number = |text: &str| match text.split_once('/') {
        Some((a, b)) => a.parse::<f64>().unwrap_or(f64::NAN) / b.parse::<f64>().unwrap_or(f64::NAN),
        None => text.parse().unwrap_or(f64::NAN),
    };
    match (scale.split_once(':'), scale.split_once("\" = ")) {
        (Some((one, n)), _) => number(n) / number(one),
        (_, Some((inches, feet))) => {
            12.0 * number(feet.trim_end_matches("'-0\"")) / inches.split(' ').map(number).sum::<f64>()
        }
        _ => f64::NAN,
    }
}

/// The text of an element whose start tag has been cut off before `attributes>text</text>`.
fn content(rest: &str) -> String {
    let text = rest.split_once('>').and_then(|(_, t)| t.split_once("</text>")).map_or("", |(t, _)| t);
    let plain = text.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&#39;", "'");
    plain.replace("&amp;", "&")
}

/// Elements close in the order in which they opened, attributes are quoted and named once, `&` begins an entity.
fn well_formed(svg: &str) {
    let mut open: Vec<&str> = Vec::new();
    let mut rest = svg;
    while let Some(start) = rest.find(['<', '&']) {
        rest = &rest[start..];
        if rest.starts_with('&') {
            assert!(["&amp;", "&lt;", "&gt;", "&quot;", "&#39;"].iter().any(|e| rest.starts_with(e)), "{rest:.40}");
            rest = &rest[1..];
            continue;
        }
        let Some(end) = rest.find('>') else { panic!("a tag without an end: {rest:.40}") };
        let tag = &rest[1..end];
        rest = &rest[end + 1..];
        if let Some(name) = tag.strip_prefix('/') {
            assert_eq!(open.pop(), Some(name));
            continue;
        }
        let (body, closed) = tag.strip_suffix('/').map_or((tag, false), |body| (body, true));
        let (name, attributes) = body.split_once(' ').unwrap_or((body, ""));
        assert!(name.chars().all(|c| c.is_ascii_alphabetic()), "{name}");
        let quoted: Vec<&str> = attributes.split('"').collect();
        assert_eq!(quoted.len() % 2, 1, "{tag}");
        let mut names: Vec<&str> = quoted.iter().step_by(2).map(|n| n.trim()).filter(|n| !n.is_empty()).collect();
        assert!(names.iter().all(|n| n.ends_with('=')), "{tag}");
        let count = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!((names.len(), quoted.len()), (count, 2 * count + 1), "{tag}");
        if !closed {
            open.push(name);
        }
    }
    assert_eq!(open, [""; 0]);
    assert!(svg.chars().all(|c| c == '\n' || !c.is_control()));
}
