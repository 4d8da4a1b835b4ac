//! The cover: whose job, what comes out of it, and the status.

use super::blocks::set;
use super::{Report, sentence};
use serde_json::{Value, json};
use stillrise_checks::Grade;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::Kind;
use stillrise_design::enquiry::blocks::Status;
use stillrise_design::performance::limit::Word;
use stillrise_design::performance::promise::Promise;
use stillrise_design::provenance::Pair;
use stillrise_design::triage::Weight;
use stillrise_units::System;
use stillrise_units::catalog::{FT2, GAL, IN, M2, M3, MG_L, MM};

const NOT_STATED: &str = "not stated";

/// Head, headline and foot of the report as the template takes them; the blocks come beside.
pub(crate) fn cover(r: &Report<'_>, fingerprint: &str) -> Value {
    let head = &r.settled.job.enquiry.head;
    let text = |t: &Option<String>| {
        crate::render::text::plain(t.as_deref().filter(|t| !t.trim().is_empty()).unwrap_or(NOT_STATED))
    };
    let status = head.status.0.unwrap_or(Status::Preliminary);
    json!({
        "title": text(&head.title),
        "edition": r.edition.name(),
        "paper": match r.system { System::Us => "us-letter", System::Si => "a4" },
        "client": text(&head.client),
        "project": text(&head.project),
        "revision": text(&head.revision),
        "date": text(&head.date),
        "prepared": text(&head.prepared_by),
        "status": status.word(),
        "preliminary": status == Status::Preliminary,
        "status_says": status_says(status),
        "tool": format!("Stillrise {}", env!("CARGO_PKG_VERSION")),
        "fingerprint": fingerprint,
        "entries": r.settled.job.ledger.entries.len(),
        "headline": headline(r),
        "limits": limits(r),
        "facts": facts(r),
        "footer": "For review by a licensed engineer. Local code and permit govern.",
    })
}

fn status_says(status: Status) -> &'static str {
    match status {
        Status::Preliminary => {
            "For discussion. Not to be built, bought or submitted from until it is issued for that purpose."
        }
        Status::ForApproval => "For the client's approval. Not to be built from until it is issued.",
        Status::AsBuilt => "Records the unit as installed.",
        Status::Issued => "Issued for the purpose stated in the contract.",
    }
}

/// What stands against sizing at all, in sentences.
pub(crate) fn headline(r: &Report<'_>) -> Vec<String> {
    let design = &r.settled.job.design;
    let mut out = crate::summary::stops(r.settled);
    if let Some(line) = design.triage.first().filter(|l| l.weight == Weight::Blocks) {
        out.push(format!(
            "Not a gravity duty as it stands. {}: {}",
            sentence(&line.subject).trim_end_matches('.'),
            sentence(&line.says)
        ));
    }
    if let Some(performance) = design.performance.as_ref().filter(|p| p.limits.is_empty())
        && design.basis.as_ref().is_some_and(|b| b.ph_limits.is_empty())
        && let Some(worst) = performance.worst()
    {
        let effluent = Promise::of(worst.total.expected.q, worst.content.total.q).sentence();
        let some = if r.settled.job.enquiry.limits.is_empty() { "" } else { "with a number " };
        out.push(format!("No limit {some}is stated. Expected at the outlet: {effluent} of total oil, {}.", worst.case));
    }
    out
}

/// One line for each limit: what, how much, the word, why, what would change it.
fn limits(r: &Report<'_>) -> Vec<Value> {
    let design = &r.settled.job.design;
    let (Some(basis), Some(performance)) = (&design.basis, &design.performance) else { return Vec::new() };
    let mut out = Vec::new();
    for verdict in &performance.limits {
        let Some(limit) = basis.limits.get(verdict.limit) else { continue };
        let mark = match verdict.word {
            Word::Kept => "good",
            Word::Likely => "fair",
            Word::NotShown | Word::NotByGravity => "bad",
        };
        // As in mail and summary: the word, and what nobody has confirmed of what it rests on.
        let rests = crate::summary::unconfirmed(r.settled, verdict);
        let grains = crate::summary::bare_grains(r.settled, limit, verdict);
        let grains = if grains.is_empty() { grains } else { format!(".{}", grains.trim_end_matches('.')) };
        let because = verdict.reason() + &grains + if rests.is_empty() { "" } else { "." } + &rests;
        out.push(json!({
            "what": set(&format!("{}: {}, {}", limit.title(), crate::summary::allows(limit), limit.statistic.q.word())),
            "word": verdict.says(), "mark": mark,
            "beside": crate::summary::beside_the_word(verdict).map(|text| sentence(&text)),
            "because": sentence(&because), "change": sentence(&crate::rating::change(r.settled, verdict)),
        }));
    }
    for limit in &basis.ph_limits {
        out.push(json!({
            "what": set(&format!("{}, {}", limit.shown(), limit.statistic())),
            "word": Word::NotByGravity.text(), "mark": "bad", "beside": null,
            "because": sentence(limit.pollutant.explains), "change": sentence(limit.pollutant.what_could),
        }));
    }
    for (title, says) in crate::summary::in_a_cone(r.settled) {
        out.push(json!({
            "what": set(&title), "word": "open", "mark": "fair", "beside": null,
            "because": sentence(&says), "change": "A cone test of the water that leaves.",
        }));
    }
    for (title, says) in crate::summary::numberless(r.settled) {
        out.push(json!({
            "what": set(&title), "word": "open", "mark": "fair", "beside": null,
            "because": sentence(&says), "change": "The number, its statistic and its method, from the permit.",
        }));
    }
    out
}

