//! Triage, rules and open questions.

use super::blocks::{Table, number, set, slim, wide};
use super::effluent::brief;
use super::{Report, capital, sentence};
use crate::papers::of_rule;
use crate::reply::is_answerable;
use crate::summary::{also_asked, figures};
use serde_json::json;
use std::collections::BTreeSet;
use stillrise_checks::{Grade, Judged, Verdict};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::performance::promise::floor;
use stillrise_design::provenance::{Origin, told};
use stillrise_design::triage::Weight;
use stillrise_search::questions::{Outcome, Question};
use stillrise_units::catalog::{D, GAL, M3};
use stillrise_units::{Flow, Typed, print};

/// Section 1.
pub(super) fn triage(r: &mut Report<'_>) {
    r.out.section("Triage: is this a gravity duty?");
    let lines = &r.settled.job.design.triage;
    if lines.is_empty() {
        r.out.para("Nothing was declared that gravity cannot touch: no product, oil or limited pollutant keeps the oil from rising.");
    }
    let mut table = Table::new([
        wide("Subject", 1.0),
        wide("Weight", 0.9),
        wide("What a separator cannot do", 2.4),
        wide("What could", 1.5),
        wide("Source", 1.2),
    ]);
    for line in lines {
        table.row([
            capital(&line.subject),
            line.weight.text().to_owned(),
            sentence(&line.says),
            sentence(&line.could(|_| true)),
            line.source.map_or_else(String::new, ToString::to_string),
        ]);
    }
    r.out.table(&table);
    let answered = crate::reply::answered(r.settled);
    if !answered.is_empty() {
        r.out.heading("What was named and asked");
        r.out.list(false, answered.into_iter().map(|text| (text, String::new())));
    }
}

/// Section 6.
pub(super) fn rules(r: &mut Report<'_>) {
    r.out.section("Verdicts of the rules");
    let all = &r.settled.verdicts;
    let of = |grade| all.iter().filter(move |v| v.grade() == grade);
    r.out.para(&format!(
        "{} rules were held against the job: {} fail, {} warn, {} cannot be judged, {} pass, {} do not apply.",
        all.len(),
        of(Grade::Fails).count(),
        of(Grade::Warns).count(),
        of(Grade::CannotJudge).count(),
        of(Grade::Passes).count(),
        of(Grade::NotApplicable).count()
    ));
    for (grade, title) in [(Grade::Fails, "Rules that fail"), (Grade::Warns, "Rules that warn")] {
        let found: Vec<_> = of(grade).collect();
        if !found.is_empty() {
            r.out.heading(title);
        }
        for judged in found {
            finding(r, judged);
        }
    }
    decisions(r);
    open(r);
    r.out.remark("Rules that pass, with their margins, and those that do not apply stand in the annex.");
}

/// Rules that pass and rules that do not apply: an annex.
pub(super) fn quiet(r: &mut Report<'_>) {
    let all = &r.settled.verdicts;
    let of = |grade| all.iter().filter(move |v| v.grade() == grade);
    r.out.section("Rules that pass, and rules that do not apply");
    r.out.heading("Rules that pass");
    let mut table =
        Table::new([wide("Rule: the fault looked for", 1.1), wide("Margin", 2.2), wide("Source of the bound", 1.6)]);
    for v in of(Grade::Passes) {
        table.mark(&of_rule(v.rule.id));
        table.row([v.rule.title.to_owned(), capital(v.verdict.says()), v.rule.source.to(r.system)]);
    }
    r.out.table(&table);
    r.out.heading("Rules that do not apply");
    let mut table = Table::new([wide("Rule", 1.1), wide("Why not", 2.2)]);
    for v in of(Grade::NotApplicable) {
        table.row([v.rule.title.to_owned(), capital(v.verdict.says())]);
    }
    r.out.table(&table);
}

