//! What contradicts, what is asked, what was assumed.

use super::show;
use crate::summary::that_matter;
use std::collections::BTreeSet;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::stated::NOBODY_CHOSE;
use stillrise_design::provenance::{Entry, Origin};
use stillrise_search::Settled;
use stillrise_search::questions::Question;
use stillrise_search::standing::Asks;
use stillrise_units::Typed;
use stillrise_units::catalog::{FT2, IN_H, M2, MM_H};

/// Questions in the mail.
const ASKED: usize = 8;
/// Of these, questions that stand whatever the numbers.
const STANDING: usize = 4;
/// Assumptions in the mail.
const ASSUMED: usize = 8;

/// Claims that contradict and nobody chose between.
pub(super) fn contradictions(settled: &Settled) -> Vec<String> {
    let mut seen = BTreeSet::new();
    let system = settled.job.enquiry.system();
    let one = |entry: &Entry| match &entry.origin {
        Origin::Chosen { among, because, .. } if because.starts_with(NOBODY_CHOSE) && seen.insert(among.clone()) => {
            Some(format!("{}: {among}. We took {}.", crate::summary::capital(&entry.label), entry.shown(system)))
        }
        _ => None,
    };
    settled.job.ledger.entries.iter().filter_map(one).collect()
}

/// The questions of the mail, those first that decide: the word on a limit, then what turns the job, then the rest.
pub(super) fn questions(settled: &Settled) -> Vec<String> {
    let (deciding, rest) = ranked(settled);
    let standing = settled.standing.iter().map(|s| standing(&s.asks));
    let mut seen = BTreeSet::new();
    let texts = deciding
        .into_iter()
        .map(asked)
        .chain(standing.take(STANDING))
        .chain(crate::summary::stands::outlet(settled))
        .chain(rest.into_iter().map(asked));
    texts.filter(|text| seen.insert(text.clone())).take(ASKED).collect()
}

/// Questions that hold a word back, and the others that matter; what contradicts is asked in its own place.
fn ranked(settled: &Settled) -> (Vec<&Question>, Vec<&Question>) {
    let asked = that_matter(settled).into_iter().filter(|q| !q.contradiction);
    asked.partition(|q| !q.holds.is_empty())
}

fn asked(q: &Question) -> String {
    // What a pump dissipates stands for its kind; nobody who is asked for the kind wants that number.
    let now = if q.key == "inlet.pump" { "a centrifugal pump" } else { &q.now };
    format!("{} We took {now}.", q.text)
}

/// A standing question in words.
pub(crate) fn standing(asks: &Asks) -> String {
    match asks {
        Asks::DataSheet(product) => {
            format!(
                "May we have the safety data sheet of \"{product}\", and how much of it is used? It decides whether the oil still rises."
            )
        }
        Asks::Cleaner => {
            "Which cleaner or detergent, if any, goes into the water? It decides whether the oil still rises."
                .to_owned()
        }
        Asks::NewProduct(said) => {
            format!(
                "Which product is it (\"{said}\"), and how much of it is used? It decides whether the oil still rises."
            )
        }
        Asks::RainInSewer => "Does the owner of the sewer allow rain water in it?".to_owned(),
        Asks::Gallon => "Are your gallons US or imperial?".to_owned(),
        Asks::Receiver => {
            "Where does the water go behind the separator: storm drain, water body or sanitary sewer?".to_owned()
        }
        Asks::Method(pollutant) => {
            format!(
                "By which method is \"{pollutant}\" measured? It decides whether all oil and grease counts or mineral oil only."
            )
        }
        Asks::Authority(pollutant) => format!("Who sets the limit on {pollutant}, and in which document?"),
    }
}

/// What was taken without being told.
pub(super) fn assumed(settled: &Settled) -> Vec<String> {
    let rain = settled.job.design.basis.as_ref().and_then(|b| b.storm.as_ref()).map(|storm| {
        format!(
            "rain of {} on {}, which gives {}",
            show(settled, storm.intensity.q.si(), (&IN_H, &MM_H)),
            show(settled, storm.area.q.si(), (&FT2, &M2)),
            show(settled, storm.flow.q.si(), FLOW_UNITS)
        )
    });
    let in_mail: BTreeSet<String> = questions(settled).into_iter().collect();
    let mut seen = BTreeSet::new();
    let (deciding, rest) = ranked(settled);
    let others = deciding
        .into_iter()
        .chain(rest)
        .filter(|q| !in_mail.contains(&asked(q)) && seen.insert(q.label.clone()))
        .take(ASSUMED)
        .map(|q| format!("{} {}", q.label, q.now));
    rain.into_iter().chain(others).collect()
}
