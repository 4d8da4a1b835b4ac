//! How a containment is drained: as somebody claims, at a metered rate, by nobody.

use super::Containment;
use super::balance::inflow;
use super::reach::Open;
use crate::basis::stated::{assumed, is_tried, stand_in, stated};
use crate::basis::waters::{YesNo, yes_or_no};
use crate::enquiry::blocks::{self, DrainValve};
use crate::enquiry::declared::Declared;
use crate::provenance::{Trail, Val, WhatIf, Whence, choose, given};
use crate::{by, say};
use stillrise_handbook::page::Arg;
use stillrise_handbook::vessel::drain_down;
use stillrise_units::{Flow, Time, Volume};

/// How the drain stands.
#[derive(Debug, Clone)]
pub struct Valve {
    /// As it is counted.
    pub is: Val<DrainValve>,
    /// What nobody said of it, or several said differently; none where it is known.
    pub open: Option<Open>,
}

/// What may be relied on, the surest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shut {
    /// Nothing runs out before somebody opens it.
    Closed,
    /// A device shuts it when oil comes.
    Device,
    /// Nobody knows.
    Unknown,
    /// Oil runs through.
    Open,
}

impl Valve {
    /// What may be relied on.
    #[must_use]
    pub fn shut(&self) -> Shut {
        match self.is.q {
            _ if self.open.is_some() => Shut::Unknown,
            DrainValve::Open => Shut::Open,
            DrainValve::Automatic => Shut::Device,
            DrainValve::Closed | DrainValve::None => Shut::Closed,
        }
    }
}

/// A metered drain.
#[derive(Debug, Clone)]
pub struct Drain {
    /// Its rate.
    pub rate: Val<Flow>,
    /// Whether it also runs while it rains.
    pub in_rain: bool,
    /// Time in which it drains the design rain.
    pub time: Option<Val<Time>>,
}

/// How far each lets oil through, the worst last.
const WORSE: [DrainValve; 4] = [DrainValve::None, DrainValve::Closed, DrainValve::Automatic, DrainValve::Open];

/// The word on the drain that a what-if gives.
pub fn told(w: &WhatIf, c: &blocks::Containment) -> Option<DrainValve> {
    let Some(Arg::Choice(word)) = w.0.get(&*c.drain().path()) else { return None };
    DrainValve::ALL.iter().copied().find(|valve| valve.word() == *word)
}

/// How the drain stands, by the claims on it; open where nobody said, for that is the worst.
pub fn valve<T: Trail>(t: &mut T, w: &WhatIf, c: &blocks::Containment, name: &str) -> Valve {
    let label = format!("drain of {name}");
    let path = c.drain().path();
    let place = |from| Whence::said(path.as_ref(), from);
    let mut nodes = Vec::new();
    let mut among = Vec::new();
    for claim in &c.drain.claims {
        let said = given(t, &label, None, claim.word, place(claim.from.as_deref()), claim.word.word());
        nodes.push(said.at);
        among.push(format!("{} ({})", claim.word.word(), place(claim.from.as_deref())));
        if c.drain.claims.len() == 1 {
            return Valve { is: said, open: None };
        }
    }
    if let Some(claim) = c.drain.settled() {
        let because = match (&claim.because, claim.chosen) {
            (Some(because), true) => because.clone(),
            (None, true) => "chosen in the enquiry, no reason given".to_owned(),
            (_, false) => "all claims say the same".to_owned(),
        };
        return Valve { is: choose(t, &label, None, claim.word, &among.join("; "), &because, &nodes), open: None };
    }
    let claimed = |v: &&DrainValve| c.drain.claims.iter().any(|claim| claim.word == **v);
    let worst = WORSE.iter().rfind(claimed).copied().unwrap_or(DrainValve::Open);
    let best = WORSE.iter().find(claimed).copied().unwrap_or(DrainValve::Closed);
    let because = if nodes.is_empty() {
        "nobody said how it stands; open is the worst for a spill".to_owned()
    } else {
        let because = "of contradicting claims the one that holds least is on the safe side";
        choose(t, &label, None, worst, &among.join("; "), because, &nodes);
        because.to_owned()
    };
    let key = c.drain().of(name);
    let is = assumed(t, w, &key, &label, stand_in((best, worst, worst), because));
    let open = (!is_tried(w, &key)).then(|| Open {
        key: path.clone().into_owned(),
        declared: Declared(Some(key.spec)),
        what: label,
    });
    Valve { is, open }
}

/// The metered drain, with the time in which it drains the design rain.
pub fn drain<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    c: &blocks::Containment,
    all: &[Containment],
    at: usize,
    zero: Val<Volume>,
) -> Option<Drain> {
    let rate = stated(t, w, &say!(T, "rate at which {} is drained", all[at].name), &c.drain_rate)?;
    let name = &all[at].name;
    let in_rain = match c.drained_in_rain.0 {
        Some(said) => said,
        None => {
            let label = say!(T, "whether {name} is also drained while it rains");
            let (usual, because) = match all[at].valve.is.q {
                DrainValve::None => (YesNo::Yes, "rain is pumped out, and pumps on a float run when it comes"),
                DrainValve::Open => (YesNo::Yes, "its drain stands open"),
                DrainValve::Closed | DrainValve::Automatic => (YesNo::No, "somebody opens it when the rain is over"),
            };
            yes_or_no(t, w, c.drained_in_rain().of(name), &label, usual, because)
        }
    };
    let rain = inflow(t, all, at, &[], zero);
    let time = by!(
        t,
        &say!(T, "time in which the design rain drains from {}", all[at].name),
        drain_down::time(rain.val, rate)
    );
    Some(Drain { rate, in_rain, time: time.ok() })
}
