//! What contradicts, what was taken, and what the claim that was not taken would lead to.

use super::{asks, show};
use std::collections::BTreeSet;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::fluids::OilState;
use stillrise_design::enquiry::blocks::{Asked, Inlet};
use stillrise_design::enquiry::keys::{Because, Claim};
use stillrise_design::provenance::{Chooser, Entry, Origin};
use stillrise_search::Settled;
use stillrise_search::questions::{Outcome, Question};
use stillrise_units::catalog::{GAL, M3};
use stillrise_units::{Typed, Volume};

/// From which share of the larger a volume that moves is told. Judgement.
const MOVES: f64 = 0.05;

/// Claims that contradict: those that nobody chose between, and those that we did.
pub(super) fn contradictions(settled: &Settled) -> Vec<String> {
    let (mut seen, mut told) = (BTreeSet::new(), BTreeSet::new());
    let system = settled.job.enquiry.system();
    let entries = &settled.job.ledger.entries;
    // What somebody named or asked is answered where that is told; two of them are no contradiction of the site.
    let declared = |entry: &Entry| {
        let own = entries.iter().filter(|e| e.label == entry.label);
        own.map(Entry::declared).find(|declared| declared.0.is_some()).unwrap_or_default()
    };
    let one = |entry: &Entry| match &entry.origin {
        Origin::Chosen { by: Chooser::Nobody, .. } if declared(entry).is_of::<Asked>() => None,
        Origin::Chosen { by: Chooser::Nobody, among, inputs, .. } if seen.insert(among.clone()) => {
            let claims: Vec<&Entry> = inputs.iter().filter_map(|node| settled.job.ledger.entry(*node)).collect();
            let said: Vec<String> = claims.iter().filter_map(|claim| said(claim)).collect();
            let taken = claims.iter().find(|claim| claim.value == entry.value).and_then(|claim| typed(claim));
            let taken = taken.map_or_else(|| entry.shown(system), |text| plainly(text).to_owned());
            // What moves nothing is asked for the record alone.
            let asked = settled.questions().iter().find(|q| q.contradiction && q.label == entry.label);
            let same = asked.is_some_and(|q| q.weight <= asks::MOVES && q.flows.is_empty());
            // What explains the results of a unit that stands may hang on it all the same.
            let same = same && !crate::rating::is_observed(settled);
            // One pump's rate moves little where another's moves with it.
            let same = same && !asked.is_some_and(|q| q.declared.is(Inlet::rate));
            let same = if same {
                " Either leads to the same unit, if not to the same flows and intervals.".to_owned()
            } else {
                asked.and_then(|q| otherwise(settled, q, &claims)).unwrap_or_default()
            };
            // What is no quantity stands under its key: what that means is told in its place.
            let of_a_key = claims.first().and_then(|claim| source(claim)) == Some(entry.label.as_str());
            let what = match declared(entry).0.filter(|_| of_a_key) {
                Some(spec) => match entry.label.split('"').nth(1) {
                    Some(name) => format!("{name}, {}", crate::summary::lower(spec.doc)),
                    None => spec.doc.to_owned(),
                },
                None => entry.label.clone(),
            };
            let line = format!("{}: {}. We took {taken}.{same}", crate::summary::capital(&what), said.join("; "));
            Some((texts(&claims), line))
        }
        // Where a person chose, the reason is told, so that who knows better can say so.
        Origin::Chosen { by: Chooser::Person, among, because, inputs } => {
            let claims: Vec<&Entry> = inputs.iter().filter_map(|node| settled.job.ledger.entry(*node)).collect();
            if !seen.insert(among.clone()) {
                return None;
            }
            let said: Vec<String> = claims.iter().filter_map(|claim| said(claim)).collect();
            let taken = claims.iter().find(|claim| claim.value == entry.value).and_then(|claim| typed(claim))?;
            let line = format!(
                "{}: {}. We took {taken}: {}.",
                crate::summary::capital(&entry.label),
                said.join("; "),
                because.trim_end_matches('.')
            );
            // Two surfaces of one size are two.
            Some((format!("{}: {}", entry.label, texts(&claims)), line))
        }
        _ => None,
    };
    // What one person said twice, of a water and of its pump, is asked for once.
    let once = |(said, line): (String, String)| told.insert(said).then_some(line);
    let mut all: Vec<String> = entries.iter().filter_map(one).filter_map(once).collect();
    // What the calculation did not come to is asked for all the same.
    let sources: BTreeSet<&str> = entries.iter().filter_map(source).collect();
    let enquiry = &settled.job.enquiry;
    let differing = enquiry.differing().into_iter().filter(|open| !open.declared.is_of::<Asked>());
    let unread = differing.filter(|open| !sources.contains(open.place));
    let level = &enquiry.outlet.invert;
    let paired =
        level.claim().filter(|taken| taken.because == Some(Because::Paired) && !sources.contains(&*level.place));
    all.extend(paired.map(|taken| {
        let said: Vec<String> = level.claims.iter().map(told_by).collect();
        format!("Outlet: invert: {}. We took {}: {}.", said.join("; "), taken.written.text, Because::Paired)
    }));
    all.extend(unread.map(|open| {
        let said: Vec<String> = open.claims.iter().map(told_by).collect();
        format!(
            "{}: {}. {}.",
            crate::summary::capital(&open.place.replace('_', " ")),
            said.join("; "),
            if settled.job.design.train.is_some() {
                "Nothing calculated here rests on it".to_owned()
            } else {
                format!("Where one is wanted, we take {}", open.taken.written.text)
            }
        )
    }));
    all.extend(other_oil(settled));
    all
}

