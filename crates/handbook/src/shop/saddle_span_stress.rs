//! Formula: stress midway between two saddles

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::ZICK;
use core::f64::consts::PI;
use stillrise_units::{G, Length, Mass, Pressure};

const GRAVITY: f64 = G.value;

formula! {
    /// Lengthwise bending stress of a full horizontal cylinder on two saddles, midway between them, as a beam; tension at
    /// the bottom where it is positive, with the same compression at the top.
    ///
    /// Length is from head seam to head seam; a flat head has no depth. Pressure from inside adds half the hoop stress.
    /// Saddles are best a fifth of the length from the ends, a quarter at most, and within half a radius where the head
    /// is to keep the shell round.
    "saddle-span-stress" "Stress midway between two saddles"
    fn stress(
        mass: Mass = "m" "mass of the full vessel" [LB, KG: 100.0 .. 100000.0 in 0.0 .. 1e8];
        length: Length = "L" "length of the shell from seam to seam" [IN, M: 0.5 .. 15.0 in 0.001 .. 1e4];
        a: Length = "A" "distance of each saddle from its head seam" [IN, M: 0.0 .. 4.0 in 0.0 .. 5000.0];
        r: Length = "R" "radius of the shell" [IN, M: 0.2 .. 2.5 in 0.001 .. 100.0];
        head: Length = "h" "depth of the heads" [IN, M: 0.0 .. 2.0 in 0.0 .. 100.0];
        t: Length = "t" "thickness of the shell" [IN, MM: 1.0 .. 25.0 in 0.001 .. 1000.0];
    ) -> Pressure = "sigma_m" "bending stress midway" [PSI, KPA];
    reduced [mass KG, length M, a M, r M, head M, t M => PA] {
        let load = mass * GRAVITY / 2.0;
        let ends = 1.0 + 4.0 * head / (3.0 * length);
        let moment = load * length / 4.0 * ((1.0 + 2.0 * (r * r - head * head) / (length * length)) / ends - 4.0 * a / length);
        moment / (PI * r * r * t)
    }
    constants [GRAVITY "g"]
    sources [ZICK]
    checks [
        "mass=20000 lb, length=160 in, a=16 in, r=48 in, head=0 in, t=0.25 in" => "172.4 psi",
            ByHand("10,000 x 40 x (1 + 4,608/25,600 - 0.4) = 312,000 lbf in, over pi x 2,304 x 0.25 = 1,809.6 in3");
        "mass=20000 lb, length=160 in, a=16 in, r=48 in, head=24 in, t=0.25 in" => "120.7 psi",
            ByHand("ends 1.2; 400,000 x (1.135/1.2 - 0.4) = 218,333 lbf in, over 1,809.6 in3");
        "mass=2000 kg, length=100 m, a=0 m, r=0.01 m, head=0 m, t=1 mm" => "7.803884e8 kPa",
            Limit("a thin rod on its ends: W L/8 = 245,166 N m over pi R2 t");
        "mass=2000 kg, length=100 m, a=12.5 m, r=0.01 m, head=0 m, t=1 mm" => "3.901942e8 kPa",
            Limit("a thin rod on supports an eighth from its ends: half of that");
    ]
}
