//! On which conditions it holds.

use crate::papers::common;
use crate::reply;
use crate::report::{Report, sentence};
use crate::summary::{figures, lower};
use stillrise_checks::ask::oil_is_named;
use stillrise_checks::rules::{limit_not_shown, outside_trusted_range, stage_asked_for};
use stillrise_checks::{Grade, Judged};
use stillrise_design::basis::{Basis, FLOW_UNITS};
use stillrise_design::performance::limit::Word;
use stillrise_design::triage::{About, Weight};
use stillrise_search::Settled;
use stillrise_units::catalog::{DEG_C, DEG_F, KG_M3, LB_FT3, MG_L, UM};

/// Assumptions that are told here; the calculation report has the others.
const TAKEN: usize = 6;

/// The section.
pub(super) fn section(r: &mut Report<'_>, settled: &Settled) {
    let design = &settled.job.design;
    let taken = reply::assumed(settled);
    let basis = design.basis.as_ref().filter(|_| design.train.is_some());
    let holds = basis.map_or_else(Vec::new, |basis| holds_while(r, basis, &taken));
    let twice = reply::contradictions(settled);
    // What must be settled stands with what it needs.
    let mut told: Vec<&str> = reply::points(settled).iter().filter_map(|point| point.client).collect();
    // What must stand beside it stands there by name.
    told.push(stage_asked_for::RULE.client);
    let warns: Vec<&Judged> = settled
        .verdicts
        .iter()
        .filter(|judged| {
            judged.grade() == Grade::Warns
                && !judged.is_settled()
                && !told.contains(&judged.rule.client)
                && *judged.rule != limit_not_shown::RULE
        })
        .collect();
    if holds.is_empty() && taken.is_empty() && twice.is_empty() && warns.is_empty() {
        return;
    }
    r.out.section("On which conditions");
    if !holds.is_empty() {
        let limits = design.performance.as_ref().map_or(&[][..], |p| &p.limits);
        let kept = limits.iter().any(|verdict| verdict.word <= Word::Likely);
        let lead =
            if kept { "It does that only while this holds:" } else { "Worked for this; outside it more may leave:" };
        r.out.lead(lead, &holds.join(" "));
    }
    let items = |texts: Vec<String>| texts.into_iter().map(|text| (sentence(&text), String::new()));
    if !twice.is_empty() {
        r.out.lead("Said in two ways:", "");
        r.out.list(false, items(twice));
    }
    if !taken.is_empty() {
        let (n, more) = (taken.len(), taken.len().saturating_sub(TAKEN));
        let all: Vec<String> = taken.into_iter().take(TAKEN).collect();
        let more = if more > 0 { format!("; {more} more in the calculation report") } else { String::new() };
        let text = sentence(&format!("{}{more}", all.join("; ")));
        let instead = format!("with {} that nobody has confirmed; the calculation report lists them.", figures(n));
        r.out.lead_or("What we reckoned with; tell us what is wrong in it:", &text, &instead);
    }
    if !warns.is_empty() {
        r.out.lead("To be known besides; the calculation report explains each:", "");
        r.out.list(false, items(warns.iter().map(|judged| besides(settled, judged)).collect()));
    }
}

/// What a warning means for the client; of a formula used outside its range also which one, and for what.
fn besides(settled: &Settled, judged: &Judged) -> String {
    let client = judged.rule.client;
    if *judged.rule != outside_trusted_range::RULE {
        return client.to_owned();
    }
    let notes = settled.job.ledger.outside_trust();
    let Some((_, entry, note)) = notes.first() else { return client.to_owned() };
    let more = if notes.len() > 1 { format!("; {} more such notes", notes.len() - 1) } else { String::new() };
    format!(
        "{client} How far that moves the result is not known. It is used for \"{}\" ({note}{more}).",
        lower(&entry.label)
    )
}

/// Under which conditions the words on the limits stand, a sentence each; the performance statement has them all.
fn holds_while(r: &Report<'_>, basis: &Basis, taken: &[String]) -> Vec<String> {
    let settled = r.settled;
    let mut all = Vec::new();
    let cold = r.prose(basis.fluids.cold.temperature.q, (&DEG_F, &DEG_C));
    if let Some(flow) = basis.design_flow() {
        all.push(format!("no more than {} comes to it, never colder than {cold}.", r.prose(flow.q, FLOW_UNITS)));
    }
    let is_named = oil_is_named(&settled.subject());
    let oils: Vec<String> = basis
        .fluids
        .oils
        .iter()
        .map(|oil| {
            format!(
                "{} (no heavier than {} at {})",
                if is_named { oil.name.as_str() } else { oil.oil.word },
                r.prose(oil.density_15.q, (&LB_FT3, &KG_M3)),
                common::at_15(r)
            )
        })
        .collect();
    if !oils.is_empty() {
        let named = if is_named { "" } else { ", which we took as nobody named one" };
        all.push(format!("The oil is {}{named}.", oils.join(" or ")));
    }
    // What was said not to run in rain is in no flow of the storm.
    let streams = &settled.job.enquiry.streams;
    let apart = streams.iter().filter(|s| *s.with_rain == Some(false) && basis.storm.is_some());
    let apart: Vec<&str> = apart.filter_map(|s| s.name.0.as_deref()).collect();
    if !apart.is_empty() {
        all.push(format!("While it rains there is no {}, as was said.", apart.join(" and no ")));
    }
    let d50 = basis.droplets.d50;
    all.push(format!(
        "Half of the free oil or more comes in droplets of {} or larger{}.",
        r.prose(d50.q, (&UM, &UM)),
        common::taken(settled, d50.at)
    ));
    // Where the oil that comes was taken, it stands below with what was taken.
    let worst = settled.job.design.performance.as_ref().and_then(|p| p.worst());
    if let Some(worst) = worst.filter(|_| !taken.iter().any(|text| text.starts_with("oil in "))) {
        all.push(format!(
            "The water of the worst case ({}) carries no more than {} of oil in the mean, {} of it free.",
            worst.case,
            r.prose(worst.content.total.q, (&MG_L, &MG_L)),
            r.prose(worst.content.free.q, (&MG_L, &MG_L))
        ));
    }
    let products: Vec<&str> = basis.dosed.iter().map(|d| d.name.as_str()).collect();
    all.push(if products.is_empty() {
        "No detergent, degreaser, foam or other product that holds oil in water comes with it: none was declared."
            .to_owned()
    } else {
        let harms = settled.job.design.triage.iter().any(|l| l.about == About::Chemical && l.weight >= Weight::Partly);
        let then = if harms { "; what settles that stands above" } else { "" };
        format!(
            "No product that holds oil in water comes with it but what was declared ({}){then}.",
            products.join(", ")
        )
    });
    all.push("It is pumped out and cleaned in time.".to_owned());
    all
}
