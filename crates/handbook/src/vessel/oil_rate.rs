//! Formula: oil caught a day

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Concentration, Density, Flow};

formula! {
    /// Volume of oil that stays in the separator, from flow and concentrations.
    ///
    /// Take the free oil for the concentrations: emulsified and dissolved oil passes through. The volume is
    /// of dry oil; what is pumped out holds water too.
    "oil-rate" "Oil caught a day"
    fn rate(
        q: Flow = "Q" "flow treated" [GPD, M3_D: 0.0 .. 100000.0 in 0.0 .. 1e8];
        c_in: Concentration = "C_in" "oil in" [MG_L, MG_L: 0.0 .. 20000.0 in 0.0 .. 1e6];
        c_out: Concentration = "C_out" "oil out" [MG_L, MG_L: 0.0 .. 20000.0 in 0.0 .. 1e6];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
    ) -> Flow = "Q_o" "oil caught" [GPD, L_D];
    typed { q * (c_in - c_out) / rho_o }
    sources [DEFINITION]
    checks [
        "q=12000 gpd, c_in=200 mg/L, c_out=10 mg/L, rho_o=0.85 g/cm3" => "2.68 gpd", ByHand("12,000 x 190e-6 / 0.85");
        "q=1000 m3/d, c_in=10 mg/L, c_out=10 mg/L, rho_o=0.85 g/cm3" => "0.000000 L/d", Limit("nothing caught");
        "q=1000 m3/d, c_in=1 mg/L, c_out=0 mg/L, rho_o=1 g/cm3" => "1.00000000 L/d",
            Limit("1 mg/L of an oil as heavy as water is a part in a million");
    ]
}
