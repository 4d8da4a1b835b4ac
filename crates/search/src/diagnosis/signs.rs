//! What was seen, besides the oil that was measured: how likely it is under a set of causes.

use super::causes::{ALARM_BY_CLOCK, Cause};
use super::gauges::Gauges;
use super::situation::Occasion;
use stillrise_design::enquiry::blocks::{AlarmSign, Observed};
use stillrise_handbook::page::{Arg, Argument};
use stillrise_units::math::{ln, pow};

/// Chance that a sign shows without any of the causes.
const STRAY: f64 = 0.05;
/// How water looks, what a jar does, what the alarm does and how samples are taken when nothing is the matter.
const LOOKS: [f64; 4] = [0.75, 0.17, 0.03, 0.05];
const JARS: [f64; 3] = [0.75, 0.15, 0.10];
const ALARMS: [f64; 4] = [0.75, 0.05, 0.15, 0.05];
const TAKEN: [f64; 5] = [0.5, 0.15, 0.08, 0.22, 0.05];
/// Share of what it must not reach below which a depth says nothing is the matter; in between, the more the worse.
pub(super) const CLEAR: f64 = 0.5;
/// Chance that a depth was gauged wrong.
const MISREAD: f64 = 0.03;
/// Alarms come at one time of the day when they all fall into an hour; a working day has ten. Judgement.
const TOGETHER: u32 = 60;
const WORKING: f64 = 600.0;
/// So many alarms with their time are needed, and how likely they come together when they follow the flow. Judgement.
const ALARMS_NEEDED: usize = 3;
const FOLLOWS: f64 = 0.8;

/// Minus twice the logarithm of the chance of the signs of one occasion under a set of causes.
pub(super) fn signs(set: &[&'static Cause], observed: &Observed, gauges: &Gauges) -> f64 {
    let mut chance = 1.0;
    chance *= word(observed.looks.0, &LOOKS, set.iter().filter_map(|c| c.looks));
    chance *= word(observed.jar.0, &JARS, set.iter().filter_map(|c| c.jar));
    chance *= word(observed.alarm.0, &ALARMS, set.iter().filter_map(|c| c.alarm));
    chance *= word(observed.taken.0, &TAKEN, set.iter().filter_map(|c| c.taken));
    if let Some(rise) = observed.backed_up.q() {
        let not = set.iter().fold(1.0 - STRAY, |not, cause| not * (1.0 - cause.backed_up));
        chance *= if stillrise_units::Typed::si(rise) > 0.01 { 1.0 - not } else { not };
    }
    for (gauge, share) in gauges.shares(observed) {
        let over = ((share - CLEAR) / (1.0 - CLEAR)).clamp(0.0, 1.0);
        let there = set.iter().any(|c| c.gauge.is_some_and(|g| g.shows(gauge)));
        let shows = if there { over } else { 1.0 - over };
        chance *= MISREAD + (1.0 - 2.0 * MISREAD) * shows;
    }
    -2.0 * ln(chance)
}

/// The same for the times of the alarms, over all occasions.
pub(super) fn clock(set: &[&'static Cause], occasions: &[Occasion<'_>]) -> f64 {
    let sounds = |o: &&Occasion<'_>| matches!(o.observed.alarm.0, Some(AlarmSign::True | AlarmSign::False));
    let times: Vec<u32> =
        occasions.iter().filter(|o| !o.good).filter(sounds).filter_map(|o| o.observed.time.0).collect();
    if times.len() < ALARMS_NEEDED {
        return 0.0;
    }
    let together = at_one_time(times.len());
    let chance = if set.iter().any(|c| c.id == ALARM_BY_CLOCK) { FOLLOWS } else { together };
    -2.0 * ln(if spread(&times) <= TOGETHER { chance } else { 1.0 - chance })
}

/// Chance that so many times, spread evenly over the working day, all fall into an hour of it: the distribution of
/// the range of uniform variates, n w^(n-1) - (n-1) w^n (order statistics, any text on statistics).
fn at_one_time(n: usize) -> f64 {
    let (n, w) = (n as f64, f64::from(TOGETHER) / WORKING);
    n * pow(w, n - 1.0) - (n - 1.0) * pow(w, n)
}

/// Minutes that hold all times of day, around midnight if that is shorter.
fn spread(times: &[u32]) -> u32 {
    const DAY: u32 = 24 * 60;
    let mut sorted = times.to_vec();
    sorted.sort_unstable();
    let (Some(first), Some(last)) = (sorted.first(), sorted.last()) else { return 0 };
    // The widest gap between neighbours is what they do not hold.
    let widest = sorted.windows(2).map(|w| w[1] - w[0]).max().unwrap_or(0).max(DAY - last + first);
    DAY - widest
}

/// Chance of a word: the mean over the causes that speak to it, else that of a sound unit.
fn word<C: Argument + Copy, const N: usize>(
    seen: Option<C>,
    sound: &[f64; N],
    causes: impl Iterator<Item = [f64; N]>,
) -> f64 {
    let Some(seen) = seen else { return 1.0 };
    let stillrise_handbook::page::Kind::Choice(words) = C::KIND else { return 1.0 };
    let place = words.iter().position(|(word, _)| Arg::Choice(word) == seen.arg()).unwrap_or(0);
    let all: Vec<[f64; N]> = causes.collect();
    let table = |t: &[f64; N]| t.get(place).copied().unwrap_or(STRAY);
    if all.is_empty() { table(sound) } else { all.iter().map(table).sum::<f64>() / all.len() as f64 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_of_day_are_held_around_midnight() {
        assert_eq!(spread(&[450, 455, 470]), 20);
        assert_eq!(spread(&[10, 1430, 0]), 20);
        assert_eq!(spread(&[0, 480, 960]), 960);
    }

    /// Three points in a tenth of the line: 3 x 0.01 - 2 x 0.001, by hand; all in the whole line: 1.
    #[test]
    fn times_fall_together_by_chance_as_points_on_a_line() {
        assert!((at_one_time(3) - 0.028).abs() < 1e-12);
        assert!((at_one_time(2) - 0.19).abs() < 1e-12);
    }
}
