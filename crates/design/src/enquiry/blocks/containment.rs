//! Pits, bunds and basins ahead of the separator.

use super::waters::{OilContent, SOLIDS, SOLIDS_FOUND};
use crate::enquiry::claimed_word::ClaimedWord;
use crate::enquiry::fields::{Flag, Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_units::catalog::{FT2, GAL, GPM, IN, KG, LB, M2, M3, M3_H, MG_L, MM, PERCENT};
use stillrise_units::{Area, Concentration, Flow, Length, Mass, Ratio, Volume};

choice! {
    /// What holds oil and water back ahead of the separator.
    ContainmentKind {
        /// a pit under or around equipment, often filled with stone
        Pit "pit",
        /// a walled or kerbed area
        Bund "bund",
        /// a basin that several areas drain to
        CatchBasin "catch basin",
    }
}
choice! {
    /// How the drain of a containment stands.
    DrainValve {
        /// open as a rule: rain runs through, and so does oil
        Open "open",
        /// closed as a rule, opened by somebody to drain rain
        Closed "closed",
        /// shuts by a device when oil comes
        Automatic "automatic",
        /// no drain at all; rain is pumped out
        None "none",
    }
}
/// When a containment is asked for its area whose volume is stated.
pub const OF_A_VOLUME: &str = "of a volume";

keys! {
    /// A pit, bund or basin that holds oil, rain and fire water back ahead of the separator.
    Containment "containment" {
        /// Its name
        name: Text = spec.like("\"transformer pit\"").needed();
        /// What it is
        kind: Word<ContainmentKind> = spec.like("\"pit\"");
        /// Its area in plan
        area: Quantity<Area> = spec.units(&FT2, &M2).between("1 ft2", "1000 acre").safe_smaller().like("\"195 m2\"")
            .asks("What is the area of the {name} in plan?")
            .asks_when(OF_A_VOLUME, "What is the area of the {name} in plan, or which surfaces run into it?")
            .usual("10 m2", "50 m2", "500 m2", "engineering judgement: the bund of a small tank to the pit of a large transformer");
        /// Usable depth, from the floor to the overflow or the lowest point of the rim
        depth: Quantity<Length> = spec.units(&IN, &MM).between("0.1 in", "1000 in").safe_smaller().like("\"40 in\"")
            .asks("How deep is the {name}, from its floor to its overflow or the lowest point of its rim?")
            .usual("0.15 m", "0.5 m", "1.5 m", "engineering judgement: a kerb to a deep pit");
        /// Depth of the stone fill, from the floor
        stone_depth: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "1000 in").safe_larger().like("\"40 in\"")
            .asks("Is the {name} filled with stone, and how deep?")
            .found("as deep as the pit, where there are transformers; none where none is usual");
        /// Voids of the stone fill
        voids: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("1 %", "100 %").safe_smaller().like("\"35 %\"")
            .asks("What share of the stone in the {name} is void?")
            .usual("0.3", "0.35", "0.4", "IEEE 980, Annex B: 35 % for stone of {1.5 in|38 mm}; the range is engineering judgement");
        /// Area taken by foundations and equipment
        deducted_area: Quantity<Area> = spec.units(&FT2, &M2).between("0 ft2", "1000 acre").safe_larger().like("\"18 m2\"")
            .asks("Which area do foundations and equipment take in the {name}?")
            .found("a tenth of its area, from none to a quarter; none in a basin");
        /// Volume of what else stands in it below the overflow: tanks, pipes, pads
        deducted_volume: Quantity<Volume> = spec.units(&GAL, &M3).between("0 gal", "10000000 gal").safe_larger().like("\"1400 gal\"");
        /// What it takes up to its overflow, all deducted, in place of depth, stone and deductions
        volume: Quantity<Volume> = spec.units(&GAL, &M3).between("0 gal", "10000000 gal").safe_smaller().like("\"16000 gal\"");
        /// Where it overflows and drains to: another containment by its name, or the separator
        drains_to: Text = spec.like("\"separator\"");
        /// How its drain stands: open, closed, automatic or none
        drain: ClaimedWord<DrainValve> = spec.like("\"closed\"")
            .asks("How does the drain of the {name} stand as a rule: open, closed, shut by a device, or is there none?")
            .found("open, the worst for a spill");
        /// Rate at which it is drained, where it is metered by a pump or a flow control
        drain_rate: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.01 gpm", "100000 gpm").safe_larger().like("\"5 gpm\"");
        /// Whether that pump or flow control also drains it while it rains, as a pump on a float does: its rate then comes with the storm
        drained_in_rain: Flag = spec.safe_larger().like("false")
            .asks("Does what drains the {name} also run while it rains, as a pump on a float does, or only afterwards?")
            .found("yes where rain is pumped out and there is no drain, or the drain stands open; else no");
        /// What shears the water on its way from there, by the names of their blocks
        shear: Vec<String> = spec.like("[\"pit pump\"]");
        /// Oil in the largest vessel that stands in it, where that is not the spill
        vessel_oil: Quantity<Volume> = spec.units(&GAL, &M3).between("0 gal", "1000000 gal").safe_larger().like("\"60 m3\"")
            .asks("How much oil is in the largest vessel that stands in the {name}?")
            .usual("0 m3", "0 m3", "60 m3", "nobody said; up to the {15900 gal|60 m3} of a large transformer (IEEE 980, Annex B)");
        /// Mass of that oil, in place of its volume
        vessel_oil_mass: Quantity<Mass> = spec.units(&LB, &KG).between("1 lb", "10000000 lb").safe_larger().like("\"50000 kg\"");
        /// Surfaces whose rain falls or runs into it, by their names, itself included; without them its own area
        covers: Vec<String> = spec.like("[\"transformer pit\"]");
        /// Whether a roof keeps the rain out
        roof: Flag = spec.like("true");
        /// Allowance beyond the oil that is prescribed, as a share of the oil
        freeboard: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "1000 %").safe_larger().like("\"10 %\"");
        /// What the water carries that is drained from it
        oil: Option<OilContent> = spec.like("{ kind = \"insulating-oil\", mean = \"15 mg/L\" }");
        /// Suspended solids in that water
        solids: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "100000 mg/L").safe_larger().like("\"20 mg/L\"")
            .asks(SOLIDS).found(SOLIDS_FOUND);
    }
}