/// Rules that cannot judge: what is not known, and what would settle it.
fn open(r: &mut Report<'_>) {
    let mut table = Table::new([
        wide("Rule: the fault looked for", 1.0),
        wide("What is not known", 1.8),
        wide("What would settle it", 1.8),
    ]);
    let internal = r.edition.is_internal();
    let (stopped, others): (Vec<&Judged>, Vec<&Judged>) = r
        .settled
        .verdicts
        .iter()
        .filter(|v| matches!(v.verdict, Verdict::CannotJudge(_)))
        .partition(|v| v.verdict.stopped_ahead() && v.decision.is_none());
    for v in others {
        let no = v.verdict.at().map_or_else(String::new, |at| format!(" (No. {})", r.no(at)));
        let asks = v.verdict.asks().iter().map(|ask| match ask.key.as_ref().filter(|_| internal) {
            Some(key) => format!("{} [{key}]", ask.question),
            None => ask.question.to_string(),
        });
        let mut asks: Vec<String> = asks.collect();
        asks.extend(crate::decisions::told(v, r.edition).map(|told| format!("Decision: {told}")));
        table.mark(&of_rule(v.rule.id));
        table.row([v.rule.title.to_owned(), format!("{}{no}", capital(v.verdict.says())), asks.join(" ")]);
    }
    if !table.is_empty() || !stopped.is_empty() {
        r.out.heading("Rules that cannot judge");
        r.out.para("Something they look at was not said. That is no pass: the answers may yet make them fail.");
    }
    r.out.table(&table);
    if let Some([why, names]) = not_reached(&stopped) {
        r.out.para(&why);
        // Whoever works on it may want the list; to others a number says as much.
        if internal {
            r.out.para(&names);
        }
    }
}

/// Rules whose matter was never found, told together: the same reason and the same question for all of them.
fn not_reached(stopped: &[&Judged]) -> Option<[String; 2]> {
    let first = stopped.first()?;
    let titles: Vec<&str> = stopped.iter().map(|v| v.rule.title).collect();
    let asks: Vec<&str> = first.verdict.asks().iter().map(|ask| ask.question.as_ref()).collect();
    Some([
        format!("{} more cannot judge for one reason: {}. {}", stopped.len(), first.verdict.says(), asks.join(" ")),
        format!("They are: {}.", titles.join("; ")),
    ])
}

/// One rule that fails or warns, with all there is to it.
pub(crate) fn finding(r: &mut Report<'_>, judged: &Judged) {
    let rule = judged.rule;
    let mark = if judged.grade() == Grade::Fails { "bad" } else { "fair" };
    let no = judged.verdict.at().map_or_else(String::new, |at| format!(" (No. {})", r.no(at)));
    let mut lines = vec![
        ["Why it matters".to_owned(), rule.matters.to_owned()],
        ["What to do".to_owned(), rule.remedy.to_owned()],
        ["Source".to_owned(), sentence(&rule.source.to(r.system))],
    ];
    if r.edition != crate::Edition::Client {
        lines.push(["Looks for".to_owned(), rule.looks.to(r.system)]);
        lines.push(["Where it may be wrong".to_owned(), rule.limits.to(r.system)]);
    }
    // One that nobody made yet has its boxes behind the findings.
    if let Some(told) = crate::decisions::told(judged, r.edition) {
        lines.push(["Decision".to_owned(), told]);
    }
    let lines: Vec<_> = lines.into_iter().map(|[a, b]| [a, set(&b)]).collect();
    let id = if r.edition.is_internal() { rule.id } else { "" };
    r.out.other(json!({
        "t": "finding", "word": judged.verdict.word(), "mark": mark, "title": rule.title, "id": id, "place": of_rule(rule.id),
        "says": set(&format!("{}{no}", sentence(judged.verdict.says()))), "lines": lines,
    }));
}

/// What was decided on each finding, and boxes for what was not; who decided is ours alone.
pub(crate) fn decisions(r: &mut Report<'_>) {
    let mut table = Table::new([
        wide("Finding", 1.6),
        slim("Verdict"),
        wide("Accepted, or taken over, by", 1.2),
        wide("Because", 1.6),
        wide("Date", 0.7),
    ]);
    for judged in r.settled.verdicts.iter().filter(|v| v.verdict.is_finding()) {
        let made = judged.decision.as_ref().filter(|_| judged.is_settled());
        let who = made.and_then(|d| d.who.as_deref()).filter(|_| r.edition.is_internal()).unwrap_or_default();
        let because = made.and_then(|d| d.because.as_deref()).unwrap_or_default();
        let date = made.and_then(|d| d.date.0).map_or_else(String::new, |date| date.to_string());
        table.row([judged.rule.title, judged.verdict.word(), who, because, &date]);
    }
    if !table.is_empty() {
        r.out.heading("Decisions");
        r.out.intro("A finding is settled by a change, or by a named engineer who accepts it, or gives it to others, with reason and date.");
        r.out.form(&table, 5.0);
    }
}

