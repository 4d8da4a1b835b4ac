//! Formula: droplets that rise onto a fibre

use crate::formula;
use crate::page::Evidence::Limit;
use crate::sources::{JUDGEMENT, SURFACE_LOADING};
use stillrise_units::math::max;
use stillrise_units::{Ratio, Velocity};

formula! {
    /// Share of the water that would meet the fibre from which droplets rise onto it.
    ///
    /// The captured flux is rise velocity times the fibre's width, as for any surface, while every
    /// point of its underside is reached from upstream: water that runs level or upwards. Where it
    /// runs down against the oil, the underside lies in the fibre's lee and nothing is to be counted. For
    /// small shares only; a fibre of a finite length, or steep wires, catch less. What sinks is not counted.
    "fibre-gravity" "Droplets that rise onto a fibre"
    fn gravity(
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.0 .. 10.0 in -1e9 .. 1e9];
        u: Velocity = "U" "velocity on the face of the bed" [FT_MIN, MM_S: 0.1 .. 20.0 in 1e-6 .. 1e6];
    ) -> Ratio = "eta_G" "share by rising" [ONE, ONE];
    reduced [v M_S, u M_S => ONE] { max(v, 0.0) / u }
    sources [SURFACE_LOADING, JUDGEMENT]
    checks [
        "v=0.03 mm/s, u=3 mm/s" => "0.01000", Limit("whole numbers");
        "v=3 mm/s, u=3 mm/s" => "1.000", Limit("a droplet as fast as the water: the fibre's own width");
        "v=0 mm/s, u=3 mm/s" => "0.000000", Limit("what floats with the water never rises onto it");
        "v=-1 mm/s, u=3 mm/s" => "0.000000", Limit("what sinks is not counted");
    ]
}
