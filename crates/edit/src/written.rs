//! A value as a person types it and as TOML writes it. Nothing is judged here: what is no number, no word and no yes is
//! written as the text that it is, and the reader of enquiries says what is wrong with it.

use crate::tree::{Node, What};
use stillrise_design::enquiry::keys::KeyKind;
use stillrise_units::Dim;

/// A text between quotes, in one line.
pub(crate) fn quoted(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    out.push('"');
    for c in text.chars() {
        match c {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\r' => out.push_str("\\r"),
            '\t' => out.push_str("\\t"),
            c if c.is_control() => out.push_str(&format!("\\u{:04X}", u32::from(c))),
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

/// Whether a text can stand as a number without quotes and reads the same there.
fn is_number(text: &str) -> bool {
    let digits = text.strip_prefix('-').unwrap_or(text);
    let (whole, part) = digits.split_once('.').unwrap_or((digits, "0"));
    let all = |t: &str| !t.is_empty() && t.bytes().all(|b| b.is_ascii_digit());
    text.len() <= 15 && all(whole) && all(part) && (whole == "0" || !whole.starts_with('0'))
}

/// The things that a typed list holds: parted by semicolons or lines. Texts without either are parted by commas; one
/// text that holds a comma ends with a semicolon.
pub(crate) fn items(kind: KeyKind, typed: &str) -> Vec<&str> {
    // As the file writes it: each thing between quotes.
    if let Some(inner) = typed.trim().strip_prefix('[').and_then(|rest| rest.strip_suffix(']'))
        && inner.contains('"')
    {
        return inner.split('"').skip(1).step_by(2).map(str::trim).filter(|part| !part.is_empty()).collect();
    }
    let parts: Vec<&str> = if matches!(kind, KeyKind::Texts) && !typed.contains([';', '\n']) {
        typed.split(',').collect()
    } else {
        typed.split([';', '\n']).collect()
    };
    parts.into_iter().map(str::trim).filter(|part| !part.is_empty()).collect()
}

/// Whether a key of this kind lists things that have no claims of their own.
pub(crate) fn is_list(kind: KeyKind) -> bool {
    matches!(kind, KeyKind::Texts | KeyKind::Results(_) | KeyKind::Curve | KeyKind::Quantities(_))
}

/// What is typed, as TOML writes it.
pub(crate) fn written(kind: KeyKind, typed: &str) -> String {
    let word = typed.trim();
    match kind {
        KeyKind::Quantity(Dim::Ratio) | KeyKind::Quantities(Dim::Ratio) if is_number(word) => word.to_owned(),
        KeyKind::Count if is_number(word) && !word.contains('.') => word.to_owned(),
        KeyKind::Flag if ["yes", "true"].iter().any(|yes| word.eq_ignore_ascii_case(yes)) => "true".to_owned(),
        KeyKind::Flag if ["no", "false"].iter().any(|no| word.eq_ignore_ascii_case(no)) => "false".to_owned(),
        kind if is_list(kind) => {
            let one = |item: &str| match kind {
                KeyKind::Quantities(dim) => written(KeyKind::Quantity(dim), item),
                _ => quoted(item),
            };
            format!("[{}]", items(kind, typed).into_iter().map(one).collect::<Vec<_>>().join(", "))
        }
        _ => quoted(typed),
    }
}

/// A value as it would be typed.
pub(crate) fn typed(text: &str, kind: KeyKind, node: &Node) -> String {
    match &node.what {
        What::Text(text) => text.clone(),
        What::Flag(flag) => flag.to_string(),
        What::List(list) if is_list(kind) => {
            let all: Vec<String> = list.iter().map(|item| typed(text, KeyKind::Text, item)).collect();
            let is_open = matches!(kind, KeyKind::Texts) && all.len() == 1 && all[0].contains(',');
            if is_open { format!("{};", all[0]) } else { all.join("; ") }
        }
        _ => text.get(node.whole()).unwrap_or_default().to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_typed_is_written_for_its_kind() {
        let flow = KeyKind::Quantity(Dim::Flow);
        let ratio = KeyKind::Quantity(Dim::Ratio);
        for (kind, typed, expected) in [
            (flow, "120 gpm", "\"120 gpm\""),
            (flow, "120", "\"120\""),
            (ratio, " 1.8", "1.8"),
            (ratio, "1,8", "\"1,8\""),
            (ratio, "007", "\"007\""),
            (ratio, "99999999999999999999", "\"99999999999999999999\""),
            (ratio, "5 %", "\"5 %\""),
            (KeyKind::Count, "2", "2"),
            (KeyKind::Count, "2.5", "\"2.5\""),
            (KeyKind::Flag, "Yes", "true"),
            (KeyKind::Flag, "false", "false"),
            (KeyKind::Flag, "maybe", "\"maybe\""),
            (KeyKind::Text, "a \"b\"\\\n\u{7f}", "\"a \\\"b\\\"\\\\\\n\\u007F\""),
            (KeyKind::Texts, "[\"a, b\", \"c\"]", "[\"a, b\", \"c\"]"),
            (KeyKind::Texts, "a, b", "[\"a\", \"b\"]"),
            (KeyKind::Texts, "a, b; c", "[\"a, b\", \"c\"]"),
            (KeyKind::Texts, "a, b;", "[\"a, b\"]"),
            (KeyKind::Curve, "20 um: 5 %\n60 um: 40,5 %", "[\"20 um: 5 %\", \"60 um: 40,5 %\"]"),
            (KeyKind::Quantities(Dim::Flow), "60 gpm; 60 gpm", "[\"60 gpm\", \"60 gpm\"]"),
            (KeyKind::Results(Dim::Density), "<5 mg/L; ", "[\"<5 mg/L\"]"),
        ] {
            assert_eq!(written(kind, typed), expected, "{typed}");
        }
    }
}
