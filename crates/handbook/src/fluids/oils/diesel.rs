//! Oil: diesel fuel no. 2

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{ASTM_D975, CFR_1065, NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Diesel fuel no. 2.
pub static OIL: Oil = Oil {
    word: "diesel",
    title: "Diesel fuel no. 2",
    group: OilGroup::FuelOil,
    density_15: Spread::new(820.0, 845.0, 876.0, &KG_M3, &TEXTBOOK_OILS)
        .noted("records have 827.5 and 834; a US test fuel is 32 to 37 °API, 840 to 865; 845 is the test fuel of separator standards"),
    viscosity: [(8.353, 0.0), (4.834, 15.0)],
    viscosity_source: &NOAA_OIL_DATA,
    viscosity_note: "record EC01001, from 7.0 and 4.0 mPa s; the specification allows 1.9 to 4.1 mm2/s at 40 °C",
    flash_c: Spread::new(52.0, 60.0, 66.0, &DEG_C, &ASTM_D975)
        .noted("least allowed 52 °C, 43 °C in winter in one state; records have 60 and 66"),
    interfacial_tension: Spread::new(18.2, 23.2, 33.1, &MN_M, &NOAA_OIL_DATA)
        .noted("typical: record EC01001; ends: distillate fuels, the high one against sea water"),
    dissolved: Spread::new(1.0, 4.0, 10.0, &MG_L, &TEXTBOOK_OILS)
        .noted("modern low-sulphur fuel, order of magnitude from memory"),
    extracted: None,
    animal_or_vegetable: false,
    gravity_note: None,
    sources: &[&TEXTBOOK_OILS, &NOAA_OIL_DATA, &ASTM_D975, &CFR_1065],
};
