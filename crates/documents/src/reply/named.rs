//! What somebody named beforehand, answered one by one: yes or no, and why.

use super::show;
use stillrise_checks::rules::rain_table_starts_late;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::Kind;
use stillrise_design::job::Design;
use stillrise_design::performance::State;
use stillrise_design::performance::promise::{Promise, floor, number};
use stillrise_search::Settled;
use stillrise_search::alternatives::Change;
use stillrise_search::asked::Found;
use stillrise_units::catalog::{GAL, M3, PERCENT, UM};
use stillrise_units::{Concentration, Typed, print};

/// One sentence or two for each thing that was named.
pub(super) fn answers(settled: &Settled) -> Vec<String> {
    let own = [flow(settled), model(settled), promise(settled), droplet(settled)].into_iter().flatten();
    own.chain(super::european::answers(settled)).collect()
}

/// As typed, and by whom if that was said.
fn typed(claim: &stillrise_design::enquiry::keys::Claim) -> String {
    match &claim.from {
        Some(from) => format!("{} ({from})", claim.written.text),
        None => claim.written.text.clone(),
    }
}

/// A flow that was named as the size.
fn flow(settled: &Settled) -> Option<String> {
    let e = &settled.job.enquiry;
    let claim = e.asked.flow.claim().or_else(|| e.stated.flow.claim())?;
    let basis = settled.job.design.basis.as_ref()?;
    let design = basis.design_flow()?;
    let case = stillrise_design::basis::cases::largest(&basis.cases)?;
    // A basis that is nothing but the flow that was named has nothing to hold it against.
    if case.kind == Kind::Stated {
        let what = if settled.job.design.train.is_some() { "what we sized for" } else { "the flow we looked at" };
        return Some(format!(
            "A unit for {}: that is {what}; nothing you told us lets us check the figure.",
            typed(claim)
        ));
    }
    let ours = show(settled, design.q.si(), FLOW_UNITS);
    // What a pump lifts comes whenever it runs, whatever is held ahead of it.
    let pumped = basis.feed.pump_flow.is_some_and(|pump| (pump.q.si() - design.q.si()).abs() < 1e-6 * design.q.si());
    if let Some(hold) = design_hold(settled).filter(|_| !pumped) {
        return Some(format!(
            "A unit for {}: it depends on what holds the rest back. {hold}; the unit offered is for {ours}.",
            typed(claim)
        ));
    }
    // Where nobody said what the pumps deliver, the flow is that of the water that comes.
    let peak = basis.feed.pulsation.is_some_and(|over| over.q.si() > 1.0);
    let peak = if peak { " at the peak of their pulsation" } else { "" };
    let what = match (basis.feed.pump_flow, basis.feed.off_the_curve) {
        (None, _) => case.name.clone(),
        (Some(_), true) => format!("what the pumps lift{peak}, by their curve"),
        (Some(_), false) => format!("what the pumps lift{peak}, by the rates that were stated"),
    };
    let named = claim.written.si();
    let ours = match claim.written.unit {
        // In the unit that was named too, where it is another.
        unit if unit.symbol != settled.job.enquiry.system().pick(FLOW_UNITS).symbol => {
            format!("{ours} ({})", print::in_prose(design.q.si(), unit))
        }
        _ => ours,
    };
    Some(if named >= design.q.si() * 0.999 && named <= design.q.si() * 1.5 {
        let weak = settled.judged(&rain_table_starts_late::RULE).filter(|v| v.verdict.is_finding());
        let weak = weak.filter(|_| case.kind == Kind::Storm);
        let weak = weak.map_or_else(String::new, |v| {
            format!(" But that rain may be too weak: {}.", v.verdict.says().trim_end_matches('.'))
        });
        format!(
            "A unit for {}: by its flow yes, it covers the {ours} we find ({what}); limits and spill may ask for more.{weak}",
            typed(claim)
        )
    } else if named > design.q.si() {
        match rated(settled) {
            // What is named as a size is a figure on a name plate, and says nothing without the basis of that.
            Some((rated, basis)) if rated > design.q.si() => format!(
                "A unit for {}: {ours} come ({what}), less than that; but a size on a name plate holds for its own basis only. The unit offered, which this water needs, is rated {} on this basis: {basis}. One that is rated {ours} on such a basis is too small.",
                typed(claim),
                print::in_prose(rated, claim.written.unit)
            ),
            _ => format!("A unit for {}: more than the flow needs; we find {ours} ({what}).", typed(claim)),
        }
    } else if let Some(behind) = with_pump_as_asked(settled) {
        format!(
            "A unit for {}: not behind that pump; we find {ours} to the separator ({what}), and one that is sized for less would be overloaded then. {behind}",
            typed(claim)
        )
    } else {
        let spill = case.kind == Kind::Spill;
        let counted = crate::summary::short::counted(settled).filter(|_| spill);
        let steady = basis.largest_steady().filter(|_| spill).map(|case| case.feed.q.si());
        let without = steady.map_or_else(String::new, |flow| {
            format!(" Without the spill it would be {}.", print::in_prose(flow, claim.written.unit))
        });
        format!(
            "A unit for {}: no. We find {ours} to the separator ({what}); one that is sized for less would be overloaded then.{without}{}",
            typed(claim),
            counted.map_or_else(String::new, |why| format!(" But {why}."))
        )
    })
}

