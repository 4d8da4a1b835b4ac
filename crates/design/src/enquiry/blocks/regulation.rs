//! Methods that an authority asks for, and what they ask that no other block holds.

use crate::enquiry::fields::{Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_handbook::rain::curve_numbers::SoilGroup;
use stillrise_handbook::rain::graphical_peak::StormType;
use stillrise_units::catalog::{FT, FT_MIN, IN, M, MIN, MM, MM_S, ONE, PERCENT, UM};
use stillrise_units::{Length, Ratio, Time, Velocity};

choice! {
    /// A method by which authorities size or judge; `regulation.methods` names them.
    Regulator {
        /// basin of parallel channels by API Publication 421
        Api421 "api-421",
        /// nominal size by EN 858-2
        En858 "en-858-2",
        /// nominal size by the British guideline PPG3
        Ppg3 "ppg3",
        /// droplets of 60 µm by the manual of Washington State
        Washington "washington",
        /// droplets of 60 µm by the New Zealand guideline for petroleum sites
        NewZealand "new-zealand",
        /// detention and droplets of 20 µm by US guide specifications
        GuideSpecification "guide-specification",
        /// volume as flow times residence time
        ResidenceTime "residence-time",
        /// surface as flow over rise velocity
        OverflowRate "overflow-rate",
        /// peak flow by the rational method
        Rational "rational",
        /// the same with the time of concentration of airfields
        Faa "faa",
        /// peak flow by curve number and the graphical method of TR-55
        Tr55 "tr-55",
        /// water-quality volume and flow, the rest past the unit
        WaterQuality "water-quality",
    }
}
keys! {
    /// Methods that an authority asks for: each is worked for the job, and the unit is judged by it. It sizes no unit.
    Regulation "regulation" {
        /// Methods that are asked for
        methods: Vec<String> = spec.like("[\"washington\", \"rational\"]").needed();
        /// Who asks for them
        authority: Text = spec.like("\"the county\"");
        /// Residence time that the manual asks for
        residence: Quantity<Time> = spec.units(&MIN, &MIN).between("10 s", "48 h").safe_larger().like("\"30 min\"")
            .asks("Which residence time, in minutes, does the authority's manual ask for?");
        /// Droplet that the manual designs for, of the methods by residence time and by overflow rate
        droplet: Quantity<Length> = spec.units(&UM, &UM).between("5 um", "1000 um").safe_smaller().like("\"150 um\"")
            .asks("For which droplet does the authority's manual design?")
            .usual("60 um", "150 um", "150 um", "150 µm, the droplet of API Publication 421 (1990); manuals that are stricter take 60 µm");
        /// Rise velocity that the manual prints, in place of one worked for the oil
        rise: Quantity<Velocity> = spec.units(&FT_MIN, &MM_S).between("0.0001 ft/min", "10 ft/min").safe_smaller().like("\"0.033 ft/min\"");
        /// Depth of the water that the manual designs for, of the method by residence time
        depth: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "20 ft").safe_larger().like("\"4 ft\"")
            .asks("For which depth of water does the authority's manual design?")
            .usual("3 ft", "4 ft", "8 ft", "the depths of API Publication 421 (1990), {3 to 8 ft|0.91 to 2.44 m}; {4 ft|1.22 m} is our proposal");
        /// Curve number of the area, in place of those of its surfaces
        curve_number: Quantity<Ratio> = spec.units(&ONE, &ONE).between("30", "100").safe_larger().like("98")
            .asks("Which curve number does the authority ask for on the area that drains to the unit?");
        /// Group of the soil, for the curve numbers of surfaces that are not paved
        soil_group: Word<SoilGroup> = spec.like("\"C\"")
            .asks("To which hydrologic soil group (A to D) does the ground below the unpaved surfaces belong?")
            .found("group D, which sheds most");
        /// Distribution of the day's rain
        storm_type: Word<StormType> = spec.like("\"type-ii\"")
            .asks("Which 24-hour distribution of rain (I, IA, II or III) holds at the site?")
            .found("type II, whose peak is the sharpest");
        /// Depth of the design rain of 24 hours, in place of the rain table's
        rain_24h: Quantity<Length> = spec.units(&IN, &MM).between("0.1 in", "60 in").safe_larger().like("\"5.2 in\"")
            .asks("How deep is the design rain of 24 hours at the site?");
        /// Depth of the rain of 24 hours and two years, for sheet flow
        rain_2yr: Quantity<Length> = spec.units(&IN, &MM).between("0.1 in", "60 in").safe_larger().like("\"3.3 in\"")
            .asks("How deep is the rain of 24 hours that comes once in two years?");
        /// Depth of the water-quality rain
        treated_depth: Quantity<Length> = spec.units(&IN, &MM).between("0.1 in", "10 in").safe_larger().like("\"1 in\"")
            .asks("How deep is the rain whose runoff the authority wants treated (the water-quality rain)?")
            .usual("0.8 in", "1 in", "1.2 in", "{1 in|25 mm}, New Hampshire Env-Wq 1504.10; {0.8 to 1.2 in|20 to 30 mm} are typical, by slides of a sizing course");
        /// Share of the area that is sealed
        sealed: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "100 %").safe_larger().like("\"90 %\"")
            .asks("Which share of the area that drains to the unit is paved or under roofs?")
            .found("by the kinds of its surfaces: those that shed seven tenths or more count as sealed");
    }
}
