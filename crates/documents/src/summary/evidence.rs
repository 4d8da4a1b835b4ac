//! What laboratory results say, what is made of them, and the prediction beside them; and the long-term mean that each
//! limit asks for. Sentences that summary and report share.

use super::lower;
use super::section;
use crate::render::text::item;
use stillrise_checks::Grade;
use stillrise_checks::rules::claims_contradict;
use stillrise_design::basis::Basis;
use stillrise_design::basis::evidence::{ENOUGH_FOR_SCATTER, Law, SampleSet};
use stillrise_design::basis::influent::Role;
use stillrise_design::basis::limits::LimitState;
use stillrise_design::enquiry::blocks::{Change, Manner, SamplePoint, Samples};
use stillrise_design::performance::measured::{Compared, Place};
use stillrise_design::performance::promise::Promise;
use stillrise_search::Settled;
use stillrise_units::catalog::{MG_L, PERCENT};
use stillrise_units::{Concentration, Ratio, Typed, print};

/// The two sections, each where there is something to say.
pub(super) fn evidence(out: &mut String, settled: &Settled, width: usize) {
    let Some(basis) = &settled.job.design.basis else { return };
    if !basis.limits.is_empty() {
        out.push_str(&section("Long-term mean that each limit asks for"));
        for text in means(basis) {
            out.push_str(&item("-", &text, width));
        }
    }
    if !basis.evidence.is_empty() {
        out.push_str(&section("Laboratory results"));
        for set in basis.evidence.iter() {
            out.push_str(&item("-", &says(settled, basis, set).join(" "), width));
        }
    }
}

/// A concentration with the three digits that a laboratory reports.
fn mg(c: Concentration) -> String {
    format!("{} mg/L", print::digits(MG_L.from_si(c.si()), 3))
}

fn number(q: Ratio) -> String {
    print::digits(q.si(), 2)
}

fn percent(q: Ratio) -> String {
    format!("{} %", print::digits(PERCENT.from_si(q.si()), 2))
}

/// What each limit asks of the long-term mean.
pub(crate) fn means(basis: &Basis) -> Vec<String> {
    let says = |l: &LimitState| {
        let head = format!("{}, {}, {}", l.title(), mg(l.value.q), l.statistic.q.word());
        match &l.scatter {
            Some(s) => format!(
                "{head}: asks for a long-term mean of {}, so that {} of {} keep it when single results scatter with a coefficient of variation of {}.",
                mg(s.mean.q),
                percent(s.share.q),
                if s.samples.q.si() > 1.0 { "the averages" } else { "the results" },
                number(s.variation.q),
            ),
            None => format!("{head}: asks for none; a test of the unit on a rig has no long-term mean."),
        }
    };
    basis.limits.iter().map(says).collect()
}

/// Whose results they are: those of the unit described, or of the plant that stands there now.
pub(crate) fn whose(settled: &Settled, point: SamplePoint) -> &'static str {
    match (point, settled.job.enquiry.unit_stands()) {
        (SamplePoint::In, _) => "the water that comes",
        (SamplePoint::Out, true) => "the water that leaves the unit",
        (SamplePoint::Out, false) => "the water that leaves the existing plant",
    }
}

/// What was sampled, how and by which method, as far as it was said.
pub(crate) fn taken(set: &SampleSet, block: Option<&Samples>) -> String {
    let mut parts = Vec::new();
    parts.extend(block.and_then(|b| b.stream.0.clone()));
    parts.extend(set.manner.map(|m| if m == Manner::Grab { "grabs".to_owned() } else { m.word().to_owned() }));
    parts.extend(block.and_then(|b| b.method.0.clone()));
    parts.extend(block.and_then(|b| b.regime.0.clone()));
    parts.join(", ")
}