/// What the name plate of the unit taken says, all units together, and on which basis.
fn rated(settled: &Settled) -> Option<(f64, &str)> {
    let train = settled.job.design.train.as_ref()?;
    let (flow, basis) = train.unit.particulars.rated.as_ref()?;
    Some((flow.q.si() * train.count.q.si(), basis))
}

/// What a pump for the flow that was named would do, where it keeps up with the water of dry weather.
fn with_pump_as_asked(settled: &Settled) -> Option<String> {
    let a = settled.alternatives.iter().find(|a| a.change == Change::PumpAsAsked)?;
    let name =
        |design: &Design| design.train.as_ref().map(|t| (t.unit.particulars.model.clone(), t.count.q.si().to_bits()));
    let does = if name(&a.design) == name(&settled.job.design) {
        "asks for the same unit, less loaded then".to_owned()
    } else {
        format!("asks for {}", a.unit)
    };
    Some(format!("A pump for that flow, which keeps up with the water of dry weather, {does}."))
}

/// What arrives, and what is held back of it ahead of the unit, where that is so.
fn design_hold(settled: &Settled) -> Option<String> {
    let hold = settled.job.design.train.as_ref()?.equalisation.as_ref()?;
    let case = settled.job.design.basis.as_ref()?.cases.get(hold.case)?;
    Some(format!(
        "{} arrive ({}), of which {} are held back ahead",
        show(settled, case.inflow.q.si(), FLOW_UNITS),
        case.event,
        show(settled, hold.volume().q.si(), (&GAL, &M3))
    ))
}

/// A model that was named.
fn model(settled: &Settled) -> Option<String> {
    let named = settled.named.model.as_ref()?;
    let taken = settled.job.design.train.as_ref().map(|t| t.unit.particulars.model.as_str());
    Some(match &named.found {
        Found::Unknown => format!("{}: our range has no unit of that name.", named.name),
        Found::WillDo if taken == Some(named.name.as_str()) => format!("{}: yes, it is what we offer.", named.name),
        Found::WillDo => format!("{}: it would do too; what we offer is the smaller that will.", named.name),
        Found::Barred(title, says) => {
            format!("{}: no. {title}: {}.", named.name, says.trim_end_matches('.'))
        }
    })
}

