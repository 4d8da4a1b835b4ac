//! Oil: engine oil, new

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Engine oil, new.
pub static OIL: Oil = Oil {
    word: "engine-oil",
    title: "Engine oil, new",
    group: OilGroup::Lubricating,
    density_15: Spread::new(870.0, 878.0, 890.0, &KG_M3, &NOAA_OIL_DATA)
        .noted("record AD00697 has 877; ends by judgement"),
    viscosity: [(66.0, 40.0), (10.0, 100.0)],
    viscosity_source: &NOAA_OIL_DATA,
    viscosity_note: "record AD00697",
    flash_c: Spread::new(149.0, 200.0, 220.0, &DEG_C, &NOAA_OIL_DATA)
        .noted("records 149 to 200; the high end from memory"),
    interfacial_tension: Spread::new(3.4, 12.2, 18.6, &MN_M, &NOAA_OIL_DATA)
        .noted("3 lubricating oils with additives, 10 to 25 °C"),
    dissolved: Spread::new(0.1, 0.5, 2.0, &MG_L, &TEXTBOOK_OILS)
        .noted("base oil; additives dissolve more, from memory"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: Some("Detergent and dispersant additives keep fine drops apart."),
    sources: &[&NOAA_OIL_DATA, &TEXTBOOK_OILS],
};
