//! What `risk` prints: how sure the prediction is, and what carries the doubt.

mod json;

pub use json::risk_json;

use crate::render::text::{Table, hang};
use crate::summary::{CAUTION, capital, section, total_out};
use stillrise_design::basis::limits::LimitState;
use stillrise_design::enquiry::distribution::Distribution;
use stillrise_design::performance::Performance;
use stillrise_design::performance::limit::Word;
use stillrise_design::performance::promise::floor;
use stillrise_design::provenance::{Origin, Whence, show_in_prose};
use stillrise_search::Settled;
use stillrise_search::risk::inputs::{Input, Range};
use stillrise_search::risk::{Governs, Risk, Spread};
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, System, Typed, print};

/// A share in print.
#[must_use]
pub fn percent(share: f64) -> String {
    let percent = share * 100.0;
    // Never a certainty that was only sampled.
    if share > 0.0 && percent < 1.0 {
        "< 1 %".to_owned()
    } else if share < 1.0 && percent > 99.0 {
        "> 99 %".to_owned()
    } else {
        format!("{} %", print::digits(percent, 2))
    }
}

/// What speaks of the results that keep a limit: what was measured against it, else the one percentage, as it stands beside the verdict.
#[must_use]
pub fn keep(p: &Performance, limit: usize) -> String {
    let none = || "–".to_owned();
    let Some(verdict) = p.limits.iter().find(|v| v.limit == limit) else { return none() };
    // What was measured goes before what was reckoned, and what gravity cannot keep has no chance.
    match (&verdict.measured, verdict.chance) {
        (Some(measured), _) if measured.above > 0 => {
            format!("{} of {} measured lie above", measured.above, measured.of)
        }
        (_, Some(chance)) if verdict.word != Word::NotByGravity => chance.percent(),
        _ => none(),
    }
}

/// A limit by pollutant, statistic and who sets it, so that two on one pollutant are told apart.
#[must_use]
pub fn limit_name(limit: &LimitState) -> String {
    let by = limit.authority.as_ref().map_or_else(String::new, |by| format!(", {by}"));
    format!("{}, {}{by}", limit.title(), limit.statistic.q.word())
}

/// What an input's range is, in print.
#[must_use]
pub fn range(input: &Input, system: System) -> String {
    match &input.range {
        Range::Number { low, high, distribution, .. } => {
            let one = |si: f64| show_in_prose(&stillrise_handbook::page::Arg::Number(si), input.units, system);
            let ends = format!("{} to {}", one(*low), one(*high));
            if *distribution == Distribution::Triangular { ends } else { format!("{ends}, {}", distribution.word()) }
        }
        Range::Words(words) => {
            words.iter().map(|w| show_in_prose(w, input.units, system)).collect::<Vec<_>>().join(" or ")
        }
    }
}

/// What the shares are shares of, in words.
#[must_use]
pub fn governs(settled: &Settled, risk: &Risk) -> String {
    match (risk.governs, &settled.job.design.basis) {
        (Governs::Limit(k), Some(basis)) => {
            let limit = &basis.limits[k];
            format!("what is held against the limit on {}", crate::summary::limit(limit))
        }
        _ => "the total oil that leaves in the worst case".to_owned(),
    }
}

