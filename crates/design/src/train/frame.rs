//! The frame of a unit: the dimensions that are given, stated or chosen; all else follows.

use super::assumed::Assumed;
use crate::basis::stated::{standby, stated};
use crate::enquiry::fields::Text;
use crate::enquiry::keys::Quantity;
use crate::enquiry::range::{Model, OutletControl};
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, assume, given};
use crate::record;
use stillrise_handbook::hydraulics::pipes::pipe_size;
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_units::catalog::{DEG, FT_MIN, GPM, IN, KG, KG_M3, LB, M3_H, MIL, MM, MM_S, PERCENT, UM};
use stillrise_units::{Angle, Density, Flow, Length, Mass, Ratio, Typed, Velocity, ratio};

record! {
    /// The dimensions from which a rectangular above-ground unit is laid out. Elevations are above the floor.
    Frame {
        /// inside length
        length: Length;
        /// inside width
        width: Length;
        /// height of the walls
        height: Length;
        /// what holds the water level
        control: OutletControl;
        /// level that stands in the clear well without flow
        crest: Length;
        /// length of the outlet weir; the width of the unit without one
        weir_length: Length;
        /// invert of the outlet pipe
        outlet_invert: Length;
        /// bore of the outlet pipe
        outlet_bore: Length;
        /// invert of the inlet nozzle
        inlet_invert: Length;
        /// bore of the inlet nozzle
        inlet_bore: Length;
        /// length of the inlet chamber
        inlet_length: Length;
        /// open share of the diffusion baffle
        baffle_open: Ratio;
        /// length of the hopper at the floor
        hopper_length: Length;
        /// length of the hopper's bottom
        hopper_bottom: Length;
        /// depth of the hopper
        hopper_depth: Length;
        /// length of the pack
        pack_length: Length;
        /// height of the pack
        pack_height: Length;
        /// underside of the pack
        pack_bottom: Length;
        /// clear gap between plates
        gap: Length;
        /// thickness of a plate
        plate: Length;
        /// angle of the plates to the horizontal
        angle: Angle;
        /// how the water runs through them
        run: PlateRun;
        /// thickness of the mesh; zero without one
        mesh: Length;
        /// fibre of the mesh
        mesh_fibre: Length;
        /// share of the mesh that is fibre
        mesh_solidity: Ratio;
        /// length of the oil retention zone
        retention_length: Length;
        /// length of the clear well
        well_length: Length;
        /// lip of the downcomer
        lip: Length;
        /// elevation of the oil draw-off
        oil_draw: Length;
        /// density of the level float
        float_density: Density;
    }
}

/// What a range row says beyond the frame.
#[derive(Debug, Clone, Default)]
pub struct Particulars {
    /// Designation.
    pub model: String,
    /// Nominal sizes of inlet and outlet.
    pub nozzles: (String, String),
    /// Flow on the name plate and its basis.
    pub rated: Option<(Val<Flow>, String)>,
    /// Weight empty.
    pub empty_weight: Option<Val<Mass>>,
    /// Weight of the heaviest module of the pack.
    pub module_weight: Option<Val<Mass>>,
    /// Modules of the pack.
    pub modules: Option<u32>,
    /// Whether they lift out from above.
    pub lifts_out: Option<bool>,
    /// Shipping length, width, height.
    pub shipping: Option<[Val<Length>; 3]>,
    /// Price and currency.
    pub price: Option<(f64, String)>,
    /// Delivery time.
    pub lead_time: Option<String>,
    /// Material.
    pub material: Option<String>,
    /// Measured results.
    pub measured: Option<String>,
    /// Measured on the mesh: size, and share it catches.
    pub mesh_curve: Option<Val<Series>>,
    /// Velocity on its face above which it was measured to let collected oil go.
    pub mesh_velocity_limit: Option<Val<Velocity>>,
    /// Whether a row of a range or the enquiry describes the unit; else it is made to measure.
    pub described: bool,
    /// Keys that the description leaves out and a rule would look at; where a value is needed, a usual one stands in.
    pub left_out: Vec<&'static str>,
}

const L: Pair = (&IN, &MM);

/// A dimension as it is stated. One that says more than its number (who said so, how far it may be off, another claim)
/// is taken up by its own key; a plain one is given by the row or block as a whole.
fn laid<T: Trail, Q: Typed>(
    t: &mut T,
    w: &WhatIf,
    label: &str,
    units: Pair,
    key: &Quantity<Q>,
    source: &str,
) -> Option<Val<Q>> {
    let claim = key.claim()?;
    if claim.from.is_some() || claim.range.is_some() || key.is_contradicted() {
        return stated(t, w, label, key);
    }
    Some(given(t, label, Some(units), Q::from_si(claim.written.si()), source, &claim.written.text))
}

