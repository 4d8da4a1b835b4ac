//! How hard a pump shears: from its power, head, speed or impeller where they are stated, else from its class, whose range
//! stays beside the figure as a check.

use super::cases::FeedState;
use super::fluids::Fluids;
use super::shear::Named;
use super::stated::{block_of, key_of, line_of, standby, stated, stated_or_by_hand};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::Inlet;
use crate::enquiry::keys::Quantity;
use crate::enquiry::shear::ShearBlock;
use crate::provenance::{Stop, Trail, Val, WhatIf, assume};
use crate::{by, reckon, say};
use stillrise_handbook::separation::pumps::{Pump, pump};
use stillrise_handbook::separation::{
    hydraulic_power, impeller_diameter, impeller_head, impeller_volume, pump_dissipation,
};
use stillrise_units::catalog::{FT, M, ONE, PERCENT, RPM, W_KG};
use stillrise_units::{Dissipation, Flow, Length, Power, Ratio, ShearRate, System, Typed, ratio};

/// What is said of a pump besides its class.
struct Figures<'a> {
    power: &'a Quantity<Power>,
    head: &'a Quantity<Length>,
    speed: &'a Quantity<ShearRate>,
    impeller: &'a Quantity<Length>,
    width: &'a Quantity<Ratio>,
    efficiency: &'a Quantity<Ratio>,
    coefficient: &'a Quantity<Ratio>,
    /// Speeds of motors on the mains of the place.
    motors: Motors,
    /// The block, as its keys begin.
    key: String,
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

/// What settles how hard a pump of a known kind breaks the oil.
const PLATE: &str = "May we have the pump's curve or name plate, with flow, head, power and speed, which show how hard it breaks the oil?";

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
    let Inlet { pump_power: power, pump_head: head, pump_speed: speed, impeller, efficiency, .. } = &e.inlet;
    let (width, coefficient) = (&e.inlet.impeller_width, &e.inlet.head_coefficient);
    let key = "inlet".to_owned();
    let figures =
        Figures { power, head, speed, impeller, width, efficiency, coefficient, motors: motors(e), key, name: "pump" };
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
    let (key, range, question, source) = match feed.class {
        Some(class) => {
            let [low, likely, high] = class.dissipation();
            // The keys of the inlet speak of the pump before a change that names another.
            let changed = e.changes.iter().any(|change| change.pump.is_some());
            let question = if changed { "" } else { PLATE };
            ("inlet.dissipation", (low, likely, high), question, class.shear_mark.text())
        }
        None => (
            "inlet.pump",
            (at(1.0), at(1000.0), at(10_000.0)),
            "Which pump lifts the water to the separator?",
            "kind of pump not said; taken as the centrifugal pump of most sumps, engineering judgement".to_owned(),
        ),
    };
    let standby = standby("power dissipated in the pump", (&W_KG, &W_KG), key, question, range, source);
    Ok(Named { dissipation: assume(t, w, standby), beside, is_worked: false })
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
    let ShearBlock { pump_power: power, pump_head: head, pump_speed: speed, impeller, efficiency, .. } = block;
    let (width, coefficient) = (&block.impeller_width, &block.head_coefficient);
    let key = block_of("shear", name);
    let figures =
        Figures { power, head, speed, impeller, width, efficiency, coefficient, motors: motors(e), key, name };
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
    let key = key_of("shear", name, "dissipation");
    let question = say!(
        T,
        "May we have the curve or name plate of the {name}, with flow, head, power and speed, which show how hard it breaks the oil?"
    );
    let standby = standby(&label, (&W_KG, &W_KG), key, question, (low, likely, high), class.shear_mark.text());
    Ok(Some(Named { dissipation: assume(t, w, standby), beside, is_worked: false }))
}

/// Whether a class of pumps lifts by an impeller; one of unknown kind is taken as centrifugal.
#[must_use]
pub fn has_impeller(class: Option<&Pump>) -> bool {
    class.is_none_or(|class| class.word.contains("centrifugal") || class.word == "submersible")
}

