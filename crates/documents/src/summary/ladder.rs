//! The ladder of prediction: rungs, oil by size behind each stage, and what moves the effluent.

use super::{section, total_out};
use crate::render::text::{Table, hang};
use stillrise_design::performance::Performance;
use stillrise_design::performance::just_met::{JustMet, Margin};
use stillrise_design::performance::ladder::{Band, Ladder};
use stillrise_design::performance::promise::floor;
use stillrise_search::Settled;
use stillrise_units::catalog::{DEG_C, DEG_F, PERCENT, UM};
use stillrise_units::{Concentration, Ratio, Typed, print};

pub(super) fn ladder(out: &mut String, settled: &Settled, width: usize) {
    let Some(p) = &settled.job.design.performance else { return };
    let (Some(l), Some(worst)) = (&p.ladder, p.worst()) else { return };
    let influent = worst.content.total.q;
    out.push_str(&section("Ladder of prediction, total oil out, mg/L"));
    let mut table = Table::new(["step", "mg/L", "what it rests on"]);
    for Rung { step, value, says } in rungs(p, l) {
        // What no separator touches is an input, not a promise.
        let exact = step == Step::Untouched;
        let text = value.map_or_else(|| "-".to_owned(), |c| if exact { plain(c) } else { total_out(c, influent) });
        table.row([step.name(), &text, says]);
    }
    out.push_str(&table.render(width));
    out.push_str(&section("Free oil left behind each stage, % of what arrives, at the end of the interval"));
    out.push_str(&bands(l, &l.bands[1]).render(width));
    out.push_str(&section("What moves it, total oil out, mg/L"));
    let mut table = Table::new(["changed", "to", "free oil left, %", "mg/L"]);
    for m in moves(settled, l) {
        table.row([m.what.to_owned(), m.to, free(m.left), total_out(m.total, influent)]);
    }
    out.push_str(&table.render(width));
    for text in just_met(settled, l) {
        out.push_str(&hang(&text, width, 0, 2));
    }
}

fn plain(c: Concentration) -> String {
    print::digits(stillrise_units::catalog::MG_L.from_si(c.si()), 3)
}

/// Which rung of the ladder.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Step {
    RuleOfThumb,
    NoSeparator,
    Mixed,
    Expected,
    WithMesh,
    WithRetention,
    Ideal,
    Untouched,
}

impl Step {
    pub(crate) fn name(self) -> &'static str {
        match self {
            Step::RuleOfThumb => "rule of thumb",
            Step::NoSeparator => "no separator",
            Step::Mixed => "mixed bound",
            Step::Expected => "expected",
            Step::WithMesh => "with the mesh",
            Step::WithRetention => "with the retention zone",
            Step::Ideal => "ideal bound",
            Step::Untouched => "no rising oil at all",
        }
    }
}

/// A rung: its number if it has one, what it rests on.
pub(crate) struct Rung {
    pub step: Step,
    pub value: Option<Concentration>,
    pub says: &'static str,
}

/// The rungs, lowest first.
pub(crate) fn rungs(p: &Performance, l: &Ladder) -> Vec<Rung> {
    let Some(worst) = p.worst() else { return Vec::new() };
    let mut rungs: Vec<Rung> = Vec::new();
    let mut rung = |step, value, says| rungs.push(Rung { step, value, says });
    rung(Step::RuleOfThumb, None, "says how large a plain basin would be, not what comes out");
    rung(Step::NoSeparator, Some(worst.content.total.q), "what arrives");
    let heavy = worst.content.heavy.map(|heavy| heavy.q).filter(|heavy| heavy.si() > 0.0);
    let stays =
        worst.content.emulsified.q + worst.content.dissolved.q + heavy.unwrap_or_else(|| Concentration::from_si(0.0));
    rung(Step::Mixed, worst.total.mixed.map(|mixed| mixed.q), "tank and gaps mixed over their depth, unequal flow");
    rung(
        Step::Expected,
        Some(worst.total.expected.q),
        "the headline: tank by the chosen model, laminar gaps unequally fed",
    );
    if let Some(mesh) = l.with_mesh {
        rung(Step::WithMesh, Some(mesh.q), "the same with the mesh counted, by fibres or by its measured curve");
    }
    if let Some(retention) = l.with_retention {
        rung(
            Step::WithRetention,
            Some(retention.q),
            "the same with the zone behind the plates as a second mixed tank; no credit is taken for it",
        );
    }
    rung(Step::Ideal, worst.total.ideal.map(|ideal| ideal.q), "ideal tank, laminar gaps equally fed");
    let says = match heavy {
        Some(_) => "emulsified and dissolved oil, and free oil too heavy to rise, which no separator touches",
        None => "emulsified and dissolved oil, which no separator touches",
    };
    rung(Step::Untouched, Some(stays), says);
    rungs
}

/// Oil by size behind each stage.
pub(crate) fn bands(l: &Ladder, bands: &[Band]) -> Table {
    let mut table = Table::new(["droplets"]);
    let after = |(k, stage): (usize, &str)| if k == 0 { "arrives".to_owned() } else { format!("after {stage}") };
    table.header.extend(l.names().enumerate().map(after));
    let stages = table.header.len() - 1;
    let percent = |si: f64| print::digits(PERCENT.from_si(si), 3);
    let mut sums = vec![0.0; stages];
    for band in bands {
        let (from, to) = (UM.from_si(band.from.q.si()), UM.from_si(band.to.q.si()));
        let name = if to > 1e6 { format!("over {from:.0} µm") } else { format!("{from:.0} to {to:.0} µm") };
        for (sum, left) in sums.iter_mut().zip(&band.left) {
            *sum += left.q.value;
        }
        table.row(core::iter::once(name).chain(band.left.iter().map(|left| percent(left.q.value))));
    }
    table.row(core::iter::once("all".to_owned()).chain(sums.into_iter().map(percent)));
    table
}