/// All that is said of a set, in sentences.
pub(crate) fn says(settled: &Settled, basis: &Basis, set: &SampleSet) -> Vec<String> {
    let mut out = vec![head(settled, set)];
    out.push(match &set.law {
        Some(law) => numbers(set, law),
        None => no_law(set),
    });
    out.extend(time(settled, set));
    out.extend(role(settled, set));
    if set.point == SamplePoint::Out {
        out.extend(basis.limits.iter().enumerate().filter_map(|(i, l)| scatter(settled, i, l, set)));
    }
    out.extend(polar(set));
    let compared = settled.job.design.performance.iter().flat_map(|p| &p.measured);
    let mine =
        compared.filter(|c| basis.evidence.get(c.set).is_some_and(|s| s.index == set.index && s.part == set.part));
    out.extend(mine.filter_map(|c| Some(prediction(settled, set.usable()?, c))));
    out
}

fn head(settled: &Settled, set: &SampleSet) -> String {
    let how = taken(set, settled.job.enquiry.samples.get(set.index));
    let how = if how.is_empty() { String::new() } else { format!(" ({how})") };
    let results = if set.count == 1 { "result" } else { "results" };
    let below = match set.count - set.detected {
        0 => "all detected".to_owned(),
        n => format!("{n} not detected"),
    };
    let whose = whose(settled, set.point);
    format!("\"{}\", of {whose}{how}: {} {results} of {}, {below}.", set.name, set.count, lower(set.pollutant.title))
}

fn numbers(set: &SampleSet, law: &Law) -> String {
    let likeliest =
        if set.detected < set.count { "Of the log-normal law that is likeliest: geometric" } else { "Geometric" };
    // With non-detects all of it is of the likeliest law; without any the mean and its interval are of the results as they
    // are, and only the coefficient of variation is of a law.
    let (from, of) = if set.detected < set.count {
        (String::new(), "")
    } else {
        (
            format!(" by Student's t from their own standard deviation of {}", mg(law.spread.q)),
            " of the log-normal law through them",
        )
    };
    let text = format!(
        "{likeliest} mean {}, arithmetic mean {} (95 % interval {} to {}{from}), coefficient of variation {}{of}.",
        mg(law.geometric.q),
        mg(law.mean.q),
        mg(law.low.q),
        mg(law.high.q),
        number(law.variation.q),
    );
    match &set.bounds {
        Some(b) => format!(
            "{text} With what was not detected at zero, at half its reporting limit and at the limit the arithmetic mean is {}, {} and {}.",
            mg(b.least.q),
            mg(b.half.q),
            mg(b.most.q)
        ),
        None => text,
    }
}

fn no_law(set: &SampleSet) -> String {
    match (&set.bounds, &set.ends, set.count) {
        (Some(b), _, _) => format!(
            "Too few were detected for a mean of their own: the arithmetic mean lies between {} and {}, with what was not detected at zero and at its reporting limit.",
            mg(b.least.q),
            mg(b.most.q)
        ),
        (None, Some((only, _)), 1) => {
            format!("It is {}: one result has no scatter, and its mean no interval.", mg(only.q))
        }
        _ => "They spread too far for a mean and a scatter.".to_owned(),
    }
}

/// What of its time keeps a set from standing for the plant as it is.
fn time(settled: &Settled, set: &SampleSet) -> Option<String> {
    let Some(part) = set.part else { return spans(settled, set) };
    if !part.dated {
        return Some(
            "Whether they lie before or after what was changed is not known: they are held against neither limit nor prediction."
                .to_owned(),
        );
    }
    match part.until {
        Some(until) if part.last => Some(format!(
            "No result is later than the change of {until}: the prediction is of the plant since, and they are not held against it."
        )),
        Some(_) => {
            Some("Later results stand for the plant; these are held against neither limit nor prediction.".to_owned())
        }
        None => None,
    }
}

