//! Formula: flow of a transformer's deluge

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::NFPA_15;
use stillrise_units::{Area, Flow, Velocity};

formula! {
    /// Water spray on the envelope of a transformer and on the ground around it, with a hose.
    ///
    /// 0.25 gpm/ft2 (10.2 L/min/m2) on the projected envelope, 0.15 gpm/ft2 (6.1) on ground that does not
    /// absorb, 250 gpm for a hose.
    "deluge-flow" "Flow of a transformer's deluge"
    fn flow(
        envelope: Area = "A_e" "projected area of the envelope" [FT2, M2: 0.0 .. 1000.0 in 0.0 .. 1e6];
        on_envelope: Velocity = "q_e" "spray on the envelope" [GPM_FT2, M_H: 0.0 .. 2.0 in 0.0 .. 100.0];
        ground: Area = "A_g" "ground that does not absorb" [FT2, M2: 0.0 .. 1000.0 in 0.0 .. 1e6];
        on_ground: Velocity = "q_g" "spray on the ground" [GPM_FT2, M_H: 0.0 .. 2.0 in 0.0 .. 100.0];
        hose: Flow = "Q_h" "flow for hoses" [GPM, M3_H: 0.0 .. 500.0 in 0.0 .. 1e5];
    ) -> Flow = "Q" "flow together" [GPM, M3_H];
    typed { envelope * on_envelope + ground * on_ground + hose }
    sources [NFPA_15]
    checks [
        "envelope=1500 ft2, on_envelope=0.25 gpm/ft2, ground=900 ft2, on_ground=0.15 gpm/ft2, hose=250 gpm" => "760 gpm",
            ByHand("375 + 135 + 250 at the densities of NFPA 15");
        "envelope=0 ft2, on_envelope=0.25 gpm/ft2, ground=0 ft2, on_ground=0.15 gpm/ft2, hose=250 gpm" => "250.0000 gpm", Limit("nothing but the hose");
    ]
}
