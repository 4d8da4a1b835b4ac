//! Rule: alarm after loss

use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::vessel::alarms::{LOWEST_ALARM, Mark, PUBLISHED};
use stillrise_units::catalog::{IN, MM, PERCENT};
use stillrise_units::{Length, Typed};

rule! {
    "alarm-after-loss" "High-oil alarm too late", OilZone, bars_pick;
    client "The high-oil alarm may sound only when oil is already being lost."
    looks "The share of the permitted layer stated for the alarm: 100 % fails, above the 80 % of EN 858-2's emptying advice warns. The layer of each oil at which the one float trips, without flow and at the largest flow: beyond the permitted one fails, and so does an alarm that the flow forces to a layer of less than {1 in|25 mm}."
    matters "An alarm that comes when the store is full comes when oil is being lost; there is no room left for what arrives before somebody acts."
    remedy "Less flow through each unit, a larger outlet or water held back ahead; an alarm for a thinner layer where its level was stated; a float for each oil where several may come."
    source "EN 858-2, 2003, emptying at 80 % of the oil store, at second hand; a default alarm at 60 % is our proposal"
    limits "Friction of the float and waves shift the trip by some {1/2 in|13 mm}, which is not counted; {1 in|25 mm}, twice that, is our proposal for the thinnest layer at which one is set."
}

const FLOW: &str = "at the largest flow";
/// No alarm is set at a thinner layer where the flow forces it down: twice what friction and waves shift the trip by. Our
/// proposal.
const LEAST_MM: f64 = 25.0;

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(performance), Some(basis)) = (&s.design.performance, &s.design.basis) else {
        return s.stopped();
    };
    let percent = |share: f64| format!("{} %", stillrise_units::print::digits(PERCENT.from_si(share), 3));
    if let Some(share) = basis.methods.alarm.filter(|share| share.q.si() >= 1.0) {
        let says = format!(
            "the alarm stands at {} of the thickest permitted layer: it comes with the loss",
            percent(share.q.si())
        );
        return Verdict::fails(says, share.at);
    }
    let tripping = performance.levels.iter().filter(|l| l.limit.q.si() > 0.0).flat_map(|l| {
        // At rest, and at the largest flow, which lifts the interface over the float.
        [(l.trip, "without flow"), (l.trip_at_flow, FLOW)]
            .into_iter()
            .filter_map(move |(trip, when)| Some((l, trip?, when)))
    });
    let spent = |limit: f64, trip: f64| trip / limit;
    let Some((oil, trip, when)) =
        tripping.max_by(|a, b| spent(a.0.limit.q.si(), a.1.q.si()).total_cmp(&spent(b.0.limit.q.si(), b.1.q.si())))
    else {
        return Verdict::skips("no oil has a permitted layer");
    };
    let (at, limit) = (s.show(trip.q, (&IN, &MM)), s.show(oil.limit.q, (&IN, &MM)));
    let mut says = format!("the float trips at {at} of {} {when}, {limit} are permitted", oil.oil);
    // What the flow adds to the layer at which it trips in still water.
    let rest = oil.trip.filter(|rest| rest.q < trip.q);
    let rise = rest.map(|rest| trip.q - rest.q).filter(|rise| *rise >= oil.limit.q && when == FLOW);
    if let Some(rise) = rise {
        let rise = s.show(rise, (&IN, &MM));
        says = format!("{says}; the rise of the water at that flow alone takes {rise}, so that no alarm for a thinner layer helps");
    }
    // Set to trip just in time, the two are equal but for the last digits.
    if trip.q > oil.limit.q * 1.000_001 {
        return Verdict::fails(says, trip.at);
    }
    // The thinnest layer that the flow forces on the alarm, below all that is put there by choice: what friction and waves may shift it by tells nothing.
    let forced = performance.levels.iter().filter_map(|l| Some((l, l.level(Mark::Alarm)?.thickness)));
    let forced = forced.filter(|(l, alarm)| {
        l.limit.q.si() > 0.0 && alarm.q < Length::of(LEAST_MM, &MM) && alarm.q.si() < LOWEST_ALARM * l.limit.q.si()
    });
    if let Some((l, alarm)) = forced.min_by(|a, b| a.1.q.si().total_cmp(&b.1.q.si())) {
        let says = format!(
            "to trip in time at the largest flow it would have to be set at {} of {}, less than a float can tell ({})",
            s.show(alarm.q, (&IN, &MM)),
            l.oil,
            s.show(Length::of(LEAST_MM, &MM), (&IN, &MM))
        );
        return Verdict::fails(says, alarm.at);
    }
    let advised = PUBLISHED.iter().find(|p| p.mark == Mark::EmptyingAdvised).map_or(0.8, |p| p.share);
    match basis.methods.alarm.filter(|share| share.q.si() > advised) {
        Some(share) => Verdict::warns(
            format!(
                "the alarm stands at {} of the thickest permitted layer, emptying is advised at {}; {says}",
                percent(share.q.si()),
                percent(advised)
            ),
            share.at,
        ),
        None => Verdict::passes(says),
    }
}
