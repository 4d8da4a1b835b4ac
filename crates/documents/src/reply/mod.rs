//! The fifteen-minute answer, as the text of a mail to the customer: the answer first, then the
//! offer, what must change, a few questions, what was assumed.

use crate::render::text::{item, wrap};
use crate::summary::{CAUTION, headline, that_matter};
use std::collections::BTreeSet;
use stillrise_design::triage::Weight;
use stillrise_search::Settled;
use stillrise_units::catalog::{FT, IN, KG, LB, M, MM};
use stillrise_units::{Typed, Unit, print};

/// Questions in the mail.
const ASKED: usize = 6;
/// Assumptions in the mail.
const ASSUMED: usize = 8;
/// Width of the mail's lines.
const WIDTH: usize = 76;

type Pair = (&'static Unit, &'static Unit);

/// The mail.
#[must_use]
pub fn reply(settled: &Settled) -> String {
    let head = &settled.job.enquiry.head;
    let title = head.title.as_deref().unwrap_or("your enquiry");
    let project = head.project.as_deref().map_or_else(String::new, |p| format!("{p}, "));
    let mut out = format!("Subject: {project}{title}: oil-water separator, first answer\n\nGood day,\n\n");
    say(
        &mut out,
        "thank you for your enquiry. This is a first answer to what you told us; it is preliminary and no quotation.",
    );
    for line in headline(settled) {
        say(&mut out, &line);
    }
    if let Some(number) = expected(settled) {
        say(&mut out, &number);
    }
    offer(&mut out, settled);
    must_change(&mut out, settled);
    questions(&mut out, settled);
    assumed(&mut out, settled);
    out.push_str(&wrap(CAUTION, WIDTH, 0));
    out.push_str("\nKind regards\n");
    if let Some(by) = &head.prepared_by.0 {
        out.push_str(&format!("{by}\n"));
    }
    out
}

fn say(out: &mut String, text: &str) {
    out.push_str(&wrap(text, WIDTH, 0));
    out.push('\n');
}

/// A list under a line, then a blank line; nothing when the list is empty.
fn list(out: &mut String, lead: &str, numbered: bool, lines: &[String]) {
    if lines.is_empty() {
        return;
    }
    out.push_str(&wrap(lead, WIDTH, 0));
    for (i, line) in lines.iter().enumerate() {
        let mark = if numbered { format!("{}.", i + 1) } else { "-".to_owned() };
        out.push_str(&item(&mark, line, WIDTH));
    }
    out.push('\n');
}

/// What is expected at the outlet, where gravity is not the answer: the customer asks for a number.
fn expected(settled: &Settled) -> Option<String> {
    let (basis, performance) = (settled.job.design.basis.as_ref()?, settled.job.design.performance.as_ref()?);
    let verdict = performance
        .limits
        .iter()
        .find(|l| l.predicted && l.word >= stillrise_design::performance::limit::Word::NotShown)?;
    let shown = stillrise_design::performance::limit::shown;
    let mean = shown(verdict.mean.q, verdict.influent.q);
    let most = shown(verdict.expected.q, verdict.influent.q);
    let limit = crate::summary::mg_l(basis.limits[verdict.limit].value.q);
    Some(if mean == most {
        format!("As it stands we expect {mean} at the outlet, against {limit}.")
    } else {
        format!(
            "As it stands we expect {mean} at the outlet on the mean, and {most} in single samples while the influent is at its peak, against {limit}."
        )
    })
}

