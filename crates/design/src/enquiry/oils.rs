//! What cannot be true of the oil in any water.

use super::Enquiry;
use stillrise_units::{Fault, Typed};

/// No water carries more emulsified and dissolved oil than oil.
pub(super) fn faults(e: &Enquiry, faults: &mut Vec<Fault>) {
    let named = |kind: &str, name: &Option<String>, i: usize| match name {
        Some(name) => format!("{kind} \"{name}\": oil"),
        None => format!("{kind} {}: oil", i + 1),
    };
    let rain = e.rain.iter().filter_map(|r| Some(("rain: oil".to_owned(), r.oil.as_ref()?)));
    let streams =
        e.streams.iter().enumerate().filter_map(|(i, s)| Some((named("stream", &s.name, i), s.oil.as_ref()?)));
    let cases = e.cases.iter().enumerate().filter_map(|(i, c)| Some((named("case", &c.name, i), c.oil.as_ref()?)));
    let dumps = e.dumps.iter().enumerate().filter_map(|(i, d)| Some((named("dump", &d.name, i), d.oil.as_ref()?)));
    let held = e
        .containments
        .iter()
        .enumerate()
        .filter_map(|(i, c)| Some((named("containment", &c.name, i), c.oil.as_ref()?)));
    let stated = e.stated.oil.iter().map(|oil| ("stated: oil".to_owned(), oil));
    for (place, oil) in rain.chain(streams).chain(cases).chain(dumps).chain(held).chain(stated) {
        let (Some(mean), Some(dissolved)) = (oil.mean.claim(), oil.dissolved.claim()) else { continue };
        let share = oil.emulsified.q().map_or(0.0, |share| share.si());
        let (all, held) = (mean.written.si(), dissolved.written.si() + share * mean.written.si());
        if held > all {
            let emulsified =
                oil.emulsified.claim().map_or_else(String::new, |c| format!(" and {} emulsified", c.written.text));
            faults.push(Fault::new(
                format!("{place}: dissolved"),
                format!(
                    "{} dissolved{emulsified} is more than the {} of oil there is",
                    dissolved.written.text, mean.written.text
                ),
                "mean is all oil and grease, free, emulsified and dissolved together; check the three",
            ));
        }
    }
}
