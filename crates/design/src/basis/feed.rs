//! How the water is fed: by gravity or by pumps, which of them run, and how long.

use super::lift::{self, Lift};
use super::stated::{stand_in, stated, stated_or};
use super::waters::{YesNo, yes_or_no};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::Feed;
use crate::provenance::{Stop, Trail, Val, WhatIf, choose};
use crate::{by, reckon, say};
use stillrise_handbook::hydraulics::{pump_cycle_time, pump_run_time};
use stillrise_handbook::separation::pumps::pump;
use stillrise_units::catalog::{GPM, M3_H};
use stillrise_units::{Flow, KinematicViscosity, Ratio, Time, Typed, Volume, ratio};

/// How the water is fed.
#[derive(Debug, Clone)]
pub struct FeedState {
    /// By pump.
    pub pumped: bool,
    /// Whether pumps, if there are several, run together.
    pub together: bool,
    /// Flow of the pumps that can run together, pulsation included.
    pub pump_flow: Option<Val<Flow>>,
    /// Flow of the largest pump alone, pulsation included.
    pub lead_flow: Option<Val<Flow>>,
    /// Water between start and stop level of the lead pump.
    pub sump: Option<Val<Volume>>,
    /// The largest single pump, without pulsation.
    pub one_pump: Option<Val<Flow>>,
    /// All pumps together, without pulsation.
    pub all_pumps: Option<Val<Flow>>,
    /// The pumps that run, without pulsation.
    pub mean_flow: Option<Val<Flow>>,
    /// Peak over mean flow.
    pub pulsation: Option<Val<Ratio>>,
    /// Class of pump in the handbook.
    pub class: Option<&'static stillrise_handbook::separation::pumps::Pump>,
    /// Most that may leave.
    pub cap: Option<Val<Flow>>,
    /// What the pump has to lift, where anybody spoke of it.
    pub lift: Option<Lift>,
    /// Whether the rates were read off the curve, because none was stated.
    pub off_the_curve: bool,
}

/// Finds how the water is fed.
pub fn feed<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, nu: Val<KinematicViscosity>) -> FeedState {
    t.section("feed");
    let pumped = e.inlet.feed.0 == Some(Feed::Pump)
        || (e.inlet.feed.0.is_none()
            && (!e.inlet.rate.0.is_empty()
                || e.lift.is_some()
                || e.inlet.pump.as_deref().is_some_and(|p| p != "gravity")));
    let class = e.inlet.pump.as_deref().and_then(pump);
    let cap = stated(t, w, "flow cap of the outlet", &e.outlet.flow_cap);
    let mut state = FeedState {
        pumped,
        together: true,
        pump_flow: None,
        lead_flow: None,
        sump: None,
        one_pump: None,
        all_pumps: None,
        mean_flow: None,
        pulsation: None,
        class,
        cap,
        lift: None,
        off_the_curve: false,
    };
    if !pumped {
        return state;
    }
    let mut largest: Option<Val<Flow>> = None;
    let mut sum: Option<Val<Flow>> = None;
    for (i, pump) in e.inlet.rate.0.iter().enumerate() {
        let Some(rate) = stated(t, w, &say!(T, "rate of pump {}", i + 1), pump) else { continue };
        largest = Some(match largest {
            Some(best) if best.q >= rate.q => best,
            _ => rate,
        });
        sum = Some(match sum {
            None => rate,
            Some(sum) => reckon!(t, "rate of all pumps", [GPM, M3_H], (sum = sum, next = rate) sum + next),
        });
    }
    let count = lift::pumps(e);
    let mut main = lift::lift(t, w, e, nu);
    t.section("feed");
    if let (None, Some((one, all))) = (largest, main.as_ref().and_then(|lift| lift.one().zip(lift.all()))) {
        state.off_the_curve = true;
        largest = Some(lift::rate(t, "rate of one pump, off its curve", one));
        sum = if count > 1 { Some(lift::rate(t, "rate of all pumps, off their curve", all)) } else { largest };
    } else if let Some(main) = &mut main {
        lift::duties(t, main, largest, sum, count);
        t.section("feed");
    }
    state.lift = main;
    state.one_pump = largest;
    state.all_pumps = sum;
    let together = together(t, w, e, count > 1);
    state.together = together;
    let running = if together { sum } else { largest };
    state.mean_flow = running;
    let typical = class.map_or(1.0, |c| c.pulsation().si());
    let pulsation = stated_or(
        t,
        w,
        e.inlet.pulsation().asked_if(class.is_none() || typical > 1.0),
        "peak over mean flow of the pump",
        || {
            let source = class.map_or_else(
                || "kind of pump not said; the high end for two chambers that deliver in turn".to_owned(),
                |c| c.pulsation_mark.text(),
            );
            stand_in((ratio(1.0), ratio(typical), ratio(typical.max(1.6))), source)
        },
    );
    state.pulsation = Some(pulsation);
    let mut peak = |label: &str, rate: Val<Flow>| reckon!(t, label, [GPM, M3_H], (rate = rate, pulsation = pulsation) rate * pulsation);
    state.pump_flow = running.map(|rate| peak("peak flow of the pumps", rate));
    state.lead_flow = if together && count > 1 {
        largest.map(|rate| peak("peak flow of the lead pump alone", rate))
    } else {
        state.pump_flow
    };
    state.sump = sump(t, w, e);
    state
}

