//! Oil: gear oil, extreme pressure

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{NOAA_OIL_DATA, SAE_J306, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Gear oil, extreme pressure.
pub static OIL: Oil = Oil {
    word: "gear-oil",
    title: "Gear oil, extreme pressure",
    group: OilGroup::Lubricating,
    density_15: Spread::new(880.0, 890.0, 930.0, &KG_M3, &NOAA_OIL_DATA)
        .noted("record AD00695 has 890; 930 is the test oil of one separator standard"),
    viscosity: [(4550.0, 0.0), (1100.0, 15.0)],
    viscosity_source: &NOAA_OIL_DATA,
    viscosity_note: "record AD00695; between the grades SAE 90 and 140",
    flash_c: Spread::new(193.0, 220.0, 266.0, &DEG_C, &NOAA_OIL_DATA).noted("records 193 to 266"),
    interfacial_tension: Spread::new(3.4, 12.2, 18.6, &MN_M, &NOAA_OIL_DATA)
        .noted("record AD00695 has 3.4; the rest: lubricating oils with additives"),
    dissolved: Spread::new(0.1, 0.5, 2.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: Some("The densest of the common lubricants, with the lowest interfacial tension on record."),
    sources: &[&NOAA_OIL_DATA, &TEXTBOOK_OILS, &SAE_J306],
};
