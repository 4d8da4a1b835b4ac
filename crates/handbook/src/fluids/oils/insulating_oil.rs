//! Oil: mineral insulating oil of transformers

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{IEC_60296, NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Mineral insulating oil of transformers.
pub static OIL: Oil = Oil {
    word: "insulating-oil",
    title: "Mineral insulating oil of transformers",
    group: OilGroup::Lubricating,
    density_15: Spread::new(860.0, 876.0, 895.0, &KG_M3, &NOAA_OIL_DATA)
        .noted("records 870 to 882; the standard allows 895 at 20 °C"),
    viscosity: [(19.5, 15.0), (9.3, 35.0)],
    viscosity_source: &NOAA_OIL_DATA,
    viscosity_note: "record AD02098, from 17 and 8 mPa s; the standard allows 12.0 mm2/s at 40 °C",
    flash_c: Spread::new(110.0, 145.0, 151.0, &DEG_C, &NOAA_OIL_DATA)
        .noted("records 110 to 151; the standard asks 135 °C closed cup"),
    interfacial_tension: Spread::new(20.0, 36.4, 47.0, &MN_M, &NOAA_OIL_DATA)
        .noted("record AD02098 at 0 °C has 36.4; new oil has 40 or more by the standard, aged oil falls to 20"),
    dissolved: Spread::new(0.1, 1.0, 5.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: None,
    sources: &[&NOAA_OIL_DATA, &TEXTBOOK_OILS, &IEC_60296],
};
