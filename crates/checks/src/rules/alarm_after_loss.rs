//! Rule: alarm after loss

use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::vessel::alarms::PUBLISHED;
use stillrise_units::Typed;
use stillrise_units::catalog::{IN, MM, PERCENT};

rule! {
    "alarm-after-loss" "High-oil alarm too late", OilZone, bars_pick;
    looks "The share of the permitted layer stated for the alarm: 100 % fails, above the 80 % of EN 858-2's emptying advice warns. The layer of each oil at which the one float trips, without flow and at the largest flow: beyond the permitted one fails."
    matters "An alarm that comes when the store is full comes when oil is being lost; there is no room left for what arrives before somebody acts."
    remedy "A lower alarm, or a float for each oil that may come."
    source "EN 858-2, 2003, emptying at 80 % of the oil store, at second hand; a default alarm at 60 % is our proposal"
    limits "Friction of the float and waves shift the trip by some 1/2 in, which is not counted."
}

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
        [(l.trip, "without flow"), (l.trip_at_flow, "at the largest flow")]
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
    let says = format!("the float trips at {at} of {} {when}, {limit} are permitted", oil.oil);
    // Set to trip just in time, the two are equal but for the last digits.
    if trip.q > oil.limit.q * 1.000_001 {
        return Verdict::fails(says, trip.at);
    }
    let advised = PUBLISHED.iter().find(|p| p.word == "en 858-2 emptying").map_or(0.8, |p| p.share);
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
