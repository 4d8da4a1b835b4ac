//! Formula: oil layer at a set point

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::JUDGEMENT;
use stillrise_units::{Length, Ratio};

formula! {
    /// A share of the thickest permitted layer: pump-out, alarm, shut-off.
    ///
    /// Shares of 25, 60 and 90 % are proposals of this handbook; published ones are listed with the alarms.
    /// What is left between alarm and limit must hold the credible spill.
    "set-point" "Oil layer at a set point"
    fn thickness(
        h_max: Length = "h_max" "thickest permitted oil layer" [IN, MM: 0.0 .. 3000.0 in 0.0 .. 50000.0];
        share: Ratio = "p" "share of it" [PERCENT, PERCENT: 0.0 .. 100.0 in 0.0 .. 100.0];
    ) -> Length = "h_o" "oil layer at the set point" [IN, MM];
    typed { share * h_max }
    sources [JUDGEMENT]
    checks [
        "h_max=18.79 in, share=25 %" => "4.70 in", ByHand("level schedule of one tank");
        "h_max=18.79 in, share=60 %" => "11.27 in", ByHand("level schedule of one tank");
        "h_max=18.79 in, share=90 %" => "16.91 in", ByHand("level schedule of one tank");
        "h_max=18.79 in, share=100 %" => "18.790000 in", Limit("the limit itself");
    ]
}
