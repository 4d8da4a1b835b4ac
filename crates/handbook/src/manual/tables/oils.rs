//! Oils.

use crate::fluids::oils::{OILS, Oil};
use crate::fluids::{oil_density, oil_viscosity};
use crate::manual::table::{Row, Table};
use stillrise_units::catalog::{CST, DEG_C, DEG_F, KG_M3, LB_FT3, MG_L, MM2_S, MN_M};
use stillrise_units::{Density, Temperature, Typed};

/// Temperatures in °C at which density is given beside that at 15 °C.
const DENSITY_AT: [f64; 3] = [0.0, 25.0, 40.0];
/// Temperatures in °C at which viscosity is given.
const VISCOSITY_AT: [f64; 4] = [5.0, 10.0, 20.0, 40.0];

pub(super) fn tables() -> Vec<Table> {
    let density = Some((&LB_FT3, &KG_M3));
    let viscosity = Some((&CST, &MM2_S));
    let columns = [
        ("density at 15 °C", density),
        ("density at 0 °C", density),
        ("density at 25 °C", density),
        ("density at 40 °C", density),
        ("viscosity at 5 °C", viscosity),
        ("viscosity at 10 °C", viscosity),
        ("viscosity at 20 °C", viscosity),
        ("viscosity at 40 °C", viscosity),
        ("flash point", Some((&DEG_F, &DEG_C))),
        ("interfacial tension", Some((&MN_M, &MN_M))),
        ("dissolved", Some((&MG_L, &MG_L))),
        ("dissolved, as oil and grease finds it", Some((&MG_L, &MG_L))),
        ("what limits gravity", None),
    ];
    let about = "For sizing take the heaviest oil that may arrive and the coldest water; for the surface and for vapour \
        the lightest. Densities away from 15 °C are the typical one by `oil-density`, viscosities by `oil-viscosity` \
        from two points.";
    vec![Table::new("oils", "Oils", about, &columns).with(OILS.iter().map(|oil| row(oil)))]
}

fn row(oil: &Oil) -> Row {
    let mut row = Row::new(oil.word, oil.title).spread(&oil.density_15);
    for at in DENSITY_AT {
        let rho = Density::from_si(oil.density_15.typical_si());
        let found = oil_density::density(rho, Temperature::of(at, &DEG_C), oil.group);
        row = row.number_if(found.ok().map(|rho| rho.in_unit(&KG_M3)), &KG_M3).cited(oil.density_15.source);
    }
    let [(v_1, t_1), (v_2, t_2)] = oil.viscosity_points();
    for at in VISCOSITY_AT {
        let found = oil_viscosity::viscosity(v_1, t_1, v_2, t_2, Temperature::of(at, &DEG_C));
        row = row.number_if(found.ok().map(|v| v.in_unit(&MM2_S)), &MM2_S);
        row = row.cited(oil.viscosity_source).noted(oil.viscosity_note);
    }
    let row = row.spread(&oil.flash_c).spread(&oil.interfacial_tension).spread(&oil.dissolved);
    row.spread(oil.dissolved_in_test()).text(oil.gravity_note.unwrap_or(""))
}
