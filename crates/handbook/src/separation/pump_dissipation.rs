//! Formula: dissipation in a pump

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::PUMP_LOSS;
use stillrise_units::{Density, Dissipation, Power, Volume};

formula! {
    /// Mean power per mass that a pump loses in the water between its blades.
    ///
    /// All of the loss is taken as spent in the volume that the impeller sweeps: bearings and seals take little of it, the
    /// volute some. For `hinze-droplet`, whose size goes with the power -0.4: twice the volume is a third in the size. Near the
    /// tips, and at part flow, it is several times the mean.
    "pump-dissipation" "Dissipation in a pump"
    fn dissipation(
        lost: Power = "P" "power lost in the pump" [HP, KW: 0.01 .. 200.0 in 0.0 .. 1e5];
        rho: Density = "rho" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        volume: Volume = "V" "volume that the impeller sweeps" [GAL, L: 0.05 .. 100.0 in 1e-4 .. 1e6];
    ) -> Dissipation = "epsilon" "dissipation, power per mass" [W_KG, W_KG];
    typed { lost / (rho * volume) }
    sources [PUMP_LOSS]
    checks [
        "lost=1 kW, rho=1000 kg/m3, volume=1 L" => "1000.00 W/kg", Limit("a kilowatt in a kilogram");
        "lost=376.4 W, rho=998 kg/m3, volume=2 L" => "188.6 W/kg", ByHand("100 gpm against 30 ft at 0.6: 564.6 x (1/0.6 - 1) W over 1.996 kg");
        "lost=0 W, rho=998 kg/m3, volume=2 L" => "0 W/kg", Limit("nothing lost");
    ]
}
