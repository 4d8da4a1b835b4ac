//! What the designer may decide alone: another size, more units, another arrangement, what goes with the unit.

use super::{Around, Family, Offer};
use crate::arrangement::by_size;
use crate::pick::How;
use stillrise_design::arrangements::Arrangement;
use stillrise_design::enquiry::range::Model;
use stillrise_handbook::hydraulics::pipes::PIPE_SIZES;
use stillrise_units::System;

/// Larger sizes that are tried, one after the other.
const LARGER: usize = 3;
/// Most in parallel that are tried.
const MOST_UNITS: u32 = 4;
/// Wider outlet pipes that are tried.
const WIDER: usize = 2;

/// A flag, as it is typed.
pub(super) const YES: &str = "yes";

/// The changes that make sense; none of a unit that stands or whose dimensions are stated.
pub(super) fn offers(a: &Around<'_>) -> Vec<Offer> {
    let unit = &a.enquiry.unit;
    if a.enquiry.unit_stands() || unit.dimensions.is_some() {
        return Vec::new();
    }
    let mut all = sizes(a);
    all.extend(parallel(a));
    all.extend(arrangements(a));
    let in_range = |has: fn(&Model) -> bool| a.range.models.iter().any(has);
    if unit.sand_trap.is_none() && in_range(|m| m.stages.sand_trap.length.is_given()) {
        let keys = [(unit.sand_trap().path().into_owned(), YES.to_owned())];
        all.push(Offer::new(Family::SandTrap, "Take the sand compartment ahead that the range offers", keys));
    }
    if unit.pump_out.is_none() && in_range(|m| m.stages.pump_out.length.is_given()) {
        let keys = |value: &str| [(unit.pump_out().path().into_owned(), value.to_owned())];
        let says = "Take the pump-out compartment behind that the range offers";
        all.push(Offer::new(Family::PumpOut, says, keys(YES)));
        let says = "Leave the pump-out compartment away, with pumps in a shaft of their own behind the unit";
        all.push(Offer::new(Family::PumpOut, says, keys("no")));
    }
    if unit.standby.is_none() && a.settled.pick.as_ref().is_some_and(|pick| pick.count > 1) {
        let keys = [(unit.standby().path().into_owned(), "1".to_owned())];
        all.push(Offer::new(Family::Standby, "Have one more unit stand by", keys));
    }
    all.extend(outlet(a));
    all
}

/// The next larger rows of the arrangement taken.
fn sizes(a: &Around<'_>) -> Vec<Offer> {
    let Some((pick, How::Row(row))) = a.settled.pick.as_ref().map(|pick| (pick, pick.how)) else { return Vec::new() };
    let mut rows = by_size(a.range);
    rows.retain(|other| Arrangement::of(&a.range.models[*other]) == Arrangement::of(&a.range.models[row]));
    let larger = rows.iter().skip_while(|other| **other != row).skip(1).take(LARGER);
    let unit = &a.enquiry.unit;
    let one = |row: &usize| {
        let model = a.range.models[*row].model.0.clone()?;
        let says = if pick.count > 1 { format!("Take {} x {model}", pick.count) } else { format!("Take {model}") };
        let mut keys = vec![(unit.model().path().into_owned(), model)];
        if pick.count > 1 && unit.count.is_none() {
            keys.push((unit.count().path().into_owned(), pick.count.to_string()));
        }
        Some(Offer::new(Family::Size, says, keys))
    };
    larger.filter_map(one).collect()
}

/// One or two more in parallel: of whatever size then fits, or of the one that is named.
fn parallel(a: &Around<'_>) -> Vec<Offer> {
    let Some(pick) = &a.settled.pick else { return Vec::new() };
    let unit = &a.enquiry.unit;
    let more = (pick.count + 1..=MOST_UNITS).take(2);
    let one = |count: u32| {
        let keys = [(unit.count().path().into_owned(), count.to_string())];
        let number = match count {
            2 => "two".to_owned(),
            3 => "three".to_owned(),
            more => more.to_string(),
        };
        Offer::new(Family::Parallel, format!("Take {number} units in parallel"), keys)
    };
    more.map(one).collect()
}

/// The other arrangements that the range holds.
fn arrangements(a: &Around<'_>) -> Vec<Offer> {
    let Some(train) = &a.design.train else { return Vec::new() };
    let unit = &a.enquiry.unit;
    if unit.model.is_some() {
        return Vec::new();
    }
    let is_held = |of: &&Arrangement| a.range.models.iter().any(|m| Arrangement::of(m) == **of);
    let others = Arrangement::ALL.iter().filter(|of| **of != train.unit.arrangement).filter(is_held);
    let one = |of: &Arrangement| {
        let keys = [(unit.arrangement().path().into_owned(), of.word().to_owned())];
        Offer::new(Family::Arrangement, format!("Take another arrangement: {} ({})", of.word(), of.meaning()), keys)
    };
    others.map(one).collect()
}

/// A wider outlet pipe, where nobody said which it is.
fn outlet(a: &Around<'_>) -> Vec<Offer> {
    let outlet = &a.enquiry.outlet;
    let Some(train) = a.design.train.as_ref().filter(|_| outlet.pipe.is_none()) else { return Vec::new() };
    let now = train.unit.outlet.bore.q;
    let wider = PIPE_SIZES.iter().filter(|size| size.inside() > now * 1.05).take(WIDER);
    let one = |size: &stillrise_handbook::hydraulics::pipes::PipeSize| {
        let word = if a.enquiry.system() == System::Us { size.word.to_owned() } else { size.metric_word() };
        let keys = [(outlet.pipe().path().into_owned(), word.clone())];
        Offer::new(Family::OutletPipe, format!("Give the unit an outlet pipe of {word}"), keys)
    };
    wider.map(one).collect()
}
