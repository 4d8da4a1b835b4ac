//! Finding the unit: the smallest of the range that no rule bars, several in parallel if one will
//! not do, or one made to measure.

use crate::arrangement::{Wanted, by_size, wanted};
use crate::because::Because;
pub use crate::candidate::{Candidate, barred_by};
use crate::condition::OnCondition;
pub use crate::condition::{Condition, not_more};
use crate::offered::Offered;
use crate::shortcoming::{ANSWERED_AHEAD, Barrier, Shortcoming};
use stillrise_checks::rules::{alarm_after_loss, oil_cap_too_thin, plate_area_short};
use stillrise_checks::{Rule, Subject, bars_pick};
use stillrise_design::arrangements::Arrangement;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{Design, complete};
use stillrise_design::performance::Depth;
use stillrise_design::train::{Made, Source};
use stillrise_design::{Off, Stop, WhatIf};
use stillrise_units::catalog::IN;
use stillrise_units::{Concentration, Length, Typed};

/// Most units in parallel that are tried from a range.
pub const MOST_IN_PARALLEL: u32 = 4;

/// How a unit was found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum How {
    /// A row of the range, by its place.
    Row(usize),
    /// Dimensions in the enquiry.
    Stated,
    /// Made to measure.
    Custom(Made),
}

/// The unit taken.
#[derive(Debug, Clone, PartialEq)]
pub struct Pick {
    /// How it was found.
    pub how: How,
    /// How many in parallel.
    pub count: u32,
    /// Why this one.
    pub because: Because,
    /// Whether nothing bars it; else it will do only on a condition.
    pub fits: bool,
    /// On which.
    pub condition: Option<Condition>,
}

impl Pick {
    /// Where its dimensions come from.
    #[must_use]
    pub fn source<'a>(&self, enquiry: &'a Enquiry, range: &'a Range) -> Source<'a> {
        match (self.how, &enquiry.unit.dimensions) {
            (How::Row(row), _) if row < range.models.len() => Source::Row(range, &range.models[row]),
            (How::Stated, Some(model)) => Source::Stated(model),
            (How::Custom(made), _) => Source::Custom(made),
            _ => Source::Custom(Made::first()),
        }
    }
    /// The price of all of them in the range's currency; `None` where the range states none.
    #[must_use]
    pub fn price(&self, range: &Range) -> Option<f64> {
        let How::Row(row) = self.how else { return None };
        Some(range.models.get(row)?.price.q()?.si() * f64::from(self.count))
    }
    /// Its name.
    #[must_use]
    pub fn name(&self, range: &Range) -> String {
        self.offered(range).name()
    }
    /// What tells it from others.
    #[must_use]
    pub fn offered(&self, range: &Range) -> Offered {
        offered(self.how, self.count, range)
    }
}

/// What tells so many of a unit from others.
fn offered(how: How, count: u32, range: &Range) -> Offered {
    match how {
        How::Row(row) => {
            let model = range.models.get(row).and_then(|m| m.model.0.clone()).unwrap_or_default();
            Offered::Row { row, model, count }
        }
        How::Stated => Offered::Stated(count),
        How::Custom(_) => Offered::Made(count),
    }
}

/// Tries a unit without keeping a trail.
#[must_use]
pub fn try_unit(
    enquiry: &Enquiry,
    what_if: &WhatIf,
    begun: &Design,
    source: &Source<'_>,
    count: u32,
    depth: Depth,
) -> Design {
    complete(&mut Off, what_if, enquiry, begun.clone(), source, count, depth)
}

/// What bars a design from being picked: each rule's title and, if it is read, what it says.
#[must_use]
pub fn bars(enquiry: &Enquiry, design: &Design, read: bool) -> Vec<(String, String)> {
    bars_pick(&Subject { enquiry, design, ledger: None, read })
        .into_iter()
        .map(|(rule, says)| (rule.title.to_owned(), says))
        .collect()
}

/// Total oil out, expected, in the worst case.
#[must_use]
pub fn effluent(design: &Design) -> Option<Concentration> {
    design.performance.as_ref().and_then(|p| p.worst()).map(|r| r.total.expected.q)
}

