//! What is heard beside the calculation before a word on a limit is printed: unconfirmed assumptions, the chance over all
//! that is uncertain, measurements.

use super::limit::{LimitVerdict, Word};
use super::promise::number;
use crate::enquiry::date::Date;
use crate::enquiry::declared::Declared;
use crate::provenance::Val;
use stillrise_units::catalog::PERCENT;
use stillrise_units::{Concentration, Ratio, Typed};

/// What holds a word below the one that the calculation alone says.
#[derive(Debug, Clone, PartialEq)]
pub struct HeldBack {
    /// The word it allows.
    pub word: Word,
    /// By what.
    pub by: By,
}

/// What can hold a word back.
#[derive(Debug, Clone, PartialEq)]
pub enum By {
    /// An assumption that nobody confirmed: at this plausible answer the calculation says the weaker word.
    Assumption {
        /// The key of the enquiry that takes the answer.
        key: String,
        /// How that key is declared.
        declared: Declared,
        /// What is assumed.
        label: String,
        /// The answer, in print; `None` where the chain has no answer for it.
        answer: String,
        /// The word that the calculation says there, which may be weaker than the one it leaves.
        there: Word,
        /// Whether a customer is asked for it; else the value is ours.
        asked: bool,
    },
    /// It is judged by eye: that nothing is seen no number shows.
    Eye,
    /// Too few results keep the limit, once they scatter and what is uncertain is drawn.
    Chance,
    /// What was measured at the unit that stands.
    Measured(Measured),
}

/// Results measured at the unit that stands, beside a limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// Results above the limit; where it is on an average, those of the months whose mean is above it, or all where no
    /// months are told apart.
    pub above: usize,
    /// Results in all.
    pub of: usize,
    /// Their arithmetic mean, where the limit is on an average.
    pub mean: Option<Concentration>,
    /// Their arithmetic mean at most: what was not detected counts with its reporting limit.
    pub at_most: Concentration,
    /// Months whose mean is above a limit on a monthly average, of all that were measured; `None` where they are not told
    /// apart.
    pub months: Option<(usize, usize)>,
    /// The day of the change since which they were taken; `None` where nothing was changed.
    pub since: Option<Date>,
}

/// So many results, all within a limit, show that the unit keeps it whatever a calculation says. Engineering judgement.
const SHOW: usize = 3;

impl Measured {
    /// Whether enough results lie within the limit, and none above, that gravity is seen to keep it.
    #[must_use]
    pub fn shows_it_can(&self) -> bool {
        self.above == 0 && self.of >= SHOW
    }

    /// Whether enough results lie, in the mean, below what by the calculation passes any separator: then less of the oil is
    /// held in the water than it takes.
    #[must_use]
    pub fn disproves(&self, stays: Concentration) -> bool {
        self.of >= SHOW && self.at_most < stays
    }

    /// How they lie, in a phrase: `2 of 4 measured results lie above the limit`.
    #[must_use]
    pub fn says(&self, limit: &str) -> String {
        let Self { above, of, mean, since, .. } = *self;
        let since = since.map_or_else(String::new, |day| format!(" since {day}"));
        if let Some((over, months)) = self.months {
            return if over == 0 {
                format!("the mean of each of the {months} months measured{since} keeps {limit}")
            } else {
                format!("the mean of {over} of the {months} months measured{since} lies above {limit}")
            };
        }
        if above == 0 {
            return match mean.map(number) {
                Some(mean) => format!("the mean of the {of} results measured{since}, {mean}, keeps {limit}"),
                None => format!("all {of} results measured{since} keep {limit}"),
            };
        }
        match mean.map(number) {
            Some(one) if of == 1 => format!("the one result measured{since}, {one}, lies above {limit}"),
            Some(mean) => format!("the mean of the {of} results measured{since}, {mean}, lies above {limit}"),
            None if since.is_empty() => format!("{above} of {of} measured results lie above {limit}"),
            None => format!("{above} of {of} results measured{since} lie above {limit}"),
        }
    }
}

