//! Other trains than the one asked for, each worked through: one pump only, evened out to the cap, rain and wash water
//! apart, two units in parallel.

use crate::Settled;
use crate::condition::Condition;
use crate::pick::{Pick, effluent, found};
use crate::risk::ready;
use crate::side_by_side::side_by_side;
use crate::weakest::weakest;
use stillrise_design::basis::rain_kept_out::{is_barred, without_rain};
use stillrise_design::basis::shear::Shear;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::blocks::{Containment, DrainValve, Receiver, Stream};
use stillrise_design::enquiry::claimed_word::WordClaim;
use stillrise_design::enquiry::keys::{Claim, Quantity};
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{Design, begin, complete};
use stillrise_design::performance::Depth;
use stillrise_design::performance::limit::Word;
use stillrise_design::{Ledger, Off, WhatIf};
use stillrise_handbook::separation::pumps::{Pump, pump};
use stillrise_units::catalog::ONE;
use stillrise_units::parse::Written;
use stillrise_units::{Concentration, Flow, Typed};

/// In what an alternative differs from what was asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Change {
    /// The pumps are interlocked so that one runs at a time.
    OnePump,
    /// A slow positive-displacement pump in place of one that breaks the droplets.
    GentlePump,
    /// The pumps pass no more than the flow cap; the rest waits in an equalisation.
    Capped,
    /// Rain is kept out; wash water alone is treated.
    RainKeptOut,
    /// Rain that the sewer does not take comes with the rest, where its owner consents.
    WithTheRain,
    /// Wash water goes elsewhere; rain alone is treated.
    WashApart,
    /// The baths that are dumped are hauled off, and none comes to the separator.
    BathApart,
    /// The drains of containments that stand open are kept closed, and what they hold is let down by hand.
    DrainClosed,
    /// The spill is held ahead, and none of it comes to the separator.
    SpillAhead,
    /// Two units in parallel in place of one.
    TwoInParallel,
}

impl Change {
    /// All, in the order of print.
    pub const ALL: [Change; 10] = [
        Change::OnePump,
        Change::GentlePump,
        Change::Capped,
        Change::RainKeptOut,
        Change::WithTheRain,
        Change::WashApart,
        Change::BathApart,
        Change::DrainClosed,
        Change::SpillAhead,
        Change::TwoInParallel,
    ];

    /// In a few words.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Change::OnePump => "one pump at a time, interlocked",
            Change::GentlePump => {
                "a slow positive-displacement pump (progressive cavity), which breaks less of the oil"
            }
            Change::Capped => "evened out to the flow cap, equalisation ahead",
            Change::RainKeptOut => "without the rain, which is kept out",
            Change::WithTheRain => "with the rain, and what may run while it rains, if the owner of the sewer consents",
            Change::WashApart => "the rain alone, all other water treated apart",
            Change::BathApart => "the bath hauled off or treated by itself, none of it let into the water",
            Change::DrainClosed => "the drain of the containment kept closed, its water let down by hand after a look",
            Change::SpillAhead => "the spill held ahead, none of it coming to the separator",
            Change::TwoInParallel => "two units in parallel",
        }
    }

    /// The enquiry with this change; `None` where it makes no sense.
    fn made(self, e: &Enquiry, taken: Option<&Pick>, design: &Design) -> Option<Enquiry> {
        let mut other = e.clone();
        match self {
            Change::OnePump
                if e.inlet.rate.0.len() > 1
                    && *e.inlet.together != Some(false)
                    && *e.inlet.interlocked != Some(true) =>
            {
                other.inlet.together.0 = None;
                other.inlet.interlocked.0 = Some(true);
            }
            Change::GentlePump if pump_governs(design) => {
                let gentle = pump(GENTLE)?;
                let [_, likely, _] = e.inlet.pump.as_deref().and_then(pump).map(Pump::dissipation).unwrap_or_default();
                // One as gentle already, worked from its own figures, is named by its class.
                if e.inlet.pump.is_some() && likely <= gentle.dissipation()[1] {
                    return None;
                }
                other.inlet.pump.0 = Some(GENTLE.to_owned());
                let own = &mut other.inlet;
                own.pump_power = Quantity::default();
                own.pump_head = Quantity::default();
                own.pump_speed = Quantity::default();
                own.impeller = Quantity::default();
                own.impeller_width = Quantity::default();
                own.efficiency = Quantity::default();
                own.head_coefficient = Quantity::default();
                own.pulsation = Quantity::default();
            }
            Change::Capped => {
                let cap = e.outlet.flow_cap.q()?;
                if !e.inlet.rate.0.iter().filter_map(|pump| pump.q()).any(|rate| rate > cap) {
                    return None;
                }
                // The cap holds at the peak: what evens the flow out has no pulsation left behind it.
                other.inlet.rate.0 = vec![e.outlet.flow_cap.clone()];
                let written =
                    Written { text: "1".to_owned(), value: 1.0, unit: &ONE, notes: Vec::new(), gallon_open: false };
                let from = Some("evened out".to_owned());
                other.inlet.pulsation.claims = vec![Claim { written, from, chosen: false, because: None, range: None }];
                other.inlet.together.0 = None;
            }
            Change::RainKeptOut if !e.surfaces.is_empty() && !e.streams.is_empty() && !is_barred(e) => {
                other = without_rain(e);
                if one_pump_keeps_up(e) {
                    other.inlet.together.0 = None;
                    other.inlet.interlocked.0 = Some(true);
                }
                // Results of the waters together say nothing of one of them.
                other.samples.retain(|s| s.stream.is_some());
            }
            // What the sewer does not take is left out, unless its owner consents.
            Change::WithTheRain if is_barred(e) => {
                other.outlet.rain_allowed.0 = Some(true);
                // Nobody was asked whether the others run in it too; that they do is the safe side.
                for stream in other.streams.iter_mut().filter(|s| s.with_rain.is_none()) {
                    stream.with_rain.0 = Some(true);
                }
            }
            // Rain that the sewer does not take is no alternative.
            Change::WashApart if !e.surfaces.is_empty() && !e.streams.is_empty() && may_take_rain(e) => {
                // A product that is said to go into the rain stays; one that names a stream went with it.
                let rain = |word: &String| e.streams.iter().all(|s| s.name.as_deref() != Some(word.as_str()));
                other.chemicals.retain(|c| c.stream.iter().any(rain));
                other.samples.retain(|s| s.stream.as_deref().is_some_and(|of| rain(&of.to_owned())));
                other.streams.clear();
            }
            // Results of the waters may hold the bath: they stay, as nothing says that they do.
            Change::BathApart if !e.dumps.is_empty() => other.dumps.clear(),
            Change::DrainClosed if drains_open(e).next().is_some() => {
                for at in drains_open(e).collect::<Vec<_>>() {
                    let closed = WordClaim { word: DrainValve::Closed, from: None, chosen: false, because: None };
                    other.containments[at].drain.claims = vec![closed];
                }
            }
            Change::SpillAhead
                if e.spill.is_some()
                    && taken.map_or_else(
                        // Where nothing fits, the rate of the spill may be why.
                        || e.spill.as_ref().is_some_and(|spill| spill.rate.is_given()),
                        |pick| matches!(pick.condition, Some(Condition::Ahead(_))),
                    ) =>
            {
                other.spill = None;
            }
            Change::TwoInParallel if e.unit.count.is_none() && taken.is_some_and(|pick| pick.count == 1) => {
                other.unit.count.0 = Some(2);
            }
            _ => return None,
        }
        Some(other)
    }
}

