//! Droplets of the free oil.

use crate::enquiry::fields::{Curve, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_handbook::separation::remaining_oil::DropletLaw;
use stillrise_units::catalog::{ONE, UM};
use stillrise_units::{Length, Ratio};

choice! {
    /// What a distribution of droplets counts.
    DropletBase {
        /// shares of the oil's volume
        Volume "volume",
        /// shares of the number of droplets
        Number "number",
    }
}
choice! {
    /// What a shear leaves of the droplets that reach it.
    AfterPump {
        /// another distribution, log-normal about the median that the shear leaves
        Replaced "replaced",
        /// the same, with all that is larger than what survives broken down to that
        Capped "capped",
    }
}
keys! {
    /// Droplets of the free oil at the inlet, by volume.
    Droplets "droplets" {
        /// Half of the free oil's volume is in larger droplets
        d50: Quantity<Length> = spec.units(&UM, &UM).between("0.1 um", "5000 um").safe_smaller().like("\"90 um\"")
            .asks("Has the droplet size[ of the {name}] at the separator been measured, or what shears the oil ahead of it?")
            .found("by the kind of place, from the handbook; 75 µm where none is named");
        /// The same ahead of a pump, where the pump breaks them further
        arriving: Quantity<Length> = spec.units(&UM, &UM).between("0.1 um", "5000 um").safe_smaller().like("\"120 um\"")
            .asks("Has the droplet size[ of the {name}] been measured ahead of the pump or valve that breaks the oil?")
            .found("by the kind of place, from the handbook; 75 µm where none is named");
        /// Geometric standard deviation of the diameters, of the log-normal law
        spread: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1.01", "10").safe_larger().like("2")
            .asks("How far do the droplet sizes spread: one source, or several mixed?")
            .usual("1.5", "2", "3", "engineering judgement")
            .found("by the kind of place, from the handbook");
        /// How the volume spreads over size
        law: Word<DropletLaw> = spec.like("\"log-normal\"");
        /// Exponent of the Rosin-Rammler law
        exponent: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.3", "10").safe_smaller().like("2.6")
            .asks("How far do the droplet sizes spread: one source, or several mixed?")
            .usual("1.5", "2.6", "3.5", "from memory: 2.1 to 2.8 for oil sheared in pipes");
        /// Mugele and Evans' delta, of the upper-limit law
        delta: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.2", "5").safe_smaller().like("0.72")
            .asks("How far do the droplet sizes spread: one source, or several mixed?")
            .usual("0.5", "0.72", "1.2", "Schwarz and Bezemer 1956, from memory");
        /// Largest droplet: the end of the upper-limit law; larger ones of another law are broken down to it
        largest: Quantity<Length> = spec.units(&UM, &UM).between("1 um", "100000 um").safe_smaller().like("\"400 um\"");
        /// Measured at the unit: size, and share of the volume that is finer
        table: Curve = spec.like("[\"20 um: 5 %\", \"60 um: 40 %\", \"200 um: 100 %\"]");
        /// Whether d50 or table count volume or droplets
        base: Word<DropletBase> = spec.like("\"volume\"");
        /// What the hardest shear ahead leaves of the distribution, where it breaks the droplets
        after_pump: Word<AfterPump> = spec.like("\"replaced\"");
    }
}