/// Finds the unit, and the neighbours to show beside it.
///
/// `begun` is the design up to its basis. `near` is a pick known to be close, with its design under this
/// what-if: only its neighbour is tried first, which gives the same answer sooner.
#[must_use]
pub fn pick(
    enquiry: &Enquiry,
    range: &Range,
    what_if: &WhatIf,
    begun: &Design,
    near: Option<(&Pick, &Design)>,
) -> (Option<Pick>, Vec<Candidate>) {
    let mut pick = found(enquiry, range, what_if, begun, near);
    // What the enquiry itself names has no neighbours.
    let named = enquiry.unit.dimensions.is_some() || enquiry.unit.model.is_some();
    // Beside the one taken stand those of its own arrangement.
    let mut wanted = wanted(enquiry, range, what_if, begun);
    if let Some(Pick { how: How::Row(row), .. }) = &pick
        && let Some(model) = range.models.get(*row)
    {
        wanted.arrangement = Arrangement::of(model);
    }
    let ask = Ask { enquiry, range, what_if, begun, near, wanted };
    let candidates = pick.as_ref().filter(|_| !named).map_or_else(Vec::new, |pick| ask.neighbours(pick));
    // Of several reasons against the one below the plainest is told, the same wherever it is.
    let below = candidates.iter().position(|c| c.taken).and_then(|at| at.checked_sub(1));
    let reason = below.and_then(|at| candidates[at].barred.as_ref()).map(|(barrier, _)| *barrier);
    if let (Some(pick), Some(reason)) = (pick.as_mut().filter(|pick| pick.fits), reason)
        && let Because::Smallest { below: Some(told), .. } = &mut pick.because
    {
        *told = reason;
    }
    (pick, candidates)
}

/// The same without neighbours, where nobody looks at them.
#[must_use]
pub fn found(
    enquiry: &Enquiry,
    range: &Range,
    what_if: &WhatIf,
    begun: &Design,
    near: Option<(&Pick, &Design)>,
) -> Option<Pick> {
    begun.basis.as_ref()?;
    let count = enquiry.unit.count.unwrap_or(1);
    let told = |how, because| Some(Pick { how, count, because, fits: true, condition: None });
    if enquiry.unit.dimensions.is_some() {
        return told(How::Stated, Because::Stated);
    }
    if let Some(model) = &enquiry.unit.model.0 {
        let row = range.models.iter().position(|m| m.model.as_ref() == Some(model));
        return row.and_then(|row| told(How::Row(row), Because::Named));
    }
    // What is taken on a condition is not searched for again for each answer: it stays, and whoever prints the answer
    // says so.
    if let Some(near) = near.map(|(pick, _)| pick).filter(|pick| !pick.fits) {
        return Some(near.clone());
    }
    let wanted = wanted(enquiry, range, what_if, begun);
    let ask = |wanted| Ask { enquiry, range, what_if, begun, near, wanted };
    // Where the levels ask for one in the ground and none of those will do, a tank with what speaks against it is better than
    // nothing.
    ask(wanted).of_its_kind().or_else(|| ask(wanted.or_else()?).of_its_kind())
}

impl Ask<'_> {
    /// The unit of the arrangement that is looked for: of the range, on a condition, or made to measure.
    fn of_its_kind(&self) -> Option<Pick> {
        let (ask, enquiry) = (self, self.enquiry);
        let mut on_condition = OnCondition::default();
        if *enquiry.unit.custom != Some(true)
            && let Some(found) = ask.among_rows(&mut on_condition)
        {
            return Some(found);
        }
        // A unit of the range on a condition goes before one made to measure.
        if on_condition.ahead.is_none()
            && on_condition.limit.is_none()
            && self.wanted.arrangement.is_set_up()
            && let Some(pick) = ask.custom(&mut on_condition)
        {
            return Some(pick);
        }
        on_condition.best(enquiry.unit.count.0)
    }
}

/// What a search goes by.
pub(crate) struct Ask<'a> {
    pub(crate) enquiry: &'a Enquiry,
    pub(crate) range: &'a Range,
    pub(crate) what_if: &'a WhatIf,
    pub(crate) begun: &'a Design,
    pub(crate) near: Option<(&'a Pick, &'a Design)>,
    /// The arrangement that is looked for.
    pub(crate) wanted: Wanted,
}

