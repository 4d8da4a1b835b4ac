//! The ladder of prediction: steps with bands, oil by size behind each stage, what moves the effluent.

use super::Report;
use super::blocks::{Table, number, wide};
use super::effluent::brief;
use crate::charts::Drawn;
use crate::risk::{keep, method, percent, range, sentences};
use crate::summary::ladder::{Rung, Step, bands, just_met, moves, rungs};
use serde_json::json;
use stillrise_design::performance::Performance;
use stillrise_design::performance::ladder::Ladder;
use stillrise_design::performance::removal::Removal;
use stillrise_design::provenance::{Origin, Part, show_in_prose};
use stillrise_search::risk::Risk;

/// Opens the ladder: what governs, and all rungs on one axis.
pub(super) fn ladder(r: &mut Report<'_>, p: &Performance, l: &Ladder, worst: &Removal, charts: &[Drawn]) {
    r.out.heading("Ladder of prediction");
    let settled = r.settled;
    if let Some(risk) = &settled.risk {
        r.out.para(&sentences(settled, risk).join(" "));
    }
    chart(r, charts, "ladder");
    let risk = settled.risk.as_ref();
    let mut table = Table::new([
        wide("Step", 1.0),
        number("Total oil|out", "mg/L"),
        number("1 in 20|below", "mg/L"),
        number("Median", "mg/L"),
        number("1 in 20|above", "mg/L"),
        wide("What it rests on", 2.2),
    ]);
    for Rung { step, value, says } in rungs(p, l) {
        let spread = risk.and_then(|risk| match step {
            Step::Ideal => Some(&risk.rungs[0]),
            Step::Expected => Some(&risk.rungs[1]),
            Step::Mixed => Some(&risk.rungs[2]),
            Step::WithMesh => risk.with_mesh.as_ref(),
            Step::RuleOfThumb | Step::NoSeparator | Step::WithRetention | Step::Untouched => None,
        });
        let dash = || "–".to_owned();
        let cells = spread.map_or([dash(), dash(), dash()], |s| [s.low, s.median, s.high].map(|c| brief(c, None)));
        let value = match value {
            // What no separator touches is an input, not a promise.
            Some(c) if step == Step::Untouched => r.digits(c, super::effluent::MG, 3),
            Some(c) => brief(c, Some(worst.content.total.q)),
            None => dash(),
        };
        let row = [super::capital(step.name()), value].into_iter().chain(cells).chain([says.to_owned()]);
        if step == Step::Expected {
            table.strong_row(row.collect::<Vec<_>>())
        } else {
            table.row(row.collect::<Vec<_>>())
        }
    }
    let same = table.take_same(&[2, 3, 4]);
    if same.is_none() {
        table.take_empty(&[2, 3, 4]);
    }
    r.out.table(&table);
    if let Some(same) = same {
        r.out.para(&format!(
            "With all that is uncertain drawn over its range, each prediction that was studied is {} mg/L: 1 in 20 below, median and 1 in 20 above alike.",
            crate::charts::plainly(&same)
        ));
    }
    r.out.remark(
        "The ideal and the mixed bound bracket what tank and gaps without back-mixing may do; a strongly dispersed tank leaves a little more, see the tank by its models. The mesh is shown with and without credit. Bands are of the inputs: they hold what is uncertain in the basis, not what plate theory leaves out.",
    );
    if let Some(risk) = risk {
        keeping(r, p, risk);
    }
}

/// The chance of keeping each limit.
fn keeping(r: &mut Report<'_>, p: &Performance, risk: &Risk) {
    let Some(basis) = &r.settled.job.design.basis else { return };
    if risk.limits.is_empty() {
        return;
    }
    let mut table = Table::new([
        wide("Limit", 1.6),
        number("Held,|median", "mg/L"),
        number("1 in 20|above", "mg/L"),
        number("Against", "mg/L"),
        number("Results that|keep it", ""),
    ]);
    for l in &risk.limits {
        let limit = &basis.limits[l.limit];
        let against = p.limits.iter().find(|v| v.limit == l.limit).map(|v| v.against.q);
        table.row([
            crate::risk::limit_name(limit),
            brief(l.held.median, None),
            brief(l.held.high, None),
            against.map_or_else(String::new, |c| r.digits(c, super::effluent::MG, 4)),
            keep(p, l.limit),
        ]);
    }
    r.out.table(&table);
    r.out.remark(
        "Results that keep it: of single results, or averages, that scatter about their mean while all that is uncertain is drawn over its range; where a percentage stands beside a verdict it is this one, and no warranty.",
    );
}

