//! How often the unit is to be emptied, in the words of a mail.

use stillrise_design::performance::storage::Storage;
use stillrise_design::train::StageKind;
use stillrise_search::Settled;
use stillrise_units::catalog::D;
use stillrise_units::math::floor;
use stillrise_units::{Time, Typed, print};

/// How often it is to be emptied, by the sludge and the oil that are reckoned to collect.
pub(super) fn emptied(settled: &Settled) -> Option<String> {
    let storage = &settled.job.design.performance.as_ref()?.storage;
    let sludge = storage.sludge_days.map(|t| often(t.q));
    let oil = oil(storage);
    let stages = settled.job.design.train.iter().flat_map(|train| &train.stages);
    let grit = stages.filter(|s| s.asked_for).find(|s| s.kind == StageKind::GritTrap).map(|s| s.name.as_str());
    let sizes = settled.job.design.basis.as_ref().and_then(|b| b.european.as_ref()?.sizes.as_ref().ok());
    let without = match (grit, sizes.is_some_and(|sizes| sizes.sludge_trap.is_some())) {
        (_, true) => ", counted without the sludge trap ahead, which lengthens it".to_owned(),
        (Some(name), false) => match storage.behind_trap {
            Some(behind) => format!(
                " without the {name} ahead, {} or more behind one that holds the grains it is sized for, and finer ones while less comes",
                span(behind.q)
            ),
            None => format!(", counted without the {name} ahead"),
        },
        (None, false) => String::new(),
    };
    let sludge = sludge.map(|often| format!("{often}{without}"));
    // What a spill or a fault brings is in no figure of that.
    let seldom = storage.oil_soonest.or(storage.oil_routine).is_some_and(|t| is_seldom(t.q));
    let oil = oil.map(|oil| {
        if seldom { format!("{oil}; to be looked at every quarter all the same, for what is spilled") } else { oil }
    });
    Some(match (sludge, oil) {
        (Some(sludge), Some(oil)) => {
            format!("on these figures sludge is to be pumped out {sludge}, oil {oil}")
        }
        (Some(sludge), None) => format!("on these figures sludge is to be pumped out {sludge}"),
        (None, Some(oil)) => format!("on these figures oil is to be pumped out {oil}"),
        (None, None) => return None,
    })
}

/// How often the oil is to be pumped out: planned by all free oil that arrives, where the droplets reckoned with let more of it
/// through.
pub(super) fn oil(storage: &Storage) -> Option<String> {
    let reckoned = storage.oil_routine.map(|routine| {
        let often = often(routine.q);
        let says = match storage.oil_days.map(|t| span(t.q)) {
            Some(sounds) if sounds != span(routine.q) => format!("{often} (the alarm sounds after {sounds})"),
            _ => often.clone(),
        };
        (often, says)
    });
    let soonest = storage.oil_soonest.map(|t| often(t.q));
    match (reckoned, soonest) {
        // Spoken of alike they are one.
        (Some((often, says)), Some(soonest)) if often == soonest => Some(says),
        (Some((_, reckoned)), Some(soonest)) => Some(format!(
            "{soonest}, to plan by, with all free oil that arrives held, as coarser droplets would be; by the droplets reckoned here {reckoned}"
        )),
        (None, Some(soonest)) => {
            Some(format!("{soonest}, to plan by, with all free oil that arrives held, as coarser droplets would be"))
        }
        (reckoned, None) => reckoned.map(|(_, says)| says),
    }
}

/// Whether something comes so seldom that its time says more of what was assumed than of the unit.
pub(super) fn is_seldom(time: Time) -> bool {
    D.from_si(time.si()) >= SELDOM
}

/// Days from which it does: two years.
const SELDOM: f64 = 730.0;

/// How often something comes again after this time: "about every 3 days".
pub(super) fn often(time: Time) -> String {
    match D.from_si(time.si()) {
        days if days < 0.75 => format!("about every {} hours", print::digits(days * 24.0, 2)),
        days if days < 1.5 => "about every day".to_owned(),
        days if days < SELDOM => format!("about every {}", span(time)),
        _ => "less often than every two years".to_owned(),
    }
}

/// The same in whole days, as a plan of upkeep has it; hours and what comes very seldom as above.
pub(super) fn in_days(time: Time) -> String {
    match D.from_si(time.si()) {
        days if (1.5..SELDOM).contains(&days) => format!("about every {} days", print::digits(floor(days), 3)),
        _ => often(time),
    }
}

/// A time as one speaks of it: "3 days".
fn span(time: Time) -> String {
    match D.from_si(time.si()) {
        days if days < 0.75 => format!("{} hours", print::digits(days * 24.0, 2)),
        days if days < 1.5 => "a day".to_owned(),
        days if days < 60.0 => format!("{} days", print::digits(days, 2)),
        days if days < SELDOM => format!("{} months", print::digits(days / 30.44, 2)),
        _ => "more than two years".to_owned(),
    }
}
