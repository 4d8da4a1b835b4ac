//! Laboratory results as a key's value: a number and a unit, or less than a reporting limit, each with its date.

use super::keys::{Field, KeyKind, KeySpec};
use super::reader::Reader;
use stillrise_handbook::page::Series;
use stillrise_units::Typed;
use stillrise_units::parse::Written;
use toml::de::DeValue;

/// Results of one key that are read; more is a data base, not an enquiry.
const MOST: usize = 1000;

/// One result.
#[derive(Debug, Clone)]
pub struct LabResult {
    /// When it was taken, as written.
    pub date: Option<String>,
    /// The number; of a non-detect its reporting limit.
    pub written: Written,
    /// Whether it was detected.
    pub detected: bool,
}

impl LabResult {
    /// As it would be written.
    #[must_use]
    pub fn text(&self) -> String {
        format!("{}{}", if self.detected { "" } else { "<" }, self.written.text)
    }
}

/// A list of results of one quantity, in order.
#[derive(Debug, Clone)]
pub struct Results<Q> {
    /// The results.
    pub items: Vec<LabResult>,
    /// Where the list stands.
    pub place: String,
    of: core::marker::PhantomData<Q>,
}

impl<Q> Default for Results<Q> {
    fn default() -> Self {
        Self { items: Vec::new(), place: String::new(), of: core::marker::PhantomData }
    }
}

impl<Q> Results<Q> {
    /// Number in SI, and 1 where it was detected or 0 below its reporting limit.
    #[must_use]
    pub fn series(&self) -> Series {
        Series(self.items.iter().map(|r| (r.written.si(), if r.detected { 1.0 } else { 0.0 })).collect())
    }
    /// As it would be written.
    #[must_use]
    pub fn text(&self) -> String {
        self.items.iter().map(LabResult::text).collect::<Vec<_>>().join(", ")
    }
}

/// What stands behind the mark of a non-detect, if it is one.
fn non_detect(text: &str) -> Option<&str> {
    if let Some(limit) = text.strip_prefix('<') {
        return Some(limit.trim());
    }
    let word = ["not detected", "ND", "nd", "n.d."].into_iter().find_map(|word| text.strip_prefix(word))?;
    let rest = word.trim();
    let rest = rest.strip_prefix('(').and_then(|r| r.strip_suffix(')')).unwrap_or(rest).trim();
    Some(["<", "at ", "below "].into_iter().find_map(|mark| rest.strip_prefix(mark)).unwrap_or(rest).trim())
}

impl<Q: Typed> Field for Results<Q> {
    const KIND: KeyKind = KeyKind::Results(Q::DIM);
    fn is_said(&self) -> bool {
        !self.items.is_empty()
    }
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let list: Vec<&DeValue<'_>> = match value {
            DeValue::Array(list) => list.iter().map(|v| v.get_ref()).collect(),
            value => vec![value],
        };
        if list.is_empty() || list.len() > MOST {
            let reason = if list.is_empty() {
                "is an empty list".to_owned()
            } else {
                format!("{} results; {MOST} are the most that are read", list.len())
            };
            reader.fault(place, reason, format!("write {} = {}", spec.name, spec.like));
            return Self::default();
        }
        let mut items = Vec::new();
        for (i, value) in list.into_iter().enumerate() {
            let place = format!("{place}, result {}", i + 1);
            let Some(text) = value.as_str() else {
                let reason = format!("is a {}, not a text", value.type_str());
                reader.fault(&place, reason, "write for instance \"12 mg/L\" or \"<5 mg/L\"");
                continue;
            };
            let (date, text) = match text.rsplit_once(':') {
                Some((date, text)) => (Some(date.trim().to_owned()), text.trim()),
                None => (None, text.trim()),
            };
            let limit = non_detect(text);
            if limit == Some("") {
                reader.fault(
                    &place,
                    format!("\"{text}\" has no reporting limit"),
                    "write the limit that the laboratory reports, as \"<5 mg/L\"",
                );
                continue;
            }
            if text.starts_with('>') {
                reader.fault(
                    &place,
                    format!("\"{text}\" lies above what the method could measure"),
                    "leave it out, or have the sample diluted and analysed again",
                );
                continue;
            }
            let number = DeValue::String(limit.unwrap_or(text).into());
            if let Some(written) = reader.quantity(spec, Q::DIM, &place, &number) {
                items.push(LabResult { date, written, detected: limit.is_none() });
            }
        }
        Self { items, place: place.to_owned(), of: core::marker::PhantomData }
    }
}

#[cfg(test)]
mod tests {
    use super::non_detect;

    #[test]
    fn marks_of_a_non_detect() {
        for text in ["<5 mg/L", "< 5 mg/L", "ND (5 mg/L)", "ND<5 mg/L", "nd at 5 mg/L", "not detected (<5 mg/L)"] {
            assert_eq!(non_detect(text).map(|t| t.trim_start_matches('<')), Some("5 mg/L"), "{text}");
        }
        assert_eq!(non_detect("5 mg/L"), None);
        assert_eq!(non_detect("ND"), Some(""));
    }
}
