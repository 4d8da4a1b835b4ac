//! Trouble-shooting, made from the causes that a diagnosis weighs, so that manual and diagnosis never differ.

use super::super::site::Site;
use crate::report::Report;
use crate::report::blocks::{Table, wide};
use stillrise_search::diagnosis::causes::{CAUSES, Cause, Gauge, Id, OF_THE_ALARM};

/// So likely a sign must be under a cause to be named as its symptom.
const LIKELY: f64 = 0.4;

/// The table.
pub(super) fn trouble(r: &mut Report<'_>, u: &Site<'_>) {
    r.out.section("Trouble-shooting");
    r.out.intro("Begin with the cheapest test of the row. One symptom may have several causes, and two causes may act together: what was tested is written into the log before anything is changed.");
    let mut table =
        Table::new([wide("Symptom", 1.1), wide("Likely cause", 1.1), wide("Test", 2.0), wide("Remedy", 2.0)]);
    let mut rows: Vec<(String, &Cause)> =
        CAUSES.iter().copied().filter(|c| is_of(u, c)).map(|c| (symptom(c), c)).collect();
    rows.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.cost.cmp(&b.1.cost)));
    for (symptom, cause) in rows {
        table.row([symptom.as_str(), cause.title, cause.test, cause.remedy]);
    }
    r.out.table(&table);
}

/// Whether a unit can have it at all.
fn is_of(u: &Site<'_>, cause: &Cause) -> bool {
    let unit = u.unit();
    match cause.id {
        Id::FouledMesh => unit.mesh.is_some(),
        Id::BlockedPlates => unit.pack.is_some(),
        Id::PumpShear => u.pumped(),
        _ if OF_THE_ALARM.contains(&cause.id) => u.alarm().is_some(),
        _ => true,
    }
}

/// What is seen under a cause: the signs that a diagnosis expects most.
fn symptom(cause: &Cause) -> String {
    const LOOKS: [&str; 4] =
        ["high results, clear water", "hazy water leaves", "milky water leaves", "a film on what leaves"];
    const ALARM: [&str; 4] = ["", "a thick layer and no alarm", "alarm, oil is found", "alarm, no oil is found"];
    const JAR: [&str; 3] = ["a jar clears within an hour", "a jar clears overnight", "a jar stays turbid"];
    let mut signs: Vec<&str> = Vec::new();
    let mut most = |chances: &[f64], words: &[&'static str]| {
        let best = chances.iter().zip(words).max_by(|a, b| a.0.total_cmp(b.0)).filter(|(chance, _)| **chance >= LIKELY);
        signs.extend(best.map(|(_, word)| *word).filter(|word| !word.is_empty()));
    };
    if let Some(looks) = cause.looks {
        most(&looks, &LOOKS);
    }
    if let Some(alarm) = cause.alarm {
        most(&alarm, &ALARM);
    }
    if let Some(jar) = cause.jar.filter(|_| cause.looks.is_none_or(|looks| looks.iter().all(|chance| *chance < LIKELY)))
    {
        most(&jar, &JAR);
    }
    if cause.backed_up >= LIKELY {
        signs.push("water stands high at the inlet");
    }
    signs.extend(cause.gauge.map(|gauge| match gauge {
        Gauge::OilLayer => "the oil layer is thick",
        Gauge::Sludge | Gauge::Trigger => "the sludge is deep",
        Gauge::Level => "the water stands low without flow",
    }));
    crate::report::capital(&signs.join("; "))
}
