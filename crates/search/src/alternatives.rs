//! Other trains than the one asked for, each worked through: one pump only, evened out to the cap, rain and wash water
//! apart, two units in parallel.

use crate::Settled;
use crate::condition::Condition;
use crate::pick::{Pick, effluent, found};
use crate::risk::ready;
use crate::shortfall;
use crate::side_by_side::side_by_side;
use crate::weakest::weakest;
use stillrise_design::basis::shear::Shear;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{Design, begin, complete};
use stillrise_design::performance::Depth;
use stillrise_design::performance::limit::Word;
use stillrise_design::{Ledger, Off, WhatIf};
use stillrise_units::{Concentration, Typed};

pub(crate) mod altered;
mod change;

pub use change::Change;

/// Whether the pump that feeds the unit sets the droplets in it.
fn pump_governs(design: &Design) -> bool {
    let ways = design.basis.as_ref().map_or(&[][..], |b| &b.arrivals);
    let broken = |shear: &Shear| shear.governs && shear.hardest().is_feed_pump;
    ways.iter().any(|way| way.shear.as_ref().is_some_and(broken))
}

/// Another train, worked through.
#[derive(Debug, Clone)]
pub struct Alternative {
    /// In what it differs.
    pub change: Change,
    /// What is changed besides, where neither of both alone lets anything fit.
    pub also: Option<Change>,
    /// The unit; `None` where nothing fits.
    pub pick: Option<Pick>,
    /// Its name.
    pub unit: String,
    /// Where nothing fits, the unit that comes nearest, and what speaks against it.
    pub nearest: Option<(String, Vec<String>)>,
    /// Whether one pump alone keeps up there, of several that may run together.
    pub one_pump: bool,
    /// What follows from it.
    pub design: Design,
    /// Total oil out, expected, in the worst case.
    pub effluent: Option<Concentration>,
    /// The word on each limit, everything heard.
    pub words: Vec<Word>,
}

/// All alternatives to a settled job that make sense, worked through; only a reply asks for them. `demo` is the range to
/// pick from when the enquiry names none.
#[must_use]
pub fn alternatives(settled: &Settled, demo: &Range) -> Vec<Alternative> {
    let (enquiry, taken) = (&settled.job.enquiry, settled.pick.as_ref());
    let range = enquiry.range.as_ref().unwrap_or(demo);
    // A unit that stands is rated; nothing is offered in its place here.
    if enquiry.unit_stands() {
        return Vec::new();
    }
    let made: Vec<(Change, Enquiry)> = Change::ALL
        .iter()
        .filter_map(|change| Some((*change, change.made(enquiry, taken, &settled.job.design)?)))
        .collect();
    let mut all = side_by_side(
        made.len(),
        1,
        || (),
        |k, ()| {
            let one_pump = *made[k].1.inlet.interlocked == Some(true) && *enquiry.inlet.interlocked != Some(true);
            Alternative { one_pump, ..worked(made[k].0, &made[k].1, range) }
        },
    );
    // A pump or a cleaner that changes neither the unit nor what leaves by a twentieth is no alternative.
    let out = effluent(&settled.job.design);
    let same = |a: &Alternative| {
        taken.is_some_and(|pick| pick.name(range) == a.unit)
            && a.effluent.zip(out).is_none_or(|(then, now)| then.si() > 0.95 * now.si())
    };
    let little = |change| matches!(change, Change::GentlePump | Change::QuickBreak | Change::QuickBreakAndGentle);
    all.retain(|a| !little(a.change) || (a.pick.is_some() && !same(a)));
    // Both together say nothing where one of them does as much.
    let least = |all: &[Alternative], change: &[Change]| {
        let of = all.iter().filter(|a| change.contains(&a.change)).filter_map(|a| Some(a.effluent?.si()));
        of.fold(f64::INFINITY, f64::min)
    };
    let one = least(&all, &[Change::GentlePump, Change::QuickBreak]);
    if least(&all, &[Change::QuickBreakAndGentle]) > 0.95 * one {
        all.retain(|a| a.change != Change::QuickBreakAndGentle);
    }
    // Nor do all causes taken away together, where one of them does as much and the words on the limits stay.
    let single = least(
        &all,
        &[Change::GentlePump, Change::QuickBreak, Change::QuickBreakAndGentle, Change::WashApart, Change::RainKeptOut],
    );
    if least(&all, &[Change::OnlyWhatRises]) > 0.95 * single {
        all.retain(|a| a.change != Change::OnlyWhatRises);
    }
    // A larger one is one.
    let fits = |a: &Alternative| {
        a.pick.as_ref().is_some_and(|pick| pick.condition != Some(Condition::Limit) && pick.count == 1)
    };
    all.retain(|a| a.change != Change::MoreRoom || fits(a));
    let told_where_it_fits = |change| {
        matches!(
            change,
            Change::PumpAsAsked | Change::PumpAsAskedAndGentle | Change::RoofsApart | Change::LargestAreaApart
        )
    };
    all.retain(|a| !told_where_it_fits(a.change) || a.pick.is_some());
    // Nobody asked for the unit ahead of the pumps: it is told where it fits and takes a twentieth off what leaves.
    let asked = *enquiry.asked.ahead_of_pumps == Some(true);
    let gains = |a: &Alternative| a.effluent.zip(out).is_some_and(|(then, now)| then.si() < 0.95 * now.si());
    all.retain(|a| a.change != Change::AheadOfPumps || asked || a.pick.is_some() && (out.is_none() || gains(a)));
    // Roofs that change neither the unit nor what leaves are no alternative; nor a slow pump for the flow that was named,
    // where one of both does as much.
    all.retain(|a| a.change != Change::RoofsApart || !same(a));
    let one = least(&all, &[Change::GentlePump, Change::PumpAsAsked]);
    if least(&all, &[Change::PumpAsAskedAndGentle]) > 0.95 * one {
        all.retain(|a| a.change != Change::PumpAsAskedAndGentle);
    }
    // A smaller pump, or the spill held ahead besides, is told where it lets another unit do.
    let unit = |all: &[Alternative], change| all.iter().find(|a| a.change == change).map(|a| a.unit.clone());
    for (more, less) in
        [(Change::RainKeptOutAndPump, Change::RainKeptOut), (Change::WashApartSpillAhead, Change::WashApart)]
    {
        let plain = unit(&all, less);
        all.retain(|a| a.change != more || (a.pick.is_some() && plain.as_ref() != Some(&a.unit)));
    }
    // Where nothing fits, a spill that is held ahead and changes nothing is no alternative; nor where a containment that
    // stands holds it.
    let held = all.iter().any(|a| a.change == Change::DrainClosed && holds(a));
    all.retain(|a| a.change != Change::SpillAhead || (a.pick.is_some() && !held));
    all.retain(|a| !matches!(a.change, Change::DrainClosed | Change::PumpApart) || a.pick.is_some());
    if taken.is_none() && all.iter().all(|a| a.pick.is_none()) {
        all.extend(pairs(settled, range));
    }
    all
}

