//! Jobs side by side: revisions of one, or one asked for in several ways; what they come to, what was said, what rules say.

use crate::render::text::{hang, heading};
use crate::summary::{CAUTION, limit as named, units};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use stillrise_checks::{Grade, Judged};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::limits::LimitState;
use stillrise_design::enquiry::blocks;
use stillrise_design::performance::promise::Promise;
use stillrise_design::provenance::Origin;
use stillrise_search::Settled;
use stillrise_units::catalog::{FT, GAL, KG, LB, M, M3};
use stillrise_units::{System, Typed, Unit, print};

type Pair = (&'static Unit, &'static Unit);

/// A line of the comparison: what it is, and what each job has there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// What it is.
    pub what: String,
    /// One for each job; nothing where it has none.
    pub values: Vec<Option<String>>,
}

impl Line {
    /// Whether the jobs differ in it.
    #[must_use]
    pub fn differs(&self) -> bool {
        self.values.windows(2).any(|pair| pair[0] != pair[1])
    }
}

/// Jobs side by side.
#[derive(Debug, Clone)]
pub struct Comparison {
    /// What each is called, as it was named.
    pub names: Vec<String>,
    /// What they come to.
    pub results: Vec<Line>,
    /// What was said that differs.
    pub said: Vec<Line>,
    /// Rules that say another thing of one than of another.
    pub rules: Vec<Line>,
}

/// Compares jobs, in the units of the first.
#[must_use]
pub fn compare(jobs: &[(String, &Settled)]) -> Comparison {
    let system = jobs.first().map_or(System::Si, |(_, job)| job.job.enquiry.system());
    let line = |what: &str, value: &dyn Fn(&Settled) -> Option<String>| Line {
        what: what.to_owned(),
        values: jobs.iter().map(|(_, job)| value(job)).collect(),
    };
    let show = |si: f64, pair: Pair| print::in_prose(si, system.pick(pair));
    let mut results = vec![
        line("enquiry", &|s| s.job.enquiry.head.title.0.clone()),
        line("revision", &|s| s.job.enquiry.head.revision.0.clone()),
        line("largest flow to the unit or units", &|s| {
            Some(show(s.job.design.basis.as_ref()?.design_flow()?.q.si(), FLOW_UNITS))
        }),
        line("unit", &unit),
    ];
    let mut limits: Vec<&LimitState> = Vec::new();
    for limit in jobs.iter().flat_map(|(_, job)| job.job.design.basis.iter().flat_map(|b| &b.limits)) {
        if limits.iter().all(|known| !same(known, limit)) {
            limits.push(limit);
        }
    }
    results.extend(limits.iter().map(|limit| {
        let what = format!("limit: {}, {}", named(limit), limit.statistic.q.word());
        line(&what, &|s| word(s, limit))
    }));
    results.extend([
        line("total oil out, largest mean", &|s| {
            let worst = s.job.design.performance.as_ref()?.worst()?;
            Some(format!("{} ({})", Promise::of(worst.total.expected.q, worst.content.total.q).sentence(), worst.case))
        }),
        line("held back ahead", &|s| {
            let hold = s.job.design.train.as_ref()?.equalisation.as_ref()?;
            Some(show(hold.volume().q.si(), (&GAL, &M3)))
        }),
        line("needed beside it", &|s| {
            let stages = s.job.design.train.as_ref()?.stages.iter().filter(|stage| stage.asked_for);
            let names: Vec<&str> = stages.map(|stage| stage.name.as_str()).collect();
            (!names.is_empty()).then(|| names.join(", "))
        }),
        line("to be emptied", &crate::reply::emptied_in_short),
        line("room in plan", &|s| {
            let fit = &s.job.design.performance.as_ref()?.fit;
            let way = fit.way();
            Some(format!("{} x {}", show(way.length.q.si(), (&FT, &M)), show(way.width.q.si(), (&FT, &M))))
        }),
        line("how it stands", &crate::summary::stands::how),
        line("weight empty, each", &|s| {
            let shop = s.job.design.performance.as_ref()?.shop.as_ref()?.weights.as_ref()?;
            Some(show(shop.empty?.q.si(), (&LB, &KG)))
        }),
        line("rules that fail", &|s| Some(s.verdicts.iter().filter(|v| v.stands_failed()).count().to_string())),
        line("rules that cannot judge", &|s| {
            Some(s.verdicts.iter().filter(|v| v.grade() == Grade::CannotJudge).count().to_string())
        }),
    ]);
    results.retain(|line| line.values.iter().any(Option::is_some));
    let names = jobs.iter().map(|(name, _)| name.clone()).collect();
    Comparison { names, results, said: said(jobs), rules: rules(jobs) }
}