/// What the statistic of each limit asks of the long-term mean, and how often results would keep it.
pub(super) fn scatter(r: &mut Report<'_>, p: &Performance) {
    let Some(basis) = &r.settled.job.design.basis else { return };
    let one = (&stillrise_units::catalog::ONE, &stillrise_units::catalog::ONE);
    let mut table = Table::new([
        wide("Limit", 1.5),
        number("Limit", "mg/L"),
        number("Coefficient|of variation", ""),
        number("Samples", ""),
        number("Over the|mean", ""),
        number("Mean it|asks for", "mg/L"),
        number("Mean|expected", "mg/L"),
        number("No.", ""),
    ]);
    let mut any = false;
    for v in &p.limits {
        let limit = &basis.limits[v.limit];
        let (Some(s), Some(keeps)) = (&limit.scatter, v.keeps) else { continue };
        any = true;
        table.row([
            format!("{}, {}", limit.title(), limit.statistic.q.word()),
            r.digits(limit.value.q, super::effluent::MG, 4),
            r.digits(s.variation.q, one, 3),
            r.digits(s.samples.q, one, 3),
            r.digits(s.multiplier.q, one, 3),
            r.digits(s.mean.q, super::effluent::MG, 3),
            brief(v.mean.q, Some(v.influent.q)),
            r.no(keeps.share.at),
        ]);
    }
    if !any {
        return;
    }
    r.out.heading("Results that scatter");
    r.out.table(&table);
    r.out.remark(
        "Single results scatter log-normally about their mean (EPA, Technical Support Document, 1991): a limit on single samples, or on a month's mean, is kept by most of them only if the long-term mean lies well below it. The mean expected is that of the worst case at the end of the interval, never below what may be promised; the verdict above holds a single sample's limit against the peak of the influent.",
    );
}

/// Oil by size behind each stage, clean and at the end of the interval, and what each stage catches.
pub(super) fn stages(r: &mut Report<'_>, l: &Ladder, charts: &[Drawn]) {
    r.out.heading("Free oil left behind each stage");
    chart(r, charts, "stages");
    for (state, of) in ["Clean", "At the end of the interval"].into_iter().zip(&l.bands) {
        let text = bands(l, of);
        let columns = text.header.iter().enumerate().map(|(k, head)| {
            if k == 0 { wide(&format!("{state}: droplets"), 1.6) } else { number(&super::capital(head), "%") }
        });
        let mut table = Table::new(columns.chain([number("No.", "")]));
        for (k, row) in text.rows.iter().enumerate() {
            let no = of.get(k).and_then(|b| b.left.last()).map_or_else(String::new, |left| r.no(left.at));
            let row = row.iter().cloned().chain([no]).collect::<Vec<_>>();
            if k + 1 == text.rows.len() { table.strong_row(row) } else { table.row(row) }
        }
        r.out.table(&table);
    }
    let measured = r.settled.job.design.basis.as_ref().is_some_and(|b| !b.droplets.table.q.0.is_empty());
    if measured {
        r.out.remark(
            "Measured droplets: what is finer than the finest row stands in the band of that row and passes whole.",
        );
    }
    r.out.remark("Each number is a share of all free oil that arrives, in droplets of that size; droplets neither grow nor break.");
}

