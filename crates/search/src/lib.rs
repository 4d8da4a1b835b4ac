//! Settles a job: picks a unit from a range or sizes one, and ranks the open questions.

pub mod alternatives;
pub mod arrangement;
pub mod asked;
pub mod because;
mod candidate;
mod condition;
pub mod diagnosis;
pub mod offered;
pub mod pick;
pub mod questions;
pub mod remedies;
pub mod results;
pub mod risk;
pub mod shortcoming;
pub mod shortfall;
pub mod side_by_side;
pub mod site_levels;
pub mod sizes;
pub mod standing;
mod weakest;
mod words;

use alternatives::Alternative;
use asked::Named;
use diagnosis::Diagnosis;
use pick::{Candidate, Pick};
use questions::Question;
use risk::Risk;
use shortfall::Shortfall;
use side_by_side::{both, on_threads};
use standing::Standing;
use std::sync::OnceLock;
use stillrise_checks::{Judged, Rule, Subject, judge};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{begin, complete};
use stillrise_design::performance::Depth;
use stillrise_design::{Job, Ledger, Stop, WhatIf};
use words::Heard;

/// Section of the trail that holds what a rating takes from the time before the changes.
const BEFORE: &str = "study, rating, before the changes";

/// A job with its unit, its verdicts and its questions.
pub struct Settled {
    /// The job as it is today, with the whole trail.
    pub job: Job,
    /// The same around a unit that stands as its plant was before what was changed, where that is another.
    before: Option<Job>,
    /// What every rule says.
    pub verdicts: Vec<Judged>,
    /// The unit and how it was found.
    pub pick: Option<Pick>,
    /// That nothing fits, and what would do, where no unit was taken.
    pub shortfall: Option<Shortfall>,
    /// Other trains than the one asked for, each with its own result, once they were worked.
    pub alternatives: Vec<Alternative>,
    /// What became of what somebody named beforehand.
    pub named: Named,
    /// Questions that stand whatever the numbers, those first that can turn the job.
    pub standing: Vec<Standing>,
    /// Units looked at: one below, the one taken, one above.
    pub candidates: Vec<Candidate>,
    /// How sure the prediction is, once it was studied.
    pub risk: Option<Risk>,
    /// What explains what was observed, once that was asked.
    pub diagnosis: Option<Diagnosis>,
    /// What the questions are ranked by.
    heard: Option<Heard>,
    /// The range to pick from when the enquiry names none.
    demo: Range,
    /// Open questions, ranked when first asked for.
    questions: OnceLock<Vec<Question>>,
}

impl Settled {
    /// What a rule says.
    #[must_use]
    pub fn judged(&self, rule: &'static Rule) -> Option<&Judged> {
        self.verdicts.iter().find(|judged| *judged.rule == *rule)
    }
    /// Whether a rule fails that nobody accepted or took over.
    #[must_use]
    pub fn fails(&self) -> bool {
        self.verdicts.iter().any(Judged::stands_failed)
    }
    /// Open questions, the one that moves the result most first. They are ranked when first asked for: each answer is a
    /// design of its own.
    #[must_use]
    pub fn questions(&self) -> &[Question] {
        self.questions.get_or_init(|| self.ranked())
    }
    fn ranked(&self) -> Vec<Question> {
        let Job { enquiry, design, ledger } = &self.job;
        let range = enquiry.range.as_ref().unwrap_or(&self.demo);
        match &self.pick {
            Some(pick) => on_threads(|| questions::rank(enquiry, range, design, ledger, pick, self.heard.as_ref())),
            None => questions::by_basis(enquiry, design, ledger),
        }
    }
    /// Studies how sure the prediction is, with so many samples; nothing where there is none.
    pub fn study(&mut self, samples: usize) {
        self.risk = risk::risk(&self.job, samples, &risk::patient);
        // More rows know the shares better than the few behind the first ranking.
        if let Some(risk) = &self.risk {
            let mut questions = self.questions.take().unwrap_or_else(|| self.ranked());
            questions::refine(&mut questions, risk);
            self.questions = OnceLock::from(questions);
        }
    }
    /// Works the other trains that make sense beside the one asked for. `demo` is the range to pick from when the enquiry
    /// names none.
    pub fn work_alternatives(&mut self, demo: &Range) {
        self.alternatives = alternatives::alternatives(self, demo);
    }
    /// Finds what explains what was observed at the unit, and works the leading explanation into the trail.
    ///
    /// # Errors
    /// [`Stop`] when nothing was observed, or the chain has no performance.
    pub fn diagnose(&mut self) -> Result<(), Stop> {
        // The questions are those of the design, not those of what is worked to explain it.
        let questions = self.questions.take().unwrap_or_else(|| self.ranked());
        self.questions = OnceLock::from(questions);
        let mut found = diagnosis::diagnose(self.rated())?;
        if !found.explanations.is_empty() {
            found.worked = match &self.before {
                None => {
                    let mut trail = core::mem::take(&mut self.job.ledger);
                    let worked = diagnosis::work(&mut trail, &self.job, &found);
                    self.job.ledger = trail;
                    worked?
                }
                Some(before) => {
                    let mut trail = before.ledger.clone();
                    let from = trail.entries.len();
                    let worked = diagnosis::work(&mut trail, before, &found)?;
                    self.job.ledger.adopt(&trail, from, BEFORE, &worked)
                }
            };
        }
        self.diagnosis = Some(found);
        Ok(())
    }
    /// What a rating starts from: the plant before anything was changed.
    #[must_use]
    pub fn rated(&self) -> &Job {
        self.before.as_ref().unwrap_or(&self.job)
    }
    /// What the rules look at.
    #[must_use]
    pub fn subject(&self) -> Subject<'_> {
        Subject { enquiry: &self.job.enquiry, design: &self.job.design, ledger: Some(&self.job.ledger), read: true }
    }
}

