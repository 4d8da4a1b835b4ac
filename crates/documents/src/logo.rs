//! A company's logo, looked through before anything is made of it: an SVG comes out as paths alone, a PNG as its picture alone.
//! What a drawing would show otherwise than its author saw it, or what asks for more than is in the file, is refused.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use png::{Decoder, Limits};
use stillrise_design::enquiry::settings::Logo;
use stillrise_units::Fault;
use usvg::{ImageHrefResolver, Options, Tree, WriteOptions, roxmltree};

/// Bytes that a logo may have.
pub const LARGEST: usize = 300_000;
/// Points of a PNG along a side, and bytes of it unpacked.
const MOST_POINTS: (u32, usize) = (4000, 64 << 20);
/// Elements of an SVG.
const MOST_NODES: u32 = 20_000;
/// How much longer than high, or higher than long, a logo may be.
const LONGEST: f64 = 20.0;
/// What an SVG may be made of.
const ELEMENTS: [&str; 22] = [
    "svg",
    "g",
    "path",
    "rect",
    "circle",
    "ellipse",
    "line",
    "polyline",
    "polygon",
    "defs",
    "use",
    "symbol",
    "linearGradient",
    "radialGradient",
    "stop",
    "clipPath",
    "mask",
    "style",
    "title",
    "desc",
    "metadata",
    "switch",
];
/// What a PNG's picture needs; all else of it, as texts and times, is left out.
const CHUNKS: [&[u8]; 7] = [b"IHDR", b"PLTE", b"tRNS", b"gAMA", b"sRGB", b"IDAT", b"IEND"];
/// How a PNG begins.
const SIGNATURE: [u8; 8] = [0x89, b'P', b'N', b'G', 0x0D, 0x0A, 0x1A, 0x0A];

/// Looks a logo through.
///
/// # Errors
/// Why it is none that can stand on a document; `name` is its file.
pub fn logo(name: &str, bytes: &[u8]) -> Result<Logo, Fault> {
    let refused = |(reason, remedy): Refused| Fault::new(format!("company: logo: {name}"), reason, remedy);
    if bytes.len() > LARGEST {
        let reason = format!("is larger than {} kB", LARGEST / 1000);
        return Err(refused((reason, "save it smaller, or with fewer points")));
    }
    let logo = if bytes.starts_with(&SIGNATURE) { png(bytes) } else { svg(bytes) }.map_err(refused)?;
    if !(1.0 / LONGEST..=LONGEST).contains(&logo.aspect) {
        let reason = format!("is more than {LONGEST} times as long as high, or the other way round");
        return Err(refused((reason, "cut it to what is drawn")));
    }
    Ok(logo)
}

