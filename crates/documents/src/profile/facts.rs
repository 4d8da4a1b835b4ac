//! What is said of each station, in short facts, and which blocks of the enquiry feed it.

use super::stations::{Stop, What, stop};
use stillrise_design::basis::chemicals::Which;
use stillrise_design::basis::{Basis, FLOW_UNITS};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::blocks::{ContainmentKind, Receiver};
use stillrise_design::performance::installation::Stands;
use stillrise_design::provenance::{Pair, show_in_prose};
use stillrise_design::train::{Stage, Train};
use stillrise_search::Settled;
use stillrise_units::catalog::{FT, FT2, GAL, IN_H, M, M2, M3, MG_L, MM_H, YR};
use stillrise_units::print::{digits, in_prose};
use stillrise_units::{Length, System, Typed};

/// A quantity for the band: three digits and the unit.
fn show<Q: Typed>(system: System, q: Q, units: Pair) -> String {
    in_prose(q.si(), system.pick(units))
}

/// An elevation in the site's datum.
pub fn elevation(system: System, z: Length) -> String {
    match system {
        System::Us => format!("{:.2} ft", z.in_unit(&FT)),
        System::Si => format!("{:.2} m", z.in_unit(&M)),
    }
}

/// A word of the handbook's lists as it is spoken.
fn spoken(word: &str) -> String {
    word.replace('-', " ")
}

pub fn rain(e: &Enquiry, basis: Option<&Basis>) -> Stop {
    let system = e.system();
    let mut says = Vec::new();
    match basis.and_then(|basis| basis.storm.as_ref()) {
        Some(storm) => {
            says.push(show(system, storm.intensity.q, (&IN_H, &MM_H)));
            says.push(format!("storm {}", show(system, storm.flow.q, FLOW_UNITS)));
            says.extend(storm.years.map(|years| format!("once in {}", show(system, years.q, (&YR, &YR)))));
        }
        None => says.push("no storm is counted".to_owned()),
    }
    if e.rain.as_ref().is_none_or(|rain| rain.table.is_none() && rain.intensity.q().is_none()) {
        says.push("intensity not said".to_owned());
    }
    stop(What::Rain, "rain", says, &["rain"])
}

pub fn surface(e: &Enquiry, k: usize) -> Stop {
    let surface = &e.surfaces[k];
    let mut says: Vec<String> = Vec::new();
    says.push(surface.area.q().map_or_else(|| "area not said".to_owned(), |area| show(e.system(), area, (&FT2, &M2))));
    says.push(surface.kind.as_deref().map_or_else(|| "paving not said".to_owned(), spoken));
    if *surface.canopy == Some(true) {
        says.push("under a canopy".to_owned());
    }
    let name = surface.name.0.clone().unwrap_or_else(|| format!("surface {}", k + 1));
    stop(What::Surface(k), &name, says, &[surface.at.head(), "rain"])
}

pub fn stream(e: &Enquiry, basis: Option<&Basis>, k: usize) -> Stop {
    let stream = &e.streams[k];
    let water = basis.and_then(|basis| basis.waters.iter().find(|water| water.which == Which::Stream(k)));
    let found = water.map(|water| water.flow.q);
    let said = stream.flow.q();
    let mut says = Vec::new();
    says.push(match said.or(found) {
        Some(flow) if said.is_some() => show(e.system(), flow, FLOW_UNITS),
        Some(flow) => format!("{}, taken", show(e.system(), flow, FLOW_UNITS)),
        None => "flow not said".to_owned(),
    });
    let hours =
        |n: f64| if n > 1.01 { format!("{} h a day", digits(n, 3)) } else { format!("{} h a day", digits(n, 2)) };
    match (stream.hours_per_day.q(), stream.volume_per_day.q()) {
        (Some(n), _) => says.push(hours(n.si())),
        (None, Some(volume)) => says.push(format!("{} a day", show(e.system(), volume, (&GAL, &M3)))),
        (None, None) => says.push("hours not said".to_owned()),
    }
    says.extend(stream.days_per_week.q().map(|n| format!("{} days a week", digits(n.si(), 2))));
    if *stream.with_rain == Some(true) {
        says.push("also while it rains".to_owned());
    }
    let name = stream.name.0.clone().unwrap_or_else(|| format!("stream {}", k + 1));
    stop(What::Stream(k), &name, says, &[stream.at.head()])
}

pub fn containment(e: &Enquiry, basis: Option<&Basis>, k: usize) -> Stop {
    let block = &e.containments[k];
    let found = basis.and_then(|basis| basis.containment.as_ref()).and_then(|ahead| ahead.all.get(k));
    let mut says = Vec::new();
    says.extend(found.map(|c| format!("holds {}", show(e.system(), c.holds.val.q, (&GAL, &M3)))));
    says.push(match found {
        Some(c) if block.drain.settled().is_some() => format!("drain {}", c.valve.is.q.word()),
        _ => "drain not known".to_owned(),
    });
    if *block.roof == Some(true) {
        says.push("under a roof".to_owned());
    }
    let kind = block.kind.0.map_or("containment", ContainmentKind::word);
    let name = block.name.0.clone().unwrap_or_else(|| format!("{kind} {}", k + 1));
    stop(What::Containment(k), &name, says, &[block.at.head(), "spill"])
}

