//! What `rate` prints: what a unit that stands should do, and what explains that it does not.

mod json;
pub mod words;

pub use json::rating_json;
pub use words::{change, sized, together};

use crate::render::text::{Table, hang, item};
use crate::risk::percent;
use crate::summary::{CAUTION, capital, headline, mg_l, section, total_out};
use stillrise_checks::Judged;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_search::Settled;
use stillrise_search::diagnosis::{Beyond, Diagnosis, Seen};
use stillrise_units::catalog::{DEG_C, DEG_F};
use stillrise_units::{Typed, print};

/// Explanations that are printed.
const SHOWN: usize = 6;

/// What the leading explanation says of a larger unit.
#[must_use]
pub fn larger(d: &Diagnosis) -> &'static str {
    if !d.asks_too_much() {
        return "The unit is not what falls short under the leading explanation: a larger one is no remedy.";
    }
    match d.larger_helps() {
        Some(true) => {
            "Under the leading explanation a unit of twice the area would take at least a third off the effluent."
        }
        Some(false) => {
            "Under the leading explanation a larger unit would not help: one of twice the area would take less than a third off the effluent."
        }
        None => "No effluent was measured, so nothing can be said of a larger unit.",
    }
}

/// What was measured beyond the basis, a sentence for each occasion.
#[must_use]
pub fn beyond(d: &Diagnosis) -> Vec<String> {
    let one = |b: &Beyond| match b {
        Beyond::Flow(over) => format!("the flow is {} times that of the basis", print::digits(*over, 2)),
        Beyond::Influent(over) => format!("{} times the oil of the basis arrives", print::digits(*over, 2)),
        Beyond::Colder(k) => format!("the water is {} K colder than the coldest of the basis", print::digits(*k, 2)),
    };
    let said = |s: &Seen| {
        let within = s.within?;
        let what = s.beyond.iter().map(one).collect::<Vec<_>>().join(", ");
        let [now, then] = [s.expected, within].map(|c| total_out(c, s.influent.0));
        Some(format!("{}: {what}. That alone takes what should leave from {then} to {now} mg/L.", capital(&s.name)))
    };
    d.seen.iter().filter_map(said).collect()
}

/// The test of a cause, or that it was made.
#[must_use]
pub fn test(d: &Diagnosis, cause: &stillrise_search::diagnosis::causes::Cause) -> String {
    if d.is_tested(cause) { "made; see what was observed.".to_owned() } else { cause.test.to_owned() }
}

/// The rating as plain text.
#[must_use]
pub fn rating_text(settled: &Settled, d: &Diagnosis, width: usize) -> String {
    let system = settled.job.enquiry.system();
    let mut out = format!("{}\n", settled.job.enquiry.head.title.as_deref().unwrap_or("untitled"));
    out.push_str(&section("What it should do"));
    for text in headline(settled) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    out.push_str(&section("Where it falls short of its duty"));
    let failing: Vec<&Judged> = settled.verdicts.iter().filter(|j| j.stands_failed()).collect();
    if failing.is_empty() {
        out.push_str("No rule fails: as built, it fits its duty.\n");
    }
    for j in failing {
        out.push_str(&item("-", &format!("{}: {}. {}", j.rule.title, j.verdict.says(), j.rule.remedy), width));
    }
    out.push_str(&section("What was observed"));
    let flow = system.pick(FLOW_UNITS);
    let temperature = system.pick((&DEG_F, &DEG_C));
    let mut table = Table::new([
        "occasion",
        &format!("flow, {}", flow.symbol),
        "oil in, mg/L",
        &format!("water, {}", temperature.symbol),
        "oil out, mg/L",
        "should be, mg/L",
    ]);
    let mark = |text: String, measured: bool| if measured { text } else { format!("({text})") };
    let n = |si: f64| print::digits(stillrise_units::catalog::MG_L.from_si(si), 3);
    for s in &d.seen {
        table.row([
            s.name.clone(),
            mark(print::digits(flow.from_si(s.flow.0.si()), 3), s.flow.1),
            mark(n(s.influent.0.si()), s.influent.1),
            mark(print::digits(temperature.from_si(s.temperature.0.si()), 3), s.temperature.1),
            s.measured.map_or_else(|| "-".to_owned(), |c| n(c.si())),
            total_out(s.expected, s.influent.0),
        ]);
    }
    out.push_str(&table.render(width));
    out.push_str(&hang("In brackets: not measured, taken from the basis.", width, 0, 0));
    for text in beyond(d) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    let line = words::time_line(settled, d, width);
    if !line.is_empty() {
        out.push_str(&section("Time line"));
        out.push_str(&line);
    }
    for text in words::good_period(d).into_iter().chain(words::changes(settled, d)) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    out.push_str(&section("What explains it"));
    for (k, e) in d.explanations.iter().take(SHOWN).enumerate() {
        let outs = words::outs(d, e);
        let then = if outs.is_empty() {
            String::new()
        } else {
            format!(" It would give {} mg/L where that was measured.", outs.join(", "))
        };
        out.push_str(&item(
            &format!("{}.", k + 1),
            &format!("{}: {}.{then}", percent(e.weight), together(settled, e)),
            width,
        ));
    }
    out.push_str(&hang(
        &format!(
            "Weights among {} sets of up to three causes, three only among those that pairs point to, by how well each explains all that was observed, how usual its sizes are and how often such causes occur. Each size is the most probable one, between what explains best and what is usual, good to a fifth; frequencies are judgement; the oil is found with the chain of the design.",
            d.sets
        ),
        width,
        0,
        0,
    ));
    out.push_str(&section("What to test next"));
    if let Some(next) = d.next {
        out.push_str(&hang(&format!("Cheapest that tells the leading explanations apart: {}", next.test), width, 0, 2));
    }
    out.push_str(&words::steps(settled, d, width));
    if let Some(text) = words::all_put_right(d) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    out.push_str(&section("Would a larger unit help?"));
    out.push_str(&hang(larger(d), width, 0, 2));
    if let Some((now, then)) = d.explanations.first().and_then(|lead| d.with_larger(lead).next()) {
        out.push_str(&hang(&format!("{} now, {} then.", mg_l(now), mg_l(then)), width, 0, 2));
    }
    out.push_str(&section("Cautions"));
    out.push_str(&hang(CAUTION, width, 0, 0));
    out
}
