//! Oil: motor gasoline

use super::Oil;
use crate::fluids::oil_density::OilGroup;
use crate::sources::{API_4531, CLINE_1991, EN_228, GASOLINE_IN_WATER, NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, KG_M3, MG_L, MN_M};

/// Motor gasoline.
pub static OIL: Oil = Oil {
    word: "gasoline",
    title: "Motor gasoline",
    group: OilGroup::Gasoline,
    density_15: Spread::new(720.0, 740.0, 775.0, &KG_M3, &EN_228)
        .noted("limits of the grade; records have 723 and 750; the high end is a transition product of the tables"),
    viscosity: [(0.8, 15.0), (0.65, 38.0)],
    viscosity_source: &TEXTBOOK_OILS,
    viscosity_note: "0.8 mm2/s at 15 °C is record AD01777 of the open oil data; the second point is from memory",
    flash_c: Spread::new(-45.0, -40.0, -30.0, &DEG_C, &TEXTBOOK_OILS).noted("record AD02153 has -30 °C"),
    interfacial_tension: Spread::new(18.2, 29.7, 50.0, &MN_M, &NOAA_OIL_DATA)
        .noted("as a class: distillate fuels, 14 records, 10 to 25 °C"),
    dissolved: Spread::new(67.0, 77.0, 200.0, &MG_L, &TEXTBOOK_OILS).noted(
        "two leaded gasolines in sea water gave 67 and 77 mg/L; in fresh water more dissolves, and among 31 \
            gasolines the aromatics varied tenfold, so the high end is from memory",
    ),
    extracted: Some(Spread::new(0.0, 4.0, 10.0, &MG_L, &TEXTBOOK_OILS).noted(
        "from memory: what stays when the solvent is driven off is as of a diesel; benzene, toluene and xylenes go with \
            the solvent",
    )),
    animal_or_vegetable: false,
    gravity_note: Some(
        "What dissolves of it (benzene, toluene, xylenes, some tens of mg/L) passes every gravity separator. A test of oil and grease hardly counts it; a limit on benzene does. Flammable vapour.",
    ),
    sources: &[&EN_228, &TEXTBOOK_OILS, &NOAA_OIL_DATA, &GASOLINE_IN_WATER, &CLINE_1991, &API_4531],
};
