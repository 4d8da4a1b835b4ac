//! The calculation report: everything a reviewer needs, in the order in which it is checked.
//!
//! No physics here: every number was found before and stands in the trail. What a person wrote
//! reaches the template as data; equations are the handbook's own text.

mod around;
mod basis;
mod blocks;
mod cases;
mod closing;
mod containment;
mod cover;
mod effluent;
mod european;
mod evidence;
mod hydraulics;
mod ladder;
mod rating;
mod regulation;
mod service;
mod shop;
mod sources;
mod trail;
mod unit;
mod verdicts;
mod worked;

use crate::Edition;
use crate::charts::Drawn;
use crate::render::pdf::{Pdf, PdfFault, typeset};
use blocks::Blocks;
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use stillrise_design::Node;
use stillrise_design::provenance::{Entry, Pair};
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;
use stillrise_units::{System, Typed, print};

/// The template; it holds no word of a job.
const TEMPLATE: &str = include_str!("report.typ");

/// The calculation report as PDF. `drawings` are sheets of the unit, each with its title.
///
/// # Errors
/// A fault of the template, or of the drawing.
pub fn report(settled: &Settled, edition: Edition, drawings: &[(&str, &str)]) -> Result<Vec<u8>, PdfFault> {
    typeset_report(settled, edition, drawings).map(|pdf| pdf.bytes)
}

/// As [`report`], with the number of pages and what is to be said about the file.
///
/// # Errors
/// As [`report`].
pub fn typeset_report(settled: &Settled, edition: Edition, drawings: &[(&str, &str)]) -> Result<Pdf, PdfFault> {
    let mut files = BTreeMap::new();
    for (k, (_, svg)) in drawings.iter().enumerate() {
        files.insert(format!("drawing-{}.svg", k + 1), svg.as_bytes().to_vec());
    }
    let charts = crate::charts::charts(settled);
    for chart in &charts {
        files.insert(format!("chart-{}.svg", chart.name), chart.svg.as_bytes().to_vec());
    }
    let fingerprint = fingerprint(settled);
    let data = data(settled, edition, drawings, &charts, &fingerprint);
    files.insert("data.json".to_owned(), data.to_string().into_bytes());
    typeset(TEMPLATE, files, &format!("stillrise-report-{}-{fingerprint}", edition.word()))
}

/// What the template is given.
fn data(
    settled: &Settled,
    edition: Edition,
    drawings: &[(&str, &str)],
    charts: &[Drawn],
    fingerprint: &str,
) -> serde_json::Value {
    let mut r = Report { settled, edition, system: settled.job.enquiry.system(), out: Blocks::default() };
    verdicts::triage(&mut r);
    basis::basis(&mut r);
    cases::cases(&mut r);
    unit::unit(&mut r, drawings);
    effluent::effluent(&mut r, charts);
    hydraulics::hydraulics(&mut r);
    evidence::evidence(&mut r);
    rating::rating(&mut r);
    regulation::regulation(&mut r);
    verdicts::rules(&mut r);
    verdicts::questions(&mut r);
    shop::shop(&mut r);
    service::service(&mut r);
    trail::trail(&mut r);
    sources::sources(&mut r);
    closing::closing(&mut r);
    let mut data = cover::cover(&r, fingerprint);
    data["blocks"] = serde_json::Value::Array(r.out.0);
    data
}

/// The first 16 digits of the SHA-256 over every value of the trail: two reports that agree in it
/// rest on the same numbers.
fn fingerprint(settled: &Settled) -> String {
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

/// A report in the making.
struct Report<'a> {
    settled: &'a Settled,
    edition: Edition,
    system: System,
    out: Blocks,
}

impl<'a> Report<'a> {
    /// An entry of the trail.
    fn entry(&self, at: Node) -> Option<&'a Entry> {
        self.settled.job.ledger.entry(at)
    }
    /// Its number in print.
    fn no(&self, at: Node) -> String {
        at.index().map_or_else(String::new, |k| (k + 1).to_string())
    }
    /// A quantity with its unit.
    fn show<Q: Typed>(&self, q: Q, units: Pair) -> String {
        print::with_unit(q.si(), self.system.pick(units))
    }
    /// A quantity without its unit, which stands in the head of the column.
    fn digits<Q: Typed>(&self, q: Q, units: Pair, digits: usize) -> String {
        print::digits(print::or_nothing(self.system.pick(units).from_si(q.si())), digits)
    }
    /// The symbol of the unit in print.
    fn symbol(&self, units: Pair) -> &'static str {
        self.system.pick(units).symbol
    }
    /// Label, value, origin and number of an entry: a row of most tables of the basis.
    fn row(&self, at: Node) -> Option<[String; 4]> {
        let entry = self.entry(at)?;
        Some([capital(&entry.label), entry.shown(self.system), trail::origin(self, entry), self.no(at)])
    }
    /// These entries and all that they rest on, as places in the trail.
    fn behind(&self, roots: impl IntoIterator<Item = Node>) -> BTreeSet<usize> {
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
    fn rows(&self, nodes: impl IntoIterator<Item = Node>) -> blocks::Table {
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
        table
    }
}

/// The same text with a capital letter.
fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}

/// The same text, ending in one full stop.
fn sentence(text: &str) -> String {
    let text = text.trim_end_matches('.');
    if text.is_empty() { String::new() } else { format!("{}.", capital(text)) }
}