/// Section 7.
pub(super) fn questions(r: &mut Report<'_>) {
    r.out.section("Assumptions and open questions");
    let settled = r.settled;
    r.out.para(if settled.pick.is_some() {
        "Where nobody said, a default stands in. The questions are ranked by how far the plausible answers move the effluent, the unit or the verdict on a limit; rules, stages and times between pump-outs may move besides; \
         the effluent is that of the unit taken, and a unit that is named the one that would be taken instead. Where the unit is one on a condition, none is searched for again under each answer: once it is given, another may be taken."
    } else {
        "Where nobody said, a default stands in. No unit was sized: what an answer does to effluent and unit is not known, and the questions are ranked by how far the plausible ones move the flow and the oil that come."
    });
    if settled.questions().is_empty() {
        r.out.para("There is no open question.");
    }
    let mut table = Table::new([
        number("", ""),
        wide("Question", 1.5),
        wide("Assumed; plausibly", 0.9),
        wide("What the answer would change", 1.6),
        wide("Default and range from", 1.2),
    ]);
    // Others are told of what moves something and somebody can answer; we keep the whole list.
    let mut seen = BTreeSet::new();
    let moves =
        |q: &&Question| r.edition.is_internal() || is_answerable(q) && (q.outcomes.is_empty() || q.weight >= STAYS);
    let shown: Vec<&Question> =
        settled.questions().iter().filter(moves).filter(|q| seen.insert(q.text.clone())).collect();
    let texts: BTreeSet<&str> = shown.iter().map(|q| q.text.as_str()).collect();
    let left_out = settled.questions().iter().filter(|q| !texts.contains(q.text.as_str())).count();
    let alike = settled.questions().len() - shown.len() - left_out;
    for (k, q) in shown.into_iter().enumerate() {
        let key = if r.edition.is_internal() { format!(" [{}]", q.key) } else { String::new() };
        table.row([
            (k + 1).to_string(),
            format!("{}{key}", q.text),
            format!("{}; {} to {}", q.now, q.range.0, q.range.1),
            changes(settled, q),
            q.source.clone(),
        ]);
    }
    r.out.table(&table.marked());
    if alike > 0 {
        r.out.para(&format!(
            "What several waters or surfaces are asked alike stands once: {} more of that kind in the trail.",
            figures(alike)
        ));
    }
    if left_out > 0 {
        r.out.para(&format!(
            "Left out here: {} whose other values would move neither effluent nor unit nor a verdict, or which are ours to choose; see the trail.",
            figures(left_out)
        ));
    }
    let ranked: Vec<&Question> = settled.questions().iter().collect();
    let also = match also_asked(settled, &ranked).len() {
        0 => String::new(),
        1 => "Beyond these, 1 question stands with the rules that cannot judge.".to_owned(),
        n => format!("Beyond these, {n} questions stand with the rules that cannot judge."),
    };
    if !also.is_empty() {
        r.out.para(&also);
    }
    silent(r);
}

/// Below this weight neither effluent nor unit nor verdict moves.
pub(crate) const STAYS: f64 = 1e-3;