/// An effluent that is to be promised.
fn promise(settled: &Settled) -> Option<String> {
    let asked = &settled.job.enquiry.asked.promise;
    let (claim, value) = (asked.claim()?, asked.q()?);
    let lead = format!("A promise of {}:", typed(claim));
    let design = &settled.job.design;
    let contents = design.basis.iter().flat_map(|b| &b.cases).filter_map(|case| case.content.as_ref());
    let arrives = contents.map(|c| c.total.q).fold(None, |most, c| Some(most.map_or(c, |m: Concentration| m.max(c))));
    let worst = design.performance.as_ref().and_then(|p| p.worst());
    if let Some(arrives) = arrives.filter(|arrives| *arrives <= value) {
        return Some(format!(
            "{lead} we promise nothing. By the figures we have, the mean that arrives, {}, is within it already; how much a plate separator takes from water that carries less than {} nobody has shown.",
            number(arrives),
            number(floor())
        ));
    }
    if value < floor() {
        return Some(format!(
            "{lead} no. No publication that we know of lets a plate separator be promised below {} on real water, whatever a formula prints; {}.",
            number(floor()),
            if emulsified(design, value) {
                "what is emulsified would have to be split (by acid or coagulant and flotation, or held back by a membrane) and polished behind that, and measured on this water"
            } else {
                "a polisher behind it could, or measured results on this water"
            }
        ));
    }
    let Some(worst) = worst else {
        return Some(format!("{lead} we promise nothing while no unit can be sized."));
    };
    let expected = worst.total.expected.q;
    let text = Promise::of(expected, worst.content.total.q).sentence();
    let basis = design.basis.as_ref();
    let of_days = basis.and_then(|b| b.cases.get(worst.case_index)).is_some_and(|case| case.kind == Kind::Days);
    let when = if of_days {
        // What comes at a time and does not fill the unit mixes there with the rest of the day.
        let ends = design.performance.iter().flat_map(|p| &p.removals).filter(|r| r.state == State::End);
        let most = ends.max_by(|a, b| a.total.expected.q.si().total_cmp(&b.total.expected.q.si()));
        let most = most.filter(|most| most.total.expected.q > expected).map_or_else(String::new, |most| {
            format!("; up to {} while {} runs, were it to last", number(most.total.expected.q), most.case)
        });
        format!("in the mean of all days{most}")
    } else {
        format!("on the mean while the worst water runs ({})", worst.case)
    };
    Some(if expected <= value {
        format!("{lead} we give no guarantee on a first answer. As it stands we expect {text} {when}.")
    } else {
        format!("{lead} no. As it stands we expect {text} {when}.")
    })
}

/// Whether emulsified oil alone is above a content in some water, so that no polisher takes it as it is.
fn emulsified(design: &Design, value: Concentration) -> bool {
    let contents = design.basis.iter().flat_map(|b| &b.cases).filter_map(|case| case.content.as_ref());
    contents.map(|content| content.emulsified.q).any(|emulsified| emulsified > value)
}

/// A droplet that is to be removed: against the one that just rises at the overflow rate of the plates.
fn droplet(settled: &Settled) -> Option<String> {
    let asked = &settled.job.enquiry.asked.droplet;
    let (claim, wanted) = (asked.claim()?, asked.q()?);
    let lead = format!("Droplets of {} and larger:", typed(claim));
    let says = "A droplet size says nothing of what comes out unless it is known which droplets come.";
    let design = &settled.job.design;
    let ends = design.performance.iter().flat_map(|p| &p.removals).filter(|r| r.state == State::End);
    let hardest = ends.filter_map(|r| Some((r, r.cut?))).max_by(|(_, a), (_, b)| a.q.si().total_cmp(&b.q.si()));
    let Some((removal, cut)) = hardest else {
        return Some(format!("{lead} not answered, as no unit was sized. {says}"));
    };
    let unit = if settled.job.enquiry.unit_stands() { "the unit that stands" } else { "the unit offered" };
    let of = format!(
        "the plates of {unit}, on the mean of all gaps, just catch droplets of {} where they do it worst, with {} through one unit",
        show(settled, cut.q.si(), (&UM, &UM)),
        show(settled, removal.flow.q.si(), FLOW_UNITS)
    );
    // By Stokes a droplet rises as the square of its size.
    let ratio = cut.q.si() / wanted.si();
    let times = ratio * ratio;
    Some(if times <= 1.0 {
        format!("{lead} yes; {of}. {says}")
    } else {
        let more = if times < 2.0 {
            format!("{} more plates", print::in_prose(times - 1.0, &PERCENT))
        } else {
            format!("{} times its plates", print::digits(times, 2))
        };
        format!("{lead} no; {of}. It would take some {more}. {says}")
    })
}
