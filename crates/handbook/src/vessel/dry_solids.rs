//! Formula: dry solids kept back

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Concentration, Flow, MassRate};

formula! {
    /// Mass of dry solids that stay in the separator, from flow and concentrations.
    ///
    /// Take the volume of a working day or a mean over the year as the flow; flow while it runs would
    /// overstate the load. Negative: more leaves than comes, the sludge is being washed out.
    "dry-solids" "Dry solids kept back"
    fn rate(
        q: Flow = "Q" "flow treated" [GPD, M3_D: 0.0 .. 100000.0 in 0.0 .. 1e8];
        c_in: Concentration = "C_in" "suspended solids in" [MG_L, MG_L: 0.0 .. 20000.0 in 0.0 .. 1e6];
        c_out: Concentration = "C_out" "suspended solids out" [MG_L, MG_L: 0.0 .. 20000.0 in 0.0 .. 1e6];
    ) -> MassRate = "m_s" "dry solids kept back" [LB_D, KG_D];
    typed { q * (c_in - c_out) }
    sources [DEFINITION]
    checks [
        "q=12000 gpd, c_in=300 mg/L, c_out=100 mg/L" => "20 lb/d", ByHand("12,000 x 8.34e-6 x 200");
        "q=1 MGD, c_in=1 mg/L, c_out=0 mg/L" => "8.345 lb/d",
            ByHand("the trade's factor: 8.34 pounds a gallon of water; 3.785412e6 L x 1e-6 kg / 0.45359237");
        "q=1000 m3/d, c_in=80 mg/L, c_out=80 mg/L" => "0.000000 kg/d", Limit("nothing kept back");
        "q=1000 m3/d, c_in=1 mg/L, c_out=0 mg/L" => "1.00000000 kg/d", Limit("1 mg/L is a gram a cubic metre");
    ]
}
