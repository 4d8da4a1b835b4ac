//! Samples of what comes and leaves: how they are taken, and what they can and cannot show.

use super::super::site::Site;
use crate::report::blocks::{Table, wide};
use crate::report::{Report, capital, sentence};
use crate::summary;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::limits::LimitState;
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_design::performance::limit::is_predicted;
use stillrise_handbook::page::Source;
use stillrise_handbook::sources::UFGS_46_25_14;
use stillrise_handbook::vessel::testing::{ACCEPTANCE, SAMPLE_PAIRS, SAMPLING_HOURS, VOLUME_CHANGES};
use stillrise_units::catalog::{GAL, M3, MG_L, PERCENT};
use stillrise_units::{Typed, print};

/// Days from which nobody waits for water to test on. Our proposal.
const WAITED: f64 = 14.0;

/// Where, how many, by which method, and what a result would show.
pub(super) fn samples(r: &mut Report<'_>, u: &Site<'_>) {
    r.out.section("Samples of what comes and leaves");
    let Some((basis, p)) = u.settled.job.design.basis.as_ref().zip(u.performance) else { return };
    let mut table = Table::new([
        wide("Limit", 1.2),
        wide("Method", 1.0),
        wide("How it is sampled", 1.5),
        wide("What would show it kept", 2.0),
    ]);
    for limit in &basis.limits {
        let method =
            limit.method.clone().unwrap_or_else(|| "the one that the permit names; nobody said which".to_owned());
        let (how, mut shows) = shown(limit);
        if !is_predicted(limit) {
            shows += " No calculation of this submittal says what leaves: the result stands by itself.";
        }
        let what =
            format!("{}: {}, {}", capital(limit.title()), summary::allows(limit), summary::statistic(u.settled, limit));
        table.row([what, method, how, shows]);
    }
    for ph in &basis.ph_limits {
        let what = ph.name.clone().unwrap_or_else(|| "pH".to_owned());
        let shows =
            format!("each reading within {} to {}", print::digits(ph.low.q.si(), 3), print::digits(ph.high.q.si(), 3));
        table.row([
            capital(&what),
            ph.method.clone().unwrap_or_else(|| "meter, read at the sample point".to_owned()),
            "at once, with every sample".to_owned(),
            shows,
        ]);
    }
    if table.is_empty() {
        r.out.para("Nobody stated a limit: what samples are to show is to be agreed first.");
    }
    r.out.table(&table);
    let water = u.unit().layout.water_volume.q * VOLUME_CHANGES;
    let each = print::in_prose(water.si(), u.system.pick((&GAL, &M3)));
    let days = water.si() * u.train.count.q.si() / p.storage.average.q.si() / 86_400.0;
    let count = print::digits(days, 2);
    let long = match days {
        days if days.is_finite() && days > WAITED => format!(
            " On the water of average days that takes some {count} days, too long to wait for: whose water is fed through instead, at which flow and with which oil, is to be agreed beforehand, and the record says that it was fed."
        ),
        days if days.is_finite() && days > 2.0 => format!(
            " On the water of average days that takes some {count} days; a test on a fed flow is said to be one in the record."
        ),
        _ => String::new(),
    };
    r.out.para(&format!(
        "When: after {} volumes of the separator ({each} through each unit), {SAMPLE_PAIRS} pairs of influent and effluent within {} hours.{long}",
        print::digits(VOLUME_CHANGES, 3),
        print::digits(SAMPLING_HOURS, 3)
    ));
    if let Some(worst) = p.worst() {
        r.out.para(&format!(
            "At which flow: {} through one unit, as in the case that is held against the limits ({}), in which {} of oil arrive in all. Flow, water temperature and oil layer are written down with each pair: on less flow, warmer water or less oil a good result shows less.",
            u.say(worst.flow.q, FLOW_UNITS),
            worst.case,
            u.say(worst.content.total.q, (&MG_L, &MG_L))
        ));
    }
    let from = |of: &Source| if *of == UFGS_46_25_14 { String::new() } else { of.title.to_owned() };
    r.out.list(true, ACCEPTANCE.iter().map(|step| (step.text.to_owned(), from(step.source))));
    r.out.remark(&format!("Steps and numbers without a source: {UFGS_46_25_14}."));
    r.out.para("Grab, not composite, for oil and grease: it clings to every vessel that it is poured through (common practice). Where the permit asks for a composite, the laboratory extracts each bottle by itself and the results are averaged.");
    r.out.heading("What this test cannot show");
    let mut cannot = vec![
        "That a limit is kept for ever: ten pairs of one day say little of a rare high result, and nothing of another season, product or driver.".to_owned(),
        "What happens with the oil at its alarm, sludge at its limit and fouled internals, unless it is run so.".to_owned(),
        "What another method of analysis would find: methods do not convert into each other.".to_owned(),
        "That the unit is of a class of a standard: that is a test of its type on a rig.".to_owned(),
    ];
    if basis.limits.iter().any(|limit| limit.statistic.q == Statistic::MonthlyAverage) {
        cannot.insert(1, "The mean of a month: that takes the samples of a month.".to_owned());
    }
    r.out.list(false, cannot.into_iter().map(|text| (text, String::new())));
}

/// How a limit is sampled, and what would show it kept.
fn shown(limit: &LimitState) -> (String, String) {
    let value = summary::allows(limit);
    let mean = limit.scatter.as_ref().map(|s| {
        let mg_l = |q: stillrise_units::Concentration| print::in_prose(q.si(), &MG_L);
        (mg_l(s.mean.q), print::in_prose(s.share.q.si(), &PERCENT))
    });
    if limit.unseen.is_some() {
        return (
            "look at the water in daylight, at rest, with each pair".to_owned(),
            "no film or sheen at any of them".to_owned(),
        );
    }
    match limit.statistic.q {
        Statistic::RigTest => (
            "not in service: a testing body samples the type on a rig".to_owned(),
            "the body's report; no sample of this plan".to_owned(),
        ),
        Statistic::MonthlyAverage => (
            "grab samples, each bottle whole; as many in the month as the permit says".to_owned(),
            match mean {
                Some((mean, share)) => sentence(&format!(
                    "the month's mean at or below {value}; a long-term mean of {mean} lets {share} of the months keep it, as results are taken to scatter"
                )),
                None => sentence(&format!("the month's mean at or below {value}")),
            },
        ),
        Statistic::AnySample | Statistic::DailyMaximum => (
            "grab samples, each bottle whole, each result judged by itself".to_owned(),
            match mean {
                Some((mean, share)) => sentence(&format!(
                    "every one of the effluent results at or below {value}. Their mean says how later ones will be: at {mean} {share} of them keep it, as they are taken to scatter"
                )),
                None => sentence(&format!("every one of the effluent results at or below {value}")),
            },
        ),
    }
}
