//! What a laboratory found, what is made of it, and the prediction beside it.

use super::Report;
use super::blocks::{Table, number, slim, wide};
use super::capital;
use super::effluent::MG;
use crate::summary::evidence::{says, taken, whose};
use stillrise_design::basis::evidence::SampleSet;
use stillrise_design::performance::measured::Place;
use stillrise_design::performance::promise::Promise;
use stillrise_units::catalog::{ONE, PERCENT};

/// The section, for a job with laboratory results.
pub(super) fn evidence(r: &mut Report<'_>) {
    let settled = r.settled;
    let Some(basis) = settled.job.design.basis.as_ref().filter(|b| !b.evidence.is_empty()) else { return };
    r.out.section("Laboratory results");
    sets(r, &basis.evidence);
    for set in basis.evidence.iter() {
        r.out.heading(&format!("\"{}\"", set.name));
        r.out.para(&says(settled, basis, set).join(" "));
        results(r, set);
        let law = set.law.iter().flat_map(|l| l.fields());
        let bounds = set.bounds.iter().flat_map(|b| b.fields());
        let polar = set.polar.iter().flat_map(|p| p.fields());
        let table = r.rows(law.chain(bounds).chain(polar).map(|(_, at)| at));
        r.out.table(&table);
    }
    beside(r, &basis.evidence);
    r.out.remark(
        "Results count as independent and log-normal. The interval of a mean is Student's, for 95 of 100 sets; it is too narrow for grabs of one day or one event. \
         Where some results lie below a reporting limit, median and deviation are those that make the results likeliest (maximum likelihood); the mean with non-detects at half their limits stands for comparison only.",
    );
}

/// The sets at a glance.
fn sets(r: &mut Report<'_>, all: &[SampleSet]) {
    let mut table = Table::new([
        wide("Set", 1.2),
        wide("Of", 1.2),
        wide("How", 1.2),
        number("Results", ""),
        number("Not|detected", ""),
        number("Geometric|mean", "mg/L"),
        number("Arithmetic|mean", "mg/L"),
        number("Its|interval", "mg/L"),
        number("Coefficient|of variation", ""),
        number("Polar", "%"),
    ]);
    let none = || "–".to_owned();
    for set in all {
        let law =
            |pick: &dyn Fn(&stillrise_design::basis::evidence::Law) -> String| set.law.as_ref().map_or_else(none, pick);
        let block = r.settled.job.enquiry.samples.get(set.index);
        table.row([
            set.name.clone(),
            format!("{}, {}", set.pollutant.title, whose(r.settled, set.point)),
            taken(set, block),
            set.count.to_string(),
            (set.count - set.detected).to_string(),
            law(&|l| r.digits(l.geometric.q, MG, 3)),
            law(&|l| r.digits(l.mean.q, MG, 3)),
            law(&|l| format!("{} to {}", r.digits(l.low.q, MG, 3), r.digits(l.high.q, MG, 3))),
            law(&|l| r.digits(l.variation.q, (&ONE, &ONE), 2)),
            set.polar.as_ref().map_or_else(none, |p| {
                format!("{}{}", if set.pairs.1 { "≥ " } else { "" }, r.digits(p.share.q, (&PERCENT, &PERCENT), 2))
            }),
        ]);
    }
    r.out.table(&table);
}

/// The results of a set, one a row.
fn results(r: &mut Report<'_>, set: &SampleSet) {
    let Some(block) = r.settled.job.enquiry.samples.get(set.index) else { return };
    let treated = !block.after_silica_gel.items.is_empty();
    let mut columns = vec![slim("Date"), slim("Result")];
    if treated {
        columns.push(slim("After silica gel"));
    }
    let mut table = Table::new(columns);
    for (i, result) in set.places.iter().filter_map(|at| Some((*at, block.results.items.get(*at)?))) {
        let date = result.date.as_ref().or_else(|| block.dates.get(i)).cloned().unwrap_or_else(|| "–".to_owned());
        let mut row = vec![date, result.text()];
        if treated {
            row.push(block.after_silica_gel.items.get(i).map_or_else(|| "–".to_owned(), |after| after.text()));
        }
        table.row(row);
    }
    r.out.table(&table);
    let by = [("Taken by", &block.taken_by), ("Laboratory", &block.laboratory)];
    let by: Vec<String> =
        by.into_iter().filter_map(|(what, who)| who.as_ref().map(|who| format!("{what}: {who}"))).collect();
    if !by.is_empty() {
        r.out.remark(&format!("{}.", by.join(". ")));
    }
}

/// The prediction beside what was measured.
fn beside(r: &mut Report<'_>, all: &[SampleSet]) {
    let Some(p) = r.settled.job.design.performance.as_ref().filter(|p| !p.measured.is_empty()) else { return };
    r.out.heading("The prediction beside what was measured");
    let mut table = Table::new([
        wide("Set", 1.2),
        number("Geometric|mean", "mg/L"),
        number("Arithmetic|mean", "mg/L"),
        wide("Predicted mean", 1.4),
        number("Measured over|predicted", ""),
        wide("That number lies", 1.4),
        number("No.", ""),
    ]);
    for c in &p.measured {
        let Some((set, law)) = all.get(c.set).and_then(|s| Some((s, s.law.as_ref()?))) else { continue };
        table.row([
            set.name.clone(),
            r.digits(law.geometric.q, MG, 3),
            r.digits(law.mean.q, MG, 3),
            capital(&Promise::of(c.computed.q, c.influent.q).sentence()),
            r.digits(c.ratio.q, (&ONE, &ONE), 2),
            match c.place {
                Place::Below => "below the interval of the measured mean",
                Place::Within => "within the interval of the measured mean",
                Place::Above => "above the interval of the measured mean",
                Place::Bounds => "as a bound above the interval of the measured mean: it holds",
            }
            .to_owned(),
            r.no(c.ratio.at),
        ]);
    }
    r.out.table(&table);
    if !r.settled.job.enquiry.unit_stands() {
        r.out.remark("The results are of the existing plant, the prediction is for the unit of this design: the one does not test the other.");
    }
}
