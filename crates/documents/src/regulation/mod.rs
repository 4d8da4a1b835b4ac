//! The methods that an authority asks for, each as a worksheet in its source's own notation: a model, printed as text and JSON
//! here and as pages in the report.
//!
//! No physics: every number was found before and stands in the trail.

mod json;
mod text;
mod worked;

pub use json::regulation_json;
pub use text::{short, text};
pub use worked::{Line, Notation, Step};

use crate::summary::{limit, lower, statistic, word};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::enquiry::blocks::Regulator;
use stillrise_design::performance::promise::Promise;
use stillrise_design::regulation::own::{Own, own};
use stillrise_design::regulation::{Asked, Worksheet, about};
use stillrise_search::Settled;
use stillrise_units::print;

/// What a method asks of the units, beside what they have.
#[derive(Debug, Clone, PartialEq)]
pub struct Beside {
    /// What is asked.
    pub what: &'static str,
    /// So much.
    pub asked: String,
    /// What the units have, or why that is not held against it.
    pub has: String,
    /// Whether it is enough; nothing where it is not held against it or not known.
    pub holds: Option<bool>,
    /// Whether it is a matter of the units taken.
    pub matters: bool,
}

impl Beside {
    /// The word on it.
    #[must_use]
    pub fn word(&self) -> &'static str {
        match self.holds {
            Some(true) => "keeps it",
            Some(false) => "falls short",
            None if self.matters => "not known",
            None => "–",
        }
    }
}

/// One method as it is printed.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// Which.
    pub method: Regulator,
    /// Its title.
    pub title: &'static str,
    /// Where it comes from, and how each was read.
    pub sources: Vec<String>,
    /// How far it was read, where that is to be said.
    pub standing: Option<&'static str>,
    /// Symbol, meaning, value and origin of every quantity.
    pub notation: Vec<Notation>,
    /// The steps in order.
    pub steps: Vec<Step>,
    /// What it comes to, in a sentence.
    pub result: String,
    /// What it asks, beside the units.
    pub beside: Vec<Beside>,
    /// What is to be said of the work on this job.
    pub remarks: Vec<String>,
    /// What it leaves out.
    pub leaves_out: &'static [&'static str],
    /// What our own prediction says.
    pub ours: Vec<String>,
    /// What is to be confirmed with the authority.
    pub confirm: String,
}

/// The worksheets of the methods that are asked for.
#[must_use]
pub fn sheets(settled: &Settled) -> Vec<Sheet> {
    let Some(basis) = &settled.job.design.basis else { return Vec::new() };
    basis.regulation.iter().map(|sheet| one(settled, sheet)).collect()
}

/// Who asks, where somebody said it.
#[must_use]
pub fn authority(settled: &Settled) -> Option<&str> {
    settled.job.enquiry.regulation.as_ref()?.authority.as_deref()
}

fn one(settled: &Settled, sheet: &Worksheet) -> Sheet {
    let (notation, steps) = worked::worked(settled, sheet);
    let mut remarks: Vec<String> = sheet.remarks.iter().map(|text| (*text).to_owned()).collect();
    if let Some(stop) = &sheet.stopped {
        remarks.push(format!("It could not be worked to its end: {}.", stop.reason.trim_end_matches('.')));
        remarks.extend(sheet.missing.iter().map(|m| format!("{} ({})", m.question, m.key)));
    }
    if let Some(past) = sheet.bypassed {
        let unit = settled.job.enquiry.system().pick(FLOW_UNITS);
        remarks.push(format!(
            "A splitter sends what is above the treated flow past the unit, up to {}.",
            print::in_prose(stillrise_units::Typed::si(past.q), unit)
        ));
    }
    Sheet {
        method: sheet.method,
        title: about::title(sheet.method),
        sources: about::sources(sheet.method).iter().map(ToString::to_string).collect(),
        standing: about::standing(sheet.method),
        notation,
        steps,
        result: result(settled, sheet),
        beside: sheet.asked.iter().map(|asked| beside(settled, sheet.method, asked)).collect(),
        remarks,
        leaves_out: about::leaves_out(sheet.method),
        ours: ours(settled),
        confirm: confirm(settled),
    }
}

/// A value asked for, in print.
fn shown(settled: &Settled, asked: &Asked, si: f64) -> String {
    print::in_prose(si, settled.job.enquiry.system().pick(asked.units()))
}

fn result(settled: &Settled, sheet: &Worksheet) -> String {
    if sheet.asked.is_empty() {
        return "Nothing follows yet.".to_owned();
    }
    let all = sheet.asked.iter().map(|asked| format!("{} {}", asked.what(), shown(settled, asked, asked.si())));
    format!("The method asks for: {}.", all.collect::<Vec<_>>().join("; "))
}

fn beside(settled: &Settled, method: Regulator, asked: &Asked) -> Beside {
    let found = own(method, asked, &settled.job.enquiry, &settled.job.design);
    let (has, holds) = match found {
        Own::Has(si, holds) => (shown(settled, asked, si), Some(holds)),
        Own::NoMatter(why) | Own::Unknown(why) => (why.to_owned(), None),
    };
    let matters = !matches!(found, Own::NoMatter(_));
    Beside { what: asked.what(), asked: shown(settled, asked, asked.si()), has, holds, matters }
}

/// What our own calculation says beside the method.
fn ours(settled: &Settled) -> Vec<String> {
    let (design, system) = (&settled.job.design, settled.job.enquiry.system());
    let Some(basis) = &design.basis else { return Vec::new() };
    let mut out = Vec::new();
    if let Some(flow) = basis.design_flow() {
        let shown = print::in_prose(stillrise_units::Typed::si(flow.q), system.pick(FLOW_UNITS));
        out.push(format!("Our own basis designs for {shown}."));
    }
    let Some(found) = &design.performance else { return out };
    if let Some(worst) = found.worst() {
        let leaves = Promise::of(worst.total.expected.q, worst.content.total.q).sentence();
        out.push(format!("Our own prediction for the units: {leaves} of total oil, {}.", worst.case));
    }
    for verdict in &found.limits {
        let Some(of) = basis.limits.get(verdict.limit) else { continue };
        out.push(format!("Limit on {}, {}: {}.", lower(&limit(of)), statistic(settled, of), word(verdict)));
    }
    out
}

fn confirm(settled: &Settled) -> String {
    let whom = authority(settled).map_or_else(|| "the authority".to_owned(), |name| format!("the authority ({name})"));
    format!(
        "To be confirmed with {whom}: that this method is asked for, its edition in force, local values and factors, and how the result is to be submitted."
    )
}
