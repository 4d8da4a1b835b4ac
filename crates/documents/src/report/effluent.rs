//! What leaves: by case, season and state; by fraction; by droplet.

use super::blocks::{Table, number, slim, wide};
use super::{Report, ladder};
use super::{capital, sentence};
use crate::charts::Drawn;
use stillrise_design::Val;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::performance::Performance;
use stillrise_design::performance::ladder::Ladder;
use stillrise_design::performance::limit::Word;
use stillrise_design::performance::promise::{Promise, floor};
use stillrise_design::performance::removal::{Bounded, Removal};
use stillrise_design::provenance::Pair;
use stillrise_handbook::separation::floors;
use stillrise_units::Concentration;
use stillrise_units::catalog::{FT_MIN, GPM_FT2, M_H, MG_L, MIN, MM_S, PERCENT, UM};

pub(super) const MG: Pair = (&MG_L, &MG_L);
const OVERFLOW: Pair = (&GPM_FT2, &M_H);
const SHARE: Pair = (&PERCENT, &PERCENT);

/// A prediction for a column in mg/L: the number, or the bound that may be promised.
///
/// Without an influent only the published floor counts.
pub(super) fn brief(expected: Concentration, influent: Option<Concentration>) -> String {
    influent.map_or_else(|| Promise::unbounded(expected), |influent| Promise::of(expected, influent)).brief()
}

/// Opens section 5 and says what leaves.
pub(super) fn effluent(r: &mut Report<'_>, charts: &[Drawn]) {
    r.out.section("Performance");
    let settled = r.settled;
    let Some(p) = &settled.job.design.performance else {
        r.out.para("None: no unit was laid out, or the chain stopped before it.");
        return;
    };
    verdict(r, p);
    ladder::scatter(r, p);
    if let (Some(worst), Some(l)) = (p.worst(), &p.ladder) {
        ladder::ladder(r, p, l, worst, charts);
    }
    removals(r, p);
    if let Some(worst) = p.worst() {
        fractions(r, worst);
        if let Some(l) = &p.ladder {
            ladder::stages(r, l, charts);
            ladder::studies(r, l, worst, charts);
        }
    }
    r.out.heading("How these numbers were found, and what they are not");
    r.out.list(false, CAVEATS.iter().map(|text| ((*text).to_owned(), String::new())));
    ladder::unbacked(r);
}

/// What each stage catches by size, zones and the old rule: an annex.
pub(super) fn beside(r: &mut Report<'_>, charts: &[Drawn]) {
    let Some(p) = &r.settled.job.design.performance else { return };
    r.out.section("Performance, beside the headline");
    if let (Some(worst), Some(l)) = (p.worst(), &p.ladder) {
        grades(r, l, worst, charts);
    }
    zones(r);
    thumb(r, p);
}

/// What a reader must know of the method.
const CAVEATS: &[&str] = &[
    "What the mesh catches depends on data that are rarely stated; whatever it does comes on top.",
    "Plate theory over the droplet distribution is the headline; the rule of thumb and the two bounds stand beside it, measured results of the unit, where there are any, above it.",
    "Ideal bound: ideal tank, laminar gaps, equal flow in all gaps. Expected: the tank model chosen, laminar gaps as long as their Reynolds number allows, unequal flow. \
     Mixed bound: tank and gaps mixed over their depth, unequal flow.",
    "Free oil is integrated over the distribution of droplets that the basis names; droplets neither grow nor break within the unit. The distribution governs the result and is rarely measured.",
    "Oil that sits on solids goes with them: what the solids that leave carry is not in the totals, see the solids by size.",
    "Emulsified and dissolved oil pass: gravity touches free oil only.",
    "The heaviest oil of the season governs the rise, whichever water carries it.",
    "Flow is steady; between units in parallel it is shared with the inequality that the trail names. Surges, pump cycles and oil that is stirred up again are not in these numbers.",
];

