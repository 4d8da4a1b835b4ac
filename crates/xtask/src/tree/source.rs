//! Rust source as the rules read it: comments and strings blanked, tests cut out.
//!
//! Lines and columns stay where they were, so a place found in the blanked text is the place
//! in the file. This is a scanner, not a parser: it knows what hides code, and nothing else.

/// The text with comments, strings and character literals replaced by blanks.
#[must_use]
pub fn code(text: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    let mut out = String::with_capacity(text.len());
    let mut at = 0;
    while at < chars.len() {
        let end = match hidden(&chars, at) {
            Some(end) => end,
            None => {
                out.push(chars[at]);
                at += 1;
                continue;
            }
        };
        for c in &chars[at..end] {
            out.push(if *c == '\n' { '\n' } else { ' ' });
        }
        at = end;
    }
    out
}

/// Where the comment, string or character literal that starts at `at` ends, if one does.
fn hidden(chars: &[char], at: usize) -> Option<usize> {
    let next = |n: usize| chars.get(at + n).copied();
    match chars[at] {
        '/' if next(1) == Some('/') => Some(find(chars, at, |c, i| c[i] == '\n').unwrap_or(chars.len())),
        '/' if next(1) == Some('*') => Some(block_comment(chars, at)),
        '"' => Some(string(chars, at)),
        'r' if at == 0
            || !is_word(chars[at - 1])
            || (matches!(chars[at - 1], 'b' | 'c') && !ends_word(chars, at - 1)) =>
        {
            raw_string(chars, at)
        }
        '\'' if next(1) == Some('\\') => {
            // The escaped character may itself be a quote.
            Some(find(chars, at + 3, |c, i| c[i] == '\'').map_or(chars.len(), |i| i + 1))
        }
        '\'' if next(2) == Some('\'') && next(1) != Some('\'') => Some(at + 3),
        _ => None,
    }
}

/// True when the character at `at` continues a longer word to its left.
fn ends_word(chars: &[char], at: usize) -> bool {
    at > 0 && is_word(chars[at - 1])
}

fn find(chars: &[char], from: usize, is_it: impl Fn(&[char], usize) -> bool) -> Option<usize> {
    (from..chars.len()).find(|i| is_it(chars, *i))
}

fn block_comment(chars: &[char], at: usize) -> usize {
    let (mut depth, mut i) = (0_usize, at);
    while i < chars.len() {
        match (chars[i], chars.get(i + 1)) {
            ('/', Some('*')) => {
                depth += 1;
                i += 2;
            }
            ('*', Some('/')) => {
                depth -= 1;
                i += 2;
                if depth == 0 {
                    return i;
                }
            }
            _ => i += 1,
        }
    }
    chars.len()
}

fn string(chars: &[char], at: usize) -> usize {
    let mut i = at + 1;
    while i < chars.len() {
        match chars[i] {
            '\\' => i += 2,
            '"' => return i + 1,
            _ => i += 1,
        }
    }
    chars.len()
}

fn raw_string(chars: &[char], at: usize) -> Option<usize> {
    let hashes = chars[at + 1..].iter().take_while(|c| **c == '#').count();
    let open = at + 1 + hashes;
    if chars.get(open) != Some(&'"') {
        return None;
    }
    let closes =
        |c: &[char], i: usize| c[i] == '"' && c.len() > i + hashes && c[i + 1..=i + hashes].iter().all(|h| *h == '#');
    Some(find(chars, open + 1, closes).map_or(chars.len(), |i| i + 1 + hashes))
}

/// What marks an item as one of a test.
const TEST: &str = "#[cfg(test)]";

/// Code without the items marked `#[cfg(test)]`; takes what [`code`] returns.
#[must_use]
pub fn without_tests(code: &str) -> String {
    let mut out = String::with_capacity(code.len());
    let mut rest = code;
    while let Some(start) = rest.find(TEST) {
        let end = start + item_end(&rest[start..]);
        out.push_str(&rest[..start]);
        out.extend(rest[start..end].chars().map(|c| if c == '\n' { '\n' } else { ' ' }));
        rest = &rest[end..];
    }
    out.push_str(rest);
    out
}

