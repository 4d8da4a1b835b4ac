//! Droplets that a pump is worked to break harder than its kind is taken to do.

use stillrise_design::basis::shear::Shear;
use stillrise_design::performance::limit::Word;
use stillrise_search::Settled;
use stillrise_units::catalog::W_KG;
use stillrise_units::{Typed, print};

/// That what leaves rests on a dissipation beyond what pumps of this kind are taken to do, where a limit is not kept by it.
pub(super) fn beyond_its_kind(settled: &Settled) -> Option<String> {
    let design = &settled.job.design;
    let basis = design.basis.as_ref()?;
    let missed = |l: &&stillrise_design::performance::limit::LimitVerdict| l.predicted && l.word != Word::Kept;
    design.performance.as_ref()?.limits.iter().find(missed)?;
    let shears = basis.arrivals.iter().filter_map(|way| way.shear.as_ref()).filter(|shear| shear.governs);
    let hardest = shears.map(Shear::hardest).find(|place| place.is_worked && place.beside.is_some())?;
    let ([low, _, high], found) = (hardest.beside?, hardest.dissipation.q);
    let taken = !settled.job.enquiry.inlet.impeller.is_given() && hardest.is_feed_pump;
    let show = |si: f64| print::in_prose(si, &W_KG);
    let side = if found > high {
        "more than"
    } else if found < low {
        "less than"
    } else {
        return None;
    };
    Some(format!(
        "What leaves rests on droplets broken at {} in the {}, worked from its power or head{}: {side} the {} to {} that its kind is taken to do, and so beyond what we trust; the pump's curve and the size of its impeller settle it.",
        show(found.si()),
        hardest.name,
        if taken { " with an impeller that was taken" } else { "" },
        show(low.si()),
        show(high.si()),
    ))
}
