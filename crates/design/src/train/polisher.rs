//! The stage behind a separator, for what gravity leaves: which limits ask for it, and for how much of the water.

use super::{Stage, StageKind, Train};
use crate::basis::cases::Case;
use crate::basis::limits::LimitState;
use crate::basis::passing::passing;
use crate::basis::waters::Content;
use crate::basis::{Basis, FLOW_UNITS};
use crate::enquiry::blocks::Statistic;
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_handbook::page::Arg;
use stillrise_handbook::separation::floors::plate_floor;
use stillrise_units::catalog::MG_L;
use stillrise_units::{System, Typed, print, ratio};

/// The stage, where a limit asks for more than a separator gives: sized for the largest of the waters that are not
/// within it as they come. A spill is a matter of what holds it, not of what polishes.
pub(super) fn stage(basis: &Basis, train: &Train) -> Option<Stage> {
    let mut whys: Vec<String> = Vec::new();
    let (mut asking, mut emulsion): (Vec<&Case>, bool) = (Vec::new(), false);
    for limit in &basis.limits {
        let contents = || basis.cases.iter().filter_map(|case| Some((case, case.content.as_ref()?)));
        if !contents().any(|(case, content)| asks(limit, case, content)) {
            continue;
        }
        // Of solids it is not known how much leaves.
        let if_need = if limit.pollutant.is_suspended_solids() {
            " (for solids only if a sample of what leaves shows that it is needed)"
        } else {
            ""
        };
        // What is dissolved wants a stage of its kind.
        let by = match limit.pollutant.gravity {
            Gravity::Cannot => {
                let how = limit.pollutant.what_could.trim_end_matches('.');
                format!(" ({})", how.to_lowercase())
            }
            _ => String::new(),
        };
        whys.push(format!("{} of {}{by}{if_need}", limit.title(), print::with_unit(limit.value.q.si(), &MG_L)));
        for (case, content) in contents().filter(|(case, content)| asks(limit, case, content)) {
            emulsion |= splits(limit, case, content);
            if asking.iter().all(|other| other.name != case.name) {
                asking.push(case);
            }
        }
    }
    let largest = largest(basis)?;
    whys.dedup();
    let mut why = format!("takes what gravity leaves, against the limit on: {}", whys.join(", "));
    if emulsion {
        why.push_str("; emulsified oil has to be split ahead of it by acid or coagulant, or held back by a membrane: carbon alone is soon spent on it");
    }
    if basis.spill.as_ref().is_some_and(|spill| !spill.is_held_ahead()) {
        why.push_str("; it is not sized for the spill, and is to be cut off from it");
    }
    // Behind a separator of its own the water that asks for it would take a smaller one.
    let most = asking.iter().map(|case| case.feed.q.si()).fold(0.0, f64::max);
    if let ([one], true) = (&asking[..], most < SMALLER * largest.feed.q.si()) {
        why.push_str(&format!(
            "; only the {} asks for it, and with a separator of its own it would be sized for that water alone",
            one.name
        ));
    }
    // Behind effluent pumps it gets their flow while they run.
    let pumps = train.unit.pump_out.as_ref().map_or(0.0, |pumps| pumps.pump.q.si() * train.count.q.si());
    let flow = largest.feed.q.si().max(pumps);
    if pumps > largest.feed.q.si() {
        why.push_str("; behind the effluent pumps it has to pass what these give while they run");
    }
    let name = if emulsion { "emulsion splitting and polisher" } else { "polisher" };
    let mut stage = Stage::new(StageKind::Polisher, name, why, true);
    stage.size = Some(("flow".to_owned(), Arg::Number(flow), FLOW_UNITS));
    Some(stage)
}

/// The case with the largest flow of those that are not within a limit as they come, where a limit asks for the stage:
/// behind the same unit it takes every one of them.
pub(super) fn largest(basis: &Basis) -> Option<&Case> {
    let contents = || basis.cases.iter().filter_map(|case| Some((case, case.content.as_ref()?)));
    let asking = basis.limits.iter().filter(|limit| contents().any(|(case, content)| asks(limit, case, content)));
    let missing = asking.flat_map(|limit| contents().filter(move |(case, content)| misses(limit, case, content)));
    missing.map(|(case, _)| case).reduce(|a, b| if b.feed.q > a.feed.q { b } else { a })
}

/// Says of the stage where it stands when the levels ask for a pump that may stand behind the separator: all that this pump
/// delivers comes to a stage behind it, more than the water for which it is sized.
pub(crate) fn beside_pump(train: &mut Train, basis: &Basis, system: System) {
    let Some(pumped) = basis.design_flow() else { return };
    for stage in train.stages.iter_mut().filter(|stage| stage.kind == StageKind::Polisher) {
        let sized = match &stage.size {
            Some((_, Arg::Number(flow), _)) => *flow,
            _ => 0.0,
        };
        if sized < LIKE * pumped.q.si() {
            stage.why.push_str(&format!(
                "; with a pump behind the separator it has to stand ahead of that pump, or be sized for the {} that the pump delivers whenever it runs",
                print::in_prose(pumped.q.si(), system.pick(FLOW_UNITS))
            ));
        }
    }
}

/// From this share of a flow on a stage that is sized for another is as good as sized for it. Judgement.
const LIKE: f64 = 0.98;

/// Below this share of the flow behind the common unit a polisher for one water alone is worth a word. Judgement.
const SMALLER: f64 = 0.8;

/// Whether emulsified oil is more than a limit allows, so that it is that which the polisher would have to take.
fn splits(limit: &LimitState, case: &Case, content: &Content) -> bool {
    let found = passing(limit, case, content);
    limit.pollutant.gravity == Gravity::Touches
        && content.emulsified.q > content.dissolved.q
        && found.fixed > found.against
}

/// Whether a water is not within a limit before any separator.
fn misses(limit: &LimitState, case: &Case, content: &Content) -> bool {
    if limit.pollutant.gravity == Gravity::Touches {
        let found = passing(limit, case, content);
        found.influent > found.against
    } else {
        asks(limit, case, content)
    }
}

/// Whether a limit asks for it behind a water of this content.
fn asks(limit: &LimitState, case: &Case, content: &Content) -> bool {
    if limit.statistic.q == Statistic::RigTest || !case.is_held_against(limit) {
        return false;
    }
    let found = passing(limit, case, content);
    match limit.pollutant.gravity {
        Gravity::Touches => {
            found.influent > found.against && (found.total > found.against || found.against < plate_floor().value)
        }
        Gravity::Partly if limit.pollutant.is_suspended_solids() => {
            let peak = if found.at_peak { case.peak_for(limit).q.si() } else { 1.0 };
            content.solids.q * ratio(peak) > found.against
        }
        Gravity::Partly | Gravity::Cannot => true,
    }
}
