//! Formula: power to warm a mass of water

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{DEFINITION, HOME_HEATING};
use stillrise_units::{Mass, Power, Temperature, Time};

/// Specific heat of water in J/(kg K): one Btu for each pound and degree Fahrenheit.
const WATER: f64 = 4186.8;

formula! {
    /// Power that warms water from one temperature to another within a time, without what is lost meanwhile.
    ///
    /// Add the loss of the walls. Steel adds about an eighth of what its own mass of water would take. A heater in oily
    /// water runs at no more than 15 W/in2 of its sheath, below the lowest level, with a cut-out at low level (from
    /// memory).
    "warm-up-power" "Power to warm a mass of water"
    fn power(
        mass: Mass = "m" "mass of the water" [LB, KG: 0.0 .. 200000.0 in 0.0 .. 1e9];
        t_1: Temperature = "T_1" "temperature before" [DEG_F, DEG_C: 0.0 .. 60.0 in -50.0 .. 200.0];
        t_2: Temperature = "T_2" "temperature after" [DEG_F, DEG_C: 0.0 .. 60.0 in -50.0 .. 200.0];
        time: Time = "t" "time to warm it" [H, H: 0.5 .. 240.0 in 0.0 .. 1e6];
    ) -> Power = "P" "power" [KW, KW];
    reduced [mass KG, t_1 K, t_2 K, time S => WATT] { WATER * mass * (t_2 - t_1) / time }
    constants [WATER "c_w"]
    sources [DEFINITION]
    checks [
        "mass=333.6 lb, t_1=60 °F, t_2=120 °F, time=1.30 h" => "4.5 kW", Published(&HOME_HEATING, "40 gal by 60 °F: 20,016 Btu, 1.30 h of 4,500 W");
        "mass=667.2 lb, t_1=60 °F, t_2=120 °F, time=2.13 h" => "5.5 kW", Published(&HOME_HEATING, "80 gal by 60 °F: 40,032 Btu, 2.13 h of 5,500 W");
        "mass=14980 lb, t_1=40 °F, t_2=45 °F, time=24 h" => "0.9146 kW", ByHand("1,795 gal: 14,980 x 5 / 24 = 3,120.8 Btu/h at 0.29307 W");
        "mass=1 kg, t_1=10 °C, t_2=11 °C, time=1 h" => "0.001163000 kW", Limit("4,186.8 J in 3,600 s");
        "mass=1 kg, t_1=10 °C, t_2=11 °C, time=0 h" => "outside: result", Limit("not at once");
    ]
}