fn offer(out: &mut String, settled: &Settled) {
    let Some(train) = &settled.job.design.train else { return };
    if !settled.job.enquiry.observed.is_empty() {
        let name = &train.unit.particulars.model;
        say(
            out,
            &format!(
                "Your unit, {name}, stands already. We offer none before the tests that tell the causes apart are made; the rating beside this names them."
            ),
        );
        return;
    }
    let system = settled.job.enquiry.system();
    let show = |si: f64, pair: Pair| print::with_unit(si, system.pick(pair));
    let p = &train.unit.particulars;
    let n = train.count.q.si();
    let each = if n > 1.0 { " each" } else { "" };
    let f = &train.unit.frame;
    let mut facts =
        vec![if n > 1.0 { format!("{} x {}, side by side", print::digits(n, 2), p.model) } else { p.model.clone() }];
    match p.shipping {
        Some([l, w, h]) => facts.push(format!(
            "shipping size{each} {} x {} x {}",
            show(l.q.si(), (&IN, &MM)),
            show(w.q.si(), (&IN, &MM)),
            show(h.q.si(), (&IN, &MM))
        )),
        None => facts.push(format!(
            "inside{each} {} x {}, walls {} high",
            show(f.length.q.si(), (&FT, &M)),
            show(f.width.q.si(), (&FT, &M)),
            show(f.height.q.si(), (&FT, &M))
        )),
    }
    if let Some(weight) = p.empty_weight {
        facts.push(format!("weight empty{each} {}", show(weight.q.si(), (&LB, &KG))));
    }
    let beside: Vec<&stillrise_design::train::Stage> = train.stages.iter().filter(|s| s.asked_for).collect();
    let without = if beside.is_empty() {
        "without freight and installation"
    } else {
        "without freight, installation and what is needed beside it"
    };
    facts.push(match &p.price {
        Some((price, currency)) if n > 1.0 => format!(
            "budget {} {currency} for all, {} {currency} each, {without}",
            print::digits(price * n, 3),
            print::digits(*price, 3)
        ),
        Some((price, currency)) => format!("budget {} {currency}, {without}", print::digits(*price, 3)),
        None => "budget: to follow, the unit is made to measure".to_owned(),
    });
    if let Some(time) = &p.lead_time {
        facts.push(format!("delivery {time}"));
    }
    facts.extend(beside.iter().map(|s| {
        let size = s.size.as_ref().map_or_else(String::new, |(label, value, units)| {
            format!(", {label} {}", stillrise_design::provenance::show(value, Some(*units), system))
        });
        format!("needed beside it, not in this budget: {}{size}", s.name)
    }));
    let blocked = settled.job.design.triage.iter().any(|l| l.weight == Weight::Blocks);
    let lead = match (blocked, settled.fails()) {
        (true, _) => {
            "We would not sell a separator for this as it stands. Once the points below are settled, the size would be about:"
        }
        (false, true) => "The unit that comes nearest; the points below must be settled first:",
        (false, false) => "What we would offer:",
    };
    list(out, lead, false, &facts);
}

fn must_change(out: &mut String, settled: &Settled) {
    let mut lines: Vec<String> = settled
        .job
        .design
        .triage
        .iter()
        .filter(|l| l.weight >= Weight::Partly)
        .map(|l| format!("{}: {}", crate::summary::capital(&l.subject), l.could))
        .collect();
    // What the headline and the triage have said is not said again.
    let said = [
        "not-a-gravity-duty",
        "only-partly-gravity",
        "limit-it-cannot-touch",
        "limit-not-shown",
        "promise-under-floor",
        "emulsion-above-limit",
    ];
    lines.extend(
        settled
            .verdicts
            .iter()
            .filter(|v| v.stands_failed() && !said.contains(&v.rule.id))
            .map(|v| format!("{}: {}.", v.rule.title, v.verdict.says())),
    );
    list(out, "What must change or be settled:", false, &lines);
}

fn questions(out: &mut String, settled: &Settled) {
    let mut seen = BTreeSet::new();
    let lines: Vec<String> = that_matter(settled)
        .into_iter()
        .filter(|q| seen.insert(q.text.clone()))
        .take(ASKED)
        .map(|q| format!("{} We took {}.", q.text, q.now))
        .collect();
    list(out, "Please answer; these move the result most:", true, &lines);
}

fn assumed(out: &mut String, settled: &Settled) {
    let rain = settled.job.design.basis.as_ref().and_then(|b| b.storm.as_ref()).map(|storm| {
        let system = settled.job.enquiry.system();
        let show = |si: f64, pair: Pair| print::with_unit(si, system.pick(pair));
        format!(
            "rain of {} on {}, which gives {}",
            show(storm.intensity.q.si(), (&stillrise_units::catalog::IN_H, &stillrise_units::catalog::MM_H)),
            show(storm.area.q.si(), (&stillrise_units::catalog::FT2, &stillrise_units::catalog::M2)),
            show(storm.flow.q.si(), stillrise_design::basis::FLOW_UNITS)
        )
    });
    let mut seen = BTreeSet::new();
    let rest = that_matter(settled)
        .into_iter()
        .skip(ASKED)
        .filter(|q| seen.insert(q.label.clone()))
        .take(ASSUMED)
        .map(|q| format!("{} {}", q.label, q.now));
    let lines: Vec<String> = rain.into_iter().chain(rest).collect();
    list(out, "We based this on:", false, &lines);
}