/// Length of the item at the start of `text`, its attributes included.
fn item_end(text: &str) -> usize {
    let (mut round, mut curly) = (0_i32, 0_i32);
    for (at, c) in text.char_indices() {
        match c {
            '(' | '[' => round += 1,
            ')' | ']' => round -= 1,
            '{' => curly += 1,
            '}' => {
                curly -= 1;
                if curly == 0 && round == 0 {
                    return at + 1;
                }
            }
            ';' if round == 0 && curly == 0 => return at + 1,
            _ => {}
        }
    }
    text.len()
}

/// The plain texts of a file as they are written, each with its line, from 1; none of a comment or of an item marked
/// `#[cfg(test)]`.
#[must_use]
pub fn strings(text: &str) -> Vec<(usize, String)> {
    let code = code(text);
    let mut tests = Vec::new();
    let mut from = 0;
    while let Some(start) = code[from..].find(TEST).map(|at| from + at) {
        from = start + item_end(&code[start..]);
        tests.push(line_of(&code, start)..=line_of(&code, from));
    }
    let chars: Vec<char> = text.chars().collect();
    let (mut found, mut at, mut line) = (Vec::new(), 0, 1);
    while at < chars.len() {
        let end = hidden(&chars, at).unwrap_or(at + 1);
        if chars[at] == '"' && !tests.iter().any(|lines| lines.contains(&line)) {
            found.push((line, chars[at + 1..end.max(at + 2) - 1].iter().collect()));
        }
        line += chars[at..end].iter().filter(|c| **c == '\n').count();
        at = end;
    }
    found
}

/// Letter, digit or underscore.
#[must_use]
pub fn is_word(c: char) -> bool {
    c.is_alphanumeric() || c == '_'
}

/// Byte positions where `needle` stands; where it begins or ends in a word, as a whole word.
pub fn places<'a>(code: &'a str, needle: &'a str) -> impl Iterator<Item = usize> + 'a {
    let glued = |a: Option<char>, b: Option<char>| a.is_some_and(is_word) && b.is_some_and(is_word);
    code.match_indices(needle).map(|(at, _)| at).filter(move |at| {
        let before = code[..*at].chars().next_back();
        let after = code[at + needle.len()..].chars().next();
        !glued(before, needle.chars().next()) && !glued(needle.chars().next_back(), after)
    })
}

/// Line number, from 1, of a byte position.
#[must_use]
pub fn line_of(text: &str, at: usize) -> usize {
    text[..at].matches('\n').count() + 1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_strings_and_characters_are_blanked() {
        let text = "a(\"std::fs \\\" x\"); // std::fs\nb('\"', '\\'', r#\"q \" q\"#); /* x /* y */ z */ c::<'a>()";
        let blank = code(text);
        assert_eq!(blank.chars().count(), text.chars().count());
        assert!(!blank.contains("std") && !blank.contains('q') && !blank.contains('z'), "{blank}");
        assert!(blank.contains("b(") && blank.contains("c::<'a>()"), "{blank}");
        assert_eq!(code("for bar in x {}"), "for bar in x {}");
        assert_eq!(code("br\"std\" + var\"y\""), "b       + var   ");
    }

    #[test]
    fn texts_are_found_with_their_lines() {
        let text =
            "f(\"a \\\" b\");\n// \"c\"\ng('\"', \"\",\n  \"d\");\n#[cfg(test)]\nmod tests { h(\"e\"); }\nh(\"f\");";
        let found = strings(text);
        let found: Vec<(usize, &str)> = found.iter().map(|(line, text)| (*line, text.as_str())).collect();
        assert_eq!(found, [(1, "a \\\" b"), (3, ""), (4, "d"), (7, "f")]);
    }

    #[test]
    fn test_items_are_cut_out_and_the_rest_stays_in_place() {
        let text = "fn a() {}\n#[cfg(test)]\nmod tests {\n  fn b() { x([1; 2]); }\n}\nfn c() {}\n#[cfg(test)]\nuse d;\nfn e() {}";
        let kept = without_tests(text);
        assert!(kept.contains("fn a()") && kept.contains("fn c()") && kept.contains("fn e()"));
        assert!(!kept.contains("fn b()") && !kept.contains("use d"));
        assert_eq!(kept.lines().count(), text.lines().count());
    }

    #[test]
    fn places_are_whole_words() {
        assert_eq!(places("sin a.sin( asin( x.sin_cos(", "sin").collect::<Vec<_>>(), [0, 6]);
        assert_eq!(line_of("a\nb\nc", 4), 3);
    }
}