/// Whether one of several pumps keeps up with all streams, so that a second one never starts without rain; not where a bath is
/// let go into them.
fn one_pump_keeps_up(e: &Enquiry) -> bool {
    let flow = |s: &Stream| {
        let day = || Some(Flow::from_si(s.volume_per_day.q()?.si() / (8.0 * 3600.0)));
        s.flow.q().or_else(|| Some(s.hose_flow.q()? * s.hoses.q()?.si())).or_else(day)
    };
    let comes = e.streams.iter().map(flow).try_fold(0.0, |sum, q| Some(sum + q?.si()));
    let least = e.inlet.rate.0.iter().filter_map(|pump| pump.q()).map(Typed::si).reduce(f64::min);
    let keeps_up = comes.zip(least).is_some_and(|(comes, least)| comes <= least);
    e.inlet.rate.0.len() > 1 && e.dumps.is_empty() && keeps_up
}

/// The containments whose drain is said to stand open, by their places in the enquiry.
fn drains_open(e: &Enquiry) -> impl Iterator<Item = usize> {
    let open = |c: &Containment| c.drain.settled().is_some_and(|claim| claim.word == DrainValve::Open);
    e.containments.iter().enumerate().filter(move |(_, c)| open(c)).map(|(at, _)| at)
}

/// The class of pump that breaks the droplets least.
const GENTLE: &str = "progressive-cavity";

/// Whether the pump that feeds the unit sets the droplets in it.
fn pump_governs(design: &Design) -> bool {
    let ways = design.basis.as_ref().map_or(&[][..], |b| &b.arrivals);
    let broken = |shear: &Shear| shear.governs && shear.hardest().is_feed_pump;
    ways.iter().any(|way| way.shear.as_ref().is_some_and(broken))
}

/// Whether the receiver may take rain: not a sanitary sewer whose owner does not allow it.
fn may_take_rain(e: &Enquiry) -> bool {
    e.outlet.to.0 != Some(Receiver::SanitarySewer) || *e.outlet.rain_allowed != Some(false)
}

/// Another train, worked through.
#[derive(Debug, Clone)]
pub struct Alternative {
    /// In what it differs.
    pub change: Change,
    /// The unit; `None` where nothing fits.
    pub pick: Option<Pick>,
    /// Its name.
    pub unit: String,
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
    // A pump that changes neither the unit nor what leaves by a twentieth is no alternative.
    let out = effluent(&settled.job.design);
    let same = |a: &Alternative| {
        taken.is_some_and(|pick| pick.name(range) == a.unit)
            && a.effluent.zip(out).is_none_or(|(then, now)| then.si() > 0.95 * now.si())
    };
    all.retain(|a| a.change != Change::GentlePump || (a.pick.is_some() && !same(a)));
    // Where nothing fits, a spill that is held ahead and changes nothing is no alternative; nor where a containment that
    // stands holds it.
    let held = all.iter().any(|a| a.change == Change::DrainClosed && holds(a));
    all.retain(|a| a.change != Change::SpillAhead || (a.pick.is_some() && !held));
    all.retain(|a| a.change != Change::DrainClosed || a.pick.is_some());
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
            pick: None,
            unit,
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
    Alternative { change, unit, one_pump: false, effluent: effluent(&design), words, design, pick: Some(found) }
}
