//! The waters that come: rain and streams, each with flow, oil by fraction and solids.

use super::fluids::Fluids;
use super::stated::{standby, standby_spread, stated, stated_or};
use super::storm::Storm;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{OilContent, Stream};
use crate::enquiry::keys::Quantity;
use crate::provenance::{Stop, Trail, Val, WhatIf};
use crate::{by, reckon, record, say};
use stillrise_handbook::fluids::chemicals::{Effect, chemical};
use stillrise_handbook::fluids::facilities::{Facility, facility};
use stillrise_handbook::rain::{daily_volume, hose_flow, rain_volume};
use stillrise_units::catalog::{GPM, H, IN, M3_H, MG_L, MM, ONE, PERCENT};
use stillrise_units::{Concentration, Flow, Length, Ratio, Time, Typed, Volume, ratio};

record! {
    /// What a water carries.
    Content {
        /// total oil and grease
        total: Concentration;
        /// free oil, which can rise
        free: Concentration;
        /// emulsified oil, which does not
        emulsified: Concentration;
        /// dissolved oil, which does not either
        dissolved: Concentration;
        /// suspended solids
        solids: Concentration;
    }
}

/// One water on its way to the unit.
#[derive(Debug, Clone)]
pub struct Water {
    /// Its name.
    pub name: String,
    /// Whether it is rain.
    pub is_rain: bool,
    /// Whether it may run while it rains.
    pub with_rain: bool,
    /// Flow while it runs.
    pub flow: Val<Flow>,
    /// What it carries.
    pub content: Content,
    /// Volume on an average day.
    pub per_day: Val<Volume>,
}

/// Finds all waters.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn waters<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    storm: Option<&Storm>,
) -> Result<Vec<Water>, Stop> {
    let site = e.head.facility.as_deref().and_then(facility);
    let mut waters = Vec::new();
    if let Some(storm) = storm {
        t.section("rain water");
        let rain = e.rain.clone().unwrap_or_default();
        let content = content(t, w, e, "rain", rain.oil.as_ref(), &rain.solids, site, fluids)?;
        let inches = |x: f64| Length::of(x, &IN);
        let annual = stated_or(
            t,
            w,
            &rain.annual,
            standby(
                "rain in a year",
                (&IN, &MM),
                "rain.annual",
                "How much rain falls in a year?",
                (inches(12.0), inches(36.0), inches(60.0)),
                "engineering judgement: dry to wet temperate sites",
            ),
        );
        let year = by!(t, "runoff in a year", rain_volume::volume(storm.coefficient, annual, storm.area))?;
        let per_day = reckon!(t, "runoff on an average day", [GAL, M3], (year = year) year / 365.25);
        waters.push(Water {
            name: "storm".to_owned(),
            is_rain: true,
            with_rain: true,
            flow: storm.flow,
            content,
            per_day,
        });
    }
    for (i, s) in e.streams.iter().enumerate() {
        let name = s.name.0.clone().unwrap_or_else(|| format!("stream {}", i + 1));
        t.section(&name);
        let flow = flow(t, w, s, &name)?;
        let key = format!("stream \"{name}\"");
        let content = content(t, w, e, &key, s.oil.as_ref(), &s.solids, site, fluids)?;
        let hours = stated_or(
            t,
            w,
            &s.hours_per_day,
            standby(
                "hours a day",
                (&ONE, &ONE),
                format!("{key}.hours_per_day"),
                say!(T, "How many hours a day does the {name} run?"),
                (ratio(1.0), ratio(4.0), ratio(12.0)),
                "engineering judgement: one shift of intermittent use",
            ),
        );
        let days = stated_or(
            t,
            w,
            &s.days_per_week,
            standby(
                "days a week",
                (&ONE, &ONE),
                format!("{key}.days_per_week"),
                say!(T, "How many days a week does the {name} run?"),
                (ratio(1.0), ratio(5.0), ratio(7.0)),
                "engineering judgement: working days",
            ),
        );
        let hour = crate::provenance::given(t, "one hour", Some((&H, &H)), Time::of(1.0, &H), "definition", "1 h");
        let hours = reckon!(t, "running time a day", [H, H], (hours = hours, hour = hour) hours * hour);
        let running = by!(t, "volume on a running day", daily_volume::volume(flow, hours))?;
        let per_day =
            reckon!(t, "volume on an average day", [GAL, M3], (running = running, days = days) running * days / 7.0);
        let with_rain = match s.with_rain.0 {
            Some(flag) => flag,
            None if storm.is_some() => yes_or_no(
                t,
                w,
                "whether it runs while it rains",
                format!("{key}.with_rain"),
                say!(T, "Does the {name} also run while it rains?"),
                YesNo::No,
                "nobody said that it does",
            ),
            None => false,
        };
        waters.push(Water { name, is_rain: false, with_rain, flow, content, per_day });
    }
    Ok(waters)
}

