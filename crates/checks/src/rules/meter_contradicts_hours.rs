//! Rule: the meter contradicts the hours

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::chemicals::Which;
use stillrise_units::catalog::{H, PERCENT};
use stillrise_units::{Typed, print};

rule! {
    "meter-contradicts-hours" "Volume of a day contradicts flow and hours", Enquiry;
    client "The volume of a day, the flow and the hours that were stated do not agree."
    looks "Each water whose volume of a day is told and whose flow and hours are known too: a volume of more than a fifth above what they make warns; a smaller one says that not all runs all the time. Where the flow is only taken from its hoses it cannot judge, and asks for it."
    matters "One of the three is wrong. If it is the flow, the unit has the wrong size; if it is the hours or the meter, oil and sludge fill it sooner or later than was said."
    remedy "Tell us which of the three holds: how the volume was read and whether it is of this water alone, the flow, or the hours."
    source "Our proposal; a fifth is about what rounded hours and a mean of many days explain"
    limits "The calculation goes by the volume for what collects, and by the flow for the size of the unit."
}

/// Share by which the two may differ.
const FIFTH: f64 = 0.2;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let off = |[meter, said]: [f64; 2]| (meter - said).abs() / said;
    let metered = basis.waters.iter().filter_map(|water| Some((water, water.metered?)));
    let worst = metered.max_by(|(_, a), (_, b)| off(a.map(|v| v.q.si())).total_cmp(&off(b.map(|v| v.q.si()))));
    let Some((water, [meter, said])) = worst else {
        return Verdict::skips("of no water both a metered volume and hours are known");
    };
    let hours = |si: f64| print::in_prose(si, &H);
    let says = format!(
        "{}: its volume of a day and its flow make {} a day, {} were said",
        water.name,
        hours(meter.q.si()),
        hours(said.q.si())
    );
    let apart = off([meter.q.si(), said.q.si()]);
    // A flow that nobody told contradicts nothing: what was told says it.
    if apart > FIFTH
        && let Which::Stream(place) = water.which
        && s.enquiry.streams.get(place).is_some_and(|of| !of.flow.is_given() && !of.hose_flow.is_given())
    {
        let tells = s.show(water.flow.q * (meter.q.si() / said.q.si()), FLOW_UNITS);
        let says = format!(
            "{}: by its volume of a day and its hours it comes at {tells} in the mean, {} were taken for its hoses",
            water.name,
            s.show(water.flow.q, FLOW_UNITS)
        );
        let ask = Ask::new(
            format!("stream \"{}\".flow", water.name),
            format!("At what flow does the {} come while it runs, all hoses together?", water.name),
        );
        return Verdict::cannot_judge(says, [ask], meter.at);
    }
    // Less than flow and hours make is no contradiction: not all runs all the time, or a sump is emptied faster than it fills.
    if apart > FIFTH && meter.q > said.q {
        Verdict::warns(format!("{says}, {} apart", print::in_prose(apart, &PERCENT)), meter.at)
    } else if apart > FIFTH {
        Verdict::passes(format!("{says}: less than flow and hours make, as where not all runs all the time"))
    } else {
        Verdict::passes(says)
    }
}
