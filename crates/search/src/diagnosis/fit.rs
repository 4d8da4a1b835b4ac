//! One set of causes against what was observed: the sizes that explain it best, and what the set is then worth.

use super::causes::{Cause, SURFACE_SAMPLE, Size};
use super::gauges::Gauges;
use super::signs::{clock, signs};
use super::situation::{Occasion, Situation};
use super::suspects::Suspect;
use super::{Explanation, Sized};
use stillrise_design::enquiry::blocks::Taken;
use stillrise_units::math::{Z_95, exp, ln};
use stillrise_units::{Concentration, Typed};

/// Steps in which a size is searched, over its logarithm, and how far beyond its usual ends.
const SIZES: u32 = 24;
const BEYOND: f64 = 1.5;

/// What every set is held against.
pub(super) struct Evidence<'a> {
    pub(super) occasions: &'a [Occasion<'a>],
    pub(super) gauges: &'a Gauges,
    pub(super) suspects: &'a [Suspect],
    /// Scatter of the results, as the standard deviation of their logarithm.
    pub(super) scatter: f64,
}

/// The sizes that are tried for a cause, SI: over its usual range and half as far again beyond, never where it would be
/// another cause.
pub fn tried(size: &Size) -> impl Iterator<Item = f64> + use<> {
    let (low, high) = (ln(size.low), ln(size.high));
    let (least, most) = (size.least, size.most);
    (0..=SIZES).map(move |step| {
        let share = f64::from(step) / f64::from(SIZES) * 2.0 - 1.0;
        exp(0.5 * (low + high) + share * 0.5 * (high - low) * BEYOND).clamp(least, most)
    })
}

/// The situation of an occasion under causes of these sizes; in the good period, and before a change, none acts.
pub(super) fn under(o: &Occasion<'_>, sized: &[Sized], area: f64) -> Situation {
    let mut s = o.usual();
    s.area = area;
    if o.good {
        return s;
    }
    for one in sized.iter().filter(|one| acts(one, o)) {
        (one.cause.act)(&mut s, one.size.unwrap_or(0.0));
    }
    s
}

/// What leaves on plain occasions in the situation that was last asked for: many results of one time need one answer.
#[derive(Default)]
pub(super) struct Last(Option<(Situation, f64)>);

impl Last {
    /// Oil that would be measured, kg/m3.
    pub(super) fn effluent(&mut self, o: &Occasion<'_>, s: Situation) -> f64 {
        match self.0 {
            Some((of, effluent)) if o.is_plain() && of == s => effluent,
            _ => {
                let effluent = o.effluent(&s);
                if o.is_plain() {
                    self.0 = Some((s, effluent));
                }
                effluent
            }
        }
    }
}

/// Whether a cause acts on an occasion: one that a change brought about acts from its day on.
/// A sample that was not dipped from the surface has no film in it.
fn acts(one: &Sized, o: &Occasion<'_>) -> bool {
    if one.cause.id == SURFACE_SAMPLE && o.observed.taken.0.is_some_and(|taken| taken != Taken::Surface) {
        return false;
    }
    match (one.since, o.observed.date.0) {
        (Some(since), Some(day)) => day >= since,
        _ => true,
    }
}

/// What would be measured on each occasion where something was.
pub(super) fn outcomes(sized: &[Sized], occasions: &[Occasion<'_>], area: f64) -> Vec<Option<Concentration>> {
    let one = |o: &Occasion<'_>| {
        let effluent = o.effluent(&under(o, sized, area));
        (o.observed.oil_out.is_given() && effluent.is_finite()).then(|| Concentration::from_si(effluent))
    };
    occasions.iter().map(one).collect()
}

impl Evidence<'_> {
    /// The sizes at which a set explains the measurements best, and its score: minus twice the logarithm of its weight,
    /// up to a constant.
    pub(super) fn explain(&self, set: &[usize]) -> (Vec<Sized>, f64) {
        let suspects: Vec<Suspect> = set.iter().filter_map(|k| self.suspects.get(*k)).copied().collect();
        let mut sized: Vec<Sized> = suspects
            .iter()
            .map(|s| Sized {
                cause: s.cause,
                change: s.change,
                since: s.since,
                size: s.size.map(|size| size.likely),
                spread: s.size,
            })
            .collect();
        // One size after the other, some rounds: the misfit has one valley along each.
        let mut best = self.misfit(&sized);
        for _ in 0..if set.len() > 1 { 3 } else { 1 } {
            for k in 0..sized.len() {
                let Some(size) = sized[k].spread else { continue };
                for x in tried(&size) {
                    let before = sized[k].size;
                    sized[k].size = Some(x);
                    let there = self.misfit(&sized);
                    if there < best {
                        best = there;
                    } else {
                        sized[k].size = before;
                    }
                }
            }
        }
        let chance = |k: usize, s: &Suspect| if set.contains(&k) { s.often } else { 1.0 - s.often };
        let frequency: f64 = self.suspects.iter().enumerate().map(|(k, s)| -2.0 * ln(chance(k, s))).sum();
        let causes: Vec<&'static Cause> = suspects.iter().map(|s| s.cause).collect();
        let seen: f64 = self.bad().map(|o| self.seen(&sized, o)).sum();
        (sized, best + frequency + seen + clock(&causes, self.occasions))
    }

    fn bad(&self) -> impl Iterator<Item = &Occasion<'_>> {
        self.occasions.iter().filter(|o| !o.good)
    }

    /// The signs of an occasion, under the causes that act on it.
    fn seen(&self, sized: &[Sized], o: &Occasion<'_>) -> f64 {
        let acting: Vec<&'static Cause> = sized.iter().filter(|one| acts(one, o)).map(|one| one.cause).collect();
        signs(&acting, o.observed, self.gauges)
    }

    /// How far the measurements lie from what the sizes make of them, and the sizes from the usual ones.
    fn misfit(&self, sized: &[Sized]) -> f64 {
        let mut sum = 0.0;
        let mut last = Last::default();
        for o in self.bad() {
            let Some(measured) = o.observed.oil_out.q() else { continue };
            let effluent = last.effluent(o, under(o, sized, 1.0));
            if !effluent.is_finite() {
                return f64::INFINITY;
            }
            let off = o.off(effluent, measured.si()) / self.scatter;
            sum += off * off;
        }
        for s in sized {
            if let (Some(size), Some(value)) = (s.spread, s.size) {
                let end = if value > size.likely { ln(size.high / size.likely) } else { ln(size.likely / size.low) };
                let off = ln(value / size.likely) / (end / Z_95);
                sum += off * off;
            }
        }
        sum
    }
}

/// What a set explains, once its weight among all is known.
pub(super) fn explanation(sized: Vec<Sized>, weight: f64, larger: f64, occasions: &[Occasion<'_>]) -> Explanation {
    Explanation {
        weight,
        effluent: outcomes(&sized, occasions, 1.0),
        larger: outcomes(&sized, occasions, larger),
        causes: sized,
    }
}