/// What the two ends of a range would lead to.
pub(crate) fn changes(settled: &stillrise_search::Settled, q: &Question) -> String {
    if q.outcomes.is_empty() {
        let now = settled.job.design.basis.as_ref().and_then(|b| b.design_flow());
        let differs = |flow: Flow| now.is_some_and(|now| (flow.si() - now.q.si()).abs() > 1e-3 * now.q.si());
        let flows = q.flows.iter().filter(|(_, flow)| differs(*flow));
        let flows: Vec<String> = flows
            .map(|(answer, flow)| {
                let units = settled.job.enquiry.system().pick(FLOW_UNITS);
                format!("If {answer}: {} to the separator.", print::in_prose(flow.si(), units))
            })
            .collect();
        // That no unit was sized stands over the table.
        return if flows.is_empty() { "not known".to_owned() } else { flows.join(" ") };
    }
    // The ranking gives a doubling of the effluent 1; a thousandth of that is no change.
    if q.weight < STAYS {
        return "nothing: effluent, unit and verdicts on the limits are the same".to_owned();
    }
    let blocked = settled.job.design.triage.iter().any(|line| line.weight == Weight::Blocks);
    let one = |o: &Outcome| {
        let out = o
            .effluent
            .map_or_else(|| "no effluent can be found".to_owned(), |e| format!("{} mg/L", brief(e, o.arrives)));
        let held = match (o.held, o.effluent) {
            (Some(held), Some(out)) if held.value > 1.001 * out.value && held >= floor() => {
                format!(", {} mg/L held against the limit", brief(held, None))
            }
            _ => String::new(),
        };
        // Where no separator alone is sold, the unit is one for the flow only: told where it is another.
        let taken = settled.candidates.iter().find(|c| c.taken).map(|c| &c.unit);
        let unit = o
            .unit
            .as_ref()
            .filter(|unit| !blocked || taken.is_some_and(|taken| taken != *unit))
            .map_or_else(String::new, |unit| format!("; {}", unit.name()));
        format!("If {}: {out}{held}{}{unit}{}.", o.answer, crate::summary::words(settled, o), stores(settled, o))
    };
    q.outcomes.iter().map(one).collect::<Vec<_>>().join(" ")
}

/// From which share a volume or a time that moves is told. Judgement.
const MOVES: f64 = 0.05;

/// What an answer does to the volume held back ahead and to the time between two emptyings of the sludge.
fn stores(settled: &stillrise_search::Settled, o: &Outcome) -> String {
    let system = settled.job.enquiry.system();
    let design = &settled.job.design;
    let moved = |now: Option<f64>, then: Option<f64>| match (now, then) {
        (Some(now), Some(then)) => (now - then).abs() > MOVES * now.max(then),
        (now, then) => now.is_some() != then.is_some(),
    };
    let held = design.train.as_ref().and_then(|t| t.equalisation.as_ref()).map(|hold| hold.volume().q.si());
    let sludge = design.performance.as_ref().and_then(|p| p.storage.sludge_days).map(|days| days.q.si());
    let mut out = String::new();
    let then = o.stores.held_back.map(|v| v.si());
    if moved(held, then) {
        let shown = then.map(|v| print::in_prose(v, system.pick((&GAL, &M3))));
        out.push_str(
            &shown.map_or_else(|| "; nothing held back ahead".to_owned(), |v| format!("; {v} held back ahead")),
        );
    }
    let then = o.stores.sludge.map(|time| time.si());
    if let Some(then) = then.filter(|_| moved(sludge, then)) {
        out.push_str(&format!("; sludge in {}", print::in_prose(then, &D)));
    }
    out
}

/// Assumptions that no customer could answer: ours, to be agreed to.
fn silent(r: &mut Report<'_>) {
    let ledger = &r.settled.job.ledger;
    let mut table = Table::new([
        wide("Assumed without a question", 1.4),
        wide("Value; plausibly", 1.0),
        wide("From", 2.0),
        number("No.", ""),
    ]);
    for (k, entry) in ledger.entries.iter().enumerate() {
        let Origin::Assumed(a) = &entry.origin else { continue };
        let first =
            ledger.entries.iter().position(|e| matches!(&e.origin, Origin::Assumed(b) if b.key == a.key)) == Some(k);
        if a.question.is_empty() && first {
            let range = format!(
                "{}; {} to {}",
                entry.told(r.system),
                told(&a.low, entry.units, r.system),
                told(&a.high, entry.units, r.system)
            );
            table.row([capital(&entry.label), range, a.source.clone(), (k + 1).to_string()]);
        }
    }
    if !table.is_empty() {
        r.out.heading("Margins and proposals");
    }
    r.out.table(&table.marked());
}
