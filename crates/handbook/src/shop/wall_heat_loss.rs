//! Formula: heat that a wall loses

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{HEAT_LOSS, WAC_SURFACES};
use stillrise_units::{Area, Length, Power, Ratio, Temperature};

formula! {
    /// Steady heat flow from the water through one layer of insulation and the outside surface to the air.
    ///
    /// Steel and the inside surface hardly resist and are left out. The outside surface counts 0.030 m2 K/W (0.17 h ft2
    /// °F/Btu) in wind; 0.029 is 6 Btu/(h ft2 °F) at 15 mph. Insulation of 0.30 Btu in/(h ft2 °F) is 0.0433 W/(m K), of
    /// 0.26 0.0375. Thickness 0 is the bare wall: some fifteen times the loss of 2 in. Heaters get a quarter more (common
    /// practice); nozzles, legs and covers are weak points and lose more than the wall.
    "wall-heat-loss" "Heat that a wall loses"
    fn loss(
        area: Area = "A" "area of the wall" [FT2, M2: 0.0 .. 500.0 in 0.0 .. 1e6];
        t_in: Temperature = "T_in" "temperature kept inside" [DEG_F, DEG_C: 0.0 .. 60.0 in -50.0 .. 200.0];
        t_out: Temperature = "T_out" "temperature of the air outside" [DEG_F, DEG_C: -50.0 .. 40.0 in -100.0 .. 100.0];
        thickness: Length = "x" "thickness of the insulation" [IN, MM: 0.0 .. 200.0 in 0.0 .. 10000.0];
        k: Ratio = "k" "conductivity of the insulation in W/(m K)" [ONE, ONE: 0.02 .. 0.1 in 0.0001 .. 100.0];
        surface: Ratio = "r_o" "resistance of the outside surface in m2 K/W" [ONE, ONE: 0.02 .. 0.2 in 0.001 .. 10.0];
    ) -> Power = "P" "heat lost" [WATT, WATT];
    reduced [area M2, t_in K, t_out K, thickness M, k ONE, surface ONE => WATT] { area * (t_in - t_out) / (thickness / k + surface) }
    sources [HEAT_LOSS, WAC_SURFACES]
    checks [
        "area=280 ft2, t_in=40 °F, t_out=-10 °F, thickness=2 in, k=0.0375, surface=0.02935" => "522 W",
            ByHand("k 0.26 and 6 Btu/(h ft2 °F): U 0.12724, x 280 x 50 = 1,781 Btu/h");
        "area=280 ft2, t_in=40 °F, t_out=-10 °F, thickness=2 in, k=0.04327, surface=0.02935" => "600 W",
            ByHand("k 0.30: U 0.14634, x 280 x 50 = 2,049 Btu/h");
        "area=10 m2, t_in=5 °C, t_out=-15 °C, thickness=0 mm, k=0.04, surface=0.04" => "5000.000 W", Limit("bare: the surface alone, 10 x 20 / 0.04");
        "area=10 m2, t_in=5 °C, t_out=5 °C, thickness=50 mm, k=0.04, surface=0.04" => "0 W", Limit("as warm outside as in");
    ]
}
