//! What the stage behind the separator has to do: the flow it passes, what reaches it in each case, and what it must take out
//! to keep each limit.

use super::{StageKind, Train};
use crate::basis::Basis;
use crate::basis::fluids::Season;
use crate::performance::limit::Most;
use crate::performance::promise::Promise;
use crate::performance::{Performance, State};
use crate::provenance::{Trail, Val, choose};
use crate::reckon;
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_units::catalog::{GPM, M3_H, MG_L};
use stillrise_units::{Concentration, Flow, Ratio};

/// What reaches the polisher in one case, coldest water, at the end of the interval.
#[derive(Debug, Clone)]
pub struct Reaches {
    /// The case.
    pub case: String,
    /// Flow through all units.
    pub flow: Val<Flow>,
    /// Free oil, as expected.
    pub free: Val<Concentration>,
    /// Emulsified oil.
    pub emulsified: Val<Concentration>,
    /// Dissolved oil.
    pub dissolved: Val<Concentration>,
    /// All of it, as expected.
    pub total: Val<Concentration>,
    /// All oil that arrives at the unit.
    pub influent: Concentration,
}

/// What it must take out to keep a limit.
#[derive(Debug, Clone)]
pub struct TakesOut {
    /// The limit, by its place in the basis.
    pub limit: usize,
    /// The case in which most leaves.
    pub case: String,
    /// What it is to be laid out for, as the limit counts it: at the influent's peak for a single sample, and no less than the
    /// published floor where that much arrives.
    pub reaches: Val<Concentration>,
    /// What the limit allows, or the mean that it demands.
    pub allows: Val<Concentration>,
    /// What is to be taken out.
    pub takes: Val<Concentration>,
    /// The same as a share of what reaches it.
    pub share: Val<Ratio>,
}

/// The polisher as a demand.
#[derive(Debug, Clone)]
pub struct Demand {
    /// The flow that it must pass.
    pub flow: Val<Flow>,
    /// Whether effluent pumps ahead of it set that flow.
    pub pumped: bool,
    /// What reaches it, case by case.
    pub reaches: Vec<Reaches>,
    /// Solids that reach it, mean over the waters of an average day.
    pub solids: Val<Concentration>,
    /// What it must take out, limit by limit; none where every limit on oil is met by the calculation.
    pub takes: Vec<TakesOut>,
    /// Limits on what is not predicted, by their place in the basis: what reaches it of these is to be sampled.
    pub unpredicted: Vec<usize>,
    /// Whether a spill can come to it, for which it is not sized.
    pub spill: bool,
}

/// Finds what the polisher must do; nothing where there is none.
pub(super) fn demand<T: Trail>(t: &mut T, basis: &Basis, train: &Train, p: &Performance) -> Option<Demand> {
    if !train.stages.iter().any(|stage| stage.kind == StageKind::Polisher) {
        return None;
    }
    t.section("polisher");
    let steady = super::polisher::largest(basis)?.feed;
    let (flow, pumped) = through(t, train, steady);
    let ends = p.removals.iter().filter(|r| r.season == Season::Cold && r.state == State::End);
    let reaches = ends.filter_map(|r| {
        let case = basis.cases.get(r.case_index)?;
        Some(Reaches {
            case: r.case.clone(),
            flow: case.feed,
            free: r.free.expected,
            emulsified: r.content.emulsified,
            dissolved: r.content.dissolved,
            total: r.total.expected,
            influent: r.content.total.q,
        })
    });
    let mut takes = Vec::new();
    for held in p.limits.iter().filter(|l| l.predicted) {
        // It has to take what the strongest water leaves, whichever the weakest word comes from.
        let (reaches, allows) = (laid_out_for(t, &held.most), held.against);
        if reaches.q <= allows.q {
            continue;
        }
        let out = reckon!(t, "to be taken out by the polisher", [MG_L, MG_L], (reaches = reaches, allows = allows) reaches - allows);
        let share = reckon!(t, "share of it that is to be taken out", [PERCENT, PERCENT], (out = out, reaches = reaches) out / reaches);
        takes.push(TakesOut { limit: held.limit, case: held.most.case.clone(), reaches, allows, takes: out, share });
    }
    let unpredicted = basis.limits.iter().enumerate().filter(|(_, limit)| limit.pollutant.gravity != Gravity::Touches);
    Some(Demand {
        flow,
        pumped,
        reaches: reaches.collect(),
        solids: p.storage.solids_out,
        takes,
        unpredicted: unpredicted.map(|(k, _)| k).collect(),
        spill: basis.spill.as_ref().is_some_and(|spill| !spill.is_held_ahead()),
    })
}

/// What it is to be laid out for: what is expected, and no less than the published floor of plate units, below which none is
/// known to lead, but where less arrives.
fn laid_out_for<T: Trail>(t: &mut T, most: &Most) -> Val<Concentration> {
    let least = Promise::least(most.influent.q);
    if most.expected.q >= least {
        return most.expected;
    }
    let among = "what is expected, what arrives, and the published floor of plate units";
    let because = "plates are not known to leave less than the floor, nor more than arrives";
    let label = "reaches the polisher, as it is to be laid out";
    choose(t, label, Some((&MG_L, &MG_L)), least, among, because, &[most.expected.at, most.influent.at])
}

/// The flow of effluent pumps where these are more than what comes.
fn through<T: Trail>(t: &mut T, train: &Train, steady: Val<Flow>) -> (Val<Flow>, bool) {
    let Some(pumps) = &train.unit.pump_out else { return (steady, false) };
    let running = reckon!(t, "flow of the effluent pumps, one in each unit", [GPM, M3_H], (pump = pumps.pump, n = train.count) pump * n);
    if running.q <= steady.q {
        return (steady, false);
    }
    let among = "the largest steady flow that leaves, and what the effluent pumps give while they run";
    let because = "it stands behind the pumps and gets their flow";
    let label = "flow that the polisher must pass";
    (choose(t, label, Some((&GPM, &M3_H)), running.q, among, because, &[steady.at, running.at]), true)
}
