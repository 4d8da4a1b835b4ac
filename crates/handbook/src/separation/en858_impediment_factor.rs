//! Formula: impediment factor of EN 858-2

use crate::page::Evidence::{Limit, Published};
use crate::sources::EN_858_TABLES;
use crate::{choice, formula};
use stillrise_units::Ratio;

choice! {
    /// Category of use by EN 858-2.
    UseCategory {
        /// waste water of washing or processes, a
        WashWater "wash water",
        /// rain from places where oil may spill, c
        SpillRetention "spill retention",
        /// rain with little oil alone, b
        Rain "rain",
    }
}

formula! {
    /// Factor on the waste water alone, for what detergents and washing do to the droplets.
    ///
    /// The least values of the table; an authority may ask for more. Rain alone brings no waste water, and the table gives
    /// it no factor: zero stands for that.
    "en858-impediment-factor" "Impediment factor of EN 858-2"
    fn factor(
        category: UseCategory = "category" "category of use";
    ) -> Ratio = "f_x" "impediment factor" [ONE, ONE];
    reduced [ => ONE] {
        if category == UseCategory::WashWater { 2.0 } else if category == UseCategory::SpillRetention { 1.0 } else { 0.0 }
    }
    sources [EN_858_TABLES]
    checks [
        "category=wash water" => "2", Published(&EN_858_TABLES, "table 2, category a, at least");
        "category=spill retention" => "1", Published(&EN_858_TABLES, "table 2, category c");
        "category=rain" => "0", Limit("rain alone brings no waste water that a factor could act on");
    ]
}
