//! The keys of an enquiry with what is said of each, what stands in where nobody said, and what it is asked as.

use crate::sheet::State;
use std::collections::BTreeMap;
use stillrise_design::enquiry::blocks;
use stillrise_design::enquiry::keys::{BlockSpec, KeyKind, KeySpec};
use stillrise_design::provenance::{Origin, show};
use stillrise_edit::{Said, headings, said};
use stillrise_units::Unit;

/// One key where it stands or may stand.
pub struct Input {
    /// Its path, as the program calls it.
    pub path: String,
    /// Its name within its block: `oil: mean`.
    pub name: String,
    /// As declared.
    pub key: &'static KeySpec,
    /// What is said of it; `None` where nobody said.
    pub said: Option<Said>,
    /// What was taken, where nobody said or claims differ.
    pub taken: Option<Taken>,
    /// What the company's settings say of it, which stands where nothing is said.
    pub settings: Option<String>,
}

/// What stands in for an answer.
#[derive(Clone)]
pub struct Taken {
    /// The value.
    pub value: String,
    /// Lowest and highest plausible answer.
    pub range: (String, String),
    /// Where these come from.
    pub source: String,
    /// Its place in the trail.
    pub node: usize,
}

/// A block with its keys.
pub struct Group {
    /// The block as the program calls it: `stream "wash"`.
    pub head: String,
    /// As declared.
    pub block: &'static BlockSpec,
    /// Whether it stands in the text.
    pub stands: bool,
    /// Whether there may be several.
    pub many: bool,
    /// Its keys.
    pub inputs: Vec<Input>,
}

impl Input {
    /// What is typed into its field: as said; of several claims the first.
    #[must_use]
    pub fn typed(&self) -> String {
        let typed = self.said.as_ref().and_then(|said| said.claims.first()).map_or("", |claim| claim.value.as_str());
        match (self.key.kind, typed) {
            (KeyKind::Flag, "true") => "yes".to_owned(),
            (KeyKind::Flag, "false") => "no".to_owned(),
            _ => typed.to_owned(),
        }
    }

    /// Whether claims on it differ and nobody chose.
    #[must_use]
    pub fn is_contradicted(&self) -> bool {
        self.said.as_ref().is_some_and(|said| said.claims.len() > 1 && said.claims.iter().all(|claim| !claim.chosen))
    }

    /// The words that it takes, if it takes a few of them only.
    #[must_use]
    pub fn words(&self) -> Vec<String> {
        match self.key.kind {
            KeyKind::Choice(words) | KeyKind::ClaimedChoice(words) => {
                words.iter().map(|(word, _)| (*word).to_owned()).collect()
            }
            KeyKind::Named(names) => names(),
            KeyKind::Flag => vec!["yes".to_owned(), "no".to_owned()],
            _ => Vec::new(),
        }
    }

    /// What kind of value it takes, in a word.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        if !self.words().is_empty() {
            return "word";
        }
        match self.key.kind {
            KeyKind::Quantity(_) | KeyKind::Quantities(_) | KeyKind::Results(_) => "quantity",
            _ => "text",
        }
    }

    /// The units that it takes, if it takes a quantity.
    #[must_use]
    pub fn units(&self) -> Vec<&'static str> {
        match self.key.kind {
            KeyKind::Quantity(dim) | KeyKind::Quantities(dim) | KeyKind::Results(dim) => {
                Unit::of_dim(dim).map(|u| u.symbol).filter(|s| !s.is_empty()).collect()
            }
            _ => Vec::new(),
        }
    }

    /// What the key is, with units and bounds, in a sentence for whoever fills it in.
    #[must_use]
    pub fn help(&self) -> String {
        let mut text = self.key.doc.to_owned();
        let units = self.units();
        if !units.is_empty() {
            text.push_str(&format!("; a number and one of {}", units.join(", ")));
        }
        if let Some((low, high)) = self.key.bounds {
            text.push_str(&format!("; between {low} and {high}"));
        }
        text
    }
}

/// All blocks of an enquiry that stand, and those of which there is but one.
#[must_use]
pub fn groups(state: &State) -> Vec<Group> {
    let said = said(&state.text).unwrap_or_default();
    let by_path: BTreeMap<String, &Said> = said.iter().map(|one| (one.path.to_string(), one)).collect();
    let taken = taken(state);
    let standing = standing(state);
    let known = Known { said: &by_path, taken: &taken, standing: &standing };
    let stand = headings(&state.text).unwrap_or_default();
    let mut all = Vec::new();
    for (block, many) in blocks() {
        let own: Vec<String> =
            stand.iter().filter(|heading| core::ptr::eq(heading.block(), block)).map(ToString::to_string).collect();
        let stands = !own.is_empty();
        let heads = if many || stands { own } else { vec![block.name.to_owned()] };
        for head in heads {
            let mut inputs = Vec::new();
            gather(&head, "", block, &known, &mut inputs);
            all.push(Group { head, block, stands, many, inputs });
        }
    }
    all
}

/// What is known of keys, by path.
struct Known<'a> {
    said: &'a BTreeMap<String, &'a Said>,
    taken: &'a BTreeMap<String, Taken>,
    standing: &'a BTreeMap<&'static str, String>,
}

fn gather(head: &str, table: &str, of: &'static BlockSpec, known: &Known<'_>, inputs: &mut Vec<Input>) {
    for key in of.keys() {
        let inner = format!("{table}{}", key.name);
        if let KeyKind::Table(table) = key.kind {
            gather(head, &format!("{inner}."), table(), known, inputs);
            continue;
        }
        let path = format!("{head}.{inner}");
        inputs.push(Input {
            name: inner.replace('.', ": ").replace('_', " "),
            key,
            said: known.said.get(&path).map(|one| (*one).clone()),
            taken: known.taken.get(&path).cloned(),
            settings: known.standing.get(path.as_str()).cloned(),
            path,
        });
    }
}

/// What the company's settings say of keys of the enquiry.
fn standing(state: &State) -> BTreeMap<&'static str, String> {
    let all = state.outcome.enquiry.as_ref().map(|enquiry| enquiry.from_settings()).unwrap_or_default();
    all.into_iter().filter_map(|one| Some((one.above?, one.value))).collect()
}

/// What was taken for keys of which nobody said anything, by path.
fn taken(state: &State) -> BTreeMap<String, Taken> {
    let mut all = BTreeMap::new();
    let Some(settled) = &state.outcome.settled else { return all };
    let system = settled.job.enquiry.system();
    for (node, entry) in settled.job.ledger.entries.iter().enumerate() {
        if let Origin::Assumed(a) = &entry.origin {
            let ends = (show(&a.low, entry.units, system), show(&a.high, entry.units, system));
            let taken = Taken { value: entry.shown(system), range: ends, source: a.source.clone(), node };
            all.entry(a.key.clone()).or_insert(taken);
        }
    }
    all
}
