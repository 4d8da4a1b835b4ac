//! Oil: crude oil, medium sour

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Crude oil, medium sour.
pub static OIL: Oil = Oil {
    word: "crude-sour",
    title: "Crude oil, medium sour",
    group: OilGroup::Crude,
    density_15: Spread::new(865.0, 878.0, 900.0, &KG_M3, &NOAA_OIL_DATA)
        .noted("record AD02003 has 878; ends by judgement"),
    viscosity: [(16.0, 21.0), (9.0, 38.0)],
    viscosity_source: &NOAA_OIL_DATA,
    viscosity_note: "record AD02003",
    flash_c: Spread::new(-30.0, -13.0, 10.0, &DEG_C, &NOAA_OIL_DATA)
        .noted("record AD02003 has -13 °C; ends from memory"),
    interfacial_tension: Spread::new(15.8, 17.9, 31.6, &MN_M, &NOAA_OIL_DATA)
        .noted("typical: record AD02003 at 0 °C; ends: tenth and nine tenths of 106 crudes"),
    dissolved: Spread::new(10.0, 20.0, 40.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: Some("Waxy crudes set in cold water; hydrogen sulphide may be released."),
    sources: &[&NOAA_OIL_DATA, &TEXTBOOK_OILS],
};