/// Whether the pumps, if there are several, can run at once: an interlock keeps them apart, a schedule or a float does not.
fn together<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, several: bool) -> bool {
    match (e.inlet.together.0, e.inlet.interlocked.0) {
        (_, Some(true)) => false,
        (Some(true), _) | (None | Some(false), Some(false)) => true,
        (Some(false), None) if several => !yes_or_no(
            t,
            w,
            e.inlet.interlocked(),
            "whether an interlock keeps the pumps from running together",
            YesNo::Yes,
            "it was said that they cannot run together",
        ),
        (Some(false), None) => false,
        (None, None) if several => yes_or_no(
            t,
            w,
            e.inlet.together(),
            "whether the pumps run together",
            YesNo::Yes,
            "nobody said that they cannot run together",
        ),
        (None, None) => true,
    }
}

/// Water between start and stop level.
fn sump<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Option<Val<Volume>> {
    let volume = stated(t, w, "water between start and stop level", &e.inlet.sump_volume);
    volume.or_else(|| {
        let start = stated(t, w, "start level of the lead pump", &e.inlet.start_level)?;
        let stop = stated(t, w, "stop level of the lead pump", &e.inlet.stop_level)?;
        let area = stated(t, w, "surface of the sump", &e.inlet.sump_area)?;
        let label = "water between start and stop level";
        Some(reckon!(t, label, [GAL, M3], (start = start, stop = stop, area = area)(start - stop) * area))
    })
}

/// Which of several pumps run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pumps {
    /// All of them.
    All,
    /// The lead pump, the largest.
    Lead,
}

impl Pumps {
    /// In print.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Pumps::All => "all pumps",
            Pumps::Lead => "lead pump alone",
        }
    }
}

/// How a pump runs that lifts more than arrives.
#[derive(Debug, Clone, Copy)]
pub struct Cycle {
    /// How long it runs at a time.
    pub runs: Val<Time>,
    /// From one start to the next.
    pub period: Val<Time>,
}

impl FeedState {
    /// The states that the pumps can be in while water arrives; none where there is one state only.
    ///
    /// In dry weather the others start only when more arrives than the lead pump lifts; a storm may have filled the sump.
    #[must_use]
    pub fn states(&self, dry: bool, inflow: Val<Flow>) -> Vec<Pumps> {
        let (Some(all), Some(lead), Some(one)) = (self.pump_flow, self.lead_flow, self.one_pump) else {
            return Vec::new();
        };
        match (all.q > lead.q, dry && inflow.q <= one.q) {
            (false, _) => Vec::new(),
            (true, true) => vec![Pumps::Lead],
            (true, false) => vec![Pumps::All, Pumps::Lead],
        }
    }

    /// How the pumps of a state run on what arrives; `None` where they never stop, or the sump is not known.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn cycle<T: Trail>(&self, t: &mut T, pumps: Option<Pumps>, inflow: Val<Flow>) -> Result<Option<Cycle>, Stop> {
        let rate = if pumps == Some(Pumps::Lead) { self.one_pump } else { self.mean_flow };
        let (Some(rate), Some(sump)) = (rate.filter(|rate| rate.q > inflow.q), self.sump) else { return Ok(None) };
        if inflow.q.si() <= 0.0 {
            return Ok(None);
        }
        Ok(Some(Cycle {
            runs: by!(t, "time the pump runs", pump_run_time::time(sump, inflow, rate))?,
            period: by!(t, "time from start to start", pump_cycle_time::time(sump, inflow, rate))?,
        }))
    }
}

/// What reaches the unit: a pump sets its own flow; by gravity the cap, if there is one, holds back.
pub(super) fn fed<T: Trail>(t: &mut T, inflow: Val<Flow>, feed: &FeedState, pumps: Option<Pumps>) -> Val<Flow> {
    let units = Some((&GPM, &M3_H) as crate::provenance::Pair);
    if let Some(pump) = if pumps == Some(Pumps::Lead) { feed.lead_flow } else { feed.pump_flow } {
        return choose(
            t,
            "flow to the unit",
            units,
            pump.q,
            "what arrives, and what the pumps deliver",
            "a pump sets the flow while it runs",
            &[pump.at, inflow.at],
        );
    }
    match feed.cap {
        Some(cap) if cap.q < inflow.q => choose(
            t,
            "flow to the unit",
            units,
            cap.q,
            "what arrives, and the flow cap",
            "the cap is kept by equalisation ahead of the unit",
            &[cap.at, inflow.at],
        ),
        _ => inflow,
    }
}
