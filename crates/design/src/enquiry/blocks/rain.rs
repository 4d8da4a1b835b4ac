//! Surfaces and the rain on them.

use super::droplets::Droplets;
use super::waters::{OilContent, SOLIDS, SOLIDS_FOUND};
use crate::enquiry::fields::{Flag, Text};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::rain::surfaces;
use stillrise_units::catalog::{FT, FT2, IN, IN_H, M, M2, MG_L, MIN, MM, MM_H, ONE, PERCENT, YR};
use stillrise_units::{Area, Concentration, Length, Ratio, Time, Velocity};

names! {
    surface_names = surfaces::SURFACES;
}

/// When a surface under a canopy is asked for its runoff, of which no kind is said.
pub const PAVED: &str = "paved";

/// When a surface of a kind is asked for its runoff.
pub const OF_A_KIND: &str = "of a kind";

keys! {
    /// A surface that drains to the unit.
    Surface "surface" {
        /// Its name
        name: Text = spec.like("\"fuelling apron\"");
        /// Its area in plan
        area: Quantity<Area> = spec.units(&FT2, &M2).between("1 ft2", "1000 acre").safe_larger().like("\"0.62 acre\"").needed();
        /// What it is made of
        kind: Text = spec.named(surface_names).like("\"concrete\"");
        /// Runoff coefficient, in place of the one of its kind
        runoff: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "1").safe_larger().like("0.9")
            .asks("What is the runoff coefficient of the {name}, or what is it paved with?")
            .asks_when(PAVED, "What is the {name} paved with?")
            .asks_when(OF_A_KIND, "Does the {name} run off like other {kind}, or is a local coefficient prescribed?")
            .found("that of its kind in the handbook; 0.9, from 0.7 to 0.95, where no kind is said");
        /// Whether a canopy keeps vertical rain off it
        canopy: Flag = spec.safe_smaller().like("true");
        /// Height of the open side under the canopy
        canopy_height: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "100 ft").like("\"14.5 ft\"")
            .asks("How high is the open side under the canopy over the {name}?")
            .usual("10 ft", "15 ft", "20 ft", "engineering judgement: clearance for road vehicles");
        /// Longest side of the canopy
        canopy_side: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "3000 ft").like("\"60 ft\"")
            .asks("How long is the longest side of the canopy over the {name}?")
            .found("twice as long as wide, from a square to four times as long as wide, by its area in plan");
    }
}
keys! {
    /// The rain that is designed for, and what it carries.
    Rain "rain" {
        /// File with depth or intensity by duration and return period
        table: Text = spec.like("\"rain.csv\"");
        /// Design intensity, in place of a table
        intensity: Quantity<Velocity> = spec.units(&IN_H, &MM_H).between("0.01 in/h", "30 in/h").safe_larger().like("\"3.1 in/h\"")
            .asks("Which rain intensity, or which table and return period, is to be designed for?")
            .usual("25 mm/h", "75 mm/h", "150 mm/h", "engineering judgement: short storms of a temperate site; take the local table");
        /// How long a rain of that intensity lasts, in place of a table
        duration: Quantity<Time> = spec.units(&MIN, &MIN).between("1 min", "7 d").safe_larger().like("\"30 min\"")
            .asks("How long does a rain of that intensity last, or which local table of rain is to be used?")
            .usual("10 min", "30 min", "120 min", "engineering judgement: intense rain of a temperate site lasts a quarter to two hours");
        /// Return period
        return_period: Quantity<Time> = spec.units(&YR, &YR).between("0.1 yr", "1000 yr").like("\"10 yr\"")
            .asks("Which return period does the authority ask for?")
            .usual("2 yr", "10 yr", "25 yr", "common practice for drainage of paved yards");
        /// Time of concentration, if it is stated
        concentration_time: Quantity<Time> = spec.units(&MIN, &MIN).between("1 min", "24 h").safe_smaller().like("\"10 min\"")
            .asks("What is the time of concentration, or the longest drainage path and its slope?")
            .usual("5 min", "5 min", "15 min", "5 minutes is the least in use for small paved sites (Austin TX Drainage Criteria Manual 2.4.2)");
        /// Longest path of the water over the surface
        path: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "30000 ft").like("\"250 ft\"")
            .asks("How long is the longest path of the water over the surface?");
        /// Slope along that path
        slope: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0.01 %", "50 %").like("\"1.5 %\"")
            .asks("What is the slope along the longest path of the water?");
        /// Depth of rain in a year
        annual: Quantity<Length> = spec.units(&IN, &MM).between("0.1 in", "500 in").like("\"38 in\"")
            .asks("How much rain falls in a year?")
            .usual("12 in", "36 in", "60 in", "engineering judgement: dry to wet temperate sites");
        /// Depth of the rain that containments must hold, such as that of 24 hours once in 25 years
        event_depth: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "100 in").safe_larger().like("\"5 in\"")
            .asks("How deep is the rain that the containments must hold, such as that of 24 hours once in 25 years?")
            .usual("3 in", "5 in", "9 in", "engineering judgement: the 24-hour rain of 25 years, which US EPA calls the proper freeboard, at dry to wet temperate sites");
        /// What the rain water carries
        oil: Option<OilContent> = spec.like("{ kind = \"diesel\", mean = \"60 mg/L\" }");
        /// Its droplets, where they differ from those of the other waters
        droplets: Option<Droplets> = spec.like("{ d50 = \"90 um\", spread = 2 }");
        /// Suspended solids in the rain water
        solids: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "100000 mg/L").safe_larger().like("\"150 mg/L\"")
            .asks(SOLIDS).found(SOLIDS_FOUND);
    }
}
