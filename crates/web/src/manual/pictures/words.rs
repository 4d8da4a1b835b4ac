//! Lettering of the pictures.

use stillrise_documents::render::geometry::{Point, pt};
use stillrise_documents::render::lettering::{ADVANCE, Text};
use stillrise_documents::render::scene::Scene;
use stillrise_documents::render::text::lines;

/// Height of capitals, mm.
pub(super) const TEXT: f64 = 2.2;
/// From one line to the next.
pub(super) const LINE: f64 = 3.9;

/// A text in lines of a width.
pub(super) fn fold(text: &str, width: f64, size: f64) -> Vec<String> {
    let count = width / (ADVANCE * size);
    // A width on paper is some hundred letters at most.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small positive number")]
    let count = count as usize;
    lines(text, count)
}

/// Writes a text downward from its first baseline; where the next line would stand.
pub(super) fn write(scene: &mut Scene, at: Point, text: &str, width: f64) -> f64 {
    let mut y = at.y;
    for line in fold(text, width, TEXT) {
        scene.text(Text::new(pt(at.x, y), &line).sized(TEXT));
        y += LINE;
    }
    y
}
