//! Formula: time at which a share of the water has left tanks in series

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::TANKS_IN_SERIES;
use stillrise_units::Ratio;
use stillrise_units::math::{gamma_share, root, sqrt};

const SCIPY: &str = "scipy 1.17.1, stats.gamma.ppf with shape n, scale 1/n";

formula! {
    /// Time, over the mean residence time, at which a share of what entered together has left n mixed tanks.
    ///
    /// At 10 % it is the factor by which disinfection rules grade baffles: 0.1, 0.5 and 0.7, from memory, stand
    /// for some 1, 5 and 17 tanks. That grades the first water to leave, the short circuit, and says nothing
    /// of the slow rest. The mean is volume over flow only while all of the volume takes part: behind a dead
    /// corner all times are shorter. n need not be whole.
    "tanks-quantile" "Time at which a share has left tanks in series"
    fn time(
        n: Ratio = "n" "number of tanks" [ONE, ONE: 1.0 .. 50.0 in 0.1 .. 10000.0];
        share: Ratio = "F" "share that has left" [PERCENT, PERCENT: 1.0 .. 99.0 in 1e-4 .. 99.9999];
    ) -> Ratio = "theta" "time over the mean residence time" [ONE, ONE];
    solves [n ONE, share ONE => theta ONE] { share => gamma_share(n, n * theta) } by {
        // All but a ten-billionth has left by then, for any n.
        let late = (n + 15.0 * sqrt(n) + 40.0) / n;
        root(0.0, late, |theta| gamma_share(n, n * theta) - share)
    }
    helpers [gamma_share(f64, f64) "P" "incomplete gamma function, as a share of the whole one"]
    sources [TANKS_IN_SERIES]
    checks [
        "n=1, share=10 %" => "0.1054", Limit("one mixed tank: -ln 0.9");
        "n=1, share=50 %" => "0.693147", Limit("one mixed tank: ln 2");
        "n=1, share=90 %" => "2.302585", Limit("one mixed tank: ln 10");
        "n=2, share=10 %" => "0.265906", Library(SCIPY);
        "n=2, share=50 %" => "0.839173", Library(SCIPY);
        "n=2, share=90 %" => "1.944860", Library(SCIPY);
        "n=3, share=10 %" => "0.367355", Library(SCIPY);
        "n=3, share=50 %" => "0.891353", Library(SCIPY);
        "n=3, share=90 %" => "1.774107", Library(SCIPY);
        "n=5, share=10 %" => "0.486518", Library(SCIPY);
        "n=5, share=50 %" => "0.934182", Library(SCIPY);
        "n=5, share=90 %" => "1.598718", Library(SCIPY);
        "n=10, share=10 %" => "0.622130", Library(SCIPY);
        "n=10, share=50 %" => "0.966871", Library(SCIPY);
        "n=10, share=90 %" => "1.420599", Library(SCIPY);
        "n=20, share=10 %" => "0.726263", Library(SCIPY);
        "n=20, share=50 %" => "0.983384", Library(SCIPY);
        "n=20, share=90 %" => "1.295126", Library(SCIPY);
        "n=50, share=10 %" => "0.823581", Library(SCIPY);
        "n=50, share=50 %" => "0.993341", Library(SCIPY);
        "n=50, share=90 %" => "1.184980", Library(SCIPY);
        "n=2.3, share=10 %" => "0.30110700", Library(SCIPY);
        "n=5.3, share=10 %" => "0.49915331", Library(SCIPY);
        "n=17, share=10 %" => "0.70447804", Library(SCIPY);
        "n=0.5, share=50 %" => "0.45493642", Library(SCIPY);
        "n=1000, share=90 %" => "1.04073431", Library(SCIPY);
    ]
}
