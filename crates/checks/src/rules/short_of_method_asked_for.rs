//! Rule: units short of a method that an authority asks for

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::Node;
use stillrise_design::enquiry::blocks::Regulation;
use stillrise_design::provenance::Assumption;
use stillrise_design::regulation::about::title;
use stillrise_design::regulation::own::{Own, own};
use stillrise_design::regulation::{Asked, Worksheet};
use stillrise_units::print;

rule! {
    "short-of-method-asked-for" "Units short of a method that the authority asks for", Unit;
    client "The unit falls short of a method of sizing that the authority asks for."
    looks "Each method of `regulation.methods`, worked for the job: surface, velocity, plate area, volume, stores, nominal size or flow that it asks for against those of the units taken. Less fails; what nobody said leaves it without a judgement."
    matters "An authority that sizes by a method refuses a unit that falls short of it, however well it is predicted to do."
    remedy "A larger unit or more in parallel, less water, or the authority's consent to our prediction in place of the method: to be agreed in writing."
    source "The method's own source, on its worksheet"
    limits "A method that is kept shows no limit as kept, and one that is missed shows none as exceeded. Surfaces and volumes count over all units together; a spill to be held counts for each."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(block) = &s.enquiry.regulation else { return Verdict::skips("no authority's method is asked for") };
    if block.asked().is_empty() {
        return Verdict::skips("no authority's method is asked for");
    }
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let (mut short, mut open, mut asks, mut kept) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    let mut at = None;
    for sheet in &basis.regulation {
        let name = title(sheet.method);
        let before = (short.len(), open.len());
        if let Some(stop) = &sheet.stopped {
            asks.extend(wanted(sheet));
            open.push(format!("{name}: {}", stop.reason));
        }
        for (label, assumption) in sheet.terms.iter().filter_map(|term| own_words(s, term.at)) {
            asks.push(Ask::of(assumption));
            open.push(format!("{name} rests on the {label}, which nobody said"));
        }
        for asked in &sheet.asked {
            match own(sheet.method, asked, s.enquiry, s.design) {
                Own::Has(own, false) => {
                    at = at.or(Some(asked.at()));
                    short.push(format!("{name}: {}", beside(s, asked, own)));
                }
                Own::Unknown(why) => {
                    asks.extend(unknown(s, asked));
                    open.push(format!("{name}: {why}"));
                }
                Own::Has(_, true) | Own::NoMatter(_) => {}
            }
        }
        if (short.len(), open.len()) == before {
            kept.push(name);
        }
    }
    if !short.is_empty() {
        return Verdict::fails(short.join("; "), at);
    }
    if !open.is_empty() {
        return Verdict::cannot_judge(open.join("; "), asks, None);
    }
    Verdict::passes(format!("the units keep what is asked for by: {}", kept.join("; ")))
}

/// `surface of the open water, at least 21 m2, has 14 m2`.
fn beside(s: &Subject<'_>, asked: &Asked, own: f64) -> String {
    if !s.read {
        return String::new();
    }
    let unit = s.system().pick(asked.units());
    format!("{} {}, has {}", asked.what(), print::in_prose(asked.si(), unit), print::in_prose(own, unit))
}

/// A value of the method itself that was assumed: what it is, and what stands in.
fn own_words<'a>(s: &Subject<'a>, at: Node) -> Option<(&'a str, &'a Assumption)> {
    let assumption = s.assumed(at).filter(|a| a.declared.is_of::<Regulation>())?;
    Some((s.ledger?.entry(at)?.label.as_str(), assumption))
}

/// What a method that could not be worked to its end needs.
fn wanted(sheet: &Worksheet) -> Vec<Ask> {
    let missing = sheet.missing.iter();
    let asks: Vec<Ask> = missing.map(|m| Ask::new(m.key.clone(), m.question.clone())).collect();
    if asks.is_empty() {
        vec![Ask::open(format!("What is to stand in the method \"{}\" where it stopped?", title(sheet.method)))]
    } else {
        asks
    }
}

/// What would tell what the unit has.
fn unknown(s: &Subject<'_>, asked: &Asked) -> Vec<Ask> {
    match asked {
        Asked::NominalSize(_) => vec![Ask::new(
            "european.type_test",
            "Which report of a type test shows the nominal size of the unit that is offered?",
        )],
        _ => s.stopped().asks().to_vec(),
    }
}
