//! Formula: projected plate area by the coefficient that manuals print

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{API_421_PLATES, SWMMWW};
use stillrise_units::{Area, Flow, Ratio, Viscosity};

/// Stokes' law for a droplet of 60 µm in feet a minute and poise; unrounded it is 0.0038622.
const COEFFICIENT: f64 = 0.00386;

formula! {
    /// Projected area of plates for droplets of 60 µm, in the rounded form of US manuals.
    ///
    /// The coefficient is Stokes' law at 60 µm; its printed rounding is from memory. Of what plates cost in capture, no
    /// factor is in it. Cubic feet a minute, poise, square feet.
    "manual-plate-area" "Projected plate area, as manuals print it"
    fn area(
        q: Flow = "Q" "design flow" [GPM, L_S: 0.1 .. 500.0 in 0.0 .. 1e6];
        s_w: Ratio = "S_w" "specific gravity of the water" [ONE, ONE: 0.95 .. 1.05 in 0.5 .. 2.0];
        s_o: Ratio = "S_o" "specific gravity of the oil" [ONE, ONE: 0.6 .. 1.0 in 0.3 .. 2.0];
        mu: Viscosity = "mu" "dynamic viscosity of the water, poise" [POISE, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
    ) -> Area = "A_p" "projected plate area" [FT2, M2];
    reduced [q CFM, s_w ONE, s_o ONE, mu POISE => FT2] { q / (COEFFICIENT * (s_w - s_o) / mu) }
    constants [COEFFICIENT "k_60"]
    sources [SWMMWW, API_421_PLATES]
    checks [
        "q=100 gpm, s_w=0.9997, s_o=0.90, mu=0.01307 poise" => "454.01 ft2", ByHand("60 µm, specific gravity 0.90, 10 °C: 13.36805 / (0.00386 x 0.0997 / 0.01307)");
        "q=1 ft3/min, s_w=1, s_o=0.9, mu=0.01 poise" => "25.91 ft2", ByHand("1 / (0.00386 x 0.1 / 0.01)");
        "q=100 gpm, s_w=1, s_o=1, mu=0.01 poise" => "outside: result", Limit("oil as heavy as the water: no area is enough");
    ]
}
