//! What was said besides quantities, in the trail: who said so, and what contradicts.
//!
//! Words, texts and flags shape a design without standing in a formula. Where somebody is named for one, the trail says
//! so; where claims contradict and nobody chose, the first is taken and the rest is a question, as for quantities.

use crate::enquiry::Enquiry;
use crate::enquiry::keys::Safe;
use crate::enquiry::paired::pair;
use crate::enquiry::said::{Claimed, Line, which_holds};
use crate::provenance::{Backing, Chooser, Entry, Node, Origin, Standby, Trail, WhatIf, Whence, assume, entry};
use std::borrow::Cow;
use stillrise_handbook::memo::Key;
use stillrise_handbook::page::{Arg, Argument, Kind};

/// A claim by the word that stands for it.
#[derive(Debug, Clone, Copy)]
struct Which(&'static str);

impl Argument for Which {
    const KIND: Kind = Kind::Choice(&[]);
    fn arg(&self) -> Arg {
        Arg::Choice(self.0)
    }
    fn from_arg(arg: &Arg) -> Option<Self> {
        match arg {
            Arg::Choice(word) => Some(Self(word)),
            _ => None,
        }
    }
    fn key(&self, key: &mut Key) {
        self.0.bytes().for_each(|byte| key.push(u64::from(byte)));
    }
}

/// Records who said what, and asks where claims contradict.
pub fn record<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) {
    if !T::GATHERS {
        return;
    }
    t.section("said in the enquiry");
    for claimed in e.claimed() {
        let lines = claimed.lines();
        if !claimed.is_contradicted() && lines.iter().all(|line| line.from.is_none()) {
            continue;
        }
        let nodes: Vec<Node> = lines.iter().enumerate().map(|(i, line)| t.push(|| said(claimed, i, line))).collect();
        if claimed.is_contradicted() {
            contradicted(t, w, claimed, &lines, &nodes);
        }
    }
}

fn source<'a>(place: &'a str, line: &Line<'a>) -> Whence<'a> {
    Whence::said(place, line.from)
}

fn said(claimed: &dyn Claimed, i: usize, line: &Line<'_>) -> Entry {
    let origin = Origin::Given { source: source(claimed.place(), line).kept(), text: line.text.to_owned() };
    entry(claimed.place(), &Which(claimed.word(i)), None, origin)
}

fn contradicted<T: Trail>(t: &mut T, w: &WhatIf, claimed: &dyn Claimed, lines: &[Line<'_>], nodes: &[Node]) {
    let (place, taken) = (claimed.place(), claimed.taken());
    let among: Vec<String> = lines.iter().map(|l| format!("{} ({})", l.text, source(place, l))).collect();
    let chosen = lines.iter().find(|line| line.chosen);
    let because = match chosen {
        Some(line) => line.because.unwrap_or("chosen in the enquiry, no reason given"),
        None => match claimed.declared().0.map(|spec| spec.safe) {
            Some(Safe::Larger | Safe::Smaller) => "of contradicting claims the one on the safe side was taken",
            _ => "of contradicting claims the first was taken; neither side is the safe one",
        },
    };
    let value = Which(claimed.word(taken));
    let by = if chosen.is_some() { Chooser::Person } else { Chooser::Nobody };
    crate::provenance::choose_claim(t, place, None, value, by, (&among.join("; "), because), nodes);
    if chosen.is_some() {
        return;
    }
    let named = |l: &Line<'_>| l.from.map_or_else(|| l.text.to_owned(), |from| format!("{} ({from})", l.text));
    let said: Vec<String> = lines.iter().map(named).collect();
    // The words that are not the one taken: the ends of what may be answered.
    let mut others = (0..lines.len()).map(|i| claimed.word(i)).filter(|word| *word != value.0);
    let low = others.next().unwrap_or(value.0);
    let high = others.last().unwrap_or(value.0);
    let standby = Standby {
        label: place,
        units: None,
        key: claimed.path().into(),
        declared: claimed.declared(),
        question: which_holds(place, &said.join(" or ")).into(),
        value,
        low: Which(low),
        high: Which(high),
        source: Backing::Contradiction(because.into()),
    };
    assume(t, w, standby);
}

/// Whether claims contradict on anything that is no quantity, and nobody chose.
#[must_use]
pub fn any_open(e: &Enquiry) -> bool {
    e.claimed().iter().any(|claimed| claimed.is_open())
}

/// The enquiry as it would be if what-ifs held of contradicting claims: each takes the claim that is named.
#[must_use]
pub fn answered<'a>(e: &'a Enquiry, w: &WhatIf) -> Cow<'a, Enquiry> {
    let named = |claimed: &dyn Claimed| {
        let Some(Arg::Choice(word)) = w.0.get(&claimed.path()).filter(|_| claimed.is_open()) else { return None };
        (0..claimed.lines().len()).find(|i| claimed.word(*i) == *word)
    };
    if w.0.is_empty() || !e.claimed().into_iter().any(|claimed| named(claimed).is_some()) {
        return Cow::Borrowed(e);
    }
    let mut e = e.clone();
    e.claimed_mut(&mut |claimed| {
        if let Some(claim) = named(claimed) {
            claimed.take(claim);
        }
    });
    pair(&mut e);
    Cow::Owned(e)
}
