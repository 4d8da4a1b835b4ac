//! Oil: crude oil, medium

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Crude oil, medium.
pub static OIL: Oil = Oil {
    word: "crude-medium",
    title: "Crude oil, medium",
    group: OilGroup::Crude,
    density_15: Spread::new(855.0, 864.0, 890.0, &KG_M3, &NOAA_OIL_DATA)
        .noted("record EC02713 has 863.9; ends by judgement"),
    viscosity: [(20.5, 0.0), (11.6, 15.0)],
    viscosity_source: &NOAA_OIL_DATA,
    viscosity_note: "record EC02713, from 17.9 and 10 mPa s",
    flash_c: Spread::new(-30.0, -15.0, 10.0, &DEG_C, &TEXTBOOK_OILS),
    interfacial_tension: Spread::new(15.8, 21.3, 31.6, &MN_M, &NOAA_OIL_DATA)
        .noted("typical: record EC02713; ends: tenth and nine tenths of 106 crudes"),
    dissolved: Spread::new(10.0, 20.0, 40.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: Some("Waxy crudes set in cold water; asphaltenes hold emulsions."),
    sources: &[&NOAA_OIL_DATA, &TEXTBOOK_OILS],
};
