//! Where nothing fits: what speaks against the one that comes nearest, how many of which would do, or which dimensions.

use crate::arrangement::wanted;
use crate::because::Because;
use crate::pick::{Ask, Condition, How, MOST_IN_PARALLEL, Pick, found, try_unit};
use crate::shortcoming::ANSWERED_AHEAD;
use stillrise_checks::rules::{chain_stopped, does_not_fit, dug_too_deep, headroom_too_low, pack_cannot_be_lifted};
use stillrise_checks::{Part, Rule, Subject, Verdict, bars_pick, judge};
use stillrise_design::basis::cases::{Kind, largest};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::keys::Quantity;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{Design, begin};
use stillrise_design::performance::Depth;
use stillrise_design::performance::installation::Stands;
use stillrise_design::train::{Made, Source};
use stillrise_design::{Off, Stop, WhatIf};
use stillrise_units::{Flow, Length, Typed, Volume, math};

/// Most units that are tried where nothing fits, to say how many would do.
const MOST_TRIED: u32 = 80;

/// That nothing fits: what speaks against the one that comes nearest, and what would do.
#[derive(Debug, Clone, PartialEq)]
pub struct Shortfall {
    /// The one that comes nearest: the smallest that fails by its place, and by the room for a spill at most, else the
    /// largest that was tried.
    pub nearest: String,
    /// What speaks against it.
    pub against: Vec<Against>,
    /// Length and width in plan with a walkway around, and clear height over the ground, that it needs, where its place is
    /// what speaks against it.
    pub room: Option<[Length; 3]>,
    /// Whether it lies in the ground, so that no walkway is in that room.
    pub in_ground: bool,
    /// What the calculation alone would say there of each limit, by its place in the basis.
    pub words: Vec<(usize, &'static str)>,
    /// What would have to be held back ahead of it, where more arrives than is passed on.
    pub held: Option<Volume>,
    /// Whether it has not the room for the spill either, which then would have to be held ahead of it.
    pub spill_ahead: bool,
    /// What would do.
    pub would: Vec<Would>,
    /// What would be left, where the spill is the largest flow and were held ahead.
    pub without_spill: Option<WithoutSpill>,
}

/// What is left of the flow with the spill held ahead, where the spill governs it.
#[derive(Debug, Clone, PartialEq)]
pub struct WithoutSpill {
    /// The spill's flow.
    pub spill: Flow,
    /// The largest flow without it.
    pub rest: Flow,
    /// What would be taken for that; none where nothing fits either.
    pub unit: Option<String>,
    /// Whether that is shown to do without a condition of its own.
    pub fits: bool,
}

/// What speaks against a unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Against {
    /// In a few words.
    pub title: String,
    /// What would answer it, where a rule bars it.
    pub remedy: Option<&'static str>,
    /// In a sentence without its full stop.
    pub says: String,
}

/// Something that would do where nothing fits.
#[derive(Debug, Clone, PartialEq)]
pub struct Would {
    /// How many.
    pub count: u32,
    /// Of what; `None` for one made to measure.
    pub model: Option<String>,
    /// Inside length, width and height of each.
    pub size: [Length; 3],
    /// Whether the spill has to be held ahead of them.
    pub spill_ahead: bool,
    /// What the calculation alone would say there of each limit, by its place in the basis.
    pub words: Vec<(usize, &'static str)>,
    /// Whether, on the levels that are known, the water has to be lifted by a pump to get through.
    pub lifted: bool,
    /// Length and width in plan with the walkway that was taken, and clear height over the ground, where the place that was
    /// stated has not that room.
    pub room: Option<[Length; 3]>,
    /// Whether it lies in the ground, so that no walkway is in that room.
    pub in_ground: bool,
    /// What rules on the unit itself say against it all the same, though none of them keeps it from being picked.
    pub still: Vec<String>,
}

impl Ask<'_> {
    /// How many of a unit would do, the fewest; `None` where so many as were tried will not.
    ///
    /// Where the enquiry says how many or that they are made to measure, the search for a unit looked at those alone,
    /// so that a few may do.
    fn fewest(&self, source: &Source<'_>) -> Option<u32> {
        let will =
            |n: u32| self.shortcoming(source, n).is_none_or(|short| matches!(short.on, Some(Condition::Ahead(_))));
        let unit = &self.enquiry.unit;
        let told = unit.count.is_some() || unit.dimensions.is_some() || unit.model.is_some();
        if (told || *unit.custom == Some(true))
            && let Some(few) = (1..=MOST_IN_PARALLEL).find(|n| will(*n))
        {
            return Some(few);
        }
        let mut high = MOST_IN_PARALLEL + 1;
        while !will(high) {
            high *= 2;
            if high > MOST_TRIED {
                return None;
            }
        }
        let mut low = if high == MOST_IN_PARALLEL + 1 { MOST_IN_PARALLEL } else { high / 2 };
        while high - low > 1 {
            let middle = low + (high - low) / 2;
            if will(middle) {
                high = middle;
            } else {
                low = middle;
            }
        }
        Some(high)
    }
}

