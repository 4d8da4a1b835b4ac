//! Methods and margins: chosen in the enquiry, or by default with a reason.

use super::stated::{stated, stated_or_company, stated_or_usual};
use super::waters;
use crate::enquiry::Enquiry;
use crate::provenance::{Part, Trail, Val, WhatIf, Whence, given};
use stillrise_handbook::page::Argument;
use stillrise_handbook::separation::api_factor::FactorRounding;
use stillrise_handbook::separation::gap_reynolds::ReynoldsBasis;
use stillrise_handbook::separation::grit_settling::GrainShape;
use stillrise_handbook::separation::remaining_oil::RiseLaw;
use stillrise_handbook::separation::tank_removal::TankModel;
use stillrise_handbook::vessel::triggers::{Trigger, trigger};
use stillrise_units::{Length, Ratio};

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
    key: Option<Whence<'_>>,
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
    t.part(Part::Methods, "methods");
    let m = &e.method;
    let company = e.settings.as_ref().map(|settings| &settings.method);
    let credit = company.map(|own| own.mesh_credit()).filter(|own| m.mesh_credit.is_none() && own.said.is_some());
    Methods {
        rise: method(
            t,
            "law of rise",
            T::RECORDS.then(|| m.rise().source_by_path()),
            m.rise.0,
            RiseLaw::Drag,
            "holds beyond creeping flow and joins Stokes' law below",
        ),
        tank: method(
            t,
            "separation ahead of the plates",
            T::RECORDS.then(|| m.tank().source_by_path()),
            m.tank.0,
            TankModel::Mixed,
            "an inlet jet mixes the depth; the cautious end of the two bounds",
        ),
        tank_index: stated_or_usual(t, w, m.tank_index(), "index of the tank model"),
        mesh_credit: method(
            t,
            "credit for the mesh",
            T::RECORDS.then(|| credit.map_or_else(|| m.mesh_credit().source_by_path(), |own| own.by_settings())),
            m.mesh_credit
                .or(credit.and_then(|own| own.said.0))
                .map(|credit| if credit { waters::YesNo::Yes } else { waters::YesNo::No }),
            waters::YesNo::No,
            "its fibre and how well droplets stick are rarely stated, and move its catch several times over",
        ),
        mesh_sticking: stated_or_usual(t, w, m.mesh_sticking(), "droplets that touch a fibre and stay"),
        mesh_saturation: stated_or_usual(t, w, m.mesh_saturation(), "share of the mesh's voids that oil fills"),
        factor: method(
            t,
            "rounding of the API factor",
            T::RECORDS.then(|| m.factor().source_by_path()),
            m.factor.0,
            FactorRounding::ALL[0],
            "the product, unrounded",
        ),
        reynolds: method(
            t,
            "basis of the gap Reynolds number",
            T::RECORDS.then(|| m.reynolds().source_by_path()),
            m.reynolds.0,
            ReynoldsBasis::ALL[0],
            "four times the hydraulic radius, the stricter reading of a limit of 500",
        ),
        grains: method(
            t,
            "shape of grit",
            T::RECORDS.then(|| m.grains().source_by_path()),
            m.grains.0,
            GrainShape::Natural,
            "natural grains by sieve size",
        ),
        droplet: stated_or_usual(t, w, m.droplet(), "droplet for which the plates are sized"),
        maldistribution: stated_or_company(
            t,
            w,
            m.maldistribution(),
            company.map(|own| own.maldistribution()),
            "unequal flow between the gaps",
        ),
        fouling: stated_or_usual(t, w, m.fouling(), "plate area lost at the end of the interval"),
        reserve: stated_or_company(t, w, m.reserve(), company.map(|own| own.reserve()), "reserve of plate area"),
        alarm: stated(t, w, "alarm, share of the thickest permitted layer", &m.alarm),
        trigger: m.trigger.as_deref().and_then(trigger),
    }
}
