//! What was seen at a unit that stands.

use crate::enquiry::date::{Clock, Day};
use crate::enquiry::fields::{Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_units::catalog::{DEG_C, DEG_F, GPM, IN, M3_H, MG_L, MM};
use stillrise_units::{Concentration, Flow, Length, Temperature};

choice! {
    /// How water looks that leaves a separator.
    Look {
        /// clear
        Clear "clear",
        /// a slight haze
        Hazy "hazy",
        /// like thin milk
        Milky "milky",
        /// an oil film or slugs of oil on it
        Film "oil film",
    }
}
choice! {
    /// What a jar of the water does when it stands.
    Jar {
        /// oil rises and the water is clear within an hour
        Soon "clears within an hour",
        /// clear after a night
        Overnight "clears overnight",
        /// stays as it is
        Stays "stays",
    }
}
choice! {
    /// What an oil alarm does.
    AlarmSign {
        /// silent, and little oil is found
        Silent "silent",
        /// silent although the oil layer is thick
        Missed "thick oil, no alarm",
        /// sounds, and oil is found
        True "oil found",
        /// sounds, and no oil is found
        False "no oil found",
    }
}
choice! {
    /// How a sample was taken.
    Taken {
        /// from the falling stream behind the unit
        Stream "from the falling stream",
        /// from mid-depth of the clear well
        Depth "from mid-depth",
        /// dipped from the surface
        Surface "from the surface",
        /// several samples put together over hours
        Composite "composite",
        /// the first water after a standstill
        First "first flush",
    }
}
keys! {
    /// What was measured or seen on one occasion, at a unit that stands and runs.
    Observed "observed" {
        /// The occasion
        name: Text = spec.like("\"composite of 3 May\"").needed();
        /// The day
        date: Day = spec.like("\"2026-05-04\"");
        /// Time of day, of the sample or of the alarm
        time: Clock = spec.like("\"07:30\"");
        /// Under which conditions, in a word of one's own; "good" marks that the unit ran well
        regime: Text = spec.like("\"good\"");
        /// How the sample was taken
        taken: Word<Taken> = spec.like("\"from the falling stream\"");
        /// Total oil that left
        oil_out: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0.01 mg/L", "100000 mg/L").like("\"85 mg/L\"");
        /// Total oil that arrived
        oil_in: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0.01 mg/L", "500000 mg/L").like("\"300 mg/L\"");
        /// Flow through the unit
        flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.01 gpm", "100000 gpm").like("\"60 gpm\"");
        /// Temperature of the water
        temperature: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-2 °C", "80 °C").like("\"55 °F\"");
        /// Thickness of the oil layer in the unit
        oil_layer: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "200 in").like("\"2 in\"");
        /// Depth of the sludge, from the bottom of the hopper
        sludge: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "200 in").like("\"8 in\"");
        /// How far the water stands above its usual level ahead of the mesh
        backed_up: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "100 in").like("\"3 in\"");
        /// How far the water stands below its usual level in the unit
        level_drop: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "200 in").like("\"4 in\"");
        /// How the water that leaves looks
        looks: Word<Look> = spec.like("\"milky\"");
        /// What a jar of it does when it stands
        jar: Word<Jar> = spec.like("\"stays\"");
        /// What the oil alarm does
        alarm: Word<AlarmSign> = spec.like("\"no oil found\"");
    }
}
