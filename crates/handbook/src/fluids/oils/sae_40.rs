//! Oil: engine oil SAE 40, single grade

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{NOAA_OIL_DATA, SAE_J300, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Engine oil SAE 40, single grade.
pub static OIL: Oil = Oil {
    word: "sae-40",
    title: "Engine oil SAE 40, single grade",
    group: OilGroup::Lubricating,
    density_15: Spread::new(880.0, 886.0, 900.0, &KG_M3, &NOAA_OIL_DATA)
        .noted("record AD02231 has 886; ends by judgement"),
    viscosity: [(145.0, 40.0), (15.0, 100.0)],
    viscosity_source: &NOAA_OIL_DATA,
    viscosity_note: "record AD02231; the grade is 12.5 to 16.3 mm2/s at 100 °C",
    flash_c: Spread::new(220.0, 250.0, 270.0, &DEG_C, &NOAA_OIL_DATA)
        .noted("record AD02231 has 270 °C; the rest from memory"),
    interfacial_tension: Spread::new(3.4, 12.2, 18.6, &MN_M, &NOAA_OIL_DATA)
        .noted("3 lubricating oils with additives, 10 to 25 °C"),
    dissolved: Spread::new(0.1, 0.5, 2.0, &MG_L, &TEXTBOOK_OILS)
        .noted("base oil; additives dissolve more, from memory"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: None,
    sources: &[&NOAA_OIL_DATA, &TEXTBOOK_OILS, &SAE_J300],
};
