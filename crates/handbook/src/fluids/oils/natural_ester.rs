//! Oil: natural ester insulating fluid

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{ASTM_D6871, ESTER_FIRE, PLANT_OIL_TENSION, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Natural ester insulating fluid.
pub static OIL: Oil = Oil {
    word: "natural-ester",
    title: "Natural ester insulating fluid",
    group: OilGroup::Ester,
    density_15: Spread::new(910.0, 920.0, 960.0, &KG_M3, &TEXTBOOK_OILS)
        .noted("960 is the most that the standard allows, as recalled"),
    viscosity: [(34.0, 40.0), (8.0, 100.0)],
    viscosity_source: &TEXTBOOK_OILS,
    viscosity_note: "the standard, as recalled, allows 50 and 15",
    flash_c: Spread::new(275.0, 330.0, 350.0, &DEG_C, &TEXTBOOK_OILS)
        .noted("330 °C flash, 360 °C fire point in trade data; the least allowed, 275 °C, as recalled"),
    interfacial_tension: Spread::new(23.0, 24.5, 26.0, &MN_M, &PLANT_OIL_TENSION)
        .noted("commercial vegetable oils; no measurement of the fluid in service"),
    dissolved: Spread::new(0.1, 1.0, 5.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: true,
    gravity_note: Some(
        "A vegetable oil: outside standards for mineral light liquids; it rises slowly, 40 % below mineral oil, and thickens in air.",
    ),
    sources: &[&TEXTBOOK_OILS, &PLANT_OIL_TENSION, &ASTM_D6871, &ESTER_FIRE],
};
