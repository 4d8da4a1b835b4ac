//! What EN 858-2 would ask for, beside our basis: a comparison that summary, report and reply share.

use super::section;
use crate::render::text::{Table, hang};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::european::European;
use stillrise_design::provenance::Node;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_search::Settled;
use stillrise_units::catalog::{GAL, L, L_S, M3};
use stillrise_units::{Flow, System, Typed, Volume, print};

/// A flow as a nominal size: `7.57`.
pub(crate) fn number(flow: Flow) -> String {
    print::digits(L_S.from_si(flow.si()), 3)
}

/// What somebody said that no calculation answers, and what it asks of the unit.
pub(crate) fn notes(settled: &Settled, european: &European) -> Vec<String> {
    let mut out = vec![format!(
        "A comparison: but for a sludge trap ahead, nothing of our design rests on it. A nominal size is what a full-scale unit was tested at, and {}.",
        match settled.job.enquiry.european.as_ref().and_then(|e| e.type_test.0.as_ref()) {
            Some(report) =>
                format!("by the enquiry {report} is the type test of the unit; no calculation stands for it"),
            None => "no type test of our unit was named: it has no nominal size and no class".to_owned(),
        }
    )];
    if settled.job.enquiry.system() == System::Us {
        out.push("EN 858-2 has its own units, and they stand here: a nominal size and the flows behind it in L/s, its stores in L.".to_owned());
    }
    if let Err(why) = &european.sizes {
        out.push(format!("No nominal size follows: {why}."));
    }
    if let Ok(sizes) = &european.sizes
        && sizes.standard.is_none()
    {
        out.push("The series ends at NS 500: the flow asks for several units in parallel.".to_owned());
    }
    if let Some(class) = settled.job.enquiry.european.as_ref().and_then(|e| e.load_class.0) {
        out.push(format!(
            "Covers of class {} are asked for by EN 124 ({}); what covers the unit has is not in our calculation.",
            class.word(),
            class.meaning()
        ));
    }
    if let Some(how) = pumped(european) {
        let (rain, waste) = (number(european.rain.q), number(european.waste.q));
        out.push(format!("Rain {rain} L/s and waste water {waste} L/s are {how}."));
    }
    out.extend(covered(european));
    out.extend(counted(european));
    out.extend(apart(european));
    out.extend(european.sizes.as_ref().ok().and_then(|s| s.class_one).map(|one| {
        format!(
            "Nobody said which class is asked for: with a plain separator of class I it would be NS {}.",
            number(one.q)
        )
    }));
    out.extend(unlike_ours(settled, european));
    out
}

/// From so many times one flow over the other the two are told apart. Our proposal.
const UNLIKE: f64 = 1.2;

/// Where the flows that the standard counts are not those that our own unit is worked for.
pub(crate) fn unlike_ours(settled: &Settled, european: &European) -> Vec<String> {
    let (Some(basis), Some(block)) = (&settled.job.design.basis, settled.job.enquiry.european.as_ref()) else {
        return Vec::new();
    };
    let mut out = Vec::new();
    let storm = basis.storm.as_ref().filter(|_| block.rain_flow.is_given()).map(|storm| storm.flow.q);
    if let Some(ours) = storm {
        let times = ours.si() / european.rain.q.si();
        if !(1.0 / UNLIKE..=UNLIKE).contains(&times) {
            out.push(format!(
                "The nominal size rests on {} L/s of rain by the local rule, our own unit on {} L/s: where that rule holds for the unit too, its intensity has to stand as the rain.",
                number(european.rain.q),
                number(ours)
            ));
        }
    }
    let ours: f64 = basis.waters.iter().filter(|w| !w.is_rain).map(|w| w.flow.q.si()).sum();
    let units = !block.taps.is_empty() || block.high_pressure.is_some() || block.automatic_wash.is_some();
    if units && european.pumps.is_none() && european.waste.q.si() > UNLIKE * ours {
        out.push(format!(
            "Taps and washing units bring {} L/s of waste water by the standard; our own unit is worked for {} L/s of waste water, told or taken: what else the taps and units bring to it has to be told as a water, with its hours.",
            number(european.waste.q),
            number(Flow::from_si(ours))
        ));
    }
    out
}

/// How the standard counts rain and washing units, where that differs from ours.
pub(crate) fn counted(european: &European) -> Option<String> {
    let rain = european.without_loss.then(|| "rain is counted without loss (runoff coefficient 1)".to_owned());
    let units = european.by_units.map(|v| {
        format!(
            "high-pressure units and washes count {} L/s, more than the streams that were stated; taps and hoses beside them were not named as such, and none is counted",
            number(v.q)
        )
    });
    let left_out = european.left_out.map(|v| {
        format!(
            "the taps and washing units that were declared would count {} L/s; the waters that were told are more and stand alone, so that what the units bring beside them has to be told as a water of its own",
            number(v.q)
        )
    });
    let both: Vec<String> = rain.into_iter().chain(units).chain(left_out).collect();
    (!both.is_empty()).then(|| format!("By that standard {}.", both.join(", and ")))
}

/// What the larger flow alone asks for, where both do not come together.
pub(crate) fn apart(european: &European) -> Option<String> {
    let alone = european.sizes.as_ref().ok()?.apart?;
    Some(format!(
        "The formula adds rain and waste water. {}, and the local authority lets the larger stand alone, NS {} is enough.",
        if european.said_apart {
            "Where none of the waste water runs while it rains, as was said"
        } else {
            "Where it is sure that none of the waste water runs while it rains"
        },
        number(alone.q)
    ))
}