/// That results of the water that comes were taken before and after something was changed.
fn spans(settled: &Settled, set: &SampleSet) -> Option<String> {
    let enquiry = &settled.job.enquiry;
    let block = enquiry.samples.get(set.index).filter(|_| set.point == SamplePoint::In)?;
    let days = || set.places.iter().filter_map(|at| block.day(*at));
    let between = |c: &&Change| c.date.0.is_some_and(|of| days().any(|day| day < of) && days().any(|day| day >= of));
    let day = enquiry.changes.iter().find(between)?.date.0?;
    Some(format!(
        "They were taken before and after the change of {day}, and all that is said here is of all of them together."
    ))
}

/// What became of each set of results for the design, where something is to be told.
pub(crate) fn became(settled: &Settled) -> Vec<String> {
    let sets = settled.job.design.basis.iter().flat_map(|basis| basis.evidence.iter());
    sets.filter_map(|set| Some(format!("\"{}\": {}", set.name, role(settled, set)?))).collect()
}

fn role(settled: &Settled, set: &SampleSet) -> Option<String> {
    match &set.role {
        Role::Leaves if set.is_of_the_stream() && settled.job.enquiry.unit_stands() => None,
        Role::Leaves if set.is_of_the_stream() => of_what_stands(settled, set),
        Role::Leaves => Some(
            "They were taken from the surface, hold the film and not the stream: their mean and scatter are used for nothing.".to_owned(),
        ),
        Role::StandsIn(water) => Some(format!(
            "Nobody stated the oil of {water}: the arithmetic mean stands in for it, with its interval as the range."
        )),
        Role::FewStandIn(water) => Some(format!(
            "Nobody stated the oil of {water}, and this is all that was measured: the largest result stands in for its mean, from a third of it to three times. At least three samples on different days would tell more."
        )),
        Role::Agrees(water) => {
            Some(format!("What was stated of the oil of {water} lies within the interval, and is designed for."))
        }
        Role::Contradicts(water) => {
            let chosen =
                settled.judged(&claims_contradict::RULE).is_some_and(|v| v.grade() == Grade::Warns);
            let how = if chosen { "; which holds is to be asked" } else { "" };
            Some(format!(
                "What was stated of the oil of {water} lies outside the interval: both stand as claims, and are not averaged{how}."
            ))
        }
        Role::SameAsStated(water) => Some(format!(
            "What was stated of the oil of {water} is a result of theirs, and is designed for as its mean. One or two results hardly make one: more of them, with their dates, would."
        )),
        Role::Told(why) => Some(format!("The design does not use them: {why}.")),
    }
}

/// That results are of what leaves the plant that stands, which is none that we describe; and where they say that more comes
/// than was taken.
fn of_what_stands(settled: &Settled, set: &SampleSet) -> Option<String> {
    let mean = set.usable()?.mean.q;
    let says = "They are of what leaves the plant that stands, and no figure here rests on them.";
    let cases = settled.job.design.basis.as_ref().map_or(&[][..], |basis| &basis.cases);
    let less = cases.iter().filter(|case| set.is_predicted() && case.of_day.is_none());
    let less: Vec<String> = less
        .filter_map(|case| {
            let total = case.content.as_ref()?.total.q;
            (total < mean).then(|| format!("{} for {}", mg(total), case.event))
        })
        .collect::<std::collections::BTreeSet<_>>()
        .into_iter()
        .collect();
    // What leaves today against what is allowed, and against what we reckon would leave.
    let limits = settled.job.design.basis.as_ref().map_or(&[][..], |basis| &basis.limits);
    let least = limits.iter().filter(|l| *l.pollutant == *set.pollutant && l.unseen.is_none());
    let least = least.map(|l| l.value.q).reduce(|a, b| if b < a { b } else { a });
    let above = least
        .filter(|least| mean > *least)
        .map_or_else(String::new, |least| format!(" Their mean, {}, lies above the limit of {}.", mg(mean), mg(least)));
    let ours = settled.job.design.performance.as_ref().and_then(|p| p.worst()).map(|worst| worst.total.expected.q);
    let far = ours.filter(|ours| set.is_predicted() && ours.si() > 2.0 * mean.si()).map_or_else(String::new, |ours| {
        format!(
            " We reckon with {} to leave a unit here: more than twice as much as leaves the old one by these results. What comes then carries less oil, or less of it held, than we took, unless other water thinned what was sampled; a sample of what comes shows it.",
            mg(ours)
        )
    });
    if less.is_empty() {
        return Some(format!("{says}{above}{far}"));
    }
    Some(format!(
        "{says}{above} Their mean, {}, is more than what we took to come ({}): nothing leaves a plant that did not come to it, and so more comes than was taken, unless what they were taken of carries other water.",
        mg(mean),
        less.join(", ")
    ))
}

