//! Oil: engine oil SAE 30, single grade

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{NOAA_OIL_DATA, SAE_30_TABLE, SAE_J300, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Engine oil SAE 30, single grade.
pub static OIL: Oil = Oil {
    word: "sae-30",
    title: "Engine oil SAE 30, single grade",
    group: OilGroup::Lubricating,
    density_15: Spread::new(875.0, 885.0, 912.0, &KG_M3, &TEXTBOOK_OILS)
        .noted("a measured oil had 881.5 at 20 °C, which is 885; the ends from memory, the high one an older textbook's at 15.6 °C"),
    viscosity: [(98.0, 40.0), (10.9, 100.0)],
    viscosity_source: &TEXTBOOK_OILS,
    viscosity_note: "100 °C: the middle of the grade, 9.3 to 12.5 mm2/s; 40 °C from a viscosity index of 95, from memory",
    flash_c: Spread::new(205.0, 225.0, 250.0, &DEG_C, &TEXTBOOK_OILS)
        .noted("open cup; two safety data sheets have 205 at least and above 232 °C; the rest from memory"),
    interfacial_tension: Spread::new(3.4, 12.2, 18.6, &MN_M, &NOAA_OIL_DATA)
        .noted("3 lubricating oils with additives, 10 to 25 °C; none known to be of this grade"),
    dissolved: Spread::new(0.1, 0.5, 2.0, &MG_L, &TEXTBOOK_OILS)
        .noted("base oil; additives dissolve more, from memory"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: Some("Detergent and dispersant additives, which most oils of this grade have, keep fine drops apart."),
    sources: &[&TEXTBOOK_OILS, &SAE_J300, &SAE_30_TABLE, &NOAA_OIL_DATA],
};
