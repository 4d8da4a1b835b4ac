//! Why a unit is taken.

use crate::arrangement::Wanted;
use crate::shortcoming::Barrier;

/// Why a unit is taken; put into words in documents.
#[derive(Debug, Clone, PartialEq)]
pub enum Because {
    /// Its dimensions are stated in the enquiry.
    Stated,
    /// The enquiry names its model.
    Named,
    /// The smallest of the range that nothing bars by the calculation.
    Smallest {
        /// The arrangement that was looked for, and why.
        wanted: Wanted,
        /// What speaks against the next smaller one; `None` where there is none.
        below: Option<Barrier>,
    },
    /// The enquiry asks for one made to measure.
    MadeAsAsked,
    /// No unit of the range will do.
    MadeAsNoneWillDo,
    /// The smallest that will do on its condition.
    OnCondition {
        /// How many in parallel the enquiry asks for.
        asked_for: Option<u32>,
    },
    /// It comes nearest where nothing fits.
    Nearest,
}
