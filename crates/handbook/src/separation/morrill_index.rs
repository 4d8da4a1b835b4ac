//! Formula: Morrill's index

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::MORRILL;
use stillrise_units::{Ratio, Time};

const OWN: &str = "independent evaluation in Python, tanks in series";

formula! {
    /// Time by which nine tenths of a tracer have left over that for one tenth: 1 in plug flow, 22 in one mixed
    /// tank; a basin below 2 is called good (from memory).
    "morrill-index" "Morrill's index"
    fn index(
        t_90: Time = "t_90" "nine tenths have left" [MIN, MIN: 1.0 .. 10000.0 in 0.0 .. 1e9];
        t_10: Time = "t_10" "one tenth has left" [MIN, MIN: 1.0 .. 10000.0 in 1e-6 .. 1e9];
    ) -> Ratio = "M" "Morrill's index" [ONE, ONE];
    typed { t_90 / t_10 }
    sources [MORRILL]
    checks [
        "t_90=2.3026 h, t_10=0.1054 h" => "21.85" within 6e-4 "times are printed to four places", ByHand(OWN);
        "t_90=1.9449 h, t_10=0.2659 h" => "7.314" within 6e-4 "times are printed to four places", ByHand(OWN);
        "t_90=1.7741 h, t_10=0.3674 h" => "4.829" within 6e-4 "times are printed to four places", ByHand(OWN);
        "t_90=1.5987 h, t_10=0.4865 h" => "3.286" within 6e-4 "times are printed to four places", ByHand(OWN);
        "t_90=1.4206 h, t_10=0.6221 h" => "2.283" within 6e-4 "times are printed to four places", ByHand(OWN);
        "t_90=1.2951 h, t_10=0.7263 h" => "1.783" within 6e-4 "times are printed to four places", ByHand(OWN);
        "t_90=1.1850 h, t_10=0.8236 h" => "1.439" within 6e-4 "times are printed to four places", ByHand(OWN);
        "t_90=10 min, t_10=10 min" => "1", Limit("plug flow");
    ]
}
