//! A unit by what tells it from others: what is taken now, and what another answer would lead to, are compared by it.

/// A unit, or several alike in parallel.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Offered {
    /// A row of the range.
    Row {
        /// Its place in the range.
        row: usize,
        /// Its name there.
        model: String,
        /// How many.
        count: u32,
    },
    /// As the enquiry states it.
    Stated(u32),
    /// Made to measure, so many, whatever their dimensions.
    Made(u32),
    /// None that would do without a condition.
    Nothing,
}

impl Offered {
    /// Its name in print.
    #[must_use]
    pub fn name(&self) -> String {
        let (one, count) = match self {
            Offered::Row { model, count, .. } => (model.as_str(), *count),
            Offered::Stated(count) => ("stated unit", *count),
            Offered::Made(count) => ("made to measure", *count),
            Offered::Nothing => ("no unit without a condition", 1),
        };
        if count > 1 { format!("{count} x {one}") } else { one.to_owned() }
    }
}
