//! The waters that come: rain and streams, each with flow, oil by fraction and solids.

use super::chemicals::{Dosed, Which, emulsified};
use super::fluids::Fluids;
use super::stated::{standby, standby_spread, stated, stated_or};
use super::storm::Storm;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{OilContent, Stream, WaterKind};
use crate::enquiry::keys::Quantity;
use crate::provenance::{Node, Stop, Trail, Val, WhatIf};
use crate::{by, reckon, say};
use stillrise_handbook::fluids::facilities::{Facility, facility};
use stillrise_handbook::rain::{daily_volume, hose_flow, rain_volume};
use stillrise_units::catalog::{GPM, H, IN, M3_H, MG_L, MM, ONE, PERCENT};
use stillrise_units::{Concentration, Flow, Length, Ratio, Time, Typed, Volume, ratio};

/// What a water carries.
#[derive(Debug, Clone)]
pub struct Content {
    /// Total oil and grease.
    pub total: Val<Concentration>,
    /// Free oil, which can rise where it is lighter than the water.
    pub free: Val<Concentration>,
    /// Of it, what is as heavy as the water and does not rise, where other oils that may come do.
    pub heavy: Option<Val<Concentration>>,
    /// Emulsified oil, which does not.
    pub emulsified: Val<Concentration>,
    /// Dissolved oil, which does not either.
    pub dissolved: Val<Concentration>,
    /// Suspended solids.
    pub solids: Val<Concentration>,
}

impl Content {
    /// Field names and their places in the trail, in order.
    #[must_use]
    pub fn fields(&self) -> Vec<(&'static str, Node)> {
        let mut fields = vec![("total", self.total.at), ("free", self.free.at)];
        fields.extend(self.heavy.map(|heavy| ("heavy", heavy.at)));
        fields.extend([
            ("emulsified", self.emulsified.at),
            ("dissolved", self.dissolved.at),
            ("solids", self.solids.at),
        ]);
        fields
    }
}

/// One water on its way to the unit.
#[derive(Debug, Clone)]
pub struct Water {
    /// Its name.
    pub name: String,
    /// Which one of the enquiry.
    pub which: Which,
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
    dosed: &[Dosed],
    storm: Option<&Storm>,
) -> Result<Vec<Water>, Stop> {
    let site = e.head.facility.as_deref().and_then(facility);
    let mut waters = Vec::new();
    if let Some(storm) = storm {
        t.section("rain water");
        let rain = e.rain.clone().unwrap_or_default();
        let (oil, solids) = (rain.oil.as_ref(), &rain.solids);
        let content = content(t, w, fluids, dosed, &Asked { which: Which::Rain, key: "rain", oil, solids, site, known: true })?;
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
            which: Which::Rain,
            is_rain: true,
            with_rain: true,
            flow: storm.flow,
            content,
            per_day,
        });
    }
    for (i, s) in e.streams.iter().enumerate() {
        let name = s.name.clone().unwrap_or_else(|| format!("stream {}", i + 1));
        t.section(&name);
        let flow = flow(t, w, s, &name)?;
        let key = format!("stream \"{name}\"");
        let (which, oil, solids) = (Which::Stream(i), s.oil.as_ref(), &s.solids);
        let content = content(t, w, fluids, dosed, &Asked { which, key: &key, oil, solids, site, known: true })?;
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
        let with_rain = match s.with_rain {
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
        waters.push(Water { name, which, is_rain: false, with_rain, flow, content, per_day });
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

/// What the content of a water is found from.
struct Asked<'a> {
    which: Which,
    /// Its block, as its keys begin.
    key: &'a str,
    oil: Option<&'a OilContent>,
    solids: &'a Quantity<Concentration>,
    site: Option<&'static Facility>,
    /// Whether it is a water of the site's; of any other nothing is known but what is stated.
    known: bool,
}

fn content<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    fluids: &Fluids,
    dosed: &[Dosed],
    asked: &Asked<'_>,
) -> Result<Content, Stop> {
    let mg_l = |x: f64| Concentration::of(x, &MG_L);
    let units = (&MG_L, &MG_L);
    let Asked { which, key, solids, site, known, .. } = *asked;
    let none = OilContent::default();
    let oil = asked.oil.unwrap_or(&none);
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
            _ if !known => standby(
                &label,
                units,
                oil_key,
                question,
                (mg_l(5.0), mg_l(100.0), mg_l(1000.0)),
                "engineering judgement, wide: nothing is known of this water, and no other water's figure is lent to it",
            ),
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
    let share = stated_or(t, w, &oil.emulsified, emulsified(dosed, which, known, key, &what, &label));
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
    let heavy = heavy(t, w, fluids, oil, key, &what)
        .map(|share| reckon!(t, "free oil as heavy as the water", [MG_L, MG_L], (free = free, share = share) free * share));
    let solids_key = format!("{key}.solids");
    let label = of("suspended solids");
    let question = say!(T, "How much suspended solids does the {what} water carry?");
    let solids = stated_or(
        t,
        w,
        solids,
        match site {
            Some(site) if known => standby_spread(&label, units, solids_key, question, &site.solids),
            _ => standby(
                &label,
                units,
                solids_key,
                question,
                (mg_l(30.0), mg_l(150.0), mg_l(1000.0)),
                if known {
                    "engineering judgement; no kind of place was named"
                } else {
                    "engineering judgement: nothing is known of this water"
                },
            ),
        },
    );
    Ok(Content { total, free, heavy, emulsified, dissolved, solids })
}