/// From what is said of it; `None` where that is not enough.
fn worked<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    fluids: &Fluids,
    f: &Figures<'_>,
    flow: Option<Val<Flow>>,
) -> Result<Option<Val<Dissipation>>, Stop> {
    let (key, name) = (&f.key, f.name);
    let by_speed = f.speed.is_given() && f.impeller.is_given();
    let enough = match (f.power.is_given(), flow.is_some()) {
        (true, has_flow) => has_flow || f.impeller.is_given() || f.head.is_given(),
        (false, has_flow) => has_flow && (f.head.is_given() || by_speed),
    };
    if !enough {
        return Ok(None);
    }
    let rho = fluids.cold.density;
    let power = stated(t, w, &say!(T, "shaft power of the {name}"), f.power);
    let label = say!(T, "efficiency of the {name}");
    let efficiency = stated_or_by_hand(t, w, f.efficiency, || {
        standby(
            &label,
            (&PERCENT, &PERCENT),
            line_of(key, "efficiency"),
            "",
            (ratio(0.25), ratio(0.5), ratio(0.75)),
            "from memory: small sump pumps turn some half of the shaft's power into head, less away from their best point",
        )
    });
    let coefficient = |t: &mut T| {
        let label = say!(T, "head coefficient of the {name}");
        stated_or_by_hand(t, w, f.coefficient, || {
            standby(
                &label,
                (&ONE, &ONE),
                line_of(key, "head_coefficient"),
                "",
                (ratio(0.4), ratio(0.5), ratio(0.6)),
                "from memory: radial impellers at their best point",
            )
        })
    };
    let stated_impeller = stated(t, w, &say!(T, "impeller of the {name}"), f.impeller);
    let stated_speed = stated(t, w, &say!(T, "speed of the {name}"), f.speed);
    let head = match (stated(t, w, &say!(T, "head of the {name}"), f.head), stated_speed, stated_impeller) {
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
                    let one = crate::provenance::given(
                        t,
                        "head of one metre",
                        Some((&FT, &M)),
                        Length::from_si(1.0),
                        "definition",
                        "1 m",
                    );
                    let each = by!(t, "power for a metre of head", hydraulic_power::power(rho, q, one))?;
                    reckon!(t, &say!(T, "head of the {name}, from its power"), [FT, M], (power = p, eff = efficiency, each = each, one = one) power * eff / each * one)
                }
                _ => return Ok(None),
            };
            let speed = stated_speed.unwrap_or_else(|| {
                let rpm = |x: f64| ShearRate::of(x, &RPM);
                assume(
                    t,
                    w,
                    standby(
                        &say!(T, "speed of the {name}"),
                        (&RPM, &RPM),
                        line_of(key, "pump_speed"),
                        say!(T, "How fast does the {name} turn, and how large is its impeller?"),
                        {
                            let [four, two, most] = f.motors;
                            (rpm(four), rpm(two), rpm(most))
                        },
                        "common practice: a motor of two poles, with four poles half as fast",
                    ),
                )
            });
            let psi = coefficient(t);
            by!(
                t,
                &say!(T, "impeller of the {name}, from head and speed"),
                impeller_diameter::diameter(head, speed, psi)
            )?
        }
    };
    let label = say!(T, "width of the impeller over its diameter, {name}");
    let width = stated_or_by_hand(t, w, f.width, || {
        standby(
            &label,
            (&PERCENT, &PERCENT),
            line_of(key, "impeller_width"),
            "",
            (ratio(0.05), ratio(0.1), ratio(0.25)),
            "engineering judgement: open and vortex impellers of sump pumps",
        )
    });
    let volume =
        by!(t, &say!(T, "volume that the impeller of the {name} sweeps"), impeller_volume::volume(diameter, width))?;
    let label = say!(T, "power dissipated in the {name}");
    Ok(Some(by!(t, &label, pump_dissipation::dissipation(lost, rho, volume))?))
}

/// The best that a small pump does; where head and flow ask for more of the shaft's power, one of the figures is wrong.
const MOST_EFFICIENT: f64 = 0.9;
