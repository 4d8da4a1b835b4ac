//! Formula: mass of plate

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{DEFINITION, SHEET_GAUGE};
use stillrise_units::{Area, Density, Length, Mass};

formula! {
    /// Area times thickness times density.
    ///
    /// Sheet by gauge is invoiced about 2.5 % heavier than its thickness weighs (41.82 against 40.8 lb/ft2
    /// for each inch). Add 15 to 25 % for stiffeners, baffles, nozzles and welds: a proposal of this handbook.
    "plate-weight" "Mass of plate"
    fn mass(
        area: Area = "A" "area of plate" [FT2, M2: 0.0 .. 1000.0 in 0.0 .. 1e6];
        thickness: Length = "t" "thickness" [IN, MM: 0.0 .. 50.0 in 0.0 .. 1000.0];
        rho: Density = "rho" "density of the material" [LB_FT3, KG_M3: 900.0 .. 8500.0 in 100.0 .. 20000.0];
    ) -> Mass = "m" "mass" [LB, KG];
    typed { area * thickness * rho }
    sources [DEFINITION, SHEET_GAUGE]
    checks [
        "area=1 ft2, thickness=0.25 in, rho=490 lb/ft3" => "10.2 lb", ByHand("40.8 lb/ft2 for each inch of steel");
        "area=1 ft2, thickness=0.375 in, rho=490 lb/ft3" => "15.3 lb", ByHand("40.8 lb/ft2 for each inch of steel");
        "area=230 ft2, thickness=0.25 in, rho=489.6 lb/ft3" => "2346 lb", ByHand("open box of 10 x 5 x 6 ft in 1/4 in plate");
        "area=1 m2, thickness=1 mm, rho=7850 kg/m3" => "7.85000000 kg", Limit("a millimetre on a square metre is a litre");
    ]
}
