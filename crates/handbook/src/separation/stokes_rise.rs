//! Formula: rise of a droplet by Stokes' law

use crate::formula;
use crate::page::Evidence::{ByHand, Published};
use crate::sources::{API_421, RISE_TIME_TABLE, STOKES};
use stillrise_units::{Density, G, Length, Velocity, Viscosity};

formula! {
    /// Terminal velocity of one rigid droplet in creeping flow, far from walls and other drops.
    ///
    /// Holds within 5 % while the droplet's Reynolds number stays below about 0.3: up to some
    /// 150 µm for light oil in water at 20 °C. Above that it is fast; `drag-rise` has no such limit.
    /// An oil heavier than the water gives a negative velocity: it sinks.
    "stokes-rise" "Rise of a droplet by Stokes' law"
    fn rise(
        d: Length = "d" "droplet diameter" [UM, UM: 1.0 .. 150.0 in 0.0 .. 10000.0];
        rho_w: Density = "rho_w" "density of the water" [KG_M3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [KG_M3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
    ) -> Velocity = "v" "rise velocity" [FT_MIN, MM_S];
    typed { G * (rho_w - rho_o) * d * d / (18.0 * mu) }
    sources [STOKES, API_421]
    checks [
        "d=150 um, rho_w=998.2 kg/m3, rho_o=848.47 kg/m3, mu=1.0016 cP" => "1.8143 mm/s" within 0.06 "the table scatters 5 % about d squared",
            Published(&RISE_TIME_TABLE, "150 µm: 3 in in 42 s");
        "d=60 um, rho_w=998.2072 kg/m3, rho_o=840 kg/m3, mu=1.001596 mPa s" => "0.3098 mm/s",
            ByHand("9.80665 x 158.2072 x 3.6e-9 / (18 x 1.001596e-3) = 3.0980e-4");
    ]
}
