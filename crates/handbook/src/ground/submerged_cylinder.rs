//! Formula: volume of a horizontal cylinder below a water level

use super::circle::area_below;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{BUOYANCY_PERMIT, HYDROSTATICS};
use stillrise_units::{Length, Volume};

formula! {
    /// The volume that a buried or flooded cylinder with flat heads takes from the water around it.
    ///
    /// Outside dimensions. The level is the highest groundwater or flood that is to be withstood, above the lowest line
    /// of the shell: below it nothing is submerged, above the top line all of it. Risers and domes that are empty and
    /// closed are added apart; the ends of dished heads are left out.
    "submerged-cylinder" "Volume of a horizontal cylinder below a water level"
    fn volume(
        d: Length = "D" "outside diameter" [FT, M: 0.3 .. 5.0 in 0.001 .. 1000.0];
        length: Length = "L" "outside length of the shell" [FT, M: 0.3 .. 30.0 in 0.0 .. 1000.0];
        level: Length = "z_w" "water level above the lowest line of the shell" [FT, M: -20.0 .. 20.0 in -10000.0 .. 10000.0];
    ) -> Volume = "V_s" "submerged volume" [FT3, M3];
    reduced [d M, length M, level M => M3] {
        let segment = area_below(d, level);
        segment * length
    }
    helpers [area_below(f64, f64) "A_s" "area of the circle below the level"]
    sources [HYDROSTATICS]
    checks [
        "d=7.83 ft, length=6.25 ft, level=10.83 ft" => "301 ft3", Published(&BUOYANCY_PERMIT, "volume of the tank: 301 cu.ft.");
        "d=8 ft, length=13.33 ft, level=2 ft" => "130.99 ft3", ByHand("circle of 4 ft cut 2 ft high: 16 acos(0.5) - 2 x 12^0.5 = 9.8270 ft2, x 13.33");
        "d=8 ft, length=13.33 ft, level=4 ft" => "335.02 ft3", ByHand("half the circle: 8 pi ft2 x 13.33");
        "d=10 ft, length=10 ft, level=2 ft" => "111.82 ft3", ByHand("triangle of 3, 4 and 5 ft: 25 acos(0.6) - 12 = 11.1824 ft2, x 10");
        "d=2 m, length=3 m, level=2 m" => "9.42477796 m3", Limit("submerged to the top line: the whole cylinder");
        "d=2 m, length=3 m, level=7 m" => "9.42477796 m3", Limit("water above the top takes no more");
        "d=2 m, length=3 m, level=-1 m" => "0 m3", Limit("groundwater below the cylinder does not reach it");
    ]
}
