//! What would settle a finding, in words and as JSON: what follows from each change, as it was worked.

use crate::summary::limit as named;
use serde_json::{Value, json};
use stillrise_checks::{Grade, Rule};
use stillrise_design::performance::limit::Word;
use stillrise_search::Settled;
use stillrise_search::remedies::Remedy;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed, print};

/// What follows from a remedy, in sentences: what the rule says then, what else is open or settled then, the unit, the words on
/// the limits, what leaves, the price.
#[must_use]
pub fn follows(settled: &Settled, remedy: &Remedy) -> Vec<String> {
    let then = &remedy.then;
    let lead = match then.grade {
        Grade::Warns => "It warns then, and fails no more",
        Grade::NotApplicable => "It does not apply then",
        _ => "It passes then",
    };
    let mut lines = vec![if then.says.is_empty() { format!("{lead}.") } else { format!("{lead}: {}.", then.says) }];
    let open = |title: &str, all: &[(&'static Rule, String)]| {
        all.iter().map(|(rule, says)| format!("{title} then: {}: {says}.", rule.title)).collect::<Vec<_>>()
    };
    lines.extend(open("Fails", &then.fails));
    lines.extend(open("Warns", &then.warns));
    let settles: Vec<String> = then.settles.iter().map(|rule| rule.title.to_lowercase()).collect();
    lines.extend((!settles.is_empty()).then(|| format!("Settled with it: {}.", settles.join("; "))));
    let unit = then.unit.as_ref().filter(|_| then.is_other_unit);
    lines.extend(unit.map(|unit| format!("The unit is then {unit}.")));
    lines.extend(words(settled, remedy).map(|(title, was, then)| match was {
        Some(was) => format!("{title}: {} then, {} now.", then.text(), was.text()),
        None => format!("{title}: {} then.", then.text()),
    }));
    if let [Some(now), Some(out)] = then.effluent
        && number(now) != number(out)
    {
        lines.push(format!("Total oil out, worst case: {} mg/L then, {} mg/L now.", number(out), number(now)));
    }
    lines.extend(price(settled, remedy));
    lines
}

/// The words on limits that change.
fn words<'a>(settled: &'a Settled, remedy: &'a Remedy) -> impl Iterator<Item = (String, Option<Word>, Word)> + 'a {
    let limits = settled.job.design.basis.as_ref().map_or(&[][..], |basis| &basis.limits);
    let other = remedy.then.words.iter().filter(|word| word.was != Some(word.then));
    other.filter_map(|word| Some((named(limits.get(word.limit)?), word.was, word.then)))
}

fn number(c: Concentration) -> String {
    print::digits(MG_L.from_si(c.si()), 3)
}

/// By how much it is dearer or cheaper; nothing where the unit stays.
fn price(settled: &Settled, remedy: &Remedy) -> Option<String> {
    if !remedy.then.is_other_unit {
        return None;
    }
    let Some(dearer) = remedy.then.dearer else { return Some("What it costs is not known.".to_owned()) };
    let priced = settled.job.design.train.as_ref().and_then(|train| train.unit.particulars.price.as_ref());
    let currency = priced.map_or("", |(_, currency)| currency.as_str());
    let word = if dearer < 0.0 { "cheaper" } else { "dearer" };
    Some(format!("{} {currency} {word} by the range.", print::digits(dearer.abs(), 4)))
}

/// Remedies as JSON.
#[must_use]
pub fn remedies_json(settled: &Settled, rule: &Rule, remedies: &[Remedy]) -> Value {
    let of = |all: &[(&'static Rule, String)]| -> Vec<Value> {
        all.iter().map(|(rule, says)| json!({ "rule": rule.id, "says": says })).collect()
    };
    let limits = settled.job.design.basis.as_ref().map_or(&[][..], |basis| &basis.limits);
    let one = |remedy: &Remedy| {
        let then = &remedy.then;
        let words = then.words.iter().filter_map(|word| {
            let title = named(limits.get(word.limit)?);
            Some(json!({ "limit": title, "now": word.was.map(Word::text), "then": word.then.text() }))
        });
        let mg_l = |c: Option<Concentration>| c.map(|c| MG_L.from_si(c.si()));
        json!({
            "says": remedy.says,
            "set": remedy.keys.iter().map(|(path, value)| json!({ "path": path, "value": value })).collect::<Vec<_>>(),
            "then": {
                "verdict": then.grade.word(), "says": then.says,
                "fails": of(&then.fails), "warns": of(&then.warns),
                "settles": then.settles.iter().map(|rule| rule.id).collect::<Vec<_>>(),
                "unit": then.unit, "limits": words.collect::<Vec<_>>(),
                "total_oil_mg_l": { "now": mg_l(then.effluent[0]), "then": mg_l(then.effluent[1]) },
                "dearer": then.dearer,
            },
        })
    };
    json!({ "rule": rule.id, "remedies": remedies.iter().map(one).collect::<Vec<_>>() })
}
