//! Letters as outlines in an SVG picture: each is drawn once, and used wherever a text has it.

use super::glyphs;
use super::lettering::{Anchor, Face, Text, Turn};
use super::svg::{escape, number};
use super::text::cells;
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

/// The letters that a drawing has used so far: each is outlined once.
#[derive(Default)]
pub(super) struct Letters(BTreeMap<(Face, bool, char), glyphs::Glyph>);

impl Letters {
    /// A line of text: outlines at their places, in units of the face, under a name that says what they spell.
    pub(super) fn line(&mut self, out: &mut String, text: &Text) {
        let capitals = match text.face {
            Face::Mono => glyphs::CAPITALS,
            Face::Book => glyphs::BOOK_CAPITALS,
        };
        let unit = text.size / f64::from(capitals);
        let width = text.width();
        let before = match text.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => 0.5 * width,
            Anchor::End => width,
        };
        let (at, turn) = match text.turn {
            Turn::Level => (text.at.by(-before, 0.0), ""),
            Turn::Up => (text.at.by(0.0, before), " rotate(-90)"),
        };
        let (label, [x, y]) = (escape(&text.text), [at.x, at.y].map(number));
        *out += &format!(
            "<g role=\"img\" aria-label=\"{label}\" fill=\"currentColor\" \
             transform=\"translate({x} {y}){turn} scale({unit:.7} -{unit:.7})\">"
        );
        let mut next = 0;
        if text.face == Face::Book {
            let mut x = 0_u32;
            for letter in text.text.chars() {
                if self.draws((Face::Book, text.bold, letter)) {
                    *out += &format!("<use xlink:href=\"#{}\" x=\"{x}\"/>", name(Face::Book, text.bold, letter));
                }
                x += u32::from(glyphs::book_advance(letter, text.bold));
            }
            out.push_str("</g>\n");
            return;
        }
        for letter in text.text.chars() {
            let wide = cells(letter.encode_utf8(&mut [0; 4]));
            // A mark that takes no room of its own stands over the letter before it.
            let here = if wide == 0 { usize::max(next, 1) - 1 } else { next };
            next += wide;
            if self.draws((Face::Mono, text.bold, letter)) {
                let (name, x) = (name(Face::Mono, text.bold, letter), here * usize::from(glyphs::ADVANCE));
                *out += &format!("<use xlink:href=\"#{name}\" x=\"{x}\"/>");
            }
        }
        out.push_str("</g>\n");
    }

    /// Takes up a letter; whether there is anything to see of it.
    fn draws(&mut self, key: (Face, bool, char)) -> bool {
        let glyph = match self.0.entry(key) {
            Entry::Occupied(known) => known.into_mut(),
            Entry::Vacant(place) => match glyphs::glyph(key.2, key.0, key.1) {
                Some(glyph) => place.insert(glyph),
                None => return false,
            },
        };
        !glyph.path.is_empty()
    }

    /// The outlines.
    pub(super) fn defs(&self) -> String {
        let seen = self.0.iter().filter(|(_, glyph)| !glyph.path.is_empty());
        let paths = seen.map(|((face, bold, letter), glyph)| {
            format!("<path id=\"{}\" d=\"{}\"/>\n", name(*face, *bold, *letter), glyph.path)
        });
        format!("<defs>\n{}</defs>\n", paths.collect::<String>())
    }

    /// The letters that the face lacks.
    pub(super) fn lacking(&self) -> String {
        self.0.iter().filter(|(_, glyph)| !glyph.known).map(|((.., letter), _)| *letter).collect()
    }
}

/// The id of a letter's outline: the same wherever the letter is, so that two pictures on a page mean the same by it.
fn name(face: Face, bold: bool, letter: char) -> String {
    let kind = match (face, bold) {
        (Face::Mono, false) => 'g',
        (Face::Mono, true) => 'b',
        (Face::Book, false) => 's',
        (Face::Book, true) => 't',
    };
    format!("{kind}{:x}", u32::from(letter))
}
