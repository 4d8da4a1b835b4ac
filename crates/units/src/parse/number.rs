//! The number at the head of a text: decimal marks, digit groups, fractions.

use std::borrow::Cow;

/// A number that was found, and where it ends.
pub(super) struct Number {
    /// The number.
    pub value: f64,
    /// Bytes of the text that it takes.
    pub end: usize,
    /// What had to be interpreted.
    pub notes: Vec<String>,
}

/// How a note ends that a comma was taken to part thousands; nothing to tell where everybody writes so.
pub const THOUSANDS_COMMA: &str = "was read with a thousands comma, not a decimal comma";
/// What is noted of a point with three digits behind it, which parts thousands where commas are decimal: a text that writes
/// no decimal comma needs no such note.
pub const DECIMAL_POINT: &str = "was read with a decimal point; where it parts thousands, leave it out";
/// What is noted of a point with three digits behind it of which the last two are zeros: few write decimals so, and many thousands.
pub const ROUND_POINT: &str = "was read with a decimal point, not a thousands point";
/// What is noted of a decimal comma.
pub const DECIMAL_COMMA: &str = "was read with a decimal comma";

/// Blanks that part digit groups: plain, no-break, thin, narrow no-break, figure.
const BLANKS: [char; 5] = [' ', '\u{a0}', '\u{2009}', '\u{202f}', '\u{2007}'];
/// Apostrophes that part digit groups.
const APOSTROPHES: [char; 2] = ['\'', '’'];
/// Fractions that are one character.
const VULGAR: [(char, f64, f64); 9] = [
    ('¼', 1.0, 4.0),
    ('½', 1.0, 2.0),
    ('¾', 3.0, 4.0),
    ('⅓', 1.0, 3.0),
    ('⅔', 2.0, 3.0),
    ('⅛', 1.0, 8.0),
    ('⅜', 3.0, 8.0),
    ('⅝', 5.0, 8.0),
    ('⅞', 7.0, 8.0),
];

/// Denominators of a ruler: nobody means anything but a fraction.
const RULER: [&str; 6] = ["/2", "/4", "/8", "/16", "/32", "/64"];

/// The number a text begins with; `None` when it begins with none, or with one that cannot be told.
pub(super) fn leading(text: &str) -> Option<Number> {
    let (sign, at) = match text.chars().next()? {
        '+' => (1.0, 1),
        '-' => (-1.0, 1),
        '−' => (-1.0, '−'.len_utf8()),
        _ => (1.0, 0),
    };
    let body = &text[at..];
    if let Some((part, end)) = fraction(body) {
        let shown = &body[..end];
        let ruler = RULER.iter().any(|below| shown.ends_with(below)) || !shown.contains(['/', '⁄']);
        let notes = if ruler { Vec::new() } else { vec![format!("\"{shown}\" was read as a fraction")] };
        return Some(Number { value: sign * part, end: at + end, notes });
    }
    let end = run(body);
    let digits = &body[..end];
    let mut notes = Vec::new();
    let value = decimal(digits, &mut notes)?;
    let whole = digits.chars().all(|c| c.is_ascii_digit() || BLANKS.contains(&c));
    let mixed = if whole { behind(&body[end..]) } else { None };
    let Some((part, more, dashed)) = mixed else {
        return Some(Number { value: sign * value, end: at + end, notes });
    };
    let end = at + end + more;
    if dashed {
        notes.push(format!("\"{}\" was read as a whole number and a fraction, not as a range", &text[..end]));
    }
    Some(Number { value: sign * (value + part), end, notes })
}

/// A fraction behind a whole number: its value, the bytes up to its end, and whether a dash parts the two.
fn behind(text: &str) -> Option<(f64, usize, bool)> {
    let tail = text.trim_start_matches(BLANKS);
    let dash = (tail.len() == text.len()).then(|| text.strip_prefix('-')).flatten();
    let tail = dash.unwrap_or(tail);
    let (part, end) = fraction(tail)?;
    (part < 1.0).then_some((part, text.len() - tail.len() + end, dash.is_some()))
}

/// `3/4` or `¾` at the head of a text.
fn fraction(text: &str) -> Option<(f64, usize)> {
    let first = text.chars().next()?;
    if let Some((c, above, below)) = VULGAR.iter().find(|(c, ..)| *c == first) {
        return Some((above / below, c.len_utf8()));
    }
    let (above, rest) = whole(text)?;
    let rest = rest.strip_prefix(['/', '⁄'])?;
    let (below, rest) = whole(rest)?;
    let goes_on = rest.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '_' | '/' | '⁄'));
    (!goes_on && below > 0.0).then_some((above / below, text.len() - rest.len()))
}

/// A whole number of at most six digits, and what follows.
fn whole(text: &str) -> Option<(f64, &str)> {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    let (digits, rest) = text.split_at(end);
    (digits.len() <= 6).then(|| digits.parse().ok()).flatten().map(|value| (value, rest))
}

