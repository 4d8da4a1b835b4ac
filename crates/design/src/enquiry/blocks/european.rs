//! What is asked for by the European standards for separators of light liquids.

use crate::enquiry::fields::{Count, Flag, Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_handbook::separation::en858_density_factor::SeparatorSystem;
use stillrise_handbook::separation::en858_impediment_factor::UseCategory;
use stillrise_handbook::separation::en858_sludge_trap::SludgeLoad;
use stillrise_units::Flow;
use stillrise_units::catalog::L_S;

choice! {
    /// Class of a separator by EN 858-1; a type test gives it.
    SeparatorClass {
        /// coalescing, 5 mg/L in the type test
        One "I",
        /// gravity, 100 mg/L in the type test
        Two "II",
    }
}
choice! {
    /// Class of covers by EN 124.
    LoadClass {
        /// pedestrians and cyclists, 15 kN
        A15 "A15",
        /// footways and car parks, 125 kN
        B125 "B125",
        /// kerbside channels, 250 kN
        C250 "C250",
        /// carriageways, 400 kN
        D400 "D400",
        /// docks and other high wheel loads, 600 kN
        E600 "E600",
        /// aircraft pavements, 900 kN
        F900 "F900",
    }
}
/// How the category of use is asked for.
pub const CATEGORY: &str =
    "Is the water of washing or a process, or rain from a place where oil may spill, or rain with little oil alone?";

keys! {
    /// What is asked for by EN 858; our basis is printed beside it, and what it asks for is no basis of ours.
    European "european" {
        /// Class that is asked for
        class: Word<SeparatorClass> = spec.like("\"I\"");
        /// Report of the type test by which the unit has a class
        type_test: Text = spec.like("\"report 12, 2024\"");
        /// Whether a bypass for heavy rain is asked for
        bypass: Flag = spec.like("false");
        /// Class of the covers by EN 124
        load_class: Word<LoadClass> = spec.like("\"D400\"");
        /// Category of use, which gives the impediment factor
        category: Word<UseCategory> = spec.like("\"wash water\"")
            .asks(CATEGORY)
            .found("wash water, whose factor is the larger");
        /// Taps by their bore; those that feed a high-pressure unit are left out
        taps: Vec<String> = spec.like("[\"DN15 x 2\", \"DN20 x 1\"]");
        /// High-pressure units
        high_pressure: Count = spec.like("1");
        /// Automatic vehicle washes
        automatic_wash: Count = spec.like("1");
        /// Rain flow by the local rule, in place of our storm's
        rain_flow: Quantity<Flow> = spec.units(&L_S, &L_S).between("0 L/s", "10000 L/s").safe_larger().like("\"6 L/s\"");
        /// How much sludge comes
        sludge_load: Word<SludgeLoad> = spec.like("\"medium\"")
            .asks("How much sludge comes: little, as from clean rain; medium, as from filling stations and hand washing; or much, as from trucks and site vehicles?")
            .found("medium; large where trucks, buses or site vehicles are washed");
        /// Arrangement of the system
        system: Word<SeparatorSystem> = spec.like("\"S-I-P\"")
            .asks("Is a gravity separator (class II), a coalescing one (class I) or both in series asked for?")
            .found("the plain arrangement of the class that is asked for; a gravity separator alone, whose density factor is the largest, where none is");
    }
}
