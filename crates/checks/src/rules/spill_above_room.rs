//! Rule: spill above room

use crate::ask::{Ask, SPILL};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::cases::Kind;
use stillrise_design::basis::{FLOW_UNITS, SpillState};
use stillrise_design::basis::containment::Containments;
use stillrise_design::basis::containment::drain::Shut;
use stillrise_design::basis::containment::passes::Passing;
use stillrise_design::basis::fluids::Season;
use stillrise_units::catalog::{GAL, IN, M3, MIN, MM};
use stillrise_units::{Typed, print, ratio};

rule! {
    "spill-above-room" "Spill larger than the room for it", OilZone, bars_pick;
    client "The unit has less room than the spill that was stated; what finds no room goes to the outlet."
    looks "The declared spill, less what containments ahead hold of it, against the oil that all units still take between the high-oil alarm and the thickest permitted layer. Where nobody spoke of a spill it cannot judge."
    matters "The spill may come just before the alarm. What does not fit goes to the outlet."
    remedy "Holding the spill ahead of the unit, by a containment whose drain is kept closed or, where pumps feed the unit, by oil in their pit that stops them; else a larger unit or more in parallel, or an alarm for a thinner layer where its level was stated."
    source "Volumes of the layers; that the spill comes on top of the alarm layer, and that an alarm whose level nobody stated moves down for it to 35 % of the permitted layer and no further, is our proposal"
    limits "Alarm and spill are taken at rest: while the largest flow lasts the float answers later, and a spill in a storm may be announced only when the flow falls. The oil is taken to spread evenly over all units; oil drawn off while it arrives is not counted. A containment counts only where it surely holds: where its size, its rain or its drain is not known, all of the spill is taken to come."
}

/// Less than this share of the spill is no reserve. Our proposal.
const BARELY: f64 = 0.05;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let Some(spill) = s.design.basis.as_ref().and_then(|b| b.spill.as_ref()) else {
        return Verdict::cannot_judge(
            "nobody said whether a spill must stay in; nothing is held against the room for it",
            [SPILL],
            None,
        );
    };
    let Some(room) = &performance.storage.spill else {
        let oil = s.design.basis.as_ref().map(|b| b.fluids.heaviest(Season::Cold));
        let ask = oil.map(|oil| {
            Ask::new(
                format!("oil \"{}\".density", oil.oil.word),
                "Which oil would be spilled, and what is its density?",
            )
        });
        let says = "no oil is lighter than the water, so no layer gives room for the spill; what holds one that sinks or drifts is not known";
        return Verdict::cannot_judge(says, Vec::from_iter(ask), spill.volume.at);
    };
    let gallons = |v| s.show(v, (&GAL, &M3));
    if let (true, Some(ahead)) = (spill.is_held_ahead(), s.design.basis.as_ref().and_then(|b| b.containment.as_ref())) {
        return Verdict::passes(format!(
            "the spill of {} is held ahead ({}); none of it comes to the separator",
            gallons(spill.volume.q),
            holders(ahead)
        ));
    }
    if let (Some(rate), false) = (spill.rate, spill.is_told) {
        let minutes = print::in_prose(room.room.q.si() / rate.q.si(), &MIN);
        let says = format!(
            "how much a spill at {} brings was not said; there is room for {} between alarm and limit, which it fills in {minutes}",
            s.show(rate.q, FLOW_UNITS),
            gallons(room.room.q)
        );
        return Verdict::cannot_judge(says, s.asked(spill.volume.at), room.room.at);
    }
    let (passes, because) = passing(s, spill);
    let says = format!("a spill of {}{passes}", gallons(spill.volume.q));
    let oils = s.design.basis.as_ref().map_or(&[][..], |basis| &basis.fluids.oils);
    let by = match (oils.get(room.oil), performance.levels.len() > 1, spill.oil) {
        (Some(oil), true, Some(_)) => format!(" of {}", oil.name),
        (Some(oil), true, None) => format!(" of {} (of the oils that may come the least room)", oil.name),
        _ => String::new(),
    };
    if room.spare.q.si() < 0.0 {
        // What is full within a second has no room.
        let soon = spill.rate.filter(|rate| room.room.q.si() > rate.q.si()).map_or_else(String::new, |rate| {
            // A pump or a flow cap ahead passes no more than it does.
            let cases = s.design.basis.as_ref().map_or(&[][..], |basis| &basis.cases);
            let case = cases.iter().find(|case| case.kind == Kind::Spill);
            let reaches = case.map_or(rate.q, |case| if case.feed.q < rate.q { case.feed.q } else { rate.q });
            let fills = print::in_prose(room.room.q.si() / reaches.si(), &MIN);
            if reaches < rate.q {
                let (reaches, rate) = (s.show(reaches, FLOW_UNITS), s.show(rate.q, FLOW_UNITS));
                format!("; at the {reaches} that reach it of {rate} it is full in {fills}: then oil goes on to the outlet unless something stops what feeds it or shuts the outlet, and the rest of the {rate} backs up ahead")
            } else {
                format!("; at {} that is full in {fills}, and then oil goes on to the outlet unless something shuts it", s.show(rate.q, FLOW_UNITS))
            }
        });
        Verdict::fails(
            format!(
                "of {says} {} find no room between alarm and limit{by}, where there is {}{soon}{because}",
                gallons(-room.spare.q),
                if room.room.q.si() > 0.0 { format!("room for {}", gallons(room.room.q)) } else { "none".to_owned() }
            ),
            room.spare.at,
        )
    } else if room.spare.q < spill.at_unit().q * ratio(BARELY) {
        Verdict::passes(format!("{says} finds room between alarm and limit{by} while no water flows, with nothing to spare"))
    } else {
        Verdict::passes(format!(
            "{says} finds room between alarm and limit{by} while no water flows, with {} to spare{}",
            gallons(room.spare.q),
            while_it_flows(s, room.oil)
        ))
    }
}