/// What moves the effluent.
pub(super) fn studies(r: &mut Report<'_>, l: &Ladder, worst: &Removal, charts: &[Drawn]) {
    r.out.heading("What moves the effluent");
    let settled = r.settled;
    let plain = crate::charts::plain(settled);
    for name in ["flow", "temperature", "droplets"] {
        chart(r, charts, name);
        for (_, says) in plain.iter().filter(|(stays, _)| *stays == name) {
            r.out.para(says);
        }
    }
    let mut table = Table::new([
        wide("Changed", 1.0),
        wide("To", 1.0),
        number("Free oil left", "%"),
        number("Total oil out", "mg/L"),
        number("No.", ""),
    ]);
    let at = l.by_flow.iter().map(|p| ("flow", p.expected.at));
    let at = at.chain(l.by_temperature.iter().map(|p| ("temperature", p.expected.at)));
    let at = at.chain(l.by_median.iter().map(|p| ("droplets", p.expected.at)));
    // What stays the same is said in its sentence; its rows are in the trail.
    let moving = |study: &str| plain.iter().all(|(stays, _)| *stays != study);
    for (m, (_, at)) in moves(settled, l).into_iter().zip(at).filter(|(_, (study, _))| moving(study)) {
        let total = brief(m.total, Some(worst.content.total.q));
        table.row([super::capital(m.what), m.to, crate::summary::ladder::free(m.left), total, r.no(at)]);
    }
    if !table.is_empty() {
        r.out.table(&table);
    }
    for text in just_met(settled, l) {
        r.out.lead("Margins:", &text);
    }
    let mut table = Table::new([wide("Tank alone, by model", 1.6), number("Free oil left", "%"), number("No.", "")]);
    for (model, left) in &l.tanks {
        let percent = (&stillrise_units::catalog::PERCENT, &stillrise_units::catalog::PERCENT);
        table.row([super::capital(model.meaning()), r.digits(left.q, percent, 3), r.no(left.at)]);
    }
    if let Some(same) = table.take_same(&[1]) {
        let count = l.tanks.len();
        r.out.para(&format!("The tank alone leaves {same} % of the free oil by each of its {count} models."));
    } else if !table.is_empty() {
        r.out.table(&table);
    }
    chart(r, charts, "sensitivity");
    for (_, says) in plain.iter().filter(|(stays, _)| *stays == "sensitivity") {
        r.out.para(says);
    }
    if let Some(risk) = &settled.risk {
        chart(r, charts, "shares");
        carriers(r, risk);
    }
}

fn carriers(r: &mut Report<'_>, risk: &Risk) {
    let mut table = Table::new([
        wide("Input", 2.0),
        wide("Now", 0.8),
        wide("Range", 1.2),
        number("Alone", ""),
        number("With|others", ""),
        wide("Origin", 0.8),
    ]);
    for c in &risk.carriers {
        table.row([
            super::capital(&c.input.label),
            show_in_prose(&c.input.now, c.input.units, r.system),
            range(&c.input, r.system),
            percent(c.share.first.min(c.share.total).clamp(0.0, 1.0)),
            percent(c.share.total.clamp(0.0, 1.0)),
            if c.input.assumed { "assumed" } else { "given with a range" }.to_owned(),
        ]);
    }
    r.out.table(&table);
    let text = method(r.settled, risk);
    r.out.remark(&text);
}

/// What in the prediction rests on judgement or memory alone.
pub(super) fn unbacked(r: &mut Report<'_>) {
    r.out.heading("Factors without outside evidence");
    let mut items: Vec<(String, String)> = Vec::new();
    for entry in &r.settled.job.ledger.entries {
        let source = match &entry.origin {
            Origin::Assumed(a) => a.source.clone(),
            Origin::Given { source, .. } => source.to_string(),
            _ => continue,
        };
        let source = source.to_lowercase();
        let weak = ["judgement", "from memory", "our proposal"].into_iter().find(|w| source.contains(w));
        let counts = DECIDING.contains(&entry.part);
        let Some(weak) = weak.filter(|_| counts) else { continue };
        let text = format!("{}: {}", super::capital(&entry.label), entry.told(r.system));
        if items.iter().all(|(t, _)| *t != text) {
            items.push((text, weak.to_owned()));
        }
    }
    items.push((
        "Room over the published floor below which no limit is called kept: 1.5".to_owned(),
        "judgement".to_owned(),
    ));
    r.out.list(false, items);
    r.out.para(
        "Plate theory itself is exact for laminar gaps; no open measurement of a plate pack resolves droplet sizes, so that what packs of this make do in practice is not shown by it.",
    );
}

/// Parts of the trail whose numbers decide the prediction.
const DECIDING: &[Part] = &[Part::Methods, Part::Droplets, Part::Peak, Part::Solids, Part::Zones, Part::TankAlone];

/// A chart with its title, and what there is to see, as caption.
pub(super) fn chart(r: &mut Report<'_>, charts: &[Drawn], name: &str) {
    let Some(chart) = charts.iter().find(|c| c.name == name) else { return };
    let caption = if chart.says.is_empty() { chart.title.clone() } else { format!("{}. {}", chart.title, chart.says) };
    r.out.other(json!({
        "t": "chart", "file": format!("chart-{name}.svg"), "width": chart.size.0, "title": caption,
        "alt": format!("{}. {}", chart.title, chart.description),
    }));
}
