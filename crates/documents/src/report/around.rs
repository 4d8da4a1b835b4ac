//! What stands around the separator: feed pump on its rising main, screen, polisher, one unit shut, oil tank, bypass.

use super::blocks::{Table, number, slim, wide};
use super::{Report, capital, sentence};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::provenance::Pair;
use stillrise_design::train::Train;
use stillrise_design::{Node, Val};
use stillrise_units::catalog::{FT, M, MG_L, PERCENT};
use stillrise_units::{Flow, Typed, print};

const HEAD: Pair = (&FT, &M);
const MG: Pair = (&MG_L, &MG_L);

/// A part of section 4; nothing where nothing of it was found.
pub(super) fn around(r: &mut Report<'_>, train: &Train) {
    let lines = crate::summary::around::lines(r.settled);
    if lines.is_empty() {
        return;
    }
    r.out.heading("Around the separator");
    for (what, says) in &lines {
        r.out.lead(what, &sentence(says));
    }
    pump(r);
    polisher(r, train);
    let mut nodes: Vec<Node> = Vec::new();
    let screen = train.screen.as_ref();
    nodes.extend(screen.and_then(|s| s.narrowest).map(|(passage, _)| passage.at));
    nodes.extend(screen.and_then(|s| s.bars.as_ref()).into_iter().flat_map(|b| b.fields()).map(|(_, at)| at));
    let a = &train.around;
    nodes.extend(a.shut.into_iter().flat_map(|s| {
        [Some(s.running.at), Some(s.each.at), Some(s.over.at), s.out.map(|out| out.at)].into_iter().flatten()
    }));
    if let Some(tank) = &a.oil_tank {
        nodes.extend([tank.volume.at, tank.room.at]);
        let rest =
            [tank.days.map(|x| x.at), tank.soonest.map(|x| x.at), tank.draws.map(|x| x.at), tank.spare.map(|x| x.at)];
        nodes.extend(rest.into_iter().flatten());
    }
    nodes.extend(a.bypass.iter().flat_map(|b| [b.largest.at, b.through.at, b.past.at, b.share.at]));
    let table = r.rows(nodes);
    if !table.is_empty() {
        r.out.table(&table);
    }
}

/// Rising main, duties, and where the curve meets the main.
fn pump(r: &mut Report<'_>) {
    let basis = r.settled.job.design.basis.as_ref();
    let Some(lift) = basis.and_then(|basis| basis.feed.lift.as_ref()) else { return };
    if let Some(main) = &lift.main {
        let table = r.rows([main.lift.at, main.length.at, main.bore.at, main.roughness.at, main.fittings.at]);
        r.out.table(&table);
    }
    let mut table = Table::new([
        wide("Feed pump on its rising main", 2.0),
        slim("Flow"),
        slim("Head"),
        wide("Least and most, as the main is assumed", 1.6),
        number("No.", ""),
    ]);
    let runs = |n: f64| if n > 1.5 { format!("{} pumps together", print::digits(n, 2)) } else { "one pump".to_owned() };
    for d in &lift.duties {
        table.row([
            capital(&format!("{}, at the rate stated", runs(d.pumps.q.si()))),
            r.show(d.flow.q, FLOW_UNITS),
            r.show(d.head.q, HEAD),
            String::new(),
            r.no(d.head.at),
        ]);
    }
    for p in &lift.points {
        let what = capital(&format!("{}, where the curve meets the main", runs(p.pumps.q.si())));
        match p.at {
            Ok((flow, head)) => {
                let ends = p.within.map_or_else(String::new, |[low, high]| {
                    let end =
                        |x: Option<Val<Flow>>| x.map_or_else(|| "no meeting".to_owned(), |x| r.show(x.q, FLOW_UNITS));
                    format!("{} to {}", end(low), end(high))
                });
                table.row([what, r.show(flow.q, FLOW_UNITS), r.show(head.q, HEAD), ends, r.no(flow.at)]);
            }
            Err(missed) => table.row([what, missed.text().to_owned(), String::new(), String::new(), String::new()]),
        }
    }
    if !table.is_empty() {
        r.out.table(&table);
    }
}

/// What reaches the polisher, and what it must take out.
fn polisher(r: &mut Report<'_>, train: &Train) {
    let Some(d) = &train.around.polisher else { return };
    let mut table = Table::new([
        wide("What reaches the polisher, cold water, end of interval", 1.8),
        number("Flow", r.symbol(FLOW_UNITS)),
        number("Free", "mg/L"),
        number("Emulsified", "mg/L"),
        number("Dissolved", "mg/L"),
        number("All oil", "mg/L"),
        number("No.", ""),
    ]);
    for x in &d.reaches {
        table.row([
            capital(&x.case),
            r.digits(x.flow.q, FLOW_UNITS, 3),
            r.digits(x.free.q, MG, 3),
            r.digits(x.emulsified.q, MG, 3),
            r.digits(x.dissolved.q, MG, 3),
            crate::summary::total_out(x.total.q, x.influent),
            r.no(x.total.at),
        ]);
    }
    let same = table.take_same(&[5]);
    r.out.table(&table);
    if let Some(same) = same {
        let same = crate::charts::plainly(&same);
        r.out.para(&format!("All oil that reaches the polisher is {same} mg/L in every case."));
    }
    let limits = r.settled.job.design.basis.as_ref().map_or(&[][..], |basis| &basis.limits);
    let mut table = Table::new([
        wide("What it must take out", 1.4),
        wide("Case", 1.2),
        number("Reaches it", "mg/L"),
        number("May leave", "mg/L"),
        number("To take out", "mg/L"),
        number("Share", "%"),
        number("No.", ""),
    ]);
    for x in &d.takes {
        table.row([
            limits.get(x.limit).map_or_else(String::new, |limit| capital(limit.title())),
            capital(&x.case),
            r.digits(x.reaches.q, MG, 3),
            r.digits(x.allows.q, MG, 3),
            r.digits(x.takes.q, MG, 3),
            r.digits(x.share.q, (&PERCENT, &PERCENT), 3),
            r.no(x.takes.at),
        ]);
    }
    if !table.is_empty() {
        r.out.table(&table);
    }
    r.out.remark(
        "As expected at the mean of the influent; what a single sample is held against stands at its peak. What is to be taken out is never reckoned from less than the published floor of plate units, but where less arrives. The demand is for whoever offers the stage: which medium does it, and how long it lasts, is theirs to show.",
    );
    let table = r.rows([d.flow.at, d.solids.at]);
    r.out.table(&table);
}
