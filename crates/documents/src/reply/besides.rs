//! What was asked besides size, price and promise, answered one by one: an alarm, an interval, a tank ahead, a slab.

use super::{emptied, show};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::performance::levels::OilLevels;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_search::Settled;
use stillrise_search::alternatives::Change;
use stillrise_search::asked::{interval, tank_ahead};
use stillrise_units::Typed;
use stillrise_units::catalog::{GAL, IN, KG, LB, M3, MIN, MM, S};

/// A sentence or two for each.
pub(super) fn answers(settled: &Settled) -> Vec<String> {
    let all = [alarm, empty, tank, ahead_of_pumps, slab, double_wall, sampling, material, delivery];
    all.iter().filter_map(|answer| answer(settled)).collect()
}

/// Whether an alarm is needed, and at which layer it calls.
fn alarm(settled: &Settled) -> Option<String> {
    settled.job.enquiry.asked.alarm.filter(|asked| *asked)?;
    let levels = settled.job.design.performance.iter().flat_map(|p| &p.levels);
    let set = |oil: &OilLevels| {
        let alarm = oil.level(Mark::Alarm)?;
        Some((oil.trip_at_flow.map(|trip| trip.q), oil.limit.q, alarm.thickness.q, alarm.volume.q))
    };
    let lowest = levels.filter_map(set).min_by(|a, b| a.2.si().total_cmp(&b.2.si()));
    let here = lowest.map_or_else(String::new, |(flows, limit, thick, held)| {
        let flows = flows.map_or_else(String::new, |trip| {
            format!("; while the largest flow runs it calls at {} only", show(settled, trip.si(), (&IN, &MM)))
        });
        format!(
            " In the unit offered it would call at a layer of {} ({}) with the water at rest, before {}, the most that may stand in it{flows}.",
            show(settled, thick.si(), (&IN, &MM)),
            show(settled, held.si(), (&GAL, &M3)),
            show(settled, limit.si(), (&IN, &MM)),
        )
    });
    let european = settled.job.design.basis.as_ref().is_some_and(|basis| basis.european.is_some());
    let rules = if european {
        "EN 858-1 asks for one unless the authority agrees to do without."
    } else {
        "The permit and local rules may ask for one besides."
    };
    Some(format!(
        "An alarm: yes. Oil that nobody sees fills its room and then leaves with the water; an alarm calls before. {rules}{here}"
    ))
}

/// Whether it goes as long without being emptied as was asked for.
fn empty(settled: &Settled) -> Option<String> {
    let asked = settled.job.enquiry.asked.interval.claim()?;
    let lead = format!("Emptied once in {}:", asked.written.text);
    let Some(found) = interval(&settled.job.enquiry, &settled.job.design) else {
        return Some(format!("{lead} not answered while no unit is sized."));
    };
    let storage = settled.job.design.performance.as_ref().map(|p| &p.storage);
    let behind = storage.and_then(|s| s.behind_trap).filter(|_| found.is_sludge).map_or_else(String::new, |behind| {
        format!(
            " without a grit trap ahead, {} behind one that holds the grains it is sized for",
            emptied::often(behind.q)
        )
    });
    let what = if found.is_sludge { "sludge" } else { "oil" };
    let first = found.first.map(emptied::often);
    Some(match (found.is_kept, first) {
        (true, first) => format!(
            "{lead} on these figures it can wait that long{}; it has to be looked at far more often, and emptied at once after a spill.",
            first.map_or_else(String::new, |often| format!(" ({what} first, {often})"))
        ),
        (false, first) => format!(
            "{lead} no, not on these figures: {what} is to be pumped out {}{behind}. {}",
            first.unwrap_or_default(),
            if found.is_sludge {
                "A trap ahead that holds the grit, or less of it, makes that longer; a larger unit in proportion to its room for sludge."
            } else {
                "Less oil in the water, or a larger unit in proportion to its room for oil, makes that longer."
            }
        ),
    })
}

/// Whether a tank that stands can be kept ahead.
fn tank(settled: &Settled) -> Option<String> {
    let claim = settled.job.enquiry.asked.tank_ahead.claim()?;
    let lead = format!("The tank of {} that stands, kept ahead:", claim.written.text);
    let Some(tank) = tank_ahead(&settled.job.enquiry, &settled.job.design) else {
        return Some(format!("{lead} not answered while the flow is not known."));
    };
    let trap = tank.trap.map_or_else(
        || "a trap for grit".to_owned(),
        |trap| {
            let all = if trap <= tank.volume { "the" } else { "a part of the" };
            format!(
                "{all} sludge trap of {} that the European standard asks for",
                show(settled, trap.si(), (&GAL, &M3))
            )
        },
    );
    Some(format!(
        "{lead} at {} the water passes it in {}, so that it evens out no flow and takes the place of no separator. It can be {trap}, if it is tight, fits the levels, and can be reached and emptied; the oil and sludge in it have to come out first.",
        show(settled, tank.flow.si(), FLOW_UNITS),
        if tank.passes.si() < 60.0 {
            show(settled, tank.passes.si(), (&S, &S))
        } else {
            show(settled, tank.passes.si(), (&MIN, &MIN))
        },
    ))
}