/// Reason and remedy.
type Refused = (String, &'static str);

fn svg(bytes: &[u8]) -> Result<Logo, Refused> {
    let neither = || ("is neither an SVG nor a PNG".to_owned(), "save it as one of the two");
    let text = core::str::from_utf8(bytes).map_err(|_| neither())?;
    let rules = roxmltree::ParsingOptions { allow_dtd: true, nodes_limit: MOST_NODES, ..Default::default() };
    let tree = roxmltree::Document::parse_with_options(text, rules).map_err(|error| match text.contains("<svg") {
        true => (format!("is no sound SVG: {error}"), "save it anew as a plain SVG"),
        false => neither(),
    })?;
    if tree.root_element().tag_name().name() != "svg" {
        return Err(neither());
    }
    tree.descendants().filter(|node| node.is_element()).try_for_each(looked_through)?;
    // Nothing is fetched, whatever the first look missed.
    let closed = ImageHrefResolver { resolve_data: Box::new(|_, _, _| None), resolve_string: Box::new(|_, _| None) };
    let options = Options { image_href_resolver: closed, ..Options::default() };
    let drawn = Tree::from_xmltree(&tree, &options)
        .map_err(|error| (format!("cannot be drawn: {error}"), "save it anew as a plain SVG"))?;
    if !drawn.root().has_children() {
        return Err(("draws nothing".to_owned(), "check that it holds paths that are filled or stroked"));
    }
    let size = drawn.size();
    let written = drawn.to_string(&WriteOptions::default());
    Ok(Logo { is_svg: true, bytes: written.into_bytes(), aspect: f64::from(size.width()) / f64::from(size.height()) })
}

/// Refuses an element that is no drawing, or that reaches out of the file.
fn looked_through(node: roxmltree::Node<'_, '_>) -> Result<(), Refused> {
    let name = node.tag_name().name();
    // What a drawing program notes for itself is no SVG and is left out.
    let is_foreign = node.tag_name().namespace().is_some_and(|space| space != "http://www.w3.org/2000/svg");
    if is_foreign {
        return Ok(());
    }
    if name == "text" {
        return Err((
            "holds text, which would be set in whatever letters a machine has".to_owned(),
            "turn its letters into paths",
        ));
    }
    if !ELEMENTS.contains(&name) {
        return Err((format!("holds a <{name}>, which is no path"), "save it with paths alone, or as PNG"));
    }
    let style = if name == "style" { node.text().unwrap_or_default() } else { "" };
    for value in node.attributes().map(|attribute| (attribute.name(), attribute.value())).chain([("style", style)]) {
        let (key, value) = value;
        if key.to_ascii_lowercase().starts_with("on") {
            return Err((format!("holds a script, in {key} of a <{name}>"), "save it with paths alone"));
        }
        let outside = key == "href" && !value.trim().starts_with('#')
            || value.contains("@import")
            || value
                .match_indices("url(")
                .any(|(at, _)| !value[at + 4..].trim_start_matches(['"', '\'', ' ']).starts_with('#'));
        if outside {
            return Err((
                format!("refers to something outside of it, in {key} of a <{name}>"),
                "save it whole, with paths alone",
            ));
        }
    }
    Ok(())
}

fn png(bytes: &[u8]) -> Result<Logo, Refused> {
    let broken = |error: png::DecodingError| (format!("is no sound PNG: {error}"), "save it anew as PNG");
    let (points, memory) = MOST_POINTS;
    let mut reader =
        Decoder::new_with_limits(std::io::Cursor::new(bytes), Limits { bytes: memory }).read_info().map_err(broken)?;
    let (width, height) = reader.info().size();
    if width > points || height > points {
        let reason = format!("is {width} by {height} points; {points} along a side are the most");
        return Err((reason, "save it smaller"));
    }
    // Read to its end, so that none stands that breaks off.
    let room = reader.output_buffer_size().filter(|room| *room <= memory).unwrap_or(0);
    reader.next_frame(&mut vec![0; room]).map_err(broken)?;
    Ok(Logo { is_svg: false, bytes: picture(bytes), aspect: f64::from(width) / f64::from(height) })
}

/// The parts of a PNG that its picture needs.
fn picture(bytes: &[u8]) -> Vec<u8> {
    let (signature, mut rest) = bytes.split_at(SIGNATURE.len().min(bytes.len()));
    let mut kept = signature.to_vec();
    while let Some((length, kind)) = rest.get(..4).zip(rest.get(4..8)) {
        let length = length.iter().fold(0_usize, |sum, byte| (sum << 8) | usize::from(*byte));
        // Length, kind and check stand around what it holds.
        let Some(chunk) = length.checked_add(12).and_then(|all| rest.get(..all)) else { break };
        if CHUNKS.contains(&kind) {
            kept.extend_from_slice(chunk);
        }
        if kind == b"IEND" {
            break;
        }
        rest = rest.get(chunk.len()..).unwrap_or_default();
    }
    kept
}

/// A logo as an address that holds all of it: as the picture of a page or of an SVG.
#[must_use]
pub fn embedded(logo: &Logo) -> String {
    format!("data:{};base64,{}", logo.kind(), STANDARD.encode(&logo.bytes))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    fn reason(text: &str) -> String {
        logo("logo.svg", text.as_bytes()).map_or_else(|fault| fault.reason, |_| String::new())
    }

    fn svg(inner: &str) -> String {
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" viewBox=\"0 0 40 20\">{inner}</svg>"
        )
    }

    #[test]
    fn an_svg_comes_out_as_paths() {
        let logo = logo(
            "logo.svg",
            svg("<title>private</title><circle cx=\"10\" cy=\"10\" r=\"5\" fill=\"#123456\"/>").as_bytes(),
        )
        .unwrap();
        let text = String::from_utf8(logo.bytes.clone()).unwrap();
        assert!(text.contains("<path") && text.contains("#123456"), "{text}");
        assert!(!text.contains("circle") && !text.contains("private"), "{text}");
        assert!((logo.aspect - 2.0).abs() < 1e-6);
        assert!(embedded(&logo).starts_with("data:image/svg+xml;base64,"));
    }

    #[test]
    fn what_is_no_drawing_is_refused() {
        let path = "<path d=\"M0 0h9v9z\"/>";
        for (inner, word) in [
            ("<script>alert(1)</script>", "script"),
            ("<path d=\"M0 0h9v9z\" onclick=\"alert(1)\"/>", "a script"),
            ("<image href=\"https://example.invalid/x.png\"/>", "image"),
            ("<use xlink:href=\"other.svg#a\"/>", "outside"),
            ("<path d=\"M0 0h9v9z\" style=\"fill:url(https://example.invalid/x)\"/>", "outside"),
            ("<style>@import 'x.css';</style>", "outside"),
            ("<foreignObject/>", "foreignObject"),
            ("<text>Name</text>", "text"),
            ("", "draws nothing"),
        ] {
            let more = if inner.is_empty() { "" } else { path };
            assert!(reason(&svg(&format!("{inner}{more}"))).contains(word), "{inner}: {}", reason(&svg(inner)));
        }
        assert!(reason("hello").contains("neither"));
        assert!(reason("<html><body/></html>").contains("neither"));
        assert!(reason("<svg").contains("no sound SVG"));
        assert!(reason(&svg(&"<g/>".repeat(100_000))).contains("larger"));
    }

    #[test]
    fn a_png_is_read_to_its_end_and_keeps_its_picture_alone() {
        let mut bytes = Vec::new();
        let mut encoder = png::Encoder::new(&mut bytes, 4, 2);
        encoder.set_color(png::ColorType::Grayscale);
        encoder.add_text_chunk("Author".to_owned(), "somebody".to_owned()).unwrap();
        let mut writer = encoder.write_header().unwrap();
        writer.write_image_data(&[0; 8]).unwrap();
        writer.finish().unwrap();
        let found = logo("logo.png", &bytes).unwrap();
        assert!(!found.is_svg && (found.aspect - 2.0).abs() < 1e-9);
        assert!(found.bytes.len() < bytes.len() && !String::from_utf8_lossy(&found.bytes).contains("somebody"));
        assert_eq!(logo("logo.png", &found.bytes).unwrap(), found);
        let half = logo("logo.png", &bytes[..bytes.len() / 2 + 10]).unwrap_err();
        assert!(half.reason.contains("no sound PNG"), "{}", half.reason);
    }
}
