//! Check tables of beds, metering plates and routed stores, read row by row.

use super::{level_pool, orifice_plate_pressure, packed_bed_loss, storage_outflow};
use crate::evidence::{Row, Table};
use crate::page::Evidence::{ByHand, Library};

/// Losses of packed beds, by one law.
pub(super) const fn bed(fixed: &'static str, column: &'static str) -> Table {
    Table {
        file: "packed_bed.csv",
        text: include_str!("../../check/packed_bed.csv"),
        page: &packed_bed_loss::PAGE,
        fixed,
        columns: BED_COLUMNS,
        expect: (column, "Pa"),
        within: None,
        only: None,
        evidence: Library("fluids 1.3.1, packed_bed"),
    }
}

const BED_COLUMNS: &[(&str, &str, &str)] =
    &[("dp_mm", "d", "mm"), ("voidage", "voidage", ""), ("v_superficial_m_s", "u", "m/s")];

/// Metering plates; the library takes water for a gas of exponent 1.33, so its expansibility is given.
pub(super) const fn plate(fixed: &'static str, only: fn(&Row<'_>) -> bool) -> Table {
    Table {
        file: "orifice_iso5167.csv",
        text: include_str!("../../check/orifice_iso5167.csv"),
        page: &orifice_plate_pressure::PAGE,
        fixed,
        columns: &[("D_m", "d", "m"), ("d_m", "bore", "m"), ("mass_flow_kg_s", "m", "kg/s")],
        expect: ("dP_Pa", "Pa"),
        within: Some((1e-6, "the library's solver stops there")),
        only: Some(only),
        evidence: Library(
            "fluids 1.3.1, flow_meter.differential_pressure_meter_solver, whose expansibility for k 1.33 is given here",
        ),
    }
}

/// A step of routing.
pub(super) const fn pool(fixed: &'static str, only: fn(&Row<'_>) -> bool) -> Table {
    Table {
        file: "level_pool.csv",
        text: include_str!("../../check/level_pool.csv"),
        page: &level_pool::PAGE,
        fixed,
        columns: &[
            ("I1_cfs", "i_1", "cfs"),
            ("I2_cfs", "i_2", "cfs"),
            ("S1_ft3", "s_1", "ft3"),
            ("dt_min", "dt", "min"),
        ],
        expect: ("S2_ft3", "ft3"),
        within: Some((1e-7, "storages are printed to 1e-7 ft3")),
        only: Some(only),
        evidence: ByHand("routed apart in Python, scipy 1.17.1; the published outflows stand at the table's head"),
    }
}

/// The outflow at the end of it.
pub(super) const fn pool_outflow(fixed: &'static str, only: fn(&Row<'_>) -> bool) -> Table {
    Table {
        page: &storage_outflow::PAGE,
        columns: &[("S2_ft3", "s", "ft3")],
        expect: ("O2_cfs", "cfs"),
        within: Some((1e-6, "outflows are printed to 1e-8 cfs, down to 0.017")),
        ..pool(fixed, only)
    }
}

/// The store of HDS-2 example 8.11: a weir of 1.6 ft.
pub(super) const CURVE_A: &str = "curve=[0 ft3: 0 cfs; 16700 ft3: 1.6 cfs; 34000 ft3: 4.6 cfs; 51600 ft3: 8.5 cfs; 69300 ft3: 13.1 cfs; \
     87100 ft3: 18.4 cfs; 105100 ft3: 24.1 cfs; 123100 ft3: 30.4 cfs; 141200 ft3: 37.2 cfs; \
     159300 ft3: 44.3 cfs; 177600 ft3: 51.9 cfs; 195800 ft3: 59.9 cfs; 214100 ft3: 68.3 cfs; \
     232500 ft3: 77.0 cfs; 250800 ft3: 86.0 cfs]";
/// The pond of an acre with upright walls.
pub(super) const CURVE_B: &str = "curve=[0 ft3: 0 cfs; 21780 ft3: 3 cfs; 43560 ft3: 8 cfs; 65340 ft3: 17 cfs; 87120 ft3: 30 cfs; \
     108900 ft3: 43 cfs; 130680 ft3: 60 cfs; 152460 ft3: 78 cfs; 174240 ft3: 97 cfs; \
     196020 ft3: 117 cfs; 217800 ft3: 137 cfs; 239580 ft3: 156 cfs; 261360 ft3: 173 cfs; \
     283140 ft3: 190 cfs; 304920 ft3: 205 cfs; 326700 ft3: 218 cfs; 348480 ft3: 231 cfs; \
     370260 ft3: 242 cfs; 392040 ft3: 253 cfs; 413820 ft3: 264 cfs; 435600 ft3: 275 cfs]";