/// The job around the unit taken as the plant was before what was changed.
fn before(enquiry: &Enquiry, range: &Range, taken: &Pick) -> Job {
    let nothing = WhatIf::default();
    let mut ledger = Ledger::default();
    let begun = begin(&mut ledger, &nothing, enquiry);
    let source = taken.source(enquiry, range);
    let design = complete(&mut ledger, &nothing, enquiry, begun, &source, taken.count, Depth::Limits);
    Job { enquiry: enquiry.clone(), design, ledger }
}

/// Settles an enquiry as its plant is today. `demo` is the range to pick from when the enquiry names none.
#[must_use]
pub fn settle(enquiry: &Enquiry, demo: &Range) -> Settled {
    on_threads(|| settled(enquiry, demo))
}

fn settled(enquiry: &Enquiry, demo: &Range) -> Settled {
    let today = enquiry.today();
    let (written, enquiry) = (enquiry, today.as_ref().unwrap_or(enquiry));
    let range = enquiry.range.as_ref().unwrap_or(demo);
    let nothing = WhatIf::default();
    let mut ledger = Ledger::default();
    let mut design = begin(&mut ledger, &nothing, enquiry);
    let ((mut pick, candidates), named) =
        both(|| pick::pick(enquiry, range, &nothing, &design, None), || asked::named(enquiry, range, &design));
    let mut short = None;
    if let Some(taken) = &pick {
        let begun = design.clone();
        design =
            complete(&mut ledger, &nothing, enquiry, design, &taken.source(enquiry, range), taken.count, Depth::Full);
        // A unit of which nothing can be said is no offer.
        if design.performance.is_none() {
            short = shortfall::shortfall(enquiry, range, &begun, Some(taken));
            design.stops.push(shortfall::stop());
            design.train = None;
            pick = None;
        }
    } else if design.basis.is_some() && enquiry.unit.model.is_some() {
        design.stops.push(pick::no_unit(enquiry, range));
    } else {
        short = shortfall::shortfall(enquiry, range, &design, None);
        // Where nothing comes near either, that no unit was found is said all the same.
        if short.is_some() || design.basis.is_some() {
            design.stops.push(shortfall::stop());
        }
    }
    let earlier = written.before_changes();
    let differs = today.is_some() || earlier.is_some();
    let rated = pick.as_ref().filter(|_| differs && written.unit_stands() && written.is_observed());
    let before = rated.map(|taken| before(earlier.as_ref().unwrap_or(written), range, taken));
    let heard = words::hear(enquiry, risk::ready(enquiry), &design, &ledger);
    if let Some(heard) = &heard {
        words::settle(enquiry, &mut design, &mut ledger, heard);
    }
    let job = Job { enquiry: enquiry.clone(), design, ledger };
    let verdicts =
        judge(&Subject { enquiry: &job.enquiry, design: &job.design, ledger: Some(&job.ledger), read: true });
    Settled {
        job,
        before,
        verdicts,
        pick,
        shortfall: short,
        alternatives: Vec::new(),
        named,
        standing: standing::standing(enquiry),
        candidates,
        risk: None,
        diagnosis: None,
        heard,
        demo: demo.clone(),
        questions: OnceLock::new(),
    }
}
