//! Formula: flow of equal taps by EN 858-2

use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::EN_858_TABLES;
use crate::{choice, formula};
use stillrise_units::math::{max, min};
use stillrise_units::{Flow, Ratio};

choice! {
    /// Nominal bore of a tap.
    TapBore {
        /// half an inch
        Dn15 "DN15",
        /// three quarters of an inch
        Dn20 "DN20",
        /// one inch
        Dn25 "DN25",
    }
}

formula! {
    /// Flow that EN 858-2 counts for taps of one bore: all flow of the first two, less of each further one.
    ///
    /// Few taps run at once, so from the third on each counts for less. Taps that feed a high-pressure unit are
    /// left out. How the series runs over taps of several bores is not known here: a series for each bore, added up,
    /// is the safe side. One authority's form gives every tap the first one's flow, which is more still.
    "en858-tap-flow" "Flow of equal taps by EN 858-2"
    fn flow(
        n: Ratio = "n" "taps of this bore" [ONE, ONE: 0.0 .. 50.0 in 0.0 .. 10000.0];
        bore: TapBore = "bore" "nominal bore";
    ) -> Flow = "Q_s1" "flow of these taps" [L_S, L_S];
    reduced [n ONE => L_S] {
        if bore == TapBore::Dn15 {
            0.5 * min(n, 2.0) + 0.35 * min(max(n - 2.0, 0.0), 1.0) + 0.25 * min(max(n - 3.0, 0.0), 1.0) + 0.1 * max(n - 4.0, 0.0)
        }
        else if bore == TapBore::Dn20 {
            1.0 * min(n, 2.0) + 0.7 * min(max(n - 2.0, 0.0), 1.0) + 0.5 * min(max(n - 3.0, 0.0), 1.0) + 0.2 * max(n - 4.0, 0.0)
        }
        else {
            1.7 * min(n, 2.0) + 1.2 * min(max(n - 2.0, 0.0), 1.0) + 0.85 * min(max(n - 3.0, 0.0), 1.0) + 0.3 * max(n - 4.0, 0.0)
        }
    }
    sources [EN_858_TABLES]
    checks [
        "n=1, bore=DN15" => "0.5 L/s", Published(&EN_858_TABLES, "table 3, first tap of DN 15");
        "n=1, bore=DN20" => "1.0 L/s", Published(&EN_858_TABLES, "table 3, first tap of DN 20");
        "n=1, bore=DN25" => "1.7 L/s", Published(&EN_858_TABLES, "table 3, first tap of DN 25");
        "n=2, bore=DN25" => "3.4 L/s", ByHand("1.7 + 1.7: the second tap counts in full");
        "n=3, bore=DN15" => "1.35 L/s", ByHand("0.5 + 0.5 + 0.35");
        "n=4, bore=DN25" => "5.45 L/s", ByHand("1.7 + 1.7 + 1.2 + 0.85");
        "n=5, bore=DN15" => "1.70 L/s", ByHand("0.5 + 0.5 + 0.35 + 0.25 + 0.1, rows of the table added up");
        "n=5, bore=DN20" => "3.40 L/s", ByHand("1 + 1 + 0.7 + 0.5 + 0.2, rows of the table added up");
        "n=7, bore=DN20" => "3.80 L/s", ByHand("five taps and twice 0.2");
        "n=0, bore=DN20" => "0 L/s", Limit("no tap, no water");
    ]
}