/// Rules of the place: what they bar would do elsewhere.
static OF_THE_PLACE: &[&Rule] =
    &[&does_not_fit::RULE, &headroom_too_low::RULE, &pack_cannot_be_lifted::RULE, &dug_too_deep::RULE];

/// Whether a unit would do elsewhere, with a spill held ahead of it where that bars it too.
fn fails_by_its_place<'a>(mut barring: impl Iterator<Item = &'a Rule> + Clone) -> bool {
    barring.clone().any(|rule| rule.is_among(OF_THE_PLACE))
        && barring.all(|rule| rule.is_among(OF_THE_PLACE) || rule.is_among(ANSWERED_AHEAD))
}

/// Why nothing fits, and what would do instead. `described` is the unit that the enquiry describes, where it does and
/// nothing can be said of it.
#[must_use]
pub fn shortfall(enquiry: &Enquiry, range: &Range, begun: &Design, described: Option<&Pick>) -> Option<Shortfall> {
    begun.basis.as_ref()?;
    let nothing = WhatIf::default();
    let wanted = wanted(enquiry, range, &nothing, begun);
    let ask = Ask { enquiry, range, what_if: &nothing, begun, near: None, wanted };
    let nearest = match described {
        Some(pick) => pick.clone(),
        None => ask.nearest()?,
    };
    let source = nearest.source(enquiry, range);
    let design = try_unit(enquiry, &nothing, begun, &source, nearest.count, Depth::Limits);
    let Speaks { against, of_place, ahead } = ask.speaks_against(&design);
    let fit = design.performance.as_ref().filter(|_| of_place).map(|p| &p.fit);
    let room = fit.map(|fit| [fit.way().length.q, fit.way().width.q, fit.headroom.q]);
    let limits = design.performance.iter().filter(|_| of_place).flat_map(|p| &p.limits);
    let words = limits.map(|verdict| (verdict.limit, verdict.calculated_says())).collect();
    // Nothing is put in place of a unit that stands before its own case is known.
    let stands = enquiry.unit_stands();
    let mut would = if stands { Vec::new() } else { ask.would_do(false) };
    // The place may be what bars them all, though more than the place bars the nearest.
    if would.is_empty() && !stands && room.is_none() && has_place(enquiry) {
        let enquiry = &anywhere(enquiry);
        would = Ask { enquiry, range, what_if: &nothing, begun, near: None, wanted }.would_do(true);
    }
    let without_spill = if stands { None } else { without_spill(enquiry, range, begun) };
    Some(Shortfall {
        nearest: nearest.name(range),
        against,
        room,
        in_ground: wanted.arrangement.is_in_ground(),
        words,
        held: design.train.as_ref().and_then(|train| train.equalisation.as_ref()).map(|hold| hold.volume().q),
        spill_ahead: ahead,
        would,
        without_spill,
    })
}

/// Which unit comes nearest where nothing fits, and what speaks against it, in a few words each.
pub(crate) fn nearest(enquiry: &Enquiry, range: &Range, begun: &Design) -> Option<(String, Vec<String>)> {
    begun.basis.as_ref()?;
    let nothing = WhatIf::default();
    let wanted = wanted(enquiry, range, &nothing, begun);
    let ask = Ask { enquiry, range, what_if: &nothing, begun, near: None, wanted };
    let nearest = ask.nearest()?;
    let design = try_unit(enquiry, &nothing, begun, &nearest.source(enquiry, range), nearest.count, Depth::Limits);
    let against = ask.speaks_against(&design).against;
    Some((nearest.name(range), against.into_iter().map(|against| against.title).collect()))
}