fn flow<T: Trail>(t: &mut T, w: &WhatIf, s: &Stream, name: &str) -> Result<Val<Flow>, Stop> {
    if let Some(flow) = stated(t, w, &say!(T, "flow of {name}"), &s.flow) {
        return Ok(flow);
    }
    let gpm = |x: f64| Flow::of(x, &GPM);
    let hoses =
        stated_or(t, w, &s.hoses, standby("hoses", (&ONE, &ONE), "", "", (ratio(1.0), ratio(1.0), ratio(1.0)), ""));
    let each = stated_or(
        t,
        w,
        &s.hose_flow,
        standby(
            "flow of one hose",
            (&GPM, &M3_H),
            format!("stream \"{name}\".hose_flow"),
            say!(T, "What is the flow of one hose of the {name}?"),
            (gpm(5.0), gpm(25.0), gpm(30.0)),
            "UFC 4-214-03, par. 4-8: 25 gpm per wash hose at 75 psi; low end for hand pressure washers from memory",
        ),
    );
    let together = stated_or(
        t,
        w,
        &s.together,
        standby(
            "share of the hoses that run together",
            (&PERCENT, &PERCENT),
            format!("stream \"{name}\".together"),
            say!(T, "How many of the hoses of the {name} run at once?"),
            (ratio(0.5), ratio(1.0), ratio(1.0)),
            "all of them is the safe side",
        ),
    );
    by!(t, &format!("flow of {name}"), hose_flow::flow(hoses, each, together))
}

#[allow(clippy::too_many_arguments)]
fn content<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    key: &str,
    oil: Option<&OilContent>,
    solids: &Quantity<Concentration>,
    site: Option<&'static Facility>,
    fluids: &Fluids,
) -> Result<Content, Stop> {
    let mg_l = |x: f64| Concentration::of(x, &MG_L);
    let units = (&MG_L, &MG_L);
    let none = OilContent::default();
    let oil = oil.unwrap_or(&none);
    let what = key.replace("stream ", "").replace('"', "");
    let oil_key = format!("{key}.oil.mean");
    let question = say!(T, "How much oil and grease does the {what} water carry?");
    let of = |quantity: &str| say!(T, "{quantity}, {what}");
    let label = of("total oil and grease");
    let total = stated_or(
        t,
        w,
        &oil.mean,
        match site {
            Some(site) => standby_spread(&label, units, oil_key, question, &site.oil),
            None => standby(
                &label,
                units,
                oil_key,
                question,
                (mg_l(20.0), mg_l(100.0), mg_l(500.0)),
                "engineering judgement; no kind of place was named",
            ),
        },
    );
    let label = of("emulsified share of the oil");
    let share = stated_or(t, w, &oil.emulsified, emulsified(e, key, &what, &label));
    let row = oil.kind.as_deref().and_then(stillrise_handbook::fluids::oils::oil).unwrap_or(fluids.oils[0].oil);
    let saturation = stated_or(
        t,
        w,
        &oil.dissolved,
        standby_spread(
            &of("dissolved oil at saturation"),
            units,
            format!("{key}.oil.dissolved"),
            say!(T, "How much oil is dissolved in the {what} water?"),
            &row.dissolved,
        ),
    );
    let emulsified = reckon!(t, "emulsified oil", [MG_L, MG_L], (total = total, share = share) total * share);
    // A stated emulsion leaves no more than the rest for solution.
    let dissolved = reckon!(t, "dissolved oil", [MG_L, MG_L], (saturation = saturation, total = total, emulsified = emulsified) saturation.min(total - emulsified));
    let free = reckon!(t, "free oil", [MG_L, MG_L], (total = total, emulsified = emulsified, dissolved = dissolved) total - emulsified - dissolved);
    let solids_key = format!("{key}.solids");
    let label = of("suspended solids");
    let question = say!(T, "How much suspended solids does the {what} water carry?");
    let solids = stated_or(
        t,
        w,
        solids,
        match site {
            Some(site) => standby_spread(&label, units, solids_key, question, &site.solids),
            None => standby(
                &label,
                units,
                solids_key,
                question,
                (mg_l(30.0), mg_l(150.0), mg_l(1000.0)),
                "engineering judgement; no kind of place was named",
            ),
        },
    );
    Ok(Content { total, free, emulsified, dissolved, solids })
}

