//! A scene as SVG: physical size in millimetres, black on white, with a text alternative.
//!
//! Only presentation attributes are written, no style sheet, so that the picture stands under a
//! strict content policy. A page may restyle it by class: `layer-*`, `pen-*`, `part`, `paper`,
//! `ink`, and the kinds of mark; lines and letters take the text colour of their surroundings.

use super::geometry::{Point, Rect};
use super::hatch::strokes;
use super::item::{Fill, Item, Placed, Shape};
use super::lettering::{Anchor, Text, Turn};
use super::letters::Letters;
use super::pen::{Layer, Pen};
use super::scene::{Picture, Scene};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use core::fmt::Write;

/// How letters are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lettering {
    /// As text, which can be searched and copied; whoever shows it needs the face, or one much alike.
    Text,
    /// As outlines, which look the same wherever they are shown; each line of text is named for who cannot see it.
    Outlined,
}

/// How a scene is written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Options {
    /// Prefix of the ids of title and description; two pictures on one page need different ones.
    pub id: String,
    /// Whether the paper is painted white.
    pub background: bool,
    /// Whether width and height are stated in mm; otherwise the picture takes the size of its place.
    pub sized: bool,
    /// Whether its parts are buttons that keyboard and screen reader reach; the picture is then a group, as one that is an
    /// image hides what is in it.
    pub pointed: bool,
    /// How letters are written.
    pub lettering: Lettering,
}

impl Default for Options {
    fn default() -> Options {
        Options { id: "drawing".to_owned(), background: true, sized: true, pointed: false, lettering: Lettering::Text }
    }
}

/// The scene as an SVG document.
#[must_use]
pub fn svg(scene: &Scene, options: &Options) -> String {
    written(scene, options, None)
}

/// The same, with what `each` makes of every group: of a part on a layer, or of what stands there between parts.
#[must_use]
pub fn svg_by_groups(scene: &Scene, options: &Options, each: &dyn Fn(String) -> String) -> String {
    written(scene, options, Some(each))
}

fn written(scene: &Scene, options: &Options, each: Option<&dyn Fn(String) -> String>) -> String {
    let (width, height, id) = (number(scene.width), number(scene.height), escape(&options.id));
    let size = if options.sized { format!(" width=\"{width}mm\" height=\"{height}mm\"") } else { String::new() };
    let links = match options.lettering {
        Lettering::Text => "",
        // Older readers follow no other kind of reference.
        Lettering::Outlined => " xmlns:xlink=\"http://www.w3.org/1999/xlink\"",
    };
    let role = if options.pointed { "group" } else { "img" };
    let mut out = String::new();
    let mut letters = match options.lettering {
        Lettering::Text => None,
        Lettering::Outlined => Some(Letters::default()),
    };
    let mut reached = vec![!options.pointed; scene.parts().len()];
    for layer in Layer::ALL {
        let placed: Vec<&Placed> = scene.items().iter().filter(|p| p.layer == layer).collect();
        if placed.is_empty() {
            continue;
        }
        out += &format!("<g class=\"layer-{}\">\n", layer.name());
        for run in placed.chunk_by(|a, b| a.part == b.part) {
            let index = run.first().and_then(|p| p.part);
            let part = index.and_then(|k| scene.parts().get(k));
            let mut group = String::new();
            if let Some(part) = part {
                let (id, title) = (escape(&part.id), escape(&part.title));
                // A part on several layers is one button: the first of its groups.
                let first =
                    index.and_then(|k| reached.get_mut(k)).is_some_and(|known| !core::mem::replace(known, true));
                let button = if first {
                    let label = escape(&label(&part.title, run));
                    format!(" tabindex=\"0\" role=\"button\" aria-label=\"{label}\"")
                } else {
                    String::new()
                };
                group += &format!("<g class=\"part\" data-part=\"{id}\"{button}><title>{title}</title>\n");
            } else if each.is_some() {
                group += "<g>\n";
            }
            for placed in run {
                item(&mut group, &placed.item, &mut letters);
            }
            if part.is_some() || each.is_some() {
                group += "</g>\n";
            }
            out += &match each {
                Some(each) => each(group),
                None => group,
            };
        }
        out += "</g>\n";
    }
    for picture in scene.pictures() {
        out += &image(picture, options.lettering);
    }
    let lacking = letters.as_ref().map(Letters::lacking).filter(|lacking| !lacking.is_empty());
    let lacking = lacking.map_or_else(String::new, |lacking| format!(" Letters that stand as boxes: {lacking}"));
    let mut head = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\"{links}{size} viewBox=\"0 0 {width} {height}\" role=\"{role}\" \
         aria-labelledby=\"{id}-title {id}-desc\" fill=\"none\" stroke-linejoin=\"round\">\n\
         <title id=\"{id}-title\">{}</title>\n<desc id=\"{id}-desc\">{}</desc>\n",
        escape(&scene.title),
        escape(&(scene.description.clone() + &lacking))
    );
    head += &letters.map_or_else(String::new, |letters| letters.defs());
    if options.background {
        head += &format!("<rect class=\"paper\" width=\"{width}\" height=\"{height}\" fill=\"white\"/>\n");
    }
    head + &out + "</svg>\n"
}