/// How many results keep a limit, when single results, or averages, scatter about their mean and everything that is
/// uncertain is drawn over its range.
#[derive(Debug, Clone, Copy)]
pub struct Chance {
    /// Share of the results.
    pub share: Val<Ratio>,
    /// How many sets of inputs were drawn.
    pub sets: usize,
}

/// Shares of the results that a word asks for: the percentile that permits are written for, and even odds.
/// Our proposal, after the 95th percentile of the EPA Technical Support Document, 1991.
pub const ASKED_OF_KEPT: f64 = 0.95;
/// The same of "likely".
pub const ASKED_OF_LIKELY: f64 = 0.5;
/// Share of the results under which a limit that the calculation too finds passed is called exceeded: as rare as those
/// above a limit that is called kept.
const EXCEEDED: f64 = 1.0 - ASKED_OF_KEPT;

/// The best word that such a share of the results allows.
#[must_use]
pub fn allowed(share: f64) -> Word {
    match share {
        share if share >= ASKED_OF_KEPT => Word::Kept,
        share if share >= ASKED_OF_LIKELY => Word::Likely,
        _ => Word::NotShown,
    }
}

impl Chance {
    /// The best word it allows.
    #[must_use]
    pub fn allows(&self) -> Word {
        allowed(self.share.q.si())
    }
    /// In print: never a certainty that was only sampled.
    #[must_use]
    pub fn percent(&self) -> String {
        let percent = PERCENT.from_si(self.share.q.si());
        match percent {
            p if p > 99.0 => "more than 99 %".to_owned(),
            p if p < 1.0 => "less than 1 %".to_owned(),
            p => format!("{p:.0} %"),
        }
    }
}

/// The calculated word beside what was measured at the unit that stands: gravity has kept what enough results show kept, and
/// what does not rise, in the mean, is no more than what was measured.
#[must_use]
pub fn beside(calculated: Word, measured: Option<&Measured>, stays: Concentration) -> Word {
    match measured {
        Some(m) if m.shows_it_can() || m.disproves(stays) => calculated.min(Word::NotShown),
        _ => calculated,
    }
}

/// The weakest word that an assumption can leave. That gravity cannot keep a limit is said where the calculation says so as
/// it stands; at one plausible answer of several it shows only that nobody knows yet.
pub const WEAKEST_ASSUMED: Word = Word::NotShown;

impl LimitVerdict {
    /// The word that an answer leaves for which the chain has none: a limit within which the water arrives is kept whatever a
    /// unit does, of any other nothing is shown.
    #[must_use]
    pub fn where_stopped(&self) -> Word {
        let within = self.calculated == Word::Kept && (!self.predicted || self.influent.q <= self.against.q);
        if within { Word::Kept } else { Word::NotShown }
    }

    /// Holds the word back by what was found beside the calculation.
    pub fn hold_back(&mut self, mut by: Vec<HeldBack>) {
        let start = beside(self.calculated, self.measured.as_ref(), self.stays_in_the_mean());
        by.retain(|h| h.word > start);
        by.sort_by_key(|h| core::cmp::Reverse(h.word));
        self.word = by.iter().map(|h| h.word).fold(start, Word::max);
        self.held_back = by;
    }

