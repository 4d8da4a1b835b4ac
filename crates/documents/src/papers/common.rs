//! What several papers tell alike: each limit with what is stated of it, what nobody confirmed, the cautions at the end.

use crate::report::blocks::{Table, number, wide};
use crate::report::{Report, capital};
use crate::summary;
use stillrise_design::basis::limits::LimitState;
use stillrise_design::basis::waters::Content;
use stillrise_design::basis::{Basis, FLOW_UNITS};
use stillrise_design::performance::heard::By;
use stillrise_design::performance::limit::{LimitVerdict, Word};
use stillrise_design::performance::promise::Promise;
use stillrise_design::provenance::{Node, Pair};
use stillrise_design::train::UnitOrigin;
use stillrise_search::Settled;
use stillrise_units::catalog::{DEG, DEG_C, DEG_F, GAL, IN, KG, LB, M3, MG_L, MM};
use stillrise_units::print;
use stillrise_units::{Angle, Length, System, Temperature, Typed};

pub(super) const LENGTH: Pair = (&IN, &MM);
pub(super) const VOLUME: Pair = (&GAL, &M3);
pub(super) const MASS: Pair = (&LB, &KG);
pub(super) const MG: Pair = (&MG_L, &MG_L);

/// What nobody said, in a paper that others fill in.
pub(super) const MAKER: &str = "by maker";
pub(super) const NOT_STATED: &str = "not stated";

/// One limit, and what is stated of it.
pub(super) struct Stated<'a> {
    /// As the permit writes it: `Oil and grease: 25 mg/L, daily maximum`.
    pub title: String,
    pub authority: Option<&'a str>,
    pub method: Option<&'a str>,
    /// The word; `None` while nothing can be said.
    pub word: Option<Word>,
    /// The same in print.
    pub says: &'static str,
    /// What leaves by the calculation, against what; empty where it is not predicted.
    pub found: String,
    /// The one percentage, or how the results measured lie.
    pub share: Option<String>,
    /// Why, and what stands against it.
    pub why: String,
    /// What would change it.
    pub change: String,
    /// Samples in an average; `None` of a single sample.
    pub samples: Option<f64>,
    /// Whether what leaves lies above the limit by the calculation, or by what was measured.
    pub is_over: bool,
}

impl Stated<'_> {
    /// Whether a performance is stated.
    pub fn is_stated(&self) -> bool {
        self.word == Some(Word::Kept)
    }
}

/// All limits of a job, in the order of the enquiry's kinds: contents, pH, what settles, those without a number.
pub(super) fn limits(settled: &Settled) -> Vec<Stated<'_>> {
    let design = &settled.job.design;
    let Some(basis) = &design.basis else { return Vec::new() };
    let verdicts = design.performance.as_ref().map_or(&[][..], |p| &p.limits);
    let mut all: Vec<Stated<'_>> = Vec::new();
    for (k, limit) in basis.limits.iter().enumerate() {
        let verdict = verdicts.iter().find(|verdict| verdict.limit == k);
        all.push(one(settled, limit, verdict));
    }
    for limit in &basis.ph_limits {
        all.push(Stated {
            title: format!("{}, {}", limit.shown(), limit.statistic()),
            authority: limit.authority.as_deref(),
            method: limit.method.as_deref(),
            word: Some(Word::NotByGravity),
            says: Word::NotByGravity.text(),
            found: String::new(),
            share: None,
            why: limit.pollutant.explains.to_owned(),
            change: limit.pollutant.what_could.to_owned(),
            samples: None,
            is_over: false,
        });
    }
    let open = |(title, why): (String, String), change: &str| Stated {
        title,
        authority: None,
        method: None,
        word: None,
        says: "open",
        found: String::new(),
        share: None,
        why,
        change: change.to_owned(),
        samples: None,
        is_over: false,
    };
    all.extend(summary::in_a_cone(settled).into_iter().map(|said| open(said, "a cone test of the water that leaves")));
    all.extend(
        summary::numberless(settled)
            .into_iter()
            .map(|said| open(said, "the number, its statistic and its method, from the permit")),
    );
    all
}

