//! What the unit weighs, and what the row's weight and price leave out.

use super::show;
use stillrise_design::train::Train;
use stillrise_search::Settled;
use stillrise_units::Typed;
use stillrise_units::catalog::{KG, LB};

/// Its weight empty, as the row states it, and full of water.
pub(super) fn weight(settled: &Settled, train: &Train, each: &str) -> Option<String> {
    let weight = train.unit.particulars.empty_weight?;
    let shown = |si: f64| show(settled, si, (&LB, &KG));
    // What carries it has to carry the water in it.
    let shop = settled.job.design.performance.as_ref().and_then(|p| p.shop.as_ref()?.weights.as_ref());
    let full = shop.and_then(|weights| weights.test).map_or_else(String::new, |test| {
        let more = if train.unit.arrangement.is_in_ground() { ", and the soil and traffic over it" } else { "" };
        format!("; {} full of water: the ground or floor under it must carry that{more}", shown(test.q.si()))
    });
    // The full weight holds the options that the row's own leaves out.
    let whole = shop.and_then(|weights| weights.empty.filter(|_| weights.options_added));
    let whole = whole.map_or_else(String::new, |whole| format!(", some {} with them", shown(whole.q.si())));
    Some(format!("weight empty{each} {}{}{whole}{full}", shown(weight.q.si()), options(train)))
}

/// The weight of one unit full of water, where it is known.
pub(super) fn full(settled: &Settled) -> Option<String> {
    let shop = settled.job.design.performance.as_ref()?.shop.as_ref()?;
    Some(show(settled, shop.weights.as_ref()?.test?.q.si(), (&LB, &KG)))
}

/// What the row's weight and price leave out: they are those of the vessel without its options.
pub(super) fn options(train: &Train) -> &'static str {
    match (&train.unit.sand_trap, &train.unit.pump_out) {
        (Some(_), Some(_)) => ", without its sand and pump-out compartments",
        (Some(_), None) => ", without its sand compartment",
        (None, Some(_)) => ", without its pump-out compartment and pumps",
        (None, None) => "",
    }
}
