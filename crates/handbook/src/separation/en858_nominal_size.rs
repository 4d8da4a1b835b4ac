//! Formula: nominal size by EN 858-2, for comparison

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::EN_858_NOMINAL;
use stillrise_units::{Flow, Ratio};

formula! {
    /// Nominal size (the flow in litres per second) that EN 858-2 asks for; a comparison only.
    ///
    /// The impediment factor is 2 for wash and process water, 1 for spill protection, and acts on
    /// the waste water alone. The density factor grows with the oil's density: 1 to 0.85 g/cm3, then
    /// 2 and 3 (class II), 1.5 and 2 (class I). Round up to a size that is made. A class is proved
    /// by a test of the full-scale unit, never by this number.
    "en858-nominal-size" "Nominal size by EN 858-2, for comparison"
    fn flow(
        q_r: Flow = "Q_r" "rain water" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        f_x: Ratio = "f_x" "impediment factor" [ONE, ONE: 0.0 .. 2.0 in 0.0 .. 10.0];
        q_s: Flow = "Q_s" "waste water" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        f_d: Ratio = "f_d" "density factor" [ONE, ONE: 1.0 .. 3.0 in 1.0 .. 10.0];
    ) -> Flow = "NS" "nominal size, as a flow" [L_S, L_S];
    typed { (q_r + f_x * q_s) * f_d }
    sources [EN_858_NOMINAL]
    checks [
        "q_r=6 L/s, f_x=0, q_s=0 L/s, f_d=1" => "6 L/s", Limit("rain alone and light oil: the rain's flow");
        "q_r=0 L/s, f_x=2, q_s=3 L/s, f_d=1.5" => "9 L/s", ByHand("2 x 3 x 1.5");
        "q_r=6 L/s, f_x=2, q_s=3.4 L/s, f_d=1" => "12.8 L/s", ByHand("five taps DN 20 give 3.4 L/s: 6 + 2 x 3.4");
    ]
}
