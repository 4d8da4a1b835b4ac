//! The waters that come: rain and streams, each with flow, content and what it comes to on an average day.

use super::chemicals::{Dosed, Which};
pub use super::contents::Content;
use super::contents::{Asked, Kind, content};
use super::dumps::{self, Bath, Parts, Peaks};
use super::fluids::Fluids;
use super::stated::{assumed, declared, stand_in, stated, stated_or, stated_or_usual};
use super::storm::Storm;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Rain, Stream, WaterKind};
use crate::enquiry::fields::Flag;
use crate::enquiry::keys::Key;
use crate::provenance::{Stop, Trail, Val, WhatIf, Whence};
use crate::{by, reckon, say};
use stillrise_handbook::fluids::facilities::{Facility, facility};
use stillrise_handbook::rain::{daily_volume, hose_flow, rain_volume};
use stillrise_units::catalog::{GPM, H, L_S};
use stillrise_units::{Flow, Length, Time, Typed, Volume, ratio};

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
    /// Volume on a day that it runs, with the bath that makes its strongest day; `None` for rain.
    pub day: Option<Val<Volume>>,
    /// How long it runs on a day on which it runs; `None` for rain.
    pub runs: Option<Val<Time>>,
    /// How long it runs a day by its meter, and how long it is said to; `None` where either is missing.
    pub metered: Option<[Val<Time>; 2]>,
    /// How far its oil rises above its mean where baths are dumped into it.
    pub peaks: Option<Peaks>,
    /// Baths that are let go into it while it runs, of which it is known how fast.
    pub baths: Vec<Bath>,
    /// What it and the baths that are dumped into it bring on an average day; `None` where there are none.
    pub dumped: Option<Parts>,
}

impl Water {
    /// The rain, or what is drained while it rains: it has no days, meters or baths of its own.
    pub(super) fn of_rain(name: String, which: Which, flow: Val<Flow>, content: Content, per_day: Val<Volume>) -> Self {
        Water {
            name,
            which,
            is_rain: which == Which::Rain,
            with_rain: true,
            flow,
            content,
            per_day,
            day: None,
            runs: None,
            metered: None,
            peaks: None,
            baths: Vec::new(),
            dumped: None,
        }
    }
}

/// Finds all waters, and the rain in a year where it was asked for.
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
) -> Result<(Vec<Water>, Option<Val<Length>>), Stop> {
    let site = e.head.facility.as_deref().and_then(facility);
    let mut waters = Vec::new();
    let mut year_depth = None;
    if let Some(storm) = storm {
        t.section("rain water");
        let unsaid = Rain::default();
        let rain = e.rain.as_ref().unwrap_or(&unsaid);
        let (oil, solids) = (rain.oil(), rain.solids());
        let content = content(
            t,
            w,
            fluids,
            dosed,
            // Rain off the yard beside a wash is runoff of a yard.
            &Asked { which: Which::Rain, oil, solids, site: site.map(Facility::rain), coldest: None, of: Kind::Site },
        )?;
        let annual = annual(t, w, rain);
        year_depth = Some(annual);
        let year = by!(t, "runoff in a year", rain_volume::volume(storm.coefficient, annual, storm.area))?;
        let per_day = reckon!(t, "runoff on an average day", [GAL, M3], (year = year) year / 365.25);
        waters.push(Water::of_rain("storm".to_owned(), Which::Rain, storm.flow, content, per_day));
    }
    for (i, s) in e.streams.iter().enumerate() {
        let name = s.name.0.clone().unwrap_or_else(|| format!("stream {}", i + 1));
        t.section(&name);
        let flow = flow(t, w, s, &name)?;
        let (which, oil, solids) = (Which::Stream(i), s.oil(), s.solids());
        let (place, of) = place_of(e, dosed, i);
        let content =
            content(t, w, fluids, dosed, &Asked { which, oil, solids, site: place, coldest: s.coldest.q(), of })?;
        let hours = stated_or_usual(t, w, s.hours_per_day().of(&name), "hours a day");
        let days = stated_or_usual(t, w, s.days_per_week().of(&name), "days a week");
        let hour =
            crate::provenance::given(t, "one hour", Some((&H, &H)), Time::of(1.0, &H), Whence::Definition, "1 h");
        let hours = reckon!(t, "running time a day", [H, H], (hours = hours, hour = hour) hours * hour);
        let said = hours;
        let (running, hours) = match stated(
            t,
            w,
            &say!(T, "metered volume of {name} on a running day"),
            &s.volume_per_day,
        ) {
            Some(metered) => {
                let hours = reckon!(t, "running time that the meter tells", [H, H], (metered = metered, flow = flow) metered / flow);
                (metered, hours)
            }
            None => (by!(t, "volume on a running day", daily_volume::volume(flow, hours))?, hours),
        };
        let per_day =
            reckon!(t, "volume on an average day", [GAL, M3], (running = running, days = days) running * days / 7.0);
        let into = dumps::Into { stream: i, flow, running, per_day, content };
        let bare = per_day;
        let dumps::Dumped { content, per_day, day, peaks, baths, parts } = dumps::dumped(t, w, e, fluids, dosed, into)?;
        let with_rain = match s.with_rain.0 {
            Some(flag) => flag,
            None if storm.is_some() => {
                let label = say!(T, "whether the {name} runs while it rains");
                let covered = e.surfaces.iter().any(|surface| *surface.canopy == Some(true));
                let (usual, because) = if covered {
                    (YesNo::Yes, "an area lies under a canopy, where work goes on while it rains")
                } else {
                    (YesNo::No, "nobody said that it does")
                };
                yes_or_no(t, w, s.with_rain().of(&name), &label, usual, because)
            }
            None => false,
        };
        let runs = Some(hours);
        let metered = (s.volume_per_day.is_given() && s.hours_per_day.is_given()).then_some([hours, said]);
        let (is_rain, day) = (false, Some(day));
        let dumped = (!parts.is_empty()).then_some(Parts { bare, baths: parts });
        waters.push(Water {
            name,
            which,
            is_rain,
            with_rain,
            flow,
            content,
            per_day,
            day,
            runs,
            metered,
            peaks,
            baths,
            dumped,
        });
    }
    Ok((waters, year_depth))
}