fn one<'a>(settled: &Settled, limit: &'a LimitState, verdict: Option<&LimitVerdict>) -> Stated<'a> {
    let title =
        format!("{}: {}, {}", capital(limit.title()), summary::allows(limit), summary::statistic(settled, limit));
    let samples = limit.scatter.as_ref().map(|s| s.samples.q.si()).filter(|n| *n > 1.5);
    let (authority, method) = (limit.authority.as_deref(), limit.method.as_deref());
    let Some(verdict) = verdict else {
        let why = "no unit was worked to its end, so that nothing can be held against it".to_owned();
        let change = "the answers that are still wanted".to_owned();
        return Stated {
            title,
            authority,
            method,
            word: None,
            says: "open",
            found: String::new(),
            share: None,
            why,
            change,
            samples,
            is_over: false,
        };
    };
    let found = if verdict.predicted {
        let leaves = Promise::of(verdict.expected.q, verdict.influent.q).brief();
        format!("{leaves} against {}", print::digits(MG_L.from_si(verdict.against.q.si()), 3))
    } else {
        String::new()
    };
    Stated {
        title,
        authority,
        method,
        word: Some(verdict.word),
        says: verdict.says(),
        found,
        share: share(verdict),
        why: why(verdict),
        change: change(settled, verdict),
        samples,
        is_over: verdict.is_exceeded_by_calculation() || verdict.says() == "exceeded",
    }
}

/// How many results would lie within the limit: the measured ones where some lie above it, else the one share.
fn share(verdict: &LimitVerdict) -> Option<String> {
    if let Some(measured) = verdict.measured.filter(|m| m.above > 0) {
        return Some(measured.says("it"));
    }
    let chance = verdict.chance.filter(|_| verdict.word != Word::NotByGravity)?;
    let of = if verdict.peak.is_some() { "single results" } else { "averages" };
    Some(format!("{} of {of}", chance.percent()))
}

/// Why this word: what the calculation gives, and what stands against it first.
fn why(verdict: &LimitVerdict) -> String {
    let because = verdict.because.trim_end_matches('.');
    let first = verdict.held_back.iter().find(|held| held.word == verdict.word);
    let against = match first.map(|held| &held.by) {
        None => return because.to_owned(),
        Some(By::Assumption { label, answer, .. }) => {
            format!("this figure is not confirmed: {label}; with {answer}, as plausible, the limit would not hold")
        }
        Some(By::Eye) => "a film is judged by eye, and no number tells that".to_owned(),
        Some(By::Chance) => "single results scatter, and much of the basis is uncertain".to_owned(),
        Some(By::Measured(measured)) => measured.says("the limit"),
    };
    format!("{because}. Against it: {against}")
}

/// What would change it: where one figure alone stands against the calculation, that somebody confirms it.
fn change(settled: &Settled, verdict: &LimitVerdict) -> String {
    let first = verdict.held_back.iter().find(|held| held.word == verdict.word);
    match first.map(|held| &held.by) {
        Some(By::Assumption { .. }) if verdict.calculated == Word::Kept => {
            "that figure confirmed as it was taken, or better".to_owned()
        }
        _ => crate::rating::change(settled, verdict),
    }
}

/// What stands behind a value that nobody confirmed.
pub(super) fn taken(settled: &Settled, at: Node) -> &'static str {
    if settled.subject().assumed(at).is_some() { " (assumed)" } else { "" }
}

/// A length as a data sheet tells it: whole millimetres, or three digits of an inch; small ones with three digits.
pub(super) fn length(r: &Report<'_>, q: Length) -> String {
    format!("{} {}", length_digits(r, q), r.symbol(LENGTH))
}

/// The same without its unit.
pub(super) fn length_digits(r: &Report<'_>, q: Length) -> String {
    let value = print::or_nothing(r.system.pick(LENGTH).from_si(q.si()));
    let whole = match r.system {
        System::Si => value.abs() >= 20.0,
        System::Us => value.abs() >= 1000.0,
    };
    if whole { format!("{value:.0}") } else { print::digits(value, 3) }
}

/// A quantity that something must be no less than, and the unit drawn just is: three digits, never rounded up.
pub(super) fn no_less<Q: Typed>(r: &Report<'_>, q: Q, units: Pair) -> String {
    let unit = r.system.pick(units);
    let value = print::or_nothing(unit.from_si(q.si()));
    let near = format!("{value:.2e}");
    let exponent: Option<i32> = near.split_once('e').and_then(|(_, e)| e.parse().ok());
    let step: Option<f64> = exponent.and_then(|e| format!("1e{}", e - 2).parse().ok());
    let rounded: f64 = near.parse().unwrap_or(value);
    let over = rounded - value > 1e-9 * value.abs();
    print::in_prose(unit.to_si(step.filter(|_| over).map_or(rounded, |step| rounded - step)), unit)
}

