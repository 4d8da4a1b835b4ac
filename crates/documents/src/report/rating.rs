//! What was observed at a unit that stands, what explains it, and what to test next.

use super::Report;
use super::blocks::{Table, number, wide};
use super::{capital, sentence};
use crate::rating::{beyond, larger, test, together};
use crate::risk::percent;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::enquiry::blocks::Observed;
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
    for text in beyond(d) {
        r.out.lead("Beyond the basis.", &text);
    }
    r.out.heading("What explains it");
    let mut table = Table::new([
        number("Weight", ""),
        wide("Causes, each with its most probable size", 3.0),
        wide("Oil out then, mg/L", 1.0),
    ]);
    for e in d.explanations.iter().filter(|e| e.weight >= WORTH) {
        let outs: Vec<String> = e.effluent.iter().flatten().map(|c| r.digits(*c, super::effluent::MG, 3)).collect();
        table.row([percent(e.weight), together(e, r.system), outs.join(", ")]);
    }
    r.out.table(&table);
    let lines: Vec<String> = d.worked.iter().flatten().map(|at| r.no(*at)).collect();
    let worked = if lines.is_empty() {
        String::new()
    } else {
        format!(" The leading one is worked in the trail, up to No. {}.", lines.join(" and "))
    };
    r.out.remark(&format!(
        "Weights among {} sets of one or two causes, by how well each explains all that was observed, how usual its sizes are and how often such causes occur; each size lies between what explains best and what is usual, and is good to a fifth; the frequencies are judgement.{worked}",
        d.sets
    ));
    r.out.heading("What to test next");
    if let Some(next) = d.next {
        r.out.lead("Cheapest that tells the leading explanations apart:", next.test);
    }
    let mut table = Table::new([wide("Cause", 1.2), number("Weight", ""), wide("Test", 2.0), wide("If so", 2.0)]);
    for (cause, weight) in d.causes.iter().filter(|(_, w)| *w >= WORTH) {
        let title = format!("{}. {}", cause.title, cause.how);
        table.row([title, percent(*weight), test(d, cause), cause.remedy.to_owned()]);
    }
    r.out.table(&table);
    r.out.lead("Would a larger unit help?", &sentence(larger(d)));
    r.out.remark("Opening, entering or cleaning a unit: confined space, flammable vapour and lifting rules of the site and the local code come first.");
}

/// What was seen on an occasion besides the numbers of water and oil.
fn besides(o: &Observed) -> String {
    let mut parts = Vec::new();
    parts.extend(o.looks.0.map(|w| format!("looks {}", w.word())));
    parts.extend(o.jar.0.map(|w| format!("a jar {}", w.word())));
    parts.extend(o.alarm.0.map(|w| format!("alarm: {}", w.word())));
    let depths = [("oil layer", &o.oil_layer), ("sludge", &o.sludge), ("backed up", &o.backed_up)];
    parts.extend(depths.into_iter().filter_map(|(what, q)| Some(format!("{what} {}", q.claim()?.written.text))));
    parts.join("; ")
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
    for (s, o) in d.seen.iter().zip(&r.settled.job.enquiry.observed) {
        table.row([
            capital(&s.name),
            mark(r.digits(s.flow.0, FLOW_UNITS, 3), s.flow.1),
            mark(r.digits(s.influent.0, super::effluent::MG, 3), s.influent.1),
            mark(print::digits(temperature.from_si(s.temperature.0.si()), 3), s.temperature.1),
            s.measured.map_or_else(|| "–".to_owned(), |c| r.digits(c, super::effluent::MG, 3)),
            super::effluent::brief(s.expected, Some(s.influent.0)),
            besides(o),
        ]);
    }
    r.out.table(&table);
    r.out.remark("In brackets: not measured, taken from the basis. Should be: by the chain of the design, clean, on that occasion.");
}
