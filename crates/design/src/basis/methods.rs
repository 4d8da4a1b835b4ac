//! Methods and margins: chosen in the enquiry, or by default with a reason.

use super::stated::{self, standby, stated_or};
use super::waters;
use crate::enquiry::Enquiry;
use crate::provenance::{Trail, Val, WhatIf, given};
use crate::say;
use stillrise_handbook::page::Argument;
use stillrise_handbook::separation::api_factor::FactorRounding;
use stillrise_handbook::separation::gap_reynolds::ReynoldsBasis;
use stillrise_handbook::separation::grit_settling::GrainShape;
use stillrise_handbook::separation::remaining_oil::RiseLaw;
use stillrise_handbook::separation::tank_removal::TankModel;
use stillrise_handbook::vessel::triggers::{Trigger, trigger};
use stillrise_units::catalog::{ONE, PERCENT, UM};
use stillrise_units::{Length, Ratio, Typed, ratio};

/// Methods and margins, chosen or by default.
#[derive(Debug, Clone)]
pub struct Methods {
    /// Law of rise.
    pub rise: Val<RiseLaw>,
    /// Separation in the tank ahead of the plates.
    pub tank: Val<TankModel>,
    /// Index of that model: tanks in series, or dispersion number.
    pub tank_index: Val<Ratio>,
    /// Whether the mesh counts in the headline.
    pub mesh_credit: Val<waters::YesNo>,
    /// Share of the droplets that touch a fibre of the mesh and stay.
    pub mesh_sticking: Val<Ratio>,
    /// Share of the mesh's voids that oil fills.
    pub mesh_saturation: Val<Ratio>,
    /// Rounding of the API factor.
    pub factor: Val<FactorRounding>,
    /// Basis of the gap Reynolds number.
    pub reynolds: Val<ReynoldsBasis>,
    /// Shape of grit.
    pub grains: Val<GrainShape>,
    /// Droplet for which plates are sized.
    pub droplet: Val<Length>,
    /// Unequal flow between the gaps.
    pub maldistribution: Val<Ratio>,
    /// Plate area lost at the end of the interval.
    pub fouling: Val<Ratio>,
    /// Reserve of plate area asked of a picked unit.
    pub reserve: Val<Ratio>,
    /// Share of the thickest permitted layer at which the alarm stands, if it was stated.
    pub alarm: Option<Val<Ratio>>,
    /// Rule for pumping out, if one was chosen.
    pub trigger: Option<&'static Trigger>,
}

fn method<T: Trail, C: Argument + Copy>(
    t: &mut T,
    label: &str,
    key: &str,
    stated: Option<C>,
    default: C,
    why: &str,
) -> Val<C> {
    match stated {
        Some(choice) => given(t, label, None, choice, key, "stated"),
        None => crate::provenance::choose(t, label, None, default, "the methods listed by the schema", why, &[]),
    }
}

/// Finds the methods.
pub fn methods<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Methods {
    t.section("methods");
    let m = &e.method;
    let percent = (&PERCENT, &PERCENT);
    Methods {
        rise: method(
            t,
            "law of rise",
            &say!(T, "{}", m.rise.1.source("method.rise")),
            m.rise.0,
            RiseLaw::Drag,
            "holds beyond creeping flow and joins Stokes' law below",
        ),
        tank: method(
            t,
            "separation ahead of the plates",
            &say!(T, "{}", m.tank.1.source("method.tank")),
            m.tank.0,
            TankModel::Mixed,
            "an inlet jet mixes the depth; the cautious end of the two bounds",
        ),
        tank_index: stated_or(t, w, &m.tank_index, || {
            standby(
                "index of the tank model",
                (&ONE, &ONE),
                "method.tank_index",
                "",
                (ratio(3.0), ratio(3.0), ratio(3.0)),
                "three tanks in series, a good basin by practice; used by the models that ask for it",
            )
        }),
        mesh_credit: method(
            t,
            "credit for the mesh",
            &say!(T, "{}", m.mesh_credit.1.source("method.mesh_credit")),
            m.mesh_credit.map(|credit| if credit { waters::YesNo::Yes } else { waters::YesNo::No }),
            waters::YesNo::No,
            "its fibre and how well droplets stick are rarely stated, and move its catch several times over",
        ),
        mesh_sticking: stated_or(t, w, &m.mesh_sticking, || {
            standby(
                "droplets that touch a fibre and stay",
                percent,
                "method.mesh_sticking",
                "",
                (ratio(0.1), ratio(0.5), ratio(1.0)),
                "engineering judgement; a value of 1 is the ideal fibre, detergents keep droplets from sticking",
            )
        }),
        mesh_saturation: stated_or(t, w, &m.mesh_saturation, || {
            standby(
                "share of the mesh's voids that oil fills",
                percent,
                "method.mesh_saturation",
                "",
                (ratio(0.05), ratio(0.15), ratio(0.3)),
                "published tests on felt found 10 to 15 % of oil to work best",
            )
        }),
        factor: method(
            t,
            "rounding of the API factor",
            &say!(T, "{}", m.factor.1.source("method.factor")),
            m.factor.0,
            FactorRounding::ALL[0],
            "the product, unrounded",
        ),
        reynolds: method(
            t,
            "basis of the gap Reynolds number",
            &say!(T, "{}", m.reynolds.1.source("method.reynolds")),
            m.reynolds.0,
            ReynoldsBasis::ALL[0],
            "four times the hydraulic radius, the stricter reading of a limit of 500",
        ),
        grains: method(
            t,
            "shape of grit",
            &say!(T, "{}", m.grains.1.source("method.grains")),
            m.grains.0,
            GrainShape::Natural,
            "natural grains by sieve size",
        ),
        droplet: stated_or(t, w, &m.droplet, || {
            standby(
                "droplet for which the plates are sized",
                (&UM, &UM),
                "method.droplet",
                "",
                (Length::of(20.0, &UM), Length::of(60.0, &UM), Length::of(150.0, &UM)),
                "60 µm is usual for plates (MIL-HDBK-1005/16, 1997); 20 µm in US guide specifications, 150 µm for API basins",
            )
        }),
        maldistribution: stated_or(t, w, &m.maldistribution, || {
            standby(
                "unequal flow between the gaps",
                percent,
                "method.maldistribution",
                "",
                (ratio(0.1), ratio(0.2), ratio(0.4)),
                "engineering judgement: halves of the pack at ±20 % of the mean",
            )
        }),
        fouling: stated_or(t, w, &m.fouling, || {
            standby(
                "plate area lost at the end of the interval",
                percent,
                "method.fouling",
                "",
                (ratio(0.1), ratio(0.2), ratio(0.4)),
                "engineering judgement, of the size of the 20 % that UFGS 44 42 53 takes off the separation volume for stored oil and solids",
            )
        }),
        reserve: stated_or(t, w, &m.reserve, || {
            standby(
                "reserve of plate area",
                percent,
                "method.reserve",
                "",
                (ratio(0.0), ratio(0.15), ratio(0.3)),
                "our proposal",
            )
        }),
        alarm: stated::stated(t, w, "alarm, share of the thickest permitted layer", &m.alarm),
        trigger: m.trigger.as_deref().and_then(trigger),
    }
}
