//! Formula: mean intensity of a rain depth

use crate::formula;
use crate::page::Evidence::{ByHand, Published};
use crate::sources::HDS_2;
use stillrise_units::{Length, Time, Velocity};

formula! {
    /// Mean intensity of a depth of rain that falls within a duration.
    ///
    /// A depth-duration table gives the greatest depth within that time, so this is the design
    /// intensity of the duration, not of a longer storm around it.
    "rain-intensity" "Mean intensity of rain"
    fn intensity(
        depth: Length = "D" "depth of rain" [IN, MM: 0.0 .. 1000.0 in 0.0 .. 5000.0];
        duration: Time = "t" "duration" [MIN, MIN: 5.0 .. 14400.0 in 0.01 .. 5256000.0];
    ) -> Velocity = "i" "rainfall intensity" [IN_H, MM_H];
    typed { depth / duration }
    sources [HDS_2]
    checks [
        "depth=35 mm, duration=15 min" => "140 mm/h", Published(&HDS_2, "example 6.5, ten-year rain of 15 minutes");
        "depth=1.375 in, duration=15 min" => "5.5 in/h", Published(&HDS_2, "example 6.5, US units");
        "depth=0.7107 in, duration=12 min" => "3.5535 in/h", ByHand("0.7107 x 60 / 12");
    ]
}
