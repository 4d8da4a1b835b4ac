//! How hard a pump shears: from its power, head, speed or impeller where they are stated, else from its class, whose range
//! stays beside the figure as a check.

use super::cases::FeedState;
use super::fluids::Fluids;
use super::shear::Named;
use super::stated::{assumed, stand_in, stated, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::enquiry::keys::{Key, Quantity};
use crate::enquiry::shear::ShearBlock;
use crate::provenance::{Stop, Trail, Val, WhatIf, Whence, given};
use crate::{by, reckon, say};
use stillrise_handbook::hydraulics::specific_speed;
use stillrise_handbook::separation::pumps::{Pump, pump};
use stillrise_handbook::separation::{
    hydraulic_power, impeller_diameter, impeller_head, impeller_volume, pump_dissipation,
};
use stillrise_units::catalog::{FT, M, RPM, W_KG};
use stillrise_units::{Dissipation, Flow, Length, Power, Ratio, ShearRate, System, Typed, ratio};

/// What is said of a pump besides its class.
struct Figures<'a> {
    power: Key<'a, Quantity<Power>>,
    head: Key<'a, Quantity<Length>>,
    speed: Key<'a, Quantity<ShearRate>>,
    impeller: Key<'a, Quantity<Length>>,
    width: Key<'a, Quantity<Ratio>>,
    efficiency: Key<'a, Quantity<Ratio>>,
    coefficient: Key<'a, Quantity<Ratio>>,
    /// Speeds of motors on the mains of the place.
    motors: Motors,
    name: &'a str,
}

/// Speeds of motors with four and with two poles, and the highest, rpm.
type Motors = [f64; 3];

/// Common practice: an induction motor runs a few per cent below 1500 and 3000 rpm on mains of 50 Hz, below 1800 and
/// 3600 rpm on those of 60 Hz. Who writes in US units has 60 Hz; elsewhere there are both, and most have 50 Hz.
fn motors(e: &Enquiry) -> Motors {
    match e.system() {
        System::Us => [1750.0, 3450.0, 3500.0],
        System::Si => [1450.0, 2900.0, 3500.0],
    }
}

/// Power dissipated in the pump that feeds the unit.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn feed_pump<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    feed: &FeedState,
) -> Result<Named, Stop> {
    let own = &e.inlet;
    let figures = Figures {
        power: own.pump_power(),
        head: own.pump_head(),
        speed: own.pump_speed(),
        impeller: own.impeller(),
        width: own.impeller_width(),
        efficiency: own.efficiency(),
        coefficient: own.head_coefficient(),
        motors: motors(e),
        name: "pump",
    };
    let beside = feed.class.map(|class| class.dissipation());
    if let Some(dissipation) = stated(t, w, "power dissipated in the pump", &e.inlet.dissipation) {
        return Ok(Named { dissipation, beside, is_worked: false });
    }
    if has_impeller(feed.class)
        && let Some(worked) = worked(t, w, fluids, &figures, feed.one_pump)?
    {
        return Ok(Named { dissipation: worked, beside, is_worked: true });
    }
    let at = |x: f64| Dissipation::of(x, &W_KG);
    let label = "power dissipated in the pump";
    let dissipation = match feed.class {
        Some(class) => {
            let [low, likely, high] = class.dissipation();
            // The keys of the inlet speak of the pump before a change that names another.
            let changed = e.changes.iter().any(|change| change.pump.is_some());
            let key = own.dissipation().asked_if(!changed);
            assumed(t, w, &key, label, stand_in((low, likely, high), class.shear_mark.text()))
        }
        None => {
            let key = own.pump().in_units(&W_KG, &W_KG);
            let why = "kind of pump not said; taken as the centrifugal pump of most sumps, engineering judgement";
            assumed(t, w, &key, label, stand_in((at(1.0), at(1000.0), at(10_000.0)), why))
        }
    };
    Ok(Named { dissipation, beside, is_worked: false })
}

/// Power dissipated in a pump on the way; `None` when neither class nor figures say it, which reading refuses.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn pump_on_the_way<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    (e, fluids): (&Enquiry, &Fluids),
    block: &ShearBlock,
    name: &str,
) -> Result<Option<Named>, Stop> {
    let figures = Figures {
        power: block.pump_power(),
        head: block.pump_head(),
        speed: block.pump_speed(),
        impeller: block.impeller(),
        width: block.impeller_width(),
        efficiency: block.efficiency(),
        coefficient: block.head_coefficient(),
        motors: motors(e),
        name,
    };
    let Some(class) = block.pump.as_deref().and_then(pump) else { return Ok(None) };
    let beside = Some(class.dissipation());
    if has_impeller(Some(class)) {
        let flow = stated(t, w, &say!(T, "flow through the {name}"), &block.flow);
        if let Some(worked) = worked(t, w, fluids, &figures, flow)? {
            return Ok(Some(Named { dissipation: worked, beside, is_worked: true }));
        }
    }
    let [low, likely, high] = class.dissipation();
    let label = say!(T, "power dissipated in the {name}");
    let key = block.dissipation().of(name);
    let dissipation = assumed(t, w, &key, &label, stand_in((low, likely, high), class.shear_mark.text()));
    Ok(Some(Named { dissipation, beside, is_worked: false }))
}

/// Whether a class of pumps lifts by an impeller; one of unknown kind is taken as centrifugal.
#[must_use]
pub fn has_impeller(class: Option<&Pump>) -> bool {
    class.is_none_or(|pump| pump.class.has_impeller())
}