/// How late the alarm sounds while the largest flow lasts, where that is known of the oil with the least room.
fn while_it_flows(s: &Subject<'_>, oil: usize) -> String {
    let levels = s.design.performance.as_ref().map_or(&[][..], |p| &p.levels);
    let name = s.design.basis.as_ref().and_then(|b| b.fluids.oils.get(oil)).map(|oil| oil.name.as_str());
    let found = levels.iter().find(|level| Some(level.oil.as_str()) == name);
    match found.and_then(|level| Some((level, level.trip_at_flow?))) {
        // Set so that it sounds just in time, the two are equal but for the last digits.
        Some((level, late)) if late.q * 1.000_001 >= level.limit.q => format!(
            "; while the largest flow lasts the alarm sounds only when the layer is as thick as permitted, {}, and a spill that comes then finds no room",
            s.show(level.limit.q, (&IN, &MM))
        ),
        Some((level, late)) => format!(
            "; while the largest flow lasts the alarm sounds only at a layer of {}, where {} are permitted, and less finds room",
            s.show(late.q, (&IN, &MM)),
            s.show(level.limit.q, (&IN, &MM))
        ),
        None => "; while water flows the alarm sounds later, and less finds room".to_owned(),
    }
}

/// What of the spill passes the containment ahead; and why, where it is only counted so.
fn passing(s: &Subject<'_>, spill: &SpillState) -> (String, String) {
    let ahead = s.design.basis.as_ref().and_then(|b| b.containment.as_ref());
    let (Some(passes), Some(ahead)) = (spill.passes, ahead) else { return Default::default() };
    let gallons = |v| s.show(v, (&GAL, &M3));
    let Some((b, passing)) = ahead.passing(spill.volume.q) else { return Default::default() };
    let names = ahead.names(&b.chain);
    match passing {
        Passing::Nothing | Passing::Short => {
            (format!(", of which {} pass the containment ahead,", gallons(passes.q)), String::new())
        }
        Passing::Open => {
            let holds = b.dry.holds() == Some(true) && b.passes_as_taken(spill.volume.q).si() <= 0.0;
            let shut = if holds {
                format!("; {names} would hold all of it, with the rain, if its drain were closed")
            } else {
                String::new()
            };
            (format!(", all of which runs through the open drain of {names},"), shut)
        }
        Passing::Unknown => {
            let valves = b.chain.iter().filter_map(|i| ahead.all[*i].valve.open.as_ref());
            let unsaid: Vec<String> = valves.chain(&b.open).map(|open| s.taken(&open.key, &open.what, false)).collect();
            let then = b.passes_as_taken(spill.volume.q);
            let pass = if then.si() > 0.0 { format!("{} would pass", gallons(then)) } else { "none would pass".to_owned() };
            let drains = match b.shut {
                Shut::Unknown if b.open.is_empty() => "with the drain shut",
                Shut::Unknown => "with the drain shut and the rest as taken",
                _ => "if it is as taken",
            };
            (
                format!(", all of it counted as passing {names},"),
                format!("; it is counted so because nobody said: {}; {drains}, {pass}", unsaid.join(", ")),
            )
        }
    }
}

/// A spill as it was told: by its volume, or by its rate alone.
pub(super) fn declared(s: &Subject<'_>, spill: &SpillState) -> String {
    match spill.rate.filter(|_| !spill.is_told) {
        Some(rate) => format!("a spill at {}", s.show(rate.q, FLOW_UNITS)),
        None => format!("a spill of {}", s.show(spill.volume.q, (&GAL, &M3))),
    }
}

/// The containments that hold the declared spill.
pub(super) fn holders(ahead: &Containments) -> String {
    let names: Vec<String> = ahead.balances.iter().filter(|b| b.declared).map(|b| ahead.names(&b.chain)).collect();
    names.join(", ")
}