/// An oil that a water is said to carry and that is none of those declared: two may come, or one has two names.
fn other_oil(settled: &Settled) -> Option<String> {
    let (e, basis) = (&settled.job.enquiry, settled.job.design.basis.as_ref()?);
    let declared = |word: &str| e.oils.iter().any(|oil| oil.kind.as_deref() == Some(word));
    let (own, others): (Vec<_>, Vec<_>) = basis.fluids.oils.iter().partition(|oil| declared(oil.oil.word));
    if own.is_empty() || others.is_empty() {
        return None;
    }
    let names = |oils: &[&OilState]| oils.iter().map(|oil| oil.name.as_str()).collect::<Vec<_>>().join(" and ");
    Some(format!(
        "Oils: {} told as what comes, {} as what a water carries. We took them for different oils, the heavier of them for how they rise; if they are the same, tell us which it is.",
        names(&own),
        names(&others)
    ))
}

/// As typed, and by whom.
fn told_by(claim: &Claim) -> String {
    let text = &claim.written.text;
    claim.from.as_ref().map_or_else(|| text.clone(), |from| format!("{text} ({from})"))
}

/// The key at which a claim stands.
fn source(entry: &Entry) -> Option<&str> {
    let Origin::Given { source, .. } = &entry.origin else { return None };
    Some(source.place())
}

/// Claims as they were typed, whoever made them.
fn texts(claims: &[&Entry]) -> String {
    claims.iter().filter_map(|claim| typed(claim)).collect::<Vec<_>>().join("; ")
}

/// A claim as it was typed.
fn typed(claim: &Entry) -> Option<&str> {
    match &claim.origin {
        Origin::Given { text, .. } => Some(text),
        _ => None,
    }
}

/// A claim as it was typed, and who made it.
fn said(claim: &Entry) -> Option<String> {
    let Origin::Given { source, text } = &claim.origin else { return None };
    let text = plainly(text);
    Some(match source.from() {
        Some(from) => format!("{text} ({from})"),
        None => text.to_owned(),
    })
}

/// A claim on a flag as a person would say it.
fn plainly(text: &str) -> &str {
    match text {
        "true" => "yes",
        "false" => "no",
        other => other,
    }
}

/// " With 60 gpm: Demo 120 too, with 2670 gal held back ahead." `None` where nothing that the mail tells moves.
fn otherwise(settled: &Settled, q: &Question, claims: &[&Entry]) -> Option<String> {
    // Where nothing fits there is no unit to tell of, but a flow.
    if settled.pick.is_none() {
        let now = settled.job.design.basis.as_ref()?.design_flow()?.q;
        let moved = q.flows.iter().filter(|(_, then)| (*then - now).si().abs() > MOVES * now.si());
        let told: Vec<String> = moved
            .map(|(answer, then)| {
                // As it was typed, where it is one of the claims.
                let system = settled.job.enquiry.system();
                let claim = claims.iter().find(|claim| claim.told(system) == *answer).and_then(|claim| typed(claim));
                let answer = plainly(claim.unwrap_or(answer));
                format!(" With {answer}: {} to the separator.", show(settled, then.si(), FLOW_UNITS))
            })
            .collect();
        return (!told.is_empty()).then(|| told.concat());
    }
    let told: Vec<String> =
        q.outcomes.iter().filter(|o| o.answer != q.now).filter_map(|o| outcome(settled, o)).collect();
    (!told.is_empty()).then(|| told.concat())
}

fn outcome(settled: &Settled, o: &Outcome) -> Option<String> {
    let taken = settled.candidates.iter().find(|c| c.taken).map(|c| &c.unit);
    let mut facts = Vec::new();
    match (&o.unit, taken) {
        (Some(unit), Some(taken)) if unit != taken => facts.push(unit.name()),
        (Some(_), Some(taken)) => facts.push(format!("{} all the same", taken.name())),
        _ => {}
    }
    let now = settled.job.design.train.as_ref().and_then(|t| t.equalisation.as_ref()).map(|e| e.volume().q);
    let far = |a: Volume, b: Volume| (a - b).si().abs() > MOVES * a.max(b).si();
    match (now, o.stores.held_back) {
        (Some(now), Some(then)) if !far(now, then) => {}
        (_, Some(then)) => facts.push(format!("{} to be held back ahead", show(settled, then.si(), (&GAL, &M3)))),
        (Some(_), None) => facts.push("nothing to be held back ahead".to_owned()),
        (None, None) => {}
    }
    // That the unit stays says nothing alone.
    let stays = facts.len() == 1 && o.unit.as_ref() == taken;
    (!facts.is_empty() && !stays).then(|| format!(" With {}: {}.", plainly(&o.answer), facts.join(", ")))
}
