//! Formula: coefficient of variation of a log-normal law

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::{AITCHISON_BROWN, EPA_TSD};
use stillrise_units::Ratio;
use stillrise_units::math::{exp, sqrt};

const SCIPY: &str = "scipy 1.17.1, stats.lognorm.std over stats.lognorm.mean";

formula! {
    /// Standard deviation over arithmetic mean of what is spread log-normally.
    ///
    /// The number by which `permit-multiplier` says how far a limit must stand above the long-term mean; there it
    /// is turned back into the deviation of the logarithms.
    "lognormal-variation" "Coefficient of variation of a log-normal law"
    fn variation(
        s: Ratio = "s" "standard deviation of the logarithms" [ONE, ONE: 0.0 .. 1.5 in 0.0 .. 5.0];
    ) -> Ratio = "CV" "coefficient of variation" [ONE, ONE];
    reduced [s ONE => ONE] { sqrt(exp(s * s) - 1.0) }
    sources [AITCHISON_BROWN, EPA_TSD]
    checks [
        "s=0.1" => "0.10025052", Library(SCIPY);
        "s=0.3" => "0.30687829", Library(SCIPY);
        "s=0.5545" => "0.59998362", Library(SCIPY);
        "s=1" => "1.3108325", Library(SCIPY);
        "s=1.5" => "2.9133719", Library(SCIPY);
        "s=0" => "0", Limit("what does not vary");
    ]
}
