//! What a rating says, in words: causes with their sizes, changes, the time line and the steps.

use crate::render::text::{hang, item};
use crate::risk::percent;
use crate::summary::capital;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::enquiry::blocks::Observed;
use stillrise_search::Settled;
use stillrise_search::diagnosis::causes::OF_THE_SAMPLE;
use stillrise_search::diagnosis::{Again, Diagnosis, EXCHANGES, Explanation, Seen, Sized, Step};
use stillrise_units::catalog::{GAL, H, M3, MG_L};
use stillrise_units::math::sqrt;
use stillrise_units::{Concentration, Flow, System, Time, Typed, print};

/// A cause with its size, in words.
#[must_use]
pub fn sized(s: &Sized, system: System) -> String {
    match (s.cause.size, s.size) {
        (Some(size), Some(value)) => {
            let unit = system.pick(size.units);
            let text = format!("{} {}", print::digits(unit.from_si(value), 2), unit.symbol);
            format!("{} ({} {})", s.cause.title, size.label, text.trim_end())
        }
        _ => s.cause.title.to_owned(),
    }
}

/// What was seen on an occasion besides the numbers of water and oil; empty where nothing was.
#[must_use]
pub fn besides(o: &Observed) -> String {
    let mut parts = Vec::new();
    parts.extend(o.date.0.map(|day| day.to_string()));
    parts.extend(o.time.0.map(|_| format!("at {}", o.time)));
    parts.extend(seen_besides(o));
    parts.join("; ")
}

/// The same without day and time.
#[must_use]
pub fn seen_besides(o: &Observed) -> Vec<String> {
    let mut parts = Vec::new();
    parts.extend(o.taken.0.map(|w| format!("taken {}", w.word())));
    parts.extend(o.looks.0.map(|w| format!("looks {}", w.word())));
    parts.extend(o.jar.0.map(|w| format!("a jar of it {}", w.word())));
    parts.extend(o.alarm.0.map(|w| format!("alarm: {}", w.word())));
    let depths = [
        ("oil layer", &o.oil_layer),
        ("sludge", &o.sludge),
        ("backed up", &o.backed_up),
        ("level lower by", &o.level_drop),
    ];
    parts.extend(depths.into_iter().filter_map(|(what, q)| Some(format!("{what} {}", q.claim()?.written.text))));
    parts
}

/// What was seen besides, a sentence for all occasions on which the same was seen.
#[must_use]
pub fn seen_together(d: &Diagnosis) -> Vec<String> {
    let mut all: Vec<(String, Vec<&str>)> = Vec::new();
    for s in &d.seen {
        let besides = seen_besides(&s.observed).join("; ");
        match all.iter_mut().find(|(text, _)| *text == besides) {
            Some((_, names)) => names.push(&s.name),
            None if besides.is_empty() => {}
            None => all.push((besides, vec![&s.name])),
        }
    }
    all.into_iter().map(|(text, names)| format!("{}: {text}.", capital(&names.join("; ")))).collect()
}

/// A change in words, with its day.
#[must_use]
pub fn change(settled: &Settled, at: usize) -> String {
    let Some(change) = settled.job.enquiry.changes.get(at) else { return String::new() };
    let day = change.date.0.map_or_else(String::new, |d| format!(" ({d})"));
    format!("{}{day}", change.says())
}

/// A set of causes in words, each change before what it brought about.
#[must_use]
pub fn together(settled: &Settled, e: &Explanation) -> String {
    if e.causes.is_empty() {
        return "Nothing but what was measured, and chance".to_owned();
    }
    let system = settled.job.enquiry.system();
    let mut parts: Vec<(Option<usize>, Vec<String>)> = Vec::new();
    for s in &e.causes {
        let text = lower(&sized(s, system));
        match parts.iter_mut().find(|(at, _)| at.is_some() && *at == s.change) {
            Some((_, list)) => list.push(text),
            None => parts.push((s.change, vec![text])),
        }
    }
    let one = |(at, list): &(Option<usize>, Vec<String>)| match at {
        Some(at) => format!("{}: {}", change(settled, *at), list.join(", and ")),
        None => list.join(", and "),
    };
    capital(&parts.iter().map(one).collect::<Vec<_>>().join("; and "))
}

/// What an explanation would give on the occasions that are to be explained, mg/L: once where it is the same on all of them.
#[must_use]
pub fn outs(d: &Diagnosis, e: &Explanation) -> Vec<String> {
    let bad = e.effluent.iter().zip(&d.seen).filter(|(_, s)| !s.good);
    let mut all: Vec<String> = bad.filter_map(|(c, _)| Some(mg((*c)?, 3))).collect();
    if all.iter().all(|out| *out == all[0]) {
        all.truncate(1);
    }
    all
}

