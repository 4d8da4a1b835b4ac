//! Formula: rise of a droplet by Stokes' law

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{API_421, DIESEL_EXAMPLE, NZ_PETROLEUM, RISE_TIME_TABLE, STOKES};
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
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
    ) -> Velocity = "v" "rise velocity" [FT_MIN, MM_S];
    typed { G * (rho_w - rho_o) * d * d / (18.0 * mu) }
    sources [STOKES, API_421]
    checks [
        "d=60 um, rho_w=1000 kg/m3, rho_o=830 kg/m3, mu=1.38 mPa s" => "0.000242 m/s",
            Published(&NZ_PETROLEUM, "retail site: 60 µm, 0.83, 1.38e-6 m2/s at 9 °C: 0.000242 m/s");
        "d=60 um, rho_w=1000 kg/m3, rho_o=830 kg/m3, mu=1.38 mPa s" => "0.870 m/h",
            Published(&NZ_PETROLEUM, "retail site, as a second text transcribes it: 0.870 m/h");
        "d=60 um, rho_w=1000 kg/m3, rho_o=830 kg/m3, mu=1.38 mPa s" => "0.869 m/h" within 1e-3 "the source cuts digits off",
            Published(&NZ_PETROLEUM, "retail site: 0.869 m/h");
        "d=150 um, rho_w=992 kg/m3, rho_o=900 kg/m3, mu=0.91 mPa s" => "0.0012385 m/s" within 7e-4 "the source takes g as 9.8 m/s2",
            Published(&DIESEL_EXAMPLE, "rise velocity 0.0012385 m/s");
        "d=150 um, rho_w=998.21 kg/m3, rho_o=850 kg/m3, mu=1.0016 cP" => "1.8143 mm/s" within 0.001 "42 s printed to the second",
            Published(&RISE_TIME_TABLE, "150 µm: 3 in in 42 s");
        "d=60 um, rho_w=998.21 kg/m3, rho_o=850 kg/m3, mu=1.0016 cP" => "0.30238 mm/s"
            within 0.06 "the table scatters 5 % about d squared",
            Published(&RISE_TIME_TABLE, "60 µm: 3 in in 4 min 12 s");
        "d=30 um, rho_w=998.21 kg/m3, rho_o=850 kg/m3, mu=1.0016 cP" => "0.07299 mm/s"
            within 0.06 "the table scatters 5 % about d squared",
            Published(&RISE_TIME_TABLE, "30 µm: 3 in in 17 min 24 s");
        "d=15 um, rho_w=998.21 kg/m3, rho_o=850 kg/m3, mu=1.0016 cP" => "0.018433 mm/s"
            within 0.06 "the table scatters 5 % about d squared",
            Published(&RISE_TIME_TABLE, "15 µm: 3 in in 1 h 8 min 54 s");
        "d=5 um, rho_w=998.21 kg/m3, rho_o=850 kg/m3, mu=1.0016 cP" => "0.0021091 mm/s"
            within 0.06 "the table scatters 5 % about d squared",
            Published(&RISE_TIME_TABLE, "5 µm: 3 in in 10 h 2 min 9 s");
        "d=60 um, rho_w=998.2072 kg/m3, rho_o=840 kg/m3, mu=1.001596 mPa s" => "0.3098 mm/s",
            ByHand("9.80665 x 158.2072 x 3.6e-9 / (18 x 1.001596e-3) = 3.0980e-4");
        "d=150 um, rho_w=999.1 kg/m3, rho_o=900 kg/m3, mu=1.138 cP" => "0.21021 ft/min" within 4e-4 "evaluated with g = 981 cm/s2",
            ByHand("design example of a basin at 15 °C");
        "d=150 um, rho_w=1000 kg/m3, rho_o=0.9 g/cm3, mu=1 cP" => "0.241388 ft/min" within 4e-4 "evaluated with g = 981 cm/s2",
            ByHand("0.0241388 ft/min x 0.1 / 0.01 poise: the 150 µm form of the API chain");
        "d=150 um, rho_w=1000 kg/m3, rho_o=1000 kg/m3, mu=1 cP" => "0 mm/s", Limit("oil as heavy as the water stays");
        "d=60 um, rho_w=1000 kg/m3, rho_o=1050 kg/m3, mu=1 cP" => "-0.0980665 mm/s",
            Limit("heavier oil sinks: 9.80665 x 50 x 3.6e-9 / 0.018 m/s");
    ]
}

/// The page's number, without its guards, on plain numbers in SI.
pub(super) fn plain(d: f64, rho_w: f64, rho_o: f64, mu: f64) -> f64 {
    G.value * (rho_w - rho_o) * d * d / (18.0 * mu)
}
