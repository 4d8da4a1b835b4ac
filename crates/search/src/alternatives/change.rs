//! In what an alternative differs from what was asked for, and the enquiry with it.

use super::pump_governs;
use crate::condition::Condition;
use crate::pick::Pick;
use crate::shortfall::{anywhere, has_place};
use stillrise_design::basis::cases::{Kind, largest};
use stillrise_design::basis::chemicals::Which;
use stillrise_design::basis::rain_kept_out::{is_barred, without_rain};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::blocks::{Containment, DrainValve, Feed, Receiver, Stream, Surface};
use stillrise_design::enquiry::claimed_word::WordClaim;
use stillrise_design::enquiry::keys::{Claim, Quantity};
use stillrise_design::job::{Design, begin};
use stillrise_design::{Off, WhatIf};
use stillrise_handbook::separation::pumps::{Pump, pump};
use stillrise_units::catalog::{GPM, M3_H, ONE};
use stillrise_units::parse::Written;
use stillrise_units::{Flow, System, Typed};

/// In what an alternative differs from what was asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Change {
    /// The pumps are interlocked so that one runs at a time.
    OnePump,
    /// A slow positive-displacement pump in place of one that breaks the droplets.
    GentlePump,
    /// A pump for the flow that somebody asked a unit for, which keeps up with the water of dry weather.
    PumpAsAsked,
    /// A cleaner that lets the oil go again in place of one that holds it.
    QuickBreak,
    /// Both that cleaner and the slow pump.
    QuickBreakAndGentle,
    /// The pumps pass no more than the flow cap; the rest waits in an equalisation.
    Capped,
    /// Rain is kept out; wash water alone is treated.
    RainKeptOut,
    /// The same with a pump that lifts no more than what then comes.
    RainKeptOutAndPump,
    /// The largest paved area drains elsewhere; the others stay.
    LargestAreaApart,
    /// Rain that the sewer does not take comes with the rest, where its owner consents.
    WithTheRain,
    /// Wash water goes elsewhere; rain alone is treated.
    WashApart,
    /// The same with the spill held ahead, whose flow would else be that of the unit.
    WashApartSpillAhead,
    /// The baths that are dumped are hauled off, and none comes to the separator.
    BathApart,
    /// The drains of containments that stand open are kept closed, and what they hold is let down by hand.
    DrainClosed,
    /// The spill is held ahead, and none of it comes to the separator.
    SpillAhead,
    /// Waters whose oil a product holds go elsewhere, none of it comes with the others, and no pump breaks what is left.
    OnlyWhatRises,
    /// The unit ahead of the pumps, where somebody asked for that: it takes by gravity whatever arrives.
    AheadOfPumps,
    /// Two units in parallel in place of one.
    TwoInParallel,
    /// Another place, with room for whatever comes.
    MoreRoom,
}

impl Change {
    /// All, in the order of print.
    pub const ALL: [Change; 19] = [
        Change::OnePump,
        Change::GentlePump,
        Change::QuickBreak,
        Change::QuickBreakAndGentle,
        Change::PumpAsAsked,
        Change::Capped,
        Change::RainKeptOut,
        Change::RainKeptOutAndPump,
        Change::LargestAreaApart,
        Change::WithTheRain,
        Change::WashApart,
        Change::WashApartSpillAhead,
        Change::BathApart,
        Change::DrainClosed,
        Change::SpillAhead,
        Change::OnlyWhatRises,
        Change::AheadOfPumps,
        Change::TwoInParallel,
        Change::MoreRoom,
    ];

    /// Those that are tried in pairs where none alone lets anything fit.
    pub(super) const PAIRED: [Change; 7] = [
        Change::RainKeptOut,
        Change::LargestAreaApart,
        Change::WashApart,
        Change::BathApart,
        Change::GentlePump,
        Change::DrainClosed,
        Change::SpillAhead,
    ];

