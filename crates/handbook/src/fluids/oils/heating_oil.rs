//! Oil: heating oil, fuel oil no. 2

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{ASTM_D396, NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Heating oil, fuel oil no. 2.
pub static OIL: Oil = Oil {
    word: "heating-oil",
    title: "Heating oil, fuel oil no. 2",
    group: OilGroup::FuelOil,
    density_15: Spread::new(825.0, 850.0, 876.0, &KG_M3, &TEXTBOOK_OILS),
    viscosity: [(2.6, 40.0), (1.05, 100.0)],
    viscosity_source: &TEXTBOOK_OILS,
    viscosity_note: "textbook gas oil; the specification allows 1.9 to 3.4 mm2/s at 40 °C",
    flash_c: Spread::new(38.0, 60.0, 80.0, &DEG_C, &ASTM_D396).noted("least allowed 38 °C; the rest from memory"),
    interfacial_tension: Spread::new(18.2, 29.7, 50.0, &MN_M, &NOAA_OIL_DATA)
        .noted("tenth, half and nine tenths of 14 distillate fuels, 10 to 25 °C; the 50 are estimates"),
    dissolved: Spread::new(1.0, 4.0, 10.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude from memory"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: None,
    sources: &[&TEXTBOOK_OILS, &ASTM_D396, &NOAA_OIL_DATA],
};