/// The share of a water's free oil that is as heavy as the water, where other oils that may come rise; `None` where all
/// of it rises, or where no oil does and the whole duty is in question.
fn heavy<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    fluids: &Fluids,
    oil: &OilContent,
    key: &str,
    what: &str,
) -> Option<Val<Ratio>> {
    let label = say!(T, "share of the free oil that does not rise, {what}");
    if let Some(share) = stated(t, w, &label, &oil.heavy) {
        return Some(share);
    }
    let heavy: Vec<&str> = fluids.oils.iter().filter(|o| !fluids.rises(o)).map(|o| o.name.as_str()).collect();
    if heavy.is_empty() || heavy.len() == fluids.oils.len() {
        return None;
    }
    let percent = Some((&PERCENT, &PERCENT) as crate::provenance::Pair);
    if let Some(named) = oil.kind.as_deref().and_then(|kind| fluids.oils.iter().find(|o| o.oil.word == kind)) {
        return (!fluids.rises(named)).then(|| {
            crate::provenance::choose(
                t,
                &label,
                percent,
                ratio(1.0),
                "oils that rise, and oils that do not",
                "the oil that this water is said to carry does not rise",
                &[named.cold.at, fluids.cold.density.at],
            )
        });
    }
    let names = heavy.join(" and ");
    let percent = (&PERCENT, &PERCENT);
    let question = say!(T, "What share of the oil in the {what} water is {names}, which does not rise?");
    let range = (ratio(0.0), ratio(0.5), ratio(1.0));
    let why = "engineering judgement: oils that rise and oils that do not may come, and nobody said in which shares";
    Some(crate::provenance::assume(t, w, standby(&label, percent, format!("{key}.oil.heavy"), question, range, why)))
}

/// The content of a case of the enquiry's own: what it states; where it states nothing it is not known, and no other
/// water's oil is lent to it. `None` for fire-fighting water whose oil nobody states: it is held, not treated.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn of_case<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    dosed: &[Dosed],
    (i, name): (usize, &str),
) -> Result<Option<Content>, Stop> {
    let block = &e.cases[i];
    let (oil, solids) = (block.oil.as_ref(), &block.solids);
    if oil.is_none() && block.water.0 == Some(WaterKind::Fire) {
        return Ok(None);
    }
    let site = e.head.facility.as_deref().and_then(facility);
    let key = format!("case \"{name}\"");
    let asked = Asked { which: Which::Case(i), key: &key, oil, solids, site, known: oil.is_some() };
    content(t, w, fluids, dosed, &asked).map(Some)
}

/// The content of a flow of which nothing but its size is known.
pub fn unknown<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    dosed: &[Dosed],
) -> Result<Content, Stop> {
    let site = e.head.facility.as_deref().and_then(facility);
    let (oil, solids) = (e.stated.oil.as_ref(), &e.stated.solids);
    content(t, w, fluids, dosed, &Asked { which: Which::Stated, key: "stated", oil, solids, site, known: true })
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
