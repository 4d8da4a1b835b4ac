//! A screen ahead.

use crate::enquiry::fields::{Flag, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::hydraulics::bar_screen_loss::BarShape;
use stillrise_units::catalog::{DEG, FT_S, IN, M_S, MM, PERCENT};
use stillrise_units::{Angle, Length, Ratio, Velocity};

keys! {
    /// A screen ahead of pump and separator: bars, gratings or baskets.
    Screen "screen" {
        /// Whether one stands ahead
        exists: Flag = spec.safe_smaller().like("true");
        /// Clear opening between its bars
        spacing: Quantity<Length> = spec.units(&IN, &MM).between("0.5 mm", "300 mm").safe_larger().like("\"0.5 in\"");
        /// Thickness of its bars, across the flow
        bar: Quantity<Length> = spec.units(&IN, &MM).between("0.5 mm", "100 mm").safe_larger().like("\"0.375 in\"")
            .usual("5 mm", "10 mm", "15 mm", "common practice: flat bars {0.39 in|10 mm} apart");
        /// Section of its bars
        shape: Word<BarShape> = spec.like("\"rectangular\"");
        /// Angle of the bars over the horizontal
        angle: Quantity<Angle> = spec.units(&DEG, &DEG).between("10 deg", "90 deg").safe_larger().like("\"60 deg\"")
            .usual("45 deg", "60 deg", "90 deg", "common practice: raked by hand at 45 to 60 degrees, baskets upright");
        /// Velocity of the water ahead of it at the largest flow
        velocity: Quantity<Velocity> = spec.units(&FT_S, &M_S).between("0.05 m/s", "3 m/s").safe_larger().like("\"2 ft/s\"")
            .usual("0.3 m/s", "0.6 m/s", "0.9 m/s", "from memory: textbooks of wastewater ask for {1.3 to 3 ft/s|0.4 to 0.9 m/s}, so that grit does not settle and nothing is pressed through");
        /// Share of the openings that is covered when it is cleaned
        covered: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "90 %").safe_larger().like("\"50 %\"")
            .usual("0.25", "0.5", "0.7", "engineering judgement: cleaned when half is covered");
    }
}
