//! Oil: biodiesel B100, fatty acid methyl ester

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{ASTM_D6751, EN_14214, NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Biodiesel B100, fatty acid methyl ester.
pub static OIL: Oil = Oil {
    word: "biodiesel",
    title: "Biodiesel B100, fatty acid methyl ester",
    group: OilGroup::FuelOil,
    density_15: Spread::new(860.0, 880.0, 900.0, &KG_M3, &EN_14214)
        .noted("limits of the grade; records have 874 to 885; it expands as the fuel-oil group does, within 0.5 kg/m3 over 15 °C"),
    viscosity: [(12.4, 0.0), (8.0, 15.0)],
    viscosity_source: &NOAA_OIL_DATA,
    viscosity_note: "records EC14842 and EC10021",
    flash_c: Spread::new(93.0, 130.0, 170.0, &DEG_C, &ASTM_D6751)
        .noted("least allowed 93 °C (130 without the methanol test); record 103; the high end from memory"),
    interfacial_tension: Spread::new(9.8, 12.1, 17.9, &MN_M, &NOAA_OIL_DATA)
        .noted("tenth, half and nine tenths of 6 biodiesels, 10 to 25 °C"),
    dissolved: Spread::new(0.1, 1.0, 7.0, &MG_L, &TEXTBOOK_OILS)
        .noted("order of magnitude; no measurement read"),
    extracted: None,
    animal_or_vegetable: true,
    gravity_note: Some("Low interfacial tension: it is broken into small drops easily and holds them. It counts as a vegetable oil in some permits."),
    sources: &[&EN_14214, &NOAA_OIL_DATA, &ASTM_D6751, &TEXTBOOK_OILS],
};