/// The unit or units that are taken.
fn unit(settled: &Settled) -> Option<String> {
    settled.job.design.train.as_ref().map(units)
}

/// Whether two limits ask for the same.
fn same(a: &LimitState, b: &LimitState) -> bool {
    *a.pollutant == *b.pollutant && a.title() == b.title() && a.value.q == b.value.q && a.statistic.q == b.statistic.q
}

/// The word of a job on a limit, where it has one like it.
fn word(settled: &Settled, limit: &LimitState) -> Option<String> {
    let (basis, performance) = (settled.job.design.basis.as_ref()?, settled.job.design.performance.as_ref()?);
    let verdict = performance.limits.iter().find(|v| basis.limits.get(v.limit).is_some_and(|own| same(own, limit)))?;
    Some(verdict.says().to_owned())
}

/// What was said under a key, where the jobs differ.
fn said(jobs: &[(String, &Settled)]) -> Vec<Line> {
    let of = |settled: &Settled| {
        let mut told: BTreeMap<String, Vec<String>> = BTreeMap::new();
        for entry in &settled.job.ledger.entries {
            let Origin::Given { source, text } = &entry.origin else { continue };
            if source.is_settings() {
                let texts = told.entry(source.to_string()).or_default();
                if !texts.contains(text) {
                    texts.push(text.clone());
                }
                continue;
            }
            // What stands in the handbook or in a range nobody said.
            let block = source.place().split([':', ' ']).next().unwrap_or_default();
            if !source.place().contains(": ") || blocks().all(|(spec, _)| spec.name != block) {
                continue;
            }
            let texts = told.entry(source.place().to_owned()).or_default();
            if !texts.contains(text) {
                texts.push(text.clone());
            }
        }
        told
    };
    let all: Vec<BTreeMap<String, Vec<String>>> = jobs.iter().map(|(_, job)| of(job)).collect();
    let mut places: Vec<&String> = all.iter().flat_map(BTreeMap::keys).collect();
    places.sort();
    places.dedup();
    let lines = places.into_iter().map(|place| Line {
        what: place.clone(),
        values: all.iter().map(|told| told.get(place).map(|texts| texts.join("; "))).collect(),
    });
    lines.filter(Line::differs).collect()
}

/// Rules whose grade differs.
fn rules(jobs: &[(String, &Settled)]) -> Vec<Line> {
    let Some((_, first)) = jobs.first() else { return Vec::new() };
    let of = |settled: &Settled, judged: &Judged| {
        let own = settled.verdicts.iter().find(|other| *other.rule == *judged.rule)?;
        Some(own.grade().word().to_owned())
    };
    let lines = first.verdicts.iter().map(|judged| Line {
        what: judged.rule.title.to_owned(),
        values: jobs.iter().map(|(_, job)| of(job, judged)).collect(),
    });
    lines.filter(Line::differs).collect()
}

/// The comparison as plain text.
#[must_use]
pub fn compare_text(found: &Comparison, width: usize) -> String {
    let mut out = String::new();
    let mut list = |title: &str, lines: &[Line], none: &str| {
        out.push_str(&heading(title));
        if lines.is_empty() {
            out.push_str(&hang(none, width, 0, 2));
        }
        for line in lines {
            let shown = |value: &Option<String>| value.clone().unwrap_or_else(|| "–".to_owned());
            if !line.differs() {
                let same = line.values.first().map_or_else(String::new, shown);
                out.push_str(&hang(&format!("{}: {same}, in all", line.what), width, 0, 2));
                continue;
            }
            out.push_str(&hang(&line.what, width, 0, 2));
            for (name, value) in found.names.iter().zip(&line.values) {
                out.push_str(&hang(&format!("{name}: {}", shown(value)), width, 2, 4));
            }
        }
        out.push('\n');
    };
    list("What they come to", &found.results, "Nothing was worked.");
    list("What was said, where it differs", &found.said, "The same was said of all that was worked.");
    list("Rules that say another thing", &found.rules, "Every rule says the same of all.");
    out.push_str(&hang(CAUTION, width, 0, 0));
    out
}

/// The comparison as JSON.
#[must_use]
pub fn compare_json(found: &Comparison) -> Value {
    let lines = |lines: &[Line]| -> Vec<Value> {
        lines.iter().map(|l| json!({ "what": l.what, "values": l.values, "differs": l.differs() })).collect()
    };
    json!({
        "caution": CAUTION, "jobs": found.names, "results": lines(&found.results), "said": lines(&found.said),
        "rules": lines(&found.rules),
    })
}