    /// Whether another change is in it already, or undoes it.
    pub(super) fn holds(self, other: Change) -> bool {
        matches!(
            (self, other),
            (Change::RainKeptOut, Change::LargestAreaApart | Change::WashApart)
                | (Change::WashApart, Change::BathApart)
        )
    }

    /// In a few words.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Change::OnePump => "one pump at a time, interlocked",
            Change::GentlePump => {
                "a slow positive-displacement pump (progressive cavity) that lifts no more at its peak, and breaks less of the oil"
            }
            Change::PumpAsAsked => "a pump for the flow you named, the rest held back ahead of it",
            Change::QuickBreak => "a quick-break cleaner in place of what holds the oil",
            Change::QuickBreakAndGentle => "a quick-break cleaner together with a slow positive-displacement pump",
            Change::Capped => "evened out to the flow cap, equalisation ahead",
            Change::RainKeptOut => "without the rain, which is kept out",
            Change::RainKeptOutAndPump => {
                "without the rain, and with a pump that lifts no more than what then comes together"
            }
            Change::LargestAreaApart => "with the largest paved area drained elsewhere and all else as it is",
            Change::WithTheRain => "with the rain, and what may run while it rains, if the owner of the sewer consents",
            Change::WashApart => "the rain alone, all other water treated apart",
            Change::WashApartSpillAhead => "the rain alone, all other water treated apart, and the spill held ahead",
            Change::BathApart => "the bath hauled off or treated by itself, none of it let into the water",
            Change::DrainClosed => "the drain of the containment kept closed, its water let down by hand after a look",
            Change::SpillAhead => "the spill held ahead, none of it coming to the separator",
            Change::OnlyWhatRises => {
                "only water whose oil rises: what is washed with a product that holds the oil hauled off or treated apart, no such product let into the rest, and a slow positive-displacement pump where another would break the oil"
            }
            Change::AheadOfPumps => "ahead of the pumps, by gravity, so that they lift the water that leaves it",
            Change::TwoInParallel => "two units in parallel",
            Change::MoreRoom => "where there is room for it, clear height and lifting gear",
        }
    }

    /// The enquiry with this change; `None` where it makes no sense.
    pub(super) fn made(self, e: &Enquiry, taken: Option<&Pick>, design: &Design) -> Option<Enquiry> {
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
            Change::GentlePump if pump_governs(design) => return gentle(&other),
            Change::QuickBreak => return quick_break(&other),
            Change::QuickBreakAndGentle if pump_governs(design) => return gentle(&quick_break(&other)?),
            Change::PumpAsAsked => {
                let asked = e.asked.flow.q()?;
                let [pump] = &e.inlet.rate.0[..] else { return None };
                let dry = |kind: Kind| matches!(kind, Kind::Dry | Kind::Bath | Kind::Extra | Kind::DrainDown);
                let cases = &design.basis.as_ref()?.cases;
                let keeps_up = cases.iter().filter(|case| dry(case.kind)).all(|case| case.inflow.q <= asked);
                if pump.q()? <= asked || !keeps_up {
                    return None;
                }
                other.inlet.rate.0 = vec![e.asked.flow.clone()];
                // The figures are those of the pump that was named.
                of_another_pump(&mut other);
            }
            Change::Capped => {
                let cap = e.outlet.flow_cap.q()?;
                if !e.inlet.rate.0.iter().filter_map(|pump| pump.q()).any(|rate| rate > cap) {
                    return None;
                }
                // The cap holds at the peak: what evens the flow out has no pulsation left behind it.
                other.inlet.rate.0 = vec![e.outlet.flow_cap.clone()];
                other.inlet.pulsation.claims = vec![even("evened out")];
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
            Change::RainKeptOutAndPump => return smaller_pump(&Change::RainKeptOut.made(e, taken, design)?),
            // Where one area brings most of the rain and nothing fits, the others may be what has to be treated.
            Change::LargestAreaApart
                if taken.is_none_or(|pick| !pick.fits) && e.surfaces.len() > 1 && !is_barred(e) =>
            {
                let area = |s: &Surface| s.area.q().map_or(0.0, Typed::si);
                let all: f64 = e.surfaces.iter().map(area).sum();
                let (at, largest) = e.surfaces.iter().enumerate().max_by(|a, b| area(a.1).total_cmp(&area(b.1)))?;
                if area(largest) < 0.5 * all {
                    return None;
                }
                other.surfaces.remove(at);
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
            Change::WashApartSpillAhead if spill_governs(design) => {
                other = Change::WashApart.made(e, taken, design)?;
                other.spill = None;
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
                        |pick| matches!(pick.condition, Some(Condition::Ahead(_))) || spill_governs(design),
                    ) =>
            {
                other.spill = None;
            }
            Change::OnlyWhatRises => return only_what_rises(e, design),
            Change::AheadOfPumps if *e.asked.ahead_of_pumps == Some(true) && design.basis.as_ref()?.feed.pumped => {
                other.inlet.feed.0 = Some(Feed::Gravity);
                other.inlet.rate.0.clear();
                other.inlet.pump.0 = None;
                other.lift = None;
                of_another_pump(&mut other);
                // It stands where the pipe comes in, and what leaves it is lifted.
                other.site.buried.0 = None;
                other.outlet.invert.claims.clear();
            }
            Change::TwoInParallel if e.unit.count.is_none() && taken.is_some_and(|pick| pick.count == 1) => {
                other.unit.count.0 = Some(2);
            }
            // Where the limits are missed, a larger one may keep them that does not go into the place.
            Change::MoreRoom if has_place(e) && taken.is_some_and(|pick| pick.condition == Some(Condition::Limit)) => {
                other = anywhere(e);
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

/// No pulsation, and why.
fn even(why: &str) -> Claim {
    let written = Written { text: "1".to_owned(), value: 1.0, unit: &ONE, notes: Vec::new(), gallon_open: false };
    Claim { written, from: Some(why.to_owned()), chosen: false, because: None, range: None }
}

/// In which steps pumps are taken to come: gpm, m3/h. Judgement.
const STEPS: (f64, f64) = (5.0, 1.0);

/// With a pump for the water that comes together, in whole steps; `None` where the one that is named lifts no more.
fn smaller_pump(e: &Enquiry) -> Option<Enquiry> {
    let [pump] = &e.inlet.rate.0[..] else { return None };
    let (unit, step) = if e.system() == System::Us { (&GPM, STEPS.0) } else { (&M3_H, STEPS.1) };
    let begun = begin(&mut Off, &WhatIf::default(), e);
    let waters = begun.basis.as_ref()?.cases.iter().filter(|case| case.kind != Kind::Spill);
    let comes = waters.map(|case| unit.from_si(case.inflow.q.si())).fold(0.0, f64::max);
    // But for what rounding leaves.
    let lifts = (comes / step - 1e-9).ceil() * step;
    if lifts <= 0.0 || pump.q()? <= Flow::of(lifts, unit) {
        return None;
    }
    let mut other = e.clone();
    let text = format!("{lifts} {}", unit.symbol);
    let written = Written { text, value: lifts, unit, notes: Vec::new(), gallon_open: false };
    let from = Some("no more than what comes together".to_owned());
    other.inlet.rate.0[0].claims = vec![Claim { written, from, chosen: false, because: None, range: None }];
    of_another_pump(&mut other);
    Some(other)
}

/// The class of pump that breaks the droplets least.
const GENTLE: &str = "progressive-cavity";

/// With a slow pump; `None` where one as gentle is there.
fn gentle(e: &Enquiry) -> Option<Enquiry> {
    let gentle = pump(GENTLE)?;
    let [_, likely, _] = e.inlet.pump.as_deref().and_then(pump).map(Pump::dissipation).unwrap_or_default();
    // One as gentle already, worked from its own figures, is named by its class.
    if e.inlet.pump.is_some() && likely <= gentle.dissipation()[1] {
        return None;
    }
    let mut other = e.clone();
    other.inlet.pump.0 = Some(GENTLE.to_owned());
    of_another_pump(&mut other);
    // It runs so much slower that its strokes lift no more than the pump that was named.
    if e.inlet.rate.0.iter().any(Quantity::is_given) {
        other.inlet.pulsation.claims = vec![even("run slower by its pulsation")];
    }
    Some(other)
}

/// Without what was said of a pump that is not there any more.
fn of_another_pump(e: &mut Enquiry) {
    let own = &mut e.inlet;
    own.pump_power = Quantity::default();
    own.pump_head = Quantity::default();
    own.pump_speed = Quantity::default();
    own.impeller = Quantity::default();
    own.impeller_width = Quantity::default();
    own.efficiency = Quantity::default();
    own.head_coefficient = Quantity::default();
    own.dissipation = Quantity::default();
    own.pulsation = Quantity::default();
}

/// The cleaner that lets the oil go again, and those in place of which it could clean.
const QUICK_BREAK: &str = "quick-break-detergent";
const HOLDS: [&str; 3] = ["soap", "alkaline-degreaser", "surfactant-heavy-detergent"];

/// With a quick-break cleaner in place of those that hold the oil; `None` where there is none.
fn quick_break(e: &Enquiry) -> Option<Enquiry> {
    let mut other = e.clone();
    let holds = |kind: &Option<String>| kind.as_deref().is_some_and(|kind| HOLDS.contains(&kind));
    let mut any = false;
    for product in other.chemicals.iter_mut().filter(|product| holds(&product.kind.0)) {
        product.kind.0 = Some(QUICK_BREAK.to_owned());
        product.tension = Quantity::default();
        any = true;
    }
    any.then_some(other)
}

/// From which share of the oil on, %, a product holds it: half of it never rises. Judgement, as in the triage.
const HOLDS_FROM: f64 = 50.0;

/// Without the waters in which a product holds the oil, without such products in the others, and with a slow pump where one
/// breaks the oil; `None` where that is one change or none, which stands for itself.
fn only_what_rises(e: &Enquiry, design: &Design) -> Option<Enquiry> {
    let basis = design.basis.as_ref()?;
    let holding = |k: usize| basis.dosed[k].row.is_some_and(|row| row.emulsified.typical >= HOLDS_FROM);
    let held = |which: Which| (0..basis.dosed.len()).any(|k| holding(k) && basis.dosed[k].reaches(which));
    let apart: Vec<bool> = (0..e.streams.len()).map(|k| held(Which::Stream(k))).collect();
    let (hauled, soluble) = (apart.contains(&true), held(Which::Rain));
    let pumped = pump_governs(design);
    if [hauled, soluble, pumped].into_iter().filter(|one| *one).count() < 2
        || !e.dumps.is_empty()
        || !(hauled || soluble)
        || e.surfaces.is_empty() && !apart.contains(&false)
    {
        return None;
    }
    let mut other = e.clone();
    let mut k = 0;
    other.chemicals.retain(|_| {
        k += 1;
        !holding(k - 1)
    });
    let mut k = 0;
    other.streams.retain(|_| {
        k += 1;
        !apart[k - 1]
    });
    let stays = |name: &str| other.streams.iter().any(|s| s.name.as_deref() == Some(name));
    // Results of the waters together say nothing of those that are left.
    other.samples.retain(|s| s.stream.as_deref().is_some_and(stays));
    if pumped { gentle(&other) } else { Some(other) }
}

/// Whether the spill is the largest flow.
fn spill_governs(design: &Design) -> bool {
    design.basis.as_ref().and_then(|basis| largest(&basis.cases)).is_some_and(|case| case.kind == Kind::Spill)
}

/// Whether the receiver may take rain: not a sanitary sewer whose owner does not allow it.
fn may_take_rain(e: &Enquiry) -> bool {
    e.outlet.to.0 != Some(Receiver::SanitarySewer) || *e.outlet.rain_allowed != Some(false)
}
