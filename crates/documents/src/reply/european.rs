//! What was asked for by the European standard, answered one by one: class, sizes, bypass, covers.

use crate::summary::european::{counted, number, pumped, unlike_ours};
use stillrise_checks::rules::{bypass_with_spill, nominal_size_too_small};
use stillrise_checks::{Grade, Verdict};
use stillrise_design::basis::european::European;
use stillrise_design::basis::rain_kept_out::is_barred;
use stillrise_design::enquiry::blocks::{self, SeparatorClass};
use stillrise_design::train::StageKind;
use stillrise_search::Settled;
use stillrise_units::catalog::{GAL, L, M3};
use stillrise_units::{Typed, print};

/// A sentence or two for each thing that was asked for.
pub(super) fn answers(settled: &Settled) -> Vec<String> {
    let size = nominal_size(settled);
    let Some(block) = &settled.job.enquiry.european else { return size.into_iter().collect() };
    [class(block), size, needs(settled), sludge(settled), bypass(settled, block), lids(block)]
        .into_iter()
        .flatten()
        .collect()
}

/// What one line says of a type test: the one that is named, or that none is.
fn tested(settled: &Settled) -> String {
    match settled.job.enquiry.european.as_ref().and_then(|e| e.type_test.0.as_ref()) {
        Some(report) => {
            format!("the type test you name ({report}) is what a nominal size rests on, not our calculation")
        }
        None if settled.job.design.train.is_some() => "a nominal size is the result of a type test; no such test of our unit was named, and we offer it by flow and effluent instead".to_owned(),
        None => "a nominal size is the result of a type test, which no calculation replaces".to_owned(),
    }
}

/// The class.
fn class(block: &blocks::European) -> Option<String> {
    let class = block.class.0?;
    Some(match &block.type_test.0 {
        Some(report) => format!(
            "Class {} by EN 858-1: it rests on the type test that you name, {report}; please send it, our calculation cannot stand in for it.",
            class.word()
        ),
        None => format!(
            "Class {} by EN 858-1: we cannot say that our unit has it. A class is the result of a test of the full-scale unit, and no report of such a test was named; no calculation gives one. {}, in the test, on clean light oil in clean water; that is no promise for yours.",
            class.word(),
            match class {
                SeparatorClass::One => "The 5 mg/L that go with class I were kept there",
                SeparatorClass::Two => "The 100 mg/L that go with class II were kept there",
            }
        ),
    })
}

/// A nominal size that was named.
fn nominal_size(settled: &Settled) -> Option<String> {
    let typed = settled.job.enquiry.asked.nominal_size.0.as_ref()?;
    let european = settled.job.design.basis.as_ref()?.european.as_ref()?;
    let sizes = match &european.sizes {
        Ok(sizes) => sizes,
        Err(why) => return Some(format!("{typed}: we cannot say whether it covers the need; {why}.")),
    };
    let streams = counted_by_streams(settled, european);
    // Where words that nobody said would let it cover the need, that is what is told.
    let open = settled.judged(&nominal_size_too_small::RULE).filter(|v| v.grade() == Grade::CannotJudge);
    let open = open.filter(|_| european.covers() == Some(false));
    let apart = european.covers() == Some(false) && european.covers_apart() == Some(true);
    if let Some(open) = open {
        return Some(format!(
            "{typed}: cannot be judged yet: {}; {}.{} But {}.",
            open.verdict.says().trim_end_matches('.'),
            flows(settled)?,
            beside(settled, european),
            tested(settled)
        ));
    }
    let word = match (european.covers()?, streams) {
        (true, true) => "yes, on the flows that were told",
        (true, false) => "yes, it covers the need",
        (false, _) if apart => "only where the authority lets the larger of rain and waste water stand alone",
        (false, _) => "no, it is too small",
    };
    let next = sizes.standard.filter(|_| european.covers() == Some(false));
    let next = next.map_or_else(String::new, |size| format!(", the next size is NS {}", number(size.q)));
    let spill = settled.job.design.basis.as_ref().is_some_and(|b| b.spill.is_some());
    let spill = if spill { " No spill is counted in it; what is to be held of one is another matter." } else { "" };
    let notes = beside(settled, european) + spill;
    Some(format!("{typed}: {word}; {}{next}.{notes} But {}.", flows(settled)?, tested(settled)))
}

/// How the standard counts, and the size without adding up, where those differ from what stands before it.
fn beside(settled: &Settled, european: &European) -> String {
    let streams = counted_by_streams(settled, european).then(|| {
        "Waste water is counted by the streams that were told; the standard counts taps by their bore and 2 L/s for a first high-pressure unit: which are there?".to_owned()
    });
    let barred = is_barred(&settled.job.enquiry).then(|| "No rain is counted, as this sewer takes none.".to_owned());
    barred
        .into_iter()
        .chain(counted(european))
        .chain(streams)
        .chain(unlike_ours(settled, european))
        .map(|note| format!(" {note}"))
        .collect()
}

/// Whether waste water comes and neither taps nor washing units were declared, by which the standard counts it.
fn counted_by_streams(settled: &Settled, european: &European) -> bool {
    let block = settled.job.enquiry.european.as_ref();
    let declared = block.is_some_and(|b| !b.taps.is_empty() || b.high_pressure.is_some() || b.automatic_wash.is_some());
    european.waste.q.si() > 0.0 && european.pumps.is_none() && !declared
}

