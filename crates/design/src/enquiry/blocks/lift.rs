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
        length: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "30000 ft").safe_larger().like("\"120 ft\"")
            .asks("How long is the rising main from pump to separator?")
            .usual("5 m", "30 m", "150 m", "engineering judgement: a pump beside the unit, across a yard, across a site");
        /// Bore of the rising main
        bore: Quantity<Length> = spec.units(&IN, &MM).between("10 mm", "2000 mm").safe_smaller().like("\"3.068 in\"")
            .asks("What bore does the rising main have?")
            .found("the smallest nominal pipe in which the water stays below {4.9 ft/s|1.5 m/s}");
        /// Roughness of its wall
        roughness: Quantity<Length> = spec.units(&MIL, &MM).between("0 mm", "10 mm").safe_larger().like("\"0.15 mm\"")
            .asks("What is the rising main made of?")
            .usual("0.0015 mm", "0.15 mm", "1.5 mm", "equivalent sand roughness of pipes: smooth plastic, steel with some rust, old iron");
        /// Sum of the loss coefficients of its fittings, entry and exit included
        fittings: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0", "200").safe_larger().like("5")
            .asks("Which bends, valves and check valves are in the rising main?")
            .usual("2.5", "5", "10", "entry 0.5, four elbows of 0.45, check valve 1.5, gate valve 0.1 and exit 1.0 after Crane make 4.9; half and twice as much");
        /// Curve of one pump, rows of a flow and the head at it
        curve: PumpCurve = spec.like("[\"0 gpm: 42 ft\", \"60 gpm: 34 ft\", \"110 gpm: 18 ft\"]");
        /// Pumps of that curve that can run at once, where no rate is stated
        pumps: Count = spec.like("2");
        /// Largest grain that passes the pump
        passage: Quantity<Length> = spec.units(&IN, &MM).between("0.5 mm", "300 mm").safe_smaller().like("\"2 in\"");
    }
}
