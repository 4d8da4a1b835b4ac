//! Basins and plates by a design droplet: API Publication 421, Washington State, New Zealand.

use super::basin::{At, Shape, basin};
use super::{Asked, Fluids, Inputs, Worksheet, gravity};
use crate::provenance::{Stop, Trail, Val, given};
use crate::{by, reckon, say};
use stillrise_handbook::separation::api_factor::FactorRounding;
use stillrise_handbook::separation::{
    forebay_area, gravity_rise, manual_plate_area, plate_area, residence_volume, rise_time, stokes_rise,
};
use stillrise_handbook::sources::{API_421, NZ_PETROLEUM, NZ_TP10, SWMMWW};
use stillrise_units::catalog::{CP, FT, GAL, KG_M3, L, LB_FT3, M, MPA_S, UM};
use stillrise_units::{Area, Density, Flow, KinematicViscosity, Length, Ratio, Typed, Velocity, Viscosity, Volume};

/// The design droplet of a method, by its source.
pub(super) fn droplet<T: Trail>(t: &mut T, sheet: &mut Worksheet, um: f64, source: &str) -> Val<Length> {
    let text = say!(T, "{um} µm");
    let d = given(t, "design droplet of the method", Some((&UM, &UM)), Length::of(um, &UM), source, &text);
    sheet.term("D", d)
}

fn rounding<T: Trail>(t: &mut T, rounding: FactorRounding, source: &str) -> Val<FactorRounding> {
    given(t, "rounding of the factor", None, rounding, source, rounding.word())
}

/// API Publication 421: a basin of parallel channels for droplets of 150 µm; plates for 60 µm.
pub(super) fn api<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    api_of(t, sheet, of.flow()?, of.fluids(), of.basis.methods.factor)
}

pub(super) fn api_of<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    flow: Val<Flow>,
    fluids: Fluids,
    factor: Val<FactorRounding>,
) -> Result<(), Stop> {
    let source = say!(T, "{API_421}");
    let flow = sheet.take("Q", flow);
    let d = droplet(t, sheet, 150.0, &source);
    let rise = by!(t, "rise of the design droplet", stokes_rise::rise(d, fluids.water, fluids.oil, fluids.viscosity))?;
    let rise = sheet.term("V_t", rise);
    let shape = Shape {
        least: Length::of(3.0, &FT),
        wide: 2.5,
        among: "{3 to 8 ft|0.914 to 2.44 m}, d/B 0.3 to 0.5",
        because: "two fifths of the width, and {3 ft|0.914 m} or more",
    };
    let found = basin(t, sheet, (flow, rise), &shape, factor, At::Own)?;
    let length = reckon!(t, "length of a channel, at least five widths", [FT, M], (l = found.by_factor, b = found.width) l.max(5.0 * b));
    sheet.term("L_5B", length);
    sheet.asked.extend([Asked::Surface(found.surface), Asked::Velocity(found.allowed)]);
    let fine = given(t, "droplet of plates", Some((&UM, &UM)), Length::of(60.0, &UM), &source, "60 µm");
    let fine = sheet.term("D_p", fine);
    let rise = by!(t, "rise of that droplet", stokes_rise::rise(fine, fluids.water, fluids.oil, fluids.viscosity))?;
    let rise = sheet.term("V_tp", rise);
    let plates = sheet.term("A_p", by!(t, "projected plate area", plate_area::area(flow, rise))?);
    sheet.asked.push(Asked::PlateArea(plates));
    Ok(())
}

/// Manual of Washington State: droplets of 60 µm in water of 32 °F, basin or plates.
pub(super) fn washington<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    let drained = of.basis.storm.as_ref().map(|storm| storm.area);
    washington_of(t, sheet, of.flow()?, of.fluids().oil, drained)
}

