//! Where the water goes.

use crate::enquiry::fields::{Flag, Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use crate::enquiry::range::pipe_names;
use stillrise_handbook::choice;
use stillrise_handbook::hydraulics::pipes;
use stillrise_units::catalog::{FT, GPM, M, M3_H, PERCENT};
use stillrise_units::{Flow, Length, Ratio};

names! {
    material_names = pipes::MATERIALS;
}

choice! {
    /// Where the water goes.
    Receiver {
        /// to a storm drain or a water body
        StormWater "storm water",
        /// to a sewer with a treatment works
        SanitarySewer "sanitary sewer",
    }
}
keys! {
    /// Where the water goes and what holds it back.
    Outlet "outlet" {
        /// Storm water or sanitary sewer
        to: Word<Receiver> = spec.like("\"storm water\"");
        /// Whether rain water is allowed in the sewer
        rain_allowed: Flag = spec.safe_smaller().like("true");
        /// Invert at the outfall, in the site's datum
        invert: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").safe_larger().like("\"97.60 ft\"");
        /// Water level at the outfall, in the site's datum
        tailwater: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").safe_larger().like("\"97.10 ft\"");
        /// Most that may leave
        flow_cap: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").safe_smaller().like("\"80 gpm\"");
        /// Nominal size of the outlet pipe, in place of the unit's
        pipe: Text = spec.named(pipe_names).like("\"6 in\"");
        /// Length of the outlet pipe
        length: Quantity<Length> = spec.units(&FT, &M).between("0 ft", "30000 ft").safe_larger().like("\"40 ft\"")
            .asks("How long is the pipe from the separator to the outfall?")
            .usual("5 ft", "20 ft", "200 ft", "engineering judgement");
        /// Slope of the outlet pipe
        slope: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "50 %").safe_smaller().like("\"1 %\"")
            .asks("At what slope can the outlet pipe be laid?")
            .usual("0.5 %", "1 %", "2 %", "common practice for building drains");
        /// Material of the outlet pipe
        material: Text = spec.named(material_names).like("\"pvc\"")
            .asks("What is the outlet pipe made of?")
            .found("the first material of the handbook's list, with the range of roughness of the others");
    }
}
