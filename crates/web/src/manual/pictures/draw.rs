//! A picture laid out: steps at the left, what explains them at the right, proof and place below.

use super::words::{LINE, TEXT, fold, write};
use super::{Picture, Step};
use stillrise_documents::render::geometry::{Rect, pt};
use stillrise_documents::render::item::Fill;
use stillrise_documents::render::lettering::{Anchor, HEADING, Text, text_width};
use stillrise_documents::render::pen::{Layer, Pen};
use stillrise_documents::render::scene::Scene;

/// Width of a picture, mm.
const WIDTH: f64 = 222.0;
/// Where the words of a step begin and end.
const WORDS: (f64, f64) = (16.0, 112.0);
/// Where the figure begins; its own width is [`super::figures::WIDTH`].
const FIGURE: f64 = 117.0;
/// White border.
const BORDER: f64 = 5.0;
/// The circle with a step's number: where it stands, and its radius.
const NUMBER: (f64, f64) = (9.0, 3.0);
/// Higher than any picture; it is cut to what was drawn.
const HIGHEST: f64 = 400.0;

/// The picture.
pub(super) fn scene(picture: &Picture) -> Scene {
    let mut scene = Scene::new(picture.title, &description(picture), WIDTH, HIGHEST);
    scene.on(Layer::Note);
    let mut y = BORDER + HEADING;
    scene.text(Text::new(pt(BORDER, y), picture.title).sized(HEADING).bold());
    y += 6.0;
    let left = steps(&mut scene, picture.steps, y);
    let figure = (picture.figure)();
    y += TEXT;
    for line in fold(&figure.title, figure.width, TEXT) {
        scene.text(Text::new(pt(FIGURE, y), &line).sized(TEXT).bold());
        y += LINE;
    }
    scene.take(&figure, FIGURE, y);
    scene.on(Layer::Note);
    let right = y + figure.height;
    let bottom = below(&mut scene, picture, f64::max(left, right) + 4.0);
    scene.height = bottom + BORDER;
    scene
}

/// The steps from a height downward; how far they reach.
fn steps(scene: &mut Scene, steps: &[Step], from: f64) -> f64 {
    let mut y = from;
    let mut before: Option<f64> = None;
    for (k, step) in steps.iter().enumerate() {
        let middle = y + NUMBER.1;
        if let Some(before) = before {
            scene.arrow(pt(NUMBER.0, before + NUMBER.1), pt(NUMBER.0, middle - NUMBER.1), Pen::Thin);
        }
        scene.circle(pt(NUMBER.0, middle), NUMBER.1, Some(Pen::Medium), Fill::None);
        let number = (k + 1).to_string();
        let at = pt(NUMBER.0, middle + 0.5 * TEXT);
        scene.text(Text::new(at, &number).sized(TEXT).bold().anchored(Anchor::Middle));
        before = Some(middle);
        let (folder, file) = step.path.rsplit_once('/').map_or(("", step.path), |(folder, file)| (folder, file));
        let folder = if folder.is_empty() { String::new() } else { format!("{folder}/") };
        y += TEXT + 0.6;
        let wide = text_width(&folder, TEXT);
        let fits = WORDS.0 + wide + text_width(file, TEXT) <= WORDS.1;
        scene.text(Text::new(pt(WORDS.0, y), &folder).sized(TEXT));
        let x = if fits { WORDS.0 + wide } else { WORDS.0 };
        y += if fits { 0.0 } else { LINE };
        scene.text(Text::new(pt(x, y), file).sized(TEXT).bold());
        y += LINE;
        y = write(scene, pt(WORDS.0, y), step.what, WORDS.1 - WORDS.0) + 3.2 - TEXT;
    }
    y
}

/// What proves it and where it is seen, side by side; how far they reach.
fn below(scene: &mut Scene, picture: &Picture, from: f64) -> f64 {
    let boxes = [(BORDER, WORDS.1), (FIGURE, WIDTH - BORDER)];
    let mut ends = [from; 2];
    let proof: Vec<String> = core::iter::once(picture.proof.command.to_owned())
        .chain(picture.proof.paths.iter().map(|p| format!("- {p}")))
        .collect();
    let seen: Vec<String> = picture.seen.iter().map(|place| format!("- {place}")).collect();
    for (k, (title, lines)) in [("Proved by", proof), ("Where the user sees it", seen)].into_iter().enumerate() {
        let (x0, x1) = boxes[k];
        let mut y = from + 2.0 + TEXT;
        scene.text(Text::new(pt(x0 + 2.0, y), title).sized(TEXT).bold());
        y += LINE;
        for line in lines {
            y = write(scene, pt(x0 + 2.0, y), &line, x1 - x0 - 4.0);
        }
        ends[k] = y;
    }
    let bottom = f64::max(ends[0], ends[1]) - TEXT + 1.0;
    for (x0, x1) in boxes {
        scene.rect(&Rect { x0, y0: from, x1, y1: bottom }, Some(Pen::Medium), Fill::None);
    }
    bottom
}

/// For someone who cannot see it.
fn description(picture: &Picture) -> String {
    let steps: Vec<String> =
        picture.steps.iter().enumerate().map(|(k, s)| format!("{}: {}, {}", k + 1, s.path, s.what)).collect();
    format!("{}. Proved by {}. The user sees it: {}.", steps.join(". "), picture.proof.command, picture.seen.join("; "))
}
