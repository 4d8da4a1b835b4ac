//! The calculation report, everything a reviewer needs in the order in which it is checked, and the trail, its annex.
//!
//! No physics here: every number was found before and stands in the trail. What a person wrote
//! reaches the template as data; equations are the handbook's own text.

mod around;
mod basis;
pub(crate) mod blocks;
mod cases;
mod closing;
mod containment;
pub(crate) mod cover;
mod effluent;
mod european;
mod evidence;
mod glossary;
mod hydraulics;
mod ladder;
mod rating;
mod regulation;
pub(crate) mod service;
mod shop;
mod sources;
mod trail;
mod unit;
pub(crate) mod verdicts;
pub(crate) mod worked;

use crate::Edition;
use crate::charts::Drawn;
use blocks::Blocks;
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;
use stillrise_design::Node;
use stillrise_design::provenance::{Entry, Pair};
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;
use stillrise_units::{System, Typed, print};

/// Everything a reviewer needs, in the order in which it is checked, but for the trail.
pub(crate) fn calculation(r: &mut Report<'_>, charts: &[Drawn]) {
    verdicts::triage(r);
    basis::basis(r);
    cases::cases(r);
    unit::unit(r);
    effluent::effluent(r, charts);
    hydraulics::hydraulics(r);
    evidence::evidence(r);
    rating::rating(r);
    verdicts::rules(r);
    verdicts::questions(r);
    shop::shop(r);
    service::cautions(r);
    glossary::glossary(r);
    closing::closing(r);
}

/// The methods that the authority asks for.
pub(crate) fn methods(r: &mut Report<'_>) {
    regulation::regulation(r);
}

/// What a reviewer may turn to beside the report.
pub(crate) fn beside(r: &mut Report<'_>, charts: &[Drawn]) {
    effluent::beside(r, charts);
    hydraulics::solids(r);
    verdicts::quiet(r);
    service::service(r);
}

/// Every value with where it comes from, and the formulas with their sources.
pub(crate) fn annex(r: &mut Report<'_>) {
    trail::trail(r);
    sources::sources(r);
    glossary::glossary(r);
}

/// The first 16 digits of the SHA-256 over every value of the trail: two reports that agree in it
/// rest on the same numbers.
pub(crate) fn fingerprint(settled: &Settled) -> String {
    let mut hash = Sha256::new();
    for entry in &settled.job.ledger.entries {
        hash.update(entry.section.as_bytes());
        hash.update([0]);
        hash.update(entry.label.as_bytes());
        hash.update([0]);
        add(&mut hash, &entry.value);
    }
    hash.finalize().iter().take(8).map(|byte| format!("{byte:02x}")).collect()
}

fn add(hash: &mut Sha256, value: &Arg) {
    match value {
        Arg::Number(value) => hash.update(value.to_bits().to_le_bytes()),
        Arg::Choice(word) => hash.update(word.as_bytes()),
        Arg::Series(pairs) => {
            for (x, y) in pairs {
                hash.update(x.to_bits().to_le_bytes());
                hash.update(y.to_bits().to_le_bytes());
            }
        }
        Arg::Group(group, fields) => {
            hash.update(group.word.as_bytes());
            fields.iter().for_each(|field| add(hash, field));
        }
        Arg::Groups(groups) => groups.iter().for_each(|group| add(hash, group)),
    }
}

/// A document in the making.
pub(crate) struct Report<'a> {
    pub(crate) settled: &'a Settled,
    pub(crate) edition: Edition,
    pub(crate) system: System,
    pub(crate) out: Blocks,
    /// What the sheets of the drawing set are called, where somebody drew it already.
    pub(crate) sheets: Option<Vec<String>>,
}

impl<'a> Report<'a> {
    /// An empty one.
    pub(crate) fn new(settled: &'a Settled, edition: Edition) -> Self {
        Self { settled, edition, system: settled.job.enquiry.system(), out: Blocks::default(), sheets: None }
    }
    /// An entry of the trail.
    pub(crate) fn entry(&self, at: Node) -> Option<&'a Entry> {
        self.settled.job.ledger.entry(at)
    }
    /// Its number in print.
    pub(crate) fn no(&self, at: Node) -> String {
        at.index().map_or_else(String::new, |k| (k + 1).to_string())
    }
    /// A quantity with its unit.
    pub(crate) fn show<Q: Typed>(&self, q: Q, units: Pair) -> String {
        print::told(q.si(), self.system.pick(units))
    }
    /// A quantity with its unit as prose and tables of the other papers tell it: three digits.
    pub(crate) fn prose<Q: Typed>(&self, q: Q, units: Pair) -> String {
        let unit = self.system.pick(units);
        print::in_prose(unit.to_si(print::or_nothing(unit.from_si(q.si()))), unit)
    }
    /// A quantity without its unit, which stands in the head of the column.
    pub(crate) fn digits<Q: Typed>(&self, q: Q, units: Pair, digits: usize) -> String {
        print::digits(print::or_nothing(self.system.pick(units).from_si(q.si())), digits)
    }
    /// The symbol of the unit in print.
    pub(crate) fn symbol(&self, units: Pair) -> &'static str {
        self.system.pick(units).symbol
    }
    /// Label, value, origin and number of an entry: a row of most tables of the basis.
    pub(crate) fn row(&self, at: Node) -> Option<[String; 4]> {
        let entry = self.entry(at)?;
        Some([capital(&entry.label), entry.told(self.system), trail::origin_in_prose(self, entry), self.no(at)])
    }
    /// These entries and all that they rest on, as places in the trail.
    pub(crate) fn behind(&self, roots: impl IntoIterator<Item = Node>) -> BTreeSet<usize> {
        let mut open: Vec<Node> = roots.into_iter().collect();
        let mut seen = BTreeSet::new();
        while let Some(node) = open.pop() {
            let (Some(k), Some(entry)) = (node.index(), self.entry(node)) else { continue };
            if seen.insert(k) {
                open.extend(entry.origin.inputs());
            }
        }
        seen
    }
    /// A table of such rows.
    pub(crate) fn rows(&self, nodes: impl IntoIterator<Item = Node>) -> blocks::Table {
        let mut table = blocks::Table::new([
            blocks::wide("Quantity", 1.25),
            blocks::slim("Value"),
            blocks::wide("Origin", 2.0),
            blocks::number("No.", ""),
        ]);
        // Two ways to a result may share a step: it stands once.
        let mut once = BTreeSet::new();
        for row in nodes.into_iter().filter(|at| once.insert(*at)).filter_map(|at| self.row(at)) {
            table.row(row);
        }
        table.marked()
    }
}

/// The same text with a capital letter.
pub(crate) fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}

/// The same text, ending in one full stop.
pub(crate) fn sentence(text: &str) -> String {
    let text = text.trim_end_matches('.');
    if text.is_empty() { String::new() } else { format!("{}.", capital(text)) }
}
