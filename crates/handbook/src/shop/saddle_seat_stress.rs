//! Formula: lengthwise stress over a saddle

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::ZICK;
use core::f64::consts::PI;
use stillrise_units::{G, Length, Mass, Pressure, Ratio};

const GRAVITY: f64 = G.value;

formula! {
    /// Lengthwise bending stress of a full horizontal cylinder in the plane of a saddle: tension at the top where it is
    /// positive, with compression at the bottom.
    ///
    /// The share is 1 where a ring in that plane or a head within half a radius keeps the shell round, otherwise
    /// `saddle-share` for the top or the bottom. Flat heads close to the saddle can turn the sign. Stress around the horn of
    /// the saddle and the split of the saddle itself are further checks for the engineer who signs.
    "saddle-seat-stress" "Lengthwise stress over a saddle"
    fn stress(
        mass: Mass = "m" "mass of the full vessel" [LB, KG: 100.0 .. 100000.0 in 0.0 .. 1e8];
        length: Length = "L" "length of the shell from seam to seam" [IN, M: 0.5 .. 15.0 in 0.001 .. 1e4];
        a: Length = "A" "distance of each saddle from its head seam" [IN, M: 0.05 .. 4.0 in 0.0001 .. 5000.0];
        r: Length = "R" "radius of the shell" [IN, M: 0.2 .. 2.5 in 0.001 .. 100.0];
        head: Length = "h" "depth of the heads" [IN, M: 0.0 .. 2.0 in 0.0 .. 100.0];
        t: Length = "t" "thickness of the shell" [IN, MM: 1.0 .. 25.0 in 0.001 .. 1000.0];
        share: Ratio = "K_1" "share of the section modulus that works" [ONE, ONE: 0.1 .. 1.0 in 0.001 .. 1.0];
    ) -> Pressure = "sigma_s" "bending stress over the saddle" [PSI, KPA];
    reduced [mass KG, length M, a M, r M, head M, t M, share ONE => PA] {
        let load = mass * GRAVITY / 2.0;
        let ends = 1.0 + 4.0 * head / (3.0 * length);
        let moment = load * a * (1.0 - (1.0 - a / length + (r * r - head * head) / (2.0 * a * length)) / ends);
        moment / (share * PI * r * r * t)
    }
    constants [GRAVITY "g"]
    sources [ZICK]
    checks [
        "mass=20000 lb, length=160 in, a=40 in, r=48 in, head=0 in, t=0.25 in, share=1" => "15.47 psi",
            ByHand("10,000 x 40 x (1 - (0.75 + 2,304/12,800)) = 28,000 lbf in, over pi x 2,304 x 0.25 = 1,809.6 in3");
        "mass=20000 lb, length=160 in, a=40 in, r=48 in, head=24 in, t=0.25 in, share=1" => "58.03 psi",
            ByHand("400,000 x (1 - 0.885/1.2) = 105,000 lbf in, over 1,809.6 in3");
        "mass=20000 lb, length=160 in, a=16 in, r=48 in, head=0 in, t=0.25 in, share=0.1" => "-309.5 psi",
            ByHand("10,000 x 16 x (1 - (0.9 + 0.45)) = -56,000 lbf in, over 180.96 in3");
        "mass=2000 kg, length=100 m, a=25 m, r=0.01 m, head=0 m, t=1 mm, share=1" => "1.950971e8 kPa",
            Limit("the overhang of a thin rod: W A2/(2 L) = 61,292 N m over pi R2 t");
    ]
}
