//! The ladder of prediction on one axis, with bands where the spread was studied.

use super::{limits, number, plainly, shown, words};
use crate::render::chart::{Axis, Ladder, Rung, RungKind};
use stillrise_design::performance::promise::Promise;
use stillrise_search::Settled;
use stillrise_search::risk::Spread;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed, print};

/// The ladder; `None` without a prediction.
pub(super) fn ladder(settled: &Settled) -> Option<(Ladder, String)> {
    let p = settled.job.design.performance.as_ref()?;
    let (l, worst) = (p.ladder.as_ref()?, p.worst()?);
    let influent = worst.content.total.q;
    let risk = settled.risk.as_ref();
    let mut chart = Ladder::new("Ladder of prediction", Axis::log("Total oil out", "mg/L"));
    let rung = |name: &str, kind: RungKind, c: Concentration, spread: Option<&Spread>| {
        let mut rung = Rung::new(name, kind, shown(c, influent));
        let mut text = words(c, influent);
        if let Some(s) = spread {
            let (low, high) = (shown(s.low, influent), shown(s.high, influent));
            // A band that the floor hides is no band.
            if low < high {
                rung = rung.within(low, high);
            }
            // Where even the high end lies below the floor, the bound says all.
            let (low, high) = (words(s.low, influent), words(s.high, influent));
            if low != high || text != high {
                text = format!("{text} ({low} to {high})");
            }
        }
        rung.written = Some(text);
        rung
    };
    let arrives = MG_L.from_si(influent.si());
    // The rule of thumb names no concentration, and a unit without a test no result: the table says so.
    chart.rungs = vec![Rung::new("What arrives", RungKind::Bound, arrives)];
    let mixed = worst.total.mixed.map(|mixed| rung("Mixed bound", RungKind::Bound, mixed.q, risk.map(|r| &r.rungs[2])));
    chart.rungs.extend(mixed);
    chart.rungs.push(rung("Expected", RungKind::Expected, worst.total.expected.q, risk.map(|r| &r.rungs[1])));
    if let Some(mesh) = l.with_mesh {
        let spread = risk.and_then(|r| r.with_mesh.as_ref());
        chart.rungs.push(rung("With the mesh counted", RungKind::Bound, mesh.q, spread));
    }
    let ideal = worst.total.ideal.map(|ideal| rung("Ideal bound", RungKind::Bound, ideal.q, risk.map(|r| &r.rungs[0])));
    chart.rungs.extend(ideal);
    let stays = worst.content.emulsified.q + worst.content.dissolved.q;
    // An input, not a promise: it stands where it is, and is held to the axis only where there is none of it.
    let stays = MG_L.from_si(stays.si());
    let mut untouched = Rung::new("Emulsified and dissolved", RungKind::Bound, if stays < 1.0 { 1.0 } else { stays });
    untouched.written = Some(print::digits(stays, 3));
    chart.rungs.push(untouched);
    let measured = settled.job.design.train.as_ref().and_then(|t| t.unit.particulars.measured.clone());
    chart.rungs.extend(measured.map(|words| Rung::without("Measured by the maker", RungKind::Measured, &words)));
    chart.bounds = limits(settled);
    let floor = MG_L.from_si(Promise::least(influent).si());
    chart.floor = Some((floor, format!("not promised below {} mg/L", print::digits(floor, 3))));
    let expected = words(worst.total.expected.q, influent);
    let mut says =
        format!("Of {} mg/L that arrive, {} mg/L are expected to leave.", number(arrives), plainly(&expected));
    if let Some(spread) = risk.map(|r| &r.rungs[1]) {
        let (low, high) = (words(spread.low, influent), words(spread.high, influent));
        if low == high {
            says += &format!(" With all that is uncertain it is {} mg/L in nine cases of ten.", plainly(&low));
        } else {
            says += &format!(
                " With all that is uncertain, nine cases of ten lie between {} and {high} mg/L.",
                low.trim_start_matches("≤ ")
            );
        }
    }
    Some((chart, says))
}
