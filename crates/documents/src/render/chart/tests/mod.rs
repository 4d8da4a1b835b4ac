//! What charts must keep, whatever they show.

mod awkward;
mod awkward_rows;
mod contents;
mod ticks;

use super::{Chart, Paper};
use crate::render::item::{Item, Shape};
use crate::render::scene::Scene;
use crate::render::svg::{Options, svg};

/// Draws a chart on several papers and holds each to what every chart must keep.
fn sound(name: &str, chart: &dyn Chart) {
    let papers = [(160.0, 90.0, true), (160.0, 90.0, false), (100.0, 60.0, true), (250.0, 160.0, true)];
    for (width, height, titled) in papers {
        let scene = chart.scene(&Paper { width, height, titled });
        assert_eq!((scene.width, scene.height), (width, height), "{name}");
        assert_eq!(scene.overlaps(), [], "{name} at {width}");
        assert_eq!(scene.outside(), [""; 0], "{name} at {width}");
        let sizes = scene.items().iter().flat_map(|p| p.item.shapes()).filter_map(|s| match s {
            Shape::Text(text) => Some(text.size),
            _ => None,
        });
        assert!(sizes.into_iter().all(|s| s >= 1.9), "{name}: lettering too small");
        let text = svg(&scene, &Options::default());
        well_formed(&text);
        assert!(!text.contains("NaN") && !text.contains("inf "), "{name}");
        assert_eq!(text, svg(&chart.scene(&Paper { width, height, titled }), &Options::default()), "{name}");
    }
}

/// Whether tags nest, attributes are quoted, and no bare `<` or `&` is left.
fn well_formed(xml: &str) {
    let mut open: Vec<&str> = Vec::new();
    let mut rest = xml;
    while let Some(at) = rest.find('<') {
        for entity in rest[..at].split('&').skip(1) {
            assert!(["amp;", "lt;", "gt;", "quot;", "#39;"].iter().any(|e| entity.starts_with(e)), "{entity}");
        }
        let end = at + rest[at..].find('>').expect("a tag ends");
        let tag = &rest[at + 1..end];
        assert!(tag.matches('"').count().is_multiple_of(2) && !tag.contains('<'), "{tag}");
        if let Some(name) = tag.strip_prefix('/') {
            assert_eq!(open.pop(), Some(name));
        } else if !tag.ends_with('/') {
            open.push(tag.split(' ').next().unwrap_or(tag));
        }
        rest = &rest[end + 1..];
    }
    assert!(open.is_empty() && xml.starts_with("<svg") && rest.trim().is_empty());
}

/// Every text lettered on a chart.
fn texts(scene: &Scene) -> Vec<String> {
    scene.items().iter().flat_map(|p| p.item.text_boxes()).map(|(text, _)| text).collect()
}

/// Every circle's centre and radius, as drawn.
fn circles(scene: &Scene) -> Vec<(f64, f64, f64)> {
    let circle = |item: &Item| match item {
        Item::Shape(Shape::Circle { centre, radius, .. }) => Some((centre.x, centre.y, *radius)),
        _ => None,
    };
    scene.items().iter().filter_map(|p| circle(&p.item)).collect()
}

/// The middle of a text's box, along the paper and down.
fn middle(scene: &Scene, text: &str) -> (f64, f64) {
    let found = scene.text_boxes().into_iter().find(|(t, _)| t == text);
    found.map(|(_, rect)| (rect.centre().x, rect.centre().y)).expect(text)
}
