//! How sure the prediction is: the uncertain inputs drawn together, run through the same chain as the
//! design itself, around the unit taken.

mod chain;
pub mod indices;
pub mod inputs;
mod laid;
mod reading;
pub mod sample;
mod shares;
mod spread;
pub mod swings;

use crate::side_by_side::side_by_side;
pub(crate) use chain::ready;
use indices::Share;
use inputs::Input;
use laid::laid_from;
pub(crate) use reading::Reading;
use sample::Hypercube;
pub use spread::Spread;
use spread::spread;
use std::sync::Arc;
use stillrise_design::basis::Ready;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::job::Design;
use stillrise_design::performance::limit::{held, worst};
use stillrise_design::performance::passage::Fixed;
use stillrise_design::performance::{Depth, State};
use stillrise_design::train::{Source, Train};
use stillrise_design::{Job, Off, Stop, WhatIf};
use stillrise_units::{Typed, math};
use swings::Swing;

/// Samples of a study when nobody says how many: the same in the terminal and in the report, so that both say the same.
pub const SAMPLES: usize = 2500;
/// Rows of the study that finds the shares, as a part of the samples and at least: each input costs as many
/// designs.
const SHARE_ROWS: (usize, usize) = (6, 100);
/// Rows between two looks at the watch.
const PART: usize = 500;
/// A ten-thousandth of a mg/L, in kg/m3, is nothing.
const NOTHING: f64 = 1e-7;
/// An input that changes nothing in so many rows changes nothing.
const PROBE_ROWS: usize = 12;

/// A limit over all samples.
#[derive(Debug, Clone, PartialEq)]
pub struct LimitRisk {
    /// Which limit, by its place in the basis.
    pub limit: usize,
    /// What is held against it.
    pub held: Spread,
    /// Share of the samples that keep it, as expected.
    pub kept: f64,
    /// Share that keeps it even if everything mixes.
    pub kept_mixed: f64,
}

/// One input and its share in the spread of the effluent's logarithm.
#[derive(Debug, Clone, PartialEq)]
pub struct Carrier {
    /// The input.
    pub input: Input,
    /// Its share.
    pub share: Share,
}

/// What the shares are shares of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Governs {
    /// The number held against this limit, by its place in the basis: the tightest of those predicted.
    Limit(usize),
    /// Total oil out in the worst case.
    Effluent,
}

/// How sure the prediction is.
#[derive(Debug, Clone, PartialEq)]
pub struct Risk {
    /// Samples drawn.
    pub samples: usize,
    /// Of these, how many the chain gave no answer for.
    pub stopped: usize,
    /// Total oil out in the worst case: everything ideal, as expected, everything mixed.
    pub rungs: [Spread; 3],
    /// As expected, with the mesh counted; `None` without one.
    pub with_mesh: Option<Spread>,
    /// Total oil out by case, cold, at the end of the interval.
    pub cases: Vec<(String, Spread)>,
    /// Free oil out in the worst case.
    pub free: Spread,
    /// The limits that are predicted.
    pub limits: Vec<LimitRisk>,
    /// What the shares are shares of.
    pub governs: Governs,
    /// The inputs that carry a share, the largest total first.
    pub carriers: Vec<Carrier>,
    /// Inputs that were drawn and move nothing.
    pub idle: Vec<Input>,
    /// Rows of the study that found the shares.
    pub rows: usize,
    /// Inputs at the ends of their ranges, one at a time, the one that moves the effluent most first.
    pub swings: Vec<Swing>,
}

/// Stops a study: asked between samples with how many are done, of how many.
pub type Watch<'a> = &'a (dyn Fn(usize, usize) -> bool + Sync);

/// Never stops.
#[must_use]
pub fn patient(_: usize, _: usize) -> bool {
    true
}

/// What one design gives.
struct Sampled {
    /// Ideal, expected, mixed, with mesh.
    rungs: [f64; 4],
    free: f64,
    cases: Vec<f64>,
    /// Held against each predicted limit: expected, mixed, and the limit's own number.
    limits: Vec<[f64; 3]>,
}

