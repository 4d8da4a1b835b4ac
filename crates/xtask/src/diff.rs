//! Where two texts part, line by line.

/// Lines of context around a change.
const CONTEXT: usize = 2;
/// Above this many pairs of lines the changed middle is shown whole, not aligned.
const PAIRS: usize = 4_000_000;

/// One line of a difference.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Line<'a> {
    Same(&'a str),
    Gone(&'a str),
    New(&'a str),
}

/// The difference between two texts, `-` what goes and `+` what comes; empty when they are equal.
#[must_use]
pub fn lines(old: &str, new: &str) -> String {
    if old == new {
        return String::new();
    }
    let all = align(&old.split('\n').collect::<Vec<_>>(), &new.split('\n').collect::<Vec<_>>());
    let changed = |i: usize| !matches!(all[i], Line::Same(_));
    let mut out = String::new();
    let (mut number, mut shown) = (0, true);
    for (i, line) in all.iter().enumerate() {
        if !matches!(line, Line::New(_)) {
            number += 1;
        }
        let (from, to) = (i.saturating_sub(CONTEXT), (i + CONTEXT + 1).min(all.len()));
        if !(from..to).any(changed) {
            shown = false;
            continue;
        }
        if !shown || out.is_empty() {
            out.push_str(&format!("  @ line {}\n", number.max(1)));
        }
        shown = true;
        let (mark, text) = match line {
            Line::Same(text) => (' ', text),
            Line::Gone(text) => ('-', text),
            Line::New(text) => ('+', text),
        };
        out.push_str(&format!("  {mark} {text}\n"));
    }
    out
}

/// Longest common subsequence of the part between equal heads and equal tails.
fn align<'a>(old: &[&'a str], new: &[&'a str]) -> Vec<Line<'a>> {
    let head = old.iter().zip(new).take_while(|(a, b)| a == b).count();
    let tail = old[head..].iter().rev().zip(new[head..].iter().rev()).take_while(|(a, b)| a == b).count();
    let (a, b) = (&old[head..old.len() - tail], &new[head..new.len() - tail]);
    let mut out: Vec<Line<'a>> = old[..head].iter().map(|l| Line::Same(l)).collect();
    if a.len().saturating_mul(b.len()) > PAIRS {
        out.extend(a.iter().map(|l| Line::Gone(l)));
        out.extend(b.iter().map(|l| Line::New(l)));
    } else {
        middle(a, b, &mut out);
    }
    out.extend(old[old.len() - tail..].iter().map(|l| Line::Same(l)));
    out
}

fn middle<'a>(a: &[&'a str], b: &[&'a str], out: &mut Vec<Line<'a>>) {
    let width = b.len() + 1;
    let mut common = vec![0_u32; (a.len() + 1) * width];
    for i in (0..a.len()).rev() {
        for j in (0..b.len()).rev() {
            common[i * width + j] = if a[i] == b[j] {
                common[(i + 1) * width + j + 1] + 1
            } else {
                common[(i + 1) * width + j].max(common[i * width + j + 1])
            };
        }
    }
    let (mut i, mut j) = (0, 0);
    while i < a.len() && j < b.len() {
        if a[i] == b[j] {
            out.push(Line::Same(a[i]));
            i += 1;
            j += 1;
        } else if common[(i + 1) * width + j] >= common[i * width + j + 1] {
            out.push(Line::Gone(a[i]));
            i += 1;
        } else {
            out.push(Line::New(b[j]));
            j += 1;
        }
    }
    out.extend(a[i..].iter().map(|l| Line::Gone(l)));
    out.extend(b[j..].iter().map(|l| Line::New(l)));
}

#[cfg(test)]
mod tests {
    use super::lines;

    #[test]
    fn equal_texts_have_none() {
        assert_eq!(lines("a\nb\n", "a\nb\n"), "");
    }

    #[test]
    fn a_changed_line_is_shown_with_its_neighbours() {
        let old = "1\n2\n3\n4\n5\n6\n7\n8\n";
        let shown = lines(old, &old.replace('4', "four"));
        assert_eq!(shown, "  @ line 2\n    2\n    3\n  - 4\n  + four\n    5\n    6\n");
    }

    #[test]
    fn additions_ends_and_far_changes_are_apart() {
        assert_eq!(lines("a\nb\n", "a\nx\nb\n"), "  @ line 1\n    a\n  + x\n    b\n    \n");
        assert!(lines("a", "a\n").contains("+ "), "a missing last line end is a difference");
        let old: String = (0..30).map(|n| format!("{n}\n")).collect();
        let new = old.replace("\n3\n", "\nthree\n").replace("\n25\n", "\n");
        assert_eq!(lines(&old, &new).matches('@').count(), 2);
    }
}
