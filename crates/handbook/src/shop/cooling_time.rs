//! Formula: time for standing water to cool

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::FREEZE_ASHRAE;
use stillrise_units::math::ln;
use stillrise_units::{Mass, Power, Temperature, Time};

/// Specific heat of water in J/(kg K): one Btu for each pound and degree Fahrenheit.
const WATER: f64 = 4186.8;

formula! {
    /// Time in which water that nobody heats cools from one temperature to another, as after a power failure.
    ///
    /// The loss is the one at the first temperature; it falls as the water cools. With the end at 0 °C (32 °F) it is the
    /// time until the first ice. Water is taken as mixed: dead corners, sample lines and stems of floats freeze sooner. It
    /// never cools to the temperature of the air or below.
    "cooling-time" "Time for standing water to cool"
    fn time(
        mass: Mass = "m" "mass of the water" [LB, KG: 0.1 .. 200000.0 in 0.0 .. 1e9];
        loss: Power = "P_1" "heat lost at the first temperature" [WATT, WATT: 1.0 .. 50000.0 in 0.0 .. 1e9];
        t_1: Temperature = "T_1" "temperature at first" [DEG_F, DEG_C: 0.0 .. 60.0 in -50.0 .. 200.0];
        t_2: Temperature = "T_2" "temperature at the end" [DEG_F, DEG_C: 0.0 .. 60.0 in -50.0 .. 200.0];
        t_out: Temperature = "T_out" "temperature of the air outside" [DEG_F, DEG_C: -50.0 .. 40.0 in -100.0 .. 100.0];
    ) -> Time = "t" "time to cool" [H, H];
    reduced [mass KG, loss WATT, t_1 K, t_2 K, t_out K => S] {
        WATER * mass * (t_1 - t_out) / loss * ln((t_1 - t_out) / (t_2 - t_out))
    }
    constants [WATER "c_w"]
    sources [FREEZE_ASHRAE]
    checks [
        "mass=1.4541 lb, loss=3.3818 W, t_1=42 °F, t_2=32 °F, t_out=-18 °F" => "1.4 h",
            Published(&FREEZE_ASHRAE, "a foot of 2 in pipe (2.067 in bore, 2.375 in outside), 1.5 in of insulation at 0.30: freezes in 1.4 hours");
        "mass=1.4541 lb, loss=1.24 W, t_1=42 °F, t_2=32 °F, t_out=20 °F" => "4.6 h",
            Published(&FREEZE_ASHRAE, "the same pipe at 20 °F: 4.6 hours");
        "mass=14980 lb, loss=522 W, t_1=40 °F, t_2=32 °F, t_out=-10 °F" => "73.32 h",
            ByHand("14,980 x 50 / 1,781.1 Btu/h x ln(50/42) = 420.53 h x 0.174353");
        "mass=10 kg, loss=100 W, t_1=5 °C, t_2=5 °C, t_out=-10 °C" => "0 h", Limit("it is there already");
        "mass=10 kg, loss=100 W, t_1=5 °C, t_2=-10 °C, t_out=-10 °C" => "outside: result", Limit("the air's own temperature is never quite reached");
    ]
}
