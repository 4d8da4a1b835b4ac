//! The same picture in fewer bytes: what is written often is written once, lines go on from where they are.

use core::fmt::Write;

/// A line of text has no other colour than the one around it.
const COLOUR: &str = " fill=\"currentColor\"";

/// The picture with its face named once, without names of pens, neighbouring lines of one kind in one path.
pub(super) fn slim(svg: &str) -> String {
    let svg = face_once(svg);
    let mut out = String::with_capacity(svg.len());
    // The attributes of the path that is still open, and all that it draws.
    let mut open: Option<(String, String)> = None;
    let mut is_text = false;
    for line in svg.lines() {
        let text = line.starts_with("<text ") && line.contains(COLOUR);
        if let Some((drawn, with)) = path(line) {
            match &mut open {
                Some((known, all)) if *known == with && !with.contains("fill") => all.push_str(&drawn),
                _ => {
                    close(&mut out, &mut open);
                    open = Some((with, drawn));
                }
            }
        } else {
            close(&mut out, &mut open);
        }
        if is_text && !text {
            out.push_str("</g>\n");
        }
        if text && !is_text {
            out.push_str(&format!("<g{COLOUR}>\n"));
        }
        is_text = text;
        if open.is_none() {
            out.push_str(&if text { line.replacen(COLOUR, "", 1) } else { without_pens(line) });
            out.push('\n');
        }
    }
    out
}

fn close(out: &mut String, open: &mut Option<(String, String)>) {
    if let Some((with, drawn)) = open.take() {
        out.push_str(&format!("<path d=\"{drawn}\"{with}/>\n"));
    }
}

/// The face stands at the head, not at every line of text.
fn face_once(svg: &str) -> String {
    const NAMED: &str = " font-family=\"";
    let face = svg.split_once(NAMED).and_then(|(_, rest)| rest.split_once('"')).map(|(face, _)| face);
    let Some(face) = face.map(|face| format!("{NAMED}{face}\"")) else { return svg.to_owned() };
    let bare = svg.replace(&face, "").replace(" lengthAdjust=\"spacingAndGlyphs\"", "");
    bare.replacen("<svg", &format!("<svg{face}"), 1)
}

/// A path as what it draws, in short, and its other attributes.
fn path(line: &str) -> Option<(String, String)> {
    let (drawn, with) = line.strip_prefix("<path d=\"")?.split_once('"')?;
    let with = without_pens(with.strip_suffix("/>")?);
    // One ring has no inside to tell from its outside.
    let with = if drawn.matches('M').count() == 1 { with.replace(" fill-rule=\"evenodd\"", "") } else { with };
    Some((shorter(drawn)?, with))
}

/// Without the names of pens, by which nobody restyles a picture.
fn without_pens(text: &str) -> String {
    let Some((before, rest)) = text.split_once(" class=\"") else { return text.to_owned() };
    let Some((classes, after)) = rest.split_once('"') else { return text.to_owned() };
    let kept: Vec<&str> = classes.split(' ').filter(|class| !class.starts_with("pen-")).collect();
    if kept.is_empty() { format!("{before}{after}") } else { format!("{before} class=\"{}\"{after}", kept.join(" ")) }
}

/// Straight lines to a hundredth of a millimetre, each from where the last ended; `None` for any other path.
fn shorter(drawn: &str) -> Option<String> {
    let mut out = String::new();
    let mut at = (0, 0);
    let mut rest = drawn;
    while let Some(command) = rest.chars().next() {
        rest = rest.get(1..)?;
        if command == 'Z' {
            out.push('z');
            continue;
        }
        let end = rest.find(['M', 'L', 'Z']).unwrap_or(rest.len());
        let (x, y) = rest.get(..end)?.split_once(' ')?;
        let to = (hundredths(x)?, hundredths(y)?);
        rest = rest.get(end..)?;
        let (dx, dy) = (to.0 - at.0, to.1 - at.1);
        // Writing to a string cannot fail.
        let _ = match (command, dx, dy) {
            ('M', ..) => write!(out, "M{}", pair(to.0, to.1)),
            ('L', 0, 0) => Ok(()),
            ('L', _, 0) => write!(out, "h{}", number(dx)),
            ('L', 0, _) => write!(out, "v{}", number(dy)),
            ('L', ..) => write!(out, "l{}", pair(dx, dy)),
            _ => return None,
        };
        at = to;
    }
    Some(out)
}

fn hundredths(text: &str) -> Option<i32> {
    let value = 100.0 * text.parse::<f64>().ok()?;
    // A place on paper is some metres at most.
    #[allow(clippy::cast_possible_truncation, reason = "bounded just before")]
    (value.abs() < 1e6).then(|| value.round() as i32)
}

/// Two numbers; a sign parts them by itself.
fn pair(a: i32, b: i32) -> String {
    let (a, b) = (number(a), number(b));
    if b.starts_with('-') { format!("{a}{b}") } else { format!("{a} {b}") }
}

/// Hundredths as a number without what it does not need.
fn number(hundredths: i32) -> String {
    let sign = if hundredths < 0 { "-" } else { "" };
    let (whole, part) = (hundredths.abs() / 100, hundredths.abs() % 100);
    let part = format!("{part:02}");
    match (whole, part.trim_end_matches('0')) {
        (whole, "") => format!("{sign}{whole}"),
        (0, part) => format!("{sign}.{part}"),
        (whole, part) => format!("{sign}{whole}.{part}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_go_on_from_where_they_are() {
        assert_eq!(shorter("M1 2L3.5 2L3.5 1.25L0 0Z").as_deref(), Some("M1 2h2.5v-.75l-3.5-1.25z"));
        assert_eq!(shorter("M10.004 0L10.004 0L12 7").as_deref(), Some("M10 0l2 7"));
        assert_eq!(shorter("M1 2C3 4 5 6 7 8"), None);
    }

    #[test]
    fn neighbours_of_one_kind_are_one_path() {
        let line = |y: u8| format!("<path d=\"M0 {y}L5 {y}\" class=\"pen-thin\" stroke=\"currentColor\"/>\n");
        let area = "<path d=\"M0 0L1 0L1 1Z\" class=\"pen-thin paper\" fill=\"white\" fill-rule=\"evenodd\"/>\n";
        let made = slim(&format!("<svg>\n{}{}{area}{area}{}</svg>\n", line(1), line(2), line(3)));
        let short = "<path d=\"M0 0h1v1z\" class=\"paper\" fill=\"white\"/>\n";
        let all = format!(
            "<svg>\n<path d=\"M0 1h5M0 2h5\" stroke=\"currentColor\"/>\n{short}{short}<path d=\"M0 3h5\" stroke=\"currentColor\"/>\n</svg>\n"
        );
        assert_eq!(made, all);
    }

    #[test]
    fn what_texts_share_is_said_once() {
        let text = |word: &str| format!("<text x=\"1\" font-family=\"A, mono\" fill=\"currentColor\">{word}</text>\n");
        let made = slim(&format!("<svg>\n{}{}</svg>\n", text("a"), text("b")));
        let all = "<svg font-family=\"A, mono\">\n<g fill=\"currentColor\">\n<text x=\"1\">a</text>\n<text x=\"1\">b</text>\n</g>\n</svg>\n";
        assert_eq!(made, all);
    }
}