/// The chain around one unit, ready to be run with other inputs.
pub(crate) struct Model<'a> {
    enquiry: &'a Enquiry,
    design: &'a Design,
    train: &'a Train,
    /// What the train is laid from again in every sample, where a dimension is uncertain.
    laid_from: Option<Source<'a>>,
    ready: Option<Arc<Ready<'a>>>,
    fixed: Fixed,
    inputs: Vec<Input>,
    /// Places of the inputs in the order of their keys.
    order: Vec<usize>,
    /// Cases with a known content, by place, and limits predicted.
    cases: Vec<usize>,
    limits: Vec<usize>,
    governs: Governs,
}

impl<'a> Model<'a> {
    /// Around the unit of a design; `None` when none was laid out.
    pub(crate) fn new(
        enquiry: &'a Enquiry,
        ready: Option<Arc<Ready<'a>>>,
        design: &'a Design,
        inputs: Vec<Input>,
    ) -> Option<Self> {
        let (basis, laid, p) = (design.basis.as_ref()?, design.train.as_ref()?, design.performance.as_ref()?);
        let cases = (0..basis.cases.len()).filter(|k| basis.cases[*k].content.is_some()).collect();
        let predicted: Vec<_> = p.limits.iter().filter(|l| l.predicted).collect();
        let ratio = |l: &&stillrise_design::performance::limit::LimitVerdict| l.expected.q.si() / l.against.q.si();
        let governs = predicted
            .iter()
            .max_by(|a, b| ratio(a).total_cmp(&ratio(b)))
            .map_or(Governs::Effluent, |l| Governs::Limit(l.limit));
        Some(Self {
            enquiry,
            design,
            train: laid,
            laid_from: laid_from(enquiry, laid, &inputs),
            ready,
            fixed: Fixed::new(&mut Off),
            order: {
                let mut order: Vec<usize> = (0..inputs.len()).collect();
                order.sort_by(|a, b| inputs[*a].key.cmp(&inputs[*b].key));
                order
            },
            inputs,
            cases,
            limits: predicted.iter().map(|l| l.limit).collect(),
            governs,
        })
    }

    /// Room for the what-ifs of one thread.
    pub(crate) fn space(&self) -> WhatIf {
        WhatIf(self.inputs.iter().map(|i| (i.key.clone(), i.now.clone())).collect())
    }

    /// One design with these inputs.
    fn run(&self, depth: Depth, row: impl Fn(usize) -> f64, space: &mut WhatIf) -> Option<Sampled> {
        self.draw(row, space);
        self.sampled(depth, space).ok().flatten()
    }

    /// Draws all inputs into the space.
    pub(super) fn draw(&self, row: impl Fn(usize) -> f64, space: &mut WhatIf) {
        // The space holds the keys in order, as does this list of places.
        for (slot, k) in space.0.values_mut().zip(&self.order) {
            *slot = self.inputs[*k].range.quantile(row(*k));
        }
    }

    fn sampled(&self, depth: Depth, w: &WhatIf) -> Result<Option<Sampled>, Stop> {
        let off = &mut Off;
        let (basis, removals) = self.leaves(off, depth, w)?;
        let Some(worst) = worst(&removals) else { return Ok(None) };
        let c = &worst.content;
        let total = |left: f64| c.free.q.si() * left + c.emulsified.q.si() + c.dissolved.q.si();
        let study = depth == Depth::Study;
        let ideal = if study { total(worst.passage.ideal(off, &self.fixed).left(off, "")?.q.si()) } else { f64::NAN };
        let mesh = if study && worst.passage.mesh().is_some() {
            total(worst.passage.with_all().left(off, "")?.q.si())
        } else {
            f64::NAN
        };
        let ends = || removals.iter().filter(|r| r.state == State::End);
        // Another answer may bring about other cases: the same one is that of the same waters and pumps, wherever it stands.
        let of_case = |k: &usize| {
            let case = self.design.basis.as_ref().and_then(|b| b.cases.get(*k));
            let same = |r: &&stillrise_design::performance::removal::Removal| {
                case.is_some_and(|case| basis.cases[r.case_index].is_that_of(case))
            };
            ends().find(same).map_or(f64::NAN, |r| r.total.expected.q.si())
        };
        let of_limit = |k: &usize| {
            let mut most = [f64::NEG_INFINITY, f64::NEG_INFINITY, f64::NAN];
            // As the verdict does: an average is no matter of minutes, and a small water is never seen alone.
            let counts = |r: &&stillrise_design::performance::removal::Removal| {
                basis.cases[r.case_index].is_held_against(&basis.limits[*k])
            };
            for end in ends().filter(counts) {
                let h = held(&mut Off, &basis, &removals, &basis.limits[*k], end);
                let mixed = h.mixed.map_or(f64::NAN, |mixed| mixed.q.si());
                most = [most[0].max(h.expected.q.si()), most[1].max(mixed), h.against.q.si()];
            }
            most
        };
        Ok(Some(Sampled {
            rungs: [ideal, worst.total.expected.q.si(), worst.total.mixed.map_or(f64::NAN, |mixed| mixed.q.si()), mesh],
            free: worst.free.expected.q.si(),
            cases: self.cases.iter().map(of_case).collect(),
            limits: self.limits.iter().map(of_limit).collect(),
        }))
    }

