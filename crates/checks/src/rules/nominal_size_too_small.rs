//! Rule: nominal size too small

use crate::ask::{Ask, WATERS};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::european::covers;
use stillrise_units::catalog::{IN_H, KG_M3, L_S, LB_FT3, MM_H};
use stillrise_units::{Flow, Typed, print};

rule! {
    "nominal-size-too-small" "Nominal size below what EN 858-2 asks for", Enquiry;
    client "The nominal size is below what EN 858-2 asks for."
    looks "A nominal size that was named against the one that EN 858-2 asks for with our waters: smaller fails. Where an answer that nobody gave decides, it cannot judge."
    matters "A separator is tested at its nominal size. At more it carries oil out, and its class says nothing there."
    remedy "The next size of the series that covers the need, or less area and less water to the separator."
    source "EN 858-2, 2003, clause 4, nominal size, as quoted by other texts"
    limits "Rain and waste water are added up; a national rule may let the larger stand alone where they cannot come together. It holds for units that were tested by EN 858-1, and ours has no nominal size."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(european) = s.design.basis.as_ref().and_then(|b| b.european.as_ref()) else {
        return match s.enquiry.asked.nominal_size.0 {
            Some(_) => s.stopped(),
            None => Verdict::skips("no nominal size was named"),
        };
    };
    let Some(named) = european.named else { return Verdict::skips("no nominal size was named") };
    let sizes = match &european.sizes {
        Ok(sizes) => sizes,
        Err(why) => {
            let known = european.rain.q.si() + european.waste.q.si() > 0.0;
            let asks = if known { Vec::new() } else { vec![WATERS] };
            return Verdict::cannot_judge(format!("what the standard asks for is not known: {why}"), asks, named.at);
        }
    };
    let class = sizes.class_one.map_or_else(String::new, |one| {
        format!(" with a separator of class II, NS {} with one of class I", size(s, one.q))
    });
    let says = format!("NS {} was named, NS {} is needed{class}", size(s, named.q), size(s, sizes.need.q));
    if !covers(named.q, sizes.least) {
        return Verdict::fails(says, named.at);
    }
    if !covers(named.q, sizes.need.q) {
        let says = format!("{says}; NS {} with the mildest of what was not said", size(s, sizes.least));
        let words = european.category.map(|c| c.at).into_iter().chain([european.system.at]);
        let asks: Vec<Ask> = words.flat_map(|at| s.asked(at)).collect();
        return Verdict::cannot_judge(says, asks, named.at);
    }
    let will_do = |rain: Flow, density| european.need_with(rain, density).is_some_and(|need| covers(named.q, need));
    let storm = s.design.basis.as_ref().and_then(|b| b.storm.as_ref()).filter(|_| european.rain_is_storm);
    // The storm's flow goes with its intensity.
    let rain = storm.map(|storm| (storm.intensity, european.rain.q / storm.intensity.q));
    let by_rain = rain.and_then(|(intensity, area)| {
        s.rests_on(&says, intensity, (&IN_H, &MM_H), |other| will_do(other * area, european.density.q))
    });
    by_rain
        .or_else(|| s.rests_on(&says, european.density, (&LB_FT3, &KG_M3), |other| will_do(european.rain.q, other)))
        .unwrap_or_else(|| Verdict::passes(says))
}

/// A size as it is called, without its unit.
fn size(s: &Subject<'_>, flow: Flow) -> String {
    if s.read { print::digits(L_S.from_si(flow.si()), 3) } else { String::new() }
}
