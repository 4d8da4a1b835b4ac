//! Formula: uplift of a submerged volume

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{BUOYANCY_PERMIT, HYDROSTATICS};
use stillrise_units::{Density, Force, G, Volume};

formula! {
    /// Weight of the water that a submerged volume displaces.
    ///
    /// Count everything empty and closed: shell, risers, domes. Fresh water weighs 62.4 lb/ft3, sea water 64.1 lb/ft3. No
    /// contents are credited against it: the unit is emptied for cleaning.
    "uplift-force" "Uplift of a submerged volume"
    fn force(
        volume: Volume = "V_s" "submerged volume" [FT3, M3: 0.0 .. 1000.0 in 0.0 .. 1e6];
        rho_w: Density = "rho_w" "density of the water outside" [LB_FT3, KG_M3: 990.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Force = "F_b" "uplift" [LBF, KN];
    typed { volume * rho_w * G }
    sources [HYDROSTATICS]
    checks [
        "volume=330 ft3, rho_w=62.4 lb/ft3" => "21000 lbf" within 0.02 "the source rounds to the kip, 20.6 to 21",
            Published(&BUOYANCY_PERMIT, "(301 + 29) x 0.0624 = 21 kips");
        "volume=33.5 ft3, rho_w=62.4 lb/ft3" => "2090.4 lbf", ByHand("250 gal x 0.134 ft3/gal x 62.4 lb/ft3, as in the flood agency's example before its factor");
        "volume=1 m3, rho_w=1000 kg/m3" => "9.80665 kN", Limit("a tonne under standard gravity");
    ]
}
