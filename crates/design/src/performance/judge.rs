//! The word on a limit from the numbers that are held against it, why, and what would change it.

use super::limit::Word;
use super::promise::{Promise, floor, number};
use crate::basis::limits::LimitState;
use crate::enquiry::blocks::Statistic;
use stillrise_handbook::fluids::pollutants::{Counts, Gravity};
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed, print};

/// Text that is only made for a reader.
macro_rules! told {
    ($read:ident, $($arg:tt)*) => { if $read { format!($($arg)*) } else { String::new() } };
}

/// What a limit is judged by.
pub(super) struct Found {
    pub(super) expected: Concentration,
    pub(super) mixed: Option<Concentration>,
    pub(super) against: Concentration,
    pub(super) influent: Concentration,
    pub(super) stays: Concentration,
    /// The suspended solids that arrive, on the same footing, where they are what the limit counts.
    pub(super) solids: Option<Concentration>,
    /// On what footing: empty for an average, else that the influent is taken at its peak.
    pub(super) when: String,
}

/// Room over the published floor below which nothing is called kept: the floor holds under ideal
/// conditions, and plates are known to leave 10 to 50 mg/L (MIL-HDBK-1005/9A, 1997).
const FLOOR_MARGIN: f64 = 1.5;

/// What would change it where no larger unit is to be had; emulsified oil is no part of a limit on free oil.
#[must_use]
pub fn no_plates(counts: Counts) -> &'static str {
    match counts {
        Counts::FreeOil => "coarser droplets (no shear ahead), less free oil, or a polisher",
        _ => "coarser droplets (no shear ahead), less emulsified oil, or a polisher",
    }
}

/// The word, why, and what would change it; the reasons only where somebody reads them.
pub(super) fn judge(limit: &LimitState, found: &Found, blocked: Option<&str>, read: bool) -> (Word, String, String) {
    // What was stated is echoed to four digits; what a statistic makes of it is a computed number.
    let leaves = if limit.pollutant.counts == Counts::FreeOil { "the free oil that leaves" } else { "what leaves" };
    let exact = |c: Concentration| {
        if c == limit.value.q {
            print::with_unit(c.si(), &MG_L)
        } else if limit.mean.is_some_and(|mean| mean.q == c) {
            let asked = print::with_unit(limit.value.q.si(), &MG_L);
            format!("{}, the long-term mean that an average of {asked} demands", number(c))
        } else {
            number(c)
        }
    };
    let Found { expected, mixed, against, influent, stays, solids, ref when } = *found;
    let within = |arrives: Concentration| {
        if limit.unseen.is_some() {
            let (arrives, taken) = (number(arrives), number(against));
            return told!(
                read,
                "what arrives{when} is {arrives} of free oil, less than the {taken} taken for what is seen"
            );
        }
        told!(
            read,
            "what arrives{when} is {}, by the figures taken, against {}: within the limit before any separator",
            number(arrives),
            exact(against)
        )
    };
    if limit.statistic.q == Statistic::RigTest {
        return (
            Word::NotShown,
            "a rig test is a full-scale type test of the unit; no calculation stands in for it".to_owned(),
            "a test report of the unit by the standard named".to_owned(),
        );
    }
    match limit.pollutant.gravity {
        Gravity::Cannot => {
            return (Word::NotByGravity, limit.pollutant.explains.to_owned(), limit.pollutant.what_could.to_owned());
        }
        Gravity::Partly if let Some(solids) = solids.filter(|solids| *solids <= against) => {
            let change = "other solids, or sludge that is stirred up because it was not removed in time";
            return (Word::Kept, within(solids), change.to_owned());
        }
        Gravity::Partly => {
            return (Word::NotShown, limit.pollutant.explains.to_owned(), limit.pollutant.what_could.to_owned());
        }
        Gravity::Touches => {}
    }
    if influent <= against {
        return (Word::Kept, within(influent), "other influent".to_owned());
    }
    if let Some(reason) = blocked {
        return (
            Word::NotByGravity,
            reason.to_owned(),
            "heating, flotation with air, or a settling tank for sinking oil".to_owned(),
        );
    }
    if stays > against {
        let fixed = "oil that does not rise (emulsified, dissolved or too heavy)";
        return (
            Word::NotByGravity,
            // What leaves is more by the free oil that the plates let through.
            if expected.si() > stays.si() * 1.02 {
                told!(
                    read,
                    "what leaves{when} is {} as expected, of which {} are {fixed} and pass any separator, against {}",
                    number(expected),
                    number(stays),
                    exact(against)
                )
            } else {
                told!(read, "{} of {fixed}{when} pass any separator, against {}", number(stays), exact(against))
            },
            "less oil that is emulsified or dissolved, as by another cleaner or a gentler pump, as far as that goes; or a stage behind the separator that takes it".to_owned(),
        );
    }
    if against < floor() {
        // A limit that lies above the floor itself is kept by some averages of a mean at the floor.
        let word = if limit.value.q < floor() { Word::NotByGravity } else { Word::NotShown };
        return (
            word,
            told!(
                read,
                "{}{} is below the published practical floor of {} for plates under ideal conditions",
                exact(against),
                if against < limit.value.q { "," } else { "" },
                number(floor())
            ),
            "a polisher behind the separator, or measured results of this unit on this water".to_owned(),
        );
    }
    if expected <= against && against < floor() * FLOOR_MARGIN {
        return (
            Word::Likely,
            told!(
                read,
                "{leaves}{when} is {} as expected, against {}, which is too near the published floor to be called kept",
                Promise::of(expected, influent).sentence(),
                exact(against)
            ),
            "measured results of this unit on this water, or a polisher".to_owned(),
        );
    }
    if let Some(mixed) = mixed.filter(|mixed| *mixed <= against) {
        return (
            Word::Kept,
            told!(
                read,
                "even if tank and gaps mix, {leaves}{when} is {}, against {}",
                Promise::of(mixed, influent).sentence(),
                exact(against)
            ),
            "a finer or a sheared oil".to_owned(),
        );
    }
    if expected <= against {
        let if_mixed = mixed.map_or_else(String::new, |mixed| {
            format!(", {} if tank and gaps mix", Promise::of(mixed, influent).sentence())
        });
        return (
            Word::Likely,
            told!(
                read,
                "{leaves}{when} is {} as expected{if_mixed}, against {}",
                Promise::of(expected, influent).sentence(),
                exact(against)
            ),
            "measured droplets, or more plates".to_owned(),
        );
    }
    (
        Word::NotShown,
        told!(
            read,
            "{leaves}{when} is {} as expected, against {}",
            Promise::of(expected, influent).sentence(),
            exact(against)
        ),
        told!(read, "more plates, {}", no_plates(limit.pollutant.counts)),
    )
}
