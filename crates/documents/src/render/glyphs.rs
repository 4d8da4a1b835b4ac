//! Outlines of letters, out of the very faces that stand in the PDF files: what has them needs no face of its own.

use super::lettering::Face as Lettered;
use super::pdf::fonts;
use core::fmt::Write;
use std::sync::OnceLock;
use ttf_parser::{Face, GlyphId, OutlineBuilder, Rect};
use typst::text::{Font, FontStretch, FontStyle, FontVariant, FontWeight};

/// The families, as the typesetter looks them up.
const FAMILY: &str = "dejavu sans mono";
const BOOK: &str = "libertinus serif";
/// Advance of every letter, in units of the monospaced face.
pub const ADVANCE: u16 = 1233;
/// Height of capitals, in the same.
pub const CAPITALS: u16 = 1493;
/// Units to the em of the papers' face, height of its capitals and depth of its descenders, as its own tables state them.
pub const BOOK_EM: u16 = 1000;
/// Height of capitals, in units of the papers' face.
pub const BOOK_CAPITALS: u16 = 658;
/// Depth of descenders, in units of the papers' face.
pub const BOOK_DESCENT: u16 = 246;
/// Letters whose advance is looked up once: Latin, Greek and Cyrillic with their marks, signs of mathematics.
const USUAL: u16 = 0x2300;

/// One letter's outline.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Glyph {
    /// Path data in units of the face, y up, beginning at the left end of the baseline; empty for a space.
    pub path: String,
    /// Left, lower, right and upper end, in the same; `None` for a space.
    pub extent: Option<[i16; 4]>,
    /// Whether the face has it; else it is the box that the face has for what it lacks.
    pub known: bool,
}

/// The outline of a letter; `None` when the face cannot be read at all.
#[must_use]
pub fn glyph(letter: char, face: Lettered, bold: bool) -> Option<Glyph> {
    let font = font(face, bold)?;
    let face = Face::parse(font.data(), font.index()).ok()?;
    let found = face.glyph_index(letter).filter(|id| id.0 != 0);
    let mut path = Path::default();
    let extent = face.outline_glyph(found.unwrap_or(GlyphId(0)), &mut path);
    let extent = extent.map(|Rect { x_min, y_min, x_max, y_max }| [x_min, y_min, x_max, y_max]);
    Some(Glyph { path: path.text, extent, known: found.is_some() })
}

/// How far a letter of the papers' face moves the pen, in its units; of a letter that it lacks, the box that stands for it.
#[must_use]
pub fn book_advance(letter: char, bold: bool) -> u16 {
    static KNOWN: [OnceLock<Vec<u16>>; 2] = [const { OnceLock::new() }; 2];
    let known = KNOWN[usize::from(bold)].get_or_init(|| {
        let letters: Vec<char> = (0..u32::from(USUAL)).map(|c| char::from_u32(c).unwrap_or(' ')).collect();
        advances(&letters, bold)
    });
    let usual = usize::try_from(u32::from(letter)).ok().and_then(|at| known.get(at)).copied();
    usual.unwrap_or_else(|| advances(&[letter], bold).first().copied().unwrap_or(BOOK_EM))
}

fn advances(letters: &[char], bold: bool) -> Vec<u16> {
    let font = font(Lettered::Book, bold);
    let face = font.as_ref().and_then(|font| Face::parse(font.data(), font.index()).ok());
    let one = |letter: &char| {
        let face = face.as_ref()?;
        face.glyph_hor_advance(face.glyph_index(*letter).unwrap_or(GlyphId(0)))
    };
    letters.iter().map(|letter| one(letter).unwrap_or(BOOK_EM)).collect()
}

fn font(face: Lettered, bold: bool) -> Option<Font> {
    let family = match face {
        Lettered::Mono => FAMILY,
        Lettered::Book => BOOK,
    };
    let weight = if bold { FontWeight::BOLD } else { FontWeight::REGULAR };
    let index = fonts().book().select(family, FontVariant::new(FontStyle::Normal, weight, FontStretch::NORMAL))?;
    fonts().font(index)
}

/// Writes path data in whole units, each piece from where the one before it ended.
#[derive(Default)]
struct Path {
    text: String,
    at: (i32, i32),
    /// Where the piece that is being drawn began; closing it brings the pen back there.
    began: (i32, i32),
}

impl Path {
    /// A letter, and points told from where the pen stands; it then stands on the last.
    fn piece(&mut self, letter: char, points: &[(f32, f32)]) {
        self.text.push(letter);
        let mut last = self.at;
        for (k, point) in points.iter().enumerate() {
            // Outlines of the face are in whole units within some thousands.
            #[allow(clippy::cast_possible_truncation, reason = "coordinates of a face are 16-bit numbers")]
            let (x, y) = (point.0.round() as i32, point.1.round() as i32);
            let (dx, dy) = (x - self.at.0, y - self.at.1);
            let gap = |value: i32, first: bool| if first || value < 0 { "" } else { " " };
            // Writing to a string cannot fail.
            let _ = write!(self.text, "{}{dx}{}{dy}", gap(dx, k == 0), gap(dy, false));
            last = (x, y);
        }
        self.at = last;
    }
}

impl OutlineBuilder for Path {
    fn move_to(&mut self, x: f32, y: f32) {
        // The first of a path counts from the origin, as `m` says.
        self.piece('m', &[(x, y)]);
        self.began = self.at;
    }
    fn line_to(&mut self, x: f32, y: f32) {
        self.piece('l', &[(x, y)]);
    }
    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        self.piece('q', &[(x1, y1), (x, y)]);
    }
    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        self.piece('c', &[(x1, y1), (x2, y2), (x, y)]);
    }
    fn close(&mut self) {
        self.text.push('z');
        self.at = self.began;
    }
}
