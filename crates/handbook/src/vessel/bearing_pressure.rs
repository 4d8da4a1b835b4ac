//! Formula: bearing pressure under a vessel

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Area, G, Mass, Pressure};

formula! {
    /// Weight over the area that carries it, evenly spread.
    ///
    /// Count the full state: vessel, internals, water to the rim, sludge. On saddles or feet the area is
    /// theirs. Compare with the ground's allowable pressure from the site's geotechnical report.
    "bearing-pressure" "Bearing pressure under a vessel"
    fn pressure(
        mass: Mass = "m" "mass carried" [LB, KG: 0.0 .. 500000.0 in 0.0 .. 1e9];
        area: Area = "A" "area that carries it" [FT2, M2: 0.0 .. 500.0 in 0.0 .. 1e6];
    ) -> Pressure = "p" "bearing pressure" [PSF, KPA];
    typed { mass * G / area }
    sources [DEFINITION]
    checks [
        "mass=18532.5 lb, area=50 ft2" => "371 psf", ByHand("2,346 lb of plate x 1.25 and 15,600 lb of water on 50 ft2");
        "mass=1 lb, area=1 ft2" => "1.0000000 psf", Limit("definition of the pound-force");
        "mass=1 lb, area=0 ft2" => "outside: result", Limit("nothing carries it");
    ]
}
