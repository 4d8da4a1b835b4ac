//! Formula: projected plate area

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{API_421, SURFACE_LOADING};
use stillrise_units::{Area, Flow, Velocity};

formula! {
    /// Plate area, seen from above, in which the design droplet of a flow is just caught.
    ///
    /// No factor for turbulence is applied to plates by this form; unequal flow between the gaps
    /// takes its share later (`plate-removal`). Projected is `true-plate-area`'s area times cos θ.
    "plate-area" "Projected plate area"
    fn area(
        q: Flow = "Q" "design flow" [GPM, L_S: 0.1 .. 500.0 in 0.0 .. 1e6];
        v_t: Velocity = "V_t" "rise velocity of the design droplet" [FT_MIN, MM_S: 0.01 .. 2.0 in 1e-9 .. 1e5];
    ) -> Area = "A_p" "projected plate area" [FT2, M2];
    typed { q / v_t }
    sources [API_421, SURFACE_LOADING]
    checks [
        "q=100 gpm, v_t=0.0294446825 ft/min" => "454.01 ft2",
            ByHand("60 µm, specific gravity 0.90, 10 °C: 13.36805 / (0.00386 x 0.0997 / 0.01307)");
        "q=1 L/s, v_t=1 mm/s" => "1 m2", Limit("surface loading equals rise velocity");
    ]
}
