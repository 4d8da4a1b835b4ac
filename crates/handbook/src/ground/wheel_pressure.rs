//! Formula: pressure of a truck's wheels through earth

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{AASHTO_OVERLAP, AASHTO_WHEELS};
use stillrise_units::{Force, Length, Pressure};

/// Width to which a wheel spreads for each unit of depth.
const SPREAD: f64 = 1.75;

formula! {
    /// Pressure at the depth of the cover under one axle of two wheels, each spread to a square of 1.75 times the depth;
    /// where the squares overlap, the axle's load spreads over both together.
    ///
    /// The rear wheels of an H-20 truck carry 16,000 lbf each, 6 ft apart. The rule begins at 2 ft of cover: above it
    /// the tyre's print counts. Add impact by the cover, see the table. A paving slab spreads more and is the usual remedy;
    /// collars of manways must rest on the slab, not on the unit.
    "wheel-pressure" "Pressure of a truck's wheels through earth"
    fn pressure(
        wheel: Force = "P" "load of one wheel" [LBF, KN: 10.0 .. 100.0 in 0.0 .. 10000.0];
        apart: Length = "s" "distance between the wheels of the axle" [FT, M: 1.2 .. 2.5 in 0.01 .. 100.0];
        cover: Length = "h" "depth of earth" [FT, M: 0.6 .. 5.0 in 0.01 .. 100.0];
    ) -> Pressure = "p" "pressure at that depth" [PSF, KPA];
    reduced [wheel NEWTON, apart M, cover M => PA] {
        let side = SPREAD * cover;
        if side <= apart { wheel / (side * side) } else { 2.0 * wheel / (side * (side + apart)) }
    }
    constants [SPREAD "k_s"]
    sources [AASHTO_WHEELS, AASHTO_OVERLAP]
    checks [
        "wheel=16000 lbf, apart=6 ft, cover=2 ft" => "1306 psf", ByHand("16,000 over a square of 3.5 ft");
        "wheel=16000 lbf, apart=6 ft, cover=3 ft" => "580 psf", ByHand("16,000 over a square of 5.25 ft");
        "wheel=16000 lbf, apart=6 ft, cover=4 ft" => "352 psf", ByHand("32,000 over 7 x 13 ft");
        "wheel=16000 lbf, apart=7 ft, cover=4 ft" => "326.5306 psf", Limit("squares that just touch: one wheel over 7 x 7 ft, the same as both over 7 x 14 ft");
    ]
}
