//! What a range row says of a unit beyond its dimensions: rating, weights, price, delivery.

use super::row::{DIMENSION, Row};
use crate::enquiry::keys::Quantity;
use crate::provenance::{Trail, Val};
use crate::reckon;
use stillrise_units::catalog::{GPM, KG, LB, M3_H};
use stillrise_units::{Flow, Length, Mass};

/// What a range row says beyond its dimensions.
#[derive(Debug, Clone, Default)]
pub struct Particulars {
    /// Designation.
    pub model: String,
    /// Nominal sizes of inlet and outlet.
    pub nozzles: (String, String),
    /// Nominal sizes of oil draw-off and sludge drain, where stated.
    pub drains: (Option<String>, Option<String>),
    /// Rating and facing of its flanges.
    pub flanges: Option<String>,
    /// Coating or lining.
    pub coating: Option<String>,
    /// Material of the plates.
    pub plate_material: Option<String>,
    /// Flow on the name plate and its basis.
    pub rated: Option<(Val<Flow>, String)>,
    /// Weight empty.
    pub empty_weight: Option<Val<Mass>>,
    /// Weight of the heaviest module of the pack.
    pub module_weight: Option<Val<Mass>>,
    /// Thickness of the walls, as stated.
    pub wall: Option<Val<Length>>,
    /// Thickness of the steel alone, where that is stated apart.
    pub steel: Option<Val<Length>>,
    /// Greatest distance of the stiffeners of a wall.
    pub stiffener_spacing: Option<Val<Length>>,
    /// Whether the rim is stiff.
    pub stiff_rim: Option<bool>,
    /// Modules of the pack.
    pub modules: Option<u32>,
    /// Length and width of a module.
    pub module: Option<[Val<Length>; 2]>,
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
    /// Whether a row of a range or the enquiry describes the unit; else it is made to measure.
    pub described: bool,
    /// Keys that the description leaves out and a rule would look at; where a value is needed, a usual one stands in.
    pub left_out: Vec<&'static str>,
}

/// The nominal size of a nozzle, in print.
fn size_of(word: &Option<String>) -> String {
    word.clone().unwrap_or_else(|| "not stated".to_owned())
}

/// The particulars of a row.
pub fn particulars<T: Trail>(row: &mut Row<'_, T>, currency: Option<&str>) -> Particulars {
    let m = row.m;
    let mut size = |label: &str, key: &Quantity<Length>| row.laid(label, DIMENSION, key);
    let shipping = match (
        size("shipping length", &m.ship_length),
        size("shipping width", &m.ship_width),
        size("shipping height", &m.ship_height),
    ) {
        (Some(a), Some(b), Some(c)) => Some([a, b, c]),
        _ => None,
    };
    // What options add to the length is carried along.
    let taken = [
        (row.options.sand_trap, &m.stages.sand_trap.length, "length of the sand compartment"),
        (row.options.pump_out, &m.stages.pump_out.length, "length of the pump-out compartment"),
    ];
    let mut shipping = shipping;
    for (taken, key, label) in taken {
        let Some([length, ..]) = shipping.as_mut().filter(|_| taken) else { continue };
        if let Some(more) = row.laid(label, DIMENSION, key) {
            *length = reckon!(row.t, "shipping length, options included", [IN, MM], (length = *length, more = more) length + more);
        }
    }
    let module = match (
        row.laid("length of a module of the pack", DIMENSION, &m.stages.pack.module_length),
        row.laid("width of a module of the pack", DIMENSION, &m.stages.pack.module_width),
    ) {
        (Some(length), Some(width)) => Some([length, width]),
        _ => None,
    };
    let rated = row
        .laid("flow on the name plate", (&GPM, &M3_H), &m.rated_flow)
        .map(|flow| (flow, m.rated_basis.0.clone().unwrap_or_else(|| "basis not stated".to_owned())));
    let said = [
        ("float_density", m.stages.retention.float_density.is_given()),
        ("oil_draw", m.stages.retention.oil_draw.is_given()),
        ("rated_flow", m.rated_flow.is_given()),
    ];
    Particulars {
        model: m.model.0.clone().unwrap_or_else(|| "stated unit".to_owned()),
        nozzles: (size_of(&m.stages.inlet.pipe), size_of(&m.stages.outlet.pipe)),
        drains: (m.oil_draw_pipe.0.clone(), m.drain_pipe.0.clone()),
        flanges: m.flanges.0.clone(),
        coating: m.coating.0.clone(),
        plate_material: m.plate_material.0.clone(),
        rated,
        empty_weight: row.laid("weight empty", (&LB, &KG), &m.empty_weight),
        module_weight: row.laid("weight of the heaviest pack module", (&LB, &KG), &m.stages.pack.module_weight),
        wall: row.laid("thickness of the walls", DIMENSION, &m.wall),
        steel: row.laid("thickness of the steel", DIMENSION, &m.steel),
        stiffener_spacing: row.laid("distance of the stiffeners", DIMENSION, &m.stiffener_spacing),
        stiff_rim: *m.stiff_rim,
        modules: m.stages.pack.modules.0,
        module,
        lifts_out: m.stages.pack.lifts_out.0,
        shipping,
        price: m.price.claim().map(|c| (c.written.value, currency.unwrap_or("").to_owned())),
        lead_time: m.lead_time.0.clone(),
        material: m.material.0.clone(),
        measured: m.measured.0.clone(),
        described: true,
        left_out: said.into_iter().filter(|(_, said)| !said).map(|(key, _)| key).collect(),
    }
}
