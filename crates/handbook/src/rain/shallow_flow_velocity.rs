//! Formula: velocity of shallow concentrated flow, TR-55

use crate::page::Evidence::{Limit, Memory, Published};
use crate::sources::{NEH_15, TR_55};
use crate::{choice, formula};
use stillrise_units::math::sqrt;
use stillrise_units::{Ratio, Velocity};

choice! {
    /// Over what the water runs.
    ShallowSurface {
        /// pavement and small gullies
        Paved "paved",
        /// unpaved ground (in one table named grassed waterway)
        Unpaved "unpaved",
    }
}

/// Feet a second at a slope of one.
const PAVED: f64 = 20.3282;
const UNPAVED: f64 = 16.1345;

formula! {
    /// Velocity of water that has gathered from a sheet into shallow threads, down to the first gutter or ditch.
    ///
    /// Other surfaces run slower: short grass 7, forest litter 2.5 ft/s at a slope of one. Drainage manuals
    /// take no slope below 0.5 %.
    "shallow-flow-velocity" "Velocity of shallow concentrated flow, TR-55"
    fn velocity(
        slope: Ratio = "S" "slope of the path" [PERCENT, PERCENT: 0.5 .. 20.0 in 0.0 .. 200.0];
        surface: ShallowSurface = "surface" "over what the water runs";
    ) -> Velocity = "V" "velocity" [FT_S, M_S];
    reduced [slope ONE => FT_S] {
        let k = if surface == ShallowSurface::Paved { PAVED } else { UNPAVED };
        k * sqrt(slope)
    }
    constants [PAVED "k_paved", UNPAVED "k_unpaved"]
    sources [TR_55, NEH_15]
    checks [
        "slope=0.01, surface=unpaved" => "1.6 ft/s", Memory("TR-55 example 3-1: 1.6 ft/s");
        "slope=1, surface=paved" => "20.328 ft/s", Published(&NEH_15, "table 15-3, pavement and small gullies, as other texts quote it");
        "slope=1, surface=unpaved" => "16.135 ft/s" within 4e-5 "rounded up from 16.1345", Published(&NEH_15, "table 15-3, grassed waterways, as other texts quote it");
        "slope=0, surface=paved" => "0 ft/s", Limit("level water stands");
    ]
}
