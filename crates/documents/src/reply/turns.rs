//! Questions on which the unit hangs, or what keeps it down: how cold the water gets, whether a spill is held ahead, how high the
//! groundwater stands.

use super::alike::asked;
use super::show;
use stillrise_checks::ask::GROUNDWATER;
use stillrise_checks::rules::floats_when_emptied;
use stillrise_design::enquiry::blocks::Water;
use stillrise_design::performance::installation::Stands;
use stillrise_search::Settled;
use stillrise_search::offered::Offered;
use stillrise_search::questions::Question;
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Typed, print};

/// How cold the water gets, where nobody said it and another temperature as plausible asks for another unit and its price.
pub(super) fn colder(settled: &Settled, rest: &[&Question]) -> Option<String> {
    let taken = settled.candidates.iter().find(|c| c.taken)?;
    let q = rest.iter().find(|q| q.declared.is(Water::coldest) || q.declared.is(Water::warmest))?;
    let priced = settled.job.design.train.as_ref().and_then(|train| train.unit.particulars.price.as_ref());
    let others = q.outcomes.iter().filter_map(|o| {
        let unit = o.unit.as_ref().filter(|unit| **unit != taken.unit)?;
        let at = o.turns_at.as_ref().map_or_else(
            || format!("at {}, which is plausible too,", o.answer),
            |at| format!("at {at} already, where {} is plausible,", o.answer),
        );
        let price = o
            .price
            .zip(priced.filter(|_| super::prices_are_told(settled)))
            .map_or_else(String::new, |(price, (_, currency))| format!(", {} {currency}", print::digits(price, 3)));
        Some(match unit {
            Offered::Nothing => format!("{at} no unit does without a condition"),
            Offered::Made(1) => format!(
                "{at} no unit of the range{} does, and one would be made to measure",
                super::offer::into_the_place(settled)
            ),
            unit => format!("{at} it would be {}{price}", unit.name()),
        })
    });
    let others: Vec<String> = others.collect();
    (!others.is_empty()).then(|| format!("{} The unit hangs on it: {}.", asked(q), others.join("; ")))
}

/// Whether the levels ask for a pump.
pub(super) fn lifted(settled: &Settled) -> bool {
    settled.job.design.performance.as_ref().is_some_and(|p| p.site.installation.stands.q == Stands::LiftPump)
}

/// Whether it hangs on the groundwater, of which nobody spoke, that the emptied unit floats.
pub(super) fn floats(settled: &Settled) -> bool {
    let found = settled.judged(&floats_when_emptied::RULE).filter(|v| !v.is_settled());
    found.is_some_and(|v| v.verdict.asks().contains(&GROUNDWATER))
}

/// Whether a spill can be held where it runs out, where a smaller unit then does; how deep it would stand on the only surface.
pub(super) fn held_ahead(settled: &Settled) -> Option<String> {
    if settled.pick.is_none() || !super::offer::smaller_ahead(settled) {
        return None;
    }
    let spill = settled.job.design.basis.as_ref()?.spill.as_ref()?.volume.q;
    let surfaces = &settled.job.enquiry.surfaces;
    let stands = match &surfaces[..] {
        [one] => one.area.q().zip(one.name.0.as_ref()).map(|(area, name)| {
            let deep = show(settled, (spill / area).si(), (&IN, &MM));
            format!(": on the {name} it would stand {deep} deep where that is level")
        }),
        _ => None,
    };
    Some(format!(
        "Can the spill be held where it runs out, behind a kerb with its drain shut{}? How high is a kerb there, or may one be? Then the smaller unit named above does.",
        stands.unwrap_or_default()
    ))
}
