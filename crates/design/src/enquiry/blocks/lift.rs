//! The rising main of the feed pump, and its curve.

use crate::enquiry::fields::Count;
use crate::enquiry::keys::{Quantity, keys};
use crate::enquiry::pump_curve::PumpCurve;
use stillrise_units::catalog::{FT, IN, M, MIL, MM, ONE};
use stillrise_units::{Length, Ratio};

keys! {
    /// The rising main of the feed pump, and its curve.
    Lift "lift" {
        /// Static lift: from the water in the sump where the pump stops up to the water, or to the highest point, where the main ends
        static_lift: Quantity<Length> = spec.units(&FT, &M).between("-100 ft", "1000 ft").safe_larger().like("\"14 ft\"");
        /// Length of the rising main
        length: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "30000 ft").safe_larger().like("\"120 ft\"");
        /// Bore of the rising main
        bore: Quantity<Length> = spec.units(&IN, &MM).between("10 mm", "2000 mm").safe_smaller().like("\"3.068 in\"");
        /// Roughness of its wall
        roughness: Quantity<Length> = spec.units(&MIL, &MM).between("0 mm", "10 mm").safe_larger().like("\"0.15 mm\"");
        /// Sum of the loss coefficients of its fittings, entry and exit included
        fittings: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0", "200").safe_larger().like("5");
        /// Curve of one pump, rows of a flow and the head at it
        curve: PumpCurve = spec.like("[\"0 gpm: 42 ft\", \"60 gpm: 34 ft\", \"110 gpm: 18 ft\"]");
        /// Pumps of that curve that can run at once, where no rate is stated
        pumps: Count = spec.like("2");
        /// Largest grain that passes the pump
        passage: Quantity<Length> = spec.units(&IN, &MM).between("0.5 mm", "300 mm").safe_smaller().like("\"2 in\"");
    }
}