impl Ask<'_> {
    fn row(&self, row: usize, count: u32) -> Option<Shortcoming> {
        self.shortcoming(&Source::Row(self.range, &self.range.models[row]), count)
    }

    /// Rows of the arrangement that is looked for, from small to large.
    pub(crate) fn rows(&self) -> Vec<usize> {
        let mut rows = by_size(self.range);
        rows.retain(|row| Arrangement::of(&self.range.models[*row]) == self.wanted.arrangement);
        rows
    }

    fn among_rows(&self, on_condition: &mut OnCondition) -> Option<Pick> {
        let rows = self.rows();
        // A row stays the pick while nothing speaks against it and something speaks against the one below.
        if let Some((near @ Pick { how: How::Row(row), count: 1, .. }, design)) = self.near
            && rows.contains(row)
        {
            let below = rows.iter().position(|r| r == row).and_then(|place| place.checked_sub(1)).map(|p| rows[p]);
            if self.judged(design).is_none() && below.is_none_or(|b| self.row(b, 1).is_some()) {
                return Some(near.clone());
            }
        }
        let counts = match self.enquiry.unit.count.0 {
            Some(count) => count..=count,
            None => 1..=MOST_IN_PARALLEL,
        };
        for count in counts {
            let mut below: Option<Barrier> = None;
            for row in &rows {
                let pick = |because| Pick { how: How::Row(*row), count, because, fits: true, condition: None };
                let Some(short) = self.row(*row, count) else {
                    return Some(pick(Because::Smallest { wanted: self.wanted, below }));
                };
                if let Some(condition) = &short.on {
                    on_condition.offer(pick(Because::Nearest), condition, short.limits);
                }
                below = Some(short.bars);
            }
            // What something ahead can answer is not answered by more units.
            if on_condition.ahead.is_some() {
                return None;
            }
        }
        None
    }

    /// A pick from the range with one size below and one above.
    fn neighbours(&self, pick: &Pick) -> Vec<Candidate> {
        let rows = self.rows();
        let place = match pick.how {
            How::Row(row) if self.near.is_none() => rows.iter().position(|r| *r == row),
            _ => None,
        };
        let Some(place) = place else { return Vec::new() };
        let shown = place.saturating_sub(1)..=(place + 1).min(rows.len() - 1);
        shown.map(|p| self.candidate(rows[p], pick.count, p == place)).collect()
    }

    /// A row of the range as it is shown beside the one taken.
    fn candidate(&self, row: usize, count: u32, taken: bool) -> Candidate {
        let source = Source::Row(self.range, &self.range.models[row]);
        let design = try_unit(self.enquiry, self.what_if, self.begun, &source, count, Depth::Limits);
        let unit = offered(How::Row(row), count, self.range);
        // What something ahead could answer is not what bars it, where it is not shown to keep a limit either.
        let barred = match self.judged(&design) {
            Some(short) if short.on == Some(Condition::Limit) => Some((short.bars, String::new())),
            Some(_) => {
                let all = bars_pick(&Subject { enquiry: self.enquiry, design: &design, ledger: None, read: true });
                // Where plates are short that is the plainest of several reasons.
                let plates = all.iter().find(|(rule, _)| **rule == plate_area_short::RULE);
                let hard = plates.or_else(|| all.iter().find(|(rule, _)| !rule.is_among(ANSWERED_AHEAD)));
                hard.or(all.first()).map(|(rule, says)| (Barrier::Rule(rule), says.clone()))
            }
            None => None,
        };
        Candidate { unit, taken, barred, effluent: effluent(&design) }
    }

    /// A unit made to measure: lengthened until nothing speaks against it, then more in parallel.
    fn custom(&self, on_condition: &mut OnCondition) -> Option<Pick> {
        let counts = match self.enquiry.unit.count.0 {
            Some(count) => count..=count,
            None => 1..=MOST_IN_PARALLEL,
        };
        let asked = *self.enquiry.unit.custom == Some(true);
        let because = if asked { Because::MadeAsAsked } else { Because::MadeAsNoneWillDo };
        for count in counts {
            for deeper in DEEPER.map(|inches| Length::of(inches, &IN)) {
                let mut shallow = false;
                for stretch in STRETCHES {
                    let how = How::Custom(Made { stretch, deeper });
                    let pick = Pick { how, count, because: because.clone(), fits: true, condition: None };
                    let source = pick.source(self.enquiry, self.range);
                    let Some(short) = self.shortcoming(&source, count) else { return Some(pick) };
                    shallow |= matches!(short.bars, Barrier::Rule(rule) if rule.is_among(TOO_SHALLOW));
                    if let Some(condition) = &short.on {
                        on_condition.offer(pick, condition, short.limits);
                    }
                }
                if !shallow {
                    break;
                }
            }
        }
        None
    }
}

/// How far the pack of a unit made to measure is lengthened, one after the other.
const STRETCHES: [f64; 5] = [1.0, 1.2, 1.5, 2.0, 3.0];
/// How much deeper the water above it is made, one after the other, inches, where a rule says that the oil has no room.
const DEEPER: [f64; 3] = [0.0, 10.0, 20.0];
/// Rules that more water above the pack answers.
static TOO_SHALLOW: &[&Rule] = &[&alarm_after_loss::RULE, &oil_cap_too_thin::RULE];

/// Why no unit could be taken at all.
#[must_use]
pub fn no_unit(enquiry: &Enquiry, range: &Range) -> Stop {
    let names: Vec<&str> = range.models.iter().filter_map(|m| m.model.as_deref()).collect();
    Stop::said(
        "picking a unit",
        format!(
            "the model \"{}\" is not in the range; it holds {}",
            enquiry.unit.model.as_deref().unwrap_or("?"),
            names.join(", ")
        ),
    )
}