/// In two sentences: what governs the effluent, and what of it no separator touches.
#[must_use]
pub fn sentences(settled: &Settled, risk: &Risk) -> Vec<String> {
    let mut out = Vec::new();
    let name = |k: usize| risk.carriers.get(k).map(|c| (c.input.label.to_lowercase(), c.share.total));
    match (name(0), name(1)) {
        (Some((first, share)), Some((second, next))) => out.push(format!(
            "The {first} governs: it carries {} of the spread of {}; next comes the {second} with {}.",
            percent(share),
            governs(settled, risk),
            percent(next)
        )),
        (Some((first, share)), None) => {
            out.push(format!("The {first} governs: it carries {} of the spread.", percent(share)))
        }
        _ => out.push("Nothing that is uncertain moves the effluent.".to_owned()),
    }
    let Some(worst) = settled.job.design.performance.as_ref().and_then(|p| p.worst()) else { return out };
    let heavy = worst.content.heavy.map_or(0.0, |heavy| heavy.q.si());
    let stays = worst.content.emulsified.q.si() + worst.content.dissolved.q.si() + heavy;
    let what = if heavy > 0.0 { "emulsified, dissolved or too heavy oil" } else { "emulsified or dissolved oil" };
    let total = worst.total.expected.q.si();
    if total > 0.0 {
        let share = stays / total;
        // A shear on the way is nearer at hand than any change of the separator.
        let basis = settled.job.design.basis.as_ref();
        let broke = basis.and_then(|b| b.shear.as_ref()).filter(|s| s.governs && share < 0.8);
        // What helps a unit that was observed is for its rating to say: it knows what was measured.
        let rated = crate::rating::is_observed(settled);
        out.push(if rated {
            format!(
                "By the calculation alone, without what was observed at the unit, {} of what leaves is {what} and the rest free oil in droplets too small for the plates; what explains the results, and what helps, is for the rating of the unit to say.",
                percent(share)
            )
        } else if let Some(shear) = broke {
            format!(
                "{} of what leaves is {what}; the rest the {} has broken into droplets too fine to rise: without it, or with it behind the separator, the plates would see what arrives.",
                capital(&percent(share)),
                shear.hardest().name
            )
        } else if share > 0.5 {
            format!(
                "{} of what leaves is {what}, which a larger separator does not touch; less of that at its source is what helps.",
                capital(&percent(share))
            )
        } else {
            format!(
                "{} of what leaves is free oil in droplets too small for the plates: coarser droplets, more plate area or less flow is what helps.",
                capital(&percent(1.0 - share))
            )
        });
    }
    out
}

/// The study as plain text.
#[must_use]
pub fn risk_text(settled: &Settled, risk: &Risk, width: usize) -> String {
    let mut out = String::new();
    let system = settled.job.enquiry.system();
    let title = settled.job.enquiry.head.title.as_deref().unwrap_or("untitled");
    out.push_str(&format!("{title}\n\n"));
    for sentence in sentences(settled, risk) {
        out.push_str(&hang(&sentence, width, 0, 2));
    }
    let Some(performance) = &settled.job.design.performance else { return out };
    let influent = performance.worst().map_or_else(|| Concentration::of(1e6, &MG_L), |w| w.content.total.q);
    out.push_str(&section("Total oil out in the worst case, mg/L"));
    let mut table = Table::new(["step", "as designed", "1 in 20 below", "median", "1 in 20 above"]);
    let designed = performance.worst().and_then(|w| Some([w.total.ideal?.q, w.total.expected.q, w.total.mixed?.q]));
    let mut row = |name: &str, designed: Option<Concentration>, s: &Spread| {
        let n = |c: Concentration| total_out(c, influent);
        table.row([name.to_owned(), designed.map_or_else(|| "-".to_owned(), n), n(s.low), n(s.median), n(s.high)]);
    };
    for (k, name) in ["ideal bound", "expected", "mixed bound"].into_iter().enumerate() {
        row(name, designed.map(|d| d[k]), &risk.rungs[k]);
    }
    if let Some(mesh) = &risk.with_mesh {
        let designed = performance.ladder.as_ref().and_then(|l| l.with_mesh.map(|v| v.q));
        row("expected, mesh counted", designed, mesh);
    }
    for (case, spread) in &risk.cases {
        row(&format!("case {case}"), None, spread);
    }
    out.push_str(&table.render(width));
    limits(&mut out, settled, risk, width);
    out.push_str(&section("What carries the spread"));
    let mut table = Table::new(["input", "now", "range", "alone", "with others", "origin"]);
    for c in &risk.carriers {
        table.row([
            c.input.label.clone(),
            show_in_prose(&c.input.now, c.input.units, system),
            range(&c.input, system),
            percent(c.share.first.min(c.share.total).clamp(0.0, 1.0)),
            percent(c.share.total.clamp(0.0, 1.0)),
            if c.input.assumed { "assumed" } else { "given with a range" }.to_owned(),
        ]);
    }
    out.push_str(&table.render(width));
    let mut text = format!(
        "Shares of the variance of the logarithm of {}, from {} rows: alone, what knowing the input would take off; with others, what would be left if all but it were known. ",
        governs(settled, risk),
        risk.rows
    );
    if !risk.idle.is_empty() {
        let idle: Vec<&str> = risk.idle.iter().map(|i| i.label.as_str()).collect();
        text.push_str(&format!("Drawn too, and without effect here: {}. ", idle.join(", ")));
    }
    text.push_str(&method(settled, risk));
    out.push_str(&hang(&text, width, 0, 0));
    out.push_str(&section("Cautions"));
    out.push_str(&hang(CAUTION, width, 0, 0));
    out
}

