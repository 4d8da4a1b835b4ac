//! Formula: bore of a vent

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{CCR_5598, DEFINITION, VENT_MEMORY};
use core::f64::consts::PI;
use stillrise_units::{Density, Flow, Length, Pressure, Ratio};

formula! {
    /// Bore through which the air of filling or pumping out passes at a permitted difference of pressure.
    ///
    /// The air displaced is the larger of what flows in and what is pumped out; twice that on filling with a volatile
    /// liquid (from memory). A factor on the velocity head counts entry 0.5, exit 1, each bend 0.5 and the pipe's friction
    /// (common practice): 3 for a short vent with two bends. Never less than 1-1/4 in, nor than the filling or pumping
    /// connection where a code asks for that. Each compartment above a baffle is vented; vents are not trapped.
    "vent-diameter" "Bore of a vent"
    fn bore(
        q: Flow = "Q" "air displaced" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        dp: Pressure = "Delta_p" "permitted difference of pressure" [PSI, KPA: 0.01 .. 3.5 in 1e-6 .. 100.0];
        rho: Density = "rho_a" "density of the air" [LB_FT3, KG_M3: 1.0 .. 1.5 in 0.1 .. 100.0];
        k: Ratio = "K" "factor on the velocity head" [ONE, ONE: 1.5 .. 20.0 in 0.1 .. 1e4];
    ) -> Length = "d" "bore of the vent" [IN, MM];
    typed { (4.0 * q / PI * (k * rho / (2.0 * dp)).sqrt()).sqrt() }
    sources [DEFINITION, VENT_MEMORY, CCR_5598]
    checks [
        "q=10 L/s, dp=0.1 kPa, rho=1.2 kg/m3, k=3" => "41.3 mm", ByHand("velocity (200 / 3.6)^0.5 = 7.454 m/s, area 1,342 mm2");
        "q=40 L/s, dp=1.6 kPa, rho=1.2 kg/m3, k=3" => "41.3 mm", Limit("four times the flow at sixteen times the pressure");
        "q=0 L/s, dp=0.1 kPa, rho=1.2 kg/m3, k=3" => "0 mm", Limit("nothing to pass");
    ]
}
