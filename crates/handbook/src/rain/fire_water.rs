//! Formula: volume of fire water

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{DEFINITION, NFPA_850};
use stillrise_units::{Flow, Time, Volume};

formula! {
    /// Water that deluge, hydrants and hoses bring into a containment while they run.
    ///
    /// NFPA 850, as remembered, counts ten minutes of the fixed system and of the hoses; a supply laid out
    /// for an hour may run an hour. IEEE 980 adds rain or deluge, the greater of the two; here they add up.
    "fire-water" "Volume of fire water"
    fn volume(
        q: Flow = "Q" "flow of deluge, hydrants and hoses together" [GPM, M3_H: 0.0 .. 2500.0 in 0.0 .. 1e6];
        duration: Time = "t" "how long it is held" [MIN, MIN: 1.0 .. 240.0 in 0.0 .. 1e5];
    ) -> Volume = "V" "volume of water" [GAL, M3];
    typed { q * duration }
    sources [DEFINITION, NFPA_850]
    checks [
        "q=760 gpm, duration=10 min" => "7600 gal", ByHand("deluge of 0.25 gpm/ft2 on 1,500 ft2 and 0.15 on 900 ft2 with a hose of 250 gpm");
        "q=760 gpm, duration=60 min" => "45600 gal", ByHand("the same for an hour");
        "q=1 m3/h, duration=60 min" => "1.0000000 m3", Limit("an hour has 60 minutes");
    ]
}