/// Lays the frame from a row of a range, or from stated dimensions and what is assumed of the rest.
///
/// # Errors
/// [`Stop`] naming the dimension that is missing.
pub fn frame<T: Trail>(t: &mut T, w: &WhatIf, m: &Model, assumed: &Assumed, source: &str) -> Result<Frame, Stop> {
    let name = m.model.0.clone().unwrap_or_else(|| "stated unit".to_owned());
    t.section(format_args!("unit {name}"));
    let mut need = |label: &str, key: &Quantity<Length>| {
        assumed
            .get(label)
            .or_else(|| laid(t, w, label, L, key, source))
            .ok_or_else(|| Stop::said(format!("unit {name}"), format!("{label} is not stated")))
    };
    let length = need("inside length", &m.length)?;
    let width = need("inside width", &m.width)?;
    let height = need("height of the walls", &m.height)?;
    let inlet_invert = need("invert of the inlet nozzle", &m.inlet_invert)?;
    let inlet_length = need("length of the inlet chamber", &m.inlet_length)?;
    let pack_length = need("length of the pack", &m.pack_length)?;
    let pack_height = need("height of the pack", &m.pack_height)?;
    let pack_bottom = need("underside of the pack", &m.pack_bottom)?;
    let gap = need("clear gap between plates", &m.gap)?;
    let retention_length = need("length of the oil retention zone", &m.retention_length)?;
    let well_length = need("length of the clear well", &m.well_length)?;
    let lip = need("lip of the downcomer", &m.lip)?;
    let outlet_invert = need("invert of the outlet pipe", &m.outlet_invert)?;
    let weir_crest = laid(t, w, "crest of the weir", L, &m.weir_crest, source);
    let control = m.control.0.unwrap_or(if weir_crest.is_some() { OutletControl::Weir } else { OutletControl::Pipe });
    let control = given(t, "what holds the water level", None, control, &m.control.1.source(source), control.word());
    let crest = match (control.q, weir_crest) {
        (OutletControl::Weir, Some(crest)) => crest,
        _ => outlet_invert,
    };
    let bore = |t: &mut T, label: &str, pipe: &Text| {
        pipe.as_deref()
            .and_then(pipe_size)
            .map(|row| given(t, label, Some(L), row.inside(), &pipe.1.source(source), row.word))
            .or_else(|| assumed.get(label))
            .ok_or_else(|| Stop::said(format!("unit {name}"), format!("{label} is not stated")))
    };
    let outlet_bore = bore(t, "bore of the outlet pipe", &m.outlet_pipe)?;
    let inlet_bore = bore(t, "bore of the inlet nozzle", &m.inlet_pipe)?;
    let optional = |t: &mut T, label: &str, key: &Quantity<Length>, default: Length, why: &str| {
        laid(t, w, label, L, key, source).unwrap_or_else(|| given(t, label, Some(L), default, source, why))
    };
    let zero = Length::from_si(0.0);
    let weir_length =
        optional(t, "length of the outlet weir", &m.weir_length, width.q, "not stated: the width of the unit");
    let hopper_length = optional(t, "length of the hopper", &m.hopper_length, zero, "not stated: no hopper");
    let hopper_bottom = optional(t, "bottom length of the hopper", &m.hopper_bottom, zero, "not stated");
    let hopper_depth = optional(t, "depth of the hopper", &m.hopper_depth, zero, "not stated: no hopper");
    let mesh = optional(t, "thickness of the mesh", &m.mesh, zero, "not stated: no mesh");
    let mesh_fibre = match laid(t, w, "fibre of the mesh", (&MIL, &MM), &m.mesh_fibre, source) {
        Some(value) => value,
        None => given(
            t,
            "fibre of the mesh",
            Some((&MIL, &MM)),
            Length::of(0.28, &MM),
            source,
            "not stated: 0.28 mm, common for knitted mesh",
        ),
    };
    let mesh_solidity = match laid(t, w, "solid share of the mesh", (&PERCENT, &PERCENT), &m.mesh_solidity, source) {
        Some(value) => value,
        None => given(
            t,
            "solid share of the mesh",
            Some((&PERCENT, &PERCENT)),
            ratio(0.03),
            source,
            "not stated: 3 %, common for knitted mesh",
        ),
    };
    let plate = optional(t, "thickness of a plate", &m.plate, Length::of(1.0, &MM), "not stated: 1 mm");
    let angle = match assumed.angle.or_else(|| laid(t, w, "angle of the plates", (&DEG, &DEG), &m.angle, source)) {
        Some(value) => value,
        None => {
            return Err(Stop::said(format!("unit {name}"), "angle of the plates is not stated"));
        }
    };
    let run = m.run.0.unwrap_or(PlateRun::CrossFlow);
    let run = given(t, "how the water runs through the plates", None, run, &m.run.1.source(source), run.word());
    let baffle_open =
        match laid(t, w, "open share of the diffusion baffle", (&PERCENT, &PERCENT), &m.baffle_open, source) {
            Some(value) => value,
            None => assume(
                t,
                w,
                standby(
                    "open share of the diffusion baffle",
                    (&PERCENT, &PERCENT),
                    "unit.baffle_open",
                    "",
                    (ratio(0.03), ratio(0.05), ratio(0.10)),
                    "from memory: 3 to 7 % of the section for slotted baffles",
                ),
            ),
        };
    let oil_draw = optional(
        t,
        "elevation of the oil draw-off",
        &m.oil_draw,
        crest.q - Length::of(1.0, &IN),
        "not stated: 1 in below the crest",
    );
    let float_density = match laid(t, w, "density of the level float", (&KG_M3, &KG_M3), &m.float_density, source) {
        Some(value) => value,
        None => given(
            t,
            "density of the level float",
            Some((&KG_M3, &KG_M3)),
            Density::from_si(930.0),
            source,
            "not stated: 930 kg/m3",
        ),
    };
    Ok(Frame {
        length,
        width,
        height,
        control,
        crest,
        weir_length,
        outlet_invert,
        outlet_bore,
        inlet_invert,
        inlet_bore,
        inlet_length,
        baffle_open,
        hopper_length,
        hopper_bottom,
        hopper_depth,
        pack_length,
        pack_height,
        pack_bottom,
        gap,
        plate,
        angle,
        run,
        mesh,
        mesh_fibre,
        mesh_solidity,
        retention_length,
        well_length,
        lip,
        oil_draw,
        float_density,
    })
}

