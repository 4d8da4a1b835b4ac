//! The cases: which waters coincide, what they come to, and how they are fed.

use super::waters::{Content, Water};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::Feed;
use crate::provenance::{Stop, Trail, Val, WhatIf, choose};
use crate::{by, reckon, say};
use stillrise_handbook::separation::mixture;
use stillrise_handbook::separation::pumps::pump;
use stillrise_units::catalog::{GPM, M3_H, ONE};
use stillrise_units::{Concentration, Flow, Ratio, Typed, ratio};

/// What kind of event a case is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// The design storm alone.
    Storm,
    /// Storm and the waters that may run with it.
    StormAndWash,
    /// The dry-weather waters together.
    Dry,
    /// Oil arriving as a spill: a matter of storage, not of steady removal.
    Spill,
    /// A flow that was only stated.
    Stated,
    /// A case of the enquiry's own.
    Extra,
}

/// One case.
#[derive(Debug, Clone)]
pub struct Case {
    /// Its name.
    pub name: String,
    /// Its kind.
    pub kind: Kind,
    /// The waters in it.
    pub parts: Vec<String>,
    /// Flow that arrives.
    pub inflow: Val<Flow>,
    /// Flow that reaches the unit or units, after pump and flow cap.
    pub feed: Val<Flow>,
    /// What it carries; nothing for a spill.
    pub content: Option<Content>,
}

/// How the water is fed.
#[derive(Debug, Clone)]
pub struct FeedState {
    /// By pump.
    pub pumped: bool,
    /// Whether pumps, if there are several, run together.
    pub together: bool,
    /// Flow of the pumps that can run together, pulsation included.
    pub pump_flow: Option<Val<Flow>>,
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
}

/// Finds how the water is fed.
pub fn feed<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> FeedState {
    t.section("feed");
    let pumped = e.inlet.feed.0 == Some(Feed::Pump)
        || (e.inlet.feed.0.is_none()
            && (!e.inlet.rate.0.is_empty() || e.inlet.pump.as_deref().is_some_and(|p| p != "gravity")));
    let class = e.inlet.pump.as_deref().and_then(pump);
    let cap = super::stated::stated(t, w, "flow cap of the outlet", &e.outlet.flow_cap);
    let mut state = FeedState {
        pumped,
        together: true,
        pump_flow: None,
        one_pump: None,
        all_pumps: None,
        mean_flow: None,
        pulsation: None,
        class,
        cap,
    };
    if !pumped {
        return state;
    }
    let mut largest: Option<Val<Flow>> = None;
    let mut sum: Option<Val<Flow>> = None;
    for (i, pump) in e.inlet.rate.0.iter().enumerate() {
        let Some(rate) = super::stated::stated(t, w, &say!(T, "rate of pump {}", i + 1), pump) else { continue };
        largest = Some(match largest {
            Some(best) if best.q >= rate.q => best,
            _ => rate,
        });
        sum = Some(match sum {
            None => rate,
            Some(sum) => reckon!(t, "rate of all pumps", [GPM, M3_H], (sum = sum, next = rate) sum + next),
        });
    }
    state.one_pump = largest;
    state.all_pumps = sum;
    let together = match e.inlet.together.0 {
        Some(flag) => flag,
        None if e.inlet.rate.0.len() > 1 => super::waters::yes_or_no(
            t,
            w,
            "whether the pumps run together",
            "inlet.together".to_owned(),
            "Can the pumps run at the same time, or is one a standby?".to_owned(),
            super::waters::YesNo::Yes,
            "nobody said that they cannot run together",
        ),
        None => true,
    };
    state.together = together;
    let running = if together { sum } else { largest };
    state.mean_flow = running;
    let typical = class.map_or(1.0, |c| c.pulsation().si());
    let pulsation = super::stated::stated_or(
        t,
        w,
        &e.inlet.pulsation,
        super::stated::standby(
            "peak over mean flow of the pump",
            (&ONE, &ONE),
            "inlet.pulsation",
            if class.is_some() && typical <= 1.0 {
                ""
            } else {
                "How far does the pump's flow pulsate, and is there a damper?"
            },
            (ratio(1.0), ratio(typical), ratio(typical.max(1.6))),
            class.map_or_else(
                || "kind of pump not said; the high end for two chambers that deliver in turn".to_owned(),
                |c| c.pulsation_mark.text(),
            ),
        ),
    );
    state.pulsation = Some(pulsation);
    state.pump_flow = running.map(
        |rate| reckon!(t, "peak flow of the pumps", [GPM, M3_H], (rate = rate, pulsation = pulsation) rate * pulsation),
    );
    state
}

