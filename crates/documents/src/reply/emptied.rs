//! How often the unit is to be emptied, in the words of a mail.

use stillrise_design::train::StageKind;
use stillrise_search::Settled;
use stillrise_units::catalog::D;
use stillrise_units::{Time, Typed, print};

/// How often it is to be emptied, by the sludge and the oil that are reckoned to collect.
pub(super) fn emptied(settled: &Settled) -> Option<String> {
    let storage = &settled.job.design.performance.as_ref()?.storage;
    let sludge = storage.sludge_days.map(|t| every(t.q));
    let alarm = storage.oil_days.map(|t| every(t.q));
    let oil = storage.oil_routine.map(|t| every(t.q)).map(|often| match alarm {
        Some(sounds) if sounds != often => format!("{often} (the alarm sounds after {sounds})"),
        _ => often,
    });
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
    let sludge = sludge.map(|every| format!("{every}{without}"));
    Some(match (sludge, oil) {
        (Some(sludge), Some(oil)) => {
            format!("on these figures sludge is to be pumped out about every {sludge}, oil about every {oil}")
        }
        (Some(sludge), None) => format!("on these figures sludge is to be pumped out about every {sludge}"),
        (None, Some(oil)) => format!("on these figures oil is to be pumped out about every {oil}"),
        (None, None) => return None,
    })
}

/// A time as one speaks of it: "every day", but "a day or more".
fn span(time: Time) -> String {
    match every(time) {
        day if day == "day" => "a day".to_owned(),
        other => other,
    }
}

/// A time between two pump-outs as one speaks of it.
pub(super) fn every(time: Time) -> String {
    match D.from_si(time.si()) {
        days if days < 1.5 => "day".to_owned(),
        days if days < 60.0 => format!("{} days", print::digits(days, 2)),
        days if days < 730.0 => format!("{} months", print::digits(days / 30.44, 2)),
        days if days < 3652.5 => "two years or longer".to_owned(),
        _ => "ten years or longer".to_owned(),
    }
}
