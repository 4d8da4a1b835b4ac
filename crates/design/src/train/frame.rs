//! The frame of a unit: the dimensions that are given, stated or chosen; all else follows.

use super::assumed::Assumed;
use crate::basis::stated::standby;
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

/// Lays the frame from a row of a range, or from stated dimensions and what is assumed of the rest.
///
/// # Errors
/// [`Stop`] naming the dimension that is missing.
pub fn frame<T: Trail>(t: &mut T, w: &WhatIf, m: &Model, assumed: &Assumed, source: &str) -> Result<Frame, Stop> {
    let name = m.model.clone().unwrap_or_else(|| "stated unit".to_owned());
    t.section(format_args!("unit {name}"));
    let mut need = |label: &str, key: &crate::enquiry::keys::Quantity<Length>| {
        assumed
            .get(label)
            .or_else(|| {
                key.claim().map(|c| given(t, label, Some(L), Length::from_si(c.written.si()), source, &c.written.text))
            })
            .ok_or_else(|| Stop {
                doing: format!("unit {name}"),
                reason: format!("{label} is not stated"),
                formula: false,
            })
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
    let weir_crest = m
        .weir_crest
        .claim()
        .map(|c| given(t, "crest of the weir", Some(L), Length::from_si(c.written.si()), source, &c.written.text));
    let control = m.control.0.unwrap_or(if weir_crest.is_some() { OutletControl::Weir } else { OutletControl::Pipe });
    let control = given(t, "what holds the water level", None, control, source, control.word());
    let crest = match (control.q, weir_crest) {
        (OutletControl::Weir, Some(crest)) => crest,
        _ => outlet_invert,
    };
    let bore = |t: &mut T, label: &str, word: Option<&str>| {
        word.and_then(pipe_size)
            .map(|row| given(t, label, Some(L), row.inside(), source, row.word))
            .or_else(|| assumed.get(label))
            .ok_or_else(|| Stop {
                doing: format!("unit {name}"),
                reason: format!("{label} is not stated"),
                formula: false,
            })
    };
    let outlet_bore = bore(t, "bore of the outlet pipe", m.outlet_pipe.as_deref())?;
    let inlet_bore = bore(t, "bore of the inlet nozzle", m.inlet_pipe.as_deref())?;
    let optional =
        |t: &mut T, label: &str, key: &crate::enquiry::keys::Quantity<Length>, default: Length, why: &str| match key
            .claim()
        {
            Some(c) => given(t, label, Some(L), Length::from_si(c.written.si()), source, &c.written.text),
            None => given(t, label, Some(L), default, source, why),
        };
    let zero = Length::from_si(0.0);
    let weir_length =
        optional(t, "length of the outlet weir", &m.weir_length, width.q, "not stated: the width of the unit");
    let hopper_length = optional(t, "length of the hopper", &m.hopper_length, zero, "not stated: no hopper");
    let hopper_bottom = optional(t, "bottom length of the hopper", &m.hopper_bottom, zero, "not stated");
    let hopper_depth = optional(t, "depth of the hopper", &m.hopper_depth, zero, "not stated: no hopper");
    let mesh = optional(t, "thickness of the mesh", &m.mesh, zero, "not stated: no mesh");
    let mesh_fibre = match m.mesh_fibre.claim() {
        Some(c) => {
            given(t, "fibre of the mesh", Some((&MIL, &MM)), Length::from_si(c.written.si()), source, &c.written.text)
        }
        None => given(
            t,
            "fibre of the mesh",
            Some((&MIL, &MM)),
            Length::of(0.28, &MM),
            source,
            "not stated: 0.28 mm, common for knitted mesh",
        ),
    };
    let mesh_solidity = match m.mesh_solidity.claim() {
        Some(c) => given(
            t,
            "solid share of the mesh",
            Some((&PERCENT, &PERCENT)),
            ratio(c.written.si()),
            source,
            &c.written.text,
        ),
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
    let angle = match (m.angle.claim(), assumed.angle) {
        (_, Some(angle)) => angle,
        (Some(c), None) => {
            given(t, "angle of the plates", Some((&DEG, &DEG)), Angle::from_si(c.written.si()), source, &c.written.text)
        }
        (None, None) => {
            return Err(Stop {
                doing: format!("unit {name}"),
                reason: "angle of the plates is not stated".to_owned(),
                formula: false,
            });
        }
    };
    let run = m.run.0.unwrap_or(PlateRun::CrossFlow);
    let run = given(t, "how the water runs through the plates", None, run, source, run.word());
    let baffle_open = match m.baffle_open.claim() {
        Some(c) => given(
            t,
            "open share of the diffusion baffle",
            Some((&PERCENT, &PERCENT)),
            ratio(c.written.si()),
            source,
            &c.written.text,
        ),
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
    let float_density = match m.float_density.claim() {
        Some(c) => given(
            t,
            "density of the level float",
            Some((&KG_M3, &KG_M3)),
            Density::from_si(c.written.si()),
            source,
            &c.written.text,
        ),
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
pub fn particulars<T: Trail>(t: &mut T, m: &Model, currency: Option<&str>, source: &str) -> Particulars {
    let mass = |t: &mut T, label: &str, key: &crate::enquiry::keys::Quantity<Mass>| {
        key.claim().map(|c| given(t, label, Some((&LB, &KG)), Mass::from_si(c.written.si()), source, &c.written.text))
    };
    let size = |t: &mut T, label: &str, key: &crate::enquiry::keys::Quantity<Length>| {
        key.claim().map(|c| given(t, label, Some(L), Length::from_si(c.written.si()), source, &c.written.text))
    };
    let shipping = match (
        size(t, "shipping length", &m.ship_length),
        size(t, "shipping width", &m.ship_width),
        size(t, "shipping height", &m.ship_height),
    ) {
        (Some(a), Some(b), Some(c)) => Some([a, b, c]),
        _ => None,
    };
    let rated = m.rated_flow.claim().map(|c| {
        let flow = given(
            t,
            "flow on the name plate",
            Some((&GPM, &M3_H)),
            Flow::from_si(c.written.si()),
            source,
            &c.written.text,
        );
        (flow, m.rated_basis.clone().unwrap_or_else(|| "basis not stated".to_owned()))
    });
    let said = [
        ("float_density", m.float_density.is_given()),
        ("oil_draw", m.oil_draw.is_given()),
        ("rated_flow", m.rated_flow.is_given()),
    ];
    Particulars {
        model: m.model.clone().unwrap_or_else(|| "stated unit".to_owned()),
        nozzles: (size_of(&m.inlet_pipe), size_of(&m.outlet_pipe)),
        rated,
        empty_weight: mass(t, "weight empty", &m.empty_weight),
        module_weight: mass(t, "weight of the heaviest pack module", &m.module_weight),
        modules: m.pack_modules,
        lifts_out: m.pack_lifts_out,
        shipping,
        price: m.price.claim().map(|c| (c.written.value, currency.unwrap_or("").to_owned())),
        lead_time: m.lead_time.clone(),
        material: m.material.clone(),
        measured: m.measured.clone(),
        mesh_curve: m.mesh_curve.is_given().then(|| {
            let rows = m.mesh_curve.rows.clone();
            given(t, "measured curve of the mesh", Some((&UM, &UM)), rows, source, &m.mesh_curve.text)
        }),
        mesh_velocity_limit: m.mesh_velocity_limit.claim().map(|c| {
            let limit = Velocity::from_si(c.written.si());
            let units = Some((&FT_MIN, &MM_S) as Pair);
            given(t, "velocity on the mesh above which it lets oil go", units, limit, source, &c.written.text)
        }),
        described: true,
        left_out: said.into_iter().filter(|(_, said)| !said).map(|(key, _)| key).collect(),
    }
}
