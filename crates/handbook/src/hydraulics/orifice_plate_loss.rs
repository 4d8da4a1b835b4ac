//! Formula: pressure lost at a metering orifice

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::ISO_5167;
use stillrise_units::math::{pow, sqrt};
use stillrise_units::{Pressure, Ratio};

const LIBRARY: &str = "fluids 1.3.1, flow_meter.dP_orifice";

formula! {
    /// What of the pressure across a metering plate does not come back six bores behind it, ISO 5167.
    ///
    /// Nearly all of it for a small bore, some 45 % at a bore ratio of 0.75. A plate in the feed of a
    /// separator also shears the oil with this loss (`loss-dissipation`).
    "orifice-plate-loss" "Pressure lost at a metering orifice"
    fn loss(
        dp: Pressure = "dp" "difference of pressure at the taps" [PSI, PA: 0.0 .. 250000.0 in 0.0 .. 1e8];
        beta: Ratio = "beta" "bore of the plate over that of the pipe" [ONE, ONE: 0.1 .. 0.75 in 0.0 .. 0.95];
        c: Ratio = "C" "discharge coefficient, `orifice-plate-coefficient`" [ONE, ONE: 0.59 .. 0.65 in 0.1 .. 1.0];
    ) -> Pressure = "dp_L" "pressure lost" [PSI, PA];
    reduced [dp PA, beta ONE, c ONE => PA] {
        let root = sqrt(1.0 - pow(beta, 4.0) * (1.0 - pow(c, 2.0)));
        let jet = c * pow(beta, 2.0);
        dp * (root - jet) / (root + jet)
    }
    sources [ISO_5167]
    checks [
        "dp=10 kPa, beta=0.5, c=0.606" => "7322.20 Pa", Library(LIBRARY);
        "dp=10 kPa, beta=0.3, c=0.6" => "8972.80 Pa", Library(LIBRARY);
        "dp=20 kPa, beta=0.7, c=0.605" => "10257.98 Pa", Library(LIBRARY);
        "dp=5 kPa, beta=0.6, c=0.61" => "3135.90 Pa", Library(LIBRARY);
        "dp=50 kPa, beta=0.2, c=0.598" => "47662.71 Pa", Library(LIBRARY);
        "dp=8 kPa, beta=0.75, c=0.6" => "3611.64 Pa", Library(LIBRARY);
        "dp=10 kPa, beta=0, c=0.6" => "10000.000 Pa", Limit("a pinhole: all is lost");
        "dp=0 Pa, beta=0.5, c=0.6" => "0 Pa", Limit("no difference, no loss");
    ]
}
