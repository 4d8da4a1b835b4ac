//! Oil: neat cutting and spindle oil

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Neat cutting and spindle oil.
pub static OIL: Oil = Oil {
    word: "spindle-oil",
    title: "Neat cutting and spindle oil",
    group: OilGroup::Lubricating,
    density_15: Spread::new(860.0, 880.0, 900.0, &KG_M3, &NOAA_OIL_DATA)
        .noted("record AD01033 has 880; ends by judgement"),
    viscosity: [(29.5, 38.0), (4.8, 100.0)],
    viscosity_source: &TEXTBOOK_OILS,
    viscosity_note: "29.5 mm2/s at 38 °C is record AD01033; the second point from memory",
    flash_c: Spread::new(76.0, 150.0, 200.0, &DEG_C, &NOAA_OIL_DATA)
        .noted("record AD01033 has 76 °C; the rest from memory"),
    interfacial_tension: Spread::new(3.4, 12.2, 18.6, &MN_M, &NOAA_OIL_DATA)
        .noted("3 lubricating oils with additives, 10 to 25 °C"),
    dissolved: Spread::new(0.1, 0.5, 2.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: Some(
        "Only the neat oil rises. Soluble (emulsifiable) cutting oil does not: see the chemical soluble-coolant.",
    ),
    sources: &[&NOAA_OIL_DATA, &TEXTBOOK_OILS],
};
