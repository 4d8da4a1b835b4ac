//! A word of a closed set that may be claimed by several people: how a valve stands, say.

use super::fields::words;
use super::keys::{Field, KeyKind, KeySpec};
use super::reader::Reader;
use stillrise_handbook::page::{Arg, Argument};
use stillrise_units::nearest;
use toml::de::DeValue;

/// One claim on a word.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WordClaim<C> {
    /// The word.
    pub word: C,
    /// Who or what says so, if said.
    pub from: Option<String>,
    /// Whether a person chose it among contradicting ones.
    pub chosen: bool,
    /// Why.
    pub because: Option<String>,
}

/// A word with all claims on it; empty when nobody said.
#[derive(Debug, Clone)]
pub struct ClaimedWord<C> {
    /// The claims, in the order of the file.
    pub claims: Vec<WordClaim<C>>,
    /// Where it stands: `containment "pit": drain`.
    pub place: String,
}

impl<C> Default for ClaimedWord<C> {
    fn default() -> Self {
        Self { claims: Vec::new(), place: String::new() }
    }
}

impl<C: Copy + PartialEq> ClaimedWord<C> {
    /// Whether the claims differ and nobody chose.
    #[must_use]
    pub fn is_open(&self) -> bool {
        let chosen = self.claims.iter().any(|c| c.chosen);
        !chosen && self.claims.iter().any(|c| c.word != self.claims[0].word)
    }
    /// The claim that stands: the one a person chose, or the one that all make.
    #[must_use]
    pub fn settled(&self) -> Option<&WordClaim<C>> {
        if self.is_open() {
            return None;
        }
        self.claims.iter().find(|c| c.chosen).or_else(|| self.claims.first())
    }
}

impl<C: Argument + Copy> Field for ClaimedWord<C> {
    const KIND: KeyKind = KeyKind::ClaimedChoice(words::<C>());
    fn is_said(&self) -> bool {
        !self.claims.is_empty()
    }
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let claims: Vec<WordClaim<C>> = match value {
            DeValue::Array(list) => list.iter().filter_map(|v| claim(reader, spec, place, v.get_ref())).collect(),
            value => claim(reader, spec, place, value).into_iter().collect(),
        };
        if claims.iter().filter(|c| c.chosen).count() > 1 {
            reader.fault(place, "more than one claim is marked chosen", "mark one");
        }
        Self { claims, place: place.to_owned() }
    }
}

/// One claim: a word, or a table with value, from, chosen, because.
fn claim<C: Argument>(
    reader: &mut Reader,
    spec: &'static KeySpec,
    place: &str,
    value: &DeValue<'_>,
) -> Option<WordClaim<C>> {
    let DeValue::Table(table) = value else {
        return Some(WordClaim { word: word(reader, spec, place, value)?, from: None, chosen: false, because: None });
    };
    let (mut found, mut from, mut chosen, mut because) = (None, None, false, None);
    for (key, value) in table {
        match (key.get_ref().as_ref(), value.get_ref()) {
            ("value", value) => found = Some(word(reader, spec, place, value)?),
            ("from", DeValue::String(text)) => from = Some(text.to_string()),
            ("because", DeValue::String(text)) => because = Some(text.to_string()),
            ("chosen", DeValue::Boolean(flag)) => chosen = *flag,
            (other, _) => reader.fault(
                place,
                format!("\"{other}\" does not belong to a claim, or is of the wrong kind"),
                "a claim on a word has value, from, chosen and because",
            ),
        }
    }
    if found.is_none() {
        let remedy = format!("write {} = {{ value = {}, from = \"...\" }}", spec.name, spec.like);
        reader.fault(place, "a claim without value", remedy);
    }
    Some(WordClaim { word: found?, from, chosen, because })
}

fn word<C: Argument>(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Option<C> {
    let text = value.as_str().unwrap_or("");
    let found = words::<C>().iter().find(|(word, _)| *word == text);
    let choice = found.and_then(|(word, _)| C::from_arg(&Arg::Choice(word)));
    if choice.is_none() {
        let names: Vec<&str> = words::<C>().iter().map(|(word, _)| *word).collect();
        let remedy = match nearest(text, names.iter().copied()) {
            Some(near) if !text.is_empty() => format!("did you mean \"{near}\"?"),
            _ => format!("use one of {}", names.join(", ")),
        };
        reader.fault(place, format!("\"{text}\" is not a word of \"{}\"", spec.name), remedy);
    }
    choice
}
