//! The fifteen-minute answer, as the text of a mail.

use crate::render::text::{hang, item, wrap};
use crate::summary::{CAUTION, headline, moves, that_matter};
use stillrise_design::triage::Weight;
use stillrise_search::Settled;
use stillrise_units::catalog::{FT, IN, KG, LB, M, MM};
use stillrise_units::{Typed, Unit, print};

/// Questions in the mail.
const ASKED: usize = 5;
/// Width of the mail's lines.
const WIDTH: usize = 76;

/// The mail.
#[must_use]
pub fn reply(settled: &Settled) -> String {
    let head = &settled.job.enquiry.head;
    let system = settled.job.enquiry.system();
    let show = |si: f64, pair: (&'static Unit, &'static Unit)| print::with_unit(si, system.pick(pair));
    let title = head.title.as_deref().unwrap_or("your enquiry");
    let mut out = format!("Subject: {}{title}: oil-water separator, first answer\n\n", head.project.as_deref().map_or_else(String::new, |p| format!("{p}, ")));
    let mut say = |text: &str| {
        out.push_str(&wrap(text, WIDTH, 0));
        out.push('\n');
    };
    say("Thank you for your enquiry. This is a first answer on what you told us; it is preliminary.");
    for line in headline(settled) {
        say(&line);
    }
    let design = &settled.job.design;
    if let Some(train) = &design.train {
        let p = &train.unit.particulars;
        let n = train.count.q.si();
        let each = if n > 1.0 { ", each" } else { "" };
        let f = &train.unit.frame;
        let mut facts = vec![format!("{} {}{}", print::digits(n, 2), if n > 1.0 { "units in parallel: " } else { "unit: " }, p.model)];
        if let Some([l, w, h]) = p.shipping {
            facts.push(format!("shipping size{each} {} x {} x {}", show(l.q.si(), (&IN, &MM)), show(w.q.si(), (&IN, &MM)), show(h.q.si(), (&IN, &MM))));
        }
        facts.push(format!("footprint{each} {} x {} inside, walls {} high", show(f.length.q.si(), (&FT, &M)), show(f.width.q.si(), (&FT, &M)), show(f.height.q.si(), (&FT, &M))));
        if let Some(weight) = p.empty_weight {
            facts.push(format!("weight empty{each} {}", show(weight.q.si(), (&LB, &KG))));
        }
        facts.push(match &p.price {
            Some((price, currency)) => format!("budget{each} {} {currency}, not a quotation", print::digits(*price, 3)),
            None => "budget: to follow; the unit is made to measure".to_owned(),
        });
        if let Some(time) = &p.lead_time {
            facts.push(format!("delivery {time}"));
        }
        let fails = settled.fails() || design.triage.iter().any(|l| l.weight == Weight::Blocks);
        say(if fails { "What we would have offered, and what stands against it:" } else { "What we would offer:" });
        for fact in facts {
            out.push_str(&item("-", &fact, WIDTH));
        }
        for stage in train.stages.iter().filter(|s| s.asked_for) {
            let size = stage.size.as_ref().map_or_else(String::new, |(label, value, units)| format!(" ({label} {})", stillrise_design::provenance::show(value, Some(*units), system)));
            out.push_str(&item("-", &format!("needed beside it: {}{size}, because {}", stage.name, stage.why), WIDTH));
        }
        out.push('\n');
    }
    let against: Vec<String> = settled.verdicts.iter().filter(|v| v.stands_failed()).map(|v| format!("{}: {}. {}", v.rule.title, v.verdict.says(), v.rule.remedy)).collect();
    if !against.is_empty() {
        out.push_str("What must be settled first:\n");
        for line in against {
            out.push_str(&item("-", &line, WIDTH));
        }
        out.push('\n');
    }
    let matter = that_matter(settled);
    if !matter.is_empty() {
        out.push_str("Please answer, most important first:\n");
        for (i, q) in matter.iter().take(ASKED).enumerate() {
            out.push_str(&item(&format!("{}.", i + 1), &format!("{} We took {} (plausibly {} to {}). {}", q.text, q.now, q.range.0, q.range.1, moves(q)), WIDTH));
        }
        out.push('\n');
    }
    let assumed: Vec<String> = matter.iter().skip(ASKED).map(|q| format!("{} {}", q.label, q.now)).collect();
    if !assumed.is_empty() {
        out.push_str(&hang(&format!("We further assumed: {}.", assumed.join("; ")), WIDTH, 0, 2));
        out.push('\n');
    }
    out.push_str(&wrap(CAUTION, WIDTH, 0));
    if let Some(by) = &head.prepared_by {
        out.push_str(&format!("\n{by}\n"));
    }
    out
}
