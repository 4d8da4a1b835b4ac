//! What a number or a word rests on that nobody has confirmed.

use std::collections::BTreeSet;
use stillrise_design::enquiry::blocks::{OilContent, Water};
use stillrise_design::performance::limit::{LimitVerdict, Word};
use stillrise_design::performance::promise::floor;
use stillrise_design::provenance::{Assumption, Entry, Node, Origin};
use stillrise_search::Settled;

/// What of the water nobody has confirmed and the word on a limit rests on, those first whose answer moves most; nothing
/// where the word is not the calculation's own.
pub(crate) fn rests_on<'a>(settled: &'a Settled, verdict: &LimitVerdict) -> Vec<&'a Entry> {
    if !verdict.predicted || verdict.calculated != verdict.word {
        return Vec::new();
    }
    // What lies below the published floor is refused whatever the waters carry, unless what does not rise is the reason given.
    if verdict.word >= Word::NotShown && verdict.against.q < floor() && verdict.stays.q <= verdict.against.q {
        return Vec::new();
    }
    assumed_under(settled, verdict.expected.at, &is_of_oil)
}

/// Whether it says what oil a water carries.
pub(crate) fn is_of_oil(a: &Assumption) -> bool {
    a.declared.is_of::<OilContent>() || a.declared.is(Water::oil_peak)
}

/// What a number in the trail rests on that was assumed, of the keys that are wanted, those first whose answer moves most.
pub(crate) fn assumed_under<'a>(
    settled: &'a Settled,
    at: Node,
    wanted: &dyn Fn(&Assumption) -> bool,
) -> Vec<&'a Entry> {
    let ledger = &settled.job.ledger;
    let (mut seen, mut open) = (BTreeSet::new(), vec![at]);
    let mut rests = BTreeSet::new();
    while let Some(at) = open.pop() {
        let Some(entry) = ledger.entry(at).filter(|_| seen.insert(at)) else { continue };
        match &entry.origin {
            Origin::Assumed(assumption) if wanted(assumption) => {
                rests.insert(at);
            }
            origin => open.extend(origin.inputs()),
        }
    }
    let weight = |entry: &Entry| match &entry.origin {
        Origin::Assumed(a) => settled.questions().iter().find(|q| q.key == a.key).map_or(0.0, |q| q.weight),
        _ => 0.0,
    };
    let mut entries: Vec<&Entry> = rests.iter().filter_map(|at| ledger.entry(*at)).collect();
    entries.sort_by(|a, b| weight(b).total_cmp(&weight(a)));
    entries
}