    /// The word in print. What is "not shown" is "exceeded" where results measured lie above the limit, or where the
    /// calculation does and hardly any result would keep it.
    #[must_use]
    pub fn says(&self) -> &'static str {
        if self.word == Word::NotShown && self.is_exceeded() { "exceeded" } else { self.word.text() }
    }

    /// The calculated word in print: what is not shown because what leaves lies above the limit is exceeded by the calculation.
    #[must_use]
    pub fn calculated_says(&self) -> &'static str {
        if self.is_exceeded_by_calculation() { "exceeded" } else { self.calculated.text() }
    }

    /// Whether what leaves lies above the limit by the calculation.
    #[must_use]
    pub fn is_exceeded_by_calculation(&self) -> bool {
        self.predicted && self.calculated == Word::NotShown && self.expected.q > self.against.q
    }

    /// What of the water no separator touches, in the mean: of what is held against a single sample the peak is taken out.
    /// None of what is no oil: results of that say nothing of oil.
    #[must_use]
    pub fn stays_in_the_mean(&self) -> Concentration {
        if !self.predicted {
            return Concentration::from_si(0.0);
        }
        self.stays.q / self.peak.map_or(1.0, |peak| peak.q.si().max(1.0))
    }

    fn is_exceeded(&self) -> bool {
        if let Some(measured) = &self.measured {
            return measured.above > 0;
        }
        let calculated = self.predicted && self.calculated == Word::NotShown && self.expected.q > self.against.q;
        calculated && self.chance.is_some_and(|chance| chance.share.q.si() < EXCEEDED)
    }

    /// Keys of the assumptions that hold the word at the one it is, in order.
    pub fn held_by(&self) -> impl Iterator<Item = &str> {
        self.held_back.iter().filter(|h| h.word == self.word).filter_map(|h| match &h.by {
            By::Assumption { key, .. } => Some(key.as_str()),
            _ => None,
        })
    }

    /// Why this word, in a sentence that counts all of it.
    #[must_use]
    pub fn reason(&self) -> String {
        let because = self.because.trim_end_matches('.');
        let stays = self.stays_in_the_mean();
        if let Some(m) = self.measured.filter(|m| beside(self.calculated, Some(m), stays) != self.calculated) {
            let (of, since) = (m.of, m.since.map_or_else(String::new, |day| format!(" since {day}")));
            if !m.shows_it_can() {
                let also = if m.above > 0 { format!("{}; and ", m.says("the limit")) } else { String::new() };
                return format!(
                    "by the calculation alone it would be \"{}\": {because}. But {also}the {of} results measured{since} are {} in the mean, less than the {} that would not rise in the mean: less of the oil is held in the water than the calculation takes",
                    self.calculated.text(),
                    number(m.at_most),
                    number(stays)
                );
            }
            if !self.predicted {
                return format!(
                    "{because}. But all {of} results measured{since} keep it: so little of it arrives, or something else takes it out"
                );
            }
            return format!(
                "by the calculation alone it would be \"{}\": {because}. But all {of} results measured{since} keep it: the calculation does not describe this unit on this water",
                self.calculated.text()
            );
        }
        let deciding: Vec<&HeldBack> = self.held_back.iter().filter(|h| h.word == self.word).collect();
        let Some(first) = deciding.first() else {
            // Where results measured lie above the limit the calculation comes second, and is said to be one.
            let measured = self.predicted && self.measured.is_some_and(|m| m.above > 0);
            return if measured { format!("by the calculation {because}") } else { because.to_owned() };
        };
        let calculated = self.calculated_says();
        let others = deciding.iter().skip(1).filter(|h| matches!(h.by, By::Assumption { .. })).count();
        let others = match others {
            0 => String::new(),
            1 => "; the same goes for one more figure".to_owned(),
            n => format!("; the same goes for {n} more figures"),
        };
        let but = match &first.by {
            By::Assumption { label, answer, asked, there, .. } => {
                let whose = if *asked { "nobody has confirmed the figure we took for" } else { "it is we who assumed" };
                format!(
                    "{whose} this: {label}. With {answer}, which is plausible too, it is only \"{}\", and that is the verdict{others}",
                    there.text()
                )
            }
            By::Eye => {
                "whether a film is seen is judged by eye, and no number tells that: the one we took is a rule of thumb"
                    .to_owned()
            }
            By::Chance => "single results scatter, and much of the basis is uncertain".to_owned(),
            By::Measured(measured) => measured.says("the limit"),
        };
        format!("by the calculation alone it would be \"{calculated}\": {because}. But {but}")
    }
}