/// How the pumps share the flow, where it is theirs and not what arrives.
pub(crate) fn pumped(european: &European) -> Option<String> {
    let pumps = number(european.pumps?.q);
    Some(match (european.rain.q.si() > 0.0, european.waste.q.si() > 0.0) {
        (true, true) => {
            format!("together the {pumps} L/s that the pumps lift: the waste water that arrives, and rain the rest")
        }
        _ => "all that the pumps lift while they run, however little arrives".to_owned(),
    })
}

/// Whether the size that was named covers the need, with the numbers.
pub(crate) fn covered(european: &European) -> Option<String> {
    let (named, sizes) = (european.named?, european.sizes.as_ref().ok()?);
    let flows = format!(
        "({} L/s of rain + {} x {} L/s of waste water) x {}",
        number(european.rain.q),
        print::digits(european.impediment.q.si(), 2),
        number(european.waste.q),
        print::digits(sizes.factor.q.si(), 2)
    );
    let (word, need) = (if european.covers()? { "covers" } else { "does not cover" }, number(sizes.need.q));
    Some(format!(
        "NS {} was named; EN 858-2 asks for NS {need} with our waters, {flows}: it {word} the need.",
        number(named.q)
    ))
}

/// Each quantity of the comparison with its place in the trail.
pub(crate) fn rows(european: &European) -> Vec<(String, Node)> {
    let mut rows = vec![("rain water".to_owned(), european.rain.at), ("waste water".to_owned(), european.waste.at)];
    rows.extend(european.category.map(|c| ("category of use".to_owned(), c.at)));
    rows.push(("impediment factor, on the waste water".to_owned(), european.impediment.at));
    rows.push((format!("heaviest oil, {}", european.oil), european.density.at));
    rows.push(("arrangement of the system".to_owned(), european.system.at));
    rows.push(("sludge load".to_owned(), european.load.at));
    if let Ok(sizes) = &european.sizes {
        rows.push(("density factor".to_owned(), sizes.factor.at));
        rows.push(("nominal size that is needed".to_owned(), sizes.need.at));
        rows.extend(sizes.standard.map(|v| ("next nominal size of the series".to_owned(), v.at)));
    }
    rows.extend(european.named.map(|v| ("nominal size that was named".to_owned(), v.at)));
    rows
}

/// What the standard asks for and what is ours: flow, oil store, sludge store.
pub(crate) fn beside(settled: &Settled, european: &European) -> Vec<[String; 3]> {
    let system = settled.job.enquiry.system();
    let flow = |q: Flow| print::in_prose(q.si(), system.pick(FLOW_UNITS));
    let volume = |q: Volume| print::in_prose(q.si(), system.pick((&GAL, &M3)));
    let (basis, train) = (settled.job.design.basis.as_ref(), settled.job.design.train.as_ref());
    let sizes = european.sizes.as_ref().ok();
    let dash = || "–".to_owned();
    let litres = |q: Volume| format!("{} L", print::digits(L.from_si(q.si()), 3));
    let limit = settled.job.design.performance.as_ref().and_then(|p| {
        let volumes = p.levels.iter().filter_map(|l| l.level(Mark::Limit)).map(|l| l.volume.q);
        volumes.min_by(|a, b| a.si().total_cmp(&b.si()))
    });
    let rated = train.and_then(|t| t.unit.particulars.rated.as_ref()).map(|(rated, _)| flow(rated.q));
    let hopper = train.map(|t| t.unit.hopper_volume()).filter(|v| v.si() > 0.0);
    vec![
        [
            "flow that is designed for".to_owned(),
            sizes.map_or_else(dash, |s| format!("NS {}", number(s.need.q))),
            basis.and_then(|b| b.design_flow()).map_or_else(dash, |v| flow(v.q)),
        ],
        [
            "flow of one unit".to_owned(),
            sizes.and_then(|s| s.standard).map_or_else(dash, |v| format!("NS {}", number(v.q))),
            rated.map_or_else(dash, |rated| format!("{rated} as rated")),
        ],
        [
            "oil that one unit holds (PPG3)".to_owned(),
            sizes.and_then(|s| s.oil_store).map_or_else(dash, |v| litres(v.q)),
            limit.map_or_else(dash, volume),
        ],
        [
            "sludge store of one unit".to_owned(),
            sizes.and_then(|s| s.sludge_trap).map_or_else(dash, |v| litres(v.q)),
            hopper.map_or_else(dash, volume),
        ],
    ]
}

pub(super) fn european(out: &mut String, settled: &Settled, width: usize) {
    let Some(european) = settled.job.design.basis.as_ref().and_then(|b| b.european.as_ref()) else { return };
    let system = settled.job.enquiry.system();
    out.push_str(&section("By EN 858-2, a comparison"));
    let mut table = Table::new(["quantity", "value"]);
    for (what, at) in rows(european) {
        let Some(entry) = settled.job.ledger.entry(at) else { continue };
        table.row([what, stillrise_design::provenance::show_in_prose(&entry.value, entry.units, system)]);
    }
    out.push_str(&table.render(width));
    let mut table = Table::new(["beside each other", "EN 858-2", "ours"]);
    for row in beside(settled, european) {
        table.row(row);
    }
    out.push_str(&table.render(width));
    for text in notes(settled, european) {
        out.push_str(&hang(&text, width, 0, 2));
    }
}