/// Whether anything of the place was stated.
pub(crate) fn has_place(enquiry: &Enquiry) -> bool {
    let site = &enquiry.site;
    [&site.max_length, &site.max_width, &site.headroom].into_iter().any(|side| side.is_given())
        || site.lifting.is_given()
}

/// The same where there is room and gear for whatever comes.
pub(crate) fn anywhere(enquiry: &Enquiry) -> Enquiry {
    let mut other = enquiry.clone();
    let site = &mut other.site;
    for side in [&mut site.max_length, &mut site.max_width, &mut site.headroom] {
        side.claims.clear();
    }
    site.lifting.claims.clear();
    other
}

/// What would be left with the spill held ahead, where its rate is the largest flow.
fn without_spill(enquiry: &Enquiry, range: &Range, begun: &Design) -> Option<WithoutSpill> {
    let basis = begun.basis.as_ref()?;
    let case = largest(&basis.cases).filter(|case| case.kind == Kind::Spill)?;
    if basis.spill.as_ref()?.is_held_ahead() {
        return None;
    }
    let mut other = enquiry.clone();
    other.spill = None;
    let nothing = WhatIf::default();
    let then = begin(&mut Off, &nothing, &other);
    let rest = then.basis.as_ref()?.design_flow()?.q;
    let pick = found(&other, range, &nothing, &then, None);
    let fits = pick.as_ref().is_some_and(|pick| pick.fits);
    Some(WithoutSpill { spill: case.feed.q, rest, unit: pick.map(|pick| pick.name(range)), fits })
}

/// What speaks against a unit that comes nearest.
struct Speaks {
    /// One by one.
    against: Vec<Against>,
    /// Whether its place is what bars it, with the room for a spill at most.
    of_place: bool,
    /// Whether something that can be held ahead of it bars it.
    ahead: bool,
}