    /// The logarithm of what the shares are shares of; not a number when the chain stopped.
    fn result(&self, sampled: Option<Sampled>) -> f64 {
        sampled.map_or(f64::NAN, |s| {
            let place = match self.governs {
                Governs::Limit(k) => self.limits.iter().position(|l| *l == k),
                Governs::Effluent => None,
            };
            let number = place.and_then(|k| s.limits.get(k)).map_or(s.rungs[1], |l| l[0]);
            math::ln(number.max(NOTHING))
        })
    }
}

/// Studies how sure the prediction of a settled job is.
///
/// `None` when there is no prediction, or when the watch stopped it.
#[must_use]
pub fn risk(job: &Job, samples: usize, watch: Watch<'_>) -> Option<Risk> {
    let drawn = inputs::inputs(&job.ledger);
    let model = Model::new(&job.enquiry, ready(&job.enquiry), &job.design, drawn.clone())?;
    let samples = samples.max(1);
    // The bands first: one hypercube over everything that is uncertain.
    let rows = (samples / SHARE_ROWS.0).max(SHARE_ROWS.1).min(samples);
    // The samples, and as many rows again for each input.
    let whole = samples + rows * drawn.len();
    let cube = Hypercube::watched(samples, drawn.len(), 2 * drawn.len() as u64, &|| watch(0, whole))?;
    let mut done: Vec<Option<Sampled>> = Vec::with_capacity(samples);
    while done.len() < samples {
        if !watch(done.len(), whole) {
            return None;
        }
        let from = done.len();
        done.extend(side_by_side(
            PART.min(samples - from),
            16,
            || model.space(),
            |i, space| model.run(Depth::Study, |k| cube.row(from + i)[k], space),
        ));
    }
    let sound: Vec<&Sampled> = done.iter().flatten().collect();
    if sound.is_empty() {
        return None;
    }
    let spread = |of: &dyn Fn(&Sampled) -> f64| spread(sound.iter().map(|s| of(s)).collect());
    let p = job.design.performance.as_ref()?;
    let with_mesh = p.worst().is_some_and(|w| w.passage.mesh().is_some()).then(|| spread(&|s| s.rungs[3]));
    let kept = |k: usize, i: usize| {
        sound.iter().filter(|s| s.limits[k][i] <= s.limits[k][2]).count() as f64 / sound.len() as f64
    };
    let name = |k: &usize| job.design.basis.as_ref().map_or_else(String::new, |b| b.cases[*k].name.clone());
    let shares = model.shares(rows, &|_| PROBE_ROWS, &|done, _| watch(samples + done, whole))?;
    let mut carriers = Vec::new();
    let mut idle = Vec::new();
    for (input, share) in drawn.into_iter().zip(shares) {
        // Judged in print: what rounds to nothing carries nothing.
        if share.total < 5e-4 { idle.push(input) } else { carriers.push(Carrier { input, share }) }
    }
    carriers.sort_by(|a, b| b.share.total.total_cmp(&a.share.total));
    Some(Risk {
        samples,
        stopped: samples - sound.len(),
        rungs: [0, 1, 2].map(|k| spread(&move |s| s.rungs[k])),
        with_mesh,
        cases: model.cases.iter().enumerate().map(|(k, case)| (name(case), spread(&move |s| s.cases[k]))).collect(),
        free: spread(&|s| s.free),
        limits: model
            .limits
            .iter()
            .enumerate()
            .map(|(k, limit)| LimitRisk {
                limit: *limit,
                held: spread(&move |s| s.limits[k][0]),
                kept: kept(k, 0),
                kept_mixed: kept(k, 1),
            })
            .collect(),
        governs: model.governs,
        carriers,
        idle,
        rows,
        swings: model.swings(),
    })
}
