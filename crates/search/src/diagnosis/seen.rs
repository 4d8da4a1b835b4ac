//! One occasion beside what the unit should have done, and what of it lies beyond the basis.

use super::situation::Occasion;
use stillrise_design::enquiry::blocks::Observed;
use stillrise_design::performance::removal::Removal;
use stillrise_units::{Concentration, Flow, Temperature, Typed};

/// One occasion beside what the unit should have done.
#[derive(Debug, Clone)]
pub struct Seen {
    /// Its name.
    pub name: String,
    /// What was observed, in the enquiry or by a laboratory.
    pub observed: Observed,
    /// Whether the oil that left was detected; else less than the number was there.
    pub detected: bool,
    /// Whether it belongs to the period in which the unit ran well.
    pub good: bool,
    /// Flow, influent and temperature, as measured or as taken, and which were measured. After a change that states the
    /// flow since, that flow; what should have left is reckoned without the change.
    pub flow: (Flow, bool),
    /// The change that states the flow, by its place in the enquiry.
    pub flow_by: Option<usize>,
    /// Oil that arrived.
    pub influent: (Concentration, bool),
    /// Temperature of the water.
    pub temperature: (Temperature, bool),
    /// Oil that left, as measured.
    pub measured: Option<Concentration>,
    /// Oil that should have left, if nothing were the matter.
    pub expected: Concentration,
    /// What was measured and lies beyond the basis: more flow, stronger influent, colder water.
    pub beyond: Vec<Beyond>,
    /// Oil that should have left with these at their values in the basis; `None` where nothing lies beyond it.
    pub within: Option<Concentration>,
}

/// A measured condition that the unit was not designed for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Beyond {
    /// Flow, over that of the basis.
    Flow(f64),
    /// Oil that arrives, over that of the basis.
    Influent(f64),
    /// Water colder than the coldest of the basis, by so many kelvin.
    Colder(f64),
}

/// More than this over the basis is beyond it.
const OVER: f64 = 1.1;

pub(super) fn seen(o: &Occasion<'_>, changed: Option<(usize, Flow)>, removals: &[Removal]) -> Seen {
    // The basis is all its cases: what one of them has lies within it.
    let most = |of: &dyn Fn(&Removal) -> f64| removals.iter().map(of).fold(0.0, f64::max);
    let (most_flow, most_oil) = (most(&|r| r.flow.q.si()), most(&|r| r.content.total.q.si()));
    let (flow, influent, temperature) = o.taken();
    let mut beyond = Vec::new();
    let mut back = o.usual();
    let over = flow.si() / most_flow;
    if over > OVER {
        beyond.push(Beyond::Flow(over));
        back.flow /= over;
    }
    let over = influent.si() / most_oil;
    if over > OVER {
        beyond.push(Beyond::Influent(over));
        back.influent /= over;
    }
    let colder = o.coldest().si() - temperature.si();
    if colder > 1.0 {
        beyond.push(Beyond::Colder(colder));
        back.colder -= colder;
    }
    let within = (!beyond.is_empty()).then(|| Concentration::from_si(o.effluent(&back)));
    Seen {
        name: o.observed.name.0.clone().unwrap_or_default(),
        observed: o.observed.clone(),
        detected: o.detected,
        good: o.good,
        flow: (changed.map_or(flow, |(_, rate)| rate), o.observed.flow.is_given()),
        flow_by: changed.map(|(k, _)| k),
        influent: (influent, o.observed.oil_in.is_given()),
        temperature: (temperature, o.observed.temperature.is_given()),
        measured: o.observed.oil_out.q(),
        expected: Concentration::from_si(o.effluent(&o.usual())),
        beyond,
        within,
    }
}
