//! Oil: diesel fuel to EN 590

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{EN_590, NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Diesel fuel to EN 590.
pub static OIL: Oil = Oil {
    word: "diesel-en590",
    title: "Diesel fuel to EN 590",
    group: OilGroup::Jet,
    density_15: Spread::new(820.0, 835.0, 845.0, &KG_M3, &EN_590).noted(
        "limits of the grade; the product tables divide by density, so below 838 kg/m3 the jet group expands it",
    ),
    viscosity: [(5.1, 15.0), (2.8, 40.0)],
    viscosity_source: &TEXTBOOK_OILS,
    viscosity_note: "within the 2.0 to 4.5 mm2/s at 40 °C of the grade",
    flash_c: Spread::new(55.0, 62.0, 75.0, &DEG_C, &EN_590).noted("above 55 °C by the grade; the rest from memory"),
    interfacial_tension: Spread::new(18.2, 29.7, 50.0, &MN_M, &NOAA_OIL_DATA)
        .noted("tenth, half and nine tenths of 14 distillate fuels, 10 to 25 °C; the 50 are estimates"),
    dissolved: Spread::new(1.0, 4.0, 10.0, &MG_L, &TEXTBOOK_OILS).noted("order of magnitude from memory"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: Some("May hold up to 7 % of biodiesel, which lowers the interfacial tension (from memory)."),
    sources: &[&EN_590, &TEXTBOOK_OILS, &NOAA_OIL_DATA],
};
