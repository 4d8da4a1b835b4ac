//! Oil: heavy fuel oil no. 6, bunker C

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{ASTM_D396, NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Heavy fuel oil no. 6, bunker C.
pub static OIL: Oil = Oil {
    word: "heavy-fuel-oil",
    title: "Heavy fuel oil no. 6, bunker C",
    group: OilGroup::FuelOil,
    density_15: Spread::new(940.0, 983.0, 1010.0, &KG_M3, &TEXTBOOK_OILS)
        .noted("records have 982.6 to 991; marine grades end at 991 or 1010"),
    viscosity: [(380.0, 50.0), (35.0, 100.0)],
    viscosity_source: &TEXTBOOK_OILS,
    viscosity_note: "marine grade 380; a record has 48 850 mm2/s at 15 °C, another 230 at 50 °C: they are different oils",
    flash_c: Spread::new(60.0, 75.0, 98.0, &DEG_C, &NOAA_OIL_DATA).noted("records 62 to 98; least allowed 60 °C"),
    interfacial_tension: Spread::new(30.8, 34.5, 39.8, &MN_M, &NOAA_OIL_DATA)
        .noted("tenth, half and nine tenths of 6 residual fuels"),
    dissolved: Spread::new(0.5, 1.5, 6.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: Some(
        "About as heavy as water: at 10 °API or less it sinks in fresh water. Above 950 kg/m3 treat it as no \
            gravity duty unless a test shows otherwise.",
    ),
    sources: &[&TEXTBOOK_OILS, &NOAA_OIL_DATA, &ASTM_D396],
};