fn verdict(r: &mut Report<'_>, p: &Performance) {
    r.out.heading("Verdict on each limit");
    let settled = r.settled;
    let Some(basis) = &settled.job.design.basis else { return };
    if p.limits.is_empty() && basis.ph_limits.is_empty() {
        r.out.para("No limit is stated.");
    }
    let mut table = Table::new([
        wide("Limit", 1.3),
        slim("Verdict"),
        number("Arrives", "mg/L"),
        number("Expected", "mg/L"),
        number("If mixed", "mg/L"),
        number("Held|against", "mg/L"),
        wide("Because", 2.2),
        number("No.", ""),
    ]);
    for v in &p.limits {
        let Some(limit) = basis.limits.get(v.limit) else { continue };
        // What is not predicted for this pollutant has no number here.
        let out = |c: Concentration| if v.predicted { brief(c, Some(v.influent.q)) } else { "–".to_owned() };
        table.row([
            format!("{}, {}", limit.title(), limit.statistic.q.word()),
            v.says().to_owned(),
            if v.predicted { r.digits(v.influent.q, MG, 3) } else { "–".to_owned() },
            out(v.expected.q),
            v.mixed.map_or_else(|| "–".to_owned(), |mixed| out(mixed.q)),
            r.digits(v.against.q, MG, 4),
            format!(
                "{} What would change it: {}",
                sentence(&v.reason()),
                sentence(&crate::rating::change(r.settled, v))
            ),
            r.no(v.expected.at),
        ]);
    }
    for limit in &basis.ph_limits {
        let none = || "–".to_owned();
        let why = sentence(limit.pollutant.explains);
        let change = sentence(limit.pollutant.what_could);
        table.row([
            format!("{}, {}", limit.shown(), limit.statistic()),
            Word::NotByGravity.text().to_owned(),
            none(),
            none(),
            none(),
            none(),
            format!("{why} What would change it: {change}"),
            r.no(limit.low.at),
        ]);
    }
    r.out.table(&table);
    let floor = floors::plate_floor();
    r.out.remark(&format!(
        "Kept: even if everything mixes. Likely: as expected, not if everything mixes. Not shown: not as expected. Not by gravity: oil that does not rise alone is more than the limit, or the limit is below what plates are known to keep. Predictions below the published floor ({}, {}: {}) are printed as ≤ {}; \
         the trail holds the numbers as computed, which are steps of a calculation and not promises.",
        floor.condition, r.show(floor.value, MG), floor.source, r.digits(floor.value, MG, 2),
    ));
}

fn removals(r: &mut Report<'_>, p: &Performance) {
    r.out.heading("By case, season and state");
    let mut table = Table::new([
        wide("Case", 1.0),
        slim("Water"),
        slim("State"),
        number("Flow,|each", r.symbol(FLOW_UNITS)),
        number("Over|plates", r.symbol(OVERFLOW)),
        number("Re of|gaps", ""),
        number("Cut", "µm"),
        number("Stay", "min"),
        number("Free|left", "%"),
        number("Ideal", "mg/L"),
        number("Expected", "mg/L"),
        number("Mixed", "mg/L"),
        number("No.", ""),
    ]);
    let held = p.worst().map(|w| w.total.expected.at);
    for x in &p.removals {
        let out = |c: Concentration| brief(c, Some(x.content.total.q));
        let (plates, none) = (x.passage.plates(), || "–".to_owned());
        let row = [
            capital(&x.case),
            x.season.name().to_owned(),
            if x.state.is_end() { "end" } else { "clean" }.to_owned(),
            r.digits(x.flow.q, FLOW_UNITS, 3),
            plates.map_or_else(none, |p| r.digits(p.v_0.q, OVERFLOW, 3)),
            plates.map_or_else(none, |p| {
                r.digits(p.reynolds.q, (&stillrise_units::catalog::ONE, &stillrise_units::catalog::ONE), 3)
            }),
            x.cut.map_or_else(|| "none".to_owned(), |c| r.digits(c.q, (&UM, &UM), 3)),
            r.digits(x.residence.q, (&MIN, &MIN), 3),
            r.digits(x.left.q, SHARE, 2),
            x.total.ideal.map_or_else(none, |ideal| out(ideal.q)),
            out(x.total.expected.q),
            x.total.mixed.map_or_else(none, |mixed| out(mixed.q)),
            r.no(x.total.expected.at),
        ];
        if Some(x.total.expected.at) == held { table.strong_row(row) } else { table.row(row) }
    }
    let same = table.take_same(&[9, 10, 11]);
    r.out.table(&table);
    if let Some(same) = same {
        r.out.para(&format!(
            "Total oil that leaves is {} mg/L in every row, as expected and by every bound that was worked.",
            crate::charts::plainly(&same)
        ));
    } else {
        r.out.remark("Ideal, expected and mixed: total oil that leaves.");
    }
    r.out.remark(
        "Cut: droplet that rises at the plates' overflow rate. Free left: share of the free oil that leaves, as expected. \
         Stay: water up to the crest over flow. Bold: the row that is held against the limits, with the influent at its mean; a limit on single samples takes it at its peak.",
    );
    for line in crate::summary::unheld::unheld(r.settled) {
        r.out.remark(&sentence(&capital(&line)));
    }
}