/// A title within a sentence.
fn lower(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |c| c.to_lowercase().chain(chars).collect())
}

/// The mark before a reporting limit.
#[must_use]
pub fn below(detected: bool) -> &'static str {
    if detected { "" } else { "<" }
}

pub(super) fn mg(c: Concentration, digits: usize) -> String {
    print::digits(MG_L.from_si(c.si()), digits)
}

/// What was changed, and how likely it is behind what was observed.
#[must_use]
pub fn changes(settled: &Settled, d: &Diagnosis) -> Vec<String> {
    let worse = d.is_worse();
    let weighed = d.changes.iter().map(|(at, weight)| {
        let says = capital(&change(settled, *at));
        let since = settled.job.enquiry.changes.get(*at).and_then(|c| c.date.0);
        match worse {
            _ if !d.is_measured_since(since) => format!(
                "{says}: no result with a day was measured since, so that what it did to the oil that leaves cannot be told."
            ),
            Some(false) => format!("{says}: no result since is worse than before, so that none has to be explained by it."),
            _ => format!("{says}: {} that it stands behind what was observed.", percent(*weight)),
        }
    });
    let late = d
        .too_late
        .iter()
        .map(|at| format!("{}: nothing was observed since; it explains nothing.", capital(&change(settled, *at))));
    weighed.chain(late).chain(not_parted(settled)).collect()
}

/// That no result lies between changes, so that its day tells none of them apart.
#[must_use]
pub fn not_parted(settled: &Settled) -> Option<String> {
    let e = &settled.job.enquiry;
    let results: Vec<_> =
        e.observations().iter().filter(|o| o.observed.oil_out.is_given()).filter_map(|o| o.observed.date.0).collect();
    let mut days: Vec<_> = e.changes.iter().filter_map(|c| c.date.0).collect();
    days.sort_unstable();
    days.dedup();
    let (first, last) = (*days.first()?, *days.last()?);
    let apart = results.iter().any(|day| *day >= first && *day < last);
    let known = results.iter().any(|day| *day < first) && results.iter().any(|day| *day >= last);
    (first < last && known && !apart).then(|| {
        format!("No result lies between the changes of {first} and {last}: their days do not tell them apart, only the tests do.")
    })
}

/// That what was measured asks for no explanation; nothing where it does, or where nothing was measured.
#[must_use]
pub fn no_worse(d: &Diagnosis) -> Option<String> {
    (d.is_worse() == Some(false)).then(|| {
        let than = if d.calibration.is_some() { "while the unit ran well" } else { "by the calculation with nothing the matter" };
        format!("The results that are to be explained are no higher than was to be expected {than}: as far as they go nothing has to be wrong with the unit. What is said of causes explains only what was seen besides.")
    })
}

/// How many of the results that are to be explained an explanation misses by more than twice their scatter.
#[must_use]
pub fn misses(d: &Diagnosis, e: &Explanation) -> Option<String> {
    let (missed, of) = d.missed(e);
    (missed > 0).then(|| format!(" It misses {missed} of {of} by more than twice their scatter."))
}

/// That none of the explanations fits, and what has to be asked then.
#[must_use]
pub fn nothing_fits(d: &Diagnosis) -> Option<String> {
    let poor = |e: &Explanation| {
        let (missed, of) = d.missed(e);
        of > 1 && 2 * missed > of
    };
    (!d.explanations.is_empty() && d.explanations.iter().all(poor)).then(|| {
        let apart = d.lies_apart().map_or_else(String::new, |s| {
            let day = s.observed.date.0.map_or_else(String::new, |day| format!(" of {day}"));
            format!(" {} mg/L{day} lies farthest from the others: what was different on that day, in flow, washing or the way the sample was taken?", s.measured.map(|c| mg(c, 3)).unwrap_or_default())
        });
        format!("None of these fits: each misses more than half of the results, and their shares are not to be relied on. Something changed between these results that was not said.{apart}")
    })
}

/// Columns of the bars of the time line.
const BAR: f64 = 30.0;