impl Ask<'_> {
    /// What speaks against it.
    fn speaks_against(&self, design: &Design) -> Speaks {
        let barring = bars_pick(&Subject { enquiry: self.enquiry, design, ledger: None, read: true });
        let barring: Vec<(&'static Rule, String)> =
            barring.into_iter().filter(|(rule, _)| **rule != chain_stopped::RULE).collect();
        let of_place = fails_by_its_place(barring.iter().map(|(rule, _)| *rule));
        let ahead = barring.iter().any(|(rule, _)| rule.is_among(ANSWERED_AHEAD));
        let mut against: Vec<Against> = barring
            .into_iter()
            .map(|(rule, says)| Against {
                title: rule.title.to_lowercase(),
                remedy: Some(rule.remedy),
                says: format!("{}: {says}", rule.title),
            })
            .collect();
        // Why it stopped, where that is a sentence; a formula's words are for whoever checks the calculation.
        let plain = |says: String| Against { title: says.clone(), remedy: None, says };
        if let Some(stop) = design.stops.first() {
            against.push(plain(if stop.formula {
                "at its share of the flow it lies outside what the methods cover".to_owned()
            } else {
                stop.reason.clone()
            }));
        }
        if against.is_empty() {
            against.extend(self.judged(design).map(|short| plain(short.bars.title().to_lowercase())));
        }
        Speaks { against, of_place, ahead }
    }

    /// The smallest that fails by its place alone, else the largest.
    fn nearest(&self) -> Option<Pick> {
        let unit = &self.enquiry.unit;
        let pick = |how, count| Pick { how, count, because: Because::Nearest, fits: false, condition: None };
        let rows = self.rows();
        let custom = *unit.custom == Some(true);
        let hows: Vec<How> =
            if custom { vec![How::Custom(Made::first())] } else { rows.iter().map(|row| How::Row(*row)).collect() };
        let counts = unit.count.map_or(1..=MOST_IN_PARALLEL, |n| n..=n);
        // Of those that the place alone bars, the one that lacks the least of it.
        let mut best: Option<(f64, Pick)> = None;
        for count in counts.clone() {
            for how in &hows {
                let pick = pick(*how, count);
                let source = pick.source(self.enquiry, self.range);
                let design = try_unit(self.enquiry, self.what_if, self.begun, &source, count, Depth::Limits);
                let barring = bars_pick(&Subject { enquiry: self.enquiry, design: &design, ledger: None, read: false });
                if fails_by_its_place(barring.iter().map(|(rule, _)| *rule)) {
                    let lacks = self.lacks(&design);
                    if best.as_ref().is_none_or(|(least, _)| lacks < least - 1e-9) {
                        best = Some((lacks, pick));
                    }
                }
            }
        }
        if let Some((_, pick)) = best {
            return Some(pick);
        }
        Some(pick(*hows.last()?, *counts.end()))
    }

    /// By how much its place is too small for it: the shares of length, width and clear height that are missing, added up.
    fn lacks(&self, design: &Design) -> f64 {
        let (Some(performance), site) = (&design.performance, &self.enquiry.site) else { return f64::INFINITY };
        let fit = &performance.fit;
        let sides = [
            (fit.way().length.q, &site.max_length),
            (fit.way().width.q, &site.max_width),
            (fit.headroom.q, &site.headroom),
        ];
        let lacks = |(needs, has): (Length, &Quantity<Length>)| {
            has.q().map_or(0.0, |has| math::max(needs.si() / math::max(has.si(), f64::MIN_POSITIVE) - 1.0, 0.0))
        };
        sides.into_iter().map(lacks).sum()
    }

    /// What rules on the unit itself say against it, worked in full.
    fn still(&self, source: &Source<'_>, count: u32) -> Vec<String> {
        let design = try_unit(self.enquiry, self.what_if, self.begun, source, count, Depth::Full);
        let subject = Subject { enquiry: self.enquiry, design: &design, ledger: None, read: true };
        let fails = judge(&subject).into_iter().filter(|j| {
            let other = matches!(j.rule.part, Part::Enquiry | Part::Effluent) || j.rule.is_among(OF_THE_PLACE);
            matches!(j.verdict, Verdict::Fails(_)) && !other && !j.rule.is_among(ANSWERED_AHEAD)
        });
        fails.map(|j| j.rule.title.to_lowercase()).collect()
    }

    /// How many of the largest, or which made to measure, would do; with the room that they need, `elsewhere`.
    fn would_do(&self, elsewhere: bool) -> Vec<Would> {
        let rows = self.rows();
        let largest = rows.iter().rev().take(2).map(|row| &self.range.models[*row]);
        let mut sources: Vec<(Option<String>, Source<'_>)> =
            largest.map(|model| (model.model.0.clone(), Source::Row(self.range, model))).collect();
        if self.wanted.arrangement.is_set_up() {
            sources.push((None, Source::Custom(Made::first())));
        }
        let one = |(model, source): (Option<String>, Source<'_>)| {
            let count = self.fewest(&source)?;
            let design = try_unit(self.enquiry, self.what_if, self.begun, &source, count, Depth::Limits);
            let spill_ahead = self.shortcoming(&source, count).is_some();
            let fit = design.performance.as_ref().filter(|_| elsewhere).map(|p| &p.fit);
            let room = fit.map(|fit| [fit.way().length.q, fit.way().width.q, fit.headroom.q]);
            let performance = design.performance.as_ref();
            let lifted = performance.is_some_and(|p| p.site.installation.stands.q == Stands::LiftPump);
            let limits = performance.map_or(&[][..], |p| &p.limits);
            let words = limits.iter().map(|verdict| (verdict.limit, verdict.calculated_says())).collect();
            let arrangement = design.train.as_ref()?.unit.arrangement;
            let still = self.still(&source, count);
            let body = &design.train?.unit.body;
            let size = [body.over_all().q, body.width().q, body.height().q];
            let in_ground = arrangement.is_in_ground();
            Some(Would { count, model, size, spill_ahead, words, lifted, room, in_ground, still })
        };
        let mut would: Vec<Would> = sources.into_iter().filter_map(one).collect();
        // Nobody has many made to measure where a few of the range do.
        let fewest = would.iter().filter(|w| w.model.is_some()).map(|w| w.count).min();
        would.retain(|w| w.model.is_some() || fewest.is_none_or(|n| w.count <= 2 * n));
        would
    }
}

/// That no unit was taken.
#[must_use]
pub fn stop() -> Stop {
    Stop::said("picking a unit", "none of the units that may be taken will do")
}
