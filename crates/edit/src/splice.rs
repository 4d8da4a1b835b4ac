//! Changes to a text by the bytes that go and the words that come in their place.

use core::ops::Range;

/// Bytes that go, and what comes in their place.
pub(crate) type Edit = (Range<usize>, String);

/// The text with all changes made. They may touch but not overlap; of two at one place the first comes first.
pub(crate) fn spliced(text: &str, mut edits: Vec<Edit>) -> String {
    edits.sort_by_key(|(at, _)| at.start);
    let mut out = String::with_capacity(text.len() + edits.iter().map(|(_, new)| new.len()).sum::<usize>());
    let mut from = 0;
    for (at, new) in edits {
        out.push_str(text.get(from..at.start).unwrap_or_default());
        out.push_str(&new);
        from = from.max(at.end);
    }
    out.push_str(text.get(from..).unwrap_or_default());
    out
}

#[cfg(test)]
mod tests {
    use super::spliced;

    #[test]
    fn changes_are_made_from_front_to_back() {
        let edits = vec![(4..5, "E".to_owned()), (1..1, "x".to_owned()), (1..3, String::new())];
        assert_eq!(spliced("abcdef", edits), "axdEf");
    }
}