/// Where a run of digits, marks, groups and an exponent ends.
fn run(text: &str) -> usize {
    let mut end = 0;
    while let Some(c) = text[end..].chars().next() {
        let behind = &text[end + c.len_utf8()..];
        if c.is_ascii_digit() || matches!(c, '.' | ',' | '_') {
            end += 1;
        } else if (BLANKS.contains(&c) || APOSTROPHES.contains(&c)) && goes_on(&text[..end], c, behind) {
            end += c.len_utf8() + 3;
        } else {
            break;
        }
    }
    // An exponent belongs to it only with digits behind it.
    let tail = &text[end..];
    let Some(power) = tail.strip_prefix(['e', 'E']).filter(|_| end > 0) else { return end };
    let power = power.strip_prefix(['+', '-']).unwrap_or(power);
    let digits = power.bytes().take_while(u8::is_ascii_digit).count();
    if digits == 0 { end } else { end + (tail.len() - power.len()) + digits }
}

/// Whether a mark parts digit groups: one to three digits and whole groups before it, one group behind.
fn goes_on(before: &str, mark: char, behind: &str) -> bool {
    let mut groups = before.split(mark);
    let head = groups.next().unwrap_or("");
    let digits = |t: &str| !t.is_empty() && t.bytes().all(|b| b.is_ascii_digit());
    let parted = digits(head) && head.len() <= 3 && !head.starts_with('0') && groups.all(|g| g.len() == 3 && digits(g));
    let group = behind.len() >= 3 && behind.bytes().take(3).all(|b| b.is_ascii_digit());
    let next = group.then(|| behind[3..].chars().next()).flatten();
    parted && group && !next.is_some_and(|c| c.is_ascii_digit() || matches!(c, '/' | '⁄'))
}

/// An unsigned number that may hold a decimal comma or digit groups.
fn decimal(text: &str, notes: &mut Vec<String>) -> Option<f64> {
    let parted = text.chars().any(|c| BLANKS.contains(&c) || APOSTROPHES.contains(&c));
    // Most numbers are digits and a point: nothing of them is taken out.
    let plain = if text.bytes().all(|b| b.is_ascii_digit() || b == b'.') {
        Cow::Borrowed(text)
    } else {
        Cow::Owned(text.replace('_', "").replace(BLANKS, "").replace(APOSTROPHES, ""))
    };
    if parted {
        notes
            .push(format!("\"{text}\" was read as {plain}: what parts its digits was read as parting groups of three"));
    }
    let (mantissa, power) = plain.find(['e', 'E']).map_or((&*plain, ""), |at| plain.split_at(at));
    let number = |mantissa: &str| {
        if power.is_empty() { mantissa.parse().ok() } else { format!("{mantissa}{power}").parse().ok() }
    };
    let (commas, points) = (mantissa.matches(',').count(), mantissa.matches('.').count());
    if commas == 0 && points < 2 {
        if let Some((_, part)) = mantissa.split_once('.').filter(|(head, part)| in_groups(&[head, part], 3)) {
            let note = if part.ends_with("00") { ROUND_POINT } else { DECIMAL_POINT };
            notes.push(format!("\"{text}\" {note}"));
        }
        return number(mantissa);
    }
    // Whichever mark comes last is the decimal one; the other parts groups.
    let points_first = points > 0 && (commas == 0 || mantissa.rfind('.') < mantissa.find(','));
    if points_first && commas < 2 {
        let (groups, part) = mantissa.split_once(',').unwrap_or((mantissa, ""));
        if !in_groups(&groups.split('.').collect::<Vec<_>>(), 3) {
            return None;
        }
        let mark = if commas == 1 { " and a decimal comma" } else { "" };
        notes.push(format!("\"{text}\" was read with thousands points{mark}"));
        return number(&format!("{}.{part}", groups.replace('.', "")));
    }
    if points > 1 {
        return None;
    }
    let (groups, part) = mantissa.split_once('.').unwrap_or((mantissa, ""));
    let list: Vec<&str> = groups.split(',').collect();
    if !part.contains(',') && in_groups(&list, 3) {
        if commas == 1 && points == 0 {
            notes.push(format!("\"{text}\" {THOUSANDS_COMMA}"));
        }
        return number(&mantissa.replace(',', ""));
    }
    if !part.contains(',') && in_groups(&list, 2) {
        notes.push(format!("\"{text}\" was read with groups of two digits ahead of the last three, as lakh and crore"));
        return number(&mantissa.replace(',', ""));
    }
    if commas == 1 && points == 0 {
        notes.push(format!("\"{text}\" {DECIMAL_COMMA}"));
        return number(&mantissa.replace(',', "."));
    }
    None
}

/// Whether groups of digits are those of a whole number: a head, groups of `size`, three at the end.
fn in_groups(groups: &[&str], size: usize) -> bool {
    let [head, middle @ .., last] = groups else { return false };
    let digits = |t: &&str| t.bytes().all(|b| b.is_ascii_digit());
    (1..=size).contains(&head.len())
        && *head != "0"
        && middle.iter().all(|g| g.len() == size)
        && last.len() == 3
        && groups.iter().all(digits)
}