/// The flows and the size that they ask for.
fn flows(settled: &Settled) -> Option<String> {
    let european = settled.job.design.basis.as_ref()?.european.as_ref()?;
    let sizes = european.sizes.as_ref().ok()?;
    let (rain, waste) = (number(european.rain.q), number(european.waste.q));
    let times = european.impediment.q.si();
    let waste = if (times - 1.0).abs() > 1e-9 { format!("{} x {waste}", print::digits(times, 2)) } else { waste };
    let water = match (european.rain.q.si() > 0.0, european.waste.q.si() > 0.0) {
        (true, true) => format!("{rain} L/s of rain and {waste} L/s of waste water"),
        (false, _) => format!("{waste} L/s of waste water"),
        (true, false) => format!("{rain} L/s of rain"),
    };
    let heavy = sizes.factor.q.si();
    let heavy = (heavy > 1.0).then(|| format!("times {} for the density of {}", print::digits(heavy, 2), european.oil));
    let how: Vec<String> = pumped(european).into_iter().chain(heavy).collect();
    let water = if how.is_empty() { format!("{water} ask") } else { format!("{water} ({}) ask", how.join("; ")) };
    let apart = sizes.apart.map_or_else(String::new, |alone| {
        let why = if european.said_apart { "they never run together, as was said," } else { "they never run together" };
        format!(
            ", both added up, and for NS {} if {why} and the authority lets the larger stand alone",
            number(alone.q)
        )
    });
    let class = sizes.class_one.map_or_else(String::new, |one| {
        format!(
            " with a plain separator of class II, as nobody said which class (NS {} with one of class I)",
            number(one.q)
        )
    });
    Some(format!("{water} for NS {} by EN 858-2{class}{apart}", number(sizes.need.q)))
}

/// The nominal size that our waters ask for, where none was named.
fn needs(settled: &Settled) -> Option<String> {
    if settled.job.enquiry.asked.nominal_size.is_some() {
        return None;
    }
    let european = settled.job.design.basis.as_ref()?.european.as_ref()?;
    Some(match &european.sizes {
        Ok(sizes) => {
            let next = match sizes.standard {
                Some(size) => format!("the next size of the series is NS {}", number(size.q)),
                None => "the series ends at NS 500, so that several in parallel would be asked for".to_owned(),
            };
            format!("Nominal size: {}; {next}.{} But {}.", flows(settled)?, beside(settled, european), tested(settled))
        }
        Err(why) => format!("Nominal size: none follows; {why}."),
    })
}

/// The sludge trap.
fn sludge(settled: &Settled) -> Option<String> {
    let stated = settled.job.enquiry.european.as_ref()?.sludge_load.0.is_some();
    let load = settled.job.design.basis.as_ref()?.european.as_ref()?.load.q.word();
    let asked = settled.job.design.basis.as_ref()?.european.as_ref()?.sizes.as_ref().ok()?.sludge_trap?;
    let volume = |si: f64| print::in_prose(si, settled.job.enquiry.system().pick((&GAL, &M3)));
    let train = settled.job.design.train.as_ref();
    let trap = train.is_some_and(|t| t.stages.iter().any(|s| s.kind == StageKind::GritTrap && s.asked_for));
    let ours = match train.map(|t| (t.unit.hopper_volume().si(), t.count.q.si())) {
        Some((hopper, n)) if hopper > 0.0 && n > 1.0 => {
            format!("the hoppers of our units hold {} each and are no such trap, which stands ahead", volume(hopper))
        }
        Some((hopper, _)) if hopper >= asked.q.si() => format!("the hopper of our unit holds {}", volume(hopper)),
        Some((hopper, _)) if hopper > 0.0 => {
            format!("the hopper of our unit holds {} and is no such trap, which stands ahead", volume(hopper))
        }
        _ if trap => "it stands below among what is needed beside the unit".to_owned(),
        _ => "we size no trap here".to_owned(),
    };
    let litres = print::digits(L.from_si(asked.q.si()), 3);
    Some(format!(
        "Sludge trap: EN 858-2 asks for one of at least {litres} L ahead of a separator for this water{}; {ours}.",
        if stated { String::new() } else { format!(" (a load that it calls {load}, which nobody stated)") }
    ))
}

/// A bypass that was asked for: what the rule says of it.
fn bypass(settled: &Settled, block: &blocks::European) -> Option<String> {
    if *block.bypass != Some(true) {
        return None;
    }
    let judged = settled.judged(&bypass_with_spill::RULE)?;
    let says = judged.verdict.says();
    Some(match &judged.verdict {
        Verdict::Fails(_) => format!("A bypass: no. {}. {}", crate::summary::capital(says), judged.rule.remedy),
        Verdict::Passes(_) => format!(
            "A bypass: nothing we were told bars it ({says}). Our figures are for the whole flow; what goes round the separator is not treated."
        ),
        _ => format!("A bypass: not before this is settled: {says}."),
    })
}

/// The class of the covers.
fn lids(block: &blocks::European) -> Option<String> {
    let class = block.load_class.0?;
    Some(format!(
        "Covers of class {} by EN 124 ({}): what stands over the unit, covers and the slab that carries the wheels, is not part of this calculation; it has to be ordered with it.",
        class.word(),
        class.meaning()
    ))
}