pub(super) fn washington_of<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    flow: Val<Flow>,
    oil: Val<Density>,
    drained: Option<Val<Area>>,
) -> Result<(), Stop> {
    let source = say!(T, "{SWMMWW}");
    let flow = sheet.take("Q", flow);
    let d = droplet(t, sheet, 60.0, &source);
    let kg = Some((&LB_FT3, &KG_M3));
    let water = given(t, "density of the water, 32 °F", kg, Density::of(999.0, &KG_M3), &source, "0.999 g/cm3");
    let water = sheet.term("rho_w", water);
    let oil = sheet.take("rho_o", oil);
    let mu = Viscosity::of(1.7921, &CP);
    let mu = given(t, "dynamic viscosity of the water, 32 °F", Some((&CP, &MPA_S)), mu, &source, "0.017921 poise");
    let mu = sheet.term("mu", mu);
    let rise = sheet.term("V_t", by!(t, "rise of the design droplet", stokes_rise::rise(d, water, oil, mu))?);
    let shape = Shape {
        least: Length::of(3.0, &FT),
        wide: 2.5,
        among: "{3 to 8 ft|0.914 to 2.44 m}, d/B 0.3 to 0.5",
        because: "two fifths of the width, and {3 ft|0.914 m} or more",
    };
    let factor = rounding(t, FactorRounding::Washington, &source);
    let found = basin(t, sheet, (flow, rise), &shape, factor, At::Allowed)?;
    let one = given(
        t,
        "density to which specific gravities are counted",
        kg,
        Density::of(1000.0, &KG_M3),
        &source,
        "1 g/cm3",
    );
    let s_w = reckon!(t, "specific gravity of the water", [ONE, ONE], (rho_w = water, rho_1 = one) rho_w / rho_1);
    let s_w = sheet.term("S_w", s_w);
    let s_o = reckon!(t, "specific gravity of the oil", [ONE, ONE], (rho_o = oil, rho_1 = one) rho_o / rho_1);
    let s_o = sheet.term("S_o", s_o);
    let plates = by!(t, "projected plate area", manual_plate_area::area(flow, s_w, s_o, mu))?;
    let plates = sheet.term("A_p", plates);
    sheet.asked.extend([Asked::Surface(found.surface), Asked::Velocity(found.allowed), Asked::PlateArea(plates)]);
    if let Some(drained) = drained {
        sheet.take("A", drained);
        sheet.term("A_f", by!(t, "surface of the forebay", forebay_area::area(drained))?);
    }
    sheet.remarks.push(
        "The manual prints a rise velocity of 0.033 ft/min at 10 °C for its own oil (recalled); worked here is that of the heaviest oil of this job in water at 32 °F.",
    );
    Ok(())
}

/// New Zealand guideline for petroleum sites: droplets of 60 µm in a small basin, and a spill held in each unit.
pub(super) fn new_zealand<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    let fluids = of.fluids();
    let s = gravity(t, fluids.oil, fluids.water);
    new_zealand_of(t, sheet, of.flow()?, s, fluids.kinematic)
}

pub(super) fn new_zealand_of<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    flow: Val<Flow>,
    s: Val<Ratio>,
    nu: Val<KinematicViscosity>,
) -> Result<(), Stop> {
    let source = say!(T, "{NZ_PETROLEUM}");
    let flow = sheet.take("Q", flow);
    let d = droplet(t, sheet, 60.0, &source);
    let s = sheet.term("S", s);
    let nu = sheet.take("nu", nu);
    let rise = sheet.term("V_t", by!(t, "rise of the design droplet", gravity_rise::rise(d, s, nu))?);
    let shape = Shape {
        least: Length::of(0.75, &M),
        wide: 2.0,
        among: "0.75 m or more, d/B 0.5",
        because: "half the width, and the 0.75 m of the guideline's retail site or more",
    };
    let factor = rounding(t, FactorRounding::Printed, &source);
    let found = basin(t, sheet, (flow, rise), &shape, factor, At::Own)?;
    let length = reckon!(t, "length of the separation bay", [FT, M], (a_h = found.surface, n = found.channels, b = found.width) a_h / (n * b));
    let length = sheet.term("L_H", length);
    let exit = Length::of(0.6, &M);
    let exit = given(t, "allowance for the exit", Some((&FT, &M)), exit, &source, "0.6 m in the retail example");
    let exit = sheet.term("L_e", exit);
    let whole = reckon!(t, "length with the exit", [FT, M], (l = length, l_e = exit) l + l_e);
    sheet.term("L_t", whole);
    let plates = sheet.term("A_p", by!(t, "projected plate area", plate_area::area(flow, rise))?);
    let spill = Volume::of(2500.0, &L);
    let spill = given(t, "spill to hold", Some((&GAL, &L)), spill, &say!(T, "{NZ_TP10}"), "2,500 L in each unit");
    let spill = sheet.term("V_spill", spill);
    sheet.asked.extend([
        Asked::Surface(found.surface),
        Asked::Velocity(found.allowed),
        Asked::PlateArea(plates),
        Asked::OilStore(spill),
    ]);
    sheet.remarks.extend([
        "The guideline reads the factor off a graph, 1.26 at a ratio of 2.55 in its retail example, where the line between the table's rows gives 1.27.",
        "Its retail example is shorter than five widths: there the rule of API 421 is not kept.",
    ]);
    Ok(())
}

/// Volume by rise through a depth: time, then volume.
pub(super) fn by_depth<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    flow: Val<Flow>,
    depth: Val<Length>,
    rise: Val<Velocity>,
) -> Result<Val<Volume>, Stop> {
    let time = sheet.term("t", by!(t, "time to rise through the depth", rise_time::time(depth, rise))?);
    Ok(sheet.term("V", by!(t, "volume of the water", residence_volume::volume(flow, time))?))
}
