//! Formula: wash water of several hoses

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{COMMON_PRACTICE, TM_5_814_9};
use stillrise_units::{Flow, Ratio};

formula! {
    /// Flow of a wash place: its hoses, the flow of each, and the share that runs at one time.
    ///
    /// A hose station of a vehicle wash is designed for 25 gpm (95 L/min) at the nozzle. The share
    /// running together is the owner's knowledge; without it take all.
    "hose-flow" "Wash water of several hoses"
    fn flow(
        hoses: Ratio = "N" "number of hoses" [ONE, ONE: 1.0 .. 20.0 in 0.0 .. 1000.0];
        each: Flow = "q" "flow of one hose" [GPM, L_MIN: 4.0 .. 200.0 in 0.0 .. 10000.0];
        together: Ratio = "s" "share running at one time" [PERCENT, PERCENT: 25.0 .. 100.0 in 0.0 .. 100.0];
    ) -> Flow = "Q" "flow of the wash place" [GPM, L_S];
    typed { hoses * each * together }
    sources [COMMON_PRACTICE, TM_5_814_9]
    checks [
        "hoses=1, each=25 gpm, together=100 %" => "25.000 gpm", Limit("one hose gives its own flow");
        "hoses=4, each=25 gpm, together=50 %" => "50.000 gpm", Limit("half of four hoses is two");
        "hoses=6, each=15 gpm, together=75 %" => "67.5 gpm", ByHand("6 x 15 x 0.75");
    ]
}
