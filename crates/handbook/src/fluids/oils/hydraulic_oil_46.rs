//! Oil: hydraulic oil ISO VG 46

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{ISO_3448, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Hydraulic oil ISO VG 46.
pub static OIL: Oil = Oil {
    word: "hydraulic-oil-46",
    title: "Hydraulic oil ISO VG 46",
    group: OilGroup::Lubricating,
    density_15: Spread::new(865.0, 875.0, 885.0, &KG_M3, &TEXTBOOK_OILS),
    viscosity: [(46.0, 40.0), (6.76, 100.0)],
    viscosity_source: &TEXTBOOK_OILS,
    viscosity_note: "40 °C by the grade, 41.4 to 50.6; 100 °C from a viscosity index of 95",
    flash_c: Spread::new(200.0, 220.0, 240.0, &DEG_C, &TEXTBOOK_OILS),
    interfacial_tension: Spread::new(20.0, 25.0, 30.0, &MN_M, &TEXTBOOK_OILS),
    dissolved: Spread::new(0.1, 0.5, 2.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: Some(
        "Grades with detergent take up water by design and emulsify; water-glycol hydraulic fluids dissolve wholly (from memory).",
    ),
    sources: &[&TEXTBOOK_OILS, &ISO_3448],
};