/// A picture with its bytes in it, so that the drawing stays one file.
fn image(picture: &Picture, lettering: Lettering) -> String {
    let area = picture.area;
    let [x, y, width, height] = [area.x0, area.y0, area.width(), area.height()].map(number);
    let data = STANDARD.encode(&picture.bytes);
    // Older readers follow no other kind of reference.
    let reference = if lettering == Lettering::Outlined { "xlink:href" } else { "href" };
    format!(
        "<image x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" role=\"img\" aria-label=\"{}\" \
         {reference}=\"data:{};base64,{data}\"/>\n",
        escape(&picture.alt),
        picture.kind
    )
}

/// What a part is called by who hears it: its title, and what is written in it where the title does not say it already.
fn label(title: &str, run: &[&Placed]) -> String {
    let written: Vec<String> = run.iter().flat_map(|p| p.item.text_boxes()).map(|(text, _)| text).collect();
    let written = written.join(" ");
    if title.to_lowercase().contains(&written.to_lowercase()) {
        title.to_owned()
    } else {
        format!("{title}, {written}")
    }
}

fn item(out: &mut String, item: &Item, letters: &mut Option<Letters>) {
    let class = match item {
        Item::Shape(_) => "",
        Item::Dimension(_) => "dimension",
        Item::Leader(_) => "leader",
        Item::Balloon(balloon) if balloon.heavy => "balloon heavy",
        Item::Balloon(_) => "balloon",
        Item::Level(_) => "level",
    };
    if !class.is_empty() {
        *out += &format!("<g class=\"{class}\">\n");
    }
    for shape in item.shapes() {
        self::shape(out, &shape, letters);
    }
    if !class.is_empty() {
        *out += "</g>\n";
    }
}

fn shape(out: &mut String, shape: &Shape, letters: &mut Option<Letters>) {
    match shape {
        Shape::Path { rings, closed, pen, fill } => {
            let mut d = String::new();
            for ring in rings {
                path(&mut d, ring, *closed);
            }
            filled(out, &format!("<path d=\"{d}\""), rings, *pen, *fill);
        }
        Shape::Circle { centre, radius, pen, fill } => {
            let [x, y, r] = [centre.x, centre.y, *radius].map(number);
            let ring = super::geometry::arc(*centre, *radius, *radius, 0.0, 360.0, 72);
            filled(out, &format!("<circle cx=\"{x}\" cy=\"{y}\" r=\"{r}\""), &[ring], *pen, *fill);
        }
        Shape::Text(text) if text.text.is_empty() => {}
        Shape::Text(text) => lettering(out, text, letters),
    }
}