/// From what is said of it; `None` where that is not enough.
fn worked<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    fluids: &Fluids,
    f: &Figures<'_>,
    flow: Option<Val<Flow>>,
) -> Result<Option<Val<Dissipation>>, Stop> {
    let name = f.name;
    let by_speed = f.speed.said.is_given() && f.impeller.said.is_given();
    let enough = match (f.power.said.is_given(), flow.is_some()) {
        (true, has_flow) => has_flow || f.impeller.said.is_given() || f.head.said.is_given(),
        (false, has_flow) => has_flow && (f.head.said.is_given() || by_speed),
    };
    if !enough {
        return Ok(None);
    }
    let rho = fluids.cold.density;
    let power = stated(t, w, &say!(T, "shaft power of the {name}"), f.power.said);
    let label = say!(T, "efficiency of the {name}");
    let efficiency = stated_or_usual(t, w, f.efficiency, &label);
    let coefficient = |t: &mut T| {
        let label = say!(T, "head coefficient of the {name}");
        stated_or_usual(t, w, f.coefficient, &label)
    };
    let stated_impeller = stated(t, w, &say!(T, "impeller of the {name}"), f.impeller.said);
    let stated_speed = stated(t, w, &say!(T, "speed of the {name}"), f.speed.said);
    let head = match (stated(t, w, &say!(T, "head of the {name}"), f.head.said), stated_speed, stated_impeller) {
        (Some(head), ..) => Some(head),
        (None, Some(n), Some(d)) => {
            let psi = coefficient(t);
            Some(by!(t, &say!(T, "head of the {name}, from its tip speed"), impeller_head::head(n, d, psi))?)
        }
        _ => None,
    };
    let useful = match (head, flow) {
        (Some(h), Some(q)) => {
            Some(by!(t, &say!(T, "power the {name} gives the water"), hydraulic_power::power(rho, q, h))?)
        }
        _ => None,
    };
    let label = say!(T, "power lost in the {name}");
    // Both say the loss; where they leave none, or next to none, the two contradict, and the larger loss holds.
    let lost = match (power, useful) {
        (Some(p), Some(h)) if h.q < p.q * MOST_EFFICIENT => {
            reckon!(t, &label, [HP, KW], (power = p, useful = h) power - useful)
        }
        (_, Some(h)) => reckon!(t, &label, [HP, KW], (useful = h, eff = efficiency) useful / eff - useful),
        (Some(p), None) => reckon!(t, &label, [HP, KW], (power = p, eff = efficiency) power * (ratio(1.0) - eff)),
        (None, None) => return Ok(None),
    };
    let diameter = match stated_impeller {
        Some(d) => d,
        None => {
            let head = match (head, power, flow) {
                (Some(head), ..) => head,
                // A flow of water, lifted by the power that the pump turns into head.
                (None, Some(p), Some(q)) => {
                    let one =
                        given(t, "head of one metre", Some((&FT, &M)), Length::from_si(1.0), Whence::Definition, "1 m");
                    let each = by!(t, "power for a metre of head", hydraulic_power::power(rho, q, one))?;
                    reckon!(t, &say!(T, "head of the {name}, from its power"), [FT, M], (power = p, eff = efficiency, each = each, one = one) power * eff / each * one)
                }
                _ => return Ok(None),
            };
            let speed = match stated_speed {
                Some(speed) => speed,
                None => {
                    let rpm = |x: f64| ShearRate::of(x, &RPM);
                    let [four, two, most] = f.motors.map(rpm);
                    let stood = if is_radial(t, two, flow, head) {
                        let why = "common practice: a motor of two poles, with four poles half as fast";
                        stand_in((four, two, most), why)
                    } else {
                        let why = "common practice: a motor of four poles, as no radial impeller has this flow against this head with two";
                        stand_in((four, four, two), why)
                    };
                    assumed(t, w, &f.speed.of(name), &say!(T, "speed of the {name}"), stood)
                }
            };
            let psi = coefficient(t);
            by!(
                t,
                &say!(T, "impeller of the {name}, from head and speed"),
                impeller_diameter::diameter(head, speed, psi)
            )?
        }
    };
    let label = say!(T, "width of the impeller over its diameter, {name}");
    let width = stated_or_usual(t, w, f.width, &label);
    let volume =
        by!(t, &say!(T, "volume that the impeller of the {name} sweeps"), impeller_volume::volume(diameter, width))?;
    let label = say!(T, "power dissipated in the {name}");
    Ok(Some(by!(t, &label, pump_dissipation::dissipation(lost, rho, volume))?))
}

/// Specific speed up to which an impeller is radial, as the head coefficient takes it to be; from memory of textbooks.
const RADIAL_TO: f64 = 60.0;

/// Whether an impeller of this speed is radial; where flow or head is not known, as it mostly is.
fn is_radial<T: Trail>(t: &mut T, speed: ShearRate, flow: Option<Val<Flow>>, head: Val<Length>) -> bool {
    let Some(flow) = flow else { return true };
    let speed = given(t, "speed of a motor of two poles", Some((&RPM, &RPM)), speed, Whence::Definition, "tried");
    let form = by!(t, "specific speed with it", specific_speed::speed(speed, flow, head));
    form.is_ok_and(|form| form.q.si() <= RADIAL_TO)
}

/// The best that a small pump does; where head and flow ask for more of the shaft's power, one of the figures is wrong.
const MOST_EFFICIENT: f64 = 0.9;