/// Builds the table of cases.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn cases<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &super::fluids::Fluids,
    waters: &[Water],
    feed: &FeedState,
) -> Result<Vec<Case>, Stop> {
    let mut cases = Vec::new();
    let rain: Vec<&Water> = waters.iter().filter(|w| w.is_rain).collect();
    let wet: Vec<&Water> = waters.iter().filter(|w| !w.is_rain && w.with_rain).collect();
    let dry: Vec<&Water> = waters.iter().filter(|w| !w.is_rain).collect();
    if !rain.is_empty() {
        cases.push(case(t, "storm", Kind::Storm, &rain, feed)?);
        if !wet.is_empty() {
            let all: Vec<&Water> = rain.iter().chain(&wet).copied().collect();
            cases.push(case(t, "storm and wash", Kind::StormAndWash, &all, feed)?);
        }
    }
    if !dry.is_empty() {
        let name = if dry.len() == 1 { dry[0].name.clone() } else { "dry-weather waters together".to_owned() };
        cases.push(case(t, &name, Kind::Dry, &dry, feed)?);
    }
    for block in &e.cases {
        let name = block.name.0.clone().unwrap_or_else(|| "extra case".to_owned());
        t.section(&name);
        let Some(flow) = super::stated::stated(t, w, &say!(T, "flow of {name}"), &block.flow) else { continue };
        let content = match (&block.oil, waters.first()) {
            (None, Some(first)) => first.content.clone(),
            _ => super::waters::of_case(t, w, e, fluids, &name, block)?,
        };
        let content = Some(content);
        let fed = fed(t, flow, feed);
        cases.push(Case { name, kind: Kind::Extra, parts: Vec::new(), inflow: flow, feed: fed, content });
    }
    let steady = cases.iter().any(|c| c.content.is_some());
    if !steady && let Some(flow) = super::stated::stated(t, w, "stated design flow", &e.stated.flow).or(feed.pump_flow)
    {
        t.section("stated flow");
        let content = super::waters::unknown(t, w, e, fluids)?;
        let fed = fed(t, flow, feed);
        cases.push(Case {
            name: "stated flow".to_owned(),
            kind: Kind::Stated,
            parts: Vec::new(),
            inflow: flow,
            feed: fed,
            content: Some(content),
        });
    }
    if let Some(spill) = &e.spill {
        t.section("spill");
        if let Some(rate) = super::stated::stated(t, w, "rate of the spill", &spill.rate) {
            let fed = fed(t, rate, feed);
            cases.push(Case {
                name: "spill".to_owned(),
                kind: Kind::Spill,
                parts: vec!["oil".to_owned()],
                inflow: rate,
                feed: fed,
                content: None,
            });
        }
    }
    Ok(cases)
}

fn case<T: Trail>(t: &mut T, name: &str, kind: Kind, waters: &[&Water], feed: &FeedState) -> Result<Case, Stop> {
    t.section(name);
    let first = waters[0];
    let mut flow = first.flow;
    let mut content = first.content.clone();
    for next in &waters[1..] {
        let mut mix = |label: &str, a: Val<Concentration>, b: Val<Concentration>| {
            by!(t, label, mixture::concentration(flow, a, next.flow, b))
        };
        content = Content {
            total: mix("total oil, mixed", content.total, next.content.total)?,
            free: mix("free oil, mixed", content.free, next.content.free)?,
            emulsified: mix("emulsified oil, mixed", content.emulsified, next.content.emulsified)?,
            dissolved: mix("dissolved oil, mixed", content.dissolved, next.content.dissolved)?,
            solids: mix("suspended solids, mixed", content.solids, next.content.solids)?,
        };
        flow = reckon!(t, "flow together", [GPM, M3_H], (sum = flow, next = next.flow) sum + next);
    }
    let fed = fed(t, flow, feed);
    Ok(Case {
        name: name.to_owned(),
        kind,
        parts: waters.iter().map(|w| w.name.clone()).collect(),
        inflow: flow,
        feed: fed,
        content: Some(content),
    })
}

/// What reaches the unit: a pump sets its own flow; by gravity the cap, if there is one, holds back.
fn fed<T: Trail>(t: &mut T, inflow: Val<Flow>, feed: &FeedState) -> Val<Flow> {
    let units = Some((&GPM, &M3_H) as crate::provenance::Pair);
    if let Some(pump) = feed.pump_flow {
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

/// The largest flow to the units over all cases.
#[must_use]
pub fn largest(cases: &[Case]) -> Option<&Case> {
    let mut best: Option<&Case> = None;
    for case in cases {
        if best.is_none_or(|b| case.feed.q.si() > b.feed.q.si()) {
            best = Some(case);
        }
    }
    best
}