/// What decides the effluent and was stated without a range.
fn held_fixed(settled: &Settled) -> Vec<String> {
    let Some(basis) = &settled.job.design.basis else { return Vec::new() };
    let ledger = &settled.job.ledger;
    let d = &basis.droplets;
    let contents = basis.cases.iter().filter_map(|c| c.content.as_ref());
    let nodes = [d.d50.at, d.table.at, d.shape.at].into_iter().chain(contents.map(|c| c.total.at));
    let nodes = nodes.chain(basis.waters.iter().map(|w| w.flow.at));
    let mut labels: Vec<String> = Vec::new();
    for entry in nodes.filter_map(|at| ledger.entry(at)) {
        let stated = matches!(&entry.origin, Origin::Given { source, .. } if *source != Whence::Definition);
        if stated && entry.range.is_none() && !labels.contains(&entry.label) {
            labels.push(entry.label.clone());
        }
    }
    labels
}

/// How the study was made.
#[must_use]
pub fn method(settled: &Settled, risk: &Risk) -> String {
    let mut text = format!(
        "{} runs of the calculation, spread evenly over all assumptions with a range and all given values whose range was stated; each input triangular between lowest, likely and highest, over the logarithm where the ends lie more than threefold apart, unless another distribution was stated; all inputs independent; the unit stays the one taken. ",
        risk.samples
    );
    let fixed = held_fixed(settled);
    if !fixed.is_empty() {
        text.push_str(&format!("Held fixed, because stated without a range: {}. ", fixed.join(", ")));
    }
    text.push_str(&format!(
        "A stated range of a normal or log-normal input leaves one in twenty beyond each end. Shares from {} rows an input: good to some hundredths. ",
        risk.rows
    ));
    if risk.stopped > 0 {
        text.push_str(&format!("The chain had no answer for {} of them. ", risk.stopped));
    }
    text.push_str(&format!(
        "Numbers below the published floor ({}) are not promised and print as its bound.",
        print::told(floor().si(), &MG_L)
    ));
    text
}

fn limits(out: &mut String, settled: &Settled, risk: &Risk, width: usize) {
    let (Some(basis), Some(p)) = (&settled.job.design.basis, &settled.job.design.performance) else { return };
    if risk.limits.is_empty() {
        return;
    }
    out.push_str(&section("Limits"));
    let mut table = Table::new(["limit", "mg/L", "held, median", "1 in 20 above", "results kept"]);
    for l in &risk.limits {
        let limit = &basis.limits[l.limit];
        let influent = p.limits.iter().find(|v| v.limit == l.limit).map_or(l.held.high, |v| v.influent.q);
        table.row([
            limit_name(limit),
            print::digits(MG_L.from_si(limit.value.q.si()), 4),
            total_out(l.held.median, influent),
            total_out(l.held.high, influent),
            keep(p, l.limit),
        ]);
    }
    out.push_str(&table.render(width));
}
