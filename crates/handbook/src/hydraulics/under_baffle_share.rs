//! Formula: share of the flow that passes under a baffle

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HDS_2_OUTLETS;
use stillrise_units::math::sqrt;
use stillrise_units::{Area, Ratio};

formula! {
    /// What of the water passes through an opening left under a perforated baffle, and not through its holes.
    ///
    /// Both ways lose the same head. A baffle of few per cent open leaves nearly all of the water to an opening as high as a
    /// tenth of the depth: then it spreads nothing.
    "under-baffle-share" "Share of the flow that passes under a baffle"
    fn share(
        under: Area = "A_u" "area of the opening under the baffle" [FT2, M2: 0.0 .. 10.0 in 0.0 .. 1e6];
        section: Area = "A" "section of the water ahead of the baffle" [FT2, M2: 0.01 .. 100.0 in 0.0 .. 1e6];
        zeta: Ratio = "K" "loss coefficient of the baffle on the velocity ahead of it" [ONE, ONE: 1.0 .. 5000.0 in 0.0 .. 1e6];
        c: Ratio = "C" "discharge coefficient of the opening" [ONE, ONE: 0.5 .. 0.8 in 0.0 .. 1.0];
    ) -> Ratio = "s_u" "share that passes underneath" [PERCENT, PERCENT];
    reduced [under M2, section M2, zeta ONE, c ONE => ONE] {
        let below = c * under;
        below / (below + section / sqrt(zeta))
    }
    sources [HDS_2_OUTLETS]
    checks [
        "under=0 m2, section=1 m2, zeta=400, c=0.6" => "0.0000 %", Limit("closed: nothing passes");
        "under=0.1 m2, section=1 m2, zeta=400, c=0.6" => "54.545 %", ByHand("0.06 / (0.06 + 1/20) = 6/11");
        "under=1 m2, section=1 m2, zeta=400, c=0.6" => "92.308 %", ByHand("0.6 / (0.6 + 1/20) = 12/13");
        "under=0.1 m2, section=2 m2, zeta=100, c=0.6" => "23.077 %", ByHand("0.06 / (0.06 + 2/10) = 3/13");
    ]
}
