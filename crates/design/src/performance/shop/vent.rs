//! The vent of a closed unit: the bore through which the air of filling and emptying passes.

use super::SHOP;
use crate::basis::FLOW_UNITS;
use crate::basis::stated::stated_or_usual;
use crate::enquiry::Enquiry;
use crate::provenance::{Stop, Trail, Val, WhatIf, choose, given};
use crate::train::unit::Unit;
use crate::{by, reckon, say};
use stillrise_handbook::hydraulics::pipes::{PIPE_SIZES, PipeSize};
use stillrise_handbook::shop::vent_diameter;
use stillrise_handbook::shop::vents::VENTS;
use stillrise_units::catalog::{IN, KG_M3, KPA, LB_FT3, MM, ONE, PSI};
use stillrise_units::{Density, Flow, Length, Pressure, Typed, ratio};

/// What the air of filling is doubled by above a volatile liquid, from memory.
const VOLATILE: f64 = 2.0;

/// The vent.
#[derive(Debug, Clone)]
pub struct Vent {
    /// Air that has to pass.
    pub air: Val<Flow>,
    /// Permitted difference of pressure.
    pub difference: Val<Pressure>,
    /// Bore by that.
    pub bore: Val<Length>,
    /// Bore that is proposed: that one, or the least of the handbook.
    pub least: Val<Length>,
    /// Next size of pipe; `None` above the largest of the table.
    pub size: Option<&'static PipeSize>,
}

/// Finds it; `None` for an open unit.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn vent<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    unit: &Unit,
    largest: Val<Flow>,
    volatile: bool,
) -> Result<Option<Vent>, Stop> {
    if unit.body.is_open() {
        return Ok(None);
    }
    t.section(format_args!("{SHOP}: vent"));
    let emptied = stated_or_usual(t, w, e.installation.emptied_at(), "rate at which a suction truck empties the unit");
    let times = given(
        t,
        "factor on the air of filling",
        Some((&ONE, &ONE)),
        ratio(if volatile { VOLATILE } else { 1.0 }),
        &say!(T, "{}", stillrise_handbook::sources::VENT_MEMORY),
        if volatile {
            "2, an oil that may flash below {100 °F|37.8 °C}"
        } else {
            "1, no oil that flashes below {100 °F|37.8 °C}"
        },
    );
    let filled =
        reckon!(t, "air of filling, at the largest flow", [GPM, M3_H], (flow = largest, times = times) flow * times);
    let air = choose(
        t,
        "air that passes the vent",
        Some(FLOW_UNITS),
        if filled.q > emptied.q { filled.q } else { emptied.q },
        "filling, emptying",
        "the larger",
        &[filled.at, emptied.at],
    );
    let difference = given(
        t,
        "permitted difference of pressure",
        Some((&PSI, &KPA)),
        Pressure::of(0.25, &KPA),
        "our proposal",
        "{0.0363 psi|0.25 kPa}, {1 in|25 mm} of water",
    );
    let rho = given(
        t,
        "density of air",
        Some((&LB_FT3, &KG_M3)),
        Density::of(1.2, &KG_M3),
        "common practice",
        "{0.0749 lb/ft3|1.2 kg/m3}",
    );
    let k = given(
        t,
        "factor on the velocity head",
        Some((&ONE, &ONE)),
        ratio(3.0),
        "common practice",
        "a short vent with two bends",
    );
    let bore = by!(t, "bore of the vent by that", vent_diameter::bore(air, difference, rho, k))?;
    let rule = VENTS.iter().filter(|rule| rule.word.starts_with("bore"));
    let (proposed, source) = rule.filter_map(|rule| rule.least().map(|least| (least, rule.source))).fold(
        (Length::from_si(0.0), &stillrise_handbook::sources::JUDGEMENT),
        |(most, from), (least, source)| {
            if least > most { (least, source) } else { (most, from) }
        },
    );
    let floor = given(t, "least bore", Some((&IN, &MM)), proposed, &say!(T, "{source}"), "smaller ones clog");
    let least = choose(
        t,
        "bore that is proposed",
        Some((&IN, &MM)),
        if bore.q > floor.q { bore.q } else { floor.q },
        "by the air, the least",
        "the larger",
        &[bore.at, floor.at],
    );
    let size = PIPE_SIZES.iter().find(|size| size.inside() >= least.q);
    Ok(Some(Vent { air, difference, bore, least, size }))
}