/// An angle in degrees.
pub(super) fn angle(q: Angle) -> String {
    format!("{}°", print::digits(DEG.from_si(q.si()), 3))
}

/// The temperature at which the density of an oil is told, 15 °C, in the reader's degrees.
pub(super) fn at_15(r: &Report<'_>) -> String {
    r.prose(Temperature::of(15.0, &DEG_C), (&DEG_F, &DEG_C))
}

/// That model, sizes and weights are no maker's, where the unit stands in the demonstration's range.
pub(super) fn invented(r: &mut Report<'_>) {
    let design = &r.settled.job.design;
    let row = design.train.as_ref().is_some_and(|train| matches!(train.origin, UnitOrigin::Row { .. }));
    if row && r.settled.job.enquiry.range.is_none() {
        r.out.remark("Model, sizes and weights stand in an invented demonstration range.");
    }
}

/// The caution at the end of every paper, and those of what is acted on by it.
pub(super) fn cautions(r: &mut Report<'_>, more: &str) {
    let more = if more.is_empty() { String::new() } else { format!(" {more}") };
    r.out.remark(&format!(
        "Preliminary, for review by an engineer licensed where the unit is installed. Local code and the permit govern wherever they differ from this paper.{more}"
    ));
}

/// What whoever enters, opens or lifts the unit has to mind.
pub(super) const ON_SITE: &str = "The inside is a confined space: nobody enters without a permit, tested air, an attendant and a means of rescue. Vapour over the liquid may ignite. The unit is lifted empty and dry only, by all its lifting points, and nobody stands below.";

/// What became of something that was named.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Met {
    Yes,
    No,
    Unknown,
    Open,
}

/// Something that was named or asked: what, the answer, and what became of it.
pub(super) struct Answer {
    pub asked: String,
    pub says: String,
    pub met: Met,
}

/// Beginnings of answers that agree, refuse, and cannot say yet; all others leave it open.
const BEGINNINGS: [(Met, &[&str]); 3] = [
    (
        Met::Yes,
        &["yes", "by its flow yes", "that is what", "on these figures it can wait", "the unit offered is stated"],
    ),
    (Met::Unknown, &["cannot be judged", "not answered", "not confirmed"]),
    (Met::No, &["no. ", "no; ", "no, ", "not behind", "our range has no"]),
];

/// All that was named, answered one by one.
pub(super) fn answers(settled: &Settled) -> Vec<Answer> {
    let one = |text: String| {
        let (asked, says) = text.split_once(": ")?;
        let begins = |(_, all): &&(Met, &[&str])| all.iter().any(|start| says.starts_with(start));
        let met = BEGINNINGS.iter().find(begins).map_or(Met::Open, |(met, _)| *met);
        Some(Answer { asked: asked.to_owned(), says: says.to_owned(), met })
    };
    crate::reply::answered(settled).into_iter().filter_map(one).collect()
}

/// The waters, with what they carry in the mean; what nobody confirmed is named where there is any.
pub(super) fn waters(r: &Report<'_>, basis: &Basis) -> Table {
    let named = |c: &Content| {
        let all = [
            ("total oil", c.total.at),
            ("emulsified", c.emulsified.at),
            ("dissolved", c.dissolved.at),
            ("solids", c.solids.at),
        ];
        let open = all.into_iter().filter(|(_, at)| !taken(r.settled, *at).is_empty());
        open.map(|(name, _)| name).collect::<Vec<_>>().join(", ")
    };
    let open = basis.waters.iter().any(|water| !named(&water.content).is_empty());
    let columns = [
        wide("Water", 2.0),
        number("Arrives", r.symbol(FLOW_UNITS)),
        number("Total oil", "mg/L"),
        number("of it free", "mg/L"),
        number("emulsified", "mg/L"),
        number("dissolved", "mg/L"),
        number("Solids", "mg/L"),
    ];
    let mut table = Table::new(columns.into_iter().chain(open.then(|| wide("Not confirmed", 1.2))));
    let mg = |q| r.digits(q, MG, 3);
    for water in &basis.waters {
        let c = &water.content;
        let cells = [c.total.q, c.free.q, c.emulsified.q, c.dissolved.q, c.solids.q].map(mg);
        let head = [capital(&water.name), r.digits(water.flow.q, FLOW_UNITS, 3)];
        table.row(head.into_iter().chain(cells).chain(open.then(|| named(c))));
    }
    table
}