/// Observations and changes in the order of their days, each result as a bar; nothing when nothing has a day.
#[must_use]
pub fn time_line(settled: &Settled, d: &Diagnosis, width: usize) -> String {
    let e = &settled.job.enquiry;
    if e.changes.is_empty() && d.seen.iter().all(|s| s.observed.date.0.is_none()) {
        return String::new();
    }
    let most = d.seen.iter().filter_map(|s| s.measured).map(Typed::si).fold(0.0, f64::max);
    // Day, change before result, text; what has no day comes last.
    let mut lines: Vec<(Option<i64>, u8, String)> = Vec::new();
    for seen in &d.seen {
        let o = &seen.observed;
        let result = seen.measured.map_or_else(
            || "     - mg/L".to_owned(),
            |c| format!("{:>6} mg/L", format!("{}{}", below(seen.detected), mg(c, 3))),
        );
        let share = seen.measured.map_or(0.0, |c| if most > 0.0 { c.si() / most } else { 0.0 });
        let columns = stillrise_units::math::floor(share * BAR + 0.5).clamp(0.0, BAR) as usize;
        let bar = if seen.good { "-" } else { "=" }.repeat(columns);
        let clock = if o.time.0.is_some() { format!(" {}", o.time) } else { String::new() };
        let day = o.date.0.map_or_else(|| "no day".to_owned(), |day| day.to_string());
        let text = format!("{day:<10}{clock:<6} {result}  {bar} {}", period(o, seen.good));
        lines.push((o.date.0.map(|day| day.number()), 1, format!("{}\n", text.trim_end())));
    }
    for c in &e.changes {
        let day = c.date.0.map_or_else(String::new, |day| day.to_string());
        let text = hang(&format!("{day} >> {}", c.says()), width, 0, 14);
        lines.push((c.date.0.map(|day| day.number()), 0, text));
    }
    lines.sort_by_key(|(day, order, _)| (day.is_none(), *day, *order));
    lines.into_iter().map(|(_, _, text)| text).collect()
}

fn period(o: &Observed, good: bool) -> String {
    match (o.regime.as_deref(), good) {
        (Some(regime), _) => regime.to_owned(),
        (None, true) => "good".to_owned(),
        (None, false) => String::new(),
    }
}

/// What a test costs.
#[must_use]
pub fn cost(of: u8) -> &'static str {
    match of {
        0 | 1 => "a look",
        2 => "an hour",
        3 => "a laboratory sample",
        4 => "a day",
        _ => "a shutdown",
    }
}

/// When to sample again.
#[must_use]
pub fn again(a: &Again, system: System) -> String {
    let unit = system.pick((&GAL, &M3));
    let volume = format!("{} {}", print::digits(unit.from_si(a.water.si()), 2), unit.symbol);
    let hours = |(flow, time): (Flow, Time)| {
        let at = print::in_prose(flow.si(), system.pick(FLOW_UNITS));
        format!(", {} h at {at}", print::digits(H.from_si(time.si()), 2))
    };
    let running = a.running.map_or_else(String::new, hours);
    let days = if a.days == 1 { "one day".to_owned() } else { format!("{} days", a.days) };
    format!(
        "after {} changes of the unit's water ({volume}{running}) and not before {days} of normal operation",
        print::digits(EXCHANGES, 1)
    )
}

/// What to expect of results between two ends.
#[must_use]
pub fn expect(range: (Concentration, Concentration)) -> String {
    format!("{} to {} mg/L", mg(range.0, 2), mg(range.1, 2))
}

/// A step in sentences, without its number.
#[must_use]
pub fn step(settled: &Settled, d: &Diagnosis, s: &Step) -> String {
    let system = settled.job.enquiry.system();
    let by = s.change.map_or_else(String::new, |at| format!(" [{}]", change(settled, at)));
    let then = s.expect.map_or_else(
        || "; no oil is then to be found where it sounded for none".to_owned(),
        |range| {
            format!(
                "; if this is at work, and it alone is put right while the other causes of the likeliest set that holds it stay, nine in ten results should lie between {}",
                expect(range).replace(" to ", " and ")
            )
        },
    );
    let then = if s.cause.size.is_some() && s.expect.is_none() { String::new() } else { then };
    let tells = s.expect.and_then(|range| telling(d, range)).map_or_else(String::new, |text| format!(" {text}"));
    format!(
        "{} ({}){by}: {} Test, {}: {} If so: {} Sample again {}{then}.{tells}",
        s.cause.title,
        percent(s.weight),
        capital(s.cause.how),
        cost(s.cause.cost),
        super::test(d, s.cause, system),
        s.cause.remedy,
        again(&s.again, system),
    )
}