/// The kind of place whose figures a stream takes, and what it is as far as it matters to what stands by.
pub(super) fn place_of(e: &Enquiry, dosed: &[Dosed], stream: usize) -> (Option<&'static Facility>, Kind) {
    let site = e.head.facility.as_deref().and_then(facility);
    let s = &e.streams[stream];
    // What is pumped out of a pit there is rain too; where hoses run or a cleaner is used something is washed.
    let pumped_out = s.water.0 == Some(WaterKind::Dewatering);
    let washes = s.hoses.is_given() || dosed.iter().any(|d| d.reaches(Which::Stream(stream)));
    match site {
        _ if pumped_out => (site, Kind::Site),
        Some(site) if site.is_land_use() => (None, Kind::Process),
        Some(site) if washes => (Some(site.wash()), Kind::Site),
        _ => (site, Kind::Site),
    }
}

/// Rain in a year.
pub(super) fn annual<T: Trail>(t: &mut T, w: &WhatIf, rain: &Rain) -> Val<Length> {
    stated_or_usual(t, w, rain.annual(), "rain in a year")
}

/// Flow of one tap of DN 15 in L/s, EN 858-2.
const TAP: f64 = 0.5;
/// Hours of a shift, in which a day's volume comes that nobody gave hours for.
const SHIFT: f64 = 8.0;

fn flow<T: Trail>(t: &mut T, w: &WhatIf, s: &Stream, name: &str) -> Result<Val<Flow>, Stop> {
    if let Some(flow) = stated(t, w, &say!(T, "flow of {name}"), &s.flow) {
        return Ok(flow);
    }
    let gpm = |x: f64| Flow::of(x, &GPM);
    // A volume a day says nothing of how fast it comes, unless its hours are known too: as fast as one tap, or as fast as
    // it must to be through in a shift.
    if let (false, Some(volume)) = (s.hoses.is_given(), s.volume_per_day.q()) {
        let over = |hours: f64| Flow::from_si(volume.si() / Time::of(hours.max(1e-6), &H).si());
        let (low, value) = match s.hours_per_day.q() {
            Some(hours) => (over(hours.si()), over(hours.si())),
            None => (over(24.0).max(gpm(2.0)), over(SHIFT).max(Flow::of(TAP, &L_S))),
        };
        let label = say!(T, "flow of {name}");
        return Ok(stated_or(t, w, s.flow().of(name), &label, || {
            stand_in(
                (low, value, gpm(25.0).max(value * 2.0)),
                "its volume a day over its hours; where these are not known either, a tap of {half an inch|DN 15} ({7.93 gpm|1.8 m3/h} by EN 858-2), or a shift of 8 h where that is more; at most a wash hose of {25 gpm|5.68 m3/h} (UFC 4-214-03, par. 4-8) or twice as much",
            )
        }));
    }
    let hoses = stated_or_usual(t, w, s.hoses(), "hoses");
    let of_one = say!(T, "flow of one hose of the {name}");
    let each = stated_or_usual(t, w, s.hose_flow().of(name), &of_one);
    let label = say!(T, "share of the hoses of the {name} that run together");
    let alone = s.hoses.q().is_some_and(|hoses| hoses.si() <= 1.0);
    let key = s.together().of(name).asked_if(!alone);
    let together = stated_or(t, w, key, &label, || match alone {
        // One hose runs or does not.
        true => stand_in((ratio(1.0), ratio(1.0), ratio(1.0)), "there is one"),
        false => declared(s.together().spec),
    });
    by!(t, &say!(T, "flow of {name}"), hose_flow::flow(hoses, each, together))
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
pub fn yes_or_no<T: Trail>(t: &mut T, w: &WhatIf, key: Key<'_, Flag>, label: &str, value: YesNo, source: &str) -> bool {
    assumed(t, w, &key, label, stand_in((YesNo::No, value, YesNo::Yes), source)).q == YesNo::Yes
}
