//! Triage, rules and questions.

use super::section;
use crate::render::text::{hang, item};
use stillrise_checks::{Grade, Judged, Unsettled, Verdict, unsettled};
use stillrise_design::enquiry::blocks::Settled as Decided;
use stillrise_design::performance::promise::{Promise, floor};
use stillrise_search::Settled;
use stillrise_search::questions::{Outcome, Question};
use stillrise_search::remedies::AGREE;

/// Questions that are shown before the rest is only counted.
const SHOWN: usize = 10;

pub(super) fn triage(out: &mut String, settled: &Settled, width: usize) {
    out.push_str(&section("Triage"));
    if settled.job.design.triage.is_empty() {
        out.push_str("Nothing declared that gravity cannot touch.\n");
    }
    for line in &settled.job.design.triage {
        out.push_str(&item(
            "-",
            &format!("{} ({}): {} What could: {}", line.subject, line.weight.text(), line.says, line.could(|_| true)),
            width,
        ));
    }
}

/// What is not known, what would settle it, and what was decided meanwhile.
fn open(judged: &Judged) -> String {
    let asks = judged.verdict.asks().iter().map(|ask| format!(" {}", ask.question)).collect::<String>();
    format!("{}.{asks}{}", judged.verdict.says(), decided(judged))
}

fn decided(judged: &Judged) -> String {
    let told = crate::decisions::told(judged, crate::Edition::Us);
    told.map_or_else(String::new, |told| format!(" Decided: {told}."))
}

pub(super) fn rules(out: &mut String, settled: &Settled, width: usize) {
    let count = |grade| settled.verdicts.iter().filter(|v| v.grade() == grade).count();
    out.push_str(&section("Rules"));
    out.push_str(&format!(
        "{} fail, {} warn, {} cannot be judged, {} pass, {} do not apply.\n",
        count(Grade::Fails),
        count(Grade::Warns),
        count(Grade::CannotJudge),
        count(Grade::Passes),
        count(Grade::NotApplicable)
    ));
    for (grade, mark) in [(Grade::Fails, "FAILS"), (Grade::Warns, "warns")] {
        for judged in settled.verdicts.iter().filter(|v| v.grade() == grade) {
            let decided = decided(judged);
            out.push_str(&item(
                mark,
                &format!(
                    "{} [{}]: {}. {}{decided}",
                    judged.rule.title,
                    judged.rule.id,
                    judged.verdict.says(),
                    judged.rule.remedy
                ),
                width,
            ));
        }
    }
    let unjudged = || settled.verdicts.iter().filter(|v| v.grade() == Grade::CannotJudge);
    let together = |v: &&Judged| v.verdict.stopped_ahead() && v.decision.is_none();
    for judged in unjudged().filter(|v| !together(v)) {
        out.push_str(&item("asks", &format!("{} [{}]: {}", judged.rule.title, judged.rule.id, open(judged)), width));
    }
    // One reason and one question for all whose matter was never found.
    if let Some(first) = unjudged().find(together) {
        let ids: Vec<&str> = unjudged().filter(together).map(|v| v.rule.id).collect();
        out.push_str(&item("asks", &format!("{} rules, {}: {}", ids.len(), open(first), ids.join(", ")), width));
    }
    let passed: Vec<&str> =
        settled.verdicts.iter().filter(|v| matches!(v.verdict, Verdict::Passes(_))).map(|v| v.rule.id).collect();
    if !passed.is_empty() {
        out.push_str(&hang(&format!("Passing: {}.", passed.join(", ")), width, 0, 2));
    }
}

/// The questions that move the result, most first.
#[must_use]
pub fn that_matter(settled: &Settled) -> Vec<&Question> {
    settled
        .questions()
        .iter()
        .filter(|q| q.weight > 0.005 || (q.outcomes.is_empty() && settled.pick.is_none()))
        .collect()
}