/// Free, emulsified and dissolved oil are three lines; gravity touches only the first.
fn fractions(r: &mut Report<'_>, x: &Removal) {
    r.out.heading("By fraction");
    let place = format!("{}, {} water, {}", capital(&x.case), x.season.name(), x.state.name());
    r.out.para(&format!("{place}. Gravity touches the first line only."));
    let mut table = Table::new([
        wide("Oil", 1.0),
        number("At the|inlet", "mg/L"),
        number("Ideal|bound", "mg/L"),
        number("Expected", "mg/L"),
        number("Mixed|bound", "mg/L"),
        wide("What becomes of it", 2.0),
    ]);
    let mg = |c: Concentration| r.digits(c, MG, 3);
    let bounded = |b: &Bounded, influent: Concentration| {
        let show = |c: Val<Concentration>| brief(c.q, Some(influent));
        [b.ideal, Some(b.expected), b.mixed].map(|c| c.map_or_else(|| "–".to_owned(), show))
    };
    let passes = |c: Concentration| [mg(c), mg(c), mg(c), mg(c)];
    let row = |name: &str, numbers: Vec<String>, says: &str| {
        core::iter::once(name.to_owned()).chain(numbers).chain([says.to_owned()]).collect::<Vec<_>>()
    };
    let c = &x.content;
    let mut free = vec![mg(c.free.q)];
    free.extend(bounded(&x.free, c.free.q));
    table.row(row("Free", free, "rises, as far as its droplets are large enough"));
    table.row(row("Emulsified", passes(c.emulsified.q).to_vec(), "passes"));
    table.row(row("Dissolved", passes(c.dissolved.q).to_vec(), "passes"));
    let mut total = vec![mg(c.total.q)];
    total.extend(bounded(&x.total, c.total.q));
    table.strong_row(row("Total", total, ""));
    r.out.table(&table);
    let text = Promise::of(x.total.expected.q, c.total.q).sentence();
    r.out.lead("Predicted effluent:", &sentence(&format!("{text} of total oil")));
    let apart = x.total.mixed.zip(x.total.ideal);
    if apart.is_some_and(|(mixed, ideal)| mixed.q > floor() && mixed.q > 2.0 * ideal.q) {
        r.out.remark(
            "The bounds lie more than a factor of two apart: much of the oil is in droplets near the size that the plates just catch, so that mixing \
             ahead of the plates and unequal flow between them decide. Measured droplets, or more plates, would bring the bounds together.",
        );
    }
    match x.passage.mesh() {
        Some(mesh) if mesh.counts => r.out.para("Credit is taken for the mesh, as the enquiry asks."),
        Some(_) => r.out.para("No credit is taken for the mesh."),
        None => {}
    }
}

/// What plate theory takes for granted, zone by zone.
fn zones(r: &mut Report<'_>) {
    let rows = crate::summary::zones::rows(r.settled);
    if rows.is_empty() {
        return;
    }
    r.out.heading("Zone by zone: what the theory takes for granted");
    let mut table = Table::new([wide("Quantity", 2.0), slim("Value"), wide("What it says", 1.8), number("No.", "")]);
    for row in rows {
        let value = r.entry(row.at).map_or_else(String::new, |e| e.told(r.system));
        table.row([capital(row.what), value, row.says.to_owned(), r.no(row.at)]);
    }
    r.out.table(&table);
    r.out.remark("At the largest flow of a case with a known content, coldest water, end of the interval. The rules weigh these numbers; the prediction takes no credit and no loss from them.");
}

/// The lowest rung: how large a plain basin by the old rule would be.
fn thumb(r: &mut Report<'_>, p: &Performance) {
    let Some(basin) = &p.basin else { return };
    r.out.heading("Rule of thumb: a plain API basin for 150 µm");
    let mut table = Table::new([wide("Quantity", 2.6), slim("Value"), number("No.", "")]);
    for [label, value, _, no] in basin.fields().into_iter().filter_map(|(_, at)| r.row(at)) {
        table.row([label, value, no]);
    }
    r.out.table(&table);
    r.out.remark(
        "For comparison at the design flow: it says how large a basin without plates would be, not what comes out. After Dobbins and Camp, with the friction of the walls alone, \
         a basin enlarged by the API factor catches some 96 % of its design droplet (`dobbins-camp`): two rules that agree, which validates neither.",
    );
}

fn grades(r: &mut Report<'_>, l: &Ladder, x: &Removal, charts: &[Drawn]) {
    r.out.heading("What each stage catches, by droplet size");
    ladder::chart(r, charts, "catch");
    let gaps = x.passage.plates().map_or_else(String::new, |p| format!("; flow in the gaps {}", p.regime.q.word()));
    r.out.para(&format!("{}, {} water, {}{gaps}.", capital(&x.case), x.season.name(), x.state.name()));
    let rise = (&FT_MIN, &MM_S) as Pair;
    let by_stage = l.stages.iter().map(|stage| number(&format!("Caught by|the {stage}"), "%"));
    let head = [number("Droplet", "µm"), number("Rise", r.symbol(rise))].into_iter().chain(by_stage);
    let mut table = Table::new(head.chain([number("Left", "%"), number("No.", "")]));
    for g in &l.grades {
        let mut row = vec![r.digits(g.d.q, (&UM, &UM), 3), r.digits(g.rise.q, rise, 3)];
        row.extend(g.caught.iter().map(|caught| r.digits(caught.q, SHARE, 3)));
        row.extend([r.digits(g.left.q, SHARE, 3), r.no(g.left.at)]);
        table.row(row);
    }
    r.out.table(&table);
    r.out.remark("Caught: of what reaches the stage. Left: behind all stages but a mesh.");
}
