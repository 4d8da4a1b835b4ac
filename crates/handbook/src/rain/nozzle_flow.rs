//! Formula: flow of a hose nozzle

use crate::formula;
use crate::page::Evidence::{ByHand, Published};
use crate::sources::{NOZZLE_RULE, TM_5_814_9};
use stillrise_units::math::sqrt;
use stillrise_units::{Flow, Length, Pressure, Ratio};

/// US gallons per minute of an orifice of one inch under one psi of fresh water.
const GPM_INCH_PSI: f64 = 29.84;

formula! {
    /// Flow of a smooth nozzle from its bore and the pressure at it.
    ///
    /// The orifice equation in US units. The pressure is the one at the nozzle with water running,
    /// not at the tap; worn nozzles are wider than their nameplate.
    "nozzle-flow" "Flow of a hose nozzle"
    fn flow(
        d: Length = "d" "bore of the nozzle" [IN, MM: 1.0 .. 50.0 in 0.0 .. 500.0];
        p: Pressure = "P" "pressure at the nozzle" [PSI, KPA: 70.0 .. 1400.0 in 0.0 .. 100000.0];
        c: Ratio = "C_d" "discharge coefficient" [ONE, ONE: 0.6 .. 1.0 in 0.0 .. 1.1];
    ) -> Flow = "Q" "flow" [GPM, L_MIN];
    reduced [d IN, p PSI, c ONE => GPM] { GPM_INCH_PSI * c * d * d * sqrt(p) }
    constants [GPM_INCH_PSI "k_US"]
    sources [NOZZLE_RULE, TM_5_814_9]
    checks [
        "d=0.3125 in, p=75 psi, c=1" => "25 gpm", Published(&TM_5_814_9, "par. 4-8: 25 gpm at 75 psi from a 5/16 in orifice");
        "d=0.3125 in, p=75 psi, c=1" => "25.24 gpm", ByHand("29.84 x 0.3125 x 0.3125 x 75^0.5");
        "d=25.4 mm, p=6894.757293 Pa, c=1" => "112.95 L/min" within 0.0002 "29.84 is rounded",
            ByHand("orifice equation: pi/4 x 0.0254^2 x (2 x 6894.76 / 999)^0.5");
    ]
}