/// One thing changed.
pub(crate) struct Moved {
    /// What.
    pub what: &'static str,
    /// To what.
    pub to: String,
    /// Share of the free oil left: moves even where the floor hides the total.
    pub left: f64,
    /// Total oil out.
    pub total: Concentration,
}

/// A share of the free oil in print.
pub(crate) fn free(left: f64) -> String {
    print::digits(PERCENT.from_si(left), 2)
}

/// The effluent with one thing changed.
pub(crate) fn moves(settled: &Settled, l: &Ladder) -> Vec<Moved> {
    let system = settled.job.enquiry.system();
    let temperature = system.pick((&DEG_F, &DEG_C));
    let moved = |what, to, left: Ratio, total| Moved { what, to, left: left.si(), total };
    let flow =
        l.by_flow.iter().map(|p| moved("flow", format!("{:.0} %", p.at.q.value * 100.0), p.left.q, p.expected.q));
    let water = l
        .by_temperature
        .iter()
        .map(|p| moved("temperature", print::in_prose(p.at.q.si(), temperature), p.left.q, p.expected.q));
    let median =
        l.by_median.iter().map(|p| moved("median droplet", print::in_prose(p.at.q.si(), &UM), p.left.q, p.expected.q));
    flow.chain(water).chain(median).collect()
}

/// That a limit is held at the influent's peak, where it is.
fn peak(settled: &Settled, limit: usize) -> String {
    let Some(p) = &settled.job.design.performance else { return String::new() };
    let times = p.limits.iter().find(|v| v.limit == limit).and_then(|v| v.peak).map_or(1.0, |peak| peak.q.value);
    if times > 1.0 {
        format!(" while the influent is at its peak, {} times its mean", print::digits(times, 3))
    } else {
        String::new()
    }
}

/// The margins in flow, temperature and droplet size, limit by limit.
pub(crate) fn just_met(settled: &Settled, l: &Ladder) -> Vec<String> {
    let (Some(basis), Some(worst)) =
        (&settled.job.design.basis, settled.job.design.performance.as_ref().and_then(|p| p.worst()))
    else {
        return Vec::new();
    };
    let system = settled.job.enquiry.system();
    let degrees = system.pick((&DEG_F, &DEG_C));
    let one = |j: &JustMet| {
        let title = super::limit(&basis.limits[j.limit]);
        let flow = margin(&j.flow, "whatever the flow", |q| {
            // Far over the flow of the basis levels and formulas no longer hold, whatever the oil does.
            if q.si() > TOLD {
                return format!("{} of the flow of {} and more", print::in_prose(TOLD, &PERCENT), worst.case);
            }
            format!("{} of the flow of {}", print::in_prose(q.si(), &PERCENT), worst.case)
        });
        let water = margin(&j.temperature, "at any temperature", |q| {
            format!(
                "water of {} (the basis has {})",
                print::in_prose(q.si(), degrees),
                print::in_prose(worst.passage.fluids.temperature.q.si(), degrees)
            )
        });
        let median = margin(&j.d50, "whatever the droplets", |q| {
            format!(
                "a median droplet of {} (the basis has {})",
                print::in_prose(q.si(), &UM),
                print::in_prose(worst.passage.droplets().d50.q.si(), &UM)
            )
        });
        let never = [is_never(&j.flow), is_never(&j.temperature), is_never(&j.d50)];
        let all: Vec<String> = [flow, water, median].into_iter().flatten().collect();
        // A number below the floor is arithmetic that nobody may count on.
        let limit = &basis.limits[j.limit];
        let floor = if limit.mean.unwrap_or(limit.value).q < floor() {
            " by arithmetic alone, which no separator has been shown to keep below the published floor"
        } else {
            ""
        };
        // What none of them brings about is no margin.
        if never.into_iter().flatten().all(|never| never) {
            return format!(
                "The limit on {title} is not met by a change of flow, temperature or droplets alone, between the ends that were tried."
            );
        }
        format!(
            "The limit on {title} is just met in {}{floor}, as expected{}, one thing changed at a time: {}.",
            worst.case,
            peak(settled, j.limit),
            all.join("; ")
        )
    };
    l.just_met.iter().map(one).collect()
}

/// Over this share of the flow of the basis no margin is told: our proposal.
const TOLD: f64 = 2.0;

/// A margin in words; nothing where it was not asked.
fn margin<Q: Copy>(found: &Margin<Q>, any: &str, at: impl Fn(Q) -> String) -> Option<String> {
    match found {
        Margin::At(value) => Some(format!("with {}", at(value.q))),
        Margin::Always => Some(format!("met {any} between the ends that were tried")),
        Margin::Never => Some(format!("not met {any} between the ends that were tried")),
        Margin::Untried => None,
    }
}

/// Whether it is met nowhere between the ends; nothing where it was not asked.
fn is_never<Q>(found: &Margin<Q>) -> Option<bool> {
    match found {
        Margin::At(_) | Margin::Always => Some(false),
        Margin::Never => Some(true),
        Margin::Untried => None,
    }
}
