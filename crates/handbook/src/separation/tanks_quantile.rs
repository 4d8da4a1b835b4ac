//! Formula: time by which a share has left tanks in series

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::TANKS_IN_SERIES;
use stillrise_units::Ratio;
use stillrise_units::math::{gamma_p, root};

const OWN: &str = "independent evaluation in Python";

formula! {
    /// Time over the mean stay by which a share of a tracer has left `n` mixed tanks in series.
    ///
    /// A baffle factor is that time for a tenth: 0.1 in one mixed tank, 1 in plug flow. It judges how early the
    /// first water leaves, and little of how the rest goes.
    "tanks-quantile" "Time by which a share has left tanks in series"
    fn quantile(
        n: Ratio = "n" "number of tanks" [ONE, ONE: 1.0 .. 50.0 in 0.05 .. 10000.0];
        share: Ratio = "p" "share that has left" [PERCENT, PERCENT: 1.0 .. 99.0 in 0.0001 .. 99.9999];
    ) -> Ratio = "theta" "time over the mean stay" [ONE, ONE];
    solves [n ONE, share ONE => theta ONE] { gamma_p(n, n * theta) => share } by {
        root(0.0, 1000.0, |theta| gamma_p(n, n * theta) - share)
    }
    sources [TANKS_IN_SERIES]
    checks [
        "n=1, share=10 %" => "0.1054", ByHand(OWN);
        "n=1, share=50 %" => "0.6931", ByHand(OWN);
        "n=1, share=90 %" => "2.3026", ByHand(OWN);
        "n=2, share=10 %" => "0.2659", ByHand(OWN);
        "n=2, share=50 %" => "0.8392", ByHand(OWN);
        "n=2, share=90 %" => "1.9449", ByHand(OWN);
        "n=3, share=10 %" => "0.3674", ByHand(OWN);
        "n=3, share=50 %" => "0.8914", ByHand(OWN);
        "n=3, share=90 %" => "1.7741", ByHand(OWN);
        "n=5, share=10 %" => "0.4865", ByHand(OWN);
        "n=5, share=50 %" => "0.9342", ByHand(OWN);
        "n=5, share=90 %" => "1.5987", ByHand(OWN);
        "n=10, share=10 %" => "0.6221", ByHand(OWN);
        "n=10, share=50 %" => "0.9669", ByHand(OWN);
        "n=10, share=90 %" => "1.4206", ByHand(OWN);
        "n=20, share=10 %" => "0.7263", ByHand(OWN);
        "n=20, share=50 %" => "0.9834", ByHand(OWN);
        "n=20, share=90 %" => "1.2951", ByHand(OWN);
        "n=50, share=10 %" => "0.8236", ByHand(OWN);
        "n=50, share=50 %" => "0.9933", ByHand(OWN);
        "n=50, share=90 %" => "1.1850", ByHand(OWN);
        "n=1, share=63.212055882855765 %" => "1.000000", Limit("one mixed tank: 1 - 1/e after the mean stay");
        "n=10000, share=50 %" => "0.99997", Limit("plug flow: after the mean stay") ;
    ]
}