pub(super) fn questions(out: &mut String, settled: &Settled, width: usize) {
    out.push_str(&section("Open questions"));
    let matter = that_matter(settled);
    if matter.is_empty() {
        out.push_str("None whose answer would move the result.\n");
    }
    for (i, q) in matter.iter().take(SHOWN).enumerate() {
        out.push_str(&item(
            &format!("{}", i + 1),
            &format!(
                "{} Now {}, plausibly {} to {} ({}). {}",
                q.text,
                q.now,
                q.range.0,
                q.range.1,
                q.source,
                moves(settled, q)
            ),
            width,
        ));
    }
    let less = matter.len().saturating_sub(SHOWN);
    if less > 0 {
        out.push_str(&format!("{less} more assumptions move the result too, each by less; the report lists them.\n"));
    }
    let rest = settled.questions().len() - matter.len();
    if rest > 0 {
        out.push_str(&format!(
            "{rest} more assumptions stand in the trail; their answers would hardly move the result.\n"
        ));
    }
    let shown: Vec<&Question> = matter.into_iter().take(SHOWN).collect();
    let also = also_asked(settled, &shown);
    if !also.is_empty() {
        out.push_str("Also needed, so that every rule can judge:\n");
    }
    for u in also {
        let key = u.ask.key.as_ref().map_or_else(String::new, |key| format!(" [{key}]"));
        out.push_str(&item("-", &format!("{}{key}", u.ask.question), width));
    }
}

/// What rules that cannot judge ask beyond the questions that are shown already.
#[must_use]
pub fn also_asked<'a>(settled: &'a Settled, shown: &[&Question]) -> Vec<Unsettled<'a>> {
    let asked = |u: &Unsettled<'_>| shown.iter().any(|q| Some(q.key.as_str()) == u.ask.key.as_deref());
    unsettled(&settled.verdicts).into_iter().filter(|u| !asked(u)).collect()
}

/// A share in words that claim no more than few rows give.
fn roughly(share: f64) -> &'static str {
    match share {
        s if s > 0.6 => "most",
        s if s > 0.3 => "much",
        s if s > 0.1 => "some",
        _ => "a little",
    }
}

/// The words on the limits that an answer would leave: by limit where there are several; empty where it lifts none.
#[must_use]
pub fn words(settled: &Settled, o: &Outcome) -> String {
    let (Some(words), Some(basis), Some(p)) = (&o.words, &settled.job.design.basis, &settled.job.design.performance)
    else {
        return String::new();
    };
    let limits = p.limits.iter().zip(words);
    let texts: Vec<String> = limits
        .map(|(verdict, word)| match p.limits.len() {
            1 => word.text().to_owned(),
            _ => {
                let limit = &basis.limits[verdict.limit];
                format!("{} {}", super::limit(limit), word.text())
            }
        })
        .collect();
    if texts.is_empty() { String::new() } else { format!(", {}", texts.join(", ")) }
}

/// What the answers would change.
#[must_use]
pub fn moves(settled: &Settled, q: &Question) -> String {
    let parts: Vec<String> = q
        .outcomes
        .iter()
        .map(|o| {
            let bounded = |c| o.arrives.map_or_else(|| Promise::unbounded(c), |arrives| Promise::of(c, arrives));
            let effluent =
                o.effluent.map_or_else(|| "no effluent".to_owned(), |c| format!("{} mg/L out", bounded(c).brief()));
            let held = match (o.held, o.effluent) {
                (Some(held), Some(out)) if held.value > 1.001 * out.value && held >= floor() => {
                    let (held, out) = (Promise::unbounded(held).brief(), bounded(out).brief());
                    if held == out { String::new() } else { format!(", {held} mg/L at the peak") }
                }
                _ => String::new(),
            };
            let unit = o.unit.as_ref().map_or_else(String::new, |unit| format!(", {}", unit.name()));
            format!("{}: {effluent}{held}{unit}{}", o.answer, words(settled, o))
        })
        .collect();
    let share = q
        .share
        .filter(|share| *share > 0.01)
        .map_or_else(String::new, |share| format!("Carries {} of the spread. ", roughly(share.min(1.0))));
    if parts.is_empty() { share } else { format!("{share}If {}.", parts.join("; if ")) }
}

/// Whether a rule is settled only by what was proposed to the client, who has not agreed to it yet.
#[must_use]
pub fn is_proposed(judged: &Judged) -> bool {
    let open = judged.decision.as_ref().filter(|decision| decision.decision.0 == Some(Decided::Open));
    !judged.verdict.is_finding()
        && open.is_some_and(|decision| decision.because.as_ref().is_some_and(|b| b.contains(AGREE)))
}