/// Finishes an opened element with its fill and line; hatching comes between the two.
fn filled(out: &mut String, open: &str, rings: &[Vec<Point>], pen: Option<Pen>, fill: Fill) {
    if let Fill::Over(hatch) = fill {
        filled(out, open, rings, None, Fill::Paper);
        return filled(out, open, rings, pen, Fill::Hatch(hatch));
    }
    if let Fill::Hatch(hatch) = fill {
        let mut d = String::new();
        for (a, b) in strokes(rings, hatch) {
            path(&mut d, &[a, b], false);
        }
        if !d.is_empty() {
            *out += &format!("<path d=\"{d}\" class=\"pen-hatching\"{}/>\n", stroke(Pen::Hatching));
        }
    }
    if let Fill::Tint(share) = fill {
        filled(out, open, rings, None, Fill::Paper);
        // A share of the ink and not a grey, so that a tint keeps its place between paper and ink whatever their colours.
        let opacity = number(f64::from(share.min(100)) / 100.0);
        *out += &format!(
            "{open} class=\"tint\" fill=\"currentColor\" fill-opacity=\"{opacity}\" fill-rule=\"evenodd\"/>\n"
        );
    }
    let (ground, colour) = match fill {
        Fill::None | Fill::Hatch(_) | Fill::Over(_) | Fill::Tint(_) => ("", ""),
        Fill::Paper => ("paper", "white"),
        Fill::Ink => ("ink", "currentColor"),
    };
    if pen.is_none() && ground.is_empty() {
        return;
    }
    let class: Vec<String> = [pen.map(|p| format!("pen-{}", p.name())), Some(ground.to_owned())]
        .into_iter()
        .flatten()
        .filter(|c| !c.is_empty())
        .collect();
    *out += &format!("{open} class=\"{}\"", class.join(" "));
    if let Some(pen) = pen {
        *out += &stroke(pen);
    }
    if !colour.is_empty() {
        *out += &format!(" fill=\"{colour}\" fill-rule=\"evenodd\"");
    }
    *out += "/>\n";
}

fn stroke(pen: Pen) -> String {
    let mut text = format!(" stroke=\"currentColor\" stroke-width=\"{}\"", number(pen.width()));
    if !pen.dashes().is_empty() {
        let dashes: Vec<String> = pen.dashes().iter().map(|d| number(*d)).collect();
        text += &format!(" stroke-dasharray=\"{}\"", dashes.join(" "));
    }
    text
}

fn path(d: &mut String, points: &[Point], closed: bool) {
    for (k, point) in points.iter().enumerate() {
        let command = if k == 0 { 'M' } else { 'L' };
        // Writing to a string cannot fail.
        let _ = write!(d, "{command}{} {}", number(point.x), number(point.y));
    }
    if closed && !points.is_empty() {
        d.push('Z');
    }
}

fn lettering(out: &mut String, text: &Text, letters: &mut Option<Letters>) {
    if text.clear {
        let Rect { x0, y0, .. } = text.area();
        let [x, y, w, h] = [x0, y0, text.area().width(), text.area().height()].map(number);
        *out += &format!("<rect class=\"paper\" x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\" fill=\"white\"/>\n");
    }
    if let Some(letters) = letters {
        return letters.line(out, text);
    }
    let [x, y, size] = [text.at.x, text.at.y, text.size * text.face.em()].map(number);
    let length = number(text.width());
    let anchor = match text.anchor {
        Anchor::Start => "",
        Anchor::Middle => " text-anchor=\"middle\"",
        Anchor::End => " text-anchor=\"end\"",
    };
    let family = text.face.families();
    let weight = if text.bold { " font-weight=\"bold\"" } else { "" };
    let turn = match text.turn {
        Turn::Level => String::new(),
        Turn::Up => format!(" transform=\"rotate(-90 {x} {y})\""),
    };
    // The length is stated so that another face cannot make texts overlap.
    *out += &format!(
        "<text x=\"{x}\" y=\"{y}\" font-family=\"{family}\" font-size=\"{size}\" textLength=\"{length}\" \
         lengthAdjust=\"spacingAndGlyphs\" fill=\"currentColor\"{anchor}{weight}{turn}>{}</text>\n",
        escape(&text.text)
    );
}

/// A coordinate to the micrometre, without trailing zeros; what is not finite is 0.
pub(super) fn number(value: f64) -> String {
    if !value.is_finite() {
        return "0".to_owned();
    }
    let text = format!("{value:.3}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// Text as data in XML; characters that XML forbids become a replacement character.
#[must_use]
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\n' | '\t' => out.push(letter),
            _ if letter.is_control() || matches!(letter, '\u{fffe}' | '\u{ffff}') => out.push('\u{fffd}'),
            _ => out.push(letter),
        }
    }
    out
}