/// The rest of the headline: unit, flow, rules.
fn facts(r: &Report<'_>) -> Vec<[String; 2]> {
    let design = &r.settled.job.design;
    let mut out: Vec<[String; 2]> = Vec::new();
    if let Some(train) = &design.train {
        let unit = &train.unit;
        let units: Pair = (&IN, &MM);
        let plates = unit
            .pack
            .as_ref()
            .map_or_else(String::new, |pack| format!(", {} of plates", r.show(pack.follows.area.q, (&FT2, &M2))));
        let size = format!(
            "{} × {}; {}{plates}, {} of water",
            stillrise_units::print::digits(stillrise_units::Typed::si(train.count.q), 3),
            unit.particulars.model,
            unit.body.inside(|q| r.show(q, units)),
            r.show(unit.layout.water_volume.q, (&GAL, &M3)),
        );
        out.push(["Unit".to_owned(), size]);
    } else {
        out.push(["Unit".to_owned(), "none was laid out".to_owned()]);
    }
    if let Some(basis) = &design.basis
        && let (Some(flow), Some(case)) = (basis.design_flow(), stillrise_design::basis::cases::largest(&basis.cases))
    {
        let of = if basis.feed.pump_flow.is_some() { "the pumps' rate" } else { case.name.as_str() };
        // What runs while a spill comes is no flow of water to be treated.
        let treated = basis.largest_steady().filter(|_| case.kind == Kind::Spill);
        let treated = treated.map_or_else(String::new, |of| {
            format!("; of water to be treated {}, {}", r.show(of.feed.q, FLOW_UNITS), of.name)
        });
        out.push(["Largest flow".to_owned(), format!("{}, {of}{treated}", r.show(flow.q, FLOW_UNITS))]);
    }
    if let Some(worst) = design.performance.as_ref().and_then(|p| p.worst()) {
        let text = format!(
            "{}, of {} of total oil at the inlet; {}, {} water, end of the interval",
            Promise::of(worst.total.expected.q, worst.content.total.q).sentence(),
            r.show(worst.content.total.q, (&MG_L, &MG_L)),
            worst.case,
            worst.season.name()
        );
        out.push(["Expected, on the mean".to_owned(), text]);
    }
    let measured = crate::summary::measured::lines(r.settled).into_iter().map(|text| ("Measured", text));
    out.extend(measured.map(|(name, text)| [name.to_owned(), text]));
    let count = |grade| r.settled.verdicts.iter().filter(|v| v.grade() == grade).count();
    let settled = r.settled.verdicts.iter().filter(|v| v.is_settled()).count();
    let decided = if settled > 0 { format!("; {settled} accepted or taken over by others") } else { String::new() };
    let text = format!(
        "{} fail, {} warn, {} cannot be judged, {} pass, {} do not apply{decided}",
        count(Grade::Fails),
        count(Grade::Warns),
        count(Grade::CannotJudge),
        count(Grade::Passes),
        count(Grade::NotApplicable)
    );
    out.push(["Rules".to_owned(), text]);
    let counts = crate::reply::counts(r.settled);
    out.push([
        "Open questions".to_owned(),
        format!(
            "{} to the client; {} taken that nobody stated, ranked behind the verdicts of the rules",
            counts.asked,
            crate::summary::figures(counts.taken)
        ),
    ]);
    out.into_iter().map(|[a, b]| [a, set(&b)]).collect()
}
