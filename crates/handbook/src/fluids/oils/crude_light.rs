//! Oil: crude oil, light

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Crude oil, light.
pub static OIL: Oil = Oil {
    word: "crude-light",
    title: "Crude oil, light",
    group: OilGroup::Crude,
    density_15: Spread::new(800.0, 847.0, 855.0, &KG_M3, &NOAA_OIL_DATA)
        .noted("record EC00736 has 847; ends by judgement"),
    viscosity: [(22.33, 0.0), (10.16, 15.0)],
    viscosity_source: &NOAA_OIL_DATA,
    viscosity_note: "record EC00736, 19.187 mPa s over 859.4 kg/m3 and 8.6133 over 847.37",
    flash_c: Spread::new(-40.0, -20.0, -10.0, &DEG_C, &NOAA_OIL_DATA)
        .noted("record below -10 °C; the rest from memory"),
    interfacial_tension: Spread::new(15.8, 23.9, 31.6, &MN_M, &NOAA_OIL_DATA)
        .noted("tenth, half and nine tenths of 106 crudes; record EC00736 has 15.8"),
    dissolved: Spread::new(10.0, 20.0, 40.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: Some("Waxy crudes set in cold water; asphaltenes hold emulsions."),
    sources: &[&NOAA_OIL_DATA, &TEXTBOOK_OILS],
};
