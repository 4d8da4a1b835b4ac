//! Formula: coefficient of a metering orifice

use crate::page::Evidence::{Library, Limit};
use crate::sources::ISO_5167;
use crate::{choice, formula};
use stillrise_units::math::{exp, log10, max, pow};
use stillrise_units::{Length, Ratio};

const LIBRARY: &str = "fluids 1.3.1, flow_meter.C_Reader_Harris_Gallagher";

choice! {
    /// Where the pressure is tapped.
    OrificeTaps {
        /// in the corners beside the plate
        Corner "corner",
        /// an inch up- and downstream, in the flanges
        Flange "flange",
        /// a bore upstream and half a bore downstream
        DAndHalf "d-and-half",
    }
}

formula! {
    /// Discharge coefficient of a sharp-edged plate that meters the flow of a pipe, Reader-Harris and Gallagher.
    ///
    /// Good to 0.5 to 0.75 % in pipes of 50 mm to 1 m with straight runs before and behind, a bore ratio of
    /// 0.1 to 0.75, a Reynolds number of the pipe above 5000 (and above 170 beta² D in mm for flange
    /// taps, above 16000 beta² for the others where the bore ratio is more than 0.56). Below 71.12 mm (2.8 in) it carries a term for the edge. Oil on the plate spoils it.
    "orifice-plate-coefficient" "Coefficient of a metering orifice"
    fn coefficient(
        re: Ratio = "Re_D" "Reynolds number of the pipe" [ONE, ONE: 5000.0 .. 1e8 in 100.0 .. 1e10];
        beta: Ratio = "beta" "bore of the plate over that of the pipe" [ONE, ONE: 0.1 .. 0.75 in 0.01 .. 0.95];
        d: Length = "D" "inside diameter of the pipe" [IN, MM: 50.0 .. 1000.0 in 10.0 .. 5000.0];
        taps: OrificeTaps = "taps" "where the pressure is tapped";
    ) -> Ratio = "C" "discharge coefficient" [ONE, ONE];
    reduced [re ONE, beta ONE, d IN => ONE] {
        let l_1 = if taps == OrificeTaps::Corner { 0.0 } else if taps == OrificeTaps::Flange { 1.0 / d } else { 1.0 };
        let l_2 = if taps == OrificeTaps::Corner { 0.0 } else if taps == OrificeTaps::Flange { 1.0 / d } else { 0.47 };
        let a = pow(19000.0 * beta / re, 0.8);
        let m_2 = 2.0 * l_2 / (1.0 - beta);
        let slope = (0.0188 + 0.0063 * a) * pow(beta, 3.5) * max(pow(1e6 / re, 0.3), 22.7 - 0.0047 * re);
        let corner = 0.5961 + 0.0261 * pow(beta, 2.0) - 0.216 * pow(beta, 8.0) + 0.000521 * pow(1e6 * beta / re, 0.7) + slope;
        let upstream = (0.043 + 0.08 * exp(-10.0 * l_1) - 0.123 * exp(-7.0 * l_1)) * (1.0 - 0.11 * a) * pow(beta, 4.0) / (1.0 - pow(beta, 4.0));
        let downstream = -0.031 * (m_2 - 0.8 * pow(m_2, 1.1)) * (1.0 + 8.0 * max(log10(3700.0 / re), 0.0)) * pow(beta, 1.3);
        let edge = if d < 2.8 { 0.011 * (0.75 - beta) * (2.8 - d) } else { 0.0 };
        corner + upstream + downstream + edge
    }
    sources [ISO_5167]
    checks [
        "re=100000, beta=0.5, d=0.1 m, taps=corner" => "0.6068732", Library(LIBRARY);
        "re=100000, beta=0.5, d=0.1 m, taps=d-and-half" => "0.6061848", Library(LIBRARY);
        "re=100000, beta=0.5, d=0.1 m, taps=flange" => "0.6062010", Library(LIBRARY);
        "re=20000, beta=0.2, d=0.2 m, taps=corner" => "0.5999914", Library(LIBRARY);
        "re=20000, beta=0.2, d=0.2 m, taps=d-and-half" => "0.5992176", Library(LIBRARY);
        "re=1000000, beta=0.6, d=0.2 m, taps=flange" => "0.6052334", Library(LIBRARY);
        "re=1000000, beta=0.6, d=0.2 m, taps=d-and-half" => "0.6069501", Library(LIBRARY);
        "re=100000, beta=0.75, d=0.2 m, taps=corner" => "0.6059629", Library(LIBRARY);
        "re=100000, beta=0.75, d=0.2 m, taps=d-and-half" => "0.6184026", Library(LIBRARY);
        "re=100000, beta=0.75, d=0.2 m, taps=flange" => "0.6083960", Library(LIBRARY);
        "re=10000000, beta=0.4, d=0.3 m, taps=d-and-half" => "0.5992880", Library(LIBRARY);
        "re=50000, beta=0.5, d=0.05 m, taps=corner" => "0.6111232", Library(LIBRARY);
        "re=50000, beta=0.5, d=0.05 m, taps=flange" => "0.6100985", Library(LIBRARY);
        "re=20000, beta=0.7, d=0.05 m, taps=d-and-half" => "0.6310055", Library(LIBRARY);
        "re=10000, beta=0.3, d=0.1 m, taps=flange" => "0.6045696", Library(LIBRARY);
        "re=5000, beta=0.3, d=0.1 m, taps=corner" => "0.6094572", Library(LIBRARY);
        "re=10000000000, beta=0.01, d=1 m, taps=corner" => "0.59610" within 1e-5 "the terms in beta are not quite nothing",
            Limit("a small hole in a large pipe");
    ]
}