/// What pumps ahead give, as it was said.
pub fn pumps(e: &Enquiry, basis: Option<&Basis>) -> Vec<String> {
    let rates: Vec<String> =
        e.inlet.rate.0.iter().filter_map(|rate| rate.q()).map(|q| show(e.system(), q, FLOW_UNITS)).collect();
    let mut says = Vec::new();
    match &rates[..] {
        [] => says.push("rate not said".to_owned()),
        [first, rest @ ..] if !rest.is_empty() && rest.iter().all(|r| r == first) => {
            says.push(format!("{} x {first}", rates.len()));
        }
        _ => says.push(rates.join(", ")),
    }
    let together = basis.filter(|_| rates.len() > 1).map(|basis| basis.feed.together);
    says.extend(together.map(|both| if both { "may run together" } else { "one at a time" }.to_owned()));
    says.push(e.inlet.pump.as_deref().map_or_else(|| "kind not said".to_owned(), spoken));
    says
}

/// The limits that samples are held against.
pub fn limits(e: &Enquiry, basis: Option<&Basis>) -> Vec<String> {
    let all = basis.map_or(&[][..], |basis| &basis.limits);
    let mut says: Vec<String> = all
        .iter()
        .take(3)
        .map(|limit| format!("{} {}", limit.title(), show(e.system(), limit.value.q, (&MG_L, &MG_L))))
        .collect();
    says.dedup();
    if says.is_empty() {
        says.push("no limit on oil said".to_owned());
    }
    says
}

/// The first size of a stage.
pub fn of_stage(stage: &Stage, system: System) -> Vec<String> {
    let size = stage.size.as_ref();
    let size = size.map(|(label, value, units)| format!("{label}: {}", show_in_prose(value, Some(*units), system)));
    size.into_iter().collect()
}

pub fn lift_asked() -> Stop {
    let says = vec!["the levels ask for it".to_owned(), "asked for, not decided".to_owned()];
    Stop { asked: true, ..stop(What::LiftAsked, "lift pump", says, &["inlet", "outlet", "site"]) }
}

pub fn pump_behind() -> Stop {
    let says = vec!["the outfall asks for it".to_owned(), "asked for, not decided".to_owned()];
    Stop { asked: true, ..stop(What::PumpBehind, "pump behind", says, &["outlet", "inlet", "site"]) }
}

pub fn unit(settled: &Settled, train: &Train) -> Stop {
    let e = &settled.job.enquiry;
    let write = |q| crate::render::scale::dimension_text(q, e.system());
    let mut says = vec![train.unit.body.inside(write)];
    let count = train.count.q.si();
    if count > 1.0 {
        says.push(format!("{} alike in parallel", digits(count, 6)));
    }
    if let Some(p) = &settled.job.design.performance {
        let stands = p.site.installation.stands.q;
        says.push(match stands {
            Stands::Unknown => "how it stands is not known".to_owned(),
            stands => stands.word().to_owned(),
        });
        let flow = p.highest().flow.q;
        says.push(format!(
            "{} through {}",
            show(e.system(), flow, FLOW_UNITS),
            if count > 1.0 { "each" } else { "it" }
        ));
    }
    let name = crate::render::text::plain(&train.unit.particulars.model);
    let name = if name.is_empty() { "separator".to_owned() } else { name };
    let mut found = stop(What::Unit, &name, says, &["unit", "site"]);
    found.station.title = format!("Separator, {name}");
    found
}

pub fn no_unit(settled: &Settled) -> Stop {
    let why = crate::summary::short::stops(settled).into_iter().next();
    let says = vec!["no unit was taken".to_owned()].into_iter().chain(why).collect();
    let mut found = stop(What::Unit, "separator", says, &["unit", "site"]);
    found.station.title = "Separator, none taken".to_owned();
    found
}

pub fn outfall(e: &Enquiry) -> Stop {
    let mut says = Vec::new();
    let level = |what: &str, z: Option<Length>| {
        z.map_or_else(|| format!("{what} not said"), |z| format!("{what} {}", elevation(e.system(), z)))
    };
    says.push(level("invert", e.outlet.invert.q()));
    says.push(level("water", e.outlet.tailwater.q()));
    says.extend(e.outlet.flow_cap.q().map(|q| format!("at most {}", show(e.system(), q, FLOW_UNITS))));
    let name = match e.outlet.to.0 {
        Some(Receiver::StormWater) => "outfall, storm water",
        Some(Receiver::SanitarySewer) => "outfall, sanitary sewer",
        None => "outfall",
    };
    stop(What::Outfall, name, says, &["outlet"])
}
