//! Enquiries with one thing changed that takes some doing: other pumps, other cleaners, waters that go elsewhere.

use super::pump_governs;
use stillrise_design::basis::cases::{Kind, largest};
use stillrise_design::basis::chemicals::Which;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::blocks::{Containment, DrainValve, Receiver, Stream};
use stillrise_design::enquiry::keys::{Claim, Quantity};
use stillrise_design::enquiry::named::same;
use stillrise_design::job::{Design, begin};
use stillrise_design::{Off, WhatIf};
use stillrise_handbook::separation::pumps::{Pump, pump};
use stillrise_units::catalog::{GPM, M3_H, ONE};
use stillrise_units::parse::Written;
use stillrise_units::{Flow, System, Typed};

/// Whether one of several pumps keeps up with all streams, so that a second one never starts without rain; not where a bath is
/// let go into them.
pub(super) fn one_pump_keeps_up(e: &Enquiry) -> bool {
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
pub(crate) fn drains_open(e: &Enquiry) -> impl Iterator<Item = usize> {
    let open = |c: &Containment| c.drain.settled().is_some_and(|claim| claim.word == DrainValve::Open);
    e.containments.iter().enumerate().filter(move |(_, c)| open(c)).map(|(at, _)| at)
}

/// No pulsation, and why.
pub(super) fn even(why: &str) -> Claim {
    let written = Written { text: "1".to_owned(), value: 1.0, unit: &ONE, notes: Vec::new(), gallon_open: false };
    Claim { written, from: Some(why.to_owned()), chosen: false, because: None, range: None }
}

/// In which steps pumps are taken to come: gpm, m3/h. Judgement.
const STEPS: (f64, f64) = (5.0, 1.0);

/// With a pump for the water that comes together, in whole steps; `None` where the one that is named lifts no more.
pub(super) fn smaller_pump(e: &Enquiry) -> Option<Enquiry> {
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
pub(crate) const GENTLE: &str = "progressive-cavity";

/// With a slow pump; `None` where one as gentle is there.
pub(crate) fn gentle(e: &Enquiry) -> Option<Enquiry> {
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
pub(super) fn of_another_pump(e: &mut Enquiry) {
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
pub(crate) const QUICK_BREAK: &str = "quick-break-detergent";
pub(crate) const HOLDS: [&str; 3] = ["soap", "alkaline-degreaser", "surfactant-heavy-detergent"];

/// With a quick-break cleaner in place of those that hold the oil; `None` where there is none.
pub(super) fn quick_break(e: &Enquiry) -> Option<Enquiry> {
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

/// Without what sheared those waters alone that are not there any more: a block that no stream names would shear all of them.
pub(super) fn without_orphans(e: &Enquiry, other: &mut Enquiry) {
    let named = |e: &Enquiry, name: Option<&str>| {
        let called = |word: &String| name.is_some_and(|name| same(word, name));
        e.streams.iter().any(|s| s.shear.iter().any(called))
            || e.containments.iter().any(|c| c.shear.iter().any(called))
    };
    let kept: Vec<_> = other.shear.iter().map(|s| s.name.0.clone()).collect();
    let gone: Vec<bool> = kept.iter().map(|name| named(e, name.as_deref()) && !named(other, name.as_deref())).collect();
    let mut k = 0;
    other.shear.retain(|_| {
        k += 1;
        !gone[k - 1]
    });
}

/// From which share of the oil on, %, a product holds it: half of it never rises. Judgement, as in the triage.
const HOLDS_FROM: f64 = 50.0;

/// Without the waters in which a product holds the oil, without such products in the others, and with a slow pump where one
/// breaks the oil; `None` where that is one change or none, which stands for itself.
pub(super) fn only_what_rises(e: &Enquiry, design: &Design) -> Option<Enquiry> {
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
    without_orphans(e, &mut other);
    let stays = |name: &str| other.streams.iter().any(|s| s.name.as_deref() == Some(name));
    // Results of the waters together say nothing of those that are left.
    other.samples.retain(|s| s.stream.as_deref().is_some_and(stays));
    if pumped { gentle(&other) } else { Some(other) }
}

/// Whether the spill is the largest flow.
pub(super) fn spill_governs(design: &Design) -> bool {
    design.basis.as_ref().and_then(|basis| largest(&basis.cases)).is_some_and(|case| case.kind == Kind::Spill)
}

/// Whether the receiver may take rain: not a sanitary sewer whose owner does not allow it.
pub(super) fn may_take_rain(e: &Enquiry) -> bool {
    e.outlet.to.0 != Some(Receiver::SanitarySewer) || *e.outlet.rain_allowed != Some(false)
}