/// The nominal size of a nozzle, in print.
fn size_of(word: &Option<String>) -> String {
    word.clone().unwrap_or_else(|| "not stated".to_owned())
}

/// The particulars of a row.
pub fn particulars<T: Trail>(t: &mut T, w: &WhatIf, m: &Model, currency: Option<&str>, source: &str) -> Particulars {
    let mass = |t: &mut T, label: &str, key: &Quantity<Mass>| laid(t, w, label, (&LB, &KG), key, source);
    let size = |t: &mut T, label: &str, key: &Quantity<Length>| laid(t, w, label, L, key, source);
    let shipping = match (
        size(t, "shipping length", &m.ship_length),
        size(t, "shipping width", &m.ship_width),
        size(t, "shipping height", &m.ship_height),
    ) {
        (Some(a), Some(b), Some(c)) => Some([a, b, c]),
        _ => None,
    };
    let rated = laid(t, w, "flow on the name plate", (&GPM, &M3_H), &m.rated_flow, source)
        .map(|flow| (flow, m.rated_basis.0.clone().unwrap_or_else(|| "basis not stated".to_owned())));
    let said = [
        ("float_density", m.float_density.is_given()),
        ("oil_draw", m.oil_draw.is_given()),
        ("rated_flow", m.rated_flow.is_given()),
    ];
    Particulars {
        model: m.model.0.clone().unwrap_or_else(|| "stated unit".to_owned()),
        nozzles: (size_of(&m.inlet_pipe), size_of(&m.outlet_pipe)),
        rated,
        empty_weight: mass(t, "weight empty", &m.empty_weight),
        module_weight: mass(t, "weight of the heaviest pack module", &m.module_weight),
        modules: m.pack_modules.0,
        lifts_out: m.pack_lifts_out.0,
        shipping,
        price: m.price.claim().map(|c| (c.written.value, currency.unwrap_or("").to_owned())),
        lead_time: m.lead_time.0.clone(),
        material: m.material.0.clone(),
        measured: m.measured.0.clone(),
        mesh_curve: m.mesh_curve.is_given().then(|| {
            let rows = m.mesh_curve.rows.clone();
            given(
                t,
                "measured curve of the mesh",
                Some((&UM, &UM)),
                rows,
                &m.mesh_curve.claims.source(source),
                &m.mesh_curve.text,
            )
        }),
        described: true,
        left_out: said.into_iter().filter(|(_, said)| !said).map(|(key, _)| key).collect(),
        mesh_velocity_limit: laid(
            t,
            w,
            "velocity on the mesh above which it lets oil go",
            (&FT_MIN, &MM_S),
            &m.mesh_velocity_limit,
            source,
        ),
    }
}
