//! What was observed at a unit that stands, what explains it, and what to test next.

use super::Report;
use super::blocks::{Table, number, wide};
use super::capital;
use crate::rating::{beyond, flow_before, larger, test, together, words};
use crate::risk::percent;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_search::diagnosis::Diagnosis;
use stillrise_units::catalog::{DEG_C, DEG_F};
use stillrise_units::{Typed, print};

/// Explanations and causes that are printed: weighing at least so much.
const WORTH: f64 = 0.01;

/// The section, for a job with observations that were looked into.
pub(super) fn rating(r: &mut Report<'_>) {
    let settled = r.settled;
    let Some(d) = &settled.diagnosis else { return };
    r.out.section("Rating of the unit that stands");
    observed(r, d);
    for text in crate::summary::measured::unplaced(settled).into_iter().chain(flow_before(settled, d)) {
        r.out.para(&text);
    }
    for text in beyond(d) {
        r.out.lead("Beyond the basis.", &text);
    }
    for text in crate::rating::period::good_period(d) {
        r.out.lead("Good period.", &text);
    }
    for text in words::changes(settled, d) {
        r.out.lead("Changed.", &text);
    }
    r.out.heading("What explains it");
    if d.leading().is_none() && d.explanations.len() > 1 {
        r.out.para("No explanation stands out; the likeliest first.");
    }
    let mut table = Table::new([
        number("Weight", ""),
        wide("Causes, each with its most probable size", 3.0),
        wide("Oil out then, mg/L", 1.0),
    ]);
    for e in d.explanations.iter().filter(|e| e.weight >= WORTH) {
        table.row([percent(e.weight), together(settled, e), words::outs(d, e).join(", ")]);
    }
    r.out.table(&table);
    let lines: Vec<String> = d.worked.iter().flatten().map(|at| r.no(*at)).collect();
    let worked = if lines.is_empty() {
        String::new()
    } else {
        format!(" The first one is worked in the trail, up to No. {}.", lines.join(" and "))
    };
    r.out.remark(&format!(
        "Weights among {} sets of up to three causes, three only among those that pairs point to, by how well each explains all that was observed, how usual its sizes are and how often such causes occur; each size lies between what explains best and what is usual, and is good to a fifth; the frequencies are judgement.{worked}",
        d.sets
    ));
    r.out.heading("What to test next");
    if let Some(next) = d.next {
        r.out.lead(
            "Cheapest that tells the likeliest explanations apart:",
            &capital(&test(d, next, settled.job.enquiry.system())),
        );
    }
    steps(r, d);
    r.out.lead("Would a larger unit help?", &larger(settled, d).join(" "));
    r.out.remark("Opening, entering or cleaning a unit: confined space, flammable vapour and lifting rules of the site and the local code come first.");
}

/// The steps, cheapest first, and the causes that weigh too little for one.
fn steps(r: &mut Report<'_>, d: &Diagnosis) {
    let settled = r.settled;
    let mut table = Table::new([
        number("Step", ""),
        wide("Cause", 1.4),
        number("Weight", ""),
        wide("Test", 2.0),
        wide("If so", 1.8),
        wide("Results then, mg/L", 0.9),
    ]);
    for (k, s) in d.steps.iter().enumerate() {
        let by = s.change.map_or_else(String::new, |at| format!(" {}.", capital(&words::change(settled, at))));
        let title = format!("{}.{by} {}", s.cause.title, s.cause.how);
        let checked =
            format!("{}: {}", capital(words::cost(s.cause.cost)), test(d, s.cause, settled.job.enquiry.system()));
        let again = format!("{} Sample again {}.", s.cause.remedy, words::again(&s.again, r.system));
        let tells = s.expect.and_then(|range| words::telling(d, range)).map_or_else(String::new, |t| format!(". {t}"));
        let then = s.expect.map_or_else(|| "–".to_owned(), |range| format!("{}{tells}", words::expect(range)));
        table.row([format!("{}", k + 1), title, percent(s.weight), checked, again, then]);
    }
    r.out.table(&table);
    let small: Vec<String> = d
        .causes
        .iter()
        .filter(|(c, w)| *w >= WORTH && d.steps.iter().all(|s| s.cause.id != c.id))
        .map(|(c, w)| format!("{} ({})", c.title, percent(*w)))
        .collect();
    if !small.is_empty() {
        r.out.remark(&format!("Of less weight: {}.", small.join("; ")));
    }
    if let Some(text) = words::all_put_right(d) {
        r.out.lead("All put right.", &text);
    }
    r.out.remark("Results then: nine in ten, if that cause is at work and it alone is put right, while the other causes of the weightiest set that holds it stay; by the scatter of the results. Days are judgement; three changes of the water leave one part in twenty of the old.");
}

fn observed(r: &mut Report<'_>, d: &Diagnosis) {
    r.out.heading("What was observed");
    let temperature = r.system.pick((&DEG_F, &DEG_C));
    let mut table = Table::new([
        wide("Occasion", 1.6),
        number("Flow", r.symbol(FLOW_UNITS)),
        number("Oil in", "mg/L"),
        number("Water", temperature.symbol),
        number("Oil out,|measured", "mg/L"),
        number("Should|be", "mg/L"),
        wide("Seen besides", 1.6),
    ]);
    let mark = |text: String, measured: bool| if measured { text } else { format!("({text})") };
    for s in &d.seen {
        table.row([
            capital(&s.name),
            mark(r.digits(s.flow.0, FLOW_UNITS, 3), s.flow.1),
            mark(r.digits(s.influent.0, super::effluent::MG, 3), s.influent.1),
            mark(print::digits(temperature.from_si(s.temperature.0.si()), 3), s.temperature.1),
            s.measured.map_or_else(
                || "–".to_owned(),
                |c| format!("{}{}", words::below(s.detected), r.digits(c, super::effluent::MG, 3)),
            ),
            super::effluent::brief(s.expected, Some(s.influent.0)),
            words::besides(&s.observed),
        ]);
    }
    r.out.table(&table);
    r.out.remark(&format!(
        "{} It is found by the chain of the design, clean, on that occasion.",
        crate::rating::BRACKETS
    ));
}