/// The share of oil that is emulsified: from the chemical declared that emulsifies most, else a
/// dry yard's.
fn emulsified<'a>(e: &Enquiry, key: &str, what: &str, label: &'a str) -> crate::provenance::Standby<'a, Ratio> {
    let question =
        format!("What share of the oil in the {what} water is emulsified (detergent, pressure washing, pumping)?");
    let key_share = format!("{key}.oil.emulsified");
    let units = (&PERCENT, &PERCENT);
    let worst = e
        .chemicals
        .iter()
        .filter_map(|c| c.kind.as_deref().and_then(chemical))
        .filter(|c| c.effect == Effect::Emulsifies)
        .max_by(|a, b| a.emulsified.typical.total_cmp(&b.emulsified.typical));
    // Rain is not washed with the product, unless rain is the only water there is for it.
    match worst.filter(|_| key != "rain" || e.streams.is_empty()) {
        Some(row) => standby_spread(label, units, key_share, question, &row.emulsified),
        None => standby(
            label,
            units,
            key_share,
            question,
            (ratio(0.0), ratio(0.02), ratio(0.10)),
            "engineering judgement: dry yard without detergents",
        ),
    }
}

/// The content of a case that states its own, with defaults for what it leaves out.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn of_case<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    name: &str,
    block: &crate::enquiry::blocks::CaseBlock,
) -> Result<Content, Stop> {
    let site = e.head.facility.as_deref().and_then(facility);
    content(t, w, e, &format!("case \"{name}\""), block.oil.as_ref(), &block.solids, site, fluids)
}

/// The content of a flow of which nothing but its size is known.
pub fn unknown<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, fluids: &Fluids) -> Result<Content, Stop> {
    let site = e.head.facility.as_deref().and_then(facility);
    content(t, w, e, "stated", e.stated.oil.as_ref(), &e.stated.solids, site, fluids)
}

stillrise_handbook::choice! {
    /// An answer to a yes-or-no question.
    YesNo {
        /// yes
        Yes "yes",
        /// no
        No "no",
    }
}

/// A yes-or-no question with its default.
pub fn yes_or_no<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    label: &str,
    key: String,
    question: String,
    value: YesNo,
    source: &str,
) -> bool {
    let standby = crate::provenance::Standby {
        label,
        units: None,
        key: key.into(),
        question: question.into(),
        value,
        low: YesNo::No,
        high: YesNo::Yes,
        source: source.into(),
    };
    crate::provenance::assume(t, w, standby).q == YesNo::Yes
}
