//! The train as asked and the others that would do, side by side, each with its own results.

use crate::summary::{capital, limit as named, units};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::job::Design;
use stillrise_design::performance::limit::Word;
use stillrise_design::performance::promise::Promise;
use stillrise_search::Settled;
use stillrise_search::alternatives::Alternative;
use stillrise_units::catalog::{GAL, M3};
use stillrise_units::{Typed, Unit, print};

/// One train among those side by side.
#[derive(Debug, Clone, PartialEq)]
pub struct Beside {
    /// In what it differs; of the first that it is as asked.
    pub change: String,
    /// The unit or units; `None` where nothing of the range does it.
    pub unit: Option<String>,
    /// Where nothing does, what comes nearest and what speaks against it.
    pub nearest: Option<String>,
    /// The largest flow to it.
    pub flow: Option<String>,
    /// What is held back ahead.
    pub held: Option<String>,
    /// Total oil that leaves, the largest mean of the cases, mg/L.
    pub leaves: Option<String>,
    /// The limits, each with its word.
    pub words: Vec<(String, Word)>,
    /// What stands around it, not in our scope until decided.
    pub needed: Vec<String>,
    /// Price of all units by the range, with its currency.
    pub price: Option<String>,
}

/// The train as asked first, then the others; of a job whose other trains were worked.
#[must_use]
pub fn beside(settled: &Settled) -> Vec<Beside> {
    let design = &settled.job.design;
    let words: Vec<Word> = design.performance.iter().flat_map(|p| &p.limits).map(|verdict| verdict.word).collect();
    let asked = one(settled, "As asked".to_owned(), settled.pick.is_some().then_some(design), design, &words);
    core::iter::once(asked).chain(settled.alternatives.iter().map(|a| other(settled, a))).collect()
}

fn other(settled: &Settled, a: &Alternative) -> Beside {
    let also = a.also.map_or_else(String::new, |also| format!(", and {}", also.text()));
    let taken = a.pick.is_some().then_some(&a.design);
    let nearest = a.nearest.as_ref().map(|(unit, against)| format!("{unit} comes nearest: {}", against.join("; ")));
    Beside { nearest, ..one(settled, format!("{}{also}", capital(a.change.text())), taken, &a.design, &a.words) }
}

fn one(settled: &Settled, change: String, taken: Option<&Design>, design: &Design, words: &[Word]) -> Beside {
    let system = settled.job.enquiry.system();
    let show = |si: f64, pair: (&'static Unit, &'static Unit)| print::in_prose(si, system.pick(pair));
    let train = taken.and_then(|design| design.train.as_ref());
    let limits = design.basis.as_ref().map_or(&[][..], |basis| &basis.limits);
    let verdicts = taken.and_then(|d| d.performance.as_ref()).map_or(&[][..], |p| &p.limits);
    Beside {
        change,
        unit: train.map(units),
        nearest: None,
        flow: design.basis.as_ref().and_then(|b| b.design_flow()).map(|flow| show(flow.q.si(), FLOW_UNITS)),
        held: train.and_then(|t| t.equalisation.as_ref()).map(|hold| show(hold.volume().q.si(), (&GAL, &M3))),
        leaves: taken
            .and_then(|d| d.performance.as_ref()?.worst())
            .map(|worst| Promise::of(worst.total.expected.q, worst.content.total.q).brief()),
        words: verdicts.iter().zip(words).filter_map(|(v, word)| Some((named(limits.get(v.limit)?), *word))).collect(),
        needed: train.map_or_else(Vec::new, |t| {
            t.stages.iter().filter(|stage| stage.asked_for).map(|stage| stage.name.clone()).collect()
        }),
        price: train.and_then(|t| {
            let (each, currency) = t.unit.particulars.price.as_ref()?;
            Some(format!("{} {currency}", print::digits(each * t.bought(), 4)))
        }),
    }
}