/// All steps as numbered items.
pub(super) fn steps(settled: &Settled, d: &Diagnosis, width: usize) -> String {
    let numbered = d.steps.iter().enumerate();
    numbered.map(|(k, s)| item(&format!("{}.", k + 1), &step(settled, d, s), width)).collect()
}

/// Shares of the weight from which the samples are to be looked at before the plant. Judgement.
const SAMPLES_FIRST: f64 = 0.5;

/// That it is likelier the sampling than the water that changed, where it is.
#[must_use]
pub fn samples_first(d: &Diagnosis) -> Option<String> {
    // No cause in the unit makes oil: what leaves above what arrives was in the water, or came out of the unit's own store.
    // What the good period only infers is no measure of it.
    let arrives = |s: &&Seen| s.measured.is_some_and(|out| out > s.influent.0);
    if let Some(s) = d.seen.iter().filter(|s| !s.good && s.detected).rfind(arrives) {
        let day = s.observed.date.0.map_or_else(String::new, |day| format!(" ({day})"));
        return Some(format!(
            "More oil left{day}, {} mg/L, than the {} mg/L that {}: more comes than that, or oil is carried out of the unit's own store. Have the water that comes sampled at the same time as what leaves, before anything is changed or bought.",
            mg(s.measured.unwrap_or(s.influent.0), 3),
            mg(s.influent.0, 3),
            if s.influent.1 { "were measured to arrive" } else { "were taken to arrive" }
        ));
    }
    // Samples that read too low explain no complaint: the calculation lies above the results.
    let share = |reads: &dyn Fn(&Sized) -> bool| -> f64 {
        let holds = |e: &&Explanation| e.causes.iter().any(|s| OF_THE_SAMPLE.contains(&s.cause.id) && reads(s));
        d.explanations.iter().filter(holds).map(|e| e.weight).sum()
    };
    let low = |s: &Sized| s.size.is_some_and(|size| size < 1.0);
    if share(&low) >= SAMPLES_FIRST {
        return Some(
            "The results lie below what the calculation gives with nothing the matter. Most likely less oil arrives than was taken, or it rises better; samples that read too low are the other way to explain it. Have the water that comes sampled first: until then the causes below explain little.".to_owned(),
        );
    }
    let high = share(&|s| !low(s));
    (high >= SAMPLES_FIRST).then(|| {
        format!(
            "{} that the results changed with the sampling and not with the water: have bottles taken at once by the old way and the new, to one laboratory, before anything is changed or bought.",
            percent(high)
        )
    })
}

/// What to expect when all of it is put right.
#[must_use]
pub fn all_put_right(d: &Diagnosis) -> Option<String> {
    let ends = d.as_it_ran?;
    let range = expect(ends).replace(" to ", " and ");
    let about = match &d.calibration {
        Some(c) => format!(
            "with the flow and the oil of that time, the unit runs as it ran well: {} {} mg/L that were measured then",
            if c.undetected > 0 { "at most the" } else { "about the" },
            mg(c.mean, 3)
        ),
        None => format!(
            "no more flow and oil than the basis has, and no colder water, the unit runs as the basis has it: about {} mg/L",
            mg(Concentration::from_si(sqrt(ends.0.si() * ends.1.si())), 3)
        ),
    };
    // Where the results fell back by themselves, low ones tell nothing.
    let telling = match d.jump.and_then(|j| j.ended) {
        Some(_) => " The results fell back by themselves: only some taken when the same season or work comes back tell whether it helped.".to_owned(),
        None => telling(d, ends).map_or_else(String::new, |text| format!(" {text}")),
    };
    Some(format!("With all that is the matter put right, and {about}, nine in ten results between {range}.{telling}"))
}

/// What tells whether a remedy helped, where results before it lie in the band expected after it.
#[must_use]
pub fn telling(d: &Diagnosis, range: (Concentration, Concentration)) -> Option<String> {
    let found = d.telling(range).filter(|_| d.jump.is_none_or(|j| j.ended.is_none()))?;
    let within: Vec<String> = found.within.iter().map(|c| mg(*c, 3)).collect();
    let lies = if within.len() == 1 { "lies" } else { "lie" };
    let before = format!("{} mg/L, measured before, {lies} there too", within.join(", "));
    Some(match found.results {
        Some((n, below)) => format!(
            "{before}: one result does not tell whether it helped, {n} do: their geometric mean then lies below {} mg/L, by 19 in 20.",
            mg(below, 2)
        ),
        None => format!("{before}: it would move the results too little for samples to tell whether it helped."),
    })
}
