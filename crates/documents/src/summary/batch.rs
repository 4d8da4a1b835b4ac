//! Water that comes in less than the unit holds: it stands there until water comes again, which no calculation here counts.

use super::capital;
use stillrise_design::basis::Basis;
use stillrise_design::basis::cases::Case;
use stillrise_design::performance::limit::Word;
use stillrise_search::Settled;
use stillrise_units::catalog::{GAL, M3};
use stillrise_units::{Typed, print};

/// That more free oil rises than is counted, where a limit is missed in a water that comes in less than the unit holds.
pub(super) fn stands_between(settled: &Settled) -> Option<String> {
    let design = &settled.job.design;
    let (basis, train) = (design.basis.as_ref()?, design.train.as_ref()?);
    let held = train.unit.layout.water_volume.q.si() * train.count.q.si();
    let limits = &design.performance.as_ref()?.limits;
    let missed = limits.iter().filter(|l| l.predicted && l.word != Word::Kept);
    let small = |name: &str| {
        let case = basis.cases.iter().find(|case| case.name == name)?;
        let day = case.brought_in_a_day(&basis.waters)?.si();
        (day > 0.0 && day < held).then_some((case, day))
    };
    let (name, (case, day)) = missed.filter_map(|l| Some((l.case.as_str(), small(&l.case)?))).next()?;
    let system = settled.job.enquiry.system();
    let show = |si: f64| print::in_prose(si, system.pick((&GAL, &M3)));
    // What else comes through pushes it on before it has stood that long.
    let others = others(basis, case);
    let until = if others.is_empty() {
        "until it comes again, and more of its free oil rises than this".to_owned()
    } else {
        format!(
            "until it or other water ({}) comes and pushes it on; the longer it stands, the more of its free oil rises beyond what this",
            others.join(", ")
        )
    };
    Some(format!(
        "{}: a day brings {}, less than the {} that the unit holds. It stands there {until} calculation of a steady flow counts; what does not rise stays in the water.",
        capital(name),
        show(day),
        show(held)
    ))
}

/// The waters that come to the unit beside those of a case, as a sentence names them: rain, streams and what is let out of
/// containments.
fn others(basis: &Basis, case: &Case) -> Vec<String> {
    let waters = basis.waters.iter().filter(|water| !case.which.contains(&water.which));
    let waters = waters.map(|water| if water.is_rain { "rain".to_owned() } else { water.name.clone() });
    let drained = basis.containment.iter().flat_map(|ahead| &ahead.all).filter(|c| c.drained.is_some());
    waters.chain(drained.map(|c| format!("what is let out of the {}", c.name))).collect()
}