/// Most pairs of changes that are told.
const MOST_PAIRS: usize = 3;

/// Pairs of changes of which one alone lets nothing fit; those first whose unit does without a condition, then the cheapest.
fn pairs(settled: &Settled, range: &Range) -> Vec<Alternative> {
    let (enquiry, design) = (&settled.job.enquiry, &settled.job.design);
    let nothing = WhatIf::default();
    let mut made: Vec<(Change, Change, Enquiry)> = Vec::new();
    for (k, first) in Change::PAIRED.iter().enumerate() {
        let Some(one) = first.made(enquiry, None, design) else { continue };
        let begun = begin(&mut Off, &nothing, &one);
        let seconds = Change::PAIRED[k + 1..].iter().filter(|second| !first.holds(**second));
        made.extend(seconds.filter_map(|second| Some((*first, *second, second.made(&one, None, &begun)?))));
    }
    let mut all = side_by_side(
        made.len(),
        1,
        || (),
        |k, ()| {
            let (first, second, enquiry) = &made[k];
            Alternative { also: Some(*second), ..worked(*first, enquiry, range) }
        },
    );
    all.retain(|a| a.pick.is_some());
    let cost = |a: &Alternative| a.pick.as_ref().and_then(|pick| pick.price(range)).unwrap_or(f64::INFINITY);
    all.sort_by(|a, b| holds(b).cmp(&holds(a)).then(cost(a).total_cmp(&cost(b))));
    all.truncate(MOST_PAIRS);
    all
}

/// Whether a unit fits without a condition on what is ahead of it.
fn holds(a: &Alternative) -> bool {
    a.pick.as_ref().is_some_and(|pick| !matches!(pick.condition, Some(Condition::Ahead(_))))
}

fn worked(change: Change, enquiry: &Enquiry, range: &Range) -> Alternative {
    let nothing = WhatIf::default();
    let begun = begin(&mut Off, &nothing, enquiry);
    let Some(found) = found(enquiry, range, &nothing, &begun, None) else {
        let unit = "nothing fits".to_owned();
        return Alternative {
            change,
            also: None,
            pick: None,
            unit,
            nearest: shortfall::nearest(enquiry, range, &begun),
            one_pump: false,
            design: begun,
            effluent: None,
            words: Vec::new(),
        };
    };
    let mut ledger = Ledger::default();
    let begun = begin(&mut ledger, &nothing, enquiry);
    let source = found.source(enquiry, range);
    let design = complete(&mut ledger, &nothing, enquiry, begun, &source, found.count, Depth::Limits);
    let words = weakest(enquiry, ready(enquiry), &design, &ledger.entries, &nothing).unwrap_or_default();
    let unit = found.name(range);
    let effluent = effluent(&design);
    Alternative { change, also: None, unit, nearest: None, one_pump: false, effluent, words, design, pick: Some(found) }
}