/// Whether it may stand ahead of the pumps.
fn ahead_of_pumps(settled: &Settled) -> Option<String> {
    settled.job.enquiry.asked.ahead_of_pumps.filter(|asked| *asked)?;
    let pumped = settled.job.design.basis.as_ref().is_some_and(|basis| basis.feed.pumped);
    if !pumped {
        return Some(
            "Ahead of the pumps, if there are any: that is how it is worked here. It takes by gravity whatever arrives, and a pump behind it lifts what leaves it, without breaking the oil."
                .to_owned(),
        );
    }
    let other = settled.alternatives.iter().find(|a| a.change == Change::AheadOfPumps);
    let droplets = "That spares the droplets, which the pumps break, and the pumps then lift clean water; but the unit takes whatever arrives, not what they lift, and stands as deep as the pipe that comes in.";
    Some(match other.map(|other| &other.pick) {
        Some(Some(_)) => format!("Ahead of the pumps: it can. {droplets} It is worked among the other trains."),
        Some(None) => format!(
            "Ahead of the pumps: not with a unit of the range. {droplets} What speaks against it stands among the other trains."
        ),
        None if settled.alternatives.is_empty() => {
            format!("Ahead of the pumps: worked for the mail and the package, among the other trains. {droplets}")
        }
        None => return None,
    })
}

/// Whether a slab carries it.
fn slab(settled: &Settled) -> Option<String> {
    let claim = settled.job.enquiry.asked.slab.claim()?;
    let shop = settled.job.design.performance.as_ref().and_then(|p| p.shop.as_ref()?.weights.as_ref());
    let full = shop.and_then(|weights| weights.test).map_or_else(String::new, |test| {
        format!(" Full of water one unit weighs {}.", show(settled, test.q.si(), (&LB, &KG)))
    });
    Some(format!(
        "A slab of {}: whether it carries the unit hangs on its reinforcement and on the ground under it, and is for a structural engineer to say.{full}",
        claim.written.text
    ))
}

/// A second wall.
fn double_wall(settled: &Settled) -> Option<String> {
    settled.job.enquiry.asked.double_wall.filter(|asked| *asked)?;
    Some(
        "A double wall: no unit of our range is stated to have one, and none is counted here. Rules that ask for one mostly mean tanks that store oil: whoever grants the permit says whether they hold for a separator."
            .to_owned(),
    )
}

/// Where samples are taken.
fn sampling(settled: &Settled) -> Option<String> {
    settled.job.enquiry.asked.sampling.filter(|asked| *asked)?;
    Some(
        "A place for samples: behind the unit, where its water falls freely or in a chamber of its own, before any other water joins it. One dipped from the surface inside the unit catches oil that does not leave; whoever grants the permit may name another place."
            .to_owned(),
    )
}

/// The material it is to be of.
fn material(settled: &Settled) -> Option<String> {
    let asked = settled.job.enquiry.asked.material.as_deref()?;
    let train = settled.job.design.train.as_ref().filter(|_| !settled.job.enquiry.unit_stands());
    let of = train.map(|train| train.unit.particulars.material.as_deref());
    Some(match of {
        None => format!("Of {asked}: not answered while no unit is named."),
        Some(Some(own)) if own.to_lowercase().contains(&asked.trim().to_lowercase()) => {
            format!("Of {asked}: the unit offered is stated to be of {own}.")
        }
        Some(Some(own)) => format!(
            "Of {asked}: the unit offered is stated to be of {own}; whether it is made of {asked} too, and at which price, the quotation tells."
        ),
        Some(None) => format!("Of {asked}: of the unit offered no material is stated; the quotation tells."),
    })
}

/// A day by which it is to be there.
fn delivery(settled: &Settled) -> Option<String> {
    let day = settled.job.enquiry.asked.delivery.0?;
    let time = settled.job.design.train.as_ref().and_then(|train| train.unit.particulars.lead_time.as_ref());
    let time = time.filter(|_| super::prices_are_told(settled)).map_or_else(
        || "the time of delivery comes with the quotation".to_owned(),
        |time| format!("our range states {time}, from an order and a drawing that is approved"),
    );
    Some(format!("Delivery by {day}: not confirmed on a first answer; {time}."))
}
