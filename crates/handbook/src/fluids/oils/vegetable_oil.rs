//! Oil: vegetable oil, soybean

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{NOAA_OIL_DATA, PLANT_OIL_TENSION, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Vegetable oil, soybean.
pub static OIL: Oil = Oil {
    word: "vegetable-oil",
    title: "Vegetable oil, soybean",
    group: OilGroup::Ester,
    density_15: Spread::new(910.0, 923.0, 926.0, &KG_M3, &NOAA_OIL_DATA)
        .noted("soybean, record AD02348, has 923; canola, record AD02404, 915; ends by judgement"),
    viscosity: [(79.1, 15.0), (52.4, 25.0)],
    viscosity_source: &NOAA_OIL_DATA,
    viscosity_note: "record AD02348, from 73 and 48 mPa s; canola has 82.5 mm2/s at 19 °C",
    flash_c: Spread::new(280.0, 310.0, 330.0, &DEG_C, &TEXTBOOK_OILS)
        .noted("the record prints 100 °C, which is doubtful"),
    interfacial_tension: Spread::new(10.5, 23.0, 26.0, &MN_M, &NOAA_OIL_DATA)
        .noted("records 10.5 and 22.1; commercial oils 23 to 26"),
    dissolved: Spread::new(0.1, 1.0, 5.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: true,
    gravity_note: Some(
        "A grease interceptor's duty, not that of a separator for mineral oil: it turns rancid, sets and feeds bacteria.",
    ),
    sources: &[&NOAA_OIL_DATA, &TEXTBOOK_OILS, &PLANT_OIL_TENSION],
};
