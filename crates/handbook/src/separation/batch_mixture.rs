//! Formula: concentration of two volumes together

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Concentration, Volume};

formula! {
    /// Mean of two volumes' concentrations, weighted by the volumes: what a dumped bath makes of the water of a day.
    ///
    /// Takes both as wholly mixed by the time the mean is asked for; while the bath runs, the water is stronger.
    "batch-mixture" "Concentration of two volumes together"
    fn concentration(
        v_1: Volume = "V_1" "first volume" [GAL, M3: 0.0 .. 1e5 in 0.0 .. 1e9];
        c_1: Concentration = "C_1" "concentration of the first volume" [MG_L, MG_L: 0.0 .. 100000.0 in 0.0 .. 2e6];
        v_2: Volume = "V_2" "second volume" [GAL, M3: 0.0 .. 1e5 in 0.0 .. 1e9];
        c_2: Concentration = "C_2" "concentration of the second volume" [MG_L, MG_L: 0.0 .. 100000.0 in 0.0 .. 2e6];
    ) -> Concentration = "C" "concentration of the mixture" [MG_L, MG_L];
    typed { (v_1 * c_1 + v_2 * c_2) / (v_1 + v_2) }
    sources [DEFINITION]
    checks [
        "v_1=9950 gal, c_1=100 mg/L, v_2=50 gal, c_2=20000 mg/L" => "199.500 mg/L", ByHand("(9950 x 100 + 50 x 20000) / 10000");
        "v_1=18 m3, c_1=50 mg/L, v_2=2 m3, c_2=5000 mg/L" => "545.000 mg/L", ByHand("(900 g + 10000 g) / 20 m3");
        "v_1=18 m3, c_1=50 mg/L, v_2=0 m3, c_2=5000 mg/L" => "50.0000 mg/L", Limit("nothing dumped");
        "v_1=0 m3, c_1=50 mg/L, v_2=0 m3, c_2=5000 mg/L" => "outside: result", Limit("no water has no concentration");
    ]
}
