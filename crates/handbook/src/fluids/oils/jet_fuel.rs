//! Oil: jet fuel A and A-1, kerosene

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{ASTM_D1655, NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Jet fuel A and A-1, kerosene.
pub static OIL: Oil = Oil {
    word: "jet-fuel",
    title: "Jet fuel A and A-1, kerosene",
    group: OilGroup::Jet,
    density_15: Spread::new(775.0, 810.0, 840.0, &KG_M3, &ASTM_D1655).noted("limits of the grade; a record has 816"),
    viscosity: [(2.1, 0.0), (1.6, 15.0)],
    viscosity_source: &NOAA_OIL_DATA,
    viscosity_note: "records AD00412 and AD02193",
    flash_c: Spread::new(38.0, 42.0, 54.0, &DEG_C, &NOAA_OIL_DATA)
        .noted("38 °C is the least that the specification allows"),
    interfacial_tension: Spread::new(18.2, 37.0, 50.0, &MN_M, &NOAA_OIL_DATA)
        .noted("typical: record of jet fuel; ends: 14 distillate fuels"),
    dissolved: Spread::new(3.0, 8.0, 20.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: None,
    sources: &[&ASTM_D1655, &NOAA_OIL_DATA, &TEXTBOOK_OILS],
};
