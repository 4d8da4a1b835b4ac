//! Every unit of the range beside the others for one duty: what would leave, the word on each limit, what bars it, how many rules
//! fail or cannot judge, weight and price. For whoever chooses; the price is not for the client.

use crate::render::text::{Table, hang, heading};
use crate::summary::{CAUTION, capital, limit as named, units};
use serde_json::{Value, json};
use stillrise_checks::Grade;
use stillrise_design::performance::promise::Promise;
use stillrise_search::Settled;
use stillrise_search::sizes::Entrant;
use stillrise_units::catalog::{KG, LB};
use stillrise_units::{Typed, print};

/// One unit of the range.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Its name, with how many.
    pub unit: String,
    /// The model alone, as a file names it.
    pub model: String,
    /// How it is arranged: `plate tank`.
    pub arrangement: &'static str,
    /// Whether it is the one taken.
    pub taken: bool,
    /// Total oil that leaves, the largest mean of the cases at the end of the interval, mg/L; `None` where nothing can be said.
    pub leaves: Option<String>,
    /// The limits, each with the word that would stand.
    pub words: Vec<(String, &'static str)>,
    /// What bars it: each rule's id, its title and what it says.
    pub barred: Vec<(&'static str, &'static str, String)>,
    /// Rules that fail and on which nobody decided.
    pub fail: usize,
    /// Rules that cannot judge.
    pub cannot_judge: usize,
    /// Weight of one, empty.
    pub weight: Option<String>,
    /// Price of all by the range, with its currency.
    pub price: Option<String>,
}

/// A line for each unit, in the order given.
#[must_use]
pub fn lines(settled: &Settled, entrants: &[Entrant]) -> Vec<Line> {
    entrants.iter().map(|entrant| line(settled, entrant)).collect()
}

fn line(settled: &Settled, entrant: &Entrant) -> Line {
    let system = settled.job.enquiry.system();
    let design = &entrant.job.design;
    let (train, performance) = (design.train.as_ref(), design.performance.as_ref());
    let limits = design.basis.as_ref().map_or(&[][..], |basis| &basis.limits);
    let count = |grade: Grade| entrant.verdicts.iter().filter(|judged| judged.grade() == grade).count();
    let empty = performance.and_then(|p| p.shop.as_ref()?.weights.as_ref()?.empty);
    Line {
        unit: train.map_or_else(|| entrant.unit.name(), units),
        model: match &entrant.unit {
            stillrise_search::offered::Offered::Row { model, .. } => model.clone(),
            other => other.name(),
        },
        arrangement: entrant.arrangement.word(),
        taken: entrant.taken,
        leaves: performance
            .and_then(|p| p.worst())
            .map(|worst| Promise::of(worst.total.expected.q, worst.content.total.q).brief()),
        words: performance
            .iter()
            .flat_map(|p| &p.limits)
            .filter_map(|verdict| Some((named(limits.get(verdict.limit)?), verdict.says())))
            .collect(),
        barred: entrant
            .barred()
            .map(|judged| (judged.rule.id, judged.rule.title, judged.verdict.says().to_owned()))
            .collect(),
        fail: entrant.verdicts.iter().filter(|judged| judged.stands_failed()).count(),
        cannot_judge: count(Grade::CannotJudge),
        weight: empty.map(|weight| print::in_prose(weight.q.si(), system.pick((&LB, &KG)))),
        price: train.and_then(|t| {
            let (each, currency) = t.unit.particulars.price.as_ref()?;
            Some(format!("{} {currency}", print::digits(each * t.bought(), 4)))
        }),
    }
}

/// What stands over it: how many there are and how many nothing bars.
#[must_use]
pub fn in_short(lines: &[Line]) -> String {
    let free = lines.iter().filter(|line| line.barred.is_empty()).count();
    let all = if lines.len() == 1 { "One unit".to_owned() } else { format!("{} units", lines.len()) };
    match free {
        0 => format!("{all} of the range, each worked for this duty with all rules; something bars every one of them."),
        _ => format!("{all} of the range, each worked for this duty with all rules; nothing bars {free} of them."),
    }
}

/// As plain text.
#[must_use]
pub fn with_range_text(lines: &[Line], width: usize) -> String {
    let mut out = heading("Every unit of the range for this duty");
    if lines.is_empty() {
        out.push_str(&hang("There is no basis to work them on, or the range holds no unit.", width, 0, 2));
        return out;
    }
    out.push_str(&hang(&in_short(lines), width, 0, 0));
    out.push('\n');
    let limits: Vec<String> = lines
        .iter()
        .map(|line| &line.words)
        .max_by_key(|w| w.len())
        .map_or_else(Vec::new, |w| w.iter().map(|(limit, _)| limit.clone()).collect());
    let mut table = Table::new([
        "",
        "unit",
        "arrangement",
        "oil out, mg/L",
        "word",
        "bars",
        "fail",
        "cannot judge",
        "empty",
        "price",
    ]);
    for line in lines {
        let or = |text: &Option<String>| text.clone().unwrap_or_else(|| "–".to_owned());
        let words: Vec<&str> = line.words.iter().map(|(_, word)| *word).collect();
        table.row([
            if line.taken { ">" } else { "" }.to_owned(),
            line.unit.clone(),
            line.arrangement.to_owned(),
            or(&line.leaves),
            if words.is_empty() { "–".to_owned() } else { words.join(" / ") },
            line.barred.len().to_string(),
            line.fail.to_string(),
            line.cannot_judge.to_string(),
            or(&line.weight),
            or(&line.price),
        ]);
    }
    out.push_str(&table.render(width));
    let order = if limits.len() > 1 { format!(" Words in the order: {}.", limits.join("; ")) } else { String::new() };
    out.push_str(&hang(
        &format!("> is the unit taken. Oil out is the largest mean of all cases at the end of the interval; the word is the one that would stand, everything heard.{order}"),
        width,
        0,
        0,
    ));
    out.push_str(&heading("What bars them"));
    for line in lines.iter().filter(|line| !line.barred.is_empty()) {
        out.push_str(&hang(&line.unit, width, 0, 2));
        for (_, title, says) in &line.barred {
            out.push_str(&hang(&format!("{}: {says}", capital(title)), width, 2, 4));
        }
    }
    out.push('\n');
    out.push_str(&hang(CAUTION, width, 0, 0));
    out
}

/// As JSON.
#[must_use]
pub fn with_range_json(lines: &[Line]) -> Value {
    let units = lines.iter().map(|line| {
        json!({
            "unit": line.unit, "model": line.model, "arrangement": line.arrangement, "taken": line.taken,
            "leaves_mg_l": line.leaves,
            "limits": line.words.iter().map(|(limit, word)| json!({ "limit": limit, "word": word })).collect::<Vec<_>>(),
            "barred": line.barred.iter().map(|(id, rule, says)| json!({ "id": id, "rule": rule, "says": says })).collect::<Vec<_>>(),
            "rules_fail": line.fail, "rules_cannot_judge": line.cannot_judge, "weight_empty": line.weight, "price": line.price,
        })
    });
    json!({ "caution": CAUTION, "units": units.collect::<Vec<_>>() })
}
