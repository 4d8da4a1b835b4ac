//! Formula: time to rise through a depth

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{DEFINITION, DIESEL_EXAMPLE, RISE_TIME_TABLE};
use stillrise_units::{Length, Time, Velocity};

formula! {
    /// Time in which a droplet rises through a depth of still water.
    ///
    /// Through 3 in, at a specific gravity of 0.85 and 20 °C: 42 s at 150 µm, 4.4 min at 60 µm,
    /// 17 min at 30 µm, 10 h at 5 µm.
    "rise-time" "Time to rise through a depth"
    fn time(
        depth: Length = "d" "depth" [FT, M: 0.005 .. 5.0 in 0.0 .. 1000.0];
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.001 .. 100.0 in 1e-9 .. 1e6];
    ) -> Time = "t" "time" [MIN, MIN];
    typed { depth / v }
    sources [DEFINITION]
    checks [
        "depth=2 m, v=0.0012385 m/s" => "26.9 min", Published(&DIESEL_EXAMPLE, "2 m at 0.0012385 m/s: 26.9 min");
        "depth=2 m, v=1.2385 mm/s" => "26.9 min", Published(&DIESEL_EXAMPLE, "0.07431 m/min: 26.9 min");
        "depth=2 m, v=1.238462 mm/s" => "26.915 min", ByHand("2 / 0.0743077");
        "depth=3 in, v=1.8145 mm/s" => "42 s", Published(&RISE_TIME_TABLE, "150 µm: 42 s; velocity by Stokes at 20 °C");
        "depth=3 in, v=0.29032 mm/s" => "252 s" within 0.06 "the table scatters 5 % about d squared",
            Published(&RISE_TIME_TABLE, "60 µm: 4 min 12 s");
        "depth=3 in, v=0.072580 mm/s" => "1044 s" within 0.06 "the table scatters 5 % about d squared",
            Published(&RISE_TIME_TABLE, "30 µm: 17 min 24 s");
        "depth=3 in, v=0.018145 mm/s" => "4134 s" within 0.06 "the table scatters 5 % about d squared",
            Published(&RISE_TIME_TABLE, "15 µm: 1 h 8 min 54 s");
        "depth=3 in, v=0.0020161 mm/s" => "36129 s" within 0.06 "the table scatters 5 % about d squared",
            Published(&RISE_TIME_TABLE, "5 µm: 10 h 2 min 9 s");
        "depth=3 in, v=5.953 mm/s" => "12.8 s", ByHand("300 µm with the drag of a sphere: 76.2 / 5.953; the published table says 12 s");
        "depth=1 m, v=1 mm/s" => "1000 s", Limit("a thousand millimetres at one a second");
    ]
}
