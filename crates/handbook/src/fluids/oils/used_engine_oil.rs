//! Oil: engine oil, used

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Engine oil, used.
pub static OIL: Oil = Oil {
    word: "used-engine-oil",
    title: "Engine oil, used",
    group: OilGroup::Lubricating,
    density_15: Spread::new(870.0, 885.0, 910.0, &KG_M3, &NOAA_OIL_DATA)
        .noted("record AD00696 has 885; ends by judgement: fuel makes it lighter, soot heavier"),
    viscosity: [(66.0, 40.0), (10.0, 100.0)],
    viscosity_source: &TEXTBOOK_OILS,
    viscosity_note: "that of the new oil; fuel in it thins, soot thickens",
    flash_c: Spread::new(59.0, 150.0, 200.0, &DEG_C, &NOAA_OIL_DATA)
        .noted("record AD00696 has 59 °C, thinned by fuel; the rest by judgement"),
    interfacial_tension: Spread::new(3.4, 18.6, 27.0, &MN_M, &NOAA_OIL_DATA)
        .noted("record AD00696 has 27 at 0 °C; low end of oils with additives"),
    dissolved: Spread::new(0.5, 2.0, 10.0, &MG_L, &TEXTBOOK_OILS)
        .noted("fuel in it dissolves more than the oil does, from memory"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: Some("Soot and water-loving additives: part of it stays as fine drops or sinks with solids."),
    sources: &[&NOAA_OIL_DATA, &TEXTBOOK_OILS],
};