/// What becomes of the scatter of the results for one limit.
fn scatter(settled: &Settled, index: usize, limit: &LimitState, set: &SampleSet) -> Option<String> {
    let (law, in_use) = (set.usable()?, limit.scatter.as_ref()?);
    if *limit.pollutant != *set.pollutant {
        return None;
    }
    let what = format!("the limit of {}, {}", mg(limit.value.q), limit.statistic.q.word());
    let stated = settled.job.enquiry.limits.get(index).is_some_and(|l| l.variation.is_given());
    let used = number(in_use.variation.q);
    Some(if stated {
        format!("For {what}, the enquiry states a coefficient of variation of {used}.")
    } else if set.count < ENOUGH_FOR_SCATTER {
        format!(
            "Fewer than {ENOUGH_FOR_SCATTER} results do not give a coefficient of variation of their own: for {what}, {used} is used."
        )
    } else if law.variation.at == in_use.variation.at || law.variation.q == in_use.variation.q {
        format!("For {what}, their coefficient of variation is used.")
    } else {
        format!("For {what}, that of another set is used, which scatters more: {used}.")
    })
}

/// What silica gel says of the kind of oil.
fn polar(set: &SampleSet) -> Option<String> {
    let p = set.polar.as_ref()?;
    let pairs = match set.pairs.0 {
        1 => "one pair".to_owned(),
        n => format!("the mean of {n} pairs"),
    };
    if p.share.q.si() <= 0.0 {
        return Some(format!(
            "Silica gel takes nothing off ({} before and {} after, {pairs}): none of it shows as polar, and the two weighings scatter.",
            mg(p.before.q),
            mg(p.after.q)
        ));
    }
    let least = if set.pairs.1 { "at least " } else { "" };
    let most = if set.pairs.1 { "at most " } else { "" };
    Some(format!(
        "Silica gel takes off {least}{} of it ({} before, {most}{} after, {pairs}): that part is polar, such as animal or vegetable oil, soap or surfactant, and no mineral oil. A limit on oil and grease counts it; a limit on hydrocarbons, analysed after silica gel, counts the rest only.",
        percent(p.share.q),
        mg(p.before.q),
        mg(p.after.q)
    ))
}

/// The prediction beside the mean of what was measured.
fn prediction(settled: &Settled, law: &Law, c: &Compared) -> String {
    let stands = settled.job.enquiry.unit_stands();
    let predicted = Promise::of(c.computed.q, c.influent.q).sentence();
    let of = mg(law.mean.q);
    let lead = if stands {
        "Predicted for the unit, on the mean in the worst case of the design at the end of the interval"
    } else {
        "Predicted for the unit of this design, on the mean in its worst case at the end of the interval"
    };
    let other = if stands { "" } else { " The results are of another plant and do not test the prediction." };
    let place = match c.place {
        Place::Below => "lies below the interval of the measured mean",
        Place::Within => "lies within the interval of the measured mean",
        Place::Above => "lies above the interval of the measured mean",
        Place::Bounds => {
            return format!(
                "{lead}: {predicted}. The measured arithmetic mean of {of} lies below it, as it should.{other}"
            );
        }
    };
    let ratio = number(c.ratio.q);
    format!(
        "{lead}: {predicted}. The measured arithmetic mean of {of} is {ratio} times that number, which {place}.{other}"
    )
}
