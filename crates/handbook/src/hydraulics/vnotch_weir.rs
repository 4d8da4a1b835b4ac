//! Formula: flow over a V-notch weir

use super::circle::G;
use crate::formula;
use crate::page::Evidence::{ByHand, Library};
use crate::sources::KINDSVATER_SHEN;
use stillrise_units::catalog::{DEG, FT};
use stillrise_units::math::{pow, sqrt, tan};
use stillrise_units::{Angle, Flow, Length};

/// Coefficients of C_e in powers of the angle in degrees.
const C_E: [f64; 3] = [0.607_165_052, -8.744_669_63e-4, 6.103_933_34e-6];
/// Coefficients of k_h in feet, in powers of the angle in degrees.
const K_FT: [f64; 4] = [0.014_490_264_8, -3.395_553_5e-4, 3.298_190_03e-6, -1.062_154_42e-8];

/// A polynomial by its coefficients, lowest power first.
fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c)
}

/// Discharge coefficient of the notch of this angle, rad.
fn notch_coefficient(theta: f64) -> f64 {
    polynomial(&C_E, DEG.from_si(theta))
}

/// Head correction of the notch of this angle, m.
fn notch_head(theta: f64) -> f64 {
    FT.to_si(polynomial(&K_FT, DEG.from_si(theta)))
}

formula! {
    /// Free flow over a thin-plate V-notch with full contraction, Kindsvater and Shen.
    ///
    /// Angles of 25 to 100 degrees, head above 60 mm (0.2 ft), tailwater 60 mm below the vertex. The
    /// head correction at 90 degrees is 0.885 mm here and 0.85 mm in ISO 1438: 0.1 % of the flow. At
    /// 120 degrees the curve is 1.2 % off.
    "vnotch-weir" "Flow over a V-notch weir"
    fn flow(
        h: Length = "h" "head above the vertex" [IN, MM: 60.0 .. 381.0 in 0.0 .. 5000.0];
        theta: Angle = "theta" "angle of the notch" [DEG, DEG: 25.0 .. 100.0 in 20.0 .. 120.0];
    ) -> Flow = "Q" "flow" [GPM, L_S];
    reduced [h M, theta RAD => M3_S] {
        let c_e = notch_coefficient(theta);
        let k_h = notch_head(theta);
        8.0 / 15.0 * c_e * tan(theta / 2.0) * sqrt(2.0 * G) * pow(h + k_h, 2.5)
    }
    constants [G "g"]
    helpers [
        notch_coefficient(f64) "C_e" "discharge coefficient, fitted over the angle";
        notch_head(f64) "k_h" "head correction, fitted over the angle";
    ]
    sources [KINDSVATER_SHEN]
    checks [
        "h=0.1 m, theta=90 deg" => "4.413 L/s", ByHand("independent evaluation in Python of the same fits");
        "h=0.2 m, theta=90 deg" => "24.69 L/s", ByHand("independent evaluation in Python of the same fits");
        "h=0.3 m, theta=90 deg" => "67.78 L/s", ByHand("independent evaluation in Python of the same fits");
        "h=0.2 m, theta=60 deg" => "14.27 L/s", ByHand("independent evaluation in Python of the same fits");
        "h=0.2 m, theta=45 deg" => "10.35 L/s", ByHand("independent evaluation in Python of the same fits");
        "h=0.15 m, theta=30 deg" => "3.350 L/s", ByHand("independent evaluation in Python of the same fits");
        "h=0.2 m, theta=90 deg" => "0.8758 cfs" within 0.006 "the older formula 2.49 h^2.48 differs by 0.5 %",
            ByHand("2.49 x 0.65617^2.48, the 90 degree notch in feet");
        "h=0.1 m, theta=90 deg" => "4.42211 L/s" within 0.003 "curve data read off a chart",
            Library("fluids 1.3.1, Q_weir_V_Shen times 8/15 sqrt 2, a factor that the library leaves out");
    ]
}
