//! Pictures whose letters are outlines.

use crate::{every_unit, job};
use std::collections::BTreeMap;
use stillrise_documents::Edition;
use stillrise_documents::drawings::{Drawing, set};
use stillrise_documents::render::glyphs::{self, CAPITALS, glyph};
use stillrise_documents::render::lettering::{Anchor, Face, Text, text_width};
use stillrise_documents::render::pen::Layer;
use stillrise_documents::render::scene::{Scene, TEXT};
use stillrise_documents::render::svg::{Lettering, Options, svg};
use stillrise_search::Settled;
use stillrise_units::System;

fn outlined(scene: &Scene) -> String {
    svg(scene, &Options { lettering: Lettering::Outlined, ..Options::default() })
}

fn drawings(settled: &Settled) -> Vec<Drawing> {
    set(settled, Edition::Us)
}

/// The value of an attribute.
fn value<'a>(tag: &'a str, name: &str) -> &'a str {
    let (_, rest) = tag.split_once(&format!(" {name}=\"")).unwrap_or_else(|| panic!("{name} in {tag}"));
    rest.split('"').next().unwrap_or_default()
}

fn number(text: &str) -> f64 {
    text.parse().unwrap_or_else(|_| panic!("{text} is no number"))
}

/// Least and greatest of what a path of our own kind passes: relative pieces, control points included.
fn extent(d: &str) -> [f64; 4] {
    let mut all = [f64::MAX, f64::MAX, f64::MIN, f64::MIN];
    let (mut at, mut numbers) = ([0.0, 0.0], Vec::new());
    let spaced = d.replace('-', " -");
    for piece in spaced.split_inclusive(|c: char| c.is_ascii_alphabetic()) {
        numbers.extend(piece.split([' ', 'm', 'l', 'q', 'c', 'z']).filter(|n| !n.is_empty()).map(number));
        let mut last = at;
        for pair in numbers.chunks_exact(2) {
            last = [at[0] + pair[0], at[1] + pair[1]];
            for axis in 0..2 {
                all[axis] = all[axis].min(last[axis]);
                all[axis + 2] = all[axis + 2].max(last[axis]);
            }
        }
        at = last;
        numbers.clear();
    }
    all
}

/// Every line of text is drawn, named by what it says, and within the width that was promised for it.
fn holds(scene: &Scene) {
    let picture = outlined(scene);
    assert!(!picture.contains("<text") && !picture.contains("font-"));
    assert!(!picture.contains("stand as boxes"), "the face has every letter of {}", scene.title);
    let outlines: BTreeMap<&str, [f64; 4]> = picture
        .split("<path id=")
        .skip(1)
        .filter_map(|path| Some((path.split('"').nth(1)?, extent(value(path, "d")))))
        .collect();
    let mut runs = picture.split("<g role=\"img\" ").skip(1);
    let mut texts: Vec<Text> = Vec::new();
    for layer in Layer::ALL {
        for placed in scene.items().iter().filter(|p| p.layer == layer) {
            let text = |shape| match shape {
                stillrise_documents::render::item::Shape::Text(text) if !text.text.is_empty() => Some(text),
                _ => None,
            };
            texts.extend(placed.item.shapes().into_iter().filter_map(text));
        }
    }
    assert!(!texts.is_empty());
    for text in &texts {
        let run = runs.next().unwrap_or_else(|| panic!("{} is not drawn", text.text));
        let run = format!(" {}", run.split("</g>").next().unwrap_or_default());
        let label = value(&run, "aria-label").replace("&quot;", "\"").replace("&#39;", "'");
        assert_eq!(label.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&"), text.text);
        let seen = text.text.chars().filter(|c| *c != ' ').count();
        assert_eq!(run.matches("<use ").count(), seen, "{}", text.text);
        let unit = number(value(&run, "transform").rsplit_once(" -").map_or("", |(_, n)| n.trim_end_matches(')')));
        let width = text_width(&text.text, text.size);
        for letter in run.split("<use").skip(1) {
            let id = value(letter, "xlink:href").trim_start_matches('#');
            let [x0, _, x1, _] = outlines[id];
            let x = number(value(letter, "x"));
            // Some heavy letters of the face pass their cell by two units in 1233.
            assert!((x + x0) * unit > -0.01 && (x + x1) * unit < width + 0.01, "{}: {id}", text.text);
        }
    }
    assert!(runs.next().is_none());
}

#[test]
fn letters_are_outlines_within_their_cells() {
    every_unit(|_, _, settled| drawings(settled).iter().for_each(|drawing| holds(&drawing.scene)));
}

#[test]
fn capitals_and_advance_are_those_of_the_face() {
    let heights = |letter| glyph(letter, Face::Mono, false).and_then(|g| g.extent).map(|[_, low, _, high]| (low, high));
    assert_eq!(heights('H'), Some((0, i16::try_from(CAPITALS).unwrap())));
    assert_eq!(glyphs::ADVANCE, 1233);
    assert_eq!(extent(&glyph('H', Face::Mono, true).unwrap().path)[1], 0.0);
    assert_eq!(glyph(' ', Face::Mono, false).unwrap().path, "");
}

#[test]
fn what_the_face_lacks_stands_as_a_box_and_is_told() {
    let mut scene = Scene::new("One", "Two.", 100.0, 50.0);
    let at = stillrise_documents::render::geometry::pt(50.0, 20.0);
    scene.text(Text::new(at, "A\u{6c34}\u{e9}e\u{301}").anchored(Anchor::Middle));
    let picture = outlined(&scene);
    assert!(
        picture.contains("<desc id=\"drawing-desc\">Two. Letters that stand as boxes: \u{6c34}</desc>"),
        "{picture}"
    );
    assert!(picture.contains("aria-label=\"A\u{6c34}\u{e9}e\u{301}\""));
    // A, the box over two cells, e with its accent as one letter and as two: the second accent stands over its letter.
    let places: Vec<&str> = picture.split("<use").skip(1).map(|letter| value(letter, "x")).collect();
    assert_eq!(places, ["0", "1233", "3699", "4932", "4932"]);
    assert!(text_width("A\u{6c34}\u{e9}e\u{301}", TEXT) > 0.0);
}

#[test]
fn outlines_cost_less_than_as_much_again() {
    for system in [System::Us, System::Si] {
        // A sheet of nothing but words costs more, a set of sheets less than as much again.
        let (mut all, mut with) = (0, 0);
        for drawing in drawings(&job(system, "[unit]\nmodel = \"Demo 120\"", |t| t)) {
            let (text, outlines) = (drawing.svg.len(), outlined(&drawing.scene).len());
            println!("{}: {text} bytes with text, {outlines} with outlines", drawing.title);
            all += text;
            with += outlines;
        }
        assert!(with < 2 * all, "{all} {with}");
    }
}
